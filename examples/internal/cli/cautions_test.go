package cli

import (
	"context"
	"fmt"
	"strings"
	"testing"
	"time"

	"example.org/maslin/bake"
	"example.org/maslin/dough/mixing"
	"example.org/maslin/schedule/bakeday"
)

// Every hazard of mixers and ovens has a short form, and no short form is without its hazard.
func TestUsualCautionsAreKnown(t *testing.T) {
	used := map[string]bool{}
	all := append(bake.OvenCautions(), bake.FoodCautions()...)
	for _, c := range append(all, mixing.Planetary.Cautions()...) {
		g, i, ok := shortOf(hazard{string(c.Subject), fmt.Sprint(c.Text)})
		if !ok {
			t.Errorf("no short form of %s: %v", c.Subject, c.Text)
			continue
		}
		used[usual[g].short[i].subject+usual[g].short[i].begins] = true
	}
	// Those of the dough and the levain come with a batch and an estimate; the plans below have them.
	for _, file := range []string{"hall-kitchen.toml", "same-day-rolls.toml", "supper-loaves.toml"} {
		for _, c := range planOf(t, file).Cautions {
			if g, i, ok := shortOf(hazard{string(c.Subject), fmt.Sprint(c.Text)}); ok {
				used[usual[g].short[i].subject+usual[g].short[i].begins] = true
			}
		}
	}
	for _, g := range usual {
		for _, s := range g.short {
			if s.subject != "raw dough" && !used[s.subject+s.begins] {
				t.Errorf("the short form of %q, %q belongs to no caution", s.subject, s.begins)
			}
		}
	}
}

// The page names every hazard, and with full prints every word.
func TestNoHazardIsLost(t *testing.T) {
	for _, file := range []string{"hall-kitchen.toml", "same-day-rolls.toml", "supper-loaves.toml"} {
		sheet := planOf(t, file)
		var short, full page
		short.width, full.width = 1000, 1000
		short.takeCare(hazardsOf(sheet, units{}), false, "maslin plan x --cautions")
		full.takeCare(hazardsOf(sheet, units{}), true, "")
		for _, c := range sheet.Cautions {
			if !strings.Contains(full.b.String(), c.Subject+": "+fmt.Sprint(c.Text)) {
				t.Errorf("%s: in full, %q is missing", file, c.Subject)
			}
			g, i, ok := shortOf(hazard{c.Subject, fmt.Sprint(c.Text)})
			switch {
			case ok && !strings.Contains(short.b.String(), usual[g].short[i].says):
				t.Errorf("%s: in short, %q is missing", file, usual[g].short[i].says)
			case !ok && !strings.Contains(short.b.String(), c.Subject+": "+fmt.Sprint(c.Text)):
				t.Errorf("%s: %q is special to this bake and not printed in full", file, c.Subject)
			}
		}
		for _, word := range []string{
			"allergens", "raw flour", "mixer", "guards", "flour dust", "burn", "steam", "glass", "children", "first aid", "20 minutes", "acrylamide", "rope",
			"no proof that food is safe", "local fire, gas, food and labor codes", "licensed", "--cautions",
		} {
			if !strings.Contains(short.b.String(), word) {
				t.Errorf("%s: in short, nothing says %q:\n%s", file, word, short.b.String())
			}
		}
		if a, b := short.b.Len(), full.b.Len(); a > b*2/3 {
			t.Errorf("%s: in short it is %d bytes long, in full %d", file, a, b)
		}
	}
}

// A caution that is not known is printed in full.
func TestUnknownCautionsAreFull(t *testing.T) {
	p := newPage(200)
	p.takeCare([]hazard{{"mixer", "this one has a loose hook"}, {"refrigerator", "it is at 9 °C"}}, false, "x")
	for _, want := range []string{"mixer: this one has a loose hook", "refrigerator: it is at 9 °C"} {
		if !strings.Contains(strings.ReplaceAll(p.b.String(), noBreak, " "), want) {
			t.Errorf("%q is not in\n%s", want, p.b.String())
		}
	}
}

func planOf(t *testing.T, file string) bakeday.PlanData {
	t.Helper()
	var s System
	s.Getenv = func(string) string { return "" }
	s.Now = func() time.Time { return time.Date(2026, 11, 25, 20, 0, 0, 0, time.UTC) }
	l, err := load(s, "../../bakes/"+file, "")
	if err != nil {
		t.Fatal(err)
	}
	day, err := l.bake.Plan(context.Background(), l.clock)
	if err != nil {
		t.Fatal(err)
	}
	return day.Data()
}
