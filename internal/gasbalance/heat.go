package gasbalance

import "math"

// heatOfGas is h_f, how much the gas of a dough warms it, °C per L/kg flour: 95 ± 25 kJ per mol glucose (from
// memory) and two mol of gas, 48.9 L, into a dough of 4.8 kJ/(K·kg flour); 0.3 to 0.5.
const heatOfGas = 0.40

// Warming says that a dough warms itself above the history given, which is then that of its surroundings acting
// alone. It is never for a history that was measured in the dough.
type Warming struct {
	// Constant is τ, the time constant with which the dough loses its excess, h; 0 means that it loses none.
	Constant float64
	// Share is the share of the heat that stays in the dough, 0 to 1; 0 means all.
	Share float64
}

// heatStep is how long a run may be when the dough warms itself, h.
const heatStep = 0.25

// FollowWarm follows a history in a dough that warms itself, and returns the history as it was in the dough and the
// state at its end.
//
//	dθ/dt = −θ/τ + h_f·dG/dt:   θ₁ = θ₀·e^(−Δt/τ) + h_f·ΔG·(1 − e^(−Δt/τ))·τ/Δt
//
// θ is the excess over the history. ΔG is that of the step taken at θ₀; the step is then taken again from θ₀ to θ₁.
func (c *Clock) FollowWarm(start State, history []Knot, w Warming, until float64) ([]Knot, State) {
	heat := heatOfGas
	if w.Share > 0 {
		heat *= w.Share
	}
	s, theta, at := start, 0.0, 0.0
	from := celsius(history, 0)
	next := after(history, 0)
	out := []Knot{{0, from}}
	for at < until && len(out) < mostWarmKnots {
		end := Knot{math.Min(at+heatStep, until), 0}
		whole := next < len(history) && history[next].Hour <= end.Hour
		switch {
		case whole:
			end = history[next]
		case next < len(history):
			end.Celsius = between(Knot{at, from}, history[next], end.Hour)
		default:
			end.Celsius = from
		}
		dt := end.Hour - at
		trial := c.Advance(s, dt, from+theta, end.Celsius+theta)
		keep, mean := 1.0, 1.0
		if w.Constant > 0 {
			keep = math.Exp(-dt / w.Constant)
			mean = (1 - keep) * w.Constant / dt
		}
		next1 := theta*keep + heat*(c.Gas(&trial)-c.Gas(&s))*mean
		s = c.Advance(s, dt, from+theta, end.Celsius+next1)
		theta, at, from = next1, end.Hour, end.Celsius
		out = append(out, Knot{at, from + theta})
		if whole {
			for next < len(history) && history[next].Hour <= at { // over jumps
				if from != history[next].Celsius {
					from = history[next].Celsius
					out = append(out, Knot{at, from + theta})
				}
				next++
			}
		}
	}
	return out, s
}

// mostWarmKnots bounds a followed history: a month in quarters of an hour, three times over.
const mostWarmKnots = 10_000
