package mixing_test

import (
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
	kinds := []mixing.FactorKind{mixing.FlourFactor, mixing.RoomFactor, mixing.LevainFactor, mixing.BowlFactor,
		mixing.OtherFactor, mixing.OtherFactor}
	names := []string{"", "hall", "levain", "", "", "a very long name with ünïcode and 'quotes' in it that goes on"}
	for i := range rapid.IntRange(1, 6).Draw(t, "factors") {
		in.Others = append(in.Others, mixing.Factor{Kind: kinds[i], Name: names[i], Temperature: celsius(t, "other",
			-10, 40)})
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
		for _, x := range r.Workings() {
			verify(t, x)
		}
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
		if !(math.Abs(want-r.Temperature.Kelvin()) <= 1e-9) {
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
	if d := math.Abs(w.Temperature.Celsius() - limit.Celsius()); !(d <= 0.001) {
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
		in := mixing.IceWater{Water: grams(t, "water", 10, 50_000), Tap: celsius(t, "tap", 1, 40),
			Need: celsius(t, "need", -70, 40), Ice: celsius(t, "ice", -30, 0)}
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
			if got, want := heat(r.Ice, r.Liquid), in.Water.Grams()*in.Need.Celsius(); !(math.Abs(got-want) <= 1e-3) {
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
			if got, want := heat(a.Ice, a.Liquid), a.Total.Grams()*in.Need.Celsius(); !(math.Abs(got-want) <= 1e-2) {
				t.Fatalf("added: heat %v, want %v", got, want)
			}
			if a.Ice.Compare(r.Ice) < 0 {
				t.Fatalf("added ice %v below replaced %v", a.Ice, r.Ice)
			}
		}
	})
}

func TestFitsProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		flour := grams(t, "flour", 100, 60_000)
		in := mixing.Mix{
			Mixer: mixing.MixerKind(rapid.IntRange(1, 5).Draw(t, "kind")), Bowl: quantity.Liters(rapid.Float64Range(0.5,
				300).Draw(t, "bowl")),
			Flour: flour, Water: quantity.NewPercent(rapid.Float64Range(25, 120).Draw(t, "water")).Of(flour),
			Kind:       mixing.DoughKind(rapid.IntRange(0, 6).Draw(t, "type")),
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
