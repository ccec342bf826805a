package mixing

import (
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
	"example.org/maslin/internal/steam"
)

// Scald is rye or other flour over which hot water is poured, so that its starch swells and its own enzymes make it
// sweet.
type Scald struct {
	Flour            quantity.Mass        `json:"flour"`
	FlourTemperature quantity.Temperature `json:"flour_temperature,omitzero"`
	Water            quantity.Mass        `json:"water"`
	// Mash is how warm the mash must become; not given: 65 °C, at which rye starch swells and its enzymes still work.
	Mash quantity.Temperature `json:"mash,omitzero"`
	// Bowl is the heat capacity of the bowl: 0.5 kJ/K for a kilogram of steel, 0.8 for one of stoneware or glass. It is
	// as warm as BowlTemperature, or else as the flour.
	Bowl            HeatCapacity         `json:"bowl,omitzero"`
	BowlTemperature quantity.Temperature `json:"bowl_temperature,omitzero"`
	// Altitude decides how hot water can be.
	Altitude quantity.Length `json:"altitude,omitzero"`
}

// ScaldWater is the answer of [Scald.Pour].
type ScaldWater struct {
	answer

	// Water is how hot the water must be, and Boiling how hot it can be there.
	Water   quantity.Temperature `json:"water,omitzero"`
	Boiling quantity.Temperature `json:"boiling,omitzero"`
	// Feasible reports whether water can be so hot.
	Feasible bool `json:"feasible"`
	// WithBoiling is what the mash becomes with boiling water, when nothing is lost on the way.
	WithBoiling quantity.Temperature `json:"with_boiling,omitzero"`
	// LeastWater is the boiling water that would do, when Feasible is false; more than Water.
	LeastWater quantity.Mass     `json:"least_water,omitzero"`
	Notes      []working.Message `json:"notes,omitempty"`
	Cautions   []working.Caution `json:"cautions,omitempty"`

	in                     Scald
	flour, water, capacity float64 // kJ/K
	wanted                 float64
}

// Pour answers how hot the water of a scald must be for the mash to reach a temperature.
//
//	T_water = T + (C_flour·(T − T_flour) + C_bowl·(T − T_bowl)) ÷ C_water
//
// T is the mash wanted (65 °C), C = m·c the heat capacities with 1.85 kJ/(kg·K) for flour and 4.186 for water. The
// heat that flour gives off when it is wetted, 1.5 to 4 °C of mash, is left out: it pays for what is lost while
// stirring. Mash 40 to 95 °C, flour −25 to 60 °C, water half to twenty times the flour. Accuracy about 3 °C of mash;
// measure it. Errors: ErrRequired, ErrOutOfRange. Water that cannot be so hot is an answer. Source: heat balance;
// boiling by IAPWS-IF97 in the standard atmosphere; 65 °C is common practice.
func (in Scald) Pour() (ScaldWater, error) {
	var p quantity.Problems
	quantity.Check(&p, "Flour", in.Flour, quantity.Grams(1), mostMass)
	quantity.Check(&p, "FlourTemperature", in.FlourTemperature, coldestFlour, quantity.Celsius(60))
	if quantity.Check(&p, "Water", in.Water, quantity.Grams(1), mostMass) && in.Flour.Sign() > 0 {
		if share := in.Water.PercentOf(in.Flour).Points(); share < 50 || share > 2000 {
			p.Add("Water", in.Water, quantity.Tell("mixing.want_half_to_twenty_times_flour", "half to twenty times the flour"),
				quantity.ErrOutOfRange)
		}
	}
	if in.Mash.IsZero() {
		in.Mash = quantity.Celsius(usualMash)
	}
	quantity.Check(&p, "Mash", in.Mash, quantity.Celsius(40), quantity.Celsius(95))
	p.Float("Bowl", float64(in.Bowl), 0, 1000, "kJ/K")
	if in.BowlTemperature.IsZero() {
		in.BowlTemperature = in.FlourTemperature
	} else {
		quantity.Check(&p, "BowlTemperature", in.BowlTemperature, coldestThing, quantity.Celsius(100))
	}
	quantity.Check(&p, "Altitude", in.Altitude, quantity.Length{}, quantity.Meters(6000))
	if err := p.ErrFor(in); err != nil {
		return ScaldWater{}, err
	}
	r := ScaldWater{in: in, Cautions: scaldCautions()}
	pascal, err := steam.Pressure(steam.Geopotential(in.Altitude.Meters()))
	if err != nil {
		return ScaldWater{}, err
	}
	kelvin, err := steam.SaturationTemperature(pascal)
	if err != nil {
		return ScaldWater{}, err
	}
	r.Boiling = quantity.Kelvin(kelvin)
	c, _ := Flour.Heat(quantity.Percent{})
	r.flour, r.water = in.Flour.Kilograms()*float64(c), in.Water.Kilograms()*heatWater
	t := in.Mash.Celsius()
	lacks := r.flour*(t-in.FlourTemperature.Celsius()) + float64(in.Bowl)*(t-in.BowlTemperature.Celsius())
	r.wanted = t + lacks/r.water
	r.Water = quantity.Celsius(r.wanted)
	r.Feasible = r.Water.Compare(r.Boiling) <= 0
	r.capacity = r.flour + r.water + float64(in.Bowl)
	r.WithBoiling = quantity.Celsius(
		(r.water*r.Boiling.Celsius() + r.flour*in.FlourTemperature.Celsius() +
			float64(in.Bowl)*in.BowlTemperature.Celsius()) / r.capacity)
	r.note(lacks)
	return r, nil
}

const usualMash = 65.0 // °C, common practice

func (r *ScaldWater) note(lacks float64) {
	in := r.in
	note := func(m working.Message) { r.Notes = append(r.Notes, m) }
	if !r.Feasible {
		if gap := r.Boiling.Sub(in.Mash).Celsius(); gap > 0 && lacks > 0 {
			r.LeastWater = quantity.Kilograms(lacks / gap / heatWater)
			note(working.Tell("mixing.scald_more_water", "%.0f of boiling water instead of %.0f would do", r.LeastWater,
				in.Water))
		}
		note(working.Tell("mixing.scald_warm_first",
			"or warm flour and bowl first, or heat the mash in a water bath while stirring"))
	}
	note(working.Tell("mixing.scald_stands",
		"stir, measure the mash, and keep it above %.0f in a lidded bowl as long as the formula says; then spread it out, "+
			"so "+
			"that it is at %.0f or below before levain or yeast comes near it", quantity.Celsius(60), quantity.Celsius(30)))
}

func scaldCautions() []working.Caution {
	return []working.Caution{{
		Subject: "burns",
		Text: working.Tell(
			"mixing.caution_scald", "boiling water and a hot mash burn: pour away from yourself, keep children off, "+
				"cool a burn for 20 minutes under running water"),
		Source: sources.Practice("first aid for burns, common advice of health services"),
	}}
}

// String says how hot the water must be.
func (r ScaldWater) String() string { return r.Message().String() }

// Message says how hot the water must be.
func (r ScaldWater) Message() working.Message {
	switch {
	case r.Water.IsZero():
		return working.Tell("mixing.no_scald", "no scald")
	case !r.Feasible:
		return working.Tell(
			"mixing.scald_not_feasible", "the mash reaches %.0f with boiling water (%.0f), not %.0f", r.WithBoiling,
			r.Boiling, r.in.Mash)
	}
	return working.Tell("mixing.scald_water", "water of %.0f or hotter for a mash of %.0f; boiling water gives %.0f",
		r.Water, r.in.Mash, r.WithBoiling)
}

// Working derives the water.
func (r ScaldWater) Working() working.Working {
	d := working.Derive(working.Tell("mixing.derive_scald", "Water for a scald"))
	if r.Water.IsZero() {
		return d.Working()
	}
	in := r.in
	t := working.Given("T", working.Tell("mixing.symbol_mash", "mash wanted"), in.Mash)
	tf := working.Given("T_flour", working.Tell("mixing.symbol_flour_temperature", "flour"), in.FlourTemperature)
	cf := d.Find(working.Finding{
		Name: working.Tell("mixing.capacity_flour", "heat capacity of the flour"), Symbol: "C_flour", Unit: "kJ/K",
		Decimals: 4, Source: sources.GeankoplisHeats,
		By: working.Given("m_flour", working.Tell("mixing.symbol_mass_flour", "flour"), in.Flour).In(working.Kilogram).
			Times(working.Given("c_flour", working.Tell("mixing.symbol_heat_flour", "specific heat of flour"),
				working.Amount(1.85, "kJ/(kg·K)", 2))),
	})
	cw := d.Find(working.Finding{
		Name: working.Tell("mixing.capacity_water", "heat capacity of the water"), Symbol: "C_water", Unit: "kJ/K",
		Decimals: 4, Source: sources.GNUUnits,
		By: working.Given("m_water", working.Tell("mixing.symbol_mass_water", "water"), in.Water).In(working.Kilogram).
			Times(working.Given("c_water", working.Tell("mixing.symbol_heat_water", "specific heat of water"),
				working.Amount(heatWater, "kJ/(kg·K)", 3))),
	})
	lacks := cf.Times(t.Minus(tf))
	if in.Bowl > 0 {
		cb := working.Given("C_bowl", working.Tell("mixing.symbol_bowl_capacity", "heat capacity of the bowl"),
			working.Amount(float64(in.Bowl), "kJ/K", 3))
		lacks = lacks.Plus(cb.Times(t.Minus(working.Given("T_bowl", working.Tell("mixing.symbol_bowl_temperature",
			"bowl"), in.BowlTemperature))))
	}
	d.Find(working.Finding{
		Name: working.Tell("mixing.scald_water_name", "water for the mash"), Symbol: "T_water",
		By: t.Plus(lacks.Over(cw)), Is: r.Water, Decimals: 1,
		Source: sources.HeatBalance,
	})
	return d.Working()
}
