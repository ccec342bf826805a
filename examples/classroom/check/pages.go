package main

import "example.org/maslin/examples/classroom/desk"

// A place is a state that a check visits.
type place desk.State

func (p place) link() string { return desk.State(p).Fragment() }

// pages are one of each kind: every task with its answer, a guess, and the worksheet with its key.
func pages() []place {
	var out []place
	for _, id := range desk.Tasks() {
		out = append(out, place{At: id, Phase: "open"})
	}
	return append(out, place{At: "worksheet", Fields: map[string]string{"key": "on", "answer.1": "12 g"}},
		place{At: "day.plan"},
		place{At: "day.plan", Phase: "shown", Fields: map[string]string{"by_hand.mix": "2026-11-27 17:00",
			"by_hand.retard": "2026-11-27 20:30", "by_hand.bake": "2026-11-28 09:00"}},
		place{At: "day.oven", Phase: "locked", Fields: map[string]string{"by_hand.buns.bake": "2026-11-28 11:00"}},
		place{At: "day.oven", Phase: "open", Fields: map[string]string{"buns.wanted": "2026-11-28 08:00"}},
		place{At: "water.plan", Phase: "shown", Guess: "18 °C", Units: "US customary", Large: true,
			Why: "the flour is cool", Was: map[string]string{"target": "24 °C"}})
}
