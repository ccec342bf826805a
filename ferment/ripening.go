package ferment

import (
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/gasbalance"
)

// Ripening is a preferment just made: a levain just fed, a poolish, a biga, a sponge, old dough. When is it ripe, and
// how long does it stay usable? All shares are of its own flour.
type Ripening struct {
	// Seed is the share of its flour that comes with ripe seed: fed 1 : 2 : 2 at 100 % hydration it is
	// 0.5/2.5 = 20 %; see [FeedRatio].
	Seed quantity.Percent `json:"seed,omitzero"`
	// Yeast is commercial yeast, instead of seed or with it.
	Yeast     Yeast            `json:"yeast,omitzero"`
	Hydration quantity.Percent `json:"hydration,omitzero"` // zero means 100 %
	Salt      quantity.Percent `json:"salt,omitzero"`
	Sugar     quantity.Percent `json:"sugar,omitzero"`
	// WholeGrain is the share of the flour that is whole grain.
	WholeGrain quantity.Percent `json:"whole_grain,omitzero"`
	// History is its temperature from the feed on: join the counter and the refrigerator.
	History History `json:"history"`
	// Law is how the clock is reckoned: [GasBalance].
	Law      Law     `json:"law,omitzero"`
	Culture  Culture `json:"culture,omitzero"`
	ColdSeed bool    `json:"cold_seed,omitzero"` // the seed comes from the refrigerator: a slow start
	// Extrapolate allows temperatures and sugar outside what the law may be used at.
	Extrapolate bool `json:"extrapolate,omitzero"`
}

// FeedRatio is a feed by weight such as 1 : 2, the seed and the flour fed to it.
type FeedRatio struct {
	Seed          float64          `json:"seed"`  // parts
	Flour         float64          `json:"flour"` // parts
	SeedHydration quantity.Percent `json:"seed_hydration"`
}

// SeedShare answers: what share of the fed levain's flour comes with the seed?
//
//	s = S/(1 + H)/(S/(1 + H) + F)
//
// S and F are the parts of seed and flour, H the seed's hydration. Errors: ErrOutOfRange for parts outside 0.001 to
// 10,000, or a hydration outside 30 to 500 %. Source: arithmetic.
func (f FeedRatio) SeedShare() (quantity.Percent, error) {
	var p problems
	p.Float("Seed", f.Seed, 0.001, 10_000, "parts")
	p.Float("Flour", f.Flour, 0.001, 10_000, "parts")
	quantity.Check(&p.Problems, "SeedHydration", f.SeedHydration, quantity.NewPercent(30), quantity.NewPercent(500))
	if err := p.ErrFor(f); err != nil {
		return quantity.Percent{}, err
	}
	s := f.Seed / (1 + f.SeedHydration.Fraction())
	return quantity.NewPercent(100 * s / (s + f.Flour)), nil
}

func (r *Ripening) common() common {
	kind := leavening(!r.Seed.IsZero(), r.Yeast.Kind != NoYeast)
	return common{r.History, r.Law, r.Culture, KneadingUnstated, kind, r.Extrapolate}
}

func (r *Ripening) hydration() quantity.Percent {
	if r.Hydration.IsZero() {
		return whole
	}
	return r.Hydration
}

var (
	leastSeed = quantity.NewPercent(0.1)
	mostSeed  = quantity.NewPercent(90)
)

// check reports everything that is wrong with a preferment's input.
func (r *Ripening) check() (p problems) {
	switch {
	case r.Seed.IsZero() && r.Yeast == (Yeast{}):
		p.Required("Seed", quantity.Tell("ferment.want_0_1_percent_to_90",
			"0.1 %% to 90 %% of its flour, or commercial yeast"))
	case !r.Seed.IsZero():
		quantity.Check(&p.Problems, "Seed", r.Seed, leastSeed, mostSeed)
	}
	if r.Yeast != (Yeast{}) {
		r.Yeast.check(&p, "Yeast")
	}
	checkFormula(&p, r.hydration(), r.Salt, r.Sugar, r.WholeGrain, r.Extrapolate)
	c := r.common()
	c.check(&p)
	return p
}

// prepare checks a preferment and makes it ready; the need is that of its peak.
func (r *Ripening) prepare() (prepared, error) {
	p := r.check()
	if err := p.ErrFor(*r); err != nil {
		return prepared{}, err
	}
	law, err := r.Law.balance()
	if err != nil {
		return prepared{}, err
	}
	c := r.common()
	d := prepared{
		body: body{
			law: law, kind: c.kind, atm: 1, knots: r.History.knots,
			start: gasbalance.Start(ripe(law, r.Seed, r.ColdSeed), r.Yeast.instant()),
			formula: gasbalance.Formula{
				Hydration: r.hydration().Fraction(), Salt: r.Salt.Points(), Sugar: r.Sugar.Points(),
				Whole: r.WholeGrain.Fraction(), Osmotolerant: r.Yeast.Kind == OsmotolerantYeast,
			},
		},
		need: law.Ripeness(r.Seed.Fraction()),
	}
	d.know(c)
	return d, nil
}

// A preferment stands highest when the sugar at hand in its fresh flour is used. It is ripe from three quarters of that
// gas on, and usable until it would have made two and a half times as much, as the food runs out: judgments set on
// common practice at 24 °C, where a levain is ripe about an hour before its peak, falls within 3 to 4 h of it, and
// keeps about five days in a refrigerator at 4 °C.
const (
	ripeFrom    = 0.75
	usableUntil = 2.5
)

// stages are the shares of the gas at the peak: ripe, at the peak, and no longer usable.
var stages = [...]float64{ripeFrom, 1, usableUntil}

// Ripe answers: when is the preferment ripe, and until when can it be used?
//
//	peak when G = S_r·(1 − s),   ripe from ¾ of that,   usable until 2½ times that
//
// G is the gas of [Bulk.Estimate], s the share of flour that comes with the seed, S_r = 5.85 L/kg what the sugar at
// hand in fresh flour makes. Each time is a range with its probability. What is not reached within 30 days is given as
// 30 days: in a refrigerator a levain may keep its last stage for weeks; see [Ripeness.Reached]. Valid for seeds of 0.1
// to 90 % of the flour and yeast of 0.001 to 15 %. Limits: stiff unkneaded bigas and sponges ripened for acid take
// longer than their gas says. Errors: ErrRequired, ErrOutOfRange; ErrModelRange as in [Bulk.Estimate]. Source: as
// [GasBalance]; the sugar from Saunders, Ng and Kline, Cereal Chemistry 1972, fitted; stages: judgments set on common
// practice.
func (r Ripening) Ripe() (Ripeness, error) {
	d, err := r.prepare()
	if err != nil {
		return Ripeness{}, err
	}
	out := Ripeness{of: r, d: d}
	for i, share := range stages {
		o := d.clock.Times(d.start, d.knots, d.law.RipenessShare(r.Seed.Fraction(), share), &d.belief, hours(Horizon))
		t := timeRange(o.Early, o.Likely, o.Late)
		switch i {
		case 0:
			out.From = t
		case 1:
			out.Peak, out.outcome = t, o
		case 2:
			out.Until = t
		}
		out.reached[i] = o.Likely < hours(Horizon)
	}
	if err := within(r.Law, r.Extrapolate, r.History.knots, hours(out.Peak.Late), "History"); err != nil {
		return Ripeness{}, err
	}
	return out, nil
}

// YeastFor answers: how much yeast of the kind in Yeast makes the preferment likely ripe, at its peak, at the wanted
// time? Yeast.Amount of the input is not used. Errors: as [Ripening.Ripe], and ErrOutOfRange for a time outside 10
// minutes to 30 days. Source: the law solved for the cells.
func (r Ripening) YeastFor(ready time.Duration) (Yeast, bool, error) {
	if r.Yeast.Kind == NoYeast {
		r.Yeast.Kind = InstantYeast
	}
	r.Yeast.Amount = quantity.NewPercent(1)
	x, ok, err := r.amountFor(ready, leastYeast, mostYeast,
		func(r *Ripening, x quantity.Percent) { r.Yeast.Amount = x })
	return Yeast{Kind: r.Yeast.Kind, Amount: x}, ok, err
}

// SeedFor answers: which share of seed makes the preferment likely ripe, at its peak, at the wanted time? Seed of the
// input is not used. Errors: as [Ripening.Ripe], and ErrOutOfRange for a time outside 10 minutes to 30 days. Source:
// the law solved for the cells.
func (r Ripening) SeedFor(ready time.Duration) (quantity.Percent, bool, error) {
	r.Seed = quantity.NewPercent(10)
	return r.amountFor(ready, leastSeed.Points(), mostSeed.Points(),
		func(r *Ripening, x quantity.Percent) { r.Seed = x })
}
