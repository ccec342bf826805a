package gasbalance

import "math"

// Leavening is what raises a dough. Each kind has spreads of its own.
type Leavening int

// The kinds of leavening.
const (
	ByLevain Leavening = iota
	ByYeast
	ByBoth
)

// Belief is what is believed of one dough's kitchen: a normal distribution over the unknowns and what is not in
// them. It is a value.
type Belief struct {
	Mean Vector
	Cov  Matrix
	// Luck is the variance of the log of the pace from bake to bake. It is not part of Cov.
	Luck float64
	// Freedom is the degrees of freedom behind Luck; 0 means that it is known.
	Freedom float64
	// Formula is the variance of the log of the pace for what the formula does; see [Belief.For].
	Formula float64
	// Stretch is the factor by which ranges have been too narrow so far; 0 counts as 1.
	Stretch float64
	// Opens says that the pace was learned from bakes, none colder than Coldest, °C: below it the range opens again.
	Opens   bool
	Coldest float64
}

// Spreads of the unknowns of a kitchen nothing is known of, as standard deviations.
//
// Amplitude, pace, mixture and luck are judgments: strains that differ by a factor of two in gas are ordinary (Houn
// and Hsu, Food Bioscience 3 (2013) 75), and commercial yeast is made to a standard. The rows of the trade, which
// are middles of many kitchens, lie within the range so made in 85 of 100 cases.
//
// Slope: sixteen strains of S. cerevisiae differ by 0.014 to 0.029 per °C (Molinet et al., data).
//
// Growth of commercial yeast: laboratories find 0.24 to 0.43 1/h, and counts of cells in doughs as little as half of
// what the rows of the trade say by their gas (0.5 % pressed yeast at 27 °C in 6 h: ×1.9 by count, ×4.1 by gas). Its
// spread is a judgment; a kitchen that bakes with different doses finds its own.
//
// ColdEnd: the fit of the growth curve leaves ±0.45 °C, and strains differ.
const (
	sdAmplitude, sdAmplitudeYeast = 0.30, 0.20
	sdPace, sdPaceYeast           = 0.15, 0.12
	sdSlope                       = 0.02
	sdColdEnd                     = 1.0
	sdMixture                     = 0.25
	sdYeastGrowth                 = 0.35
	sdLuck, sdLuckYeast           = 0.12, 0.10
	// sdFormula is how far the pace a formula is given may be off, for each unit of its log from the plain dough's:
	// judgment.
	sdFormula = 0.3
	// opening is how unsure it is, per °C, that what was learned from warmer bakes goes on below the coldest of
	// them: published curves that agree at 24 °C part by 0.05 to 0.07 per °C on the way to 15 °C.
	opening = 0.05
	// freedom: as if the luck had been seen on twelve bakes, judgment.
	freedom = 12
)

// Prior is what is believed of a kitchen nothing is known of.
func Prior(kind Leavening) Belief {
	sd := Vector{sdAmplitude, sdPace, sdSlope, sdColdEnd, sdMixture, sdYeastGrowth}
	if kind == ByLevain {
		sd[Growth] = 0
	}
	luck := sdLuck
	if kind == ByYeast {
		sd = Vector{sdAmplitudeYeast, sdPaceYeast, sdSlope, sdColdEnd, 0, sdYeastGrowth}
		luck = sdLuckYeast
	}
	b := Belief{Luck: luck * luck, Freedom: freedom}
	for i, v := range sd {
		b.Cov[i][i] = v * v
	}
	return b
}

// For is the belief for a dough whose formula leads this far from the plain dough; see [Law.Unusual].
func (b Belief) For(unusual float64) Belief {
	b.Formula = sdFormula * sdFormula * unusual * unusual
	return b
}

// Spread is the variance of the log of the gas at a state, in its parts: what each comes from. Divided by the
// square of the second entry of [State.LogGas] it is that of the log of the time at a steady temperature.
type Spread struct {
	// Kitchen is what each unknown contributes, Σⱼ eᵢ·Cᵢⱼ·eⱼ; with correlations learned one may be negative, never
	// the sum.
	Kitchen Vector
	// Luck is the bake's own, Formula what sugar, salt, water and whole grain do to the pace, Opening the cold
	// below every bake learned from.
	Luck, Formula, Opening float64
}

// Total is the variance of the log of the gas.
func (s Spread) Total() float64 {
	v := s.Luck + s.Formula + s.Opening
	for _, k := range s.Kitchen {
		v += k
	}
	return v
}

// Spread is the variance of the log of the gas where it goes with the unknowns by e.
func (b *Belief) Spread(e Vector) (s Spread) {
	for i := range e {
		v := 0.0
		for j := range e {
			v += b.Cov[i][j] * e[j]
		}
		s.Kitchen[i] = e[i] * v
	}
	p2 := e[Pace] * e[Pace]
	s.Luck, s.Formula = p2*b.Luck, p2*b.Formula
	s.Opening = b.opening(&e)
	return s
}

// opening is the variance of the log of the gas that lies below the coldest bake learned from:
//
//	(∂b·0.05·(T_coldest − T))²
//
// so that warm bakes teach the cold less the colder it is. In the cold the range may then be wider than before those
// bakes: held to what was believed before, it missed 20 to 35 of 100 cold doughs in a world of another law (CLOCK.md,
// section 5). The temperature that counts is the mean over the history, weighted by what it does to the gas:
// T = 24 °C + (∂/∂d)/(∂/∂b).
func (b *Belief) opening(e *Vector) float64 {
	if !b.Opens || !(e[Pace] > 0) {
		return 0
	}
	x := e[Pace] * opening * max(0, b.Coldest-slopeFrom-e[Slope]/e[Pace])
	return x * x
}

// square is eᵀ·M·e of a symmetric matrix.
func (m *Matrix) square(e *Vector) float64 {
	v := 0.0
	for i := range e {
		w := m[i][i] * e[i]
		for j := range i {
			w += 2 * m[i][j] * e[j]
		}
		v += e[i] * w
	}
	return v
}

// variance is [Spread.Total] without its parts.
func (b *Belief) variance(e *Vector) float64 {
	return b.Cov.square(e) + e[Pace]*e[Pace]*(b.Luck+b.Formula) + b.opening(e)
}

// z80 is the standard normal quantile at 90 %.
const z80 = 1.2815515655446004

// Reach is how many standard deviations an 80 % range reaches to each side when a part of the variance, the luck,
// is itself known from few bakes: Student's t at the degrees of freedom of Welch and Satterthwaite, by the
// expansion of Abramowitz and Stegun (1964), 26.7.5.
func (b *Belief) Reach(variance, luck float64) float64 { return reach(b.Freedom, variance, luck) }

func reach(freedom, variance, luck float64) float64 {
	if !(freedom > 0) || !(luck > 0) || !(variance > 0) {
		return z80
	}
	ratio := max(1, variance/luck)
	nu := freedom * ratio * ratio
	const z, z3, z5 = z80, z80 * z80 * z80, z80 * z80 * z80 * z80 * z80
	return z + (z3+z)/(4*nu) + (5*z5+16*z3+3*z)/(96*nu*nu)
}

// margin is how far an 80 % range of the log of the gas reaches to each side.
func (b *Belief) margin(e *Vector) float64 {
	v := b.variance(e)
	return b.Reach(v, e[Pace]*e[Pace]*b.Luck) * math.Sqrt(v) * b.stretch()
}

func (b *Belief) stretch() float64 {
	if b.Stretch > 0 {
		return b.Stretch
	}
	return 1
}
