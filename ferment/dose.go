package ferment

import (
	"math"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/numeric"
)

// Dose answers: how much growth does a temperature history give between two times?
//
//	M = ∫ μ(T(t)) dt
//
// M is a pure number: the culture grows by the factor e^M, M/ln 2 doublings; μ is the curve's rate in 1/h; T the
// history. Valid for every curve at temperatures between −25 and 60 °C; whether the curve may be trusted there is for
// [Bulk] to say. Accuracy: along a straight run of temperature the integral is the antiderivative of the curve, exact
// to rounding (relative error below 1e-10) for the Gänzle form (an incomplete gamma function), the short square root
// and Q10; the others by quadrature, to 1e-10. Errors: ErrRequired without curve or history, ErrOutOfRange for the
// times, or for a curve that gives NaN, infinities or negative rates. Source: the definition of a rate; the
// antiderivative of x^b·e^(−c·x) is NIST Digital Library of Mathematical Functions 8.2.1.
func (c Curve) Dose(h History, from, to time.Duration) (float64, error) {
	if err := h.interval(from, to); err != nil {
		return 0, err
	}
	if c.of == nil {
		var p problems
		p.Required("Curve", quantity.Tell("ferment.want_rate_curve", "a rate curve"))
		return 0, p.ErrFor(c)
	}
	a, b := hours(from), hours(to)
	var sum float64
	if own := c.of; own.table != nil {
		sum = own.table.dose(h, a, b)
	} else {
		h.segments(a, b, func(p, q knot) { sum += (q.Hour - p.Hour) * average(c.of, p.Celsius, q.Celsius) })
	}
	return sum, sane(sum)
}

// sane refuses what only a broken curve can give.
func sane(dose float64) error {
	if dose >= 0 && !math.IsInf(dose, 1) {
		return nil
	}
	var p problems
	p.Add("Curve", quantity.Tell("ferment.got_dose", "a dose of %v", dose),
		quantity.Tell("ferment.want_curve_finite_rates_are_not",
			"a curve with finite rates that are not negative"), errOutOfRange)
	return p.ErrFor(nil)
}

// dose walks the knots with one evaluation of the antiderivative for each.
func (t *table) dose(h History, from, to float64) float64 {
	i := h.after(from)
	p := knot{Hour: from, Celsius: h.celsius(from)}
	fp := t.at(p.Celsius)
	sum := 0.0
	for ; i < len(h.knots); i++ {
		q := h.knots[i]
		if q.Hour >= to {
			break
		}
		fq := t.at(q.Celsius)
		sum += (q.Hour - p.Hour) * t.averaged(p.Celsius, q.Celsius, fp, fq)
		p, fp = q, fq
	}
	q := knot{Hour: to, Celsius: p.Celsius}
	if i < len(h.knots) {
		q.Celsius = between(p, h.knots[i], to)
	}
	return sum + (q.Hour-p.Hour)*t.averaged(p.Celsius, q.Celsius, fp, t.at(q.Celsius))
}

// closeTogether is how near two temperatures must be, °C, for the rate in the middle to beat the difference of two
// antiderivatives, which loses digits there: its relative error is below (3e-4)²/24·μ″/μ, about 2e-10.
const closeTogether = 3e-4

func (t *table) averaged(c0, c1, f0, f1 float64) float64 {
	if d := c1 - c0; math.Abs(d) >= closeTogether {
		return (f1 - f0) / d
	}
	return t.rate((c0 + c1) / 2)
}

// average is the mean rate along a straight run from one temperature to another, of a curve without a table.
func average(c *curve, c0, c1 float64) float64 {
	d := c1 - c0
	switch {
	case math.Abs(d) < closeTogether:
		return c.rate((c0 + c1) / 2)
	case c.primitive != nil:
		return (c.primitive(c1) - c.primitive(c0)) / d
	case c.adaptive:
		return adaptive(c.rate, c0, c1)
	}
	lo, hi := math.Min(c0, c1), math.Max(c0, c1)
	sum, from := 0.0, lo
	for _, b := range c.breaks {
		if b > from && b < hi {
			sum += gauss(c.rate, from, b)
			from = b
		}
	}
	return (sum + gauss(c.rate, from, hi)) / (hi - lo)
}

// adaptive is the mean of a rate whose form is not known: with an error bound, in steps small enough not to miss where
// growth begins.
func adaptive(rate func(float64) float64, c0, c1 float64) float64 {
	sum, d := 0.0, c1-c0
	n := math.Ceil(math.Abs(d) / 2)
	for i := 0.0; i < n; i++ {
		v, err := numeric.Integrate(rate, c0+d*i/n, c0+d*(i+1)/n, 1e-11*math.Abs(d))
		if err != nil && !(v.Bound <= 1e-6*math.Abs(v.Value)) {
			return math.NaN()
		}
		sum += v.Value
	}
	return sum / d
}

// gauss is ∫ f over a smooth stretch by the ten-point Gauss-Legendre rule on steps of at most 4 °C; for the
// rational and exponential rates of this package that is exact to better than 1e-10.
// Source: Abramowitz and Stegun (1964), table 25.4.
func gauss(f func(float64) float64, from, to float64) float64 {
	n := math.Ceil((to - from) / 4)
	half := (to - from) / n / 2
	sum := 0.0
	for i := 0.0; i < n; i++ {
		m := from + (2*i+1)*half
		for k, x := range gaussNodes {
			sum += gaussWeights[k] * (f(m-half*x) + f(m+half*x))
		}
	}
	return sum * half
}

var (
	gaussNodes = [5]float64{0.14887433898163122, 0.43339539412924719, 0.67940956829902441, 0.86506336668898451,
		0.97390652851717172}
	gaussWeights = [5]float64{0.29552422471475287, 0.26926671930999636, 0.21908636251598204, 0.14945134915058059,
		0.06667134430868814}
)
