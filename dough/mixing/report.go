package mixing

import (
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// Report tells the water by the factor method, what it was reckoned with, and the ways to it.
func (r WaterResult) Report() report.Report {
	out := report.Report{Headline: r.Message(), Sources: []working.Source{sources.SFBIWater, sources.NavyFriction}}
	if r.Temperature.IsZero() {
		return out
	}
	in := r.in
	var rows report.Rows
	for i, o := range in.Others {
		rows = append(rows, report.Row{Label: working.Tell("mixing.label_factor", "%v", o.told(i)),
			Value: report.Rounded(o.Temperature, 1)})
	}
	rows = append(rows, report.Row{
		Label: working.Tell("mixing.label_friction", "friction factor"), Value: report.Rounded(r.Friction.Factor, 1),
		Note: working.Tell("mixing.note_factors", "for %d factors", r.Friction.Factors),
	})
	if rise, err := r.Friction.Rise(); err == nil {
		rows = append(rows, report.Row{Label: working.Tell("mixing.label_warming", "warming by mixing"),
			Value: report.Rounded(rise, 1)})
	}
	rows = append(rows, report.Row{Label: working.Tell("mixing.label_target", "dough wanted"),
		Value: report.Rounded(in.Target, 1)})
	out.Sections = append(out.Sections, report.Section{
		Key: "factors", Title: working.Tell("mixing.title_factors", "Reckoned with"), Blocks: blocks(rows, r.Notes),
	})
	return waysTo(out, r.Remedies)
}

// waysTo adds the remedies to a report.
func waysTo(out report.Report, remedies []WaterRemedy) report.Report {
	var ways report.List
	for _, m := range remedies {
		text := m.Text
		if !m.Enough {
			text = working.Tell("mixing.not_enough_alone", "%v (not enough by itself)", text)
		}
		ways = append(ways, text)
	}
	if len(ways) > 0 {
		out.Sections = append(out.Sections, report.Section{
			Key: "ways", Title: working.Tell("mixing.title_ways", "Ways to get there"), Blocks: []report.Block{ways},
		})
	}
	return out
}

// blocks are rows with notes under them.
func blocks(rows report.Rows, notes []working.Message) []report.Block {
	out := []report.Block{rows}
	if len(notes) > 0 {
		out = append(out, report.List(notes))
	}
	return out
}

// Report tells the water of a planned batch, what to expect of the dough, and the factor method beside it.
func (r PlannedWater) Report() report.Report {
	out := report.Report{Headline: r.Message(), Sources: []working.Source{sources.HeatBalance, sources.SFBIWater}}
	if r.Temperature.IsZero() {
		return out
	}
	degrees := func(x float64) report.Cell { return report.Rounded(x, 2) }
	rows := report.Rows{
		{Label: working.Tell("mixing.label_dough", "dough expected"), Value: report.Rounded(r.Dough, 1)},
		{
			Label: working.Tell("mixing.label_warming", "warming by mixing"), Value: report.Rounded(r.Warming, 1),
			Note: working.Tell("mixing.note_basis", "%v", r.Basis),
		},
		{Label: working.Tell("mixing.label_sensitivity", "dough for each degree of water"),
			Value: degrees(r.Sensitivity)},
	}
	if !r.ByFactors.IsZero() {
		rows = append(rows, report.Row{Label: working.Tell("mixing.label_by_factors", "water by the factor method"),
			Value: report.Rounded(r.ByFactors, 1)})
		rows = append(rows, report.Row{
			Label: working.Tell("mixing.label_agreeing", "friction factor with which both agree today"),
			Value: report.Rounded(r.AgreeingFriction.Factor, 1),
			Note:  working.Tell("mixing.note_factors", "for %d factors", r.AgreeingFriction.Factors),
		})
	}
	out.Sections = append(out.Sections, report.Section{
		Key: "expect", Title: working.Tell("mixing.title_expect", "What to expect"), Blocks: blocks(rows, r.Notes),
	})
	if c, ok := r.Comparison(); ok {
		out.Sections = append(out.Sections, c.section())
	}
	return waysTo(out, r.Remedies)
}

// Report tells why the two methods ask for different water.
func (c Comparison) Report() report.Report {
	out := report.Report{Headline: c.Message(), Sources: []working.Source{sources.HeatBalance}}
	if c.ByFactors.IsZero() {
		return out
	}
	out.Sections = []report.Section{{
		Key: "methods", Title: working.Tell("mixing.title_methods", "Two methods side by side"),
		Blocks: []report.Block{report.Grid{
			Key: "methods",
			Columns: []report.GridColumn{
				{Key: "what"}, {Key: "factors", Title: working.Tell("mixing.column_factors", "factors"), Right: true},
				{Key: "balance", Title: working.Tell("mixing.column_balance", "balance"), Right: true},
			},
			Rows: [][]report.Cell{
				{report.Of(working.Tell("mixing.label_water", "water")), report.Rounded(c.ByFactors, 1),
					report.Rounded(c.ByBalance, 1)},
				{
					report.Of(working.Tell("mixing.label_sensitivity", "dough for each degree of water")),
					report.Rounded(c.SensitivityByFactors, 2), report.Rounded(c.SensitivityByBalance, 2),
				},
			},
		}},
	}, c.section()}
	return out
}

// section is the table of what each part weighs and moves.
func (c Comparison) section() report.Section {
	g := report.Grid{
		Key: "parts",
		Columns: []report.GridColumn{
			{Key: "part", Title: working.Tell("mixing.column_part", "part")},
			{Key: "counted", Title: working.Tell("mixing.column_factors", "factors"), Right: true},
			{Key: "weight", Title: working.Tell("mixing.column_balance", "balance"), Right: true},
			{Key: "shift", Title: working.Tell("mixing.column_shift", "moves the water by"), Right: true},
		},
	}
	for i, p := range c.Parts {
		g.Rows = append(g.Rows, []report.Cell{
			report.Of(nameOf(p.Name, i)), report.Of(p.Counted), report.Rounded(p.Weight, 2), report.Rounded(p.Shift, 1),
		})
	}
	g.Rows = append(g.Rows, []report.Cell{
		report.Of(working.Tell("mixing.label_heat", "heat of mixing")), {}, {}, report.Rounded(c.HeatShift, 1),
	})
	g.Total = []report.Cell{report.Of(working.Tell("mixing.label_difference", "factors less balance")), {}, {},
		report.Rounded(c.Difference, 1)}
	return report.Section{
		Key: "parts", Title: working.Tell("mixing.title_parts",
			"What each part counts, the water as one, and what it moves"),
		Blocks: []report.Block{g, report.Say(working.Tell("mixing.agree_today",
			"With a friction factor of %.1f both agree at these temperatures, and only at these.", c.AgreeingFriction)),
			report.Paragraph{
				Text: working.Tell(
					"mixing.far_from_measured", "Far from the day on which a friction factor was measured, believe the "+
						"balance."),
				Tone: report.Aside,
			}},
	}
}

// Report tells the friction factor and how to use it.
func (f Friction) Report() report.Report {
	out := report.Report{Headline: f.Message(), Sources: []working.Source{sources.NavyFriction}}
	rise, err := f.Rise()
	if err != nil {
		return out
	}
	out.Sections = []report.Section{{Key: "use", Title: working.Tell("mixing.title_use", "Use it"),
		Blocks: []report.Block{report.List{
			working.Tell("mixing.use_rise", "as a warming of the dough of %.1f, for any number of factors", rise),
			working.Tell("mixing.use_factor", "or as a friction factor of %.1f, for %d factors", f.Factor, f.Factors),
			working.Tell("mixing.use_holds", "it holds for the same mixer, dough weight, stiffness and mixing time"),
		}}}}
	return out
}

// Report tells the guide value and the figures behind it.
func (p Prior) Report() report.Report {
	out := report.Report{Headline: p.Message()}
	g := report.Grid{Key: "figures", Columns: []report.GridColumn{
		{Key: "what", Title: working.Tell("mixing.column_figure", "figure of the trade")},
		{Key: "friction", Title: working.Tell("mixing.label_friction", "friction factor"), Right: true},
	}}
	for _, f := range p.Figures {
		g.Rows = append(g.Rows, []report.Cell{report.Of(f.What), report.Rounded(f.Friction, 1)})
		out.Sources = append(out.Sources, f.Source)
	}
	if len(g.Rows) > 0 {
		out.Sections = []report.Section{{Key: "figures", Blocks: []report.Block{g}}}
		out.RestsOn = []working.Message{p.Evidence}
	}
	return out
}

// Report tells the weights of ice and tap water.
func (r IceResult) Report() report.Report {
	out := report.Report{Headline: r.Message(), Sources: []working.Source{sources.IceHeat, sources.IceTable}}
	if r.Total.IsZero() {
		return out
	}
	out.Sections = []report.Section{{Key: "ice", Blocks: []report.Block{report.Rows{
		{Label: working.Tell("mixing.label_ice", "ice"), Value: report.Rounded(r.Ice, 1)},
		{Label: working.Tell("mixing.label_tap_water", "tap water"), Value: report.Rounded(r.Liquid, 1)},
	}}}}
	return out
}

// Report tells what was found, and the ways to it.
func (r BalanceResult) Report() report.Report {
	out := report.Report{Headline: r.Message(), Sources: []working.Source{sources.HeatBalance, sources.GeankoplisHeats}}
	if r.Found == 0 {
		return out
	}
	rows := report.Rows{
		{Label: working.Tell("mixing.label_sensitivity", "dough for each degree of water"),
			Value: report.Rounded(r.Sensitivity, 2)},
		{Label: working.Tell("mixing.label_heat_added", "heat added, kJ"), Value: report.Rounded(r.HeatAdded, 1)},
	}
	out.Sections = []report.Section{{Key: "balance", Blocks: []report.Block{rows}}}
	return waysTo(out, r.Remedies)
}

// Report tells what the batches say of each speed.
func (l Learned) Report() report.Report {
	out := report.Report{Headline: l.Message(), Sources: []working.Source{sources.ConjugateRegression}}
	if !l.ok {
		return out
	}
	var rows report.Rows
	for i, e := range l.PerMinute {
		rows = append(rows, report.Row{
			Label: working.Tell("mixing.label_speed", "warming a minute at speed %d", i+1),
			Value: report.Rounded(e.Value, 2),
			Note:  working.Tell("mixing.note_error", "± %.2f", e.StandardError),
		})
	}
	rows = append(
		rows,
		report.Row{
			Label: working.Tell("mixing.label_bowl", "bowl, of the dough's heat capacity"),
			Value: report.Rounded(l.Bowl.Value, 1),
			Note:  working.Tell("mixing.note_share_error", "± %.1f", l.Bowl.StandardError),
		},
		report.Row{Label: working.Tell("mixing.label_strays", "one batch strays by"), Value: report.Rounded(l.Spread,
			1)},
	)
	out.Sections = []report.Section{{Key: "speeds", Blocks: []report.Block{rows}}}
	return out
}

// Report tells the range of the dough.
func (r Prediction) Report() report.Report {
	return report.Report{Headline: r.Message(), Sources: []working.Source{sources.ConjugateRegression}}
}

// Report tells how long the mixer may run.
func (t MinutesLeft) Report() report.Report {
	return report.Report{Headline: t.Message(), Sources: []working.Source{sources.Fieller}}
}

// Report tells what the change does to kneading.
func (r DoughChanged) Report() report.Report {
	out := report.Report{Headline: r.Message(), Sources: []working.Source{sources.Hlynka}}
	if r.Times == 0 {
		return out
	}
	out.Sections = []report.Section{{Key: "change", Blocks: []report.Block{report.Rows{
		{Label: working.Tell("mixing.label_times", "times the kneading time"), Value: report.Rounded(r.Times, 2)},
		{Label: working.Tell("mixing.label_points", "water at the same consistency, points of the flour"),
			Value: report.Rounded(r.Water.Points(), 1)},
	}}}}
	out.RestsOn = []working.Message{working.Tell("mixing.rests_one_flour",
		"one flour in a farinograph; the direction is sure, the size is not")}
	return out
}
