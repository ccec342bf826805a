package mixing_test

import (
	"math/rand/v2"
	"testing"
	"time"

	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
)

func BenchmarkWaterTemperature(b *testing.B) {
	in := hall()
	b.ReportAllocs()
	for b.Loop() {
		if _, err := in.Water(); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkWaterTemperatureWithWorking(b *testing.B) {
	in := hall()
	b.ReportAllocs()
	for b.Loop() {
		r, err := in.Water()
		if err != nil || r.Working().Len() != 1 {
			b.Fatal(err)
		}
	}
}

func BenchmarkFits(b *testing.B) {
	in := mixing.Mix{Mixer: mixing.Planetary, Bowl: quantity.Liters(7), Dough: quantity.Grams(2660),
		Flour: quantity.Grams(1528), Water: quantity.Grams(1100)}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := in.Fit(); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkBalanceWater(b *testing.B) {
	in := hallBalance()
	b.ReportAllocs()
	for b.Loop() {
		if _, err := in.WaterFor(quantity.Celsius(25)); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkLearn100(b *testing.B) {
	log := mixing.Log{Kind: mixing.Planetary, Batches: batches(rand.New(rand.NewPCG(1, 1)), 100, 0.3, 0.6, 0.1, 0.5)}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := log.Learn(); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkPredict(b *testing.B) {
	l, err := mixing.Log{Kind: mixing.Planetary, Batches: batches(rand.New(rand.NewPCG(1, 1)), 20, 0.3, 0.6, 0.1,
		0.5)}.Learn()
	if err != nil {
		b.Fatal(err)
	}
	plan := planned(18, 20, 22, 20, 3*time.Minute, 5*time.Minute)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := l.Predict(plan, quantity.MustPercent("80 %")); err != nil {
			b.Fatal(err)
		}
	}
}
