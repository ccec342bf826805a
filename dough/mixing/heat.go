package mixing

import "example.org/maslin/dough/quantity"

// SpecificHeat is the heat that warms a kilogram by a kelvin, in kJ/(kg·K).
type SpecificHeat float64

// HeatCapacity is the heat that warms a thing by a kelvin, in kJ/K.
type HeatCapacity float64

// SpecificEnergy is heat or work for each kilogram, in kJ/kg.
type SpecificEnergy float64

// WattHoursPerKilogram returns x Wh/kg: 1 Wh = 3.6 kJ. 11 Wh/kg is the work of high-speed mixing.
func WattHoursPerKilogram(x float64) SpecificEnergy { return SpecificEnergy(x * 3.6) }

// BTUPerPound returns x BTU/lb: 2.326 kJ/kg exactly (international table BTU).
func BTUPerPound(x float64) SpecificEnergy { return SpecificEnergy(x * 2.326) }

// Warming answers how much the energy warms a dough when none is lost: d = e ÷ c. Energy within ±1000 kJ/kg, specific
// heat 0.1 to 6 kJ/(kg·K). Errors: ErrOutOfRange. Source: definition of the specific heat.
func (e SpecificEnergy) Warming(c SpecificHeat) (quantity.TemperatureDelta, error) {
	var p quantity.Problems
	p.Float("energy", float64(e), -1000, 1000, "kJ/kg")
	p.Float("c", float64(c), 0.1, 6, "kJ/(kg·K)")
	if err := p.ErrFor(e); err != nil {
		return quantity.TemperatureDelta{}, err
	}
	return quantity.DeltaCelsius(float64(e) / float64(c)), nil
}

// of is the energy for a mass, in kJ.
func (e SpecificEnergy) of(m quantity.Mass) float64 { return float64(e) * m.Kilograms() }

// Motor is a machine at work on a dough.
type Motor struct {
	// Watts is the power drawn beyond that of the empty machine, and Share the part of it that ends in the
	// dough; about half for a household machine.
	Watts float64          `json:"watts"`
	Share quantity.Percent `json:"share"`
	Time  quantity.Elapsed `json:"time"`
	Dough quantity.Mass    `json:"dough"`
}

// Work answers how much work a motor puts into each kilogram of dough.
//
//	e = η · P · t ÷ m
//
// P is the power in kW, η the share of it that ends in the dough, t the time in seconds, m the dough in kg.
// Watts 0 to 100,000, share 0 to 100 %, time above 0 to 4 h, dough 1 g to 10 t. Exact; the share is seldom
// known better than by half. Errors: ErrOutOfRange. Source: definition of power.
func (m Motor) Work() (SpecificEnergy, error) {
	var p quantity.Problems
	p.Float("Watts", m.Watts, 0, 100_000, "W")
	quantity.Check(&p, "Share", m.Share, quantity.Percent{}, quantity.MustPercent("100 %"))
	p.Duration("Time", m.Time.Duration(), 1, mostMixing)
	quantity.Check(&p, "Dough", m.Dough, quantity.Grams(1), mostMass)
	if err := p.ErrFor(m); err != nil {
		return 0, err
	}
	return SpecificEnergy(m.Share.Fraction() * m.Watts / 1000 * m.Time.Duration().Seconds() / m.Dough.Kilograms()), nil
}

// FlourHydrationHeat is what a kilogram of flour of 11 to 12 % moisture gives off when it is wetted:
// 6.5 BTU/lb, 15.1 kJ/kg. It is counted on the flour; a textbook problem has the same number counted
// on the dough, which would be 1.65 times as much. A friction factor that was measured holds it
// already. Source: Baking Business, dictionary.
const FlourHydrationHeat = SpecificEnergy(6.5 * 2.326)

// Substance says what an ingredient is, for its specific heat.
type Substance int

// The substances. The zero value is none of them: give the specific heat then.
const (
	_ Substance = iota
	Flour
	Water
	Levain // any preferment or dough, by its hydration
	Milk
	Egg
	Butter
	Oil
	Sugar
	Salt
)

// Heat returns the specific heat of the substance near 20 °C and false for a substance it does not know.
//
//	flour 1.85 (published 1.76 to 1.88; 1.98 by composition), water 4.186, whole milk 3.85, egg 3.18, butter 2.30,
//	oil 2.01, sugar 1.244, salt 0.87 kJ/(kg·K); a levain of hydration h: (1.85 + 4.186·h) ÷ (1 + h)
//
// Within about 5 % for flour and 3 % otherwise; salt is from memory. Source: Geankoplis, appendix
// A.4; Cengel and Boles; GNU units 2.22 (sugar); the levain by the rule of mixtures.
func (s Substance) Heat(hydration quantity.Percent) (SpecificHeat, bool) {
	switch s {
	case Flour:
		return 1.85, true
	case Water:
		return heatWater, true
	case Levain:
		h := hydration.Fraction()
		return SpecificHeat((1.85 + heatWater*h) / (1 + h)), true
	case Milk:
		return 3.85, true
	case Egg:
		return 3.18, true
	case Butter:
		return 2.30, true
	case Oil:
		return 2.01, true
	case Sugar:
		return 1.244, true
	case Salt:
		return 0.87, true
	}
	return 0, false
}
