package exercise

import (
	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

// water is the factor method, with a levain, with a friction factor in the other degrees, and ice.
func water(d *dice, hard Difficulty) *sheet {
	target, flour, room, friction := d.warm(23, 27), d.warm(16, 24), d.warm(18, 26), d.warmer(6, 14)
	t := symbol("T", working.Tell("exercise.symbol_target", "dough temperature wanted"), target)
	tf := symbol("T_flour", working.Tell("exercise.symbol_flour_temperature", "flour"), flour)
	tr := symbol("T_room", working.Tell("exercise.symbol_room_temperature", "room"), room)
	in := mixing.Factors{Target: target, Friction: friction, Others: []mixing.Factor{
		{Kind: mixing.FlourFactor, Temperature: flour}, {Kind: mixing.RoomFactor, Temperature: room},
	}}
	name := working.Tell("exercise.find_water_temperature", "water temperature")
	friendlyWater := func() (quantity.Temperature, bool) {
		r, err := in.Water()
		return r.Temperature, err == nil && r.Temperature.Celsius() >= 4 && r.Temperature.Celsius() <= 38
	}
	switch hard {
	case OneStep:
		is, ok := friendlyWater()
		if !ok {
			return nil
		}
		out := newSheet(working.Tell("exercise.water_factors",
			"The dough should come from the mixer at %v. The flour is at %v, the room at %v, and the friction factor is %v "+
				"for three factors. "+
				"How warm must the water be?", target, flour, room, friction))
		f := symbol("F", working.Tell("exercise.symbol_friction", "friction factor"), friction)
		by := t.Plus(t.Minus(tf)).Plus(t.Minus(tr)).Minus(f)
		out.agree(name, "T_water", 1, by, is)
		out.tolerance = 0.3
		out.slip("two_factors", working.Tell("exercise.slip_two_factors", "the flour was left out of the factors"),
			t.Plus(t.Minus(tr)).Minus(f))
		out.slip("friction_added", working.Tell("exercise.slip_friction_added",
			"the friction was added instead of taken off"),
			t.Plus(t.Minus(tf)).Plus(t.Minus(tr)).Plus(f))
		out.slip("friction_forgotten", working.Tell("exercise.slip_friction_forgotten", "the friction was forgotten"),
			t.Plus(t.Minus(tf)).Plus(t.Minus(tr)))
		return out
	case Usual:
		levain := d.warm(20, 28)
		in.Others = append(in.Others, mixing.Factor{Kind: mixing.LevainFactor, Temperature: levain})
		is, ok := friendlyWater()
		if !ok {
			return nil
		}
		out := newSheet(working.Tell("exercise.water_levain",
			"The dough should come from the mixer at %v. The flour is at %v, the room at %v, the levain at %v, and the "+
				"friction factor is %v for "+
				"four factors. How warm must the water be?", target, flour, room, levain, friction))
		f := symbol("F", working.Tell("exercise.symbol_friction", "friction factor"), friction)
		tl := symbol("T_levain", working.Tell("exercise.symbol_levain_temperature", "levain"), levain)
		out.agree(name, "T_water", 1, t.Plus(t.Minus(tf)).Plus(t.Minus(tr)).Plus(t.Minus(tl)).Minus(f), is)
		out.tolerance = 0.3
		out.slip("three_factors", working.Tell("exercise.slip_three_factors", "the levain was left out of the factors"),
			t.Plus(t.Minus(tf)).Plus(t.Minus(tr)).Minus(f))
		out.slip("friction_added", working.Tell("exercise.slip_friction_added",
			"the friction was added instead of taken off"),
			t.Plus(t.Minus(tf)).Plus(t.Minus(tr)).Plus(t.Minus(tl)).Plus(f))
		out.slip("friction_forgotten", working.Tell("exercise.slip_friction_forgotten", "the friction was forgotten"),
			t.Plus(t.Minus(tf)).Plus(t.Minus(tr)).Plus(t.Minus(tl)))
		return out
	}
	if d.between(0, 1, 1) == 0 {
		return ice(d)
	}
	return otherDegrees(d, in, name, t, tf, tr)
}

// otherDegrees gives the friction factor in the degrees that the rest is not in.
func otherDegrees(d *dice, in mixing.Factors, name working.Message, t, tf, tr working.Expr) *sheet {
	number := d.between(10, 26, 1)
	degrees, unconverted := working.Fahrenheit, quantity.DeltaCelsius(float64(number))
	in.Friction = quantity.DeltaFahrenheit(float64(number))
	if d.us {
		number = d.between(6, 14, 1)
		degrees, unconverted = working.Celsius, quantity.DeltaFahrenheit(float64(number))
		in.Friction = quantity.DeltaCelsius(float64(number))
	}
	r, err := in.Water()
	if err != nil || r.Temperature.Celsius() < 3 || r.Temperature.Celsius() > 40 {
		return nil
	}
	out := newSheet(working.Tell("exercise.water_other_degrees",
		"The dough should come from the mixer at %v, the flour is at %v, the room at %v. A book gives a friction factor "+
			"of %d %s for three factors. "+
			"How warm must the water be?", in.Target, in.Others[0].Temperature, in.Others[1].Temperature, number,
		string(degrees)))
	f := symbol("F", working.Tell("exercise.symbol_friction_converted",
		"friction factor, a difference: converted without the 32"), in.Friction)
	out.agree(name, "T_water", 1, t.Plus(t.Minus(tf)).Plus(t.Minus(tr)).Minus(f), r.Temperature)
	out.tolerance = 0.3
	sum := t.Plus(t.Minus(tf)).Plus(t.Minus(tr))
	asPoint := quantity.DeltaCelsius((float64(number) - 32) / 1.8)
	if d.us {
		asPoint = quantity.DeltaFahrenheit(float64(number)*1.8 + 32)
	}
	out.slip("difference_as_point", working.Tell("exercise.slip_difference_as_point",
		"the difference was converted like a temperature on the scale"),
		sum.Minus(symbol("F", working.Tell("exercise.symbol_friction_as_point",
			"friction factor, converted like a temperature"), asPoint)))
	out.slip("not_converted", working.Tell("exercise.slip_not_converted", "the number was taken without converting it"),
		sum.Minus(symbol("F", working.Tell("exercise.symbol_friction_unconverted", "friction factor, not converted"),
			unconverted)))
	return out
}

// ice replaces a part of the water, with the round figure of bakery ice tables.
func ice(d *dice) *sheet {
	tap, need := d.warm(14, 24), d.warm(1, 9)
	all := d.mass(3000, 12000, 500)
	melting := quantity.DeltaCelsius(80)
	r, err := mixing.IceWater{Water: all, Tap: tap, Need: need, Melting: melting}.Replace()
	if err != nil || !r.Feasible {
		return nil
	}
	out := newSheet(working.Tell("exercise.water_ice",
		"%v of water should act as if it were at %v, but the tap gives %v. Melting ice cools as much as warming the same "+
			"weight of water by %v. "+
			"How much of the water do you replace by ice?", all, need, tap, melting))
	w := symbol("W", working.Tell("exercise.symbol_water_all", "all the water"), all)
	tt := symbol("T_tap", working.Tell("exercise.symbol_tap", "how the water comes"), tap)
	tn := symbol("T_need", working.Tell("exercise.symbol_need", "what it should act like"), need)
	h := symbol("H", working.Tell("exercise.symbol_melting", "what melting is worth"), melting)
	zero := symbol("T_0", working.Tell("exercise.symbol_ice_temperature", "melting ice"), quantity.Celsius(0))
	out.agree(working.Tell("exercise.find_ice", "ice"), "x", working.WholeNumber,
		w.Times(tt.Minus(tn)).Over(tt.Minus(zero).Plus(h)),
		r.Ice)
	out.tolerance = max(2, 0.005*r.Ice.Grams())
	out.slip("melting_alone", working.Tell("exercise.slip_melting_alone",
		"that the melted ice is still to be warmed was forgotten"),
		w.Times(tt.Minus(tn)).Over(h))
	out.slip("ice_on_top", working.Tell("exercise.slip_ice_on_top",
		"the ice was reckoned on top of all the water instead of in its place"),
		w.Times(tt.Minus(tn)).Over(tn.Minus(zero).Plus(h)))
	out.slip("tap_alone", working.Tell("exercise.slip_tap_alone", "the ice was reckoned for water of %v",
		quantity.Celsius(0)),
		w.Times(tt.Minus(zero)).Over(tt.Minus(zero).Plus(h)))
	return out
}
