package cli

import (
	"fmt"
	"slices"
	"strings"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule"
	"example.org/maslin/schedule/bakeday"
)

// obstacle is a rule that is in the way, and how often it is.
type obstacle struct {
	bakeday.RuleData
	times int
}

// obstacles are the rules of a conflict, the same ones together.
func obstacles(w *bakeday.WhyData) []obstacle {
	var out []obstacle
	for _, r := range w.Rules {
		i := slices.IndexFunc(out, func(o obstacle) bool { return o.Words.Equal(r.Words) && o.Remedy.Equal(r.Remedy) })
		if i >= 0 {
			out[i].times++
			continue
		}
		out = append(out, obstacle{r, 1})
	}
	return out
}

func (o obstacle) String() string {
	text := printable(o.Words.String())
	if o.times > 1 {
		text += fmt.Sprintf(" (%d times)", o.times)
	}
	return text
}

// notPossible says that the wanted time cannot be met: first the nearest that works and what is in
// the way, then everything that cannot be kept together. The line above has said what is wanted.
func notPossible(p *page, s bakeday.PlanData) {
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
		p.para(0, "In the way: "+printable(w.Says.String()))
		return
	}
	all := obstacles(w)
	p.para(0, "In the way: "+inTheWay(all))
	p.heading("What cannot all be kept")
	for _, o := range all {
		line := "· " + o.String()
		if !o.Remedy.IsZero() {
			line += " — enough by itself: " + printable(o.Remedy.String())
		}
		p.para(4, line)
	}
	if w.InOrder {
		p.para(4, "· each step follows the one before it")
	}
}

// nearestWords are the nearest wanted times that work.
func nearestWords(s bakeday.PlanData) string {
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
	return o.Wanted || o.Rule == schedule.PlanStart || o.Rule == schedule.PlanEnd
}

// inTheWay names a few rules on one line: first those that a change of alone would help, last the frame of the day.
func inTheWay(all []obstacle) string {
	const most = 3
	rank := func(o obstacle) int {
		switch {
		case o.frame():
			return 2
		case o.Remedy.IsZero():
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
