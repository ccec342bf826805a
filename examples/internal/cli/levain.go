package cli

import (
	"time"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/ferment"
	"example.org/maslin/schedule/bench"
)

// levain asks what to feed so that a ripe levain is made, and when it is ripe.
type levain struct {
	standing
	Build dough.LevainBuild `flags:"* KeepBack=keep Starter.Mass=culture Starter.Hydration=culture-hydration"`
	_     struct{}          `paths:"Starter=culture Seed=inoculation Temperature=room SeedHydration=culture-hydration"`

	OfMix      bool                 `flag:"of-mix"`
	Ratio      dough.Feeding        `flag:"ratio"`
	Cold       bool                 `flag:"cold"`
	Fed        string               `flag:"fed"`
	After      quantity.Elapsed     `flag:"refrigerate-after" paths:"After=refrigerate-after"`
	Fridge     quantity.Temperature `flag:"refrigerator"`
	Scale      quantity.Mass        `flag:"scale" paths:"Flour=scale Fine=scale"`
	ripensToo  bool
	cultureSet bool
}

func newLevain() *levain {
	return &levain{
		Build: dough.LevainBuild{Hydration: quantity.NewPercent(100)}, Scale: quantity.Grams(1), Fridge: quantity.Celsius(4),
		standing: standing{Drift: quantity.Elapsed(2 * time.Hour)},
	}
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
	var p quantity.Problems
	if c.given("refrigerate-after") {
		p.Duration("After", q.After.Duration(), time.Minute, ferment.Horizon)
	}
	plan, err := b.Plan()
	p.Join("", err)
	if wrong := c.complain(p.Err()); wrong != nil {
		return wrong
	}
	told := fedLevain{Plan: plan, fed: q.fedAt()}
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
	var out []ferment.Ripeness
	for i, fed := range feedings {
		share, err := ferment.FeedRatio{Seed: fed.Starter.Mass.Grams(), Flour: fed.Flour.Grams(),
			SeedHydration: fed.Starter.Hydration}.SeedShare()
		if err != nil {
			return nil, err
		}
		history, err := q.stands(c, fed, i == len(feedings)-1)
		if err != nil {
			return nil, err
		}
		r, err := ferment.Ripening{
			Seed: share, Hydration: q.Build.Hydration, WholeGrain: q.WholeGrain, History: history, Law: lawWith(q.Curve, false),
			Culture: culture, ColdSeed: q.Cold && i == 0, Extrapolate: q.Extrapolate,
		}.Ripe()
		if err != nil {
			return nil, err
		}
		out = append(out, r)
	}
	return out, nil
}

// stands is the counter, and for the last stage the refrigerator after it.
func (q *levain) stands(c *call, fed dough.Feeding, last bool) (ferment.History, error) {
	counter, err := q.history(c)
	if err != nil || !last || q.After <= 0 {
		return counter, err
	}
	cold, err := ferment.Piece{
		Mass: fed.Made(), Form: ferment.Tub, Start: counter.At(q.After.Duration()), Into: ferment.Room{Night: q.Fridge},
		Exposure: ferment.Refrigerator,
	}.History()
	if err != nil {
		return cold, err
	}
	return ferment.Join(ferment.Stretch{History: counter, For: q.After}, ferment.Stretch{History: cold})
}

// fedNow is when a levain just fed is ripe, by the clock where it is known when it was fed.
type fedNow struct {
	ferment.Ripeness
	fed time.Time
}

// Report tells it by the clock.
func (r fedNow) Report() report.Report { return r.ReportFrom(r.fed) }

// fedLevain is a plan of feedings with when each of them is ripe.
type fedLevain struct {
	Plan     dough.LevainPlan   `json:"plan"`
	Rounding quantity.Mass      `json:"rounding,omitzero"`
	Ripe     []ferment.Ripeness `json:"ripe,omitempty"`

	fed time.Time
}

// Report tells the feedings, each with its ripeness behind it.
func (l fedLevain) Report() report.Report {
	r := l.Plan.Report()
	stage := 0
	for i := range r.Sections {
		if r.Sections[i].Key != "feeding" || stage >= len(l.Ripe) {
			continue
		}
		ripe := l.Ripe[stage]
		stage++
		r.Sections[i].Blocks = append(r.Sections[i].Blocks,
			report.List(append([]working.Message{ripe.Message()}, ripe.Notes()...)))
		r.Cautions = ripe.Cautions()
	}
	return r
}

// Workings are those of the feedings and of each ripeness.
func (l fedLevain) Workings() []working.Working {
	out := []working.Working{l.Plan.Working()}
	for _, r := range l.Ripe {
		out = append(out, r.Working())
	}
	return out
}
