package ferment

import (
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// Cautions says what can go wrong or hurt with this dough, and where local rules decide.
func (e Estimate) Cautions() []working.Caution {
	if len(e.nodes) == 0 {
		return nil
	}
	return cautions(e.bulk.Enriched, e.bulk.History, min(e.late, hours(Horizon)), "at the late end")
}

// Cautions says what can go wrong or hurt with this dough from shaping to the oven, and where local rules decide.
func (t ShapeTarget) Cautions() []working.Caution {
	if t.proof.Then.IsZero() {
		return nil
	}
	return cautions(t.proof.Bulk.Enriched, t.proof.Then, hours(t.proof.ThenFor.Duration()), "between shaping and the oven")
}

func cautions(enriched bool, h History, end float64, when string) []working.Caution {
	out := []working.Caution{rawDough()}
	warm, cold := timeAbove(h, end, 5)
	if enriched {
		text := working.Say("a dough with egg or milk stands between %v and %v for %s %s",
			quantity.Celsius(5), quantity.Celsius(60), quantity.FormatDuration(span(warm).Round(time.Minute)), when)
		if warm > 2 {
			text = working.Say("%v, longer than the 2 hours usual rules for perishable food allow", text)
		}
		out = append(out, working.Caution{Subject: "food safety", Text: working.Say("%v; keep it cold or shorten it, and follow your local food rules", text), Source: sources.DangerZone})
	}
	if cold.tooWarm() {
		out = append(out, refrigeratorCaution(cold.coldest))
	}
	return out
}

// Cautions says what can go wrong with a levain, and where local rules decide.
func (r Ripeness) Cautions() []working.Caution {
	out := []working.Caution{rawDough(), {
		Subject: "levain", Text: working.Say("discard a culture with pink or orange streaks, colored or fuzzy mold, or a foul smell, and everything it touched; do not taste it"),
		Source: sources.SpoiledCulture,
	}}
	if !r.levain.History.IsZero() {
		if _, cold := timeAbove(r.levain.History, hours(r.Until.Late), 5); cold.tooWarm() {
			out = append(out, refrigeratorCaution(cold.coldest))
		}
	}
	return out
}

func rawDough() working.Caution {
	return working.Caution{Subject: "raw dough", Text: working.Say("raw flour and raw dough are not eaten or tasted; wash hands and surfaces"), Source: sources.RawFlour}
}

func refrigeratorCaution(coldest float64) working.Caution {
	return working.Caution{
		Subject: "refrigerator",
		Text: working.Say("in the cold the dough gets no colder than %.1f: a refrigerator for food is kept at %v or below (in the United States %.0f); local food rules decide",
			degrees(coldest), quantity.Celsius(5), quantity.Fahrenheit(40)),
		Source: sources.ColdStorage,
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
		dt := q.h - p.h
		lo, hi := min(p.c, q.c), max(p.c, q.c)
		share := func(x float64) float64 { // of the run that is above x
			switch {
			case lo >= x:
				return 1
			case hi <= x:
				return 0
			}
			return (hi - x) / (hi - lo)
		}
		above += dt * share(limit)
		cold.long += dt * (1 - share(10))
		cold.coldest = min(cold.coldest, lo)
	})
	return above, cold
}
