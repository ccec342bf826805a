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
