package cli

import (
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/examples/internal/outfile"
	"example.org/maslin/ferment"
	"example.org/maslin/schedule/bench"
)

// bulk asks when a dough is ready, how far it may rise before the cold, and what would make it ready by a time.
type bulk struct {
	standing
	_    struct{}     `usual:"salt=2%; hydration=70%; rise=75%"`
	Bulk ferment.Bulk `flags:"Inoculation=prefermented Salt Hydration Sugar Altitude Rise ColdLevain Enriched"`
	_    struct{}     `paths:"Seed=prefermented Total=rise Stages[0].For=retard Bench=shaping Stages[0].Mass=piece"`
	_    struct{}     `paths:"Stages[0].Into.Night=refrigerator"`

	Kneading     ferment.KneadedBy    `flag:"kneaded-by" words:"hand,machine" form:"by *"`
	Yeast        ferment.Yeast        `flag:"yeast" paths:"Yeast.Amount=yeast Yeast.Kind=yeast"`
	Mixed        string               `flag:"mixed"`
	Retard       quantity.Elapsed     `flag:"retard"`
	Refrigerator quantity.Temperature `flag:"refrigerator" usual:"4C"`
	Piece        quantity.Mass        `flag:"piece" usual:"900g"`
	Shaping      quantity.Elapsed     `flag:"shaping" usual:"30m"`
	ReadyBy      string               `flag:"ready-by" paths:"ReadyBy=ready-by Room.TimeConstant=drift Room.Start=dough"`
	Seen         []string             `flag:"seen" paths:"Readings=seen"`
	SVG          string               `flag:"svg"`
	Replace      bool                 `flag:"replace"`
}

func (q *bulk) ask(c *call) error {
	curve := outfile.Output{Flag: "--svg", Name: q.SVG, Form: outfile.SVG()}
	if err := c.guarded(outfile.Guard{
		Inputs:  []outfile.Input{{Called: "the probe's readings", Name: q.Readings}},
		Outputs: []outfile.Output{curve}, Replace: q.Replace,
	}, q.Log); err != nil {
		return err
	}
	err := q.startAt(c, "mixed", q.Mixed)
	if err != nil {
		return err
	}
	b := &q.Bulk
	if b.History, err = q.history(c); err != nil {
		return c.complain(err)
	}
	if c.given("yeast") && q.Yeast.Kind == ferment.NoYeast && len(c.faults) > 0 {
		// What is wrong with it is said; that there is none would not be so.
		q.Yeast = ferment.Yeast{Kind: ferment.InstantYeast, Amount: quantity.NewPercent(1)}
	}
	b.Yeast, b.Kneading, b.WholeGrain, b.Extrapolate = q.Yeast, q.Kneading, q.WholeGrain, q.Extrapolate
	b.Law = lawWith(q.Curve, b.Inoculation.IsZero() && b.Yeast.Kind != ferment.NoYeast)
	if b.Culture, err = q.culture(c.System, bench.RaisingOf(*b)); err != nil {
		return c.complain(err)
	}
	asked := ferment.AskedDough{Bulk: *b}
	asked.Readings, err = bench.ReadRises(q.Seen, q.start)
	c.note("seen", err)
	if q.clocked {
		asked.Mixed = q.start
	}
	if !c.given("retard") {
		c.only("--retard", "refrigerator", "piece", "shaping")
	}
	if !c.given("prefermented") {
		c.only("--prefermented", "cold-levain")
	}
	if q.Retard > 0 {
		asked.Cold = &ferment.Proof{Bench: q.Shaping, Stages: []ferment.Piece{{Mass: q.Piece, Form: ferment.Round,
			Into: ferment.Room{Night: q.Refrigerator}, Exposure: ferment.Refrigerator, For: q.Retard}}}
	}
	if q.ReadyBy != "" {
		asked.ReadyBy = c.after("ready-by", q.ReadyBy, q.start)
		c.zero("ready-by", asked.ReadyBy == 0, quantity.Tell("cli.want_later_than_mixing", "a time after mixing"))
		if asked.Room = q.relax; q.Readings == "" && !q.Room.IsZero() && q.relax.Start.IsZero() {
			asked.Room = ferment.Relaxing{Start: q.Dough, Room: ferment.Room{Night: q.Room}, TimeConstant: q.Drift}
		}
	}
	a, err := asked.Answer()
	if wrong := c.complain(err); wrong != nil {
		return wrong
	}
	if q.SVG != "" {
		content, err := picture(a.Report().Section("rise"), c.options(c.output))
		if err != nil {
			return badInput(working.Say("%s: %s", q.SVG, err))
		}
		if err := writeFile(curve, q.Replace, content); err != nil {
			return err
		}
	}
	return c.tellIf(a.Estimate.Reached(), a, nil)
}
