package bakeday

import (
	"slices"
	"time"

	"example.org/maslin/schedule"
)

// A decider says whether the members of a conflict can be kept together, and nothing else of its problem: by trying
// every order of what cannot be at one time. It shares no code with the planner: times are longest paths, found by
// going over all differences until none is left; two steps that use one thing, and a step and an absence, are told
// apart by trying one after the other. It reads the durations, lags and spans from the members, and what a step uses,
// times on the clock and how long a thing takes from one to another from the problem.
type decider struct {
	problem schedule.Problem
	at      map[string]int // the step of an ID: its start is event 2k+1, its end 2k+2; event 0 is the beginning
	arcs    []lag
	closed  []closedFor
	shared  []schedule.Resource
	takes   bool // what shares a thing takes some time, whatever the members say
	left    int  // nodes
}

// lag says that event to comes at least by minutes after event from.
type lag struct{ from, to, by int }

type closedFor struct{ step, from, to int }

const farMinutes = 60 * 24 * 60 // beyond every plan

func decide(p schedule.Problem, members []schedule.Member, takes bool, nodes int) (can, settled bool) {
	d := decider{problem: p, at: map[string]int{}, takes: takes, left: nodes}
	for k, s := range p.Steps {
		d.at[s.ID] = k
		d.arcs = append(d.arcs, lag{0, 2*k + 1, -farMinutes}, lag{2*k + 1, 2*k + 2, d.shortest(s)})
	}
	for _, m := range members {
		if !d.keep(m) {
			return false, false
		}
	}
	return d.search(d.arcs)
}

// shortest is a minute for what shares a thing, where a conflict is about one: as nothing it would use nothing.
func (d *decider) shortest(s schedule.DayStep) int {
	if !d.takes {
		return 0
	}
	for _, n := range s.Needs {
		for _, r := range d.problem.Resources {
			if r.ID == n.Resource && (r.Capacity > 0 || n.Program != "") {
				return 1
			}
		}
	}
	return 0
}

func (d *decider) minutes(t time.Time) int { return int(t.Sub(d.problem.Anchor) / time.Minute) }

func (d *decider) event(step string, end bool) int {
	if end {
		return 2*d.at[step] + 2
	}
	return 2*d.at[step] + 1
}

func (d *decider) least(from, to, by int) { d.arcs = append(d.arcs, lag{from, to, by}) }
func (d *decider) most(from, to, by int)  { d.arcs = append(d.arcs, lag{to, from, -by}) }

// keep takes a member in; false for a rule that it does not know.
func (d *decider) keep(m schedule.Member) bool {
	limit := int(m.Limit.Duration() / time.Minute)
	start, end := d.event(m.Step, false), d.event(m.Step, true)
	from := d.event(m.Step, m.Link != schedule.StartToStart && m.Link != schedule.StartToEnd)
	to := d.event(m.Other, m.Link == schedule.EndToEnd || m.Link == schedule.StartToEnd)
	switch m.Rule {
	case schedule.StepExact:
		d.least(start, end, limit)
		d.most(start, end, limit)
	case schedule.StepMin:
		d.least(start, end, limit)
	case schedule.StepMax:
		d.most(start, end, limit)
	case schedule.LinkExact:
		d.least(from, to, limit)
		d.most(from, to, limit)
	case schedule.LinkMin:
		d.least(from, to, limit)
	case schedule.LinkMax:
		d.most(from, to, limit)
	case schedule.PlanStart:
		for k := range d.problem.Steps {
			d.least(0, 2*k+1, 0)
		}
	case schedule.PlanEnd:
		for k := range d.problem.Steps {
			d.most(0, 2*k+2, int(d.problem.Horizon.Duration()/time.Minute))
		}
	case schedule.FixedTime, schedule.NotBefore, schedule.NotAfter:
		return d.bound(m)
	case schedule.Absence:
		for k, s := range d.problem.Steps {
			if slices.ContainsFunc(s.Needs, func(n schedule.Need) bool { return n.Resource == m.Other }) {
				d.closed = append(d.closed, closedFor{k, d.minutes(m.Closed.From), d.minutes(m.Closed.To)})
			}
		}
	case schedule.Capacity:
		i := slices.IndexFunc(d.problem.Resources, func(r schedule.Resource) bool { return r.ID == m.Other })
		d.shared = append(d.shared, d.problem.Resources[i])
	default:
		return false
	}
	return true
}

// bound takes in what stands on the clock.
func (d *decider) bound(m schedule.Member) bool {
	found := false
	for _, b := range d.problem.Bounds {
		if b.Step != m.Step || b.Words != m.Words || b.Wanted != m.Wanted {
			continue
		}
		e := d.event(b.Step, b.Edge == schedule.End)
		if m.Rule != schedule.NotAfter && !b.Earliest.IsZero() {
			d.least(0, e, d.minutes(b.Earliest))
			found = true
		}
		if m.Rule != schedule.NotBefore && !b.Latest.IsZero() {
			d.most(0, e, d.minutes(b.Latest))
			found = true
		}
	}
	return found
}

// search is whether there are times, all of what has to come apart being told apart one by one.
func (d *decider) search(arcs []lag) (can, settled bool) {
	if d.left--; d.left < 0 {
		return false, false
	}
	t, ok := d.earliest(arcs)
	if !ok {
		return false, true
	}
	ways := d.clash(t)
	if len(ways) == 0 {
		return true, true
	}
	settled = true
	for _, w := range ways {
		can, known := d.search(append(slices.Clip(slices.Clone(arcs)), w))
		if can {
			return true, true
		}
		settled = settled && known
	}
	return false, settled
}

// earliest are the earliest times of all events; false when the differences contradict one another.
func (d *decider) earliest(arcs []lag) ([]int, bool) {
	t := make([]int, 2*len(d.problem.Steps)+1)
	for k := range t[1:] {
		t[k+1] = -farMinutes
	}
	for range len(t) + 1 {
		moved := false
		for _, a := range arcs {
			if x := t[a.from] + a.by; x > t[a.to] {
				if t[a.to], moved = x, true; a.to == 0 {
					return nil, false // something would have to be before the beginning of time
				}
			}
		}
		if !moved {
			return t, true
		}
	}
	return nil, false
}

// clash finds something that the times break, and the ways to put it right, of which one has to be; none: nothing is.
func (d *decider) clash(t []int) []lag {
	for _, c := range d.closed {
		start, end := 2*c.step+1, 2*c.step+2
		if t[start] < c.to && t[end] > c.from {
			return []lag{{0, start, c.to}, {end, 0, -c.from}}
		}
	}
	for _, r := range d.shared {
		if ways := d.bothUse(r, t); len(ways) > 0 {
			return ways
		}
	}
	return nil
}

// bothUse finds steps that use more of a thing than there is, or two programs of it, or do not leave it the time from
// one to the other.
func (d *decider) bothUse(r schedule.Resource, t []int) []lag {
	type use struct {
		step int
		need schedule.Need
	}
	var uses []use
	for k, s := range d.problem.Steps {
		for _, n := range s.Needs {
			if n.Resource == r.ID {
				uses = append(uses, use{k, n})
			}
		}
	}
	gap := func(a, b use) int {
		takes := r.Changeover
		for _, c := range r.Changes {
			if c.From == a.need.Program && c.To == b.need.Program {
				takes = c.Takes
			}
		}
		return int(takes.Duration() / time.Minute)
	}
	after := func(a, b use) lag { return lag{2*a.step + 2, 2*b.step + 1, gap(a, b)} }
	for i, a := range uses {
		for _, b := range uses[i+1:] {
			tooMuch := r.Capacity > 0 && a.need.Amount+b.need.Amount > r.Capacity
			programs := a.need.Program != "" && b.need.Program != "" && a.need.Program != b.need.Program
			if !tooMuch && !programs {
				continue
			}
			x, y := after(a, b), after(b, a)
			if t[x.from]+x.by > t[x.to] && t[y.from]+y.by > t[y.to] {
				return []lag{x, y}
			}
		}
	}
	for _, a := range uses {
		var now []use
		sum := 0
		for _, b := range uses {
			if at := t[2*a.step+1]; t[2*b.step+1] <= at && at < t[2*b.step+2] {
				now, sum = append(now, b), sum+b.need.Amount
			}
		}
		if r.Capacity == 0 || sum <= r.Capacity {
			continue
		}
		var ways []lag
		for i, b := range now {
			for j, c := range now {
				if i != j {
					ways = append(ways, lag{2*b.step + 2, 2*c.step + 1, 0})
				}
			}
		}
		return ways
	}
	return nil
}
