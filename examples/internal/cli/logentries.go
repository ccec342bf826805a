package cli

import (
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/ferment"
	"example.org/maslin/schedule/bench"
)

// logMix keeps a dough that left the mixer: its temperature, and what made it so.
type logMix struct {
	noted
	Mix   bench.DoughMixed `flags:"* Inoculation=prefermented Yeast=- Enriched=- Into=-" paths:"mix=dough mix.inoculation=prefermented"`
	Yeast ferment.Yeast    `flag:"yeast" paths:"mix.yeast=yeast mix.yeast_kind=yeast"`
}

func (q *logMix) ask(c *call) error {
	c.need("dough", quantity.Tell("cli.want_temperature_dough_when_mixer_stopped",
		`the temperature of the dough when the mixer stopped, such as "25.5 °C"`))
	m := &q.Mix
	m.Yeast, m.YeastKind = q.Yeast.Amount, q.Yeast.Kind
	var zone *time.Location
	if len(c.args) == 1 && len(c.faults) == 0 {
		if err := q.writable(c.System); err != nil {
			return err
		}
		b, err := load(c, "", c.args[0])
		if err != nil {
			return err
		}
		if b.clock.Now, err = q.clock(c.System, b.clock.Zone); err != nil {
			return err
		}
		zone = b.clock.Zone
		if q.Bread == "" {
			q.Bread = b.first().Name
		}
		o, err := q.observation(c, bench.SawMixed, zone)
		if wrong := c.complain(err); wrong != nil {
			return wrong
		}
		_, content, err := q.read(c.System)
		if err != nil {
			return err
		}
		// The plan is that of the bench: the one that is followed, where one is.
		o.Bread, o.Mix = b.first().Name, m
		day, err := bench.Under{Bake: *b.first(), Observations: append(content.Entries, o)}.At(c.cmd.Context(), b.clock)
		if err != nil {
			return b.complain(err)
		}
		*m = m.AsPlanned(day.Day, o.At)
	}
	return q.write(c, bench.SawMixed, zone, func(o *bench.Observation) { o.Mix = m })
}

// logRise keeps how far the dough has risen.
type logRise struct {
	noted
	Rise    bench.SeenRise   `flags:"Error" paths:"rise.error=error"`
	Percent quantity.Percent `arg:"PERCENT" paths:"rise.rise=PERCENT"`
	Heights ferment.Heights  `flags:"Start=from Now=to" paths:"Start=from Now=to start=from now=to"`
}

func (q *logRise) ask(c *call) error {
	byHeight := c.given("from") || c.given("to")
	switch {
	case byHeight && len(c.args) > 0:
		return badInput(working.Tell("cli.log_rise_want_percentage_or",
			"maslin log rise: want a percentage or --from and --to, not both"))
	case byHeight:
		read, err := q.Heights.Rise()
		if wrong := c.complain(err); wrong != nil {
			return wrong
		}
		q.Percent, err = quantity.ParsePercent(read.Text(1)) // a ruler tells no more
		if err != nil {
			return err
		}
	case len(c.args) == 0:
		return badInput(working.Tell("cli.want_rise_30_or_from",
			"%s: want a rise such as 30%%, or --from and --to; for example: %s", c.cmd.CommandPath(),
			c.firstExample()))
	}
	q.Rise.Rise = q.Percent
	return q.write(c, bench.SawRise, nil, func(o *bench.Observation) { o.Rise = &q.Rise })
}

// logReady keeps when the dough was really ready, and how far it had risen.
type logReady struct {
	noted
	Percent  quantity.Percent `arg:"PERCENT" paths:"ready.rise=PERCENT ready.readings=readings"`
	Readings string           `flag:"readings"`
}

func (q *logReady) ask(c *call) error {
	ready := bench.ReadyDough{Rise: q.Percent}
	if q.Readings != "" {
		r, _, err := readReadings(q.Readings)
		if err != nil {
			return err
		}
		ready.Readings = r.Points
	}
	return q.write(c, bench.SawReady, nil, func(o *bench.Observation) { o.Ready = &ready })
}

// logCore keeps a reading of the core in the oven.
type logCore struct {
	noted
	Core quantity.Temperature `arg:"TEMPERATURE" paths:"core.core=TEMPERATURE"`
	Seen bench.SeenCore       `flags:"After Out=done" paths:"core.after=after"`
}

func (q *logCore) ask(c *call) error {
	q.Seen.Core = q.Core
	return q.write(c, bench.SawCore, nil, func(o *bench.Observation) { o.Core = &q.Seen })
}

// logWeights keeps a loaf weighed as dough and when cool.
type logWeights struct {
	noted
	_       struct{}          `usual:"style=lean hearth"`
	Weights bench.LoafWeights `flags:"In Out Style" paths:"weights.in=in weights.out=out weights.style=style"`
}

func (q *logWeights) ask(c *call) error {
	return q.write(c, bench.SawWeights, nil, func(o *bench.Observation) { o.Weights = &q.Weights })
}

// logNote keeps anything else.
type logNote struct {
	noted
	Text string `arg:"TEXT" paths:"note=TEXT"`
}

func (q *logNote) ask(c *call) error {
	return q.write(c, bench.SawNote, nil, func(o *bench.Observation) { o.Note = q.Text })
}
