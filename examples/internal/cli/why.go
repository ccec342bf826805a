package cli

import (
	"fmt"
	"slices"
	"strings"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule/bakeday"
)

// obstacle is a rule that is in the way, and how often it is.
type obstacle struct {
	bakeday.RuleSheet
	times int
}

// obstacles are the rules of a conflict, the same ones together.
func obstacles(w *bakeday.WhySheet) []obstacle {
	var out []obstacle
	at := map[bakeday.RuleSheet]int{}
	for _, r := range w.Rules {
		if i, ok := at[r]; ok {
			out[i].times++
			continue
		}
		at[r] = len(out)
		out = append(out, obstacle{r, 1})
	}
	return out
}

func (o obstacle) String() string {
	text := printable(o.Words)
	if o.times > 1 {
		text += fmt.Sprintf(" (%d times)", o.times)
	}
	return text
}

// notPossible says that the wanted time cannot be met: first the nearest that works and what is in
// the way, then everything that cannot be kept together. The line above has said what is wanted.
func notPossible(p *page, s bakeday.Sheet) {
	w := s.Why
	if w == nil {
		p.para(0, p.warn("It cannot be done:")+" no timetable was found")
		return
	}
	first := "It cannot be done"
	if w.Short > 0 {
		first = "It misses by " + w.Short.String()
	}
	p.para(0, p.warn(first+".")+" "+nearestWords(s))
	if len(w.Rules) == 0 {
		p.para(0, "In the way: "+printable(w.Says))
		return
	}
	all := obstacles(w)
	p.para(0, "In the way: "+inTheWay(all))
	p.heading("What cannot all be kept")
	for _, o := range all {
		line := "· " + o.String()
		if o.Remedy != "" {
			line += " — enough by itself: " + printable(o.Remedy)
		}
		p.para(4, line)
	}
	if w.InOrder {
		p.para(4, "· each step follows the one before it")
	}
}

// nearestWords are the nearest wanted times that work.
func nearestWords(s bakeday.Sheet) string {
	w := s.Why
	const day = "Mon 2 Jan, 15:04"
	switch {
	case w.Earlier != nil && w.Later != nil:
		return "Nearest that works: " + w.Earlier.Format(day) + " or " + w.Later.Format(day) + "."
	case w.Earlier != nil:
		return "Nearest that works: " + w.Earlier.Format(day) + " (" + quantity.FormatDuration(s.Wanted.Sub(*w.Earlier)) + " earlier)."
	case w.Later != nil:
		return "Nearest that works: " + w.Later.Format(day) + " (" + quantity.FormatDuration(w.Later.Sub(s.Wanted)) + " later)."
	}
	return "No wanted time nearby works either."
}

// frame reports whether a rule is only the frame of the day: the present and the wanted time.
func (o obstacle) frame() bool {
	for _, words := range []string{"nothing before", "wanted", "everything done by"} {
		if strings.HasPrefix(o.Words, words) {
			return true
		}
	}
	return false
}

// inTheWay names a few rules on one line: first those that a change of alone would help, last the frame of the day.
func inTheWay(all []obstacle) string {
	const most = 3
	rank := func(o obstacle) int {
		switch {
		case o.frame():
			return 2
		case o.Remedy == "":
			return 1
		}
		return 0
	}
	sorted := slices.Clone(all)
	slices.SortStableFunc(sorted, func(a, b obstacle) int { return rank(a) - rank(b) })
	var words []string
	for _, o := range sorted[:min(most, len(sorted))] {
		words = append(words, o.String())
	}
	text := strings.Join(words, "; ")
	if n := len(all) - len(words); n > 0 {
		text += fmt.Sprintf("; and %d more, below", n)
	}
	return text
}
