package flour

import (
	"errors"
	"math"
	"testing"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/workcheck"
)

func lot(protein, share, least, most string) FlourLot {
	f := FlourLot{Protein: quantity.MustPercent(protein + " %"), Share: quantity.MustPercent(share + " %")}
	if least != "" {
		f.Least = quantity.MustPercent(least + " %")
	}
	if most != "" {
		f.Most = quantity.MustPercent(most + " %")
	}
	return f
}

// Bounds that leave one blend only are kept to the letter, whatever protein is wanted.
func TestBoundsThatLeaveOneBlend(t *testing.T) {
	for _, flours := range [][]FlourLot{
		{lot("10", "50", "", "60"), lot("14", "50", "", "40")},
		{lot("10", "40", "", "33.1"), lot("12", "30", "", "33.3"), lot("14", "30", "", "33.6")},
		{lot("10", "50", "33.1", ""), lot("12", "30", "33.3", ""), lot("14", "20", "33.6", "")},
	} {
		in := FlourBlend{Flours: flours, Target: quantity.MustPercent("12 %"), Total: quantity.Kilograms(1)}
		r, err := in.Shares()
		if err != nil {
			t.Fatal(err)
		}
		for i, f := range r.Flours {
			want := flours[i].Most
			if want.IsZero() {
				want = flours[i].Least
			}
			if f.Share != want {
				t.Errorf("flour %d has %v, its bound is %v", i, f.Share, want)
			}
		}
		workcheck.Verify(t, r.Working())
	}
	over := FlourBlend{Flours: []FlourLot{lot("10", "50", "", "60"), lot("14", "50", "", "39.999999")},
		Target: quantity.MustPercent("12 %"), Total: quantity.Kilograms(1)}
	if _, err := over.Shares(); !errors.Is(err, quantity.ErrInconsistent) {
		t.Errorf("shares of at most 99.999999 %%: %v", err)
	}
}

// Flours of one protein are shifted alike where no bound holds them: 10 points that one may not have are 5 more of
// each of the two others.
func TestFloursOfOneProtein(t *testing.T) {
	r, err := FlourBlend{Flours: []FlourLot{lot("12", "40", "", "30"), lot("12", "35", "", ""), lot("12", "25", "", "")},
		Target: quantity.MustPercent("12 %"), Total: quantity.Kilograms(1)}.Shares()
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []string{"30 %", "40 %", "30 %"} {
		if got := r.Flours[i]; got.Share != quantity.MustPercent(want) || (got.Held == HeldAtMost) != (i == 0) {
			t.Errorf("flour %d: %v, %v; want %s", i, got.Share, got.Held, want)
		}
	}
	workcheck.Verify(t, r.Working())
	// A bound that only the shift of the others makes one: 30 points that the second may not have are 15 more of each
	// of the others, and the first may have 5 more; the last takes what is left.
	r, err = FlourBlend{Flours: []FlourLot{lot("12", "25", "", "30"), lot("12", "60", "", "30"), lot("12", "15", "", "")},
		Target: quantity.MustPercent("12 %"), Total: quantity.Kilograms(1)}.Shares()
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []string{"30 %", "30 %", "40 %"} {
		if got := r.Flours[i]; got.Share != quantity.MustPercent(want) || (got.Held == HeldAtMost) != (i < 2) {
			t.Errorf("flour %d: %v, %v; want %s", i, got.Share, got.Held, want)
		}
	}
}

// By largest remainder: a sixth, a third and a half of millionths leave one over, and the sixth, 16.6666666…, lies
// nearest to it.
func TestSharesByLargestRemainder(t *testing.T) {
	for _, c := range []struct {
		x    []float64
		want []string
	}{
		{[]float64{100.0 / 6, 100.0 / 3, 50}, []string{"16.666667 %", "33.333333 %", "50 %"}},
		{[]float64{100.0 / 3, 100.0 / 6, 50}, []string{"33.333333 %", "16.666667 %", "50 %"}},
		{[]float64{100.0 / 3, 100.0 / 3, 100.0 / 3}, []string{"33.333334 %", "33.333333 %", "33.333333 %"}},
		{[]float64{100.0 / 7, 200.0 / 7, 400.0 / 7}, []string{"14.285714 %", "28.571429 %", "57.142857 %"}},
	} {
		for i, got := range roundShares(c.x) {
			if got != quantity.MustPercent(c.want[i]) {
				t.Errorf("%v: share %d is %v, want %s", c.x, i, got, c.want[i])
			}
		}
	}
}

// The classes of the lists begin and end where the lists say; a class is up to its end, and not with it.
func TestClassesByTheirLists(t *testing.T) {
	class := func(in FlourStrength, list int) string {
		t.Helper()
		in.Hydration = quantity.MustPercent("60 %")
		r, err := in.Judge()
		if err != nil {
			t.Fatal(err)
		}
		return r.Opinions[list].Class.String()
	}
	for w, want := range map[float64][3]string{
		119.9: {"weak", "very weak", "weak"}, 120: {"weak", "weak", "weak"}, 149.9: {"weak", "weak", "weak"},
		150: {"medium", "weak", "weak"}, 179.9: {"medium", "weak", "weak"}, 180: {"medium", "medium", "weak"},
		219.9: {"medium", "medium", "weak"}, 220: {"medium", "medium", "medium"}, 240: {"medium", "for bread", "medium"},
		249.9: {"medium", "for bread", "medium"}, 250: {"strong", "for bread", "medium"},
		280: {"strong", "strong", "medium"}, 339.9: {"strong", "strong", "medium"},
		340: {"strong", "very strong", "medium"}, 350: {"very strong", "very strong", "strong"},
		419.9: {"very strong", "very strong", "strong"}, 420: {"very strong", "very strong", "very strong"},
	} {
		for list, want := range want {
			if got := class(FlourStrength{W: w}, list); got != want {
				t.Errorf("W %v is %s in list %d, want %s", w, got, list+1, want)
			}
		}
	}
	for points, want := range map[float64]string{10.4: "weak", 10.5: "medium", 13.4: "medium", 13.5: "strong"} {
		if got := class(FlourStrength{Protein: quantity.NewPercent(points)}, 0); got != want {
			t.Errorf("protein %v is %s, want %s", points, got, want)
		}
	}
}

// As many figures for a hydration as against it are no warning; one more against it is.
func TestEvenOpinionsWarnOfNothing(t *testing.T) {
	for _, c := range []struct {
		pro, contra int
		warn        bool
	}{{1, 1, false}, {2, 2, false}, {1, 2, true}, {2, 1, false}, {0, 1, true}} {
		r := StrengthAdvice{}
		for range c.pro {
			r.Opinions = append(r.Opinions, StrengthOpinion{Stance: SpeaksFor})
		}
		for range c.contra {
			r.Opinions = append(r.Opinions, StrengthOpinion{Stance: SpeaksAgainst})
		}
		if r.sum(); r.Warn != c.warn || r.For != c.pro || r.Against != c.contra {
			t.Errorf("%d for and %d against: %+v", c.pro, c.contra, r)
		}
	}
}

// Each figure is taken from its least to its most and no further.
func TestFiguresOfAFlour(t *testing.T) {
	whole := quantity.NewPercent
	for name, c := range map[string]struct {
		set       func(*FlourStrength, float64)
		low, high float64
	}{
		"w":              {func(f *FlourStrength, x float64) { f.W = x }, 20, 600},
		"p/l":            {func(f *FlourStrength, x float64) { f.PL = x }, 0.1, 5},
		"falling number": {func(f *FlourStrength, x float64) { f.FallingNumber = x }, 60, 600},
		"protein":        {func(f *FlourStrength, x float64) { f.Protein = whole(x) }, 5, 25},
		"absorption":     {func(f *FlourStrength, x float64) { f.Absorption = whole(x) }, 40, 90},
	} {
		for x, ok := range map[float64]bool{c.low: true, c.high: true, c.low - 0.01: false, c.high + 0.5: false} {
			in := FlourStrength{Hydration: whole(60)}
			c.set(&in, x)
			if _, err := in.Judge(); (err == nil) != ok || err != nil && !errors.Is(err, quantity.ErrOutOfRange) {
				t.Errorf("%s %v: %v", name, x, err)
			}
		}
	}
	for x, ok := range map[float64]bool{30: true, 150: true, 29.9: false, 150.1: false,
		math.SmallestNonzeroFloat64: false} {
		if _, err := (FlourStrength{Hydration: whole(x), W: 200}).Judge(); (err == nil) != ok {
			t.Errorf("hydration %v: %v", x, err)
		}
	}
}

// Gluten that can be weighed, with water that cannot: of 1000 t, the most that a mass can be, 100 t of flour take
// 100·55/8 = 687.5 t of gluten to come from 12 to 67 %, and half as much again of water; to 66 % they take 600 and
// 900 t.
func TestDosesBeyondWhatCanBeWeighed(t *testing.T) {
	in := GlutenBoost{Protein: quantity.MustPercent("12 %"), Target: quantity.MustPercent("67 %"),
		Gluten: quantity.MustPercent("75 %"), Flour: quantity.Kilograms(100_000)}
	if r, err := in.Doses(); !errors.Is(err, quantity.ErrOutOfRange) {
		t.Errorf("%v, %v", r.Added, err)
	}
	in.Target = quantity.MustPercent("66 %")
	r, err := in.Doses()
	if err != nil || r.Added.Gluten != quantity.Kilograms(600_000) || r.Added.ExtraWater != quantity.Kilograms(900_000) {
		t.Errorf("%v, %v", r.Added, err)
	}
}
