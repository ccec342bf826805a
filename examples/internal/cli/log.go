package cli

import (
	"strings"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/examples/internal/bakelog"
	"example.org/maslin/schedule/bench"
)

// noted is what is said with every observation: when it was, of which bread, by whom.
type noted struct {
	logFlags
	At    string `flag:"at"`
	Bread string `flag:"bread"`
	By    string `flag:"by"`
	Sure  bool   `flag:"sure"`
}

// observation starts an observation. A nil zone is that of the bread.
func (n *noted) observation(c *call, kind bench.Sight, zone *time.Location) (bench.Observation, error) {
	if zone == nil {
		zone = n.zoneOfBread(c.System)
	}
	now, err := n.clock(c.System, zone)
	o := bench.Observation{
		Version: bench.Format, At: now.Truncate(time.Second), Kind: kind, Bread: strings.TrimSpace(n.Bread),
		By: strings.TrimSpace(n.By), Sure: n.Sure,
	}
	if err != nil || n.At == "" {
		return o, err
	}
	if o.At = c.past("at", n.At, now); o.At.After(now.Add(time.Minute)) {
		c.fault("at", quantity.Excerpt(n.At), quantity.Tell("cli.want_time_not_future", "a time that is not in the future"),
			quantity.ErrOutOfRange)
	}
	return o, nil
}

// zoneOfBread is the clock by which the bread was last followed or its dough mixed: that of the bake decides, not the
// machine's. It is nil when nothing of the bread is in the log, or when there is none that can be read: then it says so
// itself when it is written.
func (n *noted) zoneOfBread(s System) *time.Location {
	name, err := n.place(s)
	if err != nil {
		return nil
	}
	kept, err := bakelog.Read(name, bench.LogReading{Last: 1, Keep: func(o bench.Observation) bool {
		return (n.Bread == "" || o.Bread == n.Bread) &&
			(o.Kind == bench.SawMixed || o.Kind == bench.SawPlan || o.Kind == bench.SawStep)
	}})
	if err != nil || len(kept.Entries) == 0 {
		return nil
	}
	return kept.Entries[0].At.Location()
}

// write appends an observation and tells what it says at once.
func (n *noted) write(c *call, kind bench.Sight, zone *time.Location, fill func(*bench.Observation)) error {
	if err := n.writable(c.System); err != nil && len(c.faults) == 0 {
		return err
	}
	o, err := n.observation(c, kind, zone)
	if err == nil && len(c.faults) == 0 {
		fill(&o)
		err = o.Check()
	}
	if wrong := c.complain(err); wrong != nil {
		return wrong
	}
	name, err := n.append(c.System, o)
	if err != nil {
		return c.complain(err)
	}
	_, content, err := n.readUntil(c.System, o.At)
	if err != nil {
		return kept(name, err)
	}
	says, err := content.Entries.Tells(o)
	if err != nil {
		return kept(name, err)
	}
	return kept(name, c.tell(logged{loggedFormat, name, bench.NewEntries{Entries: bench.Observations{o},
		Says: append([]working.Message{}, says...)}}, nil))
}

// logged is the answer of a command that wrote to the log.
type logged struct {
	Format string `json:"format"`
	Log    string `json:"log"`
	bench.NewEntries
}

const loggedFormat = "maslin log 2"
