package planner

import "slices"

// keep returns the shop with only the rules kept.
func (s *Shop) keep(kept map[int]bool) *Shop {
	out := &Shop{Net: s.Net.Only(kept), Tasks: s.Tasks}
	for _, p := range s.Pools {
		if kept[p.Rule] {
			p.Closed = slices.DeleteFunc(slices.Clone(p.Closed), func(c Closing) bool { return !kept[c.Rule] })
			out.Pools = append(out.Pools, p)
		}
	}
	return out
}

// Only returns the shop with just the rules listed.
func (s *Shop) Only(rules []int) *Shop {
	kept := map[int]bool{}
	for _, r := range rules {
		kept[r] = true
	}
	return s.keep(kept)
}

// Relaxed returns the shop with the rules weakened; a pool's capacity grows by By.
func (s *Shop) Relaxed(list ...Relax) *Shop {
	e := easings(list)
	out := &Shop{Net: s.Net.relaxed(e), Tasks: s.Tasks}
	for _, p := range s.Pools {
		var closed []Closing
		for _, c := range p.Closed {
			if c.From, c.To = e.span(c.From, c.To, c.Rule); c.From < c.To {
				closed = append(closed, c)
			}
		}
		p.Closed = closed
		for _, r := range e[p.Rule] {
			if p.Capacity > 0 {
				p.Capacity += r.By
			}
		}
		out.Pools = append(out.Pools, p)
	}
	return out
}

// Without returns the shop without one rule.
func (s *Shop) Without(rule int) *Shop {
	kept := map[int]bool{}
	for _, a := range s.Net.Arcs {
		kept[a.Rule] = true
	}
	for _, h := range s.Net.Holes {
		kept[h.Rule] = true
	}
	for _, p := range s.Pools {
		kept[p.Rule] = true
	}
	delete(kept, rule)
	return s.keep(kept)
}

// Possible answers whether the shop has any timetable, as far as the watch goes.
func (s *Shop) Possible(w *Watch) Truth {
	_, t := s.Any(w)
	return t
}

// Any finds a timetable, whatever it costs, as far as the watch goes.
func (s *Shop) Any(w *Watch) ([]int, Truth) {
	e, clash := s.energy(w)
	switch {
	case clash != nil:
		return nil, No
	case e == nil:
		return nil, Unsure
	case s.Fits(w, e.lo):
		return slices.Clone(e.lo), Yes
	case s.Fits(w, e.hi):
		return slices.Clone(e.hi), Yes
	case e.worst() != nil:
		return nil, No
	}
	found := s.learn(w)
	return found.times, found.truth
}

// Proof is rules that have no timetable together with the fixed ones: those of a proof, then of a proof from those
// alone, as long as it becomes shorter. Nil when none was found.
func (s *Shop) Proof(w *Watch, fixed []int) (rules []int) {
	for {
		found := s.learn(w)
		if found.truth != No || rules != nil && 10*len(found.core) > 9*len(rules) {
			return rules
		}
		rules = found.core
		s = s.Only(slices.Concat(rules, fixed))
	}
}

// Refutable is the cheapest method that rules out every timetable of the shop, given that there is none.
func (s *Shop) Refutable(w *Watch) Method {
	by := ByNeed
	for by < BySearch && s.Refuted(w, by) != Yes {
		by++
	}
	return by
}

// Core finds a smallest set of the rules that a method still refutes, given that it refutes all of them together;
// the rules in fixed are kept throughout and not listed. Source: Junker, "QuickXplain", AAAI 2004.
func (s *Shop) Core(w *Watch, rules, fixed []int, refuted func(*Shop) bool) []int {
	return Smallest(rules, fixed, func(kept map[int]bool) bool {
		return !w.spend(len(s.Net.Arcs)+len(s.Net.Holes)) && refuted(s.keep(kept))
	})
}

// Tighten leaves out of a set of rules that together with the fixed ones has no timetable each rule without which
// there is none either. minimal says that every rule that is left was proven to be needed.
func (s *Shop) Tighten(w *Watch, rules, fixed []int, possible func(*Shop) Truth) (core []int, minimal bool) {
	minimal = true
	core = slices.Clone(rules)
	for k := 0; k < len(core); {
		if w.Over() {
			return core, false
		}
		rest := slices.Concat(core[:k], core[k+1:])
		switch possible(s.Only(slices.Concat(rest, fixed))) {
		case No:
			core = rest
			continue
		case Unsure:
			minimal = false
		}
		k++
	}
	return core, minimal
}

// Smallest finds a smallest part of the rules that is bad together with the fixed ones, given
// that all are bad together and that more rules are never less bad.
func Smallest(rules, fixed []int, bad func(kept map[int]bool) bool) []int {
	x := &xplain{bad: bad, kept: map[int]bool{}}
	for _, r := range fixed {
		x.kept[r] = true
	}
	return x.find(false, rules)
}

type xplain struct {
	bad  func(kept map[int]bool) bool
	kept map[int]bool // the background
}

// find returns a smallest part of rules that is impossible with the background; grown says
// that the background has grown since it was last known to be possible.
func (x *xplain) find(grown bool, rules []int) []int {
	if grown && x.bad(x.kept) {
		return nil
	}
	if len(rules) <= 1 {
		return rules
	}
	half := len(rules) / 2
	first, second := rules[:half], rules[half:]
	x.add(first)
	b := x.find(true, second)
	x.remove(first)
	x.add(b)
	a := x.find(len(b) > 0, first)
	x.remove(b)
	return append(append([]int(nil), a...), b...)
}

func (x *xplain) add(rules []int) {
	for _, r := range rules {
		x.kept[r] = true
	}
}

func (x *xplain) remove(rules []int) {
	for _, r := range rules {
		delete(x.kept, r)
	}
}
