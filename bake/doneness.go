package bake

import (
	"slices"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/enum"
)

// Confidence says how well the figures of a style are supported.
type Confidence int

// The confidences, from firm to weak.
const (
	Good Confidence = iota // several independent sources agree
	Fair                   // few sources, or sources that differ
	Weak                   // one source, or memory
)

var confidences = enum.Of[Confidence]("confidence", "good", "fair", "weak")

// String names the confidence.
func (c Confidence) String() string { return confidences.String(c) }

// MarshalText implements encoding.TextMarshaler.
func (c Confidence) MarshalText() ([]byte, error) { return confidences.Marshal(c) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads the words that String prints, and no others.
func (c *Confidence) UnmarshalText(text []byte) error { return confidences.Unmarshal(c, text) }

// StyleGuide is what done means for a style at sea level. The figures are a judgment built on the sources named;
// the altitude comes in with [Goal.Target].
type StyleGuide struct {
	Style Style `json:"style"`
	// Core is aimed at in the middle; not given for thin breads, which are done by time and color.
	Core quantity.Temperature `json:"core,omitzero"`
	// Accepted are the cores at which sources take the bread out.
	Accepted quantity.Range[quantity.Temperature] `json:"accepted,omitzero"`
	// MinimumLoss is the share of the dough's weight at which the loaf has baked out; 0 % when loss is no criterion.
	MinimumLoss quantity.Percent `json:"minimum_loss"`
	// Hold is how long a usual piece stays at the target until it has baked out, when it is not weighed.
	Hold quantity.Elapsed `json:"hold"`
	// AsLongAgain: the loaf bakes out in about as long again as its core took to come within 7 °C of boiling.
	// Otherwise the core arrives near 85 % of the bake.
	AsLongAgain bool             `json:"as_long_again"`
	Confidence  Confidence       `json:"confidence"`
	Note        working.Message  `json:"note,omitzero"`
	Sources     []working.Source `json:"sources"`
}

// Guide answers: what does done mean for this style, at sea level, and says who?
//
// Valid range: the styles of this package. Accuracy: sources differ by ±3 °C and more; Confidence says how
// well they agree. Errors: [quantity.ErrOutOfRange] for an unknown style. Source: the Sources of the row.
func (s Style) Guide() (StyleGuide, error) {
	var p quantity.Problems
	if !styles.Check(&p, "Style", s) {
		return StyleGuide{}, p.ErrFor(s)
	}
	r := rowOf(s).done
	g := StyleGuide{
		Style: s, MinimumLoss: quantity.NewPercent(r.loss), Hold: quantity.Elapsed(r.hold), AsLongAgain: r.hearth,
		Confidence: r.confidence, Note: r.note, Sources: slices.Clone(r.sources),
	}
	if s.ByCore() {
		g.Core = quantity.Celsius(r.core)
		g.Accepted = quantity.Range[quantity.Temperature]{Low: quantity.Celsius(r.from), High: quantity.Celsius(r.to)}
	}
	return g, nil
}

// String prints "lean hearth: core 96 °C (sources accept 93 °C to 99 °C), and 10 % lighter or 20m at the target;
// confidence good".
func (g StyleGuide) String() string { return g.message().String() }

func (g StyleGuide) message() working.Message {
	switch {
	case !g.Style.ByCore():
		return working.Tell("bake.guide_by_color", "%v: by time and color; %v", g.Style, g.Note)
	case g.MinimumLoss.IsZero():
		return working.Tell("bake.guide_core", "%v: core %.1f (sources accept %.1f to %.1f); confidence %v",
			g.Style, g.Core, g.Accepted.Low, g.Accepted.High, g.Confidence)
	}
	return working.Tell("bake.guide",
		"%v: core %.1f (sources accept %.1f to %.1f), and %v lighter or %v at the target; confidence %v", g.Style,
		g.Core, g.Accepted.Low, g.Accepted.High, g.MinimumLoss, g.Hold, g.Confidence)
}
