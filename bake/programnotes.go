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
		return working.Tell("bake.drain_and_load", "drain and load")
	case Focaccia:
		return working.Tell("bake.dimple_and_load", "dimple and load")
	case Pizza, FlatBread:
		return working.Tell("bake.stretch_and_load", "stretch and load")
	case SoftRoll, Pan, Enriched:
		return working.Tell("bake.only_load", "load")
	}
	return working.Tell("bake.score_and_load", "score and load")
}

// A bagel lies in the water so long; common practice, no source. A wide pot takes four at a time; judgment.
const (
	boiledLeast, boiledMost = time.Minute, 2 * time.Minute
	potful                  = 4
)

func boilNote() working.Message {
	return working.Tell("bake.boil", "boil each %v to %v in a wide pot, four at a time", quantity.Elapsed(boiledLeast),
		quantity.Elapsed(boiledMost))
}

// boiling is how long the pieces of one round boil, one potful after the other.
func boiling(s Style, pieces int) quantity.TimeRange {
	if s != Bagel {
		return quantity.TimeRange{}
	}
	potfuls := time.Duration((pieces + potful - 1) / potful)
	return quantity.TimeRange{
		Early: potfuls * boiledLeast, Likely: potfuls * (boiledLeast + boiledMost) / 2, Late: potfuls * boiledMost,
		Probability: quantity.NewPercent(bakeProbability),
	}
}

const rescoreAfter = 5 * time.Minute
