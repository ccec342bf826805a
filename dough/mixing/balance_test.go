package mixing_test

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"pgregory.net/rapid"
)

func balance(t *rapid.T) mixing.Balance {
	b := mixing.Balance{
		Water: grams(t, "water", 300, 5000), WaterTemperature: celsius(t, "water temperature", 1, 40),
		Ingredients: []mixing.Portion{
			{Name: "flour", Mass: grams(t, "flour", 500, 8000), Temperature: celsius(t, "flour temperature", 5, 32),
				Substance: mixing.Flour},
		},
	}
	if rapid.Bool().Draw(t, "levain") {
		b.Ingredients = append(b.Ingredients, mixing.Portion{
			Name: "levain", Mass: grams(t, "levain", 0, 2000), Temperature: celsius(t, "levain temperature", 4, 32),
			Substance: mixing.Levain, Hydration: quantity.NewPercent(rapid.Float64Range(50, 150).Draw(t,
				"hydration")),
		})
	}
	if rapid.Bool().Draw(t, "others") {
		b.Ingredients = append(b.Ingredients,
			mixing.Portion{Name: "rye", Mass: grams(t, "rye", 100, 2000), Temperature: celsius(t, "rye temperature", 5,
				32), Substance: mixing.Flour},
			mixing.Portion{Name: "butter", Mass: grams(t, "butter", 0, 500), Temperature: celsius(t,
				"butter temperature", 4, 20), Substance: mixing.Butter},
			mixing.Portion{Name: "", Mass: grams(t, "salt", 0, 100), Temperature: celsius(t, "salt temperature", 5, 30),
				SpecificHeat: 0.87},
		)
	}
	if rapid.Bool().Draw(t, "bowl") {
		b.Bowl, b.Room = mixing.HeatCapacity(rapid.Float64Range(0.1, 3).Draw(t, "capacity")), celsius(t, "room", 5, 35)
	}
	if rapid.Bool().Draw(t, "exchange") {
		b.RoomExchange, b.Room = mixing.HeatCapacity(rapid.Float64Range(0.1, 3).Draw(t, "K")), celsius(t, "room", 5, 35)
	}
	if rapid.Bool().Draw(t, "cold ice") {
		b.IceTemperature = quantity.Celsius(-math.Round(rapid.Float64Range(0, 30).Draw(t, "ice")))
	}
	if rapid.Bool().Draw(t, "work") {
		b.Mixing, b.Hydration = mixing.SpecificEnergy(rapid.Float64Range(0.1, 40).Draw(t, "e")),
			mixing.FlourHydrationHeat
	}
	return b
}

// Whatever the balance finds, put back into it, gives the target again.
func TestBalanceClosesOnItself(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b, target := balance(t), celsius(t, "target", 18, 32)
		final, err := b.Final()
		if err != nil {
			t.Fatal(err)
		}
		verify(t, final.Working())
		meets := func(what string, b mixing.Balance) {
			r, err := b.Final()
			if err != nil {
				return // the found value lies outside what can be put in
			}
			if d := math.Abs(r.Dough.Celsius() - target.Celsius()); !(d <= 3e-4) {
				t.Fatalf("%s: dough at %v, want %v", what, r.Dough, target)
			}
			verify(t, r.Working())
		}
		w, err := b.WaterFor(target)
		if errors.Is(err, quantity.ErrInconsistent) { // a tenth of water in a hot room: below absolute zero
			t.Skip(err)
		}
		if err != nil {
			t.Fatal(err)
		}
		for _, x := range w.Workings() {
			verify(t, x)
		}
		for _, m := range w.Remedies {
			if m.Text.IsZero() {
				t.Fatalf("a remedy without words: %+v", m)
			}
		}
		if w.Feasible == (len(w.Remedies) > 0) {
			t.Fatalf("feasible %v with %d remedies", w.Feasible, len(w.Remedies))
		}
		withWater := b
		withWater.WaterTemperature = w.Water
		meets("water", withWater)

		ice, err := b.IceFor(target)
		if err != nil {
			t.Fatal(err)
		}
		verify(t, ice.Working())
		if ice.Feasible {
			withIce := b
			withIce.Ice = ice.Ice
			meets("ice", withIce)
			if again, err := withIce.WaterFor(target); err == nil {
				verify(t, again.Working())
				if ice.Ice.Compare(b.Water) < 0 && b.Water.Sub(ice.Ice).Grams() > 50 &&
					!(math.Abs(again.Water.Celsius()-b.WaterTemperature.Celsius()) <= 0.01) {
					t.Fatalf("with the ice found, water of %v is asked for, the tap gives %v", again.Water,
						b.WaterTemperature)
				}
			}
		}
		f, err := b.FlourFor(target)
		if errors.Is(err, quantity.ErrInconsistent) { // a little flour in much hot water
			t.Skip(err)
		}
		if err != nil {
			t.Fatal(err)
		}
		verify(t, f.Working())
		withFlour := b
		withFlour.Ingredients = append([]mixing.Portion(nil), b.Ingredients...)
		for i := range withFlour.Ingredients {
			if withFlour.Ingredients[i].Substance == mixing.Flour {
				withFlour.Ingredients[i].Temperature = f.Flour
			}
		}
		meets("flour", withFlour)
	})
}

// equalWeights is the balance that the factor method is: a kilogram of water for every factor, and mixing work
// that stands for the friction factor.
func equalWeights(f mixing.Factors) mixing.Balance {
	b := mixing.Balance{Water: quantity.Kilograms(1),
		Mixing: mixing.SpecificEnergy(f.Friction.Celsius() * 4.186 / float64(f.Count()))}
	parts := 1.0
	for _, o := range f.Others {
		switch o.Kind {
		case mixing.RoomFactor:
			b.RoomExchange, b.Room = 4.186, o.Temperature
			continue
		case mixing.BowlFactor:
			b.Bowl, b.BowlTemperature = 4.186, o.Temperature
			continue
		}
		s := mixing.Salt
		switch o.Kind {
		case mixing.FlourFactor:
			s = mixing.Flour
		case mixing.LevainFactor:
			s = mixing.Levain
		}
		b.Ingredients = append(b.Ingredients, mixing.Portion{
			Name: o.Name, Mass: quantity.Kilograms(1), Temperature: o.Temperature, Substance: s, SpecificHeat: 4.186,
		})
		parts++
	}
	b.Mixing = mixing.SpecificEnergy(f.Friction.Celsius() * 4.186 / parts) // the work is for each kilogram of dough
	return b
}

// The factor method is the balance in which every factor weighs as much as the water.
func TestFactorMethodIsASpecialCase(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := factors(t)
		if in.Friction.Sign() < 0 {
			in.Friction = in.Friction.Neg()
		}
		b := equalWeights(in)
		byFactors, err := in.Water()
		if err != nil {
			t.Fatal(err)
		}
		byBalance, err := b.WaterFor(in.Target)
		if err != nil {
			t.Fatal(err)
		}
		// A quantum is 1/9000 K; the balance reckons in floating point.
		if d := math.Abs(byFactors.Temperature.Celsius() - byBalance.Water.Celsius()); !(d <= 2.0/9000) {
			t.Fatalf("factors %v, balance %v", byFactors.Temperature, byBalance.Water)
		}
		if !(math.Abs(byBalance.Sensitivity-1/float64(in.Count())) <= 1e-12) {
			t.Fatalf("sensitivity %v of %d factors", byBalance.Sensitivity, in.Count())
		}
		for _, o := range in.Others { // a comparison pairs only the usual factors
			if o.Kind == mixing.OtherFactor {
				return
			}
		}
		c, err := b.Compare(in)
		if err != nil {
			t.Fatal(err)
		}
		verify(t, c.Working())
		for _, p := range c.Parts {
			if !(math.Abs(p.Weight-1) <= 1e-12) || p.Counted != 1 || !(math.Abs(p.Shift.Celsius()) <= 2.0/9000) {
				t.Fatalf("part %+v of equal weights", p)
			}
		}
	})
}

// The parts of a comparison add up to its difference, and the agreeing friction removes it.
func TestComparisonAddsUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b, in := balance(t), factors(t)
		c, err := b.Compare(in)
		if errors.Is(err, quantity.ErrInconsistent) {
			t.Skip(err)
		}
		if err != nil {
			t.Fatal(err)
		}
		verify(t, c.Working())
		sum := c.HeatShift.Celsius()
		for _, p := range c.Parts {
			sum += p.Shift.Celsius()
		}
		if !(math.Abs(sum-c.Difference.Celsius()) <= 0.002) {
			t.Fatalf("parts add up to %v, difference %v", sum, c.Difference)
		}
		most := math.Abs(c.HeatShift.Celsius()) // what is told moves it most
		for _, p := range c.Parts {
			most = max(most, math.Abs(p.Shift.Celsius()))
		}
		if _, why, told := strings.Cut(c.String(), "; most of it is "); told &&
			!strings.Contains(why, fmt.Sprintf("(%.1f)", quantity.DeltaCelsius(most))) &&
			!strings.Contains(why, fmt.Sprintf("(%.1f)", quantity.DeltaCelsius(-most))) {
			t.Fatalf("%q, but something moves it by %v", why, most)
		}
		in.Friction = c.AgreeingFriction
		if again, err := in.Water(); err == nil && again.Temperature != c.ByBalance {
			t.Fatalf("agreeing friction gives %v, balance %v", again.Temperature, c.ByBalance)
		}
	})
}
