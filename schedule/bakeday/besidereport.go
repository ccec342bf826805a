package bakeday

import (
	"fmt"
	"time"

	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule"
)

// called is the name of the bread.
func (d Day) called() working.Message {
	if d.Bake.Name == "" {
		return working.Tell("bakeday.bread", "Bread")
	}
	return working.Say("%s", d.Bake.Name)
}

// String is the headline: what is compared.
func (s SideBySide) String() string { return s.headline().String() }

func (s SideBySide) headline() working.Message {
	if len(s.Plans) < 2 {
		return working.Tell("bakeday.no_plan", "no plan was made")
	}
	if len(s.Changes) > 0 && len(s.days) > 0 {
		return working.Tell("bakeday.two_ways", "%v, kneaded in two ways", s.days[0].called())
	}
	return working.Tell("bakeday.beside", "%v beside %v", s.Plans[0].Name, s.Plans[1].Name)
}

// Report shows what plans are compared by, one column each, and what makes the difference.
func (s SideBySide) Report() report.Report {
	out := report.Report{Headline: s.headline()}
	if len(s.Plans) < 2 {
		return out
	}
	blocks := []report.Block{s.grid()}
	for _, p := range s.Plans {
		if !p.Plan.Water.Feasible {
			blocks = append(blocks, report.Say(working.Tell("bakeday.unpourable",
				"* cannot be poured as it is; the plan of that bake says what to do instead")))
			break
		}
	}
	out.Sections = []report.Section{{Key: "plans", Blocks: blocks}}
	if len(s.Changes) > 0 {
		out.Sections = append(out.Sections, report.Section{
			Key: "changes", Title: working.Tell("bakeday.title_changes", "What it changes"),
			Blocks: []report.Block{report.List(s.Changes)},
		})
	}
	return out
}

func (s SideBySide) grid() report.Grid {
	g := report.Grid{Key: "plans", Columns: []report.GridColumn{{Key: "what"}}}
	for i, p := range s.Plans {
		g.Columns = append(g.Columns, report.GridColumn{Key: fmt.Sprintf("plan_%d", i+1), Title: p.Name, Right: true})
	}
	row := func(label working.Message, value func(PlanData) report.Cell) {
		cells, any := []report.Cell{report.Of(label)}, false
		for _, p := range s.Plans {
			c := value(p.Plan)
			any = any || !c.IsZero()
			cells = append(cells, c)
		}
		if any {
			g.Rows = append(g.Rows, cells)
		}
	}
	if len(s.Changes) == 0 { // another bake: the dough may differ too
		formulaCompared(row)
	}
	mixingCompared(row)
	bulkCompared(row)
	if len(s.Changes) == 0 {
		ovenCompared(row)
	}
	startsCompared(row)
	return g
}

type addRow func(label working.Message, value func(PlanData) report.Cell)

func formulaCompared(row addRow) {
	rounded := report.Rounded
	row(working.Tell("bakeday.pieces", "pieces"), func(p PlanData) report.Cell {
		return report.Of(working.Tell("bakeday.pieces_of", "%d of %.0f", p.Formula.Pieces, p.Oven.Baked))
	})
	row(working.Tell("bakeday.flour", "flour"), func(p PlanData) report.Cell { return rounded(p.Formula.Flour, 0) })
	row(working.Tell("bakeday.hydration", "hydration"),
		func(p PlanData) report.Cell { return rounded(p.Formula.Effective, 1) })
	row(working.Tell("bakeday.salt", "salt"), func(p PlanData) report.Cell { return rounded(p.Formula.Salt, 1) })
	row(working.Tell("bakeday.rye", "rye"), func(p PlanData) report.Cell { return rounded(p.Formula.Rye, 0) })
	row(working.Tell("bakeday.whole_grain", "whole grain"),
		func(p PlanData) report.Cell { return rounded(p.Formula.WholeGrain, 0) })
	row(working.Tell("bakeday.prefermented", "prefermented flour"), func(p PlanData) report.Cell {
		return rounded(p.Formula.Prefermented, 1)
	})
}

func mixingCompared(row addRow) {
	rounded := report.Rounded
	row(working.Tell("bakeday.mixing_warms", "mixing warms by"),
		func(p PlanData) report.Cell { return rounded(p.Water.Warming, 1) })
	row(working.Tell("bakeday.water", "water"), func(p PlanData) report.Cell {
		if !p.Water.Feasible {
			return report.Of(working.Tell("bakeday.water_unpourable", "%.1f*", p.Water.Temperature))
		}
		return rounded(p.Water.Temperature, 1)
	})
	row(working.Tell("bakeday.dough_mixed", "dough when mixed"),
		func(p PlanData) report.Cell { return rounded(p.Water.Target, 1) })
	row(working.Tell("bakeday.batches", "batches"), func(p PlanData) report.Cell { return report.Of(p.batches()) })
}

func bulkCompared(row addRow) {
	rounded := report.Rounded
	row(working.Tell("bakeday.bulk_likely", "bulk, likely"),
		func(p PlanData) report.Cell { return report.Of(p.Bulk.Ready.Likely) })
	row(working.Tell("bakeday.bulk_early", "bulk, early end"),
		func(p PlanData) report.Cell { return report.Of(p.Bulk.Ready.Early) })
	row(working.Tell("bakeday.bulk_late", "bulk, late end"),
		func(p PlanData) report.Cell { return report.Of(p.Bulk.Ready.Late) })
	row(working.Tell("bakeday.dough_after_bulk", "dough after bulk"),
		func(p PlanData) report.Cell { return rounded(p.Bulk.End, 1) })
	row(working.Tell("bakeday.shape_at_rise", "shape at a rise of"),
		func(p PlanData) report.Cell { return rounded(p.Bulk.ShapeAt, 0) })
}

func ovenCompared(row addRow) {
	rounded := report.Rounded
	row(working.Tell("bakeday.oven", "oven"), func(p PlanData) report.Cell {
		return report.Of(working.Tell("bakeday.set_to", "%05.0f", p.Oven.Temperature))
	})
	row(working.Tell("bakeday.core_done", "core when done"),
		func(p PlanData) report.Cell { return rounded(p.Oven.Core, 1) })
	row(working.Tell("bakeday.bake_loss", "bake loss"), func(p PlanData) report.Cell { return rounded(p.Oven.Loss, 1) })
}

// startsCompared says when the steps begin, and whether the bread is there when it is wanted.
func startsCompared(row addRow) {
	for _, kind := range []schedule.StepKind{
		schedule.Feed, schedule.Mix, schedule.Bulk, schedule.Shape, schedule.Chill, schedule.Retard, schedule.Proof,
		schedule.Bake,
	} {
		row(working.Tell("bakeday.kind_of_step", "%v", kind), func(p PlanData) report.Cell { return moment(p.starts(kind)) })
	}
	row(working.Tell("bakeday.when_wanted", "wanted"), func(p PlanData) report.Cell {
		if !p.Possible {
			return report.Of(working.Tell("bakeday.does_not_fit", "does not fit"))
		}
		return moment(p.Wanted)
	})
}

func moment(t time.Time) report.Cell {
	if t.IsZero() {
		return report.Cell{}
	}
	return report.Of(t)
}
