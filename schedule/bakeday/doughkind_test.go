package bakeday

import (
	"strings"
	"testing"

	"example.org/maslin/bake"
	"example.org/maslin/dough"
	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
)

// A dough is of a kind from a share of all flour on: half rye, half spelt, half whole grain or half without gluten,
// 30 % of rye for a mixed one, and 8 % of fat, 10 % of sugar or 20 % of egg for an enriched one. Judgment.
func TestKindsOfDoughBeginAtTheirShares(t *testing.T) {
	percent := quantity.NewPercent
	for _, c := range []struct {
		flour, other dough.Kind
		share        float64
		want         mixing.DoughKind
	}{
		{dough.KindRye, 0, 50, mixing.RyeDough}, {dough.KindRye, 0, 49.9, mixing.MixedRyeDough},
		{dough.KindRye, 0, 30, mixing.MixedRyeDough}, {dough.KindRye, 0, 29.9, mixing.WheatDough},
		{dough.KindSpelt, 0, 50, mixing.SpeltDough}, {dough.KindSpelt, 0, 49.9, mixing.WheatDough},
		{dough.KindWholeSpelt, 0, 50, mixing.SpeltDough}, {dough.KindWholeWheat, 0, 50, mixing.WholeGrainDough},
		{dough.KindWholeWheat, 0, 49.9, mixing.WheatDough}, {dough.KindGlutenFreeFlour, 0, 50, mixing.GlutenFreeDough},
		{dough.KindGlutenFreeFlour, 0, 49.9, mixing.WheatDough}, {0, dough.KindButter, 8, mixing.EnrichedDough},
		{0, dough.KindButter, 7.9, mixing.WheatDough}, {0, dough.KindFat, 8, mixing.EnrichedDough},
		{0, dough.KindSweetener, 10, mixing.EnrichedDough}, {0, dough.KindSweetener, 9.9, mixing.WheatDough},
		{0, dough.KindEgg, 20, mixing.EnrichedDough}, {0, dough.KindEgg, 19.9, mixing.WheatDough},
	} {
		b := hall()
		b.Levain.Flour = ""
		b.Flours = []Ingredient{{Name: "wheat", Percent: percent(100), Kind: dough.KindWheat}}
		if c.flour != 0 {
			b.Flours[0].Percent = percent(100 - c.share)
			b.Flours = append(b.Flours, Ingredient{Name: "other flour", Percent: percent(c.share), Kind: c.flour})
		} else {
			b.Others = []Ingredient{{Name: "other", Percent: percent(c.share), Kind: c.other}}
		}
		b.Levain.CultureAtHand = quantity.Mass{}
		batch, err := b.Batch(nil)
		if err != nil {
			t.Fatal(c, err)
		}
		if got := DoughKind(batch); got != c.want {
			t.Errorf("%v %% of %v or %v: %v, want %v", c.share, c.flour, c.other, got, c.want)
		}
	}
}

// How warm what goes into a dough is, and how warm it may be made: what spoils comes from the refrigerator, near 4 °C
// where nothing is known of it. Common practice, no source.
func TestHowWarmIngredientsAre(t *testing.T) {
	b := hall()
	b.Others = []Ingredient{
		{Name: "milk", Kind: dough.KindMilk}, {Name: "egg", Kind: dough.KindEgg, Temperature: celsius(18)},
		{Name: "honey", Kind: dough.KindSweetener}, {Name: "tofu", Perishable: true},
	}
	b.Soakers = []SoakerWork{{Name: "seeds"}}
	for refrigerator, cold := range map[quantity.Temperature]quantity.Temperature{celsius(6): celsius(6), {}: celsius(4)} {
		b.Kitchen.Refrigerator = refrigerator
		for name, want := range map[string]quantity.Temperature{"milk": cold, "egg": celsius(18), "honey": {}, "tofu": cold,
			"nothing": {}} {
			if got, ok := b.comesAt(name); got != want || ok != want.IsValid() || b.warmed(name) != (name == "egg") {
				t.Errorf("%s in a refrigerator of %v: %v, %v", name, refrigerator, got, ok)
			}
		}
	}
	for _, c := range []struct {
		line dough.DoughLine
		want quantity.Temperature
		as   mixing.Substance
	}{
		{dough.DoughLine{Name: "seeds", Role: dough.RolePreferment}, celsius(40), mixing.Levain},
		{dough.DoughLine{Name: "poolish", Role: dough.RolePreferment}, celsius(30), mixing.Levain},
		{dough.DoughLine{Name: levainName, Role: dough.RolePreferment}, quantity.Temperature{}, mixing.Levain},
		{dough.DoughLine{Name: "milk", Kind: dough.KindMilk, Role: dough.RoleLiquid}, celsius(40), mixing.Milk},
		{dough.DoughLine{Name: "egg", Kind: dough.KindEgg}, celsius(25), mixing.Egg},
		{dough.DoughLine{Name: "butter", Kind: dough.KindButter}, quantity.Temperature{}, mixing.Butter},
		{dough.DoughLine{Name: "oil", Kind: dough.KindFat}, quantity.Temperature{}, mixing.Oil},
		{dough.DoughLine{Name: "honey", Kind: dough.KindSweetener}, quantity.Temperature{}, mixing.Sugar},
		{dough.DoughLine{Name: "malt", Kind: dough.KindSyrup}, quantity.Temperature{}, mixing.Sugar},
		{dough.DoughLine{Name: "salt", Role: dough.RoleSalt}, quantity.Temperature{}, mixing.Salt},
		{dough.DoughLine{Name: "water", Kind: dough.KindWater, Role: dough.RoleLiquid}, quantity.Temperature{}, mixing.Water},
		{dough.DoughLine{Name: "rye", Kind: dough.KindRye, Role: dough.RoleFlour}, quantity.Temperature{}, mixing.Flour},
	} {
		if got := b.warmest(c.line); got != c.want {
			t.Errorf("%s at most at %v, want %v", c.line.Name, got, c.want)
		}
		if got := substance(c.line); got != c.as {
			t.Errorf("%s counts as %v, want %v", c.line.Name, got, c.as)
		}
	}
}

// What a bake says of its oven has to go together.
func TestWhatIsSaidOfAnOven(t *testing.T) {
	for name, c := range map[string]struct {
		change func(*OvenWork)
		want   string
	}{
		"pots in a pot":        {func(o *OvenWork) { o.Vessel = bake.Pot }, ""},
		"pots on a stone":      {func(o *OvenWork) { o.Vessel = bake.Stone }, "Oven.Vessel"},
		"no pots on a stone":   {func(o *OvenWork) { o.Vessel, o.Pots = bake.Stone, 0 }, ""},
		"no such vessel":       {func(o *OvenWork) { o.Vessel, o.Pots = 99, 0 }, "Oven.Vessel"},
		"two minutes in all":   {func(o *OvenWork) { o.Covered, o.Uncovered = 0, inMinutes(2) }, ""},
		"two, partly covered":  {func(o *OvenWork) { o.Covered, o.Uncovered = inMinutes(1), inMinutes(1) }, ""},
		"less":                 {func(o *OvenWork) { o.Covered, o.Uncovered = 0, inMinutes(1.5) }, "Oven.Uncovered"},
		"only covered":         {func(o *OvenWork) { o.Covered, o.Uncovered = inMinutes(1), 0 }, ""},
		"opened again":         {func(o *OvenWork) { o.RescoreAfter, o.TurnAfter = inMinutes(240), inMinutes(240) }, ""},
		"opened again, late":   {func(o *OvenWork) { o.RescoreAfter = inMinutes(240.5) }, "Oven.RescoreAfter"},
		"turned late":          {func(o *OvenWork) { o.TurnAfter = inMinutes(240.5) }, "Oven.TurnAfter"},
		"turned before it was": {func(o *OvenWork) { o.TurnAfter = -1 }, "Oven.TurnAfter"},
	} {
		b := hall().withDefaults()
		c.change(&b.Oven)
		if got := strings.Join(faulty(&b), " "); got != c.want {
			t.Errorf("%s: %q, want %q", name, got, c.want)
		}
	}
}
