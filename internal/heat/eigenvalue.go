package heat

import (
	"fmt"
	"math"

	"example.org/maslin/internal/numeric"
)

// eigenvalue finds the n-th root, counted from zero; before is the root before it. Each lies where a phase passes
// through a whole number of half turns:
//
//	slab      z = nπ + arctan(Bi/z)
//	sphere    z = nπ + arccot((1 − Bi)/z)
//	cylinder  z·J1(z) = Bi·J0(z)
//
// From n = 1 on Newton's method, begun half a turn after the root before, takes two to four steps; the first root, and
// one for which the steps lead astray, is found inside its bracket.
func eigenvalue(shape Shape, biot float64, n int, before float64) (float64, error) {
	if shape < Slab || shape > Sphere {
		return 0, fmt.Errorf("unknown shape %d", shape)
	}
	if math.IsInf(biot, 1) {
		return fixedSurface(shape, n)
	}
	if n > 0 {
		if z, ok := newton(shape, biot, n, before+math.Pi); ok {
			return z, nil
		}
	}
	return bracketed(shape, biot, n)
}

// enough is the step after which another would change nothing, as a share of the root: the steps shrink quadratically.
const enough = 1e-9

// newton follows the phase to its n-th passage from a start near it. It gives up on a root that leaves the half turn.
func newton(shape Shape, biot float64, n int, z float64) (float64, bool) {
	k := float64(n) * math.Pi
	for range 8 {
		var step float64
		switch shape {
		case Slab:
			step = (z - k - math.Atan2(biot, z)) / (1 + biot/(z*z+biot*biot))
		case Sphere:
			c := biot - 1
			step = (z - k - math.Atan2(z, -c)) / (1 + c/(z*z+c*c))
		case Cylinder:
			// Near the root the phase runs as fast as z does.
			j0, j1 := math.J0(z), math.J1(z)
			step = math.Atan((z*j1 - biot*j0) / (z*j0 + biot*j1))
		}
		z -= step
		if !(z > k && z < k+math.Pi) { // also NaN
			break
		}
		if math.Abs(step) < enough*z {
			return z, true
		}
	}
	return 0, false
}

// bracketed finds the n-th root between the two ends of its half turn.
func bracketed(shape Shape, biot float64, n int) (float64, error) {
	k := float64(n) * math.Pi
	var f func(float64) float64
	var low, high float64
	switch shape {
	case Slab:
		low, high = k, k+math.Pi/2
		f = func(z float64) float64 { return z*math.Sin(z) - biot*math.Cos(z) }
	case Cylinder:
		var err error
		if low, err = numeric.BesselZero1(n); err != nil {
			return 0, err
		}
		if high, err = numeric.BesselZero0(n + 1); err != nil {
			return 0, err
		}
		f = func(z float64) float64 { return z*math.J1(z) - biot*math.J0(z) }
	case Sphere:
		low, high = k, k+math.Pi
		f = func(z float64) float64 { return z*math.Cos(z) + (biot-1)*math.Sin(z) }
		if n == 0 {
			// z = 0 solves f without being an eigenvalue; divided by z it is gone.
			f = func(z float64) float64 {
				if z < 0.05 {
					// Its power series, which keeps digits where Bi and z² are both small.
					x, c := z*z, biot-1
					return biot - x*(0.5+c/6-x*(1.0/24+c/120-x*(1.0/720+c/5040-x*(1.0/40320+c/362880))))
				}
				return (z*math.Cos(z) + (biot-1)*math.Sin(z)) / z
			}
		}
	}
	z, err := numeric.Root(f, low, high, 1e-15)
	if err != nil {
		return 0, fmt.Errorf("eigenvalue %d of the %v at Bi %g: %w", n, shape, biot, err)
	}
	return z, nil
}

// fixedSurface is the n-th root for an infinite Biot number: the surface is as warm as the surroundings.
func fixedSurface(shape Shape, n int) (float64, error) {
	switch shape {
	case Slab:
		return (float64(n) + 0.5) * math.Pi, nil
	case Sphere:
		return float64(n+1) * math.Pi, nil
	}
	return numeric.BesselZero0(n + 1)
}
