package ferment

import (
	"math"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/gasbalance"
)

// Flavor is the direction in which temperature and time push a sourdough: a relative index, not a pH.
type Flavor struct {
	// Index is the growth of the lactobacilli for each doubling of the yeast, in percent of what it is at 24 °C: above
	// 100 leans toward acid, below toward mild.
	Index float64 `json:"index"`
	// Lactobacilli and Yeast are the doublings of each, in laboratory medium.
	Lactobacilli float64 `json:"lactobacilli"`
	Yeast        float64 `json:"yeast"`
	// Limits says what the index does not know.
	Limits []working.Message `json:"limits"`
}

// String prints "acid index 108 (100 is 24 °C throughout)".
func (f Flavor) String() string { return f.Message().String() }

// Message says which way it leans.
func (f Flavor) Message() working.Message {
	return working.Tell("ferment.flavor", "acid index %.0f (100 is %v throughout)", f.Index, degrees(reference))
}

// Flavor answers: does the history until a time lean toward acid or mild, compared with a dough at 24 °C?
//
//	index = 100·(M_L/M_Y)/(μ_L(24)/μ_Y(24))
//
// M_L and M_Y are the doses of lactobacilli and yeast by the two Gänzle curves. Only ratios carry over from medium to
// dough. It knows nothing of the flour's buffer, of acid slowing the lactobacilli, nor of which acids are made; it
// promises no pH. Valid from 0 to 36 °C. Errors: ErrRequired for the zero Estimate; ErrOutOfRange unless 1 minute ≤ t ≤
// 30 days; ErrInconsistent for commercial yeast; ErrModelRange outside 0 to 36 °C unless Extrapolate. Source: Gänzle,
// Ehmann and Hammes 1998; the index is this library's own.
func (e Estimate) Flavor(until time.Duration) (Flavor, error) {
	var p problems
	if !e.given() {
		p.Required("Estimate", quantity.Tell("ferment.want_estimate_dough", "an estimate of a dough"))
	}
	p.Duration("Until", until, time.Minute, Horizon)
	if e.d.kind != gasbalance.ByLevain {
		p.Add("Yeast", e.bulk.Yeast, quantity.Tell("ferment.want_levain_alone_commercial_yeast_brings",
			"a levain alone: commercial yeast brings no lactobacilli"),
			quantity.ErrInconsistent)
	}
	if err := p.ErrFor(e); err != nil {
		return Flavor{}, err
	}
	if lo, hi := e.bulk.History.extremes(hours(until)); !e.bulk.Extrapolate && (lo < 0 || hi > flavorHigh) {
		p.Add("History", quantity.Tell("ferment.got_temperatures", "%.1f to %.1f", degrees(lo), degrees(hi)),
			quantity.Tell("ferment.want_0_to_36_c_unless", "0 to 36 °C, unless extrapolating is allowed"),
			quantity.ErrModelRange)
		return Flavor{}, p.ErrFor(e)
	}
	lacto, err := GanzleLactobacilli().Dose(e.bulk.History, 0, until)
	if err != nil {
		return Flavor{}, err
	}
	yeast, err := GanzleYeast().Dose(e.bulk.History, 0, until)
	if err != nil {
		return Flavor{}, err
	}
	f := Flavor{Lactobacilli: lacto / math.Ln2, Yeast: yeast / math.Ln2, Limits: []working.Message{
		working.Tell("ferment.flavor_direction",
			"a direction, not a pH: flour, its ash and the levain's own acid are not in it"),
		working.Tell("ferment.flavor_medium", "growth in laboratory medium; only the ratio carries over to dough"),
	}}
	if yeast > 0 {
		f.Index = 100 * (lacto / yeast) / (GanzleLactobacilli().Rate(reference) / GanzleYeast().Rate(reference))
	}
	if c := 100 * e.bulk.Salt.Fraction() / e.bulk.Hydration.Fraction(); c >= saltStops {
		f.Limits = append(f.Limits, working.Tell("ferment.flavor_salt_stops",
			"at %.1f salt in the water the lactobacilli do not grow at all: they stop at 4 %%", quantity.NewPercent(c)))
	} else if c > saltHolds {
		f.Limits = append(f.Limits, working.Tell("ferment.flavor_salt_holds",
			"at %.1f salt in the water the lactobacilli are held back: they stop at 4 %%", quantity.NewPercent(c)))
	}
	return f, nil
}

const (
	// flavorHigh is where the curve of the yeast ends, °C.
	flavorHigh = 36.0
	// Lactobacilli are stopped by 4 g of salt in 100 g water (Gänzle 1998, abstract) and held back before: 3 is a
	// judgment.
	saltStops = 4.0
	saltHolds = 3.0
)
