package ferment_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/ferment"
	"example.org/maslin/internal/trial"
)

// answers is what was said to each of several questions: whole errors, and "accepted" where there was none.
type answers struct{ lines []string }

func (a *answers) add(name string, err error) {
	said := "accepted"
	if err != nil {
		said = strings.ReplaceAll(err.Error(), "\n", "\n  ")
	}
	a.lines = append(a.lines, name+": "+said)
}

// kept compares them with those of a file, in order of their names.
func (a *answers) kept(t *testing.T, file string) {
	t.Helper()
	slices.Sort(a.lines)
	trial.Kept(t, "refused/"+file, strings.Join(a.lines, "\n")+"\n")
}

// Every amount of a dough is taken up to its limit, and what lies beyond is refused with what was given and wanted.
func TestDoughsAtTheirLimits(t *testing.T) {
	var a answers
	try := func(field string, set func(b *ferment.Bulk, x float64), values ...float64) {
		for _, x := range values {
			b := good()
			set(&b, x)
			_, err := b.Estimate()
			a.add(fmt.Sprintf("%s %g", field, x), err)
		}
	}
	try("inoculation in percent", func(b *ferment.Bulk, x float64) { b.Inoculation = pct(x) }, 0.01, 0.0099, 100, 100.01)
	try("hydration in percent", func(b *ferment.Bulk, x float64) { b.Hydration, b.Salt = pct(x), pct(1) },
		30, 29.99, 300, 300.01)
	try("salt in percent", func(b *ferment.Bulk, x float64) { b.Salt, b.Hydration = pct(x), pct(200) },
		0, -0.01, 15, 15.01)
	try("salt at half as much water as flour", func(b *ferment.Bulk, x float64) { b.Salt, b.Hydration = pct(x), pct(50) },
		4, 4.01)
	try("sugar in percent", func(b *ferment.Bulk, x float64) { b.Sugar = pct(x) }, -0.01, 40, 40.01)
	try("sugar in percent, extrapolating", func(b *ferment.Bulk, x float64) { b.Sugar, b.Extrapolate = pct(x), true },
		100, 100.01)
	try("whole grain in percent", func(b *ferment.Bulk, x float64) { b.WholeGrain = pct(x) }, -0.01, 100, 100.01)
	try("rise in percent", func(b *ferment.Bulk, x float64) { b.Rise = pct(x) }, 1, 0.99, 300, 300.01)
	try("altitude in meters", func(b *ferment.Bulk, x float64) { b.Altitude = quantity.Meters(x) },
		-500, -500.1, 9000, 9000.1)
	minutes := func(b *ferment.Bulk, x float64) { b.OwnHeat = quantity.Elapsed(x * float64(time.Minute)) }
	try("own heat in minutes", minutes, 1, 0.99, 7*24*60, 7*24*60+1)
	try("own heat in minutes, of a dough with a probe in it", func(b *ferment.Bulk, x float64) {
		h, err := ferment.Readings{Points: []ferment.Knot{{Temperature: quantity.Celsius(24)}}}.History()
		if err != nil {
			t.Fatal(err)
		}
		b.History = h
		minutes(b, x)
	}, 0, 90)
	levain := ferment.Ripening{Seed: pct(20), Hydration: pct(100), History: ferment.Constant(quantity.Celsius(25))}
	handOn := func(of ferment.Ripening) func(b *ferment.Bulk, x float64) {
		return func(b *ferment.Bulk, x float64) {
			b.Preferments = []ferment.HandedOn{{Flour: pct(x), Of: of, Ripened: quantity.Elapsed(6 * time.Hour)}}
		}
	}
	try("flour in a levain that is handed on, beside 10 percent", handOn(levain), 0.01, 0.0099, 90, 90.01)
	try("flour in a levain that is handed on, alone", func(b *ferment.Bulk, x float64) {
		b.Inoculation = quantity.Percent{}
		handOn(levain)(b, x)
	}, 15)
	try("flour in a preferment of another law", handOn(func() ferment.Ripening {
		other := levain
		other.Law = ferment.GasBalance().With(ferment.Rivals{Gas: ferment.TradeQ10()})
		return other
	}()), 15)
	try("days a preferment ripened", func(b *ferment.Bulk, x float64) {
		handOn(levain)(b, 15)
		b.Preferments[0].Ripened = quantity.Elapsed(x * 24 * float64(time.Hour))
	}, 0, -0.001, 30, 30.001)
	a.kept(t, "dough.txt")
}

// A levain in percent of the other flour is taken up to ten times of it, stiff or thin.
func TestLevainsAtTheirLimits(t *testing.T) {
	var a answers
	for _, x := range [][2]float64{{0, 100}, {-0.01, 100}, {1000, 100}, {1000.01, 100}, {20, 30}, {20, 29.99}, {20, 500},
		{20, 500.01}} {
		got, err := ferment.LevainPercent{Levain: pct(x[0]), Hydration: pct(x[1])}.Prefermented()
		a.add(fmt.Sprintf("%g %% at %g %%", x[0], x[1]), err)
		flour := x[0] / (100 + x[1]) // L/(1 + H) of the other flour
		if want := 100 * flour / (1 + flour); err == nil && !(math.Abs(got.Points()-want) <= 1e-6) {
			t.Errorf("%v: %v, want %v", x, got, want)
		}
	}
	a.kept(t, "levain.txt")
}

// A curve of one's own says what is wrong with it, and one that is not among the named ones how these are called.
func TestCurvesThatAreRefused(t *testing.T) {
	var a answers
	steady := func(float64) float64 { return 0.3 }
	for name, about := range map[string]ferment.About{
		"named": {Name: "own", Low: 5, High: 30}, "unnamed": {Low: 5, High: 30},
		"of no width":  {Name: "own", Low: 5, High: 5},
		"turned round": {Name: "own", Low: 5, High: 4.9}, "as wide as can be": {Name: "own", Low: -25, High: 60},
		"wider": {Name: "own", Low: -25.1, High: 60.1},
	} {
		_, err := ferment.NewCurve(about, steady)
		a.add("a curve "+name, err)
	}
	own, err := ferment.NewCurve(ferment.About{Name: "own", Low: 5, High: 30}, steady)
	if err != nil {
		t.Fatal(err)
	}
	for name, rate := range map[string]func(float64) float64{
		"negative in the cold": func(c float64) float64 { return c }, "none": nil,
		"without end": func(c float64) float64 { return math.Inf(1) },
	} {
		_, err := ferment.NewCurve(own.About(), rate)
		a.add("a rate "+name, err)
	}
	_, err = own.MarshalText()
	a.add("writing one's own", err)
	c := own
	a.add("reading another", c.UnmarshalText([]byte("my-curve")))
	a.add("reading none", c.UnmarshalText(nil))
	if !c.IsZero() {
		t.Errorf("an empty key is read as %v", c)
	}
	for _, named := range ferment.Curves() {
		text, err := named.MarshalText()
		if err != nil || string(text) != named.About().Key || c.UnmarshalText(text) != nil || c != named {
			t.Errorf("%v is written as %s and read as %v, %v", named, text, c, err)
		}
	}
	table := func(curves, temperatures int) error {
		in := ferment.CurveTable{}
		for range curves {
			in.Curves = append(in.Curves, own)
		}
		for i := range temperatures {
			in.Temperatures = append(in.Temperatures, quantity.Celsius(10+float64(i)/1000))
		}
		_, err := in.Rates()
		return err
	}
	a.add("a table of 100 curves", table(100, 1))
	a.add("a table of 101 curves", table(101, 1))
	a.add("a table of 10,001 temperatures", table(1, 10_001))
	warm := ferment.Constant(quantity.Celsius(27))
	huge, err := ferment.NewCurve(own.About(), func(c float64) float64 { return math.MaxFloat64 })
	if err != nil {
		t.Fatal(err)
	}
	_, err = huge.Dose(warm, 0, 10*time.Hour)
	a.add("a dose without end", err)
	b := good()
	b.Inoculation, b.Yeast, b.History = quantity.Percent{}, ferment.Yeast{Kind: ferment.FreshYeast, Amount: pct(1)}, warm
	still, err := ferment.NewCurve(own.About(), func(c float64) float64 { return math.Abs(c - 27) })
	if err != nil {
		t.Fatal(err)
	}
	_, err = ferment.DoseLaw{Yeast: still}.Ready(b)
	a.add("the older law with a yeast that stands still at 27 °C", err)
	_, err = ferment.DoseLaw{}.Ready(b)
	a.add("the older law without a yeast", err)
	_, err = ferment.DoseLaw{}.Ready(good())
	a.add("the older law without a levain", err)
	b.Yeast = ferment.Yeast{}
	b.Preferments = []ferment.HandedOn{{Flour: pct(20), Ripened: quantity.Elapsed(6 * time.Hour), Of: ferment.Ripening{
		Seed: pct(20), Hydration: pct(100), History: warm}}}
	_, err = ferment.DoseLaw{Levain: own}.Ready(b)
	a.add("the older law with a preferment alone", err)
	a.kept(t, "curves.txt")
}

// The flavor of a time is told from a minute on, of a levain alone, and where the curve of its yeast has an end.
func TestFlavorsThatAreRefused(t *testing.T) {
	var a answers
	for name, until := range map[string]time.Duration{"a minute": time.Minute, "59 seconds": 59 * time.Second,
		"30 days": ferment.Horizon, "30 days and a second": ferment.Horizon + time.Second} {
		_, err := estimate(t, good()).Flavor(until)
		a.add("after "+name, err)
	}
	_, err := estimate(t, yeasted(ferment.FreshYeast, 1)).Flavor(time.Hour)
	a.add("of yeast", err)
	hot := with(good(), func(b *ferment.Bulk) { b.History = corners(t, 0, 25, 9, 36.1) })
	_, err = estimate(t, hot).Flavor(10 * time.Hour)
	a.add("at 36.1 °C", err)
	_, err = ferment.Estimate{}.Flavor(0)
	a.add("of nothing", err)
	a.kept(t, "flavor.txt")
}

// What the flavor does not know is said with it, and what the salt does to the lactobacilli: from 4 % of the water on
// they do not grow, above 3 % they are held back.
func TestWhatTheFlavorDoesNotKnow(t *testing.T) {
	for salt, says := range map[float64]string{1.5: "", 1.51: "are held back", 1.99: "are held back",
		2: "do not grow at all"} {
		f, err := estimate(t, with(good(), func(b *ferment.Bulk) {
			b.Salt, b.Hydration = pct(salt), pct(50)
		})).Flavor(5 * time.Hour)
		if err != nil {
			t.Fatal(err)
		}
		want := []string{"a direction, not a pH: flour, its ash and the levain's own acid are not in it",
			"growth in laboratory medium; only the ratio carries over to dough"}
		if says != "" {
			want = append(want, fmt.Sprintf("at %.1f %% salt in the water the lactobacilli %s: they stop at 4 %%",
				100*salt/50, says))
		}
		var got []string
		for _, m := range f.Limits {
			got = append(got, m.Text(working.Reader{}))
		}
		if !slices.Equal(got, want) {
			t.Errorf("%v %% salt: %q, want %q", salt, got, want)
		}
	}
	f, err := estimate(t, with(good(), func(b *ferment.Bulk) {
		b.History = ferment.Constant(quantity.Celsius(36))
	})).Flavor(time.Hour)
	if err != nil || f.Index != 0 || f.Yeast != 0 || !(f.Lactobacilli > 0) {
		t.Errorf("at 36 °C, where the yeast does not grow: %+v, %v", f, err)
	}
}
