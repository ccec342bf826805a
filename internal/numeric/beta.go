package numeric

import (
	"errors"
	"math"
)

// BetaQuantile is the x below which a beta distribution with the shapes a and b has the share p, to 1e-12 by
// bisection of the regularized incomplete beta function. Errors: shapes that are not above 0 and at most 1e6, p outside
// 0 to 1.
func BetaQuantile(p, a, b float64) (float64, error) {
	if !(p >= 0 && p <= 1) || !(a > 0 && a <= 1e6) || !(b > 0 && b <= 1e6) {
		return 0, errors.New("numeric: no such beta distribution")
	}
	if p == 0 || p == 1 {
		return p, nil
	}
	low, high := 0.0, 1.0
	for high-low > 1e-13*math.Max(high, 1e-3) {
		x := low + (high-low)/2
		q, err := betaI(a, b, x, 1-x)
		if err != nil {
			return 0, err
		}
		if q < p {
			low = x
		} else {
			high = x
		}
	}
	return low + (high-low)/2, nil
}
