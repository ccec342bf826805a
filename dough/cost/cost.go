package cost

import (
	"math/big"
	"strconv"

	"example.org/maslin/dough/quantity"

	"github.com/shopspring/decimal"
)

// CostLine is one ingredient with its price.
type CostLine struct {
	Name string        `json:"name"`
	Used quantity.Mass `json:"used"` // in the batch, ready to use
	// Price is what a pack costs and Pack its weight: 25 kg of flour at 20.00.
	Price decimal.Decimal `json:"price"`
	Pack  quantity.Mass   `json:"pack"`
	// Yield is the usable part of what is bought; zero means 100 %, as for flour and sugar.
	Yield quantity.Percent `json:"yield,omitzero"`
}

// CostSheet is a batch with its prices, the input of [CostSheet.Cost].
type CostSheet struct {
	Name  string     `json:"name,omitzero"` // of the bread
	Lines []CostLine `json:"lines"`
	// Other is what else the batch costs: fuel, packing.
	Other decimal.Decimal `json:"other,omitzero"`
	// Loaves is how many the batch makes, and Sold how many of them are sold (zero: all of them).
	Loaves int `json:"loaves"`
	Sold   int `json:"sold,omitzero"`

	// Unit is what unit costs are for: a kilogram, a pound.
	Unit quantity.MassUnit `json:"unit"`
	// UnitRounding is done to the cost of a unit before it is used: round up is a trade habit;
	// exact is the default.
	UnitRounding MoneyRounding `json:"unit_rounding"`
	// Rounding is done once to each amount that is handed out; exact means half up, since money has
	// to end somewhere.
	Rounding MoneyRounding `json:"rounding"`
	// Places is the decimals of the currency; zero means 2, and −1 means none.
	Places int `json:"places,omitzero"`
}

// CostedLine is one ingredient costed.
type CostedLine struct {
	Name string        `json:"name"`
	Used quantity.Mass `json:"used"`
	// UnitCost is for one unit as used, the yield counted; rounded by UnitRounding, or to six
	// places for show when exact.
	UnitCost decimal.Decimal `json:"unit_cost"`
	// Cost is for the batch, rounded to the places.
	Cost decimal.Decimal `json:"cost"`
	// Bought is what has to be bought for it: used ÷ yield.
	Bought quantity.Mass `json:"bought"`
}

// Costing is the answer of [CostSheet.Cost].
type Costing struct {
	answer

	Name  string          `json:"name,omitzero"`
	Lines []CostedLine    `json:"lines"`
	Other decimal.Decimal `json:"other"`
	// Batch is the exact sum of all lines and the rest, rounded once; the printed lines may add up
	// to a cent more or less.
	Batch decimal.Decimal `json:"batch"`
	// PerLoaf is the batch over the loaves made, PerSold over those sold: the better figure when
	// some are not.
	Loaves  int             `json:"loaves"`
	Sold    int             `json:"sold"`
	PerLoaf decimal.Decimal `json:"per_loaf"`
	PerSold decimal.Decimal `json:"per_sold"`
	// PerUnit is the cost of a unit of all that goes in.
	Unit    quantity.MassUnit `json:"unit"`
	PerUnit decimal.Decimal   `json:"per_unit"`

	in    CostSheet
	exact *big.Rat
	units []*big.Rat // exact unit costs as used
	costs []*big.Rat // exact costs of the lines
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
func (in CostSheet) Cost() (Costing, error) {
	var p quantity.Problems
	given := in
	in = in.checked(&p)
	if err := p.ErrFor(given); err != nil {
		return Costing{}, err
	}
	c := Costing{
		Name: in.Name, Other: in.Other, Loaves: in.Loaves, Sold: in.Sold, Unit: in.Unit, in: in, exact: rat(in.Other),
	}
	places := int32(in.Places)
	round := in.Rounding
	if round == MoneyExact {
		round = MoneyHalfUp
	}
	unit := unitRat(in.Unit)
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
		c.units, c.costs = append(c.units, u), append(c.costs, cost)
		c.Lines = append(c.Lines, CostedLine{
			Name: l.Name, Used: l.Used, UnitCost: shown, Cost: roundMoney(cost, places, round), Bought: l.Used.Over(l.Yield),
		})
		all = all.Add(l.Used)
	}
	c.Batch = roundMoney(c.exact, places, round)
	c.PerLoaf = roundMoney(new(big.Rat).Quo(c.exact, big.NewRat(int64(in.Loaves), 1)), places, round)
	c.PerSold = roundMoney(new(big.Rat).Quo(c.exact, big.NewRat(int64(in.Sold), 1)), places, round)
	if mass := massRat(all); mass.Sign() > 0 {
		perUnit := new(big.Rat).Quo(c.exact, mass)
		c.PerUnit = roundMoney(perUnit.Mul(perUnit, unit), places, round)
	}
	return c, nil
}

func (in CostSheet) checked(p *quantity.Problems) CostSheet {
	if len(in.Lines) == 0 {
		p.Required("Lines", quantity.Tell("cost.want_at_least_one_ingredient_price",
			"at least one ingredient with its price"))
	}
	if len(in.Lines) > maxLines {
		p.Add("Lines", quantity.Tell("cost.got_lines", "%d lines", len(in.Lines)),
			quantity.Tell("cost.want_1_to", "1 to %d", maxLines), quantity.ErrOutOfRange)
		return in
	}
	in.Lines = append([]CostLine(nil), in.Lines...)
	for i := range in.Lines {
		l := &in.Lines[i]
		path := at("Lines", i)
		quantity.Check(p, path+".Used", l.Used, quantity.Mass{}, mostDough)
		checkMoney(p, path+".Price", l.Price)
		if l.Pack.IsZero() {
			p.Required(path+".Pack", quantity.Tell("cost.want_weight_pack_price",
				"the weight of the pack that the price is for"))
		} else {
			quantity.Check(p, path+".Pack", l.Pack, quantity.Micrograms(1000), mostDough)
		}
		if l.Yield.IsZero() {
			l.Yield = wholeFlour
		}
		if quantity.Check(p, path+".Yield", l.Yield, quantity.MustPercent("1 %"), wholeFlour) && l.Used.IsValid() &&
			!l.Used.Over(l.Yield).IsValid() {
			p.Add(path+".Used", l.Used, tooMuchToBuy(), quantity.ErrOutOfRange)
		}
	}
	checkMoney(p, "Other", in.Other)
	loaves := p.Int("Loaves", in.Loaves, 1, 1_000_000)
	if in.Sold == 0 {
		in.Sold = in.Loaves
	}
	if loaves && p.Int("Sold", in.Sold, 1, 1_000_000) && in.Sold > in.Loaves {
		p.Add("Sold", in.Sold,
			quantity.Tell("cost.want_at_most_loaves_made", "at most the loaves made, %d", in.Loaves),
			quantity.ErrInconsistent)
	}
	if in.Unit < quantity.Gram || in.Unit > quantity.Pound {
		p.Add("Unit", quantity.Tell("cost.got_unknown_unit", "an unknown unit"),
			quantity.Tell("cost.want_gram_kilogram_milligram_ounce_or",
				"gram, kilogram, milligram, ounce or pound"), quantity.ErrUnit)
	}
	roundings.Check(p, "UnitRounding", in.UnitRounding)
	roundings.Check(p, "Rounding", in.Rounding)
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

const (
	one      = 100_000_000 // 100 % in millionths of a point
	maxLines = 200
)

var (
	wholeFlour = quantity.MustPercent("100 %")
	mostDough  = quantity.Kilograms(100_000)
)

// at is the path of one item of a list.
func at(list string, i int) string { return list + "[" + strconv.Itoa(i) + "]" }
