package mixing

import (
	"example.org/maslin/dough/quantity"
)

// WorkFor answers which mixing work stands for a warming of this dough above the temperature at which
// its ingredients would meet: how a friction factor measured by the factor method enters the balance.
//
//	e = d · Σ Cᵢ ÷ m
//
// d is the warming of the dough ([Rise] of a friction factor), Cᵢ the heat capacities of the balance, bowl
// and room exchange among them, m the dough. A warming that was measured holds the heat of wetting
// already: leave Hydration out of the balance then. Warming −10 to 40 Δ°C. Accuracy: that of the warming.
// Errors as in [Balance.WaterFor], and ErrOutOfRange for the warming. Source: heat balance.
func (b Balance) WorkFor(rise quantity.TemperatureDelta) (SpecificEnergy, error) {
	var p quantity.Problems
	quantity.Check(&p, "rise", rise, quantity.DeltaCelsius(-10), quantity.DeltaCelsius(40))
	b.Mixing = 0
	r, err := b.start(FindWater, quantity.Celsius(25), &p) // the capacities depend on no temperature
	if err != nil {
		return 0, err
	}
	return SpecificEnergy(rise.Celsius() * r.total / r.mix.Kilograms()), nil
}
