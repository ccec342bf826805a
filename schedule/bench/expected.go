package bench

import (
	"math"
	"slices"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule"
	"example.org/maslin/schedule/bakeday"
)

// Expected is what there is to write down next: when, and the observation with its values as they are expected.
type Expected struct {
	Says        working.Message `json:"says"`
	Observation Observation     `json:"observation"`
}

// Expected answers: what is there to write down now, of all breads? First what is doubted, to be said again when it is
// so; that the plan is followed, while nobody has said so; and then what can be seen or done of each step that is under
// way or is the day's next: that it is done, how warm the dough was when it had been mixed, how far it has risen, what
// the probe in the loaf shows, and at the end what a loaf of this bake weighs. The values are examples where only the
// dough or the loaf can say them, and the time of all but the mixing is now. That a step is done stands here once, and
// names none.
func (k KitchenNow) Expected() []Expected {
	var out []Expected
	add := func(says working.Message, o Observation) {
		if slices.ContainsFunc(out, func(e Expected) bool { return e.Says == says && e.Observation.Bread == o.Bread }) {
			return // of another step of this bread, or of any
		}
		o.Version = Format
		if o.At.IsZero() || o.At.After(k.Now) {
			o.At = k.Now
		}
		out = append(out, Expected{says, o})
	}
	for i := range k.Breads {
		m := &k.Breads[i]
		for _, d := range m.Doubts {
			if d.Observation.Step != "" {
				again := d.Observation
				again.Bread, again.Sure = m.Name, true
				out = append(out, Expected{working.Tell("bench.expect_sure", "if that is so"), again})
			}
		}
		if !m.Day.Possible() {
			continue
		}
		if m.Followed == nil {
			out = append(out, Expected{working.Tell("bench.expect_plan", "to keep to this plan"), m.following()})
			if m.Dough == nil {
				continue
			}
		}
		steps := m.UnderWay()
		next, left := m.Next()
		if soonest, ok := k.next(); left && ok && !soonest.Start.Before(next.Start) { // what is later is no matter yet
			steps = append(steps, next)
		}
		for _, s := range steps {
			if s.Hands && s.Kind != schedule.Bake {
				add(working.Tell("bench.expect_step", "when a step is done"), Observation{Kind: SawStep})
			}
			m.expect(s, add)
		}
		if !left && !slices.ContainsFunc(steps, func(s bakeday.StepData) bool { return s.Kind == schedule.Bake }) {
			gram := quantity.Grams(1)
			in, _ := m.Day.Batch.ScalingWeight().RoundTo(gram)
			baked, _ := m.Day.Bake.Loaves.Baked.RoundTo(gram)
			add(working.Tell("bench.expect_weights", "what a loaf weighs, as dough and cool"), Observation{Kind: SawWeights,
				Bread: m.Name, Weights: &LoafWeights{In: in, Out: baked, Style: m.Day.Bake.Loaves.Style}})
		}
	}
	return out
}

// following is the observation that the plan is followed as it is now.
func (m *DayNow) following() Observation {
	bake := m.Day.Bake
	return Observation{Version: Format, Kind: SawPlan, At: m.Now, Bread: m.Name, Plan: &FollowedPlan{
		Made: m.Day.Now, Wanted: m.Day.Wanted, Style: bake.Loaves.Style, Altitude: bake.Kitchen.Altitude}}
}

// Examples of what the dough or the loaf will say.
var (
	exampleDough = quantity.Celsius(25)
	exampleRise  = quantity.NewPercent(20)
	exampleReady = quantity.NewPercent(30)
	exampleCore  = quantity.Celsius(96)
)

// likelyRise is how far the dough should have risen by now, to the whole percent; an example before it has begun to.
func (m *DayNow) likelyRise() quantity.Percent {
	if m.Progress != nil && m.Now.After(m.Mixed) {
		band, err := m.Progress.Now.RiseAt(m.Now.Sub(m.Mixed))
		if whole := math.Round(band.Likely.Points()); err == nil && whole >= 1 {
			return quantity.NewPercent(whole)
		}
	}
	return exampleRise
}

// expect adds what can be seen at a step.
func (m *DayNow) expect(s bakeday.StepData, add func(working.Message, Observation)) {
	of := Observation{Bread: m.Name}
	switch s.Kind {
	case schedule.Mix, schedule.Bulk, schedule.Fold:
		if m.Dough == nil || m.Dough.Mix.Dough.IsZero() {
			// Who writes it down an hour later is not told that the dough begins now.
			of.Kind, of.Mix, of.At = SawMixed, &DoughMixed{Dough: exampleDough}, m.Mixed
			add(working.Tell("bench.expect_mix", "how warm the dough is when it is kneaded"), of)
			of.Mix, of.At = nil, time.Time{}
		}
	case schedule.Bake:
		out := exampleCore
		if done := m.Day.Baking.Target.Core; !done.IsZero() {
			out = quantity.Celsius(math.Round(done.Celsius()))
		}
		of.Kind, of.Core = SawCore, &SeenCore{Core: quantity.Celsius(out.Celsius() - 2)}
		add(working.Tell("bench.expect_core", "what the probe shows"), of)
		of.Core = &SeenCore{Core: out, Out: true}
		add(working.Tell("bench.expect_out", "when it comes out"), of)
	}
	ready := m.Dough != nil && m.Dough.Ready != nil
	if !ready && (s.Kind == schedule.Bulk || s.ID == m.afterBulk()) {
		rise := exampleReady
		if m.Progress != nil {
			rise = m.Progress.Now.Bulk().Rise
		}
		of.Kind, of.Rise = SawRise, &SeenRise{Rise: m.likelyRise()}
		add(working.Tell("bench.expect_rise", "how far it has risen"), of)
		of.Kind, of.Rise, of.Ready = SawReady, nil, &ReadyDough{Rise: rise}
		says := working.Tell("bench.expect_ready", "when it is ready to shape")
		if m.afterBulk() == stepChill {
			says = working.Tell("bench.expect_ready_cold", "when it is ready for the cold")
		}
		add(says, of)
	}
}
