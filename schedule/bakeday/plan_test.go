package bakeday

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"
	"time"
	_ "time/tzdata"

	"example.org/maslin/dough"
	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/workcheck"
	"example.org/maslin/schedule/wallclock"
	"github.com/google/go-cmp/cmp"
)

func zurich(t testing.TB) *time.Location {
	t.Helper()
	zone, err := time.LoadLocation("Europe/Zurich")
	if err != nil {
		t.Fatal(err)
	}
	return zone
}

func wednesday(t testing.TB) KitchenClock {
	return KitchenClock{Now: time.Date(2026, 11, 25, 19, 0, 0, 0, time.UTC), Zone: zurich(t)}
}

// rolls is a same-day bake with yeast.
func rolls() Bake {
	b := hall()
	b.Name, b.Wanted = "Coffee rolls", OnDay(time.Sunday, wallclock.MustClock("15:00"))
	b.Levain, b.Retard, b.Kitchen.Away = nil, nil, nil
	b.Others = []Ingredient{{Name: "instant yeast", Percent: quantity.NewPercent(0.8), Kind: dough.KindInstantYeast}}
	b.Bulk = BulkWork{Rise: quantity.NewPercent(150)}
	return b
}

func plan(t testing.TB, b Bake) Day {
	t.Helper()
	d, err := b.Plan(context.Background(), wednesday(t))
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func ExampleBake_Plan() {
	zone := time.FixedZone("Europe/Zurich", 3600)
	day, err := hall().Plan(context.Background(), KitchenClock{Now: time.Date(2026, 11, 25, 19, 0, 0, 0, time.UTC),
		Zone: zone})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("possible:", day.Possible(), "for", day.Wanted.In(zone).Format("Mon 2 Jan 15:04"))
	fmt.Println("dough:", day.Weighing.Dough, "in", day.Water.Mixes, "batches")
	for _, s := range day.Data().Steps {
		if s.Hands {
			fmt.Println(s.Name)
		}
	}
	// Output:
	// possible: true for Sat 28 Nov 12:30
	// dough: 5379.6 g in 2 batches
	// feed the levain
	// mix the dough, 1 of 2
	// mix the dough, 2 of 2
	// fold, 1 of 2
	// fold, 2 of 2
	// divide and shape
	// bake, 1 of 3
	// lid off, away from you, 1 of 3
	// bake, 2 of 3
	// lid off, away from you, 2 of 3
	// bake, 3 of 3
	// lid off, away from you, 3 of 3
}

func ExampleParseWish() {
	for _, text := range []string{"Saturday 12:30", "2026-11-28 12:30", "soon"} {
		w, err := ParseWish(text)
		fmt.Println(w, err != nil)
	}
	// Output:
	// Saturday 12:30 false
	// Sat 2026-11-28 12:30 false
	// no time true
}

// What is weighed adds up exactly, on every list and in every batch.
func TestWeightsAddUp(t *testing.T) {
	for _, b := range []Bake{hall(), rolls()} {
		s := plan(t, b).Data()
		for _, l := range s.Weigh {
			var sum quantity.Mass
			batches := make([]quantity.Mass, l.Batches)
			for _, line := range l.Lines {
				sum = sum.Add(line.Mass)
				for i, p := range line.Portions {
					batches[i] = batches[i].Add(p)
				}
			}
			if sum != l.Total {
				t.Errorf("%s: %s adds up to %v, not %v", b.Name, l.Name, sum, l.Total)
			}
			if l.Batches > 1 && quantity.Sum(batches...) != l.Total {
				t.Errorf("%s: the batches of %s add up to %v, not %v", b.Name, l.Name, quantity.Sum(batches...),
					l.Total)
			}
		}
		dough := s.Weigh[len(s.Weigh)-1]
		if got := dough.Total.Add(dough.Residue); got != s.Formula.Dough {
			t.Errorf("%s: weighed and residue are %v, the formula says %v", b.Name, got, s.Formula.Dough)
		}
	}
}

// The timetable keeps to the order of the steps and out of every absence, whatever the dough
// does within its range.
func TestTimetableFitsLife(t *testing.T) {
	for _, b := range []Bake{hall(), rolls()} {
		d := plan(t, b)
		if !d.Possible() || !d.Settled || b.Retard != nil && !d.Careful || d.Robust.Share < 0.5 {
			t.Fatalf("%s: possible %v, settled %v, careful %v\n%v", b.Name, d.Possible(), d.Settled, d.Careful,
				d.Timetable)
		}
		within := wallclock.Occurrence{From: d.Now, To: d.Wanted}
		closed, err := d.Bake.Kitchen.closed(within, d.Zone)
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range d.Timetable.Steps {
			if !s.Kind.Hands() {
				continue
			}
			for _, c := range closed {
				if s.Start.Before(c.To) && s.End.After(c.From) {
					t.Errorf("%s: %s from %v to %v while %s", b.Name, s.ID, s.Start.In(d.Zone), s.End.In(d.Zone),
						c.Words)
				}
			}
			if s.Start.Before(s.EarliestStart) || s.Start.After(s.LatestStart) {
				t.Errorf("%s: %s is outside its own limits", b.Name, s.ID)
			}
		}
		var last time.Time
		for _, s := range d.Data().Steps {
			if s.Start.Before(last) {
				t.Errorf("%s: %s is out of order", b.Name, s.ID)
			}
			last = s.Start
		}
		cool, _ := d.Timetable.Step(idCool)
		if !cool.End.Equal(d.Wanted) {
			t.Errorf("%s: cool at %v, wanted at %v", b.Name, cool.End, d.Wanted)
		}
	}
}

// The answers of the rooms hang together: the rise at shaping and the cold add up to what was
// wanted, the core is reachable, and the loaf has its weight.
func TestRoomsAgree(t *testing.T) {
	d := plan(t, hall())
	if d.Rising.ShapeAt.Compare(d.Bake.Bulk.Rise) >= 0 || d.Rising.ShapeAt.Sign() <= 0 {
		t.Errorf("shape at %v for %v in all", d.Rising.ShapeAt, d.Bake.Bulk.Rise)
	}
	if got := d.Rising.InOven.Likely.Points(); !(math.Abs(got-75) <= 0.5) {
		t.Errorf("the cold brings the rise to %v %%, wanted 75 %%", got)
	}
	retard, _ := d.Timetable.Step(idRetard)
	if got := quantity.Elapsed(retard.End.Sub(retard.Start)); got-d.Rising.Retard > quantity.Elapsed(5*time.Minute) ||
		d.Rising.Retard-got > quantity.Elapsed(5*time.Minute) {
		t.Errorf("the rise was computed for a retard of %v, the plan has %v", d.Rising.Retard, got)
	}
	if c := d.Baking.Target; c.Core.Compare(c.Boiling) >= 0 {
		t.Errorf("a core of %v where water boils at %v", c.Core, c.Boiling)
	}
	baked := d.Batch.ScalingWeight().Sub(d.Bake.Loaves.Loss.Of(d.Batch.ScalingWeight()))
	if diff := baked.Sub(d.Bake.Loaves.Baked).Grams(); !(math.Abs(diff) <= 0.001) {
		t.Errorf("a loaf comes out at %v", baked)
	}
	if d.Water.Mixes != 2 {
		t.Errorf("%d batches in a 7 L bowl", d.Water.Mixes)
	}
}

func TestEveryWorkingIsTrue(t *testing.T) {
	for _, b := range []Bake{hall(), rolls()} {
		for _, w := range plan(t, b).Workings() {
			workcheck.Verify(t, w)
		}
	}
}

func TestCautionsAreThereOnce(t *testing.T) {
	seen := map[string]bool{}
	subjects := map[string]bool{}
	for _, c := range plan(t, hall()).Cautions() {
		if seen[c.String()] {
			t.Errorf("twice: %s", c)
		}
		seen[c.String()], subjects[string(c.Subject)] = true, true
	}
	for _, want := range []string{"raw dough", "mixer", "burns", "steam", "allergens"} {
		if !subjects[want] {
			t.Errorf("nothing about %s", want)
		}
	}
}

// A wanted time that cannot be met is an answer with a reason, a shortfall and another time.
func TestWhatIsInTheWay(t *testing.T) {
	b := hall()
	b.Wanted = OnDate(wallclock.MustMoment("2026-11-26 12:30"))
	d := plan(t, b)
	if d.Possible() {
		t.Fatal("bread in 17 hours, most of them slept through")
	}
	s := d.Data()
	if s.Why == nil || len(s.Why.Rules) == 0 || s.Why.Short <= 0 || s.Why.Later == nil || !s.Why.Later.After(d.Wanted) {
		t.Fatalf("no reason: %+v", s.Why)
	}
	// The time it names does work.
	b.Wanted = OnDate(wallclock.MomentOf(*s.Why.Later, d.Zone))
	if later := plan(t, b); !later.Possible() {
		t.Errorf("%v was said to work: %v", *s.Why.Later, later.Timetable)
	}
	if len(s.Weigh) == 0 || s.Water.Temperature.IsZero() {
		t.Error("weights and water are known even when the time is not")
	}
}

func TestWeekdayMovesOnAndSaysSo(t *testing.T) {
	clock := KitchenClock{Now: time.Date(2026, 11, 28, 5, 0, 0, 0, time.UTC), Zone: zurich(t)}
	d, err := hall().Plan(context.Background(), clock)
	if err != nil {
		t.Fatal(err)
	}
	if !d.Possible() || d.Missed == nil || d.Missed.Why == nil || d.Wanted.Sub(d.Missed.Wanted) != 7*24*time.Hour {
		t.Errorf("wanted %v, missed %+v", d.Wanted, d.Missed)
	}
}

// A dough that would overproof in the cold even if shaped at once is said to, with what would help.
func TestTooMuchColdIsSaid(t *testing.T) {
	b := hall()
	b.Bulk.Rise = quantity.NewPercent(15)
	b.Levain.Prefermented = quantity.NewPercent(25)
	d := plan(t, b)
	if d.Possible() || d.Rising.Feasible {
		t.Fatalf("15 %% in all after 8 hours and more in the cold: %v", d.Rising.ShapeAt)
	}
	if s := d.Data(); s.Why == nil || !strings.Contains(s.Why.Says.String(), "even if shaped at once") {
		t.Errorf("no reason: %+v", s.Why)
	}
}

func TestSameInSamePlan(t *testing.T) {
	a, b := plan(t, hall()).Data(), plan(t, hall()).Data()
	if diff := cmp.Diff(a, b); diff != "" {
		t.Error(diff)
	}
	// °F and °C, pounds and grams are the same plan.
	f := hall()
	f.Mixing.Temperature = quantity.MustTemperature("78.8 °F")
	f.Mixing.Warming = quantity.MustDelta("9 Δ°F")
	f.Oven.Temperature = quantity.MustTemperature("473 °F")
	f.Kitchen.Day, f.Kitchen.Night, f.Kitchen.Refrigerator, f.Kitchen.Tap = quantity.MustTemperature(
		"71.6 °F"), quantity.MustTemperature("66.2 °F"), quantity.MustTemperature(
		"39.2 °F"), quantity.MustTemperature("50 °F")
	if diff := cmp.Diff(a, plan(t, f).Data()); diff != "" {
		t.Error(diff)
	}
}

func TestBakeRoundTripsThroughJSON(t *testing.T) {
	for _, b := range []Bake{hall(), rolls()} {
		text, err := json.Marshal(b)
		if err != nil {
			t.Fatal(err)
		}
		var back Bake
		if err := json.Unmarshal(text, &back); err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(plan(t, b).Data(), plan(t, back).Data()); diff != "" {
			t.Error(diff)
		}
	}
}

func TestEveryFaultAtOnce(t *testing.T) {
	b := hall()
	b.Loaves.Pieces = 0
	b.Flours[0].Percent = quantity.NewPercent(70)
	b.Mixing.Temperature = quantity.Celsius(400)
	b.Mixing.Mixer, b.Kitchen.Mixers = 0, []KitchenMixer{{Kind: mixing.Planetary}, {Kind: mixing.Fork}}
	b.Kitchen.Tap = quantity.Temperature{}
	b.Retard.AtMost = quantity.Elapsed(time.Hour)
	_, err := b.Plan(context.Background(), KitchenClock{Now: wednesday(t).Now})
	var paths []string
	for _, e := range quantity.InputErrors(err) {
		paths = append(paths, e.GoPath)
	}
	want := []string{
		"Loaves.Pieces",
		"Flours",
		"Mixing.Temperature",
		"Mixing.Mixer",
		"Retard.AtMost",
		"Kitchen.Mixers[0].Bowl",
		"Kitchen.Tap",
		"Kitchen.Zone",
	}
	if diff := cmp.Diff(want, paths); diff != "" {
		t.Error(diff)
	}
}

func TestFaultsOfTheFormulaAreNamedInTheBake(t *testing.T) {
	b := hall()
	b.Levain.Hydration = quantity.NewPercent(-5)
	b.Levain.Flour = "buckwheat"
	_, err := b.Plan(context.Background(), wednesday(t))
	text := fmt.Sprint(err)
	if !strings.Contains(text, "levain.hydration") || !strings.Contains(text, "levain.flour") ||
		strings.Contains(text, "preferment[") {
		t.Error(text)
	}
}

func TestHostileBakes(t *testing.T) {
	bad := quantity.Grams(math.NaN())
	spoil := map[string]func(*Bake){
		"nothing":        func(b *Bake) { *b = Bake{} },
		"NaN baked":      func(b *Bake) { b.Loaves.Baked = bad },
		"huge loaf":      func(b *Bake) { b.Loaves.Baked = quantity.Kilograms(1e6) },
		"many pieces":    func(b *Bake) { b.Loaves.Pieces = math.MaxInt },
		"NaN rise":       func(b *Bake) { b.Bulk.Rise = quantity.NewPercent(math.NaN()) },
		"no rise":        func(b *Bake) { b.Bulk.Rise = quantity.Percent{} },
		"folds":          func(b *Bake) { b.Bulk.Folds = 1 << 30 },
		"negative folds": func(b *Bake) { b.Bulk.Folds = -1 },
		"long name":      func(b *Bake) { b.Flours[0].Name = strings.Repeat("x", 1<<20) },
		"no flour":       func(b *Bake) { b.Flours = nil },
		"negative times": func(b *Bake) { b.Mixing.Takes, b.Shaping.Takes = -1, math.MinInt64 },
		"endless":        func(b *Bake) { b.Oven.Covered = math.MaxInt64 },
		"space":          func(b *Bake) { b.Kitchen.Altitude = quantity.Meters(1e6) },
		"bowl":           func(b *Bake) { b.Kitchen.Mixers[0].Bowl = quantity.Liters(math.Inf(1)) },
		"habit":          func(b *Bake) { b.Kitchen.Asleep = []wallclock.Habit{{From: wallclock.Clock{Hour: 99}}} },
		"style":          func(b *Bake) { b.Loaves.Style = -7 },
		"shape":          func(b *Bake) { b.Loaves.Shape = 99 },
		"mixer":          func(b *Bake) { b.Mixing.Mixer = mixing.MixerKind(77) },
		"kind":           func(b *Bake) { b.Flours[0].Kind = 250 },
		"salt":           func(b *Bake) { b.Salt = quantity.NewPercent(40) },
		"scale":          func(b *Bake) { b.Kitchen.Scale = quantity.Grams(-1) },
		"tiny levain":    func(b *Bake) { b.Levain.Prefermented = quantity.NewPercent(0.000001) },
	}
	for name, f := range spoil {
		b := hall()
		f(&b)
		_, err := b.Plan(context.Background(), wednesday(t))
		if err == nil {
			t.Errorf("%s: accepted", name)
			continue
		}
		if len(quantity.InputErrors(err)) == 0 {
			t.Errorf("%s: no field named: %v", name, err)
		}
		if len(err.Error()) > 8000 {
			t.Errorf("%s: an error of %d bytes", name, len(err.Error()))
		}
	}
}

// Whatever a plausible kitchen asks for, the plan either keeps its own rules or says why not.
func TestPlausibleKitchens(t *testing.T) {
	zone := zurich(t)
	possible := 0
	kitchens := 40
	if testing.Short() {
		kitchens = 8
	}
	for seed := range uint64(kitchens) {
		r := rand.New(rand.NewPCG(seed, 1))
		between := func(low, high int) float64 { return float64(low + r.IntN(high-low+1)) }
		b := hall()
		b.Levain.Prefermented = quantity.NewPercent(between(5, 25))
		b.Levain.Inoculation = quantity.NewPercent(between(10, 100))
		b.Mixing.Temperature = quantity.Celsius(between(20, 29))
		b.Kitchen.Day = quantity.Celsius(between(17, 30))
		b.Kitchen.Night = b.Kitchen.Day.Add(quantity.DeltaCelsius(-between(0, 6)))
		b.Bulk.Rise = quantity.NewPercent(between(30, 120))
		b.Loaves.Pieces = int(between(1, 12))
		if r.IntN(3) == 0 {
			b.Retard = nil
		}
		clock := KitchenClock{Now: time.Date(2026, 11, 20, 0, r.IntN(7*24*60), 0, 0, time.UTC), Zone: zone}
		if r.IntN(2) == 0 { // with what else a bake may have
			b.Others = append(
				b.Others,
				Ingredient{
					Name:    "instant yeast",
					Percent: quantity.NewPercent(between(1, 8) / 10),
					Kind:    dough.KindInstantYeast,
				},
			)
			if r.IntN(2) == 0 {
				b.Preferments = []PrefermentWork{{
					Name: "poolish", Kind: dough.Poolish, Prefermented: quantity.NewPercent(between(10, 40)),
					Hydration: quantity.NewPercent(100), Flour: "wheat bread flour",
					Yeast:   quantity.NewPercent(0.1),
					AtLeast: quantity.Elapsed(8 * time.Hour), AtMost: quantity.Elapsed(16 * time.Hour),
				}}
			}
			b.Loaves.Warm = r.IntN(2) == 0
			if b.Retard != nil && r.IntN(2) == 0 {
				b.Retard = &Retard{
					AtLeast: b.Retard.AtLeast,
					AtMost:  b.Retard.AtMost,
					WarmUp:  quantity.Elapsed(between(1, 3) * float64(time.Hour)),
				}
			}
		}
		d, err := b.Plan(context.Background(), clock)
		if err != nil {
			t.Errorf("kitchen %d: %v", seed, err)
			continue
		}
		s := d.Data()
		switch {
		case !d.Possible():
			if s.Why == nil {
				t.Errorf("kitchen %d: not possible, and no reason", seed)
			}
		case len(s.Steps) == 0 || !s.Steps[len(s.Steps)-1].End.Equal(d.Wanted):
			t.Errorf("kitchen %d: the last step does not end when the bread is wanted: %v", seed, d.Timetable)
		case s.Steps[0].Start.Before(clock.Now):
			t.Errorf("kitchen %d: begins in the past", seed)
		default:
			possible++
		}
	}
	if !testing.Short() && possible < kitchens/4 {
		t.Errorf("only %d of %d plausible kitchens can bake", possible, kitchens)
	}
}

func TestWishes(t *testing.T) {
	zone := zurich(t)
	now := time.Date(2026, 11, 25, 19, 0, 0, 0, time.UTC)
	for text, want := range map[string]error{
		"": quantity.ErrRequired, "Saturday": wallclock.ErrSyntax, "Saturday 25:00": quantity.ErrOutOfRange,
		"Sun 2026-11-28 12:30": wallclock.ErrWeekday,
		"2026-02-30 12:30":     quantity.ErrOutOfRange, strings.Repeat("x", 1<<20): quantity.ErrOutOfRange,
	} {
		if w, err := ParseWish(text); !errors.Is(err, want) {
			t.Errorf("%.30q: %v, %v; want %v", text, w, err, want)
		}
	}
	for text, want := range map[string]error{"2027-03-28 02:30": wallclock.ErrSkipped,
		"2026-10-25 02:30": wallclock.ErrTwice, "2026-11-25 19:59": quantity.ErrOutOfRange} {
		w, err := ParseWish(text)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := w.instants(now, zone); !errors.Is(err, want) {
			t.Errorf("%s: %v, want %v", text, err, want)
		}
	}
	w, _ := ParseWish("wed 20:30")
	at, err := w.instants(now, zone)
	if err != nil || len(at) != 2 || !at[0].Equal(time.Date(2026, 11, 25, 19, 30, 0, 0, time.UTC)) ||
		at[1].Sub(at[0]) != 7*24*time.Hour {
		t.Errorf("later today and in a week: %v, %v", at, err)
	}
	w, _ = ParseWish("Wednesday 19:00")
	if at, err = w.instants(now, zone); err != nil || at[0].Sub(now) < 6*24*time.Hour {
		t.Errorf("already past today: %v, %v", at, err)
	}
}

func FuzzParseWish(f *testing.F) {
	for _, s := range []string{"Saturday 12:30", "2026-11-28 12:30", "Sat 2026-11-28 12:30", "x"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		w, err := ParseWish(s)
		if err != nil {
			return
		}
		again, err := ParseWish(w.String())
		if err != nil || again != w {
			t.Errorf("%q → %v → %v, %v", s, w, again, err)
		}
	})
}

func TestFaultsOfMixingAreNamedInTheBake(t *testing.T) {
	b := hall()
	b.Liquids[0].Percent = quantity.NewPercent(400)
	_, err := b.Plan(context.Background(), wednesday(t))
	if text := fmt.Sprint(err); err == nil || strings.Contains(text, "Mixing.Water") {
		t.Error(text)
	}
	warm := hall()
	warm.Kitchen.Flour = quantity.Celsius(49)
	d := plan(t, warm)
	if len(d.Data().Water.Remedies) == 0 {
		t.Errorf("water at %v from a tap at 10 °C, and no way shown", d.Water.Temperature)
	}
}

func ExampleBake_Check() {
	b := hall()
	b.Loaves.Pieces = 0
	b.Kitchen.Tap = quantity.Celsius(80)
	fmt.Println(b.Check(
		KitchenClock{Now: time.Date(2026, 11, 25, 19, 0, 0, 0, time.UTC), Zone: time.FixedZone("Europe/Zurich", 3600)},
	))
	// Output:
	// loaves.pieces: required: got 0 or nothing, want 1 to 1000
	// kitchen.tap: out of range: got 80 °C, want 0.5 °C to 45 °C
}
