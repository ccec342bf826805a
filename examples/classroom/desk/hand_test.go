package desk

import (
	"fmt"
	"strings"
	"testing"

	"example.org/maslin/schedule/wallclock"
)

// onClock is a state of a task with steps put on the clock, by the ends of their names.
func onClock(at string, times map[string]string) State {
	s := State{At: at, Fields: map[string]string{}}
	for step, text := range times {
		s.Fields[byHand+step] = text
	}
	return s
}

// Steps are put on the clock, locked, and judged one by one: possible with the others giving way, too late with what
// is in the way, too early, or while the baker sleeps.
func TestStepsPutByHand(t *testing.T) {
	for id, times := range map[string]map[string]string{
		"day.plan": {"bake": "Sat 20:00", "mix": "2026-11-26 08:30", "shape": "2026-11-27 20:00", "cool": "Sat 2026-11-28 10:00"},
		"day.oven": {"loaves.bake": "2026-11-28 20:00", "buns.mix": "2026-11-26 09:00", "buns.bake": "2026-11-28 03:00"},
	} {
		locked := ask(t, Request{Do: "lock", State: onClock(id, times)})
		if locked.State.Phase != "locked" || locked.Headline != "" || locked.Value != "" {
			t.Fatalf("%s: %q, told %q before it is revealed", id, locked.State.Phase, locked.Headline)
		}
		if !strings.Contains(locked.Page, "Your guess is locked: ") || !strings.Contains(locked.Page, "Sat 20:00") {
			t.Errorf("%s: the guess is not told", id)
		}
		out := ask(t, Request{Do: "reveal", State: locked.State})
		want := fmt.Sprintf("of your %d times can be kept", len(times))
		if !strings.Contains(out.Answer, want) || !strings.Contains(out.Answer, "too late; it is held by: ") ||
			!strings.Contains(out.Answer, "too early") {
			t.Errorf("%s: %.3000s", id, out.Answer)
		}
		again := ask(t, Request{Do: "again", State: out.State})
		if again.State.Phase != guessing || len(again.State.Fields) > 0 {
			t.Errorf("%s: asked again, %v is left", id, again.State.Fields)
		}
	}
}

// What the plan itself does can be kept, every step of it; with one wish that cannot be met there is nothing to compare.
func TestThePlanItselfCanBeKept(t *testing.T) {
	one, _ := taskOf("day.plan")
	a, err := one.solve(&values{task: one})
	if err != nil || a.plan == nil {
		t.Fatal(err)
	}
	zone, err := hallLocation()
	if err != nil {
		t.Fatal(err)
	}
	s := State{At: "day.plan", Phase: shown, Fields: map[string]string{}}
	for _, h := range one.steps {
		step, ok := h.in(*a.plan)
		if !ok {
			t.Fatalf("%s is not in the plan", h.name())
		}
		s.Fields[h.name()] = wallclock.DateOf(step.Start, zone).At(wallclock.ClockOf(step.Start, zone)).String()
	}
	if out := ask(t, Request{Do: "type", State: s}); !strings.Contains(out.Answer, "8 of your 8 times can be kept") {
		t.Errorf("%.2000s", out.Answer)
	}
	s.Fields["wanted"] = "2026-11-26 09:00"
	if out := ask(t, Request{Do: "type", State: s}); out.Headline == "" ||
		!strings.Contains(out.Answer, "no timetable to hold your times against") {
		t.Errorf("a day that cannot be: %q %.400s", out.Headline, out.Answer)
	}
}

// Nothing put, or what cannot be read, is not locked, and is told where it stands.
func TestWhatIsNoTime(t *testing.T) {
	out := ask(t, Request{Do: "lock", State: State{At: "day.plan"}})
	if out.State.Phase != guessing || !strings.Contains(out.Page, "a time for one step at least") {
		t.Errorf("%q", out.State.Phase)
	}
	out = ask(t, Request{Do: "lock", State: onClock("day.plan", map[string]string{"mix": "noonish"})})
	if out.State.Phase != guessing || out.Problems[byHand+"mix"] == "" || out.Focus != "guess" ||
		out.Status == "" {
		t.Errorf("%q, %v, %s", out.State.Phase, out.Problems, out.Focus)
	}
}

// Two breads that want the one oven at once: what one wants moves the other, and a wish that cannot be met is told.
func TestTwoBreadsOneOven(t *testing.T) {
	at := func(fields map[string]string) Response {
		return ask(t, Request{Do: "type", State: State{At: "day.oven", Phase: open, Fields: fields}})
	}
	first := at(nil)
	if !strings.Contains(first.Headline, "2 breads, 18 pieces") || len(first.Problems) > 0 {
		t.Fatalf("%q %v", first.Headline, first.Problems)
	}
	if apart := at(map[string]string{"buns.wanted": "2026-11-27 20:00"}); apart.Answer == first.Answer {
		t.Error("the wish for the buns moves nothing")
	}
	if late := at(map[string]string{"buns.wanted": "2026-11-26 09:00"}); !strings.Contains(late.Answer, "does not fit") {
		t.Errorf("%.500s", late.Answer)
	}
	for _, fields := range []map[string]string{
		{"buns.wanted": "soon", "wanted": ""}, {"oven.temperature": "900 °C", "buns.oven": "20 °C", "levain.prefermented": "200 %"},
	} {
		bad := at(fields)
		for name := range fields {
			if bad.Problems[name] == "" {
				t.Errorf("%s: nothing is told; %v", name, bad.Problems)
			}
		}
	}
}
