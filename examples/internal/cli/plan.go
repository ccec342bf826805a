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
		c.only("a single bake file", "svg", "csv")
	}
	if wrong := c.complain(nil); wrong != nil {
		return wrong
	}
	g := outfile.Guard{Outputs: q.outputs(), Replace: q.Replace}
	for _, name := range c.args {
		g.Inputs = append(g.Inputs, outfile.Input{Called: called, Name: name})
	}
	if err := c.guarded(g, q.Log); err != nil {
		return err
	}
	if len(c.args) > 1 {
		return q.together(c)
	}
	return q.one(c, c.args[0])
}

// one plans the bake of one file.
func (q *plan) one(c *call, name string) error {
	l, err := load(c.System, name, q.Now)
	if err != nil {
		return err
	}
	var known []working.Message
	if q.Learned {
		applied, err := learnedInto(c.System, q.Log, l.bake)
		if err != nil {
			return err
		}
		l.bake, known = applied.Bake, applied.RestsOn
	}
	if q.Fit {
		best, err := fit(c, func(ctx context.Context, progress func(tried, left int)) (bakeday.Fitted, error) {
			return l.bake.Fit(ctx, l.clock, progress)
		})
		return c.tellIf(best.Best.Day.Possible(), fitted{best, best.Best.Day}, l.complain(err))
	}
	day, err := l.bake.Plan(c.cmd.Context(), l.clock)
	if err != nil {
		return l.complain(err)
	}
	replan := func(late bakeday.Late) (replanned, error) { return day.Replan(c.cmd.Context(), late) }
	if q.Late != 0 || q.Step != "" {
		return q.again(c, day.Possible(), day, replan)
	}
	day.Notes = append(day.Notes, known...)
	if data := day.Data(); data.Possible {
		if err := q.writeCalendar(data.Name, data, l.clock.Now); err != nil {
			return err
		}
	}
	on := c.sheetOptions()
	if err := q.writeSheet(func() []byte { return day.Sheet(on) }); err != nil {
		return err
	}
	if err := q.writeTables(day, on); err != nil {
		return err
	}
	c.everyCaution = q.Cautions
	return c.tellIf(day.Possible(), day, nil)
}

// A replanned day tells what changes, and whether the rest of it still fits.
type replanned interface {
	telling
	Possible() bool
}

// again plans the rest of a day again because a step is late; a day that does not fit is told as it is.
func (q *plan) again(c *call, possible bool, day telling, replan func(bakeday.Late) (replanned, error)) error {
	c.need("step", quantity.Tell("cli.want_step_late_shape_or_rye",
		`the step that is late, such as "shape", or "Rye/shape" of several breads`))
	if wrong := c.complain(nil); wrong != nil {
		return wrong
	}
	if !possible {
		return c.tellIf(false, day, nil)
	}
	r, err := replan(bakeday.Late{Step: q.Step, By: q.Late})
	if err != nil {
		return c.complain(err)
	}
	return c.tellIf(r.Possible(), r, nil)
}

// fit looks for a better setting of the levers, for twenty seconds at most.
func fit[F any](c *call, search func(context.Context, func(tried, left int)) (F, error)) (F, error) {
	ctx, cancel := context.WithTimeout(c.cmd.Context(), 20*time.Second)
	defer cancel()
	progress, done := c.watched()
	defer done()
	return search(ctx, progress)
}

// fitted tells the best setting, and derives its day.
type fitted struct {
	bakeday.Fitted
	Plan bakeday.Day `json:"plan"`
}

// Workings are those of the day that fits best.
func (f fitted) Workings() []working.Working { return f.Plan.Workings() }

// fittedDay is the same of several breads.
type fittedDay struct {
	bakeday.FittedDay
	Plan bakeday.KitchenDay `json:"plan"`
}

// Workings are those of the day that fits best.
func (f fittedDay) Workings() []working.Working { return f.Plan.Workings() }

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
