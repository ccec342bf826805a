package mixing

import (
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// LearnedWater is the answer of [Learned.WaterFor].
type LearnedWater struct {
	Water quantity.Temperature `json:"water,omitzero"`
	// Feasible reports whether it lies between 1 °C and 110 °F.
	Feasible bool `json:"feasible"`
	// Prediction is the dough with that water, as a range about the target.
	Prediction Prediction `json:"prediction"`

	at0, slope float64 // dough with water of 0 °C, and degrees of dough for each degree of water
	target     quantity.Temperature
}

// WaterFor answers how warm the water of a planned batch must be for the dough to leave the mixer at the
// target, by what was learned of it, and how surely it will.
//
//	T_water = (T − T₍₀₎) ÷ w
//
// T₍₀₎ is the dough predicted with water of 0 °C and w how much the dough moves for each degree of
// water; the model is linear. The temperatures of the batch's water are ignored. Errors as in
// [Learned.Predict]; ErrInconsistent when the batch has no water, or it would have to be below
// absolute zero. Source: see [Log.Learn].
func (l Learned) WaterFor(b Logged, target quantity.Temperature, probability quantity.Percent) (LearnedWater, error) {
	var p quantity.Problems
	quantity.Check(&p, "target", target, coldestDough, hottestDough)
	at := func(t quantity.Temperature) (Logged, bool) {
		c := b
		c.Ingredients = append([]Portion(nil), b.Ingredients...)
		any := false
		for i := range c.Ingredients {
			if c.Ingredients[i].Substance == Water {
				c.Ingredients[i].Temperature = t
				any = any || c.Ingredients[i].Mass.Sign() > 0
			}
		}
		return c, any
	}
	cold, any := at(coldestDough)
	zero, err := l.Predict(cold, probability)
	p.Join("", err)
	if err == nil && !any {
		p.Add("Batch.Ingredients", "no water", "water, whose temperature is asked for", quantity.ErrInconsistent)
	}
	if err := p.Err(); err != nil {
		return LearnedWater{}, err
	}
	// The water's share of the heat capacities of dough and bowl.
	_, all := cold.meeting(l.in.Hydration)
	water := 0.0
	for _, i := range cold.Ingredients {
		if i.Substance == Water {
			water += i.Mass.Kilograms() * float64(i.heat())
		}
	}
	r := LearnedWater{at0: zero.likely, slope: water / all / (1 + l.theta[l.speeds()]), target: target}
	r.Water = quantity.Celsius((target.Celsius() - r.at0) / r.slope)
	if !r.Water.IsValid() {
		p.Add("Batch.Ingredients", "too little water to move the dough", "more water", quantity.ErrInconsistent)
		return LearnedWater{}, p.Err()
	}
	r.Feasible = r.Water.Compare(defaultColdest()) >= 0 && r.Water.Compare(defaultWarmest()) <= 0
	planned, _ := at(r.Water)
	r.Prediction = l.predict(planned, probability, zero.quantile)
	return r, nil
}

// String says the water and the range.
func (r LearnedWater) String() string {
	if r.Water.IsZero() {
		return "no water"
	}
	text := "water at " + r.Water.Text(quantity.CelsiusScale, 1)
	if !r.Feasible {
		text += ", which cannot be poured"
	}
	return text + "; " + r.Prediction.String()
}

// Working derives the water and the prediction.
func (r LearnedWater) Working() working.Working {
	w := working.Working{Title: "Water for a planned batch"}
	if r.Water.IsZero() {
		return w
	}
	w.Steps = []working.Step{{
		Name: "water temperature", Symbol: "T_water", Formula: "(T_target − T_0) ÷ w",
		Where: []working.Binding{
			bind("T_target", "dough temperature wanted", fixed(r.target.Celsius(), 4)+" °C"),
			bind("T_0", "dough with water of 0 °C", fixed(r.at0, 5)+" °C"),
			bind("w", "degrees of dough for each degree of water", fixed(r.slope, 7)+" (no unit)"),
		},
		Numbers: "(" + fixed(r.target.Celsius(), 4) + " − " + value(r.at0, 5) +
			") ÷ " + fixed(r.slope, 7), Value: fixed(r.Water.Celsius(), 2) + " °C",
		Tolerance: 2e-4/r.slope + 1e-7*abs(r.Water.Celsius())/r.slope, Source: sources.HeatBalance,
	}}
	return w.Append(r.Prediction.Working())
}
