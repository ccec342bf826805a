package mixing

import (
	"example.org/maslin/dough/quantity"
)

// Final answers at what temperature the dough leaves the mixer.
//
//	T = (Σ Cᵢ·Tᵢ + m_ice·(c_ice·T_ice − L − …) + Q) ÷ Σ Cᵢ
//
// Cᵢ = mᵢ·cᵢ of water, ingredients, bowl and room exchange; ice counts as water that lacks
// c_w·T_tap + L − c_ice·T_ice for each kilogram; Q is mixing work and heat of hydration. In °C.
// Ingredients −40 to 95 °C, masses to 10 t. Accuracy: with published specific heats, and the work
// known, about 1 °C; the work of a kitchen mixer is seldom known better than by half, which is why
// [Log.Learn] exists. Errors: ErrRequired, ErrOutOfRange, ErrInconsistent. Source: heat balance.
func (b Balance) Final() (BalanceResult, error) {
	var p quantity.Problems
	r, err := b.start(FindDough, quantity.Temperature{}, &p)
	if err != nil {
		return BalanceResult{}, err
	}
	r.heatSum = r.known(func(int, term) bool { return false })
	r.wanted = r.heatSum / r.total
	r.Dough = quantity.Celsius(r.wanted)
	r.Flour = r.meanFlour()
	r.Feasible = r.wanted >= 0
	return r, nil
}

// WaterFor answers how warm the water must be for the dough to end at the target.
//
//	T_water = T + Σ (Cᵢ ÷ C_water)·(T − Tᵢ) − Q ÷ C_water
//
// Symbols as in [Balance.Final]. It is the factor method with honest weights: with every Cᵢ equal
// to that of the water it is the factor method, and the friction factor is Q ÷ C_water; see [Balance.Compare]. A
// water that cannot be poured is an answer, with remedies. Errors as in [Balance.Final].
func (b Balance) WaterFor(target quantity.Temperature) (BalanceResult, error) {
	var p quantity.Problems
	r, err := b.start(FindWater, target, &p)
	if err != nil {
		return BalanceResult{}, err
	}
	liquid := r.in.Water.Sub(r.in.Ice)
	if liquid.IsZero() {
		p.Add("Ice", r.in.Ice, quantity.Tell("mixing.want_less_than_water_whose_temperature",
			"less than the water, whose temperature is asked for"), quantity.ErrInconsistent)
		return BalanceResult{}, p.ErrFor(r.in)
	}
	r.heatSum = r.HeatAdded
	for i, t := range r.terms {
		if i > 0 {
			r.heatSum += float64(t.capacity) * t.temperature.Celsius()
		}
	}
	if r.in.Ice.Sign() > 0 {
		r.heatSum += r.in.Ice.Kilograms() * (heatIce*r.in.IceTemperature.Celsius() - latentHeat)
	}
	r.wanted = (r.total*target.Celsius() - r.heatSum) / (liquid.Kilograms() * float64(r.in.WaterHeat))
	r.Water = quantity.Celsius(r.wanted)
	if r.Water.IsZero() {
		p.Add("Ingredients", quantity.Tell("mixing.got_heat_would_take_water_below",
			"heat that would take water below absolute zero"),
			quantity.Tell("mixing.want_temperatures_and_work_nearer_target",
				"temperatures and work nearer the target"), quantity.ErrInconsistent)
		return BalanceResult{}, p.ErrFor(r.in)
	}
	r.Flour = r.meanFlour()
	r.Feasible = r.Water.Compare(r.in.Coldest) >= 0 && r.Water.Compare(r.in.Warmest) <= 0
	r.Remedies = r.remedies()
	return r, nil
}

// IceFor answers how much of the water to replace with ice, the rest coming at WaterTemperature.
//
//	x = (Σ Cᵢ·Tᵢ + Q − T·Σ Cᵢ) ÷ (c_w·T_tap + L − c_ice·T_ice)
//
// The ice of the input is not counted. A dough that would be too cold without any ice gives no ice
// and is not feasible. Errors as in [Balance.Final].
func (b Balance) IceFor(target quantity.Temperature) (BalanceResult, error) {
	var p quantity.Problems
	r, err := b.start(FindIce, target, &p)
	if err != nil {
		return BalanceResult{}, err
	}
	r.heatSum = r.known(func(int, term) bool { return false })
	r.wanted = 1000 * (r.heatSum - r.total*target.Celsius()) / r.in.iceHeat()
	r.Flour = r.meanFlour()
	r.Feasible = r.wanted >= 0 && r.wanted <= r.in.Water.Grams()
	switch {
	case r.wanted > r.in.Water.Grams():
		r.Ice = r.in.Water
	case r.wanted > 0:
		r.Ice = quantity.Grams(r.wanted)
	}
	return r, nil
}

// FlourFor answers at what temperature all the flour must be, the water coming at WaterTemperature.
//
//	T_flour = (T·Σ Cᵢ − Σ' Cᵢ·Tᵢ − Q) ÷ C_flour      Σ' without the flour
//
// Errors as in [Balance.Final]; ErrInconsistent when there is no flour.
func (b Balance) FlourFor(target quantity.Temperature) (BalanceResult, error) {
	var p quantity.Problems
	r, err := b.start(FindFlour, target, &p)
	if err != nil {
		return BalanceResult{}, err
	}
	r.heatSum = r.known(func(i int, _ term) bool { return r.flourTerm(i) })
	r.wanted = (r.total*target.Celsius() - r.heatSum) / r.flourCapacity()
	r.Flour = quantity.Celsius(r.wanted)
	if r.Flour.IsZero() {
		p.Add("Ingredients", quantity.Tell("mixing.got_heat_would_take_flour_below",
			"heat that would take flour below absolute zero"),
			quantity.Tell("mixing.want_temperatures_and_work_nearer_target",
				"temperatures and work nearer the target"), quantity.ErrInconsistent)
		return BalanceResult{}, p.ErrFor(r.in)
	}
	r.Feasible = r.Flour.Compare(coldestFlour) >= 0 && r.Flour.Compare(warmestFlour) <= 0
	return r, nil
}

func (r *BalanceResult) flourCapacity() float64 {
	c := 0.0
	for i, t := range r.terms {
		if r.flourTerm(i) {
			c += float64(t.capacity)
		}
	}
	return c
}
