package planner

// Reach answers which times an event may have.
type Reach struct {
	net         *Net
	fore, back  *half
	early, late []int // late in mirrored time
	work        *trace
	ends        [][2]int
}

// NewReach prepares a feasible network; it returns nil for an infeasible one, and when the
// watch is over.
func NewReach(w *Watch, n *Net) *Reach {
	r := &Reach{net: n, fore: n.later(), back: n.earlier()}
	e, c := r.fore.solve(w)
	if c != nil {
		return nil
	}
	l, c := r.back.solve(w)
	if c != nil || w.Over() {
		return nil
	}
	r.early, r.late = e.least, l.least
	r.work = newTrace(r.fore, w)
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

// Next returns the least solution in which the event is at t or later, nil when there is none
// or the watch is over.
func (r *Reach) Next(event, t int) []int {
	if t <= r.early[event] {
		return r.early
	}
	return r.fore.from(r.work, r.early, event, t)
}

// Windows lists all times the event can have, as closed intervals in order. The possible
// times are a union of intervals: for every choice of sides at the holes the rest is a
// network of differences, in which the times of one event are an interval. The least
// solution from t on shows one choice of sides, and the greatest time within that choice
// ends an interval. Nil when the watch is over.
func (r *Reach) Windows(event int) [][2]int {
	if len(r.net.Holes) == 0 {
		return [][2]int{{r.early[event], r.Late(event)}}
	}
	var out [][2]int
	t := r.early[event]
	for t <= r.Late(event) {
		s := r.Next(event, t)
		if s == nil {
			break
		}
		from := s[event]
		to := r.furthest(s, event)
		if r.work.w.spend(4*len(s)) || r.work.w.spend(len(r.net.Holes)) {
			return nil
		}
		if k := len(out) - 1; k >= 0 && out[k][1]+1 >= from {
			out[k][1] = to
		} else {
			out = append(out, [2]int{from, to})
		}
		t = to + 1
	}
	if r.work.w.Over() {
		return nil
	}
	return out
}

// furthest is the greatest time of the event when every task stays on the side of each hole
// on which the solution s has it.
func (r *Reach) furthest(s []int, event int) int {
	// s may be the work of r.work: look at it before using that again.
	at := s[event]
	t := r.work
	r.ends = r.ends[:0]
	for _, h := range r.net.Holes {
		if end := EndOf(h.Task); s[end] <= h.From {
			r.ends = append(r.ends, [2]int{end, r.net.Limit - h.From})
		}
	}
	t.resume(r.back, r.late)
	for _, e := range r.ends {
		if t.least[e[0]] < e[1] {
			t.push(e[0], e[1], -1, -1, true)
		}
	}
	if r.back.run(t) != nil {
		return at // cannot happen: s itself is a solution on these sides
	}
	return r.net.Limit - t.least[event]
}
