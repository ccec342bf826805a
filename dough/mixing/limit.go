package mixing

import (
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// A limit is the largest dough of a mixer, between a strict and a generous figure.
type limit struct {
	basis  LimitBasis
	raw    [2]quantity.Mass // before reductions
	factor [2]float64       // reductions
	notes  []working.Message
	charts [2]bowl
	// of a household bowl: kilograms of flour per liter and dough over flour
	perLiter [2]float64
	over     float64
	source   working.Source
}

func (l limit) low() quantity.Mass  { return grams(l.raw[0].Grams() * l.factor[0]) }
func (l limit) high() quantity.Mass { return grams(l.raw[1].Grams() * l.factor[1]) }

// Smallest and largest bowls that the charts speak of: 8 qt is 7.57 L, and 60 L, with a little leave. Judgment.
const (
	smallestCharted = 7.0  // L
	largestCharted  = 65.0 // L
)

// limit finds the range of the largest dough and what lowers it.
func (in Mix) limit() limit {
	l := limit{factor: [2]float64{1, 1}}
	switch {
	case !in.Rated.IsZero():
		l.basis, l.raw = MachineManual, [2]quantity.Mass{in.Rated, in.Rated}
		l.source = working.Source{Key: "rated", Title: "capacity given by the user, from the manual of the machine"}
	case in.Mixer == Hand:
		l.basis, l.raw = TradePractice, [2]quantity.Mass{quantity.Kilograms(2), quantity.Kilograms(4)}
		l.source = sources.Practice("2 to 4 kg at a time by hand")
		l.note(working.Tell("mixing.note_by_hand",
			"by hand, %v to %v at a time is what most people manage: common practice, no source", l.raw[0], l.raw[1]))
		return l
	case in.Mixer == Processor:
		l.note(working.Tell("mixing.note_processor",
			"nothing is published for processors: use the capacity in the manual"))
		return l
	case in.Mixer == Planetary && in.Bowl.Liters() < smallestCharted:
		in.householdLimit(&l)
	default:
		in.chartLimit(&l)
	}
	if in.HighGluten {
		l.factor[0] *= glutenReduction
		l.factor[1] *= glutenReduction
		l.note(working.Tell("mixing.note_high_gluten", "high-gluten flour: a tenth less"))
	}
	if in.WaterTemperature.IsValid() && in.WaterTemperature.Compare(quantity.Celsius(20)) < 0 {
		l.factor[0] *= coldReductionLow
		l.factor[1] *= coldReductionHigh
		l.note(working.Tell("mixing.note_cold_water", "water below %v makes a stiffer dough: 10 to 20 %% less",
			quantity.Celsius(20)))
	}
	return l
}

func (l *limit) note(m working.Message) { l.notes = append(l.notes, m) }

func (in Mix) chartLimit(l *limit) {
	ar := in.hydration().Points()
	l.basis, l.source = CapacityCharts, sources.PlanetaryManuals
	kind := in.Kind
	if in.kneadsAsBread() {
		kind = WheatDough
	}
	l.raw[0], l.raw[1], l.charts[0], l.charts[1] = capacityOf(in.Bowl, kind, ar)
	if in.Mixer != Planetary {
		l.basis = OtherCharts
		l.note(working.Tell(
			"mixing.note_stand_in", "planetary charts stand in for a %v mixer, which usually takes more: the manual "+
				"decides", in.Mixer))
	}
	if v := in.Bowl.Liters(); v < smallestCharted || v > largestCharted {
		l.basis = OtherCharts
		l.note(working.Tell(
			"mixing.note_outside_charts", "the charts are of bowls from %v to %v; this bowl lies outside",
			quantity.Liters(7.6), quantity.Liters(60)))
	}
	switch {
	case in.Kind == EnrichedDough && kind != EnrichedDough:
		l.note(working.Tell("mixing.note_bread_chart",
			"with little fat and sugar this is as heavy to knead as bread: the charts' rows for bread are used, not that for "+
				"doughnut dough"))
	case in.Kind == EnrichedDough:
		l.note(working.Tell("mixing.note_doughnut_chart",
			"fat, eggs and sugar count: the charts' row for doughnut dough is used, not that for bread"))
	case ar < 40:
		l.note(working.Tell("mixing.note_below_charts",
			"below 40 %% the charts say only that capacity falls further; it is lowered in proportion here"))
	case ar > 70:
		l.note(working.Tell("mixing.note_above_charts",
			"the charts end at 70 %%; a wetter dough is lighter work but splashes and rides up the hook"))
	}
}

// doughnutFrom is the fat and sugar, of the flour, from which on an enriched dough is nearer to the charts' doughnut
// dough, with 15 % of each, than to their heavy bread, with 5 % of each: the middle. Source of the two: the manuals.
const doughnutFrom = 20

// kneadsAsBread reports whether fat and sugar of an enriched dough are known to be few: a plait, milk rolls.
func (in Mix) kneadsAsBread() bool {
	rich := in.Fat.Add(in.Sugar)
	return in.Kind == EnrichedDough && rich.Sign() > 0 &&
		rich.PercentOf(in.Flour).Compare(quantity.NewPercent(doughnutFrom)) < 0
}

// Flour for a liter of a household bowl, kg. Judgment, but for 1.35 kg of flour for a stiff dough in a bowl of about
// 5 L (a maker's booklet; the size of the bowl from memory) and whole grain at six to seven tenths (2.5 cups for 4 in a
// processor's booklet).
const (
	householdFirm    = 0.25 // water up to 60 % of the flour, and above 70 %: it climbs the hook
	householdSoft    = 0.30 // water of 61 to 70 %
	householdMaker   = 1.35 / 5
	householdLeast   = 0.08
	wholeGrainStrict = 0.6
	wholeGrainEasy   = 0.7
)

func (in Mix) householdLimit(l *limit) {
	ar := in.hydration().Points()
	l.basis, l.source = HouseholdBowl, sources.HouseholdRule
	l.perLiter = [2]float64{householdFirm, householdMaker}
	if ar > 60 && ar <= 70 {
		l.perLiter = [2]float64{householdSoft, householdSoft}
	}
	switch in.Kind {
	case WholeGrainDough, RyeDough, GlutenFreeDough:
		l.perLiter[0] *= wholeGrainStrict
		l.perLiter[1] *= wholeGrainEasy
	}
	l.over = in.Dough.Grams() / in.Flour.Grams()
	for i, k := range l.perLiter {
		l.raw[i] = quantity.Kilograms(k * in.Bowl.Liters() * l.over)
	}
	if l.perLiter[0] == l.perLiter[1] {
		l.note(working.Tell("mixing.note_household_one",
			"a household bowl takes about %.2f kg of flour for a liter in such a dough; the booklet of the machine is "+
				"always right", l.perLiter[0]))
	} else {
		l.note(working.Tell("mixing.note_household_rule",
			"a household bowl takes about %.2f to %.2f kg of flour for a liter in such a dough; the booklet of the "+
				"machine is always right", l.perLiter[0], l.perLiter[1]))
	}
	l.note(working.Tell(
		"mixing.note_labors", "if the machine labors or smells hot: stop, take out half, knead each half by itself"))
}

// least is the smallest dough that the hook works well.
func (l limit) least() quantity.Mass {
	switch l.basis {
	case TradePractice:
		return quantity.Mass{}
	case HouseholdBowl:
		return grams(l.raw[0].Grams() * householdLeast / l.perLiter[0])
	}
	return grams(l.low().Grams() * leastShare)
}

// derive tells the limits, and returns their symbols.
func (l limit) derive(d *working.Derivation, in Mix) (low, high working.Expr) {
	names := [2]working.Message{
		working.Tell("mixing.most_strict", "largest dough by the strictest figure"),
		working.Tell("mixing.most_generous", "largest dough by the most generous figure"),
	}
	symbols := [2]string{"m_low", "m_high"}
	perLiterName := [2]working.Message{
		working.Tell("mixing.symbol_charts_low", "dough for a liter of bowl, the lower of the two charts"),
		working.Tell("mixing.symbol_charts_high", "dough for a liter of bowl, the higher of the two charts"),
	}
	var out [2]working.Expr
	for i, m := range [2]quantity.Mass{l.low(), l.high()} {
		var by working.Expr
		finding := working.Finding{Name: names[i], Symbol: symbols[i], Is: m, Decimals: 1, Source: l.source}
		if l.basis == HouseholdBowl {
			v := working.Given("V", working.Tell("mixing.symbol_bowl", "bowl"), working.Amount(in.Bowl.Liters(),
				working.Liter, 2))
			k := working.Given(symbols[i]+"_k", working.Tell("mixing.symbol_per_liter", "flour for a liter"),
				working.Amount(1000*l.perLiter[i], "g/L", 1))
			dough := working.Given("m_dough", working.Tell("mixing.symbol_dough", "dough"), in.Dough)
			flour := working.Given("m_flour", working.Tell("mixing.symbol_all_flour", "flour of the whole dough"),
				in.Flour)
			by = v.Times(k).Times(dough.Over(flour))
		} else {
			v := working.Given("V", working.Tell("mixing.symbol_bowl", "bowl"), working.Amount(in.Bowl.Liters(),
				working.Liter, 2))
			finding.Note = working.Tell("mixing.note_limit", "before reductions, by the source")
			by = working.Given(symbols[i]+"_0", working.Tell("mixing.symbol_before", "capacity before reductions"), l.raw[i])
			if in.Bowl.Sign() > 0 {
				by = working.Given(symbols[i]+"_V", perLiterName[i], working.Amount(l.raw[i].Grams()/in.Bowl.Liters(), "g/L", 1)).
					Times(v)
			}
		}
		if l.factor[i] != 1 {
			by = by.Times(working.Given(symbols[i]+"_r", working.Tell("mixing.symbol_reduction",
				"reductions for flour and cold"), working.Amount(l.factor[i], "", 3)))
		}
		if l.charts[i].liters > 0 {
			finding.Note = working.Tell(
				"mixing.note_interpolated", "the charts of bowls of %.1f L and %.1f L, straight between their "+
					"ratios, per liter of bowl",
				l.charts[0].liters, l.charts[1].liters)
		}
		finding.By = by
		out[i] = d.Find(finding)
	}
	return out[0], out[1]
}
