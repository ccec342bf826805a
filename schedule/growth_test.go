package schedule

import (
	"context"
	"errors"
	"testing"
	"time"
)

// growth is days of several breads in invented kitchens: home-of-n with one load of each of n doughs in one oven,
// shop-of-n with two loads of each on two to four decks. Known is the least cost in points of five minutes, 0 where
// there is no timetable, and by whom it was proven beside this package.
var growth = []struct {
	name  string
	known int
	by    string
	short bool // quick enough for every run of the tests
}{
	{"home-of-5", 1037, "HiGHS on a time-indexed model, 100 s", false},
	{"home-of-6", 1285, "nobody else: HiGHS not within 110 s", false},
	{"home-of-7", 1526, "nobody else: HiGHS has 1526 after 110 s, not proven", false},
	{"home-of-8", 0, "Chuffed on a constraint model, 1.8 s", false},
	{"shop-of-4", 1074, "nobody else", true},
	{"shop-of-6", 1520, "HiGHS, 15.6 s", false},
	{"shop-of-7", 1484, "nobody else", true},
	{"shop-of-8", 1845, "HiGHS, 18 s", false},
	{"shop-of-9", 2236, "HiGHS, 22 s", false},
	{"shop-of-10", 0, nobody, false},
	{"shop-of-11", 0, nobody, false},
	{"shop-of-12", 0, nobody, false},
}

// nobody knows the least cost.
const nobody = "nobody"

// Days of several breads cost what engines of other kinds proved, or are proven impossible as they say.
func TestDaysOfSeveralBreads(t *testing.T) {
	for _, g := range growth {
		if !g.short && (testing.Short() || g.name > "shop-of-7" || g.name == "shop-of-12" || g.name == "home-of-7") {
			continue
		}
		p := loadKitchen(t, g.name)
		if g.by == nobody {
			continue
		}
		if g.known == 0 {
			if ok, err := p.Possible(context.Background()); ok || err != nil {
				t.Errorf("%s is possible: %v, %v", g.name, ok, err)
			}
			continue
		}
		p.Effort = 40_000
		tt, err := p.Best(context.Background())
		if err != nil {
			t.Fatal(err)
		}
		switch {
		case tt.Verdict != Optimal || tt.Cost != 5*g.known:
			t.Errorf("%s: %v at %d, want %d (%s)", g.name, tt.Verdict, tt.Cost/5, g.known, g.by)
		case len(p.Check(tt)) > 0:
			t.Errorf("%s: breaks %v", g.name, p.Check(tt))
		}
	}
}

// Where the search has to stop the timetable is right, and the bound does not exceed what others proved; it rises with
// the effort.
func TestBoundsOfSeveralBreads(t *testing.T) {
	for _, g := range growth {
		if g.known == 0 || testing.Short() {
			continue
		}
		p, last := loadKitchen(t, g.name), 0
		for _, effort := range []int{350, 700} {
			p.Effort = effort
			tt, err := p.Best(context.Background())
			if err != nil {
				t.Fatal(err)
			}
			if tt.Bound > 5*g.known || tt.Cost < 5*g.known || tt.Bound < last || len(p.Check(tt)) > 0 {
				t.Errorf("%s: cost %d, bound %d after %d, known %d; breaks %v", g.name, tt.Cost, tt.Bound, last, 5*g.known,
					p.Check(tt))
			}
			last = tt.Bound
		}
	}
}

// How far a day of several breads gets in ten seconds (half a second with -short): the cost, the gap in percent, and
// the nodes.
func BenchmarkGrowth(b *testing.B) {
	limit := 10 * time.Second
	if testing.Short() {
		limit = time.Second / 2
	}
	for _, g := range growth {
		p := loadKitchen(b, g.name)
		b.Run(g.name, func(b *testing.B) {
			for b.Loop() {
				ctx, cancel := context.WithTimeout(context.Background(), limit)
				tt, err := p.Best(ctx)
				cancel()
				if err != nil && !errors.Is(err, context.DeadlineExceeded) {
					b.Fatal(err)
				}
				b.ReportMetric(float64(tt.Cost)/5, "points")
				b.ReportMetric(100*tt.Gap(), "%gap")
				b.ReportMetric(float64(tt.Nodes), "nodes")
			}
		})
	}
}
