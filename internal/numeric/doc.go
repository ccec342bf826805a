// Package numeric has the small numerical methods the models need: a bracketing root finder,
// quadrature with an error bound, the integral of
// x^b·e^(−c·x), quantiles of the normal and Student's t distribution, and weighted linear
// least squares. Every function returns an error for input it cannot answer; none panics and
// none loops for ever, whatever the input, NaN and infinities included.
//
// # From question to function
//
//	where does f cross zero in [a, b]?             Root
//	what is ∫ f, and how sure is that?             Integrate
//	∫ x^b·e^(−c·x) dx between two points           PowerExp
//	the same as an antiderivative, for tables      PowerExpFrom0
//	eˣ, ln x and theirs near 0 and 1, quickly      Exp, Expm1, Log, Log1p
//	zeros of the Bessel functions J0 and J1        BesselZero0, BesselZero1
//	Φ(z) and its inverse                           NormalCDF, NormalQuantile
//	Student's t                                    StudentCDF, StudentQuantile
//	a line through weighted points                 FitLine
//	several coefficients at once                   LeastSquares
package numeric

import "math"

import "errors"

// The reasons a calculation gives no answer.
var (
	// ErrDomain: an argument is NaN, infinite or outside the function's domain.
	ErrDomain = errors.New("argument outside the domain")
	// ErrNoRoot: the function has the same sign at both ends.
	ErrNoRoot = errors.New("no change of sign in the interval")
	// ErrNoConvergence: the stated accuracy was not reached within the steps allowed.
	ErrNoConvergence = errors.New("no convergence")
	// ErrSingular: the points do not determine the coefficients.
	ErrSingular = errors.New("the points do not determine the coefficients")
)

func finite(xs ...float64) bool {
	for _, x := range xs {
		// Not x − x: a processor that rounds a product and a difference at once finds the rounding of x there.
		if !(math.Abs(x) <= math.MaxFloat64) {
			return false
		}
	}
	return true
}
