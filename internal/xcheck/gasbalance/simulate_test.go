package gasbalance

import (
	"math"
	"os"
	"strconv"
	"strings"
	"testing"
)

func kitchens(t *testing.T) int {
	if v, err := strconv.Atoi(os.Getenv("MASLIN_KITCHENS")); err == nil {
		return v
	}
	if testing.Short() {
		return 100
	}
	return 400
}

var bakes = []int{0, 1, 3, 5, 10, 20, 40}

// world is a [World], how it is learned, and the least share of ranges that hold from five bakes on.
type world struct {
	World
	baker Baker
	least float64
}

// The worlds that are not the law's own. The least shares are what was found, less a few points: they are there so
// that a change that costs coverage is seen, and they say where the ranges still claim too much.
var otherWorlds = []world{
	{World{Name: "older law, levain", Dose: true}, Baker{}, 74},
	{World{Name: "older law, yeast", Dose: true, Yeast: true}, Baker{}, 75},
	{World{Name: "older law, levain, cold dough asked", Dose: true, Cold: true}, Baker{}, 75},
	{World{Name: "older law, yeast, cold dough asked", Dose: true, Yeast: true, Cold: true}, Baker{}, 75},
	{World{Name: "levain grows as S. cerevisiae by cardinal temperatures",
		Growth: func(t float64) float64 { return cardinal(t) / cardinal(27) }}, Baker{}, 75},
	{World{Name: "levain grows as K. humilis held to 30 °C",
		Growth: func(t float64) float64 { return humilis(held(t)) }}, Baker{}, 75},
	{World{Name: "hyperbolic crowding", Crowd: func(s float64) float64 { return 1 / (1 + 2*s) }}, Baker{}, 75},
	{World{Name: "no crowding", Crowd: func(float64) float64 { return 1 }}, Baker{}, 75},
	{World{Name: "pace drifts with the seasons by 0.2", Season: 0.2}, Baker{}, 75},
	{World{Name: "pace drifts with the seasons by 0.2, yeast", Season: 0.2, Yeast: true}, Baker{}, 75},
	{World{Name: "pace drifts with the seasons by 0.2, whole log weighed", Season: 0.2}, Baker{Robust: true}, 75},
	{World{Name: "pace drifts with the seasons by 0.2, half-life 15 d stated", Season: 0.2}, Baker{HalfLife: 15}, 75},
	{World{Name: "half-life 15 d stated where nothing drifts"}, Baker{HalfLife: 15}, 77},
	{World{Name: "whole log weighed where nothing drifts"}, Baker{Robust: true}, 77},
	{World{Name: "the mixture shifts by 0.5 over ten bakes", Shift: 0.5}, Baker{}, 75},
	{World{Name: "thermometer off by 1.5 °C", Thermometer: 1.5}, Baker{}, 75},
	{World{Name: "rises misread by 10 points", Misread: 0.10}, Baker{}, 75},
	{World{Name: "one logged bake in ten wild", Wild: 0.1}, Baker{}, 75},
	{World{Name: "one logged bake in ten wild, whole log weighed", Wild: 0.1}, Baker{Robust: true}, 75},
}

func report(t *testing.T, name string, tallies []Tally) {
	t.Logf("%s, %d kitchens", name, tallies[0].Kitchens)
	for _, x := range tallies {
		t.Logf("  %2d bakes: inside %5.1f %%, before %4.1f %%, width %.3f, floor %.3f, ratio %.2f",
			x.Bakes, x.Coverage(), 100*float64(x.Below)/float64(x.Kitchens), x.Width, x.Floor, x.Ratio())
	}
}

// skipped picks worlds by MASLIN_WORLD, a part of their name.
func skipped(name string) bool {
	f := os.Getenv("MASLIN_WORLD")
	return f != "" && !strings.Contains(name, f)
}

// In the world of its own beliefs the 80 % range holds the truth in 77 to 83 % of kitchens, however many bakes are
// logged, and comes to within 10 % of what luck alone leaves after 20. Asked about the cold after warm bakes it is
// wider than its own world needs.
func TestOwnWorld(t *testing.T) {
	for _, w := range []World{
		{Name: "own, levain"}, {Name: "own, yeast", Yeast: true},
		{Name: "own, levain, cold dough asked", Cold: true},
		{Name: "own, yeast, cold dough asked", Yeast: true, Cold: true},
	} {
		if skipped(w.Name) {
			continue
		}
		n := kitchens(t)
		tallies := Simulate(w, Baker{}, n, bakes)
		report(t, w.Name, tallies)
		// The count itself is unsure: three of its standard deviations.
		slack := 3 * 100 * math.Sqrt(0.8*0.2/float64(n))
		for _, x := range tallies {
			if c := x.Coverage(); c < 77-slack || c > 83+slack && !w.Cold {
				t.Errorf("%s: after %d bakes the 80 %% range holds %.1f %%", w.Name, x.Bakes, c)
			}
			if x.Bakes == 20 && !w.Cold && x.Ratio() > 1.10+0.3/math.Sqrt(float64(n)) {
				t.Errorf("%s: after 20 bakes the width is %.3f of the floor", w.Name, x.Ratio())
			}
		}
	}
}

func TestOtherWorlds(t *testing.T) {
	for _, w := range otherWorlds {
		if skipped(w.Name) {
			continue
		}
		n := kitchens(t)
		tallies := Simulate(w.World, w.baker, n, bakes)
		report(t, w.Name, tallies)
		slack := 3 * 100 * math.Sqrt(0.8*0.2/float64(n))
		for _, x := range tallies {
			if c := x.Coverage(); x.Bakes >= 5 && c < w.least-slack {
				t.Errorf("%s: after %d bakes the 80 %% range holds %.1f %%", w.Name, x.Bakes, c)
			}
		}
	}
}
