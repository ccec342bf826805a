package bakeday

import (
	"context"
	"regexp"
	"strings"
	"testing"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/trial"
	"example.org/maslin/schedule/wallclock"
)

// Whole days as they are told today: pages, derivations and tables. Nothing is lost from one, and none of its numbers
// moves, without somebody seeing it. That they are right the other tests know: the judge, what is worked out by hand,
// and the reader of workings.
func TestWholeDays(t *testing.T) {
	warm := rolls()
	warm.Kitchen.Day = quantity.Celsius(29) // so that the water cannot be cold enough
	late := hall()
	late.Kitchen.Away = []wallclock.Habit{wallclock.MustHabit("08:00 to 22:30")} // nobody is there to mix it
	for name, b := range map[string]Bake{
		"hall": hall(), "rolls": rolls(), "sticks": sticks(), "filled": filled(), "by-weight": loafByWeight(),
		"warm": warm, "late": late,
	} {
		d := plan(t, b)
		told := d.Report().Text(report.Options{Width: 110}) + "\n" + d.Data().CSV()
		if name == "hall" || name == "sticks" { // whose derivations have a step of each kind
			for _, w := range d.Workings() {
				told += "\n" + working.Telling{Level: working.WithNumbers, Width: 110}.Text(w)
			}
		}
		trial.Kept(t, "days/"+name+".txt", told)
	}
}

// The day of a kitchen with three breads, and what is left of it when one of them is late.
func TestAWholeKitchen(t *testing.T) {
	k := planAll(t, sunday())
	var b strings.Builder
	b.WriteString(k.Report().Text(report.Options{Width: 110}) + "\n" + k.DayReport().Text(report.Options{Width: 110}))
	for _, r := range k.BreadReports() {
		b.WriteString("\n" + r.Text(report.Options{Width: 110}))
	}
	trial.Kept(t, "days/kitchen.txt", b.String())
}

// What could be changed of a bake that does not fit, with what each change is worth.
func TestAWholeFit(t *testing.T) {
	told := ""
	for _, b := range []Bake{slow(), fiveLevers()} {
		fit, err := b.Fit(context.Background(), wednesday(t), nil)
		if err != nil {
			t.Fatal(err)
		}
		told += fit.Report().Text(report.Options{Width: 110}) + "\n"
	}
	trial.Kept(t, "days/fit.txt", told)
}

var drawings = regexp.MustCompile(`(?s)<(style|svg|script).*?</(style|svg|script)>`)

// The sheet for the kitchen wall, without its drawings and its style.
func TestAWholeSheet(t *testing.T) {
	trial.Kept(t, "days/sheet.html", drawings.ReplaceAllString(string(plan(t, hall()).Sheet(report.Options{})), ""))
}

// The rest of a day of which the loaf is shaped 40 minutes late.
func TestAWholeDayThatIsLate(t *testing.T) {
	r, after := goOn(t, planAll(t, sunday()), Late{Step: "Loaf/shape", By: minutes(40)})
	trial.Kept(t, "days/late-kitchen.txt", r.Report().Text(report.Options{Width: 110})+"\n"+
		after.DayReport().Text(report.Options{Width: 110}))
}
