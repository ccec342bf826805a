package bake

import (
	"math"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
)

// Report tells the setting on every scale.
func (o OvenDial) Report() report.Report {
	rows := report.Rows{
		{Label: working.Tell("bake.label_set", "set"), Value: report.Rounded(o.Set, 0), Note: o.why()},
		{
			Label: working.Tell("bake.label_dial", "on a dial"),
			Value: report.Of(working.Tell("bake.dial_both", "%s, %s", o.Dial.Text(quantity.CelsiusScale, 0),
				fahrenheitDial(o.Set).Text(quantity.FahrenheitScale, 0))),
		},
	}
	gas := report.Row{
		Label: working.Tell("bake.label_gas", "gas"),
		Value: report.Of(working.Tell("bake.no_mark", "no mark comes near")),
	}
	if o.Mark.IsValid() {
		gas.Value = report.Of(o.Mark)
		gas.Note = working.Tell("bake.mark_is", "which is %.0f, %s on dials", o.Mark.Temperature(),
			o.Mark.Dial().Text(quantity.CelsiusScale, 0))
	}
	blocks := []report.Block{append(rows, gas)}
	if len(o.in.Notes) > 0 {
		blocks = append(blocks, report.List(o.in.Notes))
	}
	if o.Set.Compare(quantity.Celsius(300)) > 0 {
		fahrenheit := quantity.Fahrenheit(o.Set.Celsius())
		blocks = append(blocks, report.Say(working.Tell("bake.setting_hot",
			"hotter than ovens for bread: %s would be %s; was it °F?",
			fahrenheit.Text(quantity.FahrenheitScale, 0), fahrenheit.Text(quantity.CelsiusScale, 0))))
	}
	if o.in.Fan {
		blocks = append(
			blocks,
			report.Say(
				working.Tell("bake.fan_advice", "advice on fan ovens differs: %.0f to %.0f; do not also cut the time",
					o.Advice.Low, o.Advice.High),
			),
		)
	}
	if o.in.Off.IsZero() {
		blocks = append(
			blocks,
			report.Say(working.Tell("bake.thermostats", "thermostats are off by %05.0f to %05.0f: put a thermometer in",
				quantity.DeltaCelsius(10), quantity.DeltaCelsius(30))),
		)
	}
	return report.Report{
		Headline: o.message(),
		Sections: []report.Section{
			{Key: "setting", Title: working.Tell("bake.title_setting", "On other scales"), Blocks: blocks},
		},
	}
}

// fahrenheitDial is what a dial in °F is turned to: a setting in whole fives as it is, another one at the nearest of
// the marks, which are 25 degrees apart, as recipes have it: 200 °C is 400 °F.
func fahrenheitDial(t quantity.Temperature) quantity.Temperature {
	f := t.Fahrenheit()
	if fives := 5 * math.Round(f/5); math.Abs(f-fives) < 0.01 {
		return quantity.Fahrenheit(fives)
	}
	return quantity.Fahrenheit(25 * math.Round(f/25))
}

// why says why the setting is not what is wanted.
func (o OvenDial) why() working.Message {
	switch sign := o.in.Off.Sign(); {
	case o.in.Fan && sign != 0:
		return working.Tell("bake.set_fan_and_error", "for %.0f, with a fan and an oven that is %+.0f off",
			o.in.Wanted, o.in.Off)
	case o.in.Fan:
		return working.Tell("bake.set_fan", "for %.0f, with a fan", o.in.Wanted)
	case sign > 0:
		return working.Tell("bake.set_hot", "for %.0f, in an oven that runs %.0f hot", o.in.Wanted, o.in.Off)
	case sign < 0:
		return working.Tell("bake.set_cold", "for %.0f, in an oven that runs %.0f cold", o.in.Wanted, o.in.Off.Neg())
	}
	return working.Message{}
}

// Report tells the phases of the bake.
func (pr Program) Report() report.Report {
	table := report.Grid{Key: "phases", Columns: []report.GridColumn{
		{Key: "start", Title: working.Tell("bake.column_start", "after"), Right: true},
		{Key: "phase", Title: working.Tell("bake.column_phase", "phase")},
		{Key: "takes", Title: working.Tell("bake.column_takes", "takes")},
		{Key: "oven", Title: working.Tell("bake.column_oven", "oven"), Right: true},
	}}
	for _, p := range pr.Phases {
		table.Rows = append(table.Rows, []report.Cell{
			report.Of(
				p.Start.Likely.Round(time.Minute),
			), report.Of(pr.phaseName(p)), lasts(p.Takes), report.Of(working.Tell("bake.set_to", "%05.0f", p.Oven)),
		})
	}
	return report.Report{
		Headline: pr.message(), Cautions: pr.Cautions(),
		Sections: []report.Section{{
			Key: "program", Title: working.Tell("bake.title_program", "%d {1|round|rounds} of %d, from switching on",
				pr.Rounds, pr.PerRound), Blocks: []report.Block{table, report.Rows{
				{
					Label: working.Tell("bake.label_each_bake", "each bake"),
					Value: report.Of(pr.Bake),
					Note:  pr.goBy(),
				},
				{Label: working.Tell("bake.label_in_all", "in all"), Value: report.Of(pr.Total)},
			}},
		}},
	}
}

// goBy says what decides when a piece is done.
func (pr Program) goBy() working.Message {
	if !pr.in.Style.ByCore() {
		return working.Tell("bake.go_by_color", "go by the color, not by the clock")
	}
	return working.Tell("bake.go_by_core", "go by the core and the color, not by the clock")
}

// phaseName says what is done, in which round of several.
func (pr Program) phaseName(p Phase) working.Message {
	switch one := pr.Rounds == 1 || p.Kind == Preheating; {
	case one && p.Note.IsZero():
		return working.Tell("bake.phase_name", "%v", p.Kind)
	case one:
		return working.Tell("bake.phase_name_note", "%v: %v", p.Kind, p.Note)
	case p.Note.IsZero():
		return working.Tell("bake.phase_round", "%v, round %d", p.Kind, p.Round)
	}
	return working.Tell("bake.phase_round_note", "%v, round %d: %v", p.Kind, p.Round, p.Note)
}

// lasts is a time, as a range where it is one.
func lasts(r quantity.TimeRange) report.Cell {
	switch {
	case r.Late == 0:
		return report.Cell{}
	case r.Spread() == 0:
		return report.Of(r.Likely.Round(time.Minute))
	}
	return report.Of(working.Tell("bake.lasts", "%v to %v", r.Early.Round(time.Minute), r.Late.Round(time.Minute)))
}

// Report tells the time.
func (b BakeTime) Report() report.Report {
	r := report.Report{Headline: b.message()}
	if b.ref.grams > 0 {
		r.Sources = []working.Source{b.ref.source}
	}
	return r
}
