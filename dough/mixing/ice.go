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
	Water quantity.Mass `json:"water"`
	// Tap is how the water comes, Need what it should act like, which may lie below freezing when ice replaces water,
	// and Ice the temperature of the ice; not given: 0 °C.
	Tap  quantity.Temperature `json:"tap,omitzero"`
	Need quantity.Temperature `json:"need,omitzero"`
	Ice  quantity.Temperature `json:"ice,omitzero"`
	// Melting is the latent heat over the specific heat of water; zero means 333.6 ÷ 4.186 = 79.7 Δ°C. The round
	// figure of bakery ice tables is 144 Δ°F (80 Δ°C), the "tap + 112" rule: melting a pound of ice cools as much
	// as warming a pound of water by it.
	Melting quantity.TemperatureDelta `json:"melting,omitzero"`
}

// IceResult is the answer of [IceWater.Replace] and [IceWater.Add].
type IceResult struct {
	answer

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
	if err := p.ErrFor(in); err != nil {
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
	return working.Tell("mixing.ice_replace", "replace %.0f of the water with crushed ice and pour %.0f of tap water",
		r.Ice, r.Liquid)
}

// Working derives the weight of ice.
func (r IceResult) Working() working.Working {
	in := r.in
	d := working.Derive(working.Tell("mixing.derive_ice", "Ice that replaces water"))
	if r.added {
		d = working.Derive(working.Tell("mixing.derive_ice_added", "Ice added to water"))
	}
	if r.Total.IsZero() {
		return d.Working()
	}
	name := working.Tell("mixing.label_ice", "ice")
	if r.noCooled {
		d.Find(working.Finding{
			Name: name, Symbol: "x", Is: r.Ice, Source: working.Algebra(),
			Look: working.Tell("mixing.look_no_ice", "the water comes at %.1f and is needed at %.1f", in.Tap, in.Need),
		})
		return d.Working()
	}
	tap := working.Given("T_tap", working.Tell("mixing.symbol_tap", "how the water comes"), in.Tap)
	need := working.Given("T_need", working.Tell("mixing.symbol_need", "what it should act like"), in.Need)
	from := tap
	if r.added {
		from = need
	}
	melting := working.Given(
		"H", working.Tell("mixing.symbol_melting", "latent heat of ice over the specific heat of water"),
		working.Amount(r.melting, working.DeltaCelsius, 1))
	ratio := working.Given(
		"k", working.Tell("mixing.symbol_ice_ratio", "specific heat of ice over that of water"),
		working.Amount(heatIce/heatWater, "", 4))
	ice := working.Given("T_ice", working.Tell("mixing.symbol_ice", "temperature of the ice"), in.Ice)
	water := working.Given("W", working.Tell("mixing.symbol_water", "water"), in.Water)
	f := working.Finding{
		Name: name, Symbol: "x", By: water.Times(tap.Minus(need)).Over(from.Plus(melting).Minus(ratio.Times(ice))),
		Is: grams(r.wanted), Decimals: 1, Source: sources.IceHeat,
	}
	if !r.Feasible {
		f.Note = working.Tell("mixing.note_more_than_all", "more than all the water: ice alone does not reach it")
	}
	d.Find(f)
	return d.Working()
}
