package mixing

import (
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// Heats of water and ice. Source: GNU units 2.22, definitions file (latent heat 6.01 kJ/mol over
// 18.015 g/mol); specific heat of ice between the published 1.958 (−20 °C) and 2.11.
const (
	latentHeat = 333.6 // kJ/kg, ice melting at 0 °C
	heatWater  = 4.186 // kJ/(kg·K)
	heatIce    = 2.09  // kJ/(kg·K)
)

// IceWater is water that has to act colder than it comes.
type IceWater struct {
	// Water is the weight of water: all of it, of which ice replaces a part ([IceWater.Replace]); or
	// the tap water to which ice comes on top ([IceWater.Add]).
	Water quantity.Mass        `json:"water"`
	Tap   quantity.Temperature `json:"tap,omitzero"`  // how the water comes
	Need  quantity.Temperature `json:"need,omitzero"` // what it should act like; may lie below freezing when ice replaces water
	Ice   quantity.Temperature `json:"ice,omitzero"`  // of the ice; not given means 0 °C
	// Melting is the latent heat over the specific heat of water; zero means 333.6 ÷ 4.186 = 79.7 Δ°C. The round
	// figure of bakery ice tables is 144 Δ°F (80 Δ°C), the "tap + 112" rule: melting a pound of ice cools as much
	// as warming a pound of water by it.
	Melting quantity.TemperatureDelta `json:"melting,omitzero"`
}

// IceResult is the answer of [IceWater.Replace] and [IceWater.Add].
type IceResult struct {
	Ice    quantity.Mass `json:"ice"`
	Liquid quantity.Mass `json:"liquid"` // tap water to pour
	Total  quantity.Mass `json:"total"`  // ice and tap water
	// Feasible reports whether so much ice can do it. When ice is to replace water and even
	// all ice is not cold enough, Ice is all of it and Feasible is false.
	Feasible bool `json:"feasible"`

	added    bool
	in       IceWater
	wanted   float64 // grams of ice by the formula, even when not feasible
	melting  float64
	noCooled bool
}

// Replace answers how much of a dough's water to replace with ice so that the whole, ice and
// water, acts like water at the needed temperature. The total weight of water stays.
//
//	x = W·(T_tap − T_need) ÷ (T_tap + L/c_w − (c_ice/c_w)·T_ice)     in °C
//
// W is all the water, T_ice the ice (at most 0 °C), L/c_w = 79.7 °C the latent heat over the
// specific heat of water, c_ice/c_w = 0.499. T_need may be a reckoning figure below freezing, as
// the factor method gives it; all the water as ice at 0 °C acts like −79.7 °C. Tap above 0 to 60
// °C, ice −40 to 0 °C. Crushed ice that melts within the mixing time is assumed. Agrees with a
// bakery supplier's table within 0.006 of the water's weight.
//
// It is not [IceWater.Add]; the two are often mixed up. Errors: ErrRequired, ErrOutOfRange. Needing
// no ice, or more than there is water, is an answer. Source: heat balance; supplier's ice table.
func (in IceWater) Replace() (IceResult, error) { return icing(in, false) }

// Add answers how much ice to put into a weight of tap water so that it has the needed
// temperature. The total grows by the ice.
//
//	x = W·(T_tap − T_need) ÷ (T_need + L/c_w − (c_ice/c_w)·T_ice)     in °C
//
// Symbols as in [IceWater.Replace]; T_need at least 0 °C, because all the ice must melt.
// Errors: ErrRequired, ErrOutOfRange. Source: heat balance.
func (in IceWater) Add() (IceResult, error) { return icing(in, true) }

func icing(in IceWater, add bool) (IceResult, error) {
	var p quantity.Problems
	quantity.Check(&p, "Water", in.Water, quantity.Micrograms(1), mostMass)
	quantity.Check(&p, "Tap", in.Tap, coldestDough, quantity.Celsius(60))
	low := quantity.Celsius(-270)
	if add {
		low = coldestDough
	}
	quantity.Check(&p, "Need", in.Need, low, quantity.Celsius(60))
	if in.Ice.IsZero() {
		in.Ice = coldestDough
	}
	quantity.Check(&p, "Ice", in.Ice, leastIce, coldestDough)
	if in.Melting.IsZero() {
		in.Melting = quantity.DeltaCelsius(latentHeat / heatWater)
	}
	quantity.Check(&p, "Melting", in.Melting, quantity.DeltaCelsius(70), quantity.DeltaCelsius(90))
	if err := p.Err(); err != nil {
		return IceResult{}, err
	}
	r := IceResult{Feasible: true, added: add, in: in, melting: in.Melting.Celsius()}
	if in.Need.Compare(in.Tap) >= 0 {
		r.Liquid, r.Total, r.noCooled = in.Water, in.Water, true
		return r, nil
	}
	r.wanted = in.Water.Grams() * in.Tap.Sub(in.Need).Celsius() / r.denominator()
	r.Ice = quantity.Grams(r.wanted)
	if add {
		r.Liquid = in.Water
	} else {
		if r.Ice.Compare(in.Water) > 0 {
			r.Ice, r.Feasible = in.Water, false
		}
		r.Liquid = in.Water.Sub(r.Ice)
	}
	r.Total = r.Liquid.Add(r.Ice)
	return r, nil
}

func (r IceResult) denominator() float64 {
	from := r.in.Tap
	if r.added {
		from = r.in.Need
	}
	return from.Celsius() + r.melting - heatIce/heatWater*r.in.Ice.Celsius()
}

// String says what to weigh, in grams.
func (r IceResult) String() string { return r.Message().String() }

// Message says what to weigh, for the units of its reader.
func (r IceResult) Message() working.Message {
	switch {
	case r.Total.IsZero():
		return working.Tell("mixing.no_water", "no water")
	case r.noCooled:
		return working.Tell("mixing.no_ice", "no ice: the water is not warmer than needed")
	case r.added:
		return working.Tell("mixing.ice_add", "add %.0f of crushed ice to %.0f of tap water", r.Ice, r.Liquid)
	case !r.Feasible:
		return working.Tell("mixing.ice_not_enough", "even all the water as ice (%.0f) is not cold enough", r.Ice)
	}
	return working.Tell("mixing.ice_replace", "replace %.0f of the water with crushed ice and pour %.0f of tap water", r.Ice, r.Liquid)
}

// Working derives the weight of ice.
func (r IceResult) Working() working.Working {
	in := r.in
	w := working.Working{Title: "Ice that replaces water"}
	if r.added {
		w.Title = "Ice added to water"
	}
	if r.Total.IsZero() {
		return w
	}
	if r.noCooled {
		w.Steps = []working.Step{{
			Name: "ice", Symbol: "x", Value: "0 g", Exact: true, Source: working.Algebra(),
			Note: "the water comes at " + in.Tap.String() + " and is needed at " + in.Need.String(),
		}}
		return w
	}
	from, symbol := in.Tap, "T_tap"
	if r.added {
		from, symbol = in.Need, "T_need"
	}
	c := func(t quantity.Temperature) string { return value(t.Celsius(), 6) }
	step := working.Step{
		Name: "ice", Symbol: "x", Formula: "W × (T_tap − T_need) ÷ (" + symbol + " + H − k × T_ice)",
		Where: []working.Binding{
			bind("W", "water", in.Water.String()),
			bind("T_tap", "how the water comes", fixed(in.Tap.Celsius(), 3)+" °C"),
			bind("T_need", "what it should act like", fixed(in.Need.Celsius(), 3)+" °C"),
			bind("H", "latent heat of ice over the specific heat of water", fixed(r.melting, 3)+" Δ°C"),
			bind("k", "specific heat of ice over that of water", fixed(heatIce/heatWater, 6)),
			bind("T_ice", "ice", fixed(in.Ice.Celsius(), 3)+" °C"),
		},
		Numbers: bare(in.Water.String()) + " × (" + c(in.Tap) + " − " + c(in.Need) + ") ÷ (" + c(from) +
			" + " + value(r.melting, 6) + " − " + value(heatIce/heatWater, 6) + " × " + c(in.Ice) + ")",
		Value: fixed(r.wanted, 3) + " g", Tolerance: 1e-5 + r.wanted*2e-7 + in.Water.Grams()*2e-8, Source: sources.IceHeat,
	}
	if !r.Feasible {
		step.Note = "more than all the water: ice alone does not reach it"
	}
	w.Steps = append(w.Steps, step)
	return w
}
