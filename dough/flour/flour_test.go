package flour_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"example.org/maslin/dough/flour"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/trial"

	"pgregory.net/rapid"
)

// blendOfTwo draws two flours and a target between them.
func blendOfTwo(t *rapid.T) flour.FlourBlend {
	in := flour.FlourBlend{
		Flours: []flour.FlourLot{{Name: "a", Protein: trial.Percent(t, "a", 5, 18)},
			{Name: "b", Protein: trial.Percent(t, "b", 5, 18)}},
		Total: trial.Grams(t, "total", 1, 1e6),
	}
	low, high := in.Flours[0].Protein, in.Flours[1].Protein
	if low.Compare(high) > 0 {
		low, high = high, low
	}
	if high.Sub(low).Points() < 0.001 {
		t.Skip("equal flours")
	}
	in.Target = low.Add(trial.Percent(t, "where", 0, 100).OfPercent(high.Sub(low)))
	return in
}

func TestPearsonIsInverseToAnalysis(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := blendOfTwo(t)
		r, err := in.Shares()
		if err != nil {
			t.Fatal(err)
		}
		trial.Sound(t, r.Working())
		trial.Travels(t, in)
		if r.Flours[0].Mass.Add(r.Flours[1].Mass) != in.Total ||
			r.Flours[0].Share.Add(r.Flours[1].Share) != quantity.MustPercent("100 %") {
			t.Fatalf("parts do not add up: %v", r)
		}
		back := in
		back.Flours = slices.Clone(in.Flours)
		for i := range back.Flours {
			back.Flours[i].Share = r.Flours[i].Share
		}
		protein, err := back.Protein()
		if err != nil {
			t.Fatal(err)
		}
		// A millionth of a point of the share is a millionth of at most 13 points of difference.
		if d := math.Abs(protein.Points() - in.Target.Points()); !(d <= 1e-6) {
			t.Fatalf("blend has %v, target %v", protein, in.Target)
		}
		// The square is the case of two flours of the general blend.
		for i := range back.Flours {
			back.Flours[i].Share = quantity.MustPercent("50 %")
		}
		general, err := back.Shares()
		if err != nil || !general.Feasible {
			t.Fatalf("%v, %v", general, err)
		}
		apart := math.Abs(in.Flours[0].Protein.Sub(in.Flours[1].Protein).Points())
		if d := math.Abs(general.Flours[0].Share.Points() - r.Flours[0].Share.Points()); !(d <= 3e-6/apart+3e-6) {
			t.Fatalf("shares %v and %v", general.Flours[0].Share, r.Flours[0].Share)
		}
	})
}

func drawBlend(t *rapid.T) flour.FlourBlend {
	n := rapid.IntRange(2, 6).Draw(t, "flours")
	in := flour.FlourBlend{Total: trial.Grams(t, "total", 0, 1e5)}
	weights := make([]quantity.Mass, n)
	for i := range weights {
		weights[i] = quantity.Micrograms(rapid.Int64Range(0, 1_000_000).Draw(t, "weight"))
	}
	weights[0] = weights[0].Add(quantity.Micrograms(1))
	shares, err := quantity.ApportionLike(quantity.Grams(100), weights) // 100 g in micrograms is 100 % in millionths
	if err != nil {
		t.Fatal(err)
	}
	for i := range n {
		u, _ := shares[i].Micrograms()
		share := quantity.NewPercent(float64(u) / 1e6)
		f := flour.FlourLot{Protein: trial.Percent(t, "protein", 6, 17), Share: share}
		if rapid.Bool().Draw(t, "bounds") {
			f.Least = quantity.NewPercent(math.Floor(share.Points() * rapid.Float64Range(0, 1).Draw(t, "least")))
			f.Most = quantity.NewPercent(math.Ceil(share.Points() +
				rapid.Float64Range(0, 1).Draw(t, "most")*(100-share.Points())))
		}
		in.Flours = append(in.Flours, f)
	}
	in.Target = trial.Percent(t, "target", 6, 17)
	return in
}

func TestBlendFlours(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := drawBlend(t)
		r, err := in.Shares()
		if err != nil {
			t.Fatal(err)
		}
		trial.Sound(t, r.Working())
		var sum quantity.Percent
		var mass quantity.Mass
		change := 0.0
		for i, f := range r.Flours {
			most := in.Flours[i].Most
			if most.IsZero() {
				most = quantity.MustPercent("100 %")
			}
			if f.Share.Compare(in.Flours[i].Least) < 0 || f.Share.Compare(most) > 0 {
				t.Fatalf("%v outside %v to %v", f.Share, in.Flours[i].Least, most)
			}
			sum, mass = sum.Add(f.Share), mass.Add(f.Mass)
			change += f.Change.Points() * f.Change.Points()
		}
		if sum != quantity.MustPercent("100 %") || mass != in.Total {
			t.Fatalf("shares add up to %v, weights to %v", sum, mass)
		}
		if !r.Feasible {
			// No move of a share between two flours within the bounds brings the protein nearer.
			up := r.Protein.Compare(in.Target) < 0
			for i := range r.Flours {
				for j := range r.Flours {
					most := in.Flours[j].Most
					if most.IsZero() {
						most = quantity.MustPercent("100 %")
					}
					better := in.Flours[j].Protein.Compare(in.Flours[i].Protein) > 0 == up &&
						in.Flours[j].Protein != in.Flours[i].Protein
					if better && r.Flours[i].Share.Compare(in.Flours[i].Least) > 0 &&
						r.Flours[j].Share.Compare(most) < 0 {
						t.Fatalf("moving a share from %d to %d is nearer to %v: %v", i, j, in.Target, r)
					}
				}
			}
			return
		}
		if d := math.Abs(r.Protein.Points() - in.Target.Points()); !(d <= 2e-6) {
			t.Fatalf("blend has %v, target %v", r.Protein, in.Target)
		}
		// No other blend near it that meets target and bounds changes less: shift three shares so that sum and
		// protein stay.
		for range 5 {
			n := len(r.Flours)
			if n < 3 {
				break
			}
			i, j, k := rapid.IntRange(0, n-1).
				Draw(t, "i"),
				rapid.IntRange(0, n-1).
					Draw(t, "j"),
				rapid.IntRange(0, n-1).
					Draw(t,
						"k")
			p := func(i int) float64 { return in.Flours[i].Protein.Points() }
			if i == j || j == k || i == k || math.Abs(p(j)-p(k)) < 0.5 {
				continue
			}
			step := rapid.Float64Range(-2, 2).Draw(t, "step")
			dj := -step * (p(i) - p(k)) / (p(j) - p(k))
			moved := map[int]float64{i: step, j: dj, k: -step - dj}
			other, inside := 0.0, true
			for m, f := range r.Flours {
				most := in.Flours[m].Most.Points()
				if in.Flours[m].Most.IsZero() {
					most = 100
				}
				x := f.Share.Points() + moved[m]
				inside = inside && x >= in.Flours[m].Least.Points() && x <= most
				other += (x - in.Flours[m].Share.Points()) * (x - in.Flours[m].Share.Points())
			}
			if inside && other < change-1e-3 {
				t.Fatalf("moving %v changes %v, the blend %v", moved, other, change)
			}
		}
	})
}

func TestGlutenDosesAgree(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := flour.GlutenBoost{Protein: trial.Percent(t, "protein", 7, 14), Gluten: trial.Percent(t, "gluten", 65, 85),
			Flour: trial.Grams(t, "flour", 100, 1e5)}
		in.Target = in.Protein.Add(trial.Percent(t, "more", 0.2, 6))
		r, err := in.Doses()
		if err != nil {
			t.Fatal(err)
		}
		trial.Sound(t, r.Working())
		trial.Travels(t, in)
		if r.InPlace.Flour.Add(r.InPlace.Gluten) != in.Flour || r.Added.Flour != in.Flour {
			t.Fatalf("weights: %v", r)
		}
		for _, d := range []flour.GlutenDose{r.Added, r.InPlace} {
			protein := (d.Flour.Grams()*in.Protein.Points() +
				d.Gluten.Grams()*in.Gluten.Points()) / d.Flour.Add(d.Gluten).Grams()
			if off := math.Abs(protein - in.Target.Points()); !(off <= 1e-4/in.Flour.Grams()+1e-6) {
				t.Fatalf("%v gives %v, target %v", d, protein, in.Target)
			}
			if water := d.ExtraWater.Grams() - 1.5*d.Gluten.Grams(); !(math.Abs(water) <= 1e-6) {
				t.Fatalf("%v takes %v g of water too much", d, water)
			}
		}
		// x added to 100 is the share x ÷ (100 + x).
		x := r.Added.Percent.Points()
		if d := math.Abs(100*x/(100+x) - r.InPlace.Percent.Points()); !(d <= 2e-6) {
			t.Fatalf("added %v, in place %v", r.Added, r.InPlace)
		}
	})
}

func TestMoistureBasisGoesBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := flour.FlourBasis{Value: trial.Percent(t, "value", 0, 20), From: trial.Percent(t, "from", 0, 18),
			To: trial.Percent(t, "to", 0, 18)}
		trial.Travels(t, in)
		for _, f := range []func(flour.FlourBasis) (flour.OnBasis, error){flour.FlourBasis.Protein,
			flour.FlourBasis.Absorption} {
			r, err := f(in)
			if err != nil {
				t.Fatal(err)
			}
			trial.Sound(t, r.Working())
			if r.Value.Sign() < 0 {
				continue
			}
			back, err := f(flour.FlourBasis{Value: r.Value, From: in.To, To: in.From})
			if err != nil {
				t.Fatal(err)
			}
			if d := math.Abs(back.Value.Points() - in.Value.Points()); !(d <= 2e-6) {
				t.Fatalf("%v came back as %v", in.Value, back.Value)
			}
		}
	})
}

func TestStrengthShowsDisagreement(t *testing.T) {
	r, err := flour.FlourStrength{Hydration: quantity.MustPercent("72 %"), W: 280,
		Protein: quantity.MustPercent("12.5 %")}.Judge()
	if err != nil {
		t.Fatal(err)
	}
	if !r.Warn || r.Disagreement.IsZero() || r.Against == 0 || len(r.Advice) == 0 {
		t.Errorf("72 %% on W 280: %+v", r)
	}
	r, err = flour.FlourStrength{Hydration: quantity.MustPercent("62 %"), W: 240}.Judge()
	if err != nil || r.For == 0 || r.Against == 0 || r.Disagreement.IsZero() {
		t.Errorf("the lists put W 240 a class apart: %+v, %v", r, err)
	}
	calm, err := flour.FlourStrength{Hydration: quantity.MustPercent("50 %"), W: 300, PL: 0.6, FallingNumber: 260,
		Absorption: quantity.MustPercent("58 %")}.Judge()
	if err != nil || calm.Warn || calm.Against != 0 {
		t.Errorf("50 %% on W 300: %+v, %v", calm, err)
	}
	rapid.Check(t, func(t *rapid.T) {
		in := flour.FlourStrength{Hydration: trial.Percent(t, "hydration", 30, 150),
			W: rapid.Float64Range(20, 600).Draw(t, "w"), Protein: trial.Percent(t, "protein", 5, 25)}
		if rapid.Bool().Draw(t, "more figures") {
			in.PL, in.FallingNumber, in.Absorption = rapid.Float64Range(0.1, 5).Draw(t, "pl"), rapid.Float64Range(60,
				600).Draw(t, "fn"), trial.Percent(t, "absorption", 40, 90)
		}
		r, err := in.Judge()
		if err != nil {
			t.Fatal(err)
		}
		trial.Sound(t, r.Working())
		trial.Travels(t, in)
		trial.Travels(t, r)
		// A wetter dough never has fewer opinions against it.
		wetter := in
		wetter.Hydration = in.Hydration.Add(quantity.MustPercent("1 %"))
		if w, err := wetter.Judge(); err == nil && w.Against < r.Against {
			t.Fatalf("%d against at %v, %d at %v", r.Against, in.Hydration, w.Against, wetter.Hydration)
		}
	})
}

func TestHostileFlour(t *testing.T) {
	nan, percent := quantity.NewPercent(math.NaN()), quantity.MustPercent
	huge := strings.Repeat("x", 1<<20)
	for name, c := range map[string]struct {
		err  error
		want string
	}{
		"two, zero": {trial.Err(flour.FlourBlend{Flours: make([]flour.FlourLot, 2)}.Shares()),
			"flours[1].protein inconsistent"},
		"two": {trial.Err(flour.FlourBlend{
			Flours: []flour.FlourLot{{Protein: nan}, {Protein: percent("101 %")}}, Target: nan, Total: quantity.Grams(-1),
		}.Shares()), "flours[0].protein out of range; flours[1].protein out of range; target out of range; total out of " +
			"range"},
		"two, outside": {trial.Err(flour.FlourBlend{
			Flours: []flour.FlourLot{{Protein: percent("9 %")}, {Protein: percent("12 %")}}, Target: percent("13 %"),
		}.Shares()), "target inconsistent"},
		"protein, none": {trial.Err(flour.FlourBlend{}.Protein()), "flours required"},
		"protein, many": {trial.Err(flour.FlourBlend{Flours: make([]flour.FlourLot, 1_000_000)}.Protein()),
			"flours out of range"},
		"protein, zero": {trial.Err(flour.FlourBlend{Flours: make([]flour.FlourLot, 3)}.Protein()), "flours inconsistent"},
		"blend, zero":   {trial.Err(flour.FlourBlend{}.Shares()), "flours required"},
		"blend, one":    {trial.Err(flour.FlourBlend{Flours: make([]flour.FlourLot, 1)}.Shares()), "flours out of range"},
		"blend, zeros":  {trial.Err(flour.FlourBlend{Flours: make([]flour.FlourLot, 3)}.Shares()), "flours inconsistent"},
		"blend": {trial.Err(flour.FlourBlend{
			Flours: []flour.FlourLot{{Name: huge, Protein: nan, Share: nan, Least: percent("60 %"), Most: percent("50 %")}, {}},
			Target: nan, Total: quantity.Grams(math.Inf(1)),
		}.Shares()), "target out of range; total out of range; flours[0].protein out of range; flours[0].share out of " +
			"range; flours[0].least inconsistent"},
		"gluten, zero": {trial.Err(flour.GlutenBoost{Target: percent("80 %")}.Doses()), "target inconsistent"},
		"gluten": {trial.Err(flour.GlutenBoost{
			Protein: percent("14 %"), Target: percent("12 %"), Gluten: percent("5 %"), Flour: quantity.Grams(-1),
		}.Doses()), "gluten out of range; flour out of range"},
		"gluten, downward": {trial.Err(flour.GlutenBoost{Protein: percent("14 %"), Target: percent("12 %")}.Doses()),
			"target inconsistent"},
		"basis": {trial.Err(flour.FlourBasis{Value: nan, From: percent("100 %"), To: nan}.Protein()),
			"value out of range; from out of range; to out of range"},
		"basis, too much": {trial.Err(flour.FlourBasis{Value: percent("90 %"), From: percent("14 %")}.Protein()),
			"value inconsistent"},
		"absorption": {trial.Err(flour.FlourBasis{Value: percent("201 %")}.Absorption()), "value out of range"},
		"type": {trial.Err(flour.FlourAsh{Ash: nan, Moisture: nan}.Type()),
			"ash out of range; moisture out of range"},
		"strength, zero": {trial.Err(flour.FlourStrength{}.Judge()), "hydration required; protein required"},
		"strength": {trial.Err(flour.FlourStrength{
			Hydration: percent("900 %"), Protein: nan, W: math.NaN(), PL: math.Inf(1), FallingNumber: -4, Absorption: nan,
		}.Judge()), "hydration out of range; protein out of range; w out of range; pl out of range; falling_number out of " +
			"range; absorption out of range"},
	} {
		if got := trial.Refused(c.err); got != c.want {
			t.Errorf("%s:\n got %s\nwant %s", name, got, c.want)
		}
		if c.err != nil && len(c.err.Error()) > 4000 {
			t.Errorf("%s: an error of %d bytes", name, len(c.err.Error()))
		}
	}
}
