package bake

import (
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
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

// Doneness is what done means for a style at sea level. The figures are a judgment built on the sources
// named; the altitude comes in with [Target].
type Doneness struct {
	Style       Style
	Core        quantity.Temperature // aimed at in the core
	From, To    quantity.Temperature // cores that sources accept
	MinimumLoss quantity.Percent     // of the dough's weight at which the loaf has baked out; 0 % when loss is no criterion
	Hold        time.Duration        // at the target, when the loaf is not weighed
	Confidence  Confidence
	Note        string
	Sources     []working.Source
}

type donenessRow struct {
	core, from, to, loss float64
	hold                 time.Duration
	confidence           Confidence
	note                 string
}

// The table of doneness. Hold is 15 % of a usual bake of the style (arrival near 85 %, sources.SCurve), rye
// at least 10 minutes (sources.RyeHold). The figures are chosen from the published ranges named by
// doneSources.
func donenessOf(s Style) donenessRow {
	switch s {
	case Baguette:
		return donenessRow{97, 95, 99, 12, 4 * time.Minute, Fair, "the color of the crust decides"}
	case Pan:
		return donenessRow{93, 87.8, 96, 9, 5 * time.Minute, Good, ""}
	case Enriched:
		return donenessRow{90, 88, 95, 8, 4 * time.Minute, Fair, "sugar and milk brown the crust long before the core is there"}
	case SoftRoll:
		return donenessRow{92, 87.8, 96, 8, 3 * time.Minute, Fair, ""}
	case Wholegrain:
		return donenessRow{97, 95, 99, 10, 7 * time.Minute, Fair, ""}
	case Rye:
		return donenessRow{98, 96, 99, 10, 10 * time.Minute, Fair, "rye is held hot: the time at the target counts more than the peak"}
	case GlutenFree:
		return donenessRow{97, 96, 99, 8, 7 * time.Minute, Weak, "the starch alone carries the crumb and must set fully"}
	case ParBaked:
		return donenessRow{90, 90, 99, 0, 0, Good, "the crumb was set in the first bake: a core over 90 °C makes it fresh again"}
	}
	return donenessRow{96, 93, 99, 10, 6 * time.Minute, Good, ""}
}

func doneSources(s Style) []working.Source {
	switch s {
	case Baguette:
		return []working.Source{sources.WarenkundeBrot, sources.CooksScience}
	case Pan:
		return []working.Source{sources.KingArthurThermometer, sources.ASBProfile, sources.CooksScience}
	case Enriched:
		return []working.Source{sources.GuideBakeTimes, sources.CooksScience}
	case SoftRoll:
		return []working.Source{sources.KingArthurThermometer, sources.GuideBakeTimes}
	case Wholegrain:
		return []working.Source{sources.WarenkundeBrot, sources.KingArthurThermometer}
	case Rye:
		return []working.Source{sources.KingArthurThermometer, sources.RyeBakeryLoss, sources.RyeHold, sources.GuideBakeTimes}
	case GlutenFree:
		return []working.Source{sources.KingArthurThermometer}
	case ParBaked:
		return []working.Source{sources.IREKS}
	}
	return []working.Source{sources.WarenkundeBrot, sources.GuideBakeTimes, sources.ASBProfile, sources.CooksScience}
}

// Guide answers: what does done mean for this style, at sea level, and says who?
//
// Valid range: the styles of this package. Accuracy: sources differ by ±3 °C and more; Confidence says how
// well they agree. Errors: [quantity.ErrOutOfRange] for an unknown style. Source: the Sources of the row.
func Guide(style Style) (Doneness, error) {
	if !style.IsValid() {
		return Doneness{}, unknown("style", int(style), styleNames[:])
	}
	r := donenessOf(style)
	return Doneness{
		Style: style, Core: quantity.Celsius(r.core), From: quantity.Celsius(r.from), To: quantity.Celsius(r.to),
		MinimumLoss: quantity.NewPercent(r.loss), Hold: r.hold, Confidence: r.confidence, Note: r.note, Sources: doneSources(style),
	}, nil
}

// String prints "lean hearth: core 96 °C (93 °C to 99 °C), loss at least 10 % or 6m at the target,
// confidence good".
func (d Doneness) String() string {
	s := d.Style.String() + ": core " + d.Core.String() + " (" + d.From.String() + " to " + d.To.String() + ")"
	if d.MinimumLoss.Sign() > 0 {
		s += ", loss at least " + d.MinimumLoss.String() + " or " + quantity.FormatDuration(d.Hold) + " at the target"
	}
	return s + ", confidence " + d.Confidence.String()
}
