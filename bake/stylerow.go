package bake

import (
	"time"

	"example.org/maslin/dough/working"
)

// styleRow is all that this package knows of a style: one row, one place. Its name stands in styles.
type styleRow struct {
	shape Shape // the usual one
	done  doneRow
	bake  reference
	oven  [2]float64 // set at first and when the lid comes off, °C
	steam float64    // lid on or steam in, minutes at most; 0: none
	loss  lossRow
	crumb crumbRow
	warm  bool // eaten warm: cut at 50 °C, not at 35
	keeps keepRow
}

// doneRow is what done means at sea level. The figures are chosen from the published ranges of the sources.
type doneRow struct {
	core, from, to float64 // °C; 0: a probe is no criterion
	loss           float64 // least, % of the dough; 0: no criterion
	// hold is what the bake-out of a usual piece asks for after the core has arrived, for a baker who does not
	// say how long the loaf has been in the oven.
	hold time.Duration
	// hearth: it bakes out in about as long again as the core took to 93 °C. Otherwise the core arrives near
	// 85 % of the bake (sources.SCurve).
	hearth     bool
	confidence Confidence
	note       working.Message
	sources    []working.Source
}

// lossRow is the usual loss in percent of the dough. Likely 0 is a hearth loaf: its loss depends on its
// size, see hearthPoints, and low and high are below and above it.
type lossRow struct {
	likely, low, high float64
	note              working.Message
}

// crumbRow is the volume of a gram of bread and the porosity of its crumb. Typical values (from memory).
type crumbRow struct{ mlPerGram, porosity float64 }

// rowOf is the row of a style that was checked.
func rowOf(s Style) *styleRow {
	if !s.IsValid() {
		return &styleTable[LeanHearth]
	}
	return &styleTable[s]
}
