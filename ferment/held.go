package ferment

import (
	"math"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

// Held is how the 80 % ranges given before bakes were known have held: it replaces what the ranges claim by what
// they did.
type Held struct {
	Inside int `json:"inside"` // bakes that came within their range
	Ranges int `json:"ranges"` // all bakes that had one
}

// Share answers: how many of such ranges hold, and how sure is that? The interval is Wilson's for 80 %:
//
//	(p + z²/2n ± z·√(p·(1 − p)/n + z²/4n²))/(1 + z²/n),   p = k/n
//
// k of n held, z = 1.28155. 7 of 9 may be 57 to 90 %: nine bakes do not tell 80 % from 65 %. ok is false without a
// bake. Accuracy: the interval holds the true share in 77 to 84 % of cases from n = 5 on. Source: Wilson, Journal
// of the American Statistical Association 22 (1927) 209.
func (h Held) Share() (share quantity.Range[quantity.Percent], ok bool) {
	if h.Ranges <= 0 || h.Inside < 0 || h.Inside > h.Ranges {
		return share, false
	}
	n, p := float64(h.Ranges), float64(h.Inside)/float64(h.Ranges)
	z2 := z80 * z80 / n
	middle := (p + z2/2) / (1 + z2)
	reach := z80 * math.Sqrt(p*(1-p)/n+z2/(4*n)) / (1 + z2)
	at := func(x float64) quantity.Percent {
		return quantity.NewPercent(math.Round(1e4*math.Max(0, math.Min(1, x))) / 100)
	}
	return band{Low: at(middle - reach), Likely: at(p), High: at(middle + reach), Probability: probabilityClaimed}, true
}

// String prints "7 of 9 ranges held their bakes: that speaks for 57 % to 90 %".
func (h Held) String() string { return h.Message().String() }

// Message says how many held, and what that is worth.
func (h Held) Message() working.Message {
	s, ok := h.Share()
	if !ok {
		return working.Tell("ferment.held_none", "no range has been scored on a bake yet")
	}
	return working.Tell("ferment.held",
		"%d of %d {2|range|ranges} held {2|its bake|their bakes}: that speaks for %.0f to "+
			"%.0f", h.Inside, h.Ranges, s.Low, s.High)
}
