package numeric

import (
	"errors"
	"math"
	"testing"
)

// A growing exponential from a place that is not 0: ∫ u·e^u is (u − 1)·e^u, from 1 to 3 2·e³, from 0.5 to 2 e² +
// e^0.5/2; and ∫ e^2u from 1 to 4 is (e⁸ − e²)/2.
func TestAGrowingExponentialFromAPlace(t *testing.T) {
	for _, c := range [][5]float64{
		{1, -1, 1, 3, 2 * math.Exp(3)}, {1, -1, 0.5, 2, math.Exp(2) + math.Exp(0.5)/2},
		{0, -2, 1, 4, (math.Exp(8) - math.Exp(2)) / 2},
	} {
		if got, err := PowerExp(1, c[0], c[1], c[2], c[3]); err != nil || !(math.Abs(got/c[4]-1) <= 1e-13) {
			t.Errorf("%v: %v, %v", c, got, err)
		}
	}
}

// Whether points lie far enough apart for a line does not rest on the unit of their weights, nor does the line.
func TestUnitsOfWeights(t *testing.T) {
	x, y := []float64{1, 2, 4}, []float64{1, 5, 3}
	same, near := []float64{7, 7, 7}, []float64{1, 1 + 1e-9, 1 - 1e-9}
	want, err := FitLine(x, y, nil)
	if err != nil {
		t.Fatal(err)
	}
	for _, unit := range []float64{1e-40, 1e-9, 1, 1e9, 1e40} {
		w := []float64{unit, unit, unit}
		got, err := FitLine(x, y, w)
		if err != nil || !(math.Abs(got.Slope-want.Slope) <= 1e-12) ||
			!(math.Abs(got.Variance/unit-want.Variance) <= 1e-12) {
			t.Errorf("weights of %v: %+v, %v, want %+v", unit, got, err, want)
		}
		if _, err := FitLine(same, y, w); !errors.Is(err, ErrSingular) {
			t.Errorf("weights of %v, all at one place: %v", unit, err)
		}
		if _, err := FitLine(near, y, w); err != nil {
			t.Errorf("weights of %v, a billionth apart: %v", unit, err)
		}
	}
}

// Over two steps between neighboring numbers a line from 1 to −1 has no integral, and what rounding may leave of it is
// more than that: no halving tells it more closely, as there is no number between neighbors.
func TestNothingLiesBetweenNeighbors(t *testing.T) {
	const step = 0x1p-52
	line := func(x float64) float64 { return (1 + step - x) / step }
	for _, ends := range [][2]float64{{1, 1 + 2*step}, {1 + 2*step, 1}} {
		got, err := Integrate(line, ends[0], ends[1], 0)
		if !errors.Is(err, ErrNoConvergence) || !(math.Abs(got.Value) <= got.Bound) || got.Calls != 45 {
			t.Errorf("from %v to %v: %+v, %v", ends[0], ends[1], got, err)
		}
	}
}
