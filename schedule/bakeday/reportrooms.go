package bakeday

import (
	"slices"
	"time"

	"example.org/maslin/bake"
	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/ferment"
	"example.org/maslin/schedule"
)

func (d Day) waterBlocks(s PlanData) []report.Block {
	w := s.Water
	least, most := slices.MinFunc(w.Portions, quantity.Mass.Compare), slices.MaxFunc(w.Portions, quantity.Mass.Compare)
	say := func(m working.Message) report.Block { return report.Say(m) }
	what := d.Water.pours()
	pour := working.Tell("bakeday.pour", "pour %.0f of %v at %.1f", least, what, w.Temperature)
	switch {
	case !w.Feasible:
		pour = working.Tell("bakeday.cannot_pour", "%v would have to be %.1f, which cannot be poured", what, w.Temperature)
	case least != most:
		pour = working.Tell("bakeday.pour_between", "pour %.0f to %.0f of %v for each batch at %.1f", least, most, what,
			w.Temperature)
	case d.Water.Mixes > 1:
		pour = working.Tell("bakeday.pour_each", "pour %.0f of %v for each batch at %.1f", least, what, w.Temperature)
	}
	out := []report.Block{report.Paragraph{Text: pour, Tone: report.Strong}}
	rows := report.Rows{
		{
			Label: working.Tell("bakeday.target", "so that the dough leaves the mixer at"),
			Value: report.Rounded(w.Target, 1),
		},
	}
	for _, f := range w.Factors {
		rows = append(rows, report.Row{Label: working.Say("%s", f.Name), Value: report.Rounded(f.Temperature, 1)})
	}
	warming := report.Row{
		Label: working.Tell("bakeday.warming", "mixing warms the dough by"),
		Value: report.Rounded(w.Warming, 1),
	}
	if w.Guess {
		warming.Note = working.Tell("bakeday.guide_value", "a guide value: measure it once")
	}
	out = append(out, append(rows, warming))
	if len(w.Remedies) > 0 {
		out = append(out, report.List(w.Remedies))
	}
	if d.Water.HasFit {
		out = append(out, say(d.Water.Fit.Message()))
		k := d.Water.Fit.Kneading
		if !k.Message().IsZero() {
			out = append(out, say(k.Message()))
		}
		if f := d.Bake.Bulk.Folds; f >= enoughFolds && d.Bake.Mixing.Mixer == mixing.Hand &&
			k.Windowpane != mixing.NoWindowpane {
			out = append(out, say(working.Tell("bakeday.folds_instead",
				"or mix until no dry flour is left, 3 to 5 minutes: the %d folds do the rest", f)))
		}
	}
	return out
}

// enoughFolds do the work of kneading by hand. Common practice: three or four, half an hour apart.
const enoughFolds = 3

// pours names what is poured: water, or what takes its place.
func (w *Water) pours() working.Message {
	if len(w.Liquids) == 0 {
		return working.Tell("bakeday.water", "water")
	}
	names := make([]any, len(w.Liquids))
	for i, name := range w.Liquids {
		names[i] = working.Tell("bakeday.named", "%v", name)
	}
	return working.And(names...)
}

// pouredEach is what is poured for each batch, as it stands on the list of what is weighed.
func (d Day) pouredEach(lists []WeighList) []quantity.Mass {
	poured := map[string]bool{}
	for _, l := range d.Batch.FinalDough() {
		poured[l.Name] = d.Water.poured(l) && !d.Bake.later(l.Name)
	}
	batches := make([]quantity.Mass, d.Water.Mixes)
	for _, line := range lists[len(lists)-1].Lines {
		if !poured[line.Name] {
			continue
		}
		for i := range batches {
			if len(line.Portions) == 0 {
				batches[i] = batches[i].Add(line.Mass)
			} else {
				batches[i] = batches[i].Add(line.Portions[i])
			}
		}
	}
	return batches
}

func (d Day) risingBlocks(s PlanData) []report.Block {
	var out []report.Block
	say := func(m working.Message) { out = append(out, report.Say(m)) }
	if l := d.Levain; l != nil && d.Bake.Levain.standing() {
		say(working.Tell("bakeday.levain_stands",
			"levain: at its peak about %v, good until about %v; %.0f of it goes into the dough",
			l.Fed.Add(l.Ripeness.Peak.Likely.Round(time.Minute)).In(d.Zone),
			l.Fed.Add(l.Ripeness.Until.Likely.Round(time.Minute)).In(d.Zone), l.Build.Made))
	} else if l != nil {
		r := l.Ripeness
		say(
			working.Tell("bakeday.levain",
				"levain: starts with %.0f of culture; ripe %v after feeding, at its peak after about %v, good until about %v",
				l.Culture, r.From, r.Peak.Likely.Round(time.Minute), r.Until.Likely.Round(time.Minute)),
		)
		if s.Levain != nil && s.Levain.Left.Sign() > 0 {
			say(
				working.Tell("bakeday.culture_left",
					"%.0f of the culture at hand is left: feed it, and keep it for the next bake", s.Levain.Left),
			)
		}
	}
	for _, p := range s.Preferments {
		say(working.Tell("bakeday.preferment_ripens",
			"%s: ripe %v after it is made, at its peak after about %v, good until about "+
				"%v", p.Name, p.Ripe, p.Peak.Likely, p.Until.Likely))
	}
	b := s.Bulk
	if d.Bake.batter() && s.Retard == nil {
		say(working.Tell("bakeday.batter",
			"batter: it swells for about %v, goes into its form and rises once: proof %v, to about "+
				"%.0f in all", d.Rising.Bulk.Ready().Likely.Round(time.Minute), d.Rising.Proof, d.Rising.InOven.Likely))
		out = append(out, report.Paragraph{Text: notTheClock(d.Rising.Bulk.Bulk().Culture), Tone: report.Aside})
		return append(out, d.curve())
	}
	say(
		working.Tell("bakeday.bulk", "bulk: done %v after mixing, on a dough that starts at %.1f and drifts to %.1f",
			d.Rising.Bulk.Ready(), b.Start, b.End),
	)
	total := d.Rising.InOven
	switch {
	case s.Retard != nil && s.Retard.Undivided:
		say(
			working.Tell("bakeday.chill_dough",
				"into the refrigerator when it has risen by %.0f, no more: the cold and the proof bring it to about %.0f when it "+
					"goes into the oven (%.0f to %.0f)", b.ShapeAt, total.Likely, total.Low, total.High),
		)
		say(
			working.Tell("bakeday.undivided",
				"%v in the refrigerator at %.0f, in its tub: the dough goes in at %.0f and comes out at %.0f", s.Retard.For,
				s.Retard.Into, s.Retard.DoughIn, s.Retard.DoughAt),
		)
		say(
			working.Tell("bakeday.proofs_cold",
				"then divide and shape it cold; final proof %v, to %.0f when the pieces go into the oven", s.Retard.WarmUp,
				s.Retard.IntoOven),
		)
	case s.Retard != nil:
		say(
			working.Tell("bakeday.shape_cold",
				"shape when it has risen by %.0f, no more: the cold brings it to about %.0f when it goes into the oven (%.0f to "+
					"%.0f)", b.ShapeAt, total.Likely, total.Low, total.High),
		)
		say(
			working.Tell("bakeday.retard",
				"retard: %v in the refrigerator at %.0f; the loaves go in at %.0f and come out at %.0f", s.Retard.For,
				s.Retard.Into, s.Retard.DoughIn, s.Retard.DoughAt),
		)
		if s.Retard.WarmUp > 0 {
			say(
				working.Tell("bakeday.warm_up", "then %v to warm up, to %.0f when they go into the oven",
					s.Retard.WarmUp, s.Retard.IntoOven),
			)
		}
	case d.Rising.HasProof:
		say(
			working.Tell("bakeday.proof",
				"shape when it has risen by %.0f; final proof %v after shaping, to about %.0f in all", b.ShapeAt,
				d.Rising.Proof, total.Likely),
		)
	}
	out = append(out, report.Paragraph{Text: notTheClock(d.Rising.Bulk.Bulk().Culture), Tone: report.Aside})
	return append(out, d.curve())
}

// notTheClock says what the ranges rest on, and what would make them narrower.
func notTheClock(known ferment.Culture) working.Message {
	if known.IsZero() {
		return working.Tell("bakeday.not_the_clock",
			"go by the dough, not the clock: the ranges are what is believed of an unknown kitchen, and narrow once you log "+
				"your own bakes")
	}
	return working.Tell("bakeday.not_the_clock_learned",
		"go by the dough, not the clock: the ranges rest on %d logged {1|bake|bakes}; below the coldest of them they may "+
			"be wider than those of an unknown kitchen, since warm bakes say little of the cold", known.Bakes())
}

// curve is the rise of the dough in its tub.
func (d Day) curve() report.Block {
	e := d.Rising.Bulk
	c := report.Chart{
		Title:  working.Tell("bakeday.curve", "How the dough rises, by itself in its tub"),
		X:      report.Series{Name: working.Tell("bakeday.curve_x", "after mixing"), Of: report.Hours},
		Main:   report.Series{Name: working.Tell("bakeday.curve_rise", "rise, likely"), Of: report.Percents},
		Low:    report.Series{Name: working.Tell("bakeday.curve_low", "slow"), Of: report.Percents},
		High:   report.Series{Name: working.Tell("bakeday.curve_high", "fast"), Of: report.Percents},
		Second: report.Series{Name: working.Tell("bakeday.curve_dough", "dough"), Of: report.Degrees},
		Levels: []report.Mark{{At: d.Rising.ShapeAt.Points(), Text: d.Bake.endOfBulkMark()}},
	}
	ready := d.looked()
	start, clocked := d.steadyClock()
	if clocked {
		c.X = report.Series{Name: working.Tell("bakeday.curve_clock", "time of day"), Of: report.ClockHours}
	}
	mark := func(at time.Duration, text working.Message) {
		c.Marks = append(c.Marks, report.Mark{At: start + at.Hours(), Text: text})
	}
	mark(ready.Early, working.Tell("bakeday.curve_look", "look from here"))
	mark(ready.Likely, working.Tell("bakeday.curve_ready", "likely ready"))
	mark(ready.Late, working.Tell("bakeday.curve_late", "late end"))
	for _, p := range e.RiseCurve(49) {
		c.X.Values = append(c.X.Values, start+p.At.Duration().Hours())
		c.Main.Values = append(c.Main.Values, p.Rise.Likely.Points())
		c.Low.Values = append(c.Low.Values, p.Rise.Low.Points())
		c.High.Values = append(c.High.Values, p.Rise.High.Points())
		c.Second.Values = append(c.Second.Values, p.Temperature.Celsius())
	}
	return c
}

// looked is when the dough is to be looked at and likely ready, after mixing: as the timetable says it, to the
// minute, where there is
// one.
func (d Day) looked() quantity.TimeRange {
	out := d.Rising.Bulk.Ready()
	out.Likely = grid(out.Likely).Duration()
	for _, s := range d.Data().Steps {
		if s.Kind == schedule.Bulk && s.LookFrom != nil && s.LookTo != nil {
			out.Early, out.Late = s.LookFrom.Sub(s.Start), s.LookTo.Sub(s.Start)
		}
	}
	return out
}

// steadyClock is the time of day at which bulk begins, in hours; false where there is no timetable, and where the
// clocks are put forward or back while the dough rises, so that it is told in hours after mixing.
func (d Day) steadyClock() (float64, bool) {
	start := d.Data().starts(schedule.Bulk)
	if start.IsZero() {
		return 0, false
	}
	_, before := start.Zone()
	if _, after := start.Add(d.Rising.Bulk.Ready().Late).Zone(); before != after {
		return 0, false
	}
	return float64(start.Hour()) + float64(start.Minute())/60, true
}

func (d Day) ovenBlocks(s PlanData) []report.Block {
	o, k := d.Bake.Oven, d.Baking
	var out []report.Block
	say := func(m working.Message) { out = append(out, report.Say(m)) }
	for _, m := range d.heating() {
		say(m)
	}
	round := working.Tell("bakeday.one_round", "%d in one round", k.Each)
	if k.Rounds > 1 {
		round = working.Tell("bakeday.rounds", "%d rounds of %d, %v between them to reheat", k.Rounds, k.Each, o.Reheat)
	}
	switch {
	case o.Covered > 0 && d.Bake.vessel() != bake.Pot:
		say(working.Tell("bakeday.steamed", "%v: %v with steam or a cover, then about %v without", round, o.Covered,
			o.Uncovered))
	case o.Covered > 0:
		say(working.Tell("bakeday.covered", "%v: %v covered, then about %v uncovered", round, o.Covered, o.Uncovered))
	default:
		say(working.Tell("bakeday.uncovered", "%v: about %v", round, o.Uncovered))
	}
	if k.Guide {
		say(working.Tell("bakeday.guide_time",
			"the time is a guide value, %v for one round: a time of your own is better", k.Program.Bake))
	}
	if o.Then != o.Temperature {
		say(working.Tell("bakeday.turn_down", "then set the oven to %05.0f", o.Then))
	}
	if t := k.Target; t.Core.IsZero() {
		say(working.Tell("bakeday.done_color", "done by time and color: no probe judges a bread so thin"))
	} else {
		say(d.doneAt(s, t))
	}
	say(working.Tell("bakeday.loss",
		"bake loss %.1f of the dough (usual: %.1f to %.1f): %.0f goes in, %.0f comes out cool", k.Loss,
		s.Oven.UsualLoss.Low, s.Oven.UsualLoss.High, k.Scaling, d.Bake.Loaves.Baked))
	switch d.Bake.Loaves.Style {
	case bake.Pizza:
		say(working.Tell("bakeday.eat_hot", "eaten at once"))
	case bake.FlatBread:
		say(working.Tell("bakeday.under_cloth", "eaten warm: under a cloth they stay soft"))
	default:
		say(working.Tell("bakeday.cool", "cool enough to slice (%.0f) after %v", k.Cooling.Slice, k.Cooling.Ready))
	}
	for _, note := range k.Cooling.Notes() {
		say(note)
	}
	if k.Cooling.Rest > 0 {
		say(working.Tell("bakeday.rest", "this bread rests %v before it is cut", k.Cooling.Rest))
	}
	return out
}

// doneAt is the core at which the loaf is done, and why it is that here.
func (d Day) doneAt(s PlanData, t bake.CoreTarget) working.Message {
	if at := d.Bake.Kitchen.Altitude; !at.IsZero() {
		return working.Tell("bakeday.done",
			"done at a core of %.1f (%.1f to %.1f) and a loss of %.0f or more: water boils at %.1f at %v",
			t.Core, t.From, d.Baking.coreTo(), s.Oven.MinimumLoss, t.Boiling, at)
	}
	return working.Tell("bakeday.done_by_the_sea",
		"done at a core of %.1f (%.1f to %.1f) and a loss of %.0f or more: water boils at %.1f at sea level",
		t.Core, t.From, d.Baking.coreTo(), s.Oven.MinimumLoss, t.Boiling)
}

// heating says how the oven is heated: as long as it takes, or on from the bread before, and earlier than it has to be.
func (d Day) heating() []working.Message {
	o := d.Bake.Oven
	heat, planned := d.Timetable.Step(idHeat)
	switch {
	case !d.hotFrom.IsZero():
		return []working.Message{d.hotFrom}
	case o.Pots > 0:
		out := []working.Message{working.Tell("bakeday.preheat_pots", "preheat oven and pots %v to %05.0f", o.Preheat,
			o.Temperature)}
		return append(out, d.heatedEarly(heat, planned)...)
	}
	out := []working.Message{working.Tell("bakeday.preheat", "preheat the oven %v to %05.0f", o.Preheat, o.Temperature)}
	return append(out, d.heatedEarly(heat, planned)...)
}

// heatedEarly says that the oven is heated for longer than it takes.
func (d Day) heatedEarly(heat schedule.Timed, planned bool) []working.Message {
	longer := quantity.Elapsed(heat.End.Sub(heat.Start)) - d.Bake.Oven.Preheat
	if !planned || longer <= quantity.Elapsed(5*time.Minute) {
		return nil
	}
	return []working.Message{working.Tell("bakeday.heat_early",
		"heated from %v on, %v longer than it takes: an early dough then finds it hot", heat.Start.In(d.Zone), longer)}
}
