package ferment

import (
	"math"
	"time"

	"example.org/maslin/dough/quantity"
)

// Flavor is the direction in which temperature and time push a sourdough: a relative index, not a pH.
type Flavor struct {
	// Index is the growth of the lactobacilli for each doubling of the yeast, in percent of what it is at 24 °C: above 100 leans
	// toward acid, below toward mild.
	Index float64
	// Lactobacilli and Yeast are the doublings of each, in laboratory medium.
	Lactobacilli, Yeast float64
	// Limits says what the index does not know.
	Limits []string
}

// String prints "acid index 108 (100 is 24 °C throughout)".
func (f Flavor) String() string {
	return "acid index " + fixed(f.Index, 0) + " (100 is 24 °C throughout)"
}

// Flavor answers: does the history until a time lean toward acid or mild, compared with a dough at 24 °C?
//
//	index = 100·(M_L/M_Y)/(μ_L(24)/μ_Y(24))
//
// M_L and M_Y are the doses of lactobacilli and yeast by the two Gänzle curves. Only ratios carry over from medium to dough. It knows nothing of the flour's
// buffer, of acid slowing the lactobacilli, nor of which acids are made; it promises no pH. Valid from 0 to 36 °C. Errors: ErrRequired for the zero
// Estimate; ErrOutOfRange unless 1 minute ≤ t ≤ 30 days; ErrInconsistent for commercial yeast; ErrModelRange outside
// 0 to 36 °C unless Extrapolate. Source: Gänzle, Ehmann and Hammes 1998; the index is this library's own.
func (e Estimate) Flavor(until time.Duration) (Flavor, error) {
	var p problems
	if len(e.nodes) == 0 {
		p.Required("Estimate", "a result of Bulk.Estimate")
	}
	p.Duration("Until", until, time.Minute, Horizon)
	if e.f.kind != byLevain {
		p.Add("Yeast", e.bulk.Yeast.String(), "a levain alone: commercial yeast brings no lactobacilli", quantity.ErrInconsistent)
	}
	if err := p.Err(); err != nil {
		return Flavor{}, err
	}
	check := e.bulk
	check.Curve = GanzleYeast()
	if err := withinCurve(check, check.History, hours(until), "History"); err != nil {
		return Flavor{}, err
	}
	lacto, err := GanzleLactobacilli().Dose(e.bulk.History, 0, until)
	if err != nil {
		return Flavor{}, err
	}
	yeast, err := GanzleYeast().Dose(e.bulk.History, 0, until)
	if err != nil {
		return Flavor{}, err
	}
	f := Flavor{Lactobacilli: lacto / math.Ln2, Yeast: yeast / math.Ln2, Limits: []string{
		"a direction, not a pH: flour, its ash and the levain's own acid are not in it",
		"growth in laboratory medium; only the ratio carries over to dough",
	}}
	if yeast > 0 {
		f.Index = 100 * (lacto / yeast) / (GanzleLactobacilli().Rate(reference) / GanzleYeast().Rate(reference))
	}
	if c := e.bulk.SaltInWater.Points(); c >= 4 {
		f.Limits = append(f.Limits, "at "+fixed(c, 1)+" % salt in the water the lactobacilli do not grow at all: they stop at 4 %")
	} else if c > 3 {
		f.Limits = append(f.Limits, "at "+fixed(c, 1)+" % salt in the water the lactobacilli are held back: they stop at 4 %")
	}
	return f, nil
}
