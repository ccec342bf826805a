package cli

import (
	"fmt"
	"strconv"
	"strings"

	"example.org/maslin/dough/cost"
	"example.org/maslin/dough/quantity"
)

var unitNames = map[quantity.MassUnit]string{quantity.Kilogram: "kilogram", quantity.Gram: "gram", quantity.Pound: "pound", quantity.Ounce: "ounce"}

func costPage(p *page, u units, name string, sheet cost.CostSheet, c cost.Costing) {
	places := int32(sheet.Places)
	switch {
	case places == 0:
		places = 2
	case places < 0:
		places = 0
	}
	show := func(d interface{ StringFixed(int32) string }) string { return d.StringFixed(places) }
	if name != "" {
		name += ": "
	}
	p.para(0, fmt.Sprintf("%s%s for %s, %s each", name, show(c.Batch), count(sheet.Loaves, "loaf", "loaves"), show(c.PerLoaf)))
	p.line("")
	rows := [][]string{{"used", "cost", "a " + unitNames[sheet.Unit], ""}}
	for i, l := range c.Lines {
		bought := printable(l.Name)
		if l.Bought != sheet.Lines[i].Used {
			bought += ", of which " + u.mass(tenthGram(l.Bought)) + " is bought"
		}
		rows = append(rows, []string{u.mass(tenthGram(sheet.Lines[i].Used)), show(l.Cost), unitPrice(l), bought})
	}
	if sheet.Other.Sign() > 0 {
		rows = append(rows, []string{"", sheet.Other.StringFixed(max(places, -sheet.Other.Exponent())), "", "other"})
	}
	p.rows(2, "rrrl", append(rows, []string{"", show(c.Batch), "", "together"}))
	p.line("")
	if sheet.Sold > 0 && sheet.Sold < sheet.Loaves {
		p.para(2, "each of the "+strconv.Itoa(sheet.Sold)+" that are sold has to bring "+show(c.PerSold)+" to pay for them")
	}
	p.para(2, "a "+unitNames[sheet.Unit]+" of what goes in costs "+show(perUnit(sheet, c)))
	p.para(2, "materials only: work, rent and the oven are not in it unless --other says so; each amount is rounded once, so that the lines may add up to a little more or less")
}

// perUnit is the cost of a unit of all that goes in.
func perUnit(sheet cost.CostSheet, c cost.Costing) interface{ StringFixed(int32) string } {
	var all quantity.Mass
	for _, l := range sheet.Lines {
		all = all.Add(l.Used)
	}
	cost, err := cost.UnitCost(cost.UnitPrice{Price: c.Batch, Pack: all, Unit: sheet.Unit, Rounding: cost.MoneyHalfUp, Places: sheet.Places})
	if err != nil || sheet.Unit == quantity.Kilogram {
		return c.PerKilogram
	}
	return cost
}

// unitPrice shows the price of a unit to two to four places.
func unitPrice(l cost.CostedLine) string {
	text := l.UnitCost.StringFixedBank(4)
	for range 2 {
		text = strings.TrimSuffix(text, "0")
	}
	return text
}

type costAnswer struct {
	Format  string         `json:"format"`
	Name    string         `json:"name,omitempty"`
	Lines   []costLineData `json:"lines"`
	Other   string         `json:"other"`
	Loaves  int            `json:"loaves"`
	Batch   string         `json:"batch"`
	Loaf    string         `json:"per_loaf"`
	Sold    string         `json:"per_sold"`
	PerKilo string         `json:"per_kilogram"`
	Unit    string         `json:"unit"`
}

type costLineData struct {
	Name     string        `json:"name"`
	Used     quantity.Mass `json:"used"`
	Bought   quantity.Mass `json:"bought"`
	UnitCost string        `json:"unit_cost"`
	Cost     string        `json:"cost"`
}

func costData(name string, sheet cost.CostSheet, c cost.Costing) costAnswer {
	out := costAnswer{
		Format: "maslin cost 1", Name: name, Lines: []costLineData{}, Other: sheet.Other.String(), Loaves: sheet.Loaves,
		Batch: c.Batch.String(), Loaf: c.PerLoaf.String(), Sold: c.PerSold.String(), PerKilo: c.PerKilogram.String(), Unit: unitNames[sheet.Unit],
	}
	for i, l := range c.Lines {
		out.Lines = append(out.Lines, costLineData{l.Name, sheet.Lines[i].Used, l.Bought, l.UnitCost.String(), l.Cost.String()})
	}
	return out
}
