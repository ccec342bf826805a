package schedule

import (
	"math"
	"time"
)

// NoLimit, as the Max of a [Link], says that there is no upper limit; -NoLimit as its Min
// says that there is no lower one. As the Max of a [Step] it lets the step last as long as
// the plan.
const NoLimit = time.Duration(math.MaxInt64)

// Problem is everything a timetable must respect, and what it should prefer.
//
// The zero value is refused: Anchor, Horizon and at least one step are required.
type Problem struct {
	Anchor  time.Time     // the instant at which the plan may begin
	Horizon time.Duration // the plan ends at Anchor + Horizon at the latest; up to 90 days
	Grid    time.Duration // all times are whole multiples of it after Anchor; 0 means one minute

	Steps     []Step
	Links     []Link
	Bounds    []Bound
	Resources []Resource
	Alike     [][]string // names of interchangeable steps (loads of one dough): they start in the order given

	// Effort bounds the search by a number of decisions, for callers who want the same partial
	// answer on every machine; 0 means no bound but the context.
	Effort int
}

// Step is something that happens once, from a start to an end.
type Step struct {
	Name string // unique, in the user's words: "retard", "shape", "second load"

	// Min and Max bound how long the step takes. Max 0 means exactly Min. The planner chooses
	// within them, unless the step is Living.
	Min, Max time.Duration

	// Living says that the dough decides how long the step takes, somewhere from Min to Max.
	// The plan assumes Likely (0 means the middle, rounded down to the grid), and Timetable.Robust says what happens over the
	// whole range.
	Living bool
	Likely time.Duration

	// Watch names the resource (a pair of hands) that has to look at a living step between
	// its earliest and its latest end; empty means nobody has to.
	Watch string

	Needs []Need

	// PerMinute is what each minute of the step costs in the objective of Best: a refrigerator
	// occupied, an oven kept hot.
	PerMinute int

	// MinWords and MaxWords say the duration limits in the user's words ("retard at least 8 h");
	// empty means words made from the name.
	MinWords, MaxWords string
}

// Need says how much of a resource a step keeps busy while it lasts.
type Need struct {
	Resource string
	Amount   int // at least 1
	// Program is what the resource is set to (an oven program). Steps with different programs
	// never use the resource at the same time. Empty means that any program will do.
	Program string
}

// need is what the step needs of a resource, if anything.
func (s Step) need(resource string) (Need, bool) {
	for _, n := range s.Needs {
		if n.Resource == resource {
			return n, true
		}
	}
	return Need{}, false
}

// Kind says which two edges a [Link] joins.
type Kind int

// The four kinds of links.
const (
	EndToStart   Kind = iota // from the end of From to the start of To
	StartToStart             // from the start of From to the start of To
	EndToEnd                 // from the end of From to the end of To
	StartToEnd               // from the start of From to the end of To
)

// Link says how long after an edge of one step an edge of another must come: at least Min and
// at most Max. Both may be negative. The zero limits mean "at once"; use NoLimit for "any
// time after".
type Link struct {
	From, To string
	Kind     Kind
	Min, Max time.Duration
	// MinWords and MaxWords say the limits in the user's words; empty means words made from
	// the names.
	MinWords, MaxWords string
}

// Edge names the start or the end of a step.
type Edge int

// The two edges of a step.
const (
	Start Edge = iota
	End
)

// Bound ties an edge of a step to the clock: not before Earliest, not after Latest. A zero
// time means no bound on that side; equal times fix the edge.
type Bound struct {
	Step     string
	Edge     Edge
	Earliest time.Time
	Latest   time.Time

	// Wanted marks the time the bread is wanted: when there is no plan, the nearest wanted
	// times that work are looked for by moving all bounds so marked together.
	Wanted bool

	// EarlyPerMinute is what each minute costs by which the edge comes before Latest (bread
	// going stale); LatePerMinute each minute by which it comes after Earliest.
	EarlyPerMinute int
	LatePerMinute  int

	Words string // in the user's words: "lunch at 12:30"; empty means words made from the step
}

// Resource is something shared by steps: hands, an oven, a mixer, places in the refrigerator.
type Resource struct {
	Name string
	// Capacity is how much of it there is; 0 means that it is never short and only its closed
	// spans count.
	Capacity int
	// Changeover is the time between the end of one step and the start of the next when the
	// two cannot use the resource at the same time (an oven reheating between rounds).
	Changeover time.Duration
	// Closed lists when it cannot be used: sleep, work, market day. Spans may touch or overlap.
	Closed []Span
	// Awkward lists when using it is unwelcome.
	Awkward []Awkward
	Words   string // the capacity in the user's words ("one oven"); empty means words made from the name
}

// apart reports whether two needs can never be met by the resource at the same time.
func (r Resource) apart(a, b Need) bool {
	return r.Capacity > 0 && a.Amount+b.Amount > r.Capacity || a.Program != "" && b.Program != "" && a.Program != b.Program
}

// Span is a stretch of time from From up to but not including To.
type Span struct {
	From, To time.Time
	Words    string // in the user's words: "away 09:00 to 15:00"
}

// Awkward is a span in which each minute of use costs PerMinute in the objective of Best.
type Awkward struct {
	From, To  time.Time
	PerMinute int
}
