package schedule

import (
	"fmt"
	"math"
	"strings"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule"
)

// day is a problem in units of its grid, read for the engines. It knows fixed capacities,
// closed and awkward spans, links of all kinds and latest times; no programs, changeovers or
// living steps.
type day struct {
	p       schedule.Problem
	unit    quantity.Elapsed
	h       int
	lo, hi  []int
	latest  []int // of the end
	stale   []int // cost per unit before latest
	index   map[string]int
	blocked [][]bool // by resource
	awkward [][]int  // by resource: cost of a unit
}

func read(p schedule.Problem) *day {
	d := &day{p: p, unit: p.Grid, h: int(p.Horizon / p.Grid), index: map[string]int{}}
	u := func(x quantity.Elapsed) int { return int(x / p.Grid) }
	for i, s := range p.Steps {
		d.index[s.ID] = i
		d.lo = append(d.lo, u(s.Min))
		d.hi = append(d.hi, max(u(s.Min), u(s.Max)))
		d.latest = append(d.latest, d.h)
		d.stale = append(d.stale, 0)
	}
	for _, b := range p.Bounds {
		i := d.index[b.Step]
		d.latest[i] = min(d.latest[i], u(quantity.Elapsed(b.Latest.Sub(p.Anchor))))
		d.stale[i] += b.EarlyPerMinute * d.minutes()
	}
	for _, r := range p.Resources {
		shut, cost := make([]bool, d.h), make([]int, d.h)
		for _, c := range r.Closed {
			for t := max(0, u(quantity.Elapsed(c.From.Sub(p.Anchor)))); t < min(d.h,
				u(quantity.Elapsed(c.To.Sub(p.Anchor)))); t++ {
				shut[t] = true
			}
		}
		for _, a := range r.Awkward {
			for t := max(0, u(quantity.Elapsed(a.From.Sub(p.Anchor)))); t < min(d.h,
				u(quantity.Elapsed(a.To.Sub(p.Anchor)))); t++ {
				cost[t] += a.PerMinute * d.minutes()
			}
		}
		d.blocked, d.awkward = append(d.blocked, shut), append(d.awkward, cost)
	}
	return d
}

func (d *day) minutes() int { return int(d.unit.Duration() / time.Minute) }

// needs lists a step's amounts by resource.
func (d *day) needs(i int) []int {
	out := make([]int, len(d.p.Resources))
	for _, n := range d.p.Steps[i].Needs {
		for r, res := range d.p.Resources {
			if res.ID == n.Resource {
				out[r] = n.Amount
			}
		}
	}
	return out
}

func (d *day) lag(x quantity.Elapsed) int {
	switch x {
	case schedule.NoLimit:
		return 2 * d.h
	case -schedule.NoLimit:
		return -2 * d.h
	}
	return int(x / d.unit)
}

// miniZinc writes the day as a constraint model.
func (d *day) miniZinc() string {
	var b strings.Builder
	n := len(d.p.Steps)
	fmt.Fprintf(&b, "include \"cumulative.mzn\";\n")
	fmt.Fprintf(&b, "array[0..%d] of var 0..%d: s; array[0..%d] of var 0..%d: d;\n", n-1, d.h, n-1, d.h)
	for i := 0; i < n; i++ {
		fmt.Fprintf(&b, "constraint d[%d] >= %d /\\ d[%d] <= %d /\\ s[%d] + d[%d] <= %d;\n", i, d.lo[i], i, d.hi[i], i, i,
			d.latest[i])
	}
	edge := func(i int, end bool) string {
		if end {
			return fmt.Sprintf("(s[%d] + d[%d])", i, i)
		}
		return fmt.Sprintf("s[%d]", i)
	}
	for _, l := range d.p.Links {
		from := edge(d.index[l.From], l.Kind == schedule.EndToStart || l.Kind == schedule.EndToEnd)
		to := edge(d.index[l.To], l.Kind == schedule.EndToEnd || l.Kind == schedule.StartToEnd)
		fmt.Fprintf(&b, "constraint %s - %s >= %d /\\ %s - %s <= %d;\n", to, from, d.lag(l.Min), to, from, d.lag(l.Max))
	}
	for _, g := range d.p.Alike {
		for k := 1; k < len(g); k++ {
			fmt.Fprintf(&b, "constraint s[%d] <= s[%d];\n", d.index[g[k-1]], d.index[g[k]])
		}
	}
	cost := []string{"0"}
	for r, res := range d.p.Resources {
		var s, dd, m []string
		for i := 0; i < n; i++ {
			a := d.needs(i)[r]
			if a == 0 {
				continue
			}
			s, dd, m = append(s, fmt.Sprintf("s[%d]", i)), append(dd, fmt.Sprintf("d[%d]", i)), append(m, fmt.Sprint(a))
			if d.lo[i] == d.hi[i] {
				var ok []string
				for t := 0; t+d.lo[i] <= d.h; t++ {
					good := true
					for x := t; x < t+d.lo[i]; x++ {
						good = good && !d.blocked[r][x]
					}
					if good {
						ok = append(ok, fmt.Sprint(t))
					}
				}
				fmt.Fprintf(&b, "constraint s[%d] in {%s};\n", i, strings.Join(ok, ","))
			} else {
				for t := 0; t < d.h; t++ {
					if d.blocked[r][t] {
						fmt.Fprintf(&b, "constraint s[%d] + d[%d] <= %d \\/ s[%d] > %d;\n", i, i, t, i, t)
					}
				}
			}
			switch {
			case sum(d.awkward[r]) == 0:
			case d.lo[i] == d.hi[i]:
				var w []string
				for t := 0; t <= d.h; t++ {
					w = append(w, fmt.Sprint(sum(d.awkward[r][t:min(d.h, t+d.lo[i])])))
				}
				cost = append(cost, fmt.Sprintf("[%s][s[%d] + 1]", strings.Join(w, ","), i))
			default:
				cost = append(cost, fmt.Sprintf("(w%d[s[%d] + d[%d]] - w%d[s[%d]])", r, i, i, r, i))
			}
		}
		if sum(d.awkward[r]) > 0 {
			var w []string
			for t := 0; t <= d.h; t++ {
				w = append(w, fmt.Sprint(sum(d.awkward[r][:t])))
			}
			fmt.Fprintf(&b, "array[0..%d] of int: w%d = array1d(0..%d,[%s]);\n", d.h, r, d.h, strings.Join(w, ","))
		}
		if res.Capacity > 0 && len(s) > 0 {
			fmt.Fprintf(&b, "constraint cumulative([%s],[%s],[%s],%d);\n", strings.Join(s, ","), strings.Join(dd, ","),
				strings.Join(m, ","), res.Capacity)
		}
	}
	for i, s := range d.p.Steps {
		if s.PerMinute != 0 {
			cost = append(cost, fmt.Sprintf("%d*d[%d]", s.PerMinute*d.minutes(), i))
		}
		if d.stale[i] != 0 {
			cost = append(cost, fmt.Sprintf("%d*(%d - s[%d] - d[%d])", d.stale[i], d.latest[i], i, i))
		}
	}
	fmt.Fprintf(&b, "var 0..100000000: cost = %s;\nsolve minimize cost;\noutput [\"cost=\\(cost)\\n\"];\n",
		strings.Join(cost, " + "))
	return b.String()
}

func sum(x []int) int {
	s := 0
	for _, v := range x {
		s += v
	}
	return s
}

// stepLP writes the day as a mixed integer program: z[e,t] is 1 when event e has happened by
// t. Events at a fixed distance are one event. It returns "" when some event has no time left.
func (d *day) stepLP() string {
	m := merge(d)
	if m == nil {
		return ""
	}
	var b, rows strings.Builder
	obj := map[string]int{}
	fixed := 0
	z := func(e, t int) (string, int) { // variable, or a constant
		switch {
		case t < m.lo[e]:
			return "", 0
		case t >= m.hi[e]:
			return "", 1
		}
		return fmt.Sprintf("z%d_%d", e, t-m.lo[e]), 0
	}
	row := func(terms []term, sense string, rhs int) {
		coef := map[string]int{}
		var order []string
		for _, q := range terms {
			v, c := z(q.e, q.t)
			rhs -= q.k * c
			if v != "" {
				if _, ok := coef[v]; !ok {
					order = append(order, v)
				}
				coef[v] += q.k
			}
		}
		text := ""
		for _, v := range order {
			if coef[v] != 0 {
				text += fmt.Sprintf(" %+d %s", coef[v], v)
			}
		}
		if text != "" {
			fmt.Fprintf(&rows, "%s %s %d\n", text, sense, rhs)
		}
	}
	var vars []string
	for e := range m.lo {
		for t := m.lo[e]; t <= m.hi[e]; t++ {
			if v, _ := z(e, t); v != "" {
				vars = append(vars, v)
			}
			if !m.ok[e][t-m.lo[e]] {
				row([]term{{1, e, t}, {-1, e, t - 1}}, "=", 0)
				continue
			}
			if t > m.lo[e] {
				row([]term{{-1, e, t}, {1, e, t - 1}}, "<=", 0)
			}
			c := m.cost(e, t)
			for _, q := range []term{{c, e, t}, {-c, e, t - 1}} {
				if v, k := z(q.e, q.t); v != "" {
					obj[v] += q.k
				} else {
					fixed += q.k * k
				}
			}
		}
	}
	for _, l := range m.lags { // x[v] - x[u] in [lo, hi]
		for t := m.lo[l.v] - 1; t <= m.hi[l.v]; t++ {
			row([]term{{1, l.v, t}, {-1, l.u, t - l.lo}}, "<=", 0)
		}
		if l.hi < d.h {
			for t := m.lo[l.u]; t <= m.hi[l.u]; t++ {
				row([]term{{1, l.u, t}, {-1, l.v, t + l.hi}}, "<=", 0)
			}
		}
	}
	for r, res := range d.p.Resources {
		if res.Capacity == 0 {
			continue
		}
		for t := 0; t < d.h; t++ {
			var terms []term
			for i := range d.p.Steps {
				if a := d.needs(i)[r]; a > 0 {
					s, e := m.start[i], m.end[i]
					terms = append(terms, term{a, s.e, t - s.off}, term{-a, e.e, t - e.off})
				}
			}
			row(terms, "<=", res.Capacity)
		}
	}
	fmt.Fprintf(&b, "Minimize\n obj: %d one", fixed)
	for _, v := range vars {
		if obj[v] != 0 {
			fmt.Fprintf(&b, " %+d %s", obj[v], v)
		}
	}
	b.WriteString("\nSubject To\n fix: one = 1\n" + rows.String() + "Bounds\n one = 1\n")
	for _, v := range vars {
		fmt.Fprintf(&b, " 0 <= %s <= 1\n", v)
	}
	b.WriteString("General\n" + strings.Join(vars, "\n") + "\nEnd\n")
	return b.String()
}

type term struct{ k, e, t int }

type where struct{ e, off int }

type lag struct{ u, v, lo, hi int }

// merged is a day with rigid events merged and domains made consistent.
type merged struct {
	d          *day
	start, end []where
	lo, hi     []int
	ok         [][]bool
	lags       []lag
	events     [][]contribution
}

type contribution struct {
	step int
	end  bool
	off  int
}

func merge(d *day) *merged {
	n := len(d.p.Steps)
	root, off := make([]int, 2*n), make([]int, 2*n)
	for v := range root {
		root[v] = v
	}
	var find func(v int) (int, int)
	find = func(v int) (int, int) {
		if root[v] == v {
			return v, 0
		}
		r, o := find(root[v])
		root[v], off[v] = r, off[v]+o
		return r, off[v]
	}
	var all []lag
	for i := 0; i < n; i++ {
		all = append(all, lag{2 * i, 2*i + 1, d.lo[i], d.hi[i]})
	}
	for _, l := range d.p.Links {
		u, v := 2*d.index[l.From], 2*d.index[l.To]
		if l.Kind == schedule.EndToStart || l.Kind == schedule.EndToEnd {
			u++
		}
		if l.Kind == schedule.EndToEnd || l.Kind == schedule.StartToEnd {
			v++
		}
		all = append(all, lag{u, v, d.lag(l.Min), d.lag(l.Max)})
	}
	for _, g := range d.p.Alike {
		for k := 1; k < len(g); k++ {
			all = append(all, lag{2 * d.index[g[k-1]], 2 * d.index[g[k]], 0, 2 * d.h})
		}
	}
	for _, l := range all {
		if l.lo == l.hi {
			ru, ou := find(l.u)
			rv, ov := find(l.v)
			if ru != rv {
				root[rv], off[rv] = ru, ou+l.lo-ov
			}
		}
	}
	m := &merged{d: d, start: make([]where, n), end: make([]where, n)}
	number := map[int]int{}
	at := make([]where, 2*n)
	for v := range at {
		r, o := find(v)
		e, ok := number[r]
		if !ok {
			e = len(number)
			number[r] = e
			m.events = append(m.events, nil)
		}
		at[v] = where{e, o}
		m.events[e] = append(m.events[e], contribution{v / 2, v%2 == 1, o})
	}
	for i := 0; i < n; i++ {
		m.start[i], m.end[i] = at[2*i], at[2*i+1]
	}
	for _, l := range all {
		u, v := at[l.u], at[l.v]
		if u.e != v.e {
			m.lags = append(m.lags, lag{u.e, v.e, l.lo + u.off - v.off, l.hi + u.off - v.off})
		}
	}
	return m.domains()
}

// domains removes times without support, event by event and lag by lag.
func (m *merged) domains() *merged {
	d := m.d
	base := -d.h
	size := 3*d.h + 1
	dom := make([][]bool, len(m.events))
	for e := range dom {
		dom[e] = make([]bool, size)
		for t := range dom[e] {
			ok := true
			for _, c := range m.events[e] {
				x := t + base + c.off
				ok = ok && x >= 0 && x <= d.h && (!c.end || x <= d.latest[c.step])
				if ok && !c.end && d.lo[c.step] == d.hi[c.step] {
					for r, a := range d.needs(c.step) {
						for y := x; a > 0 && y < min(d.h, x+d.lo[c.step]); y++ {
							ok = ok && !d.blocked[r][y]
						}
					}
				}
			}
			dom[e][t] = ok
		}
	}
	for moved := true; moved; {
		moved = false
		for _, l := range m.lags {
			for _, f := range []lag{l, {l.v, l.u, -l.hi, -l.lo}} {
				count := make([]int, size+1)
				for t := 0; t < size; t++ {
					count[t+1] = count[t]
					if dom[f.v][t] {
						count[t+1]++
					}
				}
				for t := 0; t < size; t++ {
					a, b := max(0, t+f.lo), min(size-1, t+f.hi)
					if dom[f.u][t] && (a > b || count[b+1] == count[a]) {
						dom[f.u][t], moved = false, true
					}
				}
			}
		}
	}
	for e := range dom {
		lo, hi := math.MaxInt, math.MinInt
		for t, ok := range dom[e] {
			if ok {
				lo, hi = min(lo, t), max(hi, t)
			}
		}
		if lo > hi {
			return nil
		}
		m.lo, m.hi = append(m.lo, lo+base), append(m.hi, hi+base)
		m.ok = append(m.ok, dom[e][lo:hi+1])
	}
	return m
}

// cost is what event e costs at time t.
func (m *merged) cost(e, t int) int {
	d, c := m.d, 0
	for _, q := range m.events[e] {
		x := t + q.off
		sign := -1
		if q.end {
			sign = 1
			c += d.stale[q.step] * (d.latest[q.step] - x)
		}
		c += sign * d.p.Steps[q.step].PerMinute * d.minutes() * x
		for r, a := range d.needs(q.step) {
			if a > 0 {
				c += sign * sum(d.awkward[r][:max(0, min(d.h, x))])
			}
		}
	}
	return c
}
