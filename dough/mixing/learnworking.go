package mixing

import (
	"strconv"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// mostPrinted is how many batches a working prints.
const mostPrinted = 20

// Working derives the estimates: what was believed before, the batches, and what is believed now.
func (l Learned) Working() working.Working {
	d := working.Derive(working.Tell("mixing.derive_learned", "What the batches say about the mixer"))
	if !l.ok {
		return d.Working()
	}
	k := l.speeds()
	judged := working.Source{
		Key: "prior", Title: "trade figures of the kind of mixer; share of the bowl and thermometer error are " +
			"judgments", Standing: working.Judgment,
	}
	for i := range k {
		d.Find(working.Finding{
			Name:   working.Tell("mixing.prior_speed", "warming a minute at speed %d, before any batch", i+1),
			Symbol: "r0_" + strconv.Itoa(i+1), Is: quantity.DeltaCelsius(l.initial[i]), Decimals: 3,
			Look: working.Tell("mixing.look_prior", "the trade's figure, give or take %.2f",
				quantity.DeltaCelsius(l.spread0[i])), Source: judged,
		})
	}
	found := make([]working.Expr, k+1)
	look := working.Tell(
		"mixing.look_least_squares", "least squares over %d {1|batch|batches}, with what was believed before as one "+
			"more row for each figure", l.Batches)
	for i := range k {
		found[i] = d.Find(working.Finding{
			Name: working.Tell("mixing.label_speed", "warming a minute at speed %d", i+1), Symbol: "r_" +
				strconv.Itoa(i+1),
			Is: working.Amount(l.theta[i], "Δ°C/min", 4), Look: look, Source: sources.ConjugateRegression,
			Note: working.Tell("mixing.note_error", "± %.2f", l.PerMinute[i].StandardError),
		})
	}
	found[k] = d.Find(working.Finding{
		Name: working.Tell("mixing.bowl_share", "bowl's heat capacity over the dough's"), Symbol: "k",
		Is: working.Amount(l.theta[k], "", 4), Look: look,
		Source: sources.ConjugateRegression, Note: working.Tell("mixing.note_share_error", "± %.1f",
			l.Bowl.StandardError),
	})
	for i, row := range l.design {
		if i == mostPrinted {
			break
		}
		b := l.in.Batches[i]
		n := strconv.Itoa(i + 1)
		dough := working.Given("T_"+n, working.Tell("mixing.symbol_batch_dough", "dough of batch %d", i+1), b.Dough)
		bowl := working.Given("B_"+n, working.Tell("mixing.symbol_batch_bowl", "bowl of batch %d", i+1), b.Bowl)
		sum := found[k].Times(bowl.Minus(dough))
		for j := range k {
			t := working.Given(
				"t_"+n+"_"+strconv.Itoa(j+1), working.Tell("mixing.symbol_batch_minutes",
					"minutes of batch %d at speed %d", i+1, j+1),
				working.Amount(row[j], working.Minute, 2))
			sum = sum.Plus(found[j].Times(t))
		}
		d.Find(working.Finding{
			Name: working.Tell("mixing.batch_rise", "rise expected of batch %d", i+1), Symbol: "d_" + n, By: sum,
			Unit: working.DeltaCelsius, Decimals: 2,
			Source: sources.HeatBalance,
			Note: working.Tell("mixing.batch_measured", "measured: %.2f above where the ingredients meet",
				quantity.DeltaCelsius(l.rises[i])),
		})
	}
	nu := working.Given("ν", working.Tell("mixing.symbol_prior_weight",
		"weight of what was believed before, in residuals"), working.Amount(priorFreedom, "", 0))
	s0 := working.Given("s0", working.Tell("mixing.symbol_thermometer", "thermometer error"), l.in.Thermometer)
	squares := working.Given("S", working.Tell("mixing.symbol_squares", "squared residuals, batches and beliefs"),
		working.Amount(l.sumSq, "K²", 4))
	n := working.Given("n", working.Tell("mixing.symbol_batches", "batches"), l.Batches)
	residual := d.Find(working.Finding{
		Name: working.Tell("mixing.residual_spread", "standard deviation of a residual"), Symbol: "s",
		By: working.Sqrt(nu.Times(s0.ToThe(2)).Plus(squares).Over(nu.Plus(n))), Is: quantity.DeltaCelsius(l.scale),
		Decimals: 2,
		Source:   sources.ConjugateRegression,
	})
	d.Find(working.Finding{
		Name: working.Tell("mixing.batch_spread", "how far one batch lies from the next, its bowl counted"), Symbol: "s_b",
		By: residual.Over(working.Num(1).Plus(found[k])), Is: l.Spread, Decimals: 2, Source: sources.HeatBalance,
	})
	return d.Working()
}

// Working derives the likely temperature and the range.
func (r Prediction) Working() working.Working {
	d := working.Derive(working.Tell("mixing.derive_prediction", "Dough temperature of a planned batch"))
	if !r.l.ok {
		return d.Working()
	}
	k := r.l.speeds()
	share := working.Given("k", working.Tell("mixing.bowl_share", "bowl's heat capacity over the dough's"),
		working.Amount(r.l.theta[k], "", 4))
	sum := working.Given("T_0", working.Tell("mixing.symbol_meet", "where the ingredients meet without mixing"),
		quantity.Celsius(r.t0))
	for j := range k {
		n := strconv.Itoa(j + 1)
		rate := working.Given("r_"+n, working.Tell("mixing.label_speed", "warming a minute at speed %d", j+1),
			working.Amount(r.l.theta[j], "Δ°C/min", 4))
		minutes := working.Given("t_"+n, working.Tell("mixing.symbol_minutes", "minutes at speed %d", j+1),
			working.Amount(r.row[j], working.Minute, 2))
		sum = sum.Plus(rate.Times(minutes))
	}
	sum = sum.Plus(share.Times(working.Given("T_bowl", working.Tell("mixing.symbol_bowl_temperature", "bowl"),
		r.b.Bowl)))
	f := working.Finding{
		Name: working.Tell("mixing.likely_dough", "likely dough temperature"), Symbol: "T",
		By: sum.Over(working.Num(1).Plus(share)), Is: r.Dough.Likely,
		Decimals: 1, Source: sources.HeatBalance,
	}
	if r.Extrapolated {
		f.Note = working.Tell("mixing.note_extrapolated", "the batch is a third lighter or heavier than any in the log")
	}
	likely := d.Find(f)
	q := working.Given("q", working.Tell("mixing.symbol_quantile", "quantile of Student's t, %.0f degrees of freedom",
		r.l.Freedom), working.Amount(r.quantile, "", 3))
	u := working.Given("u", working.Tell("mixing.symbol_spread", "standard deviation of the prediction"),
		quantity.DeltaCelsius(r.spread))
	half := d.Find(working.Finding{
		Name: working.Tell("mixing.half_width", "half the width of the range"), Symbol: "h", By: q.Times(u),
		Is:       quantity.DeltaCelsius(r.quantile * r.spread),
		Decimals: 2, Source: sources.ConjugateRegression,
	})
	d.Find(working.Finding{
		Name: working.Tell("mixing.range_low", "range from"), Symbol: "T_low", By: likely.Minus(half), Is: r.Dough.Low,
		Decimals: 1, Source: working.Algebra(),
	})
	d.Find(working.Finding{
		Name: working.Tell("mixing.range_high", "range to"), Symbol: "T_high", By: likely.Plus(half), Is: r.Dough.High,
		Decimals: 1, Source: working.Algebra(),
	})
	return d.Working()
}

// Working derives the likely time.
func (t MinutesLeft) Working() working.Working {
	d := working.Derive(working.Tell("mixing.derive_minutes", "Minutes left before a limit"))
	name := working.Tell("mixing.time_left", "likely time left")
	switch {
	case t.rate <= 0:
		return d.Working()
	case t.Reached:
		d.Find(working.Finding{
			Name: name, Symbol: "t", Is: quantity.Elapsed(0), Look: working.Tell("mixing.look_limit",
				"the limit is reached"), Source: working.Algebra(),
		})
		return d.Working()
	}
	gap := working.Given("g", working.Tell("mixing.symbol_gap",
		"limit less the temperature now, times one plus the bowl's share"), quantity.DeltaCelsius(t.gap))
	rate := working.Given("r", working.Tell("mixing.symbol_rate", "warming a minute"), working.Amount(t.rate, "Δ°C/min",
		4))
	d.Find(working.Finding{
		Name: name, Symbol: "t", By: gap.Over(rate), Is: t.Range.Likely, Decimals: 1, Source: sources.Fieller,
		Note: working.Tell("mixing.note_fieller", "the range is Fieller's, with a quantile of Student's t of %.2f "+
			"and a standard error of %.3f a minute", t.quantile, t.rateSE),
	})
	return d.Working()
}
