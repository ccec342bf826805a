package cli

import (
	"example.org/maslin/bake"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule/bench"
)

// done asks whether a loaf is baked, by what is known of it now, and by two readings or more, how long still.
type done struct {
	Core  []string         `flag:"core" paths:"Samples=core"`
	Loaf  bake.LoafReading `flags:"* Core=- Wanted=target"`
	Place bake.Site        `flags:"Altitude Station=barometer SeaLevel=weather" paths:"Place=weather"`
	Probe bake.Probe       `flags:"Approach Window Extrapolate" paths:"Error=probe-error"`
}

func (q *done) ask(c *call) error {
	q.Loaf.Place = q.Place
	core, err := bench.ReadProbe(q.Core)
	c.note("core", err)
	if !core.Timed() {
		c.only(quantity.Tell("cli.with_cores_times", "two or more --core with their times"),
			"approach", "window", "extrapolate")
		q.Loaf.Core = core.Core
		v, err := q.Loaf.Judge()
		return c.tellIf(v.State != bake.SaysNothing, v, err)
	}
	c.not(quantity.Tell("cli.with_core_how_long", "--core with its times, which say how long still"),
		"dough", "loaf", "held")
	p := &q.Probe
	p.Goal, p.InOven, p.Error = q.Loaf.Goal, q.Loaf.InOven, q.Loaf.ProbeError
	p.Samples, p.Now = core.Samples, core.Last(c.Now())
	p.EntryUnknown = core.ByClock && p.InOven == 0
	left, err := p.TimeLeft()
	return c.tellIf(left.State != bake.NearBoiling && left.State != bake.Vague, left, err)
}

// cool asks when a loaf may be cut: by its weight and shape, or by a probe in it.
type cool struct {
	Core  []string                  `flag:"core" paths:"From=core Samples=core"`
	Loaf  bake.CoolingLoaf          `flags:"* Baked=loaf"`
	Error quantity.TemperatureDelta `flag:"probe-error"`
}

func (q *cool) ask(c *call) error {
	core, err := bench.ReadProbe(q.Core)
	c.note("core", err)
	if core.Timed() {
		c.not(quantity.Tell("cli.with_core_says_more", "--core with its times, which say more"),
			"loaf", "style", "shape", "loses")
		return c.tell(bake.CoolingProbe{
			Samples: core.Samples, Now: core.Last(c.Now()), Room: q.Loaf.Room, Slice: q.Loaf.Slice, Error: q.Error,
		}.TimeLeft())
	}
	c.only(quantity.Tell("cli.with_cores_times", "two or more --core with their times"), "probe-error")
	q.Loaf.From = core.Core
	return c.tell(q.Loaf.Time())
}

// keep asks how stale a loaf gets where it lies.
type keep struct {
	Loaf  bake.StoredLoaf `flags:"Style"`
	Stays []bake.Stay     `flag:"stay" pair:"For=At"`
}

func (q *keep) ask(c *call) error {
	q.Loaf.Stays = q.Stays
	return c.tell(q.Loaf.Staling())
}
