package bench

import (
	"testing"
	"time"

	"pgregory.net/rapid"
)

// The dough that was mixed last before a reading is the one that a walk over all of them finds; of two that were mixed
// at the same instant it is the first.
func TestDoughMixedLast(t *testing.T) {
	names := rapid.SampledFrom([]string{"", "rye", "rolls"})
	start := time.Date(2026, 11, 28, 8, 0, 0, 0, time.UTC)
	moment := rapid.Custom(func(t *rapid.T) time.Time {
		return start.Add(time.Duration(rapid.IntRange(0, 9).Draw(t, "hour")) * time.Hour)
	})
	rapid.Check(t, func(t *rapid.T) {
		var all Observations
		for range rapid.IntRange(0, 12).Draw(t, "doughs") {
			o := Observation{At: moment.Draw(t, "at"), Kind: SawMixed, Bread: names.Draw(t, "bread"), Mix: &DoughMixed{}}
			if rapid.Bool().Draw(t, "another's") {
				o.By = "Vreni"
			}
			if rapid.IntRange(0, 5).Draw(t, "kind") == 0 {
				o.Kind, o.Mix = SawNote, nil
			}
			all = append(all, o)
		}
		bread, at := names.Draw(t, "of"), moment.Draw(t, "read at")
		var want *Observation
		for i := range all {
			o := &all[i]
			if o.Kind == SawMixed && o.By == "Vreni" && (bread == "" || o.Bread == bread) && !o.At.After(at) &&
				(want == nil || o.At.After(want.At)) {
				want = o
			}
		}
		if got := all.mixings().last("Vreni", bread, at); got != want {
			t.Errorf("%v, want %v", got, want)
		}
	})
}
