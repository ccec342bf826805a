package ferment_test

import (
	"math"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/ferment"
	"example.org/maslin/internal/workcheck"
)

// both is a dough with a levain and instant yeast.
func both(levain, yeast float64) ferment.Bulk {
	b := good()
	b.Inoculation = pct(levain)
	b.Yeast = ferment.Yeast{Kind: ferment.InstantYeast, Amount: pct(yeast)}
	return b
}

// Levain and yeast together have risen further than either alone, and are ready sooner.
func TestLevainAndYeastTogether(t *testing.T) {
	b := both(9, 0.15)
	b.History, _ = ferment.Relaxing{Start: quantity.Celsius(26), Room: ferment.Room{Night: quantity.Celsius(20)},
		TimeConstant: quantity.Elapsed(3 * time.Hour)}.History()
	e := estimate(t, b)
	alone := good()
	alone.Inoculation, alone.History = b.Inoculation, b.History
	levain := estimate(t, alone)
	alone.Inoculation, alone.Yeast = quantity.Percent{}, b.Yeast
	yeast := estimate(t, alone)
	for _, at := range []time.Duration{30 * time.Minute, 2 * time.Hour, 4 * time.Hour} {
		one, err1 := levain.RiseAt(at)
		two, err2 := yeast.RiseAt(at)
		sum, err3 := e.RiseAt(at)
		if err1 != nil || err2 != nil || err3 != nil {
			t.Fatal(err1, err2, err3)
		}
		if sum.Likely.Compare(one.Likely) <= 0 || sum.Likely.Compare(two.Likely) <= 0 {
			t.Errorf("after %v: %v, alone %v and %v", at, sum.Likely, one.Likely, two.Likely)
		}
	}
	if e.Ready().Likely >= min(levain.Ready().Likely, yeast.Ready().Likely) {
		t.Errorf("together %v, alone %v and %v", e, levain, yeast)
	}
	workcheck.Verify(t, e.Working())
}

// With next to no yeast it is the levain's dough, with next to no levain the yeast's.
func TestTogetherGoesOverIntoEitherAlone(t *testing.T) {
	e, err := both(10, 0.001).Estimate()
	if err != nil {
		t.Fatal(err)
	}
	levain, err := good().Estimate()
	if err != nil {
		t.Fatal(err)
	}
	near := func(a, b time.Duration) bool { return math.Abs(a.Hours()/b.Hours()-1) < 0.03 }
	if !near(e.Ready().Likely, levain.Ready().Likely) {
		t.Errorf("%v, the levain alone %v", e, levain)
	}
	b := both(0.01, 1)
	yeast := b
	yeast.Inoculation = quantity.Percent{}
	if e, err = b.Estimate(); err != nil {
		t.Fatal(err)
	}
	only, err := yeast.Estimate()
	if err != nil {
		t.Fatal(err)
	}
	if !near(e.Ready().Likely, only.Ready().Likely) {
		t.Errorf("%v, the yeast alone %v", e, only)
	}
}

func TestYeastBesideALevain(t *testing.T) {
	a, err := both(9, 1).AmountFor(4 * time.Hour)
	if err != nil || !a.Feasible {
		t.Fatal(a, err)
	}
	b := both(9, a.Yeast.Amount.Points())
	e, err := b.Estimate()
	if err != nil {
		t.Fatal(err)
	}
	if off := e.Ready().Likely - 4*time.Hour; off < -time.Minute || off > time.Minute {
		t.Errorf("with %v ready after %v", a.Yeast, e.Ready().Likely)
	}
	if a, err = both(9, 1).AmountFor(9 * time.Hour); err != nil || a.Feasible || a.Why.String() == "" {
		t.Error("the levain alone would be ready sooner:", a, err)
	}
	much := both(9, 1)
	much.Rise = pct(300)
	if a, err = much.AmountFor(10 * time.Minute); err != nil || a.Feasible {
		t.Error(a, err)
	}
}

// What follows shaping counts with levain and yeast as they are by then: shaped at the rise asked for, the dough
// joined from both histories comes to the total.
func TestShapingWithBothComesToTheTotal(t *testing.T) {
	loaf := ferment.Piece{
		Mass: quantity.Grams(900), Form: ferment.Round, Into: ferment.Room{Night: quantity.Celsius(4)},
		Exposure: ferment.Refrigerator,
		For:      quantity.Elapsed(10 * time.Hour),
	}
	p := ferment.Proof{Bulk: both(9, 0.1), Stages: []ferment.Piece{loaf}, Total: pct(90)}
	target, err := p.RiseBeforeShaping()
	if err != nil || !target.Feasible {
		t.Fatal(target, err)
	}
	workcheck.Verify(t, target.Working())
	b := p.Bulk
	b.Rise = target.Rise
	shaped := estimate(t, b).Ready().Likely
	loaf.Start, loaf.For = b.History.At(shaped), quantity.Elapsed(20*time.Hour)
	cold, err := loaf.History()
	if err != nil {
		t.Fatal(err)
	}
	joined, err := ferment.Join(ferment.Stretch{History: b.History, For: quantity.Elapsed(shaped)},
		ferment.Stretch{History: cold})
	if err != nil {
		t.Fatal(err)
	}
	b.History, b.Rise = joined, pct(90)
	rise, err := estimate(t, b).RiseAt(shaped + 10*time.Hour)
	if err != nil {
		t.Fatal(err)
	}
	if !(math.Abs(rise.Likely.Points()-90) <= 0.3) {
		t.Errorf("shaped at %v it comes to %v", target.Rise, rise.Likely)
	}
}

// Bakes with both are learned apart from others, and bring the prediction to what was seen.
func TestLearningFromBakesWithBoth(t *testing.T) {
	var bakes []ferment.LoggedBulk
	for range 8 {
		b := both(9, 0.1)
		e, err := b.Estimate()
		if err != nil {
			t.Fatal(err)
		}
		bakes = append(bakes, ferment.LoggedBulk{Bulk: b, Took: quantity.Elapsed(e.Ready().Likely * 3 / 2)})
	}
	l, err := ferment.Learning{Bakes: bakes}.Learn()
	if err != nil {
		t.Fatal(err)
	}
	b := both(9, 0.1)
	b.Culture = l.Culture
	e, err := b.Estimate()
	if err != nil {
		t.Fatal(err)
	}
	if ratio := e.Ready().Likely.Hours() / bakes[0].Took.Duration().Hours(); ratio < 0.95 || ratio > 1.02 {
		t.Errorf("learned %v, seen %v", e, bakes[0].Took)
	}
	other := good()
	other.Culture = l.Culture
	_, err = other.Estimate()
	refuses(t, err, quantity.ErrInconsistent, "Culture")
	seen, err := e.Update(ferment.RiseReading{At: quantity.Elapsed(time.Hour), Rise: pct(20)})
	if err != nil {
		t.Fatal(err)
	}
	workcheck.Verify(t, seen.Now.Working())
}

func TestHostileDoughsWithBoth(t *testing.T) {
	for _, amount := range []float64{0.001, 15} {
		for _, levain := range []float64{0.01, 100} {
			b := both(levain, amount)
			b.Rise = pct(300)
			e, err := b.Estimate()
			if err != nil {
				t.Fatal(err)
			}
			if r := e.Ready(); !(r.Early > 0 && r.Early <= r.Likely && r.Likely <= r.Late) {
				t.Errorf("%v and %v: %v", levain, amount, r)
			}
			for _, p := range e.RiseCurve(50) {
				if !p.Rise.Low.IsValid() || !p.Rise.High.IsValid() {
					t.Errorf("%v and %v: %v", levain, amount, p)
				}
			}
		}
	}
	b := both(9, 0.1)
	b.History = ferment.Constant(quantity.Celsius(44))
	_, err := b.Estimate()
	refuses(t, err, quantity.ErrModelRange, "History")
	e, err := both(9, 0.1).Estimate()
	if err != nil {
		t.Fatal(err)
	}
	_, err = e.Flavor(time.Hour)
	refuses(t, err, quantity.ErrInconsistent, "Yeast")
}
