package bake

import (
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

func preheatNote(v Vessel) working.Message {
	switch v {
	case Pot:
		return working.Tell("bake.preheat_pots", "oven with the pots and their lids in it")
	case Stone:
		return working.Tell("bake.preheat_stone", "oven with the stone in it")
	}
	return working.Tell("bake.preheat_oven", "oven")
}

// loadNote says what is done with the pieces as they go in; common practice, no source.
func loadNote(s Style) working.Message {
	switch s {
	case Bagel:
		return working.Tell("bake.boil_and_load", "boil %v to %v in a wide pot, drain and load",
			quantity.Elapsed(time.Minute), quantity.Elapsed(2*time.Minute))
	case Focaccia:
		return working.Tell("bake.dimple_and_load", "dimple and load")
	case Pizza, FlatBread:
		return working.Tell("bake.stretch_and_load", "stretch and load")
	case SoftRoll, Pan, Enriched:
		return working.Tell("bake.only_load", "load")
	}
	return working.Tell("bake.score_and_load", "score and load")
}

const rescoreAfter = 5 * time.Minute
