package mixing

import (
	"strconv"

	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// String says what was found, in metric units.
func (r BalanceResult) String() string { return r.Message().String() }

// Message says what was found, for the units of its reader.
func (r BalanceResult) Message() working.Message {
	switch r.Found {
	case FindDough:
		return working.Tell("mixing.dough_at", "dough at %.1f", r.Dough)
	case FindWater:
		if !r.Feasible && len(r.Remedies) > 0 {
			return working.Tell("mixing.water_not_poured", "water at %.1f, which cannot be poured: %v", r.Water, r.Remedies[0].Text)
		}
		return working.Tell("mixing.water_at", "water at %.1f", r.Water)
	case FindFlour:
		return working.Tell("mixing.flour_at", "flour at %.1f", r.Flour)
	case FindIce:
		switch {
		case r.wanted < 0:
			return working.Tell("mixing.no_ice_dough_cold", "no ice: the dough would be too cold without it")
		case !r.Feasible:
			return working.Tell("mixing.ice_not_enough", "even all the water as ice (%.0f) is not cold enough", r.in.Water)
		}
		return working.Tell("mixing.ice_replace", "replace %.0f of the water with crushed ice and pour %.0f of tap water", r.Ice, r.in.Water.Sub(r.Ice))
	}
	return working.Tell("mixing.no_balance", "no balance")
}

// Working derives the capacities, the heats and what was found.
func (r BalanceResult) Working() working.Working {
	w := working.Working{Title: "Heat balance of the mix"}
	if r.Found == 0 {
		return w
	}
	b := r.in
	add := func(s working.Step) { w.Steps = append(w.Steps, s) }
	sumC := working.Step{
		Name:      "heat capacity of everything in the bowl",
		Symbol:    "C",
		Value:     fixed(r.total, 6) + " kJ/K",
		Source:    sources.HeatBalance,
		Tolerance: 1e-6 * float64(len(r.terms)),
	}
	heats := working.Step{Name: "heat brought along, with 0 °C as zero", Symbol: "H", Value: fixed(r.heatSum, 5) + " kJ", Source: sources.HeatBalance}
	spread := 0.0
	for i, t := range r.terms {
		symbol := "C_" + strconv.Itoa(i)
		where := nameOf(t.name, i)
		capacity := fixed(float64(t.capacity), 6)
		if i <= len(b.Ingredients) {
			mass, c, src := b.Water, b.WaterHeat, sources.GNUUnits
			if i > 0 {
				mass, c, src = b.Ingredients[i-1].Mass, b.Ingredients[i-1].heat(), b.Ingredients[i-1].heatSource()
			}
			add(working.Step{
				Name: "heat capacity of " + where, Symbol: symbol, Formula: "m × c ÷ 1000",
				Where: []working.Binding{
					bind("m", where, mass.String()),
					bind("c", "specific heat", fixed(float64(c), 6)+" kJ/(kg·K)"),
				},
				Numbers: bare(mass.String()) + " × " + fixed(float64(c), 6) + " ÷ 1000", Value: capacity + " kJ/K",
				Tolerance: 1e-6*mass.Kilograms() + 1e-6, Source: src,
			})
		} else {
			what := "heat capacity of the bowl"
			if t.is == RoomFactor {
				what = "heat exchanged with the room for each kelvin"
			}
			add(working.Step{Name: what, Symbol: symbol, Value: capacity + " kJ/K", Note: "as given", Source: given()})
		}
		if i > 0 {
			sumC.Formula += " + "
			sumC.Numbers += " + "
		}
		sumC.Formula += symbol
		sumC.Numbers += capacity
		known := r.Found == FindDough || r.Found == FindIce || r.Found == FindWater && i > 0 || r.Found == FindFlour && !r.flourTerm(i)
		if known {
			if heats.Formula != "" {
				heats.Formula += " + "
				heats.Numbers += " + "
			}
			ts := "T_" + strconv.Itoa(i)
			heats.Formula += symbol + " × " + ts
			heats.Numbers += capacity + " × " + value(t.temperature.Celsius(), 4)
			heats.Where = append(heats.Where, bind(ts, "temperature of: "+where, fixed(t.temperature.Celsius(), 4)+" °C"))
			spread += 1e-6*95 + 1e-4*float64(t.capacity)
		}
	}
	add(sumC)
	for _, q := range r.heats() {
		add(q.Step)
		if heats.Formula != "" {
			heats.Formula += " + "
			heats.Numbers += " + "
		}
		heats.Formula += q.Symbol
		heats.Numbers += value(q.number, 5)
		spread += 1e-5
	}
	if heats.Formula == "" {
		heats.Formula, heats.Numbers = "0", "0"
	}
	if b.Ice.Sign() > 0 {
		if r.Found == FindWater {
			heats.Formula += " + m_ice ÷ 1000 × (c_ice × T_ice − L)"
			heats.Numbers += " + " + bare(b.Ice.String()) + " ÷ 1000 × (" + fixed(heatIce, 3) +
				" × " + value(b.IceTemperature.Celsius(), 4) + " − " + fixed(latentHeat, 2) + ")"
		} else {
			heats.Formula += " − m_ice ÷ 1000 × (c_w × T_tap + L − c_ice × T_ice)"
			heats.Numbers += " − " + bare(b.Ice.String()) + " ÷ 1000 × (" + r.iceNumbers() + ")"
		}
		heats.Where = append(heats.Where, r.iceBindings()...)
		heats.Where = append(heats.Where, bind("m_ice", "ice", b.Ice.String()))
		spread += 1e-3 * b.Ice.Kilograms() * 5
	}
	heats.Tolerance = spread + 1e-5
	add(heats)
	last := working.Step{Source: sources.HeatBalance}
	target := value(r.target.Celsius(), 4)
	c, h := fixed(r.total, 6), value(r.heatSum, 5)
	bindT := bind("T", "dough temperature wanted", fixed(r.target.Celsius(), 4)+" °C")
	numerator := heats.Tolerance + 1e-5 + 1e-4*r.total + 1e-6*50
	switch r.Found {
	case FindDough:
		last.Name, last.Symbol, last.Formula = "dough temperature", "T_dough", "H ÷ C"
		last.Numbers, last.Value = h+" ÷ "+c, fixed(r.wanted, 3)+" °C"
		last.Tolerance = 1e-5/r.total + 1e-6*abs(r.wanted)/r.total
	case FindWater:
		liquid := b.Water.Sub(b.Ice)
		cw := liquid.Kilograms() * float64(b.WaterHeat)
		last.Name, last.Symbol, last.Formula = "water temperature", "T_water", "(C × T − H) ÷ (m_liquid × c_w ÷ 1000)"
		last.Where = []working.Binding{
			bindT,
			bind("m_liquid", "water that is not ice", liquid.String()),
			bind("c_w", "specific heat of water", fixed(float64(b.WaterHeat), 6)+" kJ/(kg·K)"),
		}
		last.Numbers = "(" + c + " × " + target + " − " + h + ") ÷ (" + bare(liquid.String()) + " × " + fixed(float64(b.WaterHeat), 6) + " ÷ 1000)"
		last.Value = fixed(r.wanted, 3) + " °C"
		last.Tolerance = numerator/cw + 1e-6*abs(r.wanted)
	case FindIce:
		last.Name, last.Symbol, last.Formula = "ice", "x", "1000 × (H − C × T) ÷ (c_w × T_tap + L − c_ice × T_ice)"
		last.Where = append([]working.Binding{bindT}, r.iceBindings()...)
		last.Numbers = "1000 × (" + h + " − " + c + " × " + target + ") ÷ (" + r.iceNumbers() + ")"
		last.Value = fixed(r.wanted, 2) + " g"
		last.Tolerance = 1000*numerator/b.iceHeat() + 1e-5*abs(r.wanted)
		if !r.Feasible {
			last.Note = "below zero or more than all the water: ice alone does not reach the target"
		}
	case FindFlour:
		cf := r.flourCapacity()
		last.Name, last.Symbol, last.Formula = "flour temperature", "T_flour", "(C × T − H) ÷ C_flour"
		last.Where = []working.Binding{bindT, bind("C_flour", "heat capacity of the flour", fixed(cf, 6)+" kJ/K")}
		last.Numbers = "(" + c + " × " + target + " − " + h + ") ÷ " + fixed(cf, 6)
		last.Value = fixed(r.wanted, 3) + " °C"
		last.Tolerance = numerator/cf + 1e-6*abs(r.wanted)/cf
	}
	add(last)
	return w
}

// A heat is a step whose number is put into a later one.
type heat struct {
	working.Step
	number float64
}

// heats are the steps of what is added beside what the ingredients bring: wetting and mixing.
func (r BalanceResult) heats() []heat {
	b := r.in
	var out []heat
	if b.Hydration != 0 {
		q := b.Hydration.of(b.dryFlour())
		src := given()
		if b.Hydration == FlourHydrationHeat {
			src = sources.FlourHydration
		}
		out = append(out, heat{working.Step{
			Name: "heat of wetting", Symbol: "Q_wet", Formula: "q × m_flour ÷ 1000",
			Where: []working.Binding{
				bind("q", "heat of hydration per kg of flour", fixed(float64(b.Hydration), 4)+" kJ/kg"),
				bind("m_flour", "dry flour", b.dryFlour().String()),
			},
			Numbers: fixed(float64(b.Hydration), 4) + " × " + bare(b.dryFlour().String()) + " ÷ 1000",
			Value:   fixed(q, 5) + " kJ", Tolerance: 1e-4*b.dryFlour().Kilograms() + 1e-5, Source: src,
		}, q})
	}
	if b.Mixing != 0 {
		q := b.Mixing.of(r.mix)
		out = append(out, heat{working.Step{
			Name: "work of mixing", Symbol: "Q_mix", Formula: "e × m_dough ÷ 1000",
			Where: []working.Binding{
				bind("e", "mixing work per kg of dough", fixed(float64(b.Mixing), 4)+" kJ/kg"), bind("m_dough", "dough", r.mix.String()),
			},
			Numbers: fixed(float64(b.Mixing), 4) + " × " + bare(r.mix.String()) + " ÷ 1000",
			Value:   fixed(q, 5) + " kJ", Tolerance: 1e-4*r.mix.Kilograms() + 1e-5, Source: given(),
		}, q})
	}
	if b.Rise.Sign() != 0 {
		q := b.Rise.Celsius() * r.total
		out = append(out, heat{working.Step{
			Name: "heat that warms everything by the rise of mixing", Symbol: "Q_mix", Formula: "d × C",
			Where: []working.Binding{
				bind("d", "warming by mixing", fixed(b.Rise.Celsius(), 4)+" Δ°C"), bind("C", "heat capacity", fixed(r.total, 6)+" kJ/K"),
			},
			Numbers: value(b.Rise.Celsius(), 4) + " × " + fixed(r.total, 6),
			Value:   fixed(q, 5) + " kJ", Tolerance: 1e-4*r.total + 1e-6*abs(b.Rise.Celsius()) + 1e-5, Source: sources.HeatBalance,
		}, q})
	}
	return out
}

func given() working.Source {
	return working.Source{Key: "given", Title: "given by the user", Standing: working.Computed}
}

// heatSource says who gives the specific heat.
func (i Portion) heatSource() working.Source {
	switch {
	case i.SpecificHeat != 0:
		return given()
	case i.Substance == Water, i.Substance == Sugar:
		return sources.GNUUnits
	case i.Substance == Levain:
		return working.Source{Key: "mixture", Title: "specific heats of flour and water by the rule of mixtures", Standing: working.Computed}
	case i.Substance == Salt:
		return working.Source{Key: "salt", Title: "specific heat of salt", Standing: working.FromMemory}
	}
	return sources.GeankoplisHeats
}

func (r BalanceResult) iceNumbers() string {
	b := r.in
	return fixed(float64(b.WaterHeat), 6) + " × " + value(b.WaterTemperature.Celsius(), 4) + " + " +
		fixed(latentHeat, 2) + " − " + fixed(heatIce, 3) + " × " + value(b.IceTemperature.Celsius(), 4)
}

func (r BalanceResult) iceBindings() []working.Binding {
	b := r.in
	out := []working.Binding{
		bind("L", "latent heat of ice", fixed(latentHeat, 2)+" kJ/kg"),
		bind("c_ice", "specific heat of ice", fixed(heatIce, 3)+" kJ/(kg·K)"),
		bind("T_ice", "ice", fixed(b.IceTemperature.Celsius(), 4)+" °C"),
	}
	if r.Found != FindWater {
		out = append(
			out,
			bind("c_w", "specific heat of water", fixed(float64(b.WaterHeat), 6)+" kJ/(kg·K)"),
			bind("T_tap", "how the water comes", fixed(b.WaterTemperature.Celsius(), 4)+" °C"),
		)
	}
	return out
}

func abs(x float64) float64 {
	if x < 0 {
		return -x
	}
	return x
}
