package schedule

import (
	"context"
	"slices"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/planner"
)

// Robustness says what a timetable survives when the dough is early or late.
type Robustness struct {
	// Survives is true when, whatever every living step does within its range, what comes after
	// can be timed so that every rule is kept, acting only on what has been seen. Everything
	// that does not wait for a living step happens as planned; the order at shared resources
	// and the side of each absence on which a step lies stay as in the timetable. So true is a
	// guarantee; false may only mean that this timetable does not survive, and another would.
	Survives bool `json:"survives"`
	// ByMoving is true when it would survive if the steps before the living ones were timed
	// differently, in the same order and on the same sides of absences.
	ByMoving bool `json:"by_moving"`
	// Share is the largest share of all ranges, taken around what is likely, that is survived:
	// 1 when Survives, 0 when only the likely durations work. It is found to 1/1000.
	Share   float64  `json:"share"`
	Spreads []Spread `json:"spreads,omitempty"` // what Share means for each living step
	Against []Breach `json:"against,omitempty"` // when Survives is false: the rules that together are in the way
	Watches []Watch  `json:"watches,omitempty"` // when to look at the dough, in order of time
	// TimeRanOut says that the context ended first, so that less is claimed than may hold.
	TimeRanOut bool `json:"time_ran_out,omitempty"`
}

// Spread is the range of a living step's duration that a timetable survives.
type Spread struct {
	Label
	Early quantity.Elapsed `json:"early"`
	Late  quantity.Elapsed `json:"late"`
}

// Watch is when somebody should look at a living step.
type Watch struct {
	Label
	From    time.Time       `json:"from"`
	To      time.Time       `json:"to"`
	Who     string          `json:"who,omitempty"`    // the ID of the resource that looks; empty when nobody has to
	Free    []Span          `json:"free,omitempty"`   // the parts of From to To in which Who is there
	Away    Absent          `json:"away,omitempty"`   // whether Who is away when it matters
	Warning working.Message `json:"warning,omitzero"` // set when Who is away for all of it, or for its end
}

// Absent says whether the one who has to look at a living step is there.
type Absent int

// How much of the time in which to look somebody is away.
const (
	Present     Absent = iota // there when it may last longest
	AwayAtEnd                 // away when it may last longest
	AwayAllTime               // away all the time
)

// Robust answers what happens when the dough is early or late: it checks that the timetable
// can be carried out whatever the living steps do (dynamic controllability), and when to look
// at the dough.
//
// Ranges are the Min and Max of living steps. The check is exact for the network of
// differences left when the order at shared resources and the side of every absence are kept
// as in the timetable; it is therefore sound and not complete for the whole problem. Acting in
// the very minute in which an end is seen is allowed.
//
// When the context ends first, what was not proven by then is not claimed: Survives and ByMoving
// are false, Share is what was reached and Against is empty.
//
// The error reports a timetable without steps, and one that this package did not find or whose steps were changed.
// Source: Morris and Muscettola, "Temporal dynamic controllability revisited", AAAI 2005.
func (t Timetable) Robust(ctx context.Context) (Robustness, error) { return t.robust(ctx, true) }

// Surviving answers like [Timetable.Robust], in less than half the time, without what is in the way: Against is empty.
func (t Timetable) Surviving(ctx context.Context) (Robustness, error) { return t.robust(ctx, false) }

func (t Timetable) robust(ctx context.Context, reasons bool) (Robustness, error) {
	if t.c == nil || len(t.Steps) == 0 {
		return Robustness{}, quantity.DataPaths(t, &quantity.InputError{
			GoPath: "Steps",
			Want:   quantity.Tell("schedule.want_timetable_steps", "a timetable with steps"),
			Err:    quantity.ErrRequired,
		})
	}
	if !t.asFound() {
		return Robustness{}, quantity.DataPaths(t, &quantity.InputError{
			GoPath: "Steps",
			Got:    quantity.Tell("schedule.got_steps_were_changed", "steps that were changed"),
			Want:   quantity.Tell("schedule.want_timetable_was_found", "a timetable as it was found"),
			Err:    quantity.ErrInconsistent,
		})
	}
	c, w := t.c, planner.NewWatch(ctx, 0)
	net, living, found := t.uncertain()
	ranges := func(thousandths int) []planner.Contingent {
		var out []planner.Contingent
		for _, i := range living {
			lo, hi := c.spread(i, thousandths)
			out = append(out, planner.Contingent{A: planner.StartOf(i), C: planner.EndOf(i), Lo: lo, Hi: hi})
		}
		return out
	}
	var r Robustness
	differences := net.Differences(w)
	r.Survives = differences.Controllable(w, ranges(1000))
	r.ByMoving = r.Survives
	share := 1000
	if !r.Survives {
		low, high := 0, 1000
		for high-low > 1 && !w.Over() {
			if mid := (low + high) / 2; differences.Controllable(w, ranges(mid)) {
				low = mid
			} else {
				high = mid
			}
		}
		share = low
		free := *net
		free.Arcs = slices.DeleteFunc(slices.Clone(net.Arcs),
			func(a planner.Arc) bool { return a.Rule >= len(c.rules) })
		r.ByMoving = free.Controllable(w, ranges(1000))
		if reasons {
			r.Against = against(w, net, ranges(1000), found())
		}
	}
	r.Share = float64(share) / 1000
	for _, i := range living {
		lo, hi := c.spread(i, share)
		r.Spreads = append(r.Spreads, Spread{Label: c.in.Steps[i].label(), Early: c.long(lo), Late: c.long(hi)})
	}
	r.Watches, r.TimeRanOut = t.watches(), w.Over()
	return r, nil
}

// asFound reports whether the steps are those of the answer, at its times.
func (t Timetable) asFound() bool {
	if t.c == nil || len(t.Steps) != len(t.c.in.Steps) || len(t.times) != t.c.net.Events {
		return false
	}
	for i, s := range t.Steps {
		if s.ID != t.c.in.Steps[i].ID || !s.Start.Equal(t.c.when(t.times[planner.StartOf(i)])) ||
			!s.End.Equal(t.c.when(t.times[planner.EndOf(i)])) ||
			t.c.in.Steps[i].Living != (s.Watch != nil) {
			return false
		}
	}
	return true
}

// spread is the range of a living step in units, drawn toward what is likely.
func (c *compiled) spread(i, thousandths int) (lo, hi int) {
	s := c.in.Steps[i]
	likely := c.lo[i]
	lo = int(s.Min / c.grid)
	hi = lo
	if s.Max > 0 {
		hi = int(s.Max / c.grid)
	}
	return likely - (likely-lo)*thousandths/1000, likely + (hi-likely)*thousandths/1000
}

// uncertain is the network of the timetable without the likely durations of living steps, with
// every step on its side of every absence and what does not wait for a living step at its
// planned time. The last answer lists its rules.
func (t Timetable) uncertain() (*planner.Net, []int, func() []Breach) {
	c := t.c
	var living []int
	assumed := map[int]bool{}
	for i, s := range c.in.Steps {
		if s.Living {
			living = append(living, i)
		}
	}
	for id, r := range c.rules {
		if r.kind == StepExact && c.in.Steps[c.index[r.step]].Living {
			assumed[id] = true
		}
	}
	net := &planner.Net{Events: c.net.Events, Limit: c.net.Limit}
	for _, a := range c.net.Arcs {
		if a.Rule < 0 || !assumed[a.Rule] {
			net.Arcs = append(net.Arcs, a)
		}
	}
	net.Arcs = append(net.Arcs, t.orders...)
	for _, h := range c.net.Holes {
		if end := planner.EndOf(h.Task); t.times[end] <= h.From {
			net.Arcs = append(net.Arcs, planner.Arc{From: end, To: 0, W: -h.From, Rule: h.Rule, Upper: true})
		} else {
			net.Arcs = append(net.Arcs, planner.Arc{From: 0, To: planner.StartOf(h.Task), W: h.To, Rule: h.Rule})
		}
	}
	waits := after(net, living)
	for i, s := range c.in.Steps {
		for _, v := range []int{planner.StartOf(i), planner.EndOf(i)} {
			if waits[v] || s.Living && v == planner.EndOf(i) {
				continue
			}
			net.Arcs = append(net.Arcs, planner.Arc{From: 0, To: v, W: t.times[v], Rule: len(c.rules) + i},
				planner.Arc{From: v, To: 0, W: -t.times[v], Rule: len(c.rules) + i, Upper: true})
		}
	}
	return net, living, t.findings
}

// findings are the rules of the network of uncertain: those of the problem, and each step as planned.
func (t Timetable) findings() []Breach {
	var found []Breach
	for _, r := range t.c.rules {
		found = append(found, Breach{Rule: r.kind, Step: r.step, Other: r.other, Words: r.words()})
	}
	for i, s := range t.c.in.Steps {
		words := working.Tell("schedule.as_planned", "%v as planned, %v", s.label().Title(), t.Steps[i].Start)
		found = append(found, Breach{Rule: AsPlanned, Step: s.ID, Words: words})
	}
	return found
}

// after finds the events that come after the end of a living step.
func after(net *planner.Net, living []int) []bool {
	next := make([][]int, net.Events)
	for _, a := range net.Arcs {
		if a.W >= 0 && a.To != 0 {
			next[a.From] = append(next[a.From], a.To)
		}
	}
	waits := make([]bool, net.Events)
	var queue []int
	for _, i := range living {
		queue = append(queue, planner.EndOf(i))
	}
	for len(queue) > 0 {
		v := queue[0]
		queue = queue[1:]
		for _, u := range next[v] {
			if !waits[u] {
				waits[u] = true
				queue = append(queue, u)
			}
		}
	}
	return waits
}

// against names a smallest set of rules that the living steps can break.
func against(w *planner.Watch, net *planner.Net, ranges []planner.Contingent, found []Breach) []Breach {
	var rules []int
	seen := map[int]bool{}
	for _, a := range net.Arcs {
		if a.Rule >= 0 && !seen[a.Rule] {
			seen[a.Rule] = true
			rules = append(rules, a.Rule)
		}
	}
	core := planner.Smallest(rules, nil, func(kept map[int]bool) bool {
		return !w.Over() && !net.Only(kept).Controllable(w, ranges)
	})
	if w.Over() {
		return nil
	}
	var out []Breach
	for _, id := range core {
		out = append(out, found[id])
	}
	return out
}

// watches finds when each living step has to be looked at and whether somebody can.
func (t Timetable) watches() []Watch {
	var out []Watch
	for _, k := range t.ByTime() {
		s := t.c.in.Steps[k]
		if !s.Living {
			continue
		}
		w := Watch{Label: s.label(), From: t.Steps[k].Watch.From, To: t.Steps[k].Watch.To, Who: s.Watch}
		if s.Watch != "" {
			who := t.c.in.Resources[t.c.res[s.Watch]]
			w.Free = free(w.From, w.To, who.Closed)
			switch {
			case len(w.Free) == 0:
				w.Away = AwayAllTime
				w.Warning = working.Tell("schedule.away_all_that_time",
					"%v may be ready any time from %v to %v, and %v is away all that time", s.label().Title(), w.From,
					w.To, who.title())
			case w.Free[len(w.Free)-1].To.Before(w.To):
				w.Away = AwayAtEnd
				w.Warning = working.Tell("schedule.away_at_the_end",
					"%v may be ready as late as %v, but %v is away from %v", s.label().Title(), w.To, who.title(),
					w.Free[len(w.Free)-1].To)
			}
		}
		out = append(out, w)
	}
	return out
}

// free is what is left of from to to outside the closed spans; an instant counts as free when
// it is not inside a span.
func free(from, to time.Time, closed []Span) []Span {
	left := []Span{{From: from, To: to}}
	for _, c := range closed {
		var next []Span
		for _, s := range left {
			if !c.From.Before(s.To) && !c.From.Equal(s.From) || !s.From.Before(c.To) {
				next = append(next, s)
				continue
			}
			if s.From.Before(c.From) {
				next = append(next, Span{From: s.From, To: c.From})
			}
			if c.To.Before(s.To) || c.To.Equal(s.To) {
				next = append(next, Span{From: c.To, To: s.To})
			}
		}
		left = next
	}
	return left
}

// Message says how much is survived, and what is in the way of more.
func (r Robustness) Message() working.Message {
	if r.Survives {
		return working.Tell("schedule.survives", "survives the whole range of every living step")
	}
	all := []working.Message{working.Tell("schedule.survives_share", "survives %.1f %% of the ranges", 100*r.Share)}
	for _, s := range r.Spreads {
		all = append(all, working.Tell("schedule.spread", "%v: %v to %v", s.Title(), s.Early, s.Late))
	}
	if r.ByMoving {
		all = append(all, working.Tell("schedule.by_moving", "all of them when the steps before are timed differently"))
	}
	if len(r.Against) > 0 {
		words := make([]working.Message, len(r.Against))
		for i, f := range r.Against {
			words[i] = f.Words
		}
		all = append(all, working.Tell("schedule.against", "because of: %v", working.Join(words, "; ")))
	}
	return working.Join(all, "\n  ")
}

// Message says when to look at the dough, and whether somebody can.
func (w Watch) Message() working.Message {
	look := working.Tell("schedule.look", "look at %v from %v to %v", w.Title(), w.From, w.To)
	if w.Warning.IsZero() {
		return look
	}
	return working.Tell("schedule.look_warning", "%v: %v", look, w.Warning)
}

// String says what is survived and when to look at the dough.
func (r Robustness) String() string {
	s := r.Message().String()
	for _, w := range r.Watches {
		s += "\n" + w.Message().String()
	}
	return s
}
