package bake

import (
	"slices"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

// Confidence says how well the figures of a style are supported.
type Confidence int

// The confidences, from firm to weak.
const (
	Good Confidence = iota // several independent sources agree
	Fair                   // few sources, or sources that differ
	Weak                   // one source
)

// String names the confidence.
func (c Confidence) String() string {
	switch c {
	case Good:
		return "good"
	case Fair:
		return "fair"
	case Weak:
		return "weak"
	}
	return "unknown"
}

// StyleGuide is what done means for a style at sea level. The figures are a judgment built on the sources
// named; the altitude comes in with [CoreTarget].
type StyleGuide struct {
	Style       Style
	Core        quantity.Temperature // aimed at in the core
	From, To    quantity.Temperature // cores that sources accept
	MinimumLoss quantity.Percent     // of the dough's weight at which the loaf has baked out; 0 % when loss is no criterion
	Hold        time.Duration        // at the target, when the loaf is not weighed
	Confidence  Confidence
	Note        string
	Sources     []working.Source
}

// Guide answers: what does done mean for this style, at sea level, and says who?
//
// Valid range: the styles of this package. Accuracy: sources differ by ±3 °C and more; Confidence says how
// well they agree. Errors: [quantity.ErrOutOfRange] for an unknown style. Source: the Sources of the row.
func (style Style) Guide() (StyleGuide, error) {
	if !style.IsValid() {
		return StyleGuide{}, unknown("style", int(style), styleNames())
	}
	r := rowOf(style).done
	return StyleGuide{
		Style: style, Core: quantity.Celsius(r.core), From: quantity.Celsius(r.from), To: quantity.Celsius(r.to),
		MinimumLoss: quantity.NewPercent(r.loss), Hold: r.hold, Confidence: r.confidence, Note: r.note, Sources: slices.Clone(r.sources),
	}, nil
}

// String prints "lean hearth: core 96 °C (93 °C to 99 °C), loss at least 10 % or 6m at the target,
// confidence good".
func (d StyleGuide) String() string {
	s := d.Style.String() + ": core " + d.Core.String() + " (" + d.From.String() + " to " + d.To.String() + ")"
	if d.MinimumLoss.Sign() > 0 {
		s += ", loss at least " + d.MinimumLoss.String() + " or " + quantity.FormatDuration(d.Hold) + " at the target"
	}
	return s + ", confidence " + d.Confidence.String()
}
