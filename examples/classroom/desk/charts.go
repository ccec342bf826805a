package desk

import (
	"math"
	"time"

	"example.org/maslin/bake"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/ferment"
)

// Pictures that are answers of the library put side by side: each point is one answer.

func chartSection(key string, c report.Chart) report.Section {
	return report.Section{Key: key, Title: c.Title, Blocks: []report.Block{c}}
}

// boilingChart is the boiling point from the sea to above the altitude.
func boilingChart(here quantity.Length, point quantity.Temperature) (report.Section, error) {
	c := report.Chart{
		Title: working.Tell("desk.chart_boiling", "Boiling point by altitude"),
		X:     report.Series{Name: working.Tell("desk.field_altitude", "altitude"), Of: report.MetersAbove},
		Main:  report.Series{Name: working.Tell("desk.chart_boils", "water boils at"), Of: report.Degrees},
		Marks: []report.Mark{{At: here.Meters(), Text: working.Tell("desk.chart_here", "here, %.1f", point)}},
	}
	top := max(here.Meters()*1.2, 3000)
	for i := range 31 {
		meters := top * float64(i) / 30
		b, err := bake.At(quantity.Meters(meters)).BoilingPoint()
		if err != nil {
			return report.Section{}, err
		}
		c.X.Values, c.Main.Values = append(c.X.Values, meters), append(c.Main.Values, b.Point.Celsius())
	}
	return chartSection("boiling", c), nil
}

// coolingChart is the core while it cools, as it is likely: the answers for one core after the other.
func coolingChart(in bake.CoolingLoaf, slice quantity.Temperature) (report.Section, error) {
	c := report.Chart{
		Title:  working.Tell("desk.chart_cooling", "The core while it cools"),
		X:      report.Series{Name: working.Tell("desk.chart_out", "out of the oven"), Of: report.Minutes},
		Main:   report.Series{Name: working.Tell("desk.field_core", "core"), Of: report.Degrees},
		Levels: []report.Mark{{At: slice.Celsius(), Text: working.Tell("desk.chart_slice", "sliced at %.0f", slice)}},
	}
	last := -1.0
	for celsius := 80.0; celsius >= slice.Celsius()-0.5; celsius -= 2.5 {
		in.Slice = quantity.Celsius(celsius)
		t, err := in.Time()
		if err != nil {
			return report.Section{}, err
		}
		if minutes := t.Ready.Likely.Minutes(); minutes > last {
			last = minutes
			c.X.Values, c.Main.Values = append(c.X.Values, minutes), append(c.Main.Values, celsius)
		}
	}
	return chartSection("cooling", c), nil
}

// probeChart is the readings of a probe, with the target and the boiling point that they run up to.
func probeChart(samples []bake.Sample, l bake.Left) report.Section {
	c := report.Chart{
		Title: working.Tell("desk.field_samples", "readings of the probe"),
		X:     report.Series{Name: working.Tell("desk.field_in_oven", "in the oven since"), Of: report.Minutes},
		Main:  report.Series{Name: working.Tell("desk.field_core", "core"), Of: report.Degrees},
		Levels: []report.Mark{
			{At: l.Target.Celsius(), Text: working.Tell("desk.chart_target", "target, %.1f", l.Target)},
			{At: l.Boiling.Celsius(), Text: working.Tell("desk.chart_boiling_here", "water boils, %.1f", l.Boiling)},
		},
	}
	for _, s := range samples {
		c.X.Values = append(c.X.Values, time.Duration(s.At).Minutes())
		c.Main.Values = append(c.Main.Values, s.Core.Celsius())
	}
	return chartSection("readings", c)
}

// rivalsChart is the growth by the chosen curve, in percent of its own at 27 °C, in the band that all curves leave:
// where the band is wide they do not agree. A curve that stands still at 27 °C has no such percent and is left out.
func rivalsChart(chosen ferment.Curve) report.Section {
	c := report.Chart{
		Title: working.Tell("desk.chart_rivals",
			"Growth against the temperature, in percent of that at 27 °C: %s", chosen.About().Name),
		X:    report.Series{Name: working.Tell("desk.field_temperature", "temperature"), Of: report.Degrees},
		Main: report.Series{Name: working.Tell("desk.chart_chosen", "the chosen curve"), Of: report.Percents},
		Low:  report.Series{Name: working.Tell("desk.chart_slowest", "slowest"), Of: report.Percents},
		High: report.Series{Name: working.Tell("desk.chart_fastest", "fastest"), Of: report.Percents},
	}
	const standard = 27.0
	for celsius := 4.0; celsius <= 36; celsius++ {
		low, high := math.Inf(1), math.Inf(-1)
		for _, rival := range ferment.Curves() {
			if at := rival.Rate(standard); at > 0 {
				share := 100 * rival.Rate(celsius) / at
				low, high = min(low, share), max(high, share)
			}
		}
		c.X.Values = append(c.X.Values, celsius)
		c.Main.Values = append(c.Main.Values, 100*chosen.Rate(celsius)/chosen.Rate(standard))
		c.Low.Values, c.High.Values = append(c.Low.Values, low), append(c.High.Values, high)
	}
	return chartSection("rivals", c)
}
