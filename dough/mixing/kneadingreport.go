package mixing

import (
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// Report tells whether it fits, how to split it, and how it is kneaded.
func (r BowlFit) Report() report.Report {
	out := report.Report{Headline: r.Message(), Cautions: r.Cautions,
		Sources: []working.Source{sources.PlanetaryManuals, sources.HouseholdManuals}}
	if r.Batches == 0 {
		return out
	}
	rows := report.Rows{{Label: working.Tell("mixing.label_absorption", "water over flour"),
		Value: report.Rounded(r.Absorption, 1)}}
	if r.MostHigh.Sign() > 0 {
		rows = append(rows, report.Row{
			Label: working.Tell("mixing.label_most", "most"),
			Value: report.Rounded(quantity.Range[quantity.Mass]{Low: r.MostLow, High: r.MostHigh}, 0),
			Note:  working.Tell("mixing.note_by_basis", "by: %v", r.Basis),
		})
	}
	if r.Least.Sign() > 0 {
		rows = append(rows, report.Row{Label: working.Tell("mixing.label_least", "least, for the hook to catch it"),
			Value: report.Rounded(r.Least, 0)})
	}
	if r.Batches > 1 {
		rows = append(rows, report.Row{
			Label: working.Tell("mixing.label_mix", "mix"), Value: report.Of(working.Tell("mixing.batches_of",
				"%d batches of %.0f", r.Batches, r.Each))})
	}
	out.Sections = append(out.Sections, report.Section{
		Key: "bowl", Title: working.Tell("mixing.title_bowl", "The dough and the bowl"), Blocks: blocks(rows, r.Notes),
	})
	k := r.Kneading.Report()
	out.Sections = append(out.Sections, k.Sections...)
	out.Sources = append(out.Sources, k.Sources...)
	return out
}

// Report tells the stages, and what to look for at the end.
func (k Kneading) Report() report.Report {
	out := report.Report{Headline: k.Message(), Cautions: k.in.Mixer.Cautions(),
		Sources: []working.Source{sources.KilbornTipples}}
	if len(k.Stages) == 0 {
		return out
	}
	var stages report.List
	for _, s := range k.Stages {
		stages = append(stages, s.Message())
		out.Sources = append(out.Sources, s.Source)
	}
	stages = append(stages, k.Notes...)
	if !k.FinishByHand.IsZero() {
		stages = append(stages, working.Tell("mixing.finish_by_hand", "above %.0f stop the machine and finish by hand",
			k.FinishByHand))
	}
	signs := report.List{working.Tell("mixing.windowpane_goal", "windowpane: %v", k.Windowpane)}
	signs = append(signs, k.Ready...)
	signs = append(append(signs, k.Under...), k.Over...)
	out.Sections = []report.Section{
		{Key: "kneading", Title: working.Tell("mixing.title_kneading",
			"Kneading: look within these times, the signs decide"), Blocks: []report.Block{stages}},
		{Key: "ready", Title: working.Tell("mixing.title_ready", "Ready when"), Blocks: []report.Block{signs}},
	}
	out.Sources = append(out.Sources, sources.BreadSchool, sources.Windowpane, sources.WarenkundeKneading)
	return out
}

// Report tells what to do and why, and what some flour would do.
func (c Clearing) Report() report.Report {
	out := report.Report{Headline: working.Tell("mixing.no_dough", "no dough"),
		Sources: []working.Source{sources.HouseholdManuals, sources.KneadingMemory}}
	if len(c.Say) == 0 {
		return out
	}
	out.Headline = working.Tell("mixing.clearing", "the dough does not clear the bowl: %v", c.Step)
	if c.Expected {
		out.Headline = working.Tell("mixing.clearing_expected",
			"that this dough does not clear the bowl now is to be expected: %v", c.Step)
	}
	out.Cautions = c.in.Mix.Mixer.Cautions()
	out.Sections = []report.Section{{Key: "do", Title: working.Tell("mixing.title_do", "What to do"),
		Blocks: []report.Block{report.List(c.Say)}}}
	out.RestsOn = []working.Message{working.Tell("mixing.most_flour",
		"flour against sticking is the last thing to try: at most %.1f in all, %v of the flour", c.Cap,
		quantity.NewPercent(mostAdded))}
	if len(c.Additions) == 0 {
		return out
	}
	g := report.Grid{
		Key: "flour", Caption: working.Tell("mixing.caption_flour",
			"What more flour does, in percent of all flour; at most %.0f in all", c.Cap),
		Columns: []report.GridColumn{
			{Key: "flour", Title: working.Tell("mixing.column_flour", "flour"), Right: true},
			{Key: "hydration", Title: working.Tell("mixing.column_hydration", "hydration"), Right: true},
		},
	}
	now := c.in.with(quantity.Mass{})
	salted, levain := !now.Salt.IsZero(), !now.Prefermented.IsZero() // of a dough by its weights alone nothing is known
	if salted {
		g.Columns = append(g.Columns, report.GridColumn{Key: "salt",
			Title: working.Tell("mixing.column_salt", "salt"), Right: true})
	}
	if levain {
		g.Columns = append(g.Columns, report.GridColumn{Key: "prefermented",
			Title: working.Tell("mixing.column_prefermented", "prefermented"), Right: true})
	}
	for _, a := range append([]FlourAdded{now}, c.Additions...) {
		row := []report.Cell{report.Rounded(a.Flour, 1), report.Rounded(a.Hydration, 1)}
		if salted {
			row = append(row, report.Rounded(a.Salt, 2))
		}
		if levain {
			row = append(row, report.Rounded(a.Prefermented, 1))
		}
		g.Rows = append(g.Rows, row)
	}
	out.Sections = append(out.Sections, report.Section{Key: "flour", Title: working.Tell("mixing.title_flour",
		"If flour is needed"), Blocks: []report.Block{g}})
	return out
}

// Report tells how hot the water must be, and what boiling water does.
func (r ScaldWater) Report() report.Report {
	out := report.Report{Headline: r.Message(), Cautions: r.Cautions, Sources: []working.Source{sources.HeatBalance,
		sources.GeankoplisHeats}}
	if r.Water.IsZero() {
		return out
	}
	rows := report.Rows{
		{Label: working.Tell("mixing.label_scald", "water at least"), Value: report.Rounded(r.Water, 0)},
		{Label: working.Tell("mixing.label_boiling", "water boils at"), Value: report.Rounded(r.Boiling, 1)},
		{Label: working.Tell("mixing.label_with_boiling", "mash with boiling water"),
			Value: report.Rounded(r.WithBoiling, 0)},
	}
	out.Sections = []report.Section{{Key: "scald", Blocks: blocks(rows, r.Notes)}}
	return out
}
