package bakeday

import (
	"slices"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// foodSafety is the subject of the caution about a dough that spoils, which [ferment.Estimate.Cautions] has of its bulk
// alone.
const foodSafety = "food safety"

// warmCautions are those of the dough's clock, with the time in the warm counted from the mixer to the oven.
func (d Day) warmCautions() []working.Caution {
	out := slices.DeleteFunc(d.Rising.Bulk.Cautions(), func(c working.Caution) bool { return c.Subject == foodSafety })
	if !d.Bake.enriched() {
		return out
	}
	warm, limit := d.warm(), quantity.Elapsed(warmLimit)
	says := working.Tell("bakeday.caution_warm",
		"a dough with egg or milk is warm for up to %v from the mixer to the oven; usual rules allow perishable food %v: "+
			"follow your local food rules", warm, limit)
	if warm > limit {
		says = working.Tell("bakeday.caution_too_warm",
			"a dough with egg or milk is warm for up to %v from the mixer to the oven, longer than the %v that usual rules "+
				"allow perishable food; keep it cold or shorten it, and follow your local food rules", warm, limit)
	}
	return append(out, working.Caution{Subject: foodSafety, Source: sources.DangerZone, Text: says})
}

// warm is the longest time that the dough spends out of the cold: a slow bulk, shaping, and a slow proof or the hours
// after the cold. What it takes to cool down is left out.
func (d Day) warm() quantity.Elapsed {
	all := d.Rising.Bulk.Ready().Late + d.Bake.Shaping.Takes.Duration()
	if r := d.Bake.Retard; r != nil {
		all += r.warming().Duration()
	} else {
		all += d.Rising.Proof.Late
	}
	return grid(all)
}
