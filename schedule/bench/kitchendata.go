package bench

import (
	"encoding/json"
	"slices"
	"strings"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule/bakeday"
)

// KitchenMomentFormat names the shape of a [KitchenNow] as data; the number grows when a field changes its meaning.
const KitchenMomentFormat = "maslin kitchen now 1"

// kitchenMoment is how a day of several breads stands as plain data.
type kitchenMoment struct {
	Format    string                 `json:"format"`
	Now       time.Time              `json:"now"`
	Possible  bool                   `json:"possible"`
	Following bool                   `json:"following"`
	UnderWay  []bakeday.StepData     `json:"under_way,omitempty"` // of all breads; each says which
	Next      *bakeday.StepData      `json:"next,omitempty"`
	Breads    []momentData           `json:"breads"` // each without its plan
	Changed   *bakeday.Replanned     `json:"changed,omitempty"`
	Plan      bakeday.KitchenDayData `json:"plan"`
}

// MarshalJSON writes how the day stands: what is under way and next of all breads, each bread as [DayNow] does, and the
// plan.
func (k KitchenNow) MarshalJSON() ([]byte, error) {
	out := kitchenMoment{
		Format: KitchenMomentFormat, Now: k.Now, Possible: k.possible(), Following: k.Followed != nil, Changed: k.Changed,
		Breads: []momentData{}, Plan: k.Day.Data(),
	}
	for _, s := range k.underWay() {
		out.UnderWay = append(out.UnderWay, s.StepData)
	}
	if next, ok := k.next(); ok {
		out.Next = &next.StepData
	}
	for _, m := range k.Breads {
		out.Breads = append(out.Breads, m.data())
	}
	return json.Marshal(out)
}

// StepsDue lists the steps of all breads that may be meant by "it is done", as [DayNow.StepsDue]; the bread of each
// stands in it, and its ID is as if the bread were alone, as it is observed.
func (k KitchenNow) StepsDue() []bakeday.StepData {
	var all []bakeday.StepData
	over := map[string]bool{}
	for _, s := range k.steps() {
		all = append(all, s.StepData)
		over[s.key()] = s.of.done(s.StepData)
	}
	return due(all, func(s bakeday.StepData) bool { return over[s.Bread+"/"+s.ID] }, k.Now)
}

// StepNamed answers: which step of which bread is meant, by its ID ("Rye/fold-2"), or by its kind where there is only
// one such step ("Rye/shape")? The bread stands in it, and its ID is as if the bread were alone, as it is observed.
// Errors: as [bakeday.KitchenDay.StepNamed]; no text where no step is due, or several are.
func (k KitchenNow) StepNamed(text string) (bakeday.StepData, error) {
	if text == "" {
		return k.onlyDue()
	}
	all := k.steps()
	byID := func(id string) (bakeday.StepData, bool) {
		i := slices.IndexFunc(all, func(s stepOf) bool { return s.key() == id || len(k.Breads) == 1 && s.ID == id })
		if i < 0 {
			return bakeday.StepData{}, false
		}
		return all[i].StepData, true
	}
	if s, ok := byID(text); ok { // what is done at the oven is a step too
		return s, nil
	}
	step, err := k.Day.StepNamed(text)
	if err != nil {
		return bakeday.StepData{}, err
	}
	s, _ := byID(step.ID)
	return s, nil
}

// onlyDue is the step that is due, where it is one.
func (k KitchenNow) onlyDue() (bakeday.StepData, error) {
	due := k.StepsDue()
	if len(due) == 1 {
		return due[0], nil
	}
	want := quantity.Tell("bench.want_step_none_due", "the step that is done; none was due yet")
	if len(due) > 1 {
		var may []string
		for _, s := range due {
			id := s.ID
			if len(k.Breads) > 1 {
				id = s.Bread + "/" + id
			}
			may = append(may, id)
		}
		want = quantity.Tell("bench.want_step_of_several", "the one of the steps that is done: %s", strings.Join(may, ", "))
	}
	return bakeday.StepData{}, &quantity.InputError{Want: want, Err: quantity.ErrRequired}
}
