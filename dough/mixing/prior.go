package mixing

import (
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// Prior is what is known about a way of mixing before the first measured batch: trade figures
// that disagree with each other. Measure a batch and it is worth more than all of them.
type Prior struct {
	Kind MixerKind `json:"kind"`
	// Friction is the friction factor for three factors (flour, room, water), with the spread of
	// the published figures from Low to High.
	Friction Friction                  `json:"friction"`
	Low      quantity.TemperatureDelta `json:"low"`
	High     quantity.TemperatureDelta `json:"high"`
	// RisePerMinute is the warming of the dough itself in a minute at kneading speed, and
	// RiseSpread how much that may differ between mixers (one standard deviation). They are the
	// start of [Log.Learn].
	RisePerMinute quantity.TemperatureDelta `json:"rise_per_minute"`
	RiseSpread    quantity.TemperatureDelta `json:"rise_spread"`
	// Evidence says where the figures come from and how weak they are.
	Evidence working.Message  `json:"evidence,omitzero"`
	Figures  []FrictionFigure `json:"figures,omitempty"`
}

// FrictionFigure is one published figure about the warming of a dough.
type FrictionFigure struct {
	What     working.Message           `json:"what"`
	Friction quantity.TemperatureDelta `json:"friction"` // for three factors
	Source   working.Source            `json:"source,omitzero"`
}

// Prior answers what friction factor to start with when no batch has been measured yet.
//
// The friction is for three factors; see [Friction.For] for others. The figures are of the
// trade press and of teaching texts, none of them measured in public: for the same kind of
// mixer they lie as far apart as Low and High, which is 5 °C and more in the dough. Errors:
// ErrRequired, ErrOutOfRange. Source: each figure names its own.
func (k MixerKind) Prior() (Prior, error) {
	var p quantity.Problems
	if !mixerKinds.Check(&p, "kind", k) {
		return Prior{}, p.ErrFor(k)
	}
	f := quantity.DeltaFahrenheit
	// Warming per minute is between 0.3 and 0.5 °C in the only two leads there are; half of it
	// again is allowed for as spread. Hand kneading: 5 °F over three factors in about ten minutes.
	switch k {
	case Hand:
		return Prior{
			Kind: k, Friction: Friction{Factor: f(5), Factors: 3}, Low: f(0), High: f(12),
			RisePerMinute: quantity.DeltaCelsius(0.1), RiseSpread: quantity.DeltaCelsius(0.1),
			Evidence: working.Tell("mixing.evidence_hand",
				"two trade figures, %.1f and %.1f; hands warm a dough more in a cold room than in a warm one", f(5),
				f(12)),
			Figures: []FrictionFigure{
				{working.Tell("mixing.figure_hand", "hand kneading"), f(5), sources.CooksFriction},
				{working.Tell("mixing.figure_hand", "hand kneading"), f(12), sources.HamelmanSummary},
			},
		}, nil
	case Planetary:
		return Prior{
			Kind: k, Friction: Friction{Factor: f(22), Factors: 3}, Low: f(6), High: f(35),
			RisePerMinute: quantity.DeltaCelsius(0.4), RiseSpread: quantity.DeltaCelsius(0.2),
			Evidence: working.Tell(
				"mixing.evidence_planetary",
				"trade figures from %.1f to %.1f, none measured in public; %.1f to %.1f a minute",
				f(6), f(35), quantity.DeltaCelsius(0.3), quantity.DeltaCelsius(0.5)),
			Figures: []FrictionFigure{
				{working.Tell("mixing.figure_stand", "stand mixer"), f(20), sources.CooksFriction},
				{working.Tell("mixing.figure_stand_most", "some stand mixers, up to; also when nothing is known"),
					f(24), sources.HamelmanSummary},
				{working.Tell("mixing.figure_roller", "small stand mixer with roller and scraper"), f(6),
					sources.HamelmanSummary},
				{working.Tell("mixing.figure_improved_low", "planetary and spiral, improved mix, low end"), f(24),
					sources.HamelmanFriction},
				{working.Tell("mixing.figure_pizza", "commercial planetary, pizza dough"), f(35),
					sources.PizzaTodayWater},
			},
		}, nil
	case Spiral:
		return Prior{
			Kind: k, Friction: Friction{Factor: f(24), Factors: 3}, Low: f(10), High: f(35),
			RisePerMinute: quantity.DeltaCelsius(0.4), RiseSpread: quantity.DeltaCelsius(0.2),
			Evidence: working.Tell("mixing.evidence_spiral",
				"one remembered range, %.1f to %.1f, for planetary and spiral mixers together; nothing published for "+
					"spiral mixers alone", f(24), f(28)),
			Figures: []FrictionFigure{
				{working.Tell("mixing.figure_improved_low", "planetary and spiral, improved mix, low end"), f(24),
					sources.HamelmanFriction},
				{working.Tell("mixing.figure_improved_high", "planetary and spiral, improved mix, high end"), f(28),
					sources.HamelmanFriction},
			},
		}, nil
	case Fork:
		return Prior{
			Kind: k, Friction: Friction{Factor: f(16), Factors: 3}, Low: f(6), High: f(30),
			RisePerMinute: quantity.DeltaCelsius(0.2), RiseSpread: quantity.DeltaCelsius(0.15),
			Evidence: working.Tell("mixing.evidence_fork",
				"nothing published was found for fork mixers; from memory they warm a dough less in a minute than a "+
					"spiral"),
			Figures: []FrictionFigure{{working.Tell("mixing.figure_fork", "fork mixer, a quarter of an hour"), f(16),
				forkMemory()}},
		}, nil
	default: // Processor
		return Prior{
			Kind: k, Friction: Friction{Factor: f(25), Factors: 3}, Low: f(15), High: f(35),
			RisePerMinute: quantity.DeltaCelsius(4), RiseSpread: quantity.DeltaCelsius(2),
			Evidence: working.Tell("mixing.evidence_processor", "one trade figure, %.1f, for a mix of about a minute",
				f(25)),
			Figures: []FrictionFigure{{working.Tell("mixing.figure_processor", "food processor"), f(25),
				sources.CooksFriction}},
		}, nil
	}
}

// String says the friction with its spread.
func (p Prior) String() string { return p.Message().String() }

// Message says the friction with its spread, for the units of its reader.
func (p Prior) Message() working.Message {
	if p.Kind == 0 {
		return working.Tell("mixing.no_prior", "no guide value")
	}
	return working.Tell(
		"mixing.prior", "%v: friction factor about %.0f for %d factors, published from %.0f to %.0f",
		p.Kind, p.Friction.Factor, p.Friction.Factors, p.Low, p.High)
}

// Working lists the figures behind the guide value.
func (p Prior) Working() working.Working {
	d := working.Derive(working.Tell("mixing.derive_prior", "Friction factor before the first measured batch"))
	for i, f := range p.Figures {
		d.Find(working.Finding{
			Name: f.What, Symbol: symbolNumber("F", i), Is: f.Friction, Source: f.Source,
			Look: working.Tell("mixing.look_figure", "a figure of the trade, for three factors"),
		})
	}
	if p.Kind != 0 {
		d.Find(working.Finding{
			Name: working.Tell("mixing.guide_value", "friction factor to start with"), Symbol: "F",
			Is: p.Friction.Factor, Look: p.Evidence,
			Source: working.Source{Key: "prior", Title: "chosen between the figures above", Standing: working.Judgment},
		})
	}
	return d.Working()
}

func forkMemory() working.Source {
	return working.Source{Key: "fork mixer", Title: "warming of a dough in a fork mixer", Standing: working.FromMemory}
}
