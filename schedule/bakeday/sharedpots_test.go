package bakeday

import "testing"

// Two breads share the pots of the kitchen; where it says none, there are as many as the bread has that needs the most.
func TestHowManyPotsAreShared(t *testing.T) {
	for _, c := range []struct {
		kitchen       int
		first, second int
		want          int // 0: nothing is shared
	}{{0, 2, 3, 3}, {0, 3, 2, 3}, {0, 1, 1, 1}, {4, 2, 3, 4}, {1, 1, 1, 1}, {0, 2, 0, 0}, {4, 0, 2, 0}} {
		o := sunday()
		o.Kitchen.Pots = c.kitchen
		o.Bakes = o.Bakes[:2]
		o.Bakes[0].Oven.Pots, o.Bakes[1].Oven.Pots = c.first, c.second
		got := 0
		for _, r := range planAll(t, o).problem.Resources {
			if r.ID == sharedPots {
				got = r.Capacity
			}
		}
		if got != c.want {
			t.Errorf("%d in the kitchen, %d and %d in the oven: %d are shared", c.kitchen, c.first, c.second, got)
		}
	}
}
