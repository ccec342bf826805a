package gasbalance

import "sort"

// moment is a state with its place on the history; at a jump it leaves with another temperature than it arrives with.
type moment struct {
	hour, arrives, leaves float64 // h, °C
	State
}

// walker goes along a history run by run.
type walker struct {
	clock   *Clock
	history []Knot
	next    int // first knot not yet reached
	left    int // runs left of the stretch in hand
	dt, dc  float64
}

func (c *Clock) walk(history []Knot, from float64) walker {
	return walker{clock: c, history: history, next: after(history, from)}
}

// after is the index of the first knot later than a time.
func after(h []Knot, hour float64) int {
	return sort.Search(len(h), func(i int) bool { return h[i].Hour > hour })
}

// celsius is the temperature of a history at a time; at a jump the later one.
func celsius(h []Knot, hour float64) float64 {
	i := after(h, hour)
	switch i {
	case 0:
		return h[0].Celsius
	case len(h):
		return h[i-1].Celsius
	}
	return between(h[i-1], h[i], hour)
}

func between(p, q Knot, hour float64) float64 {
	return p.Celsius + (q.Celsius-p.Celsius)*(hour-p.Hour)/(q.Hour-p.Hour)
}

// step goes on by one run, at most to until, and reports whether there was one.
func (w *walker) step(m *moment, until float64) bool {
	if !(m.hour < until) {
		return false
	}
	end := Knot{until, m.leaves} // held after the last knot
	whole := false               // the stretch ends at a knot
	if w.next < len(w.history) {
		if k := w.history[w.next]; k.Hour <= until {
			end, whole = k, true
		} else {
			end.Celsius = between(Knot{m.hour, m.leaves}, k, until)
		}
	}
	if w.left <= 0 {
		n := w.clock.cuts(&m.State, end.Hour-m.hour, m.leaves, end.Celsius)
		w.left, w.dt, w.dc = n, (end.Hour-m.hour)/float64(n), (end.Celsius-m.leaves)/float64(n)
	}
	w.left--
	to := Knot{m.hour + w.dt, m.leaves + w.dc}
	if w.left == 0 {
		to = end
	}
	w.clock.stride(&m.State, to.Hour-m.hour, m.leaves, to.Celsius)
	m.hour, m.arrives, m.leaves = to.Hour, to.Celsius, to.Celsius
	if w.left == 0 && whole {
		for w.next < len(w.history) && w.history[w.next].Hour <= to.Hour {
			m.leaves = w.history[w.next].Celsius
			w.next++
		}
	}
	return true
}

// Path is a history followed from a start: the state at every corner and cut, so that any time is one run away. It
// is immutable once made.
type Path struct {
	walker
	moments []moment
}

// Follow follows a history, at least one knot in order of time, from its time 0 to a later one.
func (c *Clock) Follow(start State, history []Knot, until float64) Path {
	p := c.begin(start, history)
	for p.grow(until) {
	}
	return p
}

func (c *Clock) begin(start State, history []Knot) Path {
	p := Path{walker: c.walk(history, 0), moments: make([]moment, 1, min(len(history)+8, 32))}
	t := celsius(history, 0)
	p.moments[0] = moment{0, t, t, start}
	return p
}

// grow goes on by one run.
func (p *Path) grow(until float64) bool {
	m := p.moments[len(p.moments)-1]
	if !p.step(&m, until) {
		return false
	}
	p.moments = append(p.moments, m)
	return true
}

// Hours is how far the path has been followed.
func (p *Path) Hours() float64 { return p.moments[len(p.moments)-1].hour }

// At is the state and the temperature at a time; beyond what was followed it goes on along the history.
func (p *Path) At(hour float64) (State, float64) {
	i := sort.Search(len(p.moments), func(i int) bool { return p.moments[i].hour > hour })
	if i == 0 {
		return p.moments[0].State, p.moments[0].leaves
	}
	m := p.moments[i-1]
	if i == len(p.moments) {
		w := p.walker
		w.left = 0
		for w.step(&m, hour) {
		}
		return m.State, m.leaves
	}
	return p.within(&m, &p.moments[i], hour)
}

// within is the state at a time inside the run from a moment to the next.
func (p *Path) within(m, n *moment, hour float64) (State, float64) {
	s := m.State
	if hour <= m.hour {
		return s, m.leaves
	}
	t := between(Knot{m.hour, m.leaves}, Knot{n.hour, n.arrives}, hour)
	p.clock.stride(&s, hour-m.hour, m.leaves, t)
	return s, t
}
