package bake

import (
	"strconv"
	"time"

	"example.org/maslin/dough/quantity"
)

func (p Probe) check() (target, error) {
	var problems quantity.Problems
	goalOK := checkGoal(&problems, p.Goal)
	if goalOK && !p.Style.ByCore() && p.Wanted.IsZero() {
		problems.Add(
			"Style",
			p.Style,
			quantity.Tell("bake.want_bread_middle_probe_thin_breads",
				"a bread with a middle for a probe; thin breads are done by time and color"),
			quantity.ErrModelRange,
		)
		goalOK = false
	}
	quantity.Check(&problems, "Error", p.Error, quantity.TemperatureDelta{}, mostProbeError)
	approaches.Check(&problems, "Approach", p.Approach)
	problems.Duration("Window", p.Window.Duration(), 0, 24*time.Hour)
	problems.Duration("InOven", p.InOven.Duration(), 0, 48*time.Hour)
	if p.EntryUnknown && p.InOven > 0 {
		problems.Add("InOven", p.InOven,
			quantity.Tell("bake.want_no_time_oven_where_entry", "no time in the oven where the entry is not known"),
			quantity.ErrInconsistent)
	}
	if len(p.Samples) < 2 {
		problems.Required("Samples", quantity.Tell("bake.want_at_least_two_readings_few",
			"at least two readings, a few minutes apart"))
	}
	if len(p.Samples) > mostSamples {
		problems.Int("Samples", len(p.Samples), 2, mostSamples)
		return target{}, problems.ErrFor(p)
	}
	var t target
	if goalOK {
		var err error
		if t, err = p.target(); err != nil {
			return t, err
		}
	}
	for i, s := range p.Samples {
		path := "Samples[" + strconv.Itoa(i) + "]"
		problems.Duration(path+".At", s.At.Duration(), 0, 48*time.Hour)
		if i > 0 && s.At <= p.Samples[i-1].At {
			problems.Add(path+".At", s.At,
				quantity.Tell("bake.want_later_than_reading_before", "later than the reading before, %v", p.Samples[i-1].At),
				quantity.ErrInconsistent)
		}
		if checkProbe(&problems, path+".Core", s.Core) && goalOK && s.Core.Celsius() > t.boiling+above {
			problems.Join("", aboveBoiling(path+".Core", s.Core, t.boiling))
		}
	}
	if n := len(p.Samples); n >= 2 && p.InOven > 0 && p.InOven < p.Samples[n-1].At-p.Samples[0].At {
		problems.Add("InOven", p.InOven,
			quantity.Tell("bake.want_no_less_than_time_between", "no less than the time between the readings"),
			quantity.ErrInconsistent)
	}
	return t, problems.ErrFor(p)
}

const mostSamples = 10_000

// usable are the readings within the window that lie in the late part of the curve, below the flat end.
func (p Probe) usable(boiling float64) (used []Sample, early int) {
	last := p.Samples[len(p.Samples)-1].At
	for _, s := range p.Samples {
		if s.At < last-p.window() {
			continue
		}
		if s.Core.Celsius() < boiling-earlyBelow && !p.Extrapolate {
			early++
			continue
		}
		if s.Core.Celsius() > boiling-0.2 {
			continue // no logarithm there, and no information
		}
		used = append(used, s)
	}
	return used, early
}

func (p Probe) window() quantity.Elapsed {
	if p.Window == 0 {
		return quantity.Elapsed(minutes(probeWindow))
	}
	return p.Window
}

func checkUsable(p Probe, used []Sample, early int, boiling, sigma float64) error {
	last := len(p.Samples) - 1
	path := "Samples[" + strconv.Itoa(last) + "]"
	if len(used) < 2 {
		want := quantity.Tell("bake.want_two_readings_within_each_other", "two readings within %v of each other", p.window())
		if early > 0 {
			want = quantity.Tell("bake.want_two_readings_above_earlier_core",
				"two readings above %s: earlier the core still gains speed and the answer would be too long; or use them all "+
					"the same (extrapolate)", degrees(boiling-earlyBelow))
		}
		return &quantity.InputError{
			GoPath: path,
			Got:    p.Samples[last].Core,
			Want:   want,
			Err:    quantity.ErrModelRange,
		}
	}
	first, end := used[0], used[len(used)-1]
	if span := (end.At - first.At).Duration().Minutes(); span < leastSpan {
		return &quantity.InputError{
			GoPath: path + ".At",
			Got: quantity.Tell("bake.got_after_first_usable_reading", "%v after the first usable reading",
				(end.At - first.At)),
			Want: quantity.Tell("bake.want_at_least_1m_apart_better", "at least 1m apart, better 5m"),
			Err:  quantity.ErrModelRange,
		}
	}
	for i := 1; i < len(used); i++ {
		if drop := used[i-1].Core.Celsius() - used[i].Core.Celsius(); drop > 3*sigma {
			return &quantity.InputError{
				GoPath: "Samples", Got: quantity.Tell("bake.got_core_falling_from_to", "core falling from %s to %s",
					celsius(used[i-1].Core), celsius(used[i].Core)),
				Want: quantity.Tell("bake.want_rising_core_has_probe_moved",
					"a rising core: has the probe moved, the door been open, or the loaf been taken from its tin?"),
				Err: quantity.ErrInconsistent,
			}
		}
	}
	if end.Core.Compare(first.Core) <= 0 {
		return &quantity.InputError{
			GoPath: "Samples", Got: quantity.Tell("bake.got_core_from_to", "core from %s to %s", celsius(first.Core),
				celsius(end.Core)),
			Want: quantity.Tell("bake.want_rising_core_oven_and_tip",
				"a rising core: is the oven on and the tip in the middle?"), Err: quantity.ErrInconsistent,
		}
	}
	return nil
}
