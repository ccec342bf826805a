package flour

import (
	"math"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/enum"
	"example.org/maslin/internal/sources"
)

// FlourStrength is what is known of a flour's strength, and the hydration it is to carry. Leave what is
// not known at zero.
type FlourStrength struct {
	Hydration quantity.Percent `json:"hydration"`
	// Protein is in percent at 14 % moisture or as on the bag, where the difference is small.
	Protein quantity.Percent `json:"protein,omitzero"`
	// W is the alveograph's deformation work in 10⁻⁴ J, and PL its balance P/L.
	W  float64 `json:"w,omitzero"`
	PL float64 `json:"pl,omitzero"`
	// FallingNumber is in seconds.
	FallingNumber float64 `json:"falling_number,omitzero"`
	// Absorption is the farinograph's water absorption at 14 % moisture.
	Absorption quantity.Percent `json:"absorption,omitzero"`
}

// StrengthFigure is a figure of a flour's strength.
type StrengthFigure int

// The figures.
const (
	FigureW StrengthFigure = iota
	FigureProtein
	FigurePL
	FigureFallingNumber
	FigureAbsorption
)

var figureWords = enum.Of[StrengthFigure]("figure of strength", "W", "protein", "P/L", "falling number", "absorption")

// String names the figure: "falling number".
func (f StrengthFigure) String() string { return figureWords.String(f) }

// MarshalText implements encoding.TextMarshaler.
func (f StrengthFigure) MarshalText() ([]byte, error) { return figureWords.Marshal(f) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads the words that String prints, and no others.
func (f *StrengthFigure) UnmarshalText(text []byte) error { return figureWords.Unmarshal(f, text) }

// meaning explains the figure to a baker who has it from a bag of flour.
func (f StrengthFigure) meaning() working.Message {
	switch f {
	case FigureW:
		return working.Tell("flour.meaning_w",
			"work to blow up a bubble of dough in the alveograph, in 10⁻⁴ J: how strong the dough is")
	case FigurePL:
		return working.Tell("flour.meaning_pl",
			"height over length of the alveograph's curve: how much the dough resists against how far it stretches")
	case FigureFallingNumber:
		return working.Tell("flour.meaning_falling",
			"seconds a plunger takes through a hot paste of the flour: few mean much enzyme, that thins the paste")
	case FigureAbsorption:
		return working.Tell("flour.meaning_absorption",
			"water that brings 100 g of flour of 14 %% moisture to a standard stiffness in the farinograph")
	case FigureProtein:
	}
	return working.Tell("flour.meaning_protein", "protein of the flour as it is in the bag")
}

// Stance says whether a figure speaks for or against a hydration.
type Stance int

// The stances.
const (
	// Silent: the figure says nothing about this hydration.
	Silent Stance = iota
	// SpeaksFor: flours of this class usually carry it.
	SpeaksFor
	// SpeaksAgainst: flours of this class usually do not.
	SpeaksAgainst
)

var stanceWords = enum.Of[Stance]("stance", "silent", "for", "against")

// String names the stance: "against".
func (s Stance) String() string { return stanceWords.String(s) }

// MarshalText implements encoding.TextMarshaler.
func (s Stance) MarshalText() ([]byte, error) { return stanceWords.Marshal(s) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads the words that String prints, and no others.
func (s *Stance) UnmarshalText(text []byte) error { return stanceWords.Unmarshal(s, text) }

// StrengthOpinion is what one published list says about a flour.
type StrengthOpinion struct {
	Figure StrengthFigure  `json:"figure"`
	Given  working.Message `json:"given"` // "W 240"
	// Meaning says what was measured.
	Meaning working.Message `json:"meaning"`
	Class   working.Message `json:"class"` // "medium"
	// Used are the hydrations the class is used at; zero when the list names none.
	Used   quantity.Range[quantity.Percent] `json:"used,omitzero"`
	Stance Stance                           `json:"stance"`
	Source working.Source                   `json:"source"`
}

// StrengthAdvice is the answer of [FlourStrength.Judge].
type StrengthAdvice struct {
	Hydration quantity.Percent  `json:"hydration"`
	Opinions  []StrengthOpinion `json:"opinions"`
	// For and Against count the opinions that are not silent.
	For     int `json:"for"`
	Against int `json:"against"`
	// Warn is set when more opinions speak against the hydration than for it.
	Warn bool `json:"warn"`
	// Disagreement says where the lists differ; none when they agree.
	Disagreement working.Message `json:"disagreement,omitzero"`
	// Advice is what to do about it.
	Advice []working.Message `json:"advice,omitempty"`
}

// strengthClass is a class of a list. Its rung is on the ladder of hydrations.
type strengthClass struct {
	below float64
	name  working.Message
	rung  int
}

// ladder gives the hydrations of four classes, weak to very strong. It is the only published list with
// hydrations that was found; the classes of the other lists are read on it, which is a judgment.
func ladder(rung int) quantity.Range[quantity.Percent] {
	steps := [...][2]string{{"50 %", "50 %"}, {"50 %", "60 %"}, {"60 %", "70 %"}, {"70 %", "90 %"}}
	return quantity.Range[quantity.Percent]{Low: quantity.MustPercent(steps[rung][0]),
		High: quantity.MustPercent(steps[rung][1])}
}

// Judge answers which published strength figures speak for or against a hydration, list by
// list, with their disagreement shown.
//
// A list puts the flour in a class by W or by protein; the class is used up to a hydration; a wish
// above that is spoken against. Only one list names hydrations; the others' classes are read on its
// ladder. None of it is a standard: the lists put the same W in classes a step apart, and bakers
// with long fermentation and gentle handling go well above. Whole-grain flour takes 5 to 10 points
// more than any of them says. Hydration 30 to 150 %, protein 5 to 25 %, W 20 to 600, P/L 0.1 to 5,
// falling number 60 to 600 s, absorption 40 to 90 %. Errors: ErrRequired (no hydration, or no
// figure at all), ErrOutOfRange. Source: The Sourdough Framework; two trade lists; a miller on P/L;
// a trade reading of the falling number.
func (in FlourStrength) Judge() (StrengthAdvice, error) {
	if err := in.check(); err != nil {
		return StrengthAdvice{}, err
	}
	r := StrengthAdvice{Hydration: in.Hydration}
	weak, medium := working.Tell("flour.class_weak", "weak"), working.Tell("flour.class_medium", "medium")
	strong, veryStrong := working.Tell("flour.class_strong", "strong"), working.Tell("flour.class_very_strong",
		"very strong")
	top := math.Inf(1) // the strongest class of a list has no end
	if in.W != 0 {
		given := working.Tell("flour.given_w", "W %v", in.W)
		r.class(FigureW, given, in.W, sources.SourdoughFrameworkStrength,
			[]strengthClass{{150, weak, 0}, {250, medium, 1}, {350, strong, 2}, {top, veryStrong, 3}})
		r.class(FigureW, given, in.W, sources.StrengthList2017, []strengthClass{
			{120, working.Tell("flour.class_very_weak", "very weak"), 0}, {180, weak, 0}, {240, medium, 1},
			{280, working.Tell("flour.class_bread", "for bread"), 2}, {340, strong, 2}, {top, veryStrong, 3},
		})
		r.class(FigureW, given, in.W, sources.StrengthListItalian,
			[]strengthClass{{220, weak, 0}, {350, medium, 1}, {420, strong, 2}, {top, veryStrong, 3}})
	}
	if !in.Protein.IsZero() {
		// The list says 8-10 weak, 11-13 medium, 14-15 strong; what lies between is put to the
		// nearer class.
		r.class(FigureProtein, working.Tell("flour.given_protein", "protein %.1f", in.Protein), in.Protein.Points(),
			sources.StrengthList2017,
			[]strengthClass{{10.5, weak, 0}, {13.5, medium, 1}, {top, strong, 2}})
	}
	r.others(in)
	r.sum()
	return r, nil
}

func (in FlourStrength) check() error {
	var p quantity.Problems
	if in.Hydration.IsZero() {
		p.Required("Hydration", quantity.Tell("flour.want_30_percent_to_150_percent", "30 %% to 150 %%"))
	} else {
		quantity.Check(&p, "Hydration", in.Hydration, quantity.MustPercent("30 %"), quantity.MustPercent("150 %"))
	}
	if in.Protein.IsZero() && in.W == 0 && in.PL == 0 && in.FallingNumber == 0 && in.Absorption.IsZero() {
		p.Required("Protein", quantity.Tell("flour.want_at_least_one_protein_w",
			"at least one of protein, W, P/L, falling number or absorption"))
	}
	if !in.Protein.IsZero() {
		quantity.Check(&p, "Protein", in.Protein, quantity.MustPercent("5 %"), quantity.MustPercent("25 %"))
	}
	if in.W != 0 {
		p.Float("W", in.W, 20, 600, "")
	}
	if in.PL != 0 {
		p.Float("PL", in.PL, 0.1, 5, "")
	}
	if in.FallingNumber != 0 {
		p.Float("FallingNumber", in.FallingNumber, 60, 600, "s")
	}
	if !in.Absorption.IsZero() {
		quantity.Check(&p, "Absorption", in.Absorption, quantity.MustPercent("40 %"), quantity.MustPercent("90 %"))
	}
	return p.ErrFor(in)
}

func (r *StrengthAdvice) class(f StrengthFigure, given working.Message, x float64, source working.Source,
	classes []strengthClass) {
	for _, c := range classes {
		if x < c.below {
			r.add(StrengthOpinion{Figure: f, Given: given, Class: c.name, Used: ladder(c.rung), Stance: SpeaksFor,
				Source: source})
			return
		}
	}
}

// add puts an opinion on the list; one with hydrations speaks against a wish above them.
func (r *StrengthAdvice) add(o StrengthOpinion) {
	o.Meaning = o.Figure.meaning()
	if !o.Used.High.IsZero() && r.Hydration.Compare(o.Used.High) > 0 {
		o.Stance = SpeaksAgainst
	}
	r.Opinions = append(r.Opinions, o)
}

func (r *StrengthAdvice) others(in FlourStrength) {
	if in.PL != 0 {
		o := StrengthOpinion{Figure: FigurePL, Given: working.Tell("flour.given_pl", "P/L %v", in.PL),
			Source: sources.MillerBalance}
		switch {
		case in.PL < 0.5:
			o.Class = working.Tell("flour.class_extensible", "extensible: spreads")
		case in.PL > 0.9:
			o.Class = working.Tell("flour.class_tenacious", "tenacious: takes more water and resists shaping")
		default:
			o.Class = working.Tell("flour.class_balanced", "balanced or near it")
		}
		r.add(o)
	}
	if in.FallingNumber != 0 {
		o := StrengthOpinion{
			Figure: FigureFallingNumber, Given: working.Tell("flour.given_falling", "falling number %v s", in.FallingNumber),
			Class: working.Tell("flour.class_sound", "sound"), Source: sources.FallingNumbers,
		}
		if in.FallingNumber < 160 {
			o.Class, o.Stance = working.Tell("flour.class_enzyme", "much enzyme: a sticky dough"), SpeaksAgainst
		}
		r.add(o)
	}
	if !in.Absorption.IsZero() {
		// A hearth dough is softer than the farinograph's; ten points above it is a wet dough for
		// the flour. Judgment.
		r.add(StrengthOpinion{
			Figure: FigureAbsorption, Given: working.Tell("flour.given_absorption", "absorption %.1f", in.Absorption),
			Class: working.Tell("flour.class_absorption", "water for a dough of standard stiffness"),
			Used: quantity.Range[quantity.Percent]{
				Low:  in.Absorption,
				High: in.Absorption.Add(quantity.MustPercent("10 %")),
			},
			Stance: SpeaksFor, Source: sources.ICC115,
		})
	}
}

func (r *StrengthAdvice) sum() {
	low, high := quantity.Percent{}, quantity.Percent{}
	for _, o := range r.Opinions {
		switch o.Stance {
		case SpeaksFor:
			r.For++
		case SpeaksAgainst:
			r.Against++
		case Silent:
		}
		top := o.Used.High
		if top.IsZero() {
			continue
		}
		if low.IsZero() || top.Compare(low) < 0 {
			low = top
		}
		if top.Compare(high) > 0 {
			high = top
		}
	}
	r.Warn = r.Against > r.For
	if low != high {
		r.Disagreement = working.Tell("flour.disagreement",
			"by one figure this flour is used up to %v, by another up to %v", low, high)
	}
	if r.Against > 0 {
		r.Advice = []working.Message{
			working.Tell("flour.hold_back",
				"hold back 5 to 10 points of the water and add it when the dough has formed"),
			working.Tell("flour.blend_stronger", "or blend with a stronger flour, or add a little dry gluten"),
			working.Tell("flour.weak_hearth",
				"a hearth loaf of weak flour flattens: bake it in a tin, or fold more and ferment shorter"),
		}
	}
}
