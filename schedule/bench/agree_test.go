package bench_test

import (
	"context"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/ferment"
	"example.org/maslin/schedule/bench"
)

// The log reckons a dough as the bench does: with what the plan says it is made of, in a room that cools at night.
func TestTheLogAndTheBenchAgree(t *testing.T) {
	when := at(4, 16, 0)
	b := hall(t)
	b.Kitchen.Night = quantity.Celsius(15)
	under := func(now time.Time, all ...bench.Observation) bench.DayNow {
		m, err := bench.Under{Bake: b, Observations: all}.At(context.Background(), clock(now))
		if err != nil {
			t.Fatal(err)
		}
		return m
	}
	o := bench.Observation{Version: bench.Format, At: when, Kind: bench.SawMixed, Bread: "hall",
		Mix: &bench.DoughMixed{Dough: quantity.Celsius(26)}}
	mix := o.Mix.AsPlanned(under(when, o).Day, when)
	if mix.Room.Celsius() < 21.5 || mix.Into.Night != b.Kitchen.Night ||
		mix.Into.Starts != quantity.Elapsed(16*time.Hour) {
		t.Errorf("a room of %v, into %+v", mix.Room, mix.Into)
	}
	o.Mix = &mix
	for _, all := range []bench.Observations{{o}, {o, risen(when.Add(2*time.Hour), 20)}} {
		last := all[len(all)-1]
		m := under(last.At.Add(time.Second), all...)
		want := m.Progress.Now.Ready()
		bulk, missing, err := mix.Bulk(nil)
		if err != nil || len(missing) > 0 {
			t.Fatal(missing, err)
		}
		bulk.Rise = mix.Rise
		logged := bench.LoggedBake{Mixed: when, Mix: mix}
		if last.Rise != nil {
			logged.Rises = all[1:]
		}
		got, err := logged.Progress(bulk)
		if err != nil {
			t.Fatal(err)
		}
		if off := got.Now.Ready().Likely - want.Likely; off.Abs() > 2*time.Minute {
			t.Errorf("%d observations: the log says %v, the bench %v", len(all), got.Now.Ready(), want)
		}
		// What to look for says the same window.
		for _, s := range m.Steps {
			if s.ID != "bulk" {
				continue
			}
			says := m.LookFor(s)
			from, to := when.Add(want.Early.Round(time.Minute)), when.Add(want.Late.Round(time.Minute))
			window := "look at it from " + from.Format("Mon 15:04") + " to " + to.Format("Mon 15:04")
			if text := says[len(says)-1].String(); text != window {
				t.Errorf("%s; ready %v", text, want)
			}
		}
	}
	// A room that the baker read, and a proofing box, hold throughout.
	read := bench.DoughMixed{Dough: quantity.Celsius(26), Room: quantity.Celsius(19)}.AsPlanned(under(when, o).Day, when)
	if !read.Into.Night.IsZero() || read.Room != quantity.Celsius(19) {
		t.Errorf("%+v", read)
	}
	b.Bulk.Box = quantity.Celsius(27)
	if boxed := o.Mix.AsPlanned(under(when, o).Day, when); boxed.Into.Night == b.Bulk.Box {
		t.Errorf("what was logged is planned anew: %+v", boxed.Into)
	}
	boxed := bench.DoughMixed{Dough: quantity.Celsius(26)}.AsPlanned(under(when, o).Day, when)
	if boxed.Into != (ferment.Room{Night: b.Bulk.Box}) || boxed.Room.Celsius() > 22 {
		t.Errorf("in the box: %+v", boxed)
	}
}

// The cores that are read in the oven say at the bench whether the loaf is done, or how long it still takes.
func TestCoresAtTheBench(t *testing.T) {
	when := at(4, 16, 0)
	m := moment(t, when.Add(time.Minute), mixed(when, 26))
	load, ok := m.Step("bake-1")
	if !ok {
		t.Fatal("nothing is baked")
	}
	core := func(after time.Duration, celsius float64) bench.Observation {
		return bench.Observation{Version: bench.Format, At: load.Start.Add(after), Kind: bench.SawCore, Bread: "hall",
			Core: &bench.SeenCore{Core: quantity.Celsius(celsius)}}
	}
	said := func(now time.Duration, all ...bench.Observation) string {
		m := moment(t, load.Start.Add(now), append([]bench.Observation{mixed(when, 26)}, all...)...)
		s, _ := m.Step("bake-1")
		var out []string
		for _, l := range m.LookFor(s) {
			out = append(out, l.String())
		}
		return strings.Join(out, "\n")
	}
	if got := said(30*time.Minute, core(40*time.Minute, 90)); strings.Contains(got, "core at") {
		t.Errorf("a core of later is told: %s", got)
	}
	if got := said(31*time.Minute, core(30*time.Minute, 88)); !strings.Contains(got, "core at "+
		load.Start.Add(30*time.Minute).Format("15:04")+": not yet: core 88.0 °C") {
		t.Error(got)
	}
	got := said(31*time.Minute, core(24*time.Minute, 78), core(30*time.Minute, 86))
	if !strings.Contains(got, "core 86.0 °C at ") || !strings.Contains(got, "likely") {
		t.Error(got)
	}
	if got := said(41*time.Minute, core(40*time.Minute, 94.5)); !strings.Contains(got, "not known to be baked out") {
		t.Error(got)
	}
}
