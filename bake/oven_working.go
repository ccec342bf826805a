package bake

import (
	"math"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// Working derives the setting.
func (o OvenDial) Working() working.Working {
	d := working.Derive(working.Tell("bake.derive_dial", "Oven setting"))
	if !o.in.Wanted.IsValid() {
		return d.Working()
	}
	by := working.Given("W", working.Tell("bake.symbol_wanted", "wanted"), o.in.Wanted)
	if o.in.Fan {
		by = by.Minus(
			working.Given("F", working.Tell("bake.symbol_fan", "less for a fan"), quantity.DeltaCelsius(fanLess)))
	}
	if !o.in.Off.IsZero() {
		by = by.Minus(working.Given("e", working.Tell("bake.symbol_oven_error", "this oven's error"), o.in.Off))
	}
	d.Find(
		working.Finding{
			Name:     working.Tell("bake.step_setting", "setting"),
			Symbol:   "S",
			By:       by,
			Is:       o.Set,
			Decimals: 1,
			Source:   sources.FanOven,
		},
	)
	return d.Working()
}

// Working derives the likely bake time.
func (b BakeTime) Working() working.Working {
	d := working.Derive(working.Tell("bake.derive_time", "Bake time"))
	if b.in.Dough.IsZero() {
		return d.Working()
	}
	b.steps(d)
	return d.Working()
}

func (b BakeTime) steps(d *working.Derivation) working.Expr {
	grams, r := b.in.Dough.Grams(), b.ref
	inside := math.Min(math.Max(grams, r.from), r.to)
	time := working.Given("t_ref", working.Tell("bake.symbol_ref_time", "bake time of the reference"),
		working.Amount(r.minutes, working.Minute, 1))
	m := working.Given("m", working.Tell("bake.symbol_piece", "dough per piece"), b.in.Dough)
	ref := working.Given("m_ref", working.Tell("bake.symbol_ref_dough", "dough of the reference"),
		quantity.Grams(r.grams))
	n := working.Given("n", working.Tell("bake.symbol_exponent", "exponent of the style"),
		working.Amount(r.exponent, "", 4))
	by := time.Times(m.Over(ref).ToThe(n))
	if r.perGram != 0 {
		slope := working.Given("s", working.Tell("bake.symbol_slope", "slope of the table"),
			working.Amount(r.perGram, "min/g", 2))
		within := m
		if inside != grams {
			within = working.Given("m_t", working.Tell("bake.symbol_table_edge", "edge of the table"),
				quantity.Grams(inside))
		}
		by = time.Plus(slope.Times(within.In(working.Gram).Minus(ref.In(working.Gram))))
		if inside != grams {
			by = by.Times(m.Over(within).ToThe(n))
		}
	}
	if b.shape != 1 {
		by = by.Times(working.Given(
			"f",
			working.Tell("bake.symbol_shape_factor",
				"factor of the shape: ratio of the conduction times to the power 0.585"),
			working.Amount(b.shape, "", 5),
		))
	}
	if c := coldChange(b.in); c != 1 {
		by = by.Times(working.Given(
			"c",
			working.Tell("bake.symbol_cold",
				"cold from the refrigerator, against the reference: ln(2.5·96/4) over ln(2.5·75/4), or its inverse"),
			working.Amount(c, "", 4),
		))
	}
	return d.Find(working.Finding{
		Name:   working.Tell("bake.step_time", "likely bake time"),
		Symbol: "t", By: by, Is: working.Amount(b.minutes, working.Minute, 1), Decimals: 1,
		Note: working.Tell("bake.note_guide", "a guide, not a measurement; the core decides"), Source: r.source,
	})
}

// Working derives the likely times.
func (pr Program) Working() working.Working {
	d := working.Derive(working.Tell("bake.derive_program", "Bake program"))
	if pr.in.Dough.IsZero() {
		return d.Working()
	}
	whole := pr.bake.steps(d)
	covered := working.Given(
		"t_c",
		working.Tell("bake.symbol_covered",
			"covered or steamed: given, or by style and vessel, at most 60 %% of the bake"),
		pr.Covered.Duration(),
	)
	open := working.Given("t_u", working.Tell("bake.symbol_uncovered", "uncovered, as given"), pr.Uncovered.Likely)
	if pr.in.Uncovered == 0 {
		open = d.Find(working.Finding{
			Name:   working.Tell("bake.step_uncovered", "uncovered"),
			Symbol: "t_u", By: working.Max(0, whole.Minus(covered)), Is: pr.Uncovered.Likely, Decimals: 1,
			Source: working.Algebra(),
		})
	}
	preheat, reheat := working.Given("p", working.Tell("bake.symbol_preheat", "preheating"),
		pr.Preheat.Duration()), working.Given("q", working.Tell("bake.symbol_reheat", "reheating"),
		pr.Reheat.Duration())
	rounds := working.Given("r", working.Tell("bake.symbol_rounds", "rounds"), pr.Rounds)
	round, between := covered.Plus(open), reheat
	if pr.Boil.Likely > 0 {
		boil := working.Given("t_boil", working.Tell("bake.symbol_boil", "boiling before the oven"),
			pr.Boil.Likely)
		round, between = boil.Plus(covered).Plus(open), working.Max(0, reheat.Minus(boil))
	}
	d.Find(working.Finding{
		Name:   working.Tell("bake.step_all", "in all"),
		Symbol: "t_all", Is: pr.Total.Likely, Decimals: 1, Source: working.Algebra(),
		By: preheat.Plus(rounds.Times(round)).Plus(rounds.Minus(1).Times(between)),
	})
	return d.Working()
}
