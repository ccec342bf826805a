package bakeday

import (
	"time"

	"example.org/maslin/bake"
	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/ferment"
	"example.org/maslin/schedule"
)

// Day is a whole bake worked out: what to weigh, how warm, how long, and when. It keeps the answers
// of the rooms, so that each number can show its own working.
type Day struct {
	Bake   Bake
	Zone   *time.Location
	Now    time.Time // the clock of the plan
	Wanted time.Time // when the bread is wanted

	Batch    dough.Batch
	Weighing dough.Weighing
	Water    Water
	Levain   *Leavening // nil when raised with yeast
	Rising   Rising
	Baking   Baking

	// Timetable says when; when no plan fits, its Conflict says what is in the way.
	Timetable schedule.Timetable
	// Earlier and Later are the nearest wanted times that work, when this one does not; nil when none
	// was found.
	Earlier, Later *time.Time
	// Missed is the earlier day that was wished for by its weekday and can no longer be met; nil
	// when there is none.
	Missed *Missed

	// Careful reports whether the timetable has room for a dough that is early or late anywhere in its
	// range; false when no such timetable exists.
	Careful bool
	// Room is the share of the range of the dough's bulk, taken around what is likely, for which the timetable keeps
	// room: 100 % when Careful. Of the timetables that fit, one with the most room is chosen, and of these the latest.
	Room quantity.Percent
	// Robust says what the timetable survives when the dough is early or late.
	Robust schedule.Robustness
	// Settled reports whether times and temperatures agree: the dough's clock depends on the time of
	// day, and the time of day on the dough's clock. When they did not settle the last answer stands.
	Settled bool
	// TimeRanOut says that the context ended before all of the day was worked out: what stands here is known, but
	// there may be a better plan, a nearer time or more room than it says.
	TimeRanOut bool
	Notes      []working.Message

	problem schedule.Problem
	layout  int // which of the layouts it has
}

// Missed is a wish that could not be met, and why.
type Missed struct {
	Wanted time.Time
	why    *WhyData
}

// Why says why the wish could not be met, and which times next to it could.
func (m Missed) Why() *WhyData { return m.why }

// Leavening is the levain of the day.
type Leavening struct {
	Build       dough.Build
	Culture     quantity.Mass // that the build is started with
	Short       quantity.Mass // culture missing; 0 g when there is enough
	Ripeness    ferment.Ripeness
	Temperature quantity.Temperature // when it goes into the dough
}

// Rising is the dough's own clock from the mixer to the oven.
type Rising struct {
	Bulk     ferment.Estimate                 // until the dough is to be shaped
	ShapeAt  quantity.Percent                 // the rise at which to shape
	InOven   quantity.Range[quantity.Percent] // the rise in all, when it goes into the oven
	Target   ferment.ShapeTarget              // how ShapeAt was found; zero without a retard
	Proof    quantity.TimeRange
	HasProof bool                 // a final proof in the room; otherwise the cold retard
	Shaped   quantity.Temperature // the dough when it is shaped
	Into     quantity.Temperature // the dough when it goes into the oven
	FromCold quantity.Temperature // the dough when it leaves the refrigerator; not given without a retard
	Retard   time.Duration        // of the first loaves, as planned
	Feasible bool                 // false: even unrisen dough would go beyond the rise wanted
	Unrisen  quantity.Percent     // what would follow if shaped at once
}

// Baking is the oven's part.
type Baking struct {
	Scaling  quantity.Mass // dough for one loaf
	Loss     quantity.Percent
	Usual    bake.LossGuide
	Target   bake.CoreTarget
	Doneness bake.StyleGuide
	Cooling  bake.CoolingTime
	Rounds   int
	Each     int // loaves in a round
}

// Possible reports whether there is a timetable.
func (d Day) Possible() bool {
	return d.Rising.Feasible && (d.Timetable.Verdict == schedule.Optimal || d.Timetable.Verdict == schedule.Feasible)
}

// rawDough is the subject of the caution that every room has.
const rawDough working.Subject = "raw dough"

// Cautions lists what can go wrong or hurt on the way, each once.
func (d Day) Cautions() []working.Caution {
	all := d.Batch.Cautions()
	if d.Levain != nil {
		all = append(all, d.Levain.Ripeness.Cautions()...)
	}
	all = append(all, d.Water.Fit.Cautions...)
	all = append(all, d.Rising.Bulk.Cautions()...)
	all = append(all, bake.OvenCautions()...)
	all = append(all, bake.FoodCautions()...)
	var out []working.Caution
	seen := map[string]bool{}
	for _, c := range all {
		key := c.Text.String()
		if c.Subject == rawDough { // every room warns of it
			key = string(rawDough)
		}
		if !seen[key] {
			seen[key] = true
			out = append(out, c)
		}
	}
	return out
}

// Workings lists the derivations behind the day's numbers, in the order of the day.
func (d Day) Workings() []working.Working {
	out := []working.Working{d.Batch.Working(), d.Water.Working()}
	if d.Water.HasFit {
		out = append(out, d.Water.Fit.Working())
	}
	if d.Levain != nil {
		out = append(out, d.Levain.Ripeness.Working())
	}
	if w := d.Rising.Target.Working(); len(w.Steps) > 0 {
		out = append(out, w)
	}
	return append(out, d.Rising.Bulk.Working(), d.Baking.Target.Working(), d.Baking.Cooling.Working())
}
