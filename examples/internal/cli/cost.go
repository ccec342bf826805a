package cli

import (
	"strings"

	"example.org/maslin/dough"
	"example.org/maslin/dough/cost"
	"example.org/maslin/dough/quantity"
	"github.com/shopspring/decimal"
)

// costs asks what the ingredients of a batch cost, and those of a loaf.
type costs struct {
	bowl
	Sheet    cost.CostSheet     `flags:"Loaves Sold UnitRounding Places"`
	Rounding cost.MoneyRounding `flag:"rounding" words:"up,half up,half even"`
	Other    decimal.Decimal    `flag:"other"`
	Unit     string             `flag:"unit" words:"kilogram,gram,pound,ounce"`
	Prices   []cost.PackPrice   `flag:"price" pair:"Name=Pays/Pack" paths:"Lines=price"`
	Yields   []cost.UsablePart  `flag:"yield" pair:"Name=Of"`
}

func (q *costs) ask(c *call) error {
	batch, name, err := q.batch(c)
	if err != nil {
		return c.complain(err)
	}
	s := &q.Sheet
	s.Name, s.Other, s.Rounding = name, q.Other, q.Rounding
	if s.Unit = quantity.Kilogram; c.US {
		s.Unit = quantity.Pound
	}
	if q.Unit != "" {
		s.Unit = map[string]quantity.MassUnit{
			"kilogram": quantity.Kilogram, "gram": quantity.Gram, "pound": quantity.Pound, "ounce": quantity.Ounce,
		}[q.Unit]
	}
	// Zero is "not given" to the library, and an answer to a baker.
	c.zero("loaves", s.Loaves == 0, quantity.Tell("cli.want_1_to_1000000", "1 to 1000000"))
	c.zero("sold", s.Sold == 0, quantity.Tell("cli.want_1_to_loaves_made", "1 to the loaves made"))
	if !c.given("loaves") {
		s.Loaves = max(1, batch.Pieces())
	}
	if c.given("places") && s.Places < 0 {
		c.fault("places", quantity.Tell("cli.got_negative_number", "a negative number"),
			quantity.Tell("cli.want_0_to_6", "0 to 6"), quantity.ErrOutOfRange)
	} else if c.given("places") && s.Places == 0 {
		s.Places = -1
	}
	for _, l := range batch.Overall() {
		line := cost.CostLine{Name: l.Name, Used: l.Mass}
		if l.Kind == dough.KindWater || strings.EqualFold(l.Name, "water") {
			line.Pack = quantity.Kilograms(1) // free unless a price is given
		}
		s.Lines = append(s.Lines, line)
	}
	var wrong error
	if len(s.Lines) > 0 {
		*s, wrong = cost.Pricing{Sheet: *s, Prices: q.Prices, Yields: q.Yields}.Priced()
	}
	if wrong = c.complain(wrong); wrong != nil {
		return wrong
	}
	return c.tell(s.Cost())
}
