package schedule

import (
	"context"
	"example.org/maslin/dough/quantity"
	"fmt"
	"testing"
	"time"
)

// hallDough is one retarded dough of the village hall over 48 hours at one-minute resolution,
// with awkward hours and a refrigerator that costs by the minute.
func hallDough(t testing.TB) Problem {
	t.Helper()
	p := loadKitchen(t, "home4")
	p.Grid = minute
	return p
}

func BenchmarkBestOneDoughByTheMinute(b *testing.B) {
	p := hallDough(b)
	for b.Loop() {
		t, err := p.Best(context.Background())
		if err != nil || t.Verdict != Optimal {
			b.Fatal(err, t.Verdict)
		}
	}
}

func BenchmarkBest(b *testing.B) {
	for _, name := range []string{"home4", "home8", "home12", "shop60"} {
		p := loadKitchen(b, name)
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				t, err := p.Best(context.Background())
				if err != nil || t.Verdict != Optimal {
					b.Fatal(err, t.Verdict)
				}
			}
		})
	}
}

func BenchmarkLatestOneDough(b *testing.B) {
	p := hallDough(b)
	for b.Loop() {
		if _, err := p.Latest(context.Background()); err != nil {
			b.Fatal(err)
		}
	}
}

// unshared is a day of 42 events that cannot be: 18 rules are in the way.
func unshared(b *testing.B) Problem {
	b.Helper()
	p := loadKitchen(b, "same-day-by-noon")
	for i := range p.Resources {
		p.Resources[i].Capacity = 0
	}
	return p
}

// Consistency and the minimal conflict of a network without shared resources.
func BenchmarkExplain(b *testing.B) {
	c, err := unshared(b).compile()
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		_, clash := c.net.Earliest(nil)
		if c.net.Shrink(nil, clash) == nil {
			b.Fatal("no conflict")
		}
	}
}

// sixty is two doughs of 30 steps in all, 60 events, around nights and work, wanted at an hour
// after the start.
func sixty(hours int) Problem {
	p := Problem{Anchor: dawn, Horizon: quantity.Elapsed(72 * time.Hour), Resources: []Resource{{ID: "baker"}}}
	for d := 0; d < 3; d++ {
		at := func(h int) time.Time { return dawn.Add(time.Duration(24*d+h) * time.Hour) }
		p.Resources[0].Closed = append(p.Resources[0].Closed, Span{From: at(16), To: at(24)},
			Span{From: at(3), To: at(9)})
	}
	for k := 0; k < 2; k++ {
		for i := 0; i < 15; i++ {
			s := DayStep{ID: fmt.Sprintf("%c%d", 'A'+k, i), Min: mins(20 + 10*(i%3))}
			if i%2 == 0 {
				s.Needs = []Need{{Resource: "baker", Amount: 1}}
			} else {
				s.Max = s.Min + mins(90)
			}
			if i == 9 {
				s.Min, s.Max = mins(480), mins(960)
			}
			p.Steps = append(p.Steps, s)
			if i > 0 {
				p.Links = append(p.Links, Link{From: p.Steps[len(p.Steps)-2].ID, To: s.ID, Max: mins(10)})
			}
		}
		p.Bounds = append(
			p.Bounds,
			Bound{
				Step:   p.Steps[len(p.Steps)-1].ID,
				Edge:   End,
				Latest: dawn.Add(time.Duration(hours+k) * time.Hour),
				Wanted: true,
			},
		)
	}
	return p
}

// Consistency of 60 events with the earliest and latest time of each, and the minimal conflict
// where there is one.
func BenchmarkSixtyEvents(b *testing.B) {
	for name, hours := range map[string]int{"feasible": 60, "infeasible": 20} {
		c, err := sixty(hours).compile()
		if err != nil {
			b.Fatal(err)
		}
		b.Run(name, func(b *testing.B) {
			rules := 0
			for b.Loop() {
				_, clash := c.net.Earliest(nil)
				if clash != nil {
					rules = len(c.net.Shrink(nil, clash).Rules)
				} else {
					c.net.Latest(nil)
				}
			}
			if (rules > 0) != (name == "infeasible") {
				b.Fatalf("%d rules in the way", rules)
			}
			b.ReportMetric(float64(rules), "rules")
		})
	}
}

// How good the timetable of the shop is after a time: its cost above the optimum of 1125 and the
// gap that is printed, in percent.
func BenchmarkShopAnytime(b *testing.B) {
	p := loadKitchen(b, "shop60")
	for _, limit := range []time.Duration{50 * time.Millisecond, 100 * time.Millisecond, 200 * time.Millisecond,
		500 * time.Millisecond, time.Second} {
		b.Run(limit.String(), func(b *testing.B) {
			for b.Loop() {
				ctx, cancel := context.WithTimeout(context.Background(), limit)
				t, err := p.Best(ctx)
				cancel()
				if err != nil {
					b.Fatal(err)
				}
				b.ReportMetric(float64(t.Cost)/5, "points")
				b.ReportMetric(100*(float64(t.Cost)/5/1125-1), "%above")
				b.ReportMetric(100*t.Gap(), "%gap")
			}
		})
	}
}

// Why the day cannot be, with reading the problem, the remedies and the nearest times.
func BenchmarkExplainWithRemedies(b *testing.B) {
	p := unshared(b)
	for b.Loop() {
		t, err := p.Latest(context.Background())
		if err != nil || t.Verdict != Infeasible {
			b.Fatal(err)
		}
	}
}

func BenchmarkConflictOfTwoDoughs(b *testing.B) {
	p := loadKitchen(b, "two-doughs-by-1500")
	for b.Loop() {
		t, err := p.Latest(context.Background())
		if err != nil || t.Verdict != Infeasible {
			b.Fatal(err)
		}
	}
}

// doughs is a day with n same-day doughs of two loads each, one baker, one mixer, two decks.
func doughs(n int) Problem {
	anchor := time.Date(2026, 3, 14, 4, 0, 0, 0, time.UTC)
	p := Problem{Anchor: anchor, Horizon: quantity.Elapsed(16 * time.Hour), Grid: quantity.Elapsed(5 * time.Minute),
		Resources: []Resource{
			{ID: "baker", Capacity: 1, Awkward: []Awkward{{From: anchor, To: anchor.Add(2 * time.Hour), PerMinute: 2}}},
			{ID: "mixer", Capacity: 1},
			{ID: "deck", Capacity: 2},
		}}
	hands := []Need{{Resource: "baker", Amount: 1}}
	for k := 0; k < n; k++ {
		name := func(s string) string { return fmt.Sprintf("dough %d %s", k+1, s) }
		p.Steps = append(
			p.Steps,
			DayStep{
				ID:    name("mix"),
				Min:   mins(20),
				Needs: []Need{{Resource: "baker", Amount: 1}, {Resource: "mixer", Amount: 1}},
			},
			DayStep{ID: name("bulk"), Min: mins(120 + 15*(k%3)), Max: mins(180 + 15*(k%3))},
			DayStep{ID: name("shape"), Min: mins(20), Needs: hands},
		)
		p.Links = append(p.Links, Link{From: name("mix"), To: name("bulk")},
			Link{From: name("bulk"), To: name("shape")})
		var loads []string
		for _, l := range []string{"first", "second"} {
			proof, bake, cool := name(l+" proof"), name(l+" bake"), name(l+" cool")
			p.Steps = append(
				p.Steps,
				DayStep{ID: proof, Min: mins(60), Max: mins(100), PerMinute: 1},
				DayStep{
					ID:    bake,
					Min:   mins(45),
					Needs: []Need{{Resource: "deck", Amount: 1}},
				},
				DayStep{ID: cool, Min: mins(60)},
			)
			p.Links = append(p.Links, Link{From: name("shape"), To: proof}, Link{From: proof, To: bake},
				Link{From: bake, To: cool})
			p.Bounds = append(
				p.Bounds,
				Bound{
					Step:           cool,
					Edge:           End,
					Latest:         anchor.Add(time.Duration(9+k%4) * time.Hour),
					EarlyPerMinute: 1,
					Wanted:         true,
				},
			)
			loads = append(loads, bake)
		}
		p.Alike = append(p.Alike, loads)
	}
	return p
}

// How the time grows with the number of doughs.
func BenchmarkDoughs(b *testing.B) {
	for n := 1; n <= 8; n++ {
		p := doughs(n)
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			nodes := 0
			for b.Loop() {
				ctx, cancel := context.WithTimeout(context.Background(), 10*time.Second)
				t, err := p.Best(ctx)
				cancel()
				if err != nil {
					b.Fatal(err)
				}
				nodes = t.Nodes
				b.ReportMetric(100*t.Gap(), "%gap")
			}
			b.ReportMetric(float64(nodes), "nodes")
		})
	}
}

// A thousand steps one after the other.
func thousand() Problem {
	p := Problem{
		Anchor:    dawn,
		Horizon:   quantity.Elapsed(30 * 24 * time.Hour),
		Resources: []Resource{{ID: "baker", Capacity: 1}},
	}
	for i := 0; i < 1000; i++ {
		p.Steps = append(
			p.Steps,
			DayStep{ID: fmt.Sprint("step ", i), Min: mins(5), Max: mins(9), Needs: []Need{{Resource: "baker", Amount: 1}}},
		)
		if i > 0 {
			p.Links = append(p.Links, Link{From: fmt.Sprint("step ", i-1), To: fmt.Sprint("step ", i), Max: mins(60)})
		}
	}
	return p
}

func BenchmarkThousandSteps(b *testing.B) {
	p := thousand()
	for b.Loop() {
		t, err := p.Latest(context.Background())
		if err != nil || t.Verdict != Optimal {
			b.Fatal(err, t.Verdict)
		}
	}
}
