package food

import (
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/enum"
	"example.org/maslin/internal/sources"
)

// FillMethod says how a cup or spoon was filled. A cup of bread flour weighs 120 g or 156 g by
// method alone.
type FillMethod int

// The methods. The zero value states none.
const (
	// Sifted into the cup and leveled.
	Sifted FillMethod = iota + 1
	// Spooned into the cup and leveled.
	Spooned
	// Scooped with the cup (dipped) and leveled.
	Scooped
	// Leveled: poured or filled and leveled, of liquids, sugar, salt and yeast, which pack little.
	Leveled
)

const unstated FillMethod = 0

var fillMethods = enum.Of[FillMethod]("way to fill a cup", "", "sifted", "spooned", "scooped", "leveled")

// String names the method: "spooned".
func (m FillMethod) String() string { return fillMethods.String(m) }

// MarshalText implements encoding.TextMarshaler.
func (m FillMethod) MarshalText() ([]byte, error) { return fillMethods.Marshal(m) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads the words that String prints, and no others.
func (m *FillMethod) UnmarshalText(text []byte) error { return fillMethods.Unmarshal(m, text) }

// FoodMeasure is one published weight of a cup or spoon of something.
type FoodMeasure struct {
	Food   string          `json:"food"`
	Method FillMethod      `json:"method,omitzero"`
	Per    quantity.Volume `json:"per"`
	Mass   quantity.Mass   `json:"mass"`
	Source working.Source  `json:"source,omitzero"`
}

// FoodMeasures lists the published weights of cups and spoons that are shipped.
func FoodMeasures() []FoodMeasure {
	cup, tsp := quantity.MustVolume("1 cup"), quantity.MustVolume("1 tsp")
	usda, cake := sources.SR28Weights, sources.Beranbaum
	g, oz := quantity.Grams, quantity.Ounces
	return []FoodMeasure{
		{"all-purpose flour", Sifted, cup, oz(4), cake},
		{"all-purpose flour", Spooned, cup, oz(4.25), cake},
		{"all-purpose flour", Scooped, cup, oz(5), cake},
		{"all-purpose flour", unstated, cup, g(125), usda},
		{"bread flour", Sifted, cup, oz(4.25), cake},
		{"bread flour", Spooned, cup, oz(4.5), cake},
		{"bread flour", Scooped, cup, oz(5.5), cake},
		{"bread flour", unstated, cup, g(137), usda},
		{"cake flour", Sifted, cup, oz(3.5), cake},
		{"cake flour", Spooned, cup, oz(4), cake},
		{"cake flour", Scooped, cup, oz(4.5), cake},
		{"cake flour", Scooped, cup, g(137), usda},
		{"whole-wheat flour", unstated, cup, g(120), usda},
		{"light rye flour", unstated, cup, g(102), usda},
		{"medium rye flour", unstated, cup, g(102), usda},
		{"dark rye flour", unstated, cup, g(128), usda},
		{"rice flour", unstated, cup, g(158), usda},
		{"barley flour", unstated, cup, g(148), usda},
		{"semolina", unstated, cup, g(167), usda},
		{"rolled oats", Leveled, cup, g(81), sources.OatsMemory},
		{"wheat bran", unstated, cup, g(58), usda},
		{"wheat germ", unstated, cup, g(115), usda},
		{"water", Leveled, cup, g(237), usda},
		{"milk", Leveled, cup, g(244), usda},
		{"milk", Leveled, cup, g(242), cake},
		{"buttermilk", Leveled, cup, g(245), usda},
		{"yogurt", Leveled, cup, g(245), usda},
		{"heavy cream", Leveled, cup, g(232), cake},
		{"egg", Leveled, cup, g(243), usda},
		{"egg white", Leveled, cup, g(243), usda},
		{"egg yolk", Leveled, cup, g(243), usda},
		{"butter", Leveled, cup, g(227), usda},
		{"butter", Leveled, cup, oz(8), cake},
		{"olive oil", Leveled, cup, g(216), usda},
		{"oil", Leveled, cup, oz(7.5), cake},
		{"honey", Leveled, cup, g(339), usda},
		{"honey", Leveled, cup, oz(11.75), cake},
		{"malt syrup", Leveled, cup, g(332), usda},
		{"maple syrup", Leveled, cup, g(315), usda},
		{"molasses", Leveled, cup, g(337), usda},
		{"sugar", Leveled, cup, g(200), usda},
		{"sugar", Leveled, cup, g(200), cake},
		{"sugar", Leveled, tsp, g(4.2), usda},
		{"salt", Leveled, cup, g(292), usda},
		{"salt", Leveled, tsp, g(6), usda},
		{"salt", Leveled, tsp, g(6), cake},
		{"coarse salt, light", Leveled, tsp, g(2.8), cake},
		{"coarse salt, dense", Leveled, tsp, g(4.8), cake},
		{"coarse salt", Leveled, tsp, g(2.8), cake},
		{"coarse salt", Leveled, tsp, g(4.8), cake},
		{"instant yeast", Leveled, quantity.MustVolume("2.25 tsp"), g(7),
			sources.Practice("a packet of 7 g is 2¼ teaspoons")},
		{"active dry yeast", Leveled, tsp, g(4), usda},
		// A packet of 7 g is 2¼ teaspoons, 3.1 g each: against SR28's 4.0 g.
		{"active dry yeast", Leveled, quantity.MustVolume("2.25 tsp"), g(7),
			sources.Practice("a packet of 7 g is 2¼ teaspoons")},
	}
}
