package food_test

import (
	"math"
	"strings"
	"testing"

	"example.org/maslin/dough"
	"example.org/maslin/dough/food"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/trial"

	"pgregory.net/rapid"
)

func TestSR28IsConsistent(t *testing.T) {
	all := food.SR28()
	if len(all) < 55 || len(food.Search("")) != len(all) {
		t.Fatalf("%d foods", len(all))
	}
	codes := map[string]bool{}
	for _, f := range all {
		if len(f.Code) != 5 || codes[f.Code] || f.Source.IsZero() || !f.Water.IsValid() || f.NoProtein &&
			!f.Protein.IsZero() {
			t.Errorf("%+v", f)
		}
		codes[f.Code] = true
		if sum := f.Water.Add(f.Protein).Add(f.Ash); sum.Compare(quantity.MustPercent("100 %")) > 0 {
			t.Errorf("%v: water, protein and ash of %v", f, sum)
		}
		for _, key := range []string{strings.ToUpper(f.Name), f.Code} {
			if got, ok := food.Find(key); !ok || got != f {
				t.Errorf("%s is not found by %s", f.Name, key)
			}
		}
	}
	if got := food.Search("rye flour"); len(got) != 3 {
		t.Errorf("rye flours: %v", got)
	}
	if got := food.Search(strings.Repeat("a", 1<<20)); got != nil {
		t.Errorf("a query of a megabyte found %d foods", len(got))
	}
	if _, ok := food.Find(""); ok {
		t.Error("an empty key found something")
	}
}

func TestVolumeMassProperties(t *testing.T) {
	foods := food.FoodMeasures()
	rapid.Check(t, func(t *rapid.T) {
		m := foods[rapid.IntRange(0, len(foods)-1).Draw(t, "food")]
		in := food.FoodVolume{Food: m.Food, Volume: quantity.Milliliters(rapid.Float64Range(1, 5000).Draw(t, "ml")),
			Method: m.Method}
		if m.Method == 0 {
			in.Method = []food.FillMethod{food.Sifted, food.Spooned, food.Scooped}[rapid.IntRange(0, 2).Draw(t, "method")]
		}
		r, err := in.Weight()
		if err != nil {
			t.Fatal(err)
		}
		trial.Sound(t, r.Working())
		if !(r.Mass.Low.Compare(r.Mass.Likely) < 0 && r.Mass.Likely.Compare(r.Mass.High) < 0) {
			t.Fatalf("%v", r)
		}
		twice := in
		twice.Volume = in.Volume.Times(2)
		d, err := twice.Weight()
		if err != nil {
			t.Fatal(err)
		}
		trial.Travels(t, in)
		if d.Used[0] == r.Used[0] && len(r.Report().Sections) == 1 {
			if diff := d.Mass.Likely.Sub(r.Mass.Likely.Times(2)).Grams(); !(math.Abs(diff) <= 2e-6) && len(r.Used) == 1 {
				t.Fatalf("twice the volume weighs %v, once %v", d.Mass, r.Mass)
			}
		}
	})
	// By method alone a cup of bread flour differs by a quarter.
	weigh := func(m food.FillMethod) food.FoodWeight {
		r, err := food.FoodVolume{Food: "Bread Flour", Volume: quantity.MustVolume("1 cup"), Method: m}.Weight()
		if err != nil {
			t.Fatal(err)
		}
		return r
	}
	if s, c := weigh(food.Sifted), weigh(food.Scooped); c.Mass.Likely.Grams() < 1.25*s.Mass.Likely.Grams() ||
		c.Mass.Low.Compare(s.Mass.High) < 0 {
		t.Errorf("sifted %v, scooped %v", s, c)
	}
}

func TestYeastProperties(t *testing.T) {
	kinds := []dough.Kind{dough.KindFreshYeast, dough.KindActiveDryYeast, dough.KindInstantYeast}
	rapid.Check(t, func(t *rapid.T) {
		in := food.YeastSwap{Mass: trial.Grams(t, "mass", 0.1, 1e4), From: kinds[rapid.IntRange(0, 2).Draw(t, "from")],
			To: kinds[rapid.IntRange(0, 2).Draw(t, "to")]}
		r, err := in.Convert()
		if err != nil {
			t.Fatal(err)
		}
		trial.Sound(t, r.Working())
		if len(r.To) != 1 || !r.To[0].Published.Contains(r.To[0].Mass) || in.From == in.To && r.To[0].Mass != in.Mass {
			t.Fatalf("%v", r)
		}
		back, err := food.YeastSwap{Mass: r.To[0].Mass, From: in.To, To: in.From}.Convert()
		if err != nil {
			t.Fatal(err)
		}
		trial.Travels(t, in)
		all, err := food.YeastSwap{Mass: in.Mass, From: in.From}.Convert()
		if err != nil || len(all.To) != 2 {
			t.Fatalf("all other forms: %v, %v", all, err)
		}
		trial.Sound(t, all.Working())
		if d := back.To[0].Mass.Sub(in.Mass).Grams(); !(math.Abs(d) <= 4e-6) {
			t.Fatalf("%v came back as %v", in.Mass, back.To)
		}
	})
}

func BenchmarkSR28(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if len(food.SR28()) == 0 {
			b.Fatal("empty")
		}
	}
}
