package ferment

import (
	"fmt"
	"math"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

// Ripening is a levain just fed: when is it ripe, and how long does it stay usable?
type Ripening struct {
	// Seed is the share of all its flour that comes with the ripe seed: fed 1 : 2 : 2 at 100 % hydration it is 0.5/2.5 = 20 %;
	// see [SeedShare].
	Seed      quantity.Percent
	Hydration quantity.Percent // zero means 100 %
	// WholeGrain is the share of the flour that is whole grain.
	WholeGrain quantity.Percent
	// History is its temperature from feeding on: join the counter and the refrigerator.
	History  History
	Curve    Curve
	Culture  Culture
	ColdSeed bool // the seed comes from the refrigerator: a lag
	// Extrapolate allows temperatures outside the curve's.
	Extrapolate bool
}

// SeedShare answers: what share of the fed levain's flour comes with the seed, for a feed by weight such as 1 : 2 : 2?
//
//	s = S/(1 + H)/(S/(1 + H) + F)
//
// S and F are the parts of seed and flour, H the seed's hydration. Errors: ErrOutOfRange for parts outside 0.001 to 10,000, or a hydration outside
// 30 to 500 %. Source: arithmetic.
func SeedShare(seed, flour float64, seedHydration quantity.Percent) (quantity.Percent, error) {
	var p problems
	p.Float("Seed", seed, 0.001, 10_000, "parts")
	p.Float("Flour", flour, 0.001, 10_000, "parts")
	quantity.Check(&p.Problems, "SeedHydration", seedHydration, quantity.NewPercent(30), quantity.NewPercent(500))
	if err := p.Err(); err != nil {
		return quantity.Percent{}, err
	}
	s := seed / (1 + seedHydration.Fraction())
	return quantity.NewPercent(100 * s / (s + flour)), nil
}

// A levain is ripe when its yeast has grown to about what its flour can feed. Counting a ripe levain's own flour as 1:
// ripe from 1.2, at its peak at 1.7, and usable until one more unit of dose has passed at the peak, as the food
// runs out. Judgments set on common practice at 24 °C: fed 1:1:1 it peaks in 4 to 5 h, 1:2:2 in 5 to 6, 1:5:5 in 8,
// 1:10:10 in 10 to 12; it falls within 3 to 4 h of the peak, and keeps about five days in a refrigerator at 4 °C.
const (
	ripeFrom   = 1.2
	ripePeak   = 1.7
	usableDose = 1.0
	// stiffness: a stiff levain is slower (direction only published; the power is a judgment): 0.81 at 50 % hydration.
	stiffness = 0.3
)

// Ripeness is when a levain is ripe, from the feed.
type Ripeness struct {
	From  quantity.TimeRange // when it becomes ripe
	Peak  quantity.TimeRange // when it stands highest
	Until quantity.TimeRange // until when it is still usable

	levain Ripening
	f      fermentation
	seed   float64
	ends   [3]bool
	notes  []working.Message
}

// Ripe answers: when is the levain ripe, and until when can it be used?
//
//	ripe at p·M = ln(k/s) + lag,   k = 1.2 (ripe), 1.7 (peak);   usable until p·M = ln(1.7/s) + lag + 1
//
// M is the dose of [Bulk.Estimate], p the culture's pace, s the share of flour that comes with the seed; the lag is 0.4 for a seed from the
// refrigerator. Each time is a range with its probability. What is not reached within 30 days is given as 30 days: in a
// refrigerator a levain may keep its last stage for weeks; see [Ripeness.Reached]. Valid for seeds of 0.1 to 90 % of the flour. Errors: ErrRequired,
// ErrOutOfRange; ErrModelRange as in [Bulk.Estimate]. Source: growth: Gänzle, Ehmann and Hammes 1998; stages: judgments set on common
// practice.
func (l Ripening) Ripe() (Ripeness, error) {
	var p problems
	if l.Seed.IsZero() {
		p.Required("Seed", "0.1 % to 90 % of the levain's flour")
	} else {
		quantity.Check(&p.Problems, "Seed", l.Seed, quantity.NewPercent(0.1), quantity.NewPercent(90))
	}
	hydration := l.Hydration
	if hydration.IsZero() {
		hydration = quantity.NewPercent(100)
	}
	quantity.Check(&p.Problems, "Hydration", hydration, quantity.NewPercent(40), quantity.NewPercent(300))
	b := Bulk{Inoculation: quantity.NewPercent(10), SaltInWater: quantity.Percent{}, WholeGrain: l.WholeGrain, History: l.History, Curve: l.Curve, Culture: l.Culture, ColdLevain: l.ColdSeed, Extrapolate: l.Extrapolate}
	f, err := b.check(false)
	p.Join("", err)
	if err := p.Err(); err != nil {
		return Ripeness{}, err
	}
	f.out.aa -= math.Pow(math.Log(f.salt)*sdSalt, 2) // no salt here, so nothing unsure about it
	f.salt = 1
	slow := stiffness * math.Log(math.Min(hydration.Fraction(), 1.25))
	f.out.b += slow
	f.out.bb += slow * slow / 4
	r := Ripeness{levain: l, f: f, seed: l.Seed.Fraction()}
	for i, m := range r.doses() {
		m := math.Max(m, 1e-3)
		nodes, t := f.walk(l.History, math.Log(m), 1/m)
		if err := sane(nodes[len(nodes)-1].dose); err != nil {
			return Ripeness{}, err
		}
		limit := hours(Horizon)
		out := quantity.TimeRange{Early: span(math.Min(t[0], limit)), Likely: span(math.Min(t[1], limit)), Late: span(math.Min(t[2], limit)), Probability: probabilityClaimed}
		switch i {
		case 0:
			r.From = out
		case 1:
			r.Peak = out
		case 2:
			r.Until = out
		}
		r.ends[i] = t[1] < limit
	}
	if err := withinCurve(b, l.History, hours(r.Peak.Late), "History"); err != nil {
		return Ripeness{}, err
	}
	r.notes = l.History.Notes()
	return r, nil
}

// doses are the doses at which it is ripe, at its peak, and no longer usable.
func (r Ripeness) doses() [3]float64 {
	peak := math.Log(ripePeak/r.seed) + r.f.lag
	return [3]float64{math.Log(ripeFrom/r.seed) + r.f.lag, peak, peak + usableDose}
}

// Reached reports whether it is ripe, at its peak, and past use within 30 days, more likely than not.
func (r Ripeness) Reached() (ripe, peak, past bool) { return r.ends[0], r.ends[1], r.ends[2] }

// Notes are things to know about this answer.
func (r Ripeness) Notes() []working.Message { return append([]working.Message(nil), r.notes...) }

// String prints "ripe after 4h50m, at its peak after 3h50m to 8h20m (80 %), likely 5h40m, usable until about 8h30m".
func (r Ripeness) String() string {
	return "ripe after about " + quantity.FormatDuration(r.From.Likely.Round(5*time.Minute)) + ", at its peak after " + r.Peak.String() +
		", usable until about " + quantity.FormatDuration(r.Until.Likely.Round(5*time.Minute))
}

// Working derives the answer step by step.
func (r Ripeness) Working() working.Working {
	w := working.Working{Title: "When the levain is ripe"}
	if r.seed == 0 {
		return w
	}
	seed := r.levain.Seed
	for i, s := range []struct {
		name, symbol, formula string
		k                     float64
		extra                 float64
		t                     quantity.TimeRange
	}{
		{"dose until ripe", "M_ripe", "ln(k ÷ s) + lag", ripeFrom, 0, r.From},
		{"dose until the peak", "M_peak", "ln(k ÷ s) + lag", ripePeak, 0, r.Peak},
		{"dose until past use", "M_past", "ln(k ÷ s) + lag + 1", ripePeak, usableDose, r.Until},
	} {
		numbers := fmt.Sprintf("ln(%s ÷ %s) + %s", number(s.k), number(seed.Fraction()), number(r.f.lag))
		if s.extra > 0 {
			numbers += " + 1"
		}
		w.Steps = append(w.Steps, working.Step{
			Name: s.name, Symbol: s.symbol, Formula: s.formula,
			Where: []working.Binding{
				{Symbol: "k", Meaning: "yeast relative to a ripe levain's (judgment)", Value: number(s.k)},
				{Symbol: "s", Meaning: "share of the flour that comes with the seed", Value: seed.String()},
				{Symbol: "lag", Meaning: "dose lost by a seed from the refrigerator", Value: number(r.f.lag)},
			},
			Numbers: numbers, Value: fixed(r.doses()[i], 4), Tolerance: 1e-4, Source: sourceRipe(),
		}, timeStep("t"+s.symbol[1:], s.symbol, r.f, r.levain.History, s.t))
	}
	return w
}
