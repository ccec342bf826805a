package dough_test

import (
	"fmt"
	"math"
	"strings"
	"sync"
	"testing"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

func TestSR28IsConsistent(t *testing.T) {
	table := dough.SR28()
	all := table.Search("")
	if len(all) != table.Len() || table.Len() < 55 {
		t.Fatalf("%d foods", table.Len())
	}
	if _, err := dough.NewFoodTable(all); err != nil {
		t.Error(err)
	}
	for _, f := range all {
		if len(f.Code) != 5 || f.Source.IsZero() || !f.Water.IsValid() || f.NoProtein && !f.Protein.IsZero() {
			t.Errorf("%+v", f)
		}
		if got, ok := table.Find(strings.ToUpper(f.Name)); !ok || got != f {
			t.Errorf("%s is not found by its name", f.Name)
		}
	}
	if got := table.Search("rye flour"); len(got) != 3 {
		t.Errorf("rye flours: %v", got)
	}
	if got := table.Search(strings.Repeat("a", 1<<20)); got != nil {
		t.Errorf("a query of a megabyte found %d foods", len(got))
	}
}

func TestFoodTableIsReplaceable(t *testing.T) {
	mine := dough.Food{Code: "01077", Name: "Milk from the neighbor", Water: quantity.MustPercent("87 %"), Source: working.NoSource("weighed in the hall")}
	table, err := dough.SR28().With(mine, dough.Food{Name: "Soaked rye", Water: quantity.MustPercent("55 %")})
	if err != nil {
		t.Fatal(err)
	}
	if table.Len() != dough.SR28().Len()+1 {
		t.Errorf("%d foods", table.Len())
	}
	if got, _ := table.Find("01077"); cmp.Diff(mine, got) != "" {
		t.Error(cmp.Diff(mine, got))
	}
	if got, _ := dough.SR28().Find("01077"); got.Name != "Milk, whole" {
		t.Errorf("the shipped table changed: %v", got)
	}
	if _, ok := table.Find(""); ok {
		t.Error("an empty key found something")
	}
}

func TestVolumeMassProperties(t *testing.T) {
	foods := dough.FoodMeasures()
	rapid.Check(t, func(t *rapid.T) {
		m := foods[rapid.IntRange(0, len(foods)-1).Draw(t, "food")]
		in := dough.FoodVolume{Food: m.Food, Volume: quantity.Milliliters(rapid.Float64Range(1, 5000).Draw(t, "ml")), Method: m.Method}
		if m.Method == dough.MethodUnstated {
			in.Method = []dough.FillMethod{dough.Sifted, dough.Spooned, dough.Scooped}[rapid.IntRange(0, 2).Draw(t, "method")]
		}
		r, err := dough.MassOfVolume(in)
		if err != nil {
			t.Fatal(err)
		}
		verifyIngredient(t, r.Working())
		if !(r.Low.Compare(r.Likely) < 0 && r.Likely.Compare(r.High) < 0) {
			t.Fatalf("%v", r)
		}
		twice := in
		twice.Volume = in.Volume.Times(2)
		d, err := dough.MassOfVolume(twice)
		if err != nil {
			t.Fatal(err)
		}
		if d.Used[0] == r.Used[0] && d.Working().Steps[0].Source == r.Working().Steps[0].Source {
			if diff := d.Likely.Sub(r.Likely.Times(2)).Grams(); math.Abs(diff) > 2e-6 && len(r.Used) == 1 {
				t.Fatalf("twice the volume weighs %v, once %v", d.Likely, r.Likely)
			}
		}
	})
	// By method alone a cup of bread flour differs by a quarter.
	weigh := func(m dough.FillMethod) dough.VolumeMass {
		r, err := dough.MassOfVolume(dough.FoodVolume{Food: "Bread Flour", Volume: quantity.MustVolume("1 cup"), Method: m})
		if err != nil {
			t.Fatal(err)
		}
		return r
	}
	if s, c := weigh(dough.Sifted), weigh(dough.Scooped); c.Likely.Grams() < 1.25*s.Likely.Grams() || c.Low.Compare(s.High) < 0 {
		t.Errorf("sifted %v, scooped %v", s, c)
	}
}

func TestYeastProperties(t *testing.T) {
	kinds := []dough.Kind{dough.KindFreshYeast, dough.KindActiveDryYeast, dough.KindInstantYeast}
	rapid.Check(t, func(t *rapid.T) {
		in := dough.YeastSwap{Mass: drawGrams(t, "mass", 0.1, 1e4), From: kinds[rapid.IntRange(0, 2).Draw(t, "from")], To: kinds[rapid.IntRange(0, 2).Draw(t, "to")]}
		r, err := dough.ConvertYeast(in)
		if err != nil {
			t.Fatal(err)
		}
		verifyIngredient(t, r.Working())
		if r.Low.Compare(r.Mass) > 0 || r.High.Compare(r.Mass) < 0 || in.From == in.To && r.Mass != in.Mass {
			t.Fatalf("%v", r)
		}
		back, err := dough.ConvertYeast(dough.YeastSwap{Mass: r.Mass, From: in.To, To: in.From})
		if err != nil {
			t.Fatal(err)
		}
		if d := back.Mass.Sub(in.Mass).Grams(); math.Abs(d) > 4e-6 {
			t.Fatalf("%v came back as %v", in.Mass, back.Mass)
		}
	})
}

func TestMethodsReadWhatTheyPrint(t *testing.T) {
	for m := dough.MethodUnstated; m <= dough.Leveled; m++ {
		text, err := m.MarshalText()
		var back dough.FillMethod
		if err != nil || back.UnmarshalText(text) != nil || back != m {
			t.Errorf("%v", m)
		}
	}
	for r := dough.MoneyExact; r <= dough.MoneyHalfEven; r++ {
		text, err := r.MarshalText()
		var back dough.MoneyRounding
		if err != nil || back.UnmarshalText(text) != nil || back != r {
			t.Errorf("%v", r)
		}
	}
	for i := range 6 {
		text, err := dough.TinLoaf(i).MarshalText()
		var back dough.TinLoaf
		if err != nil || back.UnmarshalText(text) != nil || back != dough.TinLoaf(i) {
			t.Errorf("%v", dough.TinLoaf(i))
		}
	}
	for i := range 2 {
		text, err := dough.ProofVessel(i).MarshalText()
		var back dough.ProofVessel
		if err != nil || back.UnmarshalText(text) != nil || back != dough.ProofVessel(i) {
			t.Errorf("%v", dough.ProofVessel(i))
		}
	}
	for i := range 3 {
		text, err := dough.Stance(i).MarshalText()
		var back dough.Stance
		if err != nil || back.UnmarshalText(text) != nil || back != dough.Stance(i) {
			t.Errorf("%v", dough.Stance(i))
		}
	}
	if _, err := dough.FillMethod(99).MarshalText(); err == nil {
		t.Error("a method without a name was written")
	}
	if _, err := dough.MoneyRounding(-1).MarshalText(); err == nil {
		t.Error("a rounding without a name was written")
	}
}

func TestIngredientZeroResultsPrint(t *testing.T) {
	for _, r := range []fmt.Stringer{
		dough.FlourBlend{}, dough.GlutenResult{}, dough.FlourBasisResult{}, dough.StrengthAdvice{}, dough.StrengthOpinion{}, dough.YeastResult{}, dough.Food{}, dough.VolumeMass{}, dough.FillLine{},
		dough.JarSample{}, dough.ProofSize{}, dough.TinFill{}, dough.VesselVolume{}, dough.Costing{}, dough.Stance(9), dough.FillMethod(-3), dough.ProofVessel(9), dough.TinLoaf(-1), dough.MoneyRounding(9),
	} {
		if r.String() == "" {
			t.Errorf("%T prints nothing", r)
		}
	}
	for _, w := range []interface{ Working() working.Working }{
		dough.FlourBlend{}, dough.GlutenResult{}, dough.FlourBasisResult{}, dough.StrengthAdvice{}, dough.YeastResult{}, dough.VolumeMass{}, dough.FillLine{}, dough.JarSample{}, dough.ProofSize{}, dough.TinFill{}, dough.Costing{},
	} {
		if n := len(w.Working().Steps); n != 0 {
			t.Errorf("%T derives %d steps from nothing", w, n)
		}
	}
}

func TestIngredientConcurrentUse(t *testing.T) {
	blend := dough.BlendGoal{Flours: []dough.FlourShare{
		{FlourLot: dough.FlourLot{Name: "bread", Protein: quantity.MustPercent("13 %")}, Share: quantity.MustPercent("60 %")},
		{FlourLot: dough.FlourLot{Name: "local", Protein: quantity.MustPercent("10.5 %")}, Share: quantity.MustPercent("40 %")},
	}, Target: quantity.MustPercent("11.5 %")}
	want, err := dough.BlendFlours(blend)
	if err != nil {
		t.Fatal(err)
	}
	table := dough.SR28()
	var wg sync.WaitGroup
	for range 8 {
		wg.Go(func() {
			for range 50 {
				if got, err := dough.BlendFlours(blend); err != nil || got.String() != want.String() {
					t.Error("blends differ between goroutines")
				}
				if _, ok := table.Find("20083"); !ok {
					t.Error("a food is lost")
				}
			}
		})
	}
	wg.Wait()
}

func BenchmarkBlendFlours(b *testing.B) {
	in := dough.BlendGoal{Target: quantity.MustPercent("11.5 %"), Total: quantity.Kilograms(25)}
	for i := range 6 {
		share := "16 %"
		if i == 0 {
			share = "20 %"
		}
		in.Flours = append(in.Flours, dough.FlourShare{FlourLot: dough.FlourLot{Protein: quantity.NewPercent(9 + float64(i))}, Share: quantity.MustPercent(share)})
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := dough.BlendFlours(in); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkSR28(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if dough.SR28().Len() == 0 {
			b.Fatal("empty")
		}
	}
}
