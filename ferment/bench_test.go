package ferment_test

import (
	"math/rand/v2"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/ferment"
)

func BenchmarkDoseRefrigerator(b *testing.B) {
	h, err := ferment.Readings{Points: refrigerator(b, "A1")}.History()
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := ferment.GanzleYeast().Dose(h, 0, 24*time.Hour); err != nil {
			b.Fatal(err)
		}
	}
}

func readings(n int) []ferment.Knot {
	r := rand.New(rand.NewPCG(1, 2))
	out := make([]ferment.Knot, n)
	c := 22.0
	for i := range out {
		c += 0.3*r.NormFloat64() - 0.05*(c-22)
		out[i] = ferment.Knot{
			At:          quantity.Elapsed(time.Duration(i) * 20 * time.Second),
			Temperature: quantity.Celsius(c),
		}
	}
	return out
}

func BenchmarkMillionReadings(b *testing.B) {
	points := readings(1_000_000)
	b.ReportAllocs()
	for b.Loop() {
		h, err := ferment.Readings{Points: points}.History()
		if err != nil {
			b.Fatal(err)
		}
		if _, err := ferment.GanzleYeastHeld().Dose(h, 0, h.Known()); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkMillionReadingsDoseOnly(b *testing.B) {
	h, err := ferment.Readings{Points: readings(1_000_000)}.History()
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if _, err := ferment.GanzleYeastHeld().Dose(h, 0, h.Known()); err != nil {
			b.Fatal(err)
		}
	}
}

func hall(b testing.TB) ferment.Bulk {
	h, err := ferment.Relaxing{Start: quantity.Celsius(24.5),
		Room: ferment.Room{Night: quantity.Celsius(19), Day: quantity.Celsius(22),
			Starts: quantity.Elapsed(9 * time.Hour)}}.History()
	if err != nil {
		b.Fatal(err)
	}
	return ferment.Bulk{Inoculation: quantity.MustPercent("9.09 %"), Salt: quantity.MustPercent("2 %"),
		Hydration: quantity.MustPercent("72 %"),
		Rise:      quantity.MustPercent("75 %"), History: h, Law: ferment.GasBalance()}
}

func BenchmarkEstimate(b *testing.B) {
	in := hall(b)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := in.Estimate(); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkEstimateWithBand(b *testing.B) {
	in := hall(b)
	b.ReportAllocs()
	for b.Loop() {
		e, err := in.Estimate()
		if err != nil || len(e.RiseCurve(25)) != 25 {
			b.Fatal(err)
		}
	}
}

func BenchmarkLearnThousandBakes(b *testing.B) {
	for name, in := range map[string]struct{ robust, dated bool }{
		"plain": {}, "robust": {robust: true}, "dated": {dated: true}, "dated robust": {true, true},
	} {
		b.Run(name, func(b *testing.B) {
			log := bakeLog(b, 1000)
			for i := range log {
				if in.dated {
					log[i].On = time.Date(2026, 1, 4+i, 8, 0, 0, 0, time.UTC)
				}
			}
			b.ReportAllocs()
			for b.Loop() {
				if _, err := (ferment.Learning{Bakes: log, Robust: in.robust}).Learn(); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkLearnTenThousandBakesAndReviews(b *testing.B) {
	log := bakeLog(b, 10_000)
	for b.Loop() {
		l, err := ferment.Learning{Bakes: log}.Learn()
		if err != nil {
			b.Fatal(err)
		}
		if all, _, err := l.Reviews(); err != nil || len(all) != len(log) {
			b.Fatal(len(all), err)
		}
	}
}

// bakeLog invents bakes of a culture a fifth faster than the typical one, each a tenth off or so.
func bakeLog(t testing.TB, n int) []ferment.LoggedBulk {
	r := rand.New(rand.NewPCG(7, 7))
	var out []ferment.LoggedBulk
	for range n {
		in := ferment.Bulk{
			Inoculation: quantity.NewPercent(8 + 8*r.Float64()), Salt: quantity.MustPercent("2 %"),
			Hydration: quantity.MustPercent("72 %"), Rise: quantity.NewPercent(50 + 40*r.Float64()),
			History: ferment.Constant(quantity.Celsius(20 + 5*r.Float64())), Law: ferment.GasBalance(),
		}
		e, err := in.Estimate()
		if err != nil {
			t.Fatal(err)
		}
		took := float64(e.Ready().Likely) / 1.2 * (1 + 0.1*r.NormFloat64())
		out = append(out, ferment.LoggedBulk{Bulk: in, Took: quantity.Elapsed(time.Duration(took)),
			Error: quantity.NewPercent(0.5)})
	}
	return out
}

func BenchmarkCoolingHistory(b *testing.B) {
	for b.Loop() {
		if _, err := (ferment.Piece{Mass: quantity.Kilograms(1), Start: quantity.Celsius(25),
			Into: ferment.Room{Night: quantity.Celsius(4)}, Exposure: ferment.Refrigerator}).History(); err != nil {
			b.Fatal(err)
		}
	}
}
