package numeric

import "math"

// The 15-point Kronrod rule and the 7-point Gauss rule inside it.
// Source: R. Piessens et al., QUADPACK (1983), routine QK15.
var (
	kronrodNodes = [8]float64{
		0.991455371120812639206854697526329, 0.949107912342758524526189684047851,
		0.864864423359769072789712788640926, 0.741531185599394439863864773280788,
		0.586087235467691130294144691693, 0.405845151377397166906606412076961,
		0.207784955007898467600689403773245, 0,
	}
	kronrodWeights = [8]float64{
		0.022935322010529224963732008058970, 0.063092092629978553290700663189204,
		0.104790010322250183839876322541518, 0.140653259715525918745189590510238,
		0.169004726639267902826583426598550, 0.190350578064785409913256402421014,
		0.204432940075298892414161999234649, 0.209482141084727828012999174891714,
	}
	gaussWeights = [4]float64{
		0.129484966168869693270611432679082, 0.279705391489276667901467771423780,
		0.381830050505118944950369775488975, 0.417959183673469387755102040816327,
	}
)

// Integral is a quadrature and how far it may be off.
type Integral struct {
	Value float64
	Bound float64 // estimated absolute error, pessimistic for smooth integrands
	Calls int     // how often the integrand was evaluated
}

// Integrate finds ∫ f from a to b to the absolute accuracy tol or the relative accuracy 1e-14,
// whichever is looser, by adaptive bisection with the Gauss-Kronrod 7-15 pair: the interval
// whose two rules disagree most is halved until the sum of the disagreements is small enough.
// b may lie below a.
//
// Errors: ErrDomain when a bound or a value of f is not finite; ErrNoConvergence, together
// with the best value and its bound, when 2,000 intervals do not suffice.
//
// Source: R. Piessens et al., QUADPACK (1983), routine QAG; the pair QK15.
func Integrate(f func(float64) float64, a, b, tol float64) (Integral, error) {
	if !finite(a, b, tol) || tol < 0 {
		return Integral{}, ErrDomain
	}
	first, ok := kronrod(f, a, b)
	if !ok {
		return Integral{}, ErrDomain
	}
	parts := []part{first}
	out := Integral{Value: first.value, Bound: first.bound, Calls: 15}
	for out.Bound > math.Max(tol, 1e-14*math.Abs(out.Value)) {
		if len(parts) >= 2000 {
			return out, ErrNoConvergence
		}
		worst := 0
		for i, p := range parts {
			if p.bound > parts[worst].bound {
				worst = i
			}
		}
		p := parts[worst]
		mid := p.a + (p.b-p.a)/2
		if mid == p.a || mid == p.b {
			return out, ErrNoConvergence
		}
		left, ok1 := kronrod(f, p.a, mid)
		right, ok2 := kronrod(f, mid, p.b)
		if !ok1 || !ok2 {
			return Integral{}, ErrDomain
		}
		parts[worst] = left
		parts = append(parts, right)
		out.Calls += 30
		out.Value, out.Bound = 0, 0
		for _, p := range parts {
			out.Value += p.value
			out.Bound += p.bound
		}
	}
	return out, nil
}

type part struct{ a, b, value, bound float64 }

func kronrod(f func(float64) float64, a, b float64) (part, bool) {
	center, half := a+(b-a)/2, (b-a)/2
	fc := f(center)
	k := kronrodWeights[7] * fc
	g := gaussWeights[3] * fc
	size := kronrodWeights[7] * math.Abs(fc)
	for i := range 7 {
		dx := half * kronrodNodes[i]
		lo, hi := f(center-dx), f(center+dx)
		k += kronrodWeights[i] * (lo + hi)
		size += kronrodWeights[i] * (math.Abs(lo) + math.Abs(hi))
		if i%2 == 1 {
			g += gaussWeights[i/2] * (lo + hi)
		}
	}
	// The Gauss rule's error is that of the Kronrod rule to about the power 2/3; 1.5 is QUADPACK's
	// exponent. Rounding puts a floor under it.
	diff := math.Abs(half * (k - g))
	size *= math.Abs(half)
	bound := diff
	if diff > 0 {
		bound = size * math.Min(1, math.Pow(200*diff/size, 1.5))
	}
	bound = math.Max(bound, 4*0x1p-53*size)
	value := half * k
	return part{a, b, value, bound}, finite(value, bound)
}
