package schedule

import (
	"slices"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
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
	answer

	Verdict Verdict `json:"verdict"`
	Steps   []Timed `json:"steps,omitempty"` // in the order of Problem.Steps

	// Cost is the objective of Best in points; Bound is proven to be no more than the cost of
	// any timetable. They are equal when Verdict is Optimal and the objective is Best's.
	Cost  int `json:"cost"`
	Bound int `json:"bound"`

	// Conflict says why there is no timetable; nil when there is one or nothing is proven.
	Conflict *Conflict `json:"conflict,omitempty"`

	// Before and After are the nearest wanted times that work, when there are wanted bounds and
	// no timetable: how far all wanted bounds would have to move. Nil when none was found
	// inside the horizon; Nearest says whether one still nearer is ruled out.
	Before *Shift `json:"before,omitempty"`
	After  *Shift `json:"after,omitempty"`

	// Nodes counts the decisions looked at.
	Nodes int `json:"nodes"`

	// TimeRanOut says that the context ended before all of the answer was worked out.
	TimeRanOut bool `json:"time_ran_out,omitempty"`

	c         *compiled
	described bool          // the room of each step is worked out
	times     []int         // of every event
	orders    []planner.Arc // decided at shared resources
	core      []int         // the rules of the conflict
}

// Timed is one step of a timetable.
type Timed struct {
	Label
	Start time.Time `json:"start"`
	End   time.Time `json:"end"`

	// The earliest and latest times, other steps giving way and the order at shared resources
	// staying the same. When the context ended before they were worked out they are the times
	// planned, Slack is 0, and Windows and Drives are empty.
	EarliestStart time.Time `json:"earliest_start"`
	LatestStart   time.Time `json:"latest_start"`
	EarliestEnd   time.Time `json:"earliest_end"`
	LatestEnd     time.Time `json:"latest_end"`

	// Slack is how much later the step could start than it does, other steps giving way as
	// the rules allow and the order at shared resources staying the same.
	Slack quantity.Elapsed `json:"slack"`

	// Windows are the spans of possible starts (both ends possible), other steps giving way.
	Windows []Span `json:"windows,omitempty"`

	// Drives says, in the user's words, what keeps the step from starting later.
	Drives working.Message `json:"drives,omitzero"`

	// Watch is when to look at a living step: from its start plus Min to its start plus Max.
	// Nil for other steps.
	Watch *Span `json:"watch,omitempty"`
}

// Conflict is a smallest set of rules that cannot be kept together: take any one of them away
// and the rest can.
type Conflict struct {
	Members []Member `json:"members"`
	// Shortage says it in one sentence when a shared resource cannot suffice for what must lie between two times,
	// whatever the order; nil when the reason is another.
	Shortage *Shortage `json:"shortage,omitempty"`
	// Tightest is, where more rules are in the way than anyone reads and no shortage is the reason, the resource that is
	// nearest to being short: its steps fit between the two times by their hours, but in no order that the other rules
	// allow.
	Tightest *Shortage `json:"tightest,omitempty"`
	// Together is a set of changes that make a timetable possible, none of which can be left out, when no change of one
	// rule does; it may name rules that are no members. Empty when one is enough, and when none was found.
	Together []Member `json:"together,omitempty"`
	// Short is by how much the rules miss each other: how much later the wanted bounds would
	// have to be when there are any, else the smallest single change in Members.
	Short quantity.Elapsed `json:"short"`
	// ShortProven says that less than Short is proven not to be enough.
	ShortProven bool `json:"short_proven"`
	// Minimal is true when the set was proven to be a smallest one: without any one member the
	// others can be kept. There can be smaller sets with other members. It is false only when
	// the context or the effort ran out while the set was being made smaller.
	Minimal bool `json:"minimal"`
	// Complete is false when the context ended before every remedy and the nearest wanted times were looked into.
	Complete bool `json:"complete"`
}

// Breach is one rule of a problem that is in the way or broken.
type Breach struct {
	Rule  Rule            `json:"rule"`
	Step  string          `json:"step,omitempty"`  // the ID of the step concerned, if any
	Other string          `json:"other,omitempty"` // the ID of the other step of a link, or of the resource
	Words working.Message `json:"words"`
}

// String is the finding in words.
func (f Breach) String() string { return f.Words.String() }

// Member is one rule of a conflict with the least change of it alone that would let the whole
// problem be solved.
type Member struct {
	Breach
	Link LinkKind `json:"link"` // which two edges a link joins; 0 for other rules
	// the duration or the time between two steps that the rule sets; 0 for other rules
	Limit quantity.Elapsed `json:"limit"`
	// Closed is the span of an absence, to the grid; nil for other rules.
	Closed *Span `json:"closed,omitempty"`
	// Wanted says that the rule is the time at which the bread is wanted.
	Wanted bool `json:"wanted,omitempty"`
	// Firm says that the rule is not up for change: dough, oven and clock have their time. No remedy is looked for.
	Firm bool `json:"firm,omitempty"`

	// Change is the least change of this rule that was found to make a timetable possible; for a capacity
	// it is 0 and More counts. Enough is false when no change of this rule alone was found to help; Remedy says
	// whether that is known or was not settled. Least says that no smaller change helps: proven.
	Enough bool             `json:"enough"`
	Least  bool             `json:"least,omitempty"`
	Easing Easing           `json:"easing,omitempty"` // which way the rule would give
	Change quantity.Elapsed `json:"change,omitempty"`
	More   int              `json:"more,omitempty"`
	Remedy working.Message  `json:"remedy,omitzero"` // in words: "40m shorter", "until 14:20 instead of 15:00"
}

// Easing says which way a rule of a conflict would have to give. The zero value is "no way that
// helps, or none looked into".
type Easing int

// The ways a rule can give.
const (
	Shorter  Easing = iota + 1 // a step, or the time between two, shorter
	Longer                     // a step, or the time between two, longer
	Earlier                    // a time on the clock, earlier
	Later                      // a time on the clock, later
	Begins                     // an absence begins later
	Ends                       // an absence ends earlier
	Dropped                    // an absence does not happen
	More                       // there is more of a resource
	AnyOrder                   // alike steps come in any order
)

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
	PlanStart             // nothing before the anchor of the plan
	PlanEnd               // everything done by its horizon
	InOrder               // alike steps start in the order given
	StepExact             // a step takes exactly so long
	LinkExact             // exactly so long between two steps
	FixedTime             // a bound's fixed time
	AsPlanned             // a step happens at the time of the timetable
	Missing               // a step has no time at all
)

// Shift is a wanted time that would work.
type Shift struct {
	By quantity.Elapsed `json:"by"` // how far the wanted bounds move: negative is earlier
	To time.Time        `json:"to"` // the moved time of the first wanted bound
	// Nearest says that no wanted time between the given one and To works: proven.
	Nearest bool `json:"nearest"`
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

// Step finds a step of the timetable by its ID.
func (t Timetable) Step(id string) (Timed, bool) {
	for _, s := range t.Steps {
		if s.ID == id {
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
