package planner

import "slices"

// A Push is one step of a chain of reasons: Event is at least at Value because From, the event before it in the chain
// (0: the origin), is where it is, and because of Rule. Jumped says that the rule is an absence.
type Push struct {
	Event, Value, From, Rule int
	Jumped                   bool
}

// Chain is why an event can be no earlier than its least time, from the origin to it; nothing when the network has no
// solution or the watch is over.
func (n *Net) Chain(w *Watch, event int) []Push {
	t, clash := n.later().solve(w)
	if clash != nil || w.Over() || t.last[event] < 0 {
		return nil
	}
	return t.chain(t.last[event], -1)
}

// Refutation is the chain of pushes that shows that a network has no solution. It ends where it began: at the origin,
// with the time by which the rules miss each other, or, around a cycle of differences, at the event that it leaves.
// Nothing when there is a solution or the watch is over.
func (n *Net) Refutation(w *Watch) []Push {
	h := n.later()
	t := newTrace(h, w)
	t.keep = true
	t.enqueue(0)
	if h.run(t) == nil {
		return nil
	}
	return t.kept
}

// chain lists the pushes that lead to one, from the first after stop.
func (t *trace) chain(last, stop int) []Push {
	var out []Push
	for p := last; p != stop && p >= 0; p = int(t.steps[p].prev) {
		s := t.steps[p]
		push := Push{Event: int(s.event), Value: int(s.value), Rule: int(s.rule), Jumped: s.jumped}
		if s.prev >= 0 {
			push.From = int(t.steps[s.prev].event)
		}
		out = append(out, push)
	}
	slices.Reverse(out)
	return out
}

// clashed keeps the chain of a clash where it is asked for: the pushes after stop up to prev, and the one that closes
// it, which brings event to value.
func (t *trace) clashed(prev, rule, stop, event, value int) {
	if !t.keep {
		return
	}
	t.kept = t.chain(prev, stop)
	closing := Push{Event: event, Value: value, Rule: rule}
	if prev >= 0 {
		closing.From = int(t.steps[prev].event)
	}
	t.kept = append(t.kept, closing)
}
