package schedule_test

import (
	"context"
	"fmt"
	"time"

	"example.org/maslin/schedule"
)

// Rolls for supper at 18:00: the latest time for each step, and from when it may start.
func Example() {
	noon := time.Date(2026, 11, 28, 12, 0, 0, 0, time.UTC)
	supper := noon.Add(6 * time.Hour)
	timetable, err := schedule.Problem{
		Anchor: noon, Horizon: 8 * time.Hour,
		Steps: []schedule.Step{
			{Name: "mix", Min: 20 * time.Minute},
			{Name: "bulk", Min: 90 * time.Minute, Max: 120 * time.Minute},
			{Name: "shape", Min: 30 * time.Minute},
			{Name: "proof", Min: 45 * time.Minute, Max: 70 * time.Minute},
			{Name: "bake", Min: 20 * time.Minute},
			{Name: "cool", Min: 40 * time.Minute},
		},
		Links: []schedule.Link{
			{From: "mix", To: "bulk"}, {From: "bulk", To: "shape"}, {From: "shape", To: "proof"}, {From: "proof", To: "bake"}, {From: "bake", To: "cool"},
		},
		Bounds: []schedule.Bound{{Step: "cool", Edge: schedule.End, Latest: supper, Wanted: true, Words: "supper at 18:00"}},
	}.Latest(context.Background())
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, s := range timetable.Steps {
		fmt.Println(s.Start.Format("15:04"), s.Name, "(from", s.EarliestStart.Format("15:04)"))
	}
	// Output:
	// 13:55 mix (from 12:00)
	// 14:15 bulk (from 12:20)
	// 15:45 shape (from 13:50)
	// 16:15 proof (from 14:20)
	// 17:00 bake (from 15:05)
	// 17:20 cool (from 15:25)
}
