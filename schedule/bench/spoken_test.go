package bench_test

import (
	"context"
	"math"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/ferment"
	"example.org/maslin/schedule/bakeday"
	"example.org/maslin/schedule/bench"
)

// measured is a dough of which everything was written down that a mixer is learned from: flour and water at 20 °C, and
// after ten minutes a dough at 26 °C.
func measured(when time.Time, kind mixing.MixerKind) bench.Observation {
	o := mixed(when, 26)
	o.Mix.Mixer, o.Mix.FlourWeight, o.Mix.WaterWeight = kind, quantity.Grams(1000), quantity.Grams(700)
	o.Mix.Flour, o.Mix.Water = quantity.Celsius(20), quantity.Celsius(20)
	o.Mix.Slow, o.Mix.Fast = quantity.Elapsed(4*time.Minute), quantity.Elapsed(6*time.Minute)
	return o
}

// A mixing teaches of whatever machine it was; without the machine it says what is missing.
func TestMixingsThatTeach(t *testing.T) {
	for _, kind := range quantity.Values[mixing.MixerKind]() {
		o := measured(at(4, 10, 0), kind)
		if b, why := (bench.LoggedBake{Mixed: o.At, Mix: *o.Mix}).Batch(); !why.IsZero() || b.Dough != o.Mix.Dough {
			t.Errorf("%v: %v, %v", kind, b, why)
		}
	}
	o := measured(at(4, 10, 0), 0)
	if _, why := (bench.LoggedBake{Mixed: o.At, Mix: *o.Mix}).Batch(); why.String() != "not logged: mixer" {
		t.Error(why)
	}
	o = measured(at(4, 10, 0), mixing.Spiral)
	o.Mix.Slow, o.Mix.Fast = 0, 0
	says, err := bench.Observations{o}.Tells(o)
	if err != nil || len(says) == 0 || says[0].String() !=
		"it teaches nothing about the mixer: not logged: minutes of mixing" {
		t.Errorf("%v, %v", says, err)
	}
	// Flour and water at 20 °C meet at 20 °C: mixing warmed the dough by 6 °C, said also where no rise is aimed at.
	o = measured(at(4, 10, 0), mixing.Spiral)
	o.Mix.Rise = quantity.Percent{}
	says, err = bench.Observations{o}.Tells(o)
	if err != nil || len(says) != 1 || says[0].String() !=
		"mixing warmed it by about 6.0 Δ°C above where the ingredients meet" {
		t.Errorf("%v, %v", says, err)
	}
}

// What is learned of the mixer stands in the next plan, and is to be written into the bake.
func TestTheNextPlanKeepsTheWarming(t *testing.T) {
	var all bench.Observations
	for i := range 4 {
		all = append(all, measured(at(1, 6+2*i, 0), mixing.Planetary))
	}
	l, err := all.Learn(0)
	if err != nil {
		t.Fatal(err)
	}
	b := hall(t)
	dated, err := l.NextPlan(context.Background(), b, clock(at(3, 8, 0)))
	if err != nil {
		t.Fatal(err)
	}
	if dated.Warming.IsZero() {
		t.Fatal("nothing was learned of the mixer")
	}
	if x := 10 * dated.Warming.Celsius(); !(math.Abs(x-math.Round(x)) <= 1e-2) {
		t.Errorf("a warming of %v is no tenth of a degree", dated.Warming)
	}
	text := strings.Join(strings.Fields(dated.Report().Text(report.Options{Width: 300})), " ")
	if want := "write into the bake mixing.warming " + dated.Warming.String(); !strings.Contains(text, want) {
		t.Errorf("no %q in %s", want, text)
	}
	// A bake for any Saturday, of no date, is planned as the one of this Saturday.
	if b.Wanted, err = bakeday.ParseWish("Saturday 12:30"); err != nil {
		t.Fatal(err)
	}
	any, err := l.NextPlan(context.Background(), b, clock(at(3, 8, 0)))
	if err != nil || any.Warming != dated.Warming || any.After.Baking.Scaling != dated.After.Baking.Scaling {
		t.Errorf("%v, %v of dough, %v", any.Warming, any.After.Baking.Scaling, err)
	}
}

// By the clock a range is told from its early end to its late one.
func TestRangesByTheClock(t *testing.T) {
	m := mixed(at(4, 10, 0), 26)
	bulk, _, err := m.Mix.Bulk(nil)
	if err != nil {
		t.Fatal(err)
	}
	bulk.Rise = m.Mix.Rise
	e, err := bulk.Estimate()
	if err != nil {
		t.Fatal(err)
	}
	next := func(d time.Duration) string { // minute
		return m.At.Add((d + time.Minute - 1).Truncate(time.Minute)).Format("Mon 15:04")
	}
	r := e.Ready()
	want := "by the clock: " + next(r.Early) + " to " + next(r.Late) + ", likely " + next(r.Likely)
	says, err := bench.Observations{m}.Tells(m)
	if err != nil || len(says) == 0 || says[len(says)-1].String() != want {
		t.Errorf("%v, %v; want %q", says, err, want)
	}
}

// How long the next step is away is told in hours up to a day, and then by its date.
func TestHowFarTheNextStepIsAway(t *testing.T) {
	start := begins(t, together(t, at(2, 8, 0)), "hall", "feed")
	for wait, want := range map[time.Duration]string{
		24 * time.Hour: "Next, in 24h", 24*time.Hour + time.Minute: "Next, on ",
	} {
		now := start.Add(-wait)
		k := together(t, now)
		if got := begins(t, k, "hall", "feed"); !got.Equal(start) {
			t.Fatalf("planned at %v the levain is fed at %v, planned before at %v", now, got, start)
		}
		if page := k.Report().Text(report.Options{}); !strings.Contains(page, want) {
			t.Errorf("%v ahead: no %q in\n%s", wait, want, page)
		}
	}
}

// The mixer is likely to warm the next dough as it warms one that is kneaded as long as the last.
func TestTheWarmingIsThatOfTheLastDough(t *testing.T) {
	warming := func(minutes ...int) float64 {
		var all bench.Observations
		for i, m := range minutes { // 0.6 °C in each minute
			o := measured(at(1, 6+2*i, 0), mixing.Planetary)
			o.Mix.Slow, o.Mix.Fast = 0, quantity.Elapsed(time.Duration(m)*time.Minute)
			o.Mix.Dough = quantity.Celsius(20 + 0.6*float64(m))
			all = append(all, o)
		}
		l, err := all.Learn(0)
		if err != nil {
			t.Fatal(err)
		}
		return l.Apply(hall(t)).Warming.Celsius()
	}
	if long, short := warming(5, 5, 5, 5, 10), warming(10, 10, 10, 10, 5); !(long > 1.5*short && short > 0) {
		t.Errorf("after ten minutes %v °C, after five %v °C", long, short)
	}
}

// How a dough is kneaded follows from what mixes it, and of nothing said nothing is; readings that run backward are
// refused.
func TestTheDoughThatIsFollowed(t *testing.T) {
	for _, kind := range append(quantity.Values[mixing.MixerKind](), 0) {
		want := ferment.ByMachine
		switch kind {
		case 0:
			want = ferment.KneadingUnstated
		case mixing.Hand:
			want = ferment.ByHand
		}
		o := mixed(at(4, 10, 0), 26)
		o.Mix.Mixer = kind
		if bulk, _, err := o.Mix.Bulk(nil); err != nil || bulk.Kneading != want {
			t.Errorf("%v: %v, %v", kind, bulk.Kneading, err)
		}
	}
	o := mixed(at(4, 10, 0), 26)
	_, _, err := o.Mix.Bulk([]ferment.Knot{{At: quantity.Elapsed(time.Hour), Temperature: quantity.Celsius(26)},
		{Temperature: quantity.Celsius(25)}})
	if err == nil {
		t.Error("a probe that goes back in time is followed")
	}
}

// After the next step come as many more as are asked for, in their order; and what is looked at as it was planned, but
// for a bulk that was seen to be otherwise.
func TestWhatComesLater(t *testing.T) {
	start := moment(t, at(4, 6, 0))
	bulk, _ := start.Step("bulk")
	m := moment(t, bulk.Start.Add(10*time.Minute), mixed(bulk.Start, 23))
	next, ok := m.Next()
	later := m.Later(3)
	if !ok || len(later) != 3 {
		t.Fatalf("%v, then %d steps", next.ID, len(later))
	}
	for i, s := range later {
		if s.ID == next.ID || !s.Start.After(m.Now) || i > 0 && s.Start.Before(later[i-1].Start) {
			t.Errorf("after %s comes %s at %v", next.ID, s.ID, s.Start)
		}
	}
	looked := 0
	for _, m := range []bench.DayNow{start, m} {
		for _, s := range m.Steps {
			if s.LookFrom == nil {
				continue
			}
			looked++
			says := m.LookFor(s)
			want := "look at it from " + s.LookFrom.Format("Mon 15:04") + " to " + s.LookTo.Format("Mon 15:04")
			moved := s.ID == "bulk" && m.Dough != nil
			if got := says[len(says)-1].String(); (got != want) != moved {
				t.Errorf("%s: %q, planned %q", s.ID, got, want)
			}
		}
	}
	if looked != 2 {
		t.Errorf("%d steps are looked at", looked)
	}
}
