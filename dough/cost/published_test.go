package cost_test

import (
	"testing"

	"example.org/maslin/dough/cost"
	"example.org/maslin/internal/published"

	"github.com/shopspring/decimal"
)

func TestPublishedFigures(t *testing.T) {
	published.Check(t, "testdata/published.csv", 15, map[string]published.Finder{
		"unit cost": findUnitCost,
		"cost":      findCost,
		"usable": func(in *published.Inputs) (float64, error) {
			p, err := cost.Trimming{Usable: in.Mass("usable"), Bought: in.Mass("bought")}.UsableYield()
			return p.Points(), err
		},
		"buy": func(in *published.Inputs) (float64, error) {
			m, err := cost.Trimming{Usable: in.Mass("usable"), Yield: in.Percent("yield")}.ToBuy()
			return m.In(in.Unit("unit")), err
		},
	})
}

func money(in *published.Inputs, key string) decimal.Decimal {
	return decimal.RequireFromString(in.Text(key))
}

func findUnitCost(in *published.Inputs) (float64, error) {
	line := cost.CostLine{Price: money(in, "price"), Pack: in.Mass("pack")}
	if in.Has("yield") {
		line.Yield = in.Percent("yield")
	}
	sheet := cost.CostSheet{Lines: []cost.CostLine{line}, Loaves: 1, Unit: in.Unit("unit")}
	if in.Has("round") {
		in.Word("round", &sheet.UnitRounding)
	}
	c, err := sheet.Cost()
	if err != nil {
		return 0, err
	}
	return c.Lines[0].UnitCost.InexactFloat64(), nil
}

func findCost(in *published.Inputs) (float64, error) {
	line := cost.CostLine{Used: in.Mass("used"), Price: money(in, "price"), Pack: in.Mass("pack")}
	if in.Has("yield") {
		line.Yield = in.Percent("yield")
	}
	sheet := cost.CostSheet{Lines: []cost.CostLine{line}, Loaves: 1, Unit: in.Unit("unit"), Places: 2}
	if in.Has("round") {
		in.Word("round", &sheet.UnitRounding)
	}
	c, err := sheet.Cost()
	return c.Batch.InexactFloat64(), err
}
