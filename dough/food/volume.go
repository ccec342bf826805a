package food

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
)

// FoodVolume is a volume of something, the input of [FoodVolume.Weight].
type FoodVolume struct {
	Food   string          `json:"food"` // as in [FoodMeasures]
	Volume quantity.Volume `json:"volume"`
	// Method is needed for everything that packs: flour, bran. For the rest it may be left unstated.
	Method FillMethod `json:"method,omitzero"`
	// Measures replaces [FoodMeasures] when it is not empty.
	Measures []FoodMeasure `json:"measures,omitempty"`
	// Notes say how the words of [ReadVolume] were read; the answer tells them again.
	Notes []working.Message `json:"notes,omitempty"`
}

// FoodWeight is the answer of [FoodVolume.Weight]: a range, because a cup is not a weight.
type FoodWeight struct {
	answer

	Food   string                        `json:"food"`
	Volume quantity.Volume               `json:"volume"`
	Method FillMethod                    `json:"method,omitzero"`
	Mass   quantity.Range[quantity.Mass] `json:"mass"`
	// Used are the published weights behind it.
	Used []FoodMeasure `json:"used"`
	// Notes say what widens the range.
	Notes []working.Message `json:"notes,omitempty"`

	widen       quantity.Percent
	chosen      FoodMeasure
	least, most quantity.Mass // by the published weights, not yet widened
}

// How far two fillings by one method differ. Judgment: the methods of bread flour lie 6 and 22 % apart.
const (
	widenPacking  = "5 %"
	widenUnstated = "15 %"
	widenLeveled  = "2 %"
)

// Weight answers what a volume of something weighs, as a range with its method.
//
//	m = V · m_cup ÷ V_cup
//
// m_cup is the published weight; where several are published for the food and method, Likely is the
// first listed and the range holds them all, widened by 5 % for flour, 2 % for what does not pack,
// and 15 % where the source does not say how the cup was filled. Likely is exact but for rounding
// to the microgram; whether your cup was filled like theirs is another matter: weigh when you can.
// Volume above 0 to 1000 L. Errors: ErrRequired (food, volume, or method of a flour), ErrOutOfRange
// (a food or method that is not listed). Source: SR28; Beranbaum, The Cake Bible.
func (v FoodVolume) Weight() (FoodWeight, error) {
	var p quantity.Problems
	list := v.Measures
	if len(list) == 0 {
		list = FoodMeasures()
	}
	if len(list) > 10_000 {
		p.Add("Measures", quantity.Tell("food.got_too_many_measures", "too many measures"),
			quantity.Tell("food.want_at_most_10000", "at most 10000"), quantity.ErrOutOfRange)
		return FoodWeight{}, p.ErrFor(v)
	}
	checkMeasures(&p, v.Measures)
	quantity.Check(&p, "Volume", v.Volume, quantity.Milliliters(0.001), quantity.Liters(1000))
	fillMethods.CheckIfGiven(&p, "Method", v.Method)
	var same []FoodMeasure
	packs := false
	if v.Food == "" {
		p.Required("Food", quantity.Tell("food.want_name_food_list", "the name of a food in the list"))
	} else {
		for _, m := range list {
			if strings.EqualFold(m.Food, v.Food) {
				same = append(same, m)
				packs = packs || m.Method != Leveled
			}
		}
		if len(same) == 0 {
			p.Add("Food", quantity.Excerpt(v.Food), listed(list, v.Food), quantity.ErrOutOfRange)
		}
	}
	if packs && v.Method == unstated {
		p.Required("Method", quantity.Tell("food.want_sifted_spooned_or_scooped_by",
			"sifted, spooned or scooped: by method alone a cup of flour differs by a quarter"))
	}
	if packs && v.Method == Leveled {
		p.Add("Method", v.Method, quantity.Tell("food.want_sifted_spooned_or_scooped", "sifted, spooned or scooped"),
			quantity.ErrOutOfRange)
	}
	if err := p.ErrFor(v); err != nil {
		return FoodWeight{}, err
	}
	r := FoodWeight{Food: v.Food, Volume: v.Volume, Method: v.Method, widen: quantity.MustPercent(widenLeveled)}
	r.Notes = slices.Clone(v.Notes)
	if packs {
		r.widen = quantity.MustPercent(widenPacking)
	}
	for _, m := range same {
		if !packs || m.Method == v.Method {
			r.Used = append(r.Used, m)
		}
	}
	if len(r.Used) == 0 {
		for _, m := range same {
			if m.Method == unstated {
				r.Used = append(r.Used, m)
			}
		}
		r.widen = quantity.MustPercent(widenUnstated)
		r.Notes = append(r.Notes,
			working.Tell("food.method_unsaid", "the source does not say how its cup was filled"))
	}
	if len(r.Used) == 0 {
		p.Add("Method", v.Method,
			quantity.Tell("food.want_method_listed", "a method that is listed for %s", quantity.Excerpt(v.Food)),
			quantity.ErrOutOfRange)
		return FoodWeight{}, p.ErrFor(v)
	}
	// Prefer a weight whose measure is of the size asked for: spoons for spoons, cups for cups.
	r.chosen = r.Used[0]
	for _, m := range r.Used[1:] {
		if apart(m.Per, v.Volume) < apart(r.chosen.Per, v.Volume)-0.3 {
			r.chosen = m
		}
	}
	likely := scaleVolume(r.chosen, v.Volume)
	low, high := likely, likely
	for _, m := range r.Used {
		g := scaleVolume(m, v.Volume)
		if g.Compare(low) < 0 {
			low = g
		}
		if g.Compare(high) > 0 {
			high = g
		}
	}
	r.least, r.most = low, high
	r.Mass = quantity.Range[quantity.Mass]{
		Low:    low.Sub(r.widen.Of(low)),
		Likely: likely,
		High:   high.Add(r.widen.Of(high)),
	}
	if !r.Mass.High.IsValid() || r.Mass.Likely.IsZero() {
		p.Add("Volume", v.Volume, quantity.Tell("food.want_volume_weighs_between_1_g",
			"a volume that weighs between 1 µg and 1000 t"), quantity.ErrOutOfRange)
		return FoodWeight{}, p.ErrFor(v)
	}
	return r, nil
}

// listed says which foods of a list a name may have meant.
func listed(list []FoodMeasure, name string) quantity.Phrase {
	var near []string
	for _, m := range list {
		if len(near) < 8 && len(name) <= 200 && holdsAll(m.Food, name) && !slices.Contains(near, m.Food) {
			near = append(near, m.Food)
		}
	}
	if len(near) > 0 {
		return quantity.Tell("food.want_one", "one of %s", strings.Join(near, ", "))
	}
	return quantity.Tell("food.want_food_list_bread_flour_honey", "a food that a table of weights by volume has, such as "+
		"bread flour, whole wheat flour, rye flour, sugar, honey, salt, milk, butter, oil, egg or yeast")
}

func checkMeasures(p *quantity.Problems, list []FoodMeasure) {
	for i, m := range list {
		path := "Measures[" + strconv.Itoa(i) + "]"
		if m.Food == "" {
			p.Required(path+".Food", quantity.Tell("food.want_name", "a name"))
		}
		fillMethods.CheckIfGiven(p, path+".Method", m.Method)
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

// String is the headline of the report.
func (r FoodWeight) String() string { return r.Report().Headline.String() }

// readable rounds a weight to a gram, one below 20 g to a tenth, and one below 2 g to a hundredth.
func readable(m quantity.Mass) quantity.Mass {
	step := quantity.Grams(1)
	if m.Compare(quantity.Grams(20)) < 0 {
		step = quantity.Grams(0.1)
	}
	if m.Compare(quantity.Grams(2)) < 0 {
		step = quantity.Grams(0.01)
	}
	rounded, _ := m.RoundTo(step)
	return rounded
}

// Report tells the weight, with the published weights of cups behind it.
func (r FoodWeight) Report() report.Report {
	if r.Mass.Likely.IsZero() {
		return report.Report{Headline: working.Tell("food.no_weight", "no weight")}
	}
	low, likely, high := readable(r.Mass.Low), readable(r.Mass.Likely), readable(r.Mass.High)
	out := report.Report{Headline: working.Tell("food.weight", "%v of %s weighs about %v (%v to %v)",
		r.Volume, r.Food, likely, low, high)}
	t := report.Grid{Key: "measures", Columns: []report.GridColumn{
		{
			Key:   "per",
			Title: working.Tell("food.column_per", "as published"),
		}, {Key: "mass", Right: true}, {Key: "source"},
	}}
	for _, m := range r.Used {
		t.Rows = append(t.Rows, []report.Cell{report.Of(measureOf(m)), report.Rounded(m.Mass, 1),
			report.Of(m.Source.String())})
		if !slices.Contains(out.Sources, m.Source) {
			out.Sources = append(out.Sources, m.Source)
		}
	}
	s := report.Section{Key: "measures", Blocks: []report.Block{t}}
	if len(r.Notes) > 0 {
		s.Blocks = append(s.Blocks, report.List(r.Notes))
	}
	out.Sections = []report.Section{s}
	return out
}

// measureOf tells the measure of a published weight: cups, or teaspoons where it is small.
func measureOf(m FoodMeasure) working.Message {
	unit := quantity.USCup
	if m.Per.Compare(quantity.Milliliters(60)) < 0 {
		unit = quantity.USTeaspoon
	}
	n := math.Round(m.Per.In(unit)*1e4) / 1e4 // a teaspoon is no whole number of picoliters
	switch {
	case unit == quantity.USCup && m.Method == unstated:
		return working.Tell("food.cups", "%v {1|cup|cups} of %s", n, m.Food)
	case unit == quantity.USCup:
		return working.Tell("food.cups_by", "%v {1|cup|cups} of %s, %v", n, m.Food, m.Method)
	case m.Method == unstated:
		return working.Tell("food.teaspoons", "%v {1|teaspoon|teaspoons} of %s", n, m.Food)
	}
	return working.Tell("food.teaspoons_by", "%v {1|teaspoon|teaspoons} of %s, %v", n, m.Food, m.Method)
}

// Working derives the weight and its range.
func (r FoodWeight) Working() working.Working {
	d := working.Derive(working.Tell("food.derive_weight", "Weight of a volume"))
	if r.Mass.Likely.IsZero() || r.chosen.Per.IsZero() {
		return d.Working()
	}
	v := working.Given("V", working.Tell("food.symbol_volume", "volume"),
		working.Amount(r.Volume.Milliliters(), milliliter, 2))
	weigh := func(m FoodMeasure, index string, name working.Message, is quantity.Mass) working.Expr {
		cup := working.Given("V_"+index, working.Tell("food.symbol_cup", "volume of the published measure"),
			working.Amount(m.Per.Milliliters(), milliliter, 2))
		mass := working.Given("m_"+index, working.Tell("food.symbol_cup_mass", "its weight"), m.Mass)
		return d.Find(working.Finding{Name: name, Symbol: "m_" + index + "_likely", By: v.Times(mass).Over(cup), Is: is,
			Decimals: 1, Source: m.Source})
	}
	likely := weigh(r.chosen, "cup", working.Tell("food.likely", "likely weight"), r.Mass.Likely)
	w := working.Given("w", working.Tell("food.symbol_widen", "how far two fillings by one method differ"), r.widen)
	spread := working.Source{Key: "filling", Title: "spread of filling a cup by one method", Standing: working.Judgment}
	bound := func(is quantity.Mass, published quantity.Mass, index string, name working.Message,
		by func(working.Expr) working.Expr) {
		from := likely
		if published != r.Mass.Likely {
			from = weigh(r.other(published), index, working.Tell("food.other", "by another published weight"),
				published)
		}
		d.Find(working.Finding{Name: name, Symbol: "m_" + index, By: by(from), Is: is, Decimals: 1, Source: spread})
	}
	bound(r.Mass.Low, r.least, "low", working.Tell("food.low", "low end"), func(m working.Expr) working.Expr {
		return m.Times(working.Num(1).Minus(w.Share()))
	})
	bound(r.Mass.High, r.most, "high", working.Tell("food.high", "high end"), func(m working.Expr) working.Expr {
		return m.Times(working.Num(1).Plus(w.Share()))
	})
	return d.Working()
}

// milliliter is a unit that is the same for every reader: the published measures are cups and spoons.
const milliliter working.Unit = "mL of food"

// other is the published weight that gives so much.
func (r FoodWeight) other(m quantity.Mass) FoodMeasure {
	for _, u := range r.Used {
		if scaleVolume(u, r.Volume) == m {
			return u
		}
	}
	return r.chosen
}
