package schedule

import (
	"fmt"
	"strconv"
	"time"
	"unicode/utf8"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/planner"
)

// Limits on the size of a problem.
const (
	maxHorizon = 90 * 24 * time.Hour
	maxSteps   = 2000
	maxItems   = 20000 // links, bounds, spans of one resource
	maxName    = 200   // bytes
	maxPoints  = 1_000_000
	maxAmount  = 1_000_000
)

// compiled is a problem in whole units of the grid.
type compiled struct {
	in     Problem
	grid   time.Duration
	limit  int // the horizon
	index  map[string]int
	res    map[string]int
	rules  []rule
	net    *planner.Net
	wanted []wantedArc

	lo, hi   []int // the durations planned with
	capacity []int // the rule of each resource's capacity
}

// rule is one named constraint, the thing a conflict is made of.
type rule struct {
	kind     Rule
	words    string
	step     string
	other    string
	link     Kind // of a link
	amount   int  // the limit in units: a duration, a time, or a capacity
	from, to int  // of an absence
	index    int  // of the resource, for Absence and Capacity
	wanted   bool
}

// wantedArc remembers which arcs of the network belong to wanted bounds.
type wantedArc struct {
	arc   int
	bound int
}

// structure is the rule number of arcs that are part of what a step is.
const structure = -1

func (p Problem) compile() (*compiled, error) {
	c := &compiled{in: p, grid: p.Grid}
	if c.grid == 0 {
		c.grid = time.Minute
	}
	var bad quantity.Problems
	c.frame(&bad)
	if bad.Err() != nil { // nothing else can be read without a frame
		return nil, bad.Err()
	}
	c.checkSizes(&bad)
	if bad.Err() != nil {
		return nil, bad.Err()
	}
	c.net = &planner.Net{Events: 1 + 2*len(p.Steps), Limit: c.limit}
	c.resourceNames(&bad)
	c.steps(&bad)
	c.links(&bad)
	c.bounds(&bad)
	c.resources(&bad)
	c.alike(&bad)
	if err := bad.Err(); err != nil {
		return nil, err
	}
	return c, nil
}

func (c *compiled) frame(bad *quantity.Problems) {
	p := c.in
	if p.Anchor.IsZero() {
		bad.Required("Anchor", "the instant at which the plan may begin")
	} else if y := p.Anchor.Year(); y < 1900 || y > 2200 {
		bad.Add("Anchor", p.Anchor.Format(time.DateOnly), "a year from 1900 to 2200", quantity.ErrOutOfRange)
	}
	if c.grid < time.Minute || c.grid > 24*time.Hour || c.grid%time.Minute != 0 {
		bad.Add("Grid", c.grid.String(), "whole minutes, 1m to 24h", quantity.ErrOutOfRange)
		return
	}
	switch {
	case p.Horizon == 0:
		bad.Required("Horizon", "how long after Anchor the plan may end")
	case p.Horizon < c.grid || p.Horizon > maxHorizon:
		bad.Add("Horizon", p.Horizon.String(), c.grid.String()+" to "+maxHorizon.String(), quantity.ErrOutOfRange)
	case p.Horizon%c.grid != 0:
		bad.Add("Horizon", p.Horizon.String(), "a multiple of "+c.grid.String(), quantity.ErrTooPrecise)
	}
	c.limit = int(p.Horizon / c.grid)
	if p.Effort < 0 {
		bad.Add("Effort", strconv.Itoa(p.Effort), "0 or more", quantity.ErrOutOfRange)
	}
}

func (c *compiled) checkSizes(bad *quantity.Problems) {
	p := c.in
	if len(p.Steps) == 0 {
		bad.Required("Steps", "at least one step")
	}
	size := func(path string, got, most int) {
		if got > most {
			bad.Add(path, strconv.Itoa(got)+" entries", "at most "+strconv.Itoa(most), quantity.ErrOutOfRange)
		}
	}
	size("Steps", len(p.Steps), maxSteps)
	size("Links", len(p.Links), maxItems)
	size("Bounds", len(p.Bounds), maxItems)
	size("Resources", len(p.Resources), maxSteps)
	size("Alike", len(p.Alike), maxSteps)
	for i, r := range p.Resources {
		size(fmt.Sprintf("Resources[%d].Closed", i), len(r.Closed), maxItems)
		size(fmt.Sprintf("Resources[%d].Awkward", i), len(r.Awkward), maxItems)
	}
	for i, s := range p.Steps {
		size(fmt.Sprintf("Steps[%d].Needs", i), len(s.Needs), 100)
	}
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

func name(bad *quantity.Problems, path, s, what string) bool {
	switch {
	case s == "":
		bad.Required(path, what)
	case len(s) > maxName || !utf8.ValidString(s):
		bad.Add(path, quote(s), "valid UTF-8, at most "+strconv.Itoa(maxName)+" bytes", quantity.ErrOutOfRange)
	default:
		return true
	}
	return false
}

func words(bad *quantity.Problems, path, s string) {
	if s != "" {
		name(bad, path, s, "")
	}
}

// units turns a duration into whole units of the grid.
func (c *compiled) units(bad *quantity.Problems, path string, d time.Duration) int {
	if d%c.grid != 0 {
		bad.Add(path, d.String(), "a multiple of "+quantity.FormatDuration(c.grid), quantity.ErrTooPrecise)
	}
	if d > 2*maxHorizon || d < -2*maxHorizon {
		bad.Add(path, d.String(), "within "+(2*maxHorizon).String(), quantity.ErrOutOfRange)
		return 0
	}
	return int(d / c.grid)
}

// farAway is further than any sum of durations inside a plan.
const farAway = 1 << 20

// floor and ceil place an instant on the grid; instants years away are brought to farAway,
// where they mean the same.
func (c *compiled) floor(t time.Time) int {
	d := t.Sub(c.in.Anchor) // saturates
	u := int64(d / c.grid)
	if d%c.grid < 0 {
		u--
	}
	return int(max(-farAway, min(u, farAway)))
}

func (c *compiled) ceil(t time.Time) int {
	d := t.Sub(c.in.Anchor)
	u := int64(d / c.grid)
	if d%c.grid > 0 {
		u++
	}
	return int(max(-farAway, min(u, farAway)))
}

func (c *compiled) when(unit int) time.Time {
	return c.in.Anchor.Add(time.Duration(unit) * c.grid)
}

func (c *compiled) long(units int) time.Duration { return time.Duration(units) * c.grid }

// say prints a duration for people.
func (c *compiled) say(units int) string { return quantity.FormatDuration(c.long(units)) }

// clock prints an instant for people, in the zone of the anchor.
func (c *compiled) clock(unit int) string { return c.when(unit).Format("Mon 15:04") }

func (c *compiled) rule(r rule) int {
	c.rules = append(c.rules, r)
	return len(c.rules) - 1
}

func (c *compiled) arc(from, to, w, rule int) {
	c.net.Arcs = append(c.net.Arcs, planner.Arc{From: from, To: to, W: w, Rule: rule})
}

// upper adds the arc of an upper limit: x[from] is at most w after x[to].
func (c *compiled) upper(from, to, w, rule int) {
	c.net.Arcs = append(c.net.Arcs, planner.Arc{From: from, To: to, W: -w, Rule: rule, Upper: true})
}

func either(given, made string) string {
	if given != "" {
		return given
	}
	return made
}

func (c *compiled) resourceNames(bad *quantity.Problems) {
	c.res = map[string]int{}
	for i, r := range c.in.Resources {
		path := fmt.Sprintf("Resources[%d].Name", i)
		if name(bad, path, r.Name, "a name") {
			if _, twice := c.res[r.Name]; twice {
				bad.Add(path, quote(r.Name), "a name used once", quantity.ErrInconsistent)
			}
			c.res[r.Name] = i
		}
	}
}

func (c *compiled) steps(bad *quantity.Problems) {
	c.index = map[string]int{}
	anchor := c.rule(rule{kind: Limits, words: "nothing before " + c.clock(0)})
	horizon := c.rule(rule{kind: Limits, words: "everything done by " + c.clock(c.limit), amount: c.limit})
	for i, s := range c.in.Steps {
		path := fmt.Sprintf("Steps[%d]", i)
		if name(bad, path+".Name", s.Name, "a name") {
			if _, twice := c.index[s.Name]; twice {
				bad.Add(path+".Name", quote(s.Name), "a name used once", quantity.ErrInconsistent)
			}
			c.index[s.Name] = i
		}
		words(bad, path+".MinWords", s.MinWords)
		words(bad, path+".MaxWords", s.MaxWords)
		lo, hi := c.lengths(bad, path, s)
		c.lo, c.hi = append(c.lo, lo), append(c.hi, hi)
		if s.Watch != "" {
			if _, ok := c.res[s.Watch]; !ok {
				bad.Add(path+".Watch", quote(s.Watch), "the name of a resource", quantity.ErrInconsistent)
			}
		}
		bad.Int(path+".PerMinute", s.PerMinute, -maxPoints, maxPoints)
		c.needs(bad, path, s, lo, hi)

		start, end := planner.StartOf(i), planner.EndOf(i)
		c.arc(0, start, 0, anchor)
		c.arc(0, end, 0, anchor)
		c.upper(start, 0, c.limit, horizon)
		c.upper(end, 0, c.limit, horizon)
		c.arc(start, end, 0, structure)
		// Without the frame of the plan every event still has a time.
		c.arc(0, start, -2*farAway, structure)
		c.upper(end, 0, 2*farAway, structure)
		if lo == hi {
			made := s.Name + " takes " + c.say(lo)
			if s.Living {
				made = s.Name + " likely takes " + c.say(lo)
			}
			r := c.rule(rule{kind: StepExact, words: either(either(s.MinWords, s.MaxWords), made), step: s.Name, amount: lo})
			c.arc(start, end, lo, r)
			c.upper(end, start, hi, r)
			continue
		}
		if lo > 0 {
			c.arc(start, end, lo, c.rule(rule{kind: StepMin, words: either(s.MinWords, s.Name+" takes at least "+c.say(lo)), step: s.Name, amount: lo}))
		}
		if hi < c.limit {
			c.upper(end, start, hi, c.rule(rule{kind: StepMax, words: either(s.MaxWords, s.Name+" takes at most "+c.say(hi)), step: s.Name, amount: hi}))
		}
	}
}

// lengths reads how long a step may take in the plan.
func (c *compiled) lengths(bad *quantity.Problems, path string, s Step) (lo, hi int) {
	if s.Min < 0 {
		bad.Add(path+".Min", s.Min.String(), "0 or more", quantity.ErrOutOfRange)
		return 0, 0
	}
	lo = c.units(bad, path+".Min", s.Min)
	switch {
	case s.Max < 0:
		bad.Add(path+".Max", s.Max.String(), "0 or more", quantity.ErrOutOfRange)
		return lo, lo
	case s.Max == 0:
		hi = lo
	case s.Max == NoLimit:
		hi = max(lo, c.limit)
	case s.Max < s.Min:
		bad.Add(path+".Max", s.Max.String(), "at least Min, "+s.Min.String(), quantity.ErrInconsistent)
		return lo, lo
	default:
		hi = c.units(bad, path+".Max", s.Max)
	}
	if !s.Living {
		if s.Likely != 0 {
			bad.Add(path+".Likely", s.Likely.String(), "nothing, for a step that is not Living", quantity.ErrInconsistent)
		}
		return lo, hi
	}
	if s.Max == NoLimit {
		bad.Add(path+".Max", "no limit", "a longest duration, for a living step", quantity.ErrInconsistent)
		return lo, lo
	}
	likely := (lo + hi) / 2
	if s.Likely != 0 {
		likely = c.units(bad, path+".Likely", s.Likely)
		if likely < lo || likely > hi {
			bad.Add(path+".Likely", s.Likely.String(), c.say(lo)+" to "+c.say(hi), quantity.ErrInconsistent)
		}
	}
	return likely, likely
}

func (c *compiled) needs(bad *quantity.Problems, path string, s Step, lo, hi int) {
	seen := map[string]bool{}
	for k, n := range s.Needs {
		at := fmt.Sprintf("%s.Needs[%d]", path, k)
		i, ok := c.res[n.Resource]
		if !ok {
			bad.Add(at+".Resource", quote(n.Resource), "the name of a resource", quantity.ErrInconsistent)
			continue
		}
		if seen[n.Resource] {
			bad.Add(at+".Resource", quote(n.Resource), "each resource once in a step", quantity.ErrInconsistent)
		}
		seen[n.Resource] = true
		words(bad, at+".Program", n.Program)
		r := c.in.Resources[i]
		if !bad.Int(at+".Amount", n.Amount, 1, maxAmount) {
			continue
		}
		if r.Capacity > 0 && n.Amount > r.Capacity {
			bad.Add(at+".Amount", strconv.Itoa(n.Amount), fmt.Sprintf("at most %d, all there is of %s", r.Capacity, quote(n.Resource)), quantity.ErrInconsistent)
		}
		if (r.Capacity > 0 || n.Program != "") && lo == 0 && hi > 0 {
			bad.Add(path+".Min", "0", "at least "+c.say(1)+", for a step that shares "+quote(n.Resource), quantity.ErrInconsistent)
		}
	}
}

func (c *compiled) links(bad *quantity.Problems) {
	for i, l := range c.in.Links {
		path := fmt.Sprintf("Links[%d]", i)
		from, okFrom := c.index[l.From]
		to, okTo := c.index[l.To]
		if !okFrom {
			bad.Add(path+".From", quote(l.From), "the name of a step", quantity.ErrInconsistent)
		}
		if !okTo {
			bad.Add(path+".To", quote(l.To), "the name of a step", quantity.ErrInconsistent)
		}
		words(bad, path+".MinWords", l.MinWords)
		words(bad, path+".MaxWords", l.MaxWords)
		var a, b int
		switch l.Kind {
		case EndToStart:
			a, b = planner.EndOf(from), planner.StartOf(to)
		case StartToStart:
			a, b = planner.StartOf(from), planner.StartOf(to)
		case EndToEnd:
			a, b = planner.EndOf(from), planner.EndOf(to)
		case StartToEnd:
			a, b = planner.StartOf(from), planner.EndOf(to)
		default:
			bad.Add(path+".Kind", strconv.Itoa(int(l.Kind)), "EndToStart, StartToStart, EndToEnd or StartToEnd", quantity.ErrOutOfRange)
			continue
		}
		if l.Min > l.Max {
			bad.Add(path+".Max", l.Max.String(), "at least Min, "+l.Min.String(), quantity.ErrInconsistent)
			continue
		}
		if l.Min == NoLimit {
			bad.Add(path+".Min", "no limit", "a duration, or -NoLimit", quantity.ErrOutOfRange)
			continue
		}
		if l.Max == -NoLimit {
			bad.Add(path+".Max", "no limit downward", "a duration, or NoLimit", quantity.ErrOutOfRange)
			continue
		}
		if !okFrom || !okTo {
			continue
		}
		if l.Min == l.Max {
			u := c.units(bad, path+".Min", l.Min)
			r := c.rule(rule{kind: LinkExact, words: either(either(l.MinWords, l.MaxWords), c.linkWords(l, u, true)), step: l.From, other: l.To, link: l.Kind, amount: u})
			c.arc(a, b, u, r)
			c.upper(b, a, u, r)
			continue
		}
		if l.Min != -NoLimit {
			u := c.units(bad, path+".Min", l.Min)
			c.arc(a, b, u, c.rule(rule{kind: LinkMin, words: either(l.MinWords, c.linkWords(l, u, true)), step: l.From, other: l.To, link: l.Kind, amount: u}))
		}
		if l.Max != NoLimit {
			u := c.units(bad, path+".Max", l.Max)
			c.upper(b, a, u, c.rule(rule{kind: LinkMax, words: either(l.MaxWords, c.linkWords(l, u, false)), step: l.From, other: l.To, link: l.Kind, amount: u}))
		}
	}
}

// linkWords says a link limit when the user did not.
func (c *compiled) linkWords(l Link, units int, least bool) string {
	verbs := [...][2]string{EndToStart: {"ends", "starts"}, StartToStart: {"starts", "starts"}, EndToEnd: {"ends", "ends"}, StartToEnd: {"starts", "ends"}}[l.Kind]
	if l.Kind == EndToStart && units == 0 {
		if l.Min == 0 && l.Max == 0 {
			return l.To + " follows " + l.From + " at once"
		}
		if least {
			return l.To + " comes after " + l.From
		}
	}
	side := "at most"
	if least {
		side = "at least"
	}
	if l.Min == l.Max {
		side = "exactly"
	}
	order := "after"
	if units < 0 {
		units, order = -units, "before"
		switch side {
		case "at most":
			side = "at least"
		case "at least":
			side = "at most"
		}
	}
	return fmt.Sprintf("%s %s %s %s %s %s %s", l.To, verbs[1], side, c.say(units), order, l.From, verbs[0])
}

func (c *compiled) bounds(bad *quantity.Problems) {
	for i, b := range c.in.Bounds {
		path := fmt.Sprintf("Bounds[%d]", i)
		step, ok := c.index[b.Step]
		if !ok {
			bad.Add(path+".Step", quote(b.Step), "the name of a step", quantity.ErrInconsistent)
		}
		words(bad, path+".Words", b.Words)
		if b.Edge != Start && b.Edge != End {
			bad.Add(path+".Edge", strconv.Itoa(int(b.Edge)), "Start or End", quantity.ErrOutOfRange)
			continue
		}
		bad.Int(path+".EarlyPerMinute", b.EarlyPerMinute, 0, maxPoints)
		bad.Int(path+".LatePerMinute", b.LatePerMinute, 0, maxPoints)
		early, late := !b.Earliest.IsZero(), !b.Latest.IsZero()
		if !early && !late {
			bad.Required(path, "Earliest or Latest")
			continue
		}
		if b.EarlyPerMinute != 0 && !late {
			bad.Add(path+".EarlyPerMinute", strconv.Itoa(b.EarlyPerMinute), "0 without Latest", quantity.ErrInconsistent)
		}
		if b.LatePerMinute != 0 && !early {
			bad.Add(path+".LatePerMinute", strconv.Itoa(b.LatePerMinute), "0 without Earliest", quantity.ErrInconsistent)
		}
		if early && late && b.Earliest.After(b.Latest) {
			bad.Add(path+".Latest", b.Latest.Format(time.RFC3339), "not before Earliest, "+b.Earliest.Format(time.RFC3339), quantity.ErrInconsistent)
			continue
		}
		if early && b.Earliest.Equal(b.Latest) && b.Earliest.Sub(c.in.Anchor)%c.grid != 0 {
			bad.Add(path+".Earliest", b.Earliest.Format(time.RFC3339), "a time on the grid of "+c.grid.String(), quantity.ErrTooPrecise)
			continue
		}
		if !ok {
			continue
		}
		event, verb := planner.StartOf(step), "starts"
		if b.Edge == End {
			event, verb = planner.EndOf(step), "ends"
		}
		if early && b.Earliest.Equal(b.Latest) {
			u := c.ceil(b.Earliest)
			r := c.rule(rule{kind: FixedTime, words: either(b.Words, b.Step+" "+verb+" at "+c.clock(u)), step: b.Step, amount: u, wanted: b.Wanted})
			c.note(b, i)
			c.arc(0, event, u, r)
			c.note(b, i)
			c.upper(event, 0, u, r)
			continue
		}
		if early {
			u := c.ceil(b.Earliest)
			r := c.rule(rule{kind: NotBefore, words: either(b.Words, b.Step+" "+verb+" no earlier than "+c.clock(u)), step: b.Step, amount: u, wanted: b.Wanted})
			c.note(b, i)
			c.arc(0, event, u, r)
		}
		if late {
			u := c.floor(b.Latest)
			r := c.rule(rule{kind: NotAfter, words: either(b.Words, b.Step+" "+verb+" by "+c.clock(u)), step: b.Step, amount: u, wanted: b.Wanted})
			c.note(b, i)
			c.upper(event, 0, u, r)
		}
	}
}

// note remembers that the next arc belongs to a wanted bound.
func (c *compiled) note(b Bound, i int) {
	if b.Wanted {
		c.wanted = append(c.wanted, wantedArc{arc: len(c.net.Arcs), bound: i})
	}
}

func (c *compiled) resources(bad *quantity.Problems) {
	users := make([][]int, len(c.in.Resources))
	for i, s := range c.in.Steps {
		for _, n := range s.Needs {
			if r, ok := c.res[n.Resource]; ok {
				users[r] = append(users[r], i)
			}
		}
	}
	for k, r := range c.in.Resources {
		path := fmt.Sprintf("Resources[%d]", k)
		words(bad, path+".Words", r.Words)
		bad.Int(path+".Capacity", r.Capacity, 0, maxAmount)
		if r.Changeover < 0 {
			bad.Add(path+".Changeover", r.Changeover.String(), "0 or more", quantity.ErrOutOfRange)
		} else {
			c.units(bad, path+".Changeover", r.Changeover)
		}
		made := fmt.Sprintf("%s: %d at a time", r.Name, r.Capacity)
		if r.Capacity == 0 {
			made = r.Name + ": one program at a time"
		}
		c.capacity = append(c.capacity, c.rule(rule{kind: Capacity, words: either(r.Words, made), other: r.Name, amount: r.Capacity, index: k}))
		for j, s := range r.Closed {
			at := fmt.Sprintf("%s.Closed[%d]", path, j)
			words(bad, at+".Words", s.Words)
			if !span(bad, at, s.From, s.To) {
				continue
			}
			from, to := c.floor(s.From), c.ceil(s.To)
			if to <= 0 || from >= c.limit {
				continue // outside the plan
			}
			made := r.Name + " away " + c.when(from).Format("Mon 15:04") + " to " + c.when(to).Format("Mon 15:04")
			id := c.rule(rule{kind: Absence, words: either(s.Words, made), other: r.Name, from: from, to: to, index: k})
			for _, u := range users[k] {
				c.net.Holes = append(c.net.Holes, planner.Hole{Task: u, From: from, To: to, Rule: id})
			}
		}
		for j, a := range r.Awkward {
			at := fmt.Sprintf("%s.Awkward[%d]", path, j)
			bad.Int(at+".PerMinute", a.PerMinute, 0, maxPoints)
			if !span(bad, at, a.From, a.To) {
				continue
			}
			if a.From.Sub(c.in.Anchor)%c.grid != 0 || a.To.Sub(c.in.Anchor)%c.grid != 0 {
				bad.Add(at, a.From.Format(time.RFC3339)+" to "+a.To.Format(time.RFC3339), "times on the grid of "+c.grid.String(), quantity.ErrTooPrecise)
			}
		}
	}
}

func span(bad *quantity.Problems, path string, from, to time.Time) bool {
	switch {
	case from.IsZero():
		bad.Required(path+".From", "an instant")
	case to.IsZero():
		bad.Required(path+".To", "an instant")
	case !from.Before(to):
		bad.Add(path+".To", to.Format(time.RFC3339), "after From, "+from.Format(time.RFC3339), quantity.ErrInconsistent)
	default:
		return true
	}
	return false
}

func (c *compiled) alike(bad *quantity.Problems) {
	for i, group := range c.in.Alike {
		for j, s := range group {
			to, ok := c.index[s]
			if !ok {
				bad.Add(fmt.Sprintf("Alike[%d][%d]", i, j), quote(s), "the name of a step", quantity.ErrInconsistent)
				continue
			}
			if j == 0 {
				continue
			}
			if from, ok := c.index[group[j-1]]; ok {
				r := c.rule(rule{kind: InOrder, words: s + " starts no earlier than " + group[j-1], step: group[j-1], other: s})
				c.arc(planner.StartOf(from), planner.StartOf(to), 0, r)
			}
		}
	}
}
