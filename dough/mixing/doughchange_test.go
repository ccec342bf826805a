package mixing_test

import (
	"math"
	"testing"
	"time"

	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"pgregory.net/rapid"
)

// The flour found brings the dough to the hydration, exactly to a microgram's worth.
func TestFlourForMeetsTheHydration(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := mixing.Mix{Mixer: mixing.Hand, Flour: grams(t, "flour", 50, 20_000)}
		m.Water = quantity.NewPercent(rapid.Float64Range(30, 120).Draw(t, "hydration")).Of(m.Flour)
		m.Dough = m.Flour.Add(m.Water)
		now := m.Water.PercentOf(m.Flour).Points()
		wanted := quantity.NewPercent(rapid.Float64Range(21, max(21.001, now)).Draw(t, "wanted"))
		if wanted.Points() > now {
			t.Skip()
		}
		a, err := m.FlourFor(wanted)
		if err != nil {
			t.Fatal(err)
		}
		if !(math.Abs(a.Hydration.Points()-wanted.Points()) <= 1e-5) || a.Flour.Sign() < 0 {
			t.Fatalf("%v of flour gives %v, want %v", a.Flour, a.Hydration, wanted)
		}
	})
}

// Colder and saltier doughs take longer; changing back undoes the change of the water.
func TestDoughChangeProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := mixing.DoughChange{
			From: celsius(t, "from", 15, 35), To: celsius(t, "to", 15, 35),
			SaltFrom:    quantity.NewPercent(rapid.Float64Range(0, 3).Draw(t, "salt from")),
			SaltTo:      quantity.NewPercent(rapid.Float64Range(0, 3).Draw(t, "salt to")),
			Development: quantity.Elapsed(rapid.Float64Range(10, 30).Draw(t, "minutes") * float64(time.Minute)),
		}
		a, err := in.Effect()
		if err != nil {
			t.Fatal(err)
		}
		verify(t, a.Working())
		back := in
		back.From, back.To, back.SaltFrom, back.SaltTo = in.To, in.From, in.SaltTo, in.SaltFrom
		b, err := back.Effect()
		if err != nil {
			t.Fatal(err)
		}
		if !(math.Abs(a.Development+b.Development) <= 1e-9) || !(math.Abs(a.Water.Points()+b.Water.Points()) <= 3e-6) {
			t.Fatalf("%v and back %v", a, b)
		}
		colder := in
		colder.To = in.To.Add(quantity.DeltaCelsius(-2))
		if c, err := colder.Effect(); err != nil || c.Times <= a.Times || c.Water.Compare(a.Water) <= 0 {
			t.Fatalf("colder: %v, %v; was %v", c, err, a)
		}
	})
}

// Put into the balance, the water of a scald gives the mash; more flour, a colder bowl and a hotter mash need hotter
// water.
func TestScaldProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := mixing.Scald{Flour: grams(t, "flour", 50, 2000), FlourTemperature: celsius(t, "flour temperature", 0, 30)}
		in.Water = quantity.NewPercent(rapid.Float64Range(60, 500).Draw(t, "water")).Of(in.Flour)
		in.Mash = celsius(t, "mash", 55, 75)
		if rapid.Bool().Draw(t, "bowl") {
			in.Bowl, in.BowlTemperature = mixing.HeatCapacity(rapid.Float64Range(0.05, 1).Draw(t, "capacity")),
				celsius(t, "bowl temperature", 5, 40)
		}
		in.Altitude = quantity.Meters(rapid.Float64Range(0, 4000).Draw(t, "altitude"))
		r, err := in.Pour()
		if err != nil {
			t.Fatal(err)
		}
		verify(t, r.Working())
		bowl := in.BowlTemperature
		if bowl.IsZero() {
			bowl = in.FlourTemperature
		}
		mash := func(water quantity.Temperature, mass quantity.Mass) float64 {
			f, w := in.Flour.Kilograms()*1.85, mass.Kilograms()*4.186
			return (f*in.FlourTemperature.Celsius() + w*water.Celsius() + float64(in.Bowl)*bowl.Celsius()) / (f + w +
				float64(in.Bowl))
		}
		if got := mash(r.Water, in.Water); !(math.Abs(got-in.Mash.Celsius()) <= 0.001) {
			t.Fatalf("water of %v gives a mash of %v, want %v", r.Water, got, in.Mash)
		}
		if got := mash(r.Boiling, in.Water); !(math.Abs(got-r.WithBoiling.Celsius()) <= 0.001) {
			t.Fatalf("boiling water gives %v, said %v", got, r.WithBoiling)
		}
		if r.Feasible != (r.WithBoiling.Compare(in.Mash) >= 0) &&
			!(math.Abs(r.WithBoiling.Sub(in.Mash).Celsius()) <= 0.001) {
			t.Fatalf("feasible %v, boiling water gives %v", r.Feasible, r.WithBoiling)
		}
		if r.LeastWater.Sign() > 0 {
			if got := mash(r.Boiling, r.LeastWater); !(math.Abs(got-in.Mash.Celsius()) <= 0.001) || r.Feasible {
				t.Fatalf("%v of boiling water gives %v", r.LeastWater, got)
			}
		}
		if len(r.Cautions) == 0 || r.Cautions[0].Source.IsZero() {
			t.Fatal("no caution")
		}
	})
}
