package food_test

import (
	"math"
	"strings"
	"testing"

	"example.org/maslin/dough"
	"example.org/maslin/dough/food"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/trial"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

func TestSR28IsConsistent(t *testing.T) {
	table := food.SR28()
	all := table.Search("")
	if len(all) != table.Len() || table.Len() < 55 {
		t.Fatalf("%d foods", table.Len())
	}
	if _, err := food.NewFoodTable(all); err != nil {
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
	mine := food.Food{Code: "01077", Name: "Milk from the neighbor", Water: quantity.MustPercent("87 %"), Source: working.NoSource("weighed in the hall")}
	table, err := food.SR28().With(mine, food.Food{Name: "Soaked rye", Water: quantity.MustPercent("55 %")})
	if err != nil {
		t.Fatal(err)
	}
	if table.Len() != food.SR28().Len()+1 {
		t.Errorf("%d foods", table.Len())
	}
	if got, _ := table.Find("01077"); cmp.Diff(mine, got) != "" {
		t.Error(cmp.Diff(mine, got))
	}
	if got, _ := food.SR28().Find("01077"); got.Name != "Milk, whole" {
		t.Errorf("the shipped table changed: %v", got)
	}
	if _, ok := table.Find(""); ok {
		t.Error("an empty key found something")
	}
}

func TestVolumeMassProperties(t *testing.T) {
	foods := food.FoodMeasures()
	rapid.Check(t, func(t *rapid.T) {
		m := foods[rapid.IntRange(0, len(foods)-1).Draw(t, "food")]
		in := food.FoodVolume{Food: m.Food, Volume: quantity.Milliliters(rapid.Float64Range(1, 5000).Draw(t, "ml")), Method: m.Method}
		if m.Method == food.MethodUnstated {
			in.Method = []food.FillMethod{food.Sifted, food.Spooned, food.Scooped}[rapid.IntRange(0, 2).Draw(t, "method")]
		}
		r, err := food.MassOfVolume(in)
		if err != nil {
			t.Fatal(err)
		}
		trial.Sound(t, r.Working())
		if !(r.Low.Compare(r.Likely) < 0 && r.Likely.Compare(r.High) < 0) {
			t.Fatalf("%v", r)
		}
		twice := in
		twice.Volume = in.Volume.Times(2)
		d, err := food.MassOfVolume(twice)
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
	weigh := func(m food.FillMethod) food.VolumeMass {
		r, err := food.MassOfVolume(food.FoodVolume{Food: "Bread Flour", Volume: quantity.MustVolume("1 cup"), Method: m})
		if err != nil {
			t.Fatal(err)
		}
		return r
	}
	if s, c := weigh(food.Sifted), weigh(food.Scooped); c.Likely.Grams() < 1.25*s.Likely.Grams() || c.Low.Compare(s.High) < 0 {
		t.Errorf("sifted %v, scooped %v", s, c)
	}
}

func TestYeastProperties(t *testing.T) {
	kinds := []dough.Kind{dough.KindFreshYeast, dough.KindActiveDryYeast, dough.KindInstantYeast}
	rapid.Check(t, func(t *rapid.T) {
		in := food.YeastSwap{Mass: trial.Grams(t, "mass", 0.1, 1e4), From: kinds[rapid.IntRange(0, 2).Draw(t, "from")], To: kinds[rapid.IntRange(0, 2).Draw(t, "to")]}
		r, err := food.ConvertYeast(in)
		if err != nil {
			t.Fatal(err)
		}
		trial.Sound(t, r.Working())
		if r.Low.Compare(r.Mass) > 0 || r.High.Compare(r.Mass) < 0 || in.From == in.To && r.Mass != in.Mass {
			t.Fatalf("%v", r)
		}
		back, err := food.ConvertYeast(food.YeastSwap{Mass: r.Mass, From: in.To, To: in.From})
		if err != nil {
			t.Fatal(err)
		}
		if d := back.Mass.Sub(in.Mass).Grams(); math.Abs(d) > 4e-6 {
			t.Fatalf("%v came back as %v", in.Mass, back.Mass)
		}
	})
}

func BenchmarkSR28(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if food.SR28().Len() == 0 {
			b.Fatal("empty")
		}
	}
}
