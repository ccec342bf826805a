package food

import (
	"strings"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// Food is one line of a food table: what is in 100 g.
type Food struct {
	Code    string           `json:"code,omitzero"` // in SR28 the NDB number, "01077"
	Name    string           `json:"name"`
	Water   quantity.Percent `json:"water"`
	Protein quantity.Percent `json:"protein"` // zero together with NoProtein false means none
	// NoProtein reports that the table does not give the protein.
	NoProtein bool             `json:"no_protein,omitzero"`
	Ash       quantity.Percent `json:"ash,omitzero"` // of some flours; zero: not given
	Source    working.Source   `json:"source,omitzero"`
}

// String prints "01077 Milk, whole: 88.13 % water".
func (f Food) String() string {
	if f.Name == "" && f.Code == "" {
		return "no food"
	}
	return strings.TrimSpace(f.Code+" "+f.Name) + ": " + f.Water.String() + " water"
}

// InPlaceOfWater answers how much of a liquid holds so much water.
//
//	m = water ÷ (content ÷ 100)
//
// content is the food's water: 88.13 % for whole milk, so that 150 g of water become
// 170.2 g of milk. Rounded half to even to the microgram. Errors: ErrOutOfRange for a content
// outside 1 % to 100 % or a negative weight. Source: algebra.
func (f Food) InPlaceOfWater(water quantity.Mass) (quantity.Mass, error) {
	var p quantity.Problems
	quantity.Check(&p, "Water", f.Water, quantity.MustPercent("1 %"), wholeFlour)
	quantity.Check(&p, "water", water, quantity.Mass{}, mostDough)
	if err := p.ErrFor(f); err != nil {
		return quantity.Mass{}, err
	}
	instead := water.Over(f.Water)
	if !instead.IsValid() {
		p.Add("water", water, quantity.Tell("food.want_less_water",
			"less, or a food with more water: so much cannot be weighed"), quantity.ErrOutOfRange)
		return quantity.Mass{}, p.ErrFor(f)
	}
	return instead, nil
}

// SR28 lists 58 foods of bakers from the USDA National Nutrient Database for Standard Reference, release 28, with
// water and protein for 100 g. Real flours differ: by season one to two points of water, by mill more of protein.
func SR28() []Food {
	rows := sr28()
	foods := make([]Food, 0, len(rows))
	for _, r := range rows {
		f := Food{Code: r.ndb, Name: r.name, Water: quantity.NewPercent(r.water), Ash: quantity.NewPercent(r.ash),
			Source: sources.SR28}
		if f.NoProtein = r.protein == unread; !f.NoProtein {
			f.Protein = quantity.NewPercent(r.protein)
		}
		foods = append(foods, f)
	}
	return foods
}

// Find answers the food of [SR28] with the code or name, without regard to case.
func Find(key string) (Food, bool) {
	if key == "" || len(key) > 200 {
		return Food{}, false
	}
	for _, f := range SR28() {
		if strings.EqualFold(f.Code, key) || strings.EqualFold(f.Name, key) {
			return f, true
		}
	}
	return Food{}, false
}

// Search answers every food of [SR28] whose name holds all words of the query, in table order; an empty query
// finds all.
func Search(query string) []Food {
	if len(query) > 200 {
		return nil
	}
	var out []Food
	for _, f := range SR28() {
		if holdsAll(f.Name, query) {
			out = append(out, f)
		}
	}
	return out
}

// holdsAll reports whether a name holds all words of the query, without regard to case.
func holdsAll(name, query string) bool {
	name = strings.ToLower(name)
	for _, w := range strings.Fields(strings.ToLower(query)) {
		if !strings.Contains(name, w) {
			return false
		}
	}
	return true
}

var (
	wholeFlour = quantity.MustPercent("100 %")
	mostDough  = quantity.Kilograms(100_000)
)
