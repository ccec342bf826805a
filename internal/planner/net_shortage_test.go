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

// Three tasks of ten minutes want an oven of three places within ten minutes: the large one, which fills it, and one of
// the small ones are enough to see that they do not fit.
func TestAShortageIsToldByItsGreatestNeeds(t *testing.T) {
	s := &Shop{Tasks: 3, Net: &Net{Events: 7, Limit: 10}, Pools: []Pool{
		{Capacity: 3, Rule: 9, Uses: []Use{{Task: 0, Amount: 1}, {Task: 1, Amount: 1}, {Task: 2, Amount: 3}}},
	}}
	for i := range s.Tasks {
		s.Net.Arcs = append(s.Net.Arcs, Arc{From: 0, To: StartOf(i), Rule: i},
			Arc{From: StartOf(i), To: EndOf(i), W: 10, Rule: i}, Arc{From: EndOf(i), To: 0, W: -10, Rule: i, Upper: true})
	}
	x := s.Shortage(nil)
	if x == nil || x.Need != 50 || x.Room != 30 || len(x.Tasks) != 3 {
		t.Fatalf("%+v, want 50 of 30 by three tasks", x)
	}
	e, _ := s.energy(nil)
	if got := e.enough(x); !slices.Equal(got, []int{2, 0}) {
		t.Errorf("tasks %v are enough, want the large one and one of the others", got)
	}
	for _, rule := range s.ShortageRules(nil) {
		if rule == 1 {
			t.Error("the second small task is no part of it")
		}
	}
}
