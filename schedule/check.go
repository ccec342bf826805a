package schedule

import (
	"fmt"
	"time"
)

// Check says, in words, which rules of the problem the times of a timetable break; nothing when
// it keeps them all. It reads the problem directly and shares nothing with the planner, so
// that it can judge a timetable changed by hand, or the planner itself.
//
// A living step may take anything from its Min to its Max.
func (p Problem) Check(t Timetable) []string {
	k := checker{p: p, at: map[string]Timed{}}
	for _, s := range t.Steps {
		k.at[s.Name] = s
	}
	for _, s := range p.Steps {
		k.step(s)
	}
	if len(k.broken) > 0 && len(t.Steps) != len(p.Steps) {
		return k.broken
	}
	for _, l := range p.Links {
		k.link(l)
	}
	for _, b := range p.Bounds {
		k.bound(b)
	}
	for _, r := range p.Resources {
		k.resource(r)
	}
	for _, group := range p.Alike {
		for i := 1; i < len(group); i++ {
			if k.at[group[i]].Start.Before(k.at[group[i-1]].Start) {
				k.say("%s starts before %s", group[i], group[i-1])
			}
		}
	}
	return k.broken
}

type checker struct {
	p      Problem
	at     map[string]Timed
	broken []string
}

func (k *checker) say(format string, args ...any) {
	k.broken = append(k.broken, fmt.Sprintf(format, args...))
}

func (k *checker) step(s Step) {
	t, ok := k.at[s.Name]
	if !ok {
		k.say("%s is missing", s.Name)
		return
	}
	grid := k.p.Grid
	if grid == 0 {
		grid = time.Minute
	}
	most := s.Max
	if most == 0 {
		most = s.Min
	}
	if d := t.End.Sub(t.Start); d < s.Min || d > most {
		k.say("%s takes %v", s.Name, d)
	}
	if t.Start.Before(k.p.Anchor) || t.End.After(k.p.Anchor.Add(k.p.Horizon)) {
		k.say("%s lies outside the plan", s.Name)
	}
	if t.Start.Sub(k.p.Anchor)%grid != 0 || t.End.Sub(k.p.Anchor)%grid != 0 {
		k.say("%s is off the grid", s.Name)
	}
}

func (k *checker) link(l Link) {
	from, to := k.at[l.From], k.at[l.To]
	a, b := from.End, to.Start
	if l.Kind == StartToStart || l.Kind == StartToEnd {
		a = from.Start
	}
	if l.Kind == EndToEnd || l.Kind == StartToEnd {
		b = to.End
	}
	if d := b.Sub(a); d < l.Min || d > l.Max {
		k.say("%s to %s (%v): %v", l.From, l.To, l.Kind, d)
	}
}

func (k *checker) bound(b Bound) {
	at := k.at[b.Step].Start
	if b.Edge == End {
		at = k.at[b.Step].End
	}
	if !b.Earliest.IsZero() && at.Before(b.Earliest) || !b.Latest.IsZero() && at.After(b.Latest) {
		k.say("%s: %v of %s is at %v", b.Words, b.Edge, b.Step, at)
	}
}

func (k *checker) resource(r Resource) {
	type use struct {
		Timed
		Need
	}
	var uses []use
	for _, s := range k.p.Steps {
		for _, n := range s.Needs {
			if n.Resource == r.Name {
				uses = append(uses, use{k.at[s.Name], n})
			}
		}
	}
	for i, u := range uses {
		for _, c := range r.Closed {
			if u.Start.Before(c.To) && c.From.Before(u.End) {
				k.say("%s during %s", u.Name, c.Words)
			}
		}
		if !u.Start.Before(u.End) {
			continue
		}
		sum := 0
		for j, v := range uses {
			if !v.Start.Before(v.End) {
				continue
			}
			if !v.Start.After(u.Start) && u.Start.Before(v.End) {
				sum += v.Amount
			}
			if j <= i {
				continue
			}
			if r.apart(u.Need, v.Need) && u.End.Add(r.Changeover).After(v.Start) && v.End.Add(r.Changeover).After(u.Start) {
				k.say("%s and %s both use %s", u.Name, v.Name, r.Name)
			}
		}
		if r.Capacity > 0 && sum > r.Capacity {
			k.say("%d of %s used at the start of %s", sum, r.Name, u.Name)
		}
	}
}
