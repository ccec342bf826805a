package gasbalance

import (
	"math"

	"example.org/maslin/internal/numeric"
)

// Constants of the dough as a body that holds gas.
const (
	kelvin = 273.15
	// All gas is counted as volume at 25 °C and 1 atm.
	gasKelvin = 298.15
	gasConst  = 8.314462 // J/(mol K), CODATA
	// Density of dough with little gas, kg/L: 1.1 to 1.2 (from memory).
	doughDensity = 1.12
	// Share of gas in a dough from the mixer as volume over dough, from the same densities (from memory).
	airAtStart = 0.09
	// Water that flour binds and no gas dissolves in, kg per kg flour, as the term of the formula: judgment.
	boundWater = 0.16
	// Henry's law for CO₂: 3.3e-4 mol/(m³ Pa) at 25 °C, 2400 K. Source: Sander's compilation; NIST gives an Ostwald
	// coefficient of 0.8207 at 25 °C.
	henry     = 3.3e-4
	henryHeat = 2400.0
)

// Pressure is the air pressure at an altitude in meters, atm.
//
//	p = (1 − 2.25577e-5·z)^5.25588
//
// Source: ISO 2533, standard atmosphere.
func Pressure(meters float64) float64 { return math.Pow(1-2.25577e-5*meters, 5.25588) }

// Ostwald is L, the volume of CO₂ that a volume of water holds at a temperature in °C when the gas beside it is
// pure CO₂: 0.82 at 25 °C.
func Ostwald(celsius float64) float64 {
	k := celsius + kelvin
	return henry * numeric.Exp(henryHeat*(1/k-1/gasKelvin)) * gasConst * k
}

// Volume is v, liters of dough for each kilogram of flour: (1 + h)/1.12.
func Volume(hydration float64) float64 { return (1 + hydration) / doughDensity }

// Need is the gas that a goal takes at any temperature: a rise at a pressure, or the ripeness of a preferment. The
// zero value needs no gas.
type Need struct {
	fixed     float64 // ripeness, L/kg flour
	bubbles   float64 // undissolved, times 1 K
	dissolved float64 // at 25 °C
	// The same by the log of the rise, for the error of a rise that was read.
	bubblesBy, dissolvedBy float64
}

// Need is what a rise R takes in a dough of hydration h under p atm:
//
//	N(R, T, p) = v·p·298.15/(T + 273.15)·[R_m·artanh(R/R_m) + L(T)·ω·R/(R + φ₀)],   ω = (h − 0.16)/(1 + h)·1.12
//
// The first term is undissolved gas with a retention that falls as 1 − (R/R_m)², R_m = 3.5; the second what the
// dough's water holds in equilibrium with bubbles that began as air, φ₀ = 0.09 of the dough. A rise of R_m or more
// needs gas without bound.
func (l *Law) Need(rise, hydration, atm float64) Need {
	v := Volume(hydration) * atm * gasKelvin
	held, wet := l.holds(rise, hydration)
	water := v * wet * henry * gasConst
	x := rise / l.Fullest
	return Need{
		bubbles: v * held, dissolved: water,
		bubblesBy: v * rise / (1 - x*x), dissolvedBy: water * airAtStart / (rise + airAtStart),
	}
}

// holds is the gas in the bubbles of a rise over the dough's volume, and what the water holds over the Ostwald
// coefficient.
func (l *Law) holds(rise, hydration float64) (bubbles, water float64) {
	omega := max(0, hydration-boundWater) / (1 + hydration) * doughDensity
	return l.Fullest * artanh(rise/l.Fullest), omega * rise / (rise + airAtStart)
}

// Ripeness is the need of a preferment or a fed levain with a share of seed in its flour; see [Law.RipeGas].
func (l *Law) Ripeness(seed float64) Need { return Need{fixed: l.RipeGas(seed)} }

// RipenessShare is the need of a stage on the way to ripeness or past it, as a share of that at ripeness.
func (l *Law) RipenessShare(seed, share float64) Need { return Need{fixed: share * l.RipeGas(seed)} }

// Gas is the need in L/kg flour at a temperature in °C.
func (n *Need) Gas(celsius float64) float64 {
	if n.bubbles == 0 {
		return n.fixed
	}
	r := 1 / (celsius + kelvin)
	return n.fixed + n.bubbles*r + n.dissolved*numeric.Exp(henryHeat*(r-1/gasKelvin))
}

// Steepness is dln N/dln R at a temperature: what an error in the log of a rise that was read is worth in the log
// of the gas. It is 0 for ripeness.
func (n *Need) Steepness(celsius float64) float64 {
	_, steepness := n.at(celsius)
	return steepness
}

// at is [Need.Gas] and [Need.Steepness] at once.
func (n *Need) at(celsius float64) (gas, steepness float64) {
	if n.bubbles == 0 {
		return n.fixed, 0
	}
	r := 1 / (celsius + kelvin)
	e := numeric.Exp(henryHeat * (r - 1/gasKelvin))
	gas = n.fixed + n.bubbles*r + n.dissolved*e
	return gas, (n.bubblesBy*r + n.dissolvedBy*e) / gas
}

// Rise is the rise that an amount of gas makes in a dough of hydration h at T °C under p atm: [Law.Need] solved for
// R. It stays below R_m.
func (l *Law) Rise(gas, celsius, hydration, atm float64) float64 {
	if !(gas > 0) {
		return 0
	}
	// g is the gas in volumes of the dough as it is now; f(R) = bubbles + water − g rises with R.
	g := gas / (Volume(hydration) * atm * gasKelvin / (celsius + kelvin))
	wet := Ostwald(celsius) * max(0, hydration-boundWater) / (1 + hydration) * doughDensity
	lo, hi := 0.0, l.Fullest*math.Tanh(g/l.Fullest) // without water the gas would make this
	r := hi * g / (g + wet)
	for range 60 {
		x := r / l.Fullest
		f := l.Fullest*artanh(x) + wet*r/(r+airAtStart) - g
		if f > 0 {
			hi = r
		} else {
			lo = r
		}
		d := 1/(1-x*x) + wet*airAtStart/((r+airAtStart)*(r+airAtStart))
		next := r - f/d
		// Newton's steps square their error: after one of 1e-8 the next would be of 1e-16.
		if math.Abs(next-r) <= 1e-8*r {
			return max(lo, min(next, hi))
		}
		if !(next > lo && next < hi) {
			next = (lo + hi) / 2
		}
		r = next
	}
	return r
}

// artanh is math.Atanh by the logarithm in plain arithmetic, in a third of the time.
func artanh(x float64) float64 { return 0.5 * numeric.Log1p(2*x/(1-x)) }
