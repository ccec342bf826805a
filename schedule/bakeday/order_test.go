package bakeday

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"example.org/maslin/bake"
	"example.org/maslin/dough"
	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule"
	"example.org/maslin/schedule/wallclock"
	"github.com/google/go-cmp/cmp"
)

// sunday is a home Sunday: a loaf held cold overnight, focaccia and buns, from one oven.
func sunday() Order {
	loaf := hall()
	kitchen := loaf.Kitchen
	kitchen.Away = nil
	loaf.Name, loaf.Loaves.Pieces, loaf.Wanted = "Loaf", 2, OnDay(time.Sunday, wallclock.MustClock("12:30"))
	focaccia := rolls()
	focaccia.Name, focaccia.Wanted = "Focaccia", OnDay(time.Sunday, wallclock.MustClock("13:00"))
	focaccia.Loaves = Loaves{Pieces: 1, Baked: quantity.Grams(900), Style: bake.Focaccia, Warm: true}
	focaccia.Oven = OvenWork{
		Temperature: quantity.Celsius(220), Preheat: quantity.Elapsed(30 * time.Minute),
		Uncovered: quantity.Elapsed(22 * time.Minute),
	}
	buns := rolls()
	buns.Name, buns.Wanted = "Buns", OnDay(time.Sunday, wallclock.MustClock("15:00"))
	buns.Loaves = Loaves{Pieces: 12, Baked: quantity.Grams(70), Style: bake.SoftRoll}
	buns.Liquids = []Ingredient{
		{Name: "water", Percent: quantity.NewPercent(40)},
		{Name: "milk", Percent: quantity.NewPercent(22), Kind: dough.KindMilk, Water: quantity.NewPercent(88)},
	}
	buns.Oven = OvenWork{
		Temperature: quantity.Celsius(200), Preheat: quantity.Elapsed(25 * time.Minute),
		Uncovered: quantity.Elapsed(16 * time.Minute),
	}
	o := Order{Kitchen: kitchen, Bakes: []Bake{loaf, focaccia, buns}}
	for i := range o.Bakes {
		o.Bakes[i].Kitchen = Kitchen{}
	}
	return o
}

func planAll(t testing.TB, o Order) KitchenDay {
	t.Helper()
	k, err := o.Plan(context.Background(), wednesday(t))
	if err != nil {
		t.Fatal(err)
	}
	return k
}

var (
	sameTimes = cmp.Comparer(func(a, b time.Time) bool { return a.Equal(b) })
	sameWords = cmp.Comparer(func(a, b working.Message) bool { return a.String() == b.String() })
)

// at is when a step of a bread starts and ends, by the clock.
func at(t testing.TB, k KitchenDay, id string) string {
	t.Helper()
	s, ok := k.Timetable.Step(id)
	if !ok {
		t.Fatalf("no step %s", id)
	}
	return s.Start.In(k.Zone).Format("Mon 15:04") + "–" + s.End.In(k.Zone).Format("15:04")
}

func ExampleOrder_Plan() {
	o := sunday()
	zone := time.FixedZone("Europe/Zurich", 3600)
	day, err := o.Plan(context.Background(), KitchenClock{Now: time.Date(2026, 11, 25, 19, 0, 0, 0, time.UTC), Zone: zone})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, s := range day.Data().Steps {
		if s.Kind == schedule.Preheat || s.Kind == schedule.Bake {
			fmt.Println(s.Start.Format("Mon 15:04"), s.Name)
		}
	}
	// Output:
	// Sun 09:11 Loaf: heat the oven
	// Sun 09:56 Loaf: bake
	// Sun 11:38 Focaccia: heat the oven
	// Sun 12:18 Focaccia: dimple and bake
	// Sun 13:27 Buns: heat the oven
	// Sun 14:04 Buns: bake
}

func ExampleKitchenDay_Replan() {
	zone := time.FixedZone("Europe/Zurich", 3600)
	now := time.Date(2026, 11, 25, 19, 0, 0, 0, time.UTC)
	day, err := sunday().Plan(context.Background(), KitchenClock{Now: now, Zone: zone})
	if err != nil {
		fmt.Println(err)
		return
	}
	late := Late{Step: "Focaccia/mix-1", By: quantity.Elapsed(10 * time.Minute)}
	again, err := day.Replan(context.Background(), late)
	fmt.Println(again.Possible(), again.Moved, err)
	// Output: true 0m <nil>
}

func TestOneBreadIsTheSimpleCase(t *testing.T) {
	for _, b := range []Bake{hall(), rolls()} {
		alone := plan(t, b)
		k := planAll(t, Order{Bakes: []Bake{b}})
		if diff := cmp.Diff(alone.Data(), k.Breads[0].Data()); diff != "" {
			t.Error(diff)
		}
		if diff := cmp.Diff(alone.Data().Steps, k.Data().Steps); diff != "" {
			t.Error(diff)
		}
		if k.String() != alone.String() {
			t.Error(k)
		}
	}
}

// Breads wanted at the same time come out of one oven one after the other, with the time it takes to fall between them.
func TestOneOven(t *testing.T) {
	o := sunday()
	o.Wanted = OnDay(time.Sunday, wallclock.MustClock("15:00"))
	for i := range o.Bakes {
		o.Bakes[i].Wanted = Wish{}
	}
	k := planAll(t, o)
	if !k.Possible() {
		t.Fatal(k.Report().Headline, k.whyNot())
	}
	if broken := k.problem.Check(k.Timetable); len(broken) > 0 {
		t.Error(broken)
	}
	var rounds []schedule.Timed
	for _, s := range k.Timetable.Steps {
		if s.Kind == schedule.Bake {
			rounds = append(rounds, s)
		}
	}
	slices.SortFunc(rounds, func(a, b schedule.Timed) int { return a.Start.Compare(b.Start) })
	for i := 1; i < len(rounds); i++ {
		before, _ := k.Bread(rounds[i-1].Bread)
		next, _ := k.Bread(rounds[i].Bread)
		if gap := quantity.Elapsed(rounds[i].Start.Sub(rounds[i-1].End)); gap < k.Kitchen.change(&before.Bake, &next.Bake) {
			t.Errorf("%v between %s and %s", gap, rounds[i-1].ID, rounds[i].ID)
		}
	}
}

func TestTheOvenChanges(t *testing.T) {
	oven := func(celsius, then float64) *Bake {
		o := OvenWork{Temperature: quantity.Celsius(celsius), Reheat: quantity.Elapsed(5 * time.Minute),
			Preheat: quantity.Elapsed(45 * time.Minute)}
		if then > 0 {
			o.Then = quantity.Celsius(then)
		}
		return &Bake{Oven: o}
	}
	pots := func(n int, preheat time.Duration) *Bake {
		b := oven(220, 0)
		b.Oven.Pots, b.Oven.Preheat = n, quantity.Elapsed(preheat)
		return b
	}
	decks := Kitchen{Day: quantity.Celsius(20), Oven: KitchenOven{Decks: 2}}
	own := Kitchen{Day: quantity.Celsius(20), Oven: KitchenOven{Warms: quantity.Elapsed(3 * time.Minute),
		Cools: quantity.Elapsed(4 * time.Minute)}}
	usual := Kitchen{Day: quantity.Celsius(20)}
	for _, c := range []struct {
		k       Kitchen
		a, b    *Bake
		minutes int
	}{
		{usual, oven(220, 0), oven(220, 0), 5},
		{usual, oven(240, 0), oven(210, 0), 30},            // 3 · 10
		{usual, oven(210, 0), oven(245, 0), 7},             // 35/225 · 45 = 7
		{usual, oven(245, 210), oven(210, 0), 5},           // it has fallen already
		{usual, oven(245, 215), oven(245, 0), 6},           // 30/225 · 45
		{own, oven(240, 0), oven(210, 0), 12},              // 3 · 4
		{own, oven(210, 0), oven(245, 0), 11},              // 3.5 · 3, up to the minute
		{own, oven(210, 0), oven(212, 0), 5},               // no less than to reheat
		{usual, oven(220, 0), pots(2, 45*time.Minute), 30}, // they were not in the oven
		{usual, pots(1, 0), pots(2, 45*time.Minute), 30},   // one of them was not
		{usual, pots(2, 0), pots(2, 45*time.Minute), 5},    // they are hot, and reheat
		{usual, oven(220, 0), pots(2, 20*time.Minute), 20}, // no longer than the baker says
		{decks, oven(220, 0), pots(2, 45*time.Minute), 5},  // they heat on the other deck
	} {
		if got := c.k.change(c.a, c.b); got != quantity.Elapsed(c.minutes)*quantity.Elapsed(time.Minute) {
			t.Errorf("from %v to %v: %v, want %d min", c.a.Oven.Temperature, c.b.Oven.Temperature, got, c.minutes)
		}
	}
}

// One levain feeds two doughs: it is fed once, weighed once, and both are mixed while it is good.
func TestOneLevainForTwo(t *testing.T) {
	o := sunday()
	o.Bakes[0].Levain.Name = "rye levain"
	second := o.Bakes[0]
	own := *second.Levain
	own.Prefermented = quantity.NewPercent(8)
	second.Name, second.Levain = "Second", &own
	second.Wanted = OnDay(time.Sunday, wallclock.MustClock("14:00"))
	o.Bakes = []Bake{o.Bakes[0], second}
	k := planAll(t, o)
	if !k.Possible() {
		t.Fatal(k.whyNot())
	}
	data := k.Data()
	feeds := 0
	for _, s := range data.Steps {
		if s.Kind == schedule.Feed {
			feeds++
		}
	}
	if feeds != 1 || len(data.Levains) != 1 || data.Levains[0].Name != "rye levain" {
		t.Errorf("fed %d times, lists: %+v", feeds, data.Levains)
	}
	sum := quantity.Mass{}
	for _, d := range k.Breads {
		sum = sum.Add(d.Levain.Build.Made)
		if !d.Levain.Fed.Equal(k.Breads[0].Levain.Fed) {
			t.Error("fed at different times")
		}
		if mix, _ := d.Timetable.Step("mix-1"); mix.Start.Sub(d.Levain.Fed) > d.Levain.Ripeness.Until.Likely+2*time.Minute {
			t.Errorf("%s is mixed with a levain past its best", d.Bake.Name)
		}
	}
	if got := k.Breads[0].Levain.Shared; got != sum {
		t.Errorf("shared %v, made %v", got, sum)
	}
	if !slices.ContainsFunc(k.Notes, func(m working.Message) bool {
		return strings.Contains(m.String(),
			"rye levain, feeds several")
	}) {
		t.Error(k.Notes)
	}
}

// A mixer is washed between a dough with milk and one without.
func TestWashing(t *testing.T) {
	o := sunday()
	for i := range o.Bakes {
		o.Bakes[i].Mixing.Mixer = mixing.Planetary
	}
	milk, plain := o.Bakes[2], o.Bakes[1]
	milk.Wanted, plain.Wanted = OnDay(time.Sunday, wallclock.MustClock("14:00")), OnDay(time.Sunday,
		wallclock.MustClock("14:20"))
	o.Bakes = []Bake{milk, plain}
	o.Kitchen.Mixers[0].Washing = quantity.Elapsed(20 * time.Minute)
	k := planAll(t, o)
	if !k.Possible() {
		t.Fatal(k.whyNot())
	}
	a, _ := k.Timetable.Step("Buns/mix-1")
	b, _ := k.Timetable.Step("Focaccia/mix-1")
	if a.Start.Before(b.Start) && b.Start.Sub(a.End) < 20*time.Minute {
		t.Errorf("no time to wash: %v, %v", at(t, k, a.ID), at(t, k, b.ID))
	}
	washed := slices.ContainsFunc(k.Notes, func(m working.Message) bool { return strings.Contains(m.String(), "milk") })
	if washed != a.Start.Before(b.Start) {
		t.Errorf("note of washing %v, milk first %v", washed, a.Start.Before(b.Start))
	}
}

func TestWrongOrders(t *testing.T) {
	for name, c := range map[string]struct {
		spoil func(*Order)
		path  string
		says  string
	}{
		"none":    {func(o *Order) { o.Bakes = nil }, "bake", "at least one bake"},
		"sixty":   {func(o *Order) { o.Bakes = slices.Repeat(o.Bakes, 20) }, "bake", "60 bakes"},
		"unnamed": {func(o *Order) { o.Bakes[1].Name = "" }, "bake[1].name", "a name of its own"},
		"twice":   {func(o *Order) { o.Bakes[1].Name = "Loaf" }, "bake[1].name", "a name of its own"},
		"another kitchen": {func(o *Order) {
			o.Bakes[2].Kitchen = o.Kitchen
			o.Bakes[2].Kitchen.Tap = quantity.Celsius(12)
		}, "bake[2].kitchen.tap", `"10 °C", as in the kitchen of the day`},
		"past": {func(o *Order) { o.Bakes[0].Wanted = OnDate(wallclock.MustMoment("2026-11-25 12:00")) },
			"bake[0].wanted", "a time after"},
		"pots": {func(o *Order) { o.Kitchen.Pots = 1 }, "bake[0].oven.pots", "at most 1, the pots of the kitchen"},
		"cold": {func(o *Order) { o.Kitchen.RefrigeratorPlaces = 1 }, "bake[0].loaves.pieces",
			"the places in the refrigerator"},
		"too hot": {func(o *Order) { o.Kitchen.Oven.Hottest = quantity.Celsius(230) }, "bake[0].oven.temperature",
			"at most 230 °C"},
		"deck": {func(o *Order) { o.Kitchen.Oven.Holds, o.Bakes[2].Oven.Together = 6, 12 }, "bake[2].oven.together",
			"what a deck of the oven holds"},
		"hands": {func(o *Order) { o.Kitchen.Hands = -1 }, "bake[0].kitchen.hands", "0 to 100"},
		"two mixers": {func(o *Order) { o.Kitchen.Mixers = slices.Repeat(o.Kitchen.Mixers, 2) },
			"bake[0].kitchen.mixer[1].kind", "each once"},
		"levains": {func(o *Order) {
			l := *o.Bakes[0].Levain
			o.Bakes[0].Levain.Name, l.Name, l.Hydration = "levain", "levain", quantity.NewPercent(80)
			o.Bakes[1].Levain = &l
		}, "bake[1].levain.hydration", `"100 %", as the same levain has in "Loaf"`},
		"levain shared out": {func(o *Order) {
			for i := range o.Bakes[:2] {
				l := *o.Bakes[0].Levain
				l.Name, l.RipeNow, l.CultureAtHand = "levain", true, quantity.Grams(250)
				l.Inoculation = quantity.Percent{}
				o.Bakes[i].Levain = &l
			}
			o.Bakes[1].Flours = o.Bakes[0].Flours
		}, "bake[0].levain.culture_at_hand", "which the doughs take together"},
	} {
		o := sunday()
		c.spoil(&o)
		_, err := o.Plan(context.Background(), wednesday(t))
		found := false
		for _, e := range quantity.InputErrors(err) {
			found = found || e.Path == c.path && strings.Contains(e.Error(), c.says)
		}
		if !found {
			t.Errorf("%s: got %v", name, err)
		}
	}
}

// The kitchen is that of the bakes, when they agree.
func TestTheKitchenOfTheBakes(t *testing.T) {
	o := sunday()
	kitchen := o.Kitchen
	o.Kitchen = Kitchen{}
	o.Bakes[1].Kitchen, o.Bakes[2].Kitchen = kitchen, kitchen
	if err := o.Check(wednesday(t)); err != nil {
		t.Error(err)
	}
	o.Bakes[2].Kitchen.Name = "another"
	err := o.Check(wednesday(t))
	if !errors.Is(err, quantity.ErrInconsistent) || !strings.Contains(err.Error(), `as in the kitchen of "Focaccia"`) {
		t.Error(err)
	}
}

// Two breads that both must be baked at one time are told by their names, the oven and the minutes.
func TestTwoBreadsWantTheOven(t *testing.T) {
	o := sunday()
	a, b := o.Bakes[1], o.Bakes[2]
	a.Wanted, b.Wanted = OnDate(wallclock.MustMoment("2026-11-29 12:00")), OnDate(wallclock.MustMoment("2026-11-29 12:00"))
	b.Loaves.Warm = true
	a.Loaves.FreshWithin, b.Loaves.FreshWithin = quantity.Elapsed(5*time.Minute), quantity.Elapsed(5*time.Minute)
	o.Bakes = []Bake{a, b}
	k := planAll(t, o)
	// Out of the oven at 11:55, the focaccia is shaped 40 + 39 + 22 minutes before, the buns 40 + 44 + 16.
	if w := k.Data().Why; w == nil || len(k.Wants) != 1 ||
		!strings.Contains(w.Says.String(), "both want the baker's hands at Sun 10:15: 39m") {
		t.Errorf("one pair of hands: %+v", w)
	}
	o.Kitchen.Hands = 2
	for i := range o.Bakes {
		o.Bakes[i].Mixing.Mixer = mixing.Hand
	}
	if k = planAll(t, o); k.Possible() {
		t.Fatal("both bake at once")
	}
	w := k.Data().Why
	if len(k.Wants) != 1 || k.Wants[0].Thing != "oven" || k.Wants[0].By <= 0 ||
		!strings.Contains(w.Says.String(), "both want the oven at Sun 11:") {
		t.Errorf("%+v\n%v", k.Wants, w.Says)
	}
	if len(w.Remedies) == 0 || len(w.Remedies) > 5 {
		t.Errorf("%d remedies", len(w.Remedies))
	}
}

func TestTheDayGoesOn(t *testing.T) {
	k := planAll(t, sunday())
	r, err := k.Replan(context.Background(), Late{Step: "Loaf/shape", By: quantity.Elapsed(40 * time.Minute)})
	if err != nil || !r.Possible() {
		t.Fatal(r, err)
	}
	if r.Moved != 0 || len(r.Changes) == 0 || !strings.Contains(fmt.Sprint(r.Changes), "Loaf: cold retard") {
		t.Errorf("moved %v: %v", r.Moved, r)
	}
	if page := r.Report(); len(page.Grids()) != 2 || len(page.Grids()[1].Rows) < 10 {
		t.Errorf("%d tables", len(page.Grids()))
	}
	for _, text := range []string{"", "shape", "Loaf/fold", "Bread/shape", "Loaf/"} {
		if _, err := k.StepNamed(text); err == nil {
			t.Errorf("%q is accepted", text)
		}
	}
	if s, err := k.StepNamed("retard"); err != nil || s.ID != "Loaf/retard" { // only one bread has one
		t.Error(s, err)
	}
}

func TestKitchenDayAsData(t *testing.T) {
	k := planAll(t, sunday())
	text, err := json.Marshal(k)
	if err != nil {
		t.Fatal(err)
	}
	var back KitchenDayData
	if err := json.Unmarshal(text, &back); err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(k.Data().Steps, back.Steps, sameTimes, sameWords); diff != "" {
		t.Error(diff)
	}
	n := 0
	for _, b := range back.Breads {
		n += len(b.Steps)
	}
	if n != len(back.Steps) || back.Format != KitchenDayFormat || len(back.Breads) != 3 {
		t.Errorf("%d of %d steps", n, len(back.Steps))
	}
	if events := back.CalendarEvents(); len(events) != len(back.Steps) ||
		back.CalendarID() == back.Breads[0].CalendarID() {
		t.Error("events of another day")
	}
	var none KitchenDay
	if none.Possible() || none.String() == "" || none.Data().Format == "" || len(none.Report().Sections) > 0 {
		t.Error("a day that nobody planned is one")
	}
}

// A day that can no longer be this week says why, and how much later it still could, before it goes to the week after.
func TestTheWeekAfter(t *testing.T) {
	o := sunday()
	late := wednesday(t)
	late.Now = time.Date(2026, 11, 29, 9, 0, 0, 0, time.UTC)
	k, err := o.Plan(context.Background(), late)
	if err != nil || !k.Possible() || k.Missed == nil {
		t.Fatal(err, k.Missed)
	}
	if got := k.Breads[0].Wanted.In(k.Zone).Format("Mon 2006-01-02 15:04"); got != "Sun 2026-12-06 12:30" {
		t.Error(got)
	}
	m := k.Missed
	if len(m.Wanted) != 3 || m.Wanted[0].In(k.Zone).Day() != 29 || m.Why == nil || m.Why.Says.IsZero() ||
		m.Later == nil || *m.Later <= 0 {
		t.Errorf("%+v", m)
	}
	if n := len(k.DayReport().Section("missed").Blocks); n < 3 {
		t.Errorf("%d blocks", n)
	}
}
