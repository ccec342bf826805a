package report

import (
	"bytes"
	"encoding/csv"
	"strings"

	"example.org/maslin/dough/working"
	"example.org/maslin/internal/textpage"
)

// A Grid has a column for each kind of value and a row for each thing.
type Grid struct {
	// Key names the table for programs.
	Key     string          `json:"key"`
	Caption working.Message `json:"caption,omitzero"`
	Columns []GridColumn    `json:"columns"`
	Rows    [][]Cell        `json:"rows"`
	// Total is a last row that adds up what stands above it; nil: none.
	Total []Cell `json:"total,omitzero"`
}

// A GridColumn is what stands in one place of every row.
type GridColumn struct {
	// Key names the column for programs and as the heading of a CSV file.
	Key   string          `json:"key"`
	Title working.Message `json:"title,omitzero"`
	// Right sets numbers under each other.
	Right bool `json:"right,omitzero"`
	// Tick puts a box to tick before each value, where that can be shown: what is weighed, one after the other.
	Tick bool `json:"tick,omitzero"`
}

// CSV is the table as comma-separated values: numbers with a decimal point in grams, degrees Celsius,
// kelvin, percent and minutes, as the heading says behind the column's key. The total is left out, and what a
// spreadsheet would take for a formula is kept a text.
func (t Grid) CSV() []byte {
	var b bytes.Buffer
	w := csv.NewWriter(&b)
	heads := make([]string, len(t.Columns))
	for i, c := range t.Columns {
		heads[i] = c.Key
		if unit := t.unit(i); unit != "" && unit != c.Key && !strings.HasSuffix(c.Key, "_"+unit) {
			heads[i] += "_" + unit
		}
	}
	_ = w.Write(heads) // a buffer takes everything
	for _, r := range t.Rows {
		cells := make([]string, len(t.Columns))
		for i := range cells {
			if i < len(r) {
				text, unit := r[i].plain()
				if unit == "" {
					text = cell(text, r[i])
				}
				cells[i] = text
			}
		}
		_ = w.Write(cells)
	}
	w.Flush()
	return b.Bytes()
}

func (t Grid) unit(column int) string {
	for _, r := range t.Rows {
		if column < len(r) {
			if _, unit := r[column].plain(); unit != "" {
				return unit
			}
		}
	}
	return ""
}

// cell keeps a text a text: a spreadsheet would compute one that begins with one of these signs.
func cell(text string, v Cell) string {
	switch v.raw.(type) {
	case int, float64, bool:
		return text
	}
	text = textpage.Printable(text)
	if text != "" && strings.IndexByte("=+-@", text[0]) >= 0 {
		return "'" + text
	}
	return text
}
