package bakeday

import (
	"slices"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule"
)

// String is the headline: how many breads and loaves, when, and which.
func (k KitchenDay) String() string { return k.headline().String() }

func (k KitchenDay) headline() working.Message {
	if !k.worked || len(k.Breads) == 0 {
		return working.Tell("bakeday.no_plan", "no plan was made")
	}
	if len(k.Breads) == 1 {
		return k.Breads[0].headline()
	}
	loaves := 0
	var names []any
	from, to := k.Breads[0].Wanted, k.Breads[0].Wanted
	for _, d := range k.Breads {
		loaves += d.Bake.Loaves.Pieces
		names = append(names, working.Tell("bakeday.named", "%v", d.Bake.Name))
		if d.Wanted.Before(from) {
			from = d.Wanted
		}
		if d.Wanted.After(to) {
			to = d.Wanted
		}
	}
	from, to = from.In(k.Zone), to.In(k.Zone)
	wanted := working.Tell("bakeday.wanted_point", "%x", from)
	switch {
	case from.Equal(to):
	case sameDay(from, to):
		wanted = working.Tell("bakeday.wanted_within_a_day", "%x to %t", from, to)
	default:
		wanted = working.Tell("bakeday.wanted_span", "%x to %x", from, to)
	}
	return working.Tell("bakeday.day_headline", "%d breads, %d pieces, wanted %v: %v", len(k.Breads), loaves, wanted,
		working.And(names...))
}

// BreadReports are the reports of the breads, each with its own steps of the day's timetable; why the day does not fit
// is told by [KitchenDay.DayReport] alone.
func (k KitchenDay) BreadReports() []report.Report {
	var out []report.Report
	data := k.Data()
	for i, d := range k.Breads {
		r := d.Report()
		r.Cautions = nil // they are the day's
		var own []report.Section
		for _, s := range r.Sections {
			switch s.Key {
			case "why", "missed":
				continue
			case "timetable":
				s.Blocks = []report.Block{data.Breads[i].timetable()}
			}
			own = append(own, s)
		}
		r.Sections = own
		out = append(out, r)
	}
	return out
}

// Report tells the day and all of its breads: first the sections of [KitchenDay.DayReport], then those of each bread,
// without its timetable.
func (k KitchenDay) Report() report.Report {
	r := k.DayReport()
	if len(k.Breads) < 2 {
		return r
	}
	for i, own := range k.BreadReports() {
		name := working.Tell("bakeday.named", "%v", k.Breads[i].Bake.Name)
		for _, s := range own.Sections {
			if s.Key == "timetable" {
				continue
			}
			if s.Title.IsZero() {
				s.Title = name
			} else {
				s.Title = working.Tell("bakeday.of_bread", "%v: %v", name, s.Title)
			}
			r.Sections = append(r.Sections, s)
		}
	}
	return r
}

// DayReport tells the day as a whole: when to do what for all breads, the levains that feed several doughs, each
// bread in a line, and why it does not fit. Its sections have the keys "missed", "why", "timetable", "weigh-…" for
// each such levain, "breads" and "notes"; each bread has a report of its own, [Day.Report].
func (k KitchenDay) DayReport() report.Report {
	if !k.worked {
		return report.Report{Headline: k.headline()}
	}
	if len(k.Breads) == 1 {
		return k.Breads[0].Report()
	}
	r := report.Report{Headline: k.headline(), Cautions: k.Cautions()}
	add := func(key string, title working.Message, blocks ...report.Block) {
		if len(blocks) > 0 {
			r.Sections = append(r.Sections, report.Section{Key: key, Title: title, Blocks: blocks})
		}
	}
	data := k.Data()
	if m := k.Missed; m != nil {
		missed := report.Say(working.Tell("bakeday.day_missed",
			"The wishes for this week can no longer be met, so this is for the week after."))
		add("missed", working.Message{}, append([]report.Block{missed}, waysOut(m.Why, m.Earlier, m.Later)...)...)
	} else {
		add("missed", working.Message{}, k.overBlocks()...)
	}
	if !k.Possible() {
		add("why", working.Tell("bakeday.title_why", "It does not fit"), waysOut(data.Why, k.Earlier, k.Later)...)
	} else {
		add("timetable", working.Tell("bakeday.title_timetable",
			"Timetable: the latest that works, and from when each step may start"), k.timetable(data.Steps))
	}
	for i, l := range data.Levains {
		add(weighKey(i), working.Tell("bakeday.weigh_levain", "What you weigh once: %s", l.Name), l.blocks()...)
	}
	add("breads", working.Tell("bakeday.title_breads", "The breads"), k.breadsGrid(data))
	if len(data.Notes) > 0 {
		add("notes", working.Tell("bakeday.title_notes", "Worth knowing"), report.List(data.Notes))
	}
	return r
}

// overBlocks say which wishes are over for today, each once.
func (k KitchenDay) overBlocks() []report.Block {
	var out []report.Block
	seen := map[string]bool{}
	for _, d := range k.Breads {
		if wish := d.Bake.Wanted.String(); !seen[wish] {
			seen[wish] = true
			out = append(out, d.missedBlocks()...)
			out = append(out, d.movedBlocks()...)
		}
	}
	return out
}

// movedBlocks say that a wish could still be met but is of an occasion of which the beginning has passed.
func (d Day) movedBlocks() []report.Block {
	next, err := d.Bake.Wanted.instants(d.Now, d.Zone)
	if err != nil || !d.Wanted.After(next[0]) {
		return nil
	}
	wanted := d.Wanted.In(d.Zone)
	return []report.Block{report.Say(working.Tell("bakeday.moved_along",
		"%v %t goes with the bread before it, whose time is over, so this is for %x.", d.Bake.Wanted.Weekday, wanted,
		wanted))}
}

// timetable is the steps of all breads, and when each bread is wanted.
func (k KitchenDay) timetable(steps []StepData) report.Grid {
	steps = k.ripensOnce(steps)
	t := gridOf(steps)
	for _, d := range k.Breads {
		at := slices.IndexFunc(steps, func(s StepData) bool { return s.Start.After(d.Wanted) })
		if at < 0 {
			at = len(steps)
		}
		steps = slices.Insert(slices.Clone(steps), at, StepData{Start: d.Wanted.In(k.Zone)}) // keeps the order of the rows
		t.Rows = slices.Insert(t.Rows, at, []report.Cell{
			report.Of(d.Wanted.In(k.Zone)), {}, {}, {},
			report.Of(working.Tell("bakeday.wanted_bread", "wanted: %v", working.Tell("bakeday.named", "%v", d.Bake.Name))),
		})
	}
	return t
}

// ripensOnce has a levain that ripens for several doughs once, until the last of them takes it.
func (k KitchenDay) ripensOnce(steps []StepData) []StepData {
	var out []StepData
	first := map[string]int{} // by the levain: where it stands
	for _, s := range steps {
		d, ok := k.Bread(s.Bread)
		if !ok || s.Kind != schedule.Ripen || s.Number > 0 || !d.sharesLevain() {
			out = append(out, s)
			continue
		}
		levain := d.Bake.Levain.Name
		at, known := first[levain]
		if !known {
			s.Name = working.Tell("bakeday.step_ripens_shared", "%v ripens, for %v",
				working.Tell("bakeday.named", "%v", levain), working.And(k.fedWith(levain)...))
			first[levain] = len(out)
			out = append(out, s)
		} else if s.End.After(out[at].End) {
			out[at].End, out[at].Takes = s.End, quantity.Elapsed(s.End.Sub(out[at].Start))
		}
	}
	return out
}

// breadsGrid is a line for each bread: what it takes at the mixer and in the oven.
func (k KitchenDay) breadsGrid(data KitchenDayData) report.Grid {
	t := report.Grid{Key: "breads", Columns: []report.GridColumn{
		{Key: "bread", Title: working.Tell("bakeday.column_bread", "bread")},
		{Key: "pieces", Title: working.Tell("bakeday.column_pieces", "pieces"), Right: true},
		{Key: "each", Title: working.Tell("bakeday.column_each", "each"), Right: true},
		{Key: "dough", Title: working.Tell("bakeday.column_dough", "dough"), Right: true},
		{Key: "water", Title: working.Tell("bakeday.column_water", "water at"), Right: true},
		{Key: "shape", Title: working.Tell("bakeday.column_shape", "shape at"), Right: true},
		{Key: "rounds", Title: working.Tell("bakeday.column_rounds", "rounds"), Right: true},
		{Key: "oven", Title: working.Tell("bakeday.column_oven", "oven at"), Right: true},
	}}
	for i, d := range k.Breads {
		s := data.Breads[i]
		t.Rows = append(t.Rows, []report.Cell{
			report.Of(d.Bake.Name), report.Of(s.Formula.Pieces), report.Rounded(d.Bake.Loaves.Baked, 0),
			report.Rounded(s.Formula.Dough, 0),
			report.Rounded(s.Water.Temperature, 1), report.Rounded(s.Bulk.ShapeAt, 0), report.Of(s.Oven.Rounds),
			report.Of(working.Tell("bakeday.set_to", "%05.0f", s.Oven.Temperature)),
		})
	}
	return t
}

// waysOut tell first what two breads both want, then by how much all would have to move, then what would help.
func waysOut(w *WhyData, earlier, later *quantity.Elapsed) []report.Block {
	if w == nil {
		return []report.Block{report.Say(working.Tell("bakeday.no_timetable", "no timetable was found"))}
	}
	out := []report.Block{report.Paragraph{Text: w.Says, Tone: report.Warning}}
	switch {
	case earlier != nil && later != nil:
		out = append(out, report.Say(working.Tell("bakeday.all_both", "It works with everything %v earlier or %v later.",
			-*earlier, *later)))
	case earlier != nil:
		out = append(out, report.Say(working.Tell("bakeday.all_earlier", "It works with everything %v earlier.",
			-*earlier)))
	case later != nil:
		out = append(out, report.Say(working.Tell("bakeday.all_later", "It works with everything %v later.", *later)))
	}
	return append(out, w.help()...)
}
