package schedule

import (
	"fmt"
	"slices"
	"strconv"

	"example.org/maslin/dough/working"
	"example.org/maslin/internal/planner"
	"example.org/maslin/internal/sources"
)

// Working derives the latest times of a timetable the way they are found by hand: from the end
// of the plan backward, each by one subtraction from a time already known, or by moving to the
// beginning of an absence. Times are minutes after the anchor. A timetable without steps has
// an empty working.
func (t Timetable) Working() working.Working {
	w := working.Working{Title: "latest times, backward"}
	if !t.asFound() || len(t.Steps) == 0 {
		return w
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
	minutes := int(c.grid / minute)
	for _, v := range order {
		w.Steps = append(w.Steps, c.line(v, times, causes[v], minutes))
	}
	return w
}

// symbol is S1, E1, S2, …: the start and end of the steps in the order given.
func symbol(v int) string {
	if v%2 == 1 {
		return "S" + strconv.Itoa((v+1)/2)
	}
	return "E" + strconv.Itoa(v/2)
}

func (c *compiled) meaning(v int) string {
	name := c.in.Steps[(v-1)/2].label().Title().String()
	if v%2 == 1 {
		return "latest start of " + name
	}
	return "latest end of " + name
}

func number(n int) string {
	if n < 0 {
		return "−" + strconv.Itoa(-n)
	}
	return strconv.Itoa(n)
}

// line derives one latest time.
func (c *compiled) line(v int, times []int, cause planner.Cause, minutes int) working.Step {
	value := times[v] * minutes
	s := working.Step{Name: c.meaning(v), Symbol: symbol(v), Value: number(value) + " min", Exact: true,
		Note: "that is " + c.clock(times[v]), Source: sources.TemporalNetworks}
	words := "a step ends after it starts"
	if cause.Rule >= 0 {
		words = c.rules[cause.Rule].words.String()
	}
	switch {
	case cause.Jumped:
		s.Formula = "A"
		s.Numbers = number(value)
		s.Where = []working.Binding{{Symbol: "A", Meaning: "the last moment before: " + words, Value: number(value) + " min"}}
		s.Note += fmt.Sprintf("; later would meet %q", words)
		s.Source = sources.RestrictedDisjunctions
	case cause.From == 0:
		s.Formula = "B"
		s.Numbers = number(value)
		s.Where = []working.Binding{{Symbol: "B", Meaning: words, Value: number(value) + " min"}}
	default:
		gap := (times[cause.From] - times[v]) * minutes
		from := symbol(cause.From)
		s.Formula = from + " − T"
		s.Where = []working.Binding{
			{Symbol: from, Meaning: c.meaning(cause.From), Value: number(times[cause.From]*minutes) + " min"},
			{Symbol: "T", Meaning: words, Value: number(gap) + " min"}}
		s.Numbers = fmt.Sprintf("%s − %s", number(times[cause.From]*minutes), number(gap))
		if gap < 0 {
			s.Formula = from + " + T"
			s.Where[1].Value = number(-gap) + " min"
			s.Numbers = fmt.Sprintf("%s + %s", number(times[cause.From]*minutes), number(-gap))
		}
	}
	return s
}
