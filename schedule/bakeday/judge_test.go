package bakeday

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"
	"time"

	"example.org/maslin/bake"
	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule"
	"example.org/maslin/schedule/wallclock"
)

// judge reads the data form of a day and of the order it was planned for, and nothing else, and lists the rules that
// the day breaks. It shares no code with the planner: it goes through the day minute by minute.
type judge struct {
	order  Order
	day    KitchenDayData
	broken []string
}

// judged lists the rules that a day, as data, breaks against its order, as data.
func judged(order, day []byte) []string {
	var j judge
	if err := json.Unmarshal(order, &j.order); err != nil {
		return []string{err.Error()}
	}
	if err := json.Unmarshal(day, &j.day); err != nil {
		return []string{err.Error()}
	}
	j.steps()
	j.present()
	j.oven()
	j.counted()
	j.box()
	j.mixers()
	j.levains()
	for i, b := range j.day.Breads {
		j.breadOf(&j.order.Bakes[i], b)
	}
	return j.broken
}

func (j *judge) say(format string, args ...any) {
	j.broken = append(j.broken, fmt.Sprintf(format, args...))
}

func (j *judge) bread(name string) PlanData {
	i := slices.IndexFunc(j.day.Breads, func(b PlanData) bool { return b.Name == name })
	return j.day.Breads[i]
}

// bake is what a bread was ordered as.
func (j *judge) bake(name string) *Bake {
	i := slices.IndexFunc(j.order.Bakes, func(b Bake) bool { return b.Name == name })
	return &j.order.Bakes[i]
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

// steps: in order, none before the clock of the plan, none without its time, and the same in the day and its breads.
func (j *judge) steps() {
	seen := map[string]bool{}
	var before time.Time
	for _, s := range j.day.Steps {
		switch {
		case seen[s.ID]:
			j.say("%s comes twice", s.ID)
		case s.Start.Before(before):
			j.say("%s is out of order", s.ID)
		case s.Start.Before(j.day.Now):
			j.say("%s at %v, planned at %v", s.ID, s.Start, j.day.Now)
		case s.End.Sub(s.Start) != s.Takes.Duration() || s.Takes < 0:
			j.say("%s from %v to %v takes %v", s.ID, s.Start, s.End, s.Takes)
		case s.EarliestStart.After(s.Start) || s.LatestStart.Before(s.Start):
			j.say("%s at %v, not before %v nor after %v", s.ID, s.Start, s.EarliestStart, s.LatestStart)
		}
		seen[s.ID], before = true, s.Start
	}
	all := 0
	for _, b := range j.day.Breads {
		for _, s := range b.Steps {
			all++
			id := s.ID
			if len(j.day.Breads) > 1 {
				id = b.Name + "/" + id
			}
			if !seen[id] {
				j.say("%s of %s is not in the day", s.ID, b.Name)
			}
		}
	}
	if all != len(j.day.Steps) {
		j.say("%d steps in the day, %d in its breads", len(j.day.Steps), all)
	}
}

// during reports whether a habit holds at a minute of the clock on the wall.
func during(h wallclock.Habit, t time.Time) bool {
	on := func(t time.Time) bool { // whether it begins on the day of that time
		date := wallclock.Date{Year: t.Year(), Month: t.Month(), Day: t.Day()}
		if h.On != (wallclock.Date{}) {
			return h.On == date
		}
		return h.Days == 0 || h.Days&(1<<t.Weekday()) != 0
	}
	from, to, at := h.From.Minutes(), h.To.Minutes(), t.Hour()*60+t.Minute()
	noon := time.Date(t.Year(), t.Month(), t.Day(), 12, 0, 0, 0, t.Location())
	if from < to {
		return on(t) && at >= from && at < to
	}
	return on(t) && at >= from || on(noon.AddDate(0, 0, -1)) && at < to
}

// present: nobody works, heats or bakes while the kitchen sleeps or is away. Hands at the oven are there anyway.
func (j *judge) present() {
	for _, h := range append(slices.Clone(j.day.Kitchen.Asleep), j.day.Kitchen.Away...) {
		for _, s := range j.day.Steps {
			switch s.Kind {
			case schedule.Ripen, schedule.Stand, schedule.Bulk, schedule.Proof, schedule.Retard, schedule.WarmUp, schedule.Cool:
				if s.Hands {
					j.say("%s takes hands", s.ID)
				}
				continue
			}
			for t := s.Start; t.Before(s.End); t = t.Add(time.Minute) {
				if during(h, t) {
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

// heatAt is how hot the oven is set at a minute of a round: it is turned down when the lid comes off.
func heatAt(o OvenData, s StepData, t time.Time) quantity.Temperature {
	boils := s.Takes - o.Covered - o.Uncovered // before the oven
	if !o.Then.IsZero() && t.Sub(s.Start) >= (boils+o.Covered).Duration() {
		return o.Then
	}
	return o.Temperature
}

// oven: no more loads than decks, one temperature at a time, and time to change it.
func (j *judge) oven() {
	rounds := j.of(schedule.Bake)
	slices.SortFunc(rounds, func(a, b StepData) int { return a.Start.Compare(b.Start) })
	decks := func(s StepData) int { return j.bread(s.Bread).Oven.Decks }
	if n := most(rounds, decks); n > max(1, j.day.Kitchen.Oven.Decks) {
		j.say("%d loads at a time", n)
	}
	for i, a := range rounds {
		for _, b := range rounds[i+1:] {
			if a.Bread == b.Bread {
				continue
			}
			x, y := j.bread(a.Bread).Oven, j.bread(b.Bread).Oven
			for t := b.Start; t.Before(a.End) && t.Before(b.End); t = t.Add(time.Minute) {
				if p, q := heatAt(x, a, t), heatAt(y, b, t); p != q {
					j.say("%s at %v beside %s at %v, %s", a.ID, p, b.ID, q, t.Format("Mon 15:04"))
					break
				}
			}
			if gap := b.Start.Sub(a.End).Minutes(); gap >= 0 {
				if least := j.changes(x, y); gap < least-1 {
					j.say("%s %.0f min after %s, the oven takes %.0f", b.ID, gap, a.ID, least)
				}
				if y.Pots > x.Pots && j.day.Kitchen.Oven.Decks < 2 && gap < 30 && gap < y.Preheat.Duration().Minutes() {
					j.say("%s %.0f min after %s, in pots that are cold", b.ID, gap, a.ID)
				}
				if gap < y.Reheat.Duration().Minutes() && j.day.Kitchen.Oven.Decks < 2 {
					j.say("%s %.0f min after %s, without reheating", b.ID, gap, a.ID)
				}
			}
		}
	}
	if pots := j.day.Kitchen.Pots; pots > 0 {
		if n := most(rounds, func(s StepData) int { return j.bread(s.Bread).Oven.Pots }); n > pots {
			j.say("%d pots of %d", n, pots)
		}
	}
}

// changes is how many minutes the oven takes from the end of one bread to the beginning of another.
func (j *judge) changes(x, y OvenData) float64 {
	k := j.day.Kitchen
	last := x.Temperature
	if !x.Then.IsZero() {
		last = x.Then
	}
	by := y.Temperature.Sub(last).Celsius()
	switch {
	case by < 0 && k.Oven.Cools > 0:
		return -by / 10 * k.Oven.Cools.Duration().Minutes()
	case by < 0:
		return -by
	case k.Oven.Warms > 0:
		return by / 10 * k.Oven.Warms.Duration().Minutes()
	}
	return y.Preheat.Duration().Minutes() * by / y.Temperature.Sub(k.Day).Celsius()
}

// counted: hands and places in the cold.
func (j *judge) counted() {
	k := j.day.Kitchen
	work := j.of(schedule.Feed, schedule.Make, schedule.Mix, schedule.Fold, schedule.Laminate, schedule.Shape,
		schedule.Chill)
	if n := most(work, func(StepData) int { return 1 }); n > max(1, k.Hands) {
		j.say("%d pairs of hands of %d", n, k.Hands)
	}
	if k.RefrigeratorPlaces == 0 {
		return
	}
	var cold []StepData
	for _, s := range j.of(schedule.Retard) {
		for _, b := range j.of(schedule.Bake, schedule.TakeOut) {
			r := j.bake(s.Bread).Retard
			if b.Bread == s.Bread && b.Start.After(s.End) && r.WarmUp == 0 && !r.Undivided {
				s.End = b.Start // until the last of them is in the oven
			}
		}
		cold = append(cold, s)
	}
	places := func(s StepData) int {
		if j.bake(s.Bread).Retard.Undivided {
			return 1
		}
		return j.bread(s.Bread).Formula.Pieces
	}
	if n := most(cold, places); n > k.RefrigeratorPlaces {
		j.say("%d loaves in %d places, a dough counted as one", n, k.RefrigeratorPlaces)
	}
}

// box: one temperature at a time, with time to change it, and a place for each tub and for the tray of each round.
func (j *judge) box() {
	var warm []StepData
	for _, s := range j.of(schedule.Bulk, schedule.Proof) {
		if !j.bread(s.Bread).Bulk.Box.IsZero() {
			warm = append(warm, s)
		}
	}
	for i, a := range warm {
		for _, b := range warm[i+1:] {
			x, y := j.bread(a.Bread).Bulk.Box, j.bread(b.Bread).Bulk.Box
			if x != y && b.Start.Sub(a.End) < 20*time.Minute && a.Start.Sub(b.End) < 20*time.Minute {
				j.say("the box at %v for %s and %v for %s", x, a.ID, y, b.ID)
			}
		}
	}
	places := func(s StepData) int {
		if s.Kind == schedule.Proof {
			return j.bread(s.Bread).Oven.Rounds
		}
		return 1
	}
	if has := j.day.Kitchen.BoxPlaces; has > 0 && most(warm, places) > has {
		j.say("%d tubs and trays in %d places", most(warm, places), has)
	}
}

// mixers: one dough at a time, washed before a dough without the allergens of the one before.
func (j *judge) mixers() {
	mixes := j.of(schedule.Mix)
	slices.SortFunc(mixes, func(a, b StepData) int { return a.Start.Compare(b.Start) })
	for i, a := range mixes {
		for _, b := range mixes[i+1:] {
			x, y := j.bread(a.Bread), j.bread(b.Bread)
			kind := j.bake(a.Bread).Mixing.Mixer
			if kind != j.bake(b.Bread).Mixing.Mixer || kind == mixing.Hand {
				continue
			}
			gap := b.Start.Sub(a.End)
			if gap < 0 {
				j.say("%s and %s in one mixer", a.ID, b.ID)
			}
			washing := 15 * time.Minute
			for _, m := range j.order.Kitchen.Mixers {
				if m.Kind == kind && m.Washing > 0 {
					washing = m.Washing.Duration()
				}
			}
			for _, one := range strings.Split(x.Formula.Allergens, ", ") {
				if !strings.Contains(y.Formula.Allergens, one) && gap < washing {
					j.say("%s %v after %s, which carries %s", b.ID, gap, a.ID, one)
				}
			}
		}
	}
}

// levains: what feeds several doughs is fed once, and makes what goes into each of them.
func (j *judge) levains() {
	users := map[string][]PlanData{}
	for _, b := range j.order.Bakes {
		if b.Levain != nil && b.Levain.Name != "" {
			users[b.Levain.Name] = append(users[b.Levain.Name], j.bread(b.Name))
		}
	}
	for name, breads := range users {
		if len(breads) < 2 {
			continue
		}
		var goes quantity.Mass
		feeds := 0
		for _, b := range breads {
			for _, s := range b.Steps {
				if s.Kind == schedule.Feed {
					feeds++
				}
			}
			for _, l := range b.Weigh[len(b.Weigh)-1].Lines {
				if l.Name == "levain" {
					goes = goes.Add(l.Mass)
				}
			}
		}
		if feeds != 1 {
			j.say("%s is fed %d times", name, feeds)
		}
		at := slices.IndexFunc(j.day.Levains, func(l WeighList) bool { return l.Name == name })
		if at < 0 {
			j.say("%s is not to be weighed", name)
		} else if off := j.day.Levains[at].Total.Sub(goes).Grams(); off < -5 || off > 5 {
			j.say("%s: %v are made, %v are used", name, j.day.Levains[at].Total, goes)
		}
	}
}

// toOrder are the styles that are eaten as they come out of the oven.
func toOrder(style bake.Style) bool { return style == bake.Pizza || style == bake.FlatBread }
