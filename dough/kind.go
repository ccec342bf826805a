package dough

import (
	"encoding/json"
	"slices"
	"strings"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/enum"
)

// Kind says what an ingredient is, so far as a calculation needs to know: which grain and
// whether all of it, whether it is water, which allergens it carries. It is stated by the
// caller and never guessed from a name; the zero value states nothing.
type Kind uint8

// The kinds of ingredient.
const (
	KindUnstated Kind = iota

	KindWheat      // wheat flour without its bran and germ
	KindWholeWheat // whole-grain wheat flour
	KindDurum      // durum semolina and flour
	KindSpelt
	KindWholeSpelt
	KindRye // sifted rye: light, medium, dark
	KindWholeRye
	KindBarley
	KindOats
	KindGlutenFreeFlour // rice, maize, buckwheat and other flour without gluten
	KindWheatGluten
	KindMalt // diastatic or roasted barley malt, malt extract

	KindWater
	KindMilk // liquid dairy: milk, buttermilk, yogurt, cream
	KindDairy
	KindEgg
	KindButter
	KindFat       // oil, lard and other fat without milk
	KindSweetener // sugar and other dry sweeteners
	KindSyrup     // honey, malt syrup, molasses: sweeteners with water

	KindSalt
	KindFreshYeast
	KindActiveDryYeast
	KindInstantYeast
	KindOsmotolerantYeast // instant yeast made for sweet doughs

	KindNuts
	KindPeanuts
	KindSesame
	KindSoy
	KindLupin
	KindSeeds // sunflower, pumpkin, flax, poppy
	KindFruit
	KindStarter // ripe levain or starter

	KindImprover      // bread improvers and enzyme preparations
	KindInfusedOil    // oil with garlic or herbs in it, and pesto
	KindCookedFilling // custard, cream, cooked fillings, porridge, boiled grain or potato

	KindOther // looked at, and none of the above

	kindEnd
)

var kindWords = enum.Of[Kind]("kind of ingredient",
	"", "wheat", "whole wheat", "durum", "spelt", "whole spelt", "rye", "whole rye", "barley", "oats",
	"gluten-free flour", "wheat gluten", "malt", "water", "milk", "dairy", "egg", "butter", "fat", "sweetener", "syrup",
	"salt", "fresh yeast", "active dry yeast", "instant yeast", "osmotolerant yeast", "nuts", "peanuts", "sesame", "soy",
	"lupin", "seeds",
	"fruit", "starter", "improver", "infused oil", "cooked filling", "other",
)

// String names the kind of ingredient.
func (k Kind) String() string { return kindWords.String(k) }

// MarshalText implements encoding.TextMarshaler.
func (k Kind) MarshalText() ([]byte, error) { return kindWords.Marshal(k) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads the words that String prints, and no others.
func (k *Kind) UnmarshalText(text []byte) error { return kindWords.Unmarshal(k, text) }

// WholeGrain reports whether the flour keeps all of its bran and germ.
func (k Kind) WholeGrain() bool {
	return k == KindWholeWheat || k == KindWholeSpelt || k == KindWholeRye
}

// Rye reports whether the flour is rye of any extraction.
func (k Kind) Rye() bool { return k == KindRye || k == KindWholeRye }

// Yeast reports whether it is baker's yeast in any form.
func (k Kind) Yeast() bool {
	return k == KindFreshYeast || k == KindActiveDryYeast || k == KindInstantYeast || k == KindOsmotolerantYeast
}

// Allergens is a set of substances that the law wants named, one bit each.
//
// Source of the list: Regulation (EU) No 1169/2011, annex II, read in a university's copy; the US Food and Drug
// Administration's page on food allergies, with sesame since the FASTER Act of 2021.
type Allergens uint16

// The allergens an ingredient may carry. Combine them with |.
const (
	Gluten Allergens = 1 << iota // wheat, spelt, durum, rye, barley, oats
	Wheat                        // wheat, spelt, durum: what US law names of the grains
	Milk
	Egg
	Nuts
	Peanuts
	Sesame
	Soy
	Lupin
	Celery
	Mustard
	Fish
	Crustaceans
	Molluscs
	Sulphites // above 10 mg/kg, in dried fruit
)

// The lists of the law: fourteen in the European Union, nine in the United States. Rye, barley and oats stand on the
// first alone, by their gluten.
const (
	AllergensEU = Gluten | Milk | Egg | Nuts | Peanuts | Sesame | Soy | Lupin | Celery | Mustard | Fish | Crustaceans |
		Molluscs | Sulphites
	AllergensUS = Wheat | Milk | Egg | Nuts | Peanuts | Sesame | Soy | Fish | Crustaceans
)

var allergenNames = []string{"gluten", "wheat", "milk", "egg", "nuts", "peanuts", "sesame", "soy", "lupin", "celery",
	"mustard", "fish", "crustaceans", "molluscs", "sulphites"}

// List returns the set's allergens one by one, each a set of one.
func (a Allergens) List() []Allergens {
	var out []Allergens
	for i := range allergenNames {
		if one := Allergens(1) << i; a&one != 0 {
			out = append(out, one)
		}
	}
	return out
}

// told lists names or words in a sentence.
func told[T any](list []T) working.Message {
	items := make([]any, len(list))
	for i, item := range list {
		items[i] = item
	}
	return working.And(items...)
}

// names are the words of the set.
func (a Allergens) names() []string {
	out := make([]string, 0, len(allergenNames))
	for i, n := range allergenNames {
		if a&(1<<i) != 0 {
			out = append(out, n)
		}
	}
	return out
}

// Has reports whether every allergen of b is in a.
func (a Allergens) Has(b Allergens) bool { return a&b == b }

// String lists the allergens: "gluten, milk"; the empty set prints "none stated".
func (a Allergens) String() string {
	if a == 0 {
		return "none stated"
	}
	return strings.Join(a.names(), ", ")
}

func wantAllergens() quantity.Phrase {
	return quantity.Tell("dough.want_allergens", "%s", strings.Join(allergenNames, ", "))
}

// MarshalJSON implements json.Marshaler: a list of words.
func (a Allergens) MarshalJSON() ([]byte, error) {
	if a>>len(allergenNames) != 0 {
		return nil, &quantity.InputError{
			Got: quantity.Tell("dough.got_allergens_unknown_names", "allergens of unknown names"), Want: wantAllergens(),
			Err: quantity.ErrOutOfRange,
		}
	}
	return json.Marshal(a.names())
}

// UnmarshalJSON implements json.Unmarshaler: a list of the words that MarshalJSON writes.
func (a *Allergens) UnmarshalJSON(data []byte) error {
	var words []string
	if err := quantity.ReadJSON(data, &words); err != nil {
		return err
	}
	var set Allergens
	for i, word := range words {
		n := slices.Index(allergenNames, word)
		if n < 0 {
			return &quantity.InputError{
				GoPath: at("", i), Got: quantity.Excerpt(word), Want: wantAllergens(), Err: quantity.ErrOutOfRange,
			}
		}
		set |= 1 << n
	}
	*a = set
	return nil
}

// Allergens returns what an ingredient of the kind carries by its nature.
func (k Kind) Allergens() Allergens {
	switch k {
	case KindWheat, KindWholeWheat, KindDurum, KindSpelt, KindWholeSpelt, KindWheatGluten:
		return Gluten | Wheat
	case KindRye, KindWholeRye, KindBarley, KindOats, KindMalt, KindStarter:
		return Gluten
	case KindMilk, KindDairy, KindButter:
		return Milk
	case KindEgg:
		return Egg
	case KindNuts:
		return Nuts
	case KindPeanuts:
		return Peanuts
	case KindSesame:
		return Sesame
	case KindSoy:
		return Soy
	case KindLupin:
		return Lupin
	}
	return 0
}
