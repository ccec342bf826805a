package bakeday

import (
	"slices"
	"testing"
	"time"

	"example.org/maslin/bake"
	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

// How long a shaped dough keeps in the cold depends on its flour and on what holds it.
func TestStrengthInTheCold(t *testing.T) {
	for _, c := range []struct {
		kind  dough.Kind
		share float64 // of that flour; the rest is wheat
		shape bake.Shape
		want  time.Duration
	}{
		{dough.KindWheat, 100, bake.Round, 0}, {dough.KindSpelt, 60, bake.Round, 8 * time.Hour},
		{dough.KindSpelt, 40, bake.Round, 0}, {dough.KindSpelt, 100, bake.Tin, 0},
		{dough.KindWholeWheat, 80, bake.Long, 10 * time.Hour}, {dough.KindRye, 100, bake.Round, 4 * time.Hour},
		{dough.KindWholeRye, 50, bake.Round, 12 * time.Hour}, {dough.KindRye, 75, bake.Round, 8 * time.Hour},
		{dough.KindRye, 100, bake.Tin, 0}, {dough.KindRye, 100, bake.Sheet, 0}, {dough.KindRye, 45, bake.Round, 0},
	} {
		b := hall()
		b.Loaves.Shape = c.shape
		b.Levain.Flour = ""
		b.Flours = []Ingredient{{Name: "flour", Percent: quantity.NewPercent(c.share), Kind: c.kind}}
		if c.share < 100 {
			b.Flours = append(b.Flours, Ingredient{Name: "wheat", Percent: quantity.NewPercent(100 - c.share),
				Kind: dough.KindWheat})
		}
		batch, err := b.Batch(nil)
		if err != nil {
			t.Fatal(err)
		}
		d := Day{Bake: b, Batch: batch}
		if got := d.inTheCold(); got.Duration() != c.want {
			t.Errorf("%v %v %% as %v: %v, want %v", c.kind, c.share, c.shape, got, c.want)
		}
		for over, want := range map[time.Duration]bool{c.want * 5 / 4: false, c.want*5/4 + time.Minute: c.want > 0} {
			d.Rising.Retard = quantity.Elapsed(over)
			said := slices.ContainsFunc(d.risingNotes(), func(m working.Message) bool {
				return m.ID() == "bakeday.note_long_cold"
			})
			if said != want {
				t.Errorf("%v %v %% as %v for %v: said %v", c.kind, c.share, c.shape, over, said)
			}
		}
		d.Bake.Retard = nil
		if d.inTheCold() != 0 {
			t.Error("without a retard nothing lies in the cold")
		}
	}
}
