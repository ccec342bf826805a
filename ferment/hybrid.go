package ferment

import (
	"math"

	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// leavening is what raises a dough. Each kind has its own prior and is learned from its own bakes.
type leavening int

const (
	byLevain leavening = iota
	byYeast
	byBoth
)

// leavening says what raises this dough.
func (b *Bulk) leavening() leavening {
	switch {
	case b.Yeast.Kind == NoYeast:
		return byLevain
	case b.Inoculation.IsZero():
		return byYeast
	}
	return byBoth
}

// A dough with levain and commercial yeast together. Each grows at its own rate and the gas of both adds up:
//
//	R = s/K·(f·(exp(M₁) − 1) + y·(exp(M₂) − 1)) = (f + y)·s/K·(exp(M) − 1),   exp(M) = (f·exp(M₁) + y·exp(M₂))/(f + y)
//
// M₁ and M₂ are the doses of levain and yeast and y what the yeast counts for as a prefermented share. M, the dose of
// the two together, takes the place of the dose everywhere else. That gas adds up is arithmetic as long as neither
// hinders the other; acid slowing the yeast and a race for sugar are not in it, which is what sdTogether is for: a
// judgment, no measurement of such doughs having been found.
type secondLeaven struct {
	curve *curve  // of the yeast
	scale float64 // on that curve's rate
	levain,
	yeast float64 // ln f, ln y
	both float64 // ln(f + y)
	lag  float64 // dose lost by a levain from the refrigerator, which the yeast does not share
}

// sdTogether is how unsure it is in the log of the rate that the gas of both adds up.
const sdTogether = 0.15

// combined is M, the dose of both together, without overflow.
func (s *secondLeaven) combined(levain, yeast float64) float64 {
	a := s.levain + math.Max(0, levain-s.lag)
	b := s.yeast + yeast
	if a < b {
		a, b = b, a
	}
	return math.Max(0, a+math.Log1p(math.Exp(b-a))-s.both)
}

// stepBoth is [fermentation.step] for levain and yeast together.
func (f *fermentation) stepBoth(p node, q knot) node {
	dt := q.h - p.h
	if dt <= 0 {
		p.knot = q
		return p
	}
	s := f.second
	n := node{knot: q}
	n.levain = p.levain + dt*average(f.curve, p.c, q.c)
	n.yeast = p.yeast + dt*s.scale*average(s.curve, p.c, q.c)
	n.dose = s.combined(n.levain, n.yeast)
	n.heat = p.heat + (p.c+q.c)/2*(n.dose-p.dose)
	return n
}

// shareOfYeast is the part of the gas made until a node that the yeast made.
func (f *fermentation) shareOfYeast(n node) float64 {
	s := f.second
	levain := math.Exp(s.levain) * math.Expm1(math.Max(0, n.levain-s.lag))
	yeast := math.Exp(s.yeast) * math.Expm1(n.yeast)
	if !(levain+yeast > 0) {
		return 0
	}
	return yeast / (levain + yeast)
}

// togetherStep shows how the doses of levain and yeast make one.
func (f *fermentation) togetherStep(n node) working.Step {
	s := f.second
	levain, yeast := math.Exp(s.levain), math.Exp(s.yeast)
	m1 := math.Max(0, n.levain-s.lag)
	return working.Step{
		Name: "dose of levain and yeast together until then, by their curves", Symbol: "M_curve", Formula: "ln((f₁ × exp(M₁) + y × exp(M₂)) ÷ (f₁ + y))",
		Where: []working.Binding{
			{Symbol: "f₁", Meaning: "share of the flour that is prefermented", Value: number(levain)},
			{Symbol: "M₁", Meaning: "dose of the levain, less its lag", Value: fixed(m1, 5)},
			{Symbol: "y", Meaning: "yeast as a prefermented share", Value: number(yeast)},
			{Symbol: "M₂", Meaning: "dose of the yeast", Value: fixed(n.yeast, 5)},
		},
		Numbers: "ln((" + number(levain) + " × exp(" + fixed(m1, 5) + ") + " + number(yeast) + " × exp(" + fixed(n.yeast, 5) + ")) ÷ (" + number(levain) + " + " + number(yeast) + "))",
		Value:   fixed(n.dose, 4), Tolerance: 2e-4 * (1 + n.dose),
		Note:   "the yeast makes " + fixed(100*f.shareOfYeast(n), 0) + " % of the gas",
		Source: sources.Judged("gas of levain and yeast added up; acid slowing the yeast is not in it"),
	}
}

// bounds describes the curve with the temperatures a dough may have by it, or by both its curves.
func (b *Bulk) bounds() About {
	about := b.Curve.About()
	if b.leavening() == byBoth && !b.YeastCurve.IsZero() {
		yeast := b.YeastCurve.About()
		about.Name += " and " + yeast.Name
		about.Low, about.High = math.Max(about.Low, yeast.Low), math.Min(about.High, yeast.High)
	}
	return about
}
