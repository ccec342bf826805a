package dough

import "strings"

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
	KindMalt // diastatic or roasted barley malt, malt syrup

	KindWater
	KindMilk // liquid dairy: milk, buttermilk, yogurt, cream
	KindDairy
	KindEgg
	KindButter
	KindFat // oil, lard and other fat without milk
	KindSweetener

	KindSalt
	KindFreshYeast
	KindActiveDryYeast
	KindInstantYeast

	KindNuts
	KindPeanuts
	KindSesame
	KindSoy
	KindLupin
	KindSeeds // sunflower, pumpkin, flax, poppy
	KindFruit
	KindCulture // ripe levain or starter
	KindOther   // looked at, and none of the above

	kindEnd
)

var kindNames = [kindEnd]string{
	"unstated", "wheat", "whole wheat", "durum", "spelt", "whole spelt", "rye", "whole rye", "barley", "oats",
	"gluten-free flour", "wheat gluten", "malt", "water", "milk", "dairy", "egg", "butter", "fat", "sweetener",
	"salt", "fresh yeast", "active dry yeast", "instant yeast", "nuts", "peanuts", "sesame", "soy", "lupin", "seeds",
	"fruit", "culture", "other",
}

// String names the kind: "whole rye".
func (k Kind) String() string { return nameOf(kindNames[:], int(k)) }

// AppendText implements encoding.TextAppender; a value without a name is an error.
func (k Kind) AppendText(b []byte) ([]byte, error) { return appendName(b, kindNames[:], int(k)) }

// MarshalText implements encoding.TextMarshaler: "whole rye".
func (k Kind) MarshalText() ([]byte, error) { return k.AppendText(nil) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads what String prints.
func (k *Kind) UnmarshalText(text []byte) error {
	i, err := readName(text, kindNames[:])
	if err == nil {
		*k = Kind(i)
	}
	return err
}

// WholeGrain reports whether the flour keeps all of its bran and germ.
func (k Kind) WholeGrain() bool {
	return k == KindWholeWheat || k == KindWholeSpelt || k == KindWholeRye
}

// Rye reports whether the flour is rye of any extraction.
func (k Kind) Rye() bool { return k == KindRye || k == KindWholeRye }

// Yeast reports whether it is baker's yeast in any form.
func (k Kind) Yeast() bool {
	return k == KindFreshYeast || k == KindActiveDryYeast || k == KindInstantYeast
}

// Allergens is a set of substances that the law wants named, one bit each.
//
// Source of the list: Regulation (EU) No 1169/2011, annex II, without celery, mustard, fish,
// crustaceans, molluscs and sulphites as ingredient kinds of their own; [from memory].
type Allergens uint16

// The allergens an ingredient may carry. Combine them with |.
const (
	Gluten Allergens = 1 << iota // wheat, rye, barley, oats, spelt, durum
	Milk
	Egg
	Nuts
	Peanuts
	Sesame
	Soy
	Lupin
	OtherAllergen // celery, mustard, fish, shellfish, sulphites: name them in your own text
)

var allergenNames = []string{"gluten", "milk", "egg", "nuts", "peanuts", "sesame", "soy", "lupin", "another allergen"}

// Has reports whether every allergen of b is in a.
func (a Allergens) Has(b Allergens) bool { return a&b == b }

// String lists the allergens: "gluten, milk"; the empty set prints "none stated".
func (a Allergens) String() string {
	var names []string
	for i, n := range allergenNames {
		if a&(1<<i) != 0 {
			names = append(names, n)
		}
	}
	if len(names) == 0 {
		return "none stated"
	}
	return strings.Join(names, ", ")
}

// Allergens returns what an ingredient of the kind carries by its nature.
func (k Kind) Allergens() Allergens {
	switch k {
	case KindWheat, KindWholeWheat, KindDurum, KindSpelt, KindWholeSpelt, KindRye, KindWholeRye, KindBarley, KindOats,
		KindWheatGluten, KindMalt, KindCulture:
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
