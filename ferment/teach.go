package ferment

import (
	"fmt"

	"example.org/maslin/dough/quantity"
)

// CurveTable puts rate curves side by side at some temperatures: for teaching.
type CurveTable struct {
	Curves       []Curve                `json:"curves"`
	Temperatures []quantity.Temperature `json:"temperatures"`
}

// CurveRow is one temperature of a [CurveTable], with a value for each curve.
type CurveRow struct {
	Temperature quantity.Temperature `json:"temperature"`
	Rates       []float64            `json:"rates"`     // 1/h
	Doublings   []float64            `json:"doublings"` // hours; 0 where the curve does not grow
	InRange     []bool               `json:"in_range"`  // the curve may be used there
}

// CurveRates are the rates of a [CurveTable].
type CurveRates struct {
	Table  CurveTable `json:"table"`
	Curves []About    `json:"about"`
	Rows   []CurveRow `json:"rows"`
}

// Rates answers: how fast is each curve at each of these temperatures? Errors: ErrRequired for empty lists, curves or
// temperatures that are not given; ErrOutOfRange for temperatures outside −25 to 60 °C. Source: the curves' own.
func (t CurveTable) Rates() (CurveRates, error) {
	var p problems
	p.listed("Curves", len(t.Curves), 100, quantity.Tell("ferment.want_1_to_100_curves", "1 to 100 curves"))
	for i, c := range t.Curves {
		if c.IsZero() {
			p.Required(fmt.Sprintf("Curves[%d]", i), quantity.Tell("ferment.want_curve", "a curve"))
		}
	}
	p.listed("Temperatures", len(t.Temperatures), 10_000,
		quantity.Tell("ferment.want_1_to_10_000_temperatures", "1 to 10,000 temperatures"))
	for i, c := range t.Temperatures {
		quantity.Check(&p.Problems, fmt.Sprintf("Temperatures[%d]", i), c, lowestTemperature, highestTemperature)
	}
	if err := p.ErrFor(t); err != nil {
		return CurveRates{}, err
	}
	out := CurveRates{Table: t}
	for _, c := range t.Curves {
		out.Curves = append(out.Curves, c.About())
	}
	rows := make([]CurveRow, len(t.Temperatures))
	for i, at := range t.Temperatures {
		r := CurveRow{Temperature: at}
		for _, c := range t.Curves {
			x, about := at.Celsius(), c.About()
			d, _ := c.DoublingTime(at)
			r.Rates = append(r.Rates, c.Rate(x))
			r.Doublings = append(r.Doublings, d)
			r.InRange = append(r.InRange, x >= about.Low && x <= about.High)
		}
		rows[i] = r
	}
	out.Rows = rows
	return out, nil
}
