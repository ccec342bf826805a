package food

import (
	"math"
	"strings"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"

	"github.com/shopspring/decimal"
)

// FillMethod says how a cup or spoon was filled. A cup of bread flour weighs 120 g or 156 g by
// method alone.
type FillMethod int

// The methods. The zero value states none.
const (
	MethodUnstated FillMethod = iota
	// Sifted into the cup and leveled.
	Sifted
	// Spooned into the cup and leveled.
	Spooned
	// Scooped with the cup (dipped) and leveled.
	Scooped
	// Leveled: poured or filled and leveled, of liquids, sugar, salt and yeast, which pack little.
	Leveled
)

var methodNames = []string{"unstated", "sifted", "spooned", "scooped", "leveled"}

// String names the method: "spooned".
func (m FillMethod) String() string { return nameOf(methodNames, int(m)) }

// AppendText implements encoding.TextAppender; a value without a name is an error.
func (m FillMethod) AppendText(b []byte) ([]byte, error) { return appendName(b, methodNames, int(m)) }

// MarshalText implements encoding.TextMarshaler: "spooned".
func (m FillMethod) MarshalText() ([]byte, error) { return m.AppendText(nil) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads what String prints.
func (m *FillMethod) UnmarshalText(text []byte) error {
	i, err := readName(text, methodNames)
	if err == nil {
		*m = FillMethod(i)
	}
	return err
}

// FoodMeasure is one published weight of a cup or spoon of something.
type FoodMeasure struct {
	Food   string
	Method FillMethod
	Per    quantity.Volume
	Mass   quantity.Mass
	Source working.Source
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
		{"all-purpose flour", MethodUnstated, cup, g(125), usda},
		{"bread flour", Sifted, cup, oz(4.25), cake},
		{"bread flour", Spooned, cup, oz(4.5), cake},
		{"bread flour", Scooped, cup, oz(5.5), cake},
		{"bread flour", MethodUnstated, cup, g(137), usda},
		{"cake flour", Sifted, cup, oz(3.5), cake},
		{"cake flour", Spooned, cup, oz(4), cake},
		{"cake flour", Scooped, cup, oz(4.5), cake},
		{"cake flour", Scooped, cup, g(137), usda},
		{"whole-wheat flour", MethodUnstated, cup, g(120), usda},
		{"light rye flour", MethodUnstated, cup, g(102), usda},
		{"medium rye flour", MethodUnstated, cup, g(102), usda},
		{"dark rye flour", MethodUnstated, cup, g(128), usda},
		{"rice flour", MethodUnstated, cup, g(158), usda},
		{"barley flour", MethodUnstated, cup, g(148), usda},
		{"semolina", MethodUnstated, cup, g(167), usda},
		{"wheat bran", MethodUnstated, cup, g(58), usda},
		{"wheat germ", MethodUnstated, cup, g(115), usda},
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
		{"active dry yeast", Leveled, tsp, g(4), usda},
		// A packet of 7 g is 2¼ teaspoons, 3.1 g each: against SR28's 4.0 g.
		{"active dry yeast", Leveled, quantity.MustVolume("2.25 tsp"), g(7), sources.Practice("a packet of 7 g is 2¼ teaspoons")},
	}
}

// FoodVolume is the input of [MassOfVolume].
type FoodVolume struct {
	Food   string // as in [FoodMeasures]
	Volume quantity.Volume
	// Method is needed for everything that packs: flour, bran. For the rest it may be left unstated.
	Method FillMethod
	// Measures replaces [FoodMeasures] when it is not empty.
	Measures []FoodMeasure
}

// VolumeMass is the answer of [MassOfVolume]: a range, because a cup is not a weight.
type VolumeMass struct {
	Low, Likely, High quantity.Mass
	// Used are the published weights behind it.
	Used []FoodMeasure
	// Note says what widens the range.
	Note string

	in     FoodVolume
	widen  quantity.Percent
	chosen FoodMeasure
}

// How far two fillings by one method differ. Judgment: the methods of bread flour lie 6 and 22 % apart.
const (
	widenPacking  = "5 %"
	widenUnstated = "15 %"
	widenLeveled  = "2 %"
)

// MassOfVolume answers what a volume of something weighs, as a range with its method.
//
//	m = V · m_cup ÷ V_cup
//
// m_cup is the published weight; where several are published for the food and method, Likely is the
// first listed and the range holds them all, widened by 5 % for flour, 2 % for what does not pack,
// and 15 % where the source does not say how the cup was filled. Likely is exact but for rounding
// to the microgram; whether your cup was filled like theirs is another matter: weigh when you can.
// Volume above 0 to 1000 L. Errors: ErrRequired (food, volume, or method of a flour), ErrOutOfRange
// (a food or method that is not listed). Source: SR28; Beranbaum, The Cake Bible.
func MassOfVolume(in FoodVolume) (VolumeMass, error) {
	var p quantity.Problems
	list := in.Measures
	if len(list) == 0 {
		list = FoodMeasures()
	}
	if len(list) > 10_000 {
		p.Add("Measures", "too many measures", "at most 10000", quantity.ErrOutOfRange)
		return VolumeMass{}, p.Err()
	}
	checkMeasures(&p, in.Measures)
	quantity.Check(&p, "Volume", in.Volume, quantity.Milliliters(0.001), quantity.Liters(1000))
	if in.Method < 0 || int(in.Method) >= len(methodNames) {
		p.Add("Method", "an unknown method", oneOf(methodNames), quantity.ErrOutOfRange)
	}
	var same []FoodMeasure
	packs := false
	if in.Food == "" {
		p.Required("Food", "the name of a food in the list")
	} else {
		for _, m := range list {
			if strings.EqualFold(m.Food, in.Food) {
				same = append(same, m)
				packs = packs || m.Method != Leveled
			}
		}
		if len(same) == 0 {
			p.Add("Food", quantity.Excerpt(in.Food), "a food in the list, such as bread flour, honey or salt", quantity.ErrOutOfRange)
		}
	}
	if packs && in.Method == MethodUnstated {
		p.Required("Method", "sifted, spooned or scooped: by method alone a cup of flour differs by a quarter")
	}
	if packs && in.Method == Leveled {
		p.Add("Method", in.Method.String(), "sifted, spooned or scooped", quantity.ErrOutOfRange)
	}
	if err := p.Err(); err != nil {
		return VolumeMass{}, err
	}
	r := VolumeMass{in: in, widen: quantity.MustPercent(widenLeveled)}
	if packs {
		r.widen = quantity.MustPercent(widenPacking)
	}
	r.in.Measures = nil
	for _, m := range same {
		if !packs || m.Method == in.Method {
			r.Used = append(r.Used, m)
		}
	}
	if len(r.Used) == 0 {
		for _, m := range same {
			if m.Method == MethodUnstated {
				r.Used = append(r.Used, m)
			}
		}
		r.widen = quantity.MustPercent(widenUnstated)
		r.Note = "the source does not say how its cup was filled"
	}
	if len(r.Used) == 0 {
		p.Add("Method", in.Method.String(), "a method that is listed for "+shortName(in.Food, "the food"), quantity.ErrOutOfRange)
		return VolumeMass{}, p.Err()
	}
	// Prefer a weight whose measure is of the size asked for: spoons for spoons, cups for cups.
	r.chosen = r.Used[0]
	for _, m := range r.Used[1:] {
		if apart(m.Per, in.Volume) < apart(r.chosen.Per, in.Volume)-0.3 {
			r.chosen = m
		}
	}
	r.Likely = scaleVolume(r.chosen, in.Volume)
	r.Low, r.High = r.Likely, r.Likely
	for _, m := range r.Used {
		g := scaleVolume(m, in.Volume)
		if g.Compare(r.Low) < 0 {
			r.Low = g
		}
		if g.Compare(r.High) > 0 {
			r.High = g
		}
	}
	r.Low = r.Low.Sub(r.widen.Of(r.Low))
	r.High = r.High.Add(r.widen.Of(r.High))
	if !r.High.IsValid() || r.Likely.IsZero() {
		p.Add("Volume", in.Volume.String(), "a volume that weighs between 1 µg and 1000 t", quantity.ErrOutOfRange)
		return VolumeMass{}, p.Err()
	}
	return r, nil
}

func checkMeasures(p *quantity.Problems, list []FoodMeasure) {
	for i, m := range list {
		path := at("Measures", i)
		if m.Food == "" {
			p.Required(path+".Food", "a name")
		}
		if m.Method < 0 || int(m.Method) >= len(methodNames) {
			p.Add(path+".Method", "an unknown method", oneOf(methodNames), quantity.ErrOutOfRange)
		}
		quantity.Check(p, path+".Per", m.Per, quantity.Milliliters(0.1), quantity.Liters(10))
		quantity.Check(p, path+".Mass", m.Mass, quantity.Micrograms(1000), quantity.Kilograms(100))
	}
}

// apart is how many powers of ten lie between two volumes.
func apart(a, b quantity.Volume) float64 {
	return math.Abs(math.Log10(a.Milliliters() / b.Milliliters()))
}

// scaleVolume is V·m ÷ V_m, exact in the decimals of both, rounded once to the microgram.
func scaleVolume(m FoodMeasure, v quantity.Volume) quantity.Mass {
	num := v.Decimal(quantity.Milliliter).Mul(m.Mass.Decimal(quantity.Gram))
	q, _ := num.QuoRem(m.Per.Decimal(quantity.Milliliter), 12)
	g, err := quantity.MassOf(q.RoundBank(6), quantity.Gram)
	if err != nil {
		return quantity.Grams(math.NaN())
	}
	return g
}

// String prints "about 142 g (135 to 149 g, scooped)".
func (r VolumeMass) String() string {
	if r.Likely.IsZero() {
		return "no weight"
	}
	places := 0
	if r.Likely.Compare(quantity.Grams(20)) < 0 {
		places = 1
	}
	method := ""
	if r.in.Method != MethodUnstated {
		method = ", " + r.in.Method.String()
	}
	return "about " + r.Likely.Text(quantity.Gram, places) + " (" +
		bareNumber(r.Low.Text(quantity.Gram, places)) + " to " + r.High.Text(quantity.Gram, places) + method + ")"
}

// Working derives the likely weight and names the figures of the range.
func (r VolumeMass) Working() working.Working {
	w := working.Working{Title: "Weight of a volume"}
	if r.Likely.IsZero() {
		return w
	}
	w.Steps = append(w.Steps, working.Step{
		Name: "likely weight", Symbol: "m", Formula: "V × m_p ÷ V_p",
		Where: []working.Binding{
			{Symbol: "V", Meaning: "volume of " + shortName(r.in.Food, "the food"), Value: r.in.Volume.String()},
			{Symbol: "m_p", Meaning: "published weight, " + r.chosen.Method.String(), Value: r.chosen.Mass.String()},
			{Symbol: "V_p", Meaning: "of this volume", Value: r.chosen.Per.String()},
		},
		Numbers: bareNumber(r.in.Volume.String()) + " × " + bareNumber(r.chosen.Mass.String()) + " ÷ " + bareNumber(r.chosen.Per.String()),
		Value:   r.Likely.String(), Source: r.chosen.Source,
	})
	note := "the published weights, and " + r.widen.String() + " more either way for the hand that fills the cup"
	if r.Note != "" {
		note += "; " + r.Note
	}
	w.Steps = append(w.Steps, working.Step{
		Name: "range", Symbol: "m_range", Value: bareNumber(r.Low.Text(quantity.Gram, 1)) + " to " + r.High.Text(quantity.Gram, 1), Note: note,
		Source: working.Source{Key: "filling", Title: "spread of filling a cup by one method", Standing: working.Judgment},
	})
	return w
}

// waterDensities in kg/m³ at °C. Source: standard table of the density of air-free water.
func waterDensities() [12][2]float64 {
	return [12][2]float64{
		{0, 999.8395}, {4, 999.9720}, {10, 999.7026}, {15, 999.1026}, {20, 998.2071}, {22, 997.7735},
		{25, 997.0479}, {30, 995.6502}, {40, 992.2}, {60, 983.2}, {80, 971.8}, {100, 958.4},
	}
}

// WaterMass answers what a volume of water weighs at a temperature: V·ρ(T).
//
// ρ is read from the standard table of the density of air-free water, straight between its entries
// (within 0.05 % up to 40 °C, 0.1 % above), 0 to 100 °C. Between 4 and 30 °C a cup differs by a
// gram: less than the scale and the cup. Volume 0 to 1000 L. Errors: ErrRequired, ErrOutOfRange.
// Source: the table named.
func WaterMass(v quantity.Volume, t quantity.Temperature) (quantity.Mass, error) {
	var p quantity.Problems
	quantity.Check(&p, "v", v, quantity.Volume{}, quantity.Liters(1000))
	quantity.Check(&p, "t", t, quantity.Celsius(0), quantity.Celsius(100))
	if err := p.Err(); err != nil {
		return quantity.Mass{}, err
	}
	table := waterDensities()
	c := t.Celsius()
	density := table[0][1]
	for i := 1; i < len(table); i++ {
		if lo, hi := table[i-1], table[i]; c <= hi[0] {
			density = lo[1] + (hi[1]-lo[1])*(c-lo[0])/(hi[0]-lo[0])
			break
		}
	}
	d := v.Decimal(quantity.Milliliter).Mul(decimal.NewFromFloat(density).Shift(-3))
	return quantity.MassOf(d.RoundBank(6), quantity.Gram)
}
