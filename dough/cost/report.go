package cost

import (
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"

	"github.com/shopspring/decimal"
)

// String is the headline of the report.
func (c Costing) String() string { return c.Report().Headline.String() }

// Report tells what the batch and a loaf cost, ingredient by ingredient.
func (c Costing) Report() report.Report {
	if c.exact == nil {
		return report.Report{Headline: working.Tell("cost.none", "no cost")}
	}
	batch, loaf := money(c.Batch, c.in.Places), money(c.PerLoaf, c.in.Places)
	r := report.Report{
		Headline: working.Tell("cost.headline", "%v for %d {2|loaf|loaves}, %v each", batch, c.Loaves, loaf),
		Sections: []report.Section{{Key: "lines", Blocks: []report.Block{c.table(), c.notes()}}},
		Sources:  []working.Source{sources.GisslenCost, sources.YieldTest},
	}
	if c.Name != "" {
		r.Headline = working.Tell("cost.headline_named", "%s: %v for %d {3|loaf|loaves}, %v each", c.Name, batch,
			c.Loaves, loaf)
	}
	return r
}

func (c Costing) table() report.Grid {
	shown := func(d decimal.Decimal) report.Cell { return report.Of(money(d, c.in.Places)) }
	t := report.Grid{Key: "lines", Columns: []report.GridColumn{
		{Key: "used", Title: working.Tell("cost.column_used", "used"), Right: true},
		{Key: "cost", Title: working.Tell("cost.column_cost", "cost"), Right: true},
		{Key: "unit_cost", Title: working.Tell("cost.column_unit", "1 %v", c.Unit), Right: true},
		{Key: "item"},
		{Key: "bought"},
	}}
	for _, l := range c.Lines {
		row := []report.Cell{
			report.Rounded(l.Used, 1),
			shown(l.Cost),
			report.Of(unitMoney(l.UnitCost)),
			report.Of(l.Name),
			{},
		}
		if l.Bought != l.Used {
			rounded, _ := l.Bought.RoundTo(tenth())
			row[4] = report.Of(working.Tell("cost.bought", "%v is bought", rounded))
		}
		t.Rows = append(t.Rows, row)
	}
	if c.Other.Sign() > 0 {
		t.Rows = append(t.Rows,
			[]report.Cell{{}, shown(c.Other), {}, report.Of(working.Tell("cost.other", "other")), {}})
	}
	t.Total = []report.Cell{{}, shown(c.Batch), {}, report.Of(working.Tell("cost.together", "together")), {}}
	return t
}

func (c Costing) notes() report.List {
	var out report.List
	if c.Sold < c.Loaves {
		out = append(
			out,
			working.Tell("cost.sold", "each of the %d that {1|is|are} sold has to bring %v to pay for them",
				c.Sold, money(c.PerSold, c.in.Places)),
		)
	}
	return append(out,
		working.Tell("cost.per_unit", "1 %v of what goes in costs %v", c.Unit, money(c.PerUnit, c.in.Places)),
		working.Tell("cost.materials",
			"materials only: work, rent and the oven are not in it unless they were added; each amount is "+
				"rounded once, so that the lines may add up to a little more or less"))
}

// unitMoney shows the price of a unit to two to four places.
func unitMoney(d decimal.Decimal) working.Message {
	switch d = d.RoundBank(4); {
	case d.Equal(d.RoundBank(2)):
		return money(d, 2)
	case d.Equal(d.RoundBank(3)):
		return money(d, 3)
	}
	return money(d, 4)
}

// money is an amount of money with the decimals of its currency.
func money(d decimal.Decimal, places int) working.Message {
	x := d.InexactFloat64()
	switch places {
	case 0:
		return working.Tell("cost.money_0", "%.0f", x)
	case 1:
		return working.Tell("cost.money_1", "%.1f", x)
	case 2:
		return working.Tell("cost.money_2", "%.2f", x)
	case 3:
		return working.Tell("cost.money_3", "%.3f", x)
	case 4:
		return working.Tell("cost.money_4", "%.4f", x)
	case 5:
		return working.Tell("cost.money_5", "%.5f", x)
	}
	return working.Tell("cost.money_6", "%.6f", x)
}
