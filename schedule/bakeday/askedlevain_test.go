package bakeday_test

import (
	"errors"
	"fmt"
	"testing"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule/bakeday"
)

func ExampleAskedLevain_Answer() {
	ratio, err := dough.ParseFeeding("1:5:5")
	if err != nil {
		fmt.Println(err)
		return
	}
	levain, err := bakeday.AskedLevain{
		Build: dough.LevainBuild{Want: quantity.Grams(440)}, Ratio: &ratio,
		Stands: &bakeday.FedLevain{Ripening: onTheCounter(24)},
	}.Answer()
	fmt.Println(levain, levain.Plan.Stages[0], err)
	fmt.Println(levain.Ripe[0].Message())
	// Output:
	// Levain: 440 g at 100 % 40 g culture, 200 g flour, 200 g water <nil>
	// ripe after about 7h30m, at its peak after 6h07m to 11h48m (80 %), likely 8h28m, usable until about 12h25m
}

// 1:5:5 is a part of culture in eleven, and 440 g of it are 40 g, 200 g and 200 g; what is not known of the starter is
// no more than it takes, and as wet as its feed. 900 g at 80 % from 100 g at 100 % have 500 g of flour in all, 50 g of
// which the starter brings.
func TestEverythingThatIsAskedOfALevain(t *testing.T) {
	ratio, err := dough.ParseFeeding("1:5:5")
	if err != nil {
		t.Fatal(err)
	}
	for name, c := range map[string]struct {
		asked                bakeday.AskedLevain
		starter, flour, left float64
	}{
		"by a ratio": {bakeday.AskedLevain{Build: dough.LevainBuild{Want: quantity.Grams(440)}, Ratio: &ratio}, 40, 200, 0},
		"by a ratio, with a culture": {bakeday.AskedLevain{Build: dough.LevainBuild{Want: quantity.Grams(440),
			Starter: dough.Starter{Mass: quantity.Grams(100)}}, Ratio: &ratio}, 40, 200, 60},
		"by a culture": {bakeday.AskedLevain{Build: dough.LevainBuild{Want: quantity.Grams(900),
			Hydration: quantity.NewPercent(80), Starter: dough.Starter{Mass: quantity.Grams(100),
				Hydration: quantity.NewPercent(100)}}}, 100, 450, 0},
		"on a coarse scale": {bakeday.AskedLevain{Build: dough.LevainBuild{Want: quantity.Grams(440)}, Ratio: &ratio,
			Scales: dough.Scales{Flour: quantity.Grams(30)}}, 30, 210, 0},
	} {
		got, err := c.asked.Answer()
		if err != nil || len(got.Plan.Stages) != 1 || got.Ripe != nil {
			t.Errorf("%s: %v, %v", name, got, err)
			continue
		}
		fed := got.Plan.Stages[0]
		if fed.Starter.Mass != quantity.Grams(c.starter) || fed.Flour != quantity.Grams(c.flour) ||
			got.Plan.LeftOver != quantity.Grams(c.left) {
			t.Errorf("%s: %v, left over %v", name, fed, got.Plan.LeftOver)
		}
	}
	asked := bakeday.AskedLevain{Build: dough.LevainBuild{Want: quantity.Grams(440)}, Ratio: &ratio,
		Stands: &bakeday.FedLevain{Ripening: onTheCounter(24)}}
	asked.Stands.Ripening.Hydration = quantity.Percent{}
	got, err := asked.Answer()
	if err != nil {
		t.Fatal(err)
	}
	want, err := bakeday.FedLevain{Feedings: got.Plan.Stages, Ripening: onTheCounter(24)}.Ripe()
	if err != nil || len(got.Ripe) != 1 || got.Ripe[0].Peak != want[0].Peak {
		t.Errorf("%v, not %v, %v", got.Ripe, want, err)
	}
	little := bakeday.AskedLevain{Build: dough.LevainBuild{Want: quantity.Kilograms(1), Stages: 1,
		Hydration: quantity.NewPercent(100), Starter: dough.Starter{Mass: quantity.Grams(5)}}}
	if got, err := little.Answer(); err != nil || got.Plan.Reached || got.Plan.Missing.IsZero() {
		t.Errorf("%+v, %v", got.Plan, err)
	}
}

// What is wrong is told at its field.
func TestRefusedLevains(t *testing.T) {
	whole := quantity.NewPercent(100)
	for path, c := range map[string]struct {
		asked bakeday.AskedLevain
		is    error
	}{
		"build.starter.mass": {bakeday.AskedLevain{Build: dough.LevainBuild{Want: quantity.Grams(500), Hydration: whole}},
			quantity.ErrRequired},
		"build.want": {bakeday.AskedLevain{Build: dough.LevainBuild{Hydration: whole}}, quantity.ErrRequired},
		"build.stages": {bakeday.AskedLevain{Build: dough.LevainBuild{Want: quantity.Grams(500), Hydration: whole,
			Inoculation: whole, Stages: 9}}, quantity.ErrOutOfRange},
		"stands.ripening.history": {bakeday.AskedLevain{Build: dough.LevainBuild{Want: quantity.Grams(500),
			Hydration: whole, Inoculation: whole}, Stands: &bakeday.FedLevain{Ripening: onTheCounter(45)}},
			quantity.ErrModelRange},
	} {
		_, err := c.asked.Answer()
		found := quantity.InputErrors(err)
		if len(found) != 1 || found[0].Path != path || !errors.Is(err, c.is) {
			t.Errorf("%s: %v", path, err)
		}
	}
	_, err := bakeday.AskedLevain{Build: dough.LevainBuild{Want: quantity.Grams(20), Hydration: whole, Inoculation: whole},
		Scales: dough.Scales{Flour: quantity.Grams(100)}}.Answer()
	if found := quantity.InputErrors(err); len(found) == 0 || found[0].Path[:6] != "scales" {
		t.Error(err)
	}
}
