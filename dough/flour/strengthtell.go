package flour

import (
	"slices"
	"strconv"

	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
)

// String is the headline of the report.
func (r StrengthAdvice) String() string { return r.Report().Headline.String() }

// Report tells how the figures stand, list by list.
func (r StrengthAdvice) Report() report.Report {
	if len(r.Opinions) == 0 {
		return report.Report{Headline: working.Tell("flour.no_opinion", "no opinion")}
	}
	out := report.Report{
		Headline: working.Tell("flour.strength", "Hydration %v: %d {2|speaks|speak} for it, %d against",
			r.Hydration, r.For, r.Against),
	}
	t := report.Grid{Key: "opinions", Columns: []report.GridColumn{
		{Key: "given"}, {Key: "class", Title: working.Tell("flour.column_class", "class")},
		{Key: "up_to", Title: working.Tell("flour.column_up_to", "used up to"), Right: true},
		{Key: "stance", Title: working.Tell("flour.column_stance", "speaks")}, {Key: "source",
			Title: working.Tell("flour.column_source", "by")},
	}}
	var meanings report.List
	var explained []StrengthFigure
	for _, o := range r.Opinions {
		row := []report.Cell{report.Of(o.Given), report.Of(o.Class), {}, report.Of(o.Stance), report.Of(o.Source.Key)}
		if !o.Used.High.IsZero() {
			row[2] = report.Of(o.Used.High)
		}
		t.Rows = append(t.Rows, row)
		if !slices.Contains(explained, o.Figure) {
			explained = append(explained, o.Figure)
			meanings = append(meanings, working.Tell("flour.meaning", "%v: %v", o.Figure, o.Meaning))
		}
		if !slices.Contains(out.Sources, o.Source) {
			out.Sources = append(out.Sources, o.Source)
		}
	}
	out.Sections = []report.Section{{Key: "opinions", Blocks: []report.Block{t, meanings}}}
	var what report.List
	if !r.Disagreement.IsZero() {
		what = append(what, r.Disagreement)
	}
	if what = append(what, r.Advice...); len(what) > 0 {
		out.Sections = append(out.Sections, report.Section{Key: "advice", Blocks: []report.Block{what}})
	}
	return out
}

// Working lists the opinions: by how many points the wish lies above what a class is used at, where a list says it.
func (r StrengthAdvice) Working() working.Working {
	d := working.Derive(working.Tell("flour.derive_strength", "Is the flour strong enough"))
	if len(r.Opinions) == 0 {
		return d.Working()
	}
	h := working.Given("h", working.Tell("flour.symbol_hydration", "hydration wanted"), r.Hydration)
	for i, o := range r.Opinions {
		n := strconv.Itoa(i + 1)
		if o.Used.High.IsZero() {
			d.Find(working.Finding{
				Name:   working.Tell("flour.opinion", "class by %v", o.Given),
				Symbol: "c_" + n, Is: i + 1, Source: o.Source,
				Look: working.Tell("flour.look", "%v: as the list says", o.Class),
			})
			continue
		}
		used := working.Given("u_"+n, working.Tell("flour.symbol_used", "what flour of %v (%v) is used up to", o.Given,
			o.Class), o.Used.High)
		d.Find(working.Finding{
			Name: working.Tell("flour.above", "how far the wish lies above it"), Symbol: "a_" +
				n, By: h.Minus(used), Unit: working.Percent,
			Note: working.Tell("flour.stance", "%v: this speaks %v", o.Class, o.Stance), Source: o.Source,
		})
	}
	figures := working.Given("n", working.Tell("flour.symbol_figures", "figures given, by all lists"), len(r.Opinions))
	others := working.Given("n_other", working.Tell("flour.symbol_other_figures", "of these speak for it, or for neither"),
		len(r.Opinions)-r.Against)
	d.Find(working.Finding{
		Name: working.Tell("flour.against", "figures that speak against it"), Symbol: "n_against",
		By: figures.Minus(others), Is: r.Against, Source: working.Algebra(),
	})
	return d.Working()
}
