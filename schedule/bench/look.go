package bench

import (
	"time"

	"example.org/maslin/dough/working"
	"example.org/maslin/schedule"
	"example.org/maslin/schedule/bakeday"
)

// LookFor answers: what do I do, or look for, at this step? In the numbers of the plan, and of the dough as it is known
// now. What the dough looks like is common practice, no source.
func (m DayNow) LookFor(s bakeday.StepData) []working.Message {
	out := m.doing(s)
	for _, l := range s.Adds {
		out = append(out, working.Tell("bench.do_add", "add %v of %s", l.Mass, l.Name))
	}
	for _, note := range s.Notes {
		out = append(out, working.Tell("bench.own_note", "your note: %s", note))
	}
	if s.LookFrom != nil && s.LookTo != nil {
		from, to := m.lookBetween(s)
		out = append(out, working.Tell("bench.look_at", "look at it from %v to %v", from, to))
	}
	return out
}

// lookBetween is when the dough may be ready: by what is known of it since it was mixed, and else as planned.
func (m DayNow) lookBetween(s bakeday.StepData) (from, to time.Time) {
	if s.Kind != schedule.Bulk || m.Progress == nil || m.Dough == nil {
		return *s.LookFrom, *s.LookTo
	}
	ready := m.Progress.Now.Ready()
	return m.Mixed.Add(ready.Early.Round(time.Minute)), m.Mixed.Add(ready.Late.Round(time.Minute))
}

func (m DayNow) doing(s bakeday.StepData) []working.Message {
	if !m.Day.Possible() {
		return nil
	}
	plan := m.Day.Data()
	one := func(t working.Message) []working.Message { return []working.Message{t} }
	shapeAt := plan.Bulk.ShapeAt
	if m.Progress != nil {
		shapeAt = m.Progress.Now.Bulk().Rise
	}
	switch s.Kind {
	case schedule.Make, schedule.Feed:
		return weigh(plan, s.Thing)
	case schedule.Ripen:
		if s.Number == 0 {
			return one(
				working.Tell("bench.look_levain",
					"ripe when it is domed, full of bubbles to the wall of the jar and smells fresh and a little sour; "+
						"past its best when the middle has sunk"),
			)
		}
		return one(
			working.Tell("bench.look_preferment",
				"ripe when its top is domed or just begins to sink, and it is full of bubbles; "+
					"past its best when it has fallen and smells of alcohol"),
		)
	case schedule.Stand:
		return one(working.Tell("bench.look_soaker", "covered; cool before it goes into the dough"))
	case schedule.TakeOut:
		return one(working.Tell("bench.look_out", "cover the pieces, so that no skin forms"))
	case schedule.WarmUp:
		return one(
			working.Tell("bench.look_warm", "about %.0f in the middle when it goes into the oven", m.Day.Rising.Into))
	case schedule.Mix:
		return append(
			weigh(plan, ""),
			working.Tell("bench.do_pour", "pour %.0f of water at %.1f", plan.Water.Pour, plan.Water.Temperature),
			working.Tell("bench.do_measure", "the dough should leave the mixer at %.1f; measure it and write it down",
				plan.Water.Target),
		)
	case schedule.Bulk:
		return []working.Message{
			working.Tell("bench.look_bulk",
				"shape when it has risen by %.0f, whatever the clock says: a mark on a straight-sided jar of the dough shows it",
				shapeAt),
			working.Tell("bench.look_domed",
				"then the surface is domed and the dough wobbles and comes away from the wall"),
		}
	case schedule.Fold:
		return one(working.Tell("bench.do_fold", "wet hands; lift each of four sides and lay it over the middle"))
	case schedule.Shape:
		return one(
			working.Tell("bench.do_shape", "%d pieces of %.0f, when the dough has risen by %.0f", plan.Formula.Pieces,
				plan.Formula.Divide, shapeAt),
		)
	case schedule.Retard:
		if plan.Retard != nil {
			return one(working.Tell("bench.look_retard", "in the refrigerator at %.0f; it rises on until it is cold",
				plan.Retard.Into))
		}
	case schedule.Proof:
		return one(working.Tell("bench.look_proof",
			"ready when a dent of a floured finger comes back slowly and not all the way"))
	case schedule.Preheat:
		return one(working.Tell("bench.do_preheat", "oven and what is in it to %05.0f", plan.Oven.Temperature))
	case schedule.Bake:
		return m.baking(plan, s)
	case schedule.Cool:
		return one(working.Tell("bench.look_cool", "cut it below %.0f", plan.Oven.Slice))
	}
	return nil
}

// weigh lists what goes into a bowl; the last list of the plan is the dough's, which has no name of its own here.
func weigh(plan bakeday.PlanData, thing string) []working.Message {
	var out []working.Message
	for i, list := range plan.Weigh {
		dough := i == len(plan.Weigh)-1
		if dough != (thing == "") || !dough && list.Name != thing {
			continue
		}
		out = append(out, weighed(list)...)
	}
	return out
}

// weighed tells a list that is weighed.
func weighed(list bakeday.WeighList) []working.Message {
	var out []working.Message
	for _, l := range list.Lines {
		if l.At != 0 {
			continue // at its own step
		}
		mass := l.Mass
		if len(l.Portions) > 0 {
			mass = l.Portions[0]
		}
		out = append(out, working.Tell("bench.do_weigh", "%v %s", mass, l.Name))
	}
	return append(out, list.Says...)
}

// baking has the clock of the oven: when the lid comes off.
func (m DayNow) baking(plan bakeday.PlanData, s bakeday.StepData) []working.Message {
	o := plan.Oven
	out := []working.Message{working.Tell("bench.look_color", "done by time and color")}
	if !o.Core.IsZero() {
		out[0] = working.Tell("bench.look_done", "done at a core of %.1f (%.1f to %.1f) and a loss of %.0f or more",
			o.Core, o.CoreFrom, o.CoreTo, o.MinimumLoss)
	}
	switch at := s.Start.Add(o.Covered.Duration()); {
	case o.Covered > 0 && o.Pots > 0:
		out = append(out, working.Tell("bench.do_uncover", "%v covered: the lid comes off at %t; then about %v uncovered",
			o.Covered, at, o.Uncovered))
	case o.Covered > 0:
		out = append(out, working.Tell("bench.do_vent", "%v with steam or a cover, until %t; then about %v without",
			o.Covered, at, o.Uncovered))
	}
	return append(out, m.core(s)...)
}
