package bake

import (
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
)

func hallReading() LoafReading {
	return LoafReading{
		Goal:  Goal{Place: At(quantity.Meters(1150))},
		Core:  quantity.Celsius(94.5),
		Dough: quantity.Grams(886),
		Loaf:  quantity.Grams(785),
		Held:  quantity.Elapsed(3 * time.Minute),
	}
}

func TestJudgeDoesNotAllocate(t *testing.T) {
	r := hallReading()
	if n := testing.AllocsPerRun(100, func() {
		if v, err := r.Judge(); err != nil || v.State != Done {
			t.Fatal(v, err)
		}
	}); n != 0 {
		t.Errorf("a verdict allocates %v times", n)
	}
}

func BenchmarkJudge(b *testing.B) {
	r := hallReading()
	b.ReportAllocs()
	for b.Loop() {
		if _, err := r.Judge(); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkBoilingPoint(b *testing.B) {
	place := At(quantity.Meters(1150))
	b.ReportAllocs()
	for b.Loop() {
		if _, err := place.BoilingPoint(); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkTimeLeft(b *testing.B) {
	p := Probe{Goal: Goal{Place: At(quantity.Meters(1150))}, Samples: readings(22, 68, 24, 73, 27, 80)}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := p.TimeLeft(); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkCoolTime(b *testing.B) {
	c := CoolingLoaf{Baked: quantity.Grams(780)}
	for b.Loop() {
		if _, err := c.Time(); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkPlan(b *testing.B) {
	batch := OvenLoad{Dough: quantity.Grams(886), Pieces: 6, Vessel: Pot, Together: 2, Cold: true}
	for b.Loop() {
		if _, err := batch.Program(); err != nil {
			b.Fatal(err)
		}
	}
}
