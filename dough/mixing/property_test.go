package mixing_test

import (
	"errors"
	"math"
	"testing"
	"time"

	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/workcheck"
	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"pgregory.net/rapid"
)

// celsius draws a temperature of whole thousandths of °C or °F, or of single quanta.
func celsius(t *rapid.T, label string, low, high float64) quantity.Temperature {
	c := rapid.Float64Range(low, high).Draw(t, label)
	switch rapid.IntRange(0, 2).Draw(t, label+" scale") {
	case 0:
		c = math.Round(c*10) / 10
	case 1:
		return quantity.Fahrenheit(math.Round(min(max(c*1.8+32, low*1.8+32.5), high*1.8+31.5)*2) / 2)
	}
	return quantity.Celsius(min(max(c, low), high))
}

func delta(t *rapid.T, label string, low, high float64) quantity.TemperatureDelta {
	if rapid.Bool().Draw(t, label+" °F") {
		return quantity.DeltaFahrenheit(math.Round(1.8 * rapid.Float64Range(low, high).Draw(t, label)))
	}
	return quantity.DeltaCelsius(rapid.Float64Range(low, high).Draw(t, label))
}

func grams(t *rapid.T, label string, low, high float64) quantity.Mass {
	g := rapid.Float64Range(low, high).Draw(t, label)
	if rapid.Bool().Draw(t, label+" whole") {
		g = math.Round(g)
	}
	return quantity.Grams(max(g, low))
}

func factors(t *rapid.T) mixing.Factors {
	in := mixing.Factors{Target: celsius(t, "target", 15, 32), Friction: delta(t, "friction", -5, 30)}
	kinds := []mixing.FactorKind{mixing.FlourFactor, mixing.RoomFactor, mixing.LevainFactor, mixing.BowlFactor, mixing.OtherFactor, mixing.OtherFactor}
	names := []string{"", "hall", "levain", "", "", "a very long name with ünïcode and 'quotes' in it that goes on"}
	for i := range rapid.IntRange(1, 6).Draw(t, "factors") {
		in.Others = append(in.Others, mixing.Factor{Kind: kinds[i], Name: names[i], Temperature: celsius(t, "other", -10, 40)})
	}
	if rapid.Bool().Draw(t, "with tap") {
		in.Tap, in.Pour = celsius(t, "tap", 1, 30), grams(t, "water", 100, 40_000)
	}
	if rapid.Bool().Draw(t, "with time") {
		in.Mixing = quantity.Elapsed(time.Duration(rapid.IntRange(60, 1800).Draw(t, "seconds")) * time.Second)
	}
	return in
}

func TestWaterTemperatureProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := factors(t)
		r, err := in.Water()
		if err != nil {
			t.Fatal(err)
		}
		verify(t, r.Working())
		// Measuring the batch gives the friction back, exactly.
		f, err := mixing.Measured{Dough: in.Target, Water: r.Temperature, Others: in.Others}.Friction()
		if r.Temperature.Celsius() >= -40 && r.Temperature.Celsius() <= 95 {
			if err != nil {
				t.Fatal(err)
			}
			if f.Factor != in.Friction {
				t.Fatalf("friction %v came back as %v", in.Friction, f.Factor)
			}
			verify(t, f.Working())
		}
		// n·T − ΣT − F, the trade's way of writing it, in kelvin.
		want := float64(in.Count())*in.Target.Kelvin() - in.Friction.Celsius()
		for _, o := range in.Others {
			want -= o.Temperature.Kelvin()
		}
		if math.Abs(want-r.Temperature.Kelvin()) > 1e-9 {
			t.Fatalf("%v K, the trade's formula says %v K", r.Temperature.Kelvin(), want)
		}
		if r.Feasible == (len(r.Remedies) > 0) && in.Tap.IsZero() {
			t.Fatalf("feasible %v with %d remedies", r.Feasible, len(r.Remedies))
		}
		for _, m := range r.Remedies {
			checkRemedy(t, in, r, m)
		}
	})
}

// checkRemedy does what the remedy says and looks whether the target is met.
func checkRemedy(t *rapid.T, in mixing.Factors, r mixing.WaterResult, m mixing.WaterRemedy) {
	if m.Text.IsZero() || m.String() != m.Text.String() {
		t.Fatalf("a remedy without words: %+v", m)
	}
	cold, warm := quantity.Celsius(1), quantity.Fahrenheit(110)
	limit := cold
	if r.Temperature.Compare(warm) > 0 {
		limit = warm
	}
	again := in
	again.Others = append([]mixing.Factor(nil), in.Others...)
	again.Tap, again.Pour = quantity.Temperature{}, quantity.Mass{}
	switch m.Way {
	case mixing.ChilledFlour, mixing.WarmFlour:
		if !m.Enough {
			return
		}
		for i, o := range again.Others {
			if o.Kind == mixing.FlourFactor || i == 0 && len(in.Others) == 1 {
				again.Others[i].Temperature = m.Temperature
				break
			}
		}
	case mixing.ShorterMixing:
		if !m.Enough {
			return
		}
		again.Friction = m.Friction
	case mixing.OtherTarget:
		if m.Temperature.Celsius() < 0 || m.Temperature.Celsius() > 50 {
			return
		}
		again.Target = m.Temperature
	case mixing.Ice, mixing.ChilledWater:
		return
	}
	w, err := again.Water()
	if err != nil {
		t.Fatal(err)
	}
	if d := math.Abs(w.Temperature.Celsius() - limit.Celsius()); d > 0.001 {
		t.Fatalf("%v: water would be %v, want %v", m, w.Temperature, limit)
	}
}

// The same batch written in °C and in °F is the same to the last bit.
func TestBothScalesAgreeBitForBit(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		// Multiples of 5 °C are whole in °F.
		c := func(label string) (a, b quantity.Temperature) {
			v := rapid.IntRange(0, 9).Draw(t, label)
			return quantity.Celsius(float64(5 * v)), quantity.Fahrenheit(float64(9*v + 32))
		}
		var x, y mixing.Factors
		x.Target, y.Target = c("target")
		for range rapid.IntRange(1, 4).Draw(t, "n") {
			a, b := c("other")
			x.Others = append(x.Others, mixing.Factor{Name: "o", Temperature: a})
			y.Others = append(y.Others, mixing.Factor{Name: "o", Temperature: b})
		}
		f := rapid.IntRange(-3, 5).Draw(t, "friction")
		x.Friction, y.Friction = quantity.DeltaCelsius(float64(5*f)), quantity.DeltaFahrenheit(float64(9*f))
		x.Tap, y.Tap = c("tap")
		x.Pour, y.Pour = quantity.Kilograms(2), quantity.Kilograms(2)
		a, errA := x.Water()
		b, errB := y.Water()
		if (errA == nil) != (errB == nil) || a.Temperature != b.Temperature || a.Feasible != b.Feasible {
			t.Fatalf("%v %v against %v %v", a, errA, b, errB)
		}
		if diff := cmp.Diff(a.Remedies, b.Remedies, cmpopts.IgnoreUnexported(mixing.WaterRemedy{})); diff != "" {
			t.Fatal(diff)
		}
	})
}

func TestFrictionConversions(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n, m := rapid.IntRange(2, 12).Draw(t, "n"), rapid.IntRange(2, 12).Draw(t, "m")
		d := delta(t, "rise", -7, 7)
		f, err := mixing.FrictionOf(d, n)
		if err != nil {
			t.Fatal(err)
		}
		g, err := f.For(m)
		if err != nil {
			t.Fatal(err)
		}
		back, err := g.Rise()
		if err != nil || back != d {
			t.Fatalf("%v of %d factors is %v of %d, a rise of %v, %v; want %v", f, n, g, m, back, err, d)
		}
	})
}

func TestIceProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := mixing.IceWater{Water: grams(t, "water", 10, 50_000), Tap: celsius(t, "tap", 1, 40), Need: celsius(t, "need", -70, 40), Ice: celsius(t, "ice", -30, 0)}
		if in.Ice.Celsius() > 0 {
			in.Ice = quantity.Celsius(0)
		}
		if rapid.Bool().Draw(t, "trade") {
			in.Melting = quantity.DeltaFahrenheit(144)
		}
		r, err := in.Replace()
		if err != nil {
			t.Fatal(err)
		}
		verify(t, r.Working())
		if r.Ice.Add(r.Liquid) != in.Water || r.Total != in.Water {
			t.Fatalf("%v and %v are not %v", r.Ice, r.Liquid, in.Water)
		}
		melting := in.Melting.Celsius()
		if in.Melting.IsZero() {
			melting = quantity.DeltaCelsius(333.6 / 4.186).Celsius() // kept to 1/9000 K
		}
		// The heat of ice and water is that of water at the needed temperature.
		heat := func(ice, liquid quantity.Mass) float64 {
			return liquid.Grams()*in.Tap.Celsius() + ice.Grams()*(2.09/4.186*in.Ice.Celsius()-melting)
		}
		if in.Need.Compare(in.Tap) >= 0 {
			if !r.Ice.IsZero() {
				t.Fatalf("ice %v for water that need not be cooled", r.Ice)
			}
		} else if r.Feasible {
			if got, want := heat(r.Ice, r.Liquid), in.Water.Grams()*in.Need.Celsius(); math.Abs(got-want) > 1e-3 {
				t.Fatalf("heat %v, want %v", got, want)
			}
		}
		if in.Need.Celsius() < 0 {
			return
		}
		a, err := in.Add()
		if err != nil {
			t.Fatal(err)
		}
		verify(t, a.Working())
		if a.Liquid != in.Water || a.Total != in.Water.Add(a.Ice) {
			t.Fatalf("added: %v and %v make %v", a.Ice, a.Liquid, a.Total)
		}
		if a.Ice.Sign() > 0 {
			if got, want := heat(a.Ice, a.Liquid), a.Total.Grams()*in.Need.Celsius(); math.Abs(got-want) > 1e-2 {
				t.Fatalf("added: heat %v, want %v", got, want)
			}
			if a.Ice.Compare(r.Ice) < 0 {
				t.Fatalf("added ice %v below replaced %v", a.Ice, r.Ice)
			}
		}
	})
}

func balance(t *rapid.T) mixing.Balance {
	b := mixing.Balance{
		Water: grams(t, "water", 300, 5000), WaterTemperature: celsius(t, "water temperature", 1, 40),
		Ingredients: []mixing.Portion{
			{Name: "flour", Mass: grams(t, "flour", 500, 8000), Temperature: celsius(t, "flour temperature", 5, 32), Substance: mixing.Flour},
		},
	}
	if rapid.Bool().Draw(t, "levain") {
		b.Ingredients = append(b.Ingredients, mixing.Portion{
			Name: "levain", Mass: grams(t, "levain", 0, 2000), Temperature: celsius(t, "levain temperature", 4, 32), Substance: mixing.Levain, Hydration: quantity.NewPercent(rapid.Float64Range(50, 150).Draw(t, "hydration")),
		})
	}
	if rapid.Bool().Draw(t, "others") {
		b.Ingredients = append(b.Ingredients,
			mixing.Portion{Name: "rye", Mass: grams(t, "rye", 100, 2000), Temperature: celsius(t, "rye temperature", 5, 32), Substance: mixing.Flour},
			mixing.Portion{Name: "butter", Mass: grams(t, "butter", 0, 500), Temperature: celsius(t, "butter temperature", 4, 20), Substance: mixing.Butter},
			mixing.Portion{Name: "", Mass: grams(t, "salt", 0, 100), Temperature: celsius(t, "salt temperature", 5, 30), SpecificHeat: 0.87},
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
		b.Mixing, b.Hydration = mixing.SpecificEnergy(rapid.Float64Range(0, 40).Draw(t, "e")), mixing.FlourHydrationHeat
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
			if d := math.Abs(r.Dough.Celsius() - target.Celsius()); d > 3e-4 {
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
		verify(t, w.Working())
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
				if ice.Ice.Compare(b.Water) < 0 && b.Water.Sub(ice.Ice).Grams() > 50 && math.Abs(again.Water.Celsius()-b.WaterTemperature.Celsius()) > 0.01 {
					t.Fatalf("with the ice found, water of %v is asked for, the tap gives %v", again.Water, b.WaterTemperature)
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
	b := mixing.Balance{Water: quantity.Kilograms(1), Mixing: mixing.SpecificEnergy(f.Friction.Celsius() * 4.186 / float64(f.Count()))}
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
		if d := math.Abs(byFactors.Temperature.Celsius() - byBalance.Water.Celsius()); d > 2.0/9000 {
			t.Fatalf("factors %v, balance %v", byFactors.Temperature, byBalance.Water)
		}
		if math.Abs(byBalance.Sensitivity-1/float64(in.Count())) > 1e-12 {
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
			if math.Abs(p.Weight-1) > 1e-12 || p.Counted != 1 || math.Abs(p.Shift.Celsius()) > 2.0/9000 {
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
		if math.Abs(sum-c.Difference.Celsius()) > 0.002 {
			t.Fatalf("parts add up to %v, difference %v", sum, c.Difference)
		}
		in.Friction = c.AgreeingFriction
		if again, err := in.Water(); err == nil && again.Temperature != c.ByBalance {
			t.Fatalf("agreeing friction gives %v, balance %v", again.Temperature, c.ByBalance)
		}
	})
}

func TestFitsProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		flour := grams(t, "flour", 100, 60_000)
		in := mixing.Mix{
			Mixer: mixing.MixerKind(rapid.IntRange(1, 5).Draw(t, "kind")), Bowl: quantity.Liters(rapid.Float64Range(0.5, 300).Draw(t, "bowl")),
			Flour: flour, Water: quantity.NewPercent(rapid.Float64Range(25, 120).Draw(t, "water")).Of(flour), Kind: mixing.DoughKind(rapid.IntRange(0, 6).Draw(t, "type")),
			HighGluten: rapid.Bool().Draw(t, "gluten"),
		}
		in.Dough = in.Flour.Add(in.Water).Add(grams(t, "rest", 0, 500))
		if rapid.Bool().Draw(t, "cold") {
			in.WaterTemperature = celsius(t, "water temperature", 1, 40)
		}
		if rapid.Bool().Draw(t, "rated") {
			in.Rated = grams(t, "rating", 500, 100_000)
		}
		r, err := in.Fit()
		if err != nil {
			t.Fatal(err)
		}
		verify(t, r.Working())
		if r.MostLow.Compare(r.MostHigh) > 0 {
			t.Fatalf("%v above %v", r.MostLow, r.MostHigh)
		}
		if r.Fullness == mixing.Unknown != r.MostHigh.IsZero() {
			t.Fatalf("verdict %v with a capacity of %v", r.Fullness, r.MostHigh)
		}
		most := r.MostLow
		if r.Basis == mixing.HouseholdBowl { // a rule of judgment asks for a split only by its high end
			most = r.MostHigh
		}
		if r.Fullness != mixing.Unknown {
			if r.Each.Compare(most.Add(quantity.Micrograms(int64(r.Batches)))) > 0 {
				t.Fatalf("batches of %v do not fit %v", r.Each, most)
			}
			if n := int64(r.Batches - 1); n > 0 && in.Dough.Divide(n).Compare(most) <= 0 {
				t.Fatalf("%d batches where %d would do", r.Batches, n)
			}
			if one := in.Dough.Compare(most) <= 0; (r.Batches == 1) != one {
				t.Fatalf("%v in %d batches", r.Fullness, r.Batches)
			}
		}
		inside := in.Bowl.Liters() >= 7 && in.Bowl.Liters() <= 65 && in.Mixer == mixing.Planetary
		if r.Fullness == mixing.Comfortable && !inside && in.Rated.IsZero() && in.Mixer != mixing.Hand {
			t.Fatalf("comfortable outside the charts: %+v", r)
		}
		if (r.Basis == 0) != (r.Fullness == mixing.Unknown) {
			t.Fatalf("%v rests on %v", r.Fullness, r.Basis)
		}
		if (in.Mixer != mixing.Hand) != (len(r.Cautions) > 0) {
			t.Fatalf("cautions are missing: %+v", r)
		}
	})
}

// verify re-evaluates every printed line.
func verify(t *rapid.T, w working.Working) {
	t.Helper()
	for _, fault := range workcheck.Faults(w) {
		t.Error(fault)
	}
}
