package bake

import (
	"slices"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// Working derives the mean and the range of the next loaf.
func (l LearnedLoss) Working() working.Working {
	d := working.Derive(working.Tell("bake.derive_learned", "Loss of this product"))
	if l.Count == 0 || len(l.losses) != l.Count {
		return d.Working()
	}
	usual := l.usualStep(d)
	total := l.sumStep(d)
	n := working.Given("n", working.Tell("bake.symbol_count", "loaves weighed"), l.Count)
	mean := d.Find(working.Finding{
		Name:   working.Tell("bake.step_mean", "mean loss"),
		Symbol: "L", By: usual.Plus(total).Over(working.Num(1).Plus(n)), Is: l.Mean, Decimals: 2,
		Term: working.Explain("bake_loss"), Source: sources.Judged("the style's usual loss counts as one loaf"),
	})
	t := working.Given("t",
		working.Tell("bake.symbol_student", "Student's t for 80 %% and %.0f degrees of freedom", l.freedom),
		working.Amount(l.student, "", 4))
	spread := working.Given("s", working.Tell("bake.symbol_spread", "spread from loaf to loaf"),
		working.Amount(l.Spread.Points(), working.Percent, 3))
	half := t.Times(spread).Times(working.Sqrt(working.Num(1).Plus(working.Num(1).Over(working.Num(1).Plus(n)))))
	d.Find(working.Finding{
		Name:   working.Tell("bake.step_next_low", "the next loaf, at least"),
		Symbol: "L_low", By: working.Max(0, mean.Minus(half)), Is: l.Next.Low, Decimals: 1, Source: sources.Gelman,
	})
	d.Find(working.Finding{
		Name:   working.Tell("bake.step_next_high", "the next loaf, at most"),
		Symbol: "L_high", By: mean.Plus(half), Is: l.Next.High, Decimals: 1, Source: sources.Gelman,
	})
	return d.Working()
}

// usualStep derives the usual loss of the style for a loaf as heavy as those weighed.
func (l LearnedLoss) usualStep(d *working.Derivation) working.Expr {
	dough := quantity.Mass{}
	for _, x := range l.in.Loaves {
		dough = dough.Add(x.Dough)
	}
	m := working.Given("m", working.Tell("bake.symbol_mean_dough", "dough of a loaf, the mean of those weighed"),
		dough.Divide(int64(l.Count)))
	name := working.Tell("bake.symbol_usual", "usual loss of the style, counted as one loaf")
	return usualSteps(d, l.in.Style, m, dough.Grams()/float64(l.Count), working.Finding{Name: name, Symbol: "L_0",
		Is: working.Amount(l.prior, working.Percent, 1), Decimals: 1})
}

// Loaves are told one by one up to mostShown of them, and if each lost leastShown percent: the difference of two
// weights that are nearly the same has no digits to tell in ounces.
const (
	mostShown  = 20
	leastShown = 1.0
)

// sumStep derives the sum of the losses.
func (l LearnedLoss) sumStep(d *working.Derivation) working.Expr {
	sum := 0.0
	for _, x := range l.losses {
		sum += x
	}
	name := working.Tell("bake.symbol_sum", "sum of the losses weighed")
	if l.Count > mostShown || slices.Min(l.losses) < leastShown {
		return working.Given("S", name, working.Amount(sum, working.Percent, 3))
	}
	doughs, breads := make([]float64, l.Count), make([]float64, l.Count)
	for i, x := range l.in.Loaves {
		doughs[i], breads[i] = x.Dough.Grams(), x.Baked.Grams()
	}
	return d.Find(working.Finding{
		Name: name, Symbol: "S", Unit: working.Percent, Decimals: 2, Source: working.Algebra(),
		Table: working.Table{Columns: []working.Column{
			{Symbol: "D", Meaning: working.Tell("bake.symbol_dough", "dough that went in"), Unit: working.Gram, Cells: doughs},
			{Symbol: "B", Meaning: working.Tell("bake.symbol_bread", "bread"), Unit: working.Gram, Cells: breads},
			{Symbol: "L_i", Meaning: working.Tell("bake.symbol_loss_of_one", "loss of this loaf, of its dough"),
				Unit: working.Percent, Decimals: 2, By: func(_ int, before []working.Expr) working.Expr {
					return working.Num(100).Times(before[0].Minus(before[1])).Over(before[0])
				}},
		}},
	})
}

// Working derives the loss.
func (l WeightLoss) Working() working.Working {
	d := working.Derive(working.Tell("bake.derive_weight_loss", "What the loaf lost"))
	if l.in.Dough.IsZero() {
		return d.Working()
	}
	dough, bread := working.Given("D", working.Tell("bake.symbol_dough", "dough that went in"),
		l.in.Dough), working.Given("B", working.Tell("bake.symbol_bread", "bread"), l.in.Baked)
	d.Find(
		working.Finding{
			Name:     working.Tell("bake.step_lost", "lost"),
			Symbol:   "W",
			By:       dough.Minus(bread),
			Is:       l.Lost,
			Decimals: 3,
			Source:   working.Algebra(),
		},
	)
	d.Find(
		working.Finding{
			Name:     working.Tell("bake.step_loss_of_bread", "of the bread"),
			Symbol:   "L_B",
			By:       working.Num(100).Times(dough.Minus(bread)).Over(bread),
			Is:       l.OfBread,
			Decimals: 1,
			Source:   working.Algebra(),
		},
	)
	d.Find(working.Finding{
		Name:   working.Tell("bake.step_loss_of_dough", "of the dough"),
		Symbol: "L", By: working.Num(100).Times(dough.Minus(bread)).Over(dough), Is: l.OfDough, Decimals: 1,
		Term: working.Explain("bake_loss"), Source: working.Algebra(),
	})
	return d.Working()
}

// Working derives the likely loss.
func (g LossGuide) Working() working.Working {
	d := working.Derive(working.Tell("bake.derive_usual", "Usual loss"))
	if g.Dough.IsZero() {
		return d.Working()
	}
	m := working.Given("m", working.Tell("bake.symbol_this_dough", "dough of this loaf"), g.Dough)
	if !g.bread.IsZero() {
		bread := working.Given("B", working.Tell("bake.symbol_bread", "bread"), g.bread)
		loss := working.Given("L", working.Tell("bake.symbol_loss_put_in",
			"loss that comes out below; put in until it stays"),
			g.Loss.Likely)
		m = d.Find(working.Finding{
			Name: working.Tell("bake.symbol_this_dough", "dough of this loaf"), Symbol: "m", Is: g.Dough, Decimals: 1,
			By: bread.Over(working.Num(1).Minus(loss.Share())), Source: working.Algebra(),
		})
	}
	usualSteps(d, g.Style, m, g.Dough.Grams(), working.Finding{
		Name: working.Tell("bake.step_usual", "usual loss of the dough"), Symbol: "L_usual", Is: g.Loss.Likely, Decimals: 1,
		Term: working.Explain("bake_loss"),
	})
	return d.Working()
}

// usualSteps derives the usual loss of a loaf of so much dough: read from the table, or between two of its points.
func usualSteps(d *working.Derivation, style Style, m working.Expr, grams float64, f working.Finding) working.Expr {
	f.Source = sources.Judged(
		"points of the table between 10 to 13 % (Gisslen), 9.8 to 11.5 % (Baking & Snack) and 10 to 20 % (Hamelman)")
	from, to := hearthPoints(grams)
	if rowOf(style).loss.likely > 0 || from == to {
		f.Look = working.Tell("bake.look_losses", "the table of losses by style and size")
		return d.Find(f)
	}
	point := func(name string, meaning working.Message, x float64, unit working.Unit) working.Expr {
		return working.Given(name, meaning, working.Amount(x, unit, 1))
	}
	l1, l2 := point("L_1", working.Tell("bake.symbol_small_loss", "loss of the smaller loaf of the table"), from[1],
		working.Percent), point("L_2", working.Tell("bake.symbol_large_loss", "loss of the larger loaf of the table"),
		to[1], working.Percent)
	m1 := working.Given("m_1", working.Tell("bake.symbol_small", "dough of the smaller loaf of the table"),
		quantity.Grams(from[0]))
	m2 := working.Given("m_2", working.Tell("bake.symbol_large", "dough of the larger loaf of the table"),
		quantity.Grams(to[0]))
	f.By = l1.Plus(l2.Minus(l1).Times(working.Ln(m.Over(m1))).Over(working.Ln(m2.Over(m1))))
	f.Note = working.Tell("bake.note_between", "between two points of the table of hearth loaves, rounded to 0.1 %%")
	return d.Find(f)
}

// Working derives the scaling weight, or the bread of a dough.
func (s Scaling) Working() working.Working {
	d := working.Derive(working.Tell("bake.derive_scaling", "Scaling weight"))
	if s.Dough.IsZero() {
		return d.Working()
	}
	loss := working.Given("L", working.Tell("bake.symbol_loss_basis", "loss in the oven, %v", s.in.Basis), s.in.Loss).
		Explained(working.Explain("bake_loss"))
	keep := working.Num(1).Minus(loss.Share())
	if s.in.Basis == OfBread {
		keep = working.Num(1).Over(working.Num(1).Plus(loss.Share()))
	}
	if s.in.Cooling.Sign() > 0 {
		keep = keep.Times(
			working.Num(1).
				Minus(working.Given("c", working.Tell("bake.symbol_cooling_loss", "loss while cooling"), s.in.Cooling).Share()),
		)
	}
	if s.fromDough {
		d.Find(working.Finding{
			Name: working.Tell(
				"bake.step_bread",
				"bread",
			), Symbol: "B", By: working.Given("D", working.Tell("bake.symbol_piece", "dough per piece"), s.Dough).Times(keep),
			Is: s.Baked, Decimals: 1, Source: sources.GisslenLoss,
		})
		return d.Working()
	}
	d.Find(working.Finding{
		Name:   working.Tell("bake.step_scaling", "dough per piece"),
		Symbol: "D", By: working.Given("B", working.Tell("bake.symbol_cool", "baked and cool"), s.Baked).Over(keep),
		Is: s.Dough, Decimals: 1,
		Term: working.Explain("scaling_weight"), Source: sources.GisslenLoss,
	})
	return d.Working()
}

// Working derives the limits.
func (a AverageWeight) Working() working.Working {
	d := working.Derive(working.Tell("bake.derive_average", "Average system"))
	if a.Nominal.IsZero() {
		return d.Working()
	}
	n := working.Given("N", working.Tell("bake.symbol_nominal", "nominal weight"), a.Nominal)
	tolerance := working.Finding{
		Name: working.Tell("bake.step_tolerance", "tolerable negative error"), Symbol: "e", Is: a.Tolerance, Decimals: 1,
		Note:   working.Tell("bake.look_tolerance", "the band of the nominal weight in the directive, rounded up to 0.1 g"),
		Source: sources.PackTolerances,
	}
	for _, b := range packedBands {
		if grams := a.Nominal.Grams(); grams > b.above {
			by := n.Times(b.percent).Over(100)
			if b.grams > 0 {
				by = working.Num(b.grams)
			}
			tolerance.By = working.Ceil(by.Times(10)).Over(10)
			break
		}
	}
	e := d.Find(tolerance)
	d.Find(
		working.Finding{
			Name:     working.Tell("bake.step_few", "at most one in forty below"),
			Symbol:   "T_1",
			By:       n.Minus(e),
			Is:       a.Few,
			Decimals: 3,
			Source:   sources.AverageSystem,
		},
	)
	d.Find(
		working.Finding{
			Name:     working.Tell("bake.step_none", "none below"),
			Symbol:   "T_2",
			By:       n.Minus(working.Num(2).Times(e)),
			Is:       a.None,
			Decimals: 3,
			Source:   sources.AverageSystem,
		},
	)
	return d.Working()
}

// Working derives the loss.
func (s SolidsLoss) Working() working.Working {
	d := working.Derive(working.Tell("bake.derive_solids", "Loss for the least solids"))
	if s.in.Least.IsZero() {
		return d.Working()
	}
	m := working.Given("m", working.Tell("bake.symbol_moisture", "moisture of the flour"), s.in.FlourMoisture)
	o := working.Given("o", working.Tell("bake.symbol_solids", "other solids"), s.in.OtherSolids)
	w := working.Given("w", working.Tell("bake.symbol_water", "water added"), s.in.Water)
	l := working.Given("s", working.Tell("bake.symbol_least", "least solids of the bread"), s.in.Least)
	d.Find(working.Finding{
		Name: working.Tell("bake.step_solids", "loss"), Symbol: "L", Is: s.Loss, Decimals: 2, Source: sources.CFRBread,
		By: working.Num(100).
			Times(working.Num(1).Minus(working.Num(100).Minus(m).Plus(o).Over(l.Share().Times(working.Num(100).Plus(w).Plus(o))))),
	})
	return d.Working()
}
