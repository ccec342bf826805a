package cli

import (
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule/bakeday"
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
	if q.Follow || q.Done {
		if wrong := c.complain(q.writable(c.System)); wrong != nil {
			return wrong
		}
	}
	if wrong := c.complain(nil); wrong != nil {
		return wrong
	}
	d, err := load(c, "", c.args...)
	if err != nil {
		return err
	}
	if d.clock.Now, err = q.clock(c.System, d.clock.Zone); err != nil {
		return err
	}
	m, err := q.moment(c, d)
	if err != nil {
		return err
	}
	if !m.Day.Possible() {
		return c.tellIf(false, told(m), nil)
	}
	entries, done, err := q.entries(c, d, m)
	if wrong := c.complain(err); wrong != nil {
		return wrong
	}
	if len(entries) == 0 {
		return c.tell(q.suggesting(c, d, m), nil)
	}
	name, err := q.append(c.System, entries...)
	if err != nil {
		return c.complain(err)
	}
	if m, err = q.moment(c, d); err == nil && !c.JSON {
		err = c.tell(logged{Format: loggedFormat, Log: name, Entries: entries, done: done}, nil)
	}
	if err == nil {
		err = c.tell(q.suggesting(c, d, m), nil)
	}
	return kept(name, err)
}

// told is the moment as it is told: that of the only bread as of one bread.
func told(m bench.KitchenNow) telling {
	if len(m.Breads) == 1 {
		return m.Breads[0]
	}
	return m
}

// moment is how the day stands by the log.
func (q *now) moment(c *call, d bakes) (bench.KitchenNow, error) {
	name, content, err := q.readUntil(c.System, d.clock.Now)
	if err != nil {
		return bench.KitchenNow{}, err
	}
	m, err := bench.KitchenUnder{Order: d.order, Observations: content.Entries}.At(c.cmd.Context(), d.clock)
	switch {
	case err != nil && len(quantity.InputErrors(err)) > 0:
		return m, d.complain(err)
	case err != nil:
		return m, badInput(working.Say("%s: %s", fileName(name), err))
	}
	return m, nil
}

// entries are what the flags ask to be logged, and the step that is done. Whoever logs follows the plan.
func (q *now) entries(c *call, d bakes, m bench.KitchenNow) (out bench.Observations, done working.Message,
	err error) {
	note := noted{q.logFlags, q.At, "", q.By, q.Sure}
	for _, bread := range m.Breads {
		if bread.Followed != nil || !q.Follow && !q.Done {
			continue
		}
		note.Bread = bread.Name
		o, err := note.observation(c, bench.SawPlan, d.clock.Zone)
		if err != nil {
			return nil, done, err
		}
		bake := bread.Day.Bake
		o.At, o.Plan = m.Now, &bench.FollowedPlan{Made: m.Day.Now, Wanted: bread.Day.Wanted,
			Style: bake.Loaves.Style, Altitude: bake.Kitchen.Altitude}
		out = append(out, o)
	}
	if !q.Done {
		return out, done, nil
	}
	step, err := q.meant(m)
	if err != nil {
		return nil, done, err
	}
	note.Bread = step.Bread
	o, err := note.observation(c, bench.SawStep, d.clock.Zone)
	o.Step = step.ID
	return append(out, o), step.Name, err
}

// meant is the step that is done.
func (q *now) meant(m bench.KitchenNow) (bakeday.StepData, error) {
	if q.Step != "" {
		step, err := m.StepNamed(q.Step)
		if err != nil {
			err = badInput(working.Tell("cli.now_step", "maslin now: --step: %v", err))
		}
		return step, err
	}
	due := m.StepsDue()
	switch len(due) {
	case 0:
		return bakeday.StepData{}, badInput(working.Tell("cli.now_done_no_step_was",
			"maslin now: --done: no step was due yet; say which with --step"))
	case 1:
		return due[0], nil
	}
	var may []string
	for _, s := range due {
		id := s.ID
		if len(m.Breads) > 1 {
			id = s.Bread + "/" + id
		}
		may = append(may, id)
	}
	return bakeday.StepData{}, badInput(working.Tell("cli.now_done_several",
		"maslin now: --done: several steps are not done yet; say which with --step: %v", either(may)))
}
