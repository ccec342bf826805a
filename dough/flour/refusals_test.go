package flour_test

import (
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.org/maslin/dough/flour"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/trial"
)

// flours are that many alike, with equal shares that make a whole.
func flours(n int) []flour.FlourLot {
	out := make([]flour.FlourLot, n)
	for i := range out {
		out[i] = flour.FlourLot{Protein: percent(12), Share: percent(100 / float64(n))}
	}
	return out
}

// What is refused, said whole: what was given, what is wanted, and where.
func TestRefusalsAreSaidWhole(t *testing.T) {
	twoBounds := func(least, most float64) []flour.FlourLot {
		return []flour.FlourLot{{Protein: percent(10), Share: percent(50), Least: percent(least), Most: percent(most)},
			{Protein: percent(14), Share: percent(50), Least: percent(least), Most: percent(most)}}
	}
	for name, c := range map[string]struct {
		err  error
		want string
	}{
		"one flour": {trial.Err(flour.FlourBlend{Flours: flours(1), Target: percent(12)}.Shares()),
			"flours: out of range: got 1 flours, want 2 to 50"},
		"too many": {trial.Err(flour.FlourBlend{Flours: flours(51), Target: percent(12)}.Shares()),
			"flours: out of range: got 51 flours, want 2 to 50"},
		"too many now": {trial.Err(flour.FlourBlend{Flours: flours(51)}.Protein()),
			"flours: out of range: got 51 flours, want 1 to 50"},
		"no flour": {trial.Err(flour.FlourBlend{Target: percent(12)}.Shares()),
			"flours: required: want 2 to 50 flours with protein and share"},
		"no flour now": {trial.Err(flour.FlourBlend{}.Protein()),
			"flours: required: want at least one flour with protein and share"},
		"least of 110": {trial.Err(flour.FlourBlend{Flours: twoBounds(55, 60), Target: percent(12)}.Shares()),
			"flours: inconsistent: got bounds that allow 110 % to 120 %, want bounds that allow 100 %"},
		"most of 90": {trial.Err(flour.FlourBlend{Flours: twoBounds(0, 45), Target: percent(12)}.Shares()),
			"flours: inconsistent: got bounds that allow 0 % to 90 %, want bounds that allow 100 %"},
		"crossed": {trial.Err(flour.FlourBlend{Flours: twoBounds(46, 45), Target: percent(12)}.Shares()),
			"flours[0].least: inconsistent: got 46 %, want at most the most, 45 %\n" +
				"flours[1].least: inconsistent: got 46 %, want at most the most, 45 %"},
		"no whole": {trial.Err(flour.FlourBlend{Flours: append(flours(2), flours(2)...), Target: percent(12)}.Shares()),
			"flours: inconsistent: got shares adding up to 200 %, want shares adding up to 100 %"},
		"outside": {trial.Err(flour.FlourBlend{Flours: []flour.FlourLot{{Protein: percent(14)}, {Protein: percent(10)}},
			Target: percent(14.000001)}.Shares()),
			"target: inconsistent: got 14.000001 %, want 10 % to 14 %, between the two flours"},
		"alike": {trial.Err(flour.FlourBlend{Flours: []flour.FlourLot{{Protein: percent(12)}, {Protein: percent(12)}},
			Target: percent(12)}.Shares()),
			"flours[1].protein: inconsistent: got 12 %, want another protein than the first flour's"},
		"less protein": {trial.Err(flour.GlutenBoost{Protein: percent(12), Target: percent(11)}.Doses()),
			"target: inconsistent: got 11 %, want at least the flour's own 12 %"},
		"all gluten": {trial.Err(flour.GlutenBoost{Protein: percent(12), Target: percent(75.16)}.Doses()),
			"target: inconsistent: got 75.16 %, want less than the gluten's 75.16 %"},
		"wet protein": {trial.Err(flour.FlourBasis{Value: percent(86.000001), From: percent(14)}.Protein()),
			"value: inconsistent: got 86.000001 %, want at most the dry matter, 86 %"},
		"nothing known": {trial.Err(flour.FlourStrength{Hydration: percent(60)}.Judge()),
			"protein: required: want at least one of protein, W, P/L, falling number or absorption"},
		"no figure": {new(flour.StrengthFigure).UnmarshalText([]byte("V")),
			"out of range: got \"V\", want figure of strength: W, protein, P/L, falling number, absorption"},
		"no stance": {new(flour.Stance).UnmarshalText([]byte("loud")),
			"out of range: got \"loud\", want stance: silent, for, against"},
		"no bound": {new(flour.ShareBound).UnmarshalText([]byte("none")),
			"out of range: got \"none\", want bound: least, most, both"},
	} {
		got := "accepted"
		if c.err != nil {
			got = c.err.Error()
		}
		if diff := cmp.Diff(c.want, got); diff != "" {
			t.Errorf("%s: %s", name, diff)
		}
	}
}

// A protein as large as the dry matter is taken, and the answer of fifty flours that are alike is their own protein.
func TestTheMostThatIsTaken(t *testing.T) {
	dry, err := flour.FlourBasis{Value: percent(86), From: percent(14)}.Protein()
	if err != nil || dry.Value != percent(100) {
		t.Errorf("86 %% at 14 %% moisture is %v dry, %v", dry.Value, err)
	}
	// Water absorption has no such end: 100 g of flour of 14 % moisture may take 120 g; dry, (120 + 14)·100 ÷ 86.
	wet, err := flour.FlourBasis{Value: percent(120), From: percent(14)}.Absorption()
	if err != nil || wet.Value != quantity.MustPercent("155.813953 %") {
		t.Errorf("120 %% at 14 %% moisture is %v dry, %v", wet.Value, err)
	}
	in := flour.FlourBlend{Flours: flours(50), Target: percent(12)}
	if p, err := in.Protein(); err != nil || p != percent(12) {
		t.Errorf("fifty flours: %v, %v", p, err)
	}
	if r, err := in.Shares(); err != nil || len(r.Flours) != 50 || r.Flours[49].Share != percent(2) {
		t.Errorf("fifty flours: %v, %v", r, err)
	}
	// (16 − 10) ÷ (76 − 16) is 10 %, which the trade uses still.
	g, err := flour.GlutenBoost{Protein: percent(10), Target: percent(16), Gluten: percent(76)}.Doses()
	if err != nil || g.Added.Percent != percent(10) || len(g.Notes) != 2 {
		t.Errorf("%v, %v", g, err)
	}
}

// Two flours of which one has a share or a bound are no square: what is set of either is kept to.
func TestTwoFloursWithAnythingSetAreNoSquare(t *testing.T) {
	for name, c := range map[string]struct {
		set  func(*flour.FlourLot)
		want string
	}{
		"share": {func(f *flour.FlourLot) { f.Share = percent(99) }, "shares adding up to 99 %"},
		"least": {func(f *flour.FlourLot) { f.Least = percent(10) }, "shares adding up to 0 %"},
		"most":  {func(f *flour.FlourLot) { f.Most = percent(90) }, "shares adding up to 0 %"},
	} {
		for i := range 2 {
			in := flour.FlourBlend{Target: percent(12), Flours: []flour.FlourLot{{Protein: percent(10)}, {Protein: percent(14)}}}
			c.set(&in.Flours[i])
			want := "flours: inconsistent: got " + c.want + ", want shares adding up to 100 %"
			if _, err := in.Shares(); err == nil || err.Error() != want {
				t.Errorf("%s of flour %d: %v, want %s", name, i+1, err, want)
			}
		}
	}
}

// One figure against it is enough for advice, though not for a warning while another speaks for it.
func TestOneFigureAgainstBringsAdvice(t *testing.T) {
	r, err := flour.FlourStrength{Hydration: percent(65), W: 270}.Judge()
	if err != nil || r.Against != 1 || r.For != 2 || r.Warn || len(r.Advice) != 3 {
		t.Errorf("%+v, %v", r, err)
	}
}

// Where the target cannot be reached, of two flours of one protein the one named first is filled first.
func TestTheFirstOfTwoAlikeIsFilledFirst(t *testing.T) {
	r, err := flour.FlourBlend{Target: percent(15), Flours: []flour.FlourLot{
		{Protein: percent(10), Share: percent(40), Least: percent(5)},
		{Protein: percent(14), Share: percent(30), Most: percent(60)},
		{Protein: percent(14), Share: percent(30), Most: percent(70)},
	}}.Shares()
	if err != nil || r.Feasible {
		t.Fatal(r, err)
	}
	for i, want := range []float64{5, 60, 35} {
		if r.Flours[i].Share != percent(want) {
			t.Errorf("flour %d has %v, want %v %%", i+1, r.Flours[i].Share, want)
		}
	}
}

// Proteins a millionth of a point apart decide still: of 90, 90.000001 and 90.000002 with 20, 30 and 50 %, moved to
// 90.000001, as much goes from the third to the first as makes them equal.
func TestProteinsAMillionthApart(t *testing.T) {
	r, err := flour.FlourBlend{Target: percent(90.000001), Flours: []flour.FlourLot{
		{Protein: percent(90), Share: percent(20)}, {Protein: percent(90.000001), Share: percent(30)},
		{Protein: percent(90.000002), Share: percent(50)},
	}}.Shares()
	if err != nil || !r.Feasible {
		t.Fatal(r, err)
	}
	for i, want := range []float64{35, 30, 35} {
		if d := r.Flours[i].Share.Points() - want; !(math.Abs(d) <= 1e-4) {
			t.Errorf("flour %d has %v, want %v %%", i+1, r.Flours[i].Share, want)
		}
	}
}
