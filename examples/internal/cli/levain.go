package cli

import (
	"time"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/ferment"
	"example.org/maslin/schedule/bakeday"
	"example.org/maslin/schedule/bench"
)

// levain asks what to feed so that a ripe levain is made, and when it is ripe.
type levain struct {
	standing
	_     struct{}          `usual:"hydration=100%"`
	Build dough.LevainBuild `flags:"* KeepBack=keep Starter.Mass=culture Starter.Hydration=culture-hydration"`
	_     struct{}          `paths:"Starter=culture Seed=inoculation Temperature=room SeedHydration=culture-hydration"`

	OfMix      bool                 `flag:"of-mix"`
	Ratio      dough.Feeding        `flag:"ratio"`
	Cold       bool                 `flag:"cold"`
	Fed        string               `flag:"fed"`
	After      quantity.Elapsed     `flag:"refrigerate-after" paths:"ChilledAfter=refrigerate-after"`
	Fridge     quantity.Temperature `flag:"refrigerator" usual:"4C"`
	Scale      quantity.Mass        `flag:"scale" usual:"1g" paths:"Flour=scale Fine=scale"`
	ripensToo  bool
	cultureSet bool
}

func (q *levain) ask(c *call) error {
	b := &q.Build
	if q.OfMix {
		b.Of = dough.OfMix
	}
	if c.given("ratio") {
		c.not("--ratio, which says as much", "inoculation", "of-mix", "hydration")
		q.Ratio.Starter.Hydration = b.Starter.Hydration
		if !c.given("culture-hydration") {
			q.Ratio.Starter.Hydration = q.Ratio.Water.PercentOf(q.Ratio.Flour)
		}
		if len(c.faults) == 0 {
			fed := q.Ratio
			b.Inoculation, b.Hydration = fed.Inoculation(dough.OfNewFlour), fed.Hydration()
		}
	}
	if !c.given("culture-hydration") {
		b.Starter.Hydration = b.Hydration
	}
	q.ripensToo = c.given("room") || c.given("dough") || c.given("readings")
	if !q.ripensToo {
		c.only("--room or --dough", "cold", "refrigerate-after", "refrigerator", "whole-grain", "fed")
	}
	if err := q.startAt(c, "fed", q.Fed); err != nil {
		return err
	}
	if q.ripensToo {
		if q.Dough.IsZero() && q.Readings == "" && !c.given("dough") {
			q.Dough, q.Room = q.Room, quantity.Temperature{} // a levain is soon as warm as the room it stands in
			c.paths["History"], c.paths["Start"] = "room", "room"
		}
		if _, err := q.history(c); err != nil { // what is wrong with it
			return c.complain(err)
		}
	}
	if c.given("ratio") && q.ripensToo && !c.given("want") && !c.given("culture") {
		if wrong := c.complain(nil); wrong != nil {
			return wrong // what follows from a ratio that is none says nothing
		}
		ripe, err := q.ripen([]dough.Feeding{q.Ratio}, c)
		if wrong := c.complain(err); wrong != nil {
			return wrong
		}
		reached, _, _ := ripe[0].Reached()
		return c.tellIf(reached, fedNow{ripe[0], q.fedAt()}, nil)
	}
	return q.build(c)
}

// fedAt is when it was fed, where that is known.
func (q *levain) fedAt() time.Time {
	if q.clocked {
		return q.start
	}
	return time.Time{}
}

// build asks for the feedings, and when each is ripe.
func (q *levain) build(c *call) error {
	b := &q.Build
	if q.cultureSet = c.given("culture"); !q.cultureSet {
		b.Starter.Mass = b.Want.Add(b.KeepBack) // more than it can take
		if b.Starter.Mass.Sign() <= 0 {
			b.Starter.Mass = quantity.Grams(1) // what is wrong then is the levain wanted
		}
		if b.Inoculation.IsZero() && c.given("want") {
			c.need("culture", quantity.Tell("cli.want_culture_at_hand_or_inoculation",
				"the culture at hand, or --inoculation or --ratio to be told how much it takes"))
		}
	}
	plan, err := b.Plan()
	if wrong := c.complain(err); wrong != nil {
		return wrong
	}
	told := bakeday.RipeLevain{Plan: plan}
	if plan.Reached {
		if told.Plan, told.Rounding, err = plan.Weigh(dough.Scales{Flour: q.Scale}); err != nil {
			return c.complain(err)
		}
	}
	if q.ripensToo {
		if told.Ripe, err = q.ripen(told.Plan.Stages, c); err != nil {
			return c.complain(err)
		}
	}
	if !q.cultureSet {
		told.Plan.LeftOver = quantity.Mass{}
	}
	return c.tellIf(plan.Reached, told, nil)
}

// ripen asks when each stage is ripe.
func (q *levain) ripen(feedings []dough.Feeding, c *call) ([]ferment.Ripeness, error) {
	culture, err := q.culture(c.System, bench.RaisingOf(ferment.Bulk{Inoculation: quantity.NewPercent(10)}))
	if err != nil {
		return nil, err
	}
	counter, err := q.history(c)
	if err != nil {
		return nil, err
	}
	return bakeday.FedLevain{
		Feedings: feedings, ChilledAfter: q.After, Refrigerator: q.Fridge,
		Ripening: ferment.Ripening{Hydration: q.Build.Hydration, WholeGrain: q.WholeGrain, History: counter,
			Law: lawWith(q.Curve, false), Culture: culture, ColdSeed: q.Cold, Extrapolate: q.Extrapolate},
	}.Ripe()
}

// fedNow is when a levain just fed is ripe, by the clock where it is known when it was fed.
type fedNow struct {
	ferment.Ripeness
	fed time.Time
}

// Report tells it by the clock.
func (r fedNow) Report() report.Report { return r.ReportFrom(r.fed) }
