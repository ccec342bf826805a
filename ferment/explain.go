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
	pace := math.Exp(f.out.b + f.out.d*(n.mean()-reference))
	w.Steps = append(w.Steps,
		working.Step{
			Name: "pace of this dough", Symbol: "p", Formula: "exp(b + d × (T_mean − 24))",
			Where: []working.Binding{
				{Symbol: "b", Meaning: "log of the culture's pace, kneading and whole grain included", Value: fixed(f.out.b, 5)},
				{Symbol: "d", Meaning: "the culture's temperature sensitivity beyond the curve, per °C", Value: fixed(f.out.d, 5)},
				{Symbol: "T_mean", Meaning: "mean temperature weighted by fermentation", Value: fixed(n.mean(), 2) + " °C"},
			},
			Numbers: fmt.Sprintf("exp(%s + %s × (%s − 24))", fixed(f.out.b, 5), fixed(f.out.d, 5), fixed(n.mean(), 2)),
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
	x := n.mean() - reference
	v := e.f.variance(n.mean(), sens)
	sd := math.Sqrt(v)
	return working.Step{
		Name: "spread of the log of the time at steady temperature", Symbol: "σ",
		Formula: "sqrt(g^2 × aa + bb + x^2 × dd − 2 × g × ab − 2 × g × x × ad + 2 × x × bd + v)",
		Where: []working.Binding{
			{Symbol: "g", Meaning: "how much of ln K comes through", Value: fixed(sens, 6)},
			{Symbol: "aa", Meaning: "variance of ln K, salt included", Value: fixed(o.aa, 8)},
			{Symbol: "bb", Meaning: "variance of the log of the pace, this dough's own luck included", Value: fixed(o.bb, 8)},
			{Symbol: "x", Meaning: "mean temperature above 24 °C", Value: fixed(x, 6)},
			{Symbol: "dd", Meaning: "variance of the temperature sensitivity", Value: fixed(o.dd, 10)},
			{Symbol: "ab", Meaning: "covariance of ln K and pace", Value: fixed(o.ab, 8)},
			{Symbol: "ad", Meaning: "covariance of ln K and temperature sensitivity", Value: fixed(o.ad, 8)},
			{Symbol: "bd", Meaning: "covariance of pace and temperature sensitivity", Value: fixed(o.bd, 8)},
			{Symbol: "v", Meaning: "for temperatures where the curve stands on weaker ground", Value: fixed(e.f.beyond(n.mean()), 8)},
		},
		Numbers: strings.NewReplacer("g", signed(sens, 6), "aa", signed(o.aa, 8), "bb", signed(o.bb, 8), "x", signed(x, 6), "dd", signed(o.dd, 10),
			"ab", signed(o.ab, 8), "ad", signed(o.ad, 8), "bd", signed(o.bd, 8), "v", signed(e.f.beyond(n.mean()), 8)).
			Replace("sqrt(g^2 × aa + bb + x^2 × dd − 2 × g × ab − 2 × g × x × ad + 2 × x × bd + v)"),
		Value: fixed(sd, 4), Tolerance: 1e-4,
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
