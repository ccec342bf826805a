package bakeday

import (
	"example.org/maslin/dough"
	"example.org/maslin/dough/mixing"
	"example.org/maslin/ferment"
)

// The rooms do not know each other; these say the same thing in the words of each.

func yeastKind(k dough.Kind) ferment.YeastKind {
	switch k {
	case dough.KindFreshYeast:
		return ferment.FreshYeast
	case dough.KindActiveDryYeast:
		return ferment.ActiveDryYeast
	case dough.KindInstantYeast:
		return ferment.InstantYeast
	case dough.KindOsmotolerantYeast:
		return ferment.OsmotolerantYeast
	}
	return ferment.NoYeast
}

func kneading(k mixing.MixerKind) ferment.KneadedBy {
	switch k {
	case mixing.Hand:
		return ferment.ByHand
	case mixing.Planetary, mixing.Spiral, mixing.Fork, mixing.Processor:
		return ferment.ByMachine
	}
	return ferment.KneadingUnstated
}
