package ferment

import (
	"fmt"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
)

// RiseTable asks how long one dough takes at several temperatures, held steady, with several amounts of levain or
// yeast.
type RiseTable struct {
	// Bulk is the dough; its History is not used, nor the amount of its yeast, or of its levain where it has no yeast.
	Bulk         Bulk                   `json:"bulk"`
	Temperatures []quantity.Temperature `json:"temperatures"`
	Amounts      []quantity.Percent     `json:"amounts"`
}

// RiseTimes are the times of a [RiseTable].
type RiseTimes struct {
	answer

	Table RiseTable `json:"table"`
	// Times[i][j] is at Temperatures[i] with Amounts[j].
	Times [][]quantity.TimeRange `json:"times"`

	middle Estimate
}

// mostCells bounds a table, each way.
const mostCells = 100

// Times answers: how long does the rise take in each case? Errors: ErrRequired for empty lists, ErrOutOfRange for lists
// over 100 long; as [Bulk.Estimate]. Source: [Bulk.Estimate], case by case.
func (t RiseTable) Times() (RiseTimes, error) {
	var p problems
	p.listed("Temperatures", len(t.Temperatures), mostCells,
		quantity.Tell("ferment.want_1_to_100_temperatures", "1 to 100 temperatures"))
	p.listed("Amounts", len(t.Amounts), mostCells,
		quantity.Tell("ferment.want_1_to_100_amounts_levain", "1 to 100 amounts of levain or yeast"))
	if err := p.ErrFor(t); err != nil {
		return RiseTimes{}, err
	}
	out := RiseTimes{Table: t}
	b := t.Bulk
	for i, at := range t.Temperatures {
		b.History = Constant(at)
		row := make([]quantity.TimeRange, len(t.Amounts))
		for j, amount := range t.Amounts {
			if b.Yeast.Kind == NoYeast {
				b.Inoculation = amount
			} else {
				b.Yeast.Amount = amount
			}
			e, err := b.Estimate()
			if err != nil {
				p.Join("Bulk", err)
				return RiseTimes{}, p.ErrFor(t)
			}
			if i == len(t.Temperatures)/2 && j == len(t.Amounts)/2 {
				out.middle = e
			}
			row[j] = e.Ready()
		}
		out.Times = append(out.Times, row)
	}
	return out, nil
}

// String says what the table is of.
func (t RiseTimes) String() string { return t.Message().String() }

// Message says what the table is of.
func (t RiseTimes) Message() working.Message {
	return working.Tell("ferment.rise_table", "how long a dough takes to rise by %v, held at one temperature",
		t.Table.Bulk.Rise)
}

// Working derives the time in the middle of the table.
func (t RiseTimes) Working() working.Working { return t.middle.Working() }

// Report shows the likely times, and how far doughs differ.
func (t RiseTimes) Report() report.Report {
	out := report.Report{Headline: t.Message()}
	if len(t.Times) == 0 {
		return out
	}
	caption := working.Tell("ferment.columns_levain", "columns: flour in the levain, of all flour")
	if y := t.Table.Bulk.Yeast; y.Kind != NoYeast {
		caption = working.Tell("ferment.columns_yeast", "columns: %v, of the flour", y.Kind)
	}
	grid := report.Grid{Key: "times", Caption: caption, Columns: []report.GridColumn{{Key: "temperature"}}}
	for i, a := range t.Table.Amounts {
		grid.Columns = append(grid.Columns, report.GridColumn{
			Key: fmt.Sprintf("amount_%d", i+1), Title: working.Tell("ferment.amount", "%v", a), Right: true,
		})
	}
	for i, at := range t.Table.Temperatures[:min(len(t.Table.Temperatures), len(t.Times))] {
		line := []report.Cell{report.Rounded(at, 1)}
		for _, r := range t.Times[i] {
			line = append(line, report.Of(quantity.Elapsed(r.Likely.Round(time.Minute))))
		}
		grid.Rows = append(grid.Rows, line)
	}
	r := t.middle.Ready()
	blocks := []report.Block{grid}
	if r.Likely > 0 {
		part := func(d time.Duration) quantity.Percent { return quantity.NewPercent(100 * d.Hours() / r.Likely.Hours()) }
		blocks = append(blocks, report.Say(working.Tell("ferment.table_spread",
			"these are likely times; in the middle of the table %v of unknown kitchens are believed to lie between %.0f and "+
				"%.0f of the likely time "+
				"(%v to %v), and logging bakes narrows that", r.Probability, part(r.Early), part(r.Late),
			r.Early.Round(time.Minute), r.Late.Round(time.Minute))))
	}
	out.RestsOn = []working.Message{t.Table.Bulk.Law.Message()}
	out.Sections = []report.Section{{Key: "times", Blocks: blocks}}
	return out
}
