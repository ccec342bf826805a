package bench

import (
	"time"

	"example.org/maslin/bake"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule/bakeday"
)

// oneBake is a round of the oven in which cores were read.
type oneBake struct {
	goal  bake.Goal
	cores Observations
	in    time.Time     // when it went in; zero: not known
	dough quantity.Mass // of a piece; zero: not known
	zone  *time.Location
}

// core is what the cores that were read in a round of the bake say.
func (m DayNow) core(s bakeday.StepData) []working.Message {
	b := oneBake{
		goal:  bake.Goal{Style: m.Day.Bake.Loaves.Style, Place: bake.At(m.Day.Bake.Kitchen.Altitude)},
		cores: m.cores(s), in: s.Start, dough: m.Day.Baking.Scaling, zone: m.Now.Location(),
	}
	if !b.goal.Style.ByCore() {
		return nil // what is said of the bake says so
	}
	return b.says()
}

// cores are those read in a round, until now.
func (m DayNow) cores(s bakeday.StepData) Observations {
	if m.Dough == nil {
		return nil
	}
	var out Observations
	for _, o := range m.Dough.Cores {
		if o.At.After(s.Start) && !o.At.After(m.Now) && o.At.Before(s.End.Add(after)) {
			out = append(out, o)
		}
	}
	return out
}

// says tells what the cores mean: with two or more that can be carried on, how long still; otherwise whether the loaf
// is done by the last of them.
func (b oneBake) says() []working.Message {
	if len(b.cores) == 0 {
		return nil
	}
	last := b.cores[len(b.cores)-1]
	at := last.At.In(b.zone)
	in := last.Core.After // as somebody said, or as the round was planned
	if in == 0 && !b.in.IsZero() {
		in = quantity.Elapsed(last.At.Sub(b.in))
	}
	from := b.in
	if from.IsZero() {
		from = b.cores[0].At
	}
	probe := bake.Probe{Goal: b.goal, InOven: in, EntryUnknown: in == 0, Now: at}
	for _, o := range b.cores {
		probe.Samples = append(probe.Samples, bake.Sample{At: quantity.Elapsed(o.At.Sub(from)), Core: o.Core.Core})
	}
	if left, err := probe.TimeLeft(); err == nil && left.State == bake.Rising && !last.Core.Out {
		return []working.Message{working.Tell("bench.core_left", "core %.1f at %t: %v", last.Core.Core, at,
			left.Report().Headline)}
	}
	loaf := bake.LoafReading{Goal: b.goal, Core: last.Core.Core, InOven: in, Dough: b.dough}
	verdict, err := loaf.Judge()
	if err != nil {
		return nil // a core that no loaf has is doubted elsewhere
	}
	return []working.Message{working.Tell("bench.core_judged", "core at %t: %v", at, verdict.Report().Headline)}
}

// afterProbing tells what a core means by the log alone: of the dough that was mixed last, or of the plan that is
// followed. Cores of the same loaf are those since the last that was taken out, within two hours.
func (all Observations) afterProbing(o Observation) []working.Message {
	b := oneBake{zone: o.At.Location()}
	var out []working.Message
	if of, ok := all.DoughOf(o); ok {
		b.goal, b.cores = bake.Goal{Style: of.Mix.Style, Place: bake.At(of.Mix.Altitude)}, of.Cores
	} else if plan := all.followed(all.breadOf(o), o.At); plan != nil {
		b.goal = bake.Goal{Style: plan.Style, Place: bake.At(plan.Altitude)}
	} else {
		out = append(out, working.Tell("bench.core_of_any", "nothing in the log says what is baked: taken as a loaf of the "+
			"style %v at sea level", b.goal.Style))
	}
	if b.cores == nil {
		for _, one := range all.Until(o.At).ByTime() {
			if one.Kind == SawCore && one.whole() && one.By == o.By && one.Bread == o.Bread {
				b.cores = append(b.cores, one)
			}
		}
	}
	const oneLoaf = 2 * time.Hour // Judgment: longer than any loaf is probed
	for i := len(b.cores) - 2; i >= 0; i-- {
		if c := b.cores[i]; c.Core.Out || o.At.Sub(c.At) > oneLoaf || c.Core.After > 0 && o.Core.After > 0 &&
			c.Core.After >= o.Core.After {
			b.cores = b.cores[i+1:]
			break
		}
	}
	return append(out, b.says()...)
}

// breadOf is the bread of an observation; of one that names none it is the bread whose plan was followed last.
func (all Observations) breadOf(o Observation) string {
	bread := o.Bread
	for _, one := range all.Until(o.At) {
		if o.Bread == "" && one.Kind == SawPlan && one.By == o.By {
			bread = one.Bread
		}
	}
	return bread
}
