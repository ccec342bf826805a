package ferment

import (
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// Report tells when the dough is ready, how it rises, and what that rests on.
func (e Estimate) Report() report.Report { return e.ReportFrom(time.Time{}) }

// ReportFrom is [Estimate.Report] by the clock: mixed is when mixing ended; the zero time tells hours after mixing.
func (e Estimate) ReportFrom(mixed time.Time) report.Report {
	out := report.Report{Headline: e.Message(), Cautions: e.Cautions()}
	if !e.given() {
		return out
	}
	ready := []report.Block{report.Say(e.readyMessage())}
	if e.Reached() && !mixed.IsZero() {
		ready = append(ready, report.Say(byClock(e.Ready(), mixed)))
	}
	out.Sections = append(out.Sections,
		report.Section{Key: "dough", Title: working.Tell("ferment.title_dough", "The dough"),
			Blocks: []report.Block{e.bulk.rows()}},
		report.Section{Key: "ready", Title: working.Tell("ferment.title_ready", "Ready"), Blocks: ready},
		report.Section{Key: "rise", Title: working.Tell("ferment.title_rise", "The rise"),
			Blocks: []report.Block{e.chart(mixed)}},
		report.Section{Key: "know", Title: working.Tell("ferment.title_know", "Worth knowing"),
			Blocks: []report.Block{e.worthKnowing()}},
	)
	out.RestsOn = e.RestsOn()
	out.Sources = []working.Source{growthSource(), sources.Ratkowsky1983, sources.Ganzle1998}
	return out
}

func (e *Estimate) readyMessage() working.Message {
	if !e.Reached() {
		return working.Tell("ferment.never_risen", "it does not rise by %v within 30 days", e.wanted())
	}
	return working.Tell("ferment.risen_after", "%v risen %v after mixing", e.wanted(), e.Ready())
}

// byClock is a range as times of day.
func byClock(r quantity.TimeRange, from time.Time) working.Message {
	early, likely, late := from.Add(r.Early), from.Add(r.Likely), from.Add(r.Late)
	if late.Round(time.Minute).Format(time.DateOnly) == from.Format(time.DateOnly) {
		return working.Tell("ferment.by_clock", "by the clock: %t to %t (%v), likely %t", early, late, r.Probability, likely)
	}
	return working.Tell("ferment.by_clock_days", "by the clock: %v to %v (%v), likely %v", early, late, r.Probability,
		likely)
}

// rows say what is in the dough and how warm it is.
func (b *Bulk) rows() report.Rows {
	var out report.Rows
	add := func(label working.Message, value report.Cell) {
		out = append(out, report.Row{Label: label, Value: value})
	}
	if !b.Inoculation.IsZero() {
		add(working.Tell("ferment.label_levain", "of the flour in the levain"), report.Rounded(b.Inoculation, 1))
	}
	if b.Yeast.Kind != NoYeast {
		add(working.Tell("ferment.label_yeast", "commercial yeast"),
			report.Of(working.Tell("ferment.yeast_rounded", "%.2f %v", b.Yeast.Amount, b.Yeast.Kind)))
	}
	for i := range b.Preferments {
		h := &b.Preferments[i]
		add(working.Tell("ferment.label_preferment", "of the flour in a preferment"),
			report.Of(working.Tell("ferment.preferment_ripened", "%.1f, ripened for %v", h.Flour, h.Ripened)))
	}
	add(working.Tell("ferment.label_hydration", "water"), report.Rounded(b.Hydration, 0))
	add(working.Tell("ferment.label_salt", "salt"), report.Rounded(b.Salt, 1))
	if !b.Sugar.IsZero() {
		add(working.Tell("ferment.label_sugar", "sugar"), report.Rounded(b.Sugar, 1))
	}
	if !b.WholeGrain.IsZero() {
		add(working.Tell("ferment.label_whole", "whole grain"), report.Rounded(b.WholeGrain, 0))
	}
	if !b.Altitude.IsZero() {
		add(working.Tell("ferment.label_altitude", "altitude"), report.Rounded(b.Altitude, 0))
	}
	add(working.Tell("ferment.label_history", "temperature"), report.Of(b.History.Message()))
	return out
}

// worthKnowing is what is to be known of the estimate, and which way the flavor leans.
func (e *Estimate) worthKnowing() report.List {
	out := report.List(e.Notes())
	if e.Reached() {
		if f, err := e.Flavor(e.Ready().Likely); err == nil {
			out = append(out, f.leans())
		}
	}
	return append(out, working.Tell("ferment.go_by_dough",
		"go by the dough, not the clock: log your bakes, and the range narrows"))
}

// noticeable is how far from 100 an acid index is worth a word.
const noticeable = 5.0

// leans says in words which way the flavor leans.
func (f Flavor) leans() working.Message {
	switch {
	case f.Index > 100+noticeable:
		return working.Tell("ferment.leans_acid",
			"flavor leans to acid: index %.0f, 100 being %.0f throughout; a direction, not a pH", f.Index,
			degrees(reference))
	case f.Index < 100-noticeable:
		return working.Tell("ferment.leans_mild",
			"flavor leans to mild: index %.0f, 100 being %.0f throughout; a direction, not a pH", f.Index,
			degrees(reference))
	}
	return working.Tell("ferment.leans_neither",
		"flavor leans neither to mild nor to acid: index %.0f, 100 being %.0f throughout; a direction, not a "+
			"pH", f.Index, degrees(reference))
}

// Report tells which way the flavor leans.
func (f Flavor) Report() report.Report {
	return report.Report{
		Headline: f.Message(),
		Sources:  []working.Source{sources.Ganzle1998},
		Sections: []report.Section{{
			Key: "flavor", Title: working.Tell("ferment.title_flavor", "Mild or sharp"),
			Blocks: []report.Block{report.Say(f.leans()), report.List(f.Limits)},
		}},
	}
}

// fullRise is the rise in percent that stands for itself and all beyond, see [Estimate.RiseAt].
const fullRise = 300.0

// chartPoints is how finely a rise is drawn.
const chartPoints = 97

// chart draws the rise with its band and the temperature of the dough.
func (e *Estimate) chart(mixed time.Time) report.Chart {
	c := report.Chart{
		Title:  working.Tell("ferment.chart_rise", "Rise of the dough: %v wanted", e.wanted()),
		X:      report.Series{Name: working.Tell("ferment.axis_hours", "after mixing"), Of: report.Hours},
		Main:   report.Series{Name: working.Tell("ferment.axis_rise", "rise"), Of: report.Percents},
		Low:    report.Series{Name: working.Tell("ferment.axis_low", "low end"), Of: report.Percents},
		High:   report.Series{Name: working.Tell("ferment.axis_high", "high end"), Of: report.Percents},
		Second: report.Series{Name: working.Tell("ferment.axis_dough", "dough"), Of: report.Degrees},
		Levels: []report.Mark{{At: e.bulk.Rise.Points(), Text: working.Tell("ferment.mark_wanted", "wanted")}},
	}
	if n := e.RiseCurve(2); len(n) == 2 && n[1].Rise.High.Points() >= fullRise {
		c.Top = fullRise * 0.97 // from there on the numbers say "that or more"
	}
	zero := 0.0
	if !mixed.IsZero() {
		c.X.Name, c.X.Of = working.Tell("ferment.axis_clock", "time of day"), report.ClockHours
		zero = float64(mixed.Hour()) + float64(mixed.Minute())/60
	}
	for _, p := range e.RiseCurve(chartPoints) {
		c.X.Values = append(c.X.Values, zero+p.At.Duration().Hours())
		c.Main.Values = append(c.Main.Values, p.Rise.Likely.Points())
		c.Low.Values = append(c.Low.Values, p.Rise.Low.Points())
		c.High.Values = append(c.High.Values, p.Rise.High.Points())
		c.Second.Values = append(c.Second.Values, p.Temperature.Celsius())
	}
	return c
}

// Report tells what the readings changed, and the estimate as it is now.
func (p Progress) Report() report.Report { return p.ReportFrom(time.Time{}) }

// ReportFrom is [Progress.Report] by the clock.
func (p Progress) ReportFrom(mixed time.Time) report.Report {
	out := p.Now.ReportFrom(mixed)
	out.Headline = p.Message()
	for i := range out.Sections {
		if out.Sections[i].Key == "ready" {
			out.Sections[i].Blocks = append(out.Sections[i].Blocks,
				report.Say(working.Tell("ferment.what_you_saw", "what you saw: %v", p)))
		}
	}
	return out
}

// Working derives the estimate as it is now.
func (p Progress) Working() working.Working { return p.Now.Working() }

// Report tells at which rise to shape and what comes of it.
func (t ShapeTarget) Report() report.Report { return t.ReportFrom(time.Time{}) }

// ReportFrom is [ShapeTarget.Report] by the clock.
func (t ShapeTarget) ReportFrom(mixed time.Time) report.Report {
	out := t.Shape.ReportFrom(mixed)
	out.Headline = t.Message()
	if t.path.IsZero() {
		return out
	}
	out.Cautions = merged(out.Cautions, t.Cautions())
	first := []report.Block{report.Paragraph{Text: t.instruction(), Tone: report.Strong}}
	if !t.Feasible {
		first[0] = report.Paragraph{Text: t.instruction(), Tone: report.Warning}
	}
	for i := range out.Sections {
		if out.Sections[i].Key == "ready" {
			out.Sections[i].Blocks = append(first, out.Sections[i].Blocks...)
		}
	}
	return out
}

// instruction is what to do with the dough.
func (t *ShapeTarget) instruction() working.Message {
	if !t.Feasible {
		return working.Tell("ferment.do_not_wait",
			"do not wait: even shaped at once it would rise by %v before it goes into the oven; less time in the cold, a "+
				"colder refrigerator or less levain", riseWords(t.Unrisen))
	}
	return working.Tell("ferment.shape_when",
		"shape when it has risen by %v, no more: what follows (%v) brings it to about %v when it goes into the oven (%v "+
			"to %v)", riseWords(t.Rise), t.path, riseWords(t.After.Likely), riseWords(t.After.Low),
		riseWords(t.After.High))
}

// merged are the cautions of both, each subject once.
func merged(a, b []working.Caution) []working.Caution {
	seen := map[string]bool{}
	var out []working.Caution
	for _, c := range append(append([]working.Caution(nil), a...), b...) {
		if !seen[c.Code()] {
			out = append(out, c)
			seen[c.Code()] = true
		}
	}
	return out
}

// Report tells how much makes the dough ready at the wanted time.
func (a AmountAnswer) Report() report.Report {
	if !a.Feasible {
		return report.Report{Headline: a.Message()}
	}
	out := a.Estimate.Report()
	out.Headline = a.Message()
	return out
}

// Report tells which temperature makes the dough ready at the wanted time.
func (a TemperatureAnswer) Report() report.Report {
	if !a.Feasible {
		return report.Report{Headline: a.Message()}
	}
	out := a.Estimate.Report()
	out.Headline = a.Message()
	return out
}

// Working derives the estimate at that temperature.
func (a TemperatureAnswer) Working() working.Working { return a.Estimate.Working() }

// Report tells when the preferment is ripe and what to look for.
func (r Ripeness) Report() report.Report { return r.ReportFrom(time.Time{}) }

// ReportFrom is [Ripeness.Report] by the clock: fed is when it was made.
func (r Ripeness) ReportFrom(fed time.Time) report.Report {
	out := report.Report{Headline: r.Message(), Cautions: r.Cautions(), Sources: []working.Source{growthSource()}}
	if r.d.law == nil {
		return out
	}
	stage := func(words working.Message, t quantity.TimeRange, reached bool) {
		section := &out.Sections[len(out.Sections)-1]
		row := report.Row{Label: words, Value: report.Of(working.Tell("ferment.not_in_30_days", "not within 30 days"))}
		if reached {
			row.Value = report.Of(working.Tell("ferment.range", "%v", t))
			if !fed.IsZero() {
				row.Note = byClock(t, fed)
			}
		}
		section.Blocks[0] = append(section.Blocks[0].(report.Rows), row)
	}
	out.Sections = append(out.Sections, report.Section{
		Key: "ripe", Title: working.Tell("ferment.title_from_feed", "From the feed"), Blocks: []report.Block{report.Rows{}},
	})
	stage(working.Tell("ferment.stage_ripe", "ripe"), r.From, r.reached[0])
	stage(working.Tell("ferment.stage_peak", "stands highest"), r.Peak, r.reached[1])
	stage(working.Tell("ferment.stage_until", "usable until"), r.Until, r.reached[2])
	look := []report.Block{report.Say(working.Tell("ferment.look_for",
		"ripe: domed, full of bubbles to the wall of the jar, smells fresh and a little sour; past its best: the middle "+
			"has sunk and it smells sharp"))}
	if notes := r.Notes(); len(notes) > 0 {
		look = append(look, report.List(notes))
	}
	out.Sections = append(out.Sections, report.Section{Key: "look",
		Title: working.Tell("ferment.title_look", "What to look for"), Blocks: look})
	return out
}

// Report tells what the bakes have taught, and how its ranges would have done.
func (l Lesson) Report() report.Report {
	out := report.Report{Headline: l.Message(), Sources: []working.Source{sources.Gelman}}
	if l.Culture.IsZero() {
		return out
	}
	rangeOf := func(r quantity.Range[quantity.Percent], places int) report.Cell { return report.Rounded(r, places) }
	rows := report.Rows{
		{Label: working.Tell("ferment.label_pace", "pace, of the usual at %.0f", degrees(reference)),
			Value: rangeOf(l.Culture.Pace(), 0)},
		{Label: working.Tell("ferment.label_amplitude", "gas at the same pace, of the usual"),
			Value: rangeOf(l.Culture.Amplitude(), 0)},
		{Label: working.Tell("ferment.label_sensitivity", "faster for each degree, beyond the law"),
			Value: rangeOf(l.Culture.TemperatureSensitivity(), 1)},
		{Label: working.Tell("ferment.label_bake_to_bake", "one bake differs from the next by"),
			Value: report.Rounded(l.Culture.BakeToBake(), 0)},
	}
	blocks := []report.Block{rows}
	if low, high := l.Temperatures(); high.Sub(low).Celsius() < hardlyApart {
		blocks = append(blocks, report.Say(working.Tell("ferment.hardly_learned",
			"how temperature moves it is hardly learned: all bakes were at %.1f; log a cool and a warm one",
			quantity.Range[quantity.Temperature]{Low: low, High: high})))
	}
	if all, inside, err := l.Reviews(); err == nil && len(all) > 1 {
		blocks = append(blocks, report.Say(working.Tell("ferment.reviewed",
			"%d of %d bakes came within the range the other bakes gave them", inside, len(all))))
	}
	out.Sections = []report.Section{
		{Key: "culture", Title: working.Tell("ferment.title_culture", "What your bakes say"),
			Blocks: blocks},
	}
	return out
}
