package cli

import (
	"example.org/maslin/dough"
	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule/bakeday"
	"github.com/spf13/cobra"
)

type mixerFlags struct {
	output
	in *asked
	c  mixing.Mix
}

func newMixer(s System) *cobra.Command {
	cmd := &cobra.Command{
		Use:   "mixer [FILE]",
		Short: "Does the dough fit the mixer, how to split it, how long to knead",
		Long: `mixer says whether a dough fits a mixer by its bowl and by how stiff the dough is, how many
batches to make of it when it does not, at which speeds and about how long to knead, and
what to take care of. With a bake file it takes dough and mixer from there; flags go before
what the file says. The manual of your own machine is always right: give its figure with
--rated.

Exit status: 0 answered; 1 nothing is published for this kind of mixer; 2 bad input.`,
		Example: `  maslin mixer examples/bakes/hall-kitchen.toml
  maslin mixer --mixer planetary --bowl 7L --dough 4kg --flour 2.3kg --water 1.6kg`,
	}
	f := mixerFlags{in: ask(cmd)}
	f.flags(cmd)
	f.register(cmd)
	cmd.RunE = func(_ *cobra.Command, args []string) error {
		if err := f.take(args); err != nil {
			return err
		}
		r, err := f.c.Fit()
		if wrong := f.in.complain(err); wrong != nil {
			return wrong
		}
		return s.tell(f.output, r, r.Fullness != mixing.Unknown)
	}
	return cmd
}

// flags are those of a dough in a mixer; a command of them takes a bake file too.
func (f *mixerFlags) flags(cmd *cobra.Command) {
	in := f.in
	in.word(&f.c.Mixer, wordsOf(quantity.Values[mixing.MixerKind]()...), "mixer", "how you mix", "Mixer")
	in.value(&f.c.Bowl, "bowl", "VOLUME", "of the mixer's bowl", "Bowl")
	in.value(&f.c.Dough, "dough", "MASS", "all the dough", "Dough")
	in.value(&f.c.Flour, "flour", "MASS", "all flour in it, the levain's included", "Flour")
	in.value(&f.c.Water, "water", "MASS", "all water in it, the levain's included", "Water")
	in.word(&f.c.Kind, wordsOf(quantity.Values[mixing.DoughKind]()...), "kind", "of dough", "Kind")
	cmd.Flags().BoolVar(&f.c.HighGluten, "high-gluten", false, "a strong flour, of about 13.5 % protein or more")
	in.value(&f.c.WaterTemperature, "water-temperature", "TEMPERATURE", "of the water poured: cold water makes a stiffer dough", "WaterTemperature")
	in.value(&f.c.Rated, "rated", "MASS", "what the machine's manual gives for this dough", "Rated")
	cmd.Args = func(_ *cobra.Command, args []string) error {
		if len(args) > 1 {
			return badInput("%s: got %d files, want one, or flags only", cmd.CommandPath(), len(args))
		}
		return nil
	}
}

// take reads the bake file, if there is one.
func (f *mixerFlags) take(args []string) error {
	if err := f.check(); err != nil {
		return err
	}
	if len(args) == 0 {
		return nil
	}
	file, err := readFormula(args[0])
	if err != nil {
		return err
	}
	batch, err := file.bake.Batch(nil)
	if err != nil {
		return file.complain(err)
	}
	f.fill(batch, file.bake.Mixer().Kind, file.bake.Mixer().Bowl)
	return nil
}

// fill takes from a bake what no flag says.
func (f *mixerFlags) fill(b dough.Batch, kind mixing.MixerKind, bowl quantity.Volume) {
	in, from := f.in, bakeday.Mix(b, kind, bowl)
	if !in.given("mixer") {
		f.c.Mixer = from.Mixer
	}
	if !in.given("bowl") {
		f.c.Bowl = from.Bowl
	}
	if !in.given("kind") {
		f.c.Kind = from.Kind
	}
	if !in.given("dough") {
		f.c.Dough = from.Dough
	}
	if !in.given("flour") {
		f.c.Flour = from.Flour
	}
	if !in.given("water") {
		f.c.Water = from.Water
	}
	f.c.Salt, f.c.Fat, f.c.Sugar, f.c.Prefermented = from.Salt, from.Fat, from.Sugar, from.Prefermented
}
