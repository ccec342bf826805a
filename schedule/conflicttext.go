package schedule

import (
	"strings"

	"example.org/maslin/dough/quantity"
)

// String says which rules are in the way, and what would help. Steps that follow one another
// are told in one line with the time they take together, so that what clashes with them can be
// seen; [Conflict.Members] has every rule by itself.
func (k *Conflict) String() string {
	if k == nil {
		return "no conflict"
	}
	s := "these cannot all be kept"
	if k.Short > 0 {
		s += " (short by " + k.Short.String() + ")"
	}
	s += ":"
	chains, told := k.chains()
	var rest []string
	order := false // of steps, with nothing else to say about it
	for i, m := range k.Members {
		switch {
		case told[i]:
		case m.Enough:
			s += "\n  " + m.say()
		case m.Rule == LinkExact && m.Link == EndToStart && m.Limit == 0:
			order = true
		default:
			rest = append(rest, m.Words.String())
		}
	}
	for _, c := range chains {
		s += "\n  " + c.String()
	}
	if order {
		rest = append(rest, "each step follows the one before it")
	}
	if len(rest) > 0 {
		s += "\n  and with them, where no change alone helps: " + strings.Join(rest, "; ")
	}
	return s
}

// say is the rule with the change of it alone that helps, if any.
func (m Member) say() string {
	if !m.Enough {
		return m.Words.String()
	}
	return m.Words.String() + " (" + m.Remedy.String() + ")"
}

// succession is members about steps that follow one another: how long each takes at least, and the
// links between them.
type succession struct {
	lengths, links []Member
	together       quantity.Elapsed
}

func (c succession) String() string {
	var parts []string
	helps := false
	for _, m := range c.lengths {
		parts = append(parts, m.say())
		helps = helps || m.Enough
	}
	s := "one after the other, together " + c.together.String() + ": " + strings.Join(parts, ", ")
	if helps {
		return s
	}
	// No length gives way; a gap between two steps may.
	for _, m := range c.links {
		if m.Enough {
			return s + "; or " + m.say()
		}
	}
	return s
}

// chains joins members into chains of at least two lengths and says which members are told so.
func (k *Conflict) chains() (out []succession, told []bool) {
	length := map[string]int{} // the member that says how long a step takes at least
	next := map[string]int{}   // the member that says what follows a step
	before := map[string]bool{}
	for i, m := range k.Members {
		switch m.Rule {
		case StepMin, StepExact:
			length[m.Step] = i
		case LinkMin, LinkExact:
			_, taken := next[m.Step]
			if m.Link == EndToStart && m.Limit >= 0 && !taken && !before[m.Other] && m.Step != m.Other {
				next[m.Step], before[m.Other] = i, true
			}
		}
	}
	told = make([]bool, len(k.Members))
	for _, first := range k.Members {
		if _, ok := next[first.Step]; !ok || before[first.Step] {
			continue
		}
		var c succession
		var members []int
		for step := first.Step; ; {
			if i, ok := length[step]; ok {
				c.lengths = append(c.lengths, k.Members[i])
				c.together += k.Members[i].Limit
				members = append(members, i)
			}
			i, ok := next[step]
			if !ok {
				break
			}
			c.links = append(c.links, k.Members[i])
			c.together += k.Members[i].Limit
			members = append(members, i)
			step = k.Members[i].Other
		}
		if len(c.lengths) < 2 || told[members[0]] {
			continue
		}
		for _, i := range members {
			told[i] = true
		}
		out = append(out, c)
	}
	return out, told
}
