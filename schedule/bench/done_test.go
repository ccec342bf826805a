package bench_test

import (
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/schedule"
	"example.org/maslin/schedule/bakeday"
	"example.org/maslin/schedule/bench"
)

// ticked is a step of the hall's bread that was done at a moment.
func ticked(step string, when time.Time) bench.Observation {
	return bench.Observation{Version: bench.Format, At: when, Kind: bench.SawStep, Bread: "hall", Step: step}
}

// followed is the plan of the hall's bread for Saturday, made on Thursday evening.
func followed() (made time.Time, plan bench.Observation) {
	made = at(3, 20, 0)
	return made, bench.Observation{
		Version: bench.Format, At: made, Kind: bench.SawPlan, Bread: "hall",
		Plan: &bench.FollowedPlan{Made: made, Wanted: at(5, 12, 30)},
	}
}

// What is done is done: a bulk that was ended, and a dough that was said to be ready or was shaped, is not waited for,
// however early that was, and the next step follows at once.
func TestWhatIsDoneIsDone(t *testing.T) {
	made, plan := followed()
	start := moment(t, made.Add(time.Minute), plan)
	bulk, _ := start.Step("bulk")
	shape, _ := start.Step("shape")
	early := bulk.Start.Add(70 * time.Minute)
	if least := start.Day.Rising.Bulk.Ready().Early; early.Sub(bulk.Start) >= least {
		t.Fatalf("not early: the range begins after %v", least)
	}
	ready := bench.Observation{
		Version: bench.Format, At: early, Kind: bench.SawReady, Bread: "hall",
		Ready: &bench.ReadyDough{Rise: quantity.NewPercent(25)},
	}
	begun := mixed(bulk.Start, 26)
	for name, said := range map[string]bench.Observations{
		"the bulk is ticked off":             {plan, begun, ticked("bulk", early)},
		"the dough is said to be ready":      {plan, begun, ready},
		"ready, and its mixing was ticked":   {plan, ticked("mix-1", bulk.Start), ready},
		"the bulk, and no mixing was logged": {plan, ticked("bulk", early)},
	} {
		m := moment(t, early.Add(5*time.Minute), said...)
		if now, _ := m.Step("shape"); !now.Start.Equal(early) {
			t.Errorf("%s: shaped at %v, want %v", name, now.Start, early)
		}
		if m.Changed == nil || !m.Changed.Possible() || m.Changed.Allowed.Sign() != 0 {
			t.Errorf("%s: changed %v", name, m.Changed)
		}
		for _, s := range m.UnderWay() {
			if s.ID != "shape" {
				t.Errorf("%s: %v is under way", name, s.ID)
			}
		}
		if next, ok := m.Next(); !ok || next.ID != "shape" {
			t.Errorf("%s: next is %v", name, next.ID)
		}
		page := m.Report().Text(report.Options{})
		if strings.Contains(page, "will be behind") || strings.Contains(page, "should be at") {
			t.Errorf("%s: %s", name, page)
		}
		// Shaped in ten minutes, where the plan has more.
		done := early.Add(10 * time.Minute)
		for _, again := range []bench.Observations{append(said[:len(said):len(said)], ticked("shape", done)),
			{plan, ticked("shape", done)}} {
			m = moment(t, done.Add(time.Minute), again...)
			retard, _ := m.Step("retard")
			if !retard.Start.Equal(done) || m.Changed == nil || !m.Changed.Possible() {
				t.Errorf("%s, and shaped: cold from %v, want %v; changed %v", name, retard.Start, done, m.Changed)
			}
			if all := m.UnderWay(); len(all) != 1 || all[0].ID != "retard" {
				t.Errorf("%s, and shaped: under way %v", name, all)
			}
		}
	}
	if shape.Start.Sub(early) < time.Hour {
		t.Fatalf("the plan shapes at %v, which shows nothing", shape.Start)
	}
	over := moment(t, at(5, 14, 0), plan, ticked("shape", early))
	if page := over.Report().Text(report.Options{}); strings.Contains(page, "plan changes") {
		t.Errorf("when all is over: %s", page)
	}
}

// Folds that were not done when the dough was ready are no longer due.
func TestNoFoldAfterTheBulk(t *testing.T) {
	b := hall(t)
	b.Bulk.Folds, b.Bulk.FoldEvery = 2, quantity.Elapsed(40*time.Minute)
	made, plan := followed()
	day := func(now time.Time, said ...bench.Observation) bench.DayNow {
		m, err := bench.Under{Bake: b, Observations: said}.At(t.Context(), clock(now))
		if err != nil {
			t.Fatal(err)
		}
		return m
	}
	fold, ok := day(made.Add(time.Minute), plan).Step("fold-2")
	if !ok {
		t.Fatal("no second fold")
	}
	when := fold.Start.Add(-15 * time.Minute)
	m := day(when.Add(2*time.Minute), plan, ticked("bulk", when))
	for _, s := range append(m.Later(20), m.StepsDue()...) {
		if s.Kind == schedule.Fold {
			t.Errorf("%s is still to come at %v", s.ID, s.Start)
		}
	}
	if next, _ := m.Next(); next.ID != "shape" {
		t.Errorf("next is %s", next.ID)
	}
}

// A reading counts from the mixing that was ticked off, where none was logged.
func TestReadingsCountFromTheMixingThatWasTicked(t *testing.T) {
	made, plan := followed()
	bulk, _ := moment(t, made.Add(time.Minute), plan).Step("bulk")
	when := bulk.Start.Add(20 * time.Minute)
	read := bench.Observation{
		Version: bench.Format, At: when.Add(75 * time.Minute), Kind: bench.SawRise,
		Rise: &bench.SeenRise{Rise: quantity.NewPercent(15)},
	}
	m := moment(t, read.At.Add(5*time.Minute), plan, ticked("mix-1", when), read)
	if !m.Mixed.Equal(when) || m.Dough == nil || len(m.Dough.Rises) != 1 || len(m.Progress.Now.Readings()) != 1 {
		t.Errorf("mixed %v, want %v; dough %v", m.Mixed, when, m.Dough)
	}
	page := strings.Join(strings.Fields(m.Report().Text(report.Options{})), " ")
	if !strings.Contains(page, "risen by 15 %") || !strings.Contains(page, "earlier than expected") ||
		!strings.Contains(page, "by what was read, which may be some points off") {
		t.Error(page)
	}
	m.Dough.Rises[0].Rise = nil // put together by somebody else
	m.Dough.Ready = &bench.Observation{At: when}
	page = m.Report().Text(report.Options{})
	if strings.Contains(page, "risen by 15 %") || strings.Contains(page, "ready at") {
		t.Error(page)
	}
}

// "It is done" means what is over by the plan and was not ticked off, not what has just begun; of several it is asked.
func TestWhichStepMayBeDone(t *testing.T) {
	step := func(id string, kind schedule.StepKind, from, takes int) bakeday.StepData {
		start := at(4, 16, 0).Add(time.Duration(from) * time.Minute)
		return bakeday.StepData{
			ID: id, Kind: kind, Hands: true, Start: start, End: start.Add(time.Duration(takes) * time.Minute),
		}
	}
	steps := []bakeday.StepData{
		step("feed", schedule.Feed, -480, 10), step("mix-1", schedule.Mix, 0, 25), step("mix-2", schedule.Mix, 25, 25),
		step("fold-1", schedule.Fold, 95, 5), step("fold-2", schedule.Fold, 140, 5), step("shape", schedule.Shape, 200, 40),
	}
	for _, c := range []struct {
		minute int
		done   string
		want   string
	}{
		{-490, "", ""},
		{-475, "", "feed"},
		{10, "feed", "mix-1"},
		{26, "feed", "mix-1"}, // the next has just begun
		{26, "", "feed mix-1 mix-2"},
		{27, "feed mix-1", "mix-2"},
		{27, "mix-1", "mix-2"}, // what comes before what is done is done
		{50, "feed", "mix-1 mix-2"},
		{146, "mix-2", "fold-2"},
		{97, "mix-2", "fold-1"},
		{230, "mix-2 fold-2", "shape"},
	} {
		m := bench.DayNow{Now: at(4, 16, 0).Add(time.Duration(c.minute) * time.Minute), Steps: steps,
			Done: map[string]time.Time{}}
		for _, id := range strings.Fields(c.done) {
			m.Done[id] = m.Now
		}
		var got []string
		for _, s := range m.StepsDue() {
			got = append(got, s.ID)
		}
		if strings.Join(got, " ") != c.want {
			t.Errorf("at minute %d with %q done: %v, want %q", c.minute, c.done, got, c.want)
		}
	}
}

// A bread that has just gone in is not what is done, and it is when it has been in for half of its time.
func TestBreadThatJustWentInIsNotDone(t *testing.T) {
	made, plan := followed()
	start := moment(t, made.Add(time.Minute), plan)
	bake, ok := start.Step("bake-1")
	if !ok {
		t.Fatal("no bake")
	}
	half := bake.End.Sub(bake.Start) / 2
	for after, want := range map[time.Duration]bool{3 * time.Minute: false, half - time.Minute: false, half: true} {
		m := moment(t, bake.Start.Add(after), plan, ticked("mix-1", at(4, 17, 0)), ticked("shape", at(4, 21, 0)))
		got := false
		for _, s := range m.StepsDue() {
			got = got || s.ID == "bake-1"
		}
		if got != want {
			t.Errorf("%v after loading: due %v, want %v", after, got, want)
		}
	}
}

// The page says one range of the dough, what comes before the next work of hands, and that nothing is left.
func TestPageOfAMoment(t *testing.T) {
	made, plan := followed()
	start := moment(t, made.Add(time.Minute), plan)
	bulk, _ := start.Step("bulk")
	retard, _ := start.Step("retard")
	page := func(when time.Time, seen ...bench.Observation) string {
		m := moment(t, when, append([]bench.Observation{plan}, seen...)...)
		return m.Report().Text(report.Options{})
	}
	rising := page(bulk.Start.Add(time.Hour), mixed(bulk.Start, 24))
	if strings.Count(rising, "by the clock: ") != 1 {
		t.Errorf("two ranges of one dough: %s", rising)
	}
	cold := page(retard.Start.Add(-2*time.Minute), mixed(bulk.Start, 26), ticked("shape",
		retard.Start.Add(-2*time.Minute)))
	before, after, found := strings.Cut(cold, "Until then")
	if !found || strings.Contains(before, "cold retard") || !strings.Contains(strings.SplitN(after, "After that", 2)[0],
		"cold retard") {
		t.Errorf("the cold comes before the oven: %s", cold)
	}
	if over := page(at(5, 12, 45)); !strings.Contains(over, "Nothing of this plan is left to do.") {
		t.Errorf("nothing is left: %s", over)
	}
	if strings.Contains(cold, "Nothing of this plan") {
		t.Error("something is left")
	}
}
