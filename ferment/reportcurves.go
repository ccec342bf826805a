package ferment

import (
	"math"
	"slices"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
)

// hardlyApart is how far, in °C, bakes must lie apart to tell how temperature moves a culture.
const hardlyApart = 2.0

// String says what is compared.
func (r CurveRates) String() string { return r.Message().String() }

// Message says what is compared.
func (r CurveRates) Message() working.Message {
	return working.Tell("ferment.doubling_times", "how long a culture takes to double, by rate curve")
}

// Working derives the doubling time of each curve at 24 °C, or where the table has no such line at its last.
func (r CurveRates) Working() working.Working {
	d := working.Derive(working.Tell("ferment.derive_curves", "Rate curves"))
	t := quantity.Celsius(reference)
	if n := len(r.Table.Temperatures); n > 0 && !slices.Contains(r.Table.Temperatures, t) {
		t = r.Table.Temperatures[n-1]
	}
	at := working.Given("T", working.Tell("ferment.symbol_temperature", "temperature of the dough"), t)
	for _, c := range r.Table.Curves {
		a := c.About()
		mu := c.Rate(t.Celsius())
		f := working.Finding{
			Name: working.Tell("ferment.derive_curve_rate", "rate at %v by %s", t, a.Name), Symbol: "μ",
			Is: working.Amount(mu, "/h", 5), Source: a.Source,
		}
		if c.of != nil && c.of.told != nil && mu > 0 {
			f.By = c.of.told(at, t.Celsius())
		} else {
			f.Look = working.Tell("ferment.look_formula", "the curve's own formula: %v", a.told())
		}
		rate := d.Find(f)
		if mu > 0 {
			d.Find(working.Finding{
				Name:   working.Tell("ferment.derive_doubling", "time in which it doubles, by %s", a.Name),
				Symbol: "t_2", Unit: working.Minute, Decimals: working.WholeNumber,
				By: working.Ln(2).Over(rate).Times(60), Source: working.Algebra(),
			})
		}
	}
	return d.Working()
}

// told is the formula of the curve, in the words of its reader.
func (a About) told() working.Message {
	if a.Formula == "" {
		return working.Tell("ferment.formula_unstated", "a rule of its own")
	}
	return formulaTold(a.Formula)
}

// chart draws the rates of the curves side by side, where all of them may be used; nothing for more than four.
func (r CurveRates) chart() []report.Block {
	low, high := tableLow, tableHigh
	for _, c := range r.Table.Curves {
		about := c.About()
		low, high = max(low, about.Low), min(high, about.High)
	}
	if n := len(r.Table.Curves); n == 0 || n > 4 || !(high > low) {
		return nil
	}
	var at []float64
	for i := range chartPoints {
		at = append(at, low+(high-low)*float64(i)/(chartPoints-1))
	}
	line := func(c Curve) report.Series {
		s := report.Series{Name: working.Tell("ferment.name", "%s", c.About().Name)}
		for _, t := range at {
			s.Values = append(s.Values, c.Rate(t))
		}
		return s
	}
	out := report.Chart{
		Title: working.Tell("ferment.chart_curves", "Growth in an hour, by temperature"),
		X:     report.Series{Name: working.Tell("ferment.axis_temperature", "temperature"), Of: report.Degrees, Values: at},
		Main:  line(r.Table.Curves[0]),
	}
	for _, c := range r.Table.Curves[1:] {
		out.Beside = append(out.Beside, line(c))
	}
	return []report.Block{out}
}

// Report tells the rates of the curves side by side, as doubling times.
func (r CurveRates) Report() report.Report {
	out := report.Report{Headline: r.Message()}
	t := r.Table
	if len(r.Rows) == 0 {
		return out
	}
	grid := report.Grid{Key: "curves", Columns: []report.GridColumn{{Key: "temperature",
		Title: working.Tell("ferment.column_at", "at"), Right: true}}}
	for _, c := range t.Curves {
		about := c.About()
		grid.Columns = append(grid.Columns, report.GridColumn{Key: about.Key,
			Title: working.Tell("ferment.name", "%s", about.Name), Right: true})
		out.Sources = append(out.Sources, about.Source)
	}
	for _, x := range r.Rows {
		line := []report.Cell{report.Of(x.Temperature)}
		for i := range x.Doublings[:min(len(x.Doublings), len(x.InRange))] {
			line = append(line, report.Of(doublingWords(x.Doublings[i], x.InRange[i])))
		}
		grid.Rows = append(grid.Rows, line)
	}
	about := report.List{}
	for _, c := range t.Curves {
		a := c.About()
		about = append(about, working.Tell("ferment.curve_about", "%s: %v; between %.0f and %.0f", a.Name,
			a.told(), degrees(a.Low), degrees(a.High)))
	}
	out.Sections = []report.Section{
		{Key: "curves", Title: working.Tell("ferment.title_curves", "Doubling times"), Blocks: append([]report.Block{grid},
			r.chart()...)},
		{Key: "about", Title: working.Tell("ferment.title_about", "The curves"), Blocks: []report.Block{about}},
	}
	return out
}

func doublingWords(hours float64, inRange bool) working.Message {
	switch {
	case !(hours > 0) || math.IsInf(hours, 1):
		return working.Tell("ferment.no_growth", "no growth")
	case !inRange:
		return working.Tell("ferment.doubling_outside", "%.1f h (out of range)", hours)
	}
	return working.Tell("ferment.doubling", "%.1f h", hours)
}
