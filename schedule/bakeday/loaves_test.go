package bakeday

import (
	"context"
	"math"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
)

// How many loaves 960 g of dough make: as many as come nearest to the weight wanted, at least one, and none where twice
// the dough would not do.
func TestLoavesOfADough(t *testing.T) {
	percent := quantity.NewPercent
	for _, c := range []struct {
		scaling, baked, loss float64
		pieces               int
		want                 int
		each                 float64 // of dough
	}{
		{0, 0, 10, 0, 1, 960}, {0, 0, 10, 3, 3, 320}, {480, 0, 10, 0, 2, 480}, {640, 0, 10, 0, 2, 480},
		{641, 0, 10, 0, 1, 960}, {1920, 0, 10, 0, 1, 960}, {0, 432, 10, 0, 2, 480}, {0, 288, 10, 0, 3, 320},
		{400, 0, 10, 2, 2, 400}, {0, 450, 10, 2, 2, 500},
	} {
		b := loafByWeight()
		b.Loaves = Loaves{Pieces: c.pieces, Scaling: quantity.Grams(c.scaling), Baked: quantity.Grams(c.baked),
			Loss: percent(c.loss)}
		got, err := b.inPercent()
		l := got.Loaves
		if err != nil || l.Pieces != c.want || !l.Scaling.IsZero() || !(math.Abs(l.Baked.Grams()-0.9*c.each) <= 1e-3) ||
			l.Loss != percent(c.loss) {
			t.Errorf("%+v: %+v, %v", c, l, err)
		}
	}
	// What a loaf weighs is said of its own dough, where the weights are for one.
	b := loafByWeight()
	b.PerLoaf, b.Loaves = true, Loaves{Pieces: 4, Loss: percent(10)}
	if got, err := b.inPercent(); err != nil || got.Loaves.Pieces != 4 || got.PerLoaf ||
		!(math.Abs(got.Loaves.Baked.Grams()-864) <= 1e-3) {
		t.Errorf("%+v, %v", got.Loaves, err)
	}
	b.Loaves.Pieces = 0
	if got, err := b.inPercent(); err != nil || got.Loaves.Pieces != 1 ||
		!(math.Abs(got.Loaves.Baked.Grams()-864) <= 1e-3) {
		t.Errorf("%+v, %v", got.Loaves, err)
	}
	for says, loaves := range map[string]Loaves{
		"loaves.scaling: inconsistent: got 1921 g of dough, want no more than the 960 g of dough": {
			Scaling: quantity.Grams(1921)},
		"want no more than the 960 g of dough": {Baked: quantity.Grams(1729), Loss: percent(10)},
		"900 g beside 800 g when baked":        {Scaling: quantity.Grams(900), Baked: quantity.Grams(800)},
		"want 0 g to 12000 g":                  {Scaling: quantity.Grams(12_001)},
	} {
		b := loafByWeight()
		b.Loaves = loaves
		if _, err := b.Batch(nil); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%+v: %v, want %q", loaves, err, says)
		}
	}
	// In percent the weight of a loaf as dough says that of the baked one.
	b = hall()
	b.Loaves.Baked, b.Loaves.Scaling = quantity.Mass{}, quantity.Grams(900)
	if got, err := b.inPercent(); err != nil || !(math.Abs(got.Loaves.Baked.Grams()-783) <= 1e-3) ||
		got.Loaves.Pieces != 6 {
		t.Errorf("%+v, %v", got.Loaves, err)
	}
}

// A comment of a field says what it is without the name that Go's comments begin with.
func TestCommentsWithoutTheirNames(t *testing.T) {
	for comment, want := range map[string]string{
		"Washing is how long it takes.": "how long it takes", "HalfLife is a time.": "a time",
		"what is left.": "what is left", "the kitchen is cold": "the kitchen is cold", "oven is hot.": "oven is hot",
		"The oven is hot.": "The oven is hot", "": "", " is nothing": " is nothing", "Zone": "Zone",
	} {
		if got := commentSays(comment); got != want {
			t.Errorf("%q says %q, want %q", comment, got, want)
		}
	}
}

// Where a late step moves the bread, the report says what would have kept it, and only then.
func TestALateStepSaysWhatWouldKeepTheBread(t *testing.T) {
	d := plan(t, hall())
	for late, moves := range map[time.Duration]bool{2 * time.Hour: false, 4 * time.Hour: true} {
		r, err := d.Replan(context.Background(), Late{Step: "shape", By: quantity.Elapsed(late)})
		if err != nil || (r.Moved > 0) != moves {
			t.Fatalf("%v late: moved by %v, %v", late, r.Moved, err)
		}
		if strings.Contains(r.Report().Text(report.Options{Width: 200}), "unless: ") != moves {
			t.Errorf("%v late: %s", late, r.Report().Text(report.Options{Width: 200}))
		}
	}
}
