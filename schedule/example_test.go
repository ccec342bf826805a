package schedule_test

import (
	"context"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"fmt"
	"time"

	"example.org/maslin/schedule"
)

// saturday is a maslin loaf for lunch in the village hall: the dough is mixed on Friday
// afternoon, spends the night in the cold and is baked on Saturday morning.
func saturday() schedule.Problem {
	friday := time.Date(2026, 3, 13, 15, 0, 0, 0, time.UTC)
	at := func(h, m int) time.Time {
		return friday.Add(time.Duration(h)*time.Hour + time.Duration(m)*time.Minute)
	}
	h, m := time.Hour, time.Minute
	hands := []schedule.Need{{Resource: "baker", Amount: 1}}
	return schedule.Problem{
		Anchor: friday, Horizon: quantity.Elapsed(24 * h),
		Steps: []schedule.DayStep{
			{ID: "mix", Min: quantity.Elapsed(20 * m), Needs: hands},
			{
				ID:     "bulk",
				Min:    quantity.Elapsed(4 * h),
				Likely: quantity.Elapsed(5 * h),
				Max:    quantity.Elapsed(6 * h),
				Living: true,
				Watch:  "baker",
			},
			{ID: "shape", Min: quantity.Elapsed(30 * m), Needs: hands},
			{
				ID:        "retard",
				Min:       quantity.Elapsed(8 * h),
				Max:       quantity.Elapsed(16 * h),
				MinWords:  working.Say("retard at least 8 h"),
				PerMinute: 1,
			},
			{
				ID:    "bake",
				Min:   quantity.Elapsed(50 * m),
				Needs: []schedule.Need{{Resource: "baker", Amount: 1}, {Resource: "oven", Amount: 1}},
			},
			{ID: "cool", Min: quantity.Elapsed(2 * h)},
		},
		Links: []schedule.Link{
			{
				From: "mix",
				To:   "bulk",
			}, {From: "bulk", To: "shape", Max: quantity.Elapsed(20 * m)}, {From: "shape", To: "retard"},
			{From: "retard", To: "bake"}, {From: "bake", To: "cool"},
		},
		Bounds: []schedule.Bound{
			{Step: "cool", Edge: schedule.End, Latest: at(21, 30), Wanted: true, Words: working.Say("lunch at 12:30")},
		},
		Resources: []schedule.Resource{
			{ID: "baker", Capacity: 1,
				Closed: []schedule.Span{
					{From: at(7, 30), To: at(15, 30), Words: working.Say("asleep 22:30 to 06:30")},
				},
				Awkward: []schedule.Awkward{{From: at(6, 30), To: at(7, 30), PerMinute: 3}}},
			{ID: "oven", Capacity: 1},
		},
	}
}

func ExampleProblem_Latest() {
	t, err := saturday().Latest(context.Background())
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, s := range t.Steps {
		fmt.Printf("%-7s %s to %s, held by: %s\n", s.ID, s.Start.Format("Mon 15:04"), s.End.Format("15:04"), s.Drives)
	}
	// Output:
	// mix     Fri 16:40 to 17:00, held by: asleep 22:30 to 06:30
	// bulk    Fri 17:00 to 22:00, held by: asleep 22:30 to 06:30
	// shape   Fri 22:00 to 22:30, held by: asleep 22:30 to 06:30
	// retard  Fri 22:30 to 09:40, held by: asleep 22:30 to 06:30
	// bake    Sat 09:40 to 10:30, held by: lunch at 12:30
	// cool    Sat 10:30 to 12:30, held by: lunch at 12:30
}

func ExampleProblem_Earliest() {
	t, err := saturday().Earliest(context.Background())
	if err != nil {
		fmt.Println(err)
		return
	}
	shape, _ := t.Step("shape")
	fmt.Println("shape", shape.Start.Format("15:04"), "at the earliest,", shape.Slack, "slack")
	// Output: shape 20:20 at the earliest, 1h40m slack
}

func ExampleProblem_Best() {
	t, err := saturday().Best(context.Background())
	if err != nil {
		fmt.Println(err)
		return
	}
	shape, _ := t.Step("shape")
	retard, _ := t.Step("retard")
	// Shaping before the awkward hour from 21:30 costs an hour more in the refrigerator, 60
	// points; shaping in it would cost 90.
	fmt.Println(t.Verdict, t.Cost, "points: shape", shape.Start.Format("15:04"), "and retard",
		retard.End.Sub(retard.Start))
	// Output: optimal 540 points: shape 21:00 and retard 9h0m0s
}

// Breakfast at nine cannot be had, and the answer says what is in the way and what would help.
func ExampleConflict() {
	p := saturday()
	p.Bounds[0].Latest = p.Bounds[0].Latest.Add(-3*time.Hour - 30*time.Minute)
	p.Bounds[0].Words = working.Say("breakfast at 09:00")
	p.Firm = true                   // it is Friday 15:00
	for _, i := range []int{4, 5} { // oven and loaf have their time
		p.Steps[i].MinFirm, p.Steps[i].MaxFirm = true, true
	}
	t, err := p.Latest(context.Background())
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(t)
	// Output:
	// no timetable: these cannot all be kept, they miss each other by 20m: asleep 22:30 to 06:30; one after the other, together 10h50m: retard at least 8 h, bake takes 50m, cool takes 2h; nothing before Fri 15:00; breakfast at 09:00
	//   asleep 22:30 to 06:30 (until Sat 06:10 instead of Sat 06:30)
	//   breakfast at 09:00 (20m later: Sat 09:20)
	//   retard at least 8 h (7h10m shorter: 50m)
	// would work: Sat 09:20, 20m later
}

func ExampleTimetable_Robust() {
	t, err := saturday().Latest(context.Background())
	if err != nil {
		fmt.Println(err)
		return
	}
	r, err := t.Robust(context.Background())
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(r.Survives, r.ByMoving)
	fmt.Println(r.Watches[0].Warning)
	// Output:
	// false true
	// bulk may be ready as late as Fri 23:00, but baker is away from Fri 22:30
}

// The dough was shaped 40 minutes late; the rest of the day is planned again.
func ExampleProblem_Midway() {
	p := saturday()
	before, err := p.Latest(context.Background())
	if err != nil {
		fmt.Println(err)
		return
	}
	at := func(h, m int) time.Time {
		return p.Anchor.Add(time.Duration(h-15)*time.Hour + time.Duration(m)*time.Minute)
	}
	left, err := p.Midway(schedule.Midway{Now: at(23, 10), Done: []schedule.Done{
		{Step: "mix", Start: at(16, 40), End: at(17, 0)},
		{Step: "bulk", Start: at(17, 0), End: at(22, 40)},
		{Step: "shape", Start: at(22, 40), End: at(23, 10)},
	}})
	if err != nil {
		fmt.Println(err)
		return
	}
	after, err := left.Latest(context.Background())
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, c := range schedule.Changes(before, after) {
		fmt.Println(c)
	}
	// Output:
	// bulk 40m longer
	// shape moves to Fri 22:40
	// retard 40m shorter, from Fri 23:10
}

func ExampleChanges() {
	p := saturday()
	before, _ := p.Latest(context.Background())
	p.Bounds[0].Latest = p.Bounds[0].Latest.Add(35 * time.Minute)
	after, _ := p.Latest(context.Background())
	for _, c := range schedule.Changes(before, after) {
		fmt.Println(c)
	}
	// Output:
	// retard 35m longer
	// bake moves to Sat 10:15
	// cool moves to Sat 11:05
}

func ExampleProblem_Check() {
	p := saturday()
	t, _ := p.Latest(context.Background())
	fmt.Println(p.Check(t))
	t.Steps[2].Start = t.Steps[2].Start.Add(time.Hour)
	t.Steps[2].End = t.Steps[2].End.Add(time.Hour)
	for _, broken := range p.Check(t) {
		fmt.Println(broken)
	}
	// Output:
	// []
	// bulk to shape (end to start): 1h
	// shape to retard (end to start): −1h
	// shape during asleep 22:30 to 06:30
}

func ExampleTimetable_Working() {
	t, _ := saturday().Latest(context.Background())
	for _, line := range (working.Telling{}).TextLines(t.Working())[:4] {
		fmt.Println(line)
	}
	// Output:
	// E_6 = Sat 12:30
	// S_6 = E_6 − T = Sat 12:30 − 120 min = Sat 10:30
	// E_5 = S_6 − T_2 = Sat 10:30 − 0 min = Sat 10:30
	// S_5 = E_5 − T_3 = Sat 10:30 − 50 min = Sat 09:40
}

// When does everything happen? And what else could a step do?
func ExampleProblem_LatestTimes() {
	ctx := context.Background()
	plan, ok, err := saturday().LatestTimes(ctx)
	if err != nil || !ok {
		fmt.Println(ok, err)
		return
	}
	mix, _ := plan.Step("mix")
	fmt.Println("mix at", mix.Start.Format("Mon 15:04"))
	mix, _ = plan.Described(ctx).Step("mix")
	fmt.Println("not before", mix.EarliestStart.Format("15:04"), "nor after", mix.LatestStart.Format("15:04"))
	// Output:
	// mix at Fri 16:40
	// not before 15:00 nor after 16:40
}
