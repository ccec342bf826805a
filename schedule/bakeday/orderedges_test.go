package bakeday

import (
	"context"
	"strings"
	"testing"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule"
)

// The name of a bread of several has at most 100 bytes.
func TestHowLongTheNameOfABreadMayBe(t *testing.T) {
	for n, ok := range map[int]bool{100: true, 101: false, 200: false} {
		o := sunday()
		o.Bakes[1].Name = strings.Repeat("n", n)
		_, err := o.whole()
		problems := quantity.InputErrors(err)
		if ok && err != nil || !ok && (len(problems) != 1 || problems[0].GoPath != "Bakes[1].Name") {
			t.Errorf("%d bytes: %v", n, err)
		}
	}
}

// What a levain for several doughs is fed with is weighed once, in one go.
func TestASharedLevainIsWeighedInOneGo(t *testing.T) {
	o := sunday()
	l := *o.Bakes[0].Levain
	l.Name = "levain"
	other := o.Bakes[0]
	other.Name = "Second"
	o.Bakes[0].Levain, other.Levain = &l, &l
	o.Bakes = []Bake{o.Bakes[0], other}
	lists := planAll(t, o).Data().Levains
	if len(lists) != 1 || lists[0].Name != "levain" || lists[0].Batches != 1 {
		t.Errorf("%+v", lists)
	}
}

// In which order the steps of a day stand changes nothing about the bread that one of them is allowed to change.
func TestTheFirstStepCanBeAllowedToChange(t *testing.T) {
	o := sunday()
	k := planAll(t, o)
	whole, err := o.whole()
	if err != nil {
		t.Fatal(err)
	}
	shorter := schedule.Member{Breach: schedule.Breach{Rule: schedule.StepMin, Step: "Loaf/retard"},
		Easing: schedule.Shorter, Change: minutes(90)}
	for i := range k.problem.Steps {
		k.problem.Steps = append(k.problem.Steps[1:], k.problem.Steps[0])
		again, _, ok := whole.allowing(&k, []schedule.Member{shorter})
		if !ok || again.Bakes[0].Retard.AtLeast != minutes(8*60-90) {
			t.Errorf("%s first, turned %d times: %v", k.problem.Steps[0].ID, i+1, ok)
		}
	}
}

// Time that runs out while the nearest day that works is looked for is said.
func TestTimeThatRunsOutWhileLookingAround(t *testing.T) {
	d, k := planDrawn(t, 24)
	if k.Timetable.After == nil {
		t.Fatal("no timetable later")
	}
	whole := d.asPlanned(t)
	ended, cancel := context.WithCancel(context.Background())
	cancel()
	k.TimeRanOut = false
	if whole.lookAround(ended, &k, d.clock(t)); !k.TimeRanOut || k.Earlier != nil || k.Later != nil {
		t.Errorf("time ran out: %v, earlier %v, later %v", k.TimeRanOut, k.Earlier, k.Later)
	}
}
