package ferment_test

import (
	"math"
	"strconv"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/ferment"
	"example.org/maslin/internal/numeric"
)

// A curve of the caller's is looked at up to 60 °C and from −25 °C on, both ends included, and where a law compares it,
// at 27 °C.
func TestWhereCurvesOfTheCallerAreLookedAt(t *testing.T) {
	about := ferment.About{Name: "own", Low: 0, High: 40}
	for at, refused := range map[float64]bool{-25: true, 60: true, -26: false, 61: false, 20: true} {
		_, err := ferment.NewCurve(about, func(c float64) float64 {
			if c == at {
				return -1
			}
			return 0.1
		})
		if (err != nil) != refused {
			t.Errorf("negative at %v °C only: %v", at, err)
		}
	}
	still, err := ferment.NewCurve(about, func(c float64) float64 { return math.Abs(c - 27) })
	if err != nil {
		t.Fatal(err)
	}
	b := good()
	b.Law = ferment.GasBalance().With(ferment.Rivals{Gas: still})
	if _, err := b.Estimate(); err == nil || !strings.Contains(err.Error(), " 0/h at 27 °C") {
		t.Errorf("a curve that stands still at 27 °C: %v", err)
	}
}

// A curve may be used from 3 °C below where growth begins.
func TestWhereACurveBeginsToBeUsed(t *testing.T) {
	root, err := ferment.SquareRoot{Name: "r", Min: 4, Max: 36, B: 0.03, C: 0.2}.Curve()
	if err != nil {
		t.Fatal(err)
	}
	cardinal, err := ferment.Cardinal{Name: "c", Min: 4, Opt: 30, Max: 40, Rate: 0.4}.Curve()
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []ferment.Curve{root, cardinal} {
		if c.About().Low != 1 || c.Rate(3.9) != 0 || c.Rate(4.1) <= 0 {
			t.Errorf("%v: from %v °C", c, c.About().Low)
		}
	}
	cold, err := ferment.SquareRoot{Name: "cold", Min: -24, Max: 36, B: 0.03}.Curve()
	if err != nil || cold.About().Low != -25 {
		t.Errorf("from %v °C, %v", cold.About().Low, err)
	}
}

// From 33 to 110 as they stand readings are taken for °F, both ends included.
func TestReadingsTakenForFahrenheit(t *testing.T) {
	for _, c := range []struct {
		celsius []float64
		suspect bool
	}{{[]float64{76, 110}, true}, {[]float64{76, 110.1}, false}, {[]float64{76, 33}, true},
		{[]float64{76, 32.9}, false}} {
		var points []ferment.Knot
		for i, x := range c.celsius {
			points = append(points, ferment.Knot{At: quantity.Elapsed(time.Duration(i) * time.Hour),
				Temperature: quantity.Celsius(x)})
		}
		_, err := ferment.Readings{Points: points}.History()
		if err == nil || strings.Contains(err.Error(), "look like °F") != c.suspect {
			t.Errorf("%v: %v", c.celsius, err)
		}
	}
}

// A dough that goes into the cold needs no reading for its shaping to be found.
func TestShapingIsAskedWithoutReadings(t *testing.T) {
	a := asked()
	a.Cold = &ferment.Proof{Stages: []ferment.Piece{{Mass: quantity.Grams(900), Form: ferment.Round,
		Into: ferment.Room{Night: quantity.Celsius(4)}, Exposure: ferment.Refrigerator,
		For: quantity.Elapsed(12 * time.Hour)}}}
	got, err := a.Answer()
	if err != nil || got.Shape == nil || !got.Shape.Feasible || got.Seen != nil {
		t.Fatalf("%+v, %v", got.Shape, err)
	}
	cold := *a.Cold
	cold.Bulk, cold.Total = a.Bulk, a.Bulk.Rise
	alone, err := cold.RiseBeforeShaping()
	if err != nil || alone.Rise != got.Shape.Rise || alone.Shape.Ready() != got.Shape.Shape.Ready() {
		t.Errorf("%v, and asked with the dough %v, %v", alone, got.Shape, err)
	}
}

// The share of the yeast in a dough with both is a percentage of the two: nearly none beside much levain, nearly all
// beside a trace, and the more the more yeast there is.
func TestTheShareOfTheYeastIsTold(t *testing.T) {
	const before, after = "the yeast being ", " % of the two"
	share := func(levain, yeast float64) float64 {
		for _, m := range estimate(t, both(levain, yeast)).RestsOn() {
			if _, rest, ok := strings.Cut(m.String(), before); ok {
				number, _, _ := strings.Cut(rest, after)
				x, err := strconv.ParseFloat(number, 64)
				if err != nil {
					t.Fatal(err)
				}
				return x
			}
		}
		t.Fatal("not told")
		return 0
	}
	little, some, most := share(40, 0.005), share(10, 0.2), share(0.1, 4)
	if !(little >= 0 && little < 10 && little < some && some < most && most > 90 && most <= 100) {
		t.Errorf("%v %%, %v %%, %v %% of the cells are the yeast's", little, some, most)
	}
}

// In words growth is what μ makes of the cells in an hour: e^μ − 1, told in whole percent.
func TestGrowthInWordsIsThatOfTheLine(t *testing.T) {
	for _, celsius := range []float64{12, 18, 23, 28} {
		levain, yeast := good(), good()
		yeast.Inoculation, yeast.Yeast = quantity.Percent{}, ferment.Yeast{Kind: ferment.FreshYeast, Amount: pct(1)}
		for _, b := range []ferment.Bulk{levain, yeast} {
			b.History = ferment.Constant(quantity.Celsius(celsius))
			w := estimate(t, b).Working()
			words := working.Telling{Level: working.InWords, Width: 2000}.Text(w)
			_, rest, told := strings.Cut(words, "°C there is ")
			said, err := strconv.ParseFloat(strings.Fields(rest + " x")[0], 64)
			if !told || err != nil {
				t.Fatalf("no growth in %s", words)
			}
			for _, l := range w.Lines(working.Reader{}) {
				if l.Symbol != "μ" {
					continue
				}
				mu, err := strconv.ParseFloat(strings.Fields(l.Value)[0], 64)
				if want := 100 * math.Expm1(mu); err != nil || !(math.Abs(said-want) <= 0.51) {
					t.Errorf("at %v °C %v %% in words, %v by μ = %s", celsius, said, want, l.Value)
				}
			}
		}
	}
}

// The page of a levain's dough says which way its flavor leans: its two yeasts are compared by the doses of their
// curves, and 5 of 100 is the least that is worth a word.
func TestThePageSaysWhichWayTheFlavorLeans(t *testing.T) {
	for celsius, want := range map[float64]string{15: "", 20: "", 24: "leans neither", 27: "", 31: "leans to acid"} {
		b := good()
		b.History = ferment.Constant(quantity.Celsius(celsius))
		lean := func(at float64) float64 {
			return ferment.GanzleLactobacilli().Rate(at) / ferment.GanzleYeast().Rate(at)
		}
		if want == "" {
			switch index := 100 * lean(celsius) / lean(24); {
			case index > 105:
				want = "leans to acid"
			case index < 95:
				want = "leans to mild"
			default:
				want = "leans neither"
			}
		}
		page := estimate(t, b).Report()
		tells(t, told(page, "know"), want, "go by the dough")
	}
	yeast := good()
	yeast.Inoculation, yeast.Yeast = quantity.Percent{}, ferment.Yeast{Kind: ferment.FreshYeast, Amount: pct(1)}
	tells(t, told(estimate(t, yeast).Report(), "know"), "not leans", "go by the dough")
}

// A dose between the middles of two cells of the tabulated curves, and from and to the ends of cells, is the integral.
func TestDosesAtTheMiddlesOfCells(t *testing.T) {
	for _, c := range []ferment.Curve{ferment.GanzleYeast(), ferment.GanzleLactobacilli()} {
		for _, x := range [][2]float64{{20.25, 24.75}, {4.75, 5.25}, {24, 24.5}, {12.25, 20}, {24.25, 24.25}} {
			h, err := ferment.FromKnots(ferment.Knot{Temperature: quantity.Celsius(x[0])},
				ferment.Knot{At: quantity.Elapsed(2 * time.Hour), Temperature: quantity.Celsius(x[1])})
			if err != nil {
				t.Fatal(err)
			}
			got, err := c.Dose(h, 0, 2*time.Hour)
			if err != nil {
				t.Fatal(err)
			}
			want, err := numeric.Integrate(func(s float64) float64 { return 2 * c.Rate(x[0]+(x[1]-x[0])*s) }, 0, 1, 1e-13)
			if err != nil && want.Bound > 1e-11 {
				t.Fatal(err)
			}
			if !(math.Abs(got-want.Value) <= 1e-9*want.Value) {
				t.Errorf("%v from %v to %v °C: %v, want %v", c, x[0], x[1], got, want.Value)
			}
		}
	}
}

// A name has at most 200 bytes.
func TestNamesOfTwoHundredBytes(t *testing.T) {
	for n, ok := range map[int]bool{200: true, 201: false} {
		_, err := ferment.Learning{Bakes: bakeLog(t, 1), Person: strings.Repeat("a", n)}.Learn()
		if (err == nil) != ok {
			t.Errorf("%d bytes: %v", n, err)
		}
	}
}

// The temperatures of a dough end at −25 and 60 °C, and those are among them.
func TestTheEndsOfWhatADoughIs(t *testing.T) {
	for c, ok := range map[float64]bool{60: true, 60.2: false, -25: true, -25.2: false} {
		at := quantity.Celsius(c)
		_, knots := ferment.FromKnots(ferment.Knot{Temperature: at})
		_, read := ferment.Readings{Points: []ferment.Knot{{Temperature: at}}}.History()
		if (knots == nil) != ok || (read == nil) != ok || ferment.Constant(at).IsZero() == ok {
			t.Errorf("%v °C: %v, %v, %v", c, knots, read, ferment.Constant(at))
		}
	}
}

// A curve that is the same at every temperature makes the time of the older law the same, however the dough's
// temperature goes.
func TestASteadyCurveNeedsNoHistory(t *testing.T) {
	steady, err := ferment.ConstantQ10{Name: "steady", Q: 1, Rate: 0.3, Reference: 24, Low: 0, High: 40}.Curve()
	if err != nil {
		t.Fatal(err)
	}
	b := good()
	want, err := ferment.DoseLaw{Levain: steady}.Ready(b)
	if err != nil {
		t.Fatal(err)
	}
	b.History, err = ferment.FromKnots(ferment.Knot{Temperature: quantity.Celsius(28)},
		ferment.Knot{At: quantity.Elapsed(time.Hour), Temperature: quantity.Celsius(25)},
		ferment.Knot{At: quantity.Elapsed(3 * time.Hour), Temperature: quantity.Celsius(19)})
	if err != nil {
		t.Fatal(err)
	}
	if got, err := (ferment.DoseLaw{Levain: steady}).Ready(b); err != nil ||
		!(math.Abs(float64(got.Likely-want.Likely)) <= float64(time.Second)) {
		t.Errorf("%v along a history, %v at one temperature, %v", got, want, err)
	}
}

// The pace of a kitchen in words is the number of its line.
func TestThePaceInWordsIsThatOfTheLine(t *testing.T) {
	b := good()
	b.Culture = learn(t, ferment.Learning{Bakes: bakeLog(t, 20)}).Culture
	w := estimate(t, b).Working()
	_, rest, ok := strings.Cut(working.Telling{Level: working.InWords, Width: 2000}.Text(w), "This culture goes at ")
	said, err := strconv.ParseFloat(strings.Fields(rest + " x")[0], 64)
	if !ok || err != nil {
		t.Fatal("the pace is not told in words")
	}
	for _, l := range w.Lines(working.Reader{}) {
		if l.Symbol == "P" {
			if p, err := strconv.ParseFloat(strings.Fields(l.Value)[0], 64); err != nil || !(math.Abs(100*p-said) <= 0.51) {
				t.Errorf("%v %% in words, P = %s", said, l.Value)
			}
			return
		}
	}
	t.Error("no line of the pace")
}

// Flour that comes fermented, with the levain and in preferments, is at most all of it.
func TestFermentedFlourIsAtMostAll(t *testing.T) {
	biga := func(share float64) ferment.HandedOn {
		return ferment.HandedOn{Flour: pct(share), Ripened: quantity.Elapsed(12 * time.Hour), Of: ferment.Ripening{
			Yeast: ferment.Yeast{Kind: ferment.InstantYeast, Amount: pct(0.1)}, Hydration: pct(60),
			History: ferment.Constant(quantity.Celsius(18)), Law: ferment.GasBalance()}}
	}
	b := good() // with levain
	rest := 100 - b.Inoculation.Points()
	b.Preferments = []ferment.HandedOn{biga(rest / 2), biga(rest / 2)}
	if _, err := b.Estimate(); err != nil {
		t.Errorf("all flour fermented: %v", err)
	}
	b.Preferments = []ferment.HandedOn{biga(rest / 2), biga(rest/2 + 1)}
	_, err := b.Estimate()
	refuses(t, err, quantity.ErrInconsistent, "Preferments")
}

// Salt holds the lactobacilli back from 3 g in 100 g of water, and stops them from 4 g.
func TestSaltAndLactobacilli(t *testing.T) {
	for salt, want := range map[float64]string{
		2: "", 2.17: "held back", 2.5: "held back", 2.8: "do not grow", 3: "do not grow",
	} {
		b := good()
		b.Salt, b.Hydration = pct(salt), pct(70)
		e, err := b.Estimate()
		if err != nil {
			t.Fatal(err)
		}
		f, err := e.Flavor(5 * time.Hour)
		if err != nil {
			t.Fatal(err)
		}
		var said []string
		for _, l := range f.Limits {
			if text := l.String(); strings.Contains(text, "lactobacilli") {
				said = append(said, text)
			}
		}
		if all := strings.Join(said, "; "); want == "" && all != "" || !strings.Contains(all, want) || len(said) > 1 {
			t.Errorf("%v %% of salt in 70 %% of water: %q", salt, all)
		}
	}
}
