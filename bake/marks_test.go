package bake

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
)

func minute(n int) quantity.Elapsed { return quantity.Elapsed(time.Duration(n) * time.Minute) }

// The cuts are opened again and the loaf is turned at the minutes asked for, wherever the lid is then, and the parts
// of the bake still add up to the whole.
func TestMarksOfAProgram(t *testing.T) {
	base := OvenLoad{Dough: quantity.Grams(900), Pieces: 1, Vessel: Pot, Covered: minute(22), Uncovered: minute(20)}
	for name, c := range map[string]struct {
		change func(*OvenLoad)
		want   string
	}{
		"nothing": {func(*OvenLoad) {}, "load 0, covered 0, vent 22, uncovered 22"},
		"as usual": {func(o *OvenLoad) { o.Rescore = true },
			"load 0, covered 0, score again 5, covered 5, vent 22, uncovered 22"},
		"at seven": {func(o *OvenLoad) { o.RescoreAfter = minute(7) },
			"load 0, covered 0, score again 7, covered 7, vent 22, uncovered 22"},
		"turned": {func(o *OvenLoad) { o.TurnAfter = minute(30) },
			"load 0, covered 0, vent 22, uncovered 22, turn 30, uncovered 30"},
		"with the lid": {func(o *OvenLoad) { o.TurnAfter = minute(22) },
			"load 0, covered 0, vent 22, turn 22, uncovered 22"},
		"turned covered": {func(o *OvenLoad) { o.TurnAfter, o.RescoreAfter = minute(10), minute(4) },
			"load 0, covered 0, score again 4, covered 4, turn 10, covered 10, vent 22, uncovered 22"},
		"open": {func(o *OvenLoad) { o.Covered, o.Open, o.TurnAfter = 0, true, minute(10) },
			"load 0, uncovered 0, turn 10, uncovered 10"},
	} {
		in := base
		c.change(&in)
		pr, err := in.Program()
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		var got []string
		var sum time.Duration
		for _, ph := range pr.Phases[1:] {
			got = append(got, fmt.Sprintf("%v %.0f", ph.Kind, (ph.Start.Likely-pr.Preheat.Duration()).Minutes()))
			sum += ph.Takes.Likely
		}
		if all := strings.Join(got, ", "); all != c.want {
			t.Errorf("%s: %s", name, all)
		}
		if sum != pr.Bake.Likely || pr.Total.Likely != sum+pr.Preheat.Duration() {
			t.Errorf("%s: %v of %v", name, sum, pr.Bake.Likely)
		}
	}
	for _, c := range []struct {
		change func(*OvenLoad)
		path   string
	}{
		{func(o *OvenLoad) { o.TurnAfter = minute(42) }, "turn_after"},
		{func(o *OvenLoad) { o.RescoreAfter = minute(-1) }, "rescore_after"},
		{func(o *OvenLoad) { o.RescoreAfter = minute(50) }, "rescore_after"},
		{func(o *OvenLoad) { o.Open = true }, "covered"},
	} {
		in := base
		c.change(&in)
		_, err := in.Program()
		if all := quantity.InputErrors(err); len(all) != 1 || all[0].Path != c.path {
			t.Errorf("%s: %v", c.path, err)
		}
	}
}

// Bagels boil four at a time before they go in, while the oven heats again between the rounds; other breads do not. The
// parts add up to the whole.
func TestBagelsBoilBeforeTheyBake(t *testing.T) {
	in := OvenLoad{Style: Bagel, Dough: quantity.Grams(113), Pieces: 12, Together: 6}
	pr, err := in.Program()
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	var sum time.Duration
	for _, ph := range pr.Phases {
		got = append(got, fmt.Sprintf("%v %v", ph.Kind, ph.Takes.Likely.Round(time.Minute)))
		sum += ph.Takes.Likely
		if ph.Kind == Boil && (!ph.Hands || ph.Takes.Early != 2*time.Minute || ph.Takes.Late != 4*time.Minute) {
			t.Errorf("two potfuls: %+v", ph)
		}
	}
	if all := strings.Join(got, ", "); all != "preheat 50m0s, boil 3m0s, load 0s, uncovered 20m0s, reheat 7m0s, "+
		"boil 3m0s, load 0s, uncovered 20m0s" {
		t.Error(all)
	}
	if sum != pr.Total.Likely {
		t.Errorf("%v of %v", sum, pr.Total.Likely)
	}
	// A large kettle of them takes longer than the oven needs.
	in.Pieces, in.Together = 60, 30
	if pr, err = in.Program(); err != nil || pr.Boil.Likely != 12*time.Minute {
		t.Fatal(pr.Boil, err)
	}
	for _, ph := range pr.Phases {
		if ph.Kind == Reheating && ph.Takes.Likely != 0 {
			t.Errorf("%+v", ph)
		}
	}
	in.Style, in.Extrapolate = CrustyRoll, true
	if pr, err = in.Program(); err != nil || pr.Boil.Likely != 0 {
		t.Error(pr.Boil, err)
	}
}

// A pizza bakes flat, whatever its dough was before, and a pan of it as a sheet.
func TestThinBreadsBakeFlat(t *testing.T) {
	for _, s := range []Style{Pizza, FlatBread} {
		want, err := OvenPiece{Style: s, Dough: quantity.Grams(250)}.BakeTime()
		if err != nil {
			t.Fatal(err)
		}
		for _, shape := range quantity.Values[Shape]() {
			got, err := OvenPiece{Style: s, Shape: shape, Dough: quantity.Grams(250)}.BakeTime()
			if err != nil || (shape == Sheet) != (got.Time.Likely > want.Time.Likely) || shape != Sheet &&
				got.Time != want.Time {
				t.Errorf("%v as %v: %v, %v; flat %v", s, shape, got, err, want)
			}
		}
	}
}

// What is not said of the vessel follows the bread, and a stone that was asked for stays one.
func TestTheUsualVessel(t *testing.T) {
	for style, want := range map[Style]Vessel{Focaccia: Tray, SoftRoll: Tray, Enriched: Tray, Pan: TinPan, Bagel: Stone,
		LeanHearth: Stone, Pizza: Stone} {
		load := OvenLoad{Style: style, Dough: quantity.Grams(500), Pieces: 1, Extrapolate: true}
		usual, err := load.Program()
		load.Vessel = want
		same, err2 := load.Program()
		if err != nil || err2 != nil || usual.String() != same.String() {
			t.Errorf("%v: %v, %v", style, usual, same)
		}
		load.Vessel = Stone
		if stone, err := load.Program(); err != nil || stone.Preheat != minute(50) {
			t.Errorf("%v on a stone: %v, %v", style, stone.Preheat, err)
		}
	}
}
