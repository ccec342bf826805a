package gasbalance

import (
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
)

func dated(rows []Row) []Dated {
	out := make([]Dated, len(rows))
	for i, r := range rows {
		out[i] = Dated{r, 7 * float64(i)}
	}
	return out
}

// A log learned at once and bake by bake comes to the same, but for the luck between two searches for it.
func TestLearnedInPieces(t *testing.T) {
	bakes := dated(invented(40, 11))
	at1, _ := Group{HalfLife: 100}.Learn("Ada", "rye", bakes)
	step := Group{HalfLife: 100}
	for i := range bakes {
		step, _ = step.Learn("Ada", "rye", bakes[i:i+1])
	}
	a, b := at1.Taught("Ada", "rye"), step.Taught("Ada", "rye")
	for i := range a.effects.mean {
		if !(math.Abs(a.effects.mean[i]-b.effects.mean[i]) <= 0.1*math.Sqrt(a.effects.cov[i][i])) {
			t.Errorf("effect %d: %v at once, %v bake by bake", i, a.effects.mean[i], b.effects.mean[i])
		}
	}
	if a.Score.Ranges != 40 || b.Score.Ranges != 40 || !(math.Abs(a.Score.Squares/b.Score.Squares-1) <= 0.05) {
		t.Errorf("scores %+v and %+v", a.Score, b.Score)
	}
}

// Ordinary bakes score near 1 each and four of five ranges hold; bakes with three times the luck stretch the ranges.
func TestScore(t *testing.T) {
	scored := func(size float64) Score {
		var s Score
		for seed := range uint64(40) {
			rows := invented(25, seed)
			quiet := benchRows(25)
			for i := range rows {
				rows[i].Y = quiet[i].Y + size*(rows[i].Y-quiet[i].Y)*math.Sqrt(rows[i].Scale)
				rows[i].Y -= quiet[i].Y // kitchens like the typical one
			}
			g, _ := Group{}.Learn("", "", dated(rows))
			taught := g.Taught("", "")
			s.merge(taught.Score)
		}
		return s
	}
	ordinary, wide := scored(1.2), scored(3.6)
	if ordinary.Ranges != 1000 ||
		!(math.Abs(float64(ordinary.Inside)/1000-0.80) <= 0.06) || !(math.Abs(ordinary.Stretch()-0.95) <= 0.12) {
		t.Errorf("ordinary bakes: %+v, stretch %v", ordinary, ordinary.Stretch())
	}
	if !(wide.Stretch() > 1.15) || wide.Inside >= ordinary.Inside {
		t.Errorf("bakes of more luck: %+v, stretch %v", wide, wide.Stretch())
	}
	if one := (Score{}); one.Stretch() != 1 {
		t.Errorf("without bakes %v", one.Stretch())
	}
}

// A wild bake counts little; a culture that has changed for good is followed within a few bakes.
func TestSurprises(t *testing.T) {
	rows := invented(24, 12)
	wildRows := append([]Row(nil), rows...)
	wildRows[12].Y += 1
	_, w := Group{}.Learn("", "", dated(wildRows))
	if !(w[12] < 0.3) {
		t.Errorf("the wild bake weighs %v", w[12])
	}
	changed := append([]Row(nil), rows...)
	for i := 12; i < 24; i++ {
		changed[i].Y += 0.6
	}
	g, w := Group{HalfLife: 60}.Learn("", "", dated(changed))
	if !(w[12] < 0.5) || !(w[23] > 0.7) {
		t.Errorf("weights after the change %v", w[12:])
	}
	calm, _ := Group{HalfLife: 60}.Learn("", "", dated(rows))
	before, after := calm.Taught("", ""), g.Taught("", "")
	h := rows[0].effect()
	if moved := h.dot(&after.effects.mean) - h.dot(&before.effects.mean); !(moved > 0.3) {
		t.Errorf("followed by %v of 0.6", moved)
	}
}

// Persons and cultures learned apart and merged are those learned together; what a newcomer starts from lies
// between prior and group.
func TestClassPools(t *testing.T) {
	fast := invented(20, 13)
	for i := range fast {
		fast[i].Y += 0.3
	}
	a, _ := Group{}.Learn("Ada", "rye", dated(fast))
	b, _ := Group{}.Learn("Bo", "wheat", dated(fast[:10]))
	both, _ := a.Learn("Bo", "wheat", dated(fast[:10]))
	merged := a.Merge(b)
	// Bo's bakes were expected otherwise by somebody who knew Ada's: only the weights and the score tell.
	loose := cmp.Options{cmpopts.EquateApprox(0.15, 0.02), cmp.AllowUnexported(Taught{}, gaussian{}),
		cmpopts.IgnoreFields(Taught{}, "Score")}
	x, y := both.Taught("Ada", "rye"), merged.Taught("Ada", "rye")
	if d := cmp.Diff(x, y, loose); d != "" {
		t.Error(d)
	}
	if d := cmp.Diff(a.Merge(b).Entries, b.Merge(a).Entries); d != "" {
		t.Errorf("order of merging: %s", d)
	}
	pace := func(t Taught) float64 { h := fast[0].effect(); return h.dot(&t.effects.mean) }
	cy, bo, ada := merged.Taught("Cy", "new"), merged.Taught("Bo", "new"), merged.Taught("Ada", "rye")
	if !(0.02 < pace(cy) && pace(cy) < pace(bo) && pace(bo) < pace(ada)) {
		t.Errorf("newcomer %v, Bo's new culture %v, Ada %v", pace(cy), pace(bo), pace(ada))
	}
}
