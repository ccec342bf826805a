package ferment

import (
	"math"

	"example.org/maslin/dough/working"
	"example.org/maslin/internal/gasbalance"
)

// mostRows is how many rows an hour-by-hour table has at most.
const mostRows = 12

// A gasRow is one row of a table of gas: a stretch of a history and what the dough makes in it.
type gasRow struct {
	end, length float64 // h, of the row
	celsius     float64 // in the middle
	rate        float64 // gas that a percent of cells makes in an hour, the mean
	cells       float64 // the mean
	gas         float64 // made in the row
	rise        float64 // at its end
}

// rowLength is a round number of hours of which few make the whole.
func rowLength(whole float64) float64 {
	for _, step := range []float64{0.25, 0.5, 1, 2, 3, 4, 6, 8, 12, 24, 48} {
		if whole <= step*mostRows {
			return step
		}
	}
	return whole / mostRows
}

// rows lays out what a dough makes along a history, by its state at an hour of it.
func (t *telling) rows(h History, state func(hour float64) gasbalance.State, until float64) []gasRow {
	var out []gasRow
	step := rowLength(until)
	s := state(0)
	for from := 0.0; from < until-1e-9; {
		to := math.Min(from+step, until)
		if until-to < step/100 { // no row of a few seconds
			to = until
		}
		now := state(to)
		r := gasRow{
			end: to, length: to - from, celsius: h.celsius((from + to) / 2), rate: t.meanGas(h, from, to),
			gas: t.d.clock.Gas(&now) - t.d.clock.Gas(&s), rise: t.d.rise(&now, h.celsius(to)),
		}
		if r.rate > 0 {
			r.cells = r.gas / (r.rate * r.length)
		}
		out = append(out, r)
		s, from = now, to
	}
	return out
}

// meanGas is the gas that a percent of cells makes in an hour, over a stretch of a history.
func (t *telling) meanGas(h History, from, to float64) float64 {
	const points = 24
	l, d := t.d.law, t.d
	sum := 0.0
	for i := range points {
		c := h.celsius(from + (to-from)*(float64(i)+0.5)/points)
		sum += l.GasCurve.Rate(c) * d.pacing(c)
	}
	return math.Exp(d.belief.Mean[gasbalance.Amplitude]) * l.Gas * l.Pace(d.formula) * sum / points
}

// gasTable adds up the gas of rows.
func (t *telling) gasTable(name working.Message, symbol string, rows []gasRow) working.Expr {
	column := func(of func(gasRow) float64) []float64 {
		var out []float64
		for _, r := range rows {
			out = append(out, of(r))
		}
		return out
	}
	return t.Find(working.Finding{
		Name: name, Symbol: symbol, Unit: "L/kg", Decimals: 4,
		Note: working.Tell("ferment.note_rows",
			"cells are the mean over the row, as they grow by %.2f an hour at 27 °C, times φ and the curve of growth, "+
				"less as they crowd", t.d.law.Growth),
		Table: working.Table{Columns: []working.Column{
			{Symbol: "e", Meaning: working.Tell("ferment.column_end", "end of the row"), Unit: working.Hour, Decimals: 2,
				Cells: column(func(r gasRow) float64 { return r.end })},
			{Symbol: "T", Meaning: working.Tell("ferment.column_temperature", "temperature in the middle of the row"),
				Unit: working.Celsius, Decimals: 1, Cells: column(func(r gasRow) float64 { return r.celsius })},
			{Symbol: "R", Meaning: working.Tell("ferment.column_rise", "how far it has risen by the end of the row"),
				Unit: working.Percent, Decimals: 1, Cells: column(func(r gasRow) float64 { return 100 * r.rise })},
			{Symbol: "t", Meaning: working.Tell("ferment.column_time", "how long the row is"), Unit: working.Hour,
				Decimals: 2, Cells: column(func(r gasRow) float64 { return r.length })},
			{Symbol: "q", Meaning: working.Tell("ferment.column_gas_rate",
				"gas that a percent of cells makes in an hour"), Unit: "L/(h kg)", Decimals: 4,
				Cells: column(func(r gasRow) float64 { return r.rate })},
			{Symbol: "X", Meaning: working.Tell("ferment.column_cells", "cells over the row"), Unit: working.Number,
				Decimals: 5, Cells: column(func(r gasRow) float64 { return r.cells })},
			{Symbol: "G", Meaning: working.Tell("ferment.column_gas", "gas made in the row"), Unit: "L/kg", Decimals: 4,
				By: func(_ int, before []working.Expr) working.Expr {
					return before[3].Times(before[4]).Times(before[5])
				}},
		}},
		Source: growthSource(),
	})
}

// timeOf is the time at which a dough has made so much gas: the end of the last whole row before, and what is missing
// over what is made in an hour from then on.
func (t *telling) timeOf(symbol string, name, brief working.Message, gas working.Expr, hour float64, rows []gasRow,
	state func(hour float64) gasbalance.State) working.Expr {
	whole, before, n := 0.0, 0.0, 0
	for _, r := range rows {
		if r.end >= hour-1e-9 {
			break
		}
		whole, before, n = r.end, before+r.gas, n+1
	}
	made := func(hour float64) float64 {
		s := state(hour)
		return t.d.clock.Gas(&s)
	}
	flow := working.Given("Q_"+symbol, working.Tell("ferment.symbol_flow",
		"gas made in an hour from %.4g h on until then, q × X", whole),
		working.Amount((made(hour)-made(whole))/(hour-whole), "L/(h kg)", 5))
	by := gas.Over(flow)
	if n > 0 {
		end := working.Given("e_"+symbol, working.Tell("ferment.symbol_row_end", "end of row %d of the table", n),
			working.Amount(whole, working.Hour, 2))
		sum := working.Given("G_"+symbol, working.Tell("ferment.symbol_rows", "gas of the rows until then, added up"),
			working.Amount(before, "L/kg", 5))
		by = end.Plus(gas.Minus(sum).Over(flow))
	}
	return t.Find(working.Finding{
		Name: name, Brief: brief, Symbol: "t_" + symbol, Is: onScreen(hour), Decimals: working.WholeNumber, By: by.Times(60),
		Within: 0.05 + hour*60*1e-3,
		Note: working.Tell("ferment.note_within",
			"what is missing after the whole rows, over the gas of an hour; the 60 makes minutes of hours"),
		Source: growthSource(),
	})
}

// riseOf derives the rise that a gas makes: the line of the gas that a rise takes, turned round. The water holds the
// more the further it has risen, so that the rise stands on both sides; what is put in on the right is what comes out.
func (t *telling) riseOf(name working.Message, symbol string, gas working.Expr, rise, celsius float64) working.Expr {
	h, p, kelvin, ostwald := t.held(celsius)
	before := working.Given("R_0", working.Tell("ferment.symbol_rise_before",
		"the rise that comes out, as a fraction; start with 0.5 and put in what comes out until it stays"),
		working.Amount(rise, working.Number, 5))
	wet := h.Minus(0.16).Over(h.Plus(1)).Times(1.12)
	bubbles := t.Find(working.Finding{
		Name:   working.Tell("ferment.derive_bubbles", "volumes of gas in bubbles for each volume of dough"),
		Symbol: "B", Unit: working.Number, Decimals: 5,
		By: gas.Times(1.12).Times(kelvin).Over(h.Plus(1).Times(p).Times(298.15)).
			Minus(ostwald.Times(wet).Times(before).Over(before.Plus(0.09))),
		Source: gasSource(),
	})
	full := t.d.law.Fullest
	e := working.Exp(bubbles.Over(full / 2))
	by := working.Num(full).Times(e.Minus(1)).Over(e.Plus(1)).Times(100)
	note := working.Tell("ferment.note_rise_of",
		"the line of the gas that a rise takes, solved for the rise: a dough holds no more at 350 %")
	if most := greatestRise; rise > most.Fraction() {
		by = working.Min(by, most.Points())
		note = working.Tell("ferment.note_rise_or_more", "%v; %v stands for that or more", note, most)
	}
	return t.Find(working.Finding{
		Name: name, Symbol: symbol, Is: percent(rise), Decimals: 2, By: by, Note: note, Source: gasSource(),
		Within: 0.1, // it is a difference of two gases that each have their own rounding
	})
}
