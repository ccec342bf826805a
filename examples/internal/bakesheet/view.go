package bakesheet

import (
	"fmt"
	"html/template"
	"strings"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/textpage"
	"example.org/maslin/schedule/bakeday"
)

// view is the page as texts: the template only arranges them.
type view struct {
	Name, Pieces, Wanted, Zone, Missed string
	Possible                           bool
	Why                                []string
	Days                               []day
	Lists                              []list
	Formula                            string
	Water, Rise, Oven                  part
	Wide, Narrow                       template.HTML
	Notes                              []string
	Cautions                           []caution
	Sources                            []source
	Blanks                             []string
}

// day is the part of the timetable that begins on one day.
type day struct {
	Name  string
	Steps []step
}

type step struct {
	Start, End, Earliest, Name, Look string
	Hands                            bool
	Machine                          string // instants for programs
}

type list struct {
	Title   string
	Batches []string // column headings; empty when there is one batch
	Lines   []line
	Total   []string
}

type line struct {
	Name, Percent, Mass string
	Portions            []portion
}

type portion struct{ Mass, Label string }

// part is one stage of the bake: a few figures to read from across the kitchen, and remarks.
type part struct {
	Title   string
	Figures []figure
	Remarks []string
}

type figure struct{ What, Value, More string }

type caution struct {
	Subject, Text string
	Source        int // number in the list of sources; 0 for none
}

type source struct {
	Number int
	Text   string
}

func tied(p part) part {
	for i := range p.Figures {
		p.Figures[i].Value, p.Figures[i].More = textpage.Glue(p.Figures[i].Value), textpage.Glue(p.Figures[i].More)
	}
	for i := range p.Remarks {
		p.Remarks[i] = textpage.Glue(p.Remarks[i])
	}
	return p
}

func viewOf(s bakeday.PlanData, u Units) view {
	v := view{
		Name: textpage.Printable(s.Name), Pieces: fmt.Sprintf("%d × %s", s.Formula.Pieces, u.Mass(s.Oven.Baked)),
		Wanted: s.Wanted.Format("Monday 2 January 2006, 15:04"), Zone: textpage.Printable(s.Zone), Possible: s.Possible,
		Blanks: []string{"dough after mixing", "ready to shape at", "rise at shaping", "core of the loaf", "loaf out of the oven", "loaf when cool"},
	}
	if strings.TrimSpace(v.Name) == "" {
		v.Name = "Bread"
	}
	if s.Missed != nil {
		v.Missed = "The wish for " + s.Missed.Wanted.Format("Monday 2 January, 15:04") + " can no longer be met; this is for the week after."
	}
	if !s.Possible {
		v.Why = whyNot(s.Why, u)
	}
	for _, n := range s.Notes {
		v.Notes = append(v.Notes, textpage.Printable(u.say(n)))
	}
	v.timetable(s, u)
	for i, l := range s.Weigh {
		v.Lists = append(v.Lists, listOf(l, i, u))
	}
	f := s.Formula
	v.Formula = fmt.Sprintf("%s of flour makes %s of dough: hydration %s, prefermented flour %s, salt %s, whole grain %s, rye %s. Allergens: %s.",
		u.Mass(whole(f.Flour)), u.Mass(whole(f.Dough)), f.Hydration.Text(1), f.Prefermented.Text(1), f.Salt.Text(1), f.WholeGrain.Text(0), f.Rye.Text(0), textpage.Printable(f.Allergens))
	v.Formula = textpage.Glue(v.Formula)
	v.Water, v.Rise, v.Oven = tied(waterPart(s, u)), tied(risePart(s, u)), tied(ovenPart(s, u))
	return v
}

func whyNot(w *bakeday.WhyData, u Units) []string {
	if w == nil {
		return []string{"No timetable was found."}
	}
	if len(w.Rules) == 0 {
		return []string{textpage.Printable(u.say(w.Says))}
	}
	out := []string{"These cannot all be kept; they miss each other by " + w.Short.String() + ":"}
	for _, r := range w.Rules {
		text := textpage.Printable(u.say(r.Words))
		if !r.Remedy.IsZero() {
			text += " — enough by itself: " + textpage.Printable(u.say(r.Remedy))
		}
		out = append(out, text)
	}
	for _, near := range []struct {
		what string
		at   *time.Time
	}{{"earlier", w.Earlier}, {"later", w.Later}} {
		if near.at != nil {
			out = append(out, "Nearest "+near.what+" time that works: "+near.at.Format("Monday 2 January, 15:04"))
		}
	}
	return out
}

func (v *view) timetable(s bakeday.PlanData, u Units) {
	for _, t := range s.Steps {
		name := t.Start.Format("Monday 2 January")
		if n := len(v.Days); n == 0 || v.Days[n-1].Name != name {
			v.Days = append(v.Days, day{Name: name})
		}
		d := &v.Days[len(v.Days)-1]
		one := step{
			Start: t.Start.Format("15:04"), End: clock(t.End, t.Start), Earliest: clock(t.EarliestStart, t.Start),
			Name: textpage.Printable(u.say(t.Name)), Hands: t.Hands, Machine: t.Start.Format(time.RFC3339),
		}
		if t.LookFrom != nil {
			one.Look = clock(*t.LookFrom, t.Start) + " to " + clock(*t.LookTo, t.Start)
		}
		d.Steps = append(d.Steps, one)
	}
}

// clock prints a time, with its day when that differs from the reference day.
func clock(t, reference time.Time) string {
	if t.YearDay() == reference.YearDay() && t.Year() == reference.Year() {
		return t.Format("15:04")
	}
	return t.Format("Mon 15:04")
}

func listOf(l bakeday.WeighList, i int, u Units) list {
	out := list{Title: "The " + textpage.Printable(l.Name)}
	several := l.Batches > 1 && l.Batches <= 4
	if l.Batches > 1 {
		out.Title += fmt.Sprintf(", %d batches", l.Batches)
	}
	var sums []quantity.Mass
	if several {
		sums = make([]quantity.Mass, l.Batches)
		for k := range l.Batches {
			out.Batches = append(out.Batches, fmt.Sprintf("batch %d", k+1))
		}
	}
	for _, w := range l.Lines {
		one := line{Name: textpage.Printable(w.Name), Percent: w.Percent.Text(1), Mass: u.Mass(w.Mass)}
		for k := range sums {
			m := w.Portions[k]
			sums[k] = sums[k].Add(m)
			one.Portions = append(one.Portions, portion{u.Mass(m), fmt.Sprintf("%s of %s for batch %d", u.Mass(m), one.Name, k+1)})
		}
		out.Lines = append(out.Lines, one)
	}
	out.Total = []string{u.Mass(l.Total)}
	for _, m := range sums {
		out.Total = append(out.Total, u.Mass(m))
	}
	return out
}

func whole(m quantity.Mass) quantity.Mass {
	r, _ := m.RoundTo(quantity.Grams(1))
	return r
}

func waterPart(s bakeday.PlanData, u Units) part {
	w := s.Water
	each := ""
	if n := s.Weigh[len(s.Weigh)-1].Batches; n > 1 {
		each = "for each batch"
	}
	p := part{Title: "Water and mixing", Figures: []figure{
		{"water", u.Temperature(w.Temperature, 1), strings.TrimSpace(u.Mass(whole(w.Pour)) + " " + each)},
		{"dough out of the mixer", u.Temperature(w.Target, 1), "mixing warms it by " + u.Delta(w.Warming)},
	}}
	if !w.Feasible {
		p.Remarks = append(p.Remarks, "Water this warm or cold cannot be poured; do one of these:")
	}
	for _, r := range w.Remedies {
		p.Remarks = append(p.Remarks, textpage.Printable(u.say(r)))
	}
	var factors []string
	for _, f := range w.Factors {
		factors = append(factors, textpage.Printable(f.Name)+" "+u.Temperature(f.Temperature, 1))
	}
	from := "Worked out from " + strings.Join(factors, ", ")
	if w.Guess {
		from += ", with a guide value for the mixer"
	}
	p.Remarks = append(p.Remarks, from+". Measure yours before you pour.")
	if m := s.Mixer; m != nil && len(m.Kneading) > 0 {
		p.Remarks = append(p.Remarks, "Usual kneading: "+textpage.Printable(u.say(working.Join(m.Kneading, "; ")))+". Ready when: "+textpage.Printable(u.say(working.Join(m.Ready, "; ")))+".")
	}
	return p
}

func risePart(s bakeday.PlanData, u Units) part {
	b := s.Bulk
	p := part{Title: "Rising"}
	if l := s.Levain; l != nil {
		p.Figures = append(p.Figures, figure{"levain ripe after", span(l.Ripe), "likely " + quantity.FormatDuration(l.Ripe.Likely) + "; good until about " + quantity.FormatDuration(l.Until.Likely) + " after feeding"})
	}
	p.Figures = append(p.Figures,
		figure{"bulk done after", span(b.Ready), fmt.Sprintf("likely %s; the dough goes from %s to %s", quantity.FormatDuration(b.Ready.Likely), u.Temperature(b.Start, 1), u.Temperature(b.End, 1))},
		figure{"shape at a rise of", b.ShapeAt.Text(0), fmt.Sprintf("about %s in all when it goes into the oven", b.Total.Likely.Text(0))})
	switch {
	case s.Retard != nil:
		p.Figures = append(p.Figures, figure{"in the cold", s.Retard.For.String(), fmt.Sprintf("at %s; the loaves go in at %s", u.Temperature(s.Retard.Into, 0), u.Temperature(s.Retard.DoughIn, 0))})
		if w := s.Retard.WarmUp; w > 0 {
			p.Figures = append(p.Figures, figure{"warm up", w.String(), "between the cold and the oven"})
		}
	case s.Proof != nil:
		p.Figures = append(p.Figures, figure{"final proof", span(*s.Proof), "likely " + quantity.FormatDuration(s.Proof.Likely) + " after shaping"})
	}
	p.Remarks = append(p.Remarks, "Go by the dough, not the clock: the ranges are what is believed of an unknown kitchen, and narrow once you log your own bakes.")
	return p
}

func span(r quantity.TimeRange) string {
	return quantity.FormatDuration(r.Early) + " to " + quantity.FormatDuration(r.Late)
}

// doneFigure says what done means: a core and a loss, or time and color.
func doneFigure(o bakeday.OvenData, u Units) figure {
	if o.Core.IsZero() {
		return figure{"done", "by time and color", ""}
	}
	return figure{"done at a core of", u.Temperature(o.CoreFrom, 0) + " to " + u.Temperature(o.CoreTo, 0), fmt.Sprintf("and a loss of %s or more; water boils at %s", o.MinimumLoss.Text(0), u.Temperature(o.Boiling, 1))}
}

func ovenPart(s bakeday.PlanData, u Units) part {
	o := s.Oven
	baking := o.Uncovered.String()
	if o.Covered > 0 {
		baking = o.Covered.String() + " covered, " + baking + " uncovered"
	}
	round := fmt.Sprintf("%d in one round", o.Each)
	if o.Rounds > 1 {
		round = fmt.Sprintf("%d rounds of %d, %s between them", o.Rounds, o.Each, o.Reheat)
	}
	p := part{Title: "Oven and cooling", Figures: []figure{
		{"oven", u.Temperature(o.Temperature, 0), "preheat " + o.Preheat.String()},
		{"bake", baking, round},
		doneFigure(o, u),
		{"each loaf", u.Mass(whole(s.Formula.Scaling)) + " in, " + u.Mass(o.Baked) + " out", "a loss of " + o.Loss.Text(1) + " in the oven"},
		{"slice after", span(o.Cooling), "at " + u.Temperature(o.Slice, 0) + " or below"},
	}}
	if o.Rest > 0 {
		p.Remarks = append(p.Remarks, "This bread rests "+o.Rest.String()+" before it is cut.")
	}
	return p
}
