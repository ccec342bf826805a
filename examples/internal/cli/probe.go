package cli

import (
	"strings"
	"time"

	"example.org/maslin/bake"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule/wallclock"
)

// A probe is what a thermometer showed in a loaf: now, or by the clock or the time since the loaf went in (or came
// out).
type probe struct {
	all    []bake.Sample
	clocks int // how many are by the clock
	bare   int // how many are without a time
}

// UnmarshalText reads "94C", "14:05=82C" or "12min=70C". A clock time that is earlier than the one before is of
// the next day.
func (p *probe) UnmarshalText(text []byte) error {
	refuse := &quantity.InputError{
		Got: quantity.Excerpt(string(text)), Want: quantity.Tell("cli.want_core_temperature_time_where_there",
			`a core temperature, with its time where there are several, such as "14:05=82C" or "12min=70C"`),
		Err: quantity.ErrUnit,
	}
	when, core, timed := strings.Cut(string(text), "=")
	if !timed {
		when, core = "", when
	}
	var one bake.Sample
	if err := one.Core.UnmarshalText([]byte(core)); err != nil {
		return err
	}
	if when = strings.TrimSpace(when); !timed {
		p.bare++
	} else if c, err := wallclock.ParseClock(when); err == nil && strings.Contains(when, ":") {
		one.At = quantity.Elapsed(time.Duration(c.Minutes()) * time.Minute)
		if n := len(p.all); n > 0 && p.clocks > 0 && one.At < p.all[n-1].At-quantity.Elapsed(12*time.Hour) {
			one.At += quantity.Elapsed(24 * time.Hour)
		}
		p.clocks++
	} else if one.At.UnmarshalText([]byte(when)) != nil {
		return refuse
	}
	p.all = append(p.all, one)
	return nil
}

// timed reports whether the readings are to be followed: they have times, or there are several.
func (p *probe) timed() bool { return len(p.all) > p.bare || p.bare > 1 }

// core is the one reading without a time.
func (p *probe) core() quantity.Temperature {
	if len(p.all) == 0 {
		return quantity.Temperature{}
	}
	return p.all[0].Core
}

// samples returns the readings, and notes when two ways of telling the time are mixed. By the
// clock they count from the first.
func (p *probe) samples(c *call) []bake.Sample {
	if p.bare > 0 {
		c.fault("core", quantity.Tell("cli.got_several_without_time", "several without a time"),
			quantity.Tell("cli.want_each_time_14_05_82c",
				`each with its time, such as "14:05=82C" or "12min=70C"`), quantity.ErrInconsistent)
	} else if p.clocks > 0 && p.clocks < len(p.all) {
		c.fault("core", quantity.Tell("cli.got_clock_times_and_times_since",
			"clock times and times since the loaf went in"), quantity.Tell("cli.want_one_or_other", "one or the "+
			"other"), quantity.ErrInconsistent)
	}
	out := append([]bake.Sample{}, p.all...)
	if p.clocks > 0 {
		for i := range out {
			out[i].At -= p.all[0].At
		}
	}
	return out
}

// last is the clock at the last reading, on the day of the present, when the readings are by the clock.
func (p *probe) last(now time.Time) time.Time {
	if p.clocks == 0 || p.clocks < len(p.all) {
		return time.Time{}
	}
	return time.Date(now.Year(), now.Month(), now.Day(), 0, 0, 0, 0, now.Location()).Add(p.all[len(p.all)-1].At.Duration())
}
