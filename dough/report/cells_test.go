package report_test

import (
	"encoding/csv"
	"encoding/json"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/trial"
	"github.com/google/go-cmp/cmp"
)

// For a spreadsheet every kind of value is a plain number in metric units, with its unit in the heading.
func TestEveryKindOfValueInCSV(t *testing.T) {
	at := time.Date(2026, 11, 28, 6, 29, 31, 0, time.UTC)
	var g report.Grid
	var row []report.Cell
	want := [2][]string{}
	for _, c := range []struct {
		cell          report.Cell
		heading, text string
	}{
		{report.Of(quantity.Grams(65.6)), "mass_g", "65.6"}, {report.Of(quantity.NewPercent(12.5)), "share_percent", "12.5"},
		{report.Of(quantity.Celsius(-3.5)), "room_C", "-3.5"}, {report.Of(quantity.DeltaCelsius(-4)), "change_K", "-4"},
		{report.Of(quantity.Elapsed(89*time.Minute + 31*time.Second)), "time_min", "90"},
		{report.Of(61 * time.Second), "rest_min", "1"}, {report.Of(at), "at", "2026-11-28 06:30"},
		{report.Of(3), "pieces", "3"},
		{report.Of(0.125), "factor", "0.125"},
		{report.Of(true), "done", "true"}, {report.Cell{}, "empty", ""}, {report.Of("rye"), "name", "rye"},
	} {
		key, _, _ := strings.Cut(c.heading, "_")
		g.Columns = append(g.Columns, report.GridColumn{Key: key})
		row = append(row, c.cell)
		want[0], want[1] = append(want[0], c.heading), append(want[1], c.text)
	}
	g.Rows = [][]report.Cell{row}
	rows, err := csv.NewReader(strings.NewReader(string(g.CSV()))).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(want[:], rows); diff != "" {
		t.Error(diff)
	}
	if text, err := json.Marshal(report.Cell{}); err != nil || string(text) != "null" {
		t.Errorf("%s, %v", text, err)
	}
}

// The number of a chart is shown as finely as its axis is read; a line that ends early leaves its cells empty.
func TestNumbersOfEveryAxis(t *testing.T) {
	for _, c := range []struct {
		of       report.Axis
		value    float64
		text, us string
	}{
		{report.Percents, 40, "40.0 %", "40.0 %"}, {report.Degrees, 25, "25.0 °C", "77 °F"},
		{report.Hours, 1.256, "1.26", "1.26"}, {report.ClockHours, 6.504, "06:30", "6:30 am"},
		{report.Minutes, 89.6, "90", "90"},
		{report.Grams, 1.25, "1.2 g", "0.04 oz"}, {report.MetersAbove, 1150, "1150 m", "3773 ft"},
		{report.Numbers, 0.12345, "0.123", "0.123"},
	} {
		g := report.Chart{X: series(report.Hours, 1, 2), Main: series(c.of, c.value, c.value), Low: series(c.of, 1)}.Grid()
		cell := g.Rows[0][2]
		m, us := cell.Text(working.Reader{}), cell.Text(working.Reader{Units: working.USCustomary})
		if m != c.text || us != c.us {
			t.Errorf("%v: %q and %q, want %q and %q", c.of, m, us, c.text, c.us)
		}
		if !g.Rows[1][1].IsZero() || g.Rows[0][1].IsZero() {
			t.Errorf("%v: a line of one point has %v and %v", c.of, g.Rows[0][1], g.Rows[1][1])
		}
	}
}

// Cautions of one subject that have a short form stand in one line, each once; what has none is said in full.
func TestCautionsOfASubjectInOneLine(t *testing.T) {
	of := func(subject working.Subject, text, short string) working.Caution {
		c := working.Caution{Subject: subject, Text: working.Tell("test."+strings.Fields(text)[0], text)}
		if short != "" {
			c.Short = working.Tell("test."+strings.Fields(short)[0]+"_short", short)
		}
		return c
	}
	r := report.Report{Headline: working.Tell("test.c", "c"), Cautions: []working.Caution{
		of("burns", "pots are hot", "pot"), of("machines", "hooks turn on", ""), of("burns", "steam rises", "steam"),
		of("burns", "pots are hot", "pot"),
	}}
	short, full := r.Text(report.Options{}), r.Text(report.Options{EveryCaution: true})
	trial.Holds(t, short, "Take care burns: pot; steam machines: hooks turn on Local food and workplace rules")
	trial.Holds(t, full, "burns: pots are hot machines: hooks turn on burns: steam rises Local food and workplace rules")
}
