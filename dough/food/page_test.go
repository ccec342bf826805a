package food_test

import (
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/food"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/internal/trial"
)

// By hand from SR28: a teaspoon of salt weighs 6 g and a cup 292 g, of 48 teaspoons 6.083 g each; two fillings differ
// by 2 %. So two teaspoons weigh 12 g, from 12·0.98 = 11.76 to 2·6.083·1.02 = 12.41 g.
func TestPageOfVolume(t *testing.T) {
	v, err := food.ReadVolume("2 tsp salt")
	if err != nil {
		t.Fatal(err)
	}
	w, err := v.Weight()
	if err != nil {
		t.Fatal(err)
	}
	trial.Holds(t, w.Report().Text(report.Options{Width: 100}), "of salt weighs about 12 g (11.8 g to 12.4 g)",
		"1 cup of salt, leveled 292.0 g", "1 teaspoon of salt, leveled 6.0 g")
	trial.Holds(t, w.Working().Text(100), "m_cup_likely = 9.86 × 6 ÷ 4.93 m_cup_likely = 12.0 g",
		"m_low = 12.0 × (1 − 2 ÷ 100) m_low ≈ 11.8 g",
		"by another published weight", "m_high_likely = 9.86 × 292 ÷ 236.59 m_high_likely ≈ 12.2 g",
		"12.2 × (1 + 2 ÷ 100)", "≈ 12.4 g")
}

// What people say is the food of the list that it means.
func TestWordsForFoods(t *testing.T) {
	for said, want := range map[string]string{
		"1 cup cream": "heavy cream", "1 cup whipping cream": "heavy cream", "1 cup whole milk": "milk",
		"2 tbsp sunflower oil": "oil", "1 tsp rapid-rise yeast": "instant yeast", "1 tsp dried yeast": "active dry yeast",
	} {
		v, err := food.ReadVolume(said)
		if err != nil || v.Food != want {
			t.Errorf("%q is read as %q, %v", said, v.Food, err)
		}
	}
}

// A cooked filling off the heat at 14:00 has to be at 21 °C by 16:00 and at 5 °C by 20:00, and is thrown away after
// four days; without a time it has durations alone.
func TestPageOfChilling(t *testing.T) {
	made := time.Date(2026, 11, 25, 14, 0, 0, 0, time.UTC)
	for kind, c := range map[food.ChilledKind]struct {
		headline    string
		with, plain []string
	}{
		food.Cooked: {
			"down to 21 °C within 2h and to 5 °C within 6h in all",
			[]string{"at 21 °C or colder by Wed 16:00; within 2h", "at 5 °C or colder by Wed 20:00; within 6h",
				"thrown away by Sun 14:00; within 4 days"},
			[]string{"at 21 °C or colder within 2h", "at 5 °C or colder within 6h", "thrown away within 4 days"},
		},
		food.MixedCold: {"down to 5 °C within 4h", []string{"at 5 °C or colder by Wed 18:00; within 4h"},
			[]string{"at 5 °C or colder within 4h"}},
		food.WetGrain: {"chilled to 5 °C or salted after 4h at the latest",
			[]string{"at 5 °C or colder by Wed 18:00; within 4h"}, []string{"at 5 °C or colder within 4h"}},
		food.InfusedOil: {"in the refrigerator at once, at 5 °C or colder, and thrown away after 4 days",
			[]string{"thrown away by Sun 14:00; within 4 days"}, []string{"thrown away within 4 days"}},
	} {
		for at, lines := range map[time.Time][]string{made: c.with, {}: c.plain} {
			p, err := food.ChilledFood{Kind: kind, Made: at}.Limits()
			if err != nil {
				t.Fatal(err)
			}
			page := p.Report().Text(report.Options{Width: 100})
			trial.Holds(t, page, append(lines, c.headline)...)
			if at.IsZero() && strings.Contains(page, " by ") {
				t.Errorf("%v: a time of day, and none was given:\n%s", kind, page)
			}
		}
	}
	one := food.ChillPlan{Limits: []food.ChillLimit{{To: quantity.Celsius(5), Within: quantity.Elapsed(time.Hour)}}}
	trial.Holds(t, one.Report().Text(report.Options{}), "down to 5 °C within 1h")
}

// Names and queries of 200 bytes are looked up; longer ones, and no name at all, find nothing.
func TestLengthOfNames(t *testing.T) {
	long := strings.Repeat("e", 201)
	if _, ok := food.Find(""); ok {
		t.Error("found a food without a name")
	}
	if _, ok := food.Find(long); ok || food.Search(long) != nil {
		t.Error("found a food of 201 letters")
	}
	if got := food.Search("salt" + strings.Repeat(" ", 196)); len(got) == 0 {
		t.Error("a query of 200 bytes finds nothing")
	}
	_, err := food.FoodVolume{Food: "flour", Volume: quantity.Milliliters(100)}.Weight()
	bad := quantity.InputErrors(err)
	if len(bad) == 0 {
		t.Fatal("flour is many foods")
	}
	if said := bad[0].Error(); strings.Count(said, ",") != 8-1+1 || !strings.Contains(said, "one of ") {
		t.Errorf("not eight foods that it may have meant: %s", said)
	}
	_, err = food.FoodVolume{Food: "granite", Volume: quantity.Milliliters(100)}.Weight()
	if bad := quantity.InputErrors(err); len(bad) == 0 || strings.Contains(bad[0].Error(), "one of ,") ||
		!strings.Contains(bad[0].Error(), "such as") {
		t.Errorf("%v", err)
	}
	many := make([]food.FoodMeasure, 10_001)
	_, err = food.FoodVolume{Food: "salt", Volume: quantity.Milliliters(5), Measures: many}.Weight()
	if bad := quantity.InputErrors(err); len(bad) != 1 ||
		!strings.Contains(bad[0].Error(), "got too many measures, want at most 10000") {
		t.Errorf("%v", err)
	}
}
