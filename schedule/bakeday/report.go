package bakeday

import (
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
)

// String is the headline: what is baked, and when it is wanted.
func (d Day) String() string { return d.headline().String() }

// made reports whether a plan was made at all.
func (d Day) made() bool { return d.worked }

func (d Day) headline() working.Message {
	if !d.made() {
		return working.Tell("bakeday.no_plan", "no plan was made")
	}
	return working.Tell("bakeday.headline", "%v: %d of %.0f, wanted %x", d.called(), d.Bake.Loaves.Pieces,
		d.Bake.Loaves.Baked, d.Wanted.In(d.Zone))
}

// Report tells the whole day: when to do what, what to weigh, how warm and how long, what done means. Its sections have
// the keys "missed", "why", "timetable", "weigh-…" for each bowl, "formula", "water", "rising", "oven" and "notes".
func (d Day) Report() report.Report {
	if !d.made() {
		return report.Report{Headline: d.headline()}
	}
	r := report.Report{Headline: d.headline(), Cautions: d.Cautions()}
	add := func(key string, title working.Message, blocks ...report.Block) {
		if len(blocks) > 0 {
			r.Sections = append(r.Sections, report.Section{Key: key, Title: title, Blocks: blocks})
		}
	}
	add("missed", working.Message{}, d.missedBlocks()...)
	if asked := d.meant(); len(asked) > 0 {
		add("meant", working.Tell("bakeday.title_meant", "Is this meant?"), report.List(asked))
	}
	data := d.Data()
	if !d.Possible() {
		add("why", working.Tell("bakeday.title_why", "It does not fit"), data.whyBlocks()...)
	} else {
		add("timetable", working.Tell("bakeday.title_timetable",
			"Timetable: the latest that works, and from when each step may start"), data.timetable())
	}
	for i, l := range data.Weigh {
		add(weighKey(i), l.title(i), l.blocks()...)
	}
	add("formula", working.Tell("bakeday.title_formula", "The dough"), d.formulaRows(data.Formula))
	add("water", working.Tell("bakeday.title_water", "Water and mixing"), d.waterBlocks(data)...)
	add("rising", working.Tell("bakeday.title_rising", "Rising"), d.risingBlocks(data)...)
	add("oven", working.Tell("bakeday.title_oven", "Baking and cooling"), d.ovenBlocks(data)...)
	if len(data.Notes) > 0 {
		add("notes", working.Tell("bakeday.title_notes", "Worth knowing"), report.List(data.Notes))
	}
	return r
}

func (d Day) formulaRows(f FormulaData) report.Rows {
	row := func(label working.Message, v report.Cell) report.Row { return report.Row{Label: label, Value: v} }
	hydration := row(working.Tell("bakeday.hydration", "hydration"), report.Rounded(f.Hydration, 1))
	if f.Effective != f.Hydration {
		hydration.Note = working.Tell("bakeday.effective", "%.1f with the water in the other ingredients", f.Effective)
	}
	rows := report.Rows{
		hydration,
		row(working.Tell("bakeday.prefermented", "prefermented flour"), report.Rounded(f.Prefermented, 1)),
		row(working.Tell("bakeday.salt", "salt"), report.Rounded(f.Salt, 1)),
		row(working.Tell("bakeday.whole_grain", "whole grain"), report.Rounded(f.WholeGrain, 0)),
		row(working.Tell("bakeday.rye", "rye"), report.Rounded(f.Rye, 0)),
		row(working.Tell("bakeday.flour", "flour"), report.Rounded(f.Flour, 0)),
		row(working.Tell("bakeday.dough", "dough"), report.Rounded(f.Dough, 0)),
		row(working.Tell("bakeday.pieces", "pieces"),
			report.Of(working.Tell("bakeday.pieces_of", "%d of %.0f", f.Pieces, f.Scaling))),
	}
	carried := report.Of(d.Batch.Allergens())
	var each []any
	for _, a := range d.Batch.Allergens().List() {
		each = append(each, a)
	}
	if len(each) > 0 {
		carried = report.Of(working.And(each...))
	}
	return append(rows, row(working.Tell("bakeday.allergens", "allergens"), carried))
}
