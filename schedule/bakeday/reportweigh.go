package bakeday

import (
	"strconv"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
)

// noResidue is too little to tell of: no scale on the list shows less.
var noResidue = quantity.Grams(0.05)

func weighKey(i int) string { return "weigh-" + strconv.Itoa(i+1) }

func (l WeighList) title(i int) working.Message {
	switch {
	case l.Batches > 1:
		return working.Tell("bakeday.weigh_batches", "For the %s, in %d batches", l.Name, l.Batches)
	case i == 0:
		return working.Tell("bakeday.weigh_first", "What you weigh: %s", l.Name)
	}
	return working.Tell("bakeday.weigh", "For the %s", l.Name)
}

// mostBatches is how many batches are set side by side.
const mostBatches = 4

// blocks are the lines of one bowl, with a column for each batch, and what rounding does.
func (l WeighList) blocks() []report.Block {
	wide := 0
	if l.Batches > 1 && l.Batches <= mostBatches {
		wide = l.Batches
	}
	t := report.Grid{Key: l.Name, Columns: []report.GridColumn{{Key: "mass", Right: true, Tick: wide == 0}}}
	if wide > 0 {
		t.Columns[0].Title = working.Tell("bakeday.in_all", "in all")
	}
	for k := range wide {
		t.Columns = append(t.Columns, report.GridColumn{
			Key: "batch_" + strconv.Itoa(k+1), Title: working.Tell("bakeday.batch", "batch %d", k+1), Right: true, Tick: true,
		})
	}
	t.Columns = append(t.Columns, report.GridColumn{Key: "item"}, report.GridColumn{
		Key: "share", Title: working.Tell("bakeday.share", "of the flour in it"), Right: true,
	})
	sums := make([]quantity.Mass, wide)
	for _, line := range l.Lines {
		row := []report.Cell{weighed(line.Mass)}
		for k := range wide {
			part := line.Mass.Divide(int64(wide))
			if k < len(line.Portions) {
				part = line.Portions[k]
			}
			sums[k] = sums[k].Add(part)
			row = append(row, weighed(part))
		}
		share := report.Cell{}
		if line.Percent.Sign() > 0 {
			share = report.Rounded(line.Percent, 1)
			if line.Percent.Compare(quantity.NewPercent(1)) < 0 { // the yeast of a poolish
				share = report.Rounded(line.Percent, 2)
			}
		}
		t.Rows = append(t.Rows, append(row, report.Of(line.item()), share))
	}
	t.Total = []report.Cell{weighed(l.Total)}
	for k := range wide {
		t.Total = append(t.Total, weighed(sums[k]))
	}
	t.Total = append(t.Total, report.Of(working.Tell("bakeday.together", "together")), report.Cell{})
	out := []report.Block{t}
	if len(l.Says) > 0 {
		out = append(out, report.List(l.Says))
	}
	switch {
	case l.Residue.Compare(noResidue) < 0 && l.Residue.Neg().Compare(noResidue) < 0:
	case l.Residue.Sign() < 0:
		out = append(
			out,
			report.Paragraph{
				Text: working.Tell("bakeday.rounding_adds", "rounding to the scale adds %.1f", l.Residue.Neg()),
				Tone: report.Aside,
			},
		)
	case l.Residue.Sign() > 0:
		out = append(
			out,
			report.Paragraph{
				Text: working.Tell("bakeday.rounding_leaves", "rounding to the scale leaves out %.1f", l.Residue),
				Tone: report.Aside,
			},
		)
	}
	return out
}

// weighed shows a mass with the decimals that it has: it stands on the scale as it is.
func weighed(m quantity.Mass) report.Cell {
	for decimals := range 3 {
		if r, _ := m.RoundTo([]quantity.Mass{quantity.Grams(1), quantity.Grams(0.1),
			quantity.Grams(0.01)}[decimals]); r == m {
			return report.Rounded(m, decimals)
		}
	}
	return report.Rounded(m, 2)
}
