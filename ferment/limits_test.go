package ferment_test

import (
	"math"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/ferment"
)

// A room comes back to the same temperature after a day, is warmest at its hour and coldest twelve hours from it, and
// is between them in the mean.
func TestARoomRepeatsItsDay(t *testing.T) {
	for _, room := range []ferment.Room{
		{Night: quantity.Celsius(17), Day: quantity.Celsius(23)},
		{Night: quantity.Celsius(17), Day: quantity.Celsius(23), WarmestAt: quantity.Elapsed(13 * time.Hour),
			Starts: quantity.Elapsed(20 * time.Hour)},
	} {
		at := func(h float64) float64 {
			c, err := room.At(time.Duration(h * float64(time.Hour)))
			if err != nil {
				t.Fatal(err)
			}
			return c.Celsius()
		}
		warmest := 15.0
		if room.WarmestAt > 0 {
			warmest = room.WarmestAt.Duration().Hours()
		}
		first := math.Mod(warmest-room.Starts.Duration().Hours()+24, 24) // hours from the start
		if !(math.Abs(at(first)-23) <= 1e-3 && math.Abs(at(first+12)-17) <= 1e-3) {
			t.Errorf("%+v: warmest %v, coldest %v", room, at(first), at(first+12))
		}
		for _, h := range []float64{0, 2.5, 7, 19} {
			if !(math.Abs(at(h)-at(h+24)) <= 1e-3 && math.Abs(at(h)+at(h+12)-40) <= 2e-3) {
				t.Errorf("%+v: %v after %v h, %v half a day later, %v a day later", room, at(h), h, at(h+12), at(h+24))
			}
		}
	}
}

// Parts of a feeding are taken from a thousandth to ten thousand; as much seed as flour at 100 % is a third of it.
func TestPartsOfAFeeding(t *testing.T) {
	whole := quantity.NewPercent(100)
	if s, err := (ferment.FeedRatio{Seed: 1, Flour: 1, SeedHydration: whole}).SeedShare(); err != nil ||
		!(math.Abs(s.Points()-100.0/3) <= 1e-5) {
		t.Errorf("%v, %v", s, err)
	}
	for parts, ok := range map[float64]bool{0.001: true, 0.000999: false, 0.0010001: true, 10_000: true, 10_000.1: false} {
		for _, f := range []ferment.FeedRatio{{Seed: parts, Flour: 1, SeedHydration: whole},
			{Seed: 1, Flour: parts, SeedHydration: whole}} {
			if _, err := f.SeedShare(); (err == nil) != ok {
				t.Errorf("%+v: %v", f, err)
			}
		}
	}
}

// A law whose curves are another's says so in its name, and its own does not.
func TestARivalLawSaysSo(t *testing.T) {
	own := ferment.GasBalance()
	rival := own.With(ferment.Rivals{Gas: ferment.GanzleYeast()})
	if a, b := own.About().Name, rival.About().Name; strings.Contains(a, "rival") || b != a+" with rival curves" {
		t.Errorf("%q and %q", a, b)
	}
}

// A probe may read what a freezer and a hot proofer have, to the degree, and nothing beyond.
func TestReadingsAtTheirLimits(t *testing.T) {
	for celsius, ok := range map[float64]bool{-25: true, -25.1: false, 60: true, 60.1: false} {
		_, err := ferment.Readings{Points: []ferment.Knot{{Temperature: quantity.Celsius(celsius)}}}.History()
		if (err == nil) != ok {
			t.Errorf("%v °C: %v", celsius, err)
		}
	}
}

// Two histories are the same when they hold and say the same, and were both measured or both not.
func TestSameHistories(t *testing.T) {
	read := func(celsius ...float64) ferment.History {
		var points []ferment.Knot
		for i, c := range celsius {
			points = append(points, ferment.Knot{At: quantity.Elapsed(time.Duration(i) * time.Hour),
				Temperature: quantity.Celsius(c)})
		}
		h, err := ferment.Readings{Points: points}.History()
		if err != nil {
			t.Fatal(err)
		}
		return h
	}
	held := ferment.Constant(quantity.Celsius(24))
	for _, c := range []struct {
		a, b ferment.History
		same bool
	}{
		{held, ferment.Constant(quantity.Celsius(24)), true}, {held, ferment.Constant(quantity.Celsius(25)), false},
		{held, read(24), false}, {read(24), read(24), true}, {read(24, 26, 25), read(24, 25, 26), false},
		{read(24, 26), ferment.History{}, false}, {ferment.History{}, ferment.History{}, true},
	} {
		if c.a.Equal(c.b) != c.same || c.b.Equal(c.a) != c.same {
			t.Errorf("%v and %v: the same %v", c.a, c.b, !c.same)
		}
	}
}

// A curve of somebody's own measurements names them; without a word on them it names those of the form.
func TestACurveNamesItsSource(t *testing.T) {
	mine := working.Source{Key: "mine", Title: "a winter of jars", Standing: working.Judgment}
	m := ferment.SquareRoot{Name: "mine", Min: 2, Max: 40, B: 0.03, C: 0.3}
	plain, err := m.Curve()
	if err != nil || plain.About().Source.Key == "mine" || plain.About().Source.IsZero() {
		t.Errorf("%+v, %v", plain.About().Source, err)
	}
	m.Source = mine
	if own, err := m.Curve(); err != nil || own.About().Source.Key != "mine" {
		t.Errorf("%+v, %v", own.About().Source, err)
	}
}

// A reading of what was expected changes nothing: together they say what each says.
func TestAReadingOfWhatWasExpected(t *testing.T) {
	b := ferment.Bulk{Inoculation: quantity.NewPercent(12), Hydration: quantity.NewPercent(70),
		Salt: quantity.NewPercent(2), Rise: quantity.NewPercent(60), Law: ferment.GasBalance(),
		History: ferment.Constant(quantity.Celsius(25))}
	e, err := b.Estimate()
	if err != nil {
		t.Fatal(err)
	}
	const at = 150 * time.Minute
	rise, err := e.RiseAt(at)
	if err != nil {
		t.Fatal(err)
	}
	p, err := e.Update(ferment.RiseReading{At: quantity.Elapsed(at), Rise: rise.Likely})
	if err != nil {
		t.Fatal(err)
	}
	words := working.Telling{Level: working.InWords, Width: 2000}.Text(p.Working())
	_, after, told := strings.Cut(words, "Together they say that the dough has risen ")
	said, err := quantity.ParsePercent(strings.TrimSuffix(strings.SplitN(after, "\n", 2)[0], "."))
	if !told || err != nil || !(math.Abs(said.Points()-rise.Likely.Points()) <= 0.2) {
		t.Errorf("%v was expected and read, and %q is said (%v)", rise.Likely, after, err)
	}
}

// What is kept of a culture says by itself how fast its bakes fade: up to a million days, and no negative ones.
func TestHalfLivesThatAreKept(t *testing.T) {
	kept := learn(t, ferment.Learning{Bakes: bakeLog(t, 4), HalfLife: quantity.Elapsed(60 * 24 * time.Hour)}).Culture
	text, err := kept.MarshalJSON()
	if err != nil || !strings.Contains(string(text), `"half_life_days":60`) {
		t.Fatalf("%s, %v", text, err)
	}
	for days, ok := range map[string]bool{"60": true, "1000000": true, "1000001": false, "-1": false} {
		var back ferment.Culture
		err := back.UnmarshalJSON([]byte(strings.Replace(string(text), `"half_life_days":60`, `"half_life_days":`+days, 1)))
		if (err == nil) != ok {
			t.Errorf("%s days: %v", days, err)
		}
	}
}
