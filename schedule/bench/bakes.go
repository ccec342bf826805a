package bench

import "time"

// LoggedBake is what the observations say about one dough.
type LoggedBake struct {
	Bread string     `json:"bread,omitempty"`
	By    string     `json:"by,omitempty"`
	Mixed time.Time  `json:"mixed"`
	Mix   DoughMixed `json:"mix"`

	Rises   Observations `json:"rises,omitempty"` // in order of time
	Ready   *Observation `json:"ready,omitempty"` // the last of its kind
	Cores   Observations `json:"cores,omitempty"`
	Weights Observations `json:"weights,omitempty"`
	Steps   Observations `json:"steps,omitempty"`
	Notes   Observations `json:"notes,omitempty"`
}

// longest is how long after mixing an observation may belong to a dough: room for some days in the cold. Judgment.
const longest = 5 * 24 * time.Hour

// Bakes answers: which observations are of one dough? An observation belongs to the dough of its bread, and of its
// baker, that was mixed last before it, or to the last dough of any bread when it names none. What has no dough
// within five days before it is left out; so are plans, and observations that are doubted ([Observations.Doubts]).
func (all Observations) Bakes() []LoggedBake {
	return all.judge().believed().ByTime().grouped()
}

// whole reports whether the part that the kind asks for is there.
func (o Observation) whole() bool {
	switch o.Kind {
	case SawMixed:
		return o.Mix != nil
	case SawRise:
		return o.Rise != nil
	case SawReady:
		return o.Ready != nil
	case SawCore:
		return o.Core != nil
	case SawWeights:
		return o.Weights != nil
	case SawPlan:
		return o.Plan != nil
	}
	return true
}

// grouped sorts observations in order of time into bakes.
func (all Observations) grouped() []LoggedBake {
	type name struct{ by, bread string }
	var out []LoggedBake
	last, newest := map[name]int{}, map[string]int{}
	for i := range all {
		o := &all[i]
		if o.Kind == SawMixed {
			out = append(out, LoggedBake{Bread: o.Bread, By: o.By, Mixed: o.At, Mix: *o.Mix})
			newest[o.By] = len(out) - 1
			last[name{o.By, o.Bread}] = len(out) - 1
			continue
		}
		k, ok := newest[o.By]
		if o.Bread != "" {
			k, ok = last[name{o.By, o.Bread}]
		}
		if !ok || o.At.Sub(out[k].Mixed) > longest {
			continue
		}
		out[k].add(o)
	}
	return out
}

func (b *LoggedBake) add(o *Observation) {
	switch o.Kind {
	case SawRise:
		b.Rises = append(b.Rises, *o)
	case SawReady:
		b.Ready = o
	case SawCore:
		b.Cores = append(b.Cores, *o)
	case SawWeights:
		b.Weights = append(b.Weights, *o)
	case SawStep:
		b.Steps = append(b.Steps, *o)
	case SawNote:
		b.Notes = append(b.Notes, *o)
	}
}
