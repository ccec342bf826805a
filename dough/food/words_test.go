package food_test

import (
	"errors"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"example.org/maslin/dough/food"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/workcheck"
)

// What people type: the food it means, how it was filled, and what was taken for granted.
func TestReadVolume(t *testing.T) {
	for text, want := range map[string]struct {
		food   string
		ml     float64
		method food.FillMethod
		notes  []string
	}{
		"2 cups flour":                 {"all-purpose flour", 473.176473, 0, []string{"food.plain_flour"}},
		"2 cups of sifted bread flour": {"bread flour", 473.176473, food.Sifted, nil},
		"1 cup dipped AP flour":        {"all-purpose flour", 236.5882365, food.Scooped, []string{"food.plain_flour"}},
		"3 level tsps. fine salt":      {"salt", 14.78676478125, 0, nil},
		"a rounded tablespoon honey":   {"honey", 22.180147171875, 0, []string{"food.heaping"}},
		"2½ tbsp olive oil":            {"olive oil", 36.96691195, 0, nil},
		"2 fl oz milk":                 {"milk", 59.1470591, 0, nil},
		"1 metric cup water":           {"water", 250, 0, nil},
		"0.25 cup rye flour":           {"medium rye flour", 59.147059125, 0, []string{"food.medium_rye"}},
		"2 cups wholemeal flour":       {"whole-wheat flour", 473.176473, 0, nil},
		"1 sachet yeast":               {"active dry yeast", 11.0900735859375, 0, []string{"food.packet", "food.dry_yeast"}},
		"1 tsp sea salt":               {"coarse salt", 4.92892159375, 0, []string{"food.coarse_salt"}},
		"eggs":                         {"egg", 50 * 236.5882365 / 243, 0, []string{"food.large_egg"}},
		"3 tbs strong flour spooned":   {"bread flour", 44.36029434375, food.Spooned, nil},
		"1 cup caster sugar":           {"sugar", 236.5882365, 0, nil},
		"2cups honey":                  {"honey", 473.176473, 0, nil},
		"1 cup dragon fruit":           {"dragon fruit", 236.5882365, 0, nil},
		// Metric spoons, deciliters, and foods by their German names.
		"3 EL Honig":               {"honey", 45, 0, nil},
		"1½ TL Salz":               {"salt", 7.5, 0, nil},
		"2dl Milch":                {"milk", 200, 0, nil},
		"1.5 dl buttermilk":        {"buttermilk", 150, 0, nil},
		"2 gehäufte EL Olivenöl":   {"olive oil", 45, 0, []string{"food.heaping"}},
		"3 dl gesiebtes Mehl":      {"all-purpose flour", 300, food.Sifted, []string{"food.plain_flour"}},
		"1 gestrichener TL Zucker": {"sugar", 5, 0, nil},
		"1 Prise Meersalz":         {"coarse salt", 4.92892159375 / 16, 0, []string{"food.pinch", "food.coarse_salt"}},
		"100 mL Haferflocken":      {"rolled oats", 100, 0, nil},
		"1 cup porridge oats":      {"rolled oats", 236.5882365, 0, nil},
		"1 Päckchen Trockenhefe":   {"active dry yeast", 11.0900735859375, 0, []string{"food.packet", "food.dry_yeast"}},
		"1 dl Roggenvollkornmehl":  {"dark rye flour", 100, 0, nil},
		"4 EL Ruchmehl":            {"bread flour", 60, 0, nil},
		"1 Teelöffel. Weizenkleie": {"wheat bran", 5, 0, nil},
	} {

		v, err := food.ReadVolume(text)
		if err != nil {
			t.Errorf("%q: %v", text, err)
			continue
		}
		var notes []string
		for _, n := range v.Notes {
			notes = append(notes, n.ID())
		}
		if d := v.Volume.Milliliters() - want.ml; v.Food != want.food || d > 1e-6 || d < -1e-6 || v.Method != want.method ||
			!cmp.Equal(notes, want.notes) {
			t.Errorf("%q: %s, %v, %v, %v", text, v.Food, v.Volume.Milliliters(), v.Method, notes)
		}
	}
	for text, reason := range map[string]error{
		"": quantity.ErrRequired, "  ": quantity.ErrRequired, "honey": quantity.ErrUnit, "2": quantity.ErrUnit,
		"2 cups": quantity.ErrRequired, "a": quantity.ErrUnit, "1/0 cup milk": quantity.ErrUnit,
		"2 oz flour":     quantity.ErrUnit,
		"1..2 cups milk": quantity.ErrUnit, "half": quantity.ErrUnit, string(make([]byte, 201)): quantity.ErrOutOfRange,
		"1/0 stick butter": quantity.ErrUnit, "1 pinch": quantity.ErrRequired,
		// no two kitchens mean the same by it
		"1 Tasse Mehl": quantity.ErrUnit, "2 Tassen Milch": quantity.ErrUnit, "1 EL": quantity.ErrRequired,
		"x EL Honig": quantity.ErrUnit,
	} {
		if v, err := food.ReadVolume(text); !errors.Is(err, reason) {
			t.Errorf("%.20q: %v, %v", text, v, err)
		}
	}
	// An unlisted food is told when it is weighed, and what was assumed is told in the answer.
	v, err := food.ReadVolume("1 cup dragon fruit")
	if _, wrong := v.Weight(); err != nil || !errors.Is(wrong, quantity.ErrOutOfRange) {
		t.Error(err, wrong)
	}
	v, err = food.ReadVolume("1 heaping tsp salt")
	if err != nil {
		t.Fatal(err)
	}
	w, err := v.Weight()
	if err != nil || len(w.Notes) != 1 || w.Notes[0].ID() != "food.heaping" {
		t.Error(w.Notes, err)
	}
}

func FuzzReadVolume(f *testing.F) {
	for _, s := range []string{"2 1/4 tsp instant yeast", "½ c. of honey", "a pinch of salt", "3 large egg whites",
		"1 T. oil", "/ cup",
		"1 stick", "9999999999 cups milk", "\xff cup", "1/2 heaping fl oz. x"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		v, err := food.ReadVolume(s)
		if err == nil && (v.Food == "" || !v.Volume.IsValid()) {
			t.Errorf("%q is %v", s, v)
		}
		_, _ = v.Weight()
	})
}

// The limits of every kind rise in time, and without a time there are durations alone.
func TestChillLimits(t *testing.T) {
	made := time.Date(2026, 11, 28, 14, 0, 0, 0, time.UTC)
	for _, kind := range quantity.Values[food.ChilledKind]() {
		plain, err := food.ChilledFood{Kind: kind}.Limits()
		if err != nil {
			t.Fatal(err)
		}
		dated, err := food.ChilledFood{Kind: kind, Made: made}.Limits()
		if err != nil {
			t.Fatal(err)
		}
		last := quantity.Elapsed(0)
		for i, l := range dated.Limits {
			if l.Within <= last || !l.By.Equal(made.Add(l.Within.Duration())) || !plain.Limits[i].By.IsZero() ||
				plain.Limits[i].Within != l.Within || l.Source.String() == "" {
				t.Errorf("%v: %+v", kind, l)
			}
			last = l.Within
		}
		for _, p := range []food.ChillPlan{plain, dated} {
			if text := p.Report().Text(report.Options{Width: 80}); p.String() == "" || len(text) < 200 {
				t.Errorf("%v: %s", kind, text)
			}
			workcheck.Verify(t, p.Working())
			if n := p.Working().Len(); n != len(p.Limits) {
				t.Error(n)
			}
			if r := p.Report(); len(r.Cautions) != 1 || r.Headline.Text(working.Reader{}) == "" {
				t.Error(r.Cautions)
			}
		}
	}
	if _, err := (food.ChilledFood{Kind: 9}).Limits(); !errors.Is(err, quantity.ErrOutOfRange) {
		t.Error(err)
	}
	if (food.ChillPlan{}).String() == "" {
		t.Error("an empty plan says nothing")
	}
}
