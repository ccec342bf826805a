package bakeday

import (
	"encoding/json"
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
	answer

	Bake   Bake
	Zone   *time.Location
	Now    time.Time // the clock of the plan
	Wanted time.Time // when the bread is wanted

	Batch       dough.Batch
	Weighing    dough.Weighing
	Water       Water
	Levain      *Leavening         // nil when raised with yeast
	Preferments []ferment.Ripeness // of each preferment of the bake; zero where the baker says how long it stands
	Rising      Rising
	Baking      Baking

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
	short   *shortage                  // what there is too little of for what was wanted; nil: enough
	worked  bool                       // a plan worked it out: a Day that only a caller put together is none
	layout  int                        // which of the layouts it has
	names   map[string]working.Message // of the steps, by their IDs, without the bread
	// of each soaker: how warm it goes into the dough, and how long it cools before that
	soaked []quantity.Temperature
	// how far the dough was reckoned from where the timetable has it, when they did not settle
	unsettled quantity.Elapsed
	cools     []time.Duration
	hotFrom   working.Message // what is said of an oven that another bread has left hot
	tried     tried           // of the ways out of the conflict
}

// Missed is a wish that could not be met, and why.
type Missed struct {
	Wanted time.Time `json:"wanted"`
	Why    *WhyData  `json:"why_not,omitempty"` // and which times next to it would do
}

// Leavening is the levain of the day.
type Leavening struct {
	Build   dough.Build   `json:"build"`
	Shared  quantity.Mass `json:"shared,omitzero"` // all that is made of it, where it feeds other breads too
	Culture quantity.Mass `json:"culture"`         // starter, with which the build is started
	// starter missing, or levain where it stands ready; 0 g when there is enough
	Short       quantity.Mass        `json:"short"`
	Fed         time.Time            `json:"fed"` // when it is, or was, fed
	Ripeness    ferment.Ripeness     `json:"ripeness"`
	Temperature quantity.Temperature `json:"temperature,omitzero"` // when it goes into the dough
}

// Rising is the dough's own clock from the mixer to the oven.
type Rising struct {
	Bulk    ferment.Estimate                 `json:"bulk"`            // until the dough is to be shaped
	ShapeAt quantity.Percent                 `json:"shape_at"`        // the rise at which to shape
	InOven  quantity.Range[quantity.Percent] `json:"in_oven"`         // the rise in all, when it goes into the oven
	Target  ferment.ShapeTarget              `json:"target,omitzero"` // how ShapeAt was found; zero without a retard
	Proof   quantity.TimeRange               `json:"proof,omitzero"`  // in the room
	// a final proof in the room; otherwise the cold retard
	HasProof bool                 `json:"has_proof"`
	Shaped   quantity.Temperature `json:"shaped,omitzero"` // the dough when it is shaped
	Into     quantity.Temperature `json:"into,omitzero"`   // the dough when it goes into the oven
	// when it leaves the refrigerator; not given without a retard
	FromCold quantity.Temperature `json:"from_cold,omitzero"`
	Retard   quantity.Elapsed     `json:"retard"` // of the first loaves, as planned
	// false: even unrisen dough would go beyond the rise wanted
	Feasible bool             `json:"feasible"`
	Unrisen  quantity.Percent `json:"unrisen"` // what would follow if shaped at once
}

// Baking is the oven's part.
type Baking struct {
	Scaling  quantity.Mass    `json:"scaling"` // dough for one loaf
	Loss     quantity.Percent `json:"loss"`
	Usual    bake.LossGuide   `json:"usual"`
	Target   bake.CoreTarget  `json:"target"`
	Doneness bake.StyleGuide  `json:"doneness"`
	Cooling  bake.CoolingTime `json:"cooling"`
	Program  bake.Program     `json:"program"` // of all rounds, phase by phase
	Guide    bool             `json:"guide"`   // how long it bakes is a guide value, and not the baker's own
	Rounds   int              `json:"rounds"`
	Each     int              `json:"each"`  // loaves in a round
	Decks    int              `json:"decks"` // of the oven that a round takes
}

// MarshalJSON implements json.Marshaler: the day as plain data, see [Day.Data].
func (d Day) MarshalJSON() ([]byte, error) { return json.Marshal(d.Data()) }

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
	all = append(all, d.fillingCautions()...)
	all = append(all, d.scaldCautions()...)
	all = append(all, d.Water.Fit.Cautions...)
	all = append(all, d.warmCautions()...)
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
	if w := d.Rising.Target.Working(); w.Len() > 0 {
		out = append(out, w)
	}
	out = append(out, d.Rising.Bulk.Working(), d.Baking.Target.Working(), d.Baking.Cooling.Working())
	var later *quantity.Elapsed
	if d.Later != nil {
		by := quantity.Elapsed(d.Later.Sub(d.Wanted))
		later = &by
	}
	if w, ok := timesWorking(d.Timetable, later); ok {
		out = append(out, w)
	}
	return out
}
