package bench

import (
	"example.org/maslin/dough/working"
	"example.org/maslin/ferment"
)

// judged are observations, what is doubted of them, and the doughs that were followed to find that.
type judged struct {
	all    Observations
	doubts []Doubt
	doughs doughs
}

func (all Observations) judge() judged {
	j := judged{all: all, doughs: doughs{}}
	mixed := all.mixings()
	for i, o := range all {
		if says := o.doubted(mixed, j.doughs); !says.IsZero() {
			j.doubts = append(j.doubts, Doubt{i, o, says})
		}
	}
	return j
}

// believed are those that are whole and not doubted.
func (j judged) believed() Observations {
	kept, next := make(Observations, 0, len(j.all)), 0
	for i, o := range j.all {
		if next < len(j.doubts) && j.doubts[next].Index == i {
			next++
		} else if o.whole() {
			kept = append(kept, o)
		}
	}
	return kept
}

// doughs are doughs that were mixed. How the temperature of each goes is worked out once, however many readings there
// are of it: that is most of the work of a long log.
type doughs map[DoughMixed]followed

type followed struct {
	bulk    ferment.Bulk
	missing []working.Message
	err     error
}

// bulk is [DoughMixed.Bulk].
func (known doughs) bulk(m DoughMixed, probe []ferment.Knot) (ferment.Bulk, []working.Message, error) {
	if len(probe) > 0 {
		return m.Bulk(probe)
	}
	f, ok := known[m]
	if !ok {
		f.bulk, f.missing, f.err = m.Bulk(nil)
		known[m] = f
	}
	return f.bulk, f.missing, f.err
}
