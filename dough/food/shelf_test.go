package food_test

import (
	"strings"
	"testing"

	"example.org/maslin/dough"
	"example.org/maslin/dough/food"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/internal/trial"
)

// The table gives ash of flours alone, white ones 0.47 to 0.7 % and whole ones up to 3 %.
func TestAshIsOfFlours(t *testing.T) {
	for _, f := range food.SR28() {
		if f.Ash.IsZero() {
			continue
		}
		if x := f.Ash.Points(); !strings.Contains(strings.ToLower(f.Name), "flour") || x < 0.4 || x > 3 {
			t.Errorf("%s has %v ash", f.Name, f.Ash)
		}
	}
	if got := (food.Food{Code: "x"}).String(); got != "x: 0 % water" {
		t.Errorf("%q", got)
	}
	if got := (food.Food{Name: "Plum"}).String(); got != "Plum: 0 % water" {
		t.Errorf("%q", got)
	}
	if got := (food.Food{}).String(); got != "no food" {
		t.Errorf("%q", got)
	}
}

// Eggs and their parts, by the cup of 243 g that SR28 gives: 50 g, 33 g of white and 17 g of yolk.
func TestEggsAndWhatHasAPlural(t *testing.T) {
	const cup = 236.5882365
	for said, c := range map[string]struct {
		food string
		ml   float64
		note string
	}{
		"1 egg yolk": {"egg yolk", 17 * cup / 243, "17 g"}, "2 egg yolks": {"egg yolk", 34 * cup / 243, "17 g"},
		"1 egg white": {"egg white", 33 * cup / 243, "33 g"}, "3 egg whites": {"egg white", 99 * cup / 243, "33 g"},
		"2 eggs": {"egg", 100 * cup / 243, "50 g"}, "1 cup waters": {"water", cup, ""},
	} {
		v, err := food.ReadVolume(said)
		if err != nil || v.Food != c.food || v.Volume.Milliliters()-c.ml > 1e-6 || c.ml-v.Volume.Milliliters() > 1e-6 {
			t.Errorf("%s is %v of %s, %v, want %v mL of %s", said, v.Volume, v.Food, err, c.ml, c.food)
		}
		notes := 0
		for _, n := range v.Notes {
			if c.note != "" && strings.Contains(n.String(), c.note) {
				notes++
			}
		}
		if c.note != "" && (notes != 1 || len(v.Notes) != 1) {
			t.Errorf("%s: %v, want one that says %s", said, v.Notes, c.note)
		}
	}
}

// Limits are numbered from one, and at home hours in the room are few: 32 °C is 90 °F of the food authorities.
func TestWorkingOfChilling(t *testing.T) {
	p, err := food.ChilledFood{Kind: food.Cooked}.Limits()
	if err != nil {
		t.Fatal(err)
	}
	trial.Holds(t, p.Working().Text(100), "t_1 = 2 h", "t_2 = 6 h", "t_3 = 96 h")
	cold, err := food.ChilledFood{Kind: food.MixedCold}.Limits()
	if err != nil {
		t.Fatal(err)
	}
	trial.Holds(t, cold.Report().Text(report.Options{Units: 0, Width: 200}),
		"at home nothing that spoils stands out for more than 2 hours, 1 hour above 32 °C")
}

// Each source of published weights is named once, and a weight is shown as a scale shows it: to a gram from 20 g on, to
// a tenth from 2 g on, below that to a hundredth.
func TestWeightsAsAScaleShowsThem(t *testing.T) {
	for said, want := range map[string]string{"2 tbsp honey": "weighs about 42 g", "1 tsp honey": "weighs about 7.1 g",
		"¼ tsp salt": "weighs about 1.5 g"} {
		v, err := food.ReadVolume(said)
		if err != nil {
			t.Fatal(err)
		}
		w, err := v.Weight()
		if err != nil {
			t.Fatal(err)
		}
		trial.Holds(t, w.Report().Text(report.Options{Width: 120}), want)
		named := map[string]bool{}
		for _, s := range w.Report().Sources {
			if named[s.String()] {
				t.Errorf("%s is named twice", s)
			}
			named[s.String()] = true
		}
		if len(named) == 0 {
			t.Errorf("%s: no source", said)
		}
	}
}

// Each form of a table of one's own is weighed, and a table of one form converts nothing.
func TestTablesOfYeastAreChecked(t *testing.T) {
	g := quantity.Grams
	whole := food.YeastTable{Fresh: g(10), ActiveDry: g(4), Instant: g(3)}
	for path, set := range map[string]func(*food.YeastTable){
		"table.fresh":      func(y *food.YeastTable) { y.Fresh = g(-1) },
		"table.active_dry": func(y *food.YeastTable) { y.ActiveDry = g(-1) },
		"table.instant":    func(y *food.YeastTable) { y.Instant = g(-1) },
	} {
		in := food.YeastSwap{Mass: g(20), From: dough.KindFreshYeast, Table: whole}
		set(&in.Table)
		_, err := in.Convert()
		if got := trial.Refused(err); !strings.Contains(got, path+" out of range") {
			t.Errorf("%s: %q", path, got)
		}
	}
	_, err := food.YeastSwap{Mass: g(20), From: dough.KindFreshYeast, Table: food.YeastTable{Fresh: g(10)}}.Convert()
	if err == nil || !strings.Contains(err.Error(), "got one form of yeast, want a table with both forms") {
		t.Errorf("a table of one form: %v", err)
	}
	r, err := food.YeastSwap{Mass: g(20), From: dough.KindFreshYeast}.Convert()
	if err != nil {
		t.Fatal(err)
	}
	// A third to a half of fresh yeast as active dry, and 0.33 to 0.417 of it as instant.
	trial.Holds(t, r.Working().Text(120), "published tables give 6.67 g to 10 g", "published tables give 6.6 g to 8.33 g")
}
