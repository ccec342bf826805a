package schedule

import (
	"slices"
	"strings"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

// mostRemedies is how many ways out are told; more than a few are not read.
const mostRemedies = 5

// Remedies lists what would help by itself, at most five: those that change least come first, and rules that say the
// same come once. Each was checked: with this change alone there is a timetable.
func (k *Conflict) Remedies() []Member {
	if k == nil {
		return nil
	}
	var out []Member
	for _, m := range k.Members {
		same := func(o Member) bool { // the wanted times move together
			return o.Remedy == m.Remedy && (o.Words == m.Words || o.Wanted && m.Wanted)
		}
		if m.Enough && !slices.ContainsFunc(out, same) {
			out = append(out, m)
		}
	}
	slices.SortStableFunc(out, func(a, b Member) int {
		switch {
		case a.Change < b.Change:
			return -1
		case a.Change > b.Change:
			return 1
		}
		return 0
	})
	return out[:min(len(out), mostRemedies)]
}

// Message says in one sentence what cannot be: of a resource that cannot suffice how much is wanted and how much
// there is; otherwise which rules cannot all be kept, and by how much they miss each other, or, where they are too many
// to be read, which resource is nearest to being short. Steps that follow one another are told together with the time
// they take; rules that say the same are told once.
func (k *Conflict) Message() working.Message {
	if k == nil {
		return working.Tell("schedule.no_conflict", "no conflict")
	}
	switch {
	case k.Shortage != nil:
		return k.Shortage.Message()
	case k.Tightest != nil:
		return working.Tell("schedule.conflict_tightest", "no order of the steps keeps every rule; it is tightest here: %v",
			k.Tightest.Message())
	}
	all := k.sentences()
	if k.Short > 0 && !k.ShortProven {
		return working.Tell("schedule.conflict_by_at_most",
			"these cannot all be kept, they miss each other by %v or less: %v", k.Short, working.Join(all, "; "))
	}
	if k.Short > 0 {
		return working.Tell("schedule.conflict_by", "these cannot all be kept, they miss each other by %v: %v",
			k.Short, working.Join(all, "; "))
	}
	return working.Tell("schedule.conflict", "these cannot all be kept: %v", working.Join(all, "; "))
}

// sentences are the rules of a conflict as they are told.
func (k *Conflict) sentences() (all []working.Message) {
	chains, told := k.chains()
	add := func(m working.Message) {
		if !slices.Contains(all, m) {
			all = append(all, m)
		}
	}
	for _, frame := range []bool{false, true} { // what is wanted, and the edges of the plan, stand at the end
		for i, m := range k.Members {
			inFrame := m.Wanted || m.Rule == PlanStart || m.Rule == PlanEnd
			atOnce := m.Rule == LinkExact && m.Link == EndToStart && m.Limit == 0
			if !told[i] && !atOnce && inFrame == frame {
				add(m.Words)
			}
		}
		if !frame {
			for _, c := range chains {
				add(c.message())
			}
		}
	}
	return all
}

// String says which rules are in the way, and on a line each what would help by itself.
func (k *Conflict) String() string {
	s := k.Message().String()
	for _, m := range k.Remedies() {
		s += "\n  " + m.Help().String()
	}
	if k != nil && len(k.Together) > 0 {
		s += "\n  " + k.AllOf().String()
	}
	return s
}

// AllOf says the changes that help only together: "together: hands: 1 at a time (1 more: 2); lunch at 12:30 (20m later:
// 12:50)"; nothing when one is enough or none was found.
func (k *Conflict) AllOf() working.Message {
	if k == nil {
		return working.Message{}
	}
	var all []working.Message
	for _, m := range k.Together {
		all = append(all, m.Help())
	}
	if len(all) == 0 {
		return working.Message{}
	}
	return working.Tell("schedule.together", "together: %v", working.Join(all, "; "))
}

// Help is a rule with the change of it alone that helps: "retard at least 8h (40m shorter: 7h20m)".
func (m Member) Help() working.Message {
	if !m.Enough {
		return m.Words
	}
	if !m.Least {
		return working.Tell("schedule.help_at_most", "%v (%v; less may do)", m.Words, m.Remedy)
	}
	return working.Tell("schedule.help", "%v (%v)", m.Words, m.Remedy)
}

// succession is members about steps that follow one another: how long each takes at least, and the
// links between them.
type succession struct {
	lengths  []Member
	together quantity.Elapsed
}

func (c succession) message() working.Message {
	parts := make([]working.Message, len(c.lengths))
	for i, m := range c.lengths {
		parts[i] = m.Words
	}
	return working.Tell("schedule.succession", "one after the other, together %v: %v", c.together,
		working.Join(parts, ", "))
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

// Message says the timetable's verdict: how good it is, or why there is none and which wanted times would do.
func (t Timetable) Message() working.Message {
	switch t.Verdict {
	case Infeasible:
		all := []working.Message{working.Tell("schedule.no_timetable", "no timetable: %v", t.Conflict.Message())}
		for _, s := range []*Shift{t.Before, t.After} {
			if s != nil {
				all = append(all, working.Tell("schedule.would_work", "would work: %v", s.Message()))
			}
		}
		return working.Join(all, "; ")
	case Feasible:
		return working.Tell("schedule.not_proven", "not proven best: costs %d, none costs less than %d", t.Cost,
			t.Bound)
	case Optimal:
		return working.Tell("schedule.optimal", "no timetable is better")
	}
	return working.Tell("schedule.unknown", "no timetable found in the time given; whether there is one is not known")
}

// String prints the timetable in order of time, one step a line: when it starts and ends, the
// earliest and latest start and the slack; or why there is none.
func (t Timetable) String() string {
	var lines []string
	for _, k := range t.ByTime() {
		lines = append(lines, t.Steps[k].Message().String())
	}
	switch {
	case t.Verdict == Infeasible:
		lines = append(lines,
			working.Tell("schedule.no_timetable_text", "no timetable: %s", t.Conflict.String()).String())
		for _, s := range []*Shift{t.Before, t.After} {
			if s != nil {
				lines = append(lines, working.Tell("schedule.would_work", "would work: %v", s.Message()).String())
			}
		}
	case t.Verdict != Optimal || len(lines) == 0:
		lines = append(lines, t.Message().String())
	}
	return strings.Join(lines, "\n")
}

// Message is one line of a timetable.
func (s Timed) Message() working.Message {
	line := working.Tell("schedule.line", "%v to %v  %v  (start %v to %v, slack %v)", s.Start, s.End, s.Title(),
		s.EarliestStart, s.LatestStart, s.Slack)
	if s.Watch != nil {
		return working.Tell("schedule.line_look", "%v; look at it from %v to %v", line, s.Watch.From, s.Watch.To)
	}
	return line
}

// Message says the wanted time that would work and how far it is from the wanted one.
func (s *Shift) Message() working.Message {
	switch {
	case s == nil:
		return working.Tell("schedule.no_shift", "none")
	case s.By < 0 && !s.Nearest:
		return working.Tell("schedule.shift_earlier_perhaps", "%v, %v earlier, perhaps a nearer time too", s.To, -s.By)
	case s.By < 0:
		return working.Tell("schedule.shift_earlier", "%v, %v earlier", s.To, -s.By)
	case !s.Nearest:
		return working.Tell("schedule.shift_later_perhaps", "%v, %v later, perhaps a nearer time too", s.To, s.By)
	}
	return working.Tell("schedule.shift_later", "%v, %v later", s.To, s.By)
}

// String prints the wanted time that would work and how far it is from the wanted one.
func (s *Shift) String() string { return s.Message().String() }
