package cli

import (
	"strings"
	"time"

	"example.org/maslin/bake"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule/wallclock"
)

var readingWant = quantity.Tell("cli.want_time_and_core_temperature_14", `a time and a core temperature, such as "14:05=82C" or "12min=70C"`)

// readings are what a probe showed, by the clock or by the time since the loaf went in (or came out).
type readings struct {
	all    []bake.Sample
	clocks int // how many are by the clock
}

// read reads "14:05=82C" or "12min=70C". A clock time that is earlier than the one before is of
// the next day.
func (r *readings) read(text string) error {
	refuse := func(reason error) error {
		return &quantity.InputError{Got: quantity.Excerpt(text), Want: readingWant, Err: reason}
	}
	when, core, found := strings.Cut(text, "=")
	if !found {
		return refuse(quantity.ErrUnit)
	}
	var one bake.Sample
	if err := one.Core.UnmarshalText([]byte(core)); err != nil {
		return err
	}
	when = strings.TrimSpace(when)
	if strings.Contains(when, ":") {
		c, err := wallclock.ParseClock(when)
		if err != nil {
			return refuse(quantity.ErrUnit)
		}
		one.At = quantity.Elapsed(time.Duration(c.Minutes()) * time.Minute)
		if n := len(r.all); n > 0 && r.clocks > 0 && one.At < r.all[n-1].At-quantity.Elapsed(12*time.Hour) {
			one.At += quantity.Elapsed(24 * time.Hour)
		}
		r.clocks++
	} else {
		d, err := quantity.ParseDuration(when)
		if err != nil {
			return refuse(quantity.ErrUnit)
		}
		one.At = quantity.Elapsed(d)
	}
	r.all = append(r.all, one)
	return nil
}

// samples returns the readings, and notes when two ways of telling the time are mixed. By the
// clock they count from the first.
func (r *readings) samples(in *asked) []bake.Sample {
	if r.clocks > 0 && r.clocks < len(r.all) {
		in.fault("reading", quantity.Tell("cli.got_clock_times_and_times_since", "clock times and times since the loaf went in"), quantity.Tell("cli.want_one_or_other", "one or the other"), quantity.ErrInconsistent)
	}
	out := append([]bake.Sample{}, r.all...)
	if r.clocks > 0 {
		for i := range out {
			out[i].At -= r.all[0].At
		}
	}
	return out
}

// last is the clock at the last reading, on the day of the present, when the readings are by the clock.
func (r *readings) last(now time.Time) time.Time {
	if r.clocks == 0 || r.clocks < len(r.all) {
		return time.Time{}
	}
	return time.Date(now.Year(), now.Month(), now.Day(), 0, 0, 0, 0, now.Location()).Add(r.all[len(r.all)-1].At.Duration())
}

// cutNamed reads "NAME=VALUE".
func cutNamed(text string) (name, value string, ok bool) {
	name, value, ok = strings.Cut(text, "=")
	name, value = strings.TrimSpace(name), strings.TrimSpace(value)
	return name, value, ok && name != "" && value != ""
}
