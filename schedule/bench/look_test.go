package bench_test

import (
	"context"
	"strings"
	"testing"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule"
	"example.org/maslin/schedule/bench"
)

// What is to be looked for is what this dough shows: one of rye cracks, one of wheat domes, and one that is shaped soon
// shows hardly anything.
func TestLookForWhatTheDoughShows(t *testing.T) {
	for name, c := range map[string]struct {
		rye, shapeAt float64
		bulk, levain string
	}{
		"wheat":  {0, 60, "domed", "ripe when it is domed"},
		"lively": {0, 30, "does not dome yet", "ripe when it is domed"},
		"soon":   {0, 11.9, "hardly shows", "ripe when it is domed"},
		"shows":  {0, 12, "does not dome yet", "ripe when it is domed"},
		"full":   {0, 40, "domed", "ripe when it is domed"},
		"rye":    {60, 40, "fine cracks", "its floured top has cracks"},
	} {
		b := hall(t)
		b.Flours[0].Percent, b.Flours[1].Percent = quantity.NewPercent(100-c.rye), quantity.NewPercent(c.rye)
		if b.Levain.Flour = "wheat"; c.rye == 0 {
			b.Flours = b.Flours[:1]
		} else {
			b.Levain.Flour = "rye"
		}
		b.Bulk.ShapeAt = quantity.NewPercent(c.shapeAt)
		b.Flours[0].Kind = dough.KindWheat
		m, err := bench.Under{Bake: b}.At(context.Background(), clock(at(4, 6, 0)))
		if err != nil || !m.Day.Possible() {
			t.Fatal(name, err)
		}
		for _, s := range m.Steps {
			var says []string
			for _, w := range m.LookFor(s) {
				says = append(says, w.String())
			}
			all := strings.Join(says, "; ")
			switch s.Kind {
			case schedule.Bulk:
				if !strings.Contains(all, c.bulk) {
					t.Errorf("%s: bulk: %s", name, all)
				}
			case schedule.Ripen:
				if !strings.Contains(all, c.levain) {
					t.Errorf("%s: levain: %s", name, all)
				}
			}
		}
	}
}
