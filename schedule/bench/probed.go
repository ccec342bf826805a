package bench

import (
	"strconv"
	"strings"
	"time"

	"example.org/maslin/bake"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/ferment"
	"example.org/maslin/schedule/wallclock"
)

// ProbedLoaf is what a probe showed in a loaf: once, or several times with the time of each.
type ProbedLoaf struct {
	// Core is the only reading, where it has no time.
	Core quantity.Temperature `json:"core,omitzero"`
	// Samples are the readings with their times: since the loaf went in or came out, or, ByClock, since the first.
	Samples []bake.Sample `json:"samples,omitempty"`
	ByClock bool          `json:"by_clock,omitempty"`
	// First is when the first was, by the clock.
	First wallclock.Clock `json:"first,omitzero"`
}

// ReadProbe reads what a probe showed, as it is told: "94C" alone, or each with its time, by the clock as "14:05=82C"
// or since the loaf went in as "12min=70C". A clock that goes back by more than half a day is of the next day.
//
// Errors, with the place of the text: ErrUnit for what is no reading, ErrInconsistent for several without a time and
// for both ways of telling the time.
func ReadProbe(texts []string) (ProbedLoaf, error) {
	var p quantity.Problems
	var out ProbedLoaf
	bare, clocks := 0, 0
	for i, text := range texts {
		when, core, timed := strings.Cut(text, "=")
		if !timed {
			when, core = "", when
		}
		path := "[" + strconv.Itoa(i) + "]"
		var one bake.Sample
		if err := one.Core.UnmarshalText([]byte(core)); err != nil {
			p.Join(path, err)
			continue
		}
		if when = strings.TrimSpace(when); !timed {
			bare, out.Core = bare+1, one.Core
		} else if c, err := wallclock.ParseClock(when); err == nil && strings.Contains(when, ":") {
			if clocks++; clocks == 1 {
				out.First = c
			}
			one.At = quantity.Elapsed(time.Duration(c.Minutes()-out.First.Minutes()) * time.Minute)
			if n := len(out.Samples); n > 0 && one.At < out.Samples[n-1].At-quantity.Elapsed(12*time.Hour) {
				one.At += quantity.Elapsed(24 * time.Hour)
			}
		} else if one.At.UnmarshalText([]byte(when)) != nil {
			p.Add(path, quantity.Excerpt(text), quantity.Tell("bench.want_core_and_time",
				`a core temperature, with its time where there are several, such as "14:05=82C" or "12min=70C"`),
				quantity.ErrUnit)
			continue
		}
		out.Samples = append(out.Samples, one)
	}
	out.ByClock = clocks > 0
	switch {
	case bare == 1 && len(out.Samples) == 1:
		out.Samples = nil
	case bare > 0:
		p.Add("", quantity.Tell("bench.got_several_without_time", "several without a time"),
			quantity.Tell("bench.want_each_time", `each with its time, such as "14:05=82C" or "12min=70C"`),
			quantity.ErrInconsistent)
	case clocks > 0 && clocks < len(out.Samples):
		p.Add("", quantity.Tell("bench.got_clocks_and_times", "clock times and times since the loaf went in"),
			quantity.Tell("bench.want_one_or_other", "one or the other"), quantity.ErrInconsistent)
	}
	return out, p.ErrFor(texts)
}

// Timed reports whether there are readings to be carried on: several, or with a time.
func (l ProbedLoaf) Timed() bool { return len(l.Samples) > 0 }

// Last is the moment of the last reading, the first of them being of the day of the present; zero where the times are
// not by the clock.
func (l ProbedLoaf) Last(now time.Time) time.Time {
	if !l.ByClock || len(l.Samples) == 0 {
		return time.Time{}
	}
	midnight := time.Date(now.Year(), now.Month(), now.Day(), 0, 0, 0, 0, now.Location())
	return midnight.Add(time.Duration(l.First.Minutes())*time.Minute + l.Samples[len(l.Samples)-1].At.Duration())
}

// ReadRises reads how far a dough had risen, as it is told: each as "30 % at 2h10m" after the start or as "30 % at
// 16:20" by the clock, as [wallclock.ReadAfter] has it. Errors, with the place of the text: ErrUnit for what is no
// reading; those of ReadAfter. Whether they can be true is for [ferment.Estimate.Update].
func ReadRises(texts []string, start time.Time) ([]ferment.RiseReading, error) {
	var p quantity.Problems
	var out []ferment.RiseReading
	for i, text := range texts {
		path := "[" + strconv.Itoa(i) + "]"
		rise, when, found := strings.Cut(text, " at ")
		if !found {
			p.Add(path, quantity.Excerpt(text), quantity.Tell("bench.want_rise_and_time",
				`a rise and a time, such as "30 %% at 2h10m" or "30 %% at 16:20"`), quantity.ErrUnit)
			continue
		}
		var r ferment.RiseReading
		p.Join(path, r.Rise.UnmarshalText([]byte(strings.TrimSpace(rise))))
		after, err := wallclock.ReadAfter(when, start)
		p.Join(path, err)
		r.At = quantity.Elapsed(after)
		out = append(out, r)
	}
	return out, p.ErrFor(texts)
}
