package schedule

import (
	"slices"
	"strconv"

	"example.org/maslin/dough/working"
	"example.org/maslin/internal/planner"
	"example.org/maslin/internal/sources"
)

// Working derives the latest times of a timetable the way they are found by hand: from the end
// of the plan backward, each by one subtraction from a time already known, or by moving to the
// beginning of an absence. When there is no timetable it derives why: the rules of the conflict one after the other,
// added up against the time there is, and the steps that lead to the nearest time that works. A timetable without
// steps or conflict has an empty working.
func (t Timetable) Working() working.Working {
	if t.c != nil && len(t.Steps) == 0 && t.Conflict != nil {
		return t.refusal()
	}
	if !t.asFound() || len(t.Steps) == 0 {
		return working.Working{}
	}
	c := t.c
	times, causes := c.withOrders(t.orders).Causes()
	var order []int
	depth := make([]int, len(times))
	for v := 1; v < len(times); v++ {
		order = append(order, v)
		for u := v; u != 0 && depth[v] <= len(times); u = causes[u].From {
			depth[v]++
		}
	}
	slices.SortStableFunc(order, func(a, b int) int {
		if times[a] != times[b] {
			return times[b] - times[a]
		}
		return depth[a] - depth[b]
	})
	d := working.Derive(working.Tell("schedule.working", "latest times, backward"))
	found := make([]working.Expr, len(times))
	done := make([]bool, len(times))
	var find func(v int)
	find = func(v int) { // after what it follows from
		if done[v] {
			return
		}
		done[v] = true
		if from := causes[v].From; from != 0 && !causes[v].Jumped {
			find(from)
		}
		found[v] = d.Find(c.finding(v, times, causes[v], found))
	}
	for _, v := range order {
		find(v)
	}
	return d.Working()
}

// symbol is S_1, E_1, S_2, …: the start and end of the steps in the order given.
func symbol(v int) string {
	if v%2 == 1 {
		return "S_" + strconv.Itoa((v+1)/2)
	}
	return "E_" + strconv.Itoa(v/2)
}

func (c *compiled) meaning(v int) working.Message {
	title := c.in.Steps[(v-1)/2].label().Title()
	if v%2 == 1 {
		return working.Tell("schedule.latest_start", "latest start of %v", title)
	}
	return working.Tell("schedule.latest_end", "latest end of %v", title)
}

// finding derives one latest time: from a later one that is known, or from a rule about the clock.
func (c *compiled) finding(v int, times []int, cause planner.Cause, found []working.Expr) working.Finding {
	at := c.when(times[v])
	f := working.Finding{
		Name:   c.meaning(v),
		Symbol: symbol(v),
		Is:     at,
		Unit:   working.Clock,
		Source: sources.TemporalNetworks,
	}
	words := working.Tell("schedule.ends_after_start", "a step ends after it starts")
	if cause.Rule >= 0 {
		words = c.said(cause.Rule)
	}
	switch {
	case cause.Jumped:
		f.Look = working.Tell("schedule.moment_before", "the last moment before: %v", words)
		f.Source = sources.RestrictedDisjunctions
	case cause.From == 0:
		f.Look = words
	default:
		gap := c.long(times[cause.From] - times[v])
		if gap >= 0 {
			f.By = found[cause.From].Minus(working.Given("T", words, gap))
		} else {
			f.By = found[cause.From].Plus(working.Given("T", words, -gap))
		}
	}
	return f
}
