package bench

import (
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/ferment"
)

// String tells the observation in English.
func (o Observation) String() string { return o.Message().String() }

// Message tells what was observed, without when and of which bread.
func (o Observation) Message() working.Message {
	switch {
	case o.Mix != nil:
		return o.Mix.Message()
	case o.Rise != nil:
		return working.Tell("bench.said_rise", "risen by %.0f", o.Rise.Rise)
	case o.Ready != nil && len(o.Ready.Readings) > 0:
		return working.Tell("bench.said_ready_probe", "ready, risen by %.0f, with %d readings of the probe",
			o.Ready.Rise, len(o.Ready.Readings))
	case o.Ready != nil:
		return working.Tell("bench.said_ready", "ready, risen by %.0f", o.Ready.Rise)
	case o.Core != nil:
		return o.Core.Message()
	case o.Weights != nil:
		return working.Tell("bench.said_weights", "weights: %v in, %v out, %v", o.Weights.In, o.Weights.Out,
			o.Weights.Style)
	case o.Plan != nil:
		return working.Tell("bench.said_plan", "following the plan for %x", o.Plan.Wanted.In(o.At.Location()))
	case o.Step != "":
		return working.Tell("bench.said_step", "done: %s", o.Step)
	case o.Note != "":
		return working.Tell("bench.said_note", "note: %s", o.Note)
	}
	return working.Tell("bench.said_nothing", "nothing")
}

// Message tells the reading.
func (c SeenCore) Message() working.Message {
	says := working.Tell("bench.said_core", "core %.1f", c.Core)
	if c.After > 0 {
		says = working.Tell("bench.said_core_after", "core %.1f after %v", c.Core, c.After)
	}
	if c.Out {
		says = working.Tell("bench.said_out", "%v, taken out", says)
	}
	return says
}

// Message tells the dough and what is known of it.
func (m DoughMixed) Message() working.Message {
	parts := []working.Message{working.Tell("bench.said_mixed", "mixed, dough %.1f", m.Dough)}
	add := func(given bool, says working.Message) {
		if given {
			parts = append(parts, says)
		}
	}
	add(!m.Flour.IsZero(), working.Tell("bench.said_flour", "flour %.1f", m.Flour))
	add(!m.Water.IsZero(), working.Tell("bench.said_water", "water %.1f", m.Water))
	add(!m.Levain.IsZero(), working.Tell("bench.said_levain", "levain %.1f", m.Levain))
	add(!m.Room.IsZero(), working.Tell("bench.said_room", "room %.1f", m.Room))
	add(m.Mixer != 0, working.Say("%v", m.Mixer))
	add(m.Slow > 0, working.Tell("bench.said_slow", "%v at the first speed", m.Slow))
	add(m.Fast > 0, working.Tell("bench.said_fast", "%v at the second speed", m.Fast))
	add(m.Inoculation.Sign() > 0, working.Tell("bench.said_inoculation", "%.1f in the levain", m.Inoculation))
	add(m.Yeast.Sign() > 0, working.Tell("bench.said_yeast", "%.2f %v", m.Yeast, m.YeastKind))
	return working.Join(parts, ", ")
}

// DoughOf is the dough that an observation is of; ok is false when none was mixed within five days before it.
func (all Observations) DoughOf(o Observation) (b LoggedBake, ok bool) {
	bakes := all.since(o.At.Add(-longest)).Until(o.At).Bakes()
	for i := len(bakes) - 1; i >= 0; i-- {
		if b := bakes[i]; b.By == o.By && (o.Bread == "" || o.Bread == b.Bread) && o.At.Sub(b.Mixed) < longest {
			return b, true
		}
	}
	return LoggedBake{}, false
}

// before is what was known of the culture when the dough was mixed.
func (all Observations) before(b LoggedBake) (ferment.Culture, error) {
	var earlier []LoggedBake
	judged := all.judge()
	for _, one := range judged.believed().ByTime().grouped() {
		if one.Mixed.Before(b.Mixed) {
			earlier = append(earlier, one)
		}
	}
	c, err := learnCulture(b.Mix.RaisedBy(), earlier, judged.doughs, 0)
	return c.Lesson.Culture, err
}

// Tells answers: what does this observation, the last of all, say at once? How the mixer warmed the dough, when the
// dough is ready now, how the range did, how long the loaf still takes, what the oven took, and whether it can be true
// at all.
//
// Errors: those of learning from the bakes before.
func (all Observations) Tells(o Observation) ([]working.Message, error) {
	mixed := all.mixings()
	for _, one := range all {
		if !one.At.Equal(o.At) || one.Kind != o.Kind || one.By != o.By {
			continue
		}
		if says := one.doubted(mixed, doughs{}); !says.IsZero() {
			return []working.Message{
				working.Tell("bench.told_doubt", "%v It is kept, and changes nothing until it is confirmed.", says),
			}, nil
		}
	}
	if !o.whole() {
		return nil, o.Check()
	}
	switch o.Kind {
	case SawMixed:
		return all.afterMixing(o)
	case SawRise:
		return all.afterLooking(o)
	case SawReady:
		return all.whenReady(o)
	case SawCore:
		return all.afterProbing(o), nil
	case SawWeights:
		return []working.Message{
			working.Tell("bench.told_loss", "lost %.1f of the dough", quantity.NewPercent(lossOf(*o.Weights))),
		}, nil
	}
	return nil, nil
}

func noDough() []working.Message {
	return []working.Message{working.Tell("bench.no_dough", "no mixing was logged before it: a plan that is followed "+
		"goes by it, and it teaches nothing until the mixing is logged too")}
}

func noRange(err error) []working.Message {
	return []working.Message{working.Tell("bench.no_range", "no range: %v", err)}
}

func (all Observations) afterMixing(o Observation) (says []working.Message, err error) {
	b := LoggedBake{Bread: o.Bread, By: o.By, Mixed: o.At, Mix: *o.Mix}
	switch batch, why := b.Batch(); {
	case why.IsZero():
		if warming, err := batch.Warming(); err == nil {
			says = append(
				says,
				working.Tell("bench.told_warming", "mixing warmed it by about %.1f above where the ingredients meet",
					warming),
			)
		}
	case o.Mix.Mixer != 0:
		says = append(says, working.Tell("bench.no_mixer_lesson", "it teaches nothing about the mixer: %v", why))
	}
	bulk, missing, err := o.Mix.Bulk(nil)
	switch {
	case err != nil:
		return append(says, noRange(err)...), nil
	case len(missing) > 0:
		return append(
			says,
			working.Tell("bench.no_culture_lesson", "it teaches nothing about the culture yet: %v", notLogged(missing)),
		), nil
	case o.Mix.Rise.IsZero():
		return says, nil
	}
	bulk.Rise = o.Mix.Rise
	if bulk.Culture, err = all.before(b); err != nil {
		return nil, err
	}
	e, err := bulk.Estimate()
	if err != nil {
		return append(says, noRange(err)...), nil
	}
	return append(says, readyAt(bulk.Rise, e.Ready(), o.At)...), nil
}

// onTheMinute is so long after mixing, at the next minute, as the timetable has it.
func onTheMinute(mixed time.Time, d time.Duration) time.Time {
	return mixed.Add((d + time.Minute - 1).Truncate(time.Minute))
}

// readyAt tells a range after mixing, and by the clock.
func readyAt(rise quantity.Percent, r quantity.TimeRange, mixed time.Time) []working.Message {
	at := func(d time.Duration) time.Time { return onTheMinute(mixed, d) }
	return []working.Message{
		working.Tell("bench.ready", "risen by %.0f: %v after mixing", rise, r),
		working.Tell("bench.by_clock", "by the clock: %v to %v, likely %v", at(r.Early), at(r.Late), at(r.Likely)),
	}
}

func (all Observations) afterLooking(o Observation) ([]working.Message, error) {
	b, ok := all.DoughOf(o)
	if !ok {
		return noDough(), nil
	}
	bulk, missing, err := b.Mix.Bulk(nil)
	if len(missing) > 0 || err != nil || b.Mix.Rise.IsZero() {
		return []working.Message{
			working.Tell("bench.told_since", "%v after mixing", o.At.Sub(b.Mixed).Round(time.Minute)),
		}, nil
	}
	bulk.Rise = b.Mix.Rise
	if bulk.Culture, err = all.before(b); err != nil {
		return nil, err
	}
	p, err := b.progress(bulk)
	if err != nil {
		return noRange(err), nil
	}
	out := readyAt(bulk.Rise, p.Now.Ready(), b.Mixed.In(o.At.Location()))
	out[0] = working.Tell("bench.ready_now", "risen by %.0f, %v after mixing", bulk.Rise, p.Message())
	return out, nil
}

func (all Observations) whenReady(o Observation) ([]working.Message, error) {
	b, ok := all.DoughOf(o)
	if !ok {
		return noDough(), nil
	}
	one, why := b.Taught()
	if !why.IsZero() {
		return []working.Message{working.Tell("bench.no_lesson", "it teaches nothing about the culture: %v", why)}, nil
	}
	bulk := one.Bulk
	var err error
	if bulk.Culture, err = all.before(b); err != nil {
		return nil, err
	}
	e, err := bulk.Estimate()
	if err != nil {
		return nil, err
	}
	took := one.Took.Duration().Round(time.Minute)
	if e.Ready().Contains(one.Took.Duration()) {
		return []working.Message{
			working.Tell("bench.held", "it took %v, inside the range that was expected of it: %v", took, e.Ready()),
		}, nil
	}
	return []working.Message{
		working.Tell("bench.missed", "it took %v, outside the range that was expected of it: %v", took, e.Ready()),
	}, nil
}
