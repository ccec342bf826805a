package bench

import (
	"slices"
	"time"

	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
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
		return weigh(plan, s.Thing, 1)
	case schedule.Ripen:
		if s.Number == 0 && m.ryeLevain() {
			return one(
				working.Tell("bench.look_rye_levain",
					"ripe when it has risen, its floured top has cracks and it smells fresh and sour; past its best when the "+
						"middle has sunk"),
			)
		}
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
		return m.bowl(plan, s)
	case schedule.Bulk:
		cold := m.afterBulk() == stepChill
		switch {
		case shapeAt.Points() < showsFrom && cold:
			return one(working.Tell("bench.look_hardly_cold",
				"put it into the cold when it has risen by about %.0f: so little hardly shows, so go by the clock and by how "+
					"warm the dough is", shapeAt))
		case shapeAt.Points() < showsFrom:
			return one(working.Tell("bench.look_hardly",
				"shape when it has risen by about %.0f: so little hardly shows, so go by the clock and by how warm the dough is",
				shapeAt))
		}
		out := one(working.Tell("bench.look_bulk",
			"shape when it has risen by %.0f, whatever the clock says: a mark on a straight-sided jar of the dough shows it",
			shapeAt))
		if cold {
			out = one(working.Tell("bench.look_bulk_cold",
				"put it into the cold when it has risen by %.0f, whatever the clock says: a mark on a straight-sided jar of the "+
					"dough shows it", shapeAt))
		}
		switch {
		case m.rye():
			return append(out, working.Tell("bench.look_cracked",
				"then its floured surface has fine cracks; dough of rye neither domes nor wobbles"))
		case shapeAt.Points() < wobblesFrom:
			return append(out, working.Tell("bench.look_lively",
				"then it is a little fuller and softer, with some bubbles at the wall; it does not dome yet"))
		}
		return append(out, working.Tell("bench.look_domed",
			"then the surface is domed and the dough wobbles and comes away from the wall"))
	case schedule.Fold:
		return one(working.Tell("bench.do_fold", "wet hands; lift each of four sides and lay it over the middle"))
	case schedule.Chill:
		return one(working.Tell("bench.do_chill",
			"into the refrigerator in its tub, the lid on loosely, when it has risen by %.0f: it rises on until it is cold",
			shapeAt))
	case schedule.Shape:
		if m.afterBulk() == stepChill {
			return one(working.Tell("bench.do_shape_cold", "%d {1|piece|pieces} of %.0f, straight from the cold",
				plan.Formula.Pieces, plan.Formula.Divide))
		}
		return one(
			working.Tell("bench.do_shape", "%d {1|piece|pieces} of %.0f, when the dough has risen by %.0f", plan.Formula.Pieces,
				plan.Formula.Divide, shapeAt),
		)
	case schedule.Retard:
		if plan.Retard != nil {
			return one(working.Tell("bench.look_retard", "in the refrigerator at %.0f; it rises on until it is cold",
				plan.Retard.Into))
		}
	case schedule.Proof:
		if m.rye() {
			return one(working.Tell("bench.look_rye_proof",
				"ready when the cracks in its floured surface are clear and do not run into one another yet"))
		}
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

const (
	showsFrom   = 12 // percent of rise that an eye and a mark on a jar tell from none. Judgment
	wobblesFrom = 40 // percent of rise from which on a dough shows that it is full of gas. Judgment
)

// rye reports whether the dough is held by rye and not by gluten.
func (m DayNow) rye() bool { return bakeday.DoughKind(m.Day.Batch) == mixing.RyeDough }

// ryeLevain reports whether the levain is fed with rye.
func (m DayNow) ryeLevain() bool {
	l := m.Day.Bake.Levain
	return l != nil && slices.ContainsFunc(m.Day.Bake.Flours, func(f bakeday.Ingredient) bool {
		return f.Name == l.Flour && f.Kind.Rye()
	})
}

// bowl is what goes into the bowl, how warm it is poured, and how warm the dough is to be.
func (m DayNow) bowl(plan bakeday.PlanData, s bakeday.StepData) []working.Message {
	out := weigh(plan, "", s.Number)
	w := plan.Water
	what, mass := working.Tell("bench.water", "water"), w.Portions[max(0, min(s.Number, len(w.Portions))-1)]
	if len(w.Liquids) > 0 {
		names := make([]any, len(w.Liquids))
		for i, name := range w.Liquids {
			names[i] = working.Say("%s", name)
		}
		what = working.And(names...)
	}
	if w.Feasible {
		out = append(out, working.Tell("bench.do_pour", "pour %.0f of %v at %.1f", mass, what, w.Temperature))
	} else {
		out = append(out, working.Tell("bench.cannot_pour", "%v would have to be %.1f, which cannot be poured", what,
			w.Temperature))
	}
	out = append(out, w.Remedies...)
	return append(out, working.Tell("bench.do_measure",
		"the dough should leave the mixer at %.1f; measure it and write it down", plan.Water.Target))
}

// weigh lists what goes into a bowl, of several batches into that of the number; the last list of the plan is the
// dough's, which has no name of its own here.
func weigh(plan bakeday.PlanData, thing string, batch int) []working.Message {
	var out []working.Message
	for i, list := range plan.Weigh {
		dough := i == len(plan.Weigh)-1
		if dough != (thing == "") || !dough && list.Name != thing {
			continue
		}
		out = append(out, weighed(list, batch)...)
	}
	return out
}

// weighed tells a list that is weighed, of several batches the one of the number.
func weighed(list bakeday.WeighList, batch int) []working.Message {
	var out []working.Message
	for _, l := range list.Lines {
		if l.At != 0 {
			continue // at its own step
		}
		if l.Mass.IsZero() || slices.ContainsFunc(l.Portions, quantity.Mass.IsZero) {
			continue // the list says how to weigh so little
		}
		out = append(out, working.Tell("bench.do_weigh", "%v %s", portion(l, batch), l.Name))
	}
	return append(out, list.Says...)
}

// portion is what of a line goes into the batch of a number.
func portion(l bakeday.WeighLine, batch int) quantity.Mass {
	if batch < 1 || batch > len(l.Portions) {
		return l.Mass
	}
	return l.Portions[batch-1]
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
