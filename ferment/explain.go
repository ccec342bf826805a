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
	c := b.SaltInWater.Points()
	w.Steps = append(w.Steps, working.Step{
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
	share := working.Binding{Symbol: "f", Meaning: "share of the flour that is prefermented", Value: number(b.Inoculation.Fraction())}
	plain := b.Inoculation.Fraction()
	if f.yeast {
		plain = f.share / f.salt
		w.Steps = append(w.Steps, working.Step{
			Name: "yeast as a prefermented share", Symbol: "f", Formula: "10 × y × w",
			Where: []working.Binding{
				{Symbol: "y", Meaning: b.Yeast.Kind.String() + " in percent of the flour", Value: number(b.Yeast.Amount.Points())},
				{Symbol: "w", Meaning: "what it is worth in instant yeast", Value: number(b.Yeast.Kind.asInstant())},
			},
			Numbers: fmt.Sprintf("10 × %s × %s", number(b.Yeast.Amount.Points()), number(b.Yeast.Kind.asInstant())),
			Value:   fixed(plain, 4), Tolerance: 1e-5 * plain, Source: sources.Judged("10 for each percent of instant yeast, between trade figures of 4 and 13"),
		})
		share.Value, share.Meaning = fixed(plain, 4), "yeast as a prefermented share"
	}
	K := math.Exp(f.out.a)
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
		working.Step{
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
		},
		working.Step{
			Name: "dose from the curve until the dough is likely ready", Symbol: "M_curve", Formula: "M ÷ p",
			Where:   []working.Binding{{Symbol: "M", Meaning: "dose needed", Value: fixed(need, 4)}, {Symbol: "p", Meaning: "pace", Value: fixed(pace, 4)}},
			Numbers: fmt.Sprintf("%s ÷ %s", fixed(need, 4), fixed(pace, 4)),
			Value:   fixed(need/pace, 4), Tolerance: 2e-4 * (1 + need/pace), Source: working.Algebra(),
		},
		timeStep("t_likely", "M_curve", *f, b.History, e.Ready()),
		e.spreadStep(n, sens),
	)
	return w
}

// timeStep says how a time was found: by following the history.
func timeStep(symbol, dose string, f fermentation, h History, t quantity.TimeRange) working.Step {
	about := f.curve.About()
	formula := about.Formula
	if formula == "" {
		formula = about.Name
	}
	note := "the time at which ∫ μ dt along the history (" + h.String() + ") is " + dose + ", with μ = " + formula
	if f.scale != 1 {
		note += fmt.Sprintf(" scaled by %s to %s/h at 27 °C", fixed(f.scale, 4), number(yeastGrowth))
	}
	note += "; early and late where it is that less and more a spread of 80 %: " + t.String()
	source := about.Source
	if source.IsZero() {
		source = sources.Judged("rate curve given by the caller")
	}
	return working.Step{Name: "likely time", Symbol: symbol, Value: quantity.FormatDuration(t.Likely), Note: note, Source: source}
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
