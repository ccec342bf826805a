package numeric

import "math"

// NormalCDF is Φ(z), the probability that a standard normal value lies below z. NaN gives NaN.
//
// Source: NIST Digital Library of Mathematical Functions, 7.2.2.
func NormalCDF(z float64) float64 { return math.Erfc(-z/math.Sqrt2) / 2 }

// NormalQuantile is the z with Φ(z) = p, 0 < p < 1; relative error below 1e-14 down to p = 1e-300.
//
// Errors: ErrDomain.
//
// Source: the standard library's Erfinv (Wichura 1988), then one Halley step on Φ, which restores the
// tails.
func NormalQuantile(p float64) (float64, error) {
	if !(p > 0 && p < 1) {
		return 0, ErrDomain
	}
	if p > 0.5 {
		// 1 − p is exact here, and the lower tail is where Φ keeps its digits.
		z, err := NormalQuantile(1 - p)
		return -z, err
	}
	var z float64
	if p > 1e-8 {
		z = -math.Sqrt2 * math.Erfinv(1-2*p)
	} else {
		// Abramowitz and Stegun 26.2.23 as a start; the steps below do the rest.
		t := math.Sqrt(-2 * math.Log(p))
		z = (2.515517+t*(0.802853+t*0.010328))/(1+t*(1.432788+t*(0.189269+t*0.001308))) - t
	}
	for range 3 {
		density := math.Exp(-z*z/2) / math.Sqrt(2*math.Pi)
		if density == 0 {
			break
		}
		e := (NormalCDF(z) - p) / density
		z -= e / (1 + z*e/2)
	}
	return z, nil
}

// StudentCDF is the probability that Student's t with ν degrees of freedom lies below t; ν need not be
// whole.
//
// Errors: ErrDomain unless ν > 0 and t is a number.
//
// Source: NIST Digital Library of Mathematical Functions, 8.17.1; Abramowitz and Stegun (1964), 26.7.1.
func StudentCDF(t, nu float64) (float64, error) {
	if math.IsNaN(t) || !(nu > 0) {
		return 0, ErrDomain
	}
	if nu > 1e8 {
		return NormalCDF(t), nil
	}
	if math.IsInf(t, 0) {
		if t > 0 {
			return 1, nil
		}
		return 0, nil
	}
	tail, err := betaI(nu/2, 0.5, nu/(nu+t*t), t*t/(nu+t*t))
	if err != nil {
		return 0, err
	}
	if t > 0 {
		return 1 - tail/2, nil
	}
	return tail / 2, nil
}

// StudentQuantile is the t below which Student's t with ν degrees of freedom lies with
// probability p.
//
// Errors: ErrDomain unless 0 < p < 1 and ν ≥ 0.1; ErrNoConvergence never within 1e-300 < p.
//
// Source: inversion of [StudentCDF] by bracketing.
func StudentQuantile(p, nu float64) (float64, error) {
	if !(p > 0 && p < 1) || !(nu >= 0.1) {
		return 0, ErrDomain
	}
	switch {
	case nu > 1e8:
		return NormalQuantile(p)
	case p == 0.5:
		return 0, nil
	case p > 0.5:
		t, err := StudentQuantile(1-p, nu)
		return -t, err
	case nu == 1:
		return -1 / math.Tan(math.Pi*p), nil
	case nu == 2:
		return (2*p - 1) / math.Sqrt(2*p*(1-p)), nil
	}
	// In s = ln(−t) the tail is close to a straight line.
	f := func(s float64) float64 {
		q, err := StudentCDF(-math.Exp(s), nu)
		if err != nil || q <= 0 {
			return -700 - math.Log(p)
		}
		return math.Log(q) - math.Log(p)
	}
	s, err := Root(f, -50, 50, 1e-15)
	if err != nil {
		s, err = Root(f, -700, 350, 1e-15)
	}
	return -math.Exp(s), err
}

// betaI is the regularized incomplete beta function I_x(a, b), with y = 1 − x given apart so that neither
// loses digits: DLMF 8.17.22 in Lentz's form.
func betaI(a, b, x, y float64) (float64, error) {
	if x <= 0 {
		return 0, nil
	}
	if y <= 0 {
		return 1, nil
	}
	if x > (a+1)/(a+b+2) {
		v, err := betaI(b, a, y, x)
		return 1 - v, err
	}
	la, _ := math.Lgamma(a)
	lb, _ := math.Lgamma(b)
	lab, _ := math.Lgamma(a + b)
	front := math.Exp(lab-la-lb+a*logOneMinus(x, y)+b*logOneMinus(y, x)) / a
	const tiny = 1e-300
	c, d := 1.0, 1-(a+b)*x/(a+1)
	if math.Abs(d) < tiny {
		d = tiny
	}
	d = 1 / d
	h := d
	for m := 1.0; m < 10_000; m++ {
		for _, an := range [2]float64{
			m * (b - m) * x / ((a + 2*m - 1) * (a + 2*m)),
			-(a + m) * (a + b + m) * x / ((a + 2*m) * (a + 2*m + 1)),
		} {
			if d = 1 + an*d; math.Abs(d) < tiny {
				d = tiny
			}
			if c = 1 + an/c; math.Abs(c) < tiny {
				c = tiny
			}
			d = 1 / d
			h *= d * c
		}
		// A few units in the last place: where a processor rounds a product and a sum at once, d·c settles beside 1.
		if math.Abs(d*c-1) < 4*0x1p-53 {
			return front * h, nil
		}
	}
	return front * h, ErrNoConvergence
}

// logOneMinus is ln x where y = 1 − x is the better known of the two when it is small.
func logOneMinus(x, y float64) float64 {
	if y < 0.5 {
		return math.Log1p(-y)
	}
	return math.Log(x)
}
