package bakeday

import (
	"bytes"
	"encoding/csv"
	"strconv"
	"strings"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/textpage"
)

// csvColumns are the headings of a plan as a table.
func csvColumns() []string {
	return []string{
		"table", "part", "item", "batch", "mass_g", "percent", "start", "end", "earliest_start", "latest_start", "hands",
		"look_from", "look_to",
	}
}

// CSV is the plan as one table for a spreadsheet: the lines of the weighing lists ("weigh", with a line for each batch
// where there are several, and then none for the whole), then the steps ("step"). Numbers have a decimal point and no
// unit; the headings name it. Times are by the clock of the kitchen. A name that a spreadsheet would compute, because
// it begins with =, +, - or @, has an apostrophe before it.
func (s PlanData) CSV() string {
	var b bytes.Buffer
	w := csv.NewWriter(&b)
	columns := csvColumns()
	row := func(cells map[string]string) {
		out := make([]string, len(columns))
		for i, c := range columns {
			out[i] = cells[c]
		}
		_ = w.Write(out) // a bytes.Buffer takes everything
	}
	_ = w.Write(columns)
	grams := func(m quantity.Mass) string { return strings.TrimSuffix(csvNumber(m), " g") }
	for _, l := range s.Weigh {
		for _, line := range l.Lines {
			cells := map[string]string{"table": "weigh", "part": csvName(l.Name), "item": csvName(line.Name),
				"percent": strconv.FormatFloat(line.Percent.Points(), 'f', -1, 64)}
			if len(line.Portions) == 0 {
				cells["batch"], cells["mass_g"] = "1", grams(line.Mass)
				row(cells)
			}
			for i, m := range line.Portions {
				cells["batch"], cells["mass_g"] = strconv.Itoa(i+1), grams(m)
				row(cells)
			}
		}
	}
	for _, t := range s.Steps {
		cells := map[string]string{
			"table": "step", "item": csvName(t.Name.String()), "start": csvTime(t.Start), "end": csvTime(t.End),
			"earliest_start": csvTime(t.EarliestStart), "latest_start": csvTime(t.LatestStart),
			"hands": strconv.FormatBool(t.Hands),
		}
		if t.LookFrom != nil {
			cells["look_from"] = csvTime(*t.LookFrom)
		}
		if t.LookTo != nil {
			cells["look_to"] = csvTime(*t.LookTo)
		}
		row(cells)
	}
	w.Flush()
	return b.String()
}

func csvNumber(m quantity.Mass) string {
	text, err := m.MarshalText()
	if err != nil {
		return ""
	}
	return string(text)
}

// csvTime is a time as spreadsheets read it, by the clock of the kitchen.
func csvTime(t time.Time) string { return t.Format("2006-01-02 15:04") }

// csvName keeps a name a name: a spreadsheet would compute a cell that begins with one of these.
func csvName(name string) string {
	name = textpage.Printable(name)
	if name != "" && strings.ContainsRune("=+-@", rune(name[0])) {
		return "'" + name
	}
	return name
}
