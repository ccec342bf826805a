package bench_test

import (
	"strings"
	"testing"
	"time"

	"example.org/maslin/bake"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/schedule/bench"
)

// readied is a dough of the hall's bread that was said to be ready.
func readied(when time.Time, percent float64) bench.Observation {
	return bench.Observation{Version: bench.Format, At: when, Kind: bench.SawReady, Bread: "hall",
		Ready: &bench.ReadyDough{Rise: quantity.NewPercent(percent)}}
}

// A step that can hardly be over is questioned and moves nothing, until it is said again and surely; hands are not
// hurried, a dough and a loaf are.
func TestStepsTickedTooSoon(t *testing.T) {
	made, plan := followed()
	start := moment(t, made.Add(time.Minute), plan)
	bulk, _ := start.Step("bulk")
	load, _ := start.Step("bake-1")
	least := time.Duration(0.4 * float64(start.Day.Rising.Bulk.Ready().Early))
	soonest := bulk.Start.Add(least).Round(time.Minute)
	retarded := ticked("retard", load.Start)
	loaf := load.Start.Add(time.Duration(0.4 * float64(load.Takes))).Round(time.Minute)
	early := bulk.Start.Add(-time.Hour)
	nameless, others := readied(soonest.Add(time.Hour), 24), readied(soonest.Add(time.Hour), 24)
	nameless.Bread, others.Bread = "", "rye"
	for name, c := range map[string]struct {
		said    bench.Observations
		doubted bool
	}{
		"bulk, right after mixing":  {bench.Observations{ticked("bulk", soonest.Add(-time.Minute))}, true},
		"bulk, as a lively dough":   {bench.Observations{ticked("bulk", soonest)}, false},
		"shape, right after mixing": {bench.Observations{ticked("shape", soonest.Add(-time.Minute))}, true},
		"mixed by the tick": {bench.Observations{ticked("mix-1", early),
			ticked("bulk", early.Add(least+time.Minute))}, false},
		"mixed by the tick, and too soon": {bench.Observations{ticked("mix-1", early),
			ticked("shape", early.Add(least-2*time.Minute))}, true},
		"mixed as it was logged": {bench.Observations{mixed(early, 26),
			ticked("bulk", early.Add(time.Hour))}, false},
		"mixing, long before it was to be": {bench.Observations{ticked("mix-1", early.Add(-2*time.Hour))}, false},
		"the loaf, as the dough is mixed":  {bench.Observations{ticked("bake-1", bulk.Start.Add(5*time.Minute))}, true},
		"the loaf, soon after it went in": {bench.Observations{retarded, ticked("bake-1", loaf.Add(-time.Minute))},
			true},
		"the loaf, baked": {bench.Observations{retarded, ticked("bake-1", loaf)}, false},
		"the loaf, when the dough was ready": {bench.Observations{readied(soonest, 24),
			ticked("bake-1", soonest.Add(10*time.Minute))}, true},
		"the loaf, when a dough without a name was ready": {bench.Observations{nameless,
			ticked("bake-1", soonest.Add(70*time.Minute))}, true},
		"the loaf, when another dough was ready": {bench.Observations{others,
			ticked("bake-1", soonest.Add(70*time.Minute))}, false},
		"a plan first heard of with the step": {bench.Observations{}, false},
		"the loaf, the dough having been ready": {bench.Observations{readied(soonest, 24), ticked("bake-1", load.End)},
			false},
	} {
		last := ticked("shape", made)
		if n := len(c.said); n > 0 {
			last = c.said[n-1]
		} else {
			c.said = bench.Observations{last}
		}
		m := moment(t, last.At.Add(time.Minute), append(bench.Observations{plan}, c.said...)...)
		_, done := m.Done[last.Step]
		if got := len(m.Doubts) > 0; got != c.doubted || done == c.doubted {
			t.Errorf("%s: doubts %v, done %v", name, m.Doubts, done)
			continue
		}
		if !c.doubted {
			continue
		}
		if d := m.Doubts[0]; d.Code() != "bench.doubt_step" || d.Observation.Step != last.Step ||
			!strings.Contains(m.Report().Text(report.Options{}), "Is this so?") {
			t.Errorf("%s: %+v", name, d)
		}
		sure := last
		sure.Sure = true
		m = moment(t, last.At.Add(time.Minute), append(append(bench.Observations{plan}, c.said...), sure)...)
		if at, done := m.Done[last.Step]; len(m.Doubts) > 0 || !done || !at.Equal(last.At) {
			t.Errorf("%s, surely: doubts %v, done %v", name, m.Doubts, done)
		}
	}
	two := moment(t, bulk.Start.Add(20*time.Minute), plan, ticked("bulk", bulk.Start.Add(5*time.Minute)),
		ticked("bake-1", bulk.Start.Add(15*time.Minute)))
	if len(two.Doubts) != 2 || two.Doubts[0].Observation.Step != "bulk" || two.Changed != nil {
		t.Errorf("doubts %v; changed %v", two.Doubts, two.Changed)
	}
}

// A core that is logged says what it means by the log alone: for the bread that was mixed, or whose plan is followed.
func TestCoreInTheLog(t *testing.T) {
	core := func(minute int, celsius float64) bench.Observation {
		return bench.Observation{Version: bench.Format, At: at(5, 8, minute), Kind: bench.SawCore,
			Core: &bench.SeenCore{Core: quantity.Celsius(celsius)}}
	}
	tells := func(all ...bench.Observation) string {
		says, err := bench.Observations(all).Tells(all[len(all)-1])
		if err != nil {
			t.Fatal(err)
		}
		var out []string
		for _, s := range says {
			out = append(out, s.String())
		}
		return strings.Join(out, "\n")
	}
	dough := mixed(at(4, 16, 0), 26)
	dough.Mix.Altitude, dough.Mix.Style = quantity.Meters(1150), bake.Pan
	_, plan := followed()
	plan.Plan.Altitude, plan.Plan.Style = quantity.Meters(1150), bake.Pan
	ofPan, err := bake.LoafReading{Goal: bake.Goal{Style: bake.Pan, Place: bake.At(quantity.Meters(1150))},
		Core: quantity.Celsius(85)}.Judge()
	if err != nil {
		t.Fatal(err)
	}
	want := "core at 08:10: " + ofPan.Report().Headline.String()
	for name, before := range map[string]bench.Observation{"mixed": dough, "followed": plan} {
		if got := tells(before, core(10, 85)); got != want {
			t.Errorf("%s: %s, want %s", name, got, want)
		}
		if got := tells(before, core(4, 72), core(10, 85)); !strings.Contains(got, "core 85.0 °C at 08:10: ") ||
			!strings.Contains(got, "likely") {
			t.Errorf("%s, two readings: %s", name, got)
		}
		out := core(4, 92)
		out.Core.Out = true
		if got := tells(before, out, core(10, 85)); got != want {
			t.Errorf("%s, the round before: %s", name, got)
		}
	}
	old := core(4, 72)
	old.At = old.At.Add(-2 * time.Hour)
	if got := tells(dough, old, core(10, 85)); got != want {
		t.Errorf("a reading of long ago: %s", got)
	}
	out := core(10, 98)
	out.Core.Out, out.Core.After = true, quantity.Elapsed(50*time.Minute)
	if got := tells(dough, core(4, 90), out); !strings.HasPrefix(got, "core at 08:10: ") {
		t.Errorf("taken out: %s", got)
	}
	alone := tells(core(4, 72), core(10, 85))
	if !strings.HasPrefix(alone, "nothing in the log says what is baked: taken as a loaf of the style lean hearth") ||
		!strings.Contains(alone, "core 85.0 °C at 08:10: ") {
		t.Error(alone)
	}
}
