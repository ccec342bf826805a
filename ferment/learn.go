package ferment

import (
	"fmt"
	"math"
	"time"

	"example.org/maslin/dough/quantity"
)

// LoggedBulk is a logged bulk: the dough, the temperature it had, and how long it took to rise so far.
type LoggedBulk struct {
	// Bulk is the dough, with the Rise it had reached; its Culture is not used.
	Bulk Bulk `json:"bulk"`
	// Took is how long it took to reach that rise.
	Took quantity.Elapsed `json:"took"`
	// Error is the standard deviation of the rise as read, in points; zero means 5.
	Error quantity.Percent `json:"error,omitzero"`
}

// Learning is a kitchen's log of bakes, all with levain, all with commercial yeast, or all with both.
type Learning struct {
	Bakes []LoggedBulk `json:"bakes"`
	// Prior is what was known before; the zero value is nothing.
	Prior Culture `json:"prior,omitzero"`
	// Robust limits what one wild bake (a forgotten heater, a misread clock) can do: it counts less and less, and
	// beyond 4.7 spreads not at all.
	Robust bool `json:"robust,omitzero"`
}

// Lesson is what a log of bakes has taught.
type Lesson struct {
	Culture Culture

	log    []observation
	bakes  []LoggedBulk
	prior  *belief
	robust bool
}

// observation is one bake as a line of the regression: y = row·x + noise of variance scale·σ².
type observation struct {
	y      float64
	mean   float64 // dose-weighted temperature
	sens   float64 // e
	kind   KneadedBy
	scale  float64
	weight float64
}

// Learn answers: what do the logged bakes say about this kitchen's culture?
//
//	y = ln(M_needed/M_received) = b + u + d·(T_mean − 24 °C) − e·a + ε,   ε ~ N(0, k·σ²)
//	P = (P₀⁻¹ + Σ w·h·hᵀ/(k·σ²))⁻¹,   x = P·(P₀⁻¹·x₀ + Σ w·h·y/(k·σ²))
//	σ² = (ν₀·σ₀² + Σ w·((y − hᵀx)² + hᵀPh)/k)/(ν₀ + n)
//
// M_needed is the dose the logged rise needs and M_received the one the history gave, both for a typical culture; b the log of the pace, u
// that of the kneading, d the temperature sensitivity, a the log of the amplitude, e = dln M_needed/da; h the row of
// coefficients, P₀ and x₀ what was known before; k is 1 plus the share of the rise's reading error; w is 1 (with Robust
// Tukey's biweight of the residual in spreads, and the sums in σ² divided by what they are on ordinary bakes). Given σ the update is the closed form of normal regression; σ itself
// has a scaled inverse χ² prior of 12 bakes at 0.12 and is found with it in a few rounds, so that ranges become Student's.
// Valid for up to 100,000 bakes. Accuracy: that of the normal approximation, checked by simulating kitchens. Errors: ErrRequired
// without bakes; for each bake those of [Bulk.Estimate] and ErrOutOfRange for Took outside 1 minute to 30 days; ErrInconsistent for bakes with different
// leavening. Source: Gelman et al., Bayesian Data Analysis, chapter 14; Huber, Robust Statistics, chapter 7.
func (l Learning) Learn() (Lesson, error) {
	var p problems
	if n := len(l.Bakes); n == 0 || n > 100_000 {
		p.Required("Bakes", "1 to 100,000 logged bakes")
		return Lesson{}, p.Err()
	}
	kind := l.Bakes[0].Bulk.leavening()
	if l.Prior.b != nil && l.Prior.b.kind != kind {
		p.Add("Prior", l.Prior.String(), "a culture learned from the same kind of leavening", quantity.ErrInconsistent)
	}
	standard := prior(kind)
	var known [ByMachine + 1]outlook
	for k := range known {
		known[k] = standard.outlook(KneadedBy(k))
	}
	out := Lesson{bakes: l.Bakes, prior: l.Prior.belief(kind), robust: l.Robust, log: make([]observation, len(l.Bakes))}
	for i := range l.Bakes {
		o, err := l.Bakes[i].observe(kind, standard, &known)
		if err != nil {
			p.Join(fmt.Sprintf("Bakes[%d]", i), err)
		}
		out.log[i] = o
	}
	if err := p.Err(); err != nil {
		return Lesson{}, err
	}
	b, ok := out.prior.regress(out.log, l.Robust, -1)
	if !ok {
		p.Add("Bakes", plural(len(l.Bakes), "bake"), "bakes from which a culture can be told", quantity.ErrInconsistent)
		return Lesson{}, p.Err()
	}
	out.Culture = Culture{b}
	return out, nil
}

// observe makes the line of the regression.
func (k *LoggedBulk) observe(kind leavening, standard *belief, typical *[ByMachine + 1]outlook) (observation, error) {
	b := k.Bulk
	b.Culture = Culture{}
	if b.leavening() == kind {
		b.Culture = Culture{standard} // so that check need not make it again
	}
	f, err := b.check(true)
	var p problems
	if err != nil {
		p.Join("Bulk", err)
	}
	if err == nil && f.kind != kind {
		p.Add("Bulk", b.Yeast.String(), "the leavening of the first bake", quantity.ErrInconsistent)
	}
	p.Duration("Took", k.Took.Duration(), time.Minute, Horizon)
	delta := k.Error.Fraction()
	if k.Error.IsZero() {
		delta = standardReadingError
	} else {
		quantity.Check(&p.Problems, "Error", k.Error, quantity.NewPercent(0.1), quantity.NewPercent(50))
	}
	if err := p.Err(); err != nil {
		return observation{}, err
	}
	if err := withinCurve(b, b.History, hours(k.Took.Duration()), "Bulk.History"); err != nil {
		return observation{}, err
	}
	n := f.through(b.History, hours(k.Took.Duration()))
	if !(n.dose > 0) || math.IsInf(n.dose, 1) {
		p.Add("Bulk.History", b.History.String(), "a history in which the dough can rise", quantity.ErrInconsistent)
		return observation{}, p.Err()
	}
	h, sens := f.need(f.target)
	known := &typical[b.Kneading]
	doubt := f.doubt(n.mean())
	extra := (sens*sens*(f.out.aa-known.aa) + (f.out.bb - known.bb) + doubt*doubt) / (sdBake * sdBake)
	reading := sens * delta / f.target / sdBake
	return observation{
		y:    h - math.Log(n.dose) - f.out.b, // f.out.b is the whole grain alone: the culture's is 0
		mean: n.mean(), sens: sens, kind: b.Kneading,
		scale: 1 + extra + reading*reading, weight: 1,
	}, nil
}

// Temperatures are the lowest and the highest mean temperature of the bakes, weighted by fermentation: temperature
// sensitivity is learned only as far as they differ.
func (l Lesson) Temperatures() (low, high quantity.Temperature) {
	if len(l.log) == 0 {
		return low, high
	}
	lo, hi := l.log[0].mean, l.log[0].mean
	for _, o := range l.log {
		lo, hi = min(lo, o.mean), max(hi, o.mean)
	}
	return degrees(lo), degrees(hi)
}

// String says what was learned, and on how many bakes.
func (l Lesson) String() string { return l.Culture.String() }
