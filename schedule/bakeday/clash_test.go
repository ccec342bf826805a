package bakeday

import (
	"fmt"
	"testing"
	"time"

	"example.org/maslin/dough/working"
	"example.org/maslin/schedule"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// ovenFor is a day in which breads want an oven for one at the given minutes, from and to.
func ovenFor(uses map[string][][2]int, breads ...string) (*KitchenDay, schedule.Timetable) {
	k := &KitchenDay{Zone: time.UTC}
	k.problem.Resources = []schedule.Resource{{ID: "oven", Name: working.Say("the oven"), Capacity: 1}}
	var t schedule.Timetable
	at := func(minute int) time.Time {
		return time.Date(2026, 11, 28, 10, 0, 0, 0, time.UTC).Add(minutes(minute).Duration())
	}
	for _, bread := range breads {
		for i, x := range uses[bread] {
			s := schedule.DayStep{ID: fmt.Sprintf("%s/bake-%d", bread, i+1), Bread: bread, Kind: schedule.Bake,
				Needs: []schedule.Need{{Resource: "oven", Amount: 1}}}
			k.problem.Steps = append(k.problem.Steps, s)
			t.Steps = append(t.Steps, schedule.Timed{
				Label: schedule.Label{ID: s.ID, Bread: bread, Kind: s.Kind}, Start: at(x[0]), End: at(x[1])})
		}
	}
	return k, t
}

// Of all overlaps of two breads the longest is told, whichever of them comes first, and however often each bakes.
func TestTheLongestClashIsTold(t *testing.T) {
	k, table := ovenFor(map[string][][2]int{"rye": {{0, 60}}, "rolls": {{-10, 5}, {10, 70}}}, "rye", "rolls")
	got, ok := k.clashOver(table, "oven")
	want := BothWant{Thing: "oven", Name: working.Say("the oven"), First: "rye", Then: "rolls",
		At: time.Date(2026, 11, 28, 10, 10, 0, 0, time.UTC), By: minutes(50)}
	if diff := cmp.Diff(want, got, sameTimes, sameWords); diff != "" || !ok {
		t.Errorf("%v:\n%s", ok, diff)
	}
	if _, ok := k.clashOver(table, "mixer"); ok {
		t.Error("a clash over what nobody needs")
	}
	if _, ok := k.clashOver(schedule.Timetable{}, "oven"); ok {
		t.Error("a clash without a timetable")
	}
	// Ovens that touch each other, and two loads of one bread, are no clash.
	k, table = ovenFor(map[string][][2]int{"rye": {{0, 60}, {30, 90}}, "rolls": {{90, 100}}}, "rye", "rolls")
	if got, ok := k.clashOver(table, "oven"); ok {
		t.Error(got)
	}
}

// The longest overlap is that of two intervals in which the later begins before the earlier ends: the least of what is
// left of both.
func TestNoClashIsLongerThanTheOneTold(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		breads := []string{"rye", "rolls", "buns"}
		uses := map[string][][2]int{}
		for _, b := range breads {
			for range rapid.IntRange(0, 3).Draw(r, b) {
				from := rapid.IntRange(0, 300).Draw(r, "from")
				uses[b] = append(uses[b], [2]int{from, from + rapid.IntRange(5, 80).Draw(r, "takes")})
			}
		}
		longest := 0
		for _, a := range breads {
			for _, b := range breads {
				for _, x := range uses[a] {
					for _, y := range uses[b] {
						if a != b {
							longest = max(longest, min(x[1]-y[0], y[1]-x[0]))
						}
					}
				}
			}
		}
		k, table := ovenFor(uses, breads...)
		if got, ok := k.clashOver(table, "oven"); ok != (longest > 0) || got.By != minutes(longest) {
			r.Errorf("%v, %v, not %d minutes of %v", ok, got, longest, uses)
		}
	})
}
