package cost

import (
	"math/big"
	"strconv"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"

	"github.com/shopspring/decimal"
)

// MoneyRounding says how an amount of money is rounded.
type MoneyRounding int

// The roundings.
const (
	// MoneyExact keeps the exact fraction for further arithmetic.
	MoneyExact MoneyRounding = iota
	// MoneyUp rounds up: the trade's habit for unit costs.
	MoneyUp
	// MoneyHalfUp rounds to the nearest, halves up.
	MoneyHalfUp
	// MoneyHalfEven rounds to the nearest, halves to even.
	MoneyHalfEven
)

var roundingNames = []string{"exact", "up", "half up", "half even"}

// String names the rounding.
func (m MoneyRounding) String() string { return nameOf(roundingNames, int(m)) }

// AppendText implements encoding.TextAppender; a value without a name is an error.
func (m MoneyRounding) AppendText(b []byte) ([]byte, error) {
	return appendName(b, roundingNames, int(m))
}

// MarshalText implements encoding.TextMarshaler: "up".
func (m MoneyRounding) MarshalText() ([]byte, error) { return m.AppendText(nil) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads what String prints.
func (m *MoneyRounding) UnmarshalText(text []byte) error {
	i, err := readName(text, roundingNames)
	if err == nil {
		*m = MoneyRounding(i)
	}
	return err
}

// CostLine is one ingredient with its price.
type CostLine struct {
	Name string
	Used quantity.Mass // in the batch, ready to use
	// Price is what a pack costs and Pack its weight: 25 kg of flour at 20.00.
	Price decimal.Decimal
	Pack  quantity.Mass
	// Yield is the usable part of what is bought; zero means 100 %, as for flour and sugar.
	Yield quantity.Percent
}

// CostSheet is the input of [Cost].
type CostSheet struct {
	Lines []CostLine
	// Other is what else the batch costs: fuel, packing.
	Other decimal.Decimal
	// Loaves is how many the batch makes, and Sold how many of them are sold (zero: all of them).
	Loaves, Sold int

	// Unit is what unit costs are for: a kilogram, a pound.
	Unit quantity.MassUnit
	// UnitRounding is done to the cost of a unit before it is used: round up is a trade habit;
	// exact is the default.
	UnitRounding MoneyRounding
	// Rounding is done once to each amount that is handed out; exact means half up, since money has
	// to end somewhere.
	Rounding MoneyRounding
	// Places is the decimals of the currency; zero means 2, and −1 means none.
	Places int
}

// CostedLine is one ingredient costed.
type CostedLine struct {
	Name string
	// UnitCost is for one unit as used, the yield counted; rounded by UnitRounding, or to six
	// places for show when exact.
	UnitCost decimal.Decimal
	// Cost is for the batch, rounded to the places.
	Cost decimal.Decimal
	// Bought is what has to be bought for it: used ÷ yield.
	Bought quantity.Mass
}

// Costing is the answer of [Cost].
type Costing struct {
	Lines []CostedLine
	// Batch is the exact sum of all lines and the rest, rounded once; the printed lines may add up
	// to a cent more or less.
	Batch decimal.Decimal
	// PerLoaf is the batch over the loaves made, PerSold over those sold: the better figure when
	// some are not.
	PerLoaf, PerSold decimal.Decimal
	// PerKilogram is the cost of a kilogram of what goes in.
	PerKilogram decimal.Decimal

	in    CostSheet
	exact *big.Rat
	units []*big.Rat
}

const (
	mostPrice  = 1_000_000_000
	mostPlaces = 6
)

// Cost answers what a batch and a loaf cost.
//
//	unit cost = price ÷ pack ÷ yield;  cost = Σ used · unit cost;  per loaf = cost ÷ loaves
//
// Amounts are exact fractions until the last step and come out as decimals, rounded once each as
// named. Only the cost of materials and what is put into Other is counted. Prices 0 to
// 1,000,000,000 with at most 12 decimals, packs and amounts to 100 t, yields 1 to 100 %, places 0
// to 6. Errors: ErrRequired, ErrOutOfRange, ErrTooPrecise; ErrInconsistent when more are sold than
// made. Source: Gisslen, Professional Baking, unit costs; BC Cook Articulation Committee, yield
// testing.
func Cost(in CostSheet) (Costing, error) {
	var p quantity.Problems
	in = in.checked(&p)
	if err := p.Err(); err != nil {
		return Costing{}, err
	}
	in.Lines = append([]CostLine(nil), in.Lines...)
	c := Costing{in: in, exact: rat(in.Other)}
	places := int32(in.Places)
	round := in.Rounding
	if round == MoneyExact {
		round = MoneyHalfUp
	}
	unit := massRat(unitMass(in.Unit))
	var all quantity.Mass
	for _, l := range in.Lines {
		// price ÷ pack ÷ yield, for one unit
		u := new(big.Rat).Mul(rat(l.Price), unit)
		u.Quo(u, massRat(l.Pack))
		u.Quo(u, percentRat(l.Yield))
		shown := roundMoney(u, 6, MoneyHalfEven)
		if in.UnitRounding != MoneyExact {
			shown = roundMoney(u, places, in.UnitRounding)
			u = rat(shown)
		}
		cost := new(big.Rat).Mul(u, massRat(l.Used))
		cost.Quo(cost, unit)
		c.exact.Add(c.exact, cost)
		c.units = append(c.units, u)
		c.Lines = append(c.Lines, CostedLine{Name: l.Name, UnitCost: shown, Cost: roundMoney(cost, places, round), Bought: l.Used.Over(l.Yield)})
		all = all.Add(l.Used)
	}
	c.Batch = roundMoney(c.exact, places, round)
	c.PerLoaf = roundMoney(new(big.Rat).Quo(c.exact, big.NewRat(int64(in.Loaves), 1)), places, round)
	c.PerSold = roundMoney(new(big.Rat).Quo(c.exact, big.NewRat(int64(in.Sold), 1)), places, round)
	if kg := massRat(all); kg.Sign() > 0 {
		perKg := new(big.Rat).Quo(c.exact, kg)
		c.PerKilogram = roundMoney(perKg.Mul(perKg, massRat(quantity.Kilograms(1))), places, round)
	}
	return c, nil
}

func (in CostSheet) checked(p *quantity.Problems) CostSheet {
	if len(in.Lines) == 0 {
		p.Required("Lines", "at least one ingredient with its price")
	}
	if len(in.Lines) > maxLines {
		p.Add("Lines", strconv.Itoa(len(in.Lines))+" lines", "1 to "+strconv.Itoa(maxLines), quantity.ErrOutOfRange)
		return in
	}
	in.Lines = append([]CostLine(nil), in.Lines...)
	for i := range in.Lines {
		l := &in.Lines[i]
		path := at("Lines", i)
		quantity.Check(p, path+".Used", l.Used, quantity.Mass{}, mostDough)
		checkMoney(p, path+".Price", l.Price)
		if l.Pack.IsZero() {
			p.Required(path+".Pack", "the weight of the pack that the price is for")
		} else {
			quantity.Check(p, path+".Pack", l.Pack, quantity.Micrograms(1000), mostDough)
		}
		if l.Yield.IsZero() {
			l.Yield = wholeFlour
		}
		quantity.Check(p, path+".Yield", l.Yield, quantity.MustPercent("1 %"), wholeFlour)
	}
	checkMoney(p, "Other", in.Other)
	loaves := p.Int("Loaves", in.Loaves, 1, 1_000_000)
	if in.Sold == 0 {
		in.Sold = in.Loaves
	}
	if loaves && p.Int("Sold", in.Sold, 1, 1_000_000) && in.Sold > in.Loaves {
		p.Add("Sold", strconv.Itoa(in.Sold), "at most the loaves made, "+strconv.Itoa(in.Loaves), quantity.ErrInconsistent)
	}
	if in.Unit < quantity.Gram || in.Unit > quantity.Pound {
		p.Add("Unit", "an unknown unit", "gram, kilogram, milligram, ounce or pound", quantity.ErrUnit)
		in.Unit = quantity.Gram
	}
	checkName(p, "UnitRounding", roundingNames, int(in.UnitRounding))
	checkName(p, "Rounding", roundingNames, int(in.Rounding))
	switch in.Places {
	case 0:
		in.Places = 2
	case -1:
		in.Places = 0
	default:
		p.Int("Places", in.Places, 0, mostPlaces)
	}
	return in
}

// checkMoney bounds a price before anything is done with it: a decimal may hold an exponent of a
// million digits.
func checkMoney(p *quantity.Problems, path string, d decimal.Decimal) bool {
	const want = "0 to 1000000000, with at most 12 decimals"
	if e := d.Exponent(); e > 9 || e < -40 || d.NumDigits() > 60 {
		p.Add(path, "a decimal of extreme size", want, quantity.ErrOutOfRange)
		return false
	}
	if d.Sign() < 0 || d.GreaterThan(decimal.NewFromInt(mostPrice)) {
		p.Add(path, d.String(), want, quantity.ErrOutOfRange)
		return false
	}
	if !d.Equal(d.Truncate(12)) {
		p.Add(path, d.String(), want, quantity.ErrTooPrecise)
		return false
	}
	return true
}

func unitMass(u quantity.MassUnit) quantity.Mass {
	switch u {
	case quantity.Kilogram:
		return quantity.Kilograms(1)
	case quantity.Milligram:
		return quantity.Micrograms(1000)
	case quantity.Ounce:
		return quantity.MustMass("1 oz")
	case quantity.Pound:
		return quantity.MustMass("1 lb")
	}
	return quantity.Grams(1)
}

func unitSymbol(u quantity.MassUnit) string {
	return [...]string{"g", "kg", "mg", "oz", "lb"}[u]
}

func rat(d decimal.Decimal) *big.Rat {
	r := new(big.Rat).SetInt(d.Coefficient())
	e := d.Exponent()
	ten := new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(max(e, -e))), nil)
	if e < 0 {
		return r.Quo(r, new(big.Rat).SetInt(ten))
	}
	return r.Mul(r, new(big.Rat).SetInt(ten))
}

func massRat(m quantity.Mass) *big.Rat {
	n, _ := m.Micrograms()
	return big.NewRat(n, 1)
}

// percentRat is the share of one.
func percentRat(p quantity.Percent) *big.Rat {
	n, _ := p.Millionths()
	return big.NewRat(n, one)
}

// roundMoney rounds an amount of zero or more to the places.
func roundMoney(r *big.Rat, places int32, how MoneyRounding) decimal.Decimal {
	n := new(big.Int).Mul(r.Num(), new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(places)), nil))
	q, rest := new(big.Int).QuoRem(n, r.Denom(), new(big.Int))
	up := false
	switch c := new(big.Int).Lsh(rest, 1).Cmp(r.Denom()); how {
	case MoneyUp:
		up = rest.Sign() > 0
	case MoneyHalfUp:
		up = c >= 0
	case MoneyHalfEven, MoneyExact:
		up = c > 0 || c == 0 && q.Bit(0) == 1
	}
	if up {
		q.Add(q, big.NewInt(1))
	}
	return decimal.NewFromBigInt(q, -places)
}

// String prints the batch and the loaf.
func (c Costing) String() string {
	if c.exact == nil {
		return "no cost"
	}
	places := int32(c.in.Places)
	text := c.Batch.StringFixed(places) + " for the batch, " + c.PerLoaf.StringFixed(places) + " a loaf"
	if c.in.Sold != c.in.Loaves {
		text += ", " + c.PerSold.StringFixed(places) + " for each of the " + strconv.Itoa(c.in.Sold) + " sold"
	}
	return text
}

// Working derives unit costs, costs, the sum and the cost of a loaf.
func (c Costing) Working() working.Working {
	w := working.Working{Title: "Cost"}
	if c.exact == nil {
		return w
	}
	in := c.in
	unit := unitSymbol(in.Unit)
	places := int32(in.Places)
	half := 0.5
	for range in.Places {
		half /= 10
	}
	sum := working.Step{
		Name:      "cost of the batch",
		Symbol:    "K",
		Value:     c.Batch.StringFixed(places),
		Source:    sources.GisslenCost,
		Tolerance: half + 1e-9,
	}
	for i, l := range in.Lines {
		n := strconv.Itoa(i + 1)
		name := shortName(l.Name, "ingredient "+n)
		costed := c.Lines[i]
		u := working.Step{
			Name: "unit cost of " + name, Symbol: "u_" + n, Formula: "p ÷ (m_pack ÷ m_unit) ÷ (y ÷ 100)",
			Where: []working.Binding{
				{Symbol: "p", Meaning: "price of a pack", Value: l.Price.StringFixed(max(places, -l.Price.Exponent()))},
				{Symbol: "m_pack", Meaning: "pack", Value: l.Pack.String()},
				{Symbol: "m_unit", Meaning: "one " + unit, Value: unitMass(in.Unit).String()},
				{Symbol: "y", Meaning: "usable part", Value: l.Yield.String()},
			},
			Numbers: plainDecimal(l.Price) + " ÷ (" + bareNumber(l.Pack.String()) + " ÷ " +
				bareNumber(unitMass(in.Unit).String()) + ") ÷ (" + points(l.Yield) + " ÷ 100)",
			Value: costed.UnitCost.StringFixed(6), Source: sources.GisslenCost,
		}
		if in.UnitRounding != MoneyExact {
			u.Value = costed.UnitCost.StringFixed(places)
			u.Note = "rounded " + in.UnitRounding.String() + " to " + strconv.Itoa(in.Places) + " places before use"
			u.Tolerance = half + 1e-9
			if in.UnitRounding == MoneyUp {
				u.Tolerance = 2 * half
			}
		}
		if l.Yield != wholeFlour {
			u.Source = sources.YieldTest
		}
		exactCost, _ := new(big.Rat).Quo(new(big.Rat).Mul(c.units[i], massRat(l.Used)), massRat(unitMass(in.Unit))).Float64()
		used, _ := new(big.Rat).Quo(massRat(l.Used), massRat(unitMass(in.Unit))).Float64()
		k := working.Step{
			Name: "cost of " + name, Symbol: "k_" + n, Formula: "u_" + n + " × m ÷ m_unit",
			Where: []working.Binding{
				{Symbol: "m", Meaning: "used", Value: l.Used.String()},
				{Symbol: "m_unit", Meaning: "one " + unit, Value: unitMass(in.Unit).String()},
			},
			Numbers: ratText(c.units[i]) + " × " + bareNumber(l.Used.String()) + " ÷ " + bareNumber(unitMass(in.Unit).String()),
			Value:   decimals(exactCost, 6), Source: sources.GisslenCost, Tolerance: 1e-9 + 1e-6*used,
		}
		w.Steps = append(w.Steps, u, k)
		sum.Formula += "k_" + n + " + "
		sum.Numbers += decimals(exactCost, 6) + " + "
		sum.Tolerance += 1e-6
	}
	sum.Formula += "k_other"
	sum.Numbers += plainDecimal(in.Other)
	sum.Where = []working.Binding{{Symbol: "k_other", Meaning: "other costs", Value: in.Other.StringFixed(max(places, -in.Other.Exponent()))}}
	exact, _ := c.exact.Float64()
	per := working.Step{
		Name: "cost of a loaf", Symbol: "k", Formula: "K ÷ n",
		Where:   []working.Binding{{Symbol: "n", Meaning: "loaves made", Value: strconv.Itoa(in.Loaves)}},
		Numbers: decimals(exact, 6) + " ÷ " + strconv.Itoa(in.Loaves), Value: c.PerLoaf.StringFixed(places),
		Tolerance: half + 1e-6, Source: sources.GisslenCost,
		Note: "from the exact sum; rounded once",
	}
	w.Steps = append(w.Steps, sum, per)
	if in.Sold != in.Loaves {
		sold := per
		sold.Name, sold.Symbol = "cost of a loaf sold", "k_sold"
		sold.Where = []working.Binding{{Symbol: "n", Meaning: "loaves sold", Value: strconv.Itoa(in.Sold)}}
		sold.Numbers, sold.Value = decimals(exact, 6)+" ÷ "+strconv.Itoa(in.Sold), c.PerSold.StringFixed(places)
		w.Steps = append(w.Steps, sold)
	}
	return w
}

// plainDecimal prints a decimal without regard to the package's settings.
func plainDecimal(d decimal.Decimal) string { return d.StringFixed(max(0, -d.Exponent())) }

// ratText prints a fraction for a line of numbers.
func ratText(r *big.Rat) string { return r.FloatString(12) }
