package cli

import (
	"fmt"
	"strings"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/examples/internal/outfile"
	"example.org/maslin/ferment"
	"example.org/maslin/schedule/bench"
)

// bulk asks when a dough is ready, how far it may rise before the cold, and what would make it ready by a time.
type bulk struct {
	standing
	Bulk ferment.Bulk `flags:"Inoculation=prefermented Salt Hydration Sugar Altitude Rise ColdLevain Enriched"`
	_    struct{}     `paths:"Seed=prefermented Total=rise Stages[0].For=retard Bench=shaping Stages[0].Mass=piece"`
	_    struct{}     `paths:"Stages[0].Into.Night=refrigerator"`

	Kneading     ferment.KneadedBy    `flag:"kneaded-by" words:"hand,machine" form:"by *"`
	Yeast        ferment.Yeast        `flag:"yeast" paths:"Yeast.Amount=yeast Yeast.Kind=yeast"`
	Mixed        string               `flag:"mixed"`
	Retard       quantity.Elapsed     `flag:"retard"`
	Refrigerator quantity.Temperature `flag:"refrigerator"`
	Piece        quantity.Mass        `flag:"piece"`
	Shaping      quantity.Elapsed     `flag:"shaping"`
	ReadyBy      string               `flag:"ready-by" paths:"Ready=ready-by"`
	Seen         []string             `flag:"seen"`
	SVG          string               `flag:"svg"`
	Replace      bool                 `flag:"replace"`
}

func newBulk() *bulk {
	return &bulk{
		Bulk: ferment.Bulk{Salt: quantity.NewPercent(2), Hydration: quantity.NewPercent(70),
			Rise: quantity.NewPercent(75)},
		standing:     standing{Drift: quantity.Elapsed(2 * time.Hour)},
		Refrigerator: quantity.Celsius(4), Piece: quantity.Grams(900), Shaping: quantity.Elapsed(30 * time.Minute),
	}
}

func (q *bulk) ask(c *call) error {
	if err := c.guarded(outfile.Guard{
		Inputs:  []outfile.Input{{Called: "the probe's readings", Name: q.Readings}},
		Outputs: []outfile.Output{{Flag: "--svg", Name: q.SVG, Form: outfile.SVG()}},
		Replace: q.Replace,
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
	b.Yeast, b.Kneading, b.WholeGrain, b.Extrapolate = q.Yeast, q.Kneading, q.WholeGrain, q.Extrapolate
	b.Law = lawWith(q.Curve, b.Inoculation.IsZero() && b.Yeast.Kind != ferment.NoYeast)
	if b.Culture, err = q.culture(c.System, bench.RaisingOf(*b)); err != nil {
		return c.complain(err)
	}
	e, err := b.Estimate()
	if wrong := c.complain(err); wrong != nil {
		return wrong
	}
	return q.answer(c, e)
}

// answer adds what else was asked to the estimate, and tells.
func (q *bulk) answer(c *call, e ferment.Estimate) error {
	a := risingDough{Estimate: e}
	if q.clocked {
		a.Mixed = q.start
	}
	var err error
	if len(q.Seen) > 0 {
		var seen ferment.Progress
		if seen, err = q.update(c, e); err == nil {
			a.Estimate, a.Seen = seen.Now, &seen
		}
	}
	if err == nil && q.Retard > 0 {
		a.Shape, err = q.shape(c, a.Estimate.Bulk())
	}
	if err == nil && q.ReadyBy != "" {
		a.Ways, err = q.ways(c)
	}
	if wrong := c.complain(err); wrong != nil {
		return wrong
	}
	if q.SVG != "" {
		picture, err := picture(a.Report().Section("rise"), c.options(c.output))
		if err == nil {
			err = writeFile(q.SVG, []byte(picture))
		}
		if err != nil {
			return err
		}
	}
	return c.tellIf(a.Estimate.Reached(), a, nil)
}

// update takes in what was seen of the dough, in order of time.
func (q *bulk) update(c *call, e ferment.Estimate) (ferment.Progress, error) {
	var readings []ferment.RiseReading
	for _, text := range q.Seen {
		rise, when, found := strings.Cut(text, " at ")
		var r ferment.RiseReading
		if !found {
			c.fault("seen", quantity.Excerpt(text), quantity.Tell("cli.want_rise_and_time_30_percent",
				`a rise and a time, such as "30 %% at 2h10m" or "30 %% at 16:20"`), quantity.ErrUnit)
		} else if err := r.Rise.UnmarshalText([]byte(strings.TrimSpace(rise))); err != nil {
			c.note("seen", err)
		}
		r.At = c.after("seen", when, q.start)
		c.paths[fmt.Sprintf("Readings[%d]", len(readings))] = "seen"
		readings = append(readings, r)
	}
	if len(c.faults) > 0 {
		return ferment.Progress{}, nil
	}
	return e.Update(readings...)
}

// shape finds how far the dough may rise before shaping, and when that is.
func (q *bulk) shape(c *call, b ferment.Bulk) (*ferment.ShapeTarget, error) {
	target, err := ferment.Proof{Bulk: b, Bench: q.Shaping, Total: b.Rise, Stages: []ferment.Piece{{
		Mass: q.Piece, Form: ferment.Round, Into: ferment.Room{Night: q.Refrigerator}, Exposure: ferment.Refrigerator,
		For: q.Retard,
	}}}.RiseBeforeShaping()
	if err == nil && target.Feasible && len(q.Seen) > 0 {
		var seen ferment.Progress
		seen, err = q.update(c, target.Shape)
		target.Shape = seen.Now
	}
	return &target, err
}

// ways asks what would make the dough ready at the wanted time.
func (q *bulk) ways(c *call) (*ferment.Ways, error) {
	by := c.after("ready-by", q.ReadyBy, q.start)
	if len(c.faults) > 0 {
		return nil, nil
	}
	drift := q.relax
	if q.Readings == "" && !q.Room.IsZero() && drift.Start.IsZero() {
		drift = ferment.Relaxing{Start: q.Dough, Room: ferment.Room{Night: q.Room}, TimeConstant: q.Drift}
	}
	ways, err := q.Bulk.WaysTo(by.Duration(), drift)
	return &ways, err
}

// risingDough is everything that was asked of a dough.
type risingDough struct {
	Estimate ferment.Estimate     `json:"estimate"` // with the readings taken in, when there are some
	Seen     *ferment.Progress    `json:"seen,omitempty"`
	Shape    *ferment.ShapeTarget `json:"shape,omitempty"`
	Ways     *ferment.Ways        `json:"ready_by,omitempty"`
	Mixed    time.Time            `json:"mixed,omitzero"` // by the clock, when it is known
}

// Report puts the answers together.
func (a risingDough) Report() report.Report {
	out := a.Estimate.ReportFrom(a.Mixed)
	switch {
	case a.Shape != nil:
		out = a.Shape.ReportFrom(a.Mixed)
	case a.Seen != nil:
		out = a.Seen.ReportFrom(a.Mixed)
	}
	if a.Ways != nil {
		out.Sections = append(out.Sections, a.Ways.ReportFrom(a.Mixed).Sections...)
	}
	return out
}

// Workings derive the estimate that the dough is watched for, the rise at which to shape, and the amount for the time
// wanted.
func (a risingDough) Workings() []working.Working {
	if a.Shape != nil {
		main := a.Estimate
		if a.Shape.Feasible && a.Shape.Shape.Reached() {
			main = a.Shape.Shape
		}
		return []working.Working{main.Working(), a.Shape.Working()}
	}
	out := []working.Working{a.Estimate.Working()}
	if a.Ways != nil {
		if w := a.Ways.Amount.Working(); w.Len() > 0 {
			out = append(out, w)
		}
	}
	return out
}
