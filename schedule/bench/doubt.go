package bench

import (
	"slices"
	"sort"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/ferment"
)

// Doubt is an observation that can hardly be true: it is kept, and it teaches nothing and moves no range until
// somebody says that it is so (Observation.Sure).
type Doubt struct {
	// Index is its place among the observations.
	Index int `json:"index"`
	// Observation is what was said.
	Observation Observation `json:"observation"`
	// Says is the question to ask.
	Says working.Message `json:"says"`
}

// Code names the reason for programs.
func (d Doubt) Code() string { return d.Says.ID() }

// The limits of what is believed without asking. Judgments: each lies well beyond what the published ranges, and the
// spread of kitchens this library believes in, leave room for.
const (
	fastest    = 0.4  // of the early end of the range of a culture nothing is known of
	hottest    = 101  // °C, above what boiling water in a crumb can reach at sea level
	mostLost   = 35.0 // percent of the dough that a loaf can lose and still be bread
	leastLost  = 2.0  // percent that even a roll out of the oven has lost
	earlyCheck = 12.0 // percent of rise below which a reading is within what the eye errs
)

// Doubts answers: which observations can hardly be true? A dough that has risen, or was shaped, faster than anything
// this library believes possible, a core above boiling, a loaf that lost a third of its weight. Those that are Sure are
// not doubted.
func (all Observations) Doubts() []Doubt {
	return all.judge().doubts
}

// doubted is the question to ask about an observation that can hardly be true; zero for any other.
func (o Observation) doubted(mixed mixings, known doughs) working.Message {
	switch {
	case o.Sure:
	case o.Kind == SawCore && o.Core != nil && o.Core.Core.Celsius() > hottest:
		return working.Tell("bench.doubt_core", "a core of %.0f is hotter than boiling water: is the probe in the crumb?",
			o.Core.Core)
	case o.Kind == SawWeights && o.Weights != nil:
		if lost := lossOf(*o.Weights); lost > mostLost {
			return working.Tell("bench.doubt_lost",
				"%v of bread from %v of dough would have lost %.0f: was it the same loaf?",
				o.Weights.Out, o.Weights.In, quantity.NewPercent(lost))
		} else if lost < leastLost {
			return working.Tell("bench.doubt_kept",
				"%v of bread from %v of dough has hardly lost anything: was it weighed after the oven?",
				o.Weights.Out, o.Weights.In)
		}
	default:
		if rise, early, ok := mixed.soonest(o, known); ok {
			return working.Tell("bench.doubt_rise",
				"%.0f risen so soon: even a very lively dough takes %v; was it mixed earlier, or read off the wrong mark?",
				rise, early)
		}
	}
	return working.Message{}
}

func lossOf(w LoafWeights) float64 {
	if w.In.Grams() <= 0 {
		return 0
	}
	return 100 * (1 - w.Out.Grams()/w.In.Grams())
}

// mixings are the doughs that were mixed, by baker and bread and by baker alone, in order of time; of the same instant
// the order given stands.
type mixings map[whose][]*Observation

type whose struct {
	by, bread string
	any       bool // of any bread
}

func (all Observations) mixings() mixings {
	out := mixings{}
	for i := range all {
		if m := &all[i]; m.Kind == SawMixed && m.Mix != nil {
			for _, key := range []whose{{by: m.By, bread: m.Bread}, {by: m.By, any: true}} {
				out[key] = append(out[key], m)
			}
		}
	}
	for _, m := range out {
		slices.SortStableFunc(m, func(a, b *Observation) int { return a.At.Compare(b.At) })
	}
	return out
}

// last is the dough of the baker, and of the bread if one is named, that was mixed last at a moment; nil if none was.
func (m mixings) last(by, bread string, at time.Time) *Observation {
	doughs := m[whose{by: by, bread: bread, any: bread == ""}]
	after := sort.Search(len(doughs), func(i int) bool { return doughs[i].At.After(at) })
	if after == 0 {
		return nil
	}
	instant := doughs[after-1].At
	return doughs[sort.Search(after, func(i int) bool { return !doughs[i].At.Before(instant) })]
}

// soonest is how early a dough could have come so far at best, when it is said to have done so earlier: by a reading,
// by the word that it is ready, or because it is shaped.
func (m mixings) soonest(o Observation, known doughs) (rise quantity.Percent, early time.Duration, tooEarly bool) {
	var probe []ferment.Knot
	of := m.last(o.By, o.Bread, o.At)
	switch {
	case of == nil:
		return rise, early, false
	case o.Kind == SawRise && o.Rise != nil:
		rise = o.Rise.Rise
	case o.Kind == SawReady && o.Ready != nil:
		rise, probe = o.Ready.Rise, o.Ready.Readings
	case o.Kind == SawStep && (o.Step == stepBulk || o.Step == stepShape || o.Step == stepChill):
		rise = of.Mix.Rise
	}
	if rise.Points() <= earlyCheck {
		return rise, early, false
	}
	bulk, missing, err := known.bulk(*of.Mix, probe)
	if err != nil || len(missing) > 0 {
		return rise, early, false
	}
	early, tooEarly = tooSoon(bulk, rise, o.At.Sub(of.At))
	return rise, early, tooEarly
}

// tooSoon compares how long a dough took with the early end of what a culture nothing is known of would do.
func tooSoon(bulk ferment.Bulk, rise quantity.Percent, took time.Duration) (time.Duration, bool) {
	bulk.Rise, bulk.Culture = rise, ferment.Culture{}
	e, err := bulk.Estimate()
	if err != nil {
		return 0, false
	}
	early := hurried(e.Ready().Early).Round(time.Minute)
	return early, took < early
}
