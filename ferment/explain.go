package ferment

import (
	"fmt"
	"math"
	"strings"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

func sourceRipe() working.Source {
	return sources.Judged("a ripe levain's yeast relative to its flour, set on common practice at 24 °C")
}

// Working derives the estimate step by step.
func (e Estimate) Working() working.Working {
	w := working.Working{Title: "When the dough is ready"}
	if len(e.nodes) == 0 {
		return w
	}
	f, b := &e.f, e.bulk
	steps, share := f.shareSteps(b)
	w.Steps = append(w.Steps, steps...)
	plain := f.share / f.salt
	K := f.amplitude
	h, sens := f.need(f.target)
	need := math.Exp(h)
	w.Steps = append(w.Steps, working.Step{
		Name: "dose the rise needs", Symbol: "M", Formula: "ln(1 + K × R ÷ (f × s)) + lag",
		Where: []working.Binding{
			{Symbol: "K", Meaning: "amplitude of this culture and dough; 1 when nothing is known", Value: fixed(K, 4)},
			{Symbol: "R", Meaning: "rise wanted", Value: b.Rise.String()},
			share,
			{Symbol: "s", Meaning: "what the salt leaves of the gas", Value: fixed(f.salt, 4)},
			{Symbol: "lag", Meaning: "dose lost by a levain from the refrigerator", Value: number(f.lag)},
		},
		Numbers: fmt.Sprintf("ln(1 + %s × %s ÷ (%s × %s)) + %s", fixed(K, 4), number(f.target), number(plain), fixed(f.salt, 4), number(f.lag)),
		Value:   fixed(need, 4), Tolerance: 2e-4, Note: fmt.Sprintf("the culture doubles %s times", fixed(need/math.Ln2, 1)),
		Source: sources.GasFromGrowth,
	})
	n := e.at(math.Min(e.likely, hours(Horizon)))
	pace := math.Exp(f.pace(n.mean()))
	w.Steps = append(w.Steps,
		f.paceStep(n),
		working.Step{
			Name: "dose from the curve until the dough is likely ready", Symbol: "M_curve", Formula: "M ÷ p",
			Where:   []working.Binding{{Symbol: "M", Meaning: "dose needed", Value: fixed(need, 4)}, {Symbol: "p", Meaning: "pace", Value: fixed(pace, 4)}},
			Numbers: fmt.Sprintf("%s ÷ %s", fixed(need, 4), fixed(pace, 4)),
			Value:   fixed(need/pace, 4), Tolerance: 2e-4 * (1 + need/pace), Source: working.Algebra(),
		},
	)
	if f.second != nil {
		w.Steps = append(w.Steps, f.togetherStep(n))
	}
	w.Steps = append(w.Steps, timeStep("t_likely", "M_curve", *f, b.History, e.Ready()), e.spreadStep(n, sens))
	return w
}

// shareSteps are the salt factor and, for commercial yeast, the share it counts for; the binding is that of f.
func (f *fermentation) shareSteps(b Bulk) (steps []working.Step, share working.Binding) {
	c := b.SaltInWater.Points()
	steps = append(steps, working.Step{
		Name: "what the salt leaves of the gas", Symbol: "s", Formula: "(1 − (c ÷ 8)^1.25) ÷ (1 − (c₀ ÷ 8)^1.25)",
		Where: []working.Binding{
			{Symbol: "c", Meaning: "salt in the dough's water", Value: b.SaltInWater.String()},
			{Symbol: "c₀", Meaning: "salt in the water at 2 % salt and 75 % hydration", Value: fixed(saltReference, 4) + " %"},
		},
		Numbers: fmt.Sprintf("(1 − (%s ÷ 8)^1.25) ÷ (1 − (%s ÷ 8)^1.25)", number(c), fixed(saltReference, 4)),
		Value:   fixed(f.salt, 4), Tolerance: 1e-4,
		Note:   "judgment: yeast tolerates 8 % salt in water, the way there is a guess",
		Source: sources.Judged("decline of gas with salt, to nothing at 8 % of the water (Gänzle 1998, abstract)"),
	})
	plain := f.share / f.salt
	if f.kind == byLevain {
		return steps, working.Binding{Symbol: "f", Meaning: "share of the flour that is prefermented", Value: number(plain)}
	}
	symbol, counts := "f", plain
	if f.kind == byBoth {
		symbol, counts = "y", math.Exp(f.second.yeast)
	}
	steps = append(steps, working.Step{
		Name: "yeast as a prefermented share", Symbol: symbol, Formula: "10 × d × w",
		Where: []working.Binding{
			{Symbol: "d", Meaning: b.Yeast.Kind.String() + " in percent of the flour", Value: number(b.Yeast.Amount.Points())},
			{Symbol: "w", Meaning: "what it is worth in instant yeast", Value: number(b.Yeast.Kind.asInstant())},
		},
		Numbers: fmt.Sprintf("10 × %s × %s", number(b.Yeast.Amount.Points()), number(b.Yeast.Kind.asInstant())),
		Value:   fixed(counts, 4), Tolerance: 1e-5 * (1 + counts), Source: sources.Judged("10 for each percent of instant yeast, between trade figures of 4 and 13"),
	})
	if f.kind == byBoth {
		levain := number(b.Inoculation.Fraction())
		steps = append(steps, working.Step{
			Name: "levain and yeast as a prefermented share", Symbol: "f", Formula: "f₁ + y",
			Where:   []working.Binding{{Symbol: "f₁", Meaning: "share of the flour that is prefermented", Value: levain}, {Symbol: "y", Meaning: "yeast as a prefermented share", Value: number(counts)}},
			Numbers: levain + " + " + number(counts), Value: fixed(plain, 4), Tolerance: 1e-4 * (1 + plain), Source: working.Algebra(),
		})
		return steps, working.Binding{Symbol: "f", Meaning: "levain and yeast as a prefermented share", Value: number(plain)}
	}
	return steps, working.Binding{Symbol: "f", Meaning: "yeast as a prefermented share", Value: number(plain)}
}

// paceStep is the pace at the mean temperature of a stretch.
func (f *fermentation) paceStep(n node) working.Step {
	pace := math.Exp(f.pace(n.mean()))
	return working.Step{
		Name: "pace of this dough", Symbol: "p", Formula: "exp(b + d × (T_mean − 24) + c × w)",
		Where: []working.Binding{
			{Symbol: "b", Meaning: "log of the culture's pace, kneading and whole grain included", Value: fixed(f.out.b, 5)},
			{Symbol: "d", Meaning: "the culture's temperature sensitivity beyond the curve, per °C", Value: fixed(f.out.d, 5)},
			{Symbol: "T_mean", Meaning: "mean temperature weighted by fermentation", Value: fixed(n.mean(), 2) + " °C"},
			{Symbol: "c", Meaning: "how far readings of this dough show the curve to be off, in units of w", Value: fixed(f.out.c, 5)},
			{Symbol: "w", Meaning: "how far the curve may be off at this temperature", Value: fixed(f.doubt(n.mean()), 5)},
		},
		Numbers: fmt.Sprintf("exp(%s + %s × (%s − 24) + %s × %s)", fixed(f.out.b, 5), fixed(f.out.d, 5), fixed(n.mean(), 2), fixed(f.out.c, 5), fixed(f.doubt(n.mean()), 5)),
		Value:   fixed(pace, 4), Tolerance: 1e-4 * (1 + pace), Source: sources.Gelman,
	}
}

// Working derives the rise at which to shape, step by step.
func (t ShapeTarget) Working() working.Working {
	w := working.Working{Title: "How far the dough may rise before shaping"}
	p := t.proof
	if p.Then.IsZero() {
		return w
	}
	f := &t.f
	steps, share := f.shareSteps(p.Bulk)
	n := t.after
	curve := p.Bulk.Curve.About()
	m2, plain := 0.0, f.share/f.salt
	if n.dose > 0 {
		m2 = math.Exp(f.expected(n.dose, n.mean()))
	}
	steps = append(steps, working.Step{
		Name: "dose from shaping to the oven by the curve", Symbol: "M_curve", Value: fixed(n.dose, 5),
		Note:   "∫ μ dt over " + p.ThenFor.String() + " of " + p.Then.String() + ", μ = " + curve.Formula,
		Source: sourceOf(curve),
	}, f.paceStep(n), working.Step{
		Name: "dose from shaping to the oven", Symbol: "M₂", Formula: "p × M_curve",
		Where:   []working.Binding{{Symbol: "p", Meaning: "pace of this dough", Value: fixed(m2/max(n.dose, 1e-300), 5)}, {Symbol: "M_curve", Meaning: "dose by the curve", Value: fixed(n.dose, 5)}},
		Numbers: fmt.Sprintf("%s × %s", fixed(m2/max(n.dose, 1e-300), 5), fixed(n.dose, 5)),
		Value:   fixed(m2, 4), Tolerance: 1e-4 * (1 + m2), Source: working.Algebra(),
	})
	ks := fmt.Sprintf("%s ÷ (%s × %s)", fixed(f.amplitude, 4), number(plain), fixed(f.salt, 4))
	k := f.amplitude / f.share
	r1 := (math.Exp(math.Log1p(k*f.target)-m2) - 1) / k
	where := []working.Binding{
		{Symbol: "K", Meaning: "amplitude of this culture and dough; 1 when nothing is known", Value: fixed(f.amplitude, 4)},
		{Symbol: "R", Meaning: "total rise wanted in the oven", Value: p.Total.String()},
		share,
		{Symbol: "s", Meaning: "what the salt leaves of the gas", Value: fixed(f.salt, 4)},
		{Symbol: "M₂", Meaning: "dose from shaping to the oven", Value: fixed(m2, 4)},
	}
	shape := working.Step{
		Name: "rise at which to shape", Symbol: "R₁", Formula: "((1 + K ÷ (f × s) × R) × exp(−M₂) − 1) ÷ (K ÷ (f × s))", Where: where,
		Numbers: fmt.Sprintf("((1 + %s × %s) × exp(−%s) − 1) ÷ (%s)", ks, number(f.target), fixed(m2, 4), ks),
		Value:   fixed(r1, 4), Tolerance: 2e-4 * (1 + f.target), Source: sources.GasFromGrowth,
	}
	if !t.Feasible {
		shape.Note = "negative: even unrisen dough would go beyond the total"
	}
	w.Steps = append(steps, shape)
	return w
}

func sourceOf(a About) working.Source {
	if a.Source.IsZero() {
		return sources.Judged("rate curve given by the caller")
	}
	return a.Source
}

// Working derives the index step by step.
func (f Flavor) Working() working.Working {
	w := working.Working{Title: "Mild or sharp"}
	if f.Yeast == 0 {
		return w
	}
	l, y := GanzleLactobacilli().Rate(reference), GanzleYeast().Rate(reference)
	w.Steps = []working.Step{{
		Name: "acid index", Symbol: "I", Formula: "100 × (L ÷ Y) ÷ (μL ÷ μY)",
		Where: []working.Binding{
			{Symbol: "L", Meaning: "doublings of the lactobacilli over the history", Value: fixed(f.Lactobacilli, 5)},
			{Symbol: "Y", Meaning: "doublings of the yeast", Value: fixed(f.Yeast, 5)},
			{Symbol: "μL", Meaning: "rate of the lactobacilli at 24 °C", Value: fixed(l, 5) + "/h"},
			{Symbol: "μY", Meaning: "rate of the yeast at 24 °C", Value: fixed(y, 5) + "/h"},
		},
		Numbers: fmt.Sprintf("100 × (%s ÷ %s) ÷ (%s ÷ %s)", fixed(f.Lactobacilli, 5), fixed(f.Yeast, 5), fixed(l, 5), fixed(y, 5)),
		Value:   fixed(f.Index, 1), Tolerance: 1e-3*f.Index/min(1, f.Yeast) + 0.02, Note: strings.Join(f.Limits, "; "), Source: sources.Ganzle1998,
	}}
	return w
}

// Working shows what was learned: the pace and its range from the mean and the variance of its log.
func (l Lesson) Working() working.Working {
	w := working.Working{Title: "What the logged bakes say"}
	b := l.Culture.b
	if b == nil {
		return w
	}
	m, v := b.mean[unknownPace], b.cov[unknownPace][unknownPace]
	pace := l.Culture.Pace()
	bindings := []working.Binding{
		{Symbol: "b", Meaning: "mean of the log of the pace after " + plural(b.bakes, "bake"), Value: fixed(m, 6)},
		{Symbol: "v", Meaning: "its variance", Value: fixed(v, 8)},
	}
	step := func(name, symbol, formula, numbers string, value float64) working.Step {
		return working.Step{Name: name, Symbol: symbol, Formula: formula, Where: bindings, Numbers: numbers, Value: fixed(value, 4), Tolerance: 1e-4 * (1 + value), Source: sources.Gelman}
	}
	w.Steps = []working.Step{
		step("pace", "p", "exp(b)", "exp("+fixed(m, 6)+")", pace.Likely),
		step("low end of the pace (10 %)", "p_low", "exp(b − 1.28155 × sqrt(v))", fmt.Sprintf("exp(%s − 1.28155 × sqrt(%s))", fixed(m, 6), fixed(v, 8)), pace.Low),
		step("high end of the pace (90 %)", "p_high", "exp(b + 1.28155 × sqrt(v))", fmt.Sprintf("exp(%s + 1.28155 × sqrt(%s))", fixed(m, 6), fixed(v, 8)), pace.High),
		{Name: "spread from bake to bake", Symbol: "σ", Value: fixed(b.sigma, 4), Note: "in the log of the time, found together with the coefficients; prior 0.12 as if from 12 bakes", Source: sources.Gelman},
		{Name: "temperature sensitivity beyond the curve", Symbol: "d", Value: fixed(b.mean[unknownTemperature], 5) + " per °C", Note: "regression coefficient on the mean temperature above 24 °C", Source: sources.Gelman},
	}
	return w
}

// timeStep says how a time was found: by following the history.
func timeStep(symbol, dose string, f fermentation, h History, t quantity.TimeRange) working.Step {
	about := f.curve.about
	formula := about.Formula
	if formula == "" {
		formula = about.Name
	}
	note := "the time at which ∫ μ dt along the history (" + h.String() + ") is " + dose + ", with μ = " + formula
	if s := f.second; s != nil {
		note = "the time at which the dose of both along the history (" + h.String() + ") is " + dose + ", M₁ by μ = " + formula +
			", M₂ by " + s.curve.about.Name + fmt.Sprintf(" scaled by %s to %s/h at 27 °C", fixed(s.scale, 4), number(yeastGrowth))
	}
	if f.scale != 1 {
		note += fmt.Sprintf(" scaled by %s to %s/h at 27 °C", fixed(f.scale, 4), number(yeastGrowth))
	}
	note += "; early and late where it is that less and more a spread of 80 %: " + t.String()
	return working.Step{Name: "likely time", Symbol: symbol, Value: quantity.FormatDuration(t.Likely), Note: note, Source: sourceOf(about)}
}

// spreadStep shows the standard deviation behind the range.
func (e Estimate) spreadStep(n node, sens float64) working.Step {
	o := e.f.out
	pp, ap := e.f.paceVariance(n.mean()), e.f.together(n.mean())
	v := e.f.variance(n.mean(), sens)
	return working.Step{
		Name: "spread of the log of the dose received over the dose needed", Symbol: "σ", Formula: "sqrt(g^2 × aa + pp − 2 × g × ap)",
		Where: []working.Binding{
			{Symbol: "g", Meaning: "how much of ln K comes through", Value: fixed(sens, 6)},
			{Symbol: "aa", Meaning: "variance of ln K, salt included", Value: fixed(o.aa, 8)},
			{Symbol: "pp", Meaning: "variance of the log of the pace at this temperature: culture, kneading, this dough's own luck, temperature sensitivity, doubt about the curve", Value: fixed(pp, 8)},
			{Symbol: "ap", Meaning: "covariance of the two, from what bakes and readings have shown", Value: fixed(ap, 8)},
		},
		Numbers: fmt.Sprintf("sqrt(%s^2 × %s + %s − 2 × %s × %s)", fixed(sens, 6), fixed(o.aa, 8), fixed(pp, 8), fixed(sens, 6), signed(ap, 8)),
		Value:   fixed(math.Sqrt(v), 4), Tolerance: 1e-4,
		Note:   fmt.Sprintf("the range reaches %s spreads to each side", fixed(o.spread(v), 3)),
		Source: sources.Judged("spreads of an unknown culture, narrowed by the bakes logged and by readings"),
	}
}

// signed prints a number so that it can stand after any sign.
func signed(x float64, places int) string {
	s := fixed(x, places)
	if strings.HasPrefix(s, "-") {
		return "(" + s + ")"
	}
	return s
}
