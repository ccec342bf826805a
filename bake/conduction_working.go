package bake

import (
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// diffusivity derives the thermal diffusivity of a crumb, times a gain.
func diffusivity(d *working.Derivation, porosity, gain, is float64) working.Expr {
	p := working.Given("ε", working.Tell("bake.symbol_porosity", "porosity of the crumb"),
		quantity.NewPercent(100*porosity))
	by := working.Exp(working.Num(0.01).Times(p).Minus(15.25))
	if gain != 1 {
		by = working.Given("g", working.Tell("bake.symbol_gain",
			"how much better a hot crumb conducts, vapor in its pores"), gain).
			Times(by)
	}
	return d.Find(working.Finding{
		Name:   working.Tell("bake.step_diffusivity", "thermal diffusivity of the crumb"),
		Symbol: "α", By: by, Is: working.Amount(is, "m²/s", 11), Decimals: 11,
		Term: working.Explain("diffusivity"), Source: sources.Zanoni1995,
	})
}

// Working derives the likely time.
func (a Arrival) Working() working.Working {
	d := working.Derive(working.Tell("bake.derive_arrival", "Time to the target, from the size of the loaf"))
	t, err := a.in.Goal.Target()
	if err != nil || len(a.terms) == 0 {
		return d.Working()
	}
	boiling, done := targetSteps(d, t)
	_, porosity := specificVolume(a.in.Style)
	alpha := diffusivity(d, porosity, vaporGain, vaporGain*a.alpha)
	axes := axisSteps(d, a.terms, surface{})
	tau := timeConstant(d, axes, alpha, a.tau)
	start := working.Given("T_d", working.Tell("bake.symbol_start", "dough when it goes in"),
		quantity.Celsius(a.in.Start.Celsius()))
	d.Find(working.Finding{
		Name:   working.Tell("bake.step_arrival", "likely time to the target"),
		Symbol: "t", Is: a.Time.Likely, Decimals: 1,
		By:     tau.Times(working.Ln(working.Num(startLead).Times(boiling.Minus(start)).Over(boiling.Minus(done)))),
		Source: sources.Judged("first-term exponential with a lead of 2.5"),
	})
	return d.Working()
}

// Working derives the likely cooling time.
func (c CoolingTime) Working() working.Working {
	d := working.Derive(working.Tell("bake.derive_cooling", "Cooling to slicing temperature"))
	if c.in.Baked.IsZero() {
		return d.Working()
	}
	ml, porosity := specificVolume(c.in.Style)
	baked := working.Given("B", working.Tell("bake.symbol_baked", "loaf out of the oven"), c.in.Baked)
	v := working.Given("v", working.Tell("bake.symbol_specific_volume", "usual volume of a gram of %v bread",
		c.in.Style), working.Amount(ml, "mL/g", 1)).
		Explained(working.Explain("specific_volume"))
	d.Find(working.Finding{
		Name: working.Tell(
			"bake.step_volume",
			"volume of the loaf",
		), Symbol: "V", By: baked.In(working.Gram).Times(v), Is: working.Amount(c.prior.volume*1e6, working.Milliliter, 0),
		Decimals: working.WholeNumber,
		Note:     working.Tell("bake.note_form", "from it and the form of the loaf come the radii below"),
		Source:   sources.Judged("typical specific volumes (from memory)"),
	})
	alpha := diffusivity(d, porosity, 1, c.prior.alpha)
	axes := axisSteps(d, c.prior.terms, surface{c.prior.surface, c.prior.k})
	tau := timeConstant(d, axes, alpha, c.prior.tau/60)
	from := working.Given("T_0", working.Tell("bake.symbol_out", "core out of the oven"), c.in.From)
	w := working.Given("w", working.Tell("bake.symbol_steamed", "percent of its weight that it loses while it cools"),
		working.Amount(c.lost, working.Percent, 1))
	steamed := d.Find(working.Finding{
		Name: working.Tell(
			"bake.step_steamed",
			"core less what the steam takes with it",
		), Symbol: "T_e", By: from.Minus(working.Num(2340.0).Over(280).Times(w)), Is: quantity.Celsius(c.from), Decimals: 2,
		Note:   working.Tell("bake.note_latent", "2,340 kJ/kg of steam, 2.8 kJ/(kg K) of bread: 8.36 °C for each percent"),
		Source: sources.Rask,
	})
	if c.Ready.Likely == 0 {
		return d.Working()
	}
	room, slice := working.Given("T_a", working.Tell("bake.symbol_room", "room"), c.Room), working.Given("T_s",
		working.Tell("bake.symbol_slice", "core when cut"), c.Slice)
	theta := d.Find(working.Finding{
		Name:   working.Tell("bake.step_share_left", "share of the temperature difference left"),
		Symbol: "θ", By: slice.Minus(room).Over(steamed.Minus(room)), Decimals: 4, Source: working.Algebra(),
	})
	lead := seriesLead(d, axes, alpha, c.prior.alpha, c.Ready.Likely.Minutes())
	d.Find(working.Finding{
		Name:   working.Tell("bake.step_cooling", "likely time"),
		Symbol: "t", By: tau.Times(working.Ln(lead.Over(theta))), Is: c.Ready.Likely, Decimals: working.WholeNumber,
		Within: 0.05, Source: sources.Conduction, // it is kept in whole seconds
	})
	return d.Working()
}

// Working derives the likely time left.
func (c CoolingLeft) Working() working.Working {
	d := working.Derive(working.Tell("bake.derive_cooling_left", "Cooling time left"))
	if len(c.in.Samples) < 2 {
		return d.Working()
	}
	if c.Reached {
		d.Find(working.Finding{
			Name:   working.Tell("bake.step_cooling_left", "likely time left"),
			Symbol: "t_left", Is: working.Amount(0, working.Minute, 0),
			Look:   working.Tell("bake.look_reached", "the last reading is at the slicing temperature or below"),
			Source: working.Algebra(),
		})
		return d.Working()
	}
	first, last := c.in.Samples[0], c.in.Samples[len(c.in.Samples)-1]
	degree := func(name string, meaning working.Message, celsius float64) working.Expr {
		return working.Given(name, meaning, quantity.Celsius(celsius))
	}
	room := degree("T_a", working.Tell("bake.symbol_room", "room"), c.in.Room.Celsius())
	constant := working.Amount(c.tau, working.Minute, 3)
	tau := working.Given("τ", working.Tell("bake.symbol_tau_fit",
		"time constant, by weighted least squares on %d readings", len(c.in.Samples)), constant).
		Explained(working.Explain("time_constant"))
	if len(c.in.Samples) == 2 {
		dt := working.Given("Δt", working.Tell("bake.symbol_between", "between the readings"),
			working.Amount((last.At-first.At).Duration().Minutes(), working.Minute, 2))
		earlier, now := degree("T_1", working.Tell("bake.symbol_earlier", "earlier core"),
			first.Core.Celsius()), degree("T_2", working.Tell("bake.symbol_core", "core now"), last.Core.Celsius())
		tau = d.Find(working.Finding{
			Name: working.Tell(
				"bake.step_tau",
				"time constant",
			), Symbol: "τ", By: dt.Over(working.Ln(earlier.Minus(room).Over(now.Minus(room)))), Is: constant, Decimals: 3,
			Term: working.Explain("time_constant"), Source: sources.Conduction,
		})
	}
	now, slice := degree("T_now", working.Tell("bake.symbol_fitted", "core now, on the fitted line"),
		c.in.Room.Celsius()+c.now), degree("T_s", working.Tell("bake.symbol_slice", "core when cut"),
		c.Slice.Celsius())
	d.Find(working.Finding{
		Name:   working.Tell("bake.step_cooling_left", "likely time left"),
		Symbol: "t_left", By: working.Max(0, tau.Times(working.Ln(now.Minus(room).Over(slice.Minus(room))))),
		Is: c.Ready.Likely, Decimals: 1, Source: sources.Conduction,
	})
	return d.Working()
}
