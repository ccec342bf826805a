package cli

import (
	"fmt"
	"slices"
	"time"

	"example.org/maslin/bake"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule"
	"example.org/maslin/schedule/bakeday"
)

// nowPage prints what a baker needs at the bench, and no more.
func nowPage(p *page, b *bench, file string, u units) {
	p.para(0, fmt.Sprintf("%s, wanted %s; it is %s", printable(b.sheet.Name), b.sheet.Wanted.Format("Mon 15:04"), b.now.Format("Mon 2 Jan, 15:04")))
	if b.followed == nil {
		p.para(0, "This is the plan if it is made now; maslin now "+printable(file)+" --follow keeps to it.")
	}
	if b.learned != "" {
		p.para(0, "Planned with your log, as maslin plan --learned does: "+printable(b.learned)+".")
	}
	under := b.underWay()
	next, ok := b.next()
	var shown []string
	if len(under) > 0 {
		p.heading("Under way")
		for _, s := range under {
			p.para(2, fmt.Sprintf("%s, %s to %s", printable(u.say(s.Name)), clock(s.Start, b.now), clock(s.End, b.now)))
			for _, line := range b.lookFor(s, u) {
				p.para(4, "· "+line)
			}
			shown = append(shown, s.ID)
		}
	}
	b.doughLines(p)
	if ok && !slices.Contains(shown, next.ID) {
		wait := next.Start.Sub(b.now).Round(time.Minute)
		p.heading("Next, in " + quantity.FormatDuration(max(0, wait)))
		p.para(2, fmt.Sprintf("%s: %s (%s)", clock(next.Start, b.now), printable(u.say(next.Name)), next.Takes))
		for _, line := range b.lookFor(next, u) {
			p.para(4, "· "+line)
		}
		shown = append(shown, next.ID)
	}
	b.changeLines(p)
	b.laterLines(p, shown)
}

// doughLines say when the dough is ready by what is known of it now.
func (b *bench) doughLines(p *page) {
	_, shaped := b.done["shape"]
	if b.progress == nil || shaped {
		return
	}
	for _, s := range b.steps {
		if s.Kind == schedule.Shape && b.now.After(s.End) {
			return // nobody said otherwise: it was shaped as planned
		}
	}
	e := b.progress.Now
	p.heading("The dough")
	how := e.Ready().String()
	if b.dough != nil && len(b.dough.Rises) > 0 {
		last := b.dough.Rises[len(b.dough.Rises)-1]
		how = b.progress.String()
		p.para(2, fmt.Sprintf("risen %s at %s", percent(last.Rise.Rise, 0), clock(last.At.In(b.now.Location()), b.now)))
	}
	p.para(2, fmt.Sprintf("%s risen %s after mixing", percent(e.Bulk().Rise, 0), how))
	p.para(2, clockRange(e.Ready(), b.mixed))
	if band, err := e.RiseAt(b.now.Sub(b.mixed)); err == nil && b.now.After(b.mixed) {
		p.para(2, "now it should be at "+band.Low.Text(0)+" to "+band.High.Text(0)+", likely "+band.Likely.Text(0))
	}
}

func (b *bench) changeLines(p *page) {
	if b.changed == nil {
		return
	}
	p.heading("So the rest of the plan changes")
	if len(b.changed.Timetable.Steps) == 0 {
		p.para(2, "the rest fits no more; these cannot all be kept:")
		if c := b.changed.Timetable.Conflict; c != nil {
			for _, m := range c.Members {
				line := "· " + printable(m.Words.String())
				if m.Enough && !m.Remedy.IsZero() {
					line += " — enough by itself: " + printable(m.Remedy.String())
				}
				p.para(4, line)
			}
		}
		return
	}
	if b.changed.Moved > 0 {
		p.para(2, "the bread is ready "+b.changed.Moved.String()+" later than wanted, at "+longTime(b.changed.Wanted.In(b.now.Location())))
	} else {
		p.para(2, "the bread is still there when it is wanted")
	}
	for _, c := range b.changed.Changes {
		p.para(2, "· "+printable(c.String()))
	}
}

// laterLines print the next few steps after what was shown.
func (b *bench) laterLines(p *page, shown []string) {
	var rows [][]string
	for _, s := range b.steps {
		_, done := b.done[s.ID]
		if done || slices.Contains(shown, s.ID) || !s.Start.After(b.now) {
			continue
		}
		mark := ""
		if s.Hands {
			mark = "hands"
		}
		rows = append(rows, []string{clock(s.Start, b.now), mark, printable(s.Name.String())})
		if len(rows) == 4 {
			break
		}
	}
	if len(rows) == 0 {
		return
	}
	p.heading("After that")
	p.rows(2, "lll", rows)
}

// lookFor says what to do or look for at a step, in the numbers of the plan.
func (b *bench) lookFor(s bakeday.StepData, u units) []string {
	sheet := b.sheet
	look := ""
	if s.LookFrom != nil {
		look = "look at it from " + clock(*s.LookFrom, b.now) + " to " + clock(*s.LookTo, b.now)
	}
	shapeAt := percent(sheet.Bulk.ShapeAt, 0)
	if b.progress != nil {
		shapeAt = percent(b.progress.Now.Bulk().Rise, 0)
	}
	var out []string
	weigh := func(list string) {
		for _, w := range sheet.Weigh {
			if w.Name != list {
				continue
			}
			for _, l := range w.Lines {
				out = append(out, u.mass(l.Mass)+" "+printable(l.Name))
			}
		}
	}
	switch s.Kind {
	case schedule.Make:
		weigh(s.Thing)
	case schedule.Ripen:
		if s.Number == 0 {
			out = append(out, "ripe when it is domed, full of bubbles to the wall of the jar and smells fresh and a little sour; past its best when the middle has sunk")
			break
		}
		out = append(out, "ripe when its top is domed or just begins to sink, and it is full of bubbles; past its best when it has fallen and smells of alcohol")
	case schedule.Stand:
		out = append(out, "covered; cool before it goes into the dough")
	case schedule.TakeOut:
		out = append(out, "cover the pieces, so that no skin forms")
	case schedule.WarmUp:
		out = append(out, "about "+u.temperature(b.day.Rising.Into, 0)+" in the middle when it goes into the oven")
	case schedule.Feed:
		weigh(s.Thing)
	case schedule.Mix:
		out = append(out, "pour "+u.mass(rounded(sheet.Water.Pour))+" of water at "+u.temperature(sheet.Water.Temperature, 1),
			"the dough should leave the mixer at "+u.temperature(sheet.Water.Target, 1)+"; measure it, and log it: maslin log mix FILE --dough TEMPERATURE")
	case schedule.Bulk:
		out = append(out, "shape when it has risen by "+shapeAt+", whatever the clock says: a mark on a straight-sided jar of the dough shows it",
			"then the surface is domed and the dough wobbles and comes away from the wall")
	case schedule.Fold:
		out = append(out, "wet hands; lift each of four sides and lay it over the middle")
	case schedule.Shape:
		out = append(out, fmt.Sprintf("%d pieces of %s, when the dough has risen by %s", sheet.Formula.Pieces, u.mass(rounded(sheet.Formula.Scaling)), shapeAt))
	case schedule.Retard:
		out = append(out, "in the refrigerator at "+u.temperature(sheet.Retard.Into, 0)+"; it rises on until it is cold")
	case schedule.Proof:
		out = append(out, "ready when a dent of a floured finger comes back slowly and not all the way")
	case schedule.Preheat:
		out = append(out, "oven and what is in it to "+u.temperature(sheet.Oven.Temperature, 0))
	case schedule.Bake:
		if sheet.Oven.Core.IsZero() {
			out = append(out, "done by time and color")
		} else {
			out = append(out, fmt.Sprintf("done at a core of %s (%s to %s) and a loss of %s or more", u.temperature(sheet.Oven.Core, 1), u.temperature(sheet.Oven.CoreFrom, 0), u.temperature(sheet.Oven.CoreTo, 0), percent(sheet.Oven.MinimumLoss, 0)))
		}
		if sheet.Oven.Covered > 0 {
			out = append(out, fmt.Sprintf("%s covered, then about %s uncovered", sheet.Oven.Covered, sheet.Oven.Uncovered))
		}
	case schedule.Cool:
		out = append(out, "cut it below "+u.temperature(sheet.Oven.Slice, 0))
	}
	if look != "" {
		out = append(out, look)
	}
	return out
}

// cautions are those of what is under way or next.
func (b *bench) cautions() []working.Caution {
	names := b.underWay()
	if next, ok := b.next(); ok {
		names = append(names, next)
	}
	var out []working.Caution
	seen := map[string]bool{}
	add := func(all []working.Caution) {
		for _, c := range all {
			if !seen[string(c.Subject)+c.Text.String()] {
				seen[string(c.Subject)+c.Text.String()] = true
				out = append(out, c)
			}
		}
	}
	for _, s := range names {
		switch s.Kind {
		case schedule.Feed, schedule.Ripen:
			if b.day.Levain != nil {
				add(b.day.Levain.Ripeness.Cautions())
			}
		case schedule.Mix:
			add(b.day.Water.Fit.Cautions)
		case schedule.Bulk, schedule.Proof, schedule.Shape:
			add(b.day.Rising.Bulk.Cautions())
		case schedule.Preheat, schedule.Bake:
			add(bake.OvenCautions())
		case schedule.Cool:
			add(bake.FoodCautions())
		}
	}
	return out
}

// hazards are the cautions as the page prints them.
func (b *bench) hazards(u units) []hazard {
	var out []hazard
	for _, c := range b.cautions() {
		out = append(out, hazard{string(c.Subject), u.say(c.Text)})
	}
	return out
}

// nowSheet is the answer of now as data.
type nowSheet struct {
	Format    string             `json:"format"`
	Name      string             `json:"name"`
	Now       time.Time          `json:"now"`
	Wanted    time.Time          `json:"wanted"`
	Possible  bool               `json:"possible"`
	Following bool               `json:"following"`
	Learned   string             `json:"learned,omitempty"` // what the log knew of the culture, in words
	UnderWay  []bakeday.StepData `json:"under_way"`
	Next      *bakeday.StepData  `json:"next,omitempty"`
	LookFor   []string           `json:"look_for"`
	Dough     *doughSheet        `json:"dough,omitempty"`
	Changes   []string           `json:"changes"`
	Steps     []bakeday.StepData `json:"steps"` // that are not over
	Why       *bakeday.WhyData   `json:"why_not,omitempty"`
}

type doughSheet struct {
	Mixed  time.Time        `json:"mixed"`
	Rise   quantity.Percent `json:"shape_at_rise"`
	Ready  bakeday.Range    `json:"ready"`
	Early  time.Time        `json:"early"`
	Likely time.Time        `json:"likely"`
	Late   time.Time        `json:"late"`
	Read   int              `json:"readings"`
}

func (b *bench) data() nowSheet {
	out := nowSheet{
		Format: "maslin now 1", Name: b.sheet.Name, Now: b.now, Wanted: b.sheet.Wanted, Possible: b.sheet.Possible, Following: b.followed != nil, Learned: b.learned,
		UnderWay: append([]bakeday.StepData{}, b.underWay()...), LookFor: []string{}, Changes: []string{}, Steps: []bakeday.StepData{}, Why: b.sheet.Why,
	}
	if !b.sheet.Possible {
		return out
	}
	for _, s := range out.UnderWay {
		out.LookFor = append(out.LookFor, b.lookFor(s, units{})...)
	}
	if next, ok := b.next(); ok {
		out.Next = &next
		if len(out.UnderWay) == 0 {
			out.LookFor = append(out.LookFor, b.lookFor(next, units{})...)
		}
	}
	if b.progress != nil {
		e := b.progress.Now
		at := func(d time.Duration) time.Time { return b.mixed.Add(d.Round(time.Minute)) }
		r := e.Ready()
		out.Dough = &doughSheet{Mixed: b.mixed, Rise: tenthPercent(e.Bulk().Rise), Ready: bakeday.NewRange(r), Early: at(r.Early), Likely: at(r.Likely), Late: at(r.Late)}
		if b.dough != nil {
			out.Dough.Read = len(b.dough.Rises)
		}
	}
	if b.changed != nil {
		for _, c := range b.changed.Changes {
			out.Changes = append(out.Changes, c.String())
		}
	}
	for _, s := range b.steps {
		if _, done := b.done[s.ID]; !done && s.End.After(b.now) {
			out.Steps = append(out.Steps, s)
		}
	}
	return out
}
