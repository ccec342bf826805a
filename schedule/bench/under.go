package bench

import (
	"context"
	"strings"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/ferment"
	"example.org/maslin/schedule"
	"example.org/maslin/schedule/bakeday"
)

// Under is a bake under way: its plan, and what was observed so far.
type Under struct {
	Bake bakeday.Bake `json:"bake"`
	// Observations are those of every bake that the baker knows of: earlier ones teach.
	Observations Observations `json:"observations,omitempty"`
}

// DayNow is how a day stands at one moment.
type DayNow struct {
	answer

	Now    time.Time `json:"now"`
	Wanted time.Time `json:"wanted"`
	Name   string    `json:"name"`
	// Followed is the plan that is being followed; nil: this is the plan if it is made now.
	Followed *FollowedPlan `json:"followed,omitempty"`
	// Day is the plan, with what was learned before it was made.
	Day bakeday.Day `json:"day"`
	// RestsOn says what of the plan was learned.
	RestsOn []working.Message `json:"rests_on,omitempty"`
	// Steps are those of the plan, planned again where something changed. Done says when a step was ticked off.
	Steps []bakeday.StepData   `json:"steps,omitempty"`
	Done  map[string]time.Time `json:"done,omitempty"`
	// Mixed is when the bulk fermentation began, as observed or as planned.
	Mixed time.Time `json:"mixed,omitzero"`
	// Dough is the dough as it was observed; nil when nothing was.
	Dough *LoggedBake `json:"dough,omitempty"`
	// Progress is the dough's clock as it is known now; nil before mixing.
	Progress *ferment.Progress `json:"progress,omitempty"`
	// Changed is the rest of the day, planned again because something happened otherwise; nil when nothing did.
	Changed *bakeday.Replanned `json:"changed,omitempty"`
	// Doubts are observations of this bake that can hardly be true.
	Doubts []Doubt `json:"doubts,omitempty"`
}

const (
	// stepShape is the step at which the dough is taken out of its tub.
	stepShape = "shape"
	// stepChill is the step at which the dough goes into the cold in its tub, and is shaped later.
	stepChill = "chill"
	// stepBulk is the step in which the dough ferments as a whole.
	stepBulk = "bulk"
	// after is how long a plan still counts after the bread was wanted. Judgment.
	after = 12 * time.Hour
	// enough is how far from the plan a step may be before the rest is planned again. Judgment.
	enough = 5 * time.Minute
)

// At answers: how does the day stand, what is due, and what changes? The clock is that of the bake's zone.
//
// A plan that is being followed is made again as it was when it was made; a dough that was mixed today is of this bake
// whether anybody said that a plan is followed or not. What was learned before the plan was made counts.
//
// Errors: those of [bakeday.Bake.Plan] and [Observations.Learn].
func (u Under) At(ctx context.Context, clock bakeday.KitchenClock) (DayNow, error) {
	day := KitchenUnder{Order: bakeday.Order{Bakes: []bakeday.Bake{u.Bake}}, Observations: u.Observations}
	k, err := day.At(ctx, clock)
	if err != nil {
		return DayNow{}, ofBake(u.Bake, err)
	}
	return k.Breads[0], nil
}

// ofBake moves what is wrong with the only bake of an order to the paths of the bake.
func ofBake(b bakeday.Bake, err error) error {
	var p quantity.Problems
	for _, e := range quantity.InputErrors(err) {
		own := *e
		own.GoPath = strings.TrimPrefix(strings.TrimPrefix(own.GoPath, "Bakes[0]"), ".")
		own.Path = ""
		p.Join("", &own)
	}
	if p.Err() == nil {
		return err // of the context
	}
	return p.ErrFor(b)
}

// mixedBefore is how long before mixing a bake that nobody announced is taken to have begun. Judgment: a levain's
// ripening and the weighing.
const mixedBefore = 12 * time.Hour

// followed is the plan of the bread that somebody said is being followed, and still counts.
func (all Observations) followed(bread string, now time.Time) *FollowedPlan {
	var out *FollowedPlan
	for i := range all {
		if o := all[i]; o.Kind == SawPlan && o.whole() && o.Bread == bread && o.Plan.Wanted.Add(after).After(now) {
			out = o.Plan
		}
	}
	return out
}

// mixedLately is the dough of the bake that was mixed last, if its loaves can still be on their way to the oven.
func (all Observations) mixedLately(b bakeday.Bake, now time.Time) (Observation, bool) {
	// From mixing to the oven; in the cold as long as the bake allows. Judgment.
	way := 12 * time.Hour
	if b.Retard != nil {
		way += b.Retard.AtMost.Duration()
	}
	for i := len(all) - 1; i >= 0; i-- {
		if o := all[i]; o.Kind == SawMixed && o.whole() && o.Bread == b.Name {
			return o, now.Sub(o.At) < way
		}
	}
	return Observation{}, false
}

func (all Observations) since(at time.Time) Observations {
	var out Observations
	for _, o := range all {
		if !o.At.Before(at) {
			out = append(out, o)
		}
	}
	return out
}

// look finds the dough among what was observed; without an observed mixing, readings count from the plan's.
func (m *DayNow) look(seen Observations) {
	for _, d := range seen.Doubts() {
		if d.Observation.Bread == m.Name || d.Observation.Bread == "" {
			m.Doubts = append(m.Doubts, d)
		}
	}
	m.tick(seen)
	for _, b := range seen.Bakes() {
		if b.Bread == m.Name {
			m.Dough, m.Mixed = &b, b.Mixed.In(m.Now.Location())
		}
	}
	if m.Dough != nil {
		return
	}
	if at, ok := m.lastMixed(); ok {
		m.Mixed = at.In(m.Now.Location())
	}
	planned := LoggedBake{Bread: m.Name, Mixed: m.Mixed}
	for _, o := range seen {
		if o.whole() && (o.Bread == m.Name || o.Bread == "") && o.At.After(m.Mixed) {
			switch o.Kind {
			case SawRise:
				planned.Rises = append(planned.Rises, o)
			case SawReady:
				planned.Ready = &o
			case SawCore:
				planned.Cores = append(planned.Cores, o)
			}
		}
	}
	if len(planned.Rises) > 0 || planned.Ready != nil || len(planned.Cores) > 0 {
		m.Dough = &planned
	}
}

// lastMixed is when the last batch was ticked off.
func (m *DayNow) lastMixed() (at time.Time, ok bool) {
	for _, s := range m.Steps {
		if s.Kind == schedule.Mix {
			at, ok = m.Done[s.ID]
		}
	}
	return at, ok
}

// follow brings the clock of the dough up to date: its real temperature after mixing, what is known of the culture,
// and what was read.
func (m *DayNow) follow(learned Lessons) error {
	rising := m.Day.Rising
	if m.Dough != nil && !m.Dough.Mix.Dough.IsZero() {
		if r, err := m.Day.MixedAt(m.Mixed, m.Dough.Mix.Dough); err == nil && r.Feasible {
			rising = r
		}
	}
	bulk := rising.Bulk.Bulk()
	if known := learned.Culture(RaisingOf(bulk)); !known.IsZero() {
		bulk.Culture = known
	}
	var dough LoggedBake
	if m.Dough != nil {
		dough = *m.Dough
	}
	progress, err := dough.progress(bulk)
	if err != nil {
		return err
	}
	m.Progress = &progress
	return nil
}

// Progress answers: when is this dough ready, by what was read of it? The bulk is as it was mixed or planned, with the
// Rise that is wanted.
//
// Errors: those of [ferment.Bulk.Estimate].
func (b LoggedBake) Progress(bulk ferment.Bulk) (ferment.Progress, error) { return b.progress(bulk) }

func (b LoggedBake) progress(bulk ferment.Bulk) (ferment.Progress, error) {
	e, err := bulk.Estimate()
	if err != nil {
		return ferment.Progress{}, err
	}
	var readings []ferment.RiseReading
	for _, r := range b.Rises {
		if r.Rise == nil {
			continue
		}
		one := ferment.RiseReading{At: quantity.Elapsed(r.At.Sub(b.Mixed)), Rise: r.Rise.Rise, Error: r.Rise.Error}
		if n := len(readings); n > 0 && readings[n-1].At >= one.At {
			readings[n-1] = one // read twice in the same minute: the later one counts
			continue
		}
		if one.At.Duration() >= time.Second {
			readings = append(readings, one)
		}
	}
	if len(readings) == 0 {
		return ferment.Progress{Now: e, Before: e.Ready()}, nil
	}
	return e.Update(readings...)
}
