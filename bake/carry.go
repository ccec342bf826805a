package bake

import (
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

// TakenOut asks how much a core still rises after the oven.
type TakenOut struct {
	Place Site                 `json:"place,omitzero"`
	Core  quantity.Temperature `json:"core"` // when the loaf is taken out
}

// CarryOver is how far a core rises on the rack.
type CarryOver struct {
	answer

	Peak    quantity.Range[quantity.Temperature] `json:"peak"`
	Boiling quantity.Temperature                 `json:"boiling"`
	in      TakenOut
	below   float64
}

// The share of the distance to boiling that a core still gains on a rack: 0.5 to 0.67 in numerical loaves, whose
// surface dries no further; 0.8 in the one report there is; less where the loaf goes on steaming.
const carryLow, carryLikely, carryHigh = 0.20, 0.50, 0.80

// CarryOver answers: if I take the loaf out now, how hot will the core still get?
//
// Formula: peak = T + c·(T_b − T), c from 0.20 to 0.80, likely 0.50: the outer crumb stands at the boiling point and
// its heat runs inward. It never passes the boiling point, and above 90 °C it is a few degrees at most. Symbols: T
// core when taken out; T_b local boiling point. Valid range: cores from 60 °C to the boiling point, whole loaves left
// on a rack in a room. Re-panned or cut loaves lose heat at once: a reading fell from 95 to 90 °C. Accuracy: a
// judgment; numerical loaves gain 0.50 to 0.67 of the distance, one report 0.8. A loaf taken out on carry-over has
// not baked out: it keeps the water that the last minutes would have driven off. Errors: [quantity.ErrRequired],
// [quantity.ErrOutOfRange]. Source: one report of a one-pound loaf, 175 to 205 °F; conduction with a crumb boundary
// at boiling, Zanoni, Peri and Pierucci (1993).
func (in TakenOut) CarryOver() (CarryOver, error) {
	var p quantity.Problems
	placeOK := checkSiteField(&p, in.Place)
	if in.Core.Compare(hotProbe) > 0 {
		checkProbe(&p, "Core", in.Core)
	} else {
		quantity.Check(&p, "Core", in.Core, lowestCore, hotProbe)
	}
	if err := p.ErrFor(in); err != nil || !placeOK {
		return CarryOver{}, err
	}
	_, boiling, err := in.Place.boil()
	if err != nil {
		return CarryOver{}, err
	}
	core := in.Core.Celsius()
	if core > boiling+above {
		return CarryOver{}, quantity.DataPaths(in, aboveBoiling("Core", in.Core, boiling))
	}
	below := max(0, boiling-core)
	at := func(c float64) quantity.Temperature { return in.Core.Add(quantity.DeltaCelsius(c * below)) }
	return CarryOver{
		Peak: quantity.Range[quantity.Temperature]{
			Low:         at(carryLow),
			Likely:      at(carryLikely),
			High:        at(carryHigh),
			Probability: quantity.NewPercent(80),
		},
		Boiling: quantity.Celsius(boiling), in: in, below: below,
	}, nil
}

// String prints "out at 85.0 °C the core still rises to …".
func (c CarryOver) String() string { return c.message().String() }

func (c CarryOver) message() working.Message {
	return working.Tell("bake.carry_over",
		"out at %.1f the core still rises to %.1f to %.1f (%v), likely %.1f; it does not bake out on the rack",
		c.in.Core, c.Peak.Low, c.Peak.High, c.Peak.Probability, c.Peak.Likely)
}
