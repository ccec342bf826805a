package bake

import (
	"math"
	"time"

	"example.org/maslin/internal/enum"
)

// Vessel is what a loaf bakes on or in.
type Vessel int

// The vessels. The zero value is "not given": open tins for pan bread, a tray for rich bread, soft rolls and focaccia,
// a stone for the rest.
const (
	UsualVessel Vessel = iota // what the style usually has
	Stone                     // a stone or steel, or the oven's floor, with steam put in
	Pot                       // a lidded pot, one loaf each
	TinPan                    // open tins
	Tray                      // a tray
)

var vessels = enum.Of[Vessel]("vessel in the oven", "", "stone", "pot", "tin", "tray")

// of is the vessel itself, or the one usual for the style. Common practice, no source.
func (v Vessel) of(s Style) Vessel {
	if v != UsualVessel {
		return v
	}
	switch s {
	case Pan:
		return TinPan
	case SoftRoll, Enriched, Focaccia:
		return Tray
	}
	return Stone
}

// IsValid reports whether the vessel is given and one of the vessels.
func (v Vessel) IsValid() bool { return vessels.Has(v) }

// String names the vessel; it is empty for the usual one.
func (v Vessel) String() string { return vessels.String(v) }

// MarshalText implements encoding.TextMarshaler.
func (v Vessel) MarshalText() ([]byte, error) { return vessels.Marshal(v) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads the words that String prints, and no others.
func (v *Vessel) UnmarshalText(text []byte) error { return vessels.Unmarshal(v, text) }

// coveredOf is how long the lid stays on or the steam in, in minutes.
// Source: steam for the first 15 min; lid off after 20 to 25 min, common practice; fat and sugar need
// none.
func coveredOf(s Style, v Vessel, bake float64) float64 {
	most := rowOf(s).steam
	switch {
	case most == 0:
		return 0
	case v == Pot:
		most = 22
	case v == TinPan:
		most = min(most, 10)
	}
	return math.Round(min(most, 0.6*bake))
}

// vesselTimes are preheating and reheating.
// Source: pot at least 30 min, common practice, no source; stone 45 to 60 min (from memory); the rest
// judgment.
func vesselTimes(v Vessel) (preheat, reheat time.Duration) {
	switch v {
	case Pot:
		return 45 * time.Minute, 10 * time.Minute
	case TinPan, Tray:
		return 20 * time.Minute, 5 * time.Minute
	}
	return 50 * time.Minute, 10 * time.Minute
}
