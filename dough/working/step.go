package working

import "math"

// A step is one step of a derivation: what was looked for, and what was found.
type step struct {
	finding Finding
	result  *binding
	raw     Value // of the expression, before the rounding that the finding states
}

// Working is the derivation of one result: its title and its steps, in order. The zero value has no steps.
type Working struct {
	answer

	title Message
	steps []step
}

// Len is how many steps there are.
func (w Working) Len() int { return len(w.steps) }

// Append returns the working with the steps of others after its own.
func (w Working) Append(others ...Working) Working {
	steps := append([]step(nil), w.steps...)
	for _, o := range others {
		steps = append(steps, o.steps...)
	}
	return Working{title: w.title, steps: steps}
}

// Sources lists each source once, in order of first use.
func (w Working) Sources() []Source {
	var out []Source
	seen := map[Source]bool{}
	for _, s := range w.steps {
		if src := s.finding.Source; !src.IsZero() && !seen[src] {
			seen[src] = true
			out = append(out, src)
		}
	}
	return out
}

// Answer is the value that the derivation ends with: the answer that it derives.
func (w Working) Answer() Value {
	if len(w.steps) == 0 {
		return Value{Number: math.NaN()}
	}
	return w.steps[len(w.steps)-1].result.value
}
