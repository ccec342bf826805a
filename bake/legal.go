package bake

import (
	"math"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// PackedWeight asks about packed loaves sold by a nominal weight.
type PackedWeight struct {
	Nominal quantity.Mass `json:"nominal"` // what the label says
}

// AverageWeight is what the average system asks of packed loaves of a nominal weight, as information.
type AverageWeight struct {
	Nominal   quantity.Mass `json:"nominal"`
	Tolerance quantity.Mass `json:"tolerance"` // tolerable negative error
	Mean      quantity.Mass `json:"mean"`      // the average of a batch must not be less
	Few       quantity.Mass `json:"few"`       // T1: at most one in forty may weigh less
	None      quantity.Mass `json:"none"`      // T2: none may weigh less
}

// Limits answers: what must a batch of packed loaves of this nominal weight weigh, under the average
// system of the UK and the EU?
//
// Formula: T1 = N − e, T2 = N − 2e, with e by nominal weight: 9 % to 50 g, 4.5 g to 100, 4.5 % to 200, 9 g to 300, 3
// % to 500, 15 g to 1,000, 1.5 % to 10,000 g. Valid range: 5 g to 10 kg. Accuracy: exact; percentages of e are
// rounded up to 0.1 g as the directive rounds. It is information: check your local law, which also says what may be
// sold unpacked, by which weights, and how it is labeled. Errors: [quantity.ErrOutOfRange]. Source: 400 g: 388 g and
// 376 g, nibusinessinfo.co.uk; other bands from Directive 76/211/EEC, annex I (from memory).
func (packed PackedWeight) Limits() (AverageWeight, error) {
	var p quantity.Problems
	nominal := packed.Nominal
	if !quantity.Check(&p, "Nominal", nominal, quantity.Grams(5), quantity.Grams(10000)) {
		return AverageWeight{}, p.ErrFor(packed)
	}
	e := math.Ceil(toleranceOf(nominal.Grams())*10-1e-9) / 10
	tolerance := quantity.Grams(e)
	return AverageWeight{
		Nominal:   nominal,
		Tolerance: tolerance,
		Mean:      nominal,
		Few:       nominal.Sub(tolerance),
		None:      nominal.Sub(tolerance.Times(2)),
	}, nil
}

// packedBands are the tolerable negative errors: above each nominal weight in grams, grams or percent of it.
var packedBands = [...]struct {
	above, grams, percent float64
}{{1000, 0, 1.5}, {500, 15, 0}, {300, 0, 3}, {200, 9, 0}, {100, 0, 4.5}, {50, 4.5, 0}, {0, 0, 9}}

// toleranceOf is the tolerable negative error of a nominal weight in grams, before it is rounded up.
func toleranceOf(nominal float64) float64 {
	for _, b := range packedBands {
		if nominal > b.above {
			return b.grams + b.percent/100*nominal
		}
	}
	return 0
}

// String prints "400 g packed: on average at least 400 g, at most 1 in 40 below 388 g, none below 376 g
// (check your local law)".
func (a AverageWeight) String() string { return a.message().String() }

func (a AverageWeight) message() working.Message {
	return working.Tell("bake.average_weight",
		"%v packed: on average at least %v, at most 1 in 40 below %v, none below %v (check your local law)",
		a.Nominal, a.Mean, a.Few, a.None)
}

// Cautions defers to the law of the place.
func (a AverageWeight) Cautions() []working.Caution {
	return []working.Caution{
		{
			Subject: "law",
			Text: working.Tell("bake.caution_law",
				"This is information, not legal advice: check the weights and measures law of your place, and its rules for "+
					"unpacked bread."),
			Source: sources.AverageSystem,
		},
		{
			Subject: "unpacked loaves",
			Text: working.Tell("bake.caution_unpacked",
				"In the UK an unwrapped loaf needs no weight on display when it weighs 400 g or a multiple, or 300 g or less; "+
					"older rules set 400, 800 and 1,200 g."),
			Source: sources.UnwrappedBread,
		},
	}
}

// Solids asks what loss brings a bread to the least share of solids that the US standard asks for.
type Solids struct {
	FlourMoisture quantity.Percent `json:"flour_moisture,omitzero"` // water in the flour; 0 % takes 14 %
	Water         quantity.Percent `json:"water"`                   // added, of flour
	OtherSolids   quantity.Percent `json:"other_solids,omitzero"`   // salt, sugar, fat and the like, dry, of flour
	Least         quantity.Percent `json:"least,omitzero"`          // of the bread; 0 % takes the 62 % of 21 CFR 136.110
}

// SolidsLoss is the loss that makes a bread dry enough for a rule, as information.
type SolidsLoss struct {
	answer

	Loss quantity.Percent `json:"loss"` // of the dough; negative when the dough itself is dry enough
	in   Solids
}

// LeastLoss answers: how much must this dough lose to be bread by the US standard of identity (at least
// 62 % solids)?
//
// Formula: L = 1 − S/(s·D) with S = flour·(1 − m) + other solids, D = flour + water + other solids, all of 100 flour.
// Symbols: m moisture of the flour, s least share of solids. Valid range: water 30 to 150 %, other solids 0 to 60 %,
// flour moisture 5 to 20 %. Accuracy: exact; it neglects what fermentation eats (1 to 2 % of flour). It is
// information: check your local law. Errors: [quantity.ErrOutOfRange]. Source: 21 CFR 136.110(a).
func (in Solids) LeastLoss() (SolidsLoss, error) {
	if in.FlourMoisture.IsZero() {
		in.FlourMoisture = quantity.NewPercent(14)
	}
	if in.Least.IsZero() {
		in.Least = quantity.NewPercent(62)
	}
	var p quantity.Problems
	quantity.Check(&p, "FlourMoisture", in.FlourMoisture, quantity.NewPercent(5), quantity.NewPercent(20))
	quantity.Check(&p, "Water", in.Water, quantity.NewPercent(30), quantity.NewPercent(150))
	quantity.Check(&p, "OtherSolids", in.OtherSolids, quantity.Percent{}, quantity.NewPercent(60))
	quantity.Check(&p, "Least", in.Least, quantity.NewPercent(30), quantity.NewPercent(95))
	if err := p.ErrFor(in); err != nil {
		return SolidsLoss{}, err
	}
	solids := 100 - in.FlourMoisture.Points() + in.OtherSolids.Points()
	dough := 100 + in.Water.Points() + in.OtherSolids.Points()
	return SolidsLoss{Loss: quantity.NewPercent(100 * (1 - solids/(in.Least.Fraction()*dough))), in: in}, nil
}

// String prints "at least 13.4 % of the dough (check your local law)".
func (s SolidsLoss) String() string { return s.message().String() }

func (s SolidsLoss) message() working.Message {
	return working.Tell("bake.solids_loss",
		"a loss of at least %.1f of the dough leaves %v solids (check your local law)", s.Loss, s.in.Least)
}

// Cautions defers to the law of the place.
func (s SolidsLoss) Cautions() []working.Caution { return AverageWeight{}.Cautions()[:1] }
