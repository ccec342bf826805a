package mixing

import (
	"math"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// Fullness says whether a dough fits a mixer.
type Fullness int

// How full a bowl is.
const (
	// Unknown: nothing is published for this kind; the manual decides.
	Unknown Fullness = iota
	// Comfortable: every published chart near this bowl size, or the machine's manual, allows it.
	Comfortable
	// LikelyToFit: a rule that is not published for this machine allows it.
	LikelyToFit
	// Tight: some charts allow it and some do not; the machine's manual decides.
	Tight
	// TooMuch: nothing known of this bowl size allows it.
	TooMuch
	// TooLittle: the hook will not catch it well.
	TooLittle
)

// LimitBasis says what the largest dough of a mixer rests on.
type LimitBasis int

// What a limit rests on, the firmest first.
const (
	_ LimitBasis = iota
	// MachineManual: the figure was given, from the manual of the machine.
	MachineManual
	// CapacityCharts: published charts of planetary mixers near this size.
	CapacityCharts
	// OtherCharts: those charts stand in for another kind of mixer, or for a size outside them.
	OtherCharts
	// HouseholdBowl: a rule of flour per liter of a household bowl, set about one maker's figure.
	HouseholdBowl
	// TradePractice: common practice without a source.
	TradePractice
)

// BowlFit is the answer of [Mix.Fit].
type BowlFit struct {
	answer

	Fullness Fullness `json:"fullness"`
	// Basis says how firmly the limits are known; not given when Fullness is Unknown.
	Basis LimitBasis `json:"basis,omitzero"`
	// Absorption is water over flour, the mixer manuals' absorption ratio.
	Absorption quantity.Percent `json:"absorption"`
	// Most is the largest dough: MostLow by the strictest figure for this bowl, MostHigh by the most generous. Both are
	// zero when Fullness is Unknown.
	MostLow  quantity.Mass `json:"most_low"`
	MostHigh quantity.Mass `json:"most_high"`
	// Least is the smallest dough a hook works well; a judgment.
	Least quantity.Mass `json:"least"`
	// Batches is how many equal batches the dough is mixed in, and Each the weight of one.
	Batches int           `json:"batches"`
	Each    quantity.Mass `json:"each"`
	// SecondSpeed reports whether second speed is allowed at this absorption ratio.
	SecondSpeed bool `json:"second_speed"`
	// Kneading is how the dough is kneaded with this mixer.
	Kneading Kneading `json:"kneading"`
	// Notes say what lowered the capacity and what the figures do not cover.
	Notes    []working.Message `json:"notes,omitempty"`
	Cautions []working.Caution `json:"cautions,omitempty"`

	in    Mix
	limit limit
}

// The reductions of operators' manuals: a tenth off for high-gluten flour, and 10 to 20 % off for
// chilled flour, ice or water below 20 °C. No second speed at an absorption ratio of 50 % or less.
const (
	glutenReduction   = 0.90
	coldReductionLow  = 0.80
	coldReductionHigh = 0.90
	secondSpeedAbove  = 50.0
	// A hook needs about a fifth of the largest dough. Judgment; nothing published was found.
	leastShare = 0.2
)

// Fit answers whether a dough fits a mixer, and how to split it when it does not.
//
//	AR = 100·water ÷ flour;  most = bowl volume · kg per liter(AR) · reductions
//
// Bowls of 7 to 65 L: kilograms per liter come from the capacity charts of four planetary mixers (8 qt, 10 L, 20 L,
// 60 L), of which the two nearest in size are used; they disagree by a quarter to a half, so the answer is a range,
// and Comfortable means under its low end. A tenth is taken off for high-gluten flour and 10 to 20 % for cold water.
// Smaller planetary bowls are household machines: 0.25 to 0.30 kg of flour per liter by stiffness, six to seven
// tenths of it for whole grain and rye, never below 0.08 kg per liter; a judgment about one maker's figure, so it
// only makes a dough LikelyToFit, and a split is asked for by its high end. For spiral and fork mixers the planetary
// charts stand in as a cautious figure; for hand a rule of the trade; for a processor nothing is published. The
// machine's own manual is always right: give Rated. Bowl 0.5 to 400 L, AR 20 to 150 %.
//
// Errors: ErrRequired, ErrOutOfRange; ErrInconsistent when flour and water exceed the dough. Source: operators'
// manuals of planetary mixers; booklets of household machines.
func (in Mix) Fit() (BowlFit, error) {
	var p quantity.Problems
	in.check(&p)
	if in.Mixer.IsValid() && in.Mixer != Hand && in.Mixer != Processor && in.Rated.IsZero() && in.Bowl.IsZero() {
		p.Required("Bowl", quantity.Tell("mixing.want_500_ml_to_400_l",
			"500 mL to 400 L, or the capacity that the machine's manual gives"))
	}
	if err := p.ErrFor(in); err != nil {
		return BowlFit{}, err
	}
	r := BowlFit{Absorption: in.hydration(), Cautions: in.Mixer.Cautions(), in: in, limit: in.limit()}
	r.SecondSpeed = r.Absorption.Points() > secondSpeedAbove && in.Mixer != Hand
	r.Basis, r.MostLow, r.MostHigh, r.Notes = r.limit.basis, r.limit.low(), r.limit.high(), r.limit.notes
	r.judge()
	kneading, err := in.Kneading()
	if err != nil {
		return BowlFit{}, err
	}
	r.Kneading = kneading
	return r, nil
}

func (r *BowlFit) judge() {
	in := r.in
	if r.MostHigh.IsZero() {
		r.Batches, r.Each = 1, in.Dough
		return
	}
	r.Least = r.limit.least()
	// A rule of judgment asks for a split only by its high end.
	most := r.MostLow
	if r.Basis == HouseholdBowl {
		most = r.MostHigh
	}
	d, _ := in.Dough.Micrograms()
	m, _ := most.Micrograms()
	r.Batches = int((d + m - 1) / max(m, 1))
	r.Each = in.Dough.Divide(int64(r.Batches))
	firm := r.Basis == MachineManual || r.Basis == CapacityCharts || r.Basis == TradePractice
	switch {
	case in.Dough.Compare(r.Least) < 0:
		r.Fullness = TooLittle
	case in.Dough.Compare(r.MostLow) <= 0 && firm:
		r.Fullness = Comfortable
	case in.Dough.Compare(r.MostLow) <= 0:
		r.Fullness = LikelyToFit
	case in.Dough.Compare(r.MostHigh) <= 0:
		r.Fullness = Tight
	default:
		r.Fullness = TooMuch
	}
}

// String says whether it fits and how to split it, in grams.
func (r BowlFit) String() string { return r.Message().String() }

// Message says whether it fits and how to split it, for the units of its reader.
func (r BowlFit) Message() working.Message {
	if r.Batches == 0 {
		return working.Tell("mixing.no_mixer", "no mixer")
	}
	dough := r.in.Dough
	most := working.Tell("mixing.most", "%.0f", r.MostLow)
	if r.MostHigh != r.MostLow {
		most = working.Tell("mixing.most_range", "%.0f to %.0f", r.MostLow, r.MostHigh)
	}
	split := working.Tell("mixing.one_batch", "mix it in one batch, and watch the machine")
	if r.Batches > 1 {
		split = working.Tell("mixing.split", "mix %d batches of %.0f", r.Batches, r.Each)
	}
	switch r.Fullness {
	case Comfortable:
		return working.Tell("mixing.fits", "%.0f of dough fits: the most is %v", dough, most)
	case LikelyToFit:
		return working.Tell("mixing.likely_fits", "%.0f of dough is likely to fit: the most is about %v, which is no "+
			"maker's figure", dough, most)
	case Tight:
		return working.Tell("mixing.tight", "%.0f of dough is tight: the most is %v; %v", dough, most, split)
	case TooMuch:
		return working.Tell("mixing.too_much", "%.0f of dough is too much: the most is %v; %v", dough, most, split)
	case TooLittle:
		return working.Tell(
			"mixing.too_little", "%.0f of dough is too little for the hook, which needs about %.0f: mix it by hand "+
				"or in a smaller bowl", dough, r.Least)
	}
	return working.Tell("mixing.fit_unknown", "whether %.0f of dough fits is not published: the manual decides", dough)
}

// Working derives the absorption ratio, the capacity and the split.
func (r BowlFit) Working() working.Working {
	d := working.Derive(working.Tell("mixing.derive_fit", "Will it fit the mixer"))
	if r.Batches == 0 {
		return d.Working()
	}
	in := r.in
	flour := working.Given("m_flour", working.Tell("mixing.symbol_all_flour", "flour of the whole dough"), in.Flour)
	water := working.Given("m_water", working.Tell("mixing.symbol_all_water", "water of the whole dough"), in.Water)
	d.Find(working.Finding{
		Name: working.Tell("mixing.absorption", "absorption ratio"), Symbol: "AR",
		By: working.Num(100).Times(water.Over(flour)),
		Is: r.Absorption, Decimals: 1, Source: sources.PlanetaryManuals,
	})
	if r.MostHigh.IsZero() {
		return d.Working()
	}
	low, high := r.limit.derive(d, in)
	if r.Fullness == TooLittle && r.MostLow.Sign() > 0 {
		share := working.Given("s", working.Tell("mixing.symbol_least_share",
			"share of the most that the hook needs to catch it"),
			r.Least.PercentOf(r.MostLow))
		d.Find(working.Finding{
			Name: working.Tell("mixing.least_dough", "least dough for the hook"), Symbol: "m_least",
			By: low.Times(share.Share()),
			Is: r.Least, Decimals: 1, Source: r.limit.source,
		})
	}
	if r.Batches == 1 {
		return d.Working()
	}
	dough := working.Given("m_dough", working.Tell("mixing.symbol_dough", "dough"), in.Dough)
	by := low
	if r.Basis == HouseholdBowl {
		by = high
	}
	d.Find(working.Finding{
		Name: working.Tell("mixing.batches", "batches"), Symbol: "n", By: working.Ceil(dough.Over(by)),
		Is:       working.Amount(float64(r.Batches), "", 0),
		Decimals: working.WholeNumber, Source: working.Algebra(),
	})
	return d.Working()
}

func grams(g float64) quantity.Mass { return quantity.Grams(math.Min(g, 1e12)) }
