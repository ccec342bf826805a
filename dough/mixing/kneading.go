package mixing

import (
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

// KneadingStep is a part of kneading.
type KneadingStep int

// The parts of kneading.
const (
	_ KneadingStep = iota
	// MixTogether wets the flour: slow, little work.
	MixTogether
	// Knead forms the dough: clearly more work.
	Knead
	// KneadFatIn works butter and sugar into a dough that has its gluten.
	KneadFatIn
)

// WindowpaneGoal is how thin a piece of the finished dough should stretch.
type WindowpaneGoal int

// How thin.
const (
	_ WindowpaneGoal = iota
	// NoWindowpane: this dough has none.
	NoWindowpane
	// HoldsButTears: it holds together and tears before it is thin.
	HoldsButTears
	// Transparent: a film through which print can be read.
	Transparent
)

// KneadingStage is one part of kneading with its speed and its usual time.
type KneadingStage struct {
	Step  KneadingStep `json:"step"`
	Mixer MixerKind    `json:"mixer"`
	// Speed is a number of Scale: 2 of 10 on a household machine, 1 (slow) or 2 (fast) of 2 on a kneading machine of
	// the trade; both are zero by hand and with a blade.
	Speed int `json:"speed,omitzero"`
	Scale int `json:"scale,omitzero"`
	// From and To are the usual times. They are spans to look within, no promise: the signs decide.
	From   quantity.Elapsed `json:"from"`
	To     quantity.Elapsed `json:"to"`
	Source working.Source   `json:"source,omitzero"`
}

// Kneading is the answer of [Mix.Kneading].
type Kneading struct {
	answer

	Stages []KneadingStage `json:"stages,omitempty"`
	// From and To are the times of all stages together.
	From quantity.Elapsed `json:"from"`
	To   quantity.Elapsed `json:"to"`
	// Windowpane is how thin the finished dough stretches, and Ready what else to look for.
	Windowpane WindowpaneGoal    `json:"windowpane"`
	Ready      []working.Message `json:"ready,omitempty"`
	// Under and Over are the signs of too little and of too much.
	Under []working.Message `json:"under,omitempty"`
	Over  []working.Message `json:"over,omitempty"`
	// FinishByHand is the dough temperature at which to stop the machine.
	FinishByHand quantity.Temperature `json:"finish_by_hand,omitzero"`
	// Notes say what changes the times.
	Notes []working.Message `json:"notes,omitempty"`

	in Mix
}

// Kneading answers how a dough is kneaded with a mixer: in which parts, at which speeds, about how long, and what to
// look for at the end.
//
// A dough develops only when the mixing is intense enough and the work is enough, and how much that is depends on
// flour and machine; so a time is a span to look within, and the signs decide. Wheat is mixed short and kneaded long,
// spelt the other way round, rye is mixed and not kneaded; a dough with much fat or sugar gets its gluten first.
// Household machines knead yeast dough at low speeds. Flour 1 g to 10 t, water 20 to 150 % of it. Accuracy: about a
// third; the source of each stage says how firmly it is known. Errors: ErrRequired, ErrOutOfRange, ErrInconsistent.
// Source: Kilborn and Tipples (1972); IREKS; King Arthur; Stiftung Warentest, Warenkunde Brot; makers' booklets; from
// memory where marked.
func (in Mix) Kneading() (Kneading, error) {
	var p quantity.Problems
	in.check(&p)
	if err := p.ErrFor(in); err != nil {
		return Kneading{}, err
	}
	k := Kneading{Stages: in.stages(), in: in}
	for _, s := range k.Stages {
		k.From += s.From
		k.To += s.To
	}
	k.signs()
	k.note()
	return k, nil
}

// wetDough is the hydration above which a wheat dough takes longer and need not clear the bowl. From memory.
const wetDough = 72.0

// stiffDough is the hydration up to which makers of household mixers allow five minutes in all, bagels and the like.
const stiffDough = 55.0

func (k *Kneading) note() {
	in := k.in
	note := func(m working.Message) { k.Notes = append(k.Notes, m) }
	ar := in.hydration().Points()
	if in.Mixer == Hand && in.Kind != RyeDough && in.Kind != MixedRyeDough && in.Kind != GlutenFreeDough {
		note(working.Tell(
			"mixing.note_folds_instead",
			"gentle kneading takes about twice as long; three or four sets of folds half an hour apart take its place"))
	}
	if ar > wetDough && in.Kind != RyeDough && in.Kind != GlutenFreeDough {
		note(working.Tell(
			"mixing.note_wet_dough", "at %.0f water the dough takes longer and bears less intensity; folds give the "+
				"rest of the strength", in.hydration()))
	}
	if in.Kind == PizzaDough && ar <= 45 && in.Mixer != Hand {
		note(working.Tell("mixing.note_thin_pizza", "thin pizza dough: at most 5 minutes, low speed only"))
	}
	if in.stiffForSecond() && !in.household() {
		note(working.Tell("mixing.note_no_second_speed", "no second speed at water of 50 %% of the flour or less"))
	}
	if in.household() {
		note(working.Tell(
			"mixing.note_household_speeds",
			"speeds are of a scale of ten: take the same share of your machine's scale, and never more than its "+
				"booklet allows for yeast dough"))
	}
	if in.household() && ar <= stiffDough && (in.Kind == WheatDough || in.Kind == PizzaDough) {
		note(working.Tell("mixing.note_stiff_household",
			"a household mixer bears so stiff a dough for some minutes only: finish it by hand until it is smooth"))
	}
	if in.rich() && in.Kind != RyeDough && in.Kind != GlutenFreeDough {
		note(working.Tell("mixing.note_fat_after",
			"knead until the gluten has formed, then add fat and the rest of the sugar in pieces"))
	}
	note(working.Tell("mixing.note_inclusions_last", "nuts, seeds and raisins come in slowly, at the very end"))
}

// stiffForSecond reports an absorption ratio at which machines of the trade use no second speed. Source: operators'
// manuals of planetary mixers.
func (in Mix) stiffForSecond() bool {
	machine := in.Mixer == Planetary || in.Mixer == Spiral || in.Mixer == Fork
	return machine && in.Kind != EnrichedDough && in.hydration().Points() <= secondSpeedAbove
}

// String says the stages in one line.
func (k Kneading) String() string { return k.Message().String() }

// Message says the stages in one line.
func (k Kneading) Message() working.Message {
	var parts []working.Message
	for _, s := range k.Stages {
		parts = append(parts, s.Message())
	}
	return working.Join(parts, "; ")
}

// Message says the stage: "knead at speed 2 of 10, 6m to 8m".
func (s KneadingStage) Message() working.Message {
	span := working.Tell("mixing.span", "%v to %v", s.From, s.To)
	if s.From == s.To {
		span = working.Tell("mixing.span_exact", "%v", s.From)
	}
	return working.Tell("mixing.stage", "%v %v, %v", s.what(), s.how(), span)
}

// String says the stage.
func (s KneadingStage) String() string { return s.Message().String() }

func (s KneadingStage) what() working.Message {
	switch s.Step {
	case MixTogether:
		return working.Tell("mixing.stage_mix", "mix")
	case Knead:
		return working.Tell("mixing.stage_knead", "knead")
	case KneadFatIn:
		return working.Tell("mixing.stage_fat", "work the fat in")
	}
	return working.Tell("mixing.stage_none", "no stage")
}

func (s KneadingStage) how() working.Message {
	switch {
	case s.Mixer == Hand:
		return working.Tell("mixing.by_hand", "by hand")
	case s.Mixer == Processor:
		return working.Tell("mixing.by_blade", "with the blade")
	case s.Scale == 2 && s.Speed == 1:
		return working.Tell("mixing.slow", "slow (first speed)")
	case s.Scale == 2:
		return working.Tell("mixing.fast", "fast (second speed)")
	}
	return working.Tell("mixing.speed_of", "at speed %d of %d", s.Speed, s.Scale)
}

// Working lists the stages with their sources, and their sum.
func (k Kneading) Working() working.Working {
	d := working.Derive(working.Tell("mixing.derive_kneading", "How long to knead"))
	if len(k.Stages) == 0 {
		return d.Working()
	}
	var from, to working.Expr
	for i, s := range k.Stages {
		low := d.Find(working.Finding{
			Name: working.Tell("mixing.stage_from", "%v %v, from", s.what(), s.how()), Symbol: symbolNumber("t_from",
				i), Is: s.From,
			Look: working.Tell("mixing.look_kneading", "a usual time, see the source"), Source: s.Source,
		})
		high := d.Find(working.Finding{
			Name: working.Tell("mixing.stage_to", "%v %v, to", s.what(), s.how()), Symbol: symbolNumber("t_to", i),
			Is:   s.To,
			Look: working.Tell("mixing.look_kneading", "a usual time, see the source"), Source: s.Source,
		})
		if i == 0 {
			from, to = low, high
			continue
		}
		from, to = from.Plus(low), to.Plus(high)
	}
	if len(k.Stages) > 1 {
		d.Find(working.Finding{
			Name: working.Tell("mixing.kneading_from", "in all, from"), Symbol: "t_from", By: from, Is: k.From,
			Source: working.Algebra()})
		d.Find(working.Finding{
			Name: working.Tell("mixing.kneading_to", "in all, to"), Symbol: "t_to", By: to, Is: k.To,
			Source: working.Algebra()})
	}
	return d.Working()
}

// signs are what to look for, by dough.
func (k *Kneading) signs() {
	in := k.in
	ready := func(m working.Message) { k.Ready = append(k.Ready, m) }
	k.Under = []working.Message{working.Tell(
		"mixing.sign_under", "too little: rough, short, tears at once; the loaf is compact with large irregular holes")}
	k.Over = []working.Message{working.Tell(
		"mixing.sign_over",
		"too much: shiny and very slack, then sticky again, pulls strings instead of a sheet, does not spring back; "+
			"it is not mended by more mixing, "+
			"but by a cold rest of 20 to 30 minutes, folds and a tin")}
	// a home baker's text; 30 °C is where wheat is stopped in any case, from memory
	k.FinishByHand = quantity.Celsius(28)
	switch in.Kind {
	case RyeDough:
		k.Windowpane = NoWindowpane
		ready(working.Tell("mixing.ready_rye", "even, without dry specks: a paste that spreads with a wet hand"))
		k.Under = []working.Message{working.Tell("mixing.sign_under_rye", "too little: dry specks")}
		k.Over = []working.Message{working.Tell("mixing.sign_over_rye",
			"too much: smeary; rye only swells, it is not kneaded")}
		k.FinishByHand = quantity.Temperature{}
	case GlutenFreeDough:
		k.Windowpane = NoWindowpane
		ready(working.Tell("mixing.ready_gluten_free", "even and without lumps, a thick batter or a soft paste; with "+
			"psyllium or gum it stiffens in the 10 to 15 minutes after"))
		k.Under = []working.Message{working.Tell("mixing.sign_under_gluten_free", "too little: lumps and dry flour")}
		k.Over = []working.Message{working.Tell("mixing.sign_over_gluten_free",
			"too much: nothing tears, since there is no gluten, but long beating warms it")}
		k.FinishByHand = quantity.Temperature{}
	case MixedRyeDough:
		k.Windowpane = HoldsButTears
		ready(working.Tell("mixing.ready_mixed_rye",
			"even and slightly sticky; it holds together and tears before it is thin"))
	case WholeGrainDough:
		k.Windowpane = HoldsButTears
		ready(working.Tell("mixing.ready_whole_grain", "a film with holes where the bran is: it holds and then tears"))
	case SpeltDough:
		k.Windowpane = HoldsButTears
		ready(working.Tell("mixing.ready_spelt", "just smooth: spelt goes from ready to slack within a minute or "+
			"two, so stop early"))
	case EnrichedDough:
		k.Windowpane = Transparent
		ready(working.Tell("mixing.ready_enriched_before", "before the fat: the film holds and tears"))
		ready(working.Tell("mixing.ready_enriched",
			"at the end: shiny, lets go of the bowl, stretches to a film through which print can be read"))
	default:
		k.Windowpane = HoldsButTears
		if in.Mixer == Spiral || in.Mixer == Fork || in.Mixer == Processor || in.Mixer == Planetary {
			k.Windowpane = Transparent
		}
		if in.hydration().Points() > wetDough {
			k.Windowpane = HoldsButTears
			ready(working.Tell("mixing.ready_wet", "smooth and elastic; so wet a dough need not let go of the bowl"))
			break
		}
		switch in.Mixer {
		case Hand:
			ready(working.Tell("mixing.ready_wheat_hand",
				"smooth and elastic; it lets go of hands and table, and a dent springs back"))
		case Processor:
			ready(working.Tell("mixing.ready_wheat_blade", "a smooth ball that rides round on the blade"))
		default:
			ready(working.Tell("mixing.ready_wheat",
				"it lets go of the bowl and winds round the hook; smooth and elastic"))
		}
	}
	if k.Windowpane == Transparent {
		ready(working.Tell(
			"mixing.ready_windowpane",
			"a small piece stretches to a film, the windowpane; for an open crumb stop before it is thin"))
	}
}
