package ferment

import (
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/gasbalance"
	"example.org/maslin/internal/sources"
)

// Working derives the amount: what a dough with it makes until the time wanted is what the rise takes then.
func (a AmountAnswer) Working() working.Working {
	e := &a.Estimate
	if !a.Feasible || !e.given() {
		return working.Working{}
	}
	t := e.d.tell(working.Tell("ferment.derive_amount", "How much for the time wanted"))
	t.formula()
	t.cells(&e.bulk)
	ready := e.likely()
	state := func(hour float64) gasbalance.State { s, _ := e.outcome.Path.At(hour); return s }
	gas := t.gasTable(working.Tell("ferment.derive_table_wanted", "gas until the time wanted, row by row"), "G_wanted",
		t.rows(History{knots: e.d.knots}, state, ready))
	_, celsius := e.moment(ready)
	need := t.need("N", working.Tell("ferment.gas_needed", "gas that the rise takes, the dough at %.2f",
		quantity.Celsius(celsius)), e.d.target, celsius)
	amount, name, symbol := a.Inoculation, working.Tell("ferment.amount_of_levain",
		"flour in the levain, of all flour"), "f"
	if a.Yeast.Kind != NoYeast {
		amount, name, symbol = a.Yeast.Amount, working.Tell("ferment.amount_of_yeast", "%v, of the flour", a.Yeast.Kind), "y"
	}
	before := working.Given(symbol+"_0", working.Tell("ferment.symbol_amount_before",
		"the amount that was put in above; put in what comes out until it stays"), amount)
	t.Find(working.Finding{
		Name: name, Symbol: symbol, By: before.Times(need).Over(gas), Is: amount, Decimals: 4,
		Within: 2e-3 * amount.Points(),
		Note: working.Tell("ferment.note_amount",
			"too little gas by a tenth is a tenth too little yeast, nearly; after three rounds nothing changes any more"),
		Source: sources.Judged("the law solved for the cells, by repeating it"),
	})
	return t.Working()
}
