package bakeday_test

import (
	"errors"
	"fmt"
	"testing"
	"time"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/ferment"
	"example.org/maslin/schedule/bakeday"
)

func onTheCounter(celsius float64) ferment.Ripening {
	return ferment.Ripening{Hydration: quantity.NewPercent(100), History: ferment.Constant(quantity.Celsius(celsius)),
		Law: ferment.GasBalance()}
}

func ExampleFedLevain_Ripe() {
	plan, err := dough.LevainBuild{
		Want: quantity.Grams(750), Hydration: quantity.NewPercent(100),
		Starter: dough.Starter{Mass: quantity.Grams(150), Hydration: quantity.NewPercent(100)},
	}.Plan()
	if err != nil {
		fmt.Println(err)
		return
	}
	ripe, err := bakeday.FedLevain{Feedings: plan.Stages, Ripening: onTheCounter(24)}.Ripe()
	fmt.Println(len(ripe), ripe[0].From.Likely < ripe[0].Peak.Likely, err)
	fmt.Println(bakeday.RipeLevain{Plan: plan, Ripe: ripe})
	// Output:
	// 1 true <nil>
	// Levain: 750 g at 100 %
}

// Each stage is the ripening of its feeding; only the first is begun with a cold culture, and only the last is chilled.
func TestStagesRipenOneAfterTheOther(t *testing.T) {
	small, err := dough.ParseFeeding("100:500:500")
	if err != nil {
		t.Fatal(err)
	}
	large, err := dough.ParseFeeding("100:200:200")
	if err != nil {
		t.Fatal(err)
	}
	small.Starter.Hydration, large.Starter.Hydration = quantity.NewPercent(100), quantity.NewPercent(100)
	f := bakeday.FedLevain{Feedings: []dough.Feeding{small, large}, Ripening: onTheCounter(24)}
	f.Ripening.ColdSeed = true
	ripe, err := f.Ripe()
	if err != nil {
		t.Fatal(err)
	}
	for i, points := range []float64{20, 50} { // half a part of flour in one of culture, on 5 and on 2
		alone := onTheCounter(24)
		alone.Seed, alone.ColdSeed = quantity.NewPercent(points), i == 0
		share, err := ferment.FeedRatio{Seed: 1, Flour: 100 / points, SeedHydration: quantity.NewPercent(100)}.SeedShare()
		if err != nil {
			t.Fatal(err)
		}
		alone.Seed = share
		want, err := alone.Ripe()
		if err != nil || ripe[i].Peak != want.Peak {
			t.Errorf("stage %d: peak %v, want %v, %v", i, ripe[i].Peak, want.Peak, err)
		}
	}
	f.ChilledAfter, f.Refrigerator = quantity.Elapsed(2*time.Hour), quantity.Celsius(4)
	cold, err := f.Ripe()
	if err != nil {
		t.Fatal(err)
	}
	if cold[0].Peak != ripe[0].Peak || cold[1].Peak.Likely <= ripe[1].Peak.Likely {
		t.Errorf("chilled: %v and %v", cold[0].Peak, cold[1].Peak)
	}
	for what, c := range map[string]struct {
		bend func(*bakeday.FedLevain)
		path string
		is   error
	}{
		"no feeding": {func(f *bakeday.FedLevain) { f.Feedings = nil }, "feedings", quantity.ErrRequired},
		"at once":    {func(f *bakeday.FedLevain) { f.ChilledAfter = 1 }, "chilled_after", quantity.ErrOutOfRange},
		"too hot": {func(f *bakeday.FedLevain) { f.Ripening = onTheCounter(45) }, "ripening.history",
			quantity.ErrModelRange},
		"without flour": {func(f *bakeday.FedLevain) { f.Feedings = []dough.Feeding{{}} }, "feedings[0]",
			quantity.ErrRequired},
	} {
		bent := f
		c.bend(&bent)
		_, err := bent.Ripe()
		found := quantity.InputErrors(err)
		if len(found) == 0 || !errors.Is(err, c.is) || len(found[0].Path) < len(c.path) ||
			found[0].Path[:len(c.path)] != c.path {
			t.Errorf("%s: %v", what, err)
		}
	}
}
