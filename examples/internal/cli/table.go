package cli

import (
	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/ferment"
)

// tableBulk asks how long bulk takes, by temperature and amount of leaven.
type tableBulk struct {
	_     struct{}          `usual:"temperatures=18C,20C,22C,24C,26C,28C; rise=75%; salt=2%; hydration=70%"`
	Table ferment.RiseTable `flags:"Temperatures Amounts Bulk.Rise Bulk.Salt Bulk.Hydration Bulk.WholeGrain"`
	_     struct{}          `paths:"Bulk.History=temperatures Bulk.Inoculation=amounts Bulk.Yeast.Amount=amounts"`
	Yeast ferment.YeastKind `flag:"yeast" words:"fresh,active dry,instant" form:"* yeast" paths:"Bulk.Yeast.Kind=yeast"`
	Curve ferment.Curve     `flag:"curve" paths:"Bulk.Law=curve Law=curve"`
}

func (q *tableBulk) ask(c *call) error {
	amounts := percents(5, 10, 15, 20, 30)
	if c.given("yeast") {
		amounts = percents(0.2, 0.5, 1, 1.5, 2)
	}
	if q.Table.Amounts == nil {
		q.Table.Amounts = amounts
	}
	q.Table.Bulk.Yeast.Kind = q.Yeast
	q.Table.Bulk.Law = lawWith(q.Curve, q.Yeast != ferment.NoYeast)
	return c.tell(q.Table.Times())
}

// tableWater asks how warm the water must be, by flour and room temperature.
type tableWater struct {
	_     struct{}          `usual:"dough=25C; mixer=hand"`
	_     struct{}          `usual:"flour=10C,15C,18C,20C,22C,25C,28C; room=15C,18C,20C,22C,25C,28C"`
	Table mixing.WaterTable `flags:"* Target=dough"`
}

func (q *tableWater) ask(c *call) error {
	if c.given("warming") {
		c.not(quantity.Tell("cli.with_warming_better", "--warming, which is better than a guide value"),
			"mixer")
	}
	return c.tell(q.Table.Water())
}

// lawWith is the gas balance, with a rival curve of growth when one is asked for.
func lawWith(rival ferment.Curve, ofYeast bool) ferment.Law {
	if ofYeast {
		return ferment.GasBalance().With(ferment.Rivals{Yeast: rival})
	}
	return ferment.GasBalance().With(ferment.Rivals{Levain: rival})
}

func celsius(values ...float64) (out []quantity.Temperature) {
	for _, v := range values {
		out = append(out, quantity.Celsius(v))
	}
	return out
}

func percents(values ...float64) (out []quantity.Percent) {
	for _, v := range values {
		out = append(out, quantity.NewPercent(v))
	}
	return out
}
