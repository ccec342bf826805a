package ferment

import (
	"fmt"
	"math"
	"time"

	"example.org/maslin/dough/quantity"
)

// Bake is a logged bulk: the dough, the temperature it had, and how long it took to rise so far.
type Bake struct {
	// Bulk is the dough, with the Rise it had reached; its Culture is not used.
	Bulk Bulk
	// Took is how long it took to reach that rise.
	Took time.Duration
	// Error is the standard deviation of the rise as read, in points; zero means 5.
	Error quantity.Percent
}

// Learning is a kitchen's log of bakes, all with levain, all with commercial yeast, or all with both.
type Learning struct {
	Bakes []Bake
	// Prior is what was known before; the zero value is nothing.
	Prior Culture
	// Robust limits what one wild bake (a forgotten heater, a misread clock) can do: it counts less and less, and
	// beyond 4.7 spreads not at all.
	Robust bool
}

// Lesson is what a log of bakes has taught.
type Lesson struct {
	Culture Culture

	log    []observation
	bakes  []Bake
	prior  *belief
	robust bool
}

// observation is one bake as a line of the regression: y = row·x + noise of variance scale·σ².
type observation struct {
	y      float64
	mean   float64 // dose-weighted temperature
	sens   float64 // e
	kind   Kneading
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
		known[k] = standard.outlook(Kneading(k))
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
func (k *Bake) observe(kind leavening, standard *belief, typical *[ByMachine + 1]outlook) (observation, error) {
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
	p.Duration("Took", k.Took, time.Minute, Horizon)
	delta := k.Error.Fraction()
	if k.Error.IsZero() {
		delta = standardReadingError
	} else {
		quantity.Check(&p.Problems, "Error", k.Error, quantity.NewPercent(0.1), quantity.NewPercent(50))
	}
	if err := p.Err(); err != nil {
		return observation{}, err
	}
	if err := withinCurve(b, b.History, hours(k.Took), "Bulk.History"); err != nil {
		return observation{}, err
	}
	n := f.through(b.History, hours(k.Took))
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

// The weights of the robust variant: Huber's to begin with, so that the start does not matter, then Tukey's biweight, which
// gives a bake beyond 4.685 spreads no say at all and keeps 95 % of the efficiency on ordinary bakes. The two means are those of
// w and w·r² over a standard normal r: 1 − 2/c² + 3/c⁴ and 1 − 6/c² + 15/c⁴, the cut at c changing them by less
// than 1e-4. Source: Huber, Robust Statistics, 4.8 and 7.8.
const (
	huber         = 2.0
	biweight      = 4.685
	meanWeight    = 1 - 2/(biweight*biweight) + 3/(biweight*biweight*biweight*biweight)
	meanWeighted2 = 1 - 6/(biweight*biweight) + 15/(biweight*biweight*biweight*biweight)
	huberRounds   = 8
	mostRounds    = 60
	roughly       = 1e-3 // of the spread: Huber's weights have done their part
	settled       = 1e-6
)

// regress is the normal regression with an unknown σ; leave < 0 uses every observation.
func (b *belief) regress(log []observation, robust bool, leave int) (*belief, bool) {
	precision, ok := b.cov.inverse()
	if !ok {
		return nil, false
	}
	start := precision.times(&b.mean)
	out := &belief{kind: b.kind, sigma: b.sigma, nu: b.nu}
	out.mean = b.mean
	out.coldest = math.Inf(1)
	if b.bakes > 0 {
		out.coldest = b.coldest
	}
	for i := range log {
		if i != leave {
			out.coldest = math.Min(out.coldest, log[i].mean)
		}
	}
	count := float64(len(log))
	out.bakes = b.bakes + len(log)
	if leave >= 0 {
		count--
		out.bakes--
	}
	// Without weights that change, the sums are needed once.
	var gram matrix
	var moment vector
	var squares, weights float64
	gather := func() {
		gram, moment, squares, weights = matrix{}, vector{}, 0, 0
		// By kneading: the row of a bake is that of amplitude, pace and temperature, and once more its pace.
		var sums [ByMachine + 1]struct {
			gram   [3][3]float64
			moment [3]float64
		}
		for i := range log {
			if i == leave {
				continue
			}
			o := &log[i]
			w := o.weight / o.scale
			h := [3]float64{-o.sens, 1, o.mean - reference}
			k := &sums[o.kind]
			for i, hi := range h {
				wh := w * hi
				for j := 0; j <= i; j++ {
					k.gram[i][j] += wh * h[j]
				}
				k.moment[i] += wh * o.y
			}
			squares += w * o.y * o.y
			weights += o.weight
		}
		for kind := range sums {
			k := &sums[kind]
			u := unknownKneading + kind
			for i := range 3 {
				for j := 0; j <= i; j++ {
					gram[i][j] += k.gram[i][j]
				}
				moment[i] += k.moment[i]
			}
			gram[u][unknownAmplitude] = k.gram[unknownPace][unknownAmplitude]
			gram[u][unknownPace] = k.gram[unknownPace][unknownPace]
			gram[u][unknownTemperature] = k.gram[unknownTemperature][unknownPace]
			gram[u][u] = k.gram[unknownPace][unknownPace]
			moment[u] = k.moment[unknownPace]
		}
		for j := range unknowns {
			for k := range j {
				gram[k][j] = gram[j][k]
			}
		}
	}
	if robust { // weights are the caller's to keep, so work on a copy
		log = append([]observation(nil), log...)
	}
	gather()
	bounded := false // the weights are Tukey's
	for round := range mostRounds {
		v := out.sigma * out.sigma
		a := precision
		m := start
		for j := range unknowns {
			for k := range unknowns {
				a[j][k] += gram[j][k] / v
			}
			m[j] += moment[j] / v
		}
		cov, ok := a.inverse()
		if !ok {
			return nil, false
		}
		out.cov = cov
		out.mean = cov.times(&m)
		// Σ w(y − hᵀx)² and Σ w hᵀPh from the sums.
		gx := gram.times(&out.mean)
		rss := squares - 2*moment.dot(&out.mean) + out.mean.dot(&gx)
		for j := range unknowns {
			for k := range unknowns {
				rss += gram[j][k] * cov[j][k]
			}
		}
		rss = math.Max(0, rss)
		n := count
		if bounded {
			rss /= meanWeighted2
			n = weights / meanWeight
		}
		out.nu = b.nu + n
		next := math.Sqrt((b.nu*b.sigma*b.sigma + rss) / out.nu)
		change := math.Abs(next - out.sigma)
		done := change < settled && (!robust || bounded)
		out.sigma = next
		if done {
			break
		}
		if robust {
			bounded = bounded || round >= huberRounds || change < roughly
			var paces [ByMachine + 1]float64
			for k := range paces {
				paces[k] = out.mean[unknownPace] + out.mean[unknownKneading+k] - reference*out.mean[unknownTemperature]
			}
			for i := range log {
				o := &log[i]
				fit := o.mean*out.mean[unknownTemperature] - o.sens*out.mean[unknownAmplitude] + paces[o.kind]
				r := math.Abs(o.y-fit) / math.Sqrt(o.scale) / out.sigma
				if !bounded {
					o.weight = math.Min(1, huber/math.Max(r, 1e-9))
				} else {
					x := math.Max(0, 1-r*r/(biweight*biweight))
					o.weight = x * x
				}
			}
			gather()
		}
	}
	return out, true
}

// Review is what the other bakes would have predicted for one bake.
type Review struct {
	Took      time.Duration
	Predicted quantity.TimeRange
	Inside    bool // Took lies in the predicted range
}

// String prints "took 6h10m; the other bakes said 5h20m to 7h00m (80 %), likely 6h05m".
func (r Review) String() string {
	s := "took " + quantity.FormatDuration(r.Took) + "; the other bakes said " + r.Predicted.String()
	if !r.Inside {
		s += ": outside"
	}
	return s
}

// Review answers: what would the lesson without bake i have predicted for it? Errors: ErrOutOfRange for i. Source: cross-validation
// by leaving one out.
func (l Lesson) Review(i int) (Review, error) {
	var p problems
	if i < 0 || i >= len(l.bakes) {
		p.Add("i", fmt.Sprint(i), "a bake of the lesson", errOutOfRange)
		return Review{}, p.Err()
	}
	b, ok := l.prior.regress(l.log, l.robust, i)
	if !ok {
		p.Add("i", fmt.Sprint(i), "bakes from which a culture can be told", quantity.ErrInconsistent)
		return Review{}, p.Err()
	}
	in := l.bakes[i].Bulk
	in.Culture = Culture{b}
	in.Extrapolate = true // the bake was accepted; its late end may lie beyond its history
	e, err := in.Estimate()
	if err != nil {
		return Review{}, err
	}
	r := Review{Took: l.bakes[i].Took, Predicted: e.Ready()}
	r.Inside = r.Predicted.Contains(r.Took)
	return r, nil
}

// Reviews is every [Lesson.Review], and how many took as long as predicted; of many bakes about 80 % should.
func (l Lesson) Reviews() (all []Review, inside int, err error) {
	for i := range l.bakes {
		r, err := l.Review(i)
		if err != nil {
			return nil, 0, quantity.At(fmt.Sprintf("Bakes[%d]", i), err)
		}
		if r.Inside {
			inside++
		}
		all = append(all, r)
	}
	return all, inside, nil
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
