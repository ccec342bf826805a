package bakeday

import (
	"context"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule"
)

// A bread whose oven is hotter than that of the one before it says why it comes later; hottest first needs no word.
func TestTheOrderOfTheOven(t *testing.T) {
	k, err := sunday().Plan(context.Background(), wednesday(t))
	if err != nil || !k.Possible() || len(k.Breads) < 2 {
		t.Fatal(k, err)
	}
	first, last := 0, 0 // by their loading
	for i, d := range k.Breads {
		load := func(i int) time.Time {
			for _, s := range k.Timetable.Steps {
				if s.Kind == schedule.Bake && s.Bread == k.Breads[i].Bake.Name {
					return s.Start
				}
			}
			t.Fatal("nothing bakes", d)
			return time.Time{}
		}
		if load(i).Before(load(first)) {
			first = i
		}
		if load(i).After(load(last)) {
			last = i
		}
	}
	// All equally hot, but for the one that is told here.
	set := func(one, hotter int) []working.Message {
		out := k
		out.Breads = append([]Day(nil), k.Breads...)
		for i := range out.Breads {
			out.Breads[i].Bake.Oven.Temperature = quantity.Celsius(230)
		}
		out.Breads[one].Bake.Oven.Temperature = quantity.Celsius(float64(230 + hotter))
		return out.ovenOrderNotes()
	}
	if got := set(first, 20); len(got) != 0 {
		t.Errorf("hottest first: %v", got)
	}
	if got := set(last, 0); len(got) != 0 {
		t.Errorf("all alike: %v", got)
	}
	got := working.Join(set(last, 20), "\n").String()
	name := k.Breads[last].Bake.Name
	if !strings.Contains(got, name+": baked after ") || !strings.Contains(got, "250 °C and not 230 °C") {
		t.Errorf("hottest last: %q", got)
	}
	if none := (KitchenDay{}).ovenOrderNotes(); none != nil {
		t.Error(none)
	}
}
