package ferment_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/ferment"
)

// refuses checks that an error names every path, for the reason.
func refuses(t *testing.T, err error, reason error, paths ...string) {
	t.Helper()
	if !errors.Is(err, reason) {
		t.Errorf("got %v, want %v", err, reason)
	}
	var got []string
	for _, e := range quantity.InputErrors(err) {
		got = append(got, e.GoPath)
		if len(fmt.Sprint(e.Got)) > 200 || len(e.Want.String()) > 400 {
			t.Errorf("a long error: %d bytes", len(e.Error()))
		}
	}
	for _, p := range paths {
		found := false
		for _, g := range got {
			found = found || g == p
		}
		if !found {
			t.Errorf("%v: no problem at %s among %v", err, p, got)
		}
	}
}

func TestZeroValuesAreRefused(t *testing.T) {
	_, err := ferment.Bulk{}.Estimate()
	refuses(t, err, quantity.ErrRequired, "Inoculation", "Hydration", "Rise", "History", "Law")
	_, err = ferment.Ripening{}.Ripe()
	refuses(t, err, quantity.ErrRequired, "Seed", "History", "Law")
	_, err = ferment.Proof{}.RiseBeforeShaping()
	refuses(t, err, quantity.ErrRequired, "Total", "Bulk.Inoculation", "Bulk.History", "Bulk.Law", "Stages")
	_, err = ferment.Learning{}.Learn()
	refuses(t, err, quantity.ErrRequired, "Bakes")
	_, err = ferment.Learning{Bakes: []ferment.LoggedBulk{{}, {}}}.Learn()
	refuses(t, err, quantity.ErrRequired, "Bakes[0].Bulk.Inoculation", "Bakes[1].Bulk.Law", "Bakes[1].Took")
	_, err = ferment.Curve{}.Dose(ferment.History{}, 0, 1)
	refuses(t, err, quantity.ErrRequired, "History")
	_, err = ferment.Curve{}.Dose(ferment.Constant(quantity.Celsius(20)), 0, 1)
	refuses(t, err, quantity.ErrRequired, "Curve")
	_, err = ferment.Readings{}.History()
	refuses(t, err, quantity.ErrRequired, "Points")
	_, err = ferment.Relaxing{}.History()
	refuses(t, err, quantity.ErrRequired, "Start", "Room.Night")
	_, err = ferment.Piece{}.History()
	refuses(t, err, quantity.ErrRequired, "Start", "Into.Night")
	_, err = ferment.Join()
	refuses(t, err, quantity.ErrRequired, "Parts")
	_, err = ferment.Join(ferment.Stretch{}, ferment.Stretch{})
	refuses(t, err, quantity.ErrRequired, "[0].History", "[1].History")
	_, err = ferment.Baranyi{}.After(1)
	refuses(t, err, quantity.ErrInconsistent, "Max")
	_, err = ferment.Estimate{}.RiseAt(time.Hour)
	refuses(t, err, quantity.ErrRequired, "Estimate")
	_, err = ferment.Estimate{}.Update(ferment.RiseReading{At: quantity.Elapsed(time.Hour)})
	refuses(t, err, quantity.ErrRequired, "Estimate")
	_, err = ferment.Estimate{}.Flavor(time.Hour)
	refuses(t, err, quantity.ErrRequired, "Estimate")
	if all, _, err := (ferment.Lesson{}).Reviews(); all != nil || err != nil {
		t.Error(all, err)
	}
	_, err = ferment.Bulk{}.AmountFor(time.Hour)
	refuses(t, err, quantity.ErrRequired, "History", "Rise", "Law")
	_, err = ferment.Bulk{}.HeldFor(0)
	refuses(t, err, quantity.ErrRequired, "Law")
	_, err = ferment.Bulk{}.StartFor(time.Hour, ferment.Relaxing{})
	refuses(t, err, quantity.ErrRequired, "Law", "Drift.Room.Night")
	_, err = ferment.Bulk{}.RoomFor(time.Hour, ferment.Relaxing{})
	refuses(t, err, quantity.ErrRequired, "Law", "Drift.Start")
	_, err = ferment.CurveTable{Curves: []ferment.Curve{{}}}.Rates()
	refuses(t, err, quantity.ErrRequired, "Curves[0]", "Temperatures")
	_, err = ferment.NewCurve(ferment.About{}, nil)
	refuses(t, err, quantity.ErrRequired, "Rate")
	_, err = ferment.NewCurve(ferment.About{Name: "own", Low: 5, High: 2}, math.Log)
	refuses(t, err, quantity.ErrOutOfRange, "About.High", "Rate")
	_, err = ferment.Room{}.At(-1)
	refuses(t, err, quantity.ErrOutOfRange, "Night", "After")
	_, err = ferment.ParseReadings("")
	refuses(t, err, quantity.ErrRequired, "Text")
	for _, text := range []string{
		ferment.Estimate{}.String(), ferment.History{}.String(), ferment.Culture{}.String(), ferment.Lesson{}.String(),
		ferment.ShapeTarget{}.String(),
		ferment.Ripeness{}.String(), ferment.AmountAnswer{}.String(), ferment.TemperatureAnswer{}.String(),
		ferment.Progress{}.String(),
		ferment.Estimate{}.Working().Text(80), ferment.Ripeness{}.Working().Text(80), ferment.Review{}.String(),
		ferment.Yeast{}.String(),
	} {
		if strings.Contains(text, "%!") || strings.Contains(text, "NaN") {
			t.Error(text)
		}
	}
	if ferment.Estimate.RiseCurve(ferment.Estimate{}, 3) != nil || len(ferment.Estimate{}.Cautions()) != 0 ||
		(ferment.Estimate{}).Reached() || (ferment.Estimate{}).RestsOn() != nil {
		t.Error("the zero estimate says something")
	}
	_ = ferment.Ripeness{}.Cautions()
	_ = ferment.Estimate{}.Ready()
}

func good() ferment.Bulk {
	return ferment.Bulk{Inoculation: pct(10), Salt: pct(2), Hydration: pct(72), Rise: pct(75),
		History: ferment.Constant(quantity.Celsius(23)), Law: ferment.GasBalance()}
}

func TestImpossibleDoughsAreRefused(t *testing.T) {
	for name, x := range map[string]struct {
		change func(*ferment.Bulk)
		reason error
		path   string
	}{
		"no levain": {func(b *ferment.Bulk) { b.Inoculation = quantity.Percent{} }, quantity.ErrRequired,
			"Inoculation"},
		"more than all":   {func(b *ferment.Bulk) { b.Inoculation = pct(101) }, quantity.ErrOutOfRange, "Inoculation"},
		"negative levain": {func(b *ferment.Bulk) { b.Inoculation = pct(-5) }, quantity.ErrOutOfRange, "Inoculation"},
		"invalid levain": {func(b *ferment.Bulk) { b.Inoculation = pct(math.NaN()) }, quantity.ErrOutOfRange,
			"Inoculation"},
		"salt above tolerance": {func(b *ferment.Bulk) { b.Salt = pct(6) }, quantity.ErrOutOfRange, "Salt"},
		"infinite salt":        {func(b *ferment.Bulk) { b.Salt = pct(math.Inf(1)) }, quantity.ErrOutOfRange, "Salt"},
		"no rise":              {func(b *ferment.Bulk) { b.Rise = quantity.Percent{} }, quantity.ErrRequired, "Rise"},
		"huge rise":            {func(b *ferment.Bulk) { b.Rise = pct(1e9) }, quantity.ErrOutOfRange, "Rise"},
		"whole grain over all": {func(b *ferment.Bulk) { b.WholeGrain = pct(120) }, quantity.ErrOutOfRange, "WholeGrain"},
		"boiling dough": {func(b *ferment.Bulk) { b.History = ferment.Constant(quantity.Celsius(100)) },
			quantity.ErrRequired, "History"},
		"unknown kneading":      {func(b *ferment.Bulk) { b.Kneading = 9 }, quantity.ErrOutOfRange, "Kneading"},
		"dry flour":             {func(b *ferment.Bulk) { b.Hydration = pct(20) }, quantity.ErrOutOfRange, "Hydration"},
		"no water":              {func(b *ferment.Bulk) { b.Hydration = pct(0) }, quantity.ErrRequired, "Hydration"},
		"half sugar":            {func(b *ferment.Bulk) { b.Sugar = pct(60) }, quantity.ErrModelRange, "Sugar"},
		"more sugar than flour": {func(b *ferment.Bulk) { b.Sugar = pct(160) }, quantity.ErrOutOfRange, "Sugar"},
		"in space": {func(b *ferment.Bulk) { b.Altitude = quantity.Meters(20_000) }, quantity.ErrOutOfRange,
			"Altitude"},
		"half yeast": {func(b *ferment.Bulk) {
			b.Yeast = ferment.Yeast{Kind: ferment.FreshYeast,
				Amount: pct(50)}
		}, quantity.ErrOutOfRange, "Yeast.Amount"},
		"no law": {func(b *ferment.Bulk) { b.Law = ferment.Law{} }, quantity.ErrRequired, "Law"},
		"above the curve": {func(b *ferment.Bulk) { b.History = ferment.Constant(quantity.Celsius(45)) },
			quantity.ErrModelRange, "History"},
		"below the curve": {func(b *ferment.Bulk) { b.History = ferment.Constant(quantity.Celsius(-10)) },
			quantity.ErrModelRange, "History"},
		"yeast without amount": {func(b *ferment.Bulk) {
			b.Inoculation = quantity.Percent{}
			b.Yeast = ferment.Yeast{Kind: ferment.FreshYeast}
		}, quantity.ErrRequired, "Yeast.Amount"},
		"unknown yeast": {func(b *ferment.Bulk) {
			b.Inoculation = quantity.Percent{}
			b.Yeast = ferment.Yeast{Kind: 17, Amount: pct(1)}
		}, quantity.ErrOutOfRange, "Yeast.Kind"},
	} {
		t.Run(name, func(t *testing.T) {
			b := good()
			x.change(&b)
			_, err := b.Estimate()
			refuses(t, err, x.reason, x.path)
		})
	}
}

func TestZwieteringHoldsItsOptimum(t *testing.T) {
	for _, x := range [][2]float64{{20, 0}, {25, 0}, {30, 0.5}, {35, 1}, {50, 1}} {
		if g := ferment.ZwieteringGamma(x[0], 25, 35, 1); !(math.Abs(g-x[1]) <= 1e-12) {
			t.Errorf("at %v: %v, want %v", x[0], g, x[1])
		}
	}
}

// What the law's own curves are told apart by, and what is read back.
func TestLawsComeBackByTheirKey(t *testing.T) {
	rivals := ferment.Rivals{Levain: ferment.GanzleYeastHeld(), Yeast: ferment.SaccharomycesCardinal(),
		Gas: ferment.TradeQ10()}
	for _, law := range []ferment.Law{{}, ferment.GasBalance(), ferment.GasBalance().With(rivals),
		ferment.GasBalance().With(ferment.Rivals{Gas: rivals.Gas})} {
		text, err := law.MarshalText()
		if err != nil {
			t.Fatal(err)
		}
		var back ferment.Law
		if err := back.UnmarshalText(text); err != nil || back != law {
			t.Errorf("%q comes back as %v, %v", text, back, err)
		}
	}
	for _, text := range []string{"gas", "gas-balance levain", "gas-balance levain=unknown",
		"gas-balance gas=trade-q10 gas=trade-q10", "gas-balance dose=trade-q10"} {
		var law ferment.Law
		refuses(t, law.UnmarshalText([]byte(text)), quantity.ErrOutOfRange, "")
	}
	plain, rival := good(), good()
	rival.Law = ferment.GasBalance().With(rivals)
	rival.History = ferment.Constant(quantity.Celsius(23))
	if a, b := estimate(t, plain).Ready(), estimate(t, rival).Ready(); a.Likely == b.Likely {
		t.Errorf("rival curves change nothing: %v", a)
	}
}

// A poolish hands its yeast on: more of it, and longer ripened, makes a faster dough; sugar slows it, altitude and
// osmotolerant yeast hurry it.
func TestWhatElseReachesTheClock(t *testing.T) {
	poolish := func(share float64, ripened time.Duration) ferment.Bulk {
		b := good()
		b.Inoculation = quantity.Percent{}
		b.Preferments = []ferment.HandedOn{{Flour: pct(share), Ripened: quantity.Elapsed(ripened), Of: ferment.Ripening{
			Yeast: ferment.Yeast{
				Kind:   ferment.InstantYeast,
				Amount: pct(0.1),
			}, History: ferment.Constant(quantity.Celsius(20)),
		}}}
		return b
	}
	likely := func(b ferment.Bulk) time.Duration { return estimate(t, b).Ready().Likely }
	if a, b, c := likely(poolish(20, 4*time.Hour)), likely(poolish(20, 12*time.Hour)), likely(poolish(40,
		12*time.Hour)); !(a > b && b > c) {
		t.Errorf("a little, longer, more: %v, %v, %v", a, b, c)
	}
	sweet := good()
	sweet.Inoculation, sweet.Yeast = quantity.Percent{}, ferment.Yeast{Kind: ferment.InstantYeast, Amount: pct(1)}
	plain := likely(sweet)
	sweet.Sugar = pct(15)
	slow := likely(sweet)
	sweet.Yeast.Kind = ferment.OsmotolerantYeast
	helped := likely(sweet)
	sweet.Altitude = quantity.Meters(1150)
	high := likely(sweet)
	if !(plain < helped && helped < slow && high < helped) {
		t.Errorf("plain %v, sweet %v, with yeast for it %v, in the mountains %v", plain, slow, helped, high)
	}
	warm := good()
	warm.Rise = pct(150)
	cool := likely(warm)
	warm.OwnHeat = quantity.Elapsed(8 * time.Hour)
	if own := likely(warm); !(own < cool) {
		t.Errorf("its own heat makes no difference: %v, %v", own, cool)
	}
	bad := poolish(20, time.Hour)
	bad.Preferments[0].Flour, bad.Preferments[0].Of.History = pct(101), ferment.History{}
	_, err := bad.Estimate()
	refuses(t, err, quantity.ErrOutOfRange, "Preferments[0].Flour")
	refuses(t, err, quantity.ErrRequired, "Preferments[0].Of.History")
}

// Inputs and what is kept come back equal from JSON.
func TestInputsComeBackFromJSON(t *testing.T) {
	b := good()
	b.Yeast, b.Sugar, b.Altitude = ferment.Yeast{
		Kind:   ferment.FreshYeast,
		Amount: pct(0.3),
	}, pct(4), quantity.Meters(1150)
	joined, err := ferment.Join(ferment.Stretch{History: b.History, For: quantity.Elapsed(time.Hour)},
		ferment.Stretch{History: ferment.Constant(quantity.Celsius(5))})
	if err != nil {
		t.Fatal(err)
	}
	b.History = joined
	for _, in := range []any{
		b, ferment.LoggedBulk{Bulk: b, Took: quantity.Elapsed(3 * time.Hour)}, estimate(t, b),
		ferment.Proof{Bulk: b, Bench: quantity.Elapsed(time.Hour), Total: pct(80)},
	} {
		text, err := json.Marshal(in)
		if err != nil {
			t.Fatal(err)
		}
		back := reflect.New(reflect.TypeOf(in))
		if err := json.Unmarshal(text, back.Interface()); err != nil {
			t.Fatalf("%T: %v", in, err)
		}
		again, err := json.Marshal(back.Elem().Interface())
		if err != nil || string(again) != string(text) {
			t.Errorf("%T comes back as\n%s, was\n%s (%v)", in, again, text, err)
		}
	}
	again, err := ferment.FromKnots(joined.Knots()...)
	if err != nil || !slices.Equal(again.Knots(), joined.Knots()) {
		t.Errorf("%v comes back from its knots as %v, %v", joined, again, err)
	}
}

func TestBrokenCurvesAreRefused(t *testing.T) {
	for _, x := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), -1} {
		_, err := ferment.NewCurve(ferment.About{Name: "broken", Low: 0, High: 40}, func(float64) float64 { return x })
		refuses(t, err, quantity.ErrOutOfRange, "Rate")
	}
}

func TestExtrapolationIsSaid(t *testing.T) {
	b := good()
	b.History = ferment.Constant(quantity.Celsius(-3))
	b.Extrapolate = true
	e, err := b.Estimate()
	if err != nil {
		t.Fatal(err)
	}
	if e.Reached() {
		t.Errorf("no dough rises at −3 °C: %v", e)
	}
	text := working.Join(e.Notes(), "\n").String()
	for _, want := range []string{"extrapolated", "not ready within 30 days"} {
		if !strings.Contains(text, want) {
			t.Errorf("notes do not say %q:\n%s", want, text)
		}
	}
	if r := e.Ready(); r.Likely != ferment.Horizon || !strings.Contains(e.String(), "not within 30 days") {
		t.Errorf("%v", e)
	}
}

func TestReadingsThatCannotBe(t *testing.T) {
	c := quantity.Celsius
	for name, x := range map[string]struct {
		points []ferment.Knot
		reason error
		path   string
	}{
		"out of order": {[]ferment.Knot{{quantity.Elapsed(time.Hour), c(20)}, {0, c(20)}}, quantity.ErrInconsistent,
			"Points[1].At"},
		"twice": {[]ferment.Knot{{0, c(20)}, {0, c(21)}}, quantity.ErrInconsistent, "Points[1].At"},
		"a gap": {[]ferment.Knot{{0, c(20)}, {quantity.Elapsed(5 * time.Hour), c(21)}}, quantity.ErrInconsistent,
			"Points[1].At"},
		"NaN":          {[]ferment.Knot{{0, c(math.NaN())}}, quantity.ErrRequired, "Points[0].Temperature"},
		"before time":  {[]ferment.Knot{{quantity.Elapsed(-time.Hour), c(20)}}, quantity.ErrOutOfRange, "Points[0].At"},
		"after a year": {[]ferment.Knot{{0, c(20)}, {math.MaxInt64, c(20)}}, quantity.ErrOutOfRange, "Points[1].At"},
		"in an oven":   {[]ferment.Knot{{0, c(200)}}, quantity.ErrOutOfRange, "Points[0].Temperature"},
		"Fahrenheit": {[]ferment.Knot{{0, c(76)}, {quantity.Elapsed(time.Hour), c(74)}}, quantity.ErrOutOfRange,
			"Points[0].Temperature"},
		"liquid helium": {[]ferment.Knot{{0, quantity.Kelvin(4)}}, quantity.ErrOutOfRange, "Points[0].Temperature"},
		"the first late": {[]ferment.Knot{{quantity.Elapsed(400 * 24 * time.Hour), c(20)}}, quantity.ErrOutOfRange,
			"Points[0].At"},
	} {
		t.Run(name, func(t *testing.T) {
			_, err := ferment.Readings{Points: x.points}.History()
			refuses(t, err, x.reason, x.path)
			if name == "Fahrenheit" && !strings.Contains(err.Error(), "look like °F") {
				t.Errorf("does not suspect Fahrenheit: %v", err)
			}
		})
	}
	// A refrigerator in °F passes for a hot dough in °C: allowed, but said.
	h, err := ferment.Readings{Points: []ferment.Knot{{0, c(40)}, {quantity.Elapsed(time.Hour), c(38)}}}.History()
	if err != nil || len(h.Notes()) != 1 || !strings.Contains(h.Notes()[0].String(), "°F") {
		t.Errorf("%v, %v", h.Notes(), err)
	}
	// A million faults are not a million errors.
	many := make([]ferment.Knot, 100_000)
	_, err = ferment.Readings{Points: many}.History()
	if n := len(quantity.InputErrors(err)); n == 0 || n > 50 {
		t.Errorf("%d problems", n)
	}
}

func TestHistoryShorterThanTheAnswerIsSaid(t *testing.T) {
	h, err := ferment.Readings{Points: []ferment.Knot{{0, quantity.Celsius(25)},
		{quantity.Elapsed(2 * time.Hour), quantity.Celsius(23)}}}.History()
	if err != nil {
		t.Fatal(err)
	}
	b := good()
	b.History = h
	e, err := b.Estimate()
	if err != nil {
		t.Fatal(err)
	}
	if text := working.Join(e.Notes(), "\n").String(); !strings.Contains(text, "the history ends after 2h") ||
		!strings.Contains(text, "23.0 °C, is held") {
		t.Error(text)
	}
}

func TestFieldsOfHistoriesAreChecked(t *testing.T) {
	c := quantity.Celsius
	_, err := ferment.Relaxing{Start: c(25), Room: ferment.Room{Night: c(20), Day: c(99),
		WarmestAt: quantity.Elapsed(25 * time.Hour), Starts: -1}, TimeConstant: quantity.Elapsed(time.Second)}.History()
	refuses(t, err, quantity.ErrOutOfRange, "Room.Day", "Room.WarmestAt", "Room.Starts", "TimeConstant")
	_, err = ferment.Piece{Mass: quantity.Kilograms(1000), Form: 9, Start: c(25), Into: ferment.Room{Night: c(4)},
		Exposure: 9, Height: quantity.Meters(3), Surface: math.NaN()}.History()
	refuses(t, err, quantity.ErrOutOfRange, "Mass", "Form", "Exposure", "Height", "Surface")
	_, err = ferment.Join(ferment.Stretch{History: ferment.Constant(c(20)), For: quantity.Elapsed(-time.Hour)},
		ferment.Stretch{History: ferment.Constant(c(20))})
	refuses(t, err, quantity.ErrOutOfRange, "[0].For")
	h := ferment.Constant(c(20))
	_, err = h.Mean(2*time.Hour, time.Hour)
	refuses(t, err, quantity.ErrOutOfRange, "To")
	_, err = h.Shift(-time.Hour)
	refuses(t, err, quantity.ErrOutOfRange, "From")
	_, err = ferment.GanzleYeast().Dose(h, 0, math.MaxInt64)
	refuses(t, err, quantity.ErrOutOfRange, "To")
}

func TestCurvesOfTheCaller(t *testing.T) {
	_, err := ferment.Cardinal{Min: math.NaN(), Opt: 1e9, Max: math.Inf(1), Rate: -1}.Curve()
	refuses(t, err, quantity.ErrOutOfRange, "Min", "Opt", "Max", "Rate")
	_, err = ferment.Cardinal{Min: 0, Opt: 10, Max: 40, Rate: 1}.Curve()
	refuses(t, err, quantity.ErrOutOfRange, "Opt")
	_, err = ferment.SquareRoot{Min: 40, Max: 5, B: math.Inf(1), C: -1}.Curve()
	refuses(t, err, quantity.ErrOutOfRange, "B", "C")
	_, err = ferment.SquareRoot{Min: 40, Max: 5, B: 1}.Curve()
	refuses(t, err, quantity.ErrOutOfRange, "Max")
	_, err = ferment.ConstantQ10{Q: math.NaN(), Low: 10, High: 5}.Curve()
	refuses(t, err, quantity.ErrOutOfRange, "Q", "Rate")
	_, err = ferment.ConstantQ10{Q: 2, Rate: 1, Low: 10, High: 5}.Curve()
	refuses(t, err, quantity.ErrOutOfRange, "High")
	for name, make := range map[string]func() (ferment.Curve, error){
		"cardinal":    ferment.Cardinal{Name: "own", Min: 3, Opt: 32, Max: 45, Rate: 0.4}.Curve,
		"square root": ferment.SquareRoot{Name: "own", Min: 3, Max: 45, B: 0.03, C: 0.2}.Curve,
		"short":       ferment.SquareRoot{Name: "own", Min: 3, Max: 45, B: 0.03}.Curve,
		"without end": ferment.SquareRoot{Name: "own", Min: 3, B: 0.03}.Curve,
		"q10":         ferment.ConstantQ10{Name: "own", Q: 2.5, Rate: 0.3, Reference: 24, Low: 15, High: 30}.Curve,
		"q of one":    ferment.ConstantQ10{Name: "own", Q: 1, Rate: 0.3, Reference: 24, Low: 15, High: 30}.Curve,
	} {
		c, err := make()
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		b := good()
		b.Law = ferment.GasBalance().With(ferment.Rivals{Levain: c})
		b.History = ferment.Constant(quantity.Celsius(25))
		e, err := b.Estimate()
		if err != nil || !e.Reached() {
			t.Errorf("%s: %v, %v", name, e, err)
		}
	}
	for _, x := range []float64{math.NaN(), math.Inf(1), -1, 0} {
		if y := ferment.WorkFromQ0(x); !math.IsNaN(y) && !math.IsInf(x, 1) {
			t.Errorf("work from %v: %v", x, y)
		}
		if _, err := (ferment.Baranyi{Start: x, Max: 10}).After(x); x != 0 && err == nil {
			t.Errorf("Baranyi takes %v", x)
		}
		if _, _, err := (ferment.Baranyi{Start: 0, Max: 10}).DoseTo(x); (math.IsNaN(x) || math.IsInf(x, 0)) &&
			err == nil {
			t.Errorf("DoseTo takes %v", x)
		}
		if _, ok := (ferment.Curve{}).DoublingTime(quantity.Celsius(x)); ok {
			t.Error("a doubling time of nothing")
		}
	}
	if y, err := (ferment.Baranyi{Start: -50, Max: 100, Work: 100}).After(10_000); err != nil ||
		!(math.Abs(y-100) <= 1e-9) {
		t.Errorf("the plateau is %v, %v", y, err)
	}
}

func TestUpdatesThatCannotBe(t *testing.T) {
	e, err := good().Estimate()
	if err != nil {
		t.Fatal(err)
	}
	_, err = e.Update()
	refuses(t, err, quantity.ErrRequired, "Readings")
	_, err = e.Update(ferment.RiseReading{At: 0, Rise: pct(-50), Error: pct(90)},
		ferment.RiseReading{At: math.MaxInt64, Rise: pct(math.NaN())})
	refuses(t, err, quantity.ErrOutOfRange, "Readings[0].At", "Readings[0].Rise", "Readings[0].Error", "Readings[1].At",
		"Readings[1].Rise")
	_, err = e.Update(ferment.RiseReading{At: quantity.Elapsed(2 * time.Hour), Rise: pct(5)},
		ferment.RiseReading{At: quantity.Elapsed(time.Hour), Rise: pct(5)})
	refuses(t, err, quantity.ErrInconsistent, "Readings[1].At")
	p, err := e.Update(ferment.RiseReading{At: quantity.Elapsed(2 * time.Hour), Rise: pct(5)})
	if err != nil {
		t.Fatal(err)
	}
	_, err = p.Now.Update(ferment.RiseReading{At: quantity.Elapsed(time.Hour), Rise: pct(5)})
	refuses(t, err, quantity.ErrInconsistent, "Readings[0].At")
	// The wildest readings still give an answer in order.
	for _, x := range []ferment.RiseReading{{At: quantity.Elapsed(time.Second), Rise: pct(300)},
		{At: quantity.Elapsed(700 * time.Hour), Rise: pct(-20)}, {At: quantity.Elapsed(700 * time.Hour), Rise: pct(300),
			Error: pct(0.1)}, {At: quantity.Elapsed(time.Minute), Rise: pct(0), Error: pct(0.1)}} {
		p, err := e.Update(x)
		if err != nil {
			t.Errorf("%+v: %v", x, err)
			continue
		}
		if r := p.Now.Ready(); !(r.Early <= r.Likely && r.Likely <= r.Late) || r.Early < 0 {
			t.Errorf("%+v: %v", x, r)
		}
	}
	wild, err := e.Update(ferment.RiseReading{At: quantity.Elapsed(4 * time.Hour), Rise: pct(300), Error: pct(1)})
	if err != nil || !strings.Contains(working.Join(wild.Now.Notes(), "\n").String(),
		"far from what the dough was expected to do") {
		t.Errorf("%v, %v", wild.Now.Notes(), err)
	}
	_, err = ferment.Heights{Start: quantity.Length{}, Now: quantity.Meters(9)}.Rise()
	refuses(t, err, quantity.ErrOutOfRange, "Start", "Now")
}
