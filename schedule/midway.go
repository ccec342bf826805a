package schedule

import (
	"fmt"
	"slices"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

// Midway is what has happened so far on the day.
type Midway struct {
	Now  time.Time `json:"now"` // nothing that has not begun may begin before
	Done []Done    `json:"done,omitempty"`
	// Ranges update the living steps under way from a look at the dough.
	Ranges []Look `json:"ranges,omitempty"`
}

// Done is a step that has begun, or begun and ended, at its real time.
type Done struct {
	Step  string    `json:"step"` // its ID
	Start time.Time `json:"start"`
	End   time.Time `json:"end,omitzero"` // zero while the step goes on
}

// Look is a new estimate of when a living step that is under way ends, from a reading of the
// dough.
type Look struct {
	Step   string    `json:"step"` // its ID
	Early  time.Time `json:"early"`
	Likely time.Time `json:"likely"`
	Late   time.Time `json:"late"`
}

// Midway returns the problem that is left in the middle of the day: what is done is fixed at
// its real times, what is under way has begun when it did and ends no earlier than now, and
// the rest begins no earlier than now. Rules between times that are past are dropped, because
// what happened cannot be changed; rules from the past to the future stay, and when one cannot
// be kept any more the answer to the new problem says so.
//
// A step under way for longer than its Max may end now or later. Times must lie on the grid.
// Errors are [quantity.InputError] values, all at once.
func (p Problem) Midway(m Midway) (Problem, error) {
	if _, err := p.compile(); err != nil {
		return Problem{}, err
	}
	var bad quantity.Problems
	w := &midway{p: p, m: m, bad: &bad, started: map[string]Done{}, index: map[string]int{}}
	for i, s := range p.Steps {
		w.index[s.ID] = i
	}
	w.read()
	if err := bad.ErrFor(p); err != nil {
		return Problem{}, err
	}
	return w.rest(), nil
}

type midway struct {
	p       Problem
	m       Midway
	bad     *quantity.Problems
	started map[string]Done
	index   map[string]int
	ranges  map[string]Look
}

func (w *midway) onGrid(path string, t time.Time) {
	grid := w.p.grid()
	switch d := quantity.Elapsed(t.Sub(w.p.Anchor)); {
	case t.IsZero():
		w.bad.Required(path, quantity.Tell("schedule.want_instant", "an instant"))
	case d < -maxHorizon || d > 2*maxHorizon:
		w.bad.Add(path, t.Format(time.RFC3339), quantity.Tell("schedule.want_near_plan", "near the plan"),
			quantity.ErrOutOfRange)
	case d%grid != 0:
		w.bad.Add(path, t.Format(time.RFC3339), quantity.Tell("schedule.want_time_grid", "a time on the grid of %v", grid),
			quantity.ErrTooPrecise)
	}
}

func (w *midway) read() {
	w.onGrid("Now", w.m.Now)
	for i, d := range w.m.Done {
		path := fmt.Sprintf("Done[%d]", i)
		if _, ok := w.index[d.Step]; !ok {
			w.bad.Add(path+".Step", quote(d.Step), quantity.Tell("schedule.want_id_step", "the ID of a step"),
				quantity.ErrInconsistent)
		}
		if _, twice := w.started[d.Step]; twice {
			w.bad.Add(path+".Step", quote(d.Step), quantity.Tell("schedule.want_each_step_once", "each step once"),
				quantity.ErrInconsistent)
		}
		w.onGrid(path+".Start", d.Start)
		if d.Start.After(w.m.Now) {
			w.bad.Add(path+".Start", d.Start.Format(time.RFC3339),
				quantity.Tell("schedule.want_not_after_present", "not after the present"), quantity.ErrInconsistent)
		}
		if !d.End.IsZero() {
			w.onGrid(path+".End", d.End)
			if d.End.Before(d.Start) || d.End.After(w.m.Now) {
				w.bad.Add(path+".End", d.End.Format(time.RFC3339),
					quantity.Tell("schedule.want_from_start_to_present", "from its start to the present"), quantity.ErrInconsistent)
			}
		}
		w.started[d.Step] = d
	}
	w.ranges = map[string]Look{}
	for i, r := range w.m.Ranges {
		path := fmt.Sprintf("Ranges[%d]", i)
		d, ok := w.started[r.Step]
		if !ok || !d.End.IsZero() || !w.p.Steps[w.index[r.Step]].Living {
			w.bad.Add(path+".Step", quote(r.Step), quantity.Tell("schedule.want_living_step_under_way",
				"a living step that is under way"), quantity.ErrInconsistent)
			continue
		}
		w.onGrid(path+".Early", r.Early)
		w.onGrid(path+".Likely", r.Likely)
		w.onGrid(path+".Late", r.Late)
		if r.Early.Before(w.m.Now) || r.Likely.Before(r.Early) || r.Late.Before(r.Likely) {
			w.bad.Add(path, r.Early.Format(time.RFC3339), quantity.Tell("schedule.want_present_early_likely_and_late",
				"the present, early, likely and late in this order"),
				quantity.ErrInconsistent)
		}
		w.ranges[r.Step] = r
	}
}

func (w *midway) rest() Problem {
	p := w.p
	now := w.m.Now
	p.Steps = slices.Clone(p.Steps)
	p.Links, p.Bounds, p.Alike = nil, nil, nil
	if last := now.Add(time.Minute); p.Anchor.Add(p.Horizon.Duration()).Before(last) {
		p.Horizon = quantity.Elapsed(now.Sub(p.Anchor)) + p.grid()
	}
	if first := w.first(); first.Before(p.Anchor) {
		p.Horizon += quantity.Elapsed(p.Anchor.Sub(first))
		p.Anchor = first.In(p.Anchor.Location())
	}
	past := func(step string, e Edge) bool {
		d, ok := w.started[step]
		return ok && (e == Start || !d.End.IsZero())
	}
	for i := range p.Steps {
		s := &p.Steps[i]
		d, begun := w.started[s.ID]
		began := working.Tell("schedule.began", "%v began at %v", s.label().Title(), d.Start)
		itIs := working.Tell("schedule.it_is", "it is %v", now)
		switch {
		case begun && !d.End.IsZero():
			s.Min = quantity.Elapsed(d.End.Sub(d.Start))
			s.Max = s.Min
			s.Living, s.Likely, s.Needs, s.Watch = false, 0, nil, ""
			s.MinWords, s.MaxWords = working.Message{}, working.Message{}
			p.Bounds = append(p.Bounds,
				Bound{Step: s.ID, Edge: Start, Earliest: d.Start, Latest: d.Start, Firm: true, Words: began})
		case begun:
			w.underWay(s, quantity.Elapsed(now.Sub(d.Start)))
			p.Bounds = append(p.Bounds,
				Bound{Step: s.ID, Edge: Start, Earliest: d.Start, Latest: d.Start, Firm: true, Words: began},
				Bound{Step: s.ID, Edge: End, Earliest: now, Firm: true, Words: itIs})
		default:
			p.Bounds = append(p.Bounds, Bound{Step: s.ID, Edge: Start, Earliest: now, Firm: true, Words: itIs})
		}
	}
	for _, b := range w.p.Bounds {
		if !past(b.Step, b.Edge) {
			p.Bounds = append(p.Bounds, b)
		}
	}
	for _, l := range w.p.Links {
		a, b := l.Kind.edges()
		if !past(l.From, a) || !past(l.To, b) {
			p.Links = append(p.Links, l)
		}
	}
	for _, g := range w.p.Alike {
		left := slices.DeleteFunc(slices.Clone(g), func(s string) bool { _, begun := w.started[s]; return begun })
		if len(left) > 1 {
			p.Alike = append(p.Alike, left)
		}
	}
	p.Bounds = append(p.Bounds, w.changeovers()...)
	p.Resources = w.open(p)
	return p
}

// changeovers keeps what is to come away from what has just ended on the same resource: an oven
// that was emptied a minute ago is still reheating.
func (w *midway) changeovers() []Bound {
	var out []Bound
	for _, r := range w.p.Resources {
		if r.Changeover == 0 && len(r.Changes) == 0 {
			continue
		}
		for _, s := range w.p.Steps {
			need, uses := s.need(r.ID)
			if _, begun := w.started[s.ID]; begun || !uses {
				continue
			}
			var last Done
			var takes quantity.Elapsed
			var free time.Time
			for _, d := range w.m.Done {
				before, used := w.p.Steps[w.index[d.Step]].need(r.ID)
				if !used || !d.Start.Before(d.End) || !r.apart(before, need) {
					continue
				}
				change := r.between(before, need)
				if at := d.End.Add(change.Duration()); at.After(free) {
					last, takes, free = d, change, at
				}
			}
			if free.After(w.m.Now) {
				out = append(out, Bound{Step: s.ID, Edge: Start, Earliest: free, Firm: true,
					Words: working.Tell("schedule.changeover", "%v needs %v after %v", r.title(), takes,
						w.p.Steps[w.index[last.Step]].label().Title())})
			}
		}
	}
	return out
}

// first is the earliest real start.
func (w *midway) first() time.Time {
	first := w.p.Anchor
	for _, d := range w.m.Done {
		if d.Start.Before(first) {
			first = d.Start
		}
	}
	return first
}

// underWay adapts the duration of a step that has been going on for so long.
func (w *midway) underWay(s *DayStep, so quantity.Elapsed) {
	most := s.Max
	if most == 0 {
		most = s.Min
	}
	if r, ok := w.ranges[s.ID]; ok {
		start := w.started[s.ID].Start
		since := func(t time.Time) quantity.Elapsed { return quantity.Elapsed(t.Sub(start)) }
		s.Min, s.Likely, s.Max = since(r.Early), since(r.Likely), since(r.Late)
		s.MinWords, s.MaxWords = working.Message{}, working.Message{}
		return
	}
	if most != NoLimit {
		most = max(most, so)
	}
	if s.Living {
		likely := s.Likely
		if likely == 0 {
			likely = s.Min + (most-s.Min)/2
			likely -= likely % w.p.grid()
		}
		s.Min = max(s.Min, so)
		s.Likely = max(likely, s.Min)
	}
	s.Max = most
}

// open drops the closed spans that what is under way shows to be open after all, and those
// that are past.
func (w *midway) open(p Problem) []Resource {
	out := slices.Clone(p.Resources)
	for i := range out {
		busy := false
		for _, s := range p.Steps {
			d, begun := w.started[s.ID]
			for _, n := range s.Needs {
				busy = busy || begun && d.End.IsZero() && n.Resource == out[i].ID
			}
		}
		out[i].Closed = slices.DeleteFunc(slices.Clone(out[i].Closed), func(c Span) bool {
			return !c.To.After(w.m.Now) || busy && !c.From.After(w.m.Now)
		})
	}
	return out
}

// Change is how one step differs between two timetables.
type Change struct {
	Label
	Start  quantity.Elapsed `json:"start"` // how much later it starts (negative: earlier)
	End    quantity.Elapsed `json:"end"`
	Length quantity.Elapsed `json:"length"` // how much longer it takes
	Words  working.Message  `json:"words"`  // "retard 40m shorter", "lunch moves to Sat 13:05"
}

// Changes lists the steps that differ between two timetables, in the order of the second.
func Changes(before, after Timetable) []Change {
	var out []Change
	for _, k := range after.ByTime() {
		b := after.Steps[k]
		a, ok := before.Step(b.ID)
		if !ok {
			continue
		}
		c := Change{
			Label: b.Label,
			Start: quantity.Elapsed(b.Start.Sub(a.Start)),
			End:   quantity.Elapsed(b.End.Sub(a.End)),
		}
		c.Length = c.End - c.Start
		if c.Start == 0 && c.End == 0 {
			continue
		}
		switch {
		case c.Length < 0 && c.Start != 0:
			c.Words = working.Tell("schedule.change_shorter_from", "%v %v shorter, from %v", b.Title(), -c.Length,
				b.Start)
		case c.Length < 0:
			c.Words = working.Tell("schedule.change_shorter", "%v %v shorter", b.Title(), -c.Length)
		case c.Length > 0 && c.Start != 0:
			c.Words = working.Tell("schedule.change_longer_from", "%v %v longer, from %v", b.Title(), c.Length, b.Start)
		case c.Length > 0:
			c.Words = working.Tell("schedule.change_longer", "%v %v longer", b.Title(), c.Length)
		default:
			c.Words = working.Tell("schedule.change_moves", "%v moves to %v", b.Title(), b.Start)
		}
		out = append(out, c)
	}
	return out
}

// String says the change in words.
func (c Change) String() string { return c.Words.String() }
