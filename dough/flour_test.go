package dough_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/workcheck"
	"pgregory.net/rapid"
)

// verifyIngredient re-evaluates every printed line.
func verifyIngredient(t *rapid.T, w working.Working) {
	t.Helper()
	for _, fault := range workcheck.Faults(w) {
		t.Error(fault)
	}
}

func drawPercent(t *rapid.T, label string, low, high float64) quantity.Percent {
	x := rapid.Float64Range(low, high).Draw(t, label)
	if rapid.Bool().Draw(t, label+" round") {
		x = math.Round(x*10) / 10
	}
	return quantity.NewPercent(min(max(x, low), high))
}

func drawGrams(t *rapid.T, label string, low, high float64) quantity.Mass {
	g := rapid.Float64Range(low, high).Draw(t, label)
	if rapid.Bool().Draw(t, label+" round") {
		g = math.Round(g)
	}
	return quantity.Grams(min(max(g, low), high))
}

func TestPearsonIsInverseToAnalysis(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := dough.TwoFlours{
			A: dough.FlourLot{Name: "a", Protein: drawPercent(t, "a", 5, 18)}, B: dough.FlourLot{Name: "b", Protein: drawPercent(t, "b", 5, 18)},
			Total: drawGrams(t, "total", 1, 1e6),
		}
		low, high := in.A.Protein, in.B.Protein
		if low.Compare(high) > 0 {
			low, high = high, low
		}
		if high.Sub(low).Points() < 0.001 {
			t.Skip("equal flours")
		}
		in.Target = low.Add(drawPercent(t, "where", 0, 100).OfPercent(high.Sub(low)))
		r, err := dough.PearsonSquare(in)
		if err != nil {
			t.Fatal(err)
		}
		verifyIngredient(t, r.Working())
		if r.Flours[0].Mass.Add(r.Flours[1].Mass) != in.Total || r.Flours[0].Share.Add(r.Flours[1].Share) != quantity.MustPercent("100 %") {
			t.Fatalf("parts do not add up: %v", r)
		}
		back, err := dough.BlendProtein([]dough.WeighedFlour{{FlourLot: in.A, Mass: r.Flours[0].Mass}, {FlourLot: in.B, Mass: r.Flours[1].Mass}})
		if err != nil {
			t.Fatal(err)
		}
		// A microgram of the total is a millionth of a gram of at most 13 points of difference.
		if d := math.Abs(back.Points() - in.Target.Points()); d > 13e-6/in.Total.Grams()+1e-6 {
			t.Fatalf("blend has %v, target %v", back, in.Target)
		}
		// The square is the case of two flours of the general blend.
		general, err := dough.BlendFlours(dough.BlendGoal{
			Flours: []dough.FlourShare{{FlourLot: in.A, Share: quantity.MustPercent("50 %")}, {FlourLot: in.B, Share: quantity.MustPercent("50 %")}}, Target: in.Target,
		})
		if err != nil || !general.Feasible {
			t.Fatalf("%v, %v", general, err)
		}
		if d := math.Abs(general.Flours[0].Share.Points() - r.Flours[0].Share.Points()); d > 3e-6/(high.Sub(low).Points())+3e-6 {
			t.Fatalf("shares %v and %v", general.Flours[0].Share, r.Flours[0].Share)
		}
	})
}

func drawBlend(t *rapid.T) dough.BlendGoal {
	n := rapid.IntRange(2, 8).Draw(t, "flours")
	in := dough.BlendGoal{Total: drawGrams(t, "total", 0, 1e5)}
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
		f := dough.FlourShare{FlourLot: dough.FlourLot{Protein: drawPercent(t, "protein", 6, 17)}, Share: share}
		if rapid.Bool().Draw(t, "bounds") {
			f.Least = quantity.NewPercent(math.Floor(share.Points() * rapid.Float64Range(0, 1).Draw(t, "least")))
			f.Most = quantity.NewPercent(math.Ceil(share.Points() + rapid.Float64Range(0, 1).Draw(t, "most")*(100-share.Points())))
		}
		in.Flours = append(in.Flours, f)
	}
	in.Target = drawPercent(t, "target", 6, 17)
	return in
}

func TestBlendFlours(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := drawBlend(t)
		r, err := dough.BlendFlours(in)
		if err != nil {
			t.Fatal(err)
		}
		verifyIngredient(t, r.Working())
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
					better := in.Flours[j].Protein.Compare(in.Flours[i].Protein) > 0 == up && in.Flours[j].Protein != in.Flours[i].Protein
					if better && r.Flours[i].Share.Compare(in.Flours[i].Least) > 0 && r.Flours[j].Share.Compare(most) < 0 {
						t.Fatalf("moving a share from %d to %d is nearer to %v: %v", i, j, in.Target, r)
					}
				}
			}
			return
		}
		if d := math.Abs(r.Protein.Points() - in.Target.Points()); d > 2e-6 {
			t.Fatalf("blend has %v, target %v", r.Protein, in.Target)
		}
		// No other blend near it that meets target and bounds changes less: shift three shares so that sum and
		// protein stay.
		for range 5 {
			n := len(r.Flours)
			if n < 3 {
				break
			}
			i, j, k := rapid.IntRange(0, n-1).Draw(t, "i"), rapid.IntRange(0, n-1).Draw(t, "j"), rapid.IntRange(0, n-1).Draw(t, "k")
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

func TestGlutenAddAndReplaceAgree(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := dough.GlutenBoost{Protein: drawPercent(t, "protein", 7, 14), Gluten: drawPercent(t, "gluten", 65, 85), Flour: drawGrams(t, "flour", 1, 1e5)}
		in.Target = in.Protein.Add(drawPercent(t, "more", 0, 6))
		add, err := dough.AddGluten(in)
		if err != nil {
			t.Fatal(err)
		}
		replace, err := dough.ReplaceWithGluten(in)
		if err != nil {
			t.Fatal(err)
		}
		verifyIngredient(t, add.Working())
		verifyIngredient(t, replace.Working())
		if replace.Flour.Add(replace.Gluten) != in.Flour || add.Flour != in.Flour {
			t.Fatalf("weights: %v, %v", add, replace)
		}
		for _, r := range []dough.GlutenResult{add, replace} {
			back, err := dough.BlendProtein([]dough.WeighedFlour{{FlourLot: dough.FlourLot{Protein: in.Protein}, Mass: r.Flour}, {FlourLot: dough.FlourLot{Protein: in.Gluten}, Mass: r.Gluten}})
			if err != nil {
				t.Fatal(err)
			}
			if d := math.Abs(back.Points() - in.Target.Points()); d > 1e-4/in.Flour.Grams()+1e-6 {
				t.Fatalf("%v gives %v, target %v", r, back, in.Target)
			}
		}
		// x added to 100 is the share x ÷ (100 + x).
		x := add.PerFlour.Points()
		if d := math.Abs(100*x/(100+x) - replace.PerFlour.Points()); d > 2e-6 {
			t.Fatalf("add %v, replace %v", add.PerFlour, replace.PerFlour)
		}
	})
}

func TestMoistureBasisGoesBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := dough.FlourBasis{Value: drawPercent(t, "value", 0, 20), From: drawPercent(t, "from", 0, 18), To: drawPercent(t, "to", 0, 18)}
		for _, f := range []func(dough.FlourBasis) (dough.FlourBasisResult, error){dough.ConvertBasis, dough.ConvertAbsorption} {
			r, err := f(in)
			if err != nil {
				t.Fatal(err)
			}
			verifyIngredient(t, r.Working())
			if r.Value.Sign() < 0 {
				continue
			}
			back, err := f(dough.FlourBasis{Value: r.Value, From: in.To, To: in.From})
			if err != nil {
				t.Fatal(err)
			}
			if d := math.Abs(back.Value.Points() - in.Value.Points()); d > 2e-6 {
				t.Fatalf("%v came back as %v", in.Value, back.Value)
			}
		}
	})
}

func TestStrengthShowsDisagreement(t *testing.T) {
	r, err := dough.JudgeFlour(dough.FlourStrength{Hydration: quantity.MustPercent("72 %"), W: 280, Protein: quantity.MustPercent("12.5 %")})
	if err != nil {
		t.Fatal(err)
	}
	if !r.Warn || r.Disagreement == "" || r.Against == 0 || len(r.Advice) == 0 {
		t.Errorf("72 %% on W 280: %+v", r)
	}
	r, err = dough.JudgeFlour(dough.FlourStrength{Hydration: quantity.MustPercent("62 %"), W: 240})
	if err != nil || r.For == 0 || r.Against == 0 || r.Disagreement == "" {
		t.Errorf("the lists put W 240 a class apart: %+v, %v", r, err)
	}
	calm, err := dough.JudgeFlour(dough.FlourStrength{Hydration: quantity.MustPercent("50 %"), W: 300, PL: 0.6, FallingNumber: 260, Absorption: quantity.MustPercent("58 %")})
	if err != nil || calm.Warn || calm.Against != 0 {
		t.Errorf("50 %% on W 300: %+v, %v", calm, err)
	}
	rapid.Check(t, func(t *rapid.T) {
		in := dough.FlourStrength{Hydration: drawPercent(t, "hydration", 30, 150), W: rapid.Float64Range(20, 600).Draw(t, "w"), Protein: drawPercent(t, "protein", 5, 25)}
		if rapid.Bool().Draw(t, "more figures") {
			in.PL, in.FallingNumber, in.Absorption = rapid.Float64Range(0.1, 5).Draw(t, "pl"), rapid.Float64Range(60, 600).Draw(t, "fn"), drawPercent(t, "absorption", 40, 90)
		}
		r, err := dough.JudgeFlour(in)
		if err != nil {
			t.Fatal(err)
		}
		verifyIngredient(t, r.Working())
		// A wetter dough never has fewer opinions against it.
		wetter := in
		wetter.Hydration = in.Hydration.Add(quantity.MustPercent("1 %"))
		if w, err := dough.JudgeFlour(wetter); err == nil && w.Against < r.Against {
			t.Fatalf("%d against at %v, %d at %v", r.Against, in.Hydration, w.Against, wetter.Hydration)
		}
	})
}

// refusedFields lists the refused fields with their reasons.
func refusedFields(err error) string {
	var out []string
	for _, e := range quantity.InputErrors(err) {
		out = append(out, e.Path+" "+errors.Unwrap(e).Error())
	}
	return strings.Join(out, "; ")
}

func failure[T any](_ T, err error) error { return err }

func TestHostileFlour(t *testing.T) {
	nan := quantity.NewPercent(math.NaN())
	huge := strings.Repeat("x", 1<<20)
	for name, c := range map[string]struct {
		err  error
		want string
	}{
		"pearson, zero":     {failure(dough.PearsonSquare(dough.TwoFlours{})), "B.Protein inconsistent"},
		"pearson":           {failure(dough.PearsonSquare(dough.TwoFlours{A: dough.FlourLot{Protein: nan}, B: dough.FlourLot{Protein: quantity.MustPercent("101 %")}, Target: nan, Total: quantity.Grams(-1)})), "A.Protein out of range; B.Protein out of range; Target out of range; Total out of range"},
		"protein, none":     {failure(dough.BlendProtein(nil)), "flours required"},
		"protein, many":     {failure(dough.BlendProtein(make([]dough.WeighedFlour, 1_000_000))), "flours out of range"},
		"protein, zero":     {failure(dough.BlendProtein(make([]dough.WeighedFlour, 3))), "flours out of range"},
		"blend, zero":       {failure(dough.BlendFlours(dough.BlendGoal{})), "Flours required"},
		"blend, one":        {failure(dough.BlendFlours(dough.BlendGoal{Flours: make([]dough.FlourShare, 1)})), "Flours out of range"},
		"blend, zeros":      {failure(dough.BlendFlours(dough.BlendGoal{Flours: make([]dough.FlourShare, 2)})), "Flours inconsistent"},
		"blend":             {failure(dough.BlendFlours(dough.BlendGoal{Flours: []dough.FlourShare{{FlourLot: dough.FlourLot{Name: huge, Protein: nan}, Share: nan, Least: quantity.MustPercent("60 %"), Most: quantity.MustPercent("50 %")}, {}}, Target: nan, Total: quantity.Grams(math.Inf(1))})), "Target out of range; Total out of range; Flours[0].Protein out of range; Flours[0].Share out of range; Flours[0].Least inconsistent"},
		"gluten, zero":      {failure(dough.AddGluten(dough.GlutenBoost{Target: quantity.MustPercent("80 %")})), "Target inconsistent"},
		"gluten":            {failure(dough.ReplaceWithGluten(dough.GlutenBoost{Protein: quantity.MustPercent("14 %"), Target: quantity.MustPercent("12 %"), Gluten: quantity.MustPercent("5 %"), Flour: quantity.Grams(-1)})), "Gluten out of range; Flour out of range"},
		"gluten, downward":  {failure(dough.ReplaceWithGluten(dough.GlutenBoost{Protein: quantity.MustPercent("14 %"), Target: quantity.MustPercent("12 %")})), "Target inconsistent"},
		"basis":             {failure(dough.ConvertBasis(dough.FlourBasis{Value: nan, From: quantity.MustPercent("100 %"), To: nan})), "Value out of range; From out of range; To out of range"},
		"basis, too much":   {failure(dough.ConvertBasis(dough.FlourBasis{Value: quantity.MustPercent("90 %"), From: quantity.MustPercent("14 %")})), "Value inconsistent"},
		"absorption":        {failure(dough.ConvertAbsorption(dough.FlourBasis{Value: quantity.MustPercent("201 %")})), "Value out of range"},
		"type":              {failure(dough.FlourType(nan, nan)), "ash out of range; moisture out of range"},
		"strength, zero":    {failure(dough.JudgeFlour(dough.FlourStrength{})), "Hydration required; Protein required"},
		"strength":          {failure(dough.JudgeFlour(dough.FlourStrength{Hydration: quantity.MustPercent("900 %"), Protein: nan, W: math.NaN(), PL: math.Inf(1), FallingNumber: -4, Absorption: nan})), "Hydration out of range; Protein out of range; W out of range; PL out of range; FallingNumber out of range; Absorption out of range"},
		"yeast, zero":       {failure(dough.ConvertYeast(dough.YeastSwap{})), "From required; To required"},
		"yeast":             {failure(dough.ConvertYeast(dough.YeastSwap{Mass: quantity.Grams(math.NaN()), From: dough.KindSalt, To: 99, Table: dough.YeastTable{Fresh: quantity.Grams(-2)}})), "Mass out of range; From out of range; To out of range; Table.Fresh out of range"},
		"yeast, no such":    {failure(dough.ConvertYeast(dough.YeastSwap{Mass: quantity.Grams(1), From: dough.KindFreshYeast, To: dough.KindInstantYeast, Table: dough.YeastTable{Name: "half", Fresh: quantity.Grams(2), ActiveDry: quantity.Grams(1)}})), "Table inconsistent"},
		"yeast, absurd":     {failure(dough.ConvertYeast(dough.YeastSwap{Mass: quantity.Kilograms(1e5), From: dough.KindFreshYeast, To: dough.KindInstantYeast, Table: dough.YeastTable{Fresh: quantity.Micrograms(1), Instant: quantity.Kilograms(1)}})), "Table out of range"},
		"foods":             {failure(dough.NewFoodTable([]dough.Food{{}, {Name: huge}, {Name: "a", Code: huge}, {Name: "b", Water: nan}, {Name: "B", Water: quantity.MustPercent("90 %"), Protein: quantity.MustPercent("20 %")}})), "foods[0].Name required; foods[1].Name out of range; foods[2].Code out of range; foods[3].Water out of range; foods[4] inconsistent; foods[4] inconsistent"},
		"foods, many":       {failure(dough.NewFoodTable(make([]dough.Food, 10_001))), "foods out of range"},
		"water in":          {failure(dough.WaterIn([]dough.FoodAmount{{Mass: quantity.Grams(-1), Food: dough.Food{Water: nan}}})), "amounts[0].Mass out of range; amounts[0].Food.Water out of range"},
		"water in, many":    {failure(dough.WaterIn(make([]dough.FoodAmount, 201))), "amounts out of range"},
		"volume, zero":      {failure(dough.MassOfVolume(dough.FoodVolume{})), "Volume out of range; Food required"},
		"volume, unknown":   {failure(dough.MassOfVolume(dough.FoodVolume{Food: huge, Volume: quantity.Liters(1), Method: 77})), "Method out of range; Food out of range"},
		"volume, no method": {failure(dough.MassOfVolume(dough.FoodVolume{Food: "bread flour", Volume: quantity.Liters(1)})), "Method required"},
		"volume, leveled":   {failure(dough.MassOfVolume(dough.FoodVolume{Food: "bread flour", Volume: quantity.Liters(1), Method: dough.Leveled})), "Method out of range"},
		"volume, own list":  {failure(dough.MassOfVolume(dough.FoodVolume{Food: "x", Volume: quantity.Liters(1), Method: dough.Sifted, Measures: []dough.FoodMeasure{{Food: "x", Method: 9}}})), "Measures[0].Method out of range; Measures[0].Per out of range; Measures[0].Mass out of range"},
		"water mass":        {failure(dough.WaterMass(quantity.Liters(math.NaN()), quantity.Temperature{})), "v out of range; t required"},
	} {
		if got := refusedFields(c.err); got != c.want {
			t.Errorf("%s:\n got %s\nwant %s", name, got, c.want)
		}
		if c.err != nil && len(c.err.Error()) > 4000 {
			t.Errorf("%s: an error of %d bytes", name, len(c.err.Error()))
		}
	}
}
