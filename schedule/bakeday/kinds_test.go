package bakeday

import (
	"strings"
	"testing"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule"
	"github.com/google/go-cmp/cmp"
)

// What things are called changes nothing but their names: no step is found by its words.
func TestNamesMeanNothing(t *testing.T) {
	called := func(soaker, potato, poolish string) PlanData {
		b := sticks()
		b.Inclusions = append(b.Inclusions, Ingredient{Name: potato, Percent: pct(10)})
		b.Soakers[0].Name, b.Preferments[0].Name = soaker, poolish
		late, err := plan(t, b).Replan(t.Context(), Late{Step: "make-2", By: quantity.Elapsed(10 * 60e9)})
		if err != nil {
			t.Fatal(err)
		}
		d := plan(t, b)
		if late.Late.ID != "make-2" || late.Late.Thing != soaker {
			t.Errorf("late is %+v", late.Late)
		}
		return d.Data()
	}
	plain := called("seeds", "potato", "sponge")
	odd := called("mixed seeds", "baked potato", "bake bulk cool stands")
	if !plain.Possible || len(plain.Steps) != len(odd.Steps) {
		t.Fatalf("%d and %d steps", len(plain.Steps), len(odd.Steps))
	}
	for i := range plain.Steps {
		a, b := plain.Steps[i], odd.Steps[i]
		a.Name, a.Thing, b.Thing = b.Name, "", ""
		if diff := cmp.Diff(a, b); diff != "" {
			t.Errorf("%s: %s", a.ID, diff)
		}
	}
	for _, s := range odd.Steps {
		if s.Hands != s.Kind.Hands() || s.Kind == 0 || s.ID == "" || s.Bread != odd.Name {
			t.Errorf("%+v", s)
		}
	}
}

// Every step of a day has an ID of its own, a kind, and a number where there are several.
func TestStepsKnowWhatTheyAre(t *testing.T) {
	var got []string
	for _, s := range plan(t, hall()).Data().Steps {
		got = append(got, s.ID+":"+s.Kind.String())
	}
	want := "feed:feed ripen:ripen mix-1:mix mix-2:mix bulk:bulk fold-1:fold fold-2:fold shape:shape retard:retard " +
		"preheat:preheat bake-1:bake vent-1:tend bake-2:bake vent-2:tend bake-3:bake vent-3:tend cool:cool"
	if diff := cmp.Diff(strings.Fields(want), got); diff != "" {
		t.Error(diff)
	}
	d := plan(t, hall())
	for text, id := range map[string]string{"fold-2": "fold-2", "shape": "shape", "bulk": "bulk", "retard": "retard"} {
		if s, err := d.StepNamed(text); err != nil || s.ID != id {
			t.Errorf("%s: %v, %v", text, s.ID, err)
		}
	}
	for _, text := range []string{"fold", "bake", "shape-if-early", "divide and shape", "", "moon"} {
		if s, err := d.StepNamed(text); len(quantity.InputErrors(err)) != 1 {
			t.Errorf("%q: %v, %v", text, s.ID, err)
		}
	}
}

// Slack is how much later a step could start, everywhere.
func TestSlackMeansLater(t *testing.T) {
	d := plan(t, hall())
	for _, s := range d.Data().Steps {
		at, _ := d.Timetable.Step(s.ID)
		if s.Slack != at.Slack || s.Slack.Duration() != s.LatestStart.Sub(s.Start) ||
			s.Earlier.Duration() != s.Start.Sub(s.EarliestStart) {
			t.Errorf("%s: slack %v, earlier %v; from %v to %v, planned %v", s.ID, s.Slack, s.Earlier, s.EarliestStart,
				s.LatestStart, s.Start)
		}
	}
	early, err := d.problem.Earliest(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	later := 0
	for _, s := range early.Steps {
		if s.Slack.Duration() != s.LatestStart.Sub(s.Start) {
			t.Errorf("%s: slack %v", s.ID, s.Slack)
		}
		if s.Slack > 0 {
			later++
		}
	}
	if later == 0 || schedule.Mix.String() != "mix" {
		t.Error("no step of the earliest plan could be later")
	}
}
