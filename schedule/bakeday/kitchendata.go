package bakeday

import (
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule"
)

// KitchenDayFormat names the shape of [KitchenDayData]; the number grows when a field changes its meaning.
const KitchenDayFormat = "maslin kitchen day 1"

// KitchenDayData is a day of several breads as plain data, for a page, a screen or another program. Quantities and
// times are written as in [PlanData].
type KitchenDayData struct {
	Format   string    `json:"format"`
	Kitchen  Kitchen   `json:"kitchen"`
	Now      time.Time `json:"now"`
	Possible bool      `json:"possible"`
	// TimeRanOut says that the time for planning ran out: what stands here is right, but not all that could be known.
	TimeRanOut bool `json:"time_ran_out,omitempty"`
	// Survives is the share of the ranges of all doughs, taken around what is likely, over which the timetable is
	// proven to hold.
	Survives quantity.Percent `json:"survives"`
	Room     quantity.Percent `json:"room"` // the share for which the timetable keeps room

	Steps   []StepData  `json:"steps"`             // of all breads, in order of time
	Levains []WeighList `json:"levains,omitempty"` // that feed several doughs, to be weighed once
	Breads  []PlanData  `json:"breads"`            // each as if it were alone; their steps are those of the day

	Why      *WhyData          `json:"why_not,omitempty"`
	Earlier  *quantity.Elapsed `json:"earlier_by,omitempty"` // how much earlier everything would work, a negative duration
	Later    *quantity.Elapsed `json:"later_by,omitempty"`   // how much later everything would work
	Missed   *MissedDay        `json:"missed,omitempty"`
	Wants    []BothWant        `json:"both_want,omitempty"`
	Notes    []working.Message `json:"notes"`
	Cautions []CautionText     `json:"cautions"`
}

// Data turns the day into plain data.
func (k KitchenDay) Data() KitchenDayData {
	s := KitchenDayData{
		Format: KitchenDayFormat, Kitchen: k.Kitchen, Steps: []StepData{}, Breads: []PlanData{},
		Notes: append([]working.Message{}, k.Notes...), Cautions: []CautionText{},
	}
	if !k.worked || k.Zone == nil {
		return s
	}
	s.Now, s.Possible, s.TimeRanOut = k.Now.In(k.Zone).Truncate(time.Second), k.Possible(), k.TimeRanOut
	s.Survives, s.Room = quantity.NewPercent(100*k.Robust.Share), k.Room
	s.Levains, s.Missed, s.Wants = k.levains, k.Missed, k.Wants
	if s.Possible {
		s.Steps = k.stepData()
	}
	for _, d := range k.Breads {
		bread := d.Data()
		bread.Why = nil // it is the day's
		if s.Possible && len(k.Breads) > 1 {
			bread.Steps = k.ownSteps(d)
		}
		s.Breads = append(s.Breads, bread)
	}
	if !s.Possible {
		s.Why, s.Earlier, s.Later = k.whyNot(), k.Earlier, k.Later
	}
	for _, c := range k.Cautions() {
		s.Cautions = append(s.Cautions, CautionText{string(c.Subject), c.Text, sourceText(c.Source)})
	}
	return s
}

// ownSteps are the steps of a bread in its day, called as if it were alone. An oven that is hot already is not heated:
// it changes its temperature.
func (k KitchenDay) ownSteps(d Day) []StepData {
	out := d.stepData()
	for i, s := range out {
		if s.Kind == schedule.Preheat {
			out[i], _ = k.fromHot(s, d)
		}
	}
	byTime(out)
	return out
}

// stepData is the timetable of all breads.
func (k KitchenDay) stepData() []StepData {
	if len(k.Breads) == 1 {
		return k.Breads[0].stepData()
	}
	var out []StepData
	for _, d := range k.Breads {
		name := working.Tell("bakeday.named", "%v", d.Bake.Name)
		for _, s := range k.ownSteps(d) {
			s.ID, s.Name = d.Bake.Name+"/"+s.ID, working.Tell("bakeday.of_bread", "%v: %v", name, s.Name)
			if s.Kind == schedule.Feed && d.sharesLevain() {
				s.Name = working.Tell("bakeday.step_feed_shared", "feed %v, for %v",
					working.Tell("bakeday.named", "%v", d.Bake.Levain.Name), working.And(k.fedWith(d.Bake.Levain.Name)...))
			}
			out = append(out, s)
		}
	}
	byTime(out)
	return out
}

// fedWith are the breads that a levain feeds.
func (k KitchenDay) fedWith(levain string) []any {
	var out []any
	for _, d := range k.Breads {
		if d.Bake.Levain != nil && d.Bake.Levain.Name == levain {
			out = append(out, working.Tell("bakeday.named", "%v", d.Bake.Name))
		}
	}
	return out
}

// Bread finds a bread of the day by its name.
func (k KitchenDay) Bread(name string) (Day, bool) {
	for _, d := range k.Breads {
		if d.Bake.Name == name {
			return d, true
		}
	}
	return Day{}, false
}

// fromHot is the heating for a bread in an oven that another one has left hot, with that one; or the heating itself.
func (k KitchenDay) fromHot(s StepData, d Day) (StepData, string) {
	load, _ := d.Timetable.Step(nth(idBake, 0))
	var last schedule.Timed
	for _, b := range k.Timetable.Steps {
		if b.Kind == schedule.Bake && b.Bread != s.Bread && b.End.After(s.Start) && !b.End.After(load.Start) &&
			b.End.After(last.End) {
			last = b
		}
	}
	before, ok := k.Bread(last.Bread)
	if !ok {
		return s, ""
	}
	from := before.Bake.Oven.Temperature
	if !before.Bake.Oven.Then.IsZero() {
		from = before.Bake.Oven.Then
	}
	to := d.Bake.Oven.Temperature
	switch from.Compare(to) {
	case -1:
		s.Name = working.Tell("bakeday.step_oven_rises", "heat the oven on from %05.0f to %05.0f", from, to)
	case 1:
		s.Name = working.Tell("bakeday.step_oven_falls", "let the oven fall from %05.0f to %05.0f", from, to)
	default:
		s.Name = working.Tell("bakeday.step_oven_stays", "the oven stays at %05.0f", to)
	}
	if d.Bake.Oven.Pots > 0 {
		s.Name = working.Tell("bakeday.step_with_pots", "%v, with the pots in it", s.Name)
	}
	s.Start, s.End = last.End.In(k.Zone), load.Start.In(k.Zone)
	s.Takes = quantity.Elapsed(s.End.Sub(s.Start))
	s.EarliestStart, s.LatestStart, s.Slack, s.Earlier, s.Windows = s.Start, s.Start, 0, 0, []quantity.Window{}
	return s, last.Bread
}

// hotFrom says of the heating for a bread that another one has left the oven hot; nothing where it has not.
func (k KitchenDay) hotFrom(d Day) working.Message {
	if !d.Possible() {
		return working.Message{}
	}
	for _, s := range d.stepData() {
		if s.Kind != schedule.Preheat {
			continue
		}
		if heat, from := k.fromHot(s, d); from != "" {
			return working.Tell("bakeday.oven_hot_from", "the oven is hot from %v: %v",
				working.Tell("bakeday.named", "%v", from), heat.Name)
		}
	}
	return working.Message{}
}
