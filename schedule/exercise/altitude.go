package exercise

import (
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

// altitude is the boiling point of a place and the core at which bread is done there.
func altitude(d *dice, hard Difficulty) *sheet {
	height, boils, z := place(d)
	style := d.warm(93, 98)
	margin := quantity.DeltaCelsius(2)
	if d.us {
		margin = quantity.DeltaFahrenheit(4)
	}
	target := symbol("T_s", working.Tell("exercise.symbol_style", "core of this bread at sea level"), style)
	gap := symbol("d", working.Tell("exercise.symbol_margin", "distance kept from the boiling point"), margin)
	name := working.Tell("exercise.find_core", "core that means done")
	switch hard {
	case OneStep:
		out := newSheet(working.Tell("exercise.altitude_boiling",
			"Water boils at %v by the sea. A rule says: one degree less for every %v of altitude. At what temperature does "+
				"it boil at %v?", seaLevel(d), ruleStep(d), height))
		out.find(working.Tell("exercise.find_boiling", "boiling point"), "T_b", boilingUnit(d), 1, boils)
		out.tolerance = 0.3
		sea := working.Given("T_0", working.Tell("exercise.symbol_sea", "boiling point by the sea"), seaAmount(d))
		out.slip("added", working.Tell("exercise.slip_added", "the degrees were added instead of taken off"),
			sea.Times(2).Minus(boils))
		out.slip("no_change", working.Tell("exercise.slip_no_change", "the altitude was forgotten"), sea)
		out.slip("ten_times", working.Tell("exercise.slip_ten_times", "the decimal point was in the wrong place"),
			sea.Minus(z.Over(10)))
		return out
	case Usual:
		point := d.warm(90, 98)
		b := symbol("T_b", working.Tell("exercise.symbol_boiling", "boiling point here"), point)
		out := newSheet(working.Tell("exercise.altitude_core",
			"By the sea this bread is done at a core of %v. Here water boils at %v, and the loaf comes out %v below that at "+
				"the latest. At which core is it done here?", style, point, margin))
		capped := out.find(working.Tell("exercise.find_cap", "highest core to wait for"), "T_c", working.Celsius, 1,
			b.Minus(gap))
		out.find(name, "T", working.Celsius, 1, working.Min(target, capped))
		out.tolerance = 0.3
		sea := symbol("T_0", working.Tell("exercise.symbol_sea", "boiling point by the sea"), quantity.Celsius(100))
		coreSlips(out, target, b, gap, sea)
		return out
	}
	out := newSheet(working.Tell("exercise.altitude_both",
		"By the sea this bread is done at a core of %v, and water boils at %v. A rule says: one degree less for every %v "+
			"of altitude. The loaf comes out %v below the boiling point at the latest. At which core is it done at %v?",
		style, seaLevel(d), ruleStep(d), margin, height))
	b := out.find(working.Tell("exercise.find_boiling", "boiling point"), "T_b", boilingUnit(d), 1, boils)
	sea := working.Given("T_0", working.Tell("exercise.symbol_sea", "boiling point by the sea"), seaAmount(d))
	if d.us {
		// The rule is in °F and feet; everything else is kept in the same degrees.
		target = working.Given("T_s", working.Tell("exercise.symbol_style", "core of this bread at sea level"),
			working.Amount(style.Fahrenheit(), working.Fahrenheit, 0))
		gap = working.Given("d", working.Tell("exercise.symbol_margin", "distance kept from the boiling point"),
			working.Amount(margin.Fahrenheit(), working.DeltaFahrenheit, 0))
	}
	capped := out.find(working.Tell("exercise.find_cap", "highest core to wait for"), "T_c", boilingUnit(d), 1,
		b.Minus(gap))
	out.find(name, "T", boilingUnit(d), 1, working.Min(target, capped))
	out.tolerance = 0.3
	coreSlips(out, target, b, gap, sea)
	return out
}

// coreSlips are the usual mistakes with a core at altitude.
func coreSlips(out *sheet, target, boils, gap, sea working.Expr) {
	out.slip("lowered", working.Tell("exercise.slip_lowered", "the core was lowered by as much as the boiling point"),
		target.Minus(sea.Minus(boils)))
	out.slip("no_margin", working.Tell("exercise.slip_no_margin",
		"the core was taken up to the boiling point, which a moist crumb never passes"), boils)
	out.slip("sea_level", working.Tell("exercise.slip_sea_level", "the core of the sea level was kept"), target)
	out.slip("twice_lower", working.Tell("exercise.slip_margin_off_style",
		"the margin was taken off the core of the sea level"), target.Minus(gap))
}

// place draws an altitude with the rule of thumb for its boiling point: 1 °C for 300 m, 1 °F for 500 ft.
func place(d *dice) (quantity.Length, working.Expr, working.Expr) {
	meaning := working.Tell("exercise.symbol_altitude", "altitude")
	sea := working.Given("T_0", working.Tell("exercise.symbol_sea", "boiling point by the sea"), seaAmount(d))
	if d.us {
		feet := d.between(1000, 9000, 100)
		z := working.Given("z", meaning, working.Amount(float64(feet), working.Foot, 0))
		return quantity.Inches(12 * float64(feet)), sea.Minus(z.Over(500)), z.Over(500)
	}
	meters := d.between(300, 3000, 30)
	z := working.Given("z", meaning, quantity.Meters(float64(meters)))
	return quantity.Meters(float64(meters)), sea.Minus(z.Over(300)), z.Over(300)
}

func seaLevel(d *dice) quantity.Temperature {
	if d.us {
		return quantity.Fahrenheit(212)
	}
	return quantity.Celsius(100)
}

func seaAmount(d *dice) working.Value {
	if d.us {
		return working.Amount(212, working.Fahrenheit, 0)
	}
	return working.Amount(100, working.Celsius, 0)
}

func ruleStep(d *dice) quantity.Length {
	if d.us {
		return quantity.Inches(12 * 500)
	}
	return quantity.Meters(300)
}

func boilingUnit(d *dice) working.Unit {
	if d.us {
		return working.Fahrenheit
	}
	return working.Celsius
}
