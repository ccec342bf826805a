package schedule_test

import (
	"context"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"fmt"
	"time"

	"example.org/maslin/schedule"
)

// Rolls for supper at 18:00: the latest time for each step, and from when it may start.
func Example() {
	noon := time.Date(2026, 11, 28, 12, 0, 0, 0, time.UTC)
	supper := noon.Add(6 * time.Hour)
	timetable, err := schedule.Problem{
		Anchor: noon, Horizon: quantity.Elapsed(8 * time.Hour),
		Steps: []schedule.DayStep{
			{ID: "mix", Min: quantity.Elapsed(20 * time.Minute)},
			{ID: "bulk", Min: quantity.Elapsed(90 * time.Minute), Max: quantity.Elapsed(120 * time.Minute)},
			{ID: "shape", Min: quantity.Elapsed(30 * time.Minute)},
			{ID: "proof", Min: quantity.Elapsed(45 * time.Minute), Max: quantity.Elapsed(70 * time.Minute)},
			{ID: "bake", Min: quantity.Elapsed(20 * time.Minute)},
			{ID: "cool", Min: quantity.Elapsed(40 * time.Minute)},
		},
		Links: []schedule.Link{
			{
				From: "mix",
				To:   "bulk",
			}, {From: "bulk", To: "shape"}, {From: "shape", To: "proof"}, {From: "proof", To: "bake"}, {From: "bake", To: "cool"},
		},
		Bounds: []schedule.Bound{
			{Step: "cool", Edge: schedule.End, Latest: supper, Wanted: true, Words: working.Say("supper at 18:00")},
		},
	}.Latest(context.Background())
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, s := range timetable.Steps {
		fmt.Println(s.Start.Format("15:04"), s.ID, "(from", s.EarliestStart.Format("15:04)"))
	}
	// Output:
	// 13:55 mix (from 12:00)
	// 14:15 bulk (from 12:20)
	// 15:45 shape (from 13:50)
	// 16:15 proof (from 14:20)
	// 17:00 bake (from 15:05)
	// 17:20 cool (from 15:25)
}
