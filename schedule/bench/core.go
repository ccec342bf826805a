package bench

import (
	"example.org/maslin/bake"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule/bakeday"
)

// core is what the cores that were read in a round of the bake say: with two or more that can be carried on, how long
// still; otherwise whether the loaf is done by the last of them.
func (m DayNow) core(s bakeday.StepData) []working.Message {
	seen := m.cores(s)
	if len(seen) == 0 || !m.Day.Bake.Loaves.Style.ByCore() {
		return nil
	}
	last := seen[len(seen)-1]
	in := last.Core.After // as somebody said, or as the round was planned
	if in == 0 {
		in = quantity.Elapsed(last.At.Sub(s.Start))
	}
	goal := bake.Goal{Style: m.Day.Bake.Loaves.Style, Place: bake.At(m.Day.Bake.Kitchen.Altitude)}
	at := last.At.In(m.Now.Location())
	probe := bake.Probe{Goal: goal, InOven: in, Now: at}
	for _, o := range seen {
		probe.Samples = append(probe.Samples, bake.Sample{At: quantity.Elapsed(o.At.Sub(s.Start)), Core: o.Core.Core})
	}
	if left, err := probe.TimeLeft(); err == nil && left.State == bake.Rising {
		return []working.Message{working.Tell("bench.core_left", "core %.1f at %t: %v", last.Core.Core, at,
			left.Report().Headline)}
	}
	loaf := bake.LoafReading{Goal: goal, Core: last.Core.Core, InOven: in, Dough: m.Day.Baking.Scaling}
	verdict, err := loaf.Judge()
	if err != nil {
		return nil // a core that no loaf has is doubted elsewhere
	}
	return []working.Message{working.Tell("bench.core_judged", "core at %t: %v", at, verdict.Report().Headline)}
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
