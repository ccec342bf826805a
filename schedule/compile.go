package schedule

import (
	"fmt"
	"strconv"
	"time"
	"unicode/utf8"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/planner"
)

// Limits on the size of a problem.
const (
	maxHorizon = quantity.Elapsed(90 * 24 * time.Hour)
	maxSteps   = 2000
	maxItems   = 20000     // links, bounds, spans of one resource
	maxSpans   = 200_000   // closed and awkward spans of all resources
	maxMeets   = 1_000_000 // closed and awkward spans times the steps they concern
	maxName    = 200       // bytes
	maxPoints  = 1_000_000
	maxAmount  = 1_000_000
)

// compiled is a problem in whole units of the grid.
type compiled struct {
	in     Problem
	grid   quantity.Elapsed
	limit  int // the horizon
	index  map[string]int
	res    map[string]int
	rules  []rule
	net    *planner.Net
	wanted []wantedArc

	lo, hi   []int               // the durations planned with
	capacity []int               // the rule of each resource's capacity
	absences [][]planner.Closing // of each resource
}

// rule is one named constraint, the thing a conflict is made of.
type rule struct {
	kind     Rule
	given    working.Message        // in the words of the user
	made     func() working.Message // or else made when they are asked for
	step     string
	other    string
	link     LinkKind // of a link
	amount   int      // the limit in units: a duration, a time, or a capacity
	from, to int      // of an absence
	index    int      // of the resource, for Absence and Capacity
	wanted   bool
	firm     bool // no change of it is looked for
}

// wantedArc remembers which arcs of the network belong to wanted bounds.
type wantedArc struct {
	arc   int
	bound int
}

// structure is the rule number of arcs that are part of what a step is.
const structure = -1

// compile reads the problem, or says all that is wrong with it.
func (p Problem) compile() (*compiled, error) {
	c := &compiled{in: p, grid: p.grid()}
	var bad quantity.Problems
	c.frame(&bad)
	if bad.Err() != nil { // nothing else can be read without a frame
		return nil, bad.ErrFor(p)
	}
	c.checkSizes(&bad)
	if bad.Err() != nil {
		return nil, bad.ErrFor(p)
	}
	// Mostly a step makes three rules, a link two, a bound and an absence one, and of arcs about twice as many.
	rules := 8 + 3*len(p.Steps) + 2*len(p.Links) + len(p.Bounds)
	c.rules = make([]rule, 0, rules)
	c.net = &planner.Net{Events: 1 + 2*len(p.Steps), Limit: c.limit, Arcs: make([]planner.Arc, 0, 2*rules)}
	c.resourceNames(&bad)
	c.steps(&bad)
	c.links(&bad)
	c.bounds(&bad)
	c.resources(&bad)
	c.alike(&bad)
	if err := bad.ErrFor(p); err != nil {
		return nil, err
	}
	return c, nil
}

// frame reads when the plan may be, and the grid.
func (c *compiled) frame(bad *quantity.Problems) {
	p := c.in
	if p.Anchor.IsZero() {
		bad.Required("Anchor", quantity.Tell("schedule.want_instant_at_which_plan_may",
			"the instant at which the plan may begin"))
	} else if y := p.Anchor.Year(); y < 1900 || y > 2200 {
		bad.Add("Anchor", p.Anchor.Format(time.DateOnly),
			quantity.Tell("schedule.want_year_from_1900_to_2200", "a year from 1900 to 2200"), quantity.ErrOutOfRange)
	}
	if c.grid < minute || c.grid > 24*60*minute || c.grid%minute != 0 {
		bad.Add("Grid", c.grid, quantity.Tell("schedule.want_whole_minutes_1m_to_24h", "whole minutes, 1m to 24h"),
			quantity.ErrOutOfRange)
		return
	}
	switch {
	case p.Horizon == 0:
		bad.Required("Horizon", quantity.Tell("schedule.want_how_long_after_beginning_plan",
			"how long after its beginning the plan may end"))
	case p.Horizon < c.grid || p.Horizon > maxHorizon:
		bad.Add("Horizon", p.Horizon, quantity.Tell("schedule.want_to", "%v to %v", c.grid, maxHorizon),
			quantity.ErrOutOfRange)
	case p.Horizon%c.grid != 0:
		bad.Add("Horizon", p.Horizon, quantity.Tell("schedule.want_multiple", "a multiple of %v", c.grid),
			quantity.ErrTooPrecise)
	}
	c.limit = int(p.Horizon / c.grid)
	if p.Effort < 0 {
		bad.Add("Effort", p.Effort, quantity.Tell("schedule.want_0_or_more", "0 or more"), quantity.ErrOutOfRange)
	}
}

// checkSizes refuses what would take too much memory to read.
func (c *compiled) checkSizes(bad *quantity.Problems) {
	p := c.in
	if len(p.Steps) == 0 {
		bad.Required("Steps", quantity.Tell("schedule.want_at_least_one_step", "at least one step"))
	}
	size := func(path string, got, most int) {
		if got > most {
			bad.Add(path, quantity.Tell("schedule.got_entries", "%d entries", got),
				quantity.Tell("schedule.want_at_most", "at most %d", most), quantity.ErrOutOfRange)
		}
	}
	size("Steps", len(p.Steps), maxSteps)
	size("Links", len(p.Links), maxItems)
	size("Bounds", len(p.Bounds), maxItems)
	size("Resources", len(p.Resources), maxSteps)
	size("Alike", len(p.Alike), maxSteps)
	spans, meets := 0, 0
	users := map[string]int{}
	for _, s := range p.Steps {
		for _, n := range s.Needs {
			users[n.Resource]++
		}
	}
	for i, r := range p.Resources {
		n := min(len(r.Closed), maxItems) + min(len(r.Awkward), maxItems)
		spans = min(spans+n, maxSpans+1)
		meets = min(meets+n*min(users[r.ID], maxSteps), maxMeets+1)
		size(fmt.Sprintf("Resources[%d].Closed", i), len(r.Closed), maxItems)
		size(fmt.Sprintf("Resources[%d].Changes", i), len(r.Changes), maxSteps)
		size(fmt.Sprintf("Resources[%d].Awkward", i), len(r.Awkward), maxItems)
	}
	for i, s := range p.Steps {
		size(fmt.Sprintf("Steps[%d].Needs", i), len(s.Needs), 100)
	}
	if spans > maxSpans {
		bad.Add("Resources", quantity.Tell("schedule.got_more", "more"),
			quantity.Tell("schedule.want_at_most_closed_and_awkward", "at most %d closed and awkward spans in all", maxSpans),
			quantity.ErrOutOfRange)
	}
	if meets > maxMeets {
		bad.Add(
			"Resources",
			quantity.Tell("schedule.got_more", "more"),
			quantity.Tell("schedule.want_at_most_closed_and_awkward_spans",
				"at most %d closed and awkward spans, each counted for every step that needs the resource", maxMeets),
			quantity.ErrOutOfRange,
		)
	}
}

// rule adds a rule and returns its number.
func (c *compiled) rule(r rule) int {
	c.rules = append(c.rules, r)
	return len(c.rules) - 1
}

// arc adds the arc of a lower limit: x[to] is at least w after x[from].
func (c *compiled) arc(from, to, w, rule int) {
	c.net.Arcs = append(c.net.Arcs, planner.Arc{From: from, To: to, W: w, Rule: rule})
}

// upper adds the arc of an upper limit: x[from] is at most w after x[to].
func (c *compiled) upper(from, to, w, rule int) {
	c.net.Arcs = append(c.net.Arcs, planner.Arc{From: from, To: to, W: -w, Rule: rule, Upper: true})
}

// quote shows at most 32 bytes of a text given by the user.
func quote(s string) string {
	if len(s) <= 32 {
		return strconv.Quote(s)
	}
	cut := 32
	for cut > 0 && !utf8.RuneStart(s[cut]) {
		cut--
	}
	return strconv.Quote(s[:cut]) + "…"
}

// name checks a required text and reports whether it can be used.
func name(bad *quantity.Problems, path, s string, what quantity.Phrase) bool {
	switch {
	case s == "":
		bad.Required(path, what)
	case len(s) > maxName || !utf8.ValidString(s):
		bad.Add(path, quote(s), quantity.Tell("schedule.want_valid_utf_8_at_most", "valid UTF-8, at most %d bytes",
			maxName), quantity.ErrOutOfRange)
	default:
		return true
	}
	return false
}

// words checks optional words. A sentence of the library was checked where its names came from.
func words(bad *quantity.Problems, path string, m working.Message) {
	if m.ID() != "" {
		return
	}
	if s := m.String(); s != "" {
		name(bad, path, s, quantity.Phrase{})
	}
}

// program checks an optional text.
func program(bad *quantity.Problems, path, s string) {
	if s != "" {
		name(bad, path, s, quantity.Phrase{})
	}
}

// words says the rule, in the user's words if there are any.
func (r rule) words() working.Message {
	if r.given.IsZero() {
		return r.made()
	}
	return r.given
}

// either is the first words that were given.
func either(a, b working.Message) working.Message {
	if !a.IsZero() {
		return a
	}
	return b
}

// title is what people call a step.
func (c *compiled) title(id string) working.Message {
	if i, ok := c.index[id]; ok {
		return c.in.Steps[i].label().Title()
	}
	return Label{ID: id}.Title()
}

// grid is the unit of all times of the problem.
func (p Problem) grid() quantity.Elapsed {
	if p.Grid == 0 {
		return minute
	}
	return p.Grid
}
