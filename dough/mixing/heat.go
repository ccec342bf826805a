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

// BTUPerPound returns x BTU/lb: 2.326 kJ/kg exactly (international table BTU). 6.5 BTU per lb of flour is
// the heat of hydration.
func BTUPerPound(x float64) SpecificEnergy { return SpecificEnergy(x * 2.326) }

// Warming answers how much the energy warms a dough when none is lost: d = e ÷ c. NaN and impossible
// values give an invalid difference.
func (e SpecificEnergy) Warming(c SpecificHeat) quantity.TemperatureDelta {
	return quantity.DeltaCelsius(float64(e) / float64(c))
}

// For is the energy for a mass, in kJ.
func (e SpecificEnergy) For(m quantity.Mass) float64 { return float64(e) * m.Kilograms() }

// MixingWork answers how much work a motor puts into each kilogram of dough.
//
//	e = efficiency · P · t ÷ m
//
// watts is the power drawn beyond that of the empty machine, efficiency the share of it that ends
// in the dough (0 to 1). Watts 0 to 100,000, time above 0 to 4 h, mass above 0. Errors:
// ErrOutOfRange. Source: definition of power.
func MixingWork(watts float64, efficiency quantity.Percent, t quantity.Elapsed, dough quantity.Mass) (SpecificEnergy, error) {
	var p quantity.Problems
	p.Float("watts", watts, 0, 100_000, "W")
	quantity.Check(&p, "efficiency", efficiency, quantity.Percent{}, quantity.MustPercent("100 %"))
	p.Duration("t", t.Duration(), 1, mostMixing)
	quantity.Check(&p, "dough", dough, quantity.Grams(1), mostMass)
	if err := p.Err(); err != nil {
		return 0, err
	}
	return SpecificEnergy(efficiency.Fraction() * watts / 1000 * t.Duration().Seconds() / dough.Kilograms()), nil
}

// FlourHydrationHeat is what a kilogram of flour of 11 to 12 % moisture gives off when it is wetted:
// 6.5 BTU/lb, 15.1 kJ/kg. It is counted on the flour; a textbook problem has the same number counted
// on the dough, which would be 1.65 times as much. A friction factor that was measured holds it
// already. Source: Baking Business, dictionary.
func FlourHydrationHeat() SpecificEnergy { return BTUPerPound(6.5) }

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
	substanceEnd
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

// FlatBreadDoughHeat answers the specific heat of a wheat dough from its moisture, by the equation
// measured on chapati, flour to dough.
//
//	c = (2476.56 + 23.56·M − 3.79·T) ÷ 1000     kJ/(kg·K)
//
// M is the moisture of the dough in % of its weight, 0.1 to 80; T the temperature, 303 to 336 K. It
// is a rival of the rule of mixtures, from which it lies up to a fifth away at bread moistures.
// Errors: ErrRequired, ErrOutOfRange; ErrModelRange outside the measured range. Source: Specific
// heat of Indian unleavened flat bread (chapati), abstract.
func FlatBreadDoughHeat(moisture quantity.Percent, t quantity.Temperature) (SpecificHeat, error) {
	var p quantity.Problems
	m, k := moisture.Points(), t.Kelvin()
	if !moisture.IsValid() || m < 0 || m > 100 {
		p.Add("moisture", moisture.String(), "0.1 % to 80 %", quantity.ErrOutOfRange)
	} else if m < 0.1 || m > 80 {
		p.Add("moisture", moisture.String(), "0.1 % to 80 %", quantity.ErrModelRange)
	}
	if t.IsZero() {
		p.Required("t", "303 K to 336 K")
	} else if k < 303 || k > 336 {
		p.Add("t", t.String(), "303 K to 336 K (29.85 °C to 62.85 °C)", quantity.ErrModelRange)
	}
	if err := p.Err(); err != nil {
		return 0, err
	}
	return SpecificHeat((2476.56 + 23.56*m - 3.79*k) / 1000), nil
}
