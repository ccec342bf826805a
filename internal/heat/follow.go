package heat

import (
	"cmp"
	"math"
	"slices"
	"sort"

	"example.org/maslin/internal/numeric"
)

// Knot is a temperature of the surroundings at a time. Between knots the temperature runs straight; two
// knots at the same time are a jump; before the first and after the last it is constant.
type Knot struct {
	Seconds float64
	Celsius float64
}

// mode is one exponential of a body: the center follows Σ center·u, the mean Σ mean·u, where each u
// decays with its rate and is driven by changes of the surroundings.
type mode struct {
	rate         float64 // 1/s
	center, mean float64
}

// mostModes is how many exponentials a body of several axes keeps when its surroundings change, and
// singleModes how many a body of one axis.
const (
	mostModes   = 240
	singleModes = 60
)

// makeModes multiplies the series of the axes out into single exponentials and keeps the slowest. What
// the rest would add at t = 0 goes into one last mode at the rate where the list ends, so that a
// body starts exactly at its starting temperature.
func (b *Body) makeModes() []mode {
	// No mode at or above the first omitted term of any axis may be kept, or the list would have gaps.
	limit := math.Inf(1)
	slowest := 1 / b.SlowestTime()
	for i := range b.count {
		first, last := b.factors[i].term[0].Eigenvalue, b.factors[i].term[terms-1].Eigenvalue
		limit = math.Min(limit, slowest+(last*last-first*first)*b.rates[i])
	}
	var room [2][]mode
	if b.count == 1 {
		z := b.factors[0].term[singleModes].Eigenvalue
		return closeModes(b.modesBelow(z*z*b.rates[0], mostModes, &room), z*z*b.rates[0])
	}
	low, high := math.Log(slowest), math.Log(limit)
	for range 30 {
		mid := (low + high) / 2
		if len(b.modesBelow(math.Exp(mid), mostModes, &room)) > mostModes {
			high = mid
		} else {
			low = mid
		}
	}
	return closeModes(b.modesBelow(math.Exp(low), mostModes, &room), math.Exp(high))
}

func closeModes(modes []mode, rate float64) []mode {
	center, mean := 1.0, 1.0
	for _, m := range modes {
		center -= m.center
		mean -= m.mean
	}
	return append(modes, mode{rate, center, mean})
}

// modesBelow lists the products of terms whose rate is below a limit, and stops when there are more than
// most. The list stands in one of two rooms, which the next call uses again.
func (b *Body) modesBelow(limit float64, most int, room *[2][]mode) []mode {
	modes := []mode{{0, 1, 1}}
	for i := range b.count {
		// The axes still to come add at least their slowest rates.
		ahead := 0.0
		for j := i + 1; j < b.count; j++ {
			z := b.factors[j].term[0].Eigenvalue
			ahead += z * z * b.rates[j]
		}
		next := room[i%2][:0]
		for _, m := range modes {
			for n := range terms {
				t := &b.factors[i].term[n]
				rate := m.rate + t.Eigenvalue*t.Eigenvalue*b.rates[i]
				if rate+ahead >= limit {
					break
				}
				next = append(next, mode{rate, m.center * t.Coefficient, m.mean * t.Coefficient * t.MeanFactor})
				if len(next) > most {
					room[i%2] = next
					return next
				}
			}
		}
		room[i%2], modes = next, next
	}
	return modes
}

// Trace is the temperature of a body in surroundings that change; see [Body.Follow]. It is read-only and
// safe for concurrent use.
type Trace struct {
	modes []mode // slowest first
	knots []Knot
	spans []stretch // what follows each knot, jumps included
}

// A stretch is the time from one knot to the next, in which the surroundings change at one pace. There every
// mode goes exponentially from where it is to a steady lag, −slope/rate.
type stretch struct {
	slope        float64   // of the surroundings, °C/s
	away         []float64 // u + slope/rate: how far each mode is from its steady lag at the knot
	center, mean float64   // the steady lags of all modes together
	moving       int       // modes from here on are as good as steady
}

// settled is how much all the modes that count as steady may be off, °C.
const settled = 1e-12

// stretchFrom is what happens after a knot, the modes being at u and the surroundings changing by slope.
func stretchFrom(modes []mode, u []float64, slope float64) stretch {
	s := stretch{slope: slope, away: make([]float64, len(modes)), moving: len(modes)}
	for k, m := range modes {
		lag := slope / m.rate
		s.away[k] = u[k] + lag
		s.center -= m.center * lag
		s.mean -= m.mean * lag
	}
	rest := 0.0
	for k := len(modes) - 1; k >= 0; k-- {
		rest += math.Max(math.Abs(modes[k].center), math.Abs(modes[k].mean)) * math.Abs(s.away[k])
		if rest > settled {
			break
		}
		s.moving = k
	}
	return s
}

// Follow answers: what temperature has a body, in its middle and on average, that starts at
// one temperature and stands in surroundings whose temperature changes? The surroundings are
// piecewise linear; for these the superposition integral is exact, one exponential at a time:
//
//	T(t) = Ta(t) + Σ Aₙ·uₙ(t),   u′ = −λₙ·u − Ta′(t),   uₙ(0) = T₀ − Ta(0)
//
// Time starts at the first knot. Accuracy: that of the series for plates, long cylinders and balls. Short
// cylinders and blocks keep the 240 slowest exponentials; within a minute of a sudden change their mean may
// be off by a few percent of that change, after ten minutes by 0.001 °C.
//
// Errors: [quantity.ErrOutOfRange] for temperatures outside −100 to 500 °C; numeric.ErrDomain without
// knots, or when times fall or are not finite.
//
// Source: Carslaw and Jaeger, Conduction of Heat in Solids (1959), 1.14 (Duhamel's theorem).
func (b *Body) Follow(start float64, surroundings []Knot) (*Trace, error) {
	if !within(start, -100, 500) {
		return nil, outOfRange("starting temperature", start, -100, 500, "°C")
	}
	if len(surroundings) == 0 {
		return nil, numeric.ErrDomain
	}
	for i, k := range surroundings {
		if !within(k.Celsius, -100, 500) {
			return nil, outOfRange("temperature of the surroundings", k.Celsius, -100, 500, "°C")
		}
		if !within(k.Seconds, -1e12, 1e12) || i > 0 && k.Seconds < surroundings[i-1].Seconds {
			return nil, numeric.ErrDomain
		}
	}
	modes := b.makeModes()
	slices.SortFunc(modes, func(a, b mode) int { return cmp.Compare(a.rate, b.rate) })
	tr := &Trace{modes: modes, knots: slices.Clone(surroundings), spans: make([]stretch, len(surroundings))}
	u := make([]float64, len(modes))
	for k := range u {
		u[k] = start - surroundings[0].Celsius
	}
	decay, over := make([]float64, len(modes)), 0.0 // of each mode, over a time in seconds
	for i, p := range surroundings {
		if i+1 == len(surroundings) {
			tr.spans[i] = stretchFrom(modes, u, 0)
			break
		}
		q := surroundings[i+1]
		dt := q.Seconds - p.Seconds
		if dt == 0 {
			for k := range u {
				u[k] -= q.Celsius - p.Celsius
			}
			continue // no time falls between the two
		}
		if dt != over {
			over = dt
			for k, m := range modes {
				decay[k] = math.Exp(-m.rate * dt)
			}
		}
		s := stretchFrom(modes, u, (q.Celsius-p.Celsius)/dt)
		for k, m := range modes {
			u[k] = s.away[k]*decay[k] - s.slope/m.rate
		}
		tr.spans[i] = s
	}
	return tr, nil
}

// Core is the temperature in the middle in °C at a time on the clock of the knots.
func (tr *Trace) Core(seconds float64) float64 {
	core, _ := tr.Temperatures(seconds)
	return core
}

// Mean is the mean temperature in °C at a time on the clock of the knots.
func (tr *Trace) Mean(seconds float64) float64 {
	_, mean := tr.Temperatures(seconds)
	return mean
}

// Temperatures is the temperature in the middle and the mean in °C at a time on the clock of the knots.
// Times before the first knot give the start; NaN gives NaN.
func (tr *Trace) Temperatures(seconds float64) (core, mean float64) {
	if math.IsNaN(seconds) {
		return math.NaN(), math.NaN()
	}
	seconds = math.Max(seconds, tr.knots[0].Seconds)
	// The last knot at or before the time.
	i := sort.Search(len(tr.knots), func(i int) bool { return tr.knots[i].Seconds > seconds }) - 1
	s := &tr.spans[i]
	dt := seconds - tr.knots[i].Seconds
	ambient := tr.knots[i].Celsius + s.slope*dt
	core, mean = ambient+s.center, ambient+s.mean
	for k, m := range tr.modes[:s.moving] {
		x := m.rate * dt
		if x > cut {
			break // and so has every faster mode
		}
		u := s.away[k] * math.Exp(-x)
		core += m.center * u
		mean += m.mean * u
	}
	return core, mean
}

// Ambient is the temperature of the surroundings in °C at a time on the clock of the knots; after a jump at
// that time.
func (tr *Trace) Ambient(seconds float64) float64 {
	if !(seconds > tr.knots[0].Seconds) {
		return tr.knots[0].Celsius
	}
	i := sort.Search(len(tr.knots), func(i int) bool { return tr.knots[i].Seconds > seconds }) - 1
	p := tr.knots[i]
	if i+1 == len(tr.knots) {
		return p.Celsius
	}
	q := tr.knots[i+1]
	return p.Celsius + (q.Celsius-p.Celsius)*(seconds-p.Seconds)/(q.Seconds-p.Seconds)
}
