package working

import "slices"

// A Term is an entry of the glossary: a word of the trade or of a formula, and what it is in the words of somebody
// who learns the trade.
type Term struct {
	Key      string  `json:"key"`
	Word     Message `json:"word"`
	Explains Message `json:"explains"`
}

// Explain is the entry of the glossary with the key, for [Expr.Explained] and [Finding.Term]; no message if there
// is none.
func Explain(key string) Message {
	for _, t := range Terms() {
		if t.Key == key {
			return t.Explains
		}
	}
	return Message{}
}

// Terms is the glossary of the library: of the dough, of rising, of the oven, of its numbers, each in alphabetical
// order of the keys.
func Terms() []Term {
	return slices.Concat(termsOfDough(), termsOfRising(), termsOfTheOven(), termsOfNumbers())
}

func termsOfDough() []Term {
	return []Term{
		{"absorption_ratio", Tell("working.word_absorption_ratio", "absorption ratio"),
			Tell("working.term_absorption_ratio",
				"Water in percent of the flour, as the charts of mixers count it: the stiffer the "+
					"dough, the less a mixer takes.")},
		{"bakers_percentage", Tell("working.word_bakers_percentage", "baker's percentage"),
			Tell("working.term_bakers_percentage",
				"The weight of an ingredient for each 100 g of flour. The flour is always 100 %, so "+
					"the sum is more than 100 %.")},
		{"desired_dough_temperature", Tell("working.word_desired_dough_temperature", "desired dough temperature"),
			Tell("working.term_desired_dough_temperature",
				"How warm the dough is to be when it leaves the mixer. Everything after that is timed "+
					"by it.")},
		{"dough_yield", Tell("working.word_dough_yield", "dough yield"),
			Tell("working.term_dough_yield", "The weight of dough from 100 g of flour.")},
		{"friction_factor", Tell("working.word_friction_factor", "friction factor"),
			Tell("working.term_friction_factor",
				"How much mixing warms the dough, put as a difference of temperatures. It is a "+
					"difference: 24 °F of it are 13.3 °C, not −4.4 °C.")},
		{"gluten", Tell("working.word_gluten", "gluten"),
			Tell("working.term_gluten",
				"The net that flour and water make when they are worked, and that holds the gas.")},
		{"heat_capacity", Tell("working.word_heat_capacity", "heat capacity"),
			Tell("working.term_heat_capacity",
				"How much heat it takes to warm something by one degree. Water takes more than twice "+
					"as much as flour.")},
		{"heat_of_wetting", Tell("working.word_heat_of_wetting", "heat of wetting"),
			Tell("working.term_heat_of_wetting", "The warmth that flour gives off when it takes up water.")},
		{"hydration", Tell("working.word_hydration", "hydration"),
			Tell("working.term_hydration",
				"All the water for each 100 g of all the flour, with what is in the levain and in the "+
					"other ingredients.")},
		{"inoculation", Tell("working.word_inoculation", "inoculation"),
			Tell("working.term_inoculation",
				"How much ripe culture is put in, in percent; what it is a percentage of is said "+
					"beside it.")},
		{"largest_remainder", Tell("working.word_largest_remainder", "largest remainder"),
			Tell("working.term_largest_remainder",
				"A way to round several weights so that they still add up: all are rounded down, and "+
					"what is missing goes one step each to those with the largest rest.")},
		{"latent_heat", Tell("working.word_latent_heat", "latent heat"),
			Tell("working.term_latent_heat",
				"The heat that something takes to melt or to boil away without getting warmer. Boiling water away "+
					"takes more than five times what brings it from freezing to boiling.")},
		{"levain", Tell("working.word_levain", "levain"),
			Tell("working.term_levain",
				"A piece of sour dough, flour and water with yeast and bacteria alive in it, that "+
					"makes the dough rise.")},
		{"preferment", Tell("working.word_preferment", "preferment"),
			Tell("working.term_preferment",
				"Any dough that ferments beforehand and goes into the final one: levain, poolish, "+
					"biga, old dough.")},
		{"prefermented_flour", Tell("working.word_prefermented_flour", "prefermented flour"),
			Tell("working.term_prefermented_flour",
				"The share of all the flour that comes in with the levain or another preferment.")},
		{"scaling_weight", Tell("working.word_scaling_weight", "scaling weight"),
			Tell("working.term_scaling_weight", "The weight of dough that is scaled off for one loaf.")},
		{"seed", Tell("working.word_seed", "seed culture"),
			Tell("working.term_seed", "The ripe culture that a levain is built from.")},
		{"specific_volume", Tell("working.word_specific_volume", "specific volume"),
			Tell("working.term_specific_volume",
				"The room that a gram of bread takes up: the lighter the bread, the more.")},
	}
}

func termsOfRising() []Term {
	return []Term{
		{"amplitude", Tell("working.word_amplitude", "amplitude"),
			Tell("working.term_amplitude",
				"How much gas stands behind the dose in this dough: a dough of large amplitude rises "+
					"more for the same growth.")},
		{"bulk", Tell("working.word_bulk", "bulk fermentation"),
			Tell("working.term_bulk", "The first rise, of the whole dough in one piece.")},
		{"curve", Tell("working.word_curve", "rate curve"),
			Tell("working.term_curve", "How fast a culture works at each temperature.")},
		{"dose", Tell("working.word_dose", "dose"),
			Tell("working.term_dose",
				"How much fermentation a dough has had: the rate at its temperature times the hours, "+
					"added up over its whole way.")},
		{"pace", Tell("working.word_pace", "pace"),
			Tell("working.term_pace",
				"How fast this culture is beside the one of the curve: at 1.1 it needs a tenth less "+
					"time.")},
		{"probability", Tell("working.word_probability", "range and probability"),
			Tell("working.term_probability",
				"A range with 80 % is kept in eight cases of ten. A dough is alive, so its time is "+
					"never one number.")},
		{"rate", Tell("working.word_rate", "rate"),
			Tell("working.term_rate", "How much the culture grows in an hour: at 0.35 in an hour it doubles in two.")},
		{"retard", Tell("working.word_retard", "retard"),
			Tell("working.term_retard",
				"Rising slowly in the cold, so that the bread can be baked later and tastes of more.")},
		{"rise", Tell("working.word_rise", "rise"),
			Tell("working.term_rise",
				"How much larger the dough has become, in percent of what it was: doubled is 100 %.")},
		{"slack", Tell("working.word_slack", "slack"),
			Tell("working.term_slack", "How much later a step may begin without anything after it being late.")},
		{"spread", Tell("working.word_spread", "spread"),
			Tell("working.term_spread",
				"How far something usually lies from its likely value: in about two cases of three no farther "+
					"than one spread.")},
	}
}

func termsOfTheOven() []Term {
	return []Term{
		{"altitude", Tell("working.word_altitude", "altitude"),
			Tell("working.term_altitude", "How high a place lies. The air is thinner there, so water boils at a lower "+
				"temperature and the dough rises faster.")},
		{"bake_loss", Tell("working.word_bake_loss", "bake loss"),
			Tell("working.term_bake_loss",
				"The water that leaves in the oven, in percent of the weight that went in.")},
		{"biot", Tell("working.word_biot", "Biot number"),
			Tell("working.term_biot",
				"How hard it is for heat to get through the loaf beside getting into it: above 0.1 "+
					"the outside is much hotter than the middle.")},
		{"boiling_point", Tell("working.word_boiling_point", "boiling point"),
			Tell("working.term_boiling_point",
				"The temperature at which water boils here. The middle of a loaf never gets much "+
					"hotter.")},
		{"carry_over", Tell("working.word_carry_over", "carry-over"),
			Tell("working.term_carry_over", "What the core still gains out of the oven, from the heat of the crust.")},
		{"core", Tell("working.word_core", "core"),
			Tell("working.term_core",
				"The middle of the loaf, where it is coldest in the oven and warmest on the rack.")},
		{"diffusivity", Tell("working.word_diffusivity", "thermal diffusivity"),
			Tell("working.term_diffusivity", "How quickly a change of temperature travels through the crumb.")},
		{"doneness", Tell("working.word_doneness", "doneness"),
			Tell("working.term_doneness",
				"Whether the bread is baked: the core is hot enough, and enough water has left or it "+
					"was hot for long enough.")},
		{"eigenvalue", Tell("working.word_eigenvalue", "eigenvalue"),
			Tell("working.term_eigenvalue",
				"A number from the form of the body and its Biot number that says how fast it follows "+
					"the oven or the room.")},
		{"lead", Tell("working.word_lead", "lead"),
			Tell("working.term_lead", "How much the middle of the loaf lags at first: what is left of the difference "+
				"is so many times what it would be if it shrank evenly from the start.")},
		{"time_constant", Tell("working.word_time_constant", "time constant"),
			Tell("working.term_time_constant", "The time in which the difference of temperature shrinks to 37 %.")},
	}
}
