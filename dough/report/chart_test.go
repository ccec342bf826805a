package report_test

import (
	"strings"
	"testing"

	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
)

// A time of day stands at the axis and in the key as it does in the sentences of the same reader.
func TestChartClockOfItsReader(t *testing.T) {
	c := report.Chart{
		X:     report.Series{Name: working.Say("time of day"), Of: report.ClockHours, Values: []float64{11, 12, 13.5, 16}},
		Main:  report.Series{Name: working.Say("rise"), Of: report.Percents, Values: []float64{0, 5, 20, 60}},
		Marks: []report.Mark{{At: 13.5, Text: working.Say("look")}},
	}
	text := func(on report.Options) string {
		r := report.Report{Sections: []report.Section{{Blocks: []report.Block{c}}}}
		return r.Text(on)
	}
	us, metric := text(report.Options{Units: working.USCustomary}), text(report.Options{})
	for want, page := range map[string]string{"1:30 pm  look": us, "13:30  look": metric, " 12:00 pm": us,
		" 12:00 ": metric} {
		if !strings.Contains(page, want) {
			t.Errorf("want %q in %s", want, page)
		}
	}
	if strings.Contains(us, "13:") {
		t.Errorf("two clocks: %s", us)
	}
}
