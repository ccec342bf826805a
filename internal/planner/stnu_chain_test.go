package planner

import "testing"

// A wait that is over before its end can come is a rule, and what follows an end that nature chooses first has to hold
// for its latest: the second end comes 4 to 6 after the first, which comes 1 to 3 after the beginning, and something
// has to be done no sooner than 2 before the second end, and by some time after the beginning. The latest of both ends
// leave it at 3 + 6 − 2 = 7, and no sooner end can be foreseen.
func TestWaitsBehindAnotherEnd(t *testing.T) {
	for by, want := range map[int]bool{6: false, 7: true} {
		arcs := append(between(0, 1, 0, 0), Arc{From: 3, To: 4, W: -2}, Arc{From: 4, To: 1, W: -by})
		cont := []Contingent{{1, 2, 1, 3}, {2, 3, 4, 6}}
		for v := 1; v < 5; v++ {
			arcs = append(arcs, between(0, v, 0, 12)...)
		}
		net := &Net{Events: 5, Limit: 12, Arcs: arcs}
		if got := net.Controllable(nil, cont); got != want {
			t.Errorf("by %d: controllable %v, want %v", by, got, want)
		}
		if got := winnable(arcs, cont, []int{1, 4}, 13); got != want {
			t.Errorf("by %d: the game says %v, want %v", by, got, want)
		}
	}
}
