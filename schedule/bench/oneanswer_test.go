package bench_test

import (
	"context"
	"encoding/json"
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/ferment"
	"example.org/maslin/schedule"
	"example.org/maslin/schedule/bakeday"
	"example.org/maslin/schedule/bench"
	"github.com/google/go-cmp/cmp"
)

func alone(t testing.TB, b bakeday.Bake, now time.Time, all ...bench.Observation) bench.KitchenNow {
	t.Helper()
	k, err := bench.KitchenUnder{Order: bakeday.Order{Bakes: []bakeday.Bake{b}}, Observations: all}.At(
		context.Background(), clock(now))
	if err != nil {
		t.Fatal(err)
	}
	return k
}

// A kitchen of one bread asks for the same steps as that bread, and says why its day does not fit.
func TestOneBreadIsAsked(t *testing.T) {
	made, plan := followed()
	start := moment(t, made.Add(time.Minute), plan)
	bulk, _ := start.Step("bulk")
	for _, now := range []time.Time{bulk.Start.Add(time.Minute), bulk.End.Add(time.Minute), at(5, 12, 0)} {
		ids := func(all []bakeday.StepData) (out []string) {
			for _, s := range all {
				out = append(out, s.ID)
			}
			return out
		}
		if d := cmp.Diff(ids(moment(t, now, plan).StepsDue()), ids(alone(t, hall(t), now, plan).StepsDue())); d != "" {
			t.Errorf("at %v: %s", now, d)
		}
	}
	unnamed := hall(t)
	unnamed.Name = ""
	k := alone(t, unnamed, at(4, 6, 0))
	first := k.Breads[0].Steps[0]
	follow := bench.Observation{Version: bench.Format, At: k.Now, Kind: bench.SawPlan,
		Plan: &bench.FollowedPlan{Made: k.Now, Wanted: at(5, 12, 30)}}
	done := bench.Observation{Version: bench.Format, At: first.End, Kind: bench.SawStep, Step: first.ID}
	for _, s := range alone(t, unnamed, first.End.Add(time.Minute), follow, done).StepsDue() {
		if s.ID == first.ID {
			t.Errorf("%s is done and due", s.ID)
		}
	}
	late := alone(t, hall(t), at(5, 9, 0))
	if late.Day.Possible() || len(late.Report().Section("why").Blocks) == 0 {
		t.Errorf("wanted in three hours: %s", late.Report().Text(report.Options{}))
	}
}

// What is doubted is offered to be said again, surely; and the core that a probe shows first is a little below that of
// a loaf that comes out.
func TestWhatIsExpectedNext(t *testing.T) {
	made, plan := followed()
	start := moment(t, made.Add(time.Minute), plan)
	bulk, _ := start.Step("bulk")
	soon := ticked("bulk", bulk.Start.Add(5*time.Minute))
	hot := saw(soon.At, bench.SawCore, func(o *bench.Observation) {
		o.Core = &bench.SeenCore{Core: quantity.Celsius(120)}
	})
	var sure []bench.Observation
	for _, e := range alone(t, hall(t), soon.At.Add(time.Minute), plan, mixed(bulk.Start, 26), hot, soon).Expected() {
		if e.Observation.Sure {
			sure = append(sure, e.Observation)
		}
	}
	if len(sure) != 1 || sure[0].Step != "bulk" || !sure[0].At.Equal(soon.At) || sure[0].Bread != "hall" {
		t.Errorf("said again: %v", sure)
	}
	load, _ := start.Step("bake-1")
	var cores []bench.SeenCore
	for _, e := range alone(t, hall(t), load.Start.Add(10*time.Minute), plan).Expected() {
		if c := e.Observation.Core; c != nil {
			cores = append(cores, *c)
		}
	}
	target := start.Day.Baking.Target.Core
	if len(cores) != 2 || cores[0].Out || !cores[1].Out ||
		!(math.Abs(cores[1].Core.Sub(target).Celsius()) <= 0.5) ||
		cores[1].Core.Sub(cores[0].Core) != quantity.DeltaCelsius(2) {
		t.Errorf("cores %+v", cores)
	}
}

// A levain that feeds two breads is fed once, by its own name, and what it takes is told with it.
func TestASharedLevainIsFedOnce(t *testing.T) {
	order := bakeday.Order{Bakes: []bakeday.Bake{hall(t), hall(t)}}
	order.Bakes[1].Name = "plain"
	for i := range order.Bakes {
		l := *order.Bakes[i].Levain
		l.Name, l.Flour = "sour", "rye"
		order.Bakes[i].Levain = &l
	}
	ctx := context.Background()
	start, err := bench.KitchenUnder{Order: order}.At(ctx, clock(at(3, 20, 0)))
	if err != nil || !start.Day.Possible() {
		t.Fatal(start, err)
	}
	feed := begins(t, start, "hall", "feed")
	k, err := bench.KitchenUnder{Order: order}.At(ctx, clock(feed.Add(-time.Minute)))
	if err != nil {
		t.Fatal(err)
	}
	page := strings.Join(strings.Fields(k.Report().Text(report.Options{Width: 200})), " ")
	if n := strings.Count(page, "feed sour, for hall and plain"); n != 1 {
		t.Errorf("fed %d times: %s", n, page)
	}
	for _, list := range k.Day.Data().Levains {
		for _, l := range list.Lines {
			if want := l.Mass.String() + " " + l.Name; !strings.Contains(page, want) {
				t.Errorf("no %s in %s", want, page)
			}
		}
	}
}

// Where one liquid is poured and it is not water, its name is said.
func TestTheOneLiquidIsNamed(t *testing.T) {
	b := hall(t)
	b.Liquids = []bakeday.Ingredient{{Name: "whole milk", Percent: quantity.NewPercent(75), Kind: dough.KindMilk}}
	b.Levain, b.Retard = nil, nil
	b.Preferments = nil
	b.Others = []bakeday.Ingredient{{Name: "yeast", Percent: quantity.NewPercent(1), Kind: dough.KindInstantYeast}}
	m, err := bench.Under{Bake: b}.At(context.Background(), clock(at(4, 6, 0)))
	if err != nil {
		t.Fatal(err)
	}
	i := slices.IndexFunc(m.Steps, func(s bakeday.StepData) bool { return s.Kind == schedule.Mix })
	var says []string
	for _, s := range m.LookFor(m.Steps[i]) {
		says = append(says, s.String())
	}
	if text := strings.Join(says, "; "); !strings.Contains(text, " of whole milk at ") || strings.Contains(text, "water") {
		t.Error(text)
	}
}

// While nothing is under way the data tells what to do next.
func TestTheDataTellsWhatToDoNext(t *testing.T) {
	m := moment(t, at(3, 20, 0))
	text, err := json.Marshal(m)
	if err != nil {
		t.Fatal(err)
	}
	var data struct {
		LookFor  []json.RawMessage  `json:"look_for"`
		UnderWay []bakeday.StepData `json:"under_way"`
		Next     bakeday.StepData   `json:"next"`
	}
	if err := json.Unmarshal(text, &data); err != nil {
		t.Fatal(err)
	}
	next, ok := m.Next()
	if !ok || len(data.UnderWay) > 0 || data.Next.ID != next.ID || len(data.LookFor) != len(m.LookFor(next)) ||
		len(data.LookFor) == 0 {
		t.Errorf("next %v, under way %v, to do %s", next.ID, data.UnderWay, data.LookFor)
	}
}

// What raises a dough that is planned is what raised one that is logged.
func TestRaisedBy(t *testing.T) {
	p := quantity.NewPercent
	fresh := ferment.Yeast{Kind: ferment.FreshYeast, Amount: p(0.5)}
	for want, b := range map[bench.Raising]ferment.Bulk{0: {}, bench.ByLevain: {Inoculation: p(12)},
		bench.ByYeast: {Yeast: fresh}, bench.ByLevainAndYeast: {Inoculation: p(12), Yeast: fresh}} {
		if got := bench.RaisingOf(b); got != want {
			t.Errorf("%v, want %v", got, want)
		}
		if yeast, levain := !b.Yeast.Amount.IsZero(), !b.Inoculation.IsZero(); want != 0 &&
			(strings.Contains(want.String(), "yeast") != yeast || strings.Contains(want.String(), "levain") != levain) {
			t.Errorf("levain %v and yeast %v are told as %v", levain, yeast, want)
		}
		m := bench.DoughMixed{Inoculation: b.Inoculation, Yeast: b.Yeast.Amount, YeastKind: b.Yeast.Kind}
		if got := m.RaisedBy(); got != want {
			t.Errorf("logged %v, want %v", got, want)
		}
	}
}

// A dough of known weight goes toward its room for two days.
func TestADoughFollowsItsRoom(t *testing.T) {
	o := mixed(at(4, 10, 0), 30)
	bulk, missing, err := o.Mix.Bulk(nil)
	if err != nil || len(missing) > 0 {
		t.Fatal(missing, err)
	}
	for hours, within := range map[int]float64{24: 0.5, 47: 0.2} {
		if got := bulk.History.At(time.Duration(hours) * time.Hour); !(math.Abs(got.Celsius()-22) <= within) {
			t.Errorf("after %d h in 22 °C: %v", hours, got)
		}
	}
}

// Of two readings of one minute the later one counts.
func TestReadTwiceInOneMinute(t *testing.T) {
	o := mixed(at(4, 10, 0), 26)
	bulk, _, err := o.Mix.Bulk(nil)
	if err != nil {
		t.Fatal(err)
	}
	bulk.Rise = o.Mix.Rise
	ready := func(percents ...float64) quantity.TimeRange {
		b := bench.LoggedBake{Mixed: o.At, Mix: *o.Mix}
		for _, x := range percents {
			b.Rises = append(b.Rises, risen(o.At.Add(2*time.Hour), x))
		}
		p, err := b.Progress(bulk)
		if err != nil {
			t.Fatal(err)
		}
		return p.Now.Ready()
	}
	if twice, once := ready(8, 14), ready(14); twice != once || ready(8) == once {
		t.Errorf("read twice %v, once %v", twice, once)
	}
}

// A step that was ticked off when it was planned first was done then, though another bread has moved it since: the plan
// that is made again goes by what was done.
func TestWhatWasDoneAsPlannedFirstIsDone(t *testing.T) {
	made := at(4, 6, 0)
	order := bakeday.Order{Bakes: []bakeday.Bake{hall(t), hall(t)}}
	order.Bakes[1].Name = "rolls"
	see := func(now time.Time, all ...bench.Observation) bench.KitchenNow {
		k, err := bench.KitchenUnder{Order: order, Observations: append(following(made), all...)}.At(
			context.Background(), clock(now))
		if err != nil {
			t.Fatal(err)
		}
		return k
	}
	end := func(k bench.KitchenNow, bread, id string) time.Time {
		for _, m := range k.Breads {
			if s, ok := m.Step(id); ok && m.Name == bread {
				return s.End
			}
		}
		t.Fatalf("no %s of %s", id, bread)
		return time.Time{}
	}
	start := see(made)
	for _, c := range []struct {
		moves string // its mixing, by so many minutes
		by    time.Duration
		other string
	}{{"hall", -30, "rolls"}, {"rolls", 20, "hall"}} {
		mix := ticked("mix-1", end(start, c.moves, "mix-1").Add(c.by*time.Minute))
		mix.Bread = c.moves
		planned := end(start, c.other, "shape")
		now := planned.Add(time.Minute)
		if moved := end(see(now, mix), c.other, "shape"); moved.Sub(planned).Abs() < 5*time.Minute {
			t.Fatalf("the %s do not move the %s, which shows nothing", c.moves, c.other)
		}
		shape := ticked("shape", planned)
		shape.Bread = c.other
		k := see(now, mix, shape)
		if got := begins(t, k, c.other, "retard"); got.Sub(planned).Abs() > time.Minute {
			t.Errorf("shaped at %v and cold from %v", planned, got)
		}
	}
}
