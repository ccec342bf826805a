package cli

import (
	"strings"

	"example.org/maslin/dough"
	"example.org/maslin/dough/cost"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/nearest"
	"example.org/maslin/internal/textpage"
	"github.com/shopspring/decimal"
)

// costs asks what the ingredients of a batch cost, and those of a loaf.
type costs struct {
	bowl
	Sheet    cost.CostSheet     `flags:"Loaves Sold UnitRounding Places"`
	Rounding cost.MoneyRounding `flag:"rounding" words:"up,half up,half even"`
	Other    money              `flag:"other"`
	Unit     string             `flag:"unit" words:"kilogram,gram,pound,ounce"`
	Prices   []price            `flag:"price" pair:"Name=Pays/Pack" paths:"Lines=price"`
	Yields   []usable           `flag:"yield" pair:"Name=Of"`
}

func newCost() *costs { return &costs{} }

// A price is what a pack of an ingredient costs.
type price struct {
	Name string
	Pays money
	Pack pack
}

// usable is the part of an ingredient that is used of what is bought.
type usable struct {
	Name string
	Of   quantity.Percent
}

type money struct{ decimal.Decimal }

// UnmarshalText reads an amount without its currency.
func (m *money) UnmarshalText(text []byte) (err error) {
	m.Decimal, err = cost.ParseMoney(string(text))
	return err
}

type pack struct{ quantity.Mass }

// UnmarshalText reads "25 kg"; a unit alone, as in "0.90/kg", is a pack of one.
func (p *pack) UnmarshalText(text []byte) error {
	if strings.Trim(string(text), "abcdefghijklmnopqrstuvwxyz") == "" {
		text = append([]byte("1 "), text...)
	}
	err := p.Mass.UnmarshalText(text)
	if err == nil && p.Mass.Sign() <= 0 {
		err = &quantity.InputError{Got: quantity.Excerpt(string(text)),
			Want: quantity.Tell("cli.want_pack_above_0_g", "a pack above 0 g"), Err: quantity.ErrOutOfRange}
	}
	return err
}

func (q *costs) ask(c *call) error {
	batch, name, err := q.batch(c)
	if err != nil {
		return c.complain(err)
	}
	s := &q.Sheet
	s.Name, s.Other, s.Rounding = name, q.Other.Decimal, q.Rounding
	if s.Unit = quantity.Kilogram; c.US {
		s.Unit = quantity.Pound
	}
	if q.Unit != "" {
		s.Unit = map[string]quantity.MassUnit{
			"kilogram": quantity.Kilogram, "gram": quantity.Gram, "pound": quantity.Pound, "ounce": quantity.Ounce,
		}[q.Unit]
	}
	// Zero is "not given" to the library, and an answer to a baker.
	if !c.given("loaves") {
		s.Loaves = max(1, batch.Pieces())
	} else if s.Loaves == 0 {
		c.fault("loaves", "0", quantity.Tell("cli.want_1_to_1000000", "1 to 1000000"), quantity.ErrOutOfRange)
	}
	if c.given("sold") && s.Sold == 0 {
		c.fault("sold", "0", quantity.Tell("cli.want_1_to_loaves_made", "1 to the loaves made"), quantity.ErrOutOfRange)
	}
	if c.given("places") && s.Places < 0 {
		c.fault("places", quantity.Tell("cli.got_negative_number", "a negative number"),
			quantity.Tell("cli.want_0_to_6", "0 to 6"), quantity.ErrOutOfRange)
	} else if c.given("places") && s.Places == 0 {
		s.Places = -1
	}
	if len(batch.Overall()) > 0 {
		s.Lines = q.lines(c, batch)
	}
	if wrong := c.complain(nil); wrong != nil {
		return wrong
	}
	return c.tell(s.Cost())
}

// lines puts prices to the ingredients; every price and yield has to find its own.
func (q *costs) lines(c *call, b dough.Batch) []cost.CostLine {
	var lines []cost.CostLine
	var names, missing []string
	at, priced := map[string]int{}, map[int]bool{}
	for _, l := range b.Overall() {
		key := strings.ToLower(l.Name)
		if i, ok := at[key]; ok {
			lines[i].Used = lines[i].Used.Add(l.Mass)
			continue
		}
		at[key] = len(lines)
		names = append(names, l.Name)
		line := cost.CostLine{Name: l.Name, Used: l.Mass}
		if l.Kind == dough.KindWater || strings.EqualFold(l.Name, "water") {
			line.Pack = quantity.Kilograms(1) // free unless a price is given
		}
		lines = append(lines, line)
	}
	find := func(flag, name string) (int, bool) {
		i, ok := at[strings.ToLower(name)]
		if !ok {
			want := quantity.Tell("cli.want_one", "one of %s", textpage.Printable(strings.Join(names, ", ")))
			if near := nearest.Name(name, names); near != "" {
				want = quantity.Tell("cli.want_did_you_mean", "%v; did you mean %s?", want, textpage.Printable(near))
			}
			c.fault(flag, quantity.Excerpt(name), want, quantity.ErrInconsistent)
		}
		return i, ok
	}
	for _, one := range q.Prices {
		switch i, ok := find("price", one.Name); {
		case ok && priced[i]:
			c.fault("price", quantity.Tell("cli.got_second_price", "a second price of %s", quantity.Excerpt(one.Name)),
				quantity.Tell("cli.want_one_price_each_ingredient", "one price for each ingredient"), quantity.ErrInconsistent)
		case ok:
			priced[i] = true
			lines[i].Price, lines[i].Pack = one.Pays.Decimal, one.Pack.Mass
		}
	}
	for _, y := range q.Yields {
		if i, ok := find("yield", y.Name); ok && y.Of.IsZero() {
			c.fault("yield", "0 %", quantity.Tell("cli.want_1_percent_to_100_percent", "1 %% to 100 %%"), quantity.ErrOutOfRange)
		} else if ok {
			lines[i].Yield = y.Of
		}
	}
	for i, l := range lines {
		if l.Pack.IsZero() && !priced[i] {
			missing = append(missing, textpage.Printable(l.Name))
		}
	}
	if len(missing) > 0 {
		c.fault("price", quantity.Tell("cli.got_no_price", "no price of %s", strings.Join(missing, ", ")),
			quantity.Tell("cli.want_price_each_ingredient_20_25kg", `a price of each ingredient, such as "%s=20/25kg"`,
				missing[0]), quantity.ErrRequired)
	}
	return lines
}
