package planner

import (
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// The rules of a shortage have no timetable by themselves, and a shortage means that there is none.
func TestShortagesAreProofs(t *testing.T) {
	short := 0
	tenfold(t, func(t *rapid.T) {
		s, _ := small(t)
		for k := range s.Pools {
			s.Pools[k].Rule = 50 + k
			from := rapid.IntRange(0, s.Net.Limit).Draw(t, "closed")
			c := Closing{From: from, To: from + rapid.IntRange(1, 3).Draw(t, "long"), Rule: 60 + k}
			s.Pools[k].Closed = []Closing{c}
			for _, u := range s.Pools[k].Uses {
				s.Net.Holes = append(s.Net.Holes, Hole{Task: u.Task, From: c.From, To: c.To, Rule: c.Rule})
			}
		}
		x, rules := s.Shortage(nil), s.ShortageRules(nil)
		if (x == nil) != (rules == nil) {
			t.Fatalf("%v by %v", x, rules)
		}
		if x == nil {
			return
		}
		short++
		if x.Need <= x.Room || len(x.Tasks) == 0 {
			t.Fatalf("%+v is none", x)
		}
		sum := 0
		for _, u := range s.Pools[x.Pool].Uses {
			long := 0
			for _, a := range s.Net.Arcs {
				if a.From == StartOf(u.Task) && a.To == EndOf(u.Task) {
					long = a.W
				}
			}
			switch {
			case !slices.Contains(x.Tasks, u.Task):
			case x.Length == 0:
				sum += long * u.Amount
			case long >= x.Length:
				sum += u.Amount
			}
		}
		if sum != x.Need {
			t.Fatalf("%+v: the tasks need %d", x, sum)
		}
		every(s.Only(rules), func(times []int) { t.Fatalf("%v keeps %v, which are short", times, rules) })
	})
	if short == 0 {
		t.Error("nothing was short")
	}
}
