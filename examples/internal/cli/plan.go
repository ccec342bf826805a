package cli

import (
	"context"
	"fmt"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/examples/internal/outfile"
	"example.org/maslin/schedule/bakeday"
)

// plan asks for the whole bake of a file, or for one day of several breads.
type plan struct {
	sheetFiles
	Late     quantity.Elapsed `flag:"late" paths:"By=late"`
	Step     string           `flag:"step" paths:"Step=step"`
	Fit      bool             `flag:"fit"`
	Cautions bool             `flag:"cautions"`
	Learned  bool             `flag:"learned"`
	logFlags
}

func (q *plan) ask(c *call) error {
	called := "the bake file"
	if len(c.args) > 1 {
		called = "a bake file"
		c.only(quantity.Tell("cli.with_single_bake_file", "a single bake file"), "svg", "csv")
	}
	if wrong := c.complain(nil); wrong != nil {
		return wrong
	}
	g := outfile.Guard{Outputs: q.outputs(), Replace: q.Replace}
	for _, name := range c.args {
		g.Inputs = append(g.Inputs, outfile.Input{Called: called, Name: name},
			outfile.Input{Called: "the kitchen file", Name: readBake(name).kitchen})
	}
	if err := c.guarded(g, q.Log); err != nil {
		return err
	}
	b, err := load(c, q.Now, c.args...)
	if err != nil {
		return err
	}
	known := make([][]working.Message, len(b.order.Bakes))
	for i, own := range b.order.Bakes {
		if !q.Learned {
			break
		}
		applied, err := learnedInto(c.System, q.Log, own)
		if err != nil {
			return err
		}
		b.order.Bakes[i], known[i] = applied.Bake, applied.RestsOn
	}
	if q.Fit {
		return q.fit(c, b)
	}
	day, err := b.order.Plan(c.cmd.Context(), b.clock)
	if err != nil {
		return b.complain(err)
	}
	if q.Late != 0 || q.Step != "" {
		return q.again(c, day)
	}
	for i, notes := range known {
		day.Breads[i].Notes = append(day.Breads[i].Notes, notes...)
	}
	if err := q.write(c, day, b.clock.Now); err != nil {
		return err
	}
	c.everyCaution = q.Cautions
	return c.tellIf(day.Possible(), only(day, day.Breads), nil)
}

// only is the answer for several breads, or that for the only one, which is told as of one bread.
func only[All, One telling](all All, breads []One) telling {
	if len(breads) == 1 {
		return breads[0]
	}
	return all
}

// again plans the rest of a day again because a step is late; a day that does not fit is told as it is.
func (q *plan) again(c *call, day bakeday.KitchenDay) error {
	c.need("step", quantity.Tell("cli.want_step_late_shape_or_rye",
		`the step that is late, such as "shape", or "Rye/shape" of several breads`))
	if wrong := c.complain(nil); wrong != nil {
		return wrong
	}
	if !day.Possible() {
		return c.tellIf(false, only(day, day.Breads), nil)
	}
	r, err := day.Replan(c.cmd.Context(), bakeday.Late{Step: q.Step, By: q.Late})
	return c.tellIf(r.Possible(), r, err)
}

// fit looks for a better setting of the levers, for twenty seconds at most.
func (q *plan) fit(c *call, b bakes) error {
	ctx, cancel := context.WithTimeout(c.cmd.Context(), 20*time.Second)
	defer cancel()
	progress, done := c.watched()
	found, err := b.order.Fit(ctx, b.clock, progress)
	done()
	if err != nil {
		return b.complain(err)
	}
	return c.tellIf(found.Day.Possible(), fitted{found, only(found.Day, found.Day.Breads)}, nil)
}

// fitted tells the best setting, with its day as data.
type fitted struct {
	bakeday.FittedDay
	Plan telling `json:"plan"`
}

// watched shows how the search goes on a line of its own while somebody looks, and takes the line away when it is done.
func (s System) watched() (progress func(tried, left int), done func()) {
	if !s.Terminal {
		return nil, func() {}
	}
	shown := 0
	show := func(text string) {
		fmt.Fprintf(s.Err, "\r%-*s\r%s", shown, "", text)
		shown = len(text)
	}
	return func(tried, left int) { show(fmt.Sprintf("%d tried, at most %d to go", tried, left)) },
		func() { show("") }
}
