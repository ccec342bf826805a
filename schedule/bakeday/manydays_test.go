package bakeday

import (
	"context"
	"fmt"
	"testing"

	"example.org/maslin/dough/report"
	"example.org/maslin/internal/trial"
	"example.org/maslin/schedule"
)

// Days of random breads in random kitchens as they are told today, those that can be and those that cannot, and what is
// left of one when a step of it comes late. The judge says that such days are right; here no word of one is lost, and
// no number moves unseen.
func TestManyDaysInWords(t *testing.T) {
	o := report.Options{Width: 110}
	for _, seed := range []int{1, 3, 9, 14, 30, 34} {
		d := someDay(randomly(seed))
		k, err := d.Plan(context.Background(), d.clock(t))
		if err != nil {
			t.Fatal(seed, err)
		}
		told := k.DayReport().Text(o)
		if k.Possible() {
			for _, r := range k.BreadReports() {
				told += "\n" + r.Text(o)
			}
			late := firstHands(k)
			r, err := k.Replan(context.Background(), Late{Step: late, By: minutes(35)})
			told += fmt.Sprintf("\n%s 35 minutes late: %v\n%s", late, err, r.Report().Text(o))
		}
		trial.Kept(t, fmt.Sprintf("many/%02d.txt", seed), told)
	}
}

// firstHands is the first mixing or shaping of a day.
func firstHands(k KitchenDay) string {
	for _, s := range k.Data().Steps {
		if s.Kind == schedule.Mix || s.Kind == schedule.Shape {
			return s.ID
		}
	}
	return ""
}
