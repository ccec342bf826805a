package bake

import (
	"math"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/enum"
	"example.org/maslin/internal/sources"
)

// LossBasis says what a loss in percent is a percentage of. The same 60 g lost from 560 g of dough are 10.7 %
// of the dough and 12 % of the bread: figures that do not name their basis cannot be compared.
type LossBasis int

// The bases. The zero value is the dough.
const (
	OfDough LossBasis = iota
	OfBread
)

var lossBases = enum.Of[LossBasis]("basis of a loss", "of dough", "of bread")

// IsValid reports whether the basis is one of the bases.
func (b LossBasis) IsValid() bool { return lossBases.Has(b) }

// String names the basis.
func (b LossBasis) String() string { return lossBases.String(b) }

// MarshalText implements encoding.TextMarshaler.
func (b LossBasis) MarshalText() ([]byte, error) { return lossBases.Marshal(b) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads the words that String prints, and no others.
func (b *LossBasis) UnmarshalText(text []byte) error { return lossBases.Unmarshal(b, text) }

// LossGuide is what a loaf usually loses in the oven and while it cools, in percent of the dough.
type LossGuide struct {
	answer

	Loss    quantity.Range[quantity.Percent] `json:"loss"`
	Style   Style                            `json:"style"`
	Dough   quantity.Mass                    `json:"dough"`
	Note    working.Message                  `json:"note,omitzero"`
	Sources []working.Source                 `json:"sources"`

	bread quantity.Mass // from which the dough was found
}

// UsualLoss answers: how much of its weight will this loaf lose?
//
// Method: a table by style and piece weight, straight between its points on the logarithm of the mass: hearth 13 % at
// 500 g, 11.5 % at 900 g, 10 % at 1.75 kg; small pieces lose more, tins less, a crusty baguette most. Low and high
// are what sources report around it. Valid range: 20 g to 5 kg of dough. Accuracy: ±2 percentage points; a dark bake
// of a wet dough loses 4 to 6 points more. Measure your own: [LossLog.Learn]. Errors: [quantity.ErrOutOfRange].
// Source: 10 to 13 % of the dough, Gisslen; 9.8 to 11.5 % with cooling, Baking & Snack; 10 to 20 %, Hamelman as
// cited.
func (s Style) UsualLoss(dough quantity.Mass) (LossGuide, error) {
	var p quantity.Problems
	styles.Check(&p, "Style", s)
	quantity.Check(&p, "Dough", dough, quantity.Grams(20), quantity.Grams(5000))
	if err := p.ErrFor(s); err != nil {
		return LossGuide{}, err
	}
	likely, low, high, note := usualLoss(s, dough.Grams())
	return LossGuide{
		Loss: quantity.Range[quantity.Percent]{
			Low:    quantity.NewPercent(low),
			Likely: quantity.NewPercent(likely),
			High:   quantity.NewPercent(high),
		},
		Style: s, Dough: dough, Note: note,
		Sources: []working.Source{
			sources.GisslenLoss,
			sources.BakeOutLoss,
			sources.HamelmanLoss,
			sources.Judged("points of the table between the published ranges"),
		},
	}, nil
}

// LossOfBread answers: how much will a loaf lose that is to weigh this much when it is cool?
//
// Method: [Style.UsualLoss] of the dough that loses so much: the dough and its loss are found together, and the answer
// names both. Range, accuracy, errors and source as [Style.UsualLoss].
func (s Style) LossOfBread(baked quantity.Mass) (LossGuide, error) {
	g, err := s.UsualLoss(baked)
	for i := 0; err == nil && i < 20; i++ {
		dough := baked.Over(quantity.NewPercent(100).Sub(g.Loss.Likely))
		if dough == g.Dough {
			break
		}
		g, err = s.UsualLoss(dough)
	}
	g.bread = baked
	return g, err
}

// Bread is what a loaf of this dough weighs when it is cool.
func (g LossGuide) Bread() quantity.Range[quantity.Mass] { return breadOf(g.Dough, g.Loss) }

// breadOf turns a range of losses into a range of bread.
func breadOf(dough quantity.Mass, loss quantity.Range[quantity.Percent]) quantity.Range[quantity.Mass] {
	left := func(p quantity.Percent) quantity.Mass { return quantity.NewPercent(100).Sub(p).Of(dough) }
	return quantity.Range[quantity.Mass]{
		Low:         left(loss.High),
		Likely:      left(loss.Likely),
		High:        left(loss.Low),
		Probability: loss.Probability,
	}
}

func usualLoss(style Style, grams float64) (likely, low, high float64, note working.Message) {
	row := rowOf(style).loss
	if row.likely > 0 {
		return row.likely, row.low, row.high, row.note
	}
	from, to := hearthPoints(grams)
	likely = from[1]
	if from != to {
		likely += (to[1] - from[1]) * math.Log(grams/from[0]) / math.Log(to[0]/from[0])
	}
	likely = math.Round(likely*10) / 10
	return likely, likely - row.low, likely + row.high, row.note
}

// hearthPoints are the points of the table of hearth loaves, in grams and percent, on both sides of a mass; the same
// point twice at the ends.
func hearthPoints(grams float64) (from, to [2]float64) {
	table := [...][2]float64{{90, 14}, {500, 13}, {900, 11.5}, {1750, 10}, {5000, 9}}
	for i := 1; i < len(table); i++ {
		if a, b := table[i-1], table[i]; grams > a[0] && grams <= b[0] {
			return a, b
		}
	}
	if grams <= table[0][0] {
		return table[0], table[0]
	}
	return table[len(table)-1], table[len(table)-1]
}

// String prints "11.5 % of the dough (9.5 % to 16.5 %)".
func (g LossGuide) String() string { return g.message().String() }

func (g LossGuide) message() working.Message {
	return working.Tell("bake.usual_loss", "%v of the dough (%v to %v)", g.Loss.Likely, g.Loss.Low, g.Loss.High)
}

// PromisedLoaf asks how much dough to scale for a loaf of a promised weight.
type PromisedLoaf struct {
	Baked quantity.Mass    `json:"baked"` // the promised weight, when cool
	Loss  quantity.Percent `json:"loss"`  // lost in the oven
	// lost while cooling, of the loaf out of the oven; 0 % when Loss includes it
	Cooling quantity.Percent `json:"cooling,omitzero"`
	Basis   LossBasis        `json:"basis,omitzero"` // what Loss is a percentage of
}

// Scaling is the dough to weigh for one loaf.
type Scaling struct {
	answer

	Dough quantity.Mass `json:"dough"`
	Baked quantity.Mass `json:"baked"` // cool
	Lost  quantity.Mass `json:"lost"`  // in all
	in    PromisedLoaf

	fromDough bool // asked for the bread of a dough
}

// Scaling answers: how much dough must one piece weigh so that the loaf weighs what was promised?
//
// Formula: dough = baked/((1 − L)·(1 − c)) when the loss is of the dough; dough = baked/(1 − c)·(1 + L) when it is of
// the bread. Symbols: L loss in the oven, c loss while cooling. Valid range: losses from 0 % to under 50 %, cooling
// to 10 %. Accuracy: exact to a microgram or two. Errors: [quantity.ErrOutOfRange]. Source: arithmetic; the two bases
// after Gisslen, who gives both an allowance per bread and a percentage of dough.
func (in PromisedLoaf) Scaling() (Scaling, error) {
	var p quantity.Problems
	quantity.Check(&p, "Baked", in.Baked, leastLoaf, mostPiece)
	checkLosses(&p, in.Loss, in.Cooling, in.Basis)
	if err := p.ErrFor(in); err != nil {
		return Scaling{}, err
	}
	whole := quantity.NewPercent(100)
	dough := in.Baked.Over(whole.Sub(in.Cooling)).Over(whole.Sub(in.Loss))
	if in.Basis == OfBread {
		// baked·(100 + L)/(100 − c), rounded once.
		up, _ := whole.Add(in.Loss).Millionths()
		down, _ := whole.Sub(in.Cooling).Millionths()
		dough = in.Baked.Scale(quantity.Micrograms(up), quantity.Micrograms(down))
	}
	return Scaling{Dough: dough, Baked: in.Baked, Lost: dough.Sub(in.Baked), in: in}, nil
}

var mostLoss = quantity.NewPercent(50)

// String prints "886.4 g of dough for 780 g baked".
func (s Scaling) String() string { return s.message().String() }
