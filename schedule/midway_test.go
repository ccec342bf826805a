package schedule

import (
	"context"
	"errors"
	"example.org/maslin/dough/working"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
)

// hall is a retarded maslin loaf for a Saturday lunch at 12:30.
func hall() Problem {
	thursday := time.Date(2026, 3, 12, 18, 0, 0, 0, time.UTC)
	at := func(day, h, m int) time.Time { return time.Date(2026, 3, day, h, m, 0, 0, time.UTC) }
	baker := []Need{{Resource: "baker", Amount: 1}}
	return Problem{Anchor: thursday, Horizon: quantity.Elapsed(48 * time.Hour),
		Steps: []DayStep{
			{ID: "feed", Min: mins(10), Needs: baker},
			{ID: "levain", Min: quantity.Elapsed(7 * time.Hour), Max: quantity.Elapsed(12 * time.Hour)},
			{ID: "mix", Min: mins(20), Needs: baker},
			{
				ID:     "bulk",
				Min:    quantity.Elapsed(4 * time.Hour),
				Max:    quantity.Elapsed(6 * time.Hour),
				Living: true,
				Likely: quantity.Elapsed(5 * time.Hour),
				Watch:  "baker",
			},
			{ID: "shape", Min: mins(30), Needs: baker},
			{
				ID:       "retard",
				Min:      quantity.Elapsed(8 * time.Hour),
				Max:      quantity.Elapsed(16 * time.Hour),
				MinWords: working.Say("retard at least 8 h"),
				MaxWords: working.Say("retard at most 16 h"),
			},
			{ID: "bake", Min: mins(50), Needs: []Need{{Resource: "baker", Amount: 1}, {Resource: "oven", Amount: 1}}},
			{ID: "cool", Min: quantity.Elapsed(2 * time.Hour)},
			{ID: "lunch", Min: quantity.Elapsed(time.Hour)},
		},
		Links: []Link{{From: "feed", To: "levain"}, {From: "levain", To: "mix"}, {From: "mix", To: "bulk"},
			{From: "bulk", To: "shape", Max: mins(20)}, {From: "shape", To: "retard"}, {From: "retard", To: "bake"},
			{From: "bake", To: "cool"}, {From: "cool", To: "lunch", Max: NoLimit}},
		Bounds: []Bound{
			{Step: "lunch", Edge: Start, Latest: at(14, 12, 30), Wanted: true, Words: working.Say("lunch at 12:30")},
		},
		Resources: []Resource{
			{ID: "baker", Capacity: 1, Closed: []Span{
				{From: at(12, 22, 30), To: at(13, 6, 30), Words: working.Say("asleep 22:30 to 06:30")},
				{From: at(13, 9, 0), To: at(13, 15, 0), Words: working.Say("away 09:00 to 15:00")},
				{From: at(13, 22, 30), To: at(14, 6, 30), Words: working.Say("asleep 22:30 to 06:30")}}},
			{ID: "oven", Capacity: 1}},
	}
}

func plan(t *testing.T, p Problem) Timetable {
	t.Helper()
	tt, err := p.Latest(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	if len(tt.Steps) > 0 {
		for _, b := range p.Check(tt) {
			t.Errorf("broken: %s", b)
		}
	}
	return tt
}

func startOf(t *testing.T, tt Timetable, name string) string {
	t.Helper()
	s, ok := tt.Step(name)
	if !ok {
		t.Fatalf("no step %q in %v", name, tt)
	}
	return s.Start.Format("Mon 15:04")
}

// The backward plan of the hall, by hand: lunch 12:30, cool from 10:30, bake 09:40 to 10:30,
// retard ends 09:40 and began by 22:30 (bedtime), shape 22:00, bulk of five hours from 17:00,
// mix 16:40, levain of at most 12 h fed before 09:00: 08:50 is 7 h 40 before 16:40.
func TestHallBackward(t *testing.T) {
	tt := plan(t, hall())
	for name, want := range map[string]string{"lunch": "Sat 12:30", "cool": "Sat 10:30", "bake": "Sat 09:40",
		"retard": "Fri 22:30",
		"shape":  "Fri 22:00", "bulk": "Fri 17:00", "mix": "Fri 16:40", "feed": "Fri 08:50"} {
		if got := startOf(t, tt, name); got != want {
			t.Errorf("%s starts %s, want %s", name, got, want)
		}
	}
	for name, want := range map[string]string{"bake": "lunch at 12:30", "shape": "asleep 22:30 to 06:30",
		"feed": "away 09:00 to 15:00"} {
		if s, _ := tt.Step(name); s.Drives.String() != want {
			t.Errorf("%s is held by %q, want %q", name, s.Drives, want)
		}
	}
}

// With the shaping done 40 minutes late there is less night left: the retard is shorter by the
// same 40 minutes and lunch stays.
func TestFortyMinutesLate(t *testing.T) {
	p := hall()
	before := plan(t, p)
	at := func(day, h, m int) time.Time { return time.Date(2026, 3, day, h, m, 0, 0, time.UTC) }
	left, err := p.Midway(Midway{Now: at(13, 23, 10), Done: []Done{
		{
			"feed",
			at(13, 8, 50),
			at(13, 9, 0),
		}, {"levain", at(13, 9, 0), at(13, 16, 40)}, {"mix", at(13, 16, 40), at(13, 17, 0)},
		{"bulk", at(13, 17, 0), at(13, 22, 40)}, {"shape", at(13, 22, 40), at(13, 23, 10)}}})
	if err != nil {
		t.Fatal(err)
	}
	after := plan(t, left)
	if after.Verdict != Optimal {
		t.Fatal(after)
	}
	var words []string
	for _, c := range Changes(before, after) {
		words = append(words, c.String())
	}
	got := strings.Join(words, "; ")
	if got != "bulk 40m longer; shape moves to Fri 22:40; retard 40m shorter, from Fri 23:10" {
		t.Errorf("changes: %s", got)
	}
}

// Late in the morning there is nothing left to give: lunch moves, and the answer says by how
// much.
func TestLateOnTheDay(t *testing.T) {
	p := hall()
	at := func(day, h, m int) time.Time { return time.Date(2026, 3, day, h, m, 0, 0, time.UTC) }
	done := []Done{
		{
			"feed",
			at(13, 8, 50),
			at(13, 9, 0),
		}, {"levain", at(13, 9, 0), at(13, 16, 40)}, {"mix", at(13, 16, 40), at(13, 17, 0)},
		{
			"bulk",
			at(13, 17, 0),
			at(13, 22, 0),
		}, {"shape", at(13, 22, 0), at(13, 22, 30)}, {Step: "retard", Start: at(13, 22, 30)}}
	left, err := p.Midway(Midway{Now: at(14, 10, 15), Done: done})
	if err != nil {
		t.Fatal(err)
	}
	tt := plan(t, left)
	if tt.Verdict != Infeasible || tt.Conflict.Short != mins(35) || tt.After == nil ||
		tt.After.String() != "Sat 13:05, 35m later" {
		t.Errorf("%v", tt)
	}
}

// A reading of the dough narrows when the bulk ends.
func TestReadingUpdatesRange(t *testing.T) {
	p := hall()
	at := func(day, h, m int) time.Time { return time.Date(2026, 3, day, h, m, 0, 0, time.UTC) }
	left, err := p.Midway(Midway{Now: at(13, 19, 0), Done: []Done{
		{
			"feed",
			at(13, 8, 50),
			at(13, 9, 0),
		}, {"levain", at(13, 9, 0), at(13, 16, 40)}, {"mix", at(13, 16, 40), at(13, 17, 0)},
		{Step: "bulk", Start: at(13, 17, 0)}},
		Ranges: []Look{{Step: "bulk", Early: at(13, 21, 10), Likely: at(13, 21, 30), Late: at(13, 22, 0)}}})
	if err != nil {
		t.Fatal(err)
	}
	tt := plan(t, left)
	bulk, _ := tt.Step("bulk")
	if !bulk.End.Equal(at(13, 21, 30)) || !bulk.Watch.From.Equal(at(13, 21, 10)) ||
		!bulk.Watch.To.Equal(at(13, 22, 0)) {
		t.Errorf("bulk ends %v, look from %v to %v", bulk.End, bulk.Watch.From, bulk.Watch.To)
	}
	r, err := tt.Robust(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	if !r.Survives {
		t.Errorf("a bulk that ends by 22:00 leaves time to shape: %v", r)
	}
}

func TestMidwayRefuses(t *testing.T) {
	now := time.Date(2026, 3, 13, 12, 0, 0, 0, time.UTC)
	_, err := hall().Midway(Midway{Now: now, Done: []Done{
		{
			Step:  "knead",
			Start: now,
		}, {Step: "feed", Start: now.Add(time.Hour)}, {Step: "mix", Start: now, End: now.Add(-time.Hour)},
		{Step: "mix", Start: now.Add(time.Second * -30)}},
		Ranges: []Look{{Step: "retard"}}})
	var got []string
	for _, e := range quantity.InputErrors(err) {
		got = append(got, e.GoPath)
	}
	want := "Done[0].Step Done[1].Start Done[2].End Done[3].Step Done[3].Start Ranges[0].Step"
	if strings.Join(got, " ") != want {
		t.Errorf("paths %v, want %s", got, want)
	}
	if _, err := hall().Midway(Midway{}); !errors.Is(err, quantity.ErrRequired) {
		t.Errorf("without Now: %v", err)
	}
}

// The bulk of the hall may take four to six hours. Begun at 17:00 and likely done at 22:00 it
// leaves nothing to give, because shaping takes the last half hour before bedtime; mixing
// earlier would. The early plan begins the bulk at 15:20 and has the time.
func TestRobustBeforeSleep(t *testing.T) {
	tt := plan(t, hall())
	r, err := tt.Robust(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	if r.Survives || r.Share > 0.02 || !r.ByMoving || len(r.Against) == 0 {
		t.Errorf("planned as late as possible nothing is left to give: %v", r)
	}
	if len(r.Watches) != 1 || !strings.Contains(r.Watches[0].Warning.String(), "away from Fri 22:30") {
		t.Errorf("watches: %v", r.Watches)
	}
	early, err := hall().Earliest(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	r, err = early.Robust(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	if !r.Survives || r.Share != 1 {
		t.Errorf("the early plan: %v\n%v", r, early)
	}
}

// A check window wholly inside sleep is never passed over in silence.
func TestWatchInSleepWarns(t *testing.T) {
	p := hall()
	p.Bounds = append(p.Bounds, Bound{Step: "bulk", Edge: Start, Latest: time.Date(2026, 3, 13, 18, 0, 0, 0, time.UTC)})
	p.Steps[3].Min, p.Steps[3].Max, p.Steps[3].Likely = mins(340), mins(400), mins(340)
	p.Steps[4].Needs = nil // somebody else shapes
	tt := plan(t, p)
	r, err := tt.Robust(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	if len(r.Watches) != 1 || !strings.Contains(r.Watches[0].Warning.String(), "away all that time") {
		t.Errorf("%v\n%v", tt, r)
	}
}

// The oven was emptied five minutes ago and takes a quarter of an hour to reheat: the second
// round waits for the ten minutes left, and a round of the same program in an oven with room
// for two does not.
func TestMidwayKeepsChangeover(t *testing.T) {
	at := func(n int) time.Time { return dawn.Add(mins(n).Duration()) }
	p := Problem{Anchor: dawn, Horizon: quantity.Elapsed(6 * time.Hour),
		Steps: []DayStep{
			{ID: "first round", Min: mins(40), Needs: []Need{{Resource: "oven", Amount: 1, Program: "rye"}}},
			{ID: "second round", Min: mins(40), Needs: []Need{{Resource: "oven", Amount: 1, Program: "rye"}}},
			{ID: "rolls", Min: mins(20), Needs: []Need{{Resource: "oven", Amount: 1, Program: "rolls"}}},
		},
		Links:     []Link{{From: "second round", To: "rolls", Max: NoLimit}},
		Resources: []Resource{{ID: "oven", Capacity: 1, Changeover: mins(15)}}}
	start := func(p Problem, m Midway, step string) time.Time {
		t.Helper()
		left, err := p.Midway(m)
		if err != nil {
			t.Fatal(err)
		}
		tt, err := left.Earliest(context.Background())
		if err != nil || tt.Verdict != Optimal {
			t.Fatal(err, tt)
		}
		s, _ := tt.Step(step)
		return s.Start
	}
	m := Midway{Now: at(60), Done: []Done{{"first round", at(15), at(55)}}}
	if got := start(p, m, "second round"); !got.Equal(at(70)) {
		t.Errorf("the second round starts at %v, 15 min after 55 is 70", got.Sub(dawn))
	}
	if got := start(p, m, "rolls"); !got.Equal(at(125)) {
		t.Errorf("the rolls start at %v, 70 + 40 + 15 is 125", got.Sub(dawn))
	}
	m.Now = at(80)
	if got := start(p, m, "second round"); !got.Equal(at(80)) {
		t.Errorf("long after, the second round starts at %v, not at once", got.Sub(dawn))
	}
	m.Now = at(60)
	p.Resources[0].Capacity = 2
	if got := start(p, m, "second round"); !got.Equal(at(60)) {
		t.Errorf("with room for two the second round starts at %v, not at once", got.Sub(dawn))
	}
	left, err := p.Midway(m)
	if err != nil {
		t.Fatal(err)
	}
	found := false
	for _, b := range left.Bounds {
		found = found ||
			b.Step == "rolls" && b.Words.String() == "oven needs 15m after first round" && b.Earliest.Equal(at(70))
	}
	if !found {
		t.Errorf("another program waits whatever the room: %v", left.Bounds)
	}
}
