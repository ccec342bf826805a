package schedule

import (
	"context"
	"errors"
	"example.org/maslin/dough/quantity"
	"fmt"
	"testing"
	"time"
)

// crowd is a day on which every step of many doughs wants the same hands or the same oven:
// chains of five steps each, free against each other.
func crowd(steps int) Problem {
	p := Problem{
		Anchor:  dawn,
		Horizon: quantity.Elapsed(60 * 24 * time.Hour),
		Grid:    quantity.Elapsed(5 * time.Minute),
		Resources: []Resource{
			{ID: "hands", Capacity: 2}, {ID: "oven", Capacity: 1, Changeover: mins(15)}, {ID: "bench", Capacity: 6}},
	}
	for i := 0; i < steps; i++ {
		s := DayStep{ID: fmt.Sprint("step ", i), Min: mins(10 + 5*(i%7)), PerMinute: 1}
		switch i % 5 {
		case 4:
			s.Needs = []Need{{Resource: "oven", Amount: 1}}
		case 2:
			s.Max = s.Min + mins(60)
			s.Needs = []Need{{Resource: "bench", Amount: 1 + i%3}}
		default:
			s.Needs = []Need{{Resource: "hands", Amount: 1}, {Resource: "bench", Amount: 1}}
		}
		p.Steps = append(p.Steps, s)
		if i%5 > 0 {
			p.Links = append(p.Links, Link{From: fmt.Sprint("step ", i-1), To: fmt.Sprint("step ", i), Max: mins(120)})
		}
	}
	return p
}

// tooEarly wants everything sooner than the shared resources allow.
func tooEarly(p Problem, within time.Duration) Problem {
	p.Bounds = nil
	for _, s := range p.Steps {
		p.Bounds = append(p.Bounds, Bound{Step: s.ID, Edge: End, Latest: p.Anchor.Add(within), Wanted: true})
	}
	return p
}

// deadlines are problems for which the time runs out in different places.
func deadlines() map[string]Problem {
	out := map[string]Problem{"1000 steps": crowd(1000), "300 steps": crowd(300), "2000 steps": crowd(2000),
		"1000 steps too early": tooEarly(crowd(1000),
			48*time.Hour), "300 steps too early": tooEarly(crowd(300), 20*time.Hour),
		"1000 steps, no time": tooEarly(crowd(1000), 10*time.Minute)}
	for _, n := range []int{10, 15, 20, 30, 40, 60} {
		out[fmt.Sprintf("%d doughs", n)] = doughs(n)
		out[fmt.Sprintf("%d doughs in a week", n)] = longer(doughs(n))
		out[fmt.Sprintf("%d doughs too early", n)] = tooEarly(doughs(n), 8*time.Hour)
	}
	return out
}

// longer spreads the doughs of a day over six days.
func longer(p Problem) Problem {
	p.Horizon = quantity.Elapsed(7 * 24 * time.Hour)
	for i := range p.Bounds {
		p.Bounds[i].Latest = p.Bounds[i].Latest.Add(time.Duration(i/2%6) * 24 * time.Hour)
	}
	return p
}

// How long after the deadline the answer comes.
func BenchmarkDeadline(b *testing.B) {
	for name, p := range deadlines() {
		for call, solve := range map[string]func(Problem, context.Context) (Timetable, error){"Best": Problem.Best,
			"Latest": Problem.Latest} {
			for _, limit := range []time.Duration{time.Millisecond, 20 * time.Millisecond, 100 * time.Millisecond} {
				b.Run(fmt.Sprintf("%s/%s/%v", name, call, limit), func(b *testing.B) {
					worst := time.Duration(0)
					for b.Loop() {
						ctx, cancel := context.WithTimeout(context.Background(), limit)
						start := time.Now()
						_, err := solve(p, ctx)
						over := time.Since(start) - limit
						cancel()
						if err != nil && !errors.Is(err, context.DeadlineExceeded) { // time that ran out is an answer here
							b.Fatal(err)
						}
						worst = max(worst, over)
					}
					b.ReportMetric(float64(worst.Microseconds())/1000, "overrun-ms")
				})
			}
		}
	}
}
