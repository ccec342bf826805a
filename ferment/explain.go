package ferment

import (
	"fmt"
	"math"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/gasbalance"
	"example.org/maslin/internal/sources"
)

// Working derives the estimate step by step.
func (e Estimate) Working() working.Working {
	w := working.Working{Title: "When the dough is ready"}
	if !e.given() {
		return w
	}
	w.Steps = append(w.Steps, e.d.paceSteps()...)
	w.Steps = append(w.Steps, e.d.startSteps(e.bulk.Inoculation, e.bulk.Yeast, len(e.bulk.Preferments))...)
	s, c := e.moment(e.likely())
	w.Steps = append(w.Steps, e.d.needStep("N", "gas the rise takes", e.d.target, c), e.d.gasStep("t_likely", &s, e.bulk.History, e.Ready()))
	w.Steps = append(w.Steps, e.d.spreadStep(&s, "the range"))
	return w
}

// paceSteps are what the formula does to every rate.
func (d *prepared) paceSteps() []working.Step {
	f, l := &d.formula, d.law
	half, solutes, pace := l.Halfway, f.Solutes(), l.Pace(*f)
	if f.Osmotolerant {
		half = l.HalfwayTolerant
	}
	h, soft := number(f.Hydration), number(math.Min(f.Hydration, 1))
	return []working.Step{{
		Name: "what salt and sugar press with in the dough's water, osmol per kg", Symbol: "Π", Formula: "10 ÷ h × (c_s ÷ 58.44 × 1.86 + c_z ÷ 342.3 × 2)",
		Where: []working.Binding{
			{Symbol: "h", Meaning: "water over flour", Value: h},
			{Symbol: "c_s", Meaning: "salt in percent of the flour", Value: number(f.Salt)},
			{Symbol: "c_z", Meaning: "sugar in percent of the flour", Value: number(f.Sugar)},
		},
		Numbers: fmt.Sprintf("10 ÷ %s × (%s ÷ 58.44 × 1.86 + %s ÷ 342.3 × 2)", h, number(f.Salt), number(f.Sugar)),
		Value:   fixed(solutes, 4), Tolerance: 1e-4, Source: sources.Judged("van 't Hoff; salt as two ions, sugar as two hexoses"),
	}, {
		Name: "what the formula leaves of every rate", Symbol: "π", Formula: "1 ÷ (1 + (Π ÷ Π₅₀)^2) × (h′ ÷ 0.72)^0.4 × exp(0.182 × w)",
		Where: []working.Binding{
			{Symbol: "Π", Meaning: "osmol per kg of water", Value: fixed(solutes, 4)},
			{Symbol: "Π₅₀", Meaning: "at which yeast works at half its pace", Value: number(half)},
			{Symbol: "h′", Meaning: "water over flour, at most 1", Value: soft},
			{Symbol: "w", Meaning: "share of whole grain", Value: number(f.Whole)},
		},
		Numbers: fmt.Sprintf("1 ÷ (1 + (%s ÷ %s)^2) × (%s ÷ 0.72)^0.4 × exp(0.182 × %s)", fixed(solutes, 4), number(half), soft, number(f.Whole)),
		Value:   fixed(pace, 4), Tolerance: 2e-4,
		Source: sources.Judged("between salt 10 to 30 % longer, sugar harmless to 5 % and slow above 10 %, stiff slower, whole grain faster"),
	}}
}

// startSteps are the cells the dough begins with.
func (d *prepared) startSteps(share quantity.Percent, y Yeast, preferments int) (out []working.Step) {
	if share.Sign() > 0 {
		x := d.law.RipeLevain()
		step := working.Step{
			Name: "cells of the levain, in percent of the flour as instant yeast", Symbol: "X₀", Formula: "f × X_L",
			Where: []working.Binding{
				{Symbol: "f", Meaning: "share of the flour that comes with the seed or levain", Value: number(share.Fraction())},
				{Symbol: "X_L", Meaning: "cells of a ripe levain, from its own ripening", Value: fixed(x, 6)},
			},
			Numbers: fmt.Sprintf("%s × %s", number(share.Fraction()), fixed(x, 6)),
			Value:   fixed(share.Fraction()*x, 6), Tolerance: 1e-5, Source: sources.Judged("the state to which feeding 1 : 2 : 2 at ripeness leads"),
		}
		if preferments == 0 && d.start.Levain < 0.99*share.Fraction()*x {
			step.Note = "from the refrigerator it starts with " + fixed(d.start.Levain, 6) + ", e^(−0.35) of that"
		}
		out = append(out, step)
	}
	if y.Kind != NoYeast {
		out = append(out, working.Step{
			Name: "cells of the yeast, in percent of the flour as instant yeast", Symbol: "Y₀", Formula: "y × w",
			Where: []working.Binding{
				{Symbol: "y", Meaning: y.Kind.String() + " in percent of the flour", Value: number(y.Amount.Points())},
				{Symbol: "w", Meaning: "what it is worth in instant yeast", Value: number(y.Kind.asInstant())},
			},
			Numbers: fmt.Sprintf("%s × %s", number(y.Amount.Points()), number(y.Kind.asInstant())),
			Value:   fixed(y.instant(), 5), Tolerance: 1e-5 * (1 + y.instant()), Source: sources.Practice("1 part instant is 3 parts fresh or 1.2 parts active dry"),
		})
	}
	return out
}

// needStep is the gas a rise takes.
func (d *prepared) needStep(symbol, name string, rise, celsius float64) working.Step {
	h, k := d.formula.Hydration, celsius+273.15
	v, wet, l := (1+h)/1.12, (h-0.16)/(1+h)*1.12, gasbalance.Ostwald(celsius)
	need := d.law.Need(rise, h, d.atm)
	return working.Step{
		Name: name + ", L per kg flour", Symbol: symbol, Formula: "v × p × 298.15 ÷ K × (3.5 ÷ 2 × ln((3.5 + R) ÷ (3.5 − R)) + L × ω × R ÷ (R + 0.09))",
		Where: []working.Binding{
			{Symbol: "v", Meaning: "liters of dough per kg flour, (1 + h) ÷ 1.12", Value: fixed(v, 5)},
			{Symbol: "p", Meaning: "air pressure, atm", Value: fixed(d.atm, 5)},
			{Symbol: "K", Meaning: "temperature of the dough, in kelvin", Value: fixed(k, 3)},
			{Symbol: "R", Meaning: "the rise", Value: number(rise)},
			{Symbol: "L", Meaning: "what water holds of its own volume", Value: fixed(l, 5)},
			{Symbol: "ω", Meaning: "free water in a volume of dough", Value: fixed(wet, 5)},
		},
		Numbers: fmt.Sprintf("%s × %s × 298.15 ÷ %s × (3.5 ÷ 2 × ln((3.5 + %s) ÷ (3.5 − %s)) + %s × %s × %s ÷ (%s + 0.09))",
			fixed(v, 5), fixed(d.atm, 5), fixed(k, 3), number(rise), number(rise), fixed(l, 5), fixed(wet, 5), number(rise), number(rise)),
		Value: fixed(need.Gas(celsius), 4), Tolerance: 2e-4 * (1 + need.Gas(celsius)),
		Source: sources.Judged("ideal gas, Henry's law for what dissolves, retention falling to none at 350 %"),
	}
}

// gasStep says how the time was found: by following the history.
func (d *prepared) gasStep(symbol string, s *gasbalance.State, h History, t quantity.TimeRange) working.Step {
	return working.Step{
		Name: "likely time", Symbol: symbol, Value: quantity.FormatDuration(t.Likely),
		Note: fmt.Sprintf("the time at which the gas along the history (%s) is that, growing from the cells above at 0.37 × π per hour at 27 °C: %s L per kg flour; early and late are where it is a spread less and more: %s",
			h, fixed(d.clock.Gas(s), 4), t),
		Source: sources.Judged("logistic growth and gas from cells"),
	}
}

// spreadStep shows the standard deviation behind a range, from its named parts.
func (d *prepared) spreadStep(s *gasbalance.State, of string) working.Step {
	parts := d.belief.Spread(s.LogGas())
	named := []struct {
		symbol, meaning string
		value           float64
	}{
		{"v_a", "variance of ln G from the amplitude of the culture", parts.Kitchen[gasbalance.Amplitude]},
		{"v_b", "from its pace", parts.Kitchen[gasbalance.Pace]},
		{"v_d", "from its temperature sensitivity", parts.Kitchen[gasbalance.Slope]},
		{"v_c", "from where its cold end lies", parts.Kitchen[gasbalance.ColdEnd]},
		{"v_w", "from the mixture of its yeasts", parts.Kitchen[gasbalance.Mixture]},
		{"v_s", "from what differs from bake to bake", parts.Luck},
		{"v_f", "from what the formula leaves unsure", parts.Formula},
		{"v_o", "from cold below every bake learned from", parts.Opening},
	}
	formula, numbers := "sqrt(", "sqrt("
	var where []working.Binding
	for i, p := range named {
		if i > 0 {
			formula, numbers = formula+" + ", numbers+" + "
		}
		formula, numbers = formula+p.symbol, numbers+signed(p.value)
		where = append(where, working.Binding{Symbol: p.symbol, Meaning: p.meaning, Value: fixed(p.value, 8)})
	}
	sd := math.Sqrt(math.Max(0, parts.Total()))
	return working.Step{
		Name: "spread of the log of the gas", Symbol: "σ", Formula: formula + ")", Where: where, Numbers: numbers + ")",
		Value: fixed(sd, 4), Tolerance: 1e-4, Note: of + " reaches 1.28 spreads or a little more to each side",
		Source: sources.Judged("spreads of an unknown culture, narrowed by the bakes logged and by readings"),
	}
}

// signed prints a number so that it can stand after any sign.
func signed(x float64) string {
	if x < 0 {
		return "(" + fixed(x, 8) + ")"
	}
	return fixed(x, 8)
}

// Working derives the answer step by step.
func (r Ripeness) Working() working.Working {
	w := working.Working{Title: "When the preferment is ripe"}
	if r.d.law == nil {
		return w
	}
	s, _ := r.outcome.Path.At(math.Min(r.outcome.Likely, hours(Horizon)))
	seed := r.of.Seed.Fraction()
	w.Steps = append(w.Steps, r.d.paceSteps()...)
	w.Steps = append(w.Steps, r.d.startSteps(r.of.Seed, r.of.Yeast, 0)...)
	w.Steps = append(w.Steps, working.Step{
		Name: "gas at its peak, L per kg flour", Symbol: "G_peak", Formula: "5.85 × (1 − s)",
		Where:   []working.Binding{{Symbol: "s", Meaning: "share of the flour that comes with the seed", Value: number(seed)}},
		Numbers: "5.85 × (1 − " + number(seed) + ")", Value: fixed(r.d.law.RipeGas(seed), 4), Tolerance: 1e-4,
		Note: "ripe from ¾ of that, usable until 2½ times that (judgments)", Source: sources.Judged("the sugar at hand in fresh flour, fitted"),
	}, r.d.gasStep("t_peak", &s, r.of.History, r.Peak), r.d.spreadStep(&s, "the range of the peak"))
	return w
}

// Working derives the rise at which to shape, step by step.
func (t ShapeTarget) Working() working.Working {
	w := working.Working{Title: "How far the dough may rise before shaping"}
	if t.path.IsZero() {
		return w
	}
	d := &t.Shape.d
	oven := t.Then[len(t.Then)-1]
	w.Steps = append(w.Steps, d.paceSteps()...)
	w.Steps = append(w.Steps, d.startSteps(t.proof.Bulk.Inoculation, t.proof.Bulk.Yeast, len(t.proof.Bulk.Preferments))...)
	w.Steps = append(w.Steps, d.needStep("N", "gas the total takes in the oven", t.proof.Total.Fraction(), oven.Celsius()))
	if t.Feasible {
		w.Steps = append(w.Steps, d.needStep("N₁", "gas the dough has when it is shaped", t.Rise.Fraction(), t.Shaped.Celsius()))
	}
	w.Steps = append(w.Steps, working.Step{
		Name: "rise at which to shape", Symbol: "R₁", Value: t.Rise.Text(0), Source: sources.Judged("logistic growth and gas from cells"),
		Note: "the rise from which what follows (" + t.path.String() + ") brings the dough to the total; it is reached after " +
			quantity.FormatDuration(t.Shape.Ready().Likely),
	})
	return w
}

// Working shows what was learned: the pace and its range from the mean and the spread of its log.
func (l Lesson) Working() working.Working {
	w := working.Working{Title: "What the logged bakes say"}
	if l.Culture.IsZero() {
		return w
	}
	t := l.Culture.taught()
	m, s := t.Unknown(gasbalance.Pace)
	bindings := []working.Binding{
		{Symbol: "b", Meaning: fmt.Sprintf("mean of the log of the pace, bakes learned from: %d", t.Bakes), Value: fixed(m, 6)},
		{Symbol: "s", Meaning: "its standard deviation", Value: fixed(s, 6)},
	}
	step := func(name, symbol, formula, numbers string, z float64) working.Step {
		x := math.Exp(m + z*s)
		return working.Step{Name: name, Symbol: symbol, Formula: formula, Where: bindings, Numbers: numbers, Value: fixed(x, 4), Tolerance: 1e-4 * (1 + x), Source: sources.Gelman}
	}
	w.Steps = []working.Step{
		step("pace", "p", "exp(b)", "exp("+fixed(m, 6)+")", 0),
		step("low end of the pace (10 %)", "p_low", "exp(b − 1.28155 × s)", fmt.Sprintf("exp(%s − 1.28155 × %s)", fixed(m, 6), fixed(s, 6)), -z80),
		step("high end of the pace (90 %)", "p_high", "exp(b + 1.28155 × s)", fmt.Sprintf("exp(%s + 1.28155 × %s)", fixed(m, 6), fixed(s, 6)), z80),
		{Name: "spread from bake to bake", Symbol: "σ", Value: fixed(t.Luck, 4), Note: "in the log of the time, found together with the coefficients; prior as if from 12 bakes", Source: sources.Gelman},
	}
	return w
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
		Value:   fixed(f.Index, 1), Tolerance: 1e-3*f.Index/min(1, f.Yeast) + 0.02, Source: sources.Ganzle1998,
	}}
	return w
}
