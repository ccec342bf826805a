package numeric

import "math"

// Root finds x in [a, b] with f(x) = 0 by Brent's method: inverse quadratic interpolation
// and secant steps, with bisection whenever they do not shrink the bracket fast enough, so that
// it never needs more than a bounded number of calls. The answer lies within tol (or a few units in
// the last place) of a change of sign. f must be continuous and have opposite signs at a and b.
//
// Errors: ErrDomain when a, b, tol or a value of f is not finite; ErrNoRoot when the signs are equal;
// ErrNoConvergence, with the best value, after 300 steps, which only an interval of a hundred powers of ten needs.
//
// Source: R. P. Brent, Algorithms for Minimization without Derivatives (1973), chapter 4.
func Root(f func(float64) float64, a, b, tol float64) (float64, error) {
	if !finite(a, b, tol) || tol < 0 {
		return 0, ErrDomain
	}
	fa, fb := f(a), f(b)
	switch {
	case !finite(fa, fb):
		return 0, ErrDomain
	case fa == 0:
		return a, nil
	case fb == 0:
		return b, nil
	case (fa > 0) == (fb > 0):
		return 0, ErrNoRoot
	}
	c, fc := a, fa
	d := b - a
	e := d
	for range 300 {
		if (fb > 0) == (fc > 0) {
			c, fc = a, fa
			d = b - a
			e = d
		}
		if math.Abs(fc) < math.Abs(fb) {
			a, b, c = b, c, b
			fa, fb, fc = fb, fc, fb
		}
		limit := 2*0x1p-53*math.Abs(b) + tol/2
		m := (c - b) / 2
		if math.Abs(m) <= limit || fb == 0 {
			return b, nil
		}
		if math.Abs(e) < limit || math.Abs(fa) <= math.Abs(fb) {
			d, e = m, m
		} else {
			var p, q float64
			s := fb / fa
			if a == c {
				p = 2 * m * s
				q = 1 - s
			} else {
				q = fa / fc
				r := fb / fc
				p = s * (2*m*q*(q-r) - (b-a)*(r-1))
				q = (q - 1) * (r - 1) * (s - 1)
			}
			if p > 0 {
				q = -q
			} else {
				p = -p
			}
			if 2*p < math.Min(3*m*q-math.Abs(limit*q), math.Abs(e*q)) {
				e, d = d, p/q
			} else {
				d, e = m, m
			}
		}
		a, fa = b, fb
		if math.Abs(d) > limit {
			b += d
		} else {
			b += math.Copysign(limit, m)
		}
		if fb = f(b); !finite(fb) {
			return 0, ErrDomain
		}
	}
	return b, ErrNoConvergence
}
