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
			return working.Tell("mixing.water_not_poured", "%v at %.1f, which cannot be poured: %v", r.in.pours(), r.Water,
				r.Remedies[0].Text)
		}
		return working.Tell("mixing.water_at", "%v at %.1f", r.in.pours(), r.Water)
	case FindFlour:
		return working.Tell("mixing.flour_at", "flour at %.1f", r.Flour)
	case FindIce:
		switch {
		case r.wanted < 0:
			return working.Tell("mixing.no_ice_dough_cold", "no ice: the dough would be too cold without it")
		case !r.Feasible:
			return working.Tell("mixing.ice_not_enough", "even all the water as ice (%.0f) is not cold enough",
				r.in.Water)
		}
		return working.Tell("mixing.ice_replace", "replace %.0f of the water with crushed ice and pour %.0f of tap "+
			"water", r.Ice, r.in.Water.Sub(r.Ice))
	}
	return working.Tell("mixing.no_balance", "no balance")
}

// Working derives the capacities, the heats and what was found.
func (r BalanceResult) Working() working.Working {
	d := working.Derive(working.Tell("mixing.derive_balance", "Heat balance of the mix"))
	if r.Found == 0 {
		return d.Working()
	}
	capacities := r.deriveCapacities(d)
	all := d.Find(working.Finding{
		Name: working.Tell("mixing.capacity_all", "heat capacity of everything in the bowl"), Symbol: "C",
		By:   working.Sum(capacities...),
		Unit: "kJ/K", Decimals: 3, Source: sources.HeatBalance,
	})
	heats := r.deriveHeats(d, all)
	for i, t := range r.terms {
		known := r.Found == FindDough || r.Found == FindIce || r.Found == FindWater && i > 0 || r.Found == FindFlour &&
			!r.flourTerm(i)
		if !known {
			continue
		}
		at := working.Given("T_"+strconv.Itoa(i), working.Tell("mixing.symbol_factor", "temperature of %v",
			r.termTold(i)), t.temperature)
		heats = append(heats, capacities[i].Times(at))
	}
	heat := working.Num(0)
	for i, x := range heats {
		if i == 0 {
			heat = x
			continue
		}
		heat = heat.Plus(x)
	}
	heat = r.deriveIce(heat)
	sum := d.Find(working.Finding{
		Name: working.Tell("mixing.heat_brought", "heat brought along, with 0 °C as zero"), Symbol: "H", By: heat,
		Unit: "kJ", Decimals: 3,
		Source: sources.HeatBalance,
	})
	r.deriveFound(d, all, sum)
	return d.Working()
}

// termTold names a part of the balance: what the baker calls it, or else the word for it.
func (r BalanceResult) termTold(i int) any {
	t := r.terms[i]
	switch {
	case i == 0:
		return Water
	case i > len(r.in.Ingredients):
		return t.is
	case r.in.Ingredients[i-1].Name == "":
		return r.in.Ingredients[i-1].Substance
	}
	return nameOf(t.name, i)
}

func (r BalanceResult) deriveCapacities(d *working.Derivation) []working.Expr {
	b := r.in
	var out []working.Expr
	for i, t := range r.terms {
		n := strconv.Itoa(i)
		name := working.Tell("mixing.capacity_of", "heat capacity of %v", r.termTold(i))
		if i > len(b.Ingredients) {
			if t.is == RoomFactor {
				name = working.Tell("mixing.capacity_room", "heat exchanged with the room for each degree")
			}
			out = append(out, working.Given("C_"+n, name, working.Amount(float64(t.capacity), "kJ/K", 3)))
			continue
		}
		mass, c, src := b.Water, b.WaterHeat, sources.GNUUnits
		if i > 0 {
			mass, c, src = b.Ingredients[i-1].Mass, b.Ingredients[i-1].heat(), b.Ingredients[i-1].heatSource()
		}
		m := working.Given("m_"+n, working.Tell("mixing.symbol_mass", "mass of %v", r.termTold(i)),
			working.Amount(mass.Kilograms(), working.Kilogram, 3))
		heat := working.Given(
			"c_"+n, working.Tell("mixing.symbol_specific", "specific heat of %v", r.termTold(i)),
			working.Amount(float64(c), "kJ/(kg·K)", 3))
		out = append(out, d.Find(working.Finding{
			Name: name, Symbol: "C_" + n, By: m.Times(heat), Unit: "kJ/K", Decimals: 4, Source: src,
		}))
	}
	return out
}

// deriveHeats derives what is added beside what the ingredients bring: wetting and mixing.
func (r BalanceResult) deriveHeats(d *working.Derivation, all working.Expr) []working.Expr {
	b := r.in
	var out []working.Expr
	if b.Hydration != 0 {
		src := given()
		if b.Hydration == FlourHydrationHeat {
			src = sources.FlourHydration
		}
		q := working.Given("q", working.Tell("mixing.symbol_hydration", "heat of hydration for each kilogram of flour"),
			working.Amount(float64(b.Hydration), "kJ/kg", 2))
		m := working.Given("m_flour", working.Tell("mixing.symbol_dry_flour", "dry flour"),
			working.Amount(b.dryFlour().Kilograms(), working.Kilogram, 3))
		out = append(out, d.Find(working.Finding{
			Name: working.Tell("mixing.heat_wetting", "heat of wetting"), Symbol: "Q_wet", By: q.Times(m), Unit: "kJ",
			Decimals: 3, Source: src,
		}))
	}
	if b.Mixing != 0 {
		e := working.Given("e", working.Tell("mixing.symbol_work", "mixing work for each kilogram of dough"),
			working.Amount(float64(b.Mixing), "kJ/kg", 2))
		m := working.Given("m_dough", working.Tell("mixing.symbol_dough", "dough"), working.Amount(r.mix.Kilograms(),
			working.Kilogram, 3))
		out = append(out, d.Find(working.Finding{
			Name: working.Tell("mixing.heat_work", "work of mixing"), Symbol: "Q_mix", By: e.Times(m), Unit: "kJ",
			Decimals: 3, Source: given(),
		}))
	}
	if b.Rise.Sign() != 0 {
		rise := working.Given("d", working.Tell("mixing.symbol_rise", "warming by mixing"), b.Rise).
			Explained(working.Tell("mixing.term_rise",
				"how much warmer mixing leaves the dough than its ingredients would meet"))
		out = append(out, d.Find(working.Finding{
			Name: working.Tell("mixing.heat_rise", "heat that mixing adds"), Symbol: "Q_mix", By: rise.Times(all),
			Unit: "kJ", Decimals: 3,
			Source: sources.HeatBalance,
		}))
	}
	return out
}

// iceLacks is what a kilogram of ice lacks against the water it stands for: in an answer about water, against water of
// 0 °C.
func (r BalanceResult) iceLacks() working.Expr {
	b := r.in
	latent := working.Given("L", working.Tell("mixing.symbol_latent", "latent heat of ice"), working.Amount(latentHeat,
		"kJ/kg", 1))
	c := working.Given("c_ice", working.Tell("mixing.symbol_ice_heat", "specific heat of ice"), working.Amount(heatIce,
		"kJ/(kg·K)", 2))
	at := working.Given("T_ice", working.Tell("mixing.symbol_ice", "temperature of the ice"), b.IceTemperature)
	if r.Found == FindWater {
		return latent.Minus(c.Times(at))
	}
	cw := working.Given("c_w", working.Tell("mixing.symbol_heat_water", "specific heat of water"),
		working.Amount(float64(b.WaterHeat), "kJ/(kg·K)", 3))
	tap := working.Given("T_tap", working.Tell("mixing.symbol_tap", "how the water comes"), b.WaterTemperature)
	return cw.Times(tap).Plus(latent).Minus(c.Times(at))
}

func (r BalanceResult) deriveIce(heat working.Expr) working.Expr {
	if r.in.Ice.Sign() <= 0 {
		return heat
	}
	m := working.Given("m_ice", working.Tell("mixing.label_ice", "ice"), working.Amount(r.in.Ice.Kilograms(),
		working.Kilogram, 4))
	return heat.Minus(m.Times(r.iceLacks()))
}

// deriveFound derives the answer from the capacity and the heat.
func (r BalanceResult) deriveFound(d *working.Derivation, all, sum working.Expr) {
	b := r.in
	target := working.Given("T", working.Tell("mixing.symbol_target", "dough temperature wanted"), r.target)
	f := working.Finding{Source: sources.HeatBalance, Decimals: 1}
	switch r.Found {
	case FindDough:
		f.Name, f.Symbol, f.By, f.Is = working.Tell("mixing.found_dough", "dough temperature"), "T_dough",
			sum.Over(all), celsius(r.wanted)
	case FindWater:
		m := working.Given("m_liquid", working.Tell("mixing.symbol_liquid", "water that is not ice"),
			working.Amount(b.Water.Sub(b.Ice).Kilograms(), working.Kilogram, 3))
		cw := working.Given("c_w", working.Tell("mixing.symbol_heat_water", "specific heat of water"),
			working.Amount(float64(b.WaterHeat), "kJ/(kg·K)", 3))
		f.Name, f.Symbol, f.Is = working.Tell("mixing.found_water", "water temperature"), "T_water", celsius(r.wanted)
		f.By = all.Times(target).Minus(sum).Over(m.Times(cw))
	case FindIce:
		f.Name, f.Symbol, f.Is = working.Tell("mixing.label_ice", "ice"), "x", working.Amount(r.wanted/1000,
			working.Kilogram, 4)
		f.By = sum.Minus(all.Times(target)).Over(r.iceLacks())
		f.Decimals = 4
		if !r.Feasible {
			f.Note = working.Tell("mixing.note_ice_alone",
				"below zero or more than all the water: ice alone does not reach it")
		}
	case FindFlour:
		c := working.Given("C_flour", working.Tell("mixing.capacity_flour", "heat capacity of the flour"),
			working.Amount(r.flourCapacity(), "kJ/K", 5))
		f.Name, f.Symbol, f.Is = working.Tell("mixing.found_flour", "flour temperature"), "T_flour", celsius(r.wanted)
		f.By = all.Times(target).Minus(sum).Over(c)
	}
	d.Find(f)
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
		return working.Source{Key: "mixture", Title: "specific heats of flour and water by the rule of mixtures",
			Standing: working.Computed}
	case i.Substance == Salt:
		return working.Source{Key: "salt", Title: "specific heat of salt", Standing: working.FromMemory}
	}
	return sources.GeankoplisHeats
}

// celsius is a temperature before it is kept in ninethousandths of a degree, to a tenth.
func celsius(t float64) working.Value { return working.Amount(t, working.Celsius, 1) }

func abs(x float64) float64 {
	if x < 0 {
		return -x
	}
	return x
}
