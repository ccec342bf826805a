package schedule

import (
	"context"

	"example.org/maslin/internal/planner"
)

// Latest returns the backward plan: every step as late as the rules allow.
//
// The latest times are found by pulling on all rules from the end of the plan until nothing
// moves: x_i = min over rules (x_j − w_ij), skipping closed spans downward. Without shortage of
// a shared resource these times are together a timetable and the answer is exact. Where two
// steps would then use the same resource at once, the timetable with the latest times in sum
// is searched for.
//
// Times are exact to the grid. The error reports malformed input, all problems at once, as
// [quantity.InputError] values; a problem without a timetable is answered by a [Conflict].
// Source: Dechter, Meiri and Pearl 1991; Kumar 2005; see the package comment.
func (p Problem) Latest(ctx context.Context) (Timetable, error) {
	c, err := p.compile()
	if err != nil {
		return Timetable{}, err
	}
	return c.answer(ctx, latest), nil
}

// Earliest returns the forward plan: every step as early as the rules allow. It is the mirror
// image of [Problem.Latest] and has the same limits, accuracy and errors.
//
// Source: Dechter, Meiri and Pearl 1991; Kumar 2005; see the package comment.
func (p Problem) Earliest(ctx context.Context) (Timetable, error) {
	c, err := p.compile()
	if err != nil {
		return Timetable{}, err
	}
	return c.answer(ctx, earliest), nil
}

// aim is what a timetable is chosen for.
type aim int

const (
	latest aim = iota
	earliest
	cheapest
)

func (c *compiled) answer(ctx context.Context, a aim) Timetable {
	if c.net.Feasible() {
		var times []int
		if a == earliest {
			times, _ = c.net.Earliest()
		} else {
			times, _, _ = c.net.Latest()
		}
		return c.timetable(times, nil, Optimal)
	}
	return c.refuse()
}

// refuse explains why there is no timetable even without shortage.
func (c *compiled) refuse() Timetable {
	t := Timetable{Verdict: Infeasible, c: c}
	_, clash := c.net.Earliest()
	clash = c.net.Shrink(clash)
	t.Conflict = c.conflict(clash, true, planner.NewProber(c.net).Feasible)
	t.Before, t.After = c.nearest()
	return t
}

// timetable describes chosen times, with the room every step has while the order at shared
// resources stays.
func (c *compiled) timetable(times []int, orders []planner.Arc, v Verdict) Timetable {
	t := Timetable{Verdict: v, c: c, times: times, orders: orders}
	net := &planner.Net{Events: c.net.Events, Limit: c.net.Limit, Holes: c.net.Holes}
	net.Arcs = append(append(net.Arcs, c.net.Arcs...), orders...)
	reach := planner.NewReach(net)
	_, drivers, _ := net.Latest()
	for i, s := range c.in.Steps {
		start, end := planner.StartOf(i), planner.EndOf(i)
		timed := Timed{
			Name: s.Name, Start: c.when(times[start]), End: c.when(times[end]),
			EarliestStart: c.when(reach.Early(start)), LatestStart: c.when(reach.Late(start)),
			EarliestEnd: c.when(reach.Early(end)), LatestEnd: c.when(reach.Late(end)),
			Slack:  c.long(reach.Late(start) - times[start]),
			Drives: c.driver(drivers(start)),
		}
		for _, w := range reach.Windows(start) {
			timed.Windows = append(timed.Windows, Span{From: c.when(w[0]), To: c.when(w[1])})
		}
		if s.Living {
			timed.Watch = &Span{From: timed.Start.Add(s.Min), To: timed.Start.Add(s.Max)}
		}
		t.Steps = append(t.Steps, timed)
	}
	return t
}

// driver picks, from the chain of rules that holds a step back, the one a person would name:
// the nearest absence or time on the clock.
func (c *compiled) driver(chain []int) string {
	for _, r := range chain {
		switch c.rules[r].kind {
		case Absence, NotAfter, Limits:
			return c.rules[r].words
		}
	}
	return ""
}
