package bakeday

import (
	"cmp"
	"context"
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"example.org/maslin/bake"
	"example.org/maslin/dough"
	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule"
	"example.org/maslin/schedule/wallclock"
)

// howMany random days of a kitchen are planned and judged: 24, or as many as MASLIN_DAYS says, from the seed
// MASLIN_DAYS_FROM on.
//
//	MASLIN_DAYS=10000 nice go test ./schedule/bakeday -run TestRandomDays -v -timeout 5h
func howMany(t *testing.T) (from, to int) {
	number := func(name string, otherwise int) int {
		text := os.Getenv(name)
		if text == "" {
			return otherwise
		}
		n, err := strconv.Atoi(text)
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		return n
	}
	otherwise := 24
	if testing.Short() {
		otherwise = 8
	}
	from = number("MASLIN_DAYS_FROM", 0)
	return from, from + number("MASLIN_DAYS", otherwise)
}

// judge reads the data form of a day, and nothing else, and lists the rules that it breaks. It shares no code with the
// planner: it goes through the day minute by minute.
type judge struct {
	day    KitchenDayData
	broken []string
}

func judged(text []byte) []string {
	var j judge
	if err := json.Unmarshal(text, &j.day); err != nil {
		return []string{err.Error()}
	}
	j.present()
	j.oven()
	j.counted()
	j.mixers()
	j.breads()
	return j.broken
}

func (j *judge) say(format string, args ...any) {
	j.broken = append(j.broken, fmt.Sprintf(format, args...))
}

func (j *judge) bread(name string) PlanData {
	i := slices.IndexFunc(j.day.Breads, func(b PlanData) bool { return b.Name == name })
	return j.day.Breads[i]
}

func (j *judge) of(kinds ...schedule.StepKind) []StepData {
	var out []StepData
	for _, s := range j.day.Steps {
		if slices.Contains(kinds, s.Kind) {
			out = append(out, s)
		}
	}
	return out
}

// present: nobody works, heats or bakes while the kitchen sleeps.
func (j *judge) present() {
	for _, h := range append(slices.Clone(j.day.Kitchen.Asleep), j.day.Kitchen.Away...) {
		from, to := h.From.Minutes(), h.To.Minutes()
		for _, s := range j.day.Steps {
			if !s.Hands && s.Kind != schedule.Preheat || s.Kind == schedule.Tend {
				continue
			}
			for t := s.Start; t.Before(s.End); t = t.Add(time.Minute) {
				at := t.Hour()*60 + t.Minute()
				if from < to && at >= from && at < to || from > to && (at >= from || at < to) {
					j.say("%s at %s, in the absence %v", s.ID, t.Format("Mon 15:04"), h)
					break
				}
			}
		}
	}
}

// most is the most of something at one time, where it is counted by steps.
func most(steps []StepData, amount func(StepData) int) int {
	worst := 0
	for _, a := range steps {
		sum := 0
		for _, b := range steps {
			if !b.Start.After(a.Start) && a.Start.Before(b.End) {
				sum += amount(b)
			}
		}
		worst = max(worst, sum)
	}
	return worst
}

// oven: no more loads than decks, one temperature at a time, and time to change it.
func (j *judge) oven() {
	rounds := j.of(schedule.Bake)
	slices.SortFunc(rounds, func(a, b StepData) int { return a.Start.Compare(b.Start) })
	decks := func(s StepData) int { return j.bread(s.Bread).Oven.Decks }
	if n := most(rounds, decks); n > max(1, j.day.Kitchen.Oven.Decks) {
		j.say("%d loads at a time", n)
	}
	cools := j.day.Kitchen.Oven.Cools.Duration().Minutes()
	if cools == 0 {
		cools = 10
	}
	for i, a := range rounds {
		for _, b := range rounds[i+1:] {
			if a.Bread == b.Bread {
				continue
			}
			x, y := j.bread(a.Bread).Oven, j.bread(b.Bread).Oven
			gap := b.Start.Sub(a.End).Minutes()
			if x.Temperature != y.Temperature && gap < 0 {
				j.say("%s at %v beside %s at %v", a.ID, x.Temperature, b.ID, y.Temperature)
			}
			last := x.Temperature
			if !x.Then.IsZero() {
				last = x.Then
			}
			if falls := last.Sub(y.Temperature).Celsius() / 10 * cools; falls > 0 && gap >= 0 && gap < falls-1 {
				j.say("%s %.0f min after %s, the oven falls in %.0f", b.ID, gap, a.ID, falls)
			}
			if gap >= 0 && gap < y.Reheat.Duration().Minutes() && j.day.Kitchen.Oven.Decks < 2 {
				j.say("%s %.0f min after %s, without reheating", b.ID, gap, a.ID)
			}
		}
	}
	if pots := j.day.Kitchen.Pots; pots > 0 {
		if n := most(rounds, func(s StepData) int { return j.bread(s.Bread).Oven.Pots }); n > pots {
			j.say("%d pots of %d", n, pots)
		}
	}
}

// counted: hands and places.
func (j *judge) counted() {
	k := j.day.Kitchen
	work := j.of(schedule.Feed, schedule.Make, schedule.Mix, schedule.Fold, schedule.Shape)
	if n := most(work, func(StepData) int { return 1 }); n > max(1, k.Hands) {
		j.say("%d pairs of hands of %d", n, k.Hands)
	}
	if k.RefrigeratorPlaces > 0 {
		var cold []StepData
		for _, s := range j.of(schedule.Retard) {
			for _, b := range j.of(schedule.Bake) {
				if b.Bread == s.Bread && b.Number == b.Of && b.Start.After(s.End) {
					s.End = b.Start
				}
			}
			cold = append(cold, s)
		}
		if n := most(cold, func(s StepData) int { return j.bread(s.Bread).Formula.Pieces }); n > k.RefrigeratorPlaces {
			j.say("%d loaves in %d places", n, k.RefrigeratorPlaces)
		}
	}
	warm := j.of(schedule.Bulk, schedule.Proof)
	for i, a := range warm {
		for _, b := range warm[i+1:] {
			x, y := j.bread(a.Bread).Bulk.Box, j.bread(b.Bread).Bulk.Box
			if !x.IsZero() && !y.IsZero() && x != y && a.Start.Before(b.End) && b.Start.Before(a.End) {
				j.say("the box at %v and %v", x, y)
			}
		}
	}
}

// mixers: one dough at a time, washed before a dough without the allergens of the one before.
func (j *judge) mixers() {
	mixes := j.of(schedule.Mix)
	slices.SortFunc(mixes, func(a, b StepData) int { return a.Start.Compare(b.Start) })
	for i, a := range mixes {
		for _, b := range mixes[i+1:] {
			x, y := j.bread(a.Bread), j.bread(b.Bread)
			if x.Mixer == nil || y.Mixer == nil || x.Mixer.Kind != y.Mixer.Kind || x.Mixer.Kind == mixing.Hand {
				continue
			}
			gap := b.Start.Sub(a.End)
			if gap < 0 {
				j.say("%s and %s in one mixer", a.ID, b.ID)
			}
			for _, one := range strings.Split(x.Formula.Allergens, ", ") {
				if !strings.Contains(y.Formula.Allergens, one) && gap < 15*time.Minute {
					j.say("%s %v after %s, which carries %s", b.ID, gap, a.ID, one)
				}
			}
		}
	}
}

// breads: each in its order, within what its dough and its levain allow, and there when it is wanted.
func (j *judge) breads() {
	for _, b := range j.day.Breads {
		at := map[string]StepData{}
		for _, s := range b.Steps {
			at[s.ID] = s
		}
		follows := func(a, c string) {
			x, okX := at[a]
			y, okY := at[c]
			if okX && okY && !x.End.Equal(y.Start) {
				j.say("%s: %s does not follow %s", b.Name, c, a)
			}
		}
		for i := 1; i < 20; i++ {
			if _, more := at[fmt.Sprintf("mix-%d", i+1)]; !more {
				follows(fmt.Sprintf("mix-%d", i), "bulk")
				break
			}
			follows(fmt.Sprintf("mix-%d", i), fmt.Sprintf("mix-%d", i+1))
		}
		follows("bulk", "shape")
		follows("shape", "retard")
		follows("shape", "proof")
		follows("retard", "bake-1")
		follows("proof", "bake-1")
		follows("feed", "ripen")
		follows("ripen", "mix-1")
		last := fmt.Sprintf("bake-%d", b.Oven.Rounds)
		follows(last, "cool")
		if !at["cool"].End.Equal(b.Wanted) {
			j.say("%s is there at %v, wanted %v", b.Name, at["cool"].End, b.Wanted)
		}
		within := func(id string, r quantity.TimeRange) {
			if d := at[id].End.Sub(at[id].Start); d < r.Early-time.Minute || d > r.Late+time.Minute {
				j.say("%s: %s takes %v, not %v", b.Name, id, d, r)
			}
		}
		if _, batches := at["mix-2"]; !batches {
			within("bulk", b.Bulk.Ready)
		}
		if b.Proof != nil {
			within("proof", *b.Proof)
		}
		if l := b.Levain; l != nil {
			ripe := at["ripen"].End.Sub(at["ripen"].Start)
			if ripe < l.Peak.Likely-time.Minute || ripe > l.Until.Likely+2*time.Minute {
				j.say("%s: the levain is used %v after feeding, at its peak after %v, good until %v", b.Name, ripe, l.Peak.Likely,
					l.Until.Likely)
			}
		}
		for i := 2; i <= b.Oven.Rounds; i++ {
			before, next := at[fmt.Sprintf("bake-%d", i-1)], at[fmt.Sprintf("bake-%d", i)]
			if gap := next.Start.Sub(before.End); gap < b.Oven.Reheat.Duration() {
				j.say("%s: round %d after %v", b.Name, i, gap)
			}
		}
		for id, s := range at {
			if strings.HasPrefix(id, "fold-") && (s.Start.Before(at["bulk"].Start) || s.End.After(at["bulk"].End)) {
				j.say("%s: %s outside of the bulk", b.Name, id)
			}
		}
	}
}

// randomly is what the day of a seed is drawn with.
func randomly(seed int) *rand.Rand { return rand.New(rand.NewPCG(16, uint64(seed))) }

// someDay draws a day of two to four breads.
func someDay(r *rand.Rand) Order {
	pick := func(of ...int) int { return of[r.IntN(len(of))] }
	minutes := func(of ...int) quantity.Elapsed { return quantity.Elapsed(time.Duration(pick(of...)) * time.Minute) }
	k := hall().Kitchen
	nights := []string{"22:30 to 06:30", "21:00 to 03:00", "23:30 to 05:00"}
	k.Away, k.Asleep = nil, []wallclock.Habit{wallclock.MustHabit(nights[r.IntN(len(nights))])}
	k.Hands, k.Oven.Decks = pick(0, 0, 1, 2, 3), pick(0, 0, 1, 2)
	k.Pots, k.RefrigeratorPlaces = pick(0, 4), pick(0, 0, 8, 12)
	k.Mixers[0].Bowl = quantity.Liters(20)
	o := Order{Kitchen: k}
	tight := r.IntN(3) == 0 // all wanted fresh at one time
	for i := range 2 + r.IntN(3) {
		b := hall()
		if r.IntN(2) == 0 {
			b = rolls()
			b.Bulk.Rise = quantity.NewPercent(float64(pick(120, 150, 180)))
			if r.IntN(3) == 0 {
				b.Bulk.Box = quantity.Celsius(float64(pick(27, 30)))
			}
			if r.IntN(3) == 0 {
				b.Others = append(b.Others, Ingredient{Name: "sesame", Percent: quantity.NewPercent(5), Kind: dough.KindSesame})
			}
		} else if r.IntN(2) == 0 {
			l := *b.Levain
			l.Name = "levain of the day"
			b.Levain = &l
		}
		b.Kitchen, b.Name = Kitchen{}, []string{"Rye", "White", "Buns", "Seeded"}[i]
		b.Loaves = Loaves{Pieces: pick(1, 2, 4, 6, 8), Baked: quantity.Grams(float64(pick(400, 600, 800))),
			Style: bake.LeanHearth}
		b.Wanted = OnDate(wallclock.MustMoment(fmt.Sprintf("2026-11-28 %02d:%02d", 8+r.IntN(10), pick(0, 15, 30))))
		if tight {
			b.Wanted, b.Loaves.FreshWithin = OnDate(wallclock.MustMoment("2026-11-28 15:00")), minutes(10, 40)
		}
		b.Mixing.Takes, b.Shaping.Takes = minutes(15, 25), minutes(15, 30, 40)
		b.Mixing.Mixer = []mixing.MixerKind{mixing.Planetary, mixing.Planetary, mixing.Hand}[r.IntN(3)]
		b.Oven = OvenWork{
			Temperature: quantity.Celsius(float64(pick(200, 220, 230, 250))), Preheat: minutes(30, 45), Reheat: minutes(5, 10),
			Together: pick(0, 4, 6), Covered: minutes(0, 15), Uncovered: minutes(15, 25),
		}
		o.Bakes = append(o.Bakes, b)
	}
	return o
}

// Days of random breads in random kitchens: what the data form says breaks no rule, and where a day cannot be its
// conflict is a smallest one and every remedy that is named makes the day possible.
func TestRandomDays(t *testing.T) {
	from, to := howMany(t)
	possible, impossible, remedies, replanned := 0, 0, 0, 0
	for seed := from; seed < to; seed++ {
		o := someDay(randomly(seed))
		ctx, cancel := context.WithTimeout(context.Background(), 20*time.Second)
		k, err := o.Plan(ctx, wednesday(t))
		cancel()
		if err != nil {
			if len(quantity.InputErrors(err)) > 0 {
				continue // more loaves than places
			}
			t.Errorf("day %d: %v", seed, err)
			continue
		}
		text, err := json.Marshal(k)
		if err != nil {
			t.Fatal(err)
		}
		if k.Possible() {
			possible++
			for _, b := range judged(text) {
				t.Errorf("day %d: %s", seed, b)
			}
			continue
		}
		impossible++
		c := k.Timetable.Conflict
		if c == nil {
			continue // a dough rises too far
		}
		if !c.Minimal && !k.TimeRanOut && !k.Timetable.TimeRanOut {
			t.Errorf("day %d: a conflict that is not minimal: %v", seed, c)
		}
		var day KitchenDayData
		if err := json.Unmarshal(text, &day); err != nil {
			t.Fatal(err)
		}
		if n := len(day.Why.Remedies); n > 5 {
			t.Errorf("day %d: %d remedies", seed, n)
		}
		for _, m := range day.Why.Remedies {
			eased, ok := eased(k.problem, m)
			if !ok {
				continue
			}
			remedies++
			again, ok := wished(o, m)
			if !ok {
				again, ok = allowed(o, k, m)
			}
			if ok {
				replanned++
				if next, err := again.Plan(context.Background(), wednesday(t)); err != nil || !next.Possible() {
					t.Errorf("day %d: planned again with it, %v (%v) does not help: %v", seed, m.Words, m.Remedy, err)
				}
			}
			if works, err := eased.Possible(context.Background()); err != nil || !works {
				t.Errorf("day %d: %v (%v) does not help: %v", seed, m.Words, m.Remedy, err)
			}
		}
	}
	t.Logf("%d possible, %d impossible, %d remedies, %d planned again", possible, impossible, remedies, replanned)
	if possible == 0 || !testing.Short() && (impossible == 0 || remedies == 0) {
		t.Error("the days drawn are all alike")
	}
}

// wished is the order with the wish of one bread moved as a remedy says.
func wished(o Order, m RuleData) (Order, bool) {
	if !m.Wanted {
		return o, false
	}
	bread, _, _ := strings.Cut(m.Step, "/")
	o.Bakes = slices.Clone(o.Bakes)
	for i := range o.Bakes {
		b := &o.Bakes[i]
		if b.Name != bread {
			continue
		}
		shift := m.Change.Duration()
		if m.Easing == schedule.Earlier {
			shift = -shift
		}
		at := time.Date(b.Wanted.Moment.Date.Year, b.Wanted.Moment.Date.Month, b.Wanted.Moment.Date.Day,
			b.Wanted.Moment.Clock.Hour, b.Wanted.Moment.Clock.Minute, 0, 0, time.UTC).Add(shift)
		b.Wanted = OnDate(wallclock.MustMoment(at.Format("2006-01-02 15:04")))
	}
	return o, true
}

// allowed is the order with what the baker allows of a bread changed as a remedy says: how long it may rest in the
// cold, or wait when it is cool.
func allowed(o Order, k KitchenDay, m RuleData) (Order, bool) {
	change := m.Change
	if m.Easing == schedule.Shorter {
		change = -change
	}
	o.Bakes = slices.Clone(o.Bakes)
	changed := false
	for i := range o.Bakes {
		b := &o.Bakes[i]
		bread, step, _ := strings.Cut(m.Step, "/")
		waits := m.Step == "" || step == idCool
		switch {
		case m.Step != "" && bread != b.Name:
		case waits && m.Rule == schedule.StepMax:
			b.Loaves.FreshWithin = k.Breads[i].Bake.Loaves.FreshWithin + change
			changed = true
		case step == idRetard:
			r := *b.Retard
			if m.Rule == schedule.StepMin {
				r.AtLeast += change
			} else {
				r.AtMost += change
			}
			b.Retard = &r
			changed = true
		}
	}
	return o, changed
}

// eased is a problem with one rule changed as a remedy says.
func eased(p schedule.Problem, m RuleData) (schedule.Problem, bool) {
	p.Steps, p.Links, p.Bounds = slices.Clone(p.Steps), slices.Clone(p.Links), slices.Clone(p.Bounds)
	p.Resources = slices.Clone(p.Resources)
	if m.Rule == schedule.StepMax && m.Step == "" {
		return waitingLonger(p, m.Change), true
	}
	shift := m.Change
	if m.Easing == schedule.Earlier || m.Easing == schedule.Shorter {
		shift = -shift
	}
	for i := range p.Steps {
		s := &p.Steps[i]
		if s.ID != m.Step {
			continue
		}
		switch m.Rule {
		case schedule.StepMin:
			s.Min += shift
			return p, true
		case schedule.StepMax:
			s.Max = cmp.Or(s.Max, s.Min) + shift
			return p, true
		}
	}
	if m.Wanted {
		for i := range p.Bounds {
			if b := &p.Bounds[i]; b.Step == m.Step && b.Wanted {
				b.Earliest, b.Latest = b.Earliest.Add(shift.Duration()), b.Latest.Add(shift.Duration())
			}
		}
		return p, true
	}
	return p, false
}

// The judge sees what is wrong: a day that was right, changed in one place.
func TestTheJudgeSees(t *testing.T) {
	right, err := json.Marshal(planAll(t, sunday()))
	if err != nil {
		t.Fatal(err)
	}
	if broken := judged(right); len(broken) > 0 {
		t.Fatal(broken)
	}
	step := func(d *KitchenDayData, id string) *StepData {
		i := slices.IndexFunc(d.Steps, func(s StepData) bool { return s.ID == id })
		return &d.Steps[i]
	}
	for name, spoil := range map[string]func(*KitchenDayData){
		"asleep": func(d *KitchenDayData) {
			d.Kitchen.Asleep = []wallclock.Habit{wallclock.MustHabit("12:00 to 13:00")}
		},
		"loads":       func(d *KitchenDayData) { d.Breads[1].Oven.Decks = 2 },
		"pots":        func(d *KitchenDayData) { d.Kitchen.Pots = 1 },
		"places":      func(d *KitchenDayData) { d.Kitchen.RefrigeratorPlaces = 1 },
		"temperature": func(d *KitchenDayData) { step(d, "Focaccia/bake-1").Start = step(d, "Loaf/bake-1").Start },
		"falling":     func(d *KitchenDayData) { d.Kitchen.Oven.Cools = quantity.Elapsed(2 * time.Hour) },
		"hands":       func(d *KitchenDayData) { step(d, "Buns/mix-1").Start = step(d, "Focaccia/shape").Start },
		"washing": func(d *KitchenDayData) {
			d.Breads[1].Formula.Allergens = "gluten, sesame"
			step(d, "Focaccia/mix-1").End = step(d, "Buns/mix-1").Start
		},
		"wanted": func(d *KitchenDayData) { d.Breads[0].Wanted = d.Breads[0].Wanted.Add(time.Minute) },
		"order":  func(d *KitchenDayData) { d.Breads[0].Steps[1].End = d.Breads[0].Steps[1].End.Add(time.Minute) },
		"bulk":   func(d *KitchenDayData) { d.Breads[2].Bulk.Ready.Late = time.Minute },
		"levain": func(d *KitchenDayData) { d.Breads[0].Levain.Until.Likely = time.Hour },
	} {
		var d KitchenDayData
		if err := json.Unmarshal(right, &d); err != nil {
			t.Fatal(err)
		}
		spoil(&d)
		text, err := json.Marshal(d)
		if err != nil {
			t.Fatal(err)
		}
		if len(judged(text)) == 0 {
			t.Errorf("%s is not seen", name)
		}
	}
}
