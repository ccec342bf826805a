package bake

import (
	"math"
	"time"
)

const (
	// nearly is how far below boiling the core of the loaf of an hour was when half of its bake was over: 93 °C at
	// sea level (sources.TestKitchenPlateau). Altitude moves both.
	nearly = 7.0 // °C
	// The share of a hearth loaf's bake that is over when its core comes that near: a half by the one loaf with
	// times, 85 % by the plant rule for pan bread; between them lies what is likely (judgment).
	hearthProved, hearthLikely, hearthEarliest = 0.5, 0.6, 0.85
	// arrivalShare is the share of another bread's bake that is over when its core is at the target (sources.SCurve).
	arrivalShare = 0.85
	// ryeHold is the least that rye is held hot (sources.RyeHold).
	ryeHold    = 10 * time.Minute
	usualStart = 25.0 // °C, dough when it goes in
)

// holds is how long a core stays at its target until the loaf has baked out. Late is proved by time alone.
type holds struct{ early, likely, late time.Duration }

// bakeOut is the hold that follows from the time the core took to its target.
func (t target) bakeOut(s Style, arrival time.Duration) holds {
	row := &rowOf(s).done
	least := time.Duration(0)
	if s == Rye {
		least = ryeHold
	}
	switch {
	case row.loss == 0 && row.hold == 0:
		return holds{}
	case !row.hearth:
		h := max(least, time.Duration(float64(arrival)*(1-arrivalShare)/arrivalShare))
		return holds{h, h, h}
	}
	near := float64(arrival) / t.nearShare()
	after := func(share float64) time.Duration { return max(least, time.Duration(near/share)-arrival) }
	return holds{after(hearthEarliest), after(hearthLikely), after(hearthProved)}
}

// nearShare is the time to the target over the time to 7 °C below boiling, on the exponential way to the boiling
// point: ln(A·(T_b − T₀)/(T_b − T*)) over ln(A·(T_b − T₀)/7), with the lead A of [UnprobedLoaf.Arrival].
func (t target) nearShare() float64 {
	whole := startLead * (t.boiling - usualStart)
	return math.Log(whole/(t.boiling-t.core)) / math.Log(whole/nearly)
}
