package numeric

import "math"

// BesselZero0 is the n-th positive zero of J0, n ≥ 1: 2.4048, 5.5201, …, accurate to a few units
// in the last place.
//
// Errors: ErrDomain for n < 1 or n > 1,000,000.
//
// Source: NIST Digital Library of Mathematical Functions, 10.21.19 (McMahon) to its second term, then Newton's
// method with J0′ = −J1.
func BesselZero0(n int) (float64, error) {
	if n < 1 || n > 1_000_000 {
		return 0, ErrDomain
	}
	b := (float64(n) - 0.25) * math.Pi
	z := b + 1/(8*b)
	for range 4 {
		z += math.J0(z) / math.J1(z)
	}
	return z, nil
}

// BesselZero1 is the n-th positive zero of J1, n ≥ 1: 3.8317, 7.0156, …; n = 0 gives the zero at
// the origin.
//
// Errors: ErrDomain for n < 0 or n > 1,000,000.
//
// Source: NIST Digital Library of Mathematical Functions, 10.21.19 (McMahon) to its second term, then Newton's
// method with J1′ = J0 − J1/z.
func BesselZero1(n int) (float64, error) {
	if n == 0 {
		return 0, nil
	}
	if n < 0 || n > 1_000_000 {
		return 0, ErrDomain
	}
	b := (float64(n) + 0.25) * math.Pi
	z := b - 3/(8*b)
	for range 4 {
		j1 := math.J1(z)
		z -= j1 / (math.J0(z) - j1/z)
	}
	return z, nil
}
