package ferment

import (
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// Cautions says what can go wrong or hurt with this dough, and where local rules decide.
func (e Estimate) Cautions() []working.Caution {
	if !e.given() {
		return nil
	}
	return cautions(e.bulk.Enriched, e.bulk.History, e.end(), untilLate)
}

// Cautions says what can go wrong or hurt with this dough from shaping to the oven, and where local rules decide.
func (t ShapeTarget) Cautions() []working.Caution {
	if t.path.IsZero() {
		return nil
	}
	until := t.proof.Bench.Duration()
	for _, s := range t.proof.Stages {
		until += s.For.Duration()
	}
	return cautions(t.proof.Bulk.Enriched, t.path, hours(until), afterShaping)
}

// reach is the stretch of a dough's life that cautions speak of.
type reach bool

const (
	untilLate    reach = false
	afterShaping reach = true
)

// perishable is how long usual rules let perishable food stand between 5 and 60 °C, h.
const perishable = 2.0

func cautions(enriched bool, h History, end float64, of reach) []working.Caution {
	out := []working.Caution{rawDough()}
	warm, cold := timeAbove(h, end, 5)
	if enriched {
		low, high, long := quantity.Celsius(5), quantity.Celsius(60), span(warm).Round(time.Minute)
		text := working.Tell("ferment.caution_warm_late",
			"a dough with egg or milk stands between %v and %v for %v at the late end", low, high, long)
		if of == afterShaping {
			text = working.Tell("ferment.caution_warm_shaped",
				"a dough with egg or milk stands between %v and %v for %v between shaping and the oven",
				low, high, long)
		}
		limit := quantity.Elapsed(perishable * float64(time.Hour))
		says := working.Tell("ferment.caution_within",
			"%v; usual rules allow perishable food %v in the warm: follow your local food rules", text, limit)
		if warm > perishable {
			says = working.Tell("ferment.caution_enriched",
				"%v, longer than the %v that usual rules allow perishable food; keep it cold or shorten it, and follow your "+
					"local food rules", text, limit)
		}
		out = append(out, working.Caution{Subject: "food safety", Source: sources.DangerZone, Text: says})
	}
	if cold.tooWarm() {
		out = append(out, refrigeratorCaution(cold.coldest))
	}
	return out
}

// Cautions says what can go wrong with a preferment, and where local rules decide.
func (r Ripeness) Cautions() []working.Caution {
	out := []working.Caution{rawDough()}
	if r.of.Yeast.Kind == NoYeast {
		out = append(out, working.Caution{
			Subject: "levain", Source: sources.SpoiledCulture,
			Text: working.Tell("ferment.caution_spoiled",
				"discard a culture with pink or orange streaks, colored or fuzzy mold, or a foul smell, "+
					"and everything it touched; do not taste it"),
		})
	}
	out = append(out, working.Caution{
		Subject: "jar", Source: sources.Practice("a fermenting dough makes gas without end"),
		Text: working.Tell("ferment.caution_sealed",
			"never seal the jar: gas bursts it; lay the lid on, and leave room to rise threefold"),
	})
	if !r.of.History.IsZero() {
		if _, cold := timeAbove(r.of.History, hours(r.Until.Late), 5); cold.tooWarm() {
			out = append(out, refrigeratorCaution(cold.coldest))
		}
	}
	return out
}

func rawDough() working.Caution {
	return working.Caution{
		Subject: "raw dough", Source: sources.RawFlour,
		Text: working.Tell("ferment.caution_raw",
			"raw flour and raw dough are not eaten or tasted; wash hands and surfaces; "+
				"keep rising dough away from pets: it goes on rising inside them"),
		Short: working.Tell("ferment.short_raw",
			"raw flour may carry germs: do not taste the dough; wash hands and tools; no dough for pets"),
	}
}

func refrigeratorCaution(coldest float64) working.Caution {
	return working.Caution{
		Subject: "refrigerator", Source: sources.ColdStorage,
		Text: working.Tell("ferment.caution_refrigerator",
			"in the cold the dough gets no colder than %.1f: a refrigerator for food is kept at %v or below "+
				"(in the United States %.0f); local food rules decide", degrees(coldest), quantity.Celsius(5),
			quantity.Fahrenheit(40)),
	}
}

// chill describes the time in a refrigerator: the stretch in which the dough is below 10 °C.
type chill struct {
	long    float64 // h below 10 °C
	coldest float64 // °C
}

// tooWarm: hours in the cold without getting to 5 °C; the 0.5 °C lets a large dough still be on its way.
func (c chill) tooWarm() bool { return c.long > 2 && c.coldest > 5.5 }

// timeAbove is how long the dough is warmer than a limit, and what is known of its stay in the cold.
func timeAbove(h History, until, limit float64) (above float64, cold chill) {
	cold.coldest = 100
	h.segments(0, until, func(p, q knot) {
		dt := q.Hour - p.Hour
		lo, hi := min(p.Celsius, q.Celsius), max(p.Celsius, q.Celsius)
		share := func(x float64) float64 { // of the run that is above x
			switch {
			case hi <= x:
				return 0
			case lo >= x:
				return 1
			}
			return (hi - x) / (hi - lo)
		}
		above += dt * share(limit)
		cold.long += dt * (1 - share(10))
		cold.coldest = min(cold.coldest, lo)
	})
	return above, cold
}
