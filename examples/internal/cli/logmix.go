package cli

import (
	"time"

	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule/bench"
	"github.com/spf13/cobra"
)

func newLogMix(s System) *cobra.Command {
	var f noteFlags
	m := bench.DoughMixed{}
	cmd := &cobra.Command{
		Use:   "mix [FILE]",
		Short: "A dough that left the mixer: its temperature, and what made it so",
		Long: `mix logs a dough as it leaves the mixer. Only --dough is needed. With a bake FILE what the dough
is made of comes from the file. The temperatures of flour, water and levain with the minutes
teach the mixer; levain or yeast, hydration and room, together with when the dough was ready,
teach the culture.`,
		Example: `  maslin log mix hall-kitchen.toml --dough 25.5C --flour 21C --water 17C --levain 22C --slow 3m --fast 8m
  maslin log mix --bread rolls --dough 25C --room 22C --yeast "0.8 % instant" --hydration 60% --rise 100%`,
		Args: cobra.MaximumNArgs(1),
	}
	f.register(cmd)
	in := f.in
	in.value(&m.Dough, "dough", "TEMPERATURE", "of the dough when the mixer stopped", "mix.dough", "mix")
	in.value(&m.Flour, "flour", "TEMPERATURE", "of the flour", "mix.flour")
	in.value(&m.Water, "water", "TEMPERATURE", "of the water poured", "mix.water")
	in.value(&m.Levain, "levain", "TEMPERATURE", "of the levain", "mix.levain")
	in.value(&m.Room, "room", "TEMPERATURE", "of the room where the dough stands", "mix.room")
	in.value(&m.Bowl, "bowl", "TEMPERATURE", "of the bowl before mixing (as the room)", "mix.bowl")
	in.value(&m.Slow, "slow", "TIME", "mixed at slow speed", "mix.slow")
	in.value(&m.Fast, "fast", "TIME", "mixed at fast speed", "mix.fast")
	in.word(&m.Mixer, wordsOf(quantity.Values[mixing.MixerKind]()...), "mixer", "how it was mixed", "mix.mixer")
	in.value(&m.FlourWeight, "flour-weight", "MASS", "flour weighed for one batch", "mix.flour_weight")
	in.value(&m.WaterWeight, "water-weight", "MASS", "water poured for one batch", "mix.water_weight")
	in.value(&m.LevainWeight, "levain-weight", "MASS", "levain for one batch", "mix.levain_weight")
	in.value(&m.Weight, "weight", "MASS", "of the whole dough in its tub", "mix.weight")
	in.value(&m.Inoculation, "inoculation", "PERCENT", "flour in the levain, of all flour", "mix.inoculation")
	in.each(func(text string) error {
		y, _, err := yeastOf(text)
		m.Yeast, m.YeastKind = y.Amount, y.Kind
		return err
	}, "yeast", "YEAST", `instead of a levain or with it, such as "0.6 % instant"`, "mix.yeast", "mix.yeast_kind")
	in.value(&m.Salt, "salt", "PERCENT", "of the flour", "mix.salt")
	in.value(&m.Sugar, "sugar", "PERCENT", "of the flour", "mix.sugar")
	in.value(&m.Hydration, "hydration", "PERCENT", "water, of the flour", "mix.hydration")
	in.value(&m.WholeGrain, "whole-grain", "PERCENT", "whole grain, of the flour", "mix.whole_grain")
	in.value(&m.Altitude, "altitude", "LENGTH", "of the kitchen", "mix.altitude")
	in.value(&m.Rise, "rise", "PERCENT", "that the dough is to have when it is shaped", "mix.rise")
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		var zone *time.Location
		if !in.given("dough") {
			in.fault("dough", "", quantity.Tell("cli.want_temperature_dough_when_mixer_stopped", `the temperature of the dough when the mixer stopped, such as "25.5 °C"`), quantity.ErrRequired)
		}
		if len(args) == 1 && len(in.faults) == 0 {
			l, err := load(s, args[0], "")
			if err != nil {
				return err
			}
			if l.clock.Now, err = f.clock(s, l.clock.Zone); err != nil {
				return err
			}
			day, err := l.bake.Plan(cmd.Context(), l.clock)
			if err != nil {
				return complain(args[0], located(l.file, err))
			}
			zone = l.clock.Zone
			if f.bread == "" {
				f.bread = l.bake.Name
			}
			m = m.AsPlanned(day)
		}
		o, err := f.observation(s, bench.SawMixed, zone)
		if err != nil {
			return err
		}
		o.Mix = &m
		return f.write(s, o)
	}
	return cmd
}
