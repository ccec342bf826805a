package bench

import (
	"encoding/json"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule/bakeday"
)

// MomentFormat names the shape of a [DayNow] as data; the number grows when a field changes its meaning.
const MomentFormat = "maslin now 2"

// momentData is a moment as plain data, with what is due and what to look for worked out.
type momentData struct {
	Format    string               `json:"format"`
	Name      string               `json:"name"`
	Now       time.Time            `json:"now"`
	Wanted    time.Time            `json:"wanted,omitzero"`
	Possible  bool                 `json:"possible"`
	Following bool                 `json:"following"`
	RestsOn   []working.Message    `json:"rests_on,omitempty"`
	UnderWay  []bakeday.StepData   `json:"under_way,omitempty"`
	Next      *bakeday.StepData    `json:"next,omitempty"`
	LookFor   []working.Message    `json:"look_for,omitempty"`
	Dough     *doughData           `json:"dough,omitempty"`
	Doubts    []Doubt              `json:"doubts,omitempty"`
	Changed   *bakeday.Replanned   `json:"changed,omitempty"`
	Done      map[string]time.Time `json:"done,omitempty"`
	Steps     []bakeday.StepData   `json:"steps,omitempty"` // that are not over
	Plan      *bakeday.PlanData    `json:"plan,omitempty"`
}

// doughData is the clock of the dough.
type doughData struct {
	Mixed    time.Time          `json:"mixed"`
	Rise     quantity.Percent   `json:"shape_at_rise"`
	Ready    quantity.TimeRange `json:"ready"`
	Readings int                `json:"readings"`
}

// MarshalJSON writes how the day stands, with what is due and what to look for.
func (m DayNow) MarshalJSON() ([]byte, error) {
	out, plan := m.data(), m.Day.Data()
	out.Plan = &plan
	return json.Marshal(out)
}

// data is the moment without its plan.
func (m DayNow) data() momentData {
	out := momentData{
		Format: MomentFormat, Name: m.Name, Now: m.Now, Wanted: m.Wanted, Possible: m.Day.Possible(),
		Following: m.Followed != nil,
		RestsOn:   m.RestsOn, UnderWay: m.UnderWay(), Doubts: m.Doubts, Changed: m.Changed, Done: m.Done,
	}
	next, ok := m.Next()
	if ok {
		out.Next = &next
	}
	for _, s := range out.UnderWay {
		out.LookFor = append(out.LookFor, m.LookFor(s)...)
	}
	if len(out.UnderWay) == 0 && ok {
		out.LookFor = m.LookFor(next)
	}
	if m.Progress != nil {
		e := m.Progress.Now
		out.Dough = &doughData{Mixed: m.Mixed, Rise: tenth(e.Bulk().Rise), Ready: e.Ready()}
		if m.Dough != nil {
			out.Dough.Readings = len(m.Dough.Rises)
		}
	}
	for _, s := range m.Steps {
		if !m.done(s) && s.End.After(m.Now) {
			out.Steps = append(out.Steps, s)
		}
	}
	return out
}
