package cli

import (
	"example.org/maslin/bake"
	"example.org/maslin/dough/quantity"
)

// goalFlags say what done means: the bread, the place, and the baker's own wish.
type goalFlags struct {
	goal bake.Goal
}

func (g *goalFlags) register(in *asked, wish bool) {
	styleFlag(in, &g.goal.Style)
	in.value(&g.goal.Place.Altitude, "altitude", "HEIGHT", "of the kitchen above the sea (0 m)", "Place.Altitude", "Altitude")
	in.value(&g.goal.Place.Station, "barometer", "PRESSURE", "what a barometer in the kitchen reads, uncorrected, instead of the altitude", "Place.Station", "Station")
	in.value(&g.goal.Place.SeaLevel, "weather", "PRESSURE", "what the weather service gives, reduced to sea level (with --altitude)", "Place.SeaLevel", "SeaLevel", "Place")
	if !wish {
		return
	}
	in.word(&g.goal.Rule, wordsOf(quantity.Values[bake.AltitudeRule]()...), "rule", "how the target moves with the altitude", "Rule")
	in.value(&g.goal.Wanted, "target", "TEMPERATURE", "your own core temperature for done (the style's)", "Wanted")
}

func styleFlag(in *asked, s *bake.Style) {
	in.word(s, wordsOf(quantity.Values[bake.Style]()...), "style", "of bread (lean hearth)", "Style")
}

func shapeFlag(in *asked, s *bake.Shape) {
	in.word(s, wordsOf(quantity.Values[bake.Shape]()...), "shape", "of the loaf (the style's usual one)", "Shape")
}

// lasting adds a flag for a time.
func lasting(in *asked, target *quantity.Elapsed, name, usage string, fields ...string) {
	in.each(func(text string) error {
		d, err := quantity.ParseDuration(text)
		if err == nil {
			*target = quantity.Elapsed(d)
		}
		return err
	}, name, "TIME", usage, fields...)
}
