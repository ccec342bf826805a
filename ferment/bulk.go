package ferment

import (
	"fmt"
	"math"
	"time"

	"example.org/maslin/dough/quantity"
)

// Bulk is a fermenting dough: what is in it, how warm it is over time, and how far it is to rise.
type Bulk struct {
	// Inoculation is the share of all flour that comes fermented with the levain: 20 % levain at 100 % hydration
	// on 100 % flour is 10/110 = 9.09 %; see [Prefermented].
	Inoculation quantity.Percent `json:"inoculation,omitzero"`
	// Yeast is commercial yeast, instead of a levain or with it; of both together the gas is added up.
	Yeast Yeast `json:"yeast,omitzero"`
	// SaltInWater is the salt in percent of the dough's water: 2 % salt at 72 % hydration is 2.78 %.
	SaltInWater quantity.Percent `json:"salt_in_water"`
	// WholeGrain is the share of the flour that is whole grain.
	WholeGrain quantity.Percent `json:"whole_grain,omitzero"`
	// Rise is how far the dough is to rise: 75 % is three quarters more volume, 100 % is doubled.
	Rise quantity.Percent `json:"rise"`
	// History is the dough's temperature from the end of mixing on.
	History History `json:"history"`
	// Curve is the rate curve, such as [GanzleYeastHeld] for a levain or [SaccharomycesCardinal] for baker's yeast.
	Curve Curve `json:"curve"`
	// YeastCurve is the yeast's own curve in a dough with a levain and yeast together, where Curve is the levain's.
	YeastCurve Curve `json:"yeast_curve,omitzero"`
	// Culture is what is known of the culture; the zero value is nothing.
	Culture Culture `json:"culture,omitzero"`
	// Kneading picks the pace learned for doughs kneaded this way.
	Kneading KneadedBy `json:"kneading,omitzero"`
	// ColdLevain says that the levain comes from the refrigerator: the dough starts with a lag.
	ColdLevain bool `json:"cold_levain,omitzero"`
	// Enriched doughs hold egg, milk or other perishables: only their cautions differ.
	Enriched bool `json:"enriched,omitzero"`
	// Extrapolate allows temperatures outside what the curve may be used at; the result says so.
	Extrapolate bool `json:"extrapolate,omitzero"`
}

// Prefermented answers: what share of all flour comes with a levain given in percent of the flour added?
//
//	f = L/(1 + H) / (1 + L/(1 + H))
//
// L is the levain in percent of the other flour, H its hydration. Exact to a millionth of a percent. Errors: ErrOutOfRange
// for a levain outside 0 to 1000 % or a hydration outside 30 to 500 %. Source: arithmetic.
func Prefermented(levain, hydration quantity.Percent) (quantity.Percent, error) {
	var p problems
	quantity.Check(&p.Problems, "Levain", levain, quantity.Percent{}, quantity.NewPercent(1000))
	quantity.Check(&p.Problems, "Hydration", hydration, quantity.NewPercent(30), quantity.NewPercent(500))
	if err := p.Err(); err != nil {
		return quantity.Percent{}, err
	}
	flour := levain.Fraction() / (1 + hydration.Fraction())
	return quantity.NewPercent(100 * flour / (1 + flour)), nil
}

// SaltInWater answers: how salty is the dough's water?
//
//	c = salt / hydration
//
// both in percent of the flour. Errors: ErrOutOfRange for salt outside 0 to 100 % or a hydration outside 20 to 500 %. Source: arithmetic.
func SaltInWater(salt, hydration quantity.Percent) (quantity.Percent, error) {
	var p problems
	quantity.Check(&p.Problems, "Salt", salt, quantity.Percent{}, quantity.NewPercent(100))
	quantity.Check(&p.Problems, "Hydration", hydration, quantity.NewPercent(20), quantity.NewPercent(500))
	if err := p.Err(); err != nil {
		return quantity.Percent{}, err
	}
	return quantity.NewPercent(100 * salt.Fraction() / hydration.Fraction()), nil
}

// Salt. Sourdough yeast tolerates up to 8 g in 100 mL water (Gänzle 1998, abstract). The shape of the decline is a judgment:
// s = 1 − (c/8)^1.25, halfway between powers of 1 and 1.5, relative to 2 % salt at 75 % hydration, the dough the
// amplitude is set on. It makes a rise without salt about a tenth faster than with 2 %, at the low end of what is said
// in the trade (10 to 30 %). The spread of 0.3 of the log covers both powers.
const (
	saltLimit     = 8.0       // g in 100 g water
	saltPower     = 1.25      // judgment
	saltReference = 2.0 / .75 // g in 100 g water
	sdSalt        = 0.3       // of ln s
)

var saltAtReference = 1 - math.Pow(saltReference/saltLimit, saltPower)

// saltFactor is s: how much gas the salt leaves, relative to the reference dough.
func saltFactor(c float64) float64 {
	return (1 - math.Pow(c/saltLimit, saltPower)) / saltAtReference
}

// Whole grain. Doughs of whole wheat ferment faster; the only figure found is a baker's, that white doughs take about
// 20 % longer (common practice). The log of it is spread by half of itself.
const wholeGrainPace = 0.182 // ln 1.2 at 100 %

// Limits of what is believed of an input.
var (
	greatestRise = quantity.NewPercent(300) // no dough holds more
	leastRise    = quantity.NewPercent(1)
)

// fermentation is a checked Bulk made ready for arithmetic.
type fermentation struct {
	curve  *curve
	scale  float64 // on the curve's rate
	share  float64 // f·s, what K·R is divided by
	salt   float64
	target float64 // R
	lag    float64 // dose lost before growth starts
	out    outlook
	// amplitude is exp(out.a), K
	amplitude float64
	kind      leavening
	second    *secondLeaven // when kind is byBoth
}

func (b Bulk) check(needRise bool) (fermentation, error) {
	var p problems
	kind := b.leavening()
	if kind != byYeast {
		if b.Inoculation.IsZero() {
			p.Required("Inoculation", "0.01 % to 100 % of the flour fermented with the levain, or commercial yeast")
		} else {
			quantity.Check(&p.Problems, "Inoculation", b.Inoculation, quantity.NewPercent(0.01), quantity.NewPercent(100))
		}
	}
	if kind != byLevain {
		if b.Yeast.Kind < NoYeast || b.Yeast.Kind > InstantYeast {
			p.Add("Yeast.Kind", fmt.Sprint(int(b.Yeast.Kind)), "FreshYeast, ActiveDryYeast or InstantYeast", errOutOfRange)
		}
		quantity.Check(&p.Problems, "Yeast.Amount", b.Yeast.Amount, quantity.NewPercent(0.001), quantity.NewPercent(15))
	}
	if !b.SaltInWater.IsValid() || b.SaltInWater.Sign() < 0 || b.SaltInWater.Points() > 7.5 {
		p.Add("SaltInWater", b.SaltInWater.String(), "0 % to 7.5 % of the water; at 8 % sourdough yeast stops", errOutOfRange)
	}
	quantity.Check(&p.Problems, "WholeGrain", b.WholeGrain, quantity.Percent{}, quantity.NewPercent(100))
	if needRise {
		if b.Rise.IsZero() {
			p.Required("Rise", leastRise.String()+" to "+greatestRise.String())
		} else {
			quantity.Check(&p.Problems, "Rise", b.Rise, leastRise, greatestRise)
		}
	}
	if b.History.IsZero() {
		p.Required("History", "a temperature history between −25 and 60 °C")
	}
	if b.Curve.IsZero() {
		p.Required("Curve", "a rate curve such as GanzleYeastHeld()")
	}
	if kind == byBoth && b.YeastCurve.IsZero() {
		p.Required("YeastCurve", "with a levain and yeast together, the yeast's own rate curve, such as SaccharomycesCardinal()")
	}
	if c := b.Culture.b; c != nil && c.kind != kind {
		p.Add("Culture", b.Culture.String(), "a culture learned from the same kind of leavening", quantity.ErrInconsistent)
	}
	if b.Kneading < KneadingUnstated || b.Kneading > ByMachine {
		p.Add("Kneading", fmt.Sprint(int(b.Kneading)), "KneadingUnstated, ByHand or ByMachine", errOutOfRange)
	}
	if err := p.Err(); err != nil {
		return fermentation{}, err
	}
	f := fermentation{curve: b.Curve.of, scale: 1, target: b.Rise.Fraction(), kind: kind, salt: saltFactor(b.SaltInWater.Points())}
	f.share = b.Inoculation.Fraction() * f.salt
	if b.ColdLevain && kind != byYeast {
		f.lag = coldLag
	}
	if kind != byLevain {
		path, own := "Curve", b.Curve
		if kind == byBoth {
			path, own = "YeastCurve", b.YeastCurve
		}
		at27 := own.Rate(27)
		if !(at27 > 0) || math.IsInf(at27, 1) {
			p.Add(path, "a rate of "+number(at27)+"/h at 27 °C", "a curve that grows at 27 °C, where yeast doughs are compared", errOutOfRange)
			return fermentation{}, p.Err()
		}
		share := yeastShare * b.Yeast.Amount.Points() * b.Yeast.Kind.asInstant()
		if kind == byYeast {
			f.scale = yeastGrowth / at27
			f.share = share * f.salt
		} else {
			levain := b.Inoculation.Fraction()
			f.second = &secondLeaven{curve: own.of, scale: yeastGrowth / at27, levain: math.Log(levain), yeast: math.Log(share), both: math.Log(levain + share), lag: f.lag}
			f.share = (levain + share) * f.salt
			f.lag = 0
		}
	}
	f.out = b.Culture.belief(kind).outlook(b.Kneading)
	whole := b.WholeGrain.Fraction() * wholeGrainPace
	f.out.b += whole
	f.out.bb += whole * whole / 4
	f.amplitude = math.Exp(f.out.a)
	ls := math.Log(f.salt) * sdSalt
	f.out.aa += ls * ls
	return f, nil
}

// need is h = ln M for a rise, the log of the dose it takes, and e = dh/da, how much of the log of the amplitude comes
// through: M = ln(1 + A), A = K·R/(f·s), e = A/((1 + A)·ln(1 + A)).
func (f *fermentation) need(rise float64) (h, e float64) {
	A := f.amplitude * rise / f.share
	m := math.Log1p(A) + f.lag
	return math.Log(m), A / ((1 + A) * m)
}

// coldLag is the dose a culture from the refrigerator loses before it grows, as the constant product of rate and lag of
// Baranyi and Roberts 1994; 0.4 is an hour at 24 °C, a judgment: plate counts of cultures from frozen stock stay slow for six hours.
const coldLag = 0.4

// doubt is how far the curve may be off in the log of the rate where it stands on weaker ground, judgments. Above
// 27 °C (33 °C for baker's yeast, whose optimum of growth is 32 °C) growth and gas part ways. Below 18 °C the published statements part
// from the equation: a fourfold doubling time at 14 °C is 0.3 faster in the log, no growth at 8 °C is slower without bound,
// and at 15 °C rival curves that agree at 24 °C are 0.5 to 0.7 faster.
func (f *fermentation) doubt(mean float64) float64 {
	if hot := f.hot(); mean > hot {
		return 0.03 * (mean - hot)
	}
	off := math.Hypot(0.06*math.Max(0, cold-mean), stretched*math.Max(0, f.out.coldest-mean))
	if f.kind != byLevain {
		off = math.Hypot(off, nearMinimum*math.Max(0, refrigerated-mean))
	}
	return off
}

// Where baker's yeast stops is known for its relatives only, 1.3 to 4.3 °C (Salvadó et al. 2011), and the trade sees its doughs double in the
// refrigerator in a day or three (common practice, no source). By the cardinal curve one end of that against the other is a factor of 2.3 at 8 °C and of 19 at 5 °C:
// the range opens by a factor of 1.3 for each degree below 8 °C, a judgment.
const (
	refrigerated = 8.0
	nearMinimum  = 0.25
)

// stretched is how unsure it is, in the log of the rate per °C, that a temperature sensitivity learned from warmer bakes goes on below the
// coldest of them: the published curves that agree at 24 °C part by 0.05 to 0.07 per °C on the way down to 15 °C.
const stretched = 0.05

// cold is where the curves begin to part ways, °C.
const cold = 18.0

func (f *fermentation) hot() float64 {
	if f.kind == byYeast {
		return 33
	}
	return 27
}

// variance of the log of the dose received over the dose needed, for a dose-weighted mean temperature.
func (f *fermentation) variance(mean, e float64) float64 {
	return e*e*f.out.aa + f.paceVariance(mean) - 2*e*f.together(mean)
}

// paceVariance is the variance of the log of the pace at a temperature.
func (f *fermentation) paceVariance(mean float64) float64 {
	o, x, s := &f.out, mean-reference, f.doubt(mean)
	return o.bb + x*x*o.dd + 2*x*o.bd + s*(s*o.cc+2*o.bc+2*x*o.cd)
}

// together is the covariance of the log of the amplitude with that of the pace at a temperature.
func (f *fermentation) together(mean float64) float64 {
	return f.out.ab + (mean-reference)*f.out.ad + f.doubt(mean)*f.out.ac
}

// pace is the log of the pace at a temperature.
func (f *fermentation) pace(mean float64) float64 {
	return f.out.b + f.out.d*(mean-reference) + f.out.c*f.doubt(mean)
}

// expected is the log of the dose received, with the culture's pace and temperature sensitivity.
func (f *fermentation) expected(dose, mean float64) float64 { return math.Log(dose) + f.pace(mean) }

// node is a corner of the history with what the dough has received until then.
type node struct {
	knot
	dose float64 // M, before the culture's own pace
	heat float64 // ∫ T dM
	// With levain and yeast together the dose of each by its own curve; dose is that of both.
	levain, yeast float64
}

// mean is the dose-weighted mean temperature.
func (n node) mean() float64 {
	if n.dose > 0 {
		return n.heat / n.dose
	}
	return n.c
}

// step is the node a straight run after another.
func (f *fermentation) step(p node, q knot) node {
	if f.second != nil {
		return f.stepBoth(p, q)
	}
	dt := q.h - p.h
	if dt <= 0 {
		return node{knot: q, dose: p.dose, heat: p.heat}
	}
	dm := dt * f.scale * average(f.curve, p.c, q.c)
	// Within the run the rate is taken as straight, so that the warm end counts more:
	// mean temperature = m + (T₁ − T₀)/6·(μ₁ − μ₀)/(μ₁ + μ₀).
	m := (p.c + q.c) / 2
	if p.c != q.c {
		r0, r1 := f.curve.rateAt(p.c), f.curve.rateAt(q.c)
		if r0+r1 > 0 {
			m += (q.c - p.c) / 6 * (r1 - r0) / (r1 + r0)
		}
	}
	return node{knot: q, dose: p.dose + dm, heat: p.heat + m*dm}
}

// rateAt is the rate, from the table where there is one.
func (c *curve) rateAt(celsius float64) float64 {
	if c.table != nil {
		return c.table.rate(celsius)
	}
	return c.rate(celsius)
}

// Horizon is how far ahead this package looks for a dough to be ready.
const Horizon = 30 * 24 * time.Hour
