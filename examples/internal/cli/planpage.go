package cli

import (
	"fmt"
	"strings"
	"time"

	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule/bakeday"
)

// planPage prints a whole plan for a terminal; file is its bake file.
func planPage(p *page, d bakeday.Day, s bakeday.PlanData, u units, file string, cautions bool) {
	name := printable(s.Name)
	if name == "" {
		name = "Bread"
	}
	p.para(0, p.bold(fmt.Sprintf("%s — %d of %s, wanted %s", name, s.Formula.Pieces, u.mass(s.Oven.Baked), longTime(s.Wanted))))
	if m := s.Missed; m != nil {
		p.para(0, "The wish for "+longTime(m.Wanted)+" can no longer be met, so this is for the week after.")
		if m.Why != nil {
			p.para(2, printable(u.say(m.Why.Says))+".")
			if m.Why.Later != nil {
				p.para(2, "Nearest that works: "+longTime(*m.Why.Later)+".")
			}
		}
	}
	if !s.Possible {
		notPossible(p, s, u)
	}
	weighPart(p, s, u)
	waterPart(p, d, s, u)
	risePart(p, d, s, u)
	ovenPart(p, d, s, u)
	if s.Possible {
		timetablePart(p, s)
	}
	if len(s.Notes) > 0 {
		p.heading("Worth knowing")
		for _, n := range s.Notes {
			p.para(2, u.say(n))
		}
	}
	p.takeCare(hazardsOf(s, u), cautions, "maslin plan "+shellWord(file)+" --cautions")
}

// hazardsOf are the cautions of a plan.
func hazardsOf(s bakeday.PlanData, u units) []hazard {
	var out []hazard
	for _, c := range s.Cautions {
		out = append(out, hazard{c.Subject, u.say(c.Text)})
	}
	return out
}

func longTime(t time.Time) string { return t.Format("Mon 2 Jan 2006, 15:04") }

func weighPart(p *page, s bakeday.PlanData, u units) {
	for i, l := range s.Weigh {
		title := l.Name
		if i == 0 {
			title = "What you weigh: " + title
		} else {
			title = "For the " + title
		}
		if l.Batches > 1 {
			title += fmt.Sprintf(", in %d batches", l.Batches)
		}
		p.heading(printable(title))
		align, width := "rl", 0
		if l.Batches > 1 && l.Batches <= 4 {
			align = strings.Repeat("r", 1+l.Batches) + "l"
			width = l.Batches
		}
		var rows [][]string
		if width > 0 {
			head := []string{"in all"}
			for k := range width {
				head = append(head, fmt.Sprintf("batch %d", k+1))
			}
			rows = append(rows, append(head, ""))
		}
		sums := make([]quantity.Mass, width)
		for _, line := range l.Lines {
			row := []string{u.mass(line.Mass)}
			for k := range width {
				row = append(row, u.mass(line.Portions[k]))
				sums[k] = sums[k].Add(line.Portions[k])
			}
			text := printable(line.Name)
			if line.Percent.Sign() > 0 {
				text += "  (" + percent(line.Percent, 1) + ")"
			}
			rows = append(rows, append(row, text))
		}
		total := []string{u.mass(l.Total)}
		for k := range width {
			total = append(total, u.mass(sums[k]))
		}
		rows = append(rows, append(total, "together"))
		p.rows(2, align, rows)
		if !l.Residue.IsZero() {
			p.para(2, "rounding to the scale "+leaves(l.Residue, u))
		}
	}
	f := s.Formula
	p.heading("The dough")
	hydration := percent(f.Hydration, 1)
	if f.Effective != f.Hydration {
		hydration += " (" + percent(f.Effective, 1) + " with the water in the other ingredients)"
	}
	p.para(2, fmt.Sprintf("hydration %s, prefermented flour %s, salt %s, whole grain %s, rye %s", hydration, percent(f.Prefermented, 1), percent(f.Salt, 1), percent(f.WholeGrain, 0), percent(f.Rye, 0)))
	p.para(2, fmt.Sprintf("%s of flour, %s of dough, %d pieces of %s; allergens: %s", u.mass(rounded(f.Flour)), u.mass(rounded(f.Dough)), f.Pieces, u.mass(rounded(f.Scaling)), f.Allergens))
}

func rounded(m quantity.Mass) quantity.Mass {
	r, _ := m.RoundTo(quantity.Grams(1))
	return r
}

func leaves(residue quantity.Mass, u units) string {
	if residue.Sign() < 0 {
		return "adds " + u.mass(residue.Neg())
	}
	return "leaves out " + u.mass(residue)
}

func waterPart(p *page, d bakeday.Day, s bakeday.PlanData, u units) {
	w := s.Water
	p.heading("Water and mixing")
	each := ""
	if s.Weigh[len(s.Weigh)-1].Batches > 1 {
		each = " for each batch"
	}
	line := fmt.Sprintf("pour %s%s at %s", u.mass(rounded(w.Pour)), each, u.temperature(w.Temperature, 1))
	if !w.Feasible {
		line = "the water would have to be " + u.temperature(w.Temperature, 1) + ", which cannot be poured"
	}
	p.para(2, line)
	var factors []string
	for _, f := range w.Factors {
		factors = append(factors, f.Name+" "+u.temperature(f.Temperature, 1))
	}
	guess := ""
	if w.Guess {
		guess = ", a guide value"
	}
	p.para(2, fmt.Sprintf("so that the dough leaves the mixer at %s: %s, mixing warms the dough by %s%s", u.temperature(w.Target, 1), strings.Join(factors, ", "), u.delta(w.Warming), guess))
	for i, r := range w.Remedies {
		lead := "or: "
		if i == 0 {
			lead = "so: "
		}
		p.para(2, lead+u.say(r))
	}
	if m := s.Mixer; m != nil {
		p.para(2, fits(m, d.Bake.Mixing.Mixer == mixing.Hand, s.Formula.Dough, u))
		if len(m.Kneading) > 0 {
			p.para(2, "usual kneading: "+u.say(working.Join(m.Kneading, "; ")))
			p.para(2, "ready when: "+u.say(working.Join(m.Ready, "; ")))
		}
	}
}

// fits says whether the dough fits the mixer.
func fits(m *bakeday.MixerData, byHand bool, dough quantity.Mass, u units) string {
	who, allowed := "the mixer", "the most by published charts is"
	if byHand {
		who, allowed = "by hand", "the trade's limit is"
	}
	text := fmt.Sprintf("%s: %s of dough is %s", who, u.mass(rounded(dough)), m.Verdict)
	if !m.MostHigh.IsZero() {
		text += fmt.Sprintf("; %s %s to %s", allowed, u.mass(rounded(m.MostLow)), u.mass(rounded(m.MostHigh)))
	}
	if m.Batches > 1 {
		text += fmt.Sprintf("; mix %d batches of %s", m.Batches, u.mass(rounded(m.Each)))
	}
	return text
}

func risePart(p *page, d bakeday.Day, s bakeday.PlanData, u units) {
	p.heading("Rising")
	if l := s.Levain; l != nil {
		p.para(2, fmt.Sprintf("levain: starts with %s of culture; ripe %s after feeding, at its peak after about %s, good until about %s", u.mass(rounded(l.Culture)), l.Ripe.TimeRange(), l.Peak.Likely, l.Until.Likely))
	}
	if l := s.Levain; l != nil && l.Left.Sign() > 0 {
		p.para(2, fmt.Sprintf("%s of the culture at hand is left: feed it, and keep it for the next bake", u.mass(l.Left)))
	}
	b := s.Bulk
	p.para(2, fmt.Sprintf("bulk: done %s after mixing, on a dough that starts at %s and drifts to %s", b.Ready.TimeRange(), u.temperature(b.Start, 1), u.temperature(b.End, 1)))
	if s.Retard != nil {
		p.para(2, fmt.Sprintf("shape when it has risen by %s, no more: the cold brings it to about %s when it goes into the oven (%s to %s)", percent(b.ShapeAt, 0), percent(b.Total.Likely, 0), percent(b.Total.Low, 0), percent(b.Total.High, 0)))
		p.para(2, fmt.Sprintf("retard: %s in the refrigerator at %s; the loaves go in at %s and come out at %s", s.Retard.For, u.temperature(s.Retard.Into, 0), u.temperature(s.Retard.DoughIn, 0), u.temperature(s.Retard.DoughAt, 0)))
		if w := s.Retard.WarmUp; w > 0 {
			p.para(2, fmt.Sprintf("then %s to warm up, to %s when they go into the oven", w, u.temperature(d.Rising.Into, 0)))
		}
	} else if s.Proof != nil {
		p.para(2, fmt.Sprintf("shape when it has risen by %s; final proof %s after shaping, to about %s in all", percent(b.ShapeAt, 0), s.Proof.TimeRange(), percent(b.Total.Likely, 0)))
	}
	p.para(2, "go by the dough, not the clock: the ranges are what is believed of an unknown kitchen, and narrow once you log your own bakes")
}

func ovenPart(p *page, d bakeday.Day, s bakeday.PlanData, u units) {
	o, done := s.Oven, d.Baking.Target
	p.heading("Baking and cooling")
	pots := ""
	if d.Bake.Oven.Pots > 0 {
		pots = " and pots"
	}
	p.para(2, fmt.Sprintf("preheat oven%s %s to %s", pots, o.Preheat, u.temperature(o.Temperature, 0)))
	round := fmt.Sprintf("%d in one round", o.Each)
	if o.Rounds > 1 {
		round = fmt.Sprintf("%d rounds of %d, %s between them to reheat", o.Rounds, o.Each, o.Reheat)
	}
	if o.Covered > 0 {
		p.para(2, fmt.Sprintf("%s: %s covered, then about %s uncovered", round, o.Covered, o.Uncovered))
	} else {
		p.para(2, fmt.Sprintf("%s: about %s", round, o.Uncovered))
	}
	if done.Core.IsZero() {
		p.para(2, u.say(d.Baking.Doneness.Note))
	} else {
		p.para(2, fmt.Sprintf("done at a core of %s (%s to %s) and a loss of %s or more: water boils at %s at %s", u.temperature(done.Core, 1), u.temperature(o.CoreFrom, 0), u.temperature(o.CoreTo, 0), percent(o.MinimumLoss, 0), u.temperature(done.Boiling, 1), u.length(d.Bake.Kitchen.Altitude)))
	}
	p.para(2, fmt.Sprintf("bake loss %s of the dough (usual: %s to %s): %s goes in, %s comes out cool", percent(o.Loss, 1), percent(o.UsualLoss.Low, 1), percent(o.UsualLoss.High, 1), u.mass(rounded(s.Formula.Scaling)), u.mass(o.Baked)))
	cool := fmt.Sprintf("cool enough to slice (%s) after %s", u.temperature(o.Slice, 0), o.Cooling.TimeRange())
	if o.Rest > 0 {
		cool += fmt.Sprintf("; this bread rests %s before it is cut", o.Rest)
	}
	p.para(2, cool)
}

func timetablePart(p *page, s bakeday.PlanData) {
	p.heading("Timetable: the latest that works (and from when each step may start)")
	day := ""
	var rows [][]string
	flush := func() {
		if len(rows) > 0 {
			p.rows(4, "llll", rows)
		}
		rows = nil
	}
	for _, t := range s.Steps {
		if d := t.Start.Format("Mon 2 Jan"); d != day {
			flush()
			day = d
			p.line("  %s", day)
		}
		text := printable(t.Name.String())
		if t.LookFrom != nil {
			text += "; look at it from " + clock(*t.LookFrom, t.Start) + " to " + clock(*t.LookTo, t.Start)
		}
		if len(t.Windows) > 1 {
			text += "; it may start " + windows(t)
		}
		mark := ""
		if t.Hands {
			mark = "hands"
		}
		rows = append(rows, []string{p.time(t.Start.Format("15:04") + "–" + clock(t.End, t.Start)), "(from " + clock(t.EarliestStart, t.Start) + ")", mark, text})
	}
	flush()
	p.rows(2, "ll", [][]string{{s.Wanted.Format("Mon 2 Jan 15:04"), "the bread is wanted"}})
}

// windows lists when a step may start, where there are gaps in between.
func windows(t bakeday.StepData) string {
	var parts []string
	for _, w := range t.Windows {
		part := clock(w.From, t.Start)
		if !w.To.Equal(w.From) {
			part += "–" + clock(w.To, w.From)
		}
		parts = append(parts, part)
	}
	return strings.Join(parts, " or ")
}

// clock prints a time, with its day when that differs from the reference day.
func clock(t, reference time.Time) string {
	if t.YearDay() == reference.YearDay() && t.Year() == reference.Year() {
		return t.Format("15:04")
	}
	return t.Format("Mon 15:04")
}
