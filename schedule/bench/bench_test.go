package bench_test

import (
	"context"
	"encoding/json"
	"errors"
	"strings"
	"testing"
	"time"

	"example.org/maslin/bake"
	"example.org/maslin/dough"
	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/ferment"
	"example.org/maslin/schedule/bakeday"
	"example.org/maslin/schedule/bench"
	"example.org/maslin/schedule/wallclock"
	"github.com/google/go-cmp/cmp"
)

var zurich = func() *time.Location {
	z, err := time.LoadLocation("Europe/Zurich")
	if err != nil {
		panic(err)
	}
	return z
}()

func at(day, hour, minute int) time.Time { return time.Date(2026, 12, day, hour, minute, 0, 0, zurich) }

// hall is the bread of the village hall, wanted on Saturday at noon and a half.
func hall(t testing.TB) bakeday.Bake {
	t.Helper()
	wish, err := bakeday.ParseWish("2026-12-05 12:30")
	if err != nil {
		t.Fatal(err)
	}
	asleep, err := wallclock.ParseHabit("22:30 to 06:30")
	if err != nil {
		t.Fatal(err)
	}
	return bakeday.Bake{
		Name: "hall", Wanted: wish,
		Loaves: bakeday.Loaves{Pieces: 2, Baked: quantity.Grams(780), Style: bake.LeanHearth, Shape: bake.Round},
		Flours: []bakeday.Ingredient{
			{Name: "wheat", Percent: quantity.NewPercent(75), Kind: dough.KindWheat},
			{Name: "rye", Percent: quantity.NewPercent(25), Kind: dough.KindWholeRye},
		},
		Liquids: []bakeday.Ingredient{
			{Name: "water", Percent: quantity.NewPercent(70)},
		}, Salt: quantity.NewPercent(2.1),
		Levain: &bakeday.Levain{
			Prefermented: quantity.NewPercent(12),
			Hydration:    quantity.NewPercent(100),
			Inoculation:  quantity.NewPercent(60),
		},
		Mixing: bakeday.Mixing{
			Temperature: quantity.Celsius(26),
			Mixer:       mixing.Planetary,
			Takes:       quantity.Elapsed(25 * time.Minute),
		},
		Bulk: bakeday.BulkWork{
			Rise: quantity.NewPercent(75),
		}, Shaping: bakeday.Shaping{Takes: quantity.Elapsed(40 * time.Minute)},
		Retard: &bakeday.Retard{AtLeast: quantity.Elapsed(8 * time.Hour), AtMost: quantity.Elapsed(14 * time.Hour)},
		Oven: bakeday.OvenWork{
			Temperature: quantity.Celsius(245),
			Preheat:     quantity.Elapsed(45 * time.Minute), Covered: quantity.Elapsed(22 * time.Minute),
			Uncovered: quantity.Elapsed(20 * time.Minute),
		},
		Kitchen: bakeday.Kitchen{
			Zone: "Europe/Zurich", Asleep: []wallclock.Habit{asleep},
			Mixers:       []bakeday.KitchenMixer{{Kind: mixing.Planetary, Bowl: quantity.Liters(7)}},
			Altitude:     quantity.Meters(1150),
			Day:          quantity.Celsius(22),
			Refrigerator: quantity.Celsius(4),
			Tap:          quantity.Celsius(10),
		},
	}
}

func clock(now time.Time) bakeday.KitchenClock { return bakeday.KitchenClock{Now: now, Zone: zurich} }

func mixed(when time.Time, celsius float64) bench.Observation {
	return bench.Observation{
		Version: bench.Format,
		At:      when,
		Kind:    bench.SawMixed,
		Bread:   "hall",
		Mix: &bench.DoughMixed{
			Dough:       quantity.Celsius(celsius),
			Inoculation: quantity.NewPercent(12), Hydration: quantity.NewPercent(70), Salt: quantity.NewPercent(2.1),
			Room: quantity.Celsius(22), Weight: quantity.Kilograms(2), Rise: quantity.NewPercent(28),
		},
	}
}

func risen(when time.Time, percent float64) bench.Observation {
	return bench.Observation{
		Version: bench.Format,
		At:      when,
		Kind:    bench.SawRise,
		Bread:   "hall",
		Rise:    &bench.SeenRise{Rise: quantity.NewPercent(percent)},
	}
}

func moment(t testing.TB, now time.Time, all ...bench.Observation) bench.DayNow {
	t.Helper()
	m, err := bench.Under{Bake: hall(t), Observations: all}.At(context.Background(), clock(now))
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// Without any observation the moment is the plan.
func TestPlanItself(t *testing.T) {
	m := moment(t, at(4, 6, 0))
	if !m.Day.Possible() || m.Followed != nil || m.Changed != nil || m.Dough != nil {
		t.Fatalf("%v: followed %v, changed %v", m, m.Followed, m.Changed)
	}
	next, ok := m.Next()
	first := m.Day.Data().Steps[0]
	if !ok || next.ID != first.ID {
		t.Errorf("next is %q, the plan begins with %q", next.ID, first.ID)
	}
	if !strings.Contains(m.Report().Text(report.Options{}), "This is the plan if it is made now") {
		t.Error(m.Report().Text(report.Options{}))
	}
}

// A plan that is followed stays the same while time goes on, and each step that is ticked off leaves the list.
func TestFollowed(t *testing.T) {
	made := at(4, 6, 0)
	follow := bench.Observation{
		Version: bench.Format,
		At:      made,
		Kind:    bench.SawPlan,
		Bread:   "hall",
		Plan:    &bench.FollowedPlan{Made: made, Wanted: at(5, 12, 30)},
	}
	before := moment(t, made, follow)
	feed := before.Steps[0]
	later := moment(t, feed.End.Add(time.Minute), follow, bench.Observation{
		Version: bench.Format, At: feed.End, Kind: bench.SawStep, Bread: "hall", Step: feed.ID,
	})
	if later.Followed == nil || !later.Steps[0].Start.Equal(feed.Start) {
		t.Errorf("the plan moved: %v, was %v", later.Steps[0].Start, feed.Start)
	}
	for _, s := range later.UnderWay() {
		if s.ID == feed.ID {
			t.Error("a step that is done is under way")
		}
	}
	for _, due := range later.StepsDue() {
		if due.ID == feed.ID {
			t.Error("a step that is done is due")
		}
	}
}

// A dough mixed today is of this bake although nobody said that a plan is followed: two hours later its bulk is under
// way.
func TestFoundWithoutFollowing(t *testing.T) {
	when := at(4, 16, 0)
	m := moment(t, when.Add(time.Hour), mixed(when, 26))
	if m.Dough == nil || !m.Mixed.Equal(when) || m.Progress == nil {
		t.Fatalf("the dough is not found: mixed %v, dough %v", m.Mixed, m.Dough)
	}
	if next, ok := m.Next(); !ok || next.Start.Sub(m.Now) > 12*time.Hour {
		t.Errorf("the next step is %q at %v", next.ID, next.Start)
	}
}

// A reading moves the range toward what was seen: more risen is never later.
func TestReadings(t *testing.T) {
	when := at(4, 16, 0)
	seen := when.Add(2 * time.Hour)
	last := time.Duration(1 << 62)
	for _, percent := range []float64{8, 14, 20, 26} {
		m := moment(t, seen, mixed(when, 26), risen(seen, percent))
		likely := m.Progress.Now.Ready().Likely
		if likely > last {
			t.Errorf("risen by %v %%: likely after %v, with less it was %v", percent, likely, last)
		}
		last = likely
	}
}

// What can hardly be true is questioned, moves nothing, and counts once it is confirmed.
func TestDoubts(t *testing.T) {
	when := at(4, 16, 0)
	early := risen(when.Add(18*time.Minute), 30)
	plain := moment(t, when.Add(20*time.Minute), mixed(when, 26))
	doubted := moment(t, when.Add(20*time.Minute), mixed(when, 26), early)
	if len(doubted.Doubts) != 1 || doubted.Progress.Now.Ready() != plain.Progress.Now.Ready() {
		t.Errorf("doubts %v; range %v, without the reading %v", doubted.Doubts, doubted.Progress.Now.Ready(),
			plain.Progress.Now.Ready())
	}
	early.Sure = true
	if sure := moment(t, when.Add(20*time.Minute), mixed(when, 26), early); len(sure.Doubts) != 0 ||
		sure.Progress.Now.Ready() == plain.Progress.Now.Ready() {
		t.Error("a confirmed reading counts for nothing")
	}
	weights := func(in, out float64) bench.Observation {
		return bench.Observation{
			Version: 1,
			At:      when,
			Kind:    bench.SawWeights,
			Weights: &bench.LoafWeights{In: quantity.Grams(in), Out: quantity.Grams(out), Style: bake.LeanHearth},
		}
	}
	core := func(c float64) bench.Observation {
		return bench.Observation{
			Version: 1,
			At:      when,
			Kind:    bench.SawCore,
			Core:    &bench.SeenCore{Core: quantity.Celsius(c)},
		}
	}
	for _, c := range []struct {
		o    bench.Observation
		code string
	}{
		{weights(960, 300), "bench.doubt_lost"}, {weights(900, 895), "bench.doubt_kept"}, {weights(900, 790), ""},
		{core(150), "bench.doubt_core"}, {core(98), ""},
		{risen(when.Add(time.Hour), 5), ""},
		{readied(when.Add(5*time.Minute), 28), "bench.doubt_rise"}, {readied(when.Add(5*time.Minute), 10), ""},
		{readied(when.Add(2*time.Hour), 28), ""},
		{ticked("shape", when.Add(12*time.Minute)), "bench.doubt_rise"}, {ticked("shape", when.Add(2*time.Hour)), ""},
		{ticked("bulk", when.Add(12*time.Minute)), "bench.doubt_rise"}, {ticked("fold-1", when.Add(12*time.Minute)), ""},
	} {
		got := ""
		if all := (bench.Observations{mixed(when, 26), c.o}).Doubts(); len(all) > 0 {
			got = all[0].Code()
		}
		if got != c.code {
			t.Errorf("%+v: %q, want %q", c.o, got, c.code)
		}
	}
}

// Observations belong to the dough of their bread and baker that was mixed last before them.
func TestBakes(t *testing.T) {
	a, b := mixed(at(4, 10, 0), 25), mixed(at(4, 12, 0), 25)
	b.Bread = "rolls"
	other := mixed(at(4, 11, 0), 25)
	other.By = "Ueli"
	nameless := risen(at(4, 15, 0), 20)
	nameless.Bread = ""
	late := risen(at(20, 15, 0), 50)
	got := bench.Observations{late, nameless, risen(at(4, 14, 0), 15), b, other, a}.Bakes()
	type row struct {
		Bread, By string
		Rises     int
	}
	var rows []row
	for _, x := range got {
		rows = append(rows, row{x.Bread, x.By, len(x.Rises)})
	}
	if diff := cmp.Diff([]row{{"hall", "", 1}, {"hall", "Ueli", 0}, {"rolls", "", 1}}, rows); diff != "" {
		t.Error(diff)
	}
}

// Bakes that come as the library expects leave the plan as it is; the same lessons serve plan, bench and next plan.
func TestOneNextPlan(t *testing.T) {
	ctx := context.Background()
	b := hall(t)
	var all bench.Observations
	for day := 1; day <= 3; day++ {
		m := mixed(at(day, 10, 0), 26)
		bulk, _, err := m.Mix.Bulk(nil)
		if err != nil {
			t.Fatal(err)
		}
		bulk.Rise = quantity.NewPercent(50)
		e, err := bulk.Estimate()
		if err != nil {
			t.Fatal(err)
		}
		took := time.Duration(float64(e.Ready().Likely) * 0.7) // this culture is fast
		all = append(
			all,
			m,
			bench.Observation{
				Version: 1,
				At:      m.At.Add(took),
				Kind:    bench.SawReady,
				Bread:   "hall",
				Ready:   &bench.ReadyDough{Rise: quantity.NewPercent(50)},
			},
		)
	}
	l, err := all.Learn(0)
	if err != nil {
		t.Fatal(err)
	}
	next, err := l.NextPlan(ctx, b, clock(at(4, 14, 0)))
	if err != nil {
		t.Fatal(err)
	}
	if before, after := next.Before.Rising.Bulk.Ready(), next.After.Rising.Bulk.Ready(); after.Likely >= before.Likely ||
		after.Spread() >= before.Spread() {
		t.Errorf("three fast bakes: %v became %v", before, after)
	}
	applied, err := l.Apply(b).Bake.Plan(ctx, clock(at(4, 14, 0)))
	if err != nil {
		t.Fatal(err)
	}
	m, err := bench.Under{Bake: b, Observations: all}.At(ctx, clock(at(4, 14, 0)))
	if err != nil {
		t.Fatal(err)
	}
	want := next.After.Rising.Bulk.Ready()
	if got := applied.Rising.Bulk.Ready(); got != want {
		t.Errorf("planned with lessons %v, the next plan %v", got, want)
	}
	if got := m.Day.Rising.Bulk.Ready(); got != want {
		t.Errorf("at the bench %v, the next plan %v", got, want)
	}
	past := b
	if past.Wanted, err = bakeday.ParseWish("2026-11-07 12:30"); err != nil {
		t.Fatal(err)
	}
	if _, err := l.NextPlan(ctx, past, clock(at(4, 14, 0))); err != nil {
		t.Errorf("a bake of a past date: %v", err)
	}
}

// A shaping that was ticked off teaches too; a class's logs teach the same as one log of all.
func TestTickedAndPooled(t *testing.T) {
	m := mixed(at(4, 10, 0), 26)
	shaped := bench.Observation{Version: 1, At: at(4, 13, 0), Kind: bench.SawStep, Bread: "hall", Step: "shape"}
	l, err := bench.Observations{m, shaped}.Learn(0)
	if err != nil || len(l.Cultures) != 1 || len(l.Cultures[0].Bakes) != 1 {
		t.Fatalf("%+v, %v", l, err)
	}
	pooled, err := bench.Class{
		{Person: "Ueli", Observations: bench.Observations{m, shaped}},
		{Person: "Vreni", Observations: bench.Observations{m, shaped}},
	}.Pool()
	if err != nil {
		t.Fatal(err)
	}
	both, err := pooled.Learn(0)
	if err != nil || both.Bakes != 2 || len(both.Cultures[0].Bakes) != 2 {
		t.Errorf("%d bakes, %v", both.Bakes, err)
	}
	scores, _, err := both.Scores()
	if err != nil || len(scores) != 3 || scores[0].Bakes != 2 || scores[1].By != "Ueli" {
		t.Errorf("%v, %v", scores, err)
	}
	_, err = bench.Class{{Person: "Ueli"}, {}, {Person: "Ueli"}}.Pool()
	if got := quantity.InputErrors(err); len(got) != 2 {
		t.Errorf("%v", err)
	}
}

// Everything that is wrong with an observation is said at once, at its place.
func TestCheck(t *testing.T) {
	if err := mixed(at(4, 10, 0), 26).Check(); err != nil {
		t.Error(err)
	}
	bad := bench.Observation{
		Version: 7,
		Kind:    bench.SawRise,
		Bread:   "a\x1b[31m",
		Rise:    &bench.SeenRise{Rise: quantity.NewPercent(900)},
		Core:    &bench.SeenCore{},
	}
	var paths []string
	for _, e := range quantity.InputErrors(bad.Check()) {
		paths = append(paths, e.Path)
	}
	if diff := cmp.Diff([]string{"v", "at", "bread", "core", "rise.rise", "core.core"}, paths); diff != "" {
		t.Error(diff)
	}
}

// Observations come back equal from JSON, whatever they are of.
func TestRoundTrip(t *testing.T) {
	when := at(4, 10, 0)
	all := bench.Observations{
		mixed(when, 26),
		risen(when, 20),
		{Version: 1, At: when, Kind: bench.SawNote, Note: "pale"},
		{Version: 1, At: when, Kind: bench.SawStep, Step: "fold-1", Sure: true, By: "Ueli"},
	}
	b, err := json.Marshal(all)
	if err != nil {
		t.Fatal(err)
	}
	var back bench.Observations
	if err := json.Unmarshal(b, &back); err != nil {
		t.Fatal(err)
	}
	same := cmp.Comparer(func(a, b time.Time) bool { return a.Equal(b) })
	if diff := cmp.Diff(all, back, same); diff != "" {
		t.Error(diff)
	}
}

// A context that ended is no answer about the day.
func TestContext(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	_, err := bench.Under{Bake: hall(t)}.At(ctx, clock(at(4, 6, 0)))
	if !errors.Is(err, context.Canceled) {
		t.Error(err)
	}
}

// Of no bakes there is no score.
func TestScore(t *testing.T) {
	if got := (bench.Score{}).Message().ID(); got != "bench.no_score" {
		t.Error(got)
	}
}

// What a log of one whole bake teaches, and what each part of it is missed for.
func TestLessons(t *testing.T) {
	when := at(4, 11, 0)
	m := bench.Observation{Version: 1, At: when, Kind: bench.SawMixed, Bread: "hall", Mix: &bench.DoughMixed{
		Dough: quantity.Celsius(25.5),
		Flour: quantity.Celsius(21), Water: quantity.Celsius(17), Levain: quantity.Celsius(22),
		FlourWeight:  quantity.Grams(1375),
		WaterWeight:  quantity.Grams(906),
		LevainWeight: quantity.Grams(375), Mixer: mixing.Planetary, Slow: quantity.Elapsed(3 * time.Minute),
		Fast:        quantity.Elapsed(8 * time.Minute),
		Inoculation: quantity.NewPercent(12),
		Hydration:   quantity.NewPercent(70), Salt: quantity.NewPercent(2.1), Room: quantity.Celsius(22),
		Rise: quantity.NewPercent(28),
	}}
	rise := risen(when.Add(2*time.Hour), 15)
	rise.Rise.Error = quantity.NewPercent(4)
	ready := bench.Observation{
		Version: 1,
		At:      when.Add(3 * time.Hour),
		Kind:    bench.SawReady,
		Bread:   "hall",
		Ready: &bench.ReadyDough{
			Rise: quantity.NewPercent(28), Readings: []ferment.Knot{{Temperature: quantity.Celsius(25.5)},
				{At: quantity.Elapsed(time.Hour), Temperature: quantity.Celsius(25.2)}},
		},
	}
	weights := bench.Observation{
		Version: 1,
		At:      when.Add(22 * time.Hour),
		Kind:    bench.SawWeights,
		Weights: &bench.LoafWeights{In: quantity.Grams(897), Out: quantity.Grams(781), Style: bake.LeanHearth},
	}
	all := bench.Observations{weights, ready, rise, m}
	l, err := all.Learn(0)
	if err != nil {
		t.Fatal(err)
	}
	if got := l.Culture(bench.ByLevain).Bakes(); got != 1 || !l.Culture(bench.ByYeast).IsZero() {
		t.Errorf("%d bakes with levain, and of yeast %v", got, l.Culture(bench.ByYeast))
	}
	if x, ok := l.Mixer(mixing.Planetary); !ok || x.Learned.Batches != 1 {
		t.Errorf("%+v", x)
	}
	if x, ok := l.Loss(bake.LeanHearth); !ok || x.Count != 1 {
		t.Errorf("%+v", x)
	}
	b := all.Bakes()[0]
	one, why := b.Taught()
	if !why.IsZero() || one.Took.Duration() != 3*time.Hour || one.Bulk.Rise != quantity.NewPercent(28) ||
		one.Bulk.History.At(30*time.Minute).Celsius() < 25.2 {
		t.Errorf("%v: %v, %v", why, one.Took, one.Bulk.Rise)
	}
	b.Ready = nil // without it the last reading counts
	if one, why := b.Taught(); !why.IsZero() || one.Took.Duration() != 2*time.Hour ||
		one.Error != quantity.NewPercent(4) {
		t.Errorf("%v: %v", why, one.Took)
	}
	b.Mix.Hydration, b.Mix.Inoculation, b.Mix.Flour = quantity.Percent{}, quantity.Percent{}, quantity.Temperature{}
	if _, why := b.Taught(); why.String() != "not logged: inoculation or yeast and hydration" {
		t.Error(why)
	}
	if _, why := b.Batch(); why.String() != "not logged: flour temperature" {
		t.Error(why)
	}
	for _, o := range all {
		says, err := all.Until(o.At).Tells(o)
		if err != nil || len(says) == 0 {
			t.Errorf("%v: says %v, %v", o, says, err)
		}
	}
	text := l.Report().Text(report.Options{})
	for _, want := range []string{"The mixer: planetary", "learned from this many bakes", "lean hearth"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in\n%s", want, text)
		}
	}
	if b, err := json.Marshal(l); err != nil || !strings.Contains(string(b), `"raising":"levain"`) {
		t.Errorf("%s, %v", b, err)
	}
}
