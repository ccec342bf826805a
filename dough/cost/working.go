package cost

import (
	"math/big"
	"strconv"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"

	"github.com/shopspring/decimal"
)

// Working derives unit costs, costs, the sum and the cost of a loaf.
func (c Costing) Working() working.Working {
	d := working.Derive(working.Tell("cost.derive", "Cost"))
	if c.exact == nil {
		return d.Working()
	}
	in := c.in
	places := max(in.Places, 2) + 2 // on the way to what is handed out
	var sum working.Expr
	for i, l := range in.Lines {
		n := strconv.Itoa(i + 1)
		name := nameOf(l.Name, i)
		price := working.Given("p_"+n, working.Tell("cost.symbol_price", "price of a pack of %v", name),
			amount(l.Price, 2))
		pack := working.Given("w_"+n, working.Tell("cost.symbol_pack", "pack of %v, in %v", name, in.Unit),
			inUnit(l.Pack, in.Unit))
		used := working.Given("m_"+n, working.Tell("cost.symbol_used", "%v used, in %v", name, in.Unit),
			inUnit(l.Used, in.Unit))
		by, source := price.Over(pack), sources.GisslenCost
		if l.Yield != wholeFlour {
			usable := working.Given("y_"+n, working.Tell("cost.symbol_yield", "usable part of %v", name), l.Yield)
			by, source = by.Over(usable.Share()), sources.YieldTest
		}
		u := working.Finding{
			Name: working.Tell("cost.unit_cost", "cost of one %v of %v", in.Unit, name), Symbol: "u_" +
				n, By: by, Source: source,
			Is: exact(c.units[i], places), Decimals: places,
		}
		if in.UnitRounding != MoneyExact {
			u.Is, u.Decimals = amount(c.Lines[i].UnitCost, in.Places), decimalsOf(in.Places)
			if unrounded(l, in.Unit).Cmp(c.units[i]) != 0 {
				u.Rounding = working.Tell("cost.rounding", "rounded %v to %d {2|decimal|decimals}", in.UnitRounding,
					in.Places)
			}
		}
		k := d.Find(working.Finding{
			Name: working.Tell("cost.line_cost", "cost of %v", name), Symbol: "k_" + n, By: d.Find(u).Times(used),
			Is: exact(c.costs[i], places), Decimals: places, Source: sources.GisslenCost,
			Brief: working.Tell("cost.brief_line", "%v of %v at %.4g the %v cost %.4g.", l.Used, name,
				plainMoney(c.units[i]), in.Unit, plainMoney(c.costs[i])),
		})
		if i == 0 {
			sum = k
		} else {
			sum = sum.Plus(k)
		}
	}
	if in.Other.Sign() > 0 {
		sum = sum.Plus(working.Given("k_other", working.Tell("cost.symbol_other", "other costs"), amount(in.Other, 2)))
	}
	all := d.Find(working.Finding{
		Name: working.Tell("cost.sum", "sum, not yet rounded"), Symbol: "S", By: sum, Is: exact(c.exact,
			places), Decimals: places,
		Source: sources.GisslenCost,
	})
	c.handOut(d, working.Tell("cost.batch", "cost of the batch"), "K", all, c.exact, c.Batch)
	if in.Sold != in.Loaves {
		n := working.Given("n_sold", working.Tell("cost.symbol_sold", "loaves sold"), in.Sold)
		c.handOut(d, working.Tell("cost.each_sold", "cost of a loaf sold"), "k_sold", all.Over(n), c.per(in.Sold),
			c.PerSold)
	}
	n := working.Given("n", working.Tell("cost.symbol_loaves", "loaves made"), in.Loaves)
	c.handOut(d, working.Tell("cost.each", "cost of a loaf"), "k", all.Over(n), c.per(in.Loaves), c.PerLoaf)
	return d.Working()
}

func plainMoney(r *big.Rat) float64 { x, _ := r.Float64(); return x }

func (c Costing) per(n int) *big.Rat { return new(big.Rat).Quo(c.exact, big.NewRat(int64(n), 1)) }

// handOut finds an amount that is rounded to the places of the currency.
func (c Costing) handOut(d *working.Derivation, name working.Message, symbol string, by working.Expr, is *big.Rat,
	shown decimal.Decimal) {
	f := working.Finding{Name: name, Symbol: symbol, By: by, Source: sources.GisslenCost,
		Brief: working.Tell("cost.brief", "%v: %v", name, money(shown, c.in.Places))}
	how := c.in.Rounding
	if how == MoneyExact {
		how = MoneyHalfUp
	}
	c.rounded(&f, is, shown, how)
	d.Find(f)
}

// rounded sets what a finding is: the exact amount at the places shown, where that is ordinary rounding, and otherwise
// the amount with how it was rounded.
func (c Costing) rounded(f *working.Finding, is *big.Rat, shown decimal.Decimal, how MoneyRounding) {
	places := c.in.Places
	f.Decimals = decimalsOf(places)
	x, _ := is.Float64()
	if strconv.FormatFloat(x, 'f', places, 64) == shown.StringFixed(int32(places)) && (x == 0 || !shown.IsZero()) {
		f.Is = exact(is, places)
		return
	}
	f.Is = amount(shown, places)
	f.Rounding = working.Tell("cost.rounding", "rounded %v to %d {2|decimal|decimals}", how, places)
}

// unrounded is the unit cost of a line before it is rounded.
func unrounded(l CostLine, u quantity.MassUnit) *big.Rat {
	r := new(big.Rat).Mul(rat(l.Price), unitRat(u))
	r.Quo(r, massRat(l.Pack))
	return r.Quo(r, percentRat(l.Yield))
}

func exact(r *big.Rat, places int) working.Value {
	x, _ := r.Float64()
	return amountOf(x, places)
}

func amount(d decimal.Decimal, places int) working.Value {
	return amountOf(d.InexactFloat64(), max(places, int(-d.Exponent())))
}

func amountOf(x float64, places int) working.Value { return working.Amount(x, "", decimalsOf(places)) }

// decimalsOf is a number of decimals as a working takes it, which is zero where none is meant to be said.
func decimalsOf(places int) int {
	if places == 0 {
		return working.WholeNumber
	}
	return places
}

// inUnit is a mass as a number of the unit that costs are reckoned in, which is the same for every reader, with the
// decimals it has.
func inUnit(m quantity.Mass, u quantity.MassUnit) working.Value {
	d := m.Decimal(u)
	places := max(0, -d.Exponent())
	for places > 0 && d.Equal(d.Truncate(places-1)) {
		places--
	}
	return amountOf(m.In(u), int(places))
}

// nameOf is what a line is called.
func nameOf(name string, i int) working.Message {
	if name == "" {
		return working.Tell("cost.ingredient", "ingredient %d", i+1)
	}
	if len(name) > 40 {
		name = quantity.Excerpt(name)
	}
	return working.Tell("cost.name", "%s", name)
}

func tenth() quantity.Mass { return quantity.Grams(0.1) }
