// Package gasbalance compares the closed forms of internal/gasbalance with a solver of differential equations,
// SciPy's LSODA, and what its ranges claim with simulated kitchens: in the world of its own beliefs and in worlds
// that are not its own. The truth is integrated here, in small steps, from the printed equations and constants.
package gasbalance

import (
	"math"
	"math/rand/v2"

	"example.org/maslin/internal/gasbalance"
)

// World says how the truth is made and what the baker asks.
type World struct {
	Name string
	// Yeast doughs are raised by commercial yeast, the others by a levain.
	Yeast bool
	// Dose has the older law be the truth, with its own wider beliefs: a share that grows exponentially, gas in
	// proportion to growth.
	Dose bool
	// Growth, when set, is the true growth of a levain, 1 at 27 °C; Crowd how growth falls with cells over the
	// capacity.
	Growth func(celsius float64) float64
	Crowd  func(share float64) float64
	// Season is the size of a yearly wave in the log of the pace; bakes are a week apart.
	Season float64
	// Shift is by how much the levain's mixture has shifted after ten bakes.
	Shift float64
	// Thermometer is the standard deviation of a kitchen's thermometer, °C.
	Thermometer float64
	// Misread is the true standard deviation of a rise as read; the baker says 5 points.
	Misread float64
	// Wild is the share of logged bakes that took half or twice the time.
	Wild float64
	// Cold asks about doughs of 12 to 16 °C after bakes of 19 to 28 °C.
	Cold bool
}

// The stated beliefs, written out again: the check must not read them from what it checks.
const (
	sdAmplitude, sdPace, sdLuck                = 0.30, 0.15, 0.12
	sdAmplitudeYeast, sdPaceYeast, sdLuckYeast = 0.20, 0.12, 0.10
	sdSlope, sdCold, sdMixture, sdKneading     = 0.02, 1.0, 0.25, 0.10
	sdYeastGrowth                              = 0.35
	freedom                                    = 12
	readingError                               = 0.05
	// The older law's beliefs.
	doseAmplitude, dosePace, doseSlope   = 0.35, 0.25, 0.03
	doseAmplitudeYeast, dosePaceYeast    = 0.25, 0.15
	fill, gas27, mu27, mixture, fullest  = 1.70, 2.05, 0.37, 0.40, 3.5
	ripeLevain                           = 0.779696
	z80                                  = 1.2815515655446004
	doseYeastShare, doseYeastGrowth      = 10.0, 0.07
	plainDoseSalt, doseSaltLimit         = 2.0 / 0.75, 8.0
	gasWaterBound, gasAir, doughPerLiter = 0.16, 0.09, 1.12
)

// Kitchen is one kitchen's truth.
type Kitchen struct {
	w                World
	rng              *rand.Rand
	a, b, d, c, m, g float64
	knead, formula   float64
	sigma, season    float64
	thermometer      float64
	room             float64
	doseA, doseP, ds float64
}

// NewKitchen draws a kitchen.
func NewKitchen(w World, rng *rand.Rand) *Kitchen {
	n := rng.NormFloat64
	k := &Kitchen{w: w, rng: rng}
	sa, sb, luck := sdAmplitude, sdPace, sdLuck
	if w.Yeast {
		sa, sb, luck = sdAmplitudeYeast, sdPaceYeast, sdLuckYeast
	}
	k.a, k.b, k.d, k.c, k.m = sa*n(), sb*n(), sdSlope*n(), sdCold*n(), sdMixture*n()
	k.g = sdYeastGrowth * n()
	if w.Yeast {
		k.m = 0
	}
	k.knead, k.formula = sdKneading*n(), 0.3*n()
	chi := 0.0
	for range freedom {
		z := n()
		chi += z * z
	}
	k.sigma = luck * math.Sqrt(freedom/chi)
	k.season = 2 * math.Pi * rng.Float64()
	k.thermometer = w.Thermometer * n()
	k.room = 20 + 6*rng.Float64()
	da, dp := doseAmplitude, dosePace
	if w.Yeast {
		da, dp = doseAmplitudeYeast, dosePaceYeast
	}
	k.doseA, k.doseP, k.ds = da*n(), dp*n(), doseSlope*n()
	return k
}

// Dough is one bulk as the baker knows it, and when it is ready and logged in truth, h.
type Dough struct {
	Formula gasbalance.Formula
	Start   gasbalance.State
	History []gasbalance.Knot
	Rise    float64
	Ready   float64
	Logged  float64
	Sigma   float64

	share, yeast float64
}

// Mix draws the next dough of the kitchen, the i-th bake.
func (k *Kitchen) Mix(i int, bake bool) Dough {
	r := k.rng
	d := Dough{Rise: 0.4 + 0.6*r.Float64(), Sigma: k.sigma}
	d.Formula = gasbalance.Formula{Hydration: 0.65 + 0.15*r.Float64(), Salt: 1.8 + 0.4*r.Float64()}
	if k.w.Yeast {
		d.yeast = math.Exp(math.Log(0.1) + math.Log(15)*r.Float64())
		d.Start = gasbalance.Start(0, d.yeast)
	} else {
		d.share = 0.05 + 0.15*r.Float64()
		d.Start = gasbalance.Start(d.share*gasbalance.Standard().RipeLevain(), 0)
	}
	room := math.Max(19, math.Min(28, k.room+1.5*r.NormFloat64()))
	from := math.Max(19, math.Min(28, 22+4*r.Float64()))
	tau := 1 + 3*r.Float64()
	if !bake && k.w.Cold {
		room, from = 12+2*r.Float64(), 14+2*r.Float64()
	}
	for h := 0.0; h <= 24; h += 0.5 {
		d.History = append(d.History, gasbalance.Knot{Hour: h, Celsius: room + (from-room)*math.Exp(-h/tau)})
	}
	luck := k.sigma * r.NormFloat64()
	if bake && r.Float64() < k.w.Wild {
		luck += math.Ln2 * float64(2*r.IntN(2)-1)
	}
	luck += k.w.Season * math.Sin(2*math.Pi*float64(i)/52+k.season)
	misread := readingError
	if k.w.Misread > 0 {
		misread = k.w.Misread
	}
	seen := math.Max(0.05, d.Rise-misread*r.NormFloat64())
	times := k.truth(i, &d, luck, d.Rise, seen)
	d.Ready, d.Logged = times[0], times[1]
	return d
}

// minutes is how finely the truth is integrated, h.
const minutes = 1.0 / 20

// truth is when the dough has two rises.
func (k *Kitchen) truth(bake int, d *Dough, luck, rise, seen float64) (at [2]float64) {
	last := d.History[len(d.History)-1]
	celsius := func(t float64) float64 {
		if t >= last.Hour {
			return last.Celsius + k.thermometer
		}
		p := int(t / 0.5)
		a, b := d.History[p], d.History[p+1]
		return a.Celsius + (b.Celsius-a.Celsius)*(t-a.Hour)/0.5 + k.thermometer
	}
	targets := [2]float64{rise, seen}
	next := k.balance(bake, d, luck)
	if k.w.Dose {
		next = k.dose(d, luck)
	}
	found := 0
	before := [2]float64{-1, -1}
	for i := 0; found < 2 && i < 720/minutes; i++ {
		t := float64(i) * minutes
		over := next(celsius(t), celsius(t+minutes), targets)
		for j := range targets {
			if at[j] == 0 && over[j] >= 0 {
				at[j] = t + minutes*before[j]/(before[j]-over[j])
				found++
			}
		}
		before = over
	}
	for j := range at {
		if at[j] == 0 {
			at[j] = 720
		}
	}
	return at
}

// balance steps the gas balance by the midpoint rule and says how far the gas is over what each target takes.
func (k *Kitchen) balance(bake int, d *Dough, luck float64) func(from, to float64, targets [2]float64) [2]float64 {
	f := d.Formula
	osmol := 10 / f.Hydration * f.Salt / 58.44 * 1.86
	pace := 1 / (1 + math.Pow(osmol/2.4, 2)) * math.Pow(f.Hydration/0.72, 0.4)
	plain := 1 / (1 + math.Pow(10/0.72*2/58.44*1.86/2.4, 2))
	pace *= math.Exp(k.b + k.knead + luck + k.formula*math.Abs(math.Log(pace/plain)))
	w := k.m + k.w.Shift*math.Min(1, float64(bake)/10)
	x, y, g := d.share*ripeLevain, d.yeast, 0.0
	rates := func(t, x, y float64) (dx, dy, dg float64) {
		p := pace * math.Exp(k.d*(t-24)+k.c*(2/28.2-2/math.Max(t+1.2, 2.5)))
		gy, gz := root(t, 0.4, 0.236, 42.2), humilis(t)
		gl := (1-mixture)*gz + mixture*gy
		if gl > 1e-9 {
			gl *= math.Exp(w * (gy - gz) / gl)
		}
		if k.w.Growth != nil {
			gl = k.w.Growth(t)
		}
		room := math.Max(0, 1-(x+y)/fill)
		if k.w.Crowd != nil {
			room = k.w.Crowd((x + y) / fill)
		}
		return p * mu27 * gl * room * x, p * mu27 * gy * math.Exp(k.g) * room * y, p * gas27 * root(t, -1.2, 0.20,
			49) * (x + y)
	}
	return func(from, to float64, targets [2]float64) (over [2]float64) {
		dx, dy, _ := rates(from, x, y)
		dx, dy, dg := rates((from+to)/2, x+dx*minutes/2, y+dy*minutes/2)
		x, y, g = x+dx*minutes, y+dy*minutes, g+dg*minutes
		for j, r := range targets {
			over[j] = math.Exp(k.a)*g - gasFor(r, to, f.Hydration)
		}
		return over
	}
}

// gasFor is what a rise takes, L per kg flour at 1 atm.
func gasFor(r, celsius, h float64) float64 {
	kelvin := celsius + 273.15
	ostwald := 3.3e-4 * math.Exp(2400*(1/kelvin-1/298.15)) * 8.314462 * kelvin
	water := ostwald * (h - gasWaterBound) / (1 + h) * doughPerLiter
	return (1 + h) / doughPerLiter * 298.15 / kelvin * (fullest*math.Atanh(r/fullest) + water*r/(r+gasAir))
}

func root(t, lowest, bend, highest float64) float64 {
	if t <= lowest || t >= highest {
		return 0
	}
	f := func(t float64) float64 { return (t - lowest) * (1 - math.Exp(bend*(t-highest))) }
	return math.Pow(f(t)/f(27), 2)
}

func humilis(t float64) float64 {
	x := 36 - t
	if x <= 0 {
		return 0
	}
	return math.Pow(x/9, 2.981) * math.Exp(-0.3355*(x-9))
}

// cardinal is the growth of S. cerevisiae by the cardinal temperatures of Salvadó et al. 2011, in 1/h up to a factor.
func cardinal(t float64) float64 {
	const lo, opt, hi = 2.8, 32.3, 45.4
	if t <= lo || t >= hi {
		return 0
	}
	return (t - hi) * (t - lo) * (t - lo) / ((opt - lo) * ((opt-lo)*(t-opt) - (opt-hi)*(opt+lo-2*t)))
}

// dose steps the older law: R = f·s/K·(e^(p·M) − 1).
func (k *Kitchen) dose(d *Dough, luck float64) func(from, to float64, targets [2]float64) [2]float64 {
	salt := d.Formula.Salt / d.Formula.Hydration
	s := (1 - math.Pow(salt/doseSaltLimit, 1.25)) / (1 - math.Pow(plainDoseSalt/doseSaltLimit, 1.25))
	s *= math.Exp(k.formula * math.Log(s))
	share := d.share
	if k.w.Yeast {
		share = doseYeastShare * d.yeast
	}
	m := 0.0
	rate := func(t float64) float64 {
		mu := 0.423317 * humilis(held(t))
		if k.w.Yeast {
			mu = doseYeastGrowth * cardinal(t) / cardinal(27)
		}
		return mu * math.Exp(k.doseP+k.knead+luck+k.ds*(t-24))
	}
	return func(from, to float64, targets [2]float64) (over [2]float64) {
		m += (rate(from) + rate(to)) / 2 * minutes
		for j, r := range targets {
			over[j] = m - math.Log1p(math.Exp(k.doseA)*r/(share*s))
		}
		return over
	}
}

// held is the temperature at which the older law looks its curve up: its maximum is held from 27.1 to 30 °C.
func held(t float64) float64 {
	switch {
	case t < 27.1148:
		return t
	case t < 30:
		return 27.1148
	}
	return t - 2.8852
}
