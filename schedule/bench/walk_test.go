package bench_test

import (
	"context"
	"fmt"
	"strings"
	"testing"
	"time"

	"example.org/maslin/bake"
	"example.org/maslin/dough"
	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/internal/trial"
	"example.org/maslin/schedule/bakeday"
	"example.org/maslin/schedule/bench"
)

// walk is a day of a kitchen, gone through from moment to moment.
type walk struct {
	t     *testing.T
	order bakeday.Order
	seen  bench.Observations
	out   strings.Builder
	told  map[string]bool
}

func newWalk(t *testing.T, order bakeday.Order, seen ...bench.Observation) *walk {
	return &walk{t: t, order: order, seen: seen, told: map[string]bool{}}
}

func (w *walk) at(now time.Time) bench.KitchenNow {
	w.t.Helper()
	k, err := bench.KitchenUnder{Order: w.order, Observations: w.seen}.At(context.Background(), clock(now))
	if err != nil {
		w.t.Fatal(err)
	}
	return k
}

// sees notes an observation of a bread.
func (w *walk) sees(bread string, o bench.Observation) {
	o.Bread = bread
	w.seen = append(w.seen, o)
}

// tell keeps what is told at a moment: the page, with no more than the subjects of its cautions; what may be done; and
// what there is to write down. A line that stood on an earlier page is left out where it says what to do.
func (w *walk) tell(now time.Time) {
	w.t.Helper()
	k := w.at(now)
	page := k.Report()
	var subjects []string
	for _, c := range page.Cautions {
		subjects = append(subjects, string(c.Subject))
	}
	page.Cautions = nil
	known := false
	for _, line := range strings.Split(strings.TrimSpace(page.Text(report.Options{Width: 100})), "\n") {
		if strings.HasPrefix(line, "  · ") {
			known = w.told[line]
			w.told[line] = true
		} else if !strings.HasPrefix(line, "    ") { // which goes on with the line before it
			known = false
		}
		if line != "" && !known {
			fmt.Fprintln(&w.out, line)
		}
	}
	fmt.Fprintf(&w.out, "Take care: %s\n", strings.Join(subjects, ", "))
	var due []string
	for _, s := range k.StepsDue() {
		due = append(due, s.Bread+"/"+s.ID)
	}
	fmt.Fprintf(&w.out, "Done may be: %s\n", strings.Join(due, " "))
	for _, e := range k.Expected() {
		o := e.Observation
		if o.Version != bench.Format && !o.Sure {
			w.t.Errorf("%v: %v is of version %d", now, o, o.Version)
		}
		fmt.Fprintf(&w.out, "Write down, %v: %s, %s: %v\n", e.Says, o.At.Format("Mon 15:04"), o.Bread, o)
	}
	fmt.Fprintln(&w.out)
}

func (w *walk) kept(file string) { trial.Kept(w.t, file, w.out.String()) }

// begins is when a step begins by the plan as it stands at a moment.
func (w *walk) begins(now time.Time, bread, id string) time.Time {
	return begins(w.t, w.at(now), bread, id)
}

func follows(bread string, made time.Time) bench.Observation {
	return bench.Observation{Version: bench.Format, At: made, Kind: bench.SawPlan, Bread: bread,
		Plan: &bench.FollowedPlan{Made: made, Wanted: at(5, 12, 30)}}
}

// A loaf with walnuts and rolls with milk out of one mixer, from the first step to the scale: everything that is told
// at the bench while each is mixed, read, shaped, baked and weighed.
func TestADayFromTheFirstStepToTheScale(t *testing.T) {
	made := at(4, 6, 0)
	loaf, rolls := hall(t), two(t).Bakes[1]
	loaf.Name = "nut"
	loaf.Bulk.Folds, loaf.Bulk.FoldEvery = 2, quantity.Elapsed(40*time.Minute)
	loaf.Inclusions = []bakeday.Ingredient{
		{Name: "walnuts", Percent: quantity.NewPercent(12), Kind: dough.KindNuts, Fold: 2},
	}
	loaf.Notes = []bakeday.StepNote{{Step: "shape", Says: "flour the baskets with rye"}}
	loaf.Kitchen.Pots = 2
	rolls.Liquids = []bakeday.Ingredient{
		{Name: "milk", Percent: quantity.NewPercent(40), Kind: dough.KindMilk},
		{Name: "water", Percent: quantity.NewPercent(30)},
	}
	rolls.Kitchen.Pots = 2
	rolls.Soakers = []bakeday.SoakerWork{{Name: "soaked rye", Kind: dough.ColdSoaker,
		Parts: []bakeday.SoakerPart{{Name: "rye", Percent: quantity.NewPercent(5)},
			{Name: "water", Percent: quantity.NewPercent(5)}},
		AtLeast: quantity.Elapsed(30 * time.Minute), AtMost: quantity.Elapsed(90 * time.Minute)}}
	w := newWalk(t, bakeday.Order{Bakes: []bakeday.Bake{loaf, rolls}}, follows("nut", made), follows("rolls", made))
	step := func(bread, id string, when time.Time) {
		o := ticked(id, when)
		w.sees(bread, o)
	}
	feed := w.begins(made, "nut", "feed")
	w.tell(feed.Add(-20 * time.Second))
	w.tell(feed.Add(5 * time.Minute))
	step("nut", "feed", feed.Add(10*time.Minute))
	mix := w.begins(made, "nut", "mix-1")
	w.tell(mix.Add(-time.Hour))
	w.tell(mix.Add(time.Minute))
	bulk := mix.Add(27 * time.Minute)
	step("nut", "mix-1", bulk)
	w.tell(bulk.Add(time.Minute))
	o := mixed(bulk, 25.2)
	w.sees("nut", o)
	w.tell(bulk.Add(time.Minute))
	w.tell(bulk.Add(50 * time.Minute))
	w.sees("nut", risen(bulk.Add(100*time.Minute), 14))
	w.tell(bulk.Add(101 * time.Minute))
	ready := bulk.Add(130 * time.Minute)
	w.sees("nut", readied(ready, 26))
	w.tell(ready.Add(time.Minute))
	step("nut", "shape", ready.Add(35*time.Minute))
	w.tell(ready.Add(36 * time.Minute))
	morning := at(5, 6, 40)
	w.tell(morning)
	mix = w.begins(morning, "rolls", "mix-1")
	w.tell(mix.Add(time.Minute))
	bulk = mix.Add(25 * time.Minute)
	step("rolls", "mix-1", bulk)
	w.tell(bulk.Add(20 * time.Minute))
	load := w.begins(bulk, "nut", "bake-1")
	w.tell(load.Add(2 * time.Minute))
	core := func(after time.Duration, celsius float64, out bool) bench.Observation {
		return saw(load.Add(after), bench.SawCore, func(o *bench.Observation) {
			o.Core = &bench.SeenCore{Core: quantity.Celsius(celsius), Out: out}
		})
	}
	shape := w.begins(load, "rolls", "shape")
	step("rolls", "shape", shape.Add(35*time.Minute))
	step("nut", "vent-1", load.Add(23*time.Minute))
	w.sees("nut", core(30*time.Minute, 84, false))
	w.sees("nut", core(34*time.Minute, 89, false))
	w.tell(load.Add(41 * time.Minute))
	w.sees("nut", core(45*time.Minute, 97, true))
	step("nut", "bake-1", load.Add(45*time.Minute))
	w.tell(load.Add(46 * time.Minute))
	w.tell(at(5, 11, 50))
	w.tell(at(5, 13, 0))
	w.kept("day.txt")
}

// Two doughs of one levain, rye and wheat, one of them with a poolish too: the levain they share is told once, by its
// own name, and what each dough shows in words of its own.
func TestADayOfASharedLevain(t *testing.T) {
	made := at(3, 20, 0)
	rye, wheat := hall(t), hall(t)
	rye.Name, wheat.Name = "80 % rye", "wheat"
	rye.Flours[0].Percent, rye.Flours[1].Percent = quantity.NewPercent(20), quantity.NewPercent(80)
	for _, b := range []*bakeday.Bake{&rye, &wheat} {
		l := *b.Levain
		l.Name, l.Flour = "sour", "rye"
		b.Levain = &l
	}
	wheat.Levain.Prefermented = quantity.NewPercent(6)
	wheat.Others = []bakeday.Ingredient{
		{Name: "yeast", Percent: quantity.NewPercent(0.03), Kind: dough.KindInstantYeast},
	}
	wheat.Preferments = []bakeday.PrefermentWork{{Name: "poolish", Kind: dough.Poolish,
		Prefermented: quantity.NewPercent(20), Hydration: quantity.NewPercent(100), Flour: "wheat",
		Yeast: quantity.NewPercent(0.1)}}
	rye.Retard = nil
	rye.Loaves.Style = bake.Pan
	w := newWalk(t, bakeday.Order{Bakes: []bakeday.Bake{rye, wheat}}, follows("80 % rye", made), follows("wheat", made))
	w.tell(made)
	for _, at := range []struct{ bread, id string }{
		{"80 % rye", "feed"}, {"80 % rye", "ripen"}, {"wheat", "mix-1"}, {"80 % rye", "bulk"}, {"80 % rye", "proof"},
		{"wheat", "bulk"}, {"80 % rye", "cool"},
	} {
		fmt.Fprintf(&w.out, "== %s of %s\n", at.id, at.bread)
		w.tell(w.begins(made, at.bread, at.id).Add(3 * time.Minute))
	}
	w.kept("shared.txt")
}

// What bakes of a kitchen have taught is told with the plan that rests on it, of which bread where there are two.
func TestAPlanThatRestsOnWhatWasLearned(t *testing.T) {
	made := at(4, 6, 0)
	var all bench.Observations
	for day := range 4 {
		o := measured(time.Date(2026, 11, 1+7*day, 9, 0, 0, 0, zurich), mixing.Planetary)
		o.Mix.Dough = quantity.Celsius(25 + 0.5*float64(day))
		all = append(all, o, readied(o.At.Add(150*time.Minute), 28), weighed(o.At.Add(9*time.Hour), 900, 770-float64(day)))
	}
	w := newWalk(t, bakeday.Order{Bakes: []bakeday.Bake{hall(t)}}, all...)
	w.tell(made)
	w.order = two(t)
	w.tell(made)
	l, err := all.Learn(0)
	if err != nil {
		t.Fatal(err)
	}
	next, err := l.NextPlan(context.Background(), hall(t), clock(made))
	if err != nil {
		t.Fatal(err)
	}
	same, err := bench.Lessons{}.NextPlan(context.Background(), hall(t), clock(made))
	if page := same.Report(); err != nil || len(page.Sections) != 1 || len(page.RestsOn) > 0 {
		t.Errorf("of nothing that was learned: %v, %v", page.Text(report.Options{}), err)
	}
	o := report.Options{Width: 110}
	w.kept("restson.txt")
	trial.Kept(t, "nextplan.txt", next.Report().Text(o)+"\n"+l.Report().Text(o))
}

// What becomes of a day on which the mixing, the shaping or the dough itself is hours late, or the loaf comes out late:
// what moves, what fits no more, and what would be enough by itself.
func TestADayThatIsLate(t *testing.T) {
	made, plan := followed()
	bulk, _ := moment(t, made.Add(time.Minute), plan).Step("bulk")
	out := ""
	for _, c := range []struct {
		name string
		o    bench.Observation
	}{
		{"mixed three hours late", ticked("mix-1", bulk.Start.Add(3*time.Hour))},
		{"shaped seven hours late", ticked("shape", bulk.Start.Add(10*time.Hour))},
		{"mixed cold", mixed(bulk.Start, 18)},
		{"out of the oven an hour late", ticked("bake-1", at(5, 11, 29))},
	} {
		w := newWalk(t, bakeday.Order{Bakes: []bakeday.Bake{hall(t)}}, plan, c.o)
		w.tell(c.o.At.Add(time.Minute))
		out += "== " + c.name + "\n" + w.out.String()
	}
	trial.Kept(t, "late.txt", out)
}
