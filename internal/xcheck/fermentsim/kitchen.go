// Package fermentsim checks what the ranges of package ferment claim: it invents kitchens whose true pace, amplitude,
// temperature sensitivity and luck are drawn from the stated priors, lets them bake and log, and counts how often the
// ranges hold the truth and how wide they are. The truth is integrated here, in steps of five minutes, without the
// library's own integrals.
package fermentsim

import (
	"math"
	"math/rand/v2"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/ferment"
)

// World says how the truth is made.
type World struct {
	Name string
	// Truth is the curve that really drives the doughs; the baker always reckons with GanzleYeastHeld.
	Truth ferment.Curve
	// Scale multiplies the true rate, so that a rival curve agrees at 24 °C.
	Scale float64
	// Sensitivity is whether kitchens differ in temperature sensitivity.
	Sensitivity bool
	// AskCold has the baker ask about a dough of 13 to 17 °C after logging doughs of 18 to 26 °C.
	AskCold bool
	// BothWays has the kitchen knead some doughs by hand and some by machine.
	BothWays bool
	// Wild is the share of logged bakes that go wrong: half or twice the time.
	Wild float64
}

// Kitchen is one kitchen's truth.
type Kitchen struct {
	world           World
	a, b, d         float64
	knead           [3]float64
	sigma           float64
	salt            float64 // log error of the salt factor, per unit of its log
	room, roomSD    float64
	rng             *rand.Rand
	machineOrByHand float64
}

// The stated priors, written out again: the check must not read them from what it checks.
const (
	sdAmplitude, sdPace, sdTemperature, sdKneading = 0.35, 0.25, 0.03, 0.10
	sigma0, freedom                                = 0.12, 12
	readingError                                   = 0.05
)

// NewKitchen draws a kitchen.
func NewKitchen(w World, rng *rand.Rand) *Kitchen {
	k := &Kitchen{world: w, rng: rng}
	k.a = sdAmplitude * rng.NormFloat64()
	k.b = sdPace * rng.NormFloat64()
	if w.Sensitivity {
		k.d = sdTemperature * rng.NormFloat64()
	}
	for i := range k.knead {
		k.knead[i] = sdKneading * rng.NormFloat64()
	}
	chi := 0.0
	for range freedom {
		z := rng.NormFloat64()
		chi += z * z
	}
	k.sigma = sigma0 * math.Sqrt(freedom/chi)
	k.salt = 0.3 * rng.NormFloat64()
	k.room = 19 + 5*rng.Float64()
	k.roomSD = 1.5
	k.machineOrByHand = rng.Float64()
	return k
}

// Dough is one bulk in a kitchen, and what really happens to it.
type Dough struct {
	Bulk ferment.Bulk
	// TrueTime is when the true rise reaches the target; LogTime when the baker, who misreads the rise a little, writes
	// it down.
	TrueTime, LogTime time.Duration
	// FloorEarly and FloorLate enclose 80 % of the times this dough would take if all but its luck were perfectly known.
	FloorEarly, FloorLate time.Duration
	truth                 []float64 // ln of dose·pace at each step
	share, amplitude      float64
}

// saltFactor as the library states it.
func saltFactor(c float64) float64 {
	return (1 - math.Pow(c/8, 1.25)) / (1 - math.Pow(2/0.75/8, 1.25))
}

// Mix draws the next dough of the kitchen.
func (k *Kitchen) Mix(bake bool) (Dough, error) {
	r := k.rng
	f := 0.05 + 0.15*r.Float64()
	rise := 0.4 + 0.6*r.Float64()
	salt := (0.018 + 0.004*r.Float64()) / (0.65 + 0.15*r.Float64())
	night := k.room + k.roomSD*r.NormFloat64()
	night = math.Max(16, math.Min(25, night))
	day := night + 2*r.Float64()
	relaxing := ferment.Relaxing{
		Start: quantity.Celsius(math.Min(26.5, 22+4*r.Float64())),
		Room: ferment.Room{Night: quantity.Celsius(night), Day: quantity.Celsius(day),
			Starts: quantity.Elapsed(time.Duration(r.IntN(24)) * time.Hour)},
		TimeConstant: quantity.Elapsed(time.Duration(60+r.IntN(180)) * time.Minute),
	}
	if !bake && k.world.AskCold {
		relaxing.Start = quantity.Celsius(15 + 2*r.Float64())
		relaxing.Room = ferment.Room{Night: quantity.Celsius(13 + 2*r.Float64())}
	}
	h, err := relaxing.History()
	if err != nil {
		return Dough{}, err
	}
	way := ferment.ByMachine
	if k.world.BothWays && r.Float64() < k.machineOrByHand {
		way = ferment.ByHand
	}
	d := Dough{Bulk: ferment.Bulk{
		Inoculation: quantity.NewPercent(100 * f), Hydration: quantity.NewPercent(75), Salt: quantity.NewPercent(75 * salt),
		Rise:    quantity.NewPercent(100 * rise),
		History: h, Law: ferment.GasBalance(), Kneading: way,
	}}
	s := saltFactor(100 * salt)
	d.share = f * s * math.Exp(k.salt*math.Log(s))
	d.amplitude = math.Exp(k.a)
	luck := k.sigma * r.NormFloat64()
	if bake && r.Float64() < k.world.Wild {
		luck += math.Ln2 * float64(2*r.IntN(2)-1)
	}
	pace := math.Exp(k.b + k.knead[way] + luck)
	// The truth, step by step: the temperature of the history, the true curve, the kitchen's own sensitivity.
	target := rise - readingError*r.NormFloat64()
	knots := h.Knots()
	at := 0
	rate := func(hour float64) float64 {
		for at+1 < len(knots) && knots[at+1].At.Duration().Hours() <= hour {
			at++
		}
		t := knots[at].Temperature.Celsius()
		if at+1 < len(knots) {
			p, q := knots[at], knots[at+1]
			t += (q.Temperature.Celsius() - t) * (hour - p.At.Duration().Hours()) / (q.At - p.At).Duration().Hours()
		}
		return pace * k.world.Scale * k.world.Truth.Rate(t) * math.Exp(k.d*(t-24))
	}
	need := math.Log1p(d.amplitude * rise / d.share)
	logged := math.Log1p(d.amplitude * math.Max(0.05, target) / d.share)
	d.truth = append(d.truth, 0)
	dose, last := 0.0, rate(0)
	const z80 = 1.2815515655446004
	marks := []struct {
		dose float64
		time *time.Duration
	}{
		{need, &d.TrueTime}, {logged, &d.LogTime},
		{need * math.Exp(luck-z80*k.sigma), &d.FloorEarly}, {need * math.Exp(luck+z80*k.sigma), &d.FloorLate},
	}
	missing := len(marks)
	for i := 1; missing > 0 && i < 30*24/step; i++ {
		now := rate(float64(i) * step)
		before := dose
		dose += (last + now) / 2 * step
		last = now
		d.truth = append(d.truth, dose)
		for _, m := range marks {
			if *m.time == 0 && dose >= m.dose {
				*m.time = time.Duration((float64(i-1) + (m.dose-before)/(dose-before)) * step * float64(time.Hour))
				missing--
			}
		}
	}
	return d, nil
}

// step is how finely the truth is integrated, h; the trapezoid rule is then within 1e-5 of the dose.
const step = 1.0 / 12

// RiseAt is the true rise at a time.
func (d *Dough) RiseAt(t time.Duration) float64 {
	x := t.Hours() / step
	i := int(x)
	if i+1 >= len(d.truth) {
		return math.Expm1(d.truth[len(d.truth)-1]) * d.share / d.amplitude
	}
	dose := d.truth[i] + (d.truth[i+1]-d.truth[i])*(x-float64(i))
	return math.Expm1(dose) * d.share / d.amplitude
}
