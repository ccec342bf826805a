package food

import (
	"slices"
	"strconv"
	"strings"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// Food is one line of a food table: what is in 100 g.
type Food struct {
	Code    string // in SR28 the NDB number, "01077"
	Name    string
	Water   quantity.Percent
	Protein quantity.Percent // zero together with NoProtein false means none
	// NoProtein reports that the table does not give the protein.
	NoProtein bool
	Ash       quantity.Percent // of some flours; zero: not given
	Source    working.Source
}

// String prints "01077 Milk, whole: 88.13 % water".
func (f Food) String() string {
	if f.Name == "" && f.Code == "" {
		return "no food"
	}
	return strings.TrimSpace(f.Code+" "+f.Name) + ": " + f.Water.String() + " water"
}

// FoodTable is a list of foods that can be searched. The zero value is empty; [SR28] is the one
// shipped, and a caller may use a table of its own ([NewFoodTable]) or put lines over it
// ([FoodTable.With]). It never changes.
type FoodTable struct {
	foods []Food
}

// SR28 is the shipped table: 58 foods of bakers from the USDA National Nutrient Database for
// Standard Reference, release 28, with water and protein for 100 g. Real flours differ: by season
// one to two points of water, by mill more of protein.
func SR28() FoodTable {
	rows := sr28()
	t := FoodTable{make([]Food, 0, len(rows))}
	for _, r := range rows {
		f := Food{Code: r.ndb, Name: r.name, Water: quantity.NewPercent(r.water), Ash: quantity.NewPercent(r.ash), Source: sources.SR28}
		if f.NoProtein = r.protein == unread; !f.NoProtein {
			f.Protein = quantity.NewPercent(r.protein)
		}
		t.foods = append(t.foods, f)
	}
	return t
}

// NewFoodTable answers a table of the given foods. Codes (where given) and names are unique without
// regard to case; water, protein and ash are 0 to 100 % and together at most 100 %; at most 10,000
// foods. Errors: ErrRequired, ErrOutOfRange, ErrInconsistent.
func NewFoodTable(foods []Food) (FoodTable, error) {
	var p quantity.Problems
	if len(foods) > 10_000 {
		p.Add("foods", strconv.Itoa(len(foods))+" foods", "at most 10000", quantity.ErrOutOfRange)
		return FoodTable{}, p.Err()
	}
	seen := map[string]bool{}
	for i, f := range foods {
		path := at("foods", i)
		if f.Name == "" {
			p.Required(path+".Name", "a name")
		} else if len(f.Name) > 200 {
			p.Add(path+".Name", quantity.Excerpt(f.Name), "at most 200 bytes", quantity.ErrOutOfRange)
			continue
		}
		if len(f.Code) > 40 {
			p.Add(path+".Code", quantity.Excerpt(f.Code), "at most 40 bytes", quantity.ErrOutOfRange)
			continue
		}
		for _, key := range []string{"name " + strings.ToLower(f.Name), "code " + strings.ToLower(f.Code)} {
			if seen[key] && key != "code " && key != "name " {
				p.Add(path, quantity.Excerpt(key), "each code and each name once", quantity.ErrInconsistent)
			}
			seen[key] = true
		}
		ok := quantity.Check(&p, path+".Water", f.Water, quantity.Percent{}, wholeFlour)
		ok = quantity.Check(&p, path+".Protein", f.Protein, quantity.Percent{}, wholeFlour) && ok
		ok = quantity.Check(&p, path+".Ash", f.Ash, quantity.Percent{}, wholeFlour) && ok
		if sum := f.Water.Add(f.Protein).Add(f.Ash); ok && sum.Compare(wholeFlour) > 0 {
			p.Add(path, "water, protein and ash of "+sum.String(), "at most 100 % together", quantity.ErrInconsistent)
		}
	}
	if err := p.Err(); err != nil {
		return FoodTable{}, err
	}
	return FoodTable{slices.Clone(foods)}, nil
}

// With answers the table with the given foods put over it: a food with a code or name that is
// already there replaces it. Errors as in [NewFoodTable].
func (t FoodTable) With(foods ...Food) (FoodTable, error) {
	if _, err := NewFoodTable(foods); err != nil {
		return FoodTable{}, err
	}
	merged := slices.Clone(t.foods)
	for _, f := range foods {
		merged = slices.DeleteFunc(merged, func(old Food) bool {
			return f.Code != "" && strings.EqualFold(old.Code, f.Code) || strings.EqualFold(old.Name, f.Name)
		})
		merged = append(merged, f)
	}
	return NewFoodTable(merged)
}

// Find answers the food with the code or name, without regard to case.
func (t FoodTable) Find(key string) (Food, bool) {
	for _, f := range t.foods {
		if key != "" && (strings.EqualFold(f.Code, key) || strings.EqualFold(f.Name, key)) {
			return f, true
		}
	}
	return Food{}, false
}

// Search answers every food whose name holds all words of the query, in table order; an empty query
// finds all.
func (t FoodTable) Search(query string) []Food {
	if len(query) > 200 {
		return nil
	}
	words := strings.Fields(strings.ToLower(query))
	var out []Food
	for _, f := range t.foods {
		name := strings.ToLower(f.Name)
		if !slices.ContainsFunc(words, func(w string) bool { return !strings.Contains(name, w) }) {
			out = append(out, f)
		}
	}
	return out
}

// Len is the number of foods.
func (t FoodTable) Len() int { return len(t.foods) }

// FoodAmount is a weight of a food.
type FoodAmount struct {
	Food Food
	Mass quantity.Mass
}

// WaterIn answers how much water an amount of foods brings: Σ mᵢ·waterᵢ. Flour's own water is
// counted here if flour is listed; trade hydration leaves it out, so list liquids, eggs, fats and
// sweeteners only. At most 200 amounts. Errors: ErrOutOfRange. Source: SR28 or the caller's table.
func WaterIn(amounts []FoodAmount) (quantity.Mass, error) {
	var p quantity.Problems
	if len(amounts) > 200 {
		p.Add("amounts", strconv.Itoa(len(amounts))+" foods", "at most 200", quantity.ErrOutOfRange)
		return quantity.Mass{}, p.Err()
	}
	var sum quantity.Mass
	for i, a := range amounts {
		quantity.Check(&p, at("amounts", i)+".Mass", a.Mass, quantity.Mass{}, mostDough)
		quantity.Check(&p, at("amounts", i)+".Food.Water", a.Food.Water, quantity.Percent{}, wholeFlour)
		sum = sum.Add(a.Food.Water.Of(a.Mass))
	}
	return sum, p.Err()
}
