package dough_test

import (
	"strings"
	"testing"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/trial"
	"example.org/maslin/internal/workcheck"
)

func TestLevainPlanMakesWhatIsWanted(t *testing.T) {
	for _, l := range []dough.LevainBuild{
		{Want: quantity.Grams(900), KeepBack: quantity.Grams(50), Hydration: pc("100 %"),
			Starter: dough.Starter{Mass: quantity.Grams(40), Hydration: pc("60 %")}, Inoculation: pc("20 %")},
		{Want: quantity.Grams(900), Hydration: pc("80 %"),
			Starter: dough.Starter{Mass: quantity.Grams(2), Hydration: pc("500 %")}},
		{Want: quantity.Grams(300), Hydration: pc("50 %"),
			Starter: dough.Starter{Mass: quantity.Grams(100), Hydration: pc("100 %")}, Stages: 2},
		{Want: quantity.Grams(300), Hydration: pc("125 %"),
			Starter: dough.Starter{Mass: quantity.Grams(100),
				Hydration: pc("125 %")}, Inoculation: pc("16.666667 %"), Of: dough.OfMix},
	} {
		p, err := l.Plan()
		if err != nil {
			t.Fatal(err)
		}
		if !p.Reached {
			t.Fatal(p.Why)
		}
		if got, want := p.Stages[len(p.Stages)-1].Made(), l.Want.Add(l.KeepBack); got != want {
			t.Errorf("made %v, want %v", got, want)
		}
		workcheck.Verify(t, p.Working())
		w, residue, err := p.Weigh(dough.Scales{Flour: quantity.Grams(1), Fine: quantity.Grams(0.1)})
		if err != nil {
			t.Fatal(err)
		}
		if w.Use.Add(residue) != p.Use {
			t.Errorf("rounded %v, residue %v, want %v", w.Use, residue, p.Use)
		}
		workcheck.Verify(t, w.Working())
		t.Logf("%v%v", p, w)
	}
}

// 100 g of culture at 100 % are 50 g of each: with 50 g of flour more they are 150 g of levain at 50 %, without water.
func TestLevainFedWithFlourOnly(t *testing.T) {
	p, err := dough.LevainBuild{Want: quantity.Grams(150), Hydration: pc("50 %"), Inoculation: pc("200 %"),
		Starter: dough.Starter{Mass: quantity.Grams(100), Hydration: pc("100 %")}}.Plan()
	if err != nil || len(p.Stages) != 1 || p.Stages[0].Flour != quantity.Grams(50) || !p.Stages[0].Water.IsZero() {
		t.Errorf("%v, %v", p.Stages, err)
	}
}

// Of the culture at hand all is used that the bounds allow, to the microgram, in one feeding and in two of which the
// last is fixed: 330 g take 30 g in the last, whose 15 g of flour 5 g of culture may start.
func TestLevainUsesWhatIsAtHand(t *testing.T) {
	for _, l := range []dough.LevainBuild{
		{Want: quantity.Kilograms(100), Hydration: pc("100 %"),
			Starter: dough.Starter{Mass: quantity.Kilograms(20), Hydration: pc("100 %")}},
		{Want: quantity.Grams(330), Hydration: pc("100 %"), Inoculation: pc("20 %"),
			Starter: dough.Starter{Mass: quantity.Grams(5), Hydration: pc("60 %")}},
	} {
		p, err := l.Plan()
		if err != nil || !p.Reached || p.Stages[0].Starter.Mass != l.Starter.Mass || !p.LeftOver.IsZero() {
			t.Errorf("%v of %v is used, %v left over, %v", p.Stages, l.Starter, p.LeftOver, err)
		}
	}
}

// A kilogram at 20 % from 2 g of culture passes a stage of a few grams, which a scale of 100 g cannot weigh: the first.
func TestStageTooSmallForTheScale(t *testing.T) {
	p, err := dough.LevainBuild{Want: quantity.Grams(1000), Hydration: pc("100 %"),
		Starter: dough.Starter{Mass: quantity.Grams(2), Hydration: pc("100 %")}}.Plan()
	if err != nil {
		t.Fatal(err)
	}
	_, _, err = p.Weigh(dough.Scales{Flour: quantity.Grams(100)})
	if trial.Refused(err) != "fine inconsistent" || !strings.Contains(err.Error(), "for stage 1,") {
		t.Error(err)
	}
}
