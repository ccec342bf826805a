package bench

import (
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"github.com/google/go-cmp/cmp"
)

// Each kind of observation has its place in the bake it belongs to; a plan has none, and of two that say that the dough
// is ready the last counts.
func TestTheObservationsOfABake(t *testing.T) {
	at := func(minute int, kind Sight, change func(*Observation)) Observation {
		o := Observation{Version: 1, At: saturday.Add(time.Duration(minute) * time.Minute), Kind: kind, Bread: "rye",
			By: "Vreni"}
		change(&o)
		return o
	}
	mix := DoughMixed{Dough: quantity.Celsius(25)}
	ready := func(percent float64) func(*Observation) {
		return func(o *Observation) { o.Ready = &ReadyDough{Rise: quantity.NewPercent(percent)} }
	}
	all := Observations{
		at(0, SawMixed, func(o *Observation) { o.Mix = &mix }),
		at(60, SawRise, func(o *Observation) { o.Rise = &SeenRise{Rise: quantity.NewPercent(5)} }),
		at(90, SawStep, func(o *Observation) { o.Step = "fold-1" }),
		at(200, SawReady, ready(20)), at(210, SawReady, ready(30)),
		at(800, SawCore, func(o *Observation) { o.Core = &SeenCore{Core: quantity.Celsius(95)} }),
		at(900, SawWeights, func(o *Observation) {
			o.Weights = &LoafWeights{In: quantity.Grams(900), Out: quantity.Grams(780)}
		}),
		at(901, SawNote, func(o *Observation) { o.Note = "pale" }),
		at(902, SawPlan, func(o *Observation) { o.Plan = &FollowedPlan{} }),
		at(5*24*60, SawNote, func(o *Observation) { o.Note = "five days" }),
		at(5*24*60+1, SawNote, func(o *Observation) { o.Note = "too late" }),
	}
	want := []LoggedBake{{Bread: "rye", By: "Vreni", Mixed: saturday, Mix: mix, Rises: all[1:2], Steps: all[2:3],
		Ready: &all[4], Cores: all[5:6], Weights: all[6:7], Notes: Observations{all[7], all[9]}}}
	if d := cmp.Diff(want, all.Bakes(),
		cmp.Comparer(func(a, b quantity.Percent) bool { return a == b }),
		cmp.Comparer(func(a, b quantity.Temperature) bool { return a == b }),
		cmp.Comparer(func(a, b quantity.Mass) bool { return a == b }),
		cmp.Comparer(func(a, b DoughMixed) bool { return a == b })); d != "" {
		t.Error(d)
	}
}

// Characters that turn the direction of a text are refused, all of them and no other.
func TestDirectionOfATextIsNotTurned(t *testing.T) {
	for r := rune(0x2000); r < 0x2080; r++ {
		turns := r >= 0x202a && r <= 0x202e || r >= 0x2066 && r <= 0x2069 // LRE to RLO, and LRI to PDI: Unicode, UAX 9
		if err := note("a" + string(r)).Check(); (err != nil) != turns {
			t.Errorf("%U: %v", r, err)
		}
	}
}

// A name is told as it stands, whatever signs it has.
func TestNamesAreToldAsTheyStand(t *testing.T) {
	const name = "100 %d rye & %s"
	m := DayNow{Name: name, Now: saturday, Wanted: saturday.Add(time.Hour)}
	k := KitchenNow{Now: saturday, Breads: []DayNow{m, m}}
	o := note("%v")
	o.Bread, o.By = name, name
	for _, got := range []string{m.String(), k.String(), o.String() + (Observations{o}).Report().Text(reportOptions),
		NewEntries{Entries: Observations{o}}.String()} {
		if strings.Contains(got, "%!") || !strings.Contains(got, name) {
			t.Errorf("%q", got)
		}
	}
}
