package bake

import (
	"math"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
	"example.org/maslin/internal/steam"
)

// Working derives the boiling point.
func (b Boiling) Working() working.Working {
	d := working.Derive(working.Tell("bake.derive_boiling", "Boiling point of water"))
	if b.Pressure.IsValid() {
		boilingSteps(d, b.place, b.Pressure.pascals(), b.Point)
	}
	return d.Working()
}

const (
	pascal working.Unit = "Pa"
	meters working.Unit = "m above the sea" // the formulas of the atmosphere are for meters, whoever reads
)

// boilingSteps derives the pressure and the boiling point from it.
func boilingSteps(d *working.Derivation, place Site, pressure float64, point quantity.Temperature) working.Expr {
	p := pressureSteps(d, place, pressure)
	beta := d.Find(working.Finding{
		Name:   working.Tell("bake.step_beta", "fourth root of the pressure in MPa"),
		Symbol: "β", By: p.Over(1e6).ToThe(0.25), Source: sources.IF97,
	})
	n := steam.Region4()
	sum := func(symbol string, a, b, c float64, name working.Message) working.Expr {
		return d.Find(working.Finding{
			Name: name, Symbol: symbol, Source: sources.IF97,
			By: plus(plus(scaled(a, beta.ToThe(2)), b, beta), c),
		})
	}
	e := sum("E", 1, n[2], n[5], working.Tell("bake.step_if97_e", "first sum of the boiling line"))
	f := sum("F", n[0], n[3], n[6], working.Tell("bake.step_if97_f", "second sum of the boiling line"))
	g := sum("G", n[1], n[4], n[7], working.Tell("bake.step_if97_g", "third sum of the boiling line"))
	root := d.Find(working.Finding{
		Name: working.Tell("bake.step_if97_d", "root of the three"), Symbol: "D", Source: sources.IF97,
		By: working.Num(2).
			Times(g).
			Over(f.Neg().Minus(working.Sqrt(f.ToThe(2).Minus(working.Num(4).Times(e).Times(g))))),
	})
	ten := working.Num(n[9]).Plus(root)
	return d.Find(working.Finding{
		Name:   working.Tell("bake.step_boiling", "boiling point"),
		Symbol: "T_b", Is: point, Decimals: 2, Source: sources.IF97,
		Term:  working.Explain("boiling_point"),
		Brief: working.Tell("bake.brief_boiling", "Water boils here at %.1f.", point),
		By: ten.Minus(working.Sqrt(ten.ToThe(2).Minus(working.Num(4).Times(working.Num(n[8]).Plus(working.Num(n[9]).Times(root)))))).
			Over(2).
			Minus(zeroKelvin),
	})
}

// scaled is a·x, without the factor 1.
func scaled(a float64, x working.Expr) working.Expr {
	if a == 1 {
		return x
	}
	return working.Num(a).Times(x)
}

// plus is sum + a·x, told as a difference where a is negative.
func plus(sum working.Expr, a float64, x ...working.Expr) working.Expr {
	term := working.Num(math.Abs(a))
	for _, f := range x {
		term = term.Times(f)
	}
	if a < 0 {
		return sum.Minus(term)
	}
	return sum.Plus(term)
}

// pressureSteps derives the pressure of the air.
func pressureSteps(d *working.Derivation, place Site, pressure float64) working.Expr {
	if place.Station.IsValid() {
		return working.Given("p", working.Tell("bake.symbol_barometer", "pressure that the barometer reads"),
			working.Amount(pressure, pascal, 1))
	}
	z := working.Given("Z", working.Tell("bake.symbol_altitude", "altitude"),
		working.Amount(place.Altitude.Meters(), meters, 1)).
		Explained(working.Explain("altitude"))
	h := d.Find(working.Finding{
		Name: working.Tell("bake.step_geopotential", "geopotential altitude"), Symbol: "H",
		By: working.Num(6356766).
			Times(z).
			Over(working.Num(6356766).Plus(z)),
		Unit: meters, Decimals: 2, Source: sources.ISO2533,
	})
	if place.SeaLevel.IsValid() {
		q := working.Given("q", working.Tell("bake.symbol_sea_level", "pressure reduced to sea level"),
			working.Amount(place.SeaLevel.pascals(), pascal, 1))
		reduced := d.Find(working.Finding{
			Name:   working.Tell("bake.step_reduced", "pressure altitude of the reduced pressure"),
			Symbol: "H_q", Unit: meters, Decimals: 2, Source: sources.ISO2533,
			By: working.Num(288.15).
				Over(0.0065).
				Times(working.Num(1).Minus(q.Over(101325).ToThe(working.Num(1).Over(5.255876)))),
		})
		h = d.Find(working.Finding{
			Name:   working.Tell("bake.step_pressure_altitude", "pressure altitude here"),
			Symbol: "H_p", By: h.Plus(reduced), Unit: meters, Decimals: 2, Source: working.Algebra(),
		})
	}
	return d.Find(working.Finding{
		Name:   working.Tell("bake.step_pressure", "pressure of the standard atmosphere"),
		Symbol: "p", Is: working.Amount(pressure, pascal, 1), Source: sources.ISO2533,
		Brief: working.Tell("bake.brief_pressure", "The air presses with %.0f hPa here; by the sea it is 1013 hPa.",
			pressure/100),
		By: working.Num(101325).
			Times(working.Num(1).Minus(working.Num(0.0065).Times(h).Over(288.15)).ToThe(5.255876)),
		Decimals: 1,
	})
}

// Working derives the pressure and the temperature.
func (a Atmosphere) Working() working.Working {
	d := working.Derive(working.Tell("bake.derive_atmosphere", "Standard atmosphere"))
	if !a.Pressure.IsValid() {
		return d.Working()
	}
	pressureSteps(d, Site{Altitude: a.place.Altitude}, a.Pressure.pascals())
	h := working.Given("H", working.Tell("bake.step_geopotential", "geopotential altitude"),
		working.Amount(steam.Geopotential(a.place.Altitude.Meters()), meters, 2))
	d.Find(working.Finding{
		Name:   working.Tell("bake.step_air", "temperature of the air"),
		Symbol: "T", Is: a.Temperature, Decimals: 1, Source: sources.ISO2533,
		By: working.Num(15).Minus(working.Num(0.0065).Times(h)),
	})
	return d.Working()
}

// Working derives the target.
func (t CoreTarget) Working() working.Working {
	d := working.Derive(working.Tell("bake.derive_target", "Core temperature that means done"))
	if t.Core.IsValid() {
		targetSteps(d, t)
	}
	return d.Working()
}

// targetSteps derives the boiling point and the target; it returns both.
func targetSteps(d *working.Derivation, t CoreTarget) (boiling, target working.Expr) {
	boiling = boilingSteps(d, t.goal.Place, t.pressure, t.Boiling)
	return boiling, coreSteps(d, t, boiling)
}

// coreSteps derive the target from the boiling point.
func coreSteps(d *working.Derivation, t CoreTarget, boiling working.Expr) working.Expr {
	sea := working.Given("T_0", working.Tell("bake.symbol_sea_target", "target at sea level, %v bread", t.goal.Style),
		quantity.Celsius(t.sea))
	margin := working.Given("m", working.Tell("bake.symbol_margin", "margin below boiling"),
		quantity.DeltaCelsius(capMargin))
	wanted := sea
	if t.goal.Rule == Offset {
		z := working.Given("Z", working.Tell("bake.symbol_altitude", "altitude"),
			working.Amount(t.goal.Place.Altitude.Meters(), meters, 1))
		wanted = sea.Minus(z.Over(metersPerDegree))
	}
	return d.Find(working.Finding{
		Name:   working.Tell("bake.step_target", "target here"),
		Symbol: "T_done", Is: t.Core, Decimals: 1, By: working.Min(wanted, boiling.Minus(margin)),
		Note: working.Tell("bake.note_rule", "%v rule", t.goal.Rule),
		Source: sources.Judged(
			"the cap or offset rule for altitude; no tested table exists (Ask Extension 404313)"),
		Term: working.Explain("doneness"),
	})
}
