package bakeday

import (
	"context"
	"slices"
	"time"

	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule"
)

// SideBySide are plans to be compared. Make it with [Day.Beside] or [Bake.KneadedBy].
type SideBySide struct {
	answer

	Plans []NamedPlan `json:"plans"`
	// Changes says in words what makes the difference, where one thing alone is changed.
	Changes []working.Message `json:"what_changes,omitempty"`

	days []Day
}

// NamedPlan is one plan of a comparison, with what it is called there.
type NamedPlan struct {
	Name working.Message `json:"name"`
	Plan PlanData        `json:"plan"`
}

func (s *SideBySide) add(name working.Message, d Day) {
	s.days = append(s.days, d)
	s.Plans = append(s.Plans, NamedPlan{Name: name, Plan: d.Data()})
}

// Beside puts the day beside another, of another bake or of the same bake changed.
func (d Day) Beside(other Day) SideBySide {
	var out SideBySide
	for _, one := range []Day{d, other} {
		out.add(one.called(), one)
	}
	return out
}

// KneadedBy answers: what changes when this dough is kneaded another way, by hand instead of by machine? The bake as
// it is stands beside two others: one with the water that brings the dough to the same temperature, and one with the
// same water, so that the dough differs by what mixing gives it and by nothing else. A machine whose bowl the bake
// does not give has one of 7 L, which is large enough for a household; only the number of batches depends on it.
//
// Errors: those of [Bake.Plan]; ErrInconsistent for the way in which the bake is kneaded already; ErrOutOfRange, under
// Mixing.Temperature, for a dough that the same water would leave too cold or too warm to reckon with.
func (b Bake) KneadedBy(ctx context.Context, clock KitchenClock, kind mixing.MixerKind) (SideBySide, error) {
	var p quantity.Problems
	own := b.Mixer().Kind
	if kind == own {
		p.Add("Mixing.Mixer", kind, quantity.Tell("bakeday.want_another_way_than_bake",
			"another way than that of the bake"), quantity.ErrInconsistent)
	}
	if err := p.ErrFor(b); err != nil {
		return SideBySide{}, err
	}
	day, err := b.Plan(ctx, clock)
	if err != nil {
		return SideBySide{}, err
	}
	other := b
	other.Mixing.Mixer, other.Mixing.Warming = kind, quantity.TemperatureDelta{}
	if kind != mixing.Hand && other.Mixer().Bowl.IsZero() {
		has := func(m KitchenMixer) bool { return m.Kind == kind }
		others := slices.DeleteFunc(slices.Clone(other.Kitchen.Mixers), has)
		other.Kitchen.Mixers = append(others, KitchenMixer{Kind: kind, Bowl: quantity.Liters(7)})
	}
	same, err := other.Plan(ctx, clock)
	if err != nil {
		return SideBySide{}, err
	}
	other.Mixing.Temperature = b.Mixing.Temperature.Add(same.Water.Warming.Sub(day.Water.Warming))
	cold, err := other.Plan(ctx, clock)
	if err != nil {
		return SideBySide{}, err
	}
	var out SideBySide
	out.add(working.Tell("bakeday.kneaded_by", "%v", own), day)
	out.add(working.Tell("bakeday.kneaded_same_dough", "%v, same dough", kind), same)
	out.add(working.Tell("bakeday.kneaded_same_water", "%v, same water", kind), cold)
	out.Changes = out.kneading(way(own), way(kind))
	return out, nil
}

// way is how a dough is kneaded, within a sentence.
func way(kind mixing.MixerKind) working.Message {
	if kind == mixing.Hand {
		return working.Tell("bakeday.by_hand", "by hand")
	}
	return working.Tell("bakeday.by_machine", "by %v mixer", kind)
}

// kneading says what kneading changes in water, bulk and timetable.
func (s SideBySide) kneading(a, b working.Message) []working.Message {
	one, same, cold := s.Plans[0].Plan, s.Plans[1].Plan, s.Plans[2].Plan
	out := []working.Message{working.Tell("bakeday.kneading_warms", "mixing warms the dough by %.1f %v and by %.1f %v%v",
		one.Water.Warming, a, same.Water.Warming, b, guides(one.Water.Guess, same.Water.Guess))}
	if same.Formula.Dough == one.Formula.Dough && one.Water.Warming != same.Water.Warming {
		out = append(out, working.Tell("bakeday.kneading_water",
			"for the same dough of %.1f the water must be %.1f instead of %.1f; bulk and timetable stay much the same",
			one.Water.Target, same.Water.Temperature, one.Water.Temperature))
	}
	if !same.Water.Feasible && len(same.Water.Remedies) > 0 {
		out = append(out, working.Tell("bakeday.kneading_unpourable", "such water cannot be poured: %v",
			same.Water.Remedies[0]))
	}
	out = append(out, bulkChange(one, cold))
	if r, w := cold.Retard, one.Retard; r != nil && w != nil && r.For != w.For {
		out = append(out, working.Tell("bakeday.kneading_retard", "the loaves are then in the cold for %v instead of %v",
			r.For, w.For))
	}
	if m, ok := mixingMoved(one, cold); ok {
		out = append(out, m)
	}
	if n, m := one.batches(), same.batches(); n != m {
		out = append(out, working.Tell("bakeday.kneading_batches",
			"the dough is mixed in %d batches %v and in %d %v, each taking the time that the bake gives", n, a, m, b))
	}
	return out
}

func guides(first, second bool) working.Message {
	switch {
	case first && second:
		return working.Tell("bakeday.both_guides", " (both guide values)")
	case second:
		return working.Tell("bakeday.second_guide", " (the second a guide value)")
	}
	return working.Message{}
}

func bulkChange(one, cold PlanData) working.Message {
	was, is := one.Bulk.Ready.Likely, cold.Bulk.Ready.Likely
	switch longer := is - was; {
	case longer > 0:
		return working.Tell("bakeday.kneading_bulk_longer",
			"with the same water the dough comes out at %.1f, and bulk likely takes %v instead of %v, %v longer",
			cold.Water.Target, is, was, longer)
	case longer < 0:
		return working.Tell("bakeday.kneading_bulk_shorter",
			"with the same water the dough comes out at %.1f, and bulk likely takes %v instead of %v, %v shorter",
			cold.Water.Target, is, was, -longer)
	}
	return working.Tell("bakeday.kneading_bulk_same",
		"with the same water the dough comes out at %.1f, and bulk likely takes as long, %v", cold.Water.Target, is)
}

// mixingMoved says whether mixing begins at another time, so that the bread is ready in time.
func mixingMoved(one, cold PlanData) (working.Message, bool) {
	was, is := one.starts(schedule.Mix), cold.starts(schedule.Mix)
	if !one.Possible || !cold.Possible || was.IsZero() || is.IsZero() || was.Equal(is) {
		return working.Message{}, false
	}
	if d := was.Sub(is); d > 0 {
		return working.Tell("bakeday.kneading_mix_earlier",
			"so that the bread is ready in time, mixing then begins %v earlier, %v", quantity.Elapsed(d), is), true
	}
	return working.Tell("bakeday.kneading_mix_later", "mixing may then begin %v later, %v",
		quantity.Elapsed(is.Sub(was)), is), true
}

// batches is in how many batches the dough is mixed.
func (s PlanData) batches() int {
	if len(s.Weigh) == 0 {
		return 0
	}
	return s.Weigh[len(s.Weigh)-1].Batches
}

// starts is when the first step of a kind begins; the zero time when there is none.
func (s PlanData) starts(kind schedule.StepKind) time.Time {
	for _, x := range s.Steps {
		if x.Kind == kind {
			return x.Start
		}
	}
	return time.Time{}
}

// Workings derive what is set side by side, of one plan after the other: the water, how far the dough rises, how long
// that takes, and the times of the steps.
func (s SideBySide) Workings() []working.Working {
	var out []working.Working
	for _, d := range s.days {
		out = append(out, d.Water.Working())
		if w := d.Rising.Target.Working(); w.Len() > 0 {
			out = append(out, w)
		}
		out = append(out, d.Rising.Bulk.Working())
		if w, ok := timesWorking(d.Timetable, nil); ok {
			out = append(out, w)
		}
	}
	return out
}
