package ferment

import (
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/gasbalance"
	"example.org/maslin/internal/sources"
)

// gasSource is what the gas of a rise rests on.
func gasSource() working.Source {
	return sources.Judged("ideal gas and Henry's law; what a dough retains from doughs that drop at four to five volumes")
}

// held derives what decides how much gas a dough holds: water, air pressure, temperature, and the gas in its water.
func (t *telling) held(celsius float64) (h, p, kelvin, ostwald working.Expr) {
	f := &t.d.formula
	at := working.Given("T_N", working.Tell("ferment.symbol_then", "temperature of the dough by then"),
		working.Amount(celsius, working.Celsius, 2))
	kelvin = at.In(working.Kelvin)
	h = working.Given("h", working.Tell("ferment.symbol_hydration", "water over flour"),
		working.Amount(f.Hydration, working.Number, digits(f.Hydration)))
	p = working.Given("p", working.Tell("ferment.symbol_pressure", "air pressure"),
		working.Amount(t.d.atm, "atm", digits(t.d.atm)))
	ostwald = t.Find(working.Finding{
		Name:   working.Tell("ferment.derive_ostwald", "volumes of carbon dioxide that a volume of water holds"),
		Symbol: "L",
		Unit:   working.Number,
		By: working.Exp(working.Num(2400).Times(working.Num(1).Over(kelvin).Minus(working.Num(1).Over(298.15)))).
			Times(3.3e-4 * 8.314462).
			Times(kelvin),
		Note: working.Tell("ferment.note_ostwald",
			"Henry's law: 0.00033 mol per cubic meter and pascal at 25 °C, times the gas constant"),
		Source: sources.Judged("Sander, compilation of Henry's law constants"),
	})
	return h, p, kelvin, ostwald
}

// need derives the gas that a rise takes.
func (t *telling) need(symbol string, name working.Message, rise, celsius float64) working.Expr {
	n := t.d.law.Need(rise, t.d.formula.Hydration, t.d.atm)
	r := working.Given("R", working.Tell("ferment.symbol_rise", "rise, as a fraction"),
		working.Amount(rise, working.Number, digits(rise)))
	h, p, kelvin, ostwald := t.held(celsius)
	full := t.d.law.Fullest
	bubbles := working.Num(full / 2).Times(working.Ln(working.Num(full).Plus(r).Over(working.Num(full).Minus(r))))
	wet := h.Minus(0.16).Over(h.Plus(1)).Times(1.12)
	return t.Find(working.Finding{
		Name: name, Symbol: symbol, Is: working.Amount(n.Gas(celsius), "L/kg", 4),
		Brief: working.Tell("ferment.brief_gas",
			"For a rise of %.0f at %.1f a kilogram of the flour must make %.2f L of gas.",
			quantity.NewPercent(100*rise), quantity.Celsius(celsius), n.Gas(celsius)),
		By: h.Plus(1).
			Over(1.12).
			Times(p).
			Times(298.15).
			Over(kelvin).
			Times(bubbles.Plus(ostwald.Times(wet).Times(r).Over(r.Plus(0.09)))),
		Note: working.Tell("ferment.note_need",
			"carbon dioxide at 25 °C and 1 atm per kg of flour: 1.12 kg of flour and water make a liter of dough, which "+
				"holds no more at a rise of 350 %; "+
				"water free to dissolve gas is all but 16 % of the flour; bubbles begin as 9 % air"),
		Term: working.Tell("ferment.term_gas",
			"the gas a dough must make for its rise: most of it in bubbles, the rest dissolved in its water"),
		Source: gasSource(),
	})
}

// Working derives the answer step by step: the gas that the total takes less what the dough makes after it is shaped
// is what it must have made by then, and from that come the time and the rise; or, where the rise was given or the
// total cannot be kept, what the gas in all makes of the dough.
func (t ShapeTarget) Working() working.Working {
	if t.path.IsZero() {
		return working.Working{}
	}
	d := &t.Shape.d
	w := d.tell(working.Tell("ferment.derive_shape", "How far the dough may rise before shaping"))
	w.formula()
	b := t.proof.Bulk
	w.cells(&b)
	shaped := 0.0
	if t.Feasible {
		shaped = hours(t.Shape.Ready().Likely)
	}
	state := func(hour float64) gasbalance.State { return d.at(d.start, hour) }
	s := state(shaped)
	after := func(hour float64) gasbalance.State { return d.clock.AdvanceAlong(s, t.path.knots, 0, hour) }
	until := hours(t.proof.Bench.Duration())
	for _, piece := range t.proof.Stages {
		until += hours(piece.For.Duration())
	}
	later := w.gasTable(working.Tell("ferment.derive_gas_after", "gas made after shaping, row by row"), "G_after",
		w.rows(t.path, after, until))
	end := after(until)
	oven := t.path.celsius(until)
	if !t.Feasible {
		w.riseOf(working.Tell("ferment.derive_unrisen", "rise of a dough that is shaped at once"), "R_unrisen", later,
			d.rise(&end, oven), oven)
		return w.Working()
	}
	total := d.law.Need(t.proof.Total.Fraction(), d.formula.Hydration, d.atm)
	rows := w.rows(History{knots: d.knots}, state, shaped)
	asked := !t.proof.ShapeAt.IsZero()
	if gas := total.Gas(oven); asked || d.clock.Gas(&end) < gas*(1-1e-3) || d.clock.Gas(&end) > gas*(1+1e-3) {
		before := w.gasTable(working.Tell("ferment.derive_gas_before", "gas made until shaping, row by row"), "G_before",
			rows)
		w.riseOf(working.Tell("ferment.derive_total", "rise in all when it goes into the oven"), "R_total",
			before.Plus(later), d.rise(&end, oven), oven)
	} else {
		need := w.need("N_total", working.Tell("ferment.gas_total", "gas that the total takes in the oven"),
			t.proof.Total.Fraction(), oven)
		gas := w.Find(working.Finding{
			Name: working.Tell("ferment.gas_shaped", "gas that the dough has when it is shaped"), Symbol: "N_shape",
			Unit: "L/kg", Decimals: 4, By: need.Minus(later), Source: working.Algebra(),
		})
		w.gasTable(working.Tell("ferment.derive_gas_before", "gas made until shaping, row by row"), "G_before", rows)
		w.timeOf("shape", working.Tell("ferment.derive_shape_time", "time at which to shape"),
			working.Tell("ferment.brief_shape", "It has made that gas, and is shaped, after %v.",
				quantity.Elapsed(onScreen(shaped))), gas, shaped, rows, state)
		w.riseOf(working.Tell("ferment.derive_shape_rise", "rise at which to shape"), "R_shape", gas, t.Rise.Fraction(),
			t.Shaped.Celsius())
	}
	return w.Working()
}
