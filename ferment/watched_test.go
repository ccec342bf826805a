package ferment_test

import (
	"encoding/json"
	"fmt"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/ferment"
	"example.org/maslin/internal/workcheck"
)

// A dough is followed by readings up to four hours apart for 30 days, and what else is read is refused with the reason.
func TestReadingsAtTheLimitsOfFollowing(t *testing.T) {
	follow := func(b ferment.Bulk, celsius float64) ferment.Followed {
		f, err := b.Follow(quantity.Celsius(celsius))
		if err != nil {
			t.Fatal(err)
		}
		return f
	}
	var a answers
	for name, c := range map[string]struct {
		extrapolate bool
		at          time.Duration
		celsius     float64
	}{
		"after 4 hours":                      {false, 4 * time.Hour, 24},
		"after 4 hours and a second":         {false, 4*time.Hour + time.Second, 24},
		"after 4 hours, extrapolating":       {true, 4 * time.Hour, 50},
		"at once":                            {false, 0, 24},
		"before":                             {false, -time.Second, 24},
		"at −1 °C":                           {false, time.Hour, -1},
		"at −1.1 °C":                         {false, time.Hour, -1.1},
		"at 43 °C":                           {false, time.Hour, 43},
		"at 43.1 °C":                         {false, time.Hour, 43.1},
		"at 43.1 °C, extrapolating":          {true, time.Hour, 43.1},
		"at 60.1 °C, extrapolating":          {true, time.Hour, 60.1},
		"too late and too warm to be a loaf": {false, 5 * time.Hour, 90},
	} {
		f := follow(with(good(), func(b *ferment.Bulk) { b.Extrapolate = c.extrapolate }), 24)
		_, err := f.Read(c.at, quantity.Celsius(c.celsius))
		a.add(name, err)
	}
	f, err := follow(good(), 24).Read(time.Hour, quantity.Celsius(24))
	if err != nil {
		t.Fatal(err)
	}
	_, err = f.Read(6*time.Hour, quantity.Celsius(24))
	a.add("after an hour, and five hours later", err)
	f = follow(good(), 4)
	for hour := 4; hour <= 720 && len(a.lines) < 100; hour += 4 {
		next, err := f.Read(time.Duration(hour)*time.Hour, quantity.Celsius(4))
		if err != nil {
			t.Fatal(hour, err)
		}
		f = next
	}
	_, err = f.Read(720*time.Hour+time.Second, quantity.Celsius(4))
	a.add("after 30 days and a second", err)
	a.kept(t, "followed.txt")
}

// What a dough with its own heat is followed by is the probe alone.
func TestFollowingCountsNoHeatTwice(t *testing.T) {
	for _, heat := range []time.Duration{0, 2 * time.Hour, 100 * 24 * time.Hour} {
		f, err := with(good(), func(b *ferment.Bulk) { b.OwnHeat = quantity.Elapsed(heat) }).Follow(quantity.Celsius(23))
		if err != nil || f.Ready() != estimate(t, good()).Ready() {
			t.Errorf("own heat %v: %v, %v; want %v", heat, f.Ready(), err, estimate(t, good()).Ready())
		}
	}
}

// A followed dough of any leavening comes back from what was kept of it, but not with fewer cells or less gas than
// none; and two are the same only when the same marks were passed at the same time.
func TestFollowedDoughsThatWereKept(t *testing.T) {
	for name, b := range map[string]ferment.Bulk{"levain": good(), "yeast": yeasted(ferment.FreshYeast, 1),
		"both": both(10, 0.2)} {
		f, err := b.Follow(quantity.Celsius(25))
		if err != nil {
			t.Fatal(err)
		}
		again := func(text string) (back ferment.Followed, err error) {
			err = json.Unmarshal([]byte(text), &back)
			return back, err
		}
		for minute := 0; minute < 600; minute += 30 {
			if minute > 0 {
				if f, err = f.Read(time.Duration(minute)*time.Minute, quantity.Celsius(25)); err != nil {
					t.Fatal(err)
				}
			}
			text, err := json.Marshal(f)
			if err != nil {
				t.Fatal(err)
			}
			if back, err := again(string(text)); err != nil || !back.Equal(f) || !f.Equal(back) || back.Ready() != f.Ready() {
				t.Errorf("%s: %v comes back as %v, %v", name, f, back, err)
			}
			if _, passed, _ := strings.Cut(string(text), `"passed":[`); passed != "" {
				none := string(text)[:strings.Index(string(text), `,"passed":[`)] + "}"
				if back, err := again(none); err != nil || back.Equal(f) || f.Equal(back) {
					t.Errorf("%s: %v without its marks is the same, %v", name, f, err)
				}
			}
			if f.Equal(ferment.Followed{}) || (ferment.Followed{}).Equal(f) {
				t.Error("a followed dough equals none")
			}
		}
	}
	f, err := both(10, 0.2).Follow(quantity.Celsius(25))
	if err == nil {
		f, err = f.Read(time.Hour, quantity.Celsius(25))
	}
	text, err2 := json.Marshal(f)
	if err != nil || err2 != nil {
		t.Fatal(err, err2)
	}
	_, after, _ := strings.Cut(string(text), `"state":[`)
	numbers := strings.Split(after[:strings.Index(after, "]")], ",")
	for i := range numbers {
		changed := append([]string{}, numbers...)
		if changed[i] = "-1"; i < 3 {
			changed[i] = "-1e-9"
		}
		other := strings.Replace(string(text), strings.Join(numbers, ","), strings.Join(changed, ","), 1)
		err := json.Unmarshal([]byte(other), &ferment.Followed{})
		want := "<nil>"
		if i < 3 { // the cells of levain and yeast, and the gas
			want = "state: inconsistent: got numbers that contradict each other, want what following a dough comes to"
		}
		if fmt.Sprint(err) != want {
			t.Errorf("number %d of the state negative: %v, want %v", i, err, want)
		}
	}
	if !(ferment.Followed{}).Equal(ferment.Followed{}) {
		t.Error("nothing followed differs from nothing followed")
	}
}

// At the first moment nothing has risen; and a dough in which nothing goes on has the temperature it has.
func TestDoughsInWhichNothingHasHappened(t *testing.T) {
	for _, b := range []ferment.Bulk{good(), yeasted(ferment.InstantYeast, 1)} {
		got, err := estimate(t, b).RiseAt(0)
		want := quantity.Range[quantity.Percent]{Low: pct(0), Likely: pct(0), High: pct(0), Probability: pct(80)}
		if err != nil || got != want {
			t.Errorf("%v, %v", got, err)
		}
	}
	frozen := estimate(t, with(good(), func(b *ferment.Bulk) {
		b.Extrapolate, b.History = true, ferment.Constant(quantity.Celsius(-10))
	}))
	if got := frozen.Mean(); got != quantity.Celsius(-10) || frozen.Reached() {
		t.Errorf("%v, %v", got, frozen)
	}
}

// Derived with the rise at which to shape is the dough on its way there where there is one; else as it was asked.
func TestWhatIsDerivedOfAnAskedDough(t *testing.T) {
	a := asked()
	stage := ferment.Piece{Mass: quantity.Grams(900), Form: ferment.Round, Into: ferment.Room{Night: quantity.Celsius(4)},
		Exposure: ferment.Refrigerator, For: quantity.Elapsed(12 * time.Hour)}
	for _, warm := range []bool{false, true} {
		if warm {
			stage.Into.Night, stage.For = quantity.Celsius(27), quantity.Elapsed(40*time.Hour)
		}
		a.Cold = &ferment.Proof{Stages: []ferment.Piece{stage}}
		got, err := a.Answer()
		if err != nil || got.Shape.Feasible == warm {
			t.Fatalf("%v, %v", got.Shape, err)
		}
		main := got.Shape.Shape.Working()
		if warm {
			main = got.Estimate.Working()
		}
		workings := got.Workings()
		if len(workings) != 2 || workings[0].Text(200) != main.Text(200) ||
			workings[1].Text(200) != got.Shape.Working().Text(200) {
			t.Errorf("in the warm %v: %d derivations, the first\n%s\nwant\n%s", warm, len(workings), workings[0].Text(200),
				main.Text(200))
		}
		for _, w := range workings {
			if !testing.Short() {
				workcheck.Verify(t, w)
			}
		}
	}
}
