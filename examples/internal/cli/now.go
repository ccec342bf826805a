package cli

import (
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
	if wrong := c.complain(nil); wrong != nil {
		return wrong
	}
	l, err := load(c.System, c.args[0], "")
	if err != nil {
		return err
	}
	if l.clock.Now, err = q.clock(c.System, l.clock.Zone); err != nil {
		return err
	}
	m, err := q.moment(c, l)
	if err != nil {
		return err
	}
	if !m.Day.Possible() {
		return c.tellIf(false, m, nil)
	}
	entries, err := q.entries(c, l, m)
	if wrong := c.complain(err); wrong != nil {
		return wrong
	}
	if len(entries) == 0 {
		return c.tell(m, nil)
	}
	name, err := q.append(c.System, entries...)
	if err != nil {
		return c.complain(err)
	}
	if m, err = q.moment(c, l); err == nil && !c.JSON {
		err = c.tell(logged{loggedFormat, name, entries, nil}, nil)
	}
	if err == nil {
		err = c.tell(m, nil)
	}
	return kept(name, err)
}

// moment is how the day stands by the log.
func (q *now) moment(c *call, l loaded) (bench.DayNow, error) {
	name, content, err := q.read(c.System)
	if err != nil {
		return bench.DayNow{}, err
	}
	m, err := bench.Under{Bake: l.bake, Observations: content.Entries}.At(c.cmd.Context(), l.clock)
	if err != nil {
		if faults := located(l.file, err); len(faults) > 0 {
			return m, complain(l.name, faults)
		}
		return m, badInput("%s: %s", fileName(name), err)
	}
	return m, nil
}

// entries are what the flags ask to be logged. Whoever logs follows the plan.
func (q *now) entries(c *call, l loaded, m bench.DayNow) (out bench.Observations, err error) {
	note := noted{q.logFlags, q.At, l.bake.Name, q.By, q.Sure}
	if m.Followed == nil && (q.Follow || q.Done) {
		o, err := note.observation(c, bench.SawPlan, l.clock.Zone)
		if err != nil {
			return nil, err
		}
		o.At, o.Plan = m.Now, &bench.FollowedPlan{Made: m.Day.Now, Wanted: m.Day.Wanted}
		out = append(out, o)
	}
	if !q.Done {
		return out, nil
	}
	due, ok := m.StepDue()
	id := due.ID
	switch {
	case q.Step != "":
		if step, ok := m.Step(q.Step); ok { // what is done at the oven is a step too
			id = step.ID
			break
		}
		step, err := m.Day.StepNamed(q.Step)
		if err != nil {
			return nil, badInput("maslin now: --step: %v", err)
		}
		id = step.ID
	case !ok:
		return nil, badInput("maslin now: --done: no step was due yet; say which with --step")
	}
	o, err := note.observation(c, bench.SawStep, l.clock.Zone)
	o.Step = id
	return append(out, o), err
}
