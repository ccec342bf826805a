package bench

import (
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

// Doubts answers: which observations can hardly be true? A dough that has risen faster than anything this library
// believes possible, a core above boiling, a loaf that lost a third of its weight. Those that are Sure are not doubted.
func (all Observations) Doubts() []Doubt {
	var out []Doubt
	add := func(i int, m working.Message) { out = append(out, Doubt{i, all[i], m}) }
	for i, o := range all {
		if o.Sure {
			continue
		}
		switch {
		case o.Kind == SawCore && o.Core != nil && o.Core.Core.Celsius() > hottest:
			add(
				i,
				working.Tell(
					"bench.doubt_core",
					"a core of %.0f is hotter than boiling water: is the probe in the crumb?",
					o.Core.Core,
				),
			)
		case o.Kind == SawWeights && o.Weights != nil:
			if lost := lossOf(*o.Weights); lost > mostLost {
				add(
					i,
					working.Tell(
						"bench.doubt_lost",
						"%v of bread from %v of dough would have lost %.0f: was it the same loaf?",
						o.Weights.Out,
						o.Weights.In,
						quantity.NewPercent(lost),
					),
				)
			} else if lost < leastLost {
				add(i, working.Tell("bench.doubt_kept",
					"%v of bread from %v of dough has hardly lost anything: was it weighed after the oven?",
					o.Weights.Out, o.Weights.In))
			}
		case o.Kind == SawRise && o.Rise != nil && o.Rise.Rise.Points() > earlyCheck:
			if early, ok := all.soonest(o); ok {
				add(
					i,
					working.Tell(
						"bench.doubt_rise",
						"%.0f risen so soon: even a very lively dough takes %v; was it mixed earlier, or read off the wrong mark?",
						o.Rise.Rise,
						early,
					),
				)
			}
		}
	}
	return out
}

func lossOf(w LoafWeights) float64 {
	if w.In.Grams() <= 0 {
		return 0
	}
	return 100 * (1 - w.Out.Grams()/w.In.Grams())
}

// soonest is how early the dough of a reading could have come so far at best, when the reading is earlier than that.
func (all Observations) soonest(o Observation) (time.Duration, bool) {
	var mixed *Observation
	for i := range all {
		m := &all[i]
		if m.Kind == SawMixed && m.Mix != nil && m.By == o.By && (o.Bread == "" || m.Bread == o.Bread) &&
			!m.At.After(o.At) &&
			(mixed == nil || m.At.After(mixed.At)) {
			mixed = m
		}
	}
	if mixed == nil {
		return 0, false
	}
	bulk, missing, err := mixed.Mix.Bulk(nil)
	if err != nil || len(missing) > 0 {
		return 0, false
	}
	return tooSoon(bulk, o.Rise.Rise, o.At.Sub(mixed.At))
}

// tooSoon compares how long a dough took with the early end of what a culture nothing is known of would do.
func tooSoon(bulk ferment.Bulk, rise quantity.Percent, took time.Duration) (time.Duration, bool) {
	bulk.Rise, bulk.Culture = rise, ferment.Culture{}
	e, err := bulk.Estimate()
	if err != nil {
		return 0, false
	}
	early := time.Duration(fastest * float64(e.Ready().Early)).Round(time.Minute)
	return early, took < early
}
