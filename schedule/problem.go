package schedule

import (
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

// NoLimit, as the Max of a [Link], says that there is no upper limit; -NoLimit as its Min
// says that there is no lower one. As the Max of a [DayStep] it lets the step last as long as
// the plan. It is 366 days, the longest duration that has a text form and more than any plan.
const NoLimit = quantity.Elapsed(366 * 24 * time.Hour)

// Problem is everything a timetable must respect, and what it should prefer.
//
// The zero value is refused: Anchor, Horizon and at least one step are required.
type Problem struct {
	Anchor  time.Time        `json:"anchor"`  // the instant at which the plan may begin
	Horizon quantity.Elapsed `json:"horizon"` // the plan ends at Anchor + Horizon at the latest; up to 90 days
	// all times are whole multiples of it after Anchor; 0 means one minute
	Grid quantity.Elapsed `json:"grid,omitempty"`

	Steps     []DayStep  `json:"steps"`
	Links     []Link     `json:"links,omitempty"`
	Bounds    []Bound    `json:"bounds,omitempty"`
	Resources []Resource `json:"resources,omitempty"`
	// IDs of interchangeable steps (loads of one dough): they start in the order given
	Alike [][]string `json:"alike,omitempty"`

	// Firm says that Anchor and Horizon are not up for change: Anchor is the present. A conflict then
	// offers no change of them.
	Firm bool `json:"firm,omitempty"`

	// Effort bounds the search by a number of decisions, for callers who want the same partial
	// answer on every machine; 0 means no bound but the context.
	Effort int `json:"effort,omitempty"`
}

// Label says which step of a day something is about: the fields of the [DayStep] of the same names.
type Label struct {
	ID     string          `json:"id"`
	Kind   StepKind        `json:"kind,omitempty"`
	Bread  string          `json:"bread,omitempty"`
	Thing  string          `json:"thing,omitempty"`
	Number int             `json:"number,omitempty"`
	Of     int             `json:"of,omitempty"`
	Name   working.Message `json:"name,omitzero"`
	Spare  bool            `json:"spare,omitempty"`
}

// label is what an answer keeps of the step.
func (s DayStep) label() Label {
	return Label{
		ID:     s.ID,
		Kind:   s.Kind,
		Bread:  s.Bread,
		Thing:  s.Thing,
		Number: s.Number,
		Of:     s.Of,
		Name:   s.Name,
		Spare:  s.Spare,
	}
}

// Title is the name for people: Name, or else the ID.
func (l Label) Title() working.Message {
	if l.Name.IsZero() {
		return working.Tell("schedule.named", "%v", l.ID)
	}
	return l.Name
}

// DayStep is something that happens once, from a start to an end.
type DayStep struct {
	// ID is the step's own name for programs, once in a problem: links, bounds and answers refer to it. It
	// stays the same when a bake is planned again.
	ID    string   `json:"id"`
	Kind  StepKind `json:"kind,omitempty"`  // what is done
	Bread string   `json:"bread,omitempty"` // which bread it belongs to, where there are several
	Thing string   `json:"thing,omitempty"` // what is made or added, by the baker's name for it: a poolish, a soaker

	// Number and Of count steps that are alike: fold 2 of 4. Both are 0 for a step that is the only one of its
	// kind by its nature.
	Number int `json:"number,omitempty"`
	Of     int `json:"of,omitempty"`

	// Name is the step in the user's words: "cold retard", "mix the dough, 2 of 3". Not given: the ID.
	Name working.Message `json:"name,omitzero"`

	// Spare marks a step that only keeps room for something that may happen, such as shaping a dough
	// that is early. Nobody does it as planned.
	Spare bool `json:"spare,omitempty"`

	// Min and Max bound how long the step takes. Max 0 means exactly Min. The planner chooses
	// within them, unless the step is Living.
	Min quantity.Elapsed `json:"min"`
	Max quantity.Elapsed `json:"max,omitempty"`

	// Living says that the dough decides how long the step takes, somewhere from Min to Max. The plan assumes Likely (0
	// means the middle, rounded down to the grid), and Timetable.Robust says what happens over the whole range.
	Living bool             `json:"living,omitempty"`
	Likely quantity.Elapsed `json:"likely,omitempty"`

	// MinFirm says that nobody can make the step shorter than Min, MaxFirm longer than Max: dough, oven and cooling have
	// their time. A conflict then offers no change of it.
	MinFirm bool `json:"min_firm,omitempty"`
	MaxFirm bool `json:"max_firm,omitempty"`

	// Watch is the ID of the resource (a pair of hands) that has to look at a living step between
	// its earliest and its latest end; empty means nobody has to.
	Watch string `json:"watch,omitempty"`

	Needs []Need `json:"needs,omitempty"`

	// PerMinute is what each minute of the step costs in the objective of Best: a refrigerator
	// occupied, an oven kept hot.
	PerMinute int `json:"per_minute,omitempty"`

	// MinWords and MaxWords say the duration limits in the user's words ("retard at least 8 h");
	// not given means words made from the name.
	MinWords working.Message `json:"min_words,omitzero"`
	MaxWords working.Message `json:"max_words,omitzero"`
}

// Need says how much of a resource a step keeps busy while it lasts.
type Need struct {
	Resource string `json:"resource"` // its ID
	Amount   int    `json:"amount"`   // at least 1
	// Program is what the resource is set to (an oven program). Steps with different programs
	// never use the resource at the same time. Empty means that any program will do.
	Program string `json:"program,omitempty"`
}

// need is what the step needs of a resource, if anything.
func (s DayStep) need(resource string) (Need, bool) {
	for _, n := range s.Needs {
		if n.Resource == resource {
			return n, true
		}
	}
	return Need{}, false
}

// LinkKind says which two edges a [Link] joins.
type LinkKind int

// The four kinds of links.
const (
	EndToStart   LinkKind = iota // from the end of From to the start of To
	StartToStart                 // from the start of From to the start of To
	EndToEnd                     // from the end of From to the end of To
	StartToEnd                   // from the start of From to the end of To
)

// Link says how long after an edge of one step an edge of another must come: at least Min and
// at most Max. Both may be negative. The zero limits mean "at once"; use NoLimit for "any
// time after".
type Link struct {
	From string           `json:"from"` // the ID of a step
	To   string           `json:"to"`   // the ID of a step
	Kind LinkKind         `json:"kind"`
	Min  quantity.Elapsed `json:"min"`
	Max  quantity.Elapsed `json:"max"`
	Firm bool             `json:"firm,omitempty"` // the limits are not up for change; see DayStep.MinFirm
	// MinWords and MaxWords say the limits in the user's words; not given means words made from
	// the names.
	MinWords working.Message `json:"min_words,omitzero"`
	MaxWords working.Message `json:"max_words,omitzero"`
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
	Step     string    `json:"step"` // its ID
	Edge     Edge      `json:"edge"`
	Earliest time.Time `json:"earliest,omitzero"`
	Latest   time.Time `json:"latest,omitzero"`

	// Wanted marks the time the bread is wanted: when there is no plan, the nearest wanted
	// times that work are looked for by moving all bounds so marked together.
	Wanted bool `json:"wanted,omitempty"`

	// EarlyPerMinute is what each minute costs by which the edge comes before Latest (bread
	// going stale); LatePerMinute each minute by which it comes after Earliest.
	EarlyPerMinute int `json:"early_per_minute,omitempty"`
	LatePerMinute  int `json:"late_per_minute,omitempty"`

	// Firm says that the bound is not up for change, as what has happened is not. A conflict then offers no change of it.
	Firm bool `json:"firm,omitempty"`

	// Words are the user's: "lunch at 12:30"; not given means words made from the step.
	Words working.Message `json:"words,omitzero"`
}

// Resource is something shared by steps: hands, an oven, a mixer, places in the refrigerator.
type Resource struct {
	ID   string          `json:"id"`            // once in a problem; needs and answers refer to it
	Name working.Message `json:"name,omitzero"` // in the user's words; not given: the ID
	// Capacity is how much of it there is; 0 means that it is never short and only its closed
	// spans count.
	Capacity int `json:"capacity,omitempty"`
	// Firm says that there cannot be more of it. A conflict then offers no change of Capacity.
	Firm bool `json:"firm,omitempty"`
	// Changeover is the time between the end of one step and the start of the next when the
	// two cannot use the resource at the same time (an oven reheating between rounds).
	Changeover quantity.Elapsed `json:"changeover,omitempty"`
	// Changes are times of their own between two programs, instead of Changeover: an oven gets hotter faster than it
	// cools, a mixer is washed after one dough and not after another.
	Changes []Changeover `json:"changes,omitempty"`
	// Closed lists when it cannot be used: sleep, work, market day. Spans may touch or overlap.
	Closed []Span `json:"closed,omitempty"`
	// Awkward lists when using it is unwelcome.
	Awkward []Awkward `json:"awkward,omitempty"`
	// Words are the capacity in the user's words ("one oven"); not given means words made from the name.
	Words working.Message `json:"words,omitzero"`
}

// title is the name for people: Name, or else the ID.
func (r Resource) title() working.Message {
	if r.Name.IsZero() {
		return working.Tell("schedule.named", "%v", r.ID)
	}
	return r.Name
}

// Changeover is the time a resource takes from one program to another. Both may be the same program; the way back
// is another change.
type Changeover struct {
	From  string           `json:"from"` // the program of the step that ends
	To    string           `json:"to"`   // the program of the step that starts
	Takes quantity.Elapsed `json:"takes"`
}

// between is the time from the end of one step to the start of the next that cannot use the resource with it.
func (r Resource) between(a, b Need) quantity.Elapsed {
	for _, c := range r.Changes {
		if c.From == a.Program && c.To == b.Program {
			return c.Takes
		}
	}
	return r.Changeover
}

// apart reports whether two needs can never be met by the resource at the same time.
func (r Resource) apart(a, b Need) bool {
	return r.Capacity > 0 && a.Amount+b.Amount > r.Capacity ||
		a.Program != "" && b.Program != "" && a.Program != b.Program
}

// Span is a stretch of time from From up to but not including To.
type Span struct {
	From  time.Time       `json:"from"`
	To    time.Time       `json:"to"`
	Words working.Message `json:"words,omitzero"` // in the user's words: "away 09:00 to 15:00"
}

// Awkward is a span in which each minute of use costs PerMinute in the objective of Best.
type Awkward struct {
	From      time.Time `json:"from"`
	To        time.Time `json:"to"`
	PerMinute int       `json:"per_minute"`
}
