package gasbalance

import (
	"math"

	"example.org/maslin/internal/numeric"
)

// Curve is how a rate goes with temperature, relative to its value at 27 °C: a named value that plugs into
// [Parameters] as growth or as gas. Only its shape counts; the size of a rate is a parameter of its own.
type Curve struct {
	// Key names the curve in files and tables.
	Key string
	// Low and High are where the curve rests on data, °C.
	Low, High float64
	// rate is the shape at a temperature in °C, 1 at 27 °C.
	rate func(celsius float64) float64
	// integral is ∫ rate between two temperatures; nil means by quadrature.
	integral func(from, to float64) float64
}

// reference is the temperature at which every curve is 1, °C.
const reference = 27.0

// Rate is the curve at a temperature in °C: 1 at 27 °C.
func (c Curve) Rate(celsius float64) float64 { return c.rate(celsius) }

// Integral is ∫ rate dT between two temperatures in °C.
func (c Curve) Integral(from, to float64) float64 {
	if c.integral != nil {
		return c.integral(from, to)
	}
	// Steps of a quarter of a degree: a corner of a caller's curve spoils only the step it lies in.
	sum := 0.0
	n := math.Ceil(4 * math.Abs(to-from))
	for i := 0.0; i < n; i++ {
		v, _ := numeric.Integrate(c.rate, from+(to-from)*i/n, from+(to-from)*(i+1)/n, 1e-12)
		sum += v.Value
	}
	return sum
}

// Custom makes a curve of a function of the temperature in °C that is positive at 27 °C; ok is false when it is
// not. Negative values and what is not a number count as no rate at all.
func Custom(key string, low, high float64, rate func(celsius float64) float64) (c Curve, ok bool) {
	at27 := rate(reference)
	if !(at27 > 0) || math.IsInf(at27, 1) {
		return Curve{}, false
	}
	return Curve{Key: key, Low: low, High: high, rate: func(t float64) float64 {
		if v := rate(t) / at27; v > 0 && !math.IsInf(v, 1) {
			return v
		}
		return 0
	}}, true
}

// SquareRoot is the square-root curve over the whole range of temperature,
//
//	r(T) = [(T − T₀)·(1 − e^(j·(T − Tx)))]² / [the same at 27 °C]   for T₀ < T < Tx, else 0
//
// Source: Ratkowsky et al., J Bacteriol 154 (1983) 1222.
func SquareRoot(key string, lowest, bend, highest float64) Curve {
	root := func(t float64) float64 { return (t - lowest) * (1 - math.Exp(bend*(t-highest))) }
	scale := 1 / (root(reference) * root(reference))
	// With x = T − T₀ and E = e^(j·(T−Tx)) the square is x²·(1 − 2E + E²), and ∫ x²·e^(a·x) dx = e^(a·x)·(x²/a −
	// 2x/a² + 2/a³).
	primitive := func(t float64) float64 {
		t = math.Min(math.Max(t, lowest), highest)
		x, e := t-lowest, math.Exp(bend*(t-highest))
		k := func(e, a float64) float64 { return e * (x*x/a - 2*x/(a*a) + 2/(a*a*a)) }
		return scale * (x*x*x/3 - 2*k(e, bend) + k(e*e, 2*bend))
	}
	return Curve{
		Key: key, Low: lowest, High: highest,
		rate: func(t float64) float64 {
			if t <= lowest || t >= highest {
				return 0
			}
			r := root(t)
			return scale * r * r
		},
		integral: func(from, to float64) float64 { return primitive(to) - primitive(from) },
	}
}

// PowerExp is the curve x^b·e^(−c·x), x = Tmax − T, relative to 27 °C, and 0 from Tmax on: the form Gänzle, Ehmann
// and Hammes (1998) gave for growth in sourdough.
func PowerExp(key string, power, decay, highest float64) Curve {
	raw := func(t float64) float64 {
		x := highest - t
		if x <= 0 {
			return 0
		}
		return math.Exp(power*math.Log(x) - decay*x)
	}
	scale := 1 / raw(reference)
	return Curve{
		Key: key, Low: 0, High: highest,
		rate: func(t float64) float64 { return scale * raw(t) },
		integral: func(from, to float64) float64 {
			v, err := numeric.PowerExp(scale, power, decay, math.Max(0, highest-to), math.Max(0, highest-from))
			if err != nil {
				return math.NaN()
			}
			return v
		},
	}
}

// The curves of the standing law.

// YeastGas is the gas of yeast cells: it ends lower in the cold than growth does, at −1.2 °C (judgment, unsure by 1
// °C), and has its optimum near 38 °C, published optima of gas being 32 to 40 °C (AB Mauri; trade press). The bend
// and the upper end are judgments the rows of the trade do not tell from 47 to 51 °C.
func YeastGas() Curve { return SquareRoot("yeast-gas", coldestGas, 0.20, 49.0) }

// YeastGrowth is the growth of Saccharomyces cerevisiae: T₀ 0.4, j 0.236 and Tx 42.2 were fitted to the logs of 36
// growth rates of four data sets (testdata/growth.csv); standard deviations 0.45 °C, 0.05 and 0.4 °C.
func YeastGrowth() Curve { return SquareRoot("yeast-growth", 0.4, 0.236, 42.2) }

// HumilisGrowth is the growth of Kazachstania humilis, the other common yeast of sourdough, by the equation of
// Gänzle, Ehmann and Hammes, Appl Environ Microbiol 64 (1998) 2616; constants from memory, in agreement with every
// optimum and limit published.
func HumilisGrowth() Curve { return PowerExp("humilis-growth", 2.981, 0.3355, 36) }

// coldestGas is where gas ends in the cold, °C, a judgment: gas goes on where growth stops. A trade magazine has
// practically no fermentation at 2 to 3 °C (read).
const coldestGas = -1.2
