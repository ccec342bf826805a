package gasbalance

import (
	"math"
	"sync"
)

// Parameters are the numbers of the law. [Standing] gives the ones that are believed; a changed copy makes a rival law.
type Parameters struct {
	// Gas is q₂₇, liters of CO₂ (25 °C, 1 atm) an hour from cells worth 1 % instant yeast, per kilogram of flour,
	// without salt, at 27 °C.
	Gas float64
	// Growth is μ₂₇, growth of uncrowded cells at 27 °C, 1/h.
	Growth float64
	// Capacity is X_m, the cells at which growth stops, in % of the flour as instant yeast.
	Capacity float64
	// Ripe is S_r, gas at ripeness for each kilogram of fresh flour, L.
	Ripe float64
	// Mixture is w₀, the share of a levain's growth that goes as S. cerevisiae; the rest goes as K. humilis.
	Mixture float64
	// Halfway and HalfwayTolerant are Π₅₀, the solutes at which ordinary and osmotolerant yeast work at half their
	// pace, osmol/kg water.
	Halfway, HalfwayTolerant float64
	// Stiffness is the exponent with which the pace goes with the dough's water.
	Stiffness float64
	// Whole is the log of the pace of a dough all of whole grain.
	Whole float64
	// Fullest is R_m, the rise at which a dough holds no more gas.
	Fullest float64
	// GasCurve, YeastCurve and HumilisCurve are how gas, the growth of S. cerevisiae and that of K. humilis go with
	// temperature.
	GasCurve, YeastCurve, HumilisCurve Curve
}

// Standing is the law this library stands on. Gas, Growth, Capacity and Ripe were fitted to 47 rows of the trade
// and five cell counts in dough, together with priors from what is published; the others were not.
func Standing() Parameters {
	return Parameters{
		// Fitted, ±0.06; prior 2.2 (0.35 in the log) = 8.8 mmol/(g solids·h), near the 10 to 20 known of baker's
		// yeast (from memory). One measured dough of 2.8 % pressed yeast at 28.5 °C made 4.8 L/kg in 2 h (read,
		// flour weight assumed); this law says 3.7.
		Gas: 2.05,
		// Fitted, ±0.07; prior 0.30 (0.30 in the log). Laboratory: 0.24 (anaerobic, Zakhartsev et al. 2015), 0.27,
		// 0.41; sourdough plate counts 0.43; the Gänzle equation 0.42 (from memory).
		Growth: 0.37,
		// Fitted on rows and on five counts of cells in dough (Thorn and Ross, Cereal Chem 37 (1960), abstract; a
		// textbook copy), ±0.19.
		Capacity: 1.70,
		// Fitted, ±0.10; prior 4.6 (0.25 in the log) from the free sugars of flour (Saunders, Ng and Kline, Cereal
		// Chem 1972, abstract).
		Ripe: 5.85,
		// Judgment: S. cerevisiae and K. humilis are the two common species of sourdough; unsure by 0.25.
		Mixture: 0.40,
		// Judgment between salt "10 to 30 % longer", sugar harmless to 5 % and slow above 10 % (common practice, no source).
		Halfway: 2.4, HalfwayTolerant: 3.4,
		// Judgment; only the direction is published: stiff is slower.
		Stiffness: 0.4,
		// ln 1.2: white doughs take about 20 % longer (one baker's figure).
		Whole: 0.182,
		// A sponge stands at four to five volumes when it drops, pup loaves go from 145 to 515 mL (read); the rows
		// hardly tell 3.5 from 5.
		Fullest:  3.5,
		GasCurve: YeastGas(), YeastCurve: YeastGrowth(), HumilisCurve: HumilisGrowth(),
	}
}

// Law is the gas balance made ready to be followed. It is immutable and safe for concurrent use.
type Law struct {
	Parameters
	cells []cell  // antiderivatives of the three curves
	ripe  float64 // X_L

	perCapacity float64 // 1/X_m
	plainPace   float64 // of the dough every other is compared with
}

// New makes a law of parameters; ok is false when a parameter is not a positive number (Stiffness, Mixture and
// Whole may be zero) or a curve is missing.
func New(p Parameters) (l *Law, ok bool) {
	for _, v := range [...]float64{p.Gas, p.Growth, p.Capacity, p.Ripe, p.Halfway, p.HalfwayTolerant, p.Fullest} {
		if !(v > 0) || math.IsInf(v, 1) {
			return nil, false
		}
	}
	if !(p.Stiffness >= 0 && p.Stiffness <= 5) || !(p.Mixture >= 0 && p.Mixture <= 1) || !(math.Abs(p.Whole) <= 5) {
		return nil, false
	}
	if p.GasCurve.rate == nil || p.YeastCurve.rate == nil || p.HumilisCurve.rate == nil {
		return nil, false
	}
	l = &Law{Parameters: p, cells: tabulate(p.GasCurve, p.YeastCurve, p.HumilisCurve), perCapacity: 1 / p.Capacity}
	l.ripe, l.plainPace = l.ripeLevain(ripeSeed, ripeCelsius), l.Pace(plain)
	return l, true
}

// standing is made once, when it is first asked for, and never changed: a program that asks nothing of dough does not
// wait for it.
var standing = sync.OnceValue(func() *Law {
	l, _ := New(Standing())
	return l
})

// Standard is the law of [Standing].
func Standard() *Law { return standing() }

// The feed to which the strength of a ripe levain is derived: 1 : 2 : 2 at 24 °C.
const (
	ripeSeed    = 0.2
	ripeCelsius = 24.0
)

// LevainGrowth is g_l, how fast a levain grows at a temperature relative to 27 °C: a mixture of two yeasts.
func (l *Law) LevainGrowth(celsius float64) float64 {
	return (1-l.Mixture)*l.HumilisCurve.Rate(celsius) + l.Mixture*l.YeastCurve.Rate(celsius)
}

// RipeLevain is X_L, the cells of a ripe levain in % of its flour as instant yeast: derived, not fitted.
//
//	X_L = X_m·(u − 1)/(u − s),   u = exp(S_r·(1 − s)·μ₂₇·g_l/(q₂₇·r_q·X_m))
//
// the state to which feeding at ripeness with a share s of seed converges, at s = 0.2 and 24 °C. It is 0.78 by the
// standing law.
func (l *Law) RipeLevain() float64 { return l.ripe }

func (l *Law) ripeLevain(s, celsius float64) float64 {
	gas := l.GasCurve.Rate(celsius)
	u := math.Exp(l.RipeGas(s) * l.Growth * l.LevainGrowth(celsius) / (l.Gas * gas * l.Capacity))
	return l.Capacity * (u - 1) / (u - s)
}

// RipeGas is the gas at which a preferment or a fed levain with a share s of seed in its flour is ripe, L/kg flour:
// S_r·(1 − s), the sugar at hand in its fresh flour used.
func (l *Law) RipeGas(seed float64) float64 { return l.Ripe * (1 - seed) }
