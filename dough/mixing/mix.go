package mixing

import (
	"example.org/maslin/dough/quantity"
)

// Mix is a dough in a mixer: what goes in, and what it is mixed in. Three questions are asked of it: does it fit
// ([Mix.Fit]), how is it kneaded ([Mix.Kneading]), and, while it is kneaded, why does it not clear the bowl
// ([Sticking.Advise]).
type Mix struct {
	Mixer MixerKind       `json:"mixer"`
	Bowl  quantity.Volume `json:"bowl,omitzero"`
	Kind  DoughKind       `json:"kind"`
	// Dough is all of the dough, inclusions too.
	Dough quantity.Mass `json:"dough"`
	// Flour and Water are those of the whole dough, the levain's included; milk, eggs and fat do not count as water
	// in the charts of mixers.
	Flour quantity.Mass `json:"flour"`
	Water quantity.Mass `json:"water"`
	// Salt, Fat, Sugar and Prefermented flour, where there is any: they decide on kneading in two steps and tell what
	// more flour does to the dough.
	Salt         quantity.Mass `json:"salt,omitzero"`
	Fat          quantity.Mass `json:"fat,omitzero"`
	Sugar        quantity.Mass `json:"sugar,omitzero"`
	Prefermented quantity.Mass `json:"prefermented,omitzero"`
	// HighGluten is a flour of about 13.5 % protein or more.
	HighGluten bool `json:"high_gluten,omitzero"`
	// WaterTemperature, when given, is the water as poured: below 20 °C, and with ice, the dough is stiffer and the
	// mixer takes less.
	WaterTemperature quantity.Temperature `json:"water_temperature,omitzero"`
	// Rated is what the machine's own manual gives for this dough; it replaces charts and rules.
	Rated quantity.Mass `json:"rated,omitzero"`
}

// check notes what is wrong with the dough; the bowl is needed only by some questions.
func (in Mix) check(p *quantity.Problems) {
	mixerKinds.Check(p, "Mixer", in.Mixer)
	if !in.Bowl.IsZero() {
		quantity.Check(p, "Bowl", in.Bowl, quantity.Liters(0.5), quantity.Liters(400))
	}
	doughKinds.CheckIfGiven(p, "Kind", in.Kind)
	quantity.Check(p, "Dough", in.Dough, quantity.Grams(1), mostMass)
	flour := false
	if in.Flour.IsZero() {
		p.Required("Flour", quantity.Tell("mixing.want_all_the_flour", "all the flour in the dough, the levain's included"))
	} else {
		flour = quantity.Check(p, "Flour", in.Flour, quantity.Grams(1), mostMass)
	}
	water := quantity.Check(p, "Water", in.Water, quantity.Mass{}, mostMass)
	if flour && water {
		ar := in.Water.PercentOf(in.Flour)
		if ar.Compare(quantity.NewPercent(20)) < 0 || ar.Compare(quantity.NewPercent(150)) > 0 {
			p.Add("Water", quantity.Tell("mixing.got_flour", "%s of the flour", ar.Text(1)),
				quantity.Tell("mixing.want_20_percent_to_150_percent", "20 %% to 150 %% of the flour"), quantity.ErrOutOfRange)
		}
		if in.Dough.IsValid() && in.Flour.Add(in.Water).Compare(in.Dough) > 0 {
			p.Add("Dough", in.Dough, quantity.Tell("mixing.want_at_least_flour_and_water",
				"at least flour and water together, %v", in.Flour.Add(in.Water)),
				quantity.ErrInconsistent)
		}
	}
	quantity.Check(p, "Salt", in.Salt, quantity.Mass{}, mostMass)
	quantity.Check(p, "Fat", in.Fat, quantity.Mass{}, mostMass)
	quantity.Check(p, "Sugar", in.Sugar, quantity.Mass{}, mostMass)
	if quantity.Check(p, "Prefermented", in.Prefermented, quantity.Mass{}, mostMass) && flour &&
		in.Prefermented.Compare(in.Flour) > 0 {
		p.Add("Prefermented", in.Prefermented, quantity.Tell("mixing.want_at_most_flour", "at most the flour, %v", in.Flour),
			quantity.ErrInconsistent)
	}
	if !in.WaterTemperature.IsZero() {
		quantity.Check(p, "WaterTemperature", in.WaterTemperature, quantity.Celsius(-270), hottestThing)
	}
	quantity.Check(p, "Rated", in.Rated, quantity.Mass{}, mostMass)
}

// hydration is water over flour.
func (in Mix) hydration() quantity.Percent { return in.Water.PercentOf(in.Flour) }

// household reports a planetary mixer of a kitchen: a bowl of at most 8 L, or of unknown size.
func (in Mix) household() bool { return in.Mixer == Planetary && in.Bowl.Liters() <= 8 }

// rich reports a dough whose fat or sugar keeps the gluten from forming, so that it is kneaded in two steps: sugar
// above 20 % or fat of 10 % of the flour or more; and a brioche or braid whose fat was not given. Source: IREKS,
// kneading of sweet yeast doughs.
func (in Mix) rich() bool {
	fat, sugar := in.Fat.PercentOf(in.Flour), in.Sugar.PercentOf(in.Flour)
	return fat.Compare(quantity.NewPercent(10)) >= 0 || sugar.Compare(quantity.NewPercent(20)) > 0 ||
		in.Kind == EnrichedDough && in.Fat.IsZero() && in.Sugar.IsZero()
}
