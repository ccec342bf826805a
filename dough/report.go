package dough

import (
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// String is the headline of the report.
func (b Batch) String() string { return b.headline().String() }

// Report tells the three views of the batch and what can be read from them.
func (b Batch) Report() report.Report {
	r := report.Report{Headline: b.headline()}
	if len(b.mass) == 0 {
		return r
	}
	r.Sections = append(r.Sections, b.overallSection())
	for _, build := range b.Builds() {
		r.Sections = append(r.Sections, build.section(listOf(build.Lines), build.Made, build.Removed, build.Left))
	}
	if len(b.work) > 0 {
		r.Sections = append(r.Sections, finalSection(listOf(b.FinalDough()), b.dough, nil))
	}
	r.Sections = append(r.Sections, b.readings())
	r.Cautions, r.Sources = b.Cautions(), []working.Source{sources.Gisslen}
	return r
}

func (b Batch) headline() working.Message {
	if len(b.mass) == 0 {
		return working.Tell("dough.no_dough", "no dough")
	}
	whole, each := wholeGrams(b.dough), wholeGrams(b.ScalingWeight())
	switch {
	case b.c.name != "" && b.goal.pieces > 0:
		return working.Tell("dough.batch_named_pieces", "%s: %v of dough, %d {3|piece|pieces} of %v", b.c.name, whole,
			b.goal.pieces, each)
	case b.c.name != "":
		return working.Tell("dough.batch_named", "%s: %v of dough", b.c.name, whole)
	case b.goal.pieces > 0:
		return working.Tell("dough.batch_pieces", "%v of dough, %d {2|piece|pieces} of %v", whole, b.goal.pieces, each)
	}
	return working.Tell("dough.batch", "%v of dough", whole)
}

// wholeGrams rounds a mass for a headline: to a gram, and a small one as [readable] does.
func wholeGrams(m quantity.Mass) quantity.Mass {
	if m.Compare(quantity.Grams(20)) < 0 {
		return readable(m)
	}
	rounded, _ := m.RoundTo(quantity.Grams(1))
	return rounded
}

// whole shows a mass to the gram, and a small one finer. It keeps the mass as it is, so that other units round it once.
func whole(m quantity.Mass) report.Cell {
	if m.Compare(quantity.Grams(20)) < 0 {
		return report.Of(readable(m))
	}
	return report.Rounded(m, 0)
}

// listed is one line of a list.
type listed struct {
	name    string
	mass    report.Cell
	percent quantity.Percent
}

func listOf(lines []DoughLine) []listed {
	out := make([]listed, len(lines))
	for i, l := range lines {
		out[i] = listed{l.Name, report.Of(readable(l.Mass)), l.Percent}
	}
	return out
}

func grid(key string, lines []listed, total report.Cell, percent report.Cell) report.Grid {
	g := report.Grid{Key: key, Columns: []report.GridColumn{{Key: "mass", Right: true}, {Key: "percent", Right: true},
		{Key: "item"}}}
	for _, l := range lines {
		row := []report.Cell{l.mass, {}, report.Of(l.name)}
		if !l.percent.IsZero() {
			row[1] = report.Rounded(l.percent, percentDecimals(l.percent))
		}
		g.Rows = append(g.Rows, row)
	}
	g.Total = []report.Cell{total, percent, report.Of(working.Tell("dough.together", "together"))}
	return g
}

// percentDecimals show a small percentage with two digits.
func percentDecimals(p quantity.Percent) int {
	switch {
	case p.Compare(quantity.MustPercent("0.1 %")) < 0:
		return 3
	case p.Compare(quantity.MustPercent("1 %")) < 0:
		return 2
	}
	return 1
}

func (b Batch) overallSection() report.Section {
	s := report.Section{
		Key:   "overall",
		Title: working.Tell("dough.overall", "Overall formula, in percent of all flour"),
	}
	s.Blocks = []report.Block{grid("overall", listOf(b.Overall()), report.Of(readable(b.dough)),
		report.Rounded(b.c.total, 1))}
	if l := b.Limiting(); l != "" {
		s.Blocks = append(s.Blocks, report.Say(working.Tell("dough.runs_out", "what runs out first: %s", l)))
	}
	return s
}

func (b Build) section(lines []listed, made, removed, left quantity.Mass) report.Section {
	s := report.Section{Key: "build", Title: working.Tell("dough.beforehand", "Made beforehand: %s", b.Name)}
	s.Blocks = []report.Block{grid("build", lines, report.Of(readable(made)), report.Cell{})}
	var notes report.List
	if b.Into != "" {
		notes = append(notes, working.Tell("dough.goes_into", "it goes into %s", b.Into))
	}
	if !removed.IsZero() {
		notes = append(
			notes,
			working.Tell("dough.taken_away", "%v is taken away again before use, to be the next culture",
				readable(removed)),
		)
	}
	if !left.IsZero() {
		notes = append(notes, working.Tell("dough.not_used", "%v of it is not used", readable(left)))
	}
	if len(notes) > 0 {
		s.Blocks = append(s.Blocks, notes)
	}
	return s
}

func finalSection(lines []listed, total quantity.Mass, notes report.List) report.Section {
	s := report.Section{Key: "final_dough", Title: working.Tell("dough.final", "Final dough, weighed at mixing")}
	s.Blocks = []report.Block{grid("final_dough", lines, report.Of(readable(total)), report.Cell{})}
	if len(notes) > 0 {
		s.Blocks = append(s.Blocks, notes)
	}
	return s
}

// String is the headline of the report.
func (b Build) String() string { return b.Report().Headline.String() }

// Report tells what to weigh for the build.
func (b Build) Report() report.Report {
	if b.Made.IsZero() {
		return report.Report{Headline: working.Tell("dough.no_build", "nothing to make")}
	}
	var kind any = b.Kind
	if !b.Fermented {
		kind = b.Soaker
	}
	return report.Report{
		Headline: working.Tell("dough.build", "%s (%v): %v", b.Name, kind, readable(b.Made)),
		Sections: []report.Section{b.section(listOf(b.Lines), b.Made, b.Removed, b.Left)},
	}
}

// String is the headline of the report.
func (w Weighing) String() string { return w.Report().Headline.String() }

// Report tells what to weigh on the scales, with the overall formula before it and what can be read from it behind.
func (w Weighing) Report() report.Report {
	b := w.Batch
	r := report.Report{Headline: b.headline()}
	if len(b.mass) == 0 {
		return r
	}
	r.Sections = append(r.Sections, b.overallSection())
	for _, build := range w.Builds {
		r.Sections = append(r.Sections,
			build.Build.section(weighedList(build.Lines), build.Made, build.Removed, build.Left))
	}
	r.Sections = append(r.Sections, finalSection(weighedList(w.Lines), w.Dough, w.notes()), b.readings())
	r.Cautions, r.Sources = b.Cautions(), []working.Source{sources.Gisslen, sources.LargestRemainder}
	return r
}

func weighedList(lines []Weighed) []listed {
	out := make([]listed, len(lines))
	for i, l := range lines {
		out[i] = listed{l.Name, report.Of(l.Mass), l.Percent}
	}
	return out
}

func (w Weighing) notes() report.List {
	var out report.List
	switch r, _ := w.Residue.RoundTo(quantity.Grams(0.1)); r.Sign() {
	case 1:
		out = append(out, working.Tell("dough.rounding_less", "rounding to the scale leaves out %v", r))
	case -1:
		out = append(out, working.Tell("dough.rounding_more", "rounding to the scale adds %v", r.Neg()))
	}
	for _, small := range w.TooSmall() {
		out = append(out, working.Tell("dough.too_small",
			"%s: %v is too little for this scale: weigh it as part of a larger amount, dissolved in "+
				"water", small.Name, readable(small.Exact)))
	}
	return out
}

// readings is what can be read from a formula.
func (b Batch) readings() report.Section {
	rows := report.Rows{{Label: working.Tell("dough.hydration", "hydration"), Value: report.Rounded(b.Hydration(), 1)}}
	row := func(label working.Message, v report.Cell) { rows = append(rows, report.Row{Label: label, Value: v}) }
	wet := b.EffectiveHydration()
	if wet.Hydration != b.Hydration() {
		row(working.Tell("dough.effective", "with the water in the other ingredients"),
			report.Rounded(wet.Hydration, 1))
	}
	if h := b.FinalHydration(); len(b.work) > 0 && h.IsValid() {
		row(working.Tell("dough.at_mixing_hydration", "of what is weighed at mixing"), report.Rounded(h, 1))
	}
	if y := b.DoughYield(); y.check() == nil {
		row(working.Tell("dough.yield_label", "dough yield"),
			report.Of(working.Tell("dough.yield", "TA %.1f, gross %.1f", y.net().Points(), y.gross().Points())))
	}
	if !b.Prefermented().IsZero() {
		row(working.Tell("dough.prefermented", "prefermented flour"), report.Rounded(b.Prefermented(), 1))
	}
	for _, build := range b.Builds() {
		if !build.Fermented || build.Into != "" {
			continue
		}
		for _, reading := range []LevainReading{LevainOfAddedFlour, LevainOfTotalFlour, LevainOfDough} {
			if v, ok := b.LevainPercent(build.Name, reading); ok && v.IsValid() {
				row(working.Tell("dough.reading", "%s, read as %v", build.Name, reading), report.Rounded(v, 1))
			}
		}
	}
	row(working.Tell("dough.salt", "salt"), report.Rounded(b.SaltShare(), 2))
	if v := b.SaltInWater(); v.IsValid() {
		row(working.Tell("dough.salt_in_water", "salt in the dough's water"), report.Rounded(v, 2))
	}
	row(working.Tell("dough.whole_grain", "whole grain"), report.Rounded(b.WholeGrain(), 0))
	row(working.Tell("dough.rye", "rye"), report.Rounded(b.Rye(), 0))
	row(working.Tell("dough.total_flour", "flour in all"), whole(b.flour))
	row(working.Tell("dough.total_water", "water in all"), whole(b.Water()))
	s := report.Section{Key: "readings", Title: working.Tell("dough.what_it_is", "What it is"),
		Blocks: []report.Block{rows}}
	var notes report.List
	if len(wet.Assumed) > 0 {
		notes = append(notes, working.Tell("dough.water_assumed",
			"the water in %v is not stated and is taken as usual of its kind", told(wet.Assumed)))
	}
	if len(wet.Unknown) > 0 {
		notes = append(notes, working.Tell("dough.water_unknown", "the water in %v is not stated and counts as none",
			told(wet.Unknown)))
	}
	if list := b.Allergens().List(); len(list) > 0 {
		notes = append(notes, working.Tell("dough.allergens_list", "allergens: %v", told(list)))
	}
	if u := b.Unstated(); len(u) > 0 {
		notes = append(notes, working.Tell("dough.allergens_unstated", "allergens are not stated for %v", told(u)))
	}
	if len(notes) > 0 {
		s.Blocks = append(s.Blocks, notes)
	}
	return s
}
