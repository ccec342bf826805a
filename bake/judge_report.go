package bake

import (
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
)

// Report tells the verdict: by which criteria, and what done means here.
func (v LoafVerdict) Report() report.Report {
	r := report.Report{Headline: v.message(), Cautions: v.Cautions()}
	guide, err := v.reading.Style.Guide()
	if err != nil {
		return r
	}
	r.Sources = guide.Sources
	if v.State == ByTimeAndColor {
		r.Sections = []report.Section{v.usualTime()}
		r.Sources = append(r.Sources, rowOf(v.reading.Style).bake.source)
		return r
	}
	r.Sections = []report.Section{
		{Key: "criteria", Title: working.Tell("bake.title_criteria", "By what"), Blocks: []report.Block{report.Rows{
			{Label: labelCore, Value: report.Rounded(v.reading.Core, 1), Note: v.coreNote()},
			v.weightRow(),
			v.heldRow(),
			{
				Label: working.Tell("bake.label_color", "color"),
				Value: report.Of(working.Tell("bake.color_is_yours", "yours to judge; no number here sees it")),
			},
		}}},
		{
			Key:    "target",
			Title:  working.Tell("bake.title_target", "What done means here: %v", v.reading.Style),
			Blocks: v.targetBlocks(guide),
		},
	}
	return r
}

// usualTime is how long such a bread usually bakes: of a thin one that is all there is to go by, beside its color.
func (v LoafVerdict) usualTime() report.Section {
	row := rowOf(v.reading.Style)
	least, most := minutes(row.bake.minutes*(1-row.bake.spread)), minutes(row.bake.minutes*(1+row.bake.spread))
	rows := report.Rows{{
		Label: working.Tell("bake.label_usual_time", "usual time"),
		Value: report.Of(working.Tell("bake.usual_time", "%v to %v at %05.0f, for a piece of %.0f",
			wholeMinutes(quantity.Elapsed(least)), wholeMinutes(quantity.Elapsed(most)), quantity.Celsius(row.oven[0]),
			quantity.Grams(row.bake.grams))),
		Note: working.Tell("bake.hotter_faster", "hotter is faster: 1 to 2 minutes in an oven of %05.0f and more",
			quantity.Celsius(450)),
	}}
	if v.reading.InOven > 0 {
		rows = append(rows, report.Row{
			Label: working.Tell("bake.label_in_oven", "in the oven for"), Value: report.Of(v.reading.InOven),
		})
	}
	return report.Section{Key: "time", Blocks: []report.Block{rows}}
}

var labelCore = working.Tell("bake.label_core", "core")

func (v LoafVerdict) coreNote() working.Message {
	switch {
	case v.CoreThere && v.Informs:
		return working.Tell("bake.core_there", "there")
	case v.CoreThere:
		return working.Tell("bake.core_there_flat", "there, but so close to boiling that it tells no more")
	case v.InAccepted:
		return working.Tell("bake.core_accepted", "short of %.1f; some take it out from here", v.Target)
	}
	return working.Tell("bake.core_short", "short of %.1f", v.Target)
}

func (v LoafVerdict) weightRow() report.Row {
	row := report.Row{Label: working.Tell("bake.label_weight", "weight")}
	switch {
	case v.MinimumLoss.IsZero():
		row.Value = report.Of(noCriterion)
	case !v.Weighed:
		row.Value = report.Of(working.Tell("bake.not_weighed", "not weighed"))
	case v.Light:
		row.Value = report.Of(working.Tell("bake.weight_light", "%.1f lighter: drier than usual", v.Loss))
	case v.LossThere:
		row.Value = report.Of(working.Tell("bake.weight_there", "%.1f lighter: baked out", v.Loss))
	default:
		row.Value = report.Of(working.Tell("bake.weight_short", "%.1f lighter; %v wanted", v.Loss, v.MinimumLoss))
	}
	return row
}

var noCriterion = working.Tell("bake.no_criterion", "no criterion for this bread")

func (v LoafVerdict) heldRow() report.Row {
	row := report.Row{Label: working.Tell("bake.label_held", "time held")}
	switch {
	case v.MinimumLoss.IsZero():
		row.Value = report.Of(noCriterion)
	case v.HeldThere:
		row.Value = report.Of(working.Tell("bake.held_there", "%v: long enough", v.reading.Held))
	case v.Usual.Late > 0:
		row.Value = report.Of(working.Tell("bake.held_proof", "%v more at the target would prove it without a scale",
			wholeMinutes(v.HoldFor)))
	case v.HoldFor > 0 && v.State != Done:
		row.Value = report.Of(
			working.Tell("bake.held_short", "%v more at the target would do", wholeMinutes(v.HoldFor)))
	case v.reading.Held == 0:
		row.Value = report.Of(working.Tell("bake.held_unknown", "not given"))
	default:
		row.Value = report.Of(v.reading.Held)
	}
	return row
}

func (v LoafVerdict) targetBlocks(guide StyleGuide) []report.Block {
	rows := report.Rows{
		{Label: labelCore, Value: report.Rounded(v.Target, 1)},
		{
			Label: working.Tell("bake.label_accepted", "sources accept"),
			Value: report.Of(
				working.Tell("bake.accepted", "%.0f to %.0f at sea level", guide.Accepted.Low, guide.Accepted.High)),
			Note: working.Tell("bake.agreement", "%v agreement", guide.Confidence),
		},
		{Label: labelBoils, Value: report.Rounded(v.Boiling, 1)},
	}
	if guide.MinimumLoss.Sign() > 0 {
		rows = append(
			rows,
			report.Row{
				Label: working.Tell("bake.label_baked_out", "and baked out"),
				Value: report.Of(bakedOutRule(guide)),
			},
		)
	}
	blocks := []report.Block{rows}
	for _, n := range v.Notes() {
		blocks = append(blocks, report.Paragraph{Text: n, Tone: report.Warning})
	}
	if !guide.Note.IsZero() {
		blocks = append(blocks, report.Say(guide.Note))
	}
	return blocks
}

var labelBoils = working.Tell("bake.label_boils", "water boils here at")

func bakedOutRule(guide StyleGuide) working.Message {
	if guide.AsLongAgain {
		return working.Tell("bake.rule_hearth",
			"%v lighter than the dough, or about as long again as the core took to come within %.0f of boiling",
			guide.MinimumLoss, quantity.DeltaCelsius(nearly))
	}
	return working.Tell("bake.rule_other", "%v lighter than the dough, or held at that core for %v or more",
		guide.MinimumLoss, guide.Hold)
}

// Report tells what done means for the style.
func (g StyleGuide) Report() report.Report {
	r := report.Report{Headline: g.message(), Sources: g.Sources}
	if !g.Note.IsZero() {
		r.Sections = []report.Section{{Key: "note", Blocks: []report.Block{report.Say(g.Note)}}}
	}
	return r
}

// Report tells the target.
func (t CoreTarget) Report() report.Report {
	r := report.Report{Headline: t.message(), Sources: []working.Source{sourcesOf(t.goal)}}
	if notes := t.Notes(); len(notes) > 0 {
		r.Sections = []report.Section{{Key: "notes", Blocks: []report.Block{report.List(notes)}}}
	}
	return r
}

// Report tells the boiling point.
func (b Boiling) Report() report.Report {
	if b.Point.IsZero() {
		return report.Report{Headline: b.message()}
	}
	return report.Report{Headline: b.message(), Sections: []report.Section{picture(b.chart())}}
}

// Report tells the pressure and the temperature.
func (a Atmosphere) Report() report.Report { return report.Report{Headline: a.message()} }
