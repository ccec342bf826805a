package ferment_test

import (
	"encoding/json"
	"math"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/ferment"
	"example.org/maslin/internal/trial"
	"pgregory.net/rapid"
)

// A culture that was kept is read back only when all that stands in it can be: its format, its leavening, its names,
// and sums that bakes add up to.
func TestCulturesThatWereKept(t *testing.T) {
	log := dated(bakeLog(t, 4))
	fading := learn(t, ferment.Learning{Bakes: log, Person: "Ada", Name: "rye"}).Culture
	text, err := json.Marshal(fading)
	if err != nil || !strings.Contains(string(text), `"fading":[`) {
		t.Fatalf("%s, %v", text, err)
	}
	var back ferment.Culture
	if err := json.Unmarshal(text, &back); err != nil || !back.Equal(fading) || !fading.Equal(back) {
		t.Errorf("%v comes back as %v, %v", fading, back, err)
	}
	none := ferment.Culture{}
	if none.Equal(fading) || fading.Equal(none) || !none.Equal(ferment.Culture{}) {
		t.Error("a culture equals none")
	}
	if text, err := json.Marshal(none); err != nil || string(text) != "null" {
		t.Errorf("%s, %v", text, err)
	}
	if back = fading; json.Unmarshal([]byte("null"), &back) != nil || !back.IsZero() {
		t.Errorf("null is read as %v", back)
	}
	long := strings.Repeat("x", 201)
	var a answers
	for name, change := range map[string][2]string{
		"as it is": {"", ""}, "another format": {`"format":3`, `"format":4`},
		"another leavening":                      {`"leavening":"levain"`, `"leavening":"soda"`},
		"a person too long":                      {`"person":"Ada"`, `"person":"` + long + `"`},
		"a name in one line":                     {`"name":"rye"`, `"name":"` + "rye bread" + `"`},
		"a name in two":                          {`"name":"rye"`, `"name":"rye\nbread"`},
		"a name of 200":                          {`"name":"rye"`, `"name":"` + long[1:] + `"`},
		"a bake's person":                        {`"log":[{"person":"Ada"`, `"log":[{"person":"A\u0007"`},
		"a bake's culture":                       {`"culture":"rye"`, `"culture":"` + long + `"`},
		"fading, with a half-life of half a day": {`"leavening"`, `"half_life_days":0.5,"leavening"`},
		"a negative half-life":                   {`"leavening"`, `"half_life_days":-0.5,"leavening"`},
		"no bakes that add up":                   {`"bakes":4`, `"bakes":-4`},
	} {
		changed := strings.Replace(string(text), change[0], change[1], 1)
		if changed == string(text) && name != "as it is" {
			t.Errorf("%s: nothing to change in %s", name, text)
		}
		a.add(name, json.Unmarshal([]byte(changed), &back))
	}
	a.kept(t, "cultures.txt")
}

// What is learned of a culture is told as ranges: pace and amplitude as far up as down in their logarithm, the
// sensitivity to a tenth of a percent.
func TestRangesOfWhatIsLearned(t *testing.T) {
	for _, c := range []ferment.Culture{{}, learn(t, ferment.Learning{Bakes: bakeLog(t, 3)}).Culture} {
		for name, r := range map[string]quantity.Range[quantity.Percent]{"pace": c.Pace(), "amplitude": c.Amplitude()} {
			up, down := r.High.Points()/r.Likely.Points(), r.Likely.Points()/r.Low.Points()
			if !(up > 1.01 && math.Abs(up-down) <= 1e-4) || r.Probability != pct(80) {
				t.Errorf("%s %v: %v up, %v down", name, r, up, down)
			}
		}
		s := c.TemperatureSensitivity()
		for _, x := range []quantity.Percent{s.Low, s.Likely, s.High} {
			if tenths := 10 * x.Points(); !(math.Abs(tenths-math.Round(tenths)) <= 1e-9) {
				t.Errorf("sensitivity %v", s)
			}
		}
		if !(s.Low.Points() < s.Likely.Points() && s.Likely.Points() < s.High.Points()) || s.Probability != pct(80) {
			t.Errorf("sensitivity %v", s)
		}
	}
}

// A history comes back from its own corners and from what was kept of it, to the millisecond.
func TestHistoriesThatWereKept(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var knots []ferment.Knot
		at := time.Duration(0)
		for range rapid.IntRange(1, 12).Draw(t, "corners") {
			knots = append(knots, ferment.Knot{At: quantity.Elapsed(at),
				Temperature: quantity.Celsius(float64(rapid.IntRange(-250, 600).Draw(t, "tenths")) / 10)})
			at += time.Duration(rapid.IntRange(0, 900_000_000).Draw(t, "milliseconds")) * time.Millisecond
		}
		h, err := ferment.FromKnots(knots...)
		if err != nil {
			t.Fatal(err)
		}
		got := h.Knots()
		for i, k := range knots {
			if got[i] != k {
				t.Fatalf("corner %d is %v, it was %v", i, got[i], k)
			}
		}
		trial.Travels(t, h)
	})
	h := corners(t, 0, 20, 1, 24.5, 3, 18, 3, 22)
	if got := h.String(); got != "4 corners over 3h, 18.0 °C to 24.5 °C" {
		t.Error(got)
	}
	if json.Unmarshal([]byte("null"), &h) != nil || !h.IsZero() {
		t.Errorf("null is read as %v", h)
	}
}

// Corners may lie from the first moment up to 366 days on, none before the one before it, between −25 and 60 °C.
func TestCornersThatAreRefused(t *testing.T) {
	var a answers
	try := func(name string, at time.Duration, celsius float64) {
		_, err := ferment.FromKnots(ferment.Knot{At: quantity.Elapsed(time.Hour), Temperature: quantity.Celsius(20)},
			ferment.Knot{At: quantity.Elapsed(at), Temperature: quantity.Celsius(celsius)})
		a.add(name, err)
	}
	const year = 366 * 24 * time.Hour
	try("a jump", time.Hour, 30)
	try("a second before", time.Hour-time.Second, 30)
	try("before the first moment", -time.Second, 30)
	try("after 366 days", year, 30)
	try("a second later", year+time.Second, 30)
	try("−25 °C", 2*time.Hour, -25)
	try("−25.1 °C", 2*time.Hour, -25.1)
	try("60 °C", 2*time.Hour, 60)
	try("60.1 °C", 2*time.Hour, 60.1)
	try("all wrong", -time.Hour, 90)
	_, err := ferment.FromKnots()
	a.add("none", err)
	h := corners(t, 0, 20, 4, 24)
	for name, between := range map[string][2]time.Duration{"the whole": {0, year},
		"longer": {0, year + time.Second}, "before it": {-time.Second, time.Hour},
		"turned round": {2 * time.Hour, time.Hour}, "a moment": {time.Hour, time.Hour}} {
		_, err := h.Mean(between[0], between[1])
		a.add("mean of "+name, err)
	}
	a.kept(t, "corners.txt")
}

// The mean between two times is the area under the line over its length, wherever it begins.
func TestMeansBetweenTwoTimes(t *testing.T) {
	h := corners(t, 0, 20, 4, 28, 4, 10, 6, 10, 8, 20)
	for _, c := range []struct{ from, to, want float64 }{{0, 4, 24}, {1, 3, 24}, {2, 4, 26}, {3, 5, (27 + 10) / 2.0},
		{4, 6, 10}, {6, 8, 15}, {7, 9, (17.5 + 20) / 2}, {20, 21, 20}} {
		got, err := h.Mean(time.Duration(c.from*float64(time.Hour)), time.Duration(c.to*float64(time.Hour)))
		if err != nil || !(math.Abs(got.Celsius()-c.want) <= 1e-6) {
			t.Errorf("%v to %v h: %v, %v, want %v °C", c.from, c.to, got, err, c.want)
		}
	}
}

// A stretch of a joined history ends where its own does before it jumps; and the whole was measured when its last part
// was.
func TestStretchesAtTheirEnds(t *testing.T) {
	read, err := ferment.Readings{Points: []ferment.Knot{{Temperature: quantity.Celsius(18)},
		{At: quantity.Elapsed(2 * time.Hour), Temperature: quantity.Celsius(21)}}}.History()
	if err != nil {
		t.Fatal(err)
	}
	jumping := corners(t, 0, 24, 2, 22, 2, 5, 9, 4)
	two := quantity.Elapsed(2 * time.Hour)
	joined, err := ferment.Join(ferment.Stretch{History: jumping, For: two}, ferment.Stretch{History: read})
	if err != nil {
		t.Fatal(err)
	}
	want := corners(t, 0, 24, 2, 22, 2, 18, 4, 21).Knots()
	got := joined.Knots()
	for i := range max(len(got), len(want)) {
		if i >= len(got) || i >= len(want) || got[i] != want[i] {
			t.Fatalf("%v, want %v", got, want)
		}
	}
	turned, err := ferment.Join(ferment.Stretch{History: read, For: two}, ferment.Stretch{History: jumping})
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		h        ferment.History
		measured bool
	}{{joined, true}, {turned, false}, {read, true}, {jumping, false}} {
		text, err := json.Marshal(c.h)
		if err != nil || strings.Contains(string(text), `"measured":true`) != c.measured {
			t.Errorf("%v: measured %v in %s, %v", c.h, !c.measured, text, err)
		}
		b := good()
		b.History, b.OwnHeat = c.h, quantity.Elapsed(time.Hour)
		if _, err := b.Estimate(); (err != nil) != c.measured {
			t.Errorf("own heat with %v: %v", c.h, err)
		}
	}
}
