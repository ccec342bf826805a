package bakeday

import (
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
	"example.org/maslin/schedule"
)

// timesWorking derives the times of a timetable, or why there is none. Moved to the nearest time that works, the doughs
// meet the kitchen at another time of the day and rise at another pace: where planning them anew takes longer than
// the first timetable says, the last step tells how much.
func timesWorking(t schedule.Timetable, later *quantity.Elapsed) (working.Working, bool) {
	w := t.Working()
	if w.Len() == 0 {
		return w, false
	}
	if t.After == nil || later == nil || *later == t.After.By {
		return w, true
	}
	d := working.Derive(working.Tell("bakeday.derive_refusal", "why the times cannot be kept, and when they can"))
	first := d.Add(w)
	slower := working.Given("Δ_anew", working.Tell("bakeday.symbol_anew",
		"what the doughs take longer, planned anew for that time: the kitchen is as warm then as it is at that hour"),
		*later-t.After.By)
	d.Find(working.Finding{
		Name:   working.Tell("bakeday.derive_anew", "by how much it is missed, planned anew"),
		Symbol: "Δ_all", Is: *later, By: first.Plus(slower), Source: sources.TemporalNetworks,
	})
	return d.Working(), true
}
