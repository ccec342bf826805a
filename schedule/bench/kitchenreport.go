package bench

import (
	"slices"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule"
	"example.org/maslin/schedule/bakeday"
)

// longestWait is the longest that is told in hours.
const longestWait = 24 * time.Hour

// String is the headline.
func (k KitchenNow) String() string { return k.headline().String() }

func (k KitchenNow) headline() working.Message {
	if len(k.Breads) == 0 {
		return working.Tell("bench.nothing_planned", "nothing is planned")
	}
	if len(k.Breads) == 1 {
		return k.Breads[0].headline()
	}
	names := make([]working.Message, len(k.Breads))
	for i, m := range k.Breads {
		names[i] = m.wanted(k.Now)
	}
	if !k.possible() {
		return working.Tell("bench.day_not_possible", "the plan for %d breads does not fit: %v", len(k.Breads),
			working.Join(names, "; "))
	}
	return working.Tell("bench.day_now", "%v; it is %x", working.Join(names, "; "), k.Now)
}

// possible reports whether every bread has its place in the plan.
func (k KitchenNow) possible() bool {
	return len(k.Breads) > 0 && !slices.ContainsFunc(k.Breads, func(m DayNow) bool { return !m.Day.Possible() })
}

// of is a sentence about one bread, where there are several.
func (k KitchenNow) of(m *DayNow, says working.Message) working.Message {
	if len(k.Breads) < 2 {
		return says
	}
	return working.Tell("bench.of_bread", "%s: %v", m.Name, says)
}

// mostLater is how many steps are shown behind the next one; of several breads twice as many.
const mostLater = 4

// Report tells what a baker needs at the bench, and no more: of all breads together what is under way, how each dough
// stands, what comes next, and what has changed.
func (k KitchenNow) Report() report.Report {
	r := report.Report{Headline: k.headline()}
	for _, m := range k.Breads {
		for _, says := range m.RestsOn {
			if says = k.of(&m, says); !slices.Contains(r.RestsOn, says) {
				r.RestsOn = append(r.RestsOn, says)
			}
		}
	}
	switch {
	case len(k.Breads) == 0:
		return r
	case k.possible():
		r.Cautions = k.cautions()
	case len(k.Breads) == 1:
		r.Sections = append(r.Sections, k.Breads[0].Day.Report().Section("why"))
		return r
	default:
		r.Sections = append(r.Sections, k.Day.DayReport().Section("why"))
		return r
	}
	add := func(key string, title working.Message, blocks ...report.Block) {
		if len(blocks) > 0 {
			r.Sections = append(r.Sections, report.Section{Key: key, Title: title, Blocks: blocks})
		}
	}
	begun := slices.ContainsFunc(k.Breads, func(m DayNow) bool { return m.Dough != nil })
	if k.Followed == nil && !begun {
		add("plan", working.Message{}, report.Say(working.Tell("bench.not_followed", "This is the plan if it is made now.")))
		whole := k.Day.DayReport
		if len(k.Breads) == 1 {
			whole = k.Breads[0].Day.Report
		}
		add("missed", working.Message{}, whole().Section("missed").Blocks...) // that it is for the week after
	}
	var doubts []report.Block
	for i := range k.Breads {
		doubts = append(doubts, k.Breads[i].doubts()...)
	}
	add("doubts", working.Tell("bench.title_doubts", "Is this so?"), doubts...)
	shown := map[string]bool{}
	var under []report.Block
	for _, s := range k.underWay() {
		line := working.Tell("bench.under_way", "%v, %v to %v", k.named(s), s.Start, s.End)
		under = append(under, k.blocks(s, line)...)
		shown[s.key()] = true
	}
	add("under_way", working.Tell("bench.title_under_way", "Under way"), under...)
	for i := range k.Breads {
		m := &k.Breads[i]
		add("dough", k.of(m, working.Tell("bench.title_dough", "The dough")), m.dough()...)
	}
	if next, ok := k.next(); ok && !shown[next.key()] {
		wait := next.Start.Sub(k.Now).Round(time.Minute)
		line := working.Tell("bench.next", "%v: %v (%v)", next.Start, k.named(next), next.Takes)
		title := working.Tell("bench.title_next", "Next, in %v", wait)
		if wait > longestWait { // a weekday alone could be this week's
			title = working.Tell("bench.title_next_on", "Next, on %x", next.Start)
		}
		add("next", title, k.blocks(next, line)...)
		shown[next.key()] = true
	}
	if next, ok := k.next(); ok && next.Start.After(k.Now) {
		if rows := k.later(shown, next.Start); len(rows) > 0 {
			add("until", working.Tell("bench.title_until", "Until then"), laterGrid("until", rows))
		}
	}
	add("changes", working.Tell("bench.title_changes", "The rest of the plan"), k.changes()...)
	if rows := k.later(shown, time.Time{}); len(rows) > 0 {
		add("later", working.Tell("bench.title_later", "After that"), laterGrid("later", rows))
	}
	if len(shown) == 0 {
		add("over", working.Message{}, report.Say(working.Tell("bench.over", "Nothing of this plan is left to do.")))
	}
	return r
}

func laterGrid(key string, rows [][]report.Cell) report.Grid {
	return report.Grid{Key: key, Columns: []report.GridColumn{{Key: "start"}, {Key: "hands"}, {Key: "step"}}, Rows: rows}
}

// later are the rows of what comes after what is shown, and before that time where there is one; they are shown then.
func (k KitchenNow) later(shown map[string]bool, before time.Time) [][]report.Cell {
	most := mostLater
	if len(k.Breads) > 1 {
		most *= 2
	}
	var rows [][]report.Cell
	for _, s := range k.onceEach(k.steps()) {
		if shown[s.key()] || s.of.done(s.StepData) || !s.Start.After(k.Now) || len(rows) == most ||
			!before.IsZero() && !s.Start.Before(before) {
			continue
		}
		shown[s.key()] = true
		hands := report.Cell{}
		if s.Hands {
			hands = report.Of(working.Tell("bench.hands", "hands"))
		}
		rows = append(rows, []report.Cell{report.Of(s.Start), hands, report.Of(k.named(s))})
	}
	return rows
}

// changes tell what of the plan is different, or that nothing fits any more.
func (k KitchenNow) changes() []report.Block {
	left := slices.ContainsFunc(k.steps(), func(s stepOf) bool { return s.End.After(k.Now) })
	if k.Changed == nil || !left {
		return nil
	}
	if k.Changed.Possible() {
		return k.Changed.Report().Section("changes").Blocks
	}
	out := []report.Block{
		report.Say(working.Tell("bench.fits_no_more", "the rest fits no more; these cannot all be kept:")),
	}
	if c := k.Changed.Timetable.Conflict; c != nil {
		var list report.List
		for _, x := range c.Members {
			if x.Enough && !x.Remedy.IsZero() {
				list = append(list, working.Tell("bench.member_enough", "%v — enough by itself: %v", x.Words, x.Remedy))
				continue
			}
			list = append(list, x.Words)
		}
		out = append(out, list)
	}
	return out
}

// rawDough is the subject of the caution that every room has in words of its own.
const rawDough working.Subject = "raw dough"

// cautions are those of what is under way or next, each once.
func (k KitchenNow) cautions() []working.Caution {
	steps := k.underWay()
	if next, ok := k.next(); ok {
		steps = append(steps, next)
	}
	var out []working.Caution
	seen, raw := map[working.Message]bool{}, false
	for _, s := range steps {
		for _, c := range s.of.hazards(s.Kind) {
			if seen[c.Message()] || raw && c.Subject == rawDough {
				continue
			}
			seen[c.Message()] = true
			raw = raw || c.Subject == rawDough
			out = append(out, c)
		}
	}
	return out
}

// stepOf is a step with the bread it belongs to.
type stepOf struct {
	bakeday.StepData
	of *DayNow
}

// blocks tell a step in a line, and what to do or look for.
func (k KitchenNow) blocks(s stepOf, line working.Message) []report.Block {
	out := []report.Block{report.Paragraph{Text: line, Tone: report.Strong}}
	if all := k.lookFor(s); len(all) > 0 {
		out = append(out, report.List(all))
	}
	return out
}

// lookFor is what to do or look for; a levain that feeds several doughs is weighed once for all.
func (k KitchenNow) lookFor(s stepOf) []working.Message {
	out := s.of.LookFor(s.StepData)
	if s.Kind == schedule.Mix {
		return append(k.wash(s), out...)
	}
	l := s.of.Day.Bake.Levain
	if s.Kind != schedule.Feed || l == nil || len(k.Breads) < 2 {
		return out
	}
	for _, list := range k.Day.Data().Levains {
		if list.Name == l.Name {
			out = append(weighed(list, 1), out...)
		}
	}
	return out
}

// named is a step by its name, with its bread where there are several. A levain that feeds several of them is told with
// its own name.
func (k KitchenNow) named(s stepOf) working.Message {
	if l := s.of.Day.Bake.Levain; l != nil && l.Name != "" && len(k.Breads) > 1 && s.Number == 0 {
		feeds := slices.DeleteFunc(slices.Clone(k.Day.Breads), func(d bakeday.Day) bool {
			return d.Bake.Levain == nil || d.Bake.Levain.Name != l.Name
		})
		names := make([]any, len(feeds))
		for i, d := range feeds {
			names[i] = working.Say("%s", d.Bake.Name)
		}
		switch {
		case len(feeds) < 2:
		case s.Kind == schedule.Feed:
			return working.Tell("bench.feed_shared", "feed %s, for %v", l.Name, working.And(names...))
		case s.Kind == schedule.Ripen:
			return working.Tell("bench.ripens_shared", "%s ripens, for %v", l.Name, working.And(names...))
		}
	}
	return k.of(s.of, s.Name)
}

func (s stepOf) key() string { return s.of.Name + "/" + s.ID }

// steps are those of all breads, in order of time.
func (k KitchenNow) steps() []stepOf {
	var out []stepOf
	for i := range k.Breads {
		out = append(out, k.Breads[i].owned(k.Breads[i].Steps)...)
	}
	slices.SortStableFunc(out, func(a, b stepOf) int { return a.Start.Compare(b.Start) })
	return out
}

func (m *DayNow) owned(steps []bakeday.StepData) []stepOf {
	var out []stepOf
	for _, s := range steps {
		out = append(out, stepOf{s, m})
	}
	return out
}

// underWay lists what is going on, of all breads: first what needs hands.
func (k KitchenNow) underWay() []stepOf {
	var out []stepOf
	for i := range k.Breads {
		out = append(out, k.Breads[i].owned(k.Breads[i].UnderWay())...)
	}
	slices.SortStableFunc(out, func(a, b stepOf) int {
		if a.Hands != b.Hands {
			if a.Hands {
				return -1
			}
			return 1
		}
		return a.Start.Compare(b.Start)
	})
	return k.onceEach(out)
}

// onceEach leaves a levain that ripens for several doughs in the list once, until the last of them takes it.
func (k KitchenNow) onceEach(all []stepOf) []stepOf {
	at := map[string]int{}
	var out []stepOf
	for _, s := range all {
		l := s.of.Day.Bake.Levain
		if s.Kind != schedule.Ripen || s.Number > 0 || l == nil || l.Name == "" {
			out = append(out, s)
			continue
		}
		first, known := at[l.Name]
		if !known {
			at[l.Name] = len(out)
			out = append(out, s)
		} else if s.End.After(out[first].End) {
			out[first].End, out[first].Takes = s.End, quantity.Elapsed(s.End.Sub(out[first].Start))
		}
	}
	return out
}

// next is what needs hands now or next, of all breads.
func (k KitchenNow) next() (next stepOf, ok bool) {
	for i := range k.Breads {
		s, has := k.Breads[i].Next()
		if has && (!ok || s.Start.Before(next.Start)) {
			next, ok = stepOf{s, &k.Breads[i]}, true
		}
	}
	return next, ok
}
