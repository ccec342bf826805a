package exercise

import (
	"math"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

// cooling is a loaf on the rack: halves of its distance from the room.
func cooling(d *dice, hard Difficulty) *sheet {
	room := d.warm(18, 24)
	halving := d.between(20, 40, 5)
	halves := d.between(2, 3, 1)
	step := d.between(6, 9, 1) // degrees that are left in the end
	if d.us {
		step = d.between(10, 16, 1)
	}
	above := func(times float64) quantity.Temperature {
		degrees := float64(step) * times
		if d.us {
			return room.Add(quantity.DeltaFahrenheit(degrees))
		}
		return room.Add(quantity.DeltaCelsius(degrees))
	}
	start, end := above(math.Exp2(float64(halves))), above(1)
	if start.Celsius() > 97 || start.Celsius() < 45 {
		return nil
	}
	t0 := symbol("T_0", working.Tell("exercise.symbol_core_start", "core at first"), start)
	ta := symbol("T_a", working.Tell("exercise.symbol_air", "room"), room)
	h := symbol("h", working.Tell("exercise.symbol_halving", "time in which the distance halves"), minutes(halving))
	switch hard {
	case OneStep:
		out := newSheet(working.Tell("exercise.cooling_core",
			"The core of a loaf is at %v, the room at %v. Its distance from the room halves every %v. How warm is the core "+
				"after %v?", start, room, minutes(halving), minutes(halving*halves)))
		t := symbol("t", working.Tell("exercise.symbol_passed", "time that has passed"), minutes(halving*halves))
		out.find(working.Tell("exercise.find_core_then", "core then"), "T", working.Celsius, 1,
			ta.Plus(t0.Minus(ta).Over(working.Num(2).ToThe(t.Over(h)))))
		out.tolerance = 0.3
		out.slip("temperature_halved", working.Tell("exercise.slip_temperature_halved",
			"the temperature itself was halved, not its distance from the room"),
			t0.Minus(zeroDegrees(d)).Over(working.Num(2).ToThe(t.Over(h))).Plus(zeroDegrees(d)))
		out.slip("room_forgotten",
			working.Tell("exercise.slip_room_forgotten", "the distance was given, without the room"),
			zeroDegrees(d).Plus(t0.Minus(ta).Over(working.Num(2).ToThe(t.Over(h)))))
		out.slip("once", working.Tell("exercise.slip_once", "the distance was halved once only"),
			ta.Plus(t0.Minus(ta).Over(2)))
		return out
	case Usual:
		ts := symbol("T_s", working.Tell("exercise.symbol_slice", "core at which it is sliced"), end)
		out := newSheet(working.Tell("exercise.cooling_time",
			"The core of a loaf is at %v, the room at %v. Its distance from the room halves every %v. When can it be sliced "+
				"at %v?", start, room, minutes(halving), end))
		out.find(working.Tell("exercise.find_time_to_slice", "time until it can be sliced"), "t", working.Minute, 1,
			h.Times(working.Ln(t0.Minus(ta).Over(ts.Minus(ta)))).Over(working.Ln(2)))
		out.tolerance = 1
		out.slip("straight_line", working.Tell("exercise.slip_straight_line",
			"the loaf was cooled in a straight line, as fast as at first"),
			h.Times(t0.Minus(ts)).Over(t0.Minus(ta).Over(2)))
		out.slip("one_halving_short", working.Tell("exercise.slip_one_halving_short", "one halving was left out"),
			h.Times(working.Ln(t0.Minus(ta).Over(ts.Minus(ta))).Over(working.Ln(2)).Minus(1)))
		out.slip("ratio_as_count", working.Tell("exercise.slip_ratio_as_count",
			"the ratio of the distances was taken for the number of halvings"),
			h.Times(t0.Minus(ta).Over(ts.Minus(ta))))
		return out
	}
	apart := d.between(15, 40, 5)
	now := above(of(d, 2.0, 3.0, 4.0, 5.0))
	if now.Compare(start) >= 0 || start.Sub(now).Celsius() < 6 {
		return nil
	}
	tn := symbol("T_n", working.Tell("exercise.symbol_core_now", "core now"), now)
	ts := symbol("T_s", working.Tell("exercise.symbol_slice", "core at which it is sliced"), end)
	dt := symbol("Δt", working.Tell("exercise.symbol_between", "time between the readings"), minutes(apart))
	out := newSheet(working.Tell("exercise.cooling_readings",
		"The core of a loaf was at %v and is at %v now, %v later; the room is at %v. How long until it can be sliced at %v?",
		start, now, minutes(apart), room, end))
	tau := out.find(working.Tell("exercise.find_time_constant", "time constant"), "τ", working.Minute, 2,
		dt.Over(working.Ln(t0.Minus(ta).Over(tn.Minus(ta)))))
	out.find(working.Tell("exercise.find_time_to_slice", "time until it can be sliced"), "t", working.Minute, 1,
		tau.Times(working.Ln(tn.Minus(ta).Over(ts.Minus(ta)))))
	out.tolerance = 1
	out.slip("straight_line", working.Tell("exercise.slip_straight_line_readings",
		"the two readings were carried on in a straight line"),
		dt.Times(tn.Minus(ts)).Over(t0.Minus(tn)))
	out.slip("from_the_start", working.Tell("exercise.slip_from_the_start",
		"the time was reckoned from the first reading, not from now"),
		tau.Times(working.Ln(t0.Minus(ta).Over(ts.Minus(ta)))))
	out.slip(
		"no_room",
		working.Tell("exercise.slip_no_room", "the room was not taken off the temperatures"),
		dt.Times(working.Ln(tn.Minus(zeroDegrees(d)).Over(ts.Minus(zeroDegrees(d))))).
			Over(working.Ln(t0.Minus(zeroDegrees(d)).Over(tn.Minus(zeroDegrees(d))))),
	)
	return out
}

func minutes(n int) time.Duration { return time.Duration(n) * time.Minute }

// zeroDegrees is the zero of the scale that the numbers are in: whoever forgets the room reckons from there.
func zeroDegrees(d *dice) working.Expr {
	meaning := working.Tell("exercise.symbol_zero", "zero of the scale")
	if d.us {
		return working.Given("T_00", meaning, quantity.Fahrenheit(0))
	}
	return working.Given("T_00", meaning, quantity.Celsius(0))
}
