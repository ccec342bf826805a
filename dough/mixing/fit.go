package mixing

import (
	"strconv"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// Mix is a dough in a mixer.
type Mix struct {
	Mixer MixerKind       `json:"mixer"`
	Bowl  quantity.Volume `json:"bowl,omitzero"` // needed for planetary and spiral mixers unless Rated is given
	Dough quantity.Mass   `json:"dough"`         // all the dough, inclusions and all
	// Flour and Water are those of the whole dough, the levain's included; milk, eggs and
	// fat do not count as water.
	Flour quantity.Mass `json:"flour"`
	Water quantity.Mass `json:"water"`
	Kind  DoughKind     `json:"kind"`
	// HighGluten is a flour of about 13.5 % protein or more.
	HighGluten bool `json:"high_gluten,omitzero"`
	// WaterTemperature, when given, is the water as poured: below 20 °C, and with ice, the
	// dough is stiffer and the mixer takes less.
	WaterTemperature quantity.Temperature `json:"water_temperature,omitzero"`
	// Rated is what the machine's own manual gives for this dough; it replaces the published
	// charts.
	Rated quantity.Mass `json:"rated,omitzero"`
}

// Fullness says whether a dough fits a mixer.
type Fullness int

// How full a bowl is.
const (
	// Unknown: nothing is published for this kind; the manual decides.
	Unknown Fullness = iota
	// Comfortable: every published chart near this bowl size allows it.
	Comfortable
	// Tight: some charts allow it and some do not; the machine's manual decides.
	Tight
	// TooMuch: no chart near this bowl size allows it.
	TooMuch
	// TooLittle: the hook will not catch it well.
	TooLittle
)

// KneadingTime is a published range of mixing times at one speed.
type KneadingTime struct {
	Speed  string           `json:"speed"` // "slow", "fast"
	From   quantity.Elapsed `json:"from"`
	To     quantity.Elapsed `json:"to"`
	Source working.Source   `json:"source,omitzero"`
}

// String prints "slow 2m to 4m".
func (k KneadingTime) String() string {
	return k.Speed + " " + k.From.String() + " to " + k.To.String()
}

// BowlFit is the answer of [Mix.Fit].
type BowlFit struct {
	Fullness Fullness `json:"fullness"`
	// Absorption is water over flour, the mixer manuals' absorption ratio.
	Absorption quantity.Percent `json:"absorption"`
	// Most is the largest dough: MostLow by the strictest chart near this bowl size, MostHigh by
	// the most generous. Both are zero when Fullness is Unknown.
	MostLow  quantity.Mass `json:"most_low"`
	MostHigh quantity.Mass `json:"most_high"`
	// Least is the smallest dough a hook works well; a judgment.
	Least quantity.Mass `json:"least"`
	// Batches is how many equal batches make each one comfortable, and Each the weight of one.
	Batches int           `json:"batches"`
	Each    quantity.Mass `json:"each"`
	// SecondSpeed reports whether second speed is allowed at this absorption ratio.
	SecondSpeed bool `json:"second_speed"`
	// Times are published kneading times for this dough, and Ready the test that decides.
	Times []KneadingTime `json:"times,omitempty"`
	Ready string         `json:"ready,omitempty"`
	// Notes say what lowered the capacity and what the charts do not cover.
	Notes    []working.Message `json:"notes,omitempty"`
	Cautions []working.Caution `json:"cautions,omitempty"`

	in     Mix
	charts [2]bowl
	factor [2]float64 // reductions on low and high
	raw    [2]quantity.Mass
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

// Fit answers whether a dough fits a mixer, how to split it when it does not, which speeds are
// allowed and how long kneading usually takes.
//
//	AR = 100·water ÷ flour;  most = bowl volume · kg per liter(AR) · reductions
//
// kg per liter comes from the capacity charts of four planetary mixers (8 qt, 10 L, 20 L, 60 L), of which
// the two nearest in size are used; they disagree by a quarter to a half, so the answer is a
// range, and Comfortable means under its low end. A tenth is taken off for high-gluten flour
// and 10 to 20 % for cold water. Bowl 0.5 to 400 L, AR 20 to 150 %. For a spiral mixer the
// planetary charts stand in as a cautious figure; for hand and processor nothing is published
// and, unless Rated is given, hand is limited by a rule of the trade and the processor is Unknown.
// The machine's own manual is always right: give Rated.
//
// Errors: ErrRequired, ErrOutOfRange; ErrInconsistent when flour and water exceed the dough.
// Source: operators' manuals of planetary mixers; kneading times IREKS and King Arthur.
func (in Mix) Fit() (BowlFit, error) {
	var p quantity.Problems
	mixerKinds.Check(&p, "Mixer", in.Mixer)
	rated := !in.Rated.IsZero()
	if in.Mixer != Hand && in.Mixer != Processor && !rated || !in.Bowl.IsZero() {
		if in.Bowl.IsZero() {
			p.Required("Bowl", "500 mL to 400 L, or the manual's capacity in Rated")
		} else {
			quantity.Check(&p, "Bowl", in.Bowl, quantity.Liters(0.5), quantity.Liters(400))
		}
	}
	quantity.Check(&p, "Dough", in.Dough, quantity.Grams(1), mostMass)
	flour := quantity.Check(&p, "Flour", in.Flour, quantity.Grams(1), mostMass)
	water := quantity.Check(&p, "Water", in.Water, quantity.Mass{}, mostMass)
	if flour && water {
		if ar := in.Water.PercentOf(in.Flour); ar.Compare(quantity.MustPercent("20 %")) < 0 || ar.Compare(quantity.MustPercent("150 %")) > 0 {
			p.Add("Water", ar.Text(1)+" of the flour", "20 % to 150 % of the flour", quantity.ErrOutOfRange)
		}
		if in.Dough.IsValid() && in.Flour.Add(in.Water).Compare(in.Dough) > 0 {
			p.Add("Dough", in.Dough.String(), "at least flour and water together, "+in.Flour.Add(in.Water).String(), quantity.ErrInconsistent)
		}
	}
	doughKinds.CheckIfGiven(&p, "Kind", in.Kind)
	if !in.WaterTemperature.IsZero() {
		quantity.Check(&p, "WaterTemperature", in.WaterTemperature, quantity.Celsius(-270), hottestThing)
	}
	quantity.Check(&p, "Rated", in.Rated, quantity.Mass{}, mostMass)
	if err := p.Err(); err != nil {
		return BowlFit{}, err
	}
	r := BowlFit{
		Absorption: in.Water.PercentOf(in.Flour), Times: kneadingTimes(in.Mixer, in.Kind), Cautions: in.Mixer.Cautions(),
		Ready: "a small piece stretches to a thin membrane (the windowpane); how thin depends on how far you mean to mix",
		in:    in, factor: [2]float64{1, 1},
	}
	if in.Kind == RyeDough {
		r.Ready = "evenly mixed; a rye dough has no windowpane"
	}
	r.SecondSpeed = r.Absorption.Points() > secondSpeedAbove && in.Mixer != Hand
	r.most()
	r.judge()
	return r, nil
}

// most finds the range of the largest dough and what lowers it.
func (r *BowlFit) most() {
	in := r.in
	ar := r.Absorption.Points()
	switch {
	case !in.Rated.IsZero():
		r.raw = [2]quantity.Mass{in.Rated, in.Rated}
	case in.Mixer == Hand:
		r.raw = [2]quantity.Mass{quantity.Kilograms(2), quantity.Kilograms(4)}
		r.Notes = append(r.Notes, working.Say("by hand, %v to %v at a time is what most people manage: common practice, no source", r.raw[0], r.raw[1]))
	case in.Mixer == Processor:
		r.Notes = append(r.Notes, working.Say("nothing is published for processors: use the capacity in its manual"))
		return
	default:
		r.raw[0], r.raw[1], r.charts[0], r.charts[1] = capacityOf(in.Bowl, in.Kind, ar)
		if in.Mixer == Spiral {
			r.Notes = append(r.Notes, working.Say("planetary charts stand in for a spiral mixer, which usually takes more: its manual decides"))
		}
		if l := in.Bowl.Liters(); l < 5 || l > 90 {
			r.Notes = append(r.Notes, working.Say("the charts are of bowls from %v to %v; this bowl lies outside", quantity.Liters(7.6), quantity.Liters(60)))
		}
		switch {
		case ar < 40:
			r.Notes = append(r.Notes, working.Say("below 40 % the charts say only that capacity falls further; it is lowered in proportion here"))
		case ar > 70:
			r.Notes = append(r.Notes, working.Say("the charts end at 70 %; a wetter dough is lighter work but splashes and rides up the hook"))
		}
	}
	if in.Mixer == Hand {
		r.MostLow, r.MostHigh = r.raw[0], r.raw[1]
		return
	}
	if in.HighGluten {
		r.factor[0] *= glutenReduction
		r.factor[1] *= glutenReduction
		r.Notes = append(r.Notes, working.Say("high-gluten flour: a tenth less"))
	}
	if in.WaterTemperature.IsValid() && in.WaterTemperature.Compare(quantity.Celsius(20)) < 0 {
		r.factor[0] *= coldReductionLow
		r.factor[1] *= coldReductionHigh
		r.Notes = append(r.Notes, working.Say("water below %v makes a stiffer dough: 10 to 20 %% less", quantity.Celsius(20)))
	}
	r.MostLow = quantity.Grams(r.raw[0].Grams() * r.factor[0])
	r.MostHigh = quantity.Grams(r.raw[1].Grams() * r.factor[1])
}

func (r *BowlFit) judge() {
	in := r.in
	if !r.SecondSpeed && in.Mixer != Hand {
		r.Notes = append(r.Notes, working.Say("no second speed at an absorption ratio of 50 % or less"))
	}
	if in.Kind == PizzaDough && r.Absorption.Points() <= 45 {
		r.Notes = append(r.Notes, working.Say("thin pizza dough: at most 5 minutes, low speed only"))
	}
	if r.MostHigh.IsZero() {
		r.Batches, r.Each = 1, in.Dough
		return
	}
	if in.Mixer != Hand {
		r.Least = quantity.Grams(r.MostLow.Grams() * leastShare)
	}
	d, _ := in.Dough.Micrograms()
	m, _ := r.MostLow.Micrograms()
	r.Batches = int((d + m - 1) / max(m, 1))
	r.Each = in.Dough.Divide(int64(r.Batches))
	switch {
	case in.Dough.Compare(r.Least) < 0:
		r.Fullness = TooLittle
	case in.Dough.Compare(r.MostLow) <= 0:
		r.Fullness = Comfortable
	case in.Dough.Compare(r.MostHigh) <= 0:
		r.Fullness = Tight
	default:
		r.Fullness = TooMuch
	}
}

// kneadingTimes are the published ranges for a dough and a mixer.
func kneadingTimes(kind MixerKind, dough DoughKind) []KneadingTime {
	minutes := func(speed string, from, to int, s working.Source) KneadingTime {
		return KneadingTime{speed, quantity.Elapsed(time.Duration(from) * time.Minute), quantity.Elapsed(time.Duration(to) * time.Minute), s}
	}
	switch kind {
	case Hand:
		return []KneadingTime{minutes("by hand", 8, 15, sources.Practice("kneading by hand takes 8 to 15 minutes; folds during the rise take its place"))}
	case Processor:
		return []KneadingTime{minutes("blade", 1, 2, sources.Practice("a processor makes a dough in 1 to 2 minutes"))}
	}
	switch dough {
	case RyeDough:
		return []KneadingTime{minutes("slow", 5, 5, sources.KingArthurMixing), minutes("fast", 2, 3, sources.KingArthurMixing)}
	case SpeltDough:
		return []KneadingTime{minutes("slow", 4, 4, sources.IREKSMixing), minutes("fast", 2, 3, sources.IREKSMixing)}
	}
	if kind == Spiral {
		return []KneadingTime{minutes("slow", 3, 3, sources.KingArthurMixing), minutes("fast", 3, 5, sources.KingArthurMixing)}
	}
	return []KneadingTime{minutes("slow", 2, 4, sources.IREKSMixing), minutes("fast", 6, 12, sources.IREKSMixing)}
}

// String says whether it fits and how to split it, in grams.
func (r BowlFit) String() string { return r.Message().String() }

// Message says whether it fits and how to split it, for the units of its reader.
func (r BowlFit) Message() working.Message {
	if r.Batches == 0 {
		return working.Say("no mixer")
	}
	dough := r.in.Dough
	most := working.Say("%.0f", r.MostLow)
	if r.MostHigh != r.MostLow {
		most = working.Say("%.0f to %.0f", r.MostLow, r.MostHigh)
	}
	split := working.Say("mix %d batches of %.0f", r.Batches, r.Each)
	switch r.Fullness {
	case Comfortable:
		return working.Say("%.0f of dough fits: the most is %v", dough, most)
	case Tight:
		return working.Say("%.0f of dough is tight: the most is %v; %v", dough, most, split)
	case TooMuch:
		return working.Say("%.0f of dough is too much: the most is %v; %v", dough, most, split)
	case TooLittle:
		return working.Say("%.0f of dough is too little for the hook, which needs about %.0f: mix it by hand or in a smaller bowl", dough, r.Least)
	}
	return working.Say("whether %.0f of dough fits is not published: the manual decides", dough)
}

// Working derives the absorption ratio, the capacity and the split.
func (r BowlFit) Working() working.Working {
	w := working.Working{Title: "Will it fit the mixer"}
	if r.Batches == 0 {
		return w
	}
	in := r.in
	w.Steps = append(w.Steps, working.Step{
		Name: "absorption ratio", Symbol: "AR", Formula: "100 × m_water ÷ m_flour",
		Where: []working.Binding{
			bind("m_water", "water of the whole dough", in.Water.String()),
			bind("m_flour", "flour of the whole dough", in.Flour.String()),
		},
		Numbers: "100 × " + bare(in.Water.String()) + " ÷ " + bare(in.Flour.String()), Value: r.Absorption.Text(6),
		Source: sources.PlanetaryManuals,
	})
	if r.MostHigh.IsZero() {
		return w
	}
	most := func(name, symbol string, i int, m quantity.Mass) working.Step {
		s := working.Step{
			Name: name, Symbol: symbol, Formula: "m × k",
			Where: []working.Binding{
				bind("m", "capacity before reductions", r.raw[i].Text(quantity.Gram, 3)),
				bind("k", "reductions for flour and cold", fixed(r.factor[i], 4)),
			},
			Numbers: bare(r.raw[i].Text(quantity.Gram, 3)) + " × " + fixed(r.factor[i], 4), Value: m.Text(quantity.Gram, 2), Tolerance: 0.001,
			Source: sources.PlanetaryManuals,
		}
		switch {
		case !in.Rated.IsZero():
			s.Source = working.Source{Key: "rated", Title: "capacity given by the user, from the manual of the machine"}
		case in.Mixer == Hand:
			s.Source = sources.Practice("2 to 4 kg at a time by hand")
		default:
			s.Note = "interpolated in the charts of bowls of " + fixed(r.charts[0].liters, 1) +
				" L and " + fixed(r.charts[1].liters, 1) + " L, per liter of bowl"
		}
		return s
	}
	w.Steps = append(w.Steps, most(
		"largest dough by the strictest chart",
		"m_low",
		0,
		r.MostLow,
	), most("largest dough by the most generous chart", "m_high", 1, r.MostHigh),
		working.Step{
			Name: "batches", Symbol: "n", Formula: "ceil(m_dough ÷ m_low)",
			Where: []working.Binding{bind("m_dough", "dough", in.Dough.String())},
			Numbers: "ceil(" + bare(in.Dough.String()) + " ÷ " + bare(r.MostLow.String()) +
				")", Value: strconv.Itoa(r.Batches), Source: working.Algebra(),
		})
	return w
}
