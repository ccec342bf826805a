package cli

import (
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule/bench"
)

// now asks which step of the day is due, what to look for, and what has changed.
type now struct {
	logFlags
	At     string `flag:"at"`
	By     string `flag:"by"`
	Sure   bool   `flag:"sure"`
	Done   bool   `flag:"done"`
	Step   string `flag:"step"`
	Follow bool   `flag:"follow"`
}

func (q *now) ask(c *call) error {
	if !q.Done {
		c.only("--done", "step")
	}
	var noLog error
	if q.Follow || q.Done {
		noLog = q.writable(c.System)
	}
	if wrong := c.complain(noLog); wrong != nil {
		return wrong
	}
	b, err := load(c, "", c.args...)
	if err != nil {
		return err
	}
	if b.clock.Now, err = q.clock(c.System, b.clock.Zone); err != nil {
		return err
	}
	m, err := q.moment(c, b)
	if err != nil {
		return err
	}
	if !m.Day.Possible() {
		return c.tellIf(false, only(m, m.Breads), nil)
	}
	entries, done, err := q.entries(c, b, m)
	if wrong := c.complain(err); wrong != nil {
		return wrong
	}
	if len(entries) == 0 {
		return c.tell(q.suggesting(c, b, m), nil)
	}
	name, err := q.append(c.System, entries...)
	if err != nil {
		return c.complain(err)
	}
	if m, err = q.moment(c, b); err == nil && !c.JSON {
		err = c.tell(logged{loggedFormat, name, bench.NewEntries{Entries: entries, Done: done}}, nil)
	}
	if err == nil {
		err = c.tell(q.suggesting(c, b, m), nil)
	}
	return kept(name, err)
}

// moment is how the day stands by the log.
func (q *now) moment(c *call, b bakes) (bench.KitchenNow, error) {
	name, content, err := q.readUntil(c.System, b.clock.Now)
	if err != nil {
		return bench.KitchenNow{}, err
	}
	m, err := bench.KitchenUnder{Order: b.order, Observations: content.Entries}.At(c.cmd.Context(), b.clock)
	switch {
	case err != nil && len(quantity.InputErrors(err)) > 0:
		return m, b.complain(err)
	case err != nil:
		return m, badInput(working.Say("%s: %s", fileName(name), err))
	}
	return m, nil
}

// entries are what the flags ask to be logged, and the step that is done. Whoever logs follows the plan.
func (q *now) entries(c *call, b bakes, m bench.KitchenNow) (out bench.Observations, done working.Message, err error) {
	note := noted{logFlags: q.logFlags, At: q.At, By: q.By, Sure: q.Sure}
	o, err := note.observation(c, bench.SawStep, b.clock.Zone)
	if err != nil || !q.Follow && !q.Done {
		return nil, done, err
	}
	for _, e := range m.Expected() {
		if follows := e.Observation; follows.Kind == bench.SawPlan {
			follows.By, follows.Sure = o.By, o.Sure
			out = append(out, follows)
		}
	}
	if !q.Done {
		return out, done, nil
	}
	step, err := m.StepNamed(q.Step)
	c.note("step", err)
	o.Step, o.Bread = step.ID, step.Bread
	return append(out, o), step.Name, nil
}
