package cost

import (
	"strings"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/nearest"

	"github.com/shopspring/decimal"
)

// PackPrice is what a pack of an ingredient costs.
type PackPrice struct {
	Name string          `json:"name"`
	Pays decimal.Decimal `json:"pays"`
	Pack quantity.Mass   `json:"pack"`
}

// UsablePart is the part of what is bought of an ingredient that is used.
type UsablePart struct {
	Name string           `json:"name"`
	Of   quantity.Percent `json:"of"`
}

// Pricing puts prices, as they are told of ingredients by name, to the lines of a sheet.
type Pricing struct {
	// Sheet has what is used on its lines; a line with a pack and no price, such as water, costs nothing unless it is
	// priced.
	Sheet  CostSheet    `json:"sheet"`
	Prices []PackPrice  `json:"prices"`
	Yields []UsablePart `json:"yields,omitempty"`
}

// Priced answers: which line has which price? Lines of one name, in whatever case, become one. Each price and each
// yield has to find its line, and each line its price.
//
// Errors: ErrInconsistent for a name that no line has, with the closest one, and for a second price; ErrOutOfRange for
// a pack of nothing and a yield of 0 %; ErrRequired for lines without a price. Whether a price is one is for
// [CostSheet.Cost].
func (in Pricing) Priced() (CostSheet, error) {
	var p quantity.Problems
	out := in.Sheet
	out.Lines = nil
	var names []string
	lines, priced := map[string]int{}, map[int]bool{}
	for _, l := range in.Sheet.Lines {
		key := strings.ToLower(l.Name)
		if i, ok := lines[key]; ok {
			out.Lines[i].Used = out.Lines[i].Used.Add(l.Used)
			continue
		}
		lines[key] = len(out.Lines)
		names, out.Lines = append(names, l.Name), append(out.Lines, l)
	}
	find := func(path, name string) (int, bool) {
		i, ok := lines[strings.ToLower(name)]
		if !ok {
			want := quantity.Tell("cost.want_one_of", "one of %s", strings.Join(names, ", "))
			if near := nearest.Name(name, names); near != "" {
				want = quantity.Tell("cost.want_did_you_mean", "%v; did you mean %s?", want, near)
			}
			p.Add(path, quantity.Excerpt(name), want, quantity.ErrInconsistent)
		}
		return i, ok
	}
	for n, one := range in.Prices {
		path := at("Prices", n)
		i, ok := find(path+".Name", one.Name)
		switch {
		case one.Pack.Sign() <= 0:
			p.Add(path+".Pack", one.Pack, quantity.Tell("cost.want_pack", "a pack above 0 g"), quantity.ErrOutOfRange)
		case ok && priced[i]:
			p.Add(path+".Name", quantity.Tell("cost.got_second_price", "a second price of %s", quantity.Excerpt(one.Name)),
				quantity.Tell("cost.want_one_price_each", "one price for each ingredient"), quantity.ErrInconsistent)
		case ok:
			out.Lines[i].Price, out.Lines[i].Pack = one.Pays, one.Pack
		}
		priced[i] = priced[i] || ok
	}
	for n, y := range in.Yields {
		path := at("Yields", n)
		if i, ok := find(path+".Name", y.Name); ok && y.Of.IsZero() {
			p.Add(path+".Of", y.Of, quantity.Tell("cost.want_yield", "1 %% to 100 %%"), quantity.ErrOutOfRange)
		} else if ok {
			out.Lines[i].Yield = y.Of
		}
	}
	var missing []string
	for i, l := range out.Lines {
		if l.Pack.IsZero() && !priced[i] {
			missing = append(missing, l.Name)
		}
	}
	if len(missing) > 0 {
		p.Add("Prices", quantity.Tell("cost.got_no_price", "no price of %s", strings.Join(missing, ", ")),
			quantity.Tell("cost.want_price_each", "what a pack of each costs and weighs, such as 20 for 25 kg of %s",
				missing[0]),
			quantity.ErrRequired)
	}
	return out, p.ErrFor(in)
}
