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
		place{At: "day.plan"}, place{At: "heat.boiling", Phase: "open", Language: "de"}, place{At: "water.plan", Phase: "shown", Guess: "18 °C", Units: "US customary", Large: true,
			Why: "the flour is cool", Was: map[string]string{"target": "24 °C"}})
}
