package dough

import (
	"strings"

	"example.org/maslin/dough/quantity"
)

// ParseStock reads a weight and what it is of: "40 g water", "2 oz whole rye", "1 lb 4 oz flour". Errors: ErrUnit.
func ParseStock(text string) (Stock, error) {
	words := strings.Fields(text)
	for n := min(len(words)-1, 4); n >= 1; n-- {
		if m, err := quantity.ParseMass(strings.Join(words[:n], " ")); err == nil {
			return Stock{Name: strings.Join(words[n:], " "), Mass: m}, nil
		}
	}
	want := quantity.Tell("dough.want_weight_of", `a weight and what it is of, such as "40 g water"`)
	return Stock{}, &quantity.InputError{Got: quantity.Excerpt(text), Want: want, Err: quantity.ErrUnit}
}

// ParseWeights reads a dough as it was weighed: "800 g wheat, 700 g water, 20 g salt, 250 g levain at 100 % of rye".
// Commas or semicolons separate; a comma between digits is a decimal comma. Each weight has the kind of its ingredient
// ("flour" where it is not known), which says where it belongs: nothing is guessed from a name. A levain is ripe, has
// 100 % hydration unless it says another, and is of flour unless it says of which. Errors, for every weight that is
// wrong: ErrUnit, ErrOutOfRange for what is not above 0 g and for an ingredient that is not known. Whether the weights
// are a dough is for [Weights.Batch].
func ParseWeights(text string) (Weights, error) {
	var w Weights
	var p quantity.Problems
	for _, item := range weightItems(text) {
		s, err := ParseStock(item)
		if err == nil && s.Mass.Sign() <= 0 {
			want := quantity.Tell("dough.want_weight_above", "a weight above 0 g")
			err = &quantity.InputError{Got: quantity.Excerpt(item), Want: want, Err: quantity.ErrOutOfRange}
		}
		if err == nil {
			err = w.take(s.Mass, strings.ToLower(s.Name))
		}
		p.Join("", err)
	}
	return w, p.Err()
}

// ParsePercents reads a formula by its percentages of all the flour, as [ParseWeights] reads weights: "75 % wheat, 25 %
// whole rye, 70 % water, 2 % salt, 24 % levain at 100 %". One percent becomes a gram, so that [Weights.Batch] and
// [Batch.Formula] go on. Errors: those of ParseWeights.
func ParsePercents(text string) (Weights, error) {
	items := weightItems(text)
	for i, item := range items {
		number, rest, found := strings.Cut(item, "%")
		if found && strings.Trim(number, "0123456789., ") == "" {
			items[i] = number + " g" + rest
		}
	}
	return ParseWeights(strings.Join(items, "; "))
}

// weightItems splits a list at semicolons, and at commas that are not between digits.
func weightItems(text string) []string {
	var out []string
	start := 0
	end := func(at, next int) {
		if item := strings.TrimSpace(text[start:at]); item != "" {
			out = append(out, item)
		}
		start = next
	}
	digit := func(i int) bool { return i >= 0 && i < len(text) && text[i] >= '0' && text[i] <= '9' }
	for i := range len(text) {
		if text[i] == ';' || text[i] == ',' && !(digit(i-1) && digit(i+1)) {
			end(i, i+1)
		}
	}
	end(len(text), len(text))
	return out
}

// take adds one weight to the bowl.
func (w *Weights) take(m quantity.Mass, what string) error {
	if rest, levain := strings.CutPrefix(what, "levain"); levain && (rest == "" || rest[0] == ' ') {
		before, of, _ := strings.Cut(rest+" ", " of ")
		return w.takeLevain(m, strings.TrimPrefix(strings.TrimSpace(before), "at "), strings.TrimSpace(of))
	}
	kind, err := kindNamed(what)
	if err != nil {
		return err
	}
	one := Weight{Name: what, Mass: m, Kind: kind}
	b := &w.Final
	switch {
	case kind == KindUnstated || kind >= KindWheat && kind <= KindGlutenFreeFlour:
		b.Flours = append(b.Flours, one)
	case kind == KindWater || kind == KindMilk:
		b.Liquids = append(b.Liquids, one)
	case kind == KindSalt:
		b.Salt = b.Salt.Add(m)
	case kind >= KindNuts && kind <= KindFruit:
		b.Inclusions = append(b.Inclusions, one)
	default:
		b.Others = append(b.Others, one)
	}
	return nil
}

// kindNamed is the kind of an ingredient by its name.
func kindNamed(what string) (Kind, error) {
	var k Kind
	if what == "flour" {
		return k, nil
	}
	for _, text := range []string{what, strings.TrimSuffix(what, " flour")} {
		if text != "unstated" && text != "" && k.UnmarshalText([]byte(text)) == nil {
			return k, nil
		}
	}
	return k, &quantity.InputError{
		Got: quantity.Excerpt(what), Want: quantity.Tell("dough.want_ingredient_kind",
			"flour, wheat, whole wheat, rye, whole rye, "+
				"spelt, water, milk, salt, fresh yeast, instant yeast, butter, egg, seeds, \"levain at 100 %%\" or another kind "+
				"of "+
				"ingredient that a bake file knows"), Err: quantity.ErrOutOfRange,
	}
}

// takeLevain adds a levain by its weight and hydration.
func (w *Weights) takeLevain(m quantity.Mass, hydration, of string) error {
	c := Starter{Mass: m, Hydration: quantity.NewPercent(100)}
	if hydration != "" {
		if err := c.Hydration.UnmarshalText([]byte(hydration)); err != nil {
			return err
		}
	}
	name, kind := "flour of the levain", KindUnstated
	if of != "" {
		k, err := kindNamed(of)
		if err != nil {
			return err
		}
		name, kind = of, k
	}
	w.Preferments = append(w.Preferments, PrefermentWeights{Name: "levain", Bowl: Bowl{
		Flours:  []Weight{{Name: name, Mass: c.Flour(), Kind: kind}},
		Liquids: []Weight{{Name: "water", Mass: c.Water(), Kind: KindWater}},
	}})
	return nil
}
