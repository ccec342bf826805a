package dough

import (
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
)

// String is the headline of the report.
func (p LevainPlan) String() string { return p.Report().Headline.String() }

// Report tells the feedings.
func (p LevainPlan) Report() report.Report {
	want := wholeGrams(p.in.Want)
	r := report.Report{Headline: working.Tell("dough.levain", "Levain: %v at %v", want, p.in.Hydration)}
	if !p.in.KeepBack.IsZero() {
		r.Headline = working.Tell("dough.levain_keep", "Levain: %v at %v, and %v to keep", want, p.in.Hydration,
			wholeGrams(p.in.KeepBack))
	}
	if p.in.Want.IsZero() {
		r.Headline = working.Tell("dough.no_levain", "no levain")
		return r
	}
	if !p.Reached {
		r.Sections = []report.Section{{Key: "why", Title: working.Tell("dough.cannot", "It cannot be done"),
			Blocks: []report.Block{
				report.List{p.Why, working.Tell("dough.missing", "missing: %v of culture", readable(p.Missing))},
			}}}
		return r
	}
	for i, f := range p.Stages {
		title := working.Tell("dough.feed", "Feed")
		if len(p.Stages) > 1 {
			title = working.Tell("dough.stage", "Stage %d of %d", i+1, len(p.Stages))
		}
		r.Sections = append(r.Sections, f.section(title))
	}
	then := report.List{working.Tell("dough.use", "%v for the dough", readable(p.Use))}
	if !p.KeepBack.IsZero() {
		then = append(then,
			working.Tell("dough.keep", "%v to keep: take it before you mix the dough", readable(p.KeepBack)))
	}
	if !p.LeftOver.IsZero() {
		then = append(then, working.Tell("dough.left_over",
			"%v of the culture at hand is left over: feed it and keep it, or bake with it", readable(p.LeftOver)))
	}
	r.Sections = append(r.Sections, report.Section{Key: "then", Title: working.Tell("dough.then", "Then"),
		Blocks: []report.Block{then}})
	return r
}

// section tells what to feed with.
func (f Feeding) section(title working.Message) report.Section {
	line := func(m quantity.Mass, what working.Message) []report.Cell {
		return []report.Cell{report.Of(readable(m)), report.Of(what)}
	}
	g := report.Grid{Key: "feeding", Columns: []report.GridColumn{{Key: "mass", Right: true}, {Key: "item"}},
		Rows: [][]report.Cell{
			line(f.Starter.Mass, working.Tell("dough.line_starter", "culture")), line(f.Flour,
				working.Tell("dough.line_flour", "flour")),
			line(f.Water, working.Tell("dough.line_water", "water")),
		}, Total: line(f.Made(), working.Tell("dough.together_at", "together, at %.0f", f.Hydration()))}
	return report.Section{Key: "feeding", Title: title,
		Blocks: []report.Block{g, report.List{working.Tell("dough.inoculation",
			"inoculation %.1f of the new flour, %.1f of the mix", f.Inoculation(OfNewFlour), f.Inoculation(OfMix))}}}
}

// String is the headline of the report.
func (r Repair) String() string { return r.Report().Headline.String() }

// Report tells what to add and what comes of it.
func (r Repair) Report() report.Report {
	out := report.Report{Headline: working.Tell("dough.no_repair", "nothing to repair")}
	if r.most == "" {
		return out
	}
	out.Headline = working.Tell("dough.repair", "The dough has %.1f hydration and %.2f salt; nothing needs to be added",
		r.Became.Hydration(), r.Became.SaltShare())
	if len(r.Add) > 0 {
		adds := make([]working.Message, len(r.Add))
		for i, l := range r.Add {
			adds[i] = working.Tell("dough.add", "%v of %s", readable(l.Mass), l.Name)
		}
		out.Headline = working.Tell("dough.repair_add", "The dough has %.1f hydration and %.2f salt; add %v",
			r.Became.Hydration(), r.Became.SaltShare(), told(adds))
	}
	var wrong report.List
	for _, e := range r.in.Extra {
		if e.Mass.Sign() < 0 {
			wrong = append(wrong, working.Tell("dough.too_little", "%v too little %s", e.Mass.Neg(), e.Name))
		} else {
			wrong = append(wrong, working.Tell("dough.too_much", "%v too much %s", e.Mass, e.Name))
		}
	}
	out.Sections = []report.Section{
		{Key: "extra", Title: working.Tell("dough.different", "What is different from the plan"),
			Blocks: []report.Block{wrong}}, r.additions(), r.compared(),
	}
	out.Cautions = r.After.Cautions()
	return out
}

func (r Repair) additions() report.Section {
	title := working.Tell("dough.bring_back", "To bring back %v, add", r.in.Restore)
	if r.in.Restore == RestoreAll {
		title = working.Tell("dough.bring_back_all", "To bring back every line, the levain too, add")
	}
	s := report.Section{Key: "add", Title: title}
	if len(r.Add) == 0 {
		s.Blocks = []report.Block{report.Say(working.Tell("dough.nothing_to_add", "nothing needs to be added"))}
		return s
	}
	g := report.Grid{Key: "add", Columns: []report.GridColumn{{Key: "mass", Right: true}, {Key: "item"}}}
	for _, l := range r.Add {
		g.Rows = append(g.Rows, []report.Cell{report.Of(readable(l.Mass)), report.Of(l.Name)})
	}
	s.Blocks = []report.Block{g}
	return s
}

// compared sets the dough as planned, as it is and as it will be beside each other.
func (r Repair) compared() report.Section {
	g := report.Grid{Key: "compared", Columns: []report.GridColumn{
		{Key: "what"}, {Key: "planned", Title: working.Tell("dough.planned", "planned"), Right: true},
		{Key: "now", Title: working.Tell("dough.now", "now"), Right: true}, {Key: "mended",
			Title: working.Tell("dough.mended", "mended"), Right: true},
	}}
	line := func(what working.Message, of func(Batch) report.Cell) {
		g.Rows = append(g.Rows, []report.Cell{report.Of(what), of(r.in.Batch), of(r.Became), of(r.After)})
	}
	line(working.Tell("dough.line_dough", "dough"), func(b Batch) report.Cell { return whole(b.Dough()) })
	line(working.Tell("dough.hydration", "hydration"),
		func(b Batch) report.Cell { return report.Rounded(b.Hydration(), 1) })
	line(working.Tell("dough.salt", "salt"), func(b Batch) report.Cell { return report.Rounded(b.SaltShare(), 2) })
	line(working.Tell("dough.prefermented", "prefermented flour"),
		func(b Batch) report.Cell { return report.Rounded(b.Prefermented(), 1) })
	s := report.Section{Key: "compared", Title: working.Tell("dough.the_dough", "The dough"), Blocks: []report.Block{g}}
	if n := r.in.Batch.Pieces(); n > 0 {
		s.Blocks = append(s.Blocks, report.Say(working.Tell("dough.pieces_of_it",
			"%d {1|piece|pieces} of it {1|weighs|weigh} %v each", n,
			wholeGrams(r.After.Dough().Divide(int64(n))))))
	}
	return s
}

// String is the headline of the report.
func (s SharedLevain) String() string { return s.Report().Headline.String() }

// Report tells the build and what each dough takes of it.
func (s SharedLevain) Report() report.Report {
	if len(s.Parts) == 0 {
		return report.Report{Headline: working.Tell("dough.no_shared", "no levain for several doughs")}
	}
	r := report.Report{
		Headline: working.Tell("dough.shared", "%v of %s for %d {3|dough|doughs}", readable(s.Build.Used), s.Build.Name,
			len(s.Parts)),
		Sections: []report.Section{s.Build.section(listOf(s.Build.Lines), s.Build.Made, s.Build.Removed, s.Build.Left)},
	}
	var rows report.Rows
	for i, m := range s.Parts {
		rows = append(rows, report.Row{Label: working.Tell("dough.for_dough", "for dough %d", i+1),
			Value: report.Of(readable(m))})
	}
	parts := report.Section{Key: "parts", Title: working.Tell("dough.then", "Then"), Blocks: []report.Block{rows}}
	if !s.Short.IsZero() {
		parts.Blocks = append(parts.Blocks,
			report.Say(working.Tell("dough.short", "too little by %v", readable(s.Short))))
	}
	r.Sections = append(r.Sections, parts)
	return r
}
