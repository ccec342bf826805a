package mixing

import (
	"strings"
	"testing"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

func degrees(values ...float64) []quantity.Temperature {
	var out []quantity.Temperature
	for _, v := range values {
		out = append(out, quantity.Celsius(v))
	}
	return out
}

// The rule of the trade by hand: water = 3 × dough − flour − room − friction, and with a levain 4 × dough less one
// more.
func TestWaterTableIsTheFactorMethodCaseByCase(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		whole := func(low, high int, label string) float64 { return float64(rapid.IntRange(low, high).Draw(t, label)) }
		dough, warming := whole(22, 28, "dough"), whole(1, 6, "warming")
		table := WaterTable{Target: quantity.Celsius(dough), Warming: quantity.DeltaCelsius(warming)}
		levain := 0.0
		if rapid.Bool().Draw(t, "with a levain") {
			levain = whole(18, 28, "levain")
			table.Levain = quantity.Celsius(levain)
		}
		flour, room := whole(15, 25, "flour"), whole(16, 27, "room")
		table.Flour, table.Room = degrees(flour, flour+2, flour+3), degrees(room, room+1)
		got, err := table.Water()
		if err != nil {
			t.Fatal(err)
		}
		for i, f := range []float64{flour, flour + 2, flour + 3} {
			for j, r := range []float64{room, room + 1} {
				want := 3*dough - f - r - 3*warming
				if levain != 0 {
					want = 4*dough - f - r - levain - 4*warming
				}
				if w := got.Water[i][j].Temperature; w.Sub(quantity.Celsius(want)).Celsius() != 0 {
					t.Fatalf("flour %v, room %v: %v, want %v", f, r, w, want)
				}
			}
		}
		if len(got.Water) != 3 || len(got.Water[2]) != 2 || got.Basis != GivenWarming {
			t.Fatalf("got %d rows, basis %v", len(got.Water), got.Basis)
		}
		// The derivation shown is that of the middle: the second flour and the second room.
		one := table.factors(table.Flour[1], table.Room[1], must(FrictionOf(table.Warming, got.Water[0][0].in.Count())))
		if d := cmp.Diff(working.Telling{}.Text(must(one.Water()).Working()),
			working.Telling{}.Text(got.Working())); d != "" {
			t.Fatal(d)
		}
	})
}

func TestWaterTableTakesTheGuideValueOfTheMixer(t *testing.T) {
	table := WaterTable{Target: quantity.Celsius(25), Mixer: Planetary, Flour: degrees(20), Room: degrees(22)}
	got, err := table.Water()
	if err != nil {
		t.Fatal(err)
	}
	want := must(must(Planetary.Prior()).Friction.Rise())
	if got.Basis != GuideValue || got.Warming != want {
		t.Errorf("warming %v (%v), want %v as a guide value", got.Warming, got.Basis, want)
	}
	if !strings.Contains(got.String(), "(guide value)") {
		t.Errorf("the headline hides that it is a guide value: %s", got)
	}
}

func TestWaterTableMarksWhatCannotBePoured(t *testing.T) {
	table := WaterTable{Target: quantity.Celsius(20), Warming: quantity.DeltaCelsius(8), Flour: degrees(20, 30),
		Room: degrees(5, 30)}
	got := must(table.Water()).Report().Text(report.Options{})
	if !strings.Contains(got, "-24.0 °C*") && !strings.Contains(got, "−24.0 °C*") {
		t.Errorf("3·20 − 30 − 30 − 24 = −24 °C is not marked:\n%s", got)
	}
	if strings.Contains(got, "11.0 °C*") || strings.Count(got, "for example:") != 1 {
		t.Errorf("marks or remedy:\n%s", got)
	}
}

func TestWaterTableNamesEveryProblem(t *testing.T) {
	_, err := WaterTable{Target: quantity.Celsius(25), Flour: make([]quantity.Temperature, 101)}.Water()
	var paths []string
	for _, e := range quantity.InputErrors(err) {
		paths = append(paths, e.Path)
	}
	if d := cmp.Diff([]string{"flour", "room", "mixer"}, paths); d != "" {
		t.Error(d)
	}
	many := make([]quantity.Temperature, 101)
	for _, c := range []struct {
		table WaterTable
		want  string
	}{
		{WaterTable{Target: quantity.Celsius(25), Warming: quantity.DeltaCelsius(1), Flour: degrees(20, 200),
			Room: degrees(-50, 20)}, "flour[1] out_of_range; room[0] out_of_range"},
		{WaterTable{Target: quantity.Celsius(60), Warming: quantity.DeltaCelsius(30), Flour: many[:1], Room: many,
			Levain: quantity.Celsius(99)},
			"flour[0] required; room out_of_range; target out_of_range; levain out_of_range; warming out_of_range"},
		{WaterTable{Target: quantity.Celsius(0.5), Warming: quantity.DeltaCelsius(10), Flour: degrees(20, 95),
			Room: degrees(95), Levain: quantity.Celsius(95)}, "flour[1] inconsistent"},
	} {
		_, err := c.table.Water()
		var got []string
		for _, e := range quantity.InputErrors(err) {
			got = append(got, e.Path+" "+e.Code)
		}
		if d := cmp.Diff(c.want, strings.Join(got, "; ")); d != "" {
			t.Error(d, err)
		}
	}
}

func must[T any](v T, err error) T {
	if err != nil {
		panic(err)
	}
	return v
}
