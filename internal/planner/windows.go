package planner

// Reach answers which times an event may have.
type Reach struct {
	net         *Net
	fore, back  *half
	early, late []int // late in mirrored time
}

// NewReach prepares a feasible network; it returns nil for an infeasible one.
func NewReach(n *Net) *Reach {
	r := &Reach{net: n, fore: n.later(), back: n.earlier()}
	e, c := r.fore.solve()
	if c != nil {
		return nil
	}
	l, c := r.back.solve()
	if c != nil {
		return nil
	}
	r.early, r.late = e.least, l.least
	return r
}

// Early is the least time of the event.
func (r *Reach) Early(event int) int { return r.early[event] }

// Late is the greatest time of the event.
func (r *Reach) Late(event int) int {
	if event == 0 {
		return 0
	}
	return r.net.Limit - r.late[event]
}

// Next returns the least solution in which the event is at t or later, nil when there is none.
func (r *Reach) Next(event, t int) []int {
	if t <= r.early[event] {
		return r.early
	}
	return r.fore.from(r.early, event, t)
}

// Previous returns the greatest time not after t which the event can have.
func (r *Reach) Previous(event, t int) (int, bool) {
	m := r.net.Limit - t
	if m <= r.late[event] {
		return r.Late(event), true
	}
	s := r.back.from(r.late, event, m)
	if s == nil {
		return 0, false
	}
	return r.net.Limit - s[event], true
}

// Windows lists all times the event can have, as closed intervals in order. The possible
// times are a union of intervals: for every choice of sides at the holes the rest is a
// network of differences, in which the times of one event are an interval. The least
// solution from t on shows one choice of sides, and the greatest time within that choice
// ends an interval.
func (r *Reach) Windows(event int) [][2]int {
	var out [][2]int
	t := r.early[event]
	for t <= r.Late(event) {
		s := r.Next(event, t)
		if s == nil {
			break
		}
		from, to := s[event], r.furthest(s, event)
		if k := len(out) - 1; k >= 0 && out[k][1]+1 >= from {
			out[k][1] = to
		} else {
			out = append(out, [2]int{from, to})
		}
		t = to + 1
	}
	return out
}

// furthest is the greatest time of the event when every task stays on the side of each hole
// on which the solution s has it.
func (r *Reach) furthest(s []int, event int) int {
	t := newTrace(r.net.Events)
	copy(t.least, r.late)
	for _, h := range r.net.Holes {
		if end := EndOf(h.Task); s[end] <= h.From && t.least[end] < r.net.Limit-h.From {
			t.push(end, r.net.Limit-h.From, -1, -1, true)
		}
	}
	if r.back.run(t) != nil {
		return s[event] // cannot happen: s itself is a solution on these sides
	}
	return r.net.Limit - t.least[event]
}
