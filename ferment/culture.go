package ferment

import (
	"fmt"
	"math"

	"example.org/maslin/dough/quantity"
)

// KneadedBy tells doughs apart that leave the bench in different shape: a culture may be given a pace of its own for each.
type KneadedBy int

// The ways of kneading.
const (
	KneadingUnstated KneadedBy = iota
	ByHand
	ByMachine
)

// String names the way.
func (k KneadedBy) String() string {
	switch k {
	case KneadingUnstated:
		return "unstated"
	case ByHand:
		return "by hand"
	case ByMachine:
		return "by machine"
	}
	return "unknown kneading"
}

// Culture is what is known about one kitchen's culture: how much gas it makes, its pace, how strongly temperature moves
// it, and how much one bake differs from the next. The zero value is a culture nothing is known about; [Learning.Learn]
// makes one from logged bakes. It is immutable.
type Culture struct{ b *belief }

// The unknowns of a culture. All are logarithms or per °C, and all are 0 for the typical culture.
const (
	unknownAmplitude   = iota // a: ln K, dough that rises less for the same gas, or a weaker culture
	unknownPace               // b: ln of the rate
	unknownTemperature        // d: how much more than the curve a degree changes ln of the rate
	unknownKneading           // u₀, u₁, u₂: pace of doughs kneaded unstated, by hand, by machine
	unknowns           = unknownKneading + 3
)

type vector [unknowns]float64

type matrix [unknowns][unknowns]float64

// belief is a normal distribution over the unknowns, and a scaled inverse χ² one over the variance between bakes.
type belief struct {
	kind  leavening
	mean  vector
	cov   matrix
	sigma float64 // between bakes, log of time
	nu    float64 // degrees of freedom behind sigma
	bakes int
	// coldest is the lowest temperature a bake was learned from, °C; only with bakes.
	coldest float64
}

// What is assumed of an unknown culture, as standard deviations. All are judgments:
//
// sdAmplitude: two trade facts give K near 0.6 and 1.2; ln(1.2/0.6)/2 = 0.35.
//
// sdPace, sdKneading and sdBake together are 0.30 in the log of the rate: strains differing by a factor of two in gas are
// ordinary (Houn and Hsu, Food Bioscience 3 (2013) 75), and two standard deviations to each side of the middle span a factor of 3.
// Of that, 0.12 is given to what changes from bake to bake in one kitchen (state of the levain, flour, a
// thermometer one degree off), so that one bake logged leaves a spread of about 0.16.
//
// sdTemperature: between 15 and 25 °C the growth curve has a Q10 of 4.2 and the trade 2.1 to 2.6, a difference in the log of 0.05 to
// 0.07 per °C; 0.03 makes the trade's value two standard deviations away.
//
// freedom: as if the spread between bakes had been seen on twelve bakes.
const (
	sdAmplitude   = 0.35
	sdPace        = 0.25
	sdTemperature = 0.03
	sdKneading    = 0.10
	sdBake        = 0.12
	freedom       = 12

	// Commercial yeast is made to a standard: less spread in pace; its amplitude rests on trade figures that
	// disagree by a factor of 1.6.
	sdAmplitudeYeast = 0.25
	sdPaceYeast      = 0.15

	// reference is the temperature at which pace and temperature sensitivity are told apart, °C.
	reference = 24.0
)

// priors are made once and never changed.
var priors = [...]*belief{byLevain: newPrior(byLevain), byYeast: newPrior(byYeast), byBoth: newPrior(byBoth)}

func prior(kind leavening) *belief { return priors[kind] }

func newPrior(kind leavening) *belief {
	b := &belief{kind: kind, sigma: sdBake, nu: freedom}
	sd := vector{sdAmplitude, sdPace, sdTemperature, sdKneading, sdKneading, sdKneading}
	switch kind {
	case byYeast:
		sd[unknownAmplitude], sd[unknownPace] = sdAmplitudeYeast, sdPaceYeast
	case byBoth:
		sd[unknownPace] = math.Hypot(sdPace, sdTogether)
	}
	for i, s := range sd {
		b.cov[i][i] = s * s
	}
	return b
}

func (c Culture) belief(kind leavening) *belief {
	if c.b == nil {
		return prior(kind)
	}
	return c.b
}

// Bakes is how many logged bakes the culture rests on.
func (c Culture) Bakes() int {
	if c.b == nil {
		return 0
	}
	return c.b.bakes
}

// Estimated is a quantity learned about a culture: the most likely value and the range that holds it with 80 %.
type Estimated struct{ Low, Likely, High float64 }

// z80 is the standard normal quantile at 90 %.
const z80 = 1.2815515655446004

// Pace is how fast the culture is relative to the typical one, at 24 °C: 1.2 means a fifth faster.
func (c Culture) Pace() Estimated {
	b := c.belief(byLevain)
	m, s := b.mean[unknownPace], math.Sqrt(b.cov[unknownPace][unknownPace])
	return Estimated{math.Exp(m - z80*s), math.Exp(m), math.Exp(m + z80*s)}
}

// TemperatureSensitivity is how much more than its curve the culture speeds up with one degree Celsius: 0.02 means
// 2 % a degree more.
func (c Culture) TemperatureSensitivity() Estimated {
	b := c.belief(byLevain)
	m, s := b.mean[unknownTemperature], math.Sqrt(b.cov[unknownTemperature][unknownTemperature])
	return Estimated{m - z80*s, m, m + z80*s}
}

// BakeToBake is the standard deviation of the log of the time from one bake to the next: 0.12 means that two of three bakes
// lie within 12 %.
func (c Culture) BakeToBake() float64 { return c.belief(byLevain).sigma }

// String says what is known: "learned from 5 bakes: pace 1.10 (1.00 to 1.21)".
func (c Culture) String() string {
	if c.b == nil {
		return "a culture nothing is known about"
	}
	p := c.Pace()
	return fmt.Sprintf("learned from %s: pace %.2f (%.2f to %.2f), %+.1f %% a degree beyond the curve, %.0f %% from bake to bake",
		plural(c.b.bakes, "bake"), p.Likely, p.Low, p.High, 100*c.TemperatureSensitivity().Likely, 100*c.b.sigma)
}

func plural(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}

// outlook is a culture's belief narrowed to one dough: normal over a, b (with the dough's own luck in it), d, and c, how
// far the curve is off in units of its doubt.
type outlook struct {
	a, b, d, c             float64
	aa, ab, ad, bb, bd, dd float64
	ac, bc, cd, cc         float64
	luck                   float64 // part of bb that is the bake's own
	nu                     float64
	coldest                float64 // below it the temperature sensitivity learned is stretched
}

func (b *belief) outlook(k KneadedBy) outlook {
	u := unknownKneading + int(k)
	const a, p, d = unknownAmplitude, unknownPace, unknownTemperature
	v := b.sigma * b.sigma
	return outlook{
		a: b.mean[a], b: b.mean[p] + b.mean[u], d: b.mean[d],
		aa: b.cov[a][a], ab: b.cov[a][p] + b.cov[a][u], ad: b.cov[a][d],
		bb: b.cov[p][p] + b.cov[u][u] + 2*b.cov[p][u] + v, bd: b.cov[p][d] + b.cov[u][d], dd: b.cov[d][d],
		cc: 1, luck: v, nu: b.nu, coldest: b.known(),
	}
}

// probabilityClaimed is what every range of this package claims.
var probabilityClaimed = quantity.NewPercent(80)

// spread is how many standard deviations the 80 % range reaches to each side, when a share of the variance is itself
// known from nu degrees of freedom: Student's t at the degrees of freedom of Welch and Satterthwaite, by the expansion of
// Abramowitz and Stegun (1964), 26.7.5.
func (o outlook) spread(variance float64) float64 {
	if !(variance > 0) || o.luck <= 0 {
		return z80
	}
	ratio := math.Max(1, variance/o.luck) // readings of the dough may have taken most of its luck out
	nu := o.nu * ratio * ratio
	const z, z3, z5 = z80, z80 * z80 * z80, z80 * z80 * z80 * z80 * z80
	return z + (z3+z)/(4*nu) + (5*z5+16*z3+3*z)/(96*nu*nu)
}

// known is the lowest temperature learned from; without bakes there is none to be stretched from.
func (b *belief) known() float64 {
	if b.bakes == 0 {
		return math.Inf(-1)
	}
	return b.coldest
}
