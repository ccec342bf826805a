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

	OfMix  bool                 `flag:"of-mix"`
	Ratio  dough.Feeding        `flag:"ratio"`
	Cold   bool                 `flag:"cold"`
	Fed    string               `flag:"fed"`
	After  quantity.Elapsed     `flag:"refrigerate-after" paths:"ChilledAfter=refrigerate-after"`
	Fridge quantity.Temperature `flag:"refrigerator" usual:"4C"`
	Scale  quantity.Mass        `flag:"scale" usual:"1g" paths:"Flour=scale Fine=scale"`
}

func (q *levain) ask(c *call) error {
	asked := bakeday.AskedLevain{Build: q.Build, Scales: dough.Scales{Flour: q.Scale}}
	if q.OfMix {
		asked.Build.Of = dough.OfMix
	}
	if c.given("ratio") {
		c.not(quantity.Tell("cli.with_ratio_says_much", "--ratio, which says as much"),
			"inoculation", "of-mix", "hydration")
		asked.Ratio = &q.Ratio
	} else if !c.given("inoculation") {
		c.only("--inoculation", "of-mix")
	}
	if !c.given("refrigerate-after") {
		c.only("--refrigerate-after", "refrigerator")
	}
	some := quantity.Tell("cli.want_more_than_nothing", "more than 0 g")
	c.zero("culture", q.Build.Starter.Mass.IsZero(), some)
	c.zero("scale", q.Scale.IsZero(), some)
	if err := q.startAt(c, "fed", q.Fed); err != nil {
		return err
	}
	if c.given("room") || c.given("dough") || c.given("readings") {
		stands, err := q.stands(c)
		if err != nil {
			return c.complain(err)
		}
		asked.Stands = &stands
	} else {
		c.only(quantity.Tell("cli.with_room_dough", "--room or --dough"),
			"cold", "refrigerate-after", "refrigerator", "whole-grain", "fed")
	}
	if c.given("ratio") && asked.Stands != nil && !c.given("want") && !c.given("culture") {
		c.only("--want", "keep", "stages", "scale", "least", "most")
		return q.fedNow(c, *asked.Stands)
	}
	if !c.given("night") {
		c.only(quantity.Tell("cli.with_night_ratio", "--night, or --ratio without --want"), "fed")
	}
	if len(c.faults) > 0 {
		asked.Ratio = nil // what follows from a ratio that is none says nothing
	}
	told, err := asked.Answer()
	return c.tellIf(told.Plan.Reached, told, err)
}

// stands is where it stands, and what is known of its culture.
func (q *levain) stands(c *call) (out bakeday.FedLevain, err error) {
	if q.Dough.IsZero() && q.Readings == "" && !c.given("dough") {
		q.Dough = q.Room // a levain is soon as warm as the room it stands in
		if c.paths["History"], c.paths["Start"] = "room", "room"; q.Night.IsZero() {
			q.Room = quantity.Temperature{}
		}
	}
	counter, err := q.history(c)
	if err != nil {
		return out, err
	}
	culture, err := q.culture(c.System, bench.RaisingOf(ferment.Bulk{Inoculation: quantity.NewPercent(10)}))
	return bakeday.FedLevain{ChilledAfter: q.After, Refrigerator: q.Fridge, Ripening: ferment.Ripening{
		WholeGrain: q.WholeGrain, History: counter, Law: lawWith(q.Curve, false), Culture: culture, ColdSeed: q.Cold,
		Extrapolate: q.Extrapolate}}, err
}

// fedNow asks when a levain just fed is ripe, whatever it is for.
func (q *levain) fedNow(c *call, stands bakeday.FedLevain) error {
	if wrong := c.complain(nil); wrong != nil {
		return wrong
	}
	if !c.given("culture-hydration") {
		q.Build.Starter.Hydration = q.Ratio.Water.PercentOf(q.Ratio.Flour)
	}
	q.Ratio.Starter.Hydration = q.Build.Starter.Hydration
	stands.Feedings, stands.Ripening.Hydration = []dough.Feeding{q.Ratio}, q.Ratio.Hydration()
	ripe, err := stands.Ripe()
	if wrong := c.complain(err); wrong != nil {
		return wrong
	}
	told := fedNow{Ripeness: ripe[0]}
	if q.clocked {
		told.fed = q.start
	}
	reached, _, _ := told.Reached()
	return c.tellIf(reached, told, nil)
}

// fedNow is when a levain just fed is ripe, by the clock where it is known when it was fed.
type fedNow struct {
	ferment.Ripeness
	fed time.Time
}

// Report tells it by the clock.
func (r fedNow) Report() report.Report { return r.ReportFrom(r.fed) }
