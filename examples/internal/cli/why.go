package cli

import (
	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule/bakeday"
)

// notPossible says that the wanted time cannot be met: what is in the way, the nearest times that work, and what would help.
// The line above has said what is wanted.
func notPossible(p *page, s bakeday.PlanData, u units) {
	w := s.Why
	if w == nil {
		p.para(0, p.warn("It cannot be done:")+" no timetable was found")
		return
	}
	p.para(0, p.warn("It cannot be done:")+" "+printable(u.say(w.Says))+".")
	p.para(0, nearestWords(s))
	if len(w.Remedies) == 0 {
		return
	}
	p.heading("Each of these by itself would do")
	for _, r := range w.Remedies {
		p.para(4, "· "+printable(u.say(r.Words))+": "+printable(u.say(r.Remedy)))
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
