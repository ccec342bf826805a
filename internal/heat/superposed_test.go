package heat

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.org/maslin/internal/numeric"
)

func shortest(x float64) string { return fmt.Sprintf("%g", x) }

// superposed is the temperature of a body by Duhamel's theorem, each jump and each moment of a ramp answered by the
// series alone: T(t) = Ta(t) + (T₀ − Ta(0))·θ(t) − Σ jumps·θ(t − s) − Σ ∫ slope·θ(t − s) ds. (Carslaw and Jaeger, 1.14)
func superposed(t *rapid.T, theta func(float64) float64, start float64, knots []Knot, at float64) float64 {
	around, sum := knots[0].Celsius, (start-knots[0].Celsius)*theta(at-knots[0].Seconds)
	for i := 1; i < len(knots) && knots[i-1].Seconds < at; i++ {
		p, q := knots[i-1], knots[i]
		if p.Seconds == q.Seconds {
			sum -= (q.Celsius - p.Celsius) * theta(at-q.Seconds)
			around = q.Celsius
			continue
		}
		slope, end := (q.Celsius-p.Celsius)/(q.Seconds-p.Seconds), math.Min(at, q.Seconds)
		around = p.Celsius + slope*(end-p.Seconds)
		// With the square root of the time since, the beginning is smooth too.
		v, err := numeric.Integrate(func(root float64) float64 { return 2 * root * theta(root*root) },
			math.Sqrt(at-end), math.Sqrt(at-p.Seconds), 1e-9/math.Max(1e-9, math.Abs(slope)))
		if err != nil {
			t.Fatal(err)
		}
		sum -= slope * v.Value
	}
	return around + sum
}

// Surroundings that rest, run up and down, and jump, in stretches of a hundredth of a second to ten hours, are followed
// as the superposition of what the series answers to each change.
func TestFollowedIsTheSuperposition(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := []Geometry{Ball(0.06), Plate(0.03), LongCylinder(0.05)}[rapid.IntRange(0, 2).Draw(t, "form")]
		h := math.Exp(rapid.Float64Range(0, 5).Draw(t, "ln h"))
		b, err := NewBody(g, Material{0.41, 1100, 2800}, h)
		few, err2 := NewFollowed(g, Material{0.41, 1100, 2800}, h)
		if err != nil || err2 != nil {
			t.Fatal(err, err2)
		}
		degrees := rapid.Float64Range(0, 60)
		knots := []Knot{{rapid.SampledFrom([]float64{0, -7200, 1e5}).Draw(t, "from"), degrees.Draw(t, "around")}}
		jumps := rapid.Bool().Draw(t, "jumps")
		for range rapid.IntRange(1, 6).Draw(t, "knots") {
			last := knots[len(knots)-1]
			stretches := []float64{0.01, 1, 60, 600, 3600, 36000}
			if jumps {
				stretches = append(stretches, 0)
			}
			last.Seconds += rapid.SampledFrom(stretches).Draw(t, "stretch")
			if !rapid.Bool().Draw(t, "rests") {
				last.Celsius = degrees.Draw(t, "then")
			}
			knots = append(knots, last)
		}
		start := degrees.Draw(t, "start")
		for of, theta := range map[Part]func(float64) float64{Middle: b.Center, Average: b.Mean} {
			tr, err := few.Follow(of, start, knots)
			if err != nil {
				t.Fatal(err)
			}
			for _, k := range knots {
				for _, later := range []float64{120, 900, 30000} {
					at := k.Seconds + later
					if near(knots, at) {
						continue // sixty exponentials leave out the first minute after a change
					}
					got, want := tr.At(at), superposed(t, theta, start, knots, at)
					if !(math.Abs(got-want) <= 1e-4) { // of a ramp of a degree a second what is left out is so much
						t.Fatalf("%v: %v at %v s, superposed %v", knots, got, at, want)
					}
				}
			}
		}
	})
}

func near(knots []Knot, at float64) bool {
	for i, k := range knots {
		if d := at - k.Seconds; i > 0 && d >= 0 && d < 60 {
			return true
		}
	}
	return false
}

// A body that has long come to rest answers sudden strong changes with all its exponentials: those that had died away
// come back.
func TestRestIsFollowedByPulses(t *testing.T) {
	b := breadBall(t)
	rest := []Knot{{0, 20}, {1e6, 20}, {1e6 + 30, 320}, {1e6 + 60, 20}, {1e6 + 90, 320}, {1e6 + 120, 20}}
	rapid.Check(t, func(t *rapid.T) {
		after := rapid.Float64Range(5, 400).Draw(t, "after")
		for of, theta := range map[Part]func(float64) float64{Middle: b.Center, Average: b.Mean} {
			tr, err := b.Follow(of, 20, rest)
			if err != nil {
				t.Fatal(err)
			}
			got, want := tr.At(1e6+after), superposed(t, theta, 20, rest, 1e6+after)
			if !(math.Abs(got-want) <= 2e-3) {
				t.Fatalf("%v s after the pulses began: %v, superposed %v", after, got, want)
			}
		}
	})
}
