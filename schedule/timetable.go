package schedule

import (
	"slices"
	"time"

	"example.org/maslin/internal/planner"
)

// Verdict says what is known about an answer.
type Verdict int

// The verdicts, from the best to the worst.
const (
	Optimal    Verdict = iota // a timetable, and no better one exists: proven
	Feasible                  // a timetable; see Bound and Gap for how much better one might be
	Infeasible                // no timetable exists: proven; see Conflict
	Unknown                   // the time or effort ran out before a timetable was found or ruled out
)

// Timetable is the answer: when each step happens, how far it could move, and how good the
// answer is. When no timetable exists Steps is empty and Conflict says why.
type Timetable struct {
	Verdict Verdict
	Steps   []Timed // in the order of Problem.Steps

	// Cost is the objective of Best in points; Bound is proven to be no more than the cost of
	// any timetable. They are equal when Verdict is Optimal and the objective is Best's.
	Cost  int
	Bound int

	// Conflict says why there is no timetable; nil when there is one or nothing is proven.
	Conflict *Conflict

	// Before and After are the nearest wanted times that work, when there are wanted bounds and
	// no timetable: how far all wanted bounds would have to move. Nil when none was found
	// inside the horizon.
	Before, After *Shift

	// Nodes counts the decisions looked at.
	Nodes int

	c      *compiled
	times  []int         // of every event
	orders []planner.Arc // decided at shared resources
}

// Timed is one step of a timetable.
type Timed struct {
	Name       string
	Start, End time.Time

	// The earliest and latest times, other steps giving way and the order at shared resources
	// staying the same. When the context ended before they were worked out they are the times
	// planned, Slack is 0, and Windows and Drives are empty.
	EarliestStart time.Time
	LatestStart   time.Time
	EarliestEnd   time.Time
	LatestEnd     time.Time

	// Slack is how much later the step could start than it does, other steps giving way as
	// the rules allow and the order at shared resources staying the same.
	Slack time.Duration

	// Windows are the spans of possible starts (both ends possible), other steps giving way.
	Windows []Span

	// Drives says, in the user's words, what keeps the step from starting later.
	Drives string

	// Watch is when to look at a living step: from its start plus Min to its start plus Max.
	// Nil for other steps.
	Watch *Span
}

// Conflict is a smallest set of rules that cannot be kept together: take any one of them away
// and the rest can.
type Conflict struct {
	Members []Member
	// Short is by how much the rules miss each other: how much later the wanted bounds would
	// have to be when there are any, else the smallest single change in Members.
	Short time.Duration
	// Minimal is true when the set was proven to be a smallest one: without any one member the
	// others can be kept. There can be smaller sets with other members. It is false only when
	// the context or the effort ran out while the set was being made smaller.
	Minimal bool
}

// Member is one rule of a conflict with the least change of it alone that would let the whole
// problem be solved.
type Member struct {
	Words string
	Rule  Rule
	Step  string        // the step concerned, if any
	Other string        // the other step of a link, or the resource of a closed span
	Kind  Kind          // which two edges a link joins; 0 for other rules
	Limit time.Duration // the duration or the time between two steps that the rule sets; 0 for other rules

	// Change is the least change of this rule that makes a timetable possible; for a capacity
	// it is 0 and More counts. Enough is false when no change of this rule alone helps.
	Enough bool
	Change time.Duration
	More   int
	Remedy string // in words: "40m shorter", "until 14:20 instead of 15:00"
}

// Rule names the kinds of rules that can be in a conflict.
type Rule int

// The kinds of rules.
const (
	StepMin   Rule = iota // a step takes at least so long
	StepMax               // a step takes at most so long
	LinkMin               // at least so long between two steps
	LinkMax               // at most so long between two steps
	NotBefore             // a bound's earliest time
	NotAfter              // a bound's latest time
	Absence               // a closed span of a resource
	Capacity              // how much of a resource there is
	Limits                // the anchor or the horizon of the plan
	InOrder               // alike steps start in the order given
	StepExact             // a step takes exactly so long
	LinkExact             // exactly so long between two steps
	FixedTime             // a bound's fixed time
)

// Shift is a wanted time that would work.
type Shift struct {
	By time.Duration // how far the wanted bounds move: negative is earlier
	To time.Time     // the moved time of the first wanted bound
}

// ByTime lists the indices of Steps in order of start, then end, then the order given.
func (t Timetable) ByTime() []int {
	order := make([]int, len(t.Steps))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int {
		if c := t.Steps[a].Start.Compare(t.Steps[b].Start); c != 0 {
			return c
		}
		return t.Steps[a].End.Compare(t.Steps[b].End)
	})
	return order
}

// Step finds a step of the timetable by name.
func (t Timetable) Step(name string) (Timed, bool) {
	for _, s := range t.Steps {
		if s.Name == name {
			return s, true
		}
	}
	return Timed{}, false
}

// Gap is how far the cost can be above that of the best timetable, as a share of the cost: 0
// when the answer is proven best.
func (t Timetable) Gap() float64 {
	if t.Cost <= 0 || t.Bound >= t.Cost {
		return 0
	}
	return float64(t.Cost-t.Bound) / float64(t.Cost)
}
