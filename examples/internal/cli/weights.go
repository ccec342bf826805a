package cli

import (
	"regexp"
	"strings"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
)

// weighed are weights with the kind of each ingredient, which says where it belongs; nothing is guessed from a name.
type weighed struct{ dough.Weights }

// UnmarshalText reads "800 g wheat, 700 g water, 20 g salt, 250 g levain at 100 %", into what is there already.
func (w *weighed) UnmarshalText(text []byte) error {
	var p quantity.Problems
	for _, item := range items(string(text)) {
		var one amount
		err := one.UnmarshalText([]byte(item))
		if err == nil && one.Mass.Sign() <= 0 {
			err = &quantity.InputError{Got: quantity.Excerpt(item), Want: quantity.Tell("cli.want_weight_above_0_g", "a weight above 0 g"), Err: quantity.ErrOutOfRange}
		}
		if err == nil {
			err = put(&w.Weights, one.Mass, one.Name)
		}
		p.Join("", err)
	}
	return p.Err()
}

// An amount is a weight and what it is of.
type amount dough.Stock

// UnmarshalText reads "40 g water" or "2 oz rye".
func (a *amount) UnmarshalText(text []byte) error {
	words := strings.Fields(string(text))
	for n := min(len(words)-1, 4); n >= 1; n-- {
		if m, err := quantity.ParseMass(strings.Join(words[:n], " ")); err == nil {
			a.Mass, a.Name = m, strings.Join(words[n:], " ")
			return nil
		}
	}
	want := quantity.Tell("cli.want_weight_and_what_40_g", `a weight and what it is of, such as "40 g water"`)
	return &quantity.InputError{Got: quantity.Excerpt(string(text)), Want: want, Err: quantity.ErrUnit}
}

// A comma between digits is a decimal comma.
var between = regexp.MustCompile(`;|,\s|,$|,(\D)`)

func items(text string) []string {
	var out []string
	for _, t := range strings.Split(between.ReplaceAllString(text, ";$1"), ";") {
		if t = strings.TrimSpace(t); t != "" {
			out = append(out, t)
		}
	}
	return out
}

var levainAt = regexp.MustCompile(`^levain(?: at (.+?))?(?: of (.+))?$`)

// put adds one weight to the bowl.
func put(w *dough.Weights, m quantity.Mass, what string) error {
	what = strings.ToLower(what)
	if parts := levainAt.FindStringSubmatch(what); parts != nil {
		return putLevain(w, m, parts[1], parts[2])
	}
	kind, err := kindOf(what)
	if err != nil {
		return err
	}
	one := dough.Weight{Name: what, Mass: m, Kind: kind}
	b := &w.Final
	switch {
	case kind == dough.KindUnstated || grain(kind):
		b.Flours = append(b.Flours, one)
	case kind == dough.KindWater || kind == dough.KindMilk:
		b.Liquids = append(b.Liquids, one)
	case kind == dough.KindSalt:
		b.Salt = b.Salt.Add(m)
	case kind >= dough.KindNuts && kind <= dough.KindFruit:
		b.Inclusions = append(b.Inclusions, one)
	default:
		b.Others = append(b.Others, one)
	}
	return nil
}

func grain(k dough.Kind) bool { return k >= dough.KindWheat && k <= dough.KindGlutenFreeFlour }

func kindOf(what string) (dough.Kind, error) {
	var k dough.Kind
	if what == "flour" {
		return k, nil
	}
	for _, text := range []string{what, strings.TrimSuffix(what, " flour")} {
		if text != "unstated" && text != "" && k.UnmarshalText([]byte(text)) == nil {
			return k, nil
		}
	}
	return k, &quantity.InputError{Got: quantity.Excerpt(what),
		Want: quantity.Tell("cli.want_flour_wheat_whole_wheat_rye", `flour, wheat, whole wheat, rye, whole rye, spelt, water, milk, salt, fresh yeast, instant yeast, butter, egg, seeds, "levain at 100 %%" or another kind of ingredient that a bake file knows`),
		Err:  quantity.ErrOutOfRange}
}

// putLevain adds a levain by its weight and hydration.
func putLevain(w *dough.Weights, m quantity.Mass, hydration, of string) error {
	c := dough.Starter{Mass: m, Hydration: quantity.NewPercent(100)}
	if hydration != "" {
		if err := c.Hydration.UnmarshalText([]byte(hydration)); err != nil {
			return err
		}
	}
	name, kind := "flour of the levain", dough.KindUnstated
	if of != "" {
		k, err := kindOf(of)
		if err != nil {
			return err
		}
		name, kind = of, k
	}
	w.Preferments = append(w.Preferments, dough.PrefermentWeights{
		Name: "levain",
		Bowl: dough.Bowl{
			Flours:  []dough.Weight{{Name: name, Mass: c.Flour(), Kind: kind}},
			Liquids: []dough.Weight{{Name: "water", Mass: c.Water(), Kind: dough.KindWater}},
		},
	})
	return nil
}
