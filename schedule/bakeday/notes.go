package bakeday

import (
	"time"

	"example.org/maslin/bake"
	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule"
	"example.org/maslin/schedule/wallclock"
)

// soonShaped is the rise in percent below which hardly anything happens before shaping. Judgment.
const soonShaped = 10

// freshEnough is how long bread may wait, cool, before a word is lost on it. Judgment: half the time that it may at
// most.
const freshEnough = 6 * time.Hour

// notes are things to know about this day that no single number shows.
func (d *Day) notes() []working.Message {
	var out []working.Message
	if d.short != nil {
		out = append(out, d.short.note(d.Bake.Loaves))
	}
	out = append(out, d.notesAside()...)
	out = append(out, d.waterNotes()...)
	out = append(out, d.levainNotes()...)
	out = append(out, d.weightNotes()...)
	out = append(out, d.risingNotes()...)
	if d.Possible() {
		out = append(out, d.hoursNotes()...)
	}
	if d.TimeRanOut {
		out = append(out, working.Tell("bakeday.note_time_ran_out",
			"the time for planning ran out: there may be a better plan"))
	}
	return out
}

func (d *Day) waterNotes() []working.Message {
	out := append([]working.Message(nil), d.Water.Notes...)
	var names []any
	for _, name := range d.Water.Liquids {
		names = append(names, working.Tell("bakeday.named", "%v", name))
	}
	switch len(names) {
	case 0:
		return out
	case 1:
		return append(out, working.Tell("bakeday.note_no_water_one",
			"there is no water to pour: the temperature given is for %v", names[0]))
	}
	return append(out, working.Tell("bakeday.note_no_water",
		"there is no water to pour: the temperature given is for %v together", working.And(names...)))
}

func (d *Day) levainNotes() []working.Message {
	l := d.Levain
	if l == nil {
		return nil
	}
	if d.Bake.Levain.standing() {
		past := d.Now.Sub(l.Fed.Add(l.Ripeness.Until.Likely))
		if past <= 0 {
			return nil
		}
		return []working.Message{working.Tell("bakeday.note_levain_past",
			"the levain has been past its best for about %v: it raises the dough more slowly and makes it sour and slack; "+
				"feed it again, or go by the dough", past.Round(time.Minute))}
	}
	if d.Bake.Levain.CultureAtHand.IsZero() && l.Shared.IsZero() {
		return []working.Message{usedUp(working.Tell("bakeday.the_levain", "levain"))}
	}
	if l.Short.IsZero() {
		return nil
	}
	return []working.Message{working.Tell("bakeday.note_starter_short",
		"the levain needs %.0f of culture and %.0f is at hand: feed the culture up the day before",
		l.Culture, d.Bake.Levain.CultureAtHand)}
}

// usedUp says of a levain that nothing is left of it to feed from: how much culture stands there nobody said.
func usedUp(levain working.Message) working.Message {
	return working.Tell("bakeday.note_used_up",
		"%v: all that is fed goes into the dough: keep some culture back, or feed a little more, for the next time", levain)
}

func (d *Day) weightNotes() []working.Message {
	var out []working.Message
	for _, w := range d.Weighing.TooSmall() {
		out = append(out, tooSmall(w.Exact, w.Name))
	}
	if l, u := d.Baking.Loss, d.Baking.Usual.Loss; l.Compare(u.Low) < 0 || l.Compare(u.High) > 0 {
		out = append(out, working.Tell("bakeday.note_loss",
			"a bake loss of %v is outside the usual %v to %v for this bread", l, u.Low, u.High))
	}
	return out
}

func tooSmall(exact quantity.Mass, name string) working.Message {
	return working.Tell("bakeday.note_too_small",
		"%.2f of %v is too little for the scale: weigh it as part of a solution", exact, name)
}

// risingNotes are about the dough from the bowl to the oven, and about who is there to see it.
func (d *Day) risingNotes() []working.Message {
	var out []working.Message
	r, wanted := d.Rising, d.Bake.Bulk.Rise
	if r.HasProof && r.InOven.Likely.Points() > wanted.Points()*1.05 {
		out = append(out, working.Tell("bakeday.note_quick",
			"the dough is quicker than the hands: even with the shortest proof it will have risen about %.0f in the oven, "+
				"not %.0f; cool it, or take less %v", r.InOven.Likely, wanted, d.Bake.leavening()))
	}
	out = append(out, d.chilling()...)
	if !r.HasProof && r.Feasible && d.Bake.Bulk.ShapeAt.IsZero() && r.ShapeAt.Points() < soonShaped {
		says := working.Tell("bakeday.note_shaped_soon",
			"it is shaped when it has risen by only %.0f, because the rest after shaping brings the rest of the %.0f: "+
				"for more time before it, less %v, a cooler dough or a shorter rest", r.ShapeAt, wanted, d.Bake.leavening())
		if d.Bake.undivided() {
			says = working.Tell("bakeday.note_chilled_soon",
				"it goes into the cold when it has risen by only %.0f, because a tub of dough cools slowly and the cold and the "+
					"proof bring the rest of the %.0f: for more time before it, less %v, a cooler dough or a shorter rest",
				r.ShapeAt, wanted, d.Bake.leavening())
		}
		out = append(out, says)
	}
	if most := d.inTheCold(); most > 0 && r.Retard > most+most/4 {
		out = append(out, working.Tell("bakeday.note_long_cold",
			"dough of this flour keeps its strength for about %v in the cold once it is shaped (from memory), and here it lies "+
				"%v: it may run and tear; a tin, or a shorter retard, is surer", most, r.Retard))
	}
	out = append(out, r.Bulk.Notes()...)
	if s, ok := d.Timetable.Step(idBulk); ok && s.Watch != nil && !d.Careful {
		if absent := d.absentDuring(*s.Watch); !absent.IsZero() {
			out = append(out, working.Tell("bakeday.note_ready_while_away",
				"the bulk may be ready in this time: %v; no plan around that was found: look before, and put the dough in "+
					"the cold if it is nearly there", absent))
		}
	}
	return out
}

// inTheCold is how long a shaped dough keeps its strength at 4 °C: half rye about 12 hours and all rye about 4, in
// proportion between. Zero for wheat, which does for a day, and for a dough that a tin or a tray holds. From memory.
func (d *Day) inTheCold() quantity.Elapsed {
	l := d.Bake.Loaves
	shape := l.Shape.For(l.Style)
	if d.Bake.Retard == nil || d.Bake.undivided() || shape == bake.Tin || shape == bake.Sheet {
		return 0
	}
	switch DoughKind(d.Batch) {
	case mixing.SpeltDough:
		return quantity.Elapsed(8 * time.Hour)
	case mixing.WholeGrainDough:
		return quantity.Elapsed(10 * time.Hour)
	case mixing.RyeDough:
		hours := 12 - 16*(d.Batch.Rye().Fraction()-0.5)
		return quantity.Elapsed(time.Duration(hours * float64(time.Hour)).Round(time.Hour))
	}
	return 0
}

// hoursNotes are about the hours of a plan that is possible: what they rest on and what they cost.
func (d *Day) hoursNotes() []working.Message {
	out := d.robustNotes()
	if f, err := d.Bake.folding(d.Rising.Bulk.Ready()); err == nil {
		out = append(out, d.Bake.foldNotes(f)...)
	}
	if off := d.foldsMoved(); off > 0 {
		out = append(out, working.Tell("bakeday.note_folds_moved",
			"the folds are up to %v off their interval of %v: other rules leave them no better time",
			off, d.Bake.Bulk.FoldEvery))
	}
	if ready, waits := d.waits(); waits > freshEnough {
		out = append(out, working.Tell("bakeday.note_waits",
			"the bread is cool at %v and waits %v until it is wanted: a later bake does not fit with when somebody is there",
			ready.In(d.Zone), quantity.Elapsed(waits.Truncate(time.Minute))))
	}
	if !d.Settled {
		out = append(out, working.Tell("bakeday.note_not_settled",
			"the room's warmth and the hours of this plan did not settle: the dough was reckoned for hours up to %v off "+
				"these; weights and steps hold, and the ranges of the dough are that much wider", d.unsettled))
	}
	return out
}

// robustNotes say how long each uncertain step may take before the rest of the day is to be planned again.
func (d *Day) robustNotes() []working.Message {
	if d.Robust.Survives || d.Careful {
		return nil
	}
	var out []working.Message
	for _, sp := range d.Robust.Spreads {
		if sp.Early == sp.Late {
			out = append(out, working.Tell("bakeday.note_holds_at", "the rest of the plan holds only if %v takes %v, as "+
				"expected; otherwise plan the rest of the day again", sp.Title(), sp.Early))
			continue
		}
		out = append(out, working.Tell("bakeday.note_holds_if",
			"the rest of the plan holds if %v takes %v to %v; outside of "+
				"that, plan the rest of the day again", sp.Title(), sp.Early, sp.Late))
	}
	return out
}

// absentDuring says in the baker's words which absence lies in a span, if any.
func (d *Day) absentDuring(watch schedule.Span) working.Message {
	spans, err := d.Bake.Kitchen.closed(wallclock.Occurrence{From: watch.From, To: watch.To}, d.Zone)
	if err != nil || len(spans) == 0 {
		return working.Message{}
	}
	return spans[0].Words
}
