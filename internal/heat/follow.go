package heat

import (
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

// Trace is the temperature of a part of a body in surroundings that change; see [Body.Follow]. It is read-only and
// safe for concurrent use.
type Trace struct {
	*modes
	knots []Knot
	spans []stretch // what follows each knot, jumps included
}

// A stretch is the time from one knot to the next, in which the surroundings change at one pace. There every
// mode goes exponentially from where it is to a steady lag, −slope/rate.
type stretch struct {
	slope float64   // of the surroundings, °C/s
	away  []float64 // u + slope/rate of the modes that move: how far each is from its steady lag at the knot
}

// settled is how much all the modes that count as steady may be off, °C.
const settled = 1e-10

// moving is how many modes are not as good as steady, given how far each is away at most.
func (m *modes) moving(away []float64) int {
	rest := 0.0
	for k := len(away) - 1; k >= 0; k-- {
		if rest += math.Abs(m.all[k].share * away[k]); rest > settled {
			return k + 1
		}
	}
	return 0
}

// Follow answers: what temperature has a body, in its middle or on average, that starts at
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
func (b *Body) Follow(of Part, start float64, surroundings []Knot) (*Trace, error) {
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
	m := b.modes(of)
	tr := &Trace{modes: m, knots: slices.Clone(surroundings), spans: make([]stretch, len(surroundings))}
	away := make([]float64, len(m.all))
	slope := tr.slope(0)
	for k := range away {
		away[k] = start - surroundings[0].Celsius + slope/m.all[k].rate
	}
	decay, over := make([]float64, len(away)), 0.0 // of each mode, over a time in seconds
	var room []float64
	for i, p := range surroundings {
		tr.spans[i] = stretch{slope, away[:m.moving(away)]}
		if i+1 == len(surroundings) {
			break
		}
		if len(room) < len(away) { // for all knots at once, when it is known how many modes last
			room = make([]float64, len(away)*(1+min(i, 1)*(len(surroundings)-1-i)))
		}
		next := room[:len(away):len(away)]
		room = room[len(away):]
		q := surroundings[i+1]
		if p.Seconds == q.Seconds { // no time falls between the two
			for k := range next {
				next[k] = away[k] - (q.Celsius - p.Celsius)
			}
			away = next
			continue
		}
		if dt := q.Seconds - p.Seconds; dt != over {
			over = dt
			for k := range away {
				decay[k] = numeric.Exp(-m.all[k].rate * dt)
			}
		}
		bend := tr.slope(i+1) - slope
		for k := range next {
			next[k] = away[k]*decay[k] + bend/m.all[k].rate
		}
		slope += bend
		if away = next; i == 0 {
			away = away[:m.lasting(away, tr)]
		}
	}
	return tr, nil
}

// slope is how the surroundings change from a knot on, or after the jump that begins with it, °C/s.
func (tr *Trace) slope(i int) float64 {
	for ; i+1 < len(tr.knots); i++ {
		if p, q := tr.knots[i], tr.knots[i+1]; q.Seconds > p.Seconds {
			return (q.Celsius - p.Celsius) / (q.Seconds - p.Seconds)
		}
	}
	return 0
}

// lasting is how many modes still count after the first stretch, where the surroundings have no jumps: from then
// on a mode is never farther away than it is, or than bends of the surroundings take it.
func (m *modes) lasting(away []float64, tr *Trace) int {
	bend, shortest := 0.0, math.Inf(1)
	for i := 1; i+1 < len(tr.knots); i++ {
		dt := tr.knots[i+1].Seconds - tr.knots[i].Seconds
		if dt == 0 {
			return len(away)
		}
		shortest = math.Min(shortest, dt)
		bend = math.Max(bend, math.Abs(tr.slope(i+1)-tr.slope(i)))
	}
	farthest := make([]float64, len(away))
	for k := range away {
		rate := m.all[k].rate
		farthest[k] = math.Abs(away[k]) - bend/rate/math.Expm1(-rate*shortest)
	}
	return m.moving(farthest)
}

// At is the temperature in °C at a time on the clock of the knots. Times before the first knot give the start; NaN
// gives NaN. It does not allocate.
func (tr *Trace) At(seconds float64) float64 {
	if math.IsNaN(seconds) {
		return math.NaN()
	}
	seconds = math.Max(seconds, tr.knots[0].Seconds)
	// The last knot at or before the time.
	i := sort.Search(len(tr.knots), func(i int) bool { return tr.knots[i].Seconds > seconds }) - 1
	s := &tr.spans[i]
	dt := seconds - tr.knots[i].Seconds
	return tr.knots[i].Celsius + s.slope*(dt-tr.lag) + tr.sum(s.away, dt)
}
