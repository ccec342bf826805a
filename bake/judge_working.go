package bake

import (
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// Working derives the criteria of the verdict.
func (v LoafVerdict) Working() working.Working {
	d := working.Derive(working.Tell("bake.derive_verdict", "Is it done?"))
	t, err := v.reading.Goal.Target()
	if err != nil || v.reading.Core.IsZero() {
		return d.Working()
	}
	boiling := boilingSteps(d, t.goal.Place, t.pressure, t.Boiling)
	core := working.Given("T", working.Tell("bake.symbol_core", "core now"), v.reading.Core).
		Explained(working.Explain("core"))
	d.Find(working.Finding{
		Name:   working.Tell("bake.step_below", "core below boiling"),
		Symbol: "d", By: boiling.Minus(core), Is: v.Boiling.Sub(v.reading.Core), Decimals: 1,
		Note: working.Tell("bake.note_no_information", "below %.1f a probe carries no information",
			quantity.DeltaCelsius(flat)),
		Source: sources.TestKitchenPlateau,
	})
	target := coreSteps(d, t, boiling)
	if v.CoreThere && v.MinimumLoss.Sign() > 0 && v.State != Done {
		v.holdSteps(d, boiling, target)
	}
	if v.Weighed {
		dough, loaf := working.Given("D", working.Tell("bake.symbol_dough", "dough that went in"),
			v.reading.Dough), working.Given("B", working.Tell("bake.symbol_loaf", "loaf now"), v.reading.Loaf)
		d.Find(working.Finding{
			Name:   working.Tell("bake.step_loss", "loss"),
			Symbol: "L", By: working.Num(100).Times(dough.Minus(loaf)).Over(dough), Is: v.Loss, Decimals: 2,
			Note:   working.Tell("bake.note_least_loss", "at least %v wanted", v.MinimumLoss),
			Source: working.Algebra(), Term: working.Explain("bake_loss"),
		})
	}
	return d.Working()
}

// holdSteps derive how long the target is still to be held.
func (v LoafVerdict) holdSteps(d *working.Derivation, boiling, target working.Expr) {
	held := working.Given("t_held", working.Tell("bake.symbol_held", "held so far"), v.reading.Held.Duration())
	hold := working.Given("t_hold",
		working.Tell("bake.symbol_usual_hold", "time at the target that shows bake-out of a usual piece"),
		v.Hold.Duration())
	if v.reading.InOven > 0 {
		hold = bakeOutSteps(d, v.reading.Style, boiling, target, (v.reading.InOven - v.reading.Held).Duration(),
			hearthProved, v.Hold.Duration())
	}
	d.Find(working.Finding{
		Name:   working.Tell("bake.step_hold_for", "still to hold"),
		Symbol: "t_more", By: working.Max(0, hold.Minus(held)), Is: wholeMinutes(v.HoldFor).Duration(), Decimals: 1,
		Rounding: working.Tell("bake.up_to_minutes", "up to a whole minute: it is a least time"), Source: working.Algebra(),
	})
}

// bakeOutSteps derives how long a core is held from its arrival to bake-out, at a share of the bake.
func bakeOutSteps(
	d *working.Derivation,
	s Style,
	boiling, core working.Expr,
	arrived time.Duration,
	share float64,
	is time.Duration,
) working.Expr {
	arrival := working.Given("t_a",
		working.Tell("bake.symbol_arrival", "time in the oven until the core was at its target"), arrived)
	if !rowOf(s).done.hearth {
		by := arrival.Times(working.Num(1 - arrivalShare).Over(arrivalShare))
		return d.Find(working.Finding{
			Name:   working.Tell("bake.step_hold", "from the arrival of the core to bake-out"),
			Symbol: "t_hold", By: by, Is: is, Decimals: 1,
			Note: working.Tell("bake.note_s_curve", "the core arrives at 85 % of the bake"), Source: sources.SCurve,
		})
	}
	whole := working.Num(startLead).Times(boiling.Minus(usualStart))
	ratio := d.Find(working.Finding{
		Name:   working.Tell("bake.step_near", "time to the target over the time to 7 °C below boiling"),
		Symbol: "r", Decimals: 4,
		By:     working.Ln(whole.Over(boiling.Minus(core))).Over(working.Ln(whole.Over(nearly))),
		Source: sources.Judged("first-term exponential with a lead of 2.5"),
	})
	by := arrival.Over(ratio).Over(share).Minus(arrival)
	if s == Rye {
		by = working.Max(working.Given("t_r", working.Tell("bake.symbol_rye_hold", "least for rye"), ryeHold), by)
	}
	return d.Find(working.Finding{
		Name:   working.Tell("bake.step_hold", "from the arrival of the core to bake-out"),
		Symbol: "t_hold", By: working.Max(0, by), Is: is, Decimals: 1, Within: 0.05, // it is kept in whole seconds
		Note: working.Tell("bake.note_share", "the core comes within 7 °C of boiling when %.0f of the bake is over",
			quantity.NewPercent(100*share)),
		Source: sources.TestKitchenPlateau,
	})
}

// Working derives the likely time left.
func (l Left) Working() working.Working {
	d := working.Derive(working.Tell("bake.derive_left", "Time left in the oven"))
	t, err := l.probe.Goal.Target()
	if err != nil || len(l.probe.Samples) == 0 {
		return d.Working()
	}
	boiling, target := targetSteps(d, t)
	if l.Used > 0 {
		l.fitSteps(d, boiling, target)
	}
	l.outSteps(d, boiling, target)
	return d.Working()
}

func (l Left) fitSteps(d *working.Derivation, boiling, done working.Expr) {
	f := l.fit
	a := l.probe.Approach
	degree := func(name string, meaning working.Message, celsius float64) working.Expr {
		return working.Given(name, meaning, quantity.Celsius(celsius))
	}
	ordinate := func(core working.Expr) working.Expr {
		below := boiling.Minus(core)
		if a == Quickening {
			return working.Ln(below).Plus(working.Num(quicken / 2).Times(below.Over(scaleOf).ToThe(2)))
		}
		return working.Ln(below)
	}
	constant := working.Amount(-1/f.line.Slope, working.Minute, 3)
	tau := working.Given("τ", working.Tell("bake.symbol_tau_fit",
		"time constant, by weighted least squares on %d readings", l.Used), constant).
		Explained(working.Explain("time_constant"))
	if l.Used == 2 {
		dt := working.Given("Δt", working.Tell("bake.symbol_between", "between the readings"),
			working.Amount(-f.first[0], working.Minute, 2))
		earlier, now := degree("T_1", working.Tell("bake.symbol_earlier", "earlier core"), f.first[1]), degree("T_2",
			working.Tell("bake.symbol_core", "core now"), f.last)
		tau = d.Find(working.Finding{
			Name:   working.Tell("bake.step_tau", "time constant"),
			Symbol: "τ", By: dt.Over(ordinate(earlier).Minus(ordinate(now))), Is: constant, Decimals: 3,
			Term: working.Explain("time_constant"), Source: a.source(),
		})
	}
	now := degree("T_now", working.Tell("bake.symbol_fitted", "core now, on the fitted line"),
		f.boiling-a.below(f.line.Intercept))
	d.Find(working.Finding{
		Name:   working.Tell("bake.step_left", "likely time left to the target"),
		Symbol: "t_left", By: tau.Times(ordinate(now).Minus(ordinate(done))),
		Is: working.Amount(l.ToTarget.Likely.Minutes(), working.Minute, 2), Decimals: 2, Source: a.source(),
		Within: 0.001, Note: working.Tell("bake.note_quantum",
			"temperatures are kept to 1/9000 K, which moves the last digit at a tie"),
	})
}

// outSteps derive the likely time until the loaf has baked out.
func (l Left) outSteps(d *working.Derivation, boiling, target working.Expr) {
	if l.State == Vague {
		return
	}
	left := working.Given("t_left",
		working.Tell("bake.symbol_arrives", "until the core is at its target; before now it is negative"), l.arrival)
	hold := working.Given("t_hold",
		working.Tell("bake.symbol_usual_hold", "time at the target that shows bake-out of a usual piece"),
		minutes(l.fit.hold))
	if !l.probe.EntryUnknown && (rowOf(l.probe.Style).done.loss > 0) {
		hold = bakeOutSteps(d, l.probe.Style, boiling, target, l.probe.inOven()+l.arrival, hearthLikely,
			minutes(l.fit.hold))
	}
	d.Find(working.Finding{
		Name: working.Tell(
			"bake.step_out",
			"likely time until baked out",
		), Symbol: "t_out", By: working.Max(0, left.Plus(hold)), Is: l.ToOut.Likely, Decimals: 1, Source: working.Algebra(),
	})
}

// Working derives the likely peak.
func (c CarryOver) Working() working.Working {
	d := working.Derive(working.Tell("bake.derive_carry_over", "Carry-over after the oven"))
	if c.in.Core.IsZero() {
		return d.Working()
	}
	core := working.Given("T", working.Tell("bake.symbol_core_out", "core when taken out"), c.in.Core)
	boiling := working.Given("T_b", working.Tell("bake.symbol_boiling", "local boiling point"), c.Boiling)
	share := working.Given("c", working.Tell("bake.symbol_carried", "share of the distance gained"), carryLikely)
	d.Find(working.Finding{
		Name: working.Tell(
			"bake.step_peak",
			"likely peak of the core",
		), Symbol: "T_peak", By: core.Plus(share.Times(working.Max(0, boiling.Minus(core)))), Is: c.Peak.Likely, Decimals: 1,
		Term:   working.Explain("carry_over"),
		Source: sources.Judged("carry-over, from numerical loaves and one report (175 to 205 °F)"),
	})
	return d.Working()
}
