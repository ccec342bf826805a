package ferment

import (
	"math"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/numeric"
)

// DoseLaw is an older, simpler clock of a dough, kept for comparison and for teaching: it can be worked out with a
// pocket calculator. The rise goes as the growth of the culture alone.
//
//	R = f·s/K·(e^M − 1),   M = ∫ μ dt,   ready when M = ln(1 + K·R/(f·s))
//
// f is the prefermented share of the flour, 10 for each percent of instant yeast, s what the salt leaves of the gas, 1
// for 2 % salt at 75 % water, K = 1. Levain is a curve of growth; Yeast too, scaled to 0.07/h at 27 °C.
//
// Against the rules of the trade it holds 67 of 93 where [GasBalance] holds 79, in ranges a fifth wider: it is wrong
// for small doses of yeast, in the cold, in warm levains, in sweet doughs and at altitude.
type DoseLaw struct {
	Levain Curve `json:"levain"`
	Yeast  Curve `json:"yeast"`
}

// What the older law assumed of an unknown kitchen, as standard deviations of logs, and of the temperature sensitivity
// per °C; all judgments.
const (
	doseAmplitude, doseAmplitudeYeast     = 0.35, 0.25
	dosePace, dosePaceYeast, dosePaceBoth = 0.25, 0.15, 0.29
	doseKneading, doseBake                = 0.10, 0.12
	doseTemperature                       = 0.03
	doseSalt                              = 0.3 // of ln s
	// yeastGrowth is the growth of commercial yeast in dough at 27 °C, 1/h: 29 % more cells in 6 h at 2 % pressed yeast
	// and 88 % more at 0.5 % are 0.042 and 0.105/h; the middle is a judgment.
	yeastGrowth = 0.07
	// yeastShare is what 1 % of instant yeast counts for as a prefermented share, between trade figures of 4 and 13.
	yeastShare = 10.0
	// Salt: s = 1 − (c/8)^1.25, relative to 2 % salt at 75 % hydration (judgment).
	saltPower     = 1.25
	saltReference = 2.0 / .75 // g in 100 g water
)

// saltFactor is s: how much gas the salt leaves.
func saltFactor(c float64) float64 {
	return (1 - math.Pow(c/saltLimit, saltPower)) / (1 - math.Pow(saltReference/saltLimit, saltPower))
}

// Ready answers: when would the dough be ready by the older law, for a kitchen nothing is known of? Of the dough its
// inoculation, yeast, salt, hydration, rise and history count. Errors: as [Bulk.Estimate]; ErrRequired for a curve that
// is needed and not given; ErrInconsistent for a yeast curve that does not grow at 27 °C. Source: judgments set on
// common practice; growth as the curves say.
func (l DoseLaw) Ready(b Bulk) (quantity.TimeRange, error) {
	p := b.check(true)
	levain, yeast := !b.Inoculation.IsZero(), b.Yeast.Kind != NoYeast
	if levain && l.Levain.IsZero() {
		p.Required("Levain", quantity.Tell("ferment.want_curve_growth_levain", "a curve of growth for the levain"))
	}
	scale := 1.0
	if yeast {
		at27 := l.Yeast.Rate(27)
		switch {
		case l.Yeast.IsZero():
			p.Required("Yeast", quantity.Tell("ferment.want_curve_growth_yeast", "a curve of growth for the yeast"))
		case !(at27 > 0):
			p.Add("Yeast", quantity.Tell("ferment.got_h_at_27_c", "%v/h at 27 °C", at27),
				quantity.Tell("ferment.want_curve_grows_at_27_c", "a curve that grows at 27 °C, where curves are compared"),
				quantity.ErrInconsistent)
		}
		scale = yeastGrowth / at27
	}
	if !levain && !yeast {
		p.Required("Inoculation", quantity.Tell("ferment.want_levain_or_yeast_dough_itself",
			"a levain, or yeast in the dough itself"))
	}
	if err := p.ErrFor(l); err != nil {
		return quantity.TimeRange{}, err
	}
	s := saltFactor(100 * b.Salt.Fraction() / b.Hydration.Fraction())
	f1, f2 := b.Inoculation.Fraction(), yeastShare*b.Yeast.instant()
	share := f1 + f2
	A := b.Rise.Fraction() / (share * s)
	need := math.Log1p(A)
	amplitude, pace := doseAmplitude, math.Hypot(dosePace, math.Hypot(doseKneading, doseBake))
	switch {
	case levain && yeast:
		pace = math.Hypot(dosePaceBoth, math.Hypot(doseKneading, doseBake))
	case yeast:
		amplitude, pace = doseAmplitudeYeast, math.Hypot(dosePaceYeast, math.Hypot(doseKneading, doseBake))
	}
	amplitude = math.Hypot(amplitude, doseSalt*math.Log(s))
	sens := A / ((1 + A) * need)
	received := func(hour float64) float64 {
		var m1, m2 float64
		if levain {
			m1 = l.Levain.of.over(b.History, hour)
		}
		if yeast {
			m2 = scale * l.Yeast.of.over(b.History, hour)
		}
		return math.Log((f1*math.Exp(m1) + f2*math.Exp(m2)) / share)
	}
	limit := hours(Horizon)
	at := func(q float64) float64 {
		score := func(logHour float64) float64 {
			hour := math.Exp(logHour)
			by := mean(b.History, hour) - reference
			sd := math.Sqrt(sens*sens*amplitude*amplitude + pace*pace + by*by*doseTemperature*doseTemperature)
			return math.Max(math.Log(received(hour)/need)-q*z80*sd, -700)
		}
		low, high := math.Log(1e-3), math.Log(limit)
		if score(high) < 0 {
			return math.Inf(1)
		}
		x, err := numeric.Root(score, low, high, 1e-9)
		if err != nil {
			return 0
		}
		return math.Exp(x)
	}
	return timeRange(at(-1), at(0), at(1)), nil
}

// over is the dose of a curve over a history until an hour.
func (c *curve) over(h History, hour float64) (sum float64) {
	if c.table != nil {
		return c.table.dose(h, 0, hour)
	}
	h.segments(0, hour, func(p, q knot) { sum += (q.Hour - p.Hour) * average(c, p.Celsius, q.Celsius) })
	return sum
}

// mean is the time average of a history until an hour, °C.
func mean(h History, hour float64) float64 {
	sum := 0.0
	h.segments(0, hour, func(p, q knot) { sum += (q.Hour - p.Hour) * (p.Celsius + q.Celsius) / 2 })
	return sum / hour
}
