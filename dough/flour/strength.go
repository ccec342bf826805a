package flour

import (
	"fmt"
	"strings"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// FlourStrength is what is known of a flour's strength, and the hydration it is to carry. Leave what is
// not known at zero.
type FlourStrength struct {
	Hydration quantity.Percent
	// Protein is in percent at 14 % moisture or as on the bag, where the difference is small.
	Protein quantity.Percent
	// W is the alveograph's deformation work in 10⁻⁴ J, and PL its balance P/L.
	W, PL float64
	// FallingNumber is in seconds.
	FallingNumber float64
	// Absorption is the farinograph's water absorption at 14 % moisture.
	Absorption quantity.Percent
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

var stanceNames = []string{"silent", "for", "against"}

// String names the stance: "against".
func (s Stance) String() string { return nameOf(stanceNames, int(s)) }

// AppendText implements encoding.TextAppender; a value without a name is an error.
func (s Stance) AppendText(b []byte) ([]byte, error) { return appendName(b, stanceNames, int(s)) }

// MarshalText implements encoding.TextMarshaler: "against".
func (s Stance) MarshalText() ([]byte, error) { return s.AppendText(nil) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads what String prints.
func (s *Stance) UnmarshalText(text []byte) error {
	i, err := readName(text, stanceNames)
	if err == nil {
		*s = Stance(i)
	}
	return err
}

// StrengthOpinion is what one published list says about a flour.
type StrengthOpinion struct {
	Figure string // "W 240"
	// Meaning says what was measured: "work to blow up a bubble of dough in the alveograph, in 10⁻⁴ J".
	Meaning string
	Class   string // "medium"
	// Low and High are the hydrations the class is used at; zero when the list names none.
	Low, High quantity.Percent
	Stance    Stance
	Source    working.Source
}

// String prints "W 240 (Sourdough Framework): medium, 50 % to 60 %, against".
func (o StrengthOpinion) String() string {
	text := o.Figure
	if o.Source.Key != "" {
		text += " (" + o.Source.Key + ")"
	}
	text += ": " + o.Class
	if !o.High.IsZero() {
		text += ", " + o.Low.String() + " to " + o.High.String()
	}
	return text + ", " + o.Stance.String()
}

// StrengthAdvice is the answer of [JudgeFlour].
type StrengthAdvice struct {
	Opinions []StrengthOpinion
	// For and Against count the opinions that are not silent.
	For, Against int
	// Warn is set when more opinions speak against the hydration than for it.
	Warn bool
	// Disagreement says in words where the lists differ; empty when they agree.
	Disagreement string
	// Advice is what to do about it.
	Advice []string

	in FlourStrength
}

type strengthClass struct {
	below float64
	name  string
	rung  int // on the ladder of hydrations
}

// ladder gives the hydrations of four classes, weak to very strong. It is the only published list with
// hydrations that was found; the classes of the other lists are read on it, which is a judgment.
func ladder(rung int) (low, high quantity.Percent) {
	steps := [...][2]string{{"50 %", "50 %"}, {"50 %", "60 %"}, {"60 %", "70 %"}, {"70 %", "90 %"}}
	if rung < 0 || rung >= len(steps) {
		return quantity.Percent{}, quantity.Percent{}
	}
	return quantity.MustPercent(steps[rung][0]), quantity.MustPercent(steps[rung][1])
}

// JudgeFlour answers which published strength figures speak for or against a hydration, list by
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
func JudgeFlour(in FlourStrength) (StrengthAdvice, error) {
	var p quantity.Problems
	if in.Hydration.IsZero() {
		p.Required("Hydration", "30 % to 150 %")
	} else {
		quantity.Check(&p, "Hydration", in.Hydration, quantity.MustPercent("30 %"), quantity.MustPercent("150 %"))
	}
	if in.Protein.IsZero() && in.W == 0 && in.PL == 0 && in.FallingNumber == 0 && in.Absorption.IsZero() {
		p.Required("Protein", "at least one of protein, W, P/L, falling number or absorption")
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
	if err := p.Err(); err != nil {
		return StrengthAdvice{}, err
	}
	r := StrengthAdvice{in: in}
	if in.W != 0 {
		figure := fmt.Sprintf("W %g", in.W)
		r.class(figure, in.W, sources.SourdoughFrameworkStrength, []strengthClass{{150, "weak", 0}, {250, "medium", 1}, {350, "strong", 2}, {1e9, "very strong", 3}})
		r.class(figure, in.W, sources.StrengthList2017, []strengthClass{
			{120, "very weak", 0}, {180, "weak", 0}, {240, "medium", 1}, {280, "for bread", 2}, {340, "strong", 2}, {1e9, "very strong", 3},
		})
		r.class(
			figure,
			in.W,
			sources.StrengthListItalian,
			[]strengthClass{{220, "weak", 0}, {350, "medium", 1}, {420, "strong", 2}, {1e9, "very strong", 3}},
		)
	}
	if !in.Protein.IsZero() {
		// The list says 8-10 weak, 11-13 medium, 14-15 strong; what lies between is put to the
		// nearer class.
		r.class(
			"protein "+in.Protein.Text(1),
			in.Protein.Points(),
			sources.StrengthList2017,
			[]strengthClass{{10.5, "weak", 0}, {13.5, "medium", 1}, {1e9, "strong", 2}},
		)
	}
	r.others()
	r.sum()
	return r, nil
}

// meaningOf explains a figure to a baker who has it from a bag of flour.
func meaningOf(figure string) string {
	name, _, _ := strings.Cut(figure, " ")
	switch name {
	case "W":
		return "work to blow up a bubble of dough in the alveograph, in 10⁻⁴ J: how strong the dough is"
	case "P/L":
		return "height over length of the alveograph's curve: how much the dough resists against how far it stretches"
	case "falling":
		return "seconds a plunger takes through a hot paste of the flour: few mean much enzyme, that thins the paste"
	case "absorption":
		return "water that brings 100 g of flour of 14 % moisture to a standard stiffness in the farinograph"
	}
	return "protein of the flour as it is in the bag"
}

func (r *StrengthAdvice) class(figure string, x float64, source working.Source, classes []strengthClass) {
	for _, c := range classes {
		if x < c.below {
			o := StrengthOpinion{Figure: figure, Meaning: meaningOf(figure), Class: c.name, Source: source, Stance: SpeaksFor}
			o.Low, o.High = ladder(c.rung)
			if r.in.Hydration.Compare(o.High) > 0 {
				o.Stance = SpeaksAgainst
			}
			r.Opinions = append(r.Opinions, o)
			return
		}
	}
}

func (r *StrengthAdvice) others() {
	in := r.in
	add := func(figure, class string, stance Stance, s working.Source) {
		r.Opinions = append(r.Opinions, StrengthOpinion{Figure: figure, Meaning: meaningOf(figure), Class: class, Stance: stance, Source: s})
	}
	if in.PL != 0 {
		figure := fmt.Sprintf("P/L %g", in.PL)
		switch {
		case in.PL < 0.5:
			add(figure, "extensible: spreads", Silent, sources.MillerBalance)
		case in.PL > 0.9:
			add(figure, "tenacious: takes more water and resists shaping", Silent, sources.MillerBalance)
		default:
			add(figure, "balanced or near it", Silent, sources.MillerBalance)
		}
	}
	if in.FallingNumber != 0 {
		figure := fmt.Sprintf("falling number %g s", in.FallingNumber)
		if in.FallingNumber < 160 {
			add(figure, "much enzyme: a sticky dough", SpeaksAgainst, sources.FallingNumbers)
		} else {
			add(figure, "sound", Silent, sources.FallingNumbers)
		}
	}
	if !in.Absorption.IsZero() {
		o := StrengthOpinion{
			Figure:  "absorption " + in.Absorption.Text(1),
			Meaning: meaningOf("absorption"),
			Class:   "water for a dough of standard stiffness",
			Stance:  SpeaksFor,
			Source:  sources.ICC115,
		}
		// A hearth dough is softer than the farinograph's; ten points above it is a wet dough for
		// the flour. Judgment.
		o.Low, o.High = in.Absorption, in.Absorption.Add(quantity.MustPercent("10 %"))
		if in.Hydration.Compare(o.High) > 0 {
			o.Stance = SpeaksAgainst
		}
		r.Opinions = append(r.Opinions, o)
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
		if o.High.IsZero() {
			continue
		}
		if low.IsZero() || o.High.Compare(low) < 0 {
			low = o.High
		}
		if o.High.Compare(high) > 0 {
			high = o.High
		}
	}
	r.Warn = r.Against > r.For
	if low != high {
		r.Disagreement = "by one figure this flour is used up to " + low.String() + ", by another up to " + high.String()
	}
	if r.Against > 0 {
		r.Advice = append(r.Advice,
			"hold back 5 to 10 points of the water and add it when the dough has formed",
			"or blend with a stronger flour, or add a little dry gluten",
			"a hearth loaf of weak flour flattens: bake it in a tin, or fold more and ferment shorter")
	}
}

// String says how the figures stand.
func (r StrengthAdvice) String() string {
	if len(r.Opinions) == 0 {
		return "no opinion"
	}
	text := fmt.Sprintf("%d for and %d against a hydration of %v", r.For, r.Against, r.in.Hydration)
	if r.Disagreement != "" {
		text += "; " + r.Disagreement
	}
	return text
}

// Working lists the opinions with their sources.
func (r StrengthAdvice) Working() working.Working {
	w := working.Working{Title: "Is the flour strong enough"}
	for _, o := range r.Opinions {
		value, note := o.Class, "read on the one list that names hydrations"
		if !o.High.IsZero() {
			value += ", up to " + o.High.String()
		}
		if o.Source == sources.SourdoughFrameworkStrength || o.High.IsZero() {
			note = "as the list says"
		}
		w.Steps = append(w.Steps, working.Step{Name: "class by " + o.Figure, Symbol: "class", Value: value, Note: note, Source: o.Source})
	}
	return w
}
