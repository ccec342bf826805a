package bakeday

import (
	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
)

// AskedLevain is a levain that is wanted, and everything that is asked of it at once: what to feed, as a scale weighs
// it, and when each feeding is ripe.
type AskedLevain struct {
	// Build is what is wanted. A Starter without a mass is as much as it takes; one without a hydration is as wet as the
	// levain.
	Build dough.LevainBuild `json:"build"`
	// Ratio is a feeding by parts, such as 1:5:5, instead of the Inoculation, Of and the Hydration of the Build. Its own
	// starter, without a hydration, is as wet as what it is fed with.
	Ratio *dough.Feeding `json:"ratio,omitempty"`
	// Scales weigh the feedings; not given: to the gram.
	Scales dough.Scales `json:"scales,omitzero"`
	// Stands is where the levain stands, without the feedings, which are found, and the hydration; nil: when it is ripe is
	// not asked.
	Stands *FedLevain `json:"stands,omitempty"`
}

// Answer asks [dough.LevainBuild.Plan], and of a plan that reaches what is wanted [dough.LevainPlan.Weigh] and
// [FedLevain.Ripe]. Where it was not said how much starter there is, none is left over. Valid range, accuracy and
// sources are theirs. Errors: theirs; ErrRequired where neither the mass of the starter nor an inoculation is given.
func (a AskedLevain) Answer() (RipeLevain, error) {
	var p quantity.Problems
	b := a.build()
	known := !b.Starter.Mass.IsZero()
	if !known {
		if b.Starter.Mass = b.Want.Add(b.KeepBack); b.Starter.Mass.Sign() <= 0 {
			b.Starter.Mass = quantity.Grams(1) // what is wrong then is the levain wanted
		} else if b.Inoculation.IsZero() {
			p.Required("Build.Starter.Mass", quantity.Tell("bakeday.want_starter_or_inoculation",
				"the culture at hand, or an inoculation or a feeding ratio to be told how much it takes"))
		}
	}
	plan, err := b.Plan()
	if p.Join("Build", err); p.Err() != nil {
		return RipeLevain{}, p.ErrFor(a)
	}
	out := RipeLevain{Plan: plan}
	if plan.Reached {
		if a.Scales.Flour.IsZero() {
			a.Scales.Flour = quantity.Grams(1)
		}
		out.Plan, out.Rounding, err = plan.Weigh(a.Scales)
		p.Join("Scales", err)
	}
	if a.Stands != nil && p.Err() == nil {
		fed := *a.Stands
		fed.Feedings = out.Plan.Stages
		if fed.Ripening.Hydration.IsZero() {
			fed.Ripening.Hydration = b.Hydration
		}
		out.Ripe, err = fed.Ripe()
		p.Join("Stands", err)
	}
	if !known {
		out.Plan.LeftOver = quantity.Mass{}
	}
	return out, p.ErrFor(a)
}

// build is the levain that is wanted, with what the ratio says of it.
func (a AskedLevain) build() dough.LevainBuild {
	b := a.Build
	if a.Ratio != nil {
		fed := *a.Ratio
		if fed.Starter.Hydration = b.Starter.Hydration; fed.Starter.Hydration.IsZero() {
			fed.Starter.Hydration = fed.Water.PercentOf(fed.Flour)
		}
		b.Inoculation, b.Of, b.Hydration = fed.Inoculation(dough.OfNewFlour), dough.OfNewFlour, fed.Hydration()
	}
	if b.Starter.Hydration.IsZero() {
		b.Starter.Hydration = b.Hydration
	}
	return b
}
