package cli

import (
	"example.org/maslin/dough/mixing"
	"github.com/spf13/cobra"
)

type stickingFlags struct {
	mixerFlags
	s mixing.Sticking
}

func newSticking(s System) *cobra.Command {
	cmd := &cobra.Command{
		Use:   "sticking [FILE]",
		Short: "The dough does not clear the bowl: is that expected, and what first",
		Long: `sticking says whether a dough is expected to let go of the bowl after so many minutes of kneading,
and what to do when it does not: scrape and rest first, then flour by the teaspoon with what that
does to water, salt and levain, at most so much, and when to stop and fold. With a bake file it
takes dough and mixer from there; flags go before what the file says.`,
		Example: `  maslin sticking examples/bakes/hall-kitchen.toml --kneaded 9min
  maslin sticking --mixer hand --dough 900g --flour 520g --water 360g --kneaded 12min --rested`,
	}
	f := stickingFlags{mixerFlags: mixerFlags{in: ask(cmd)}}
	f.mixerFlags.flags(cmd)
	in := f.in
	for _, field := range []string{"Mixer", "Bowl", "Dough", "Flour", "Water", "Kind"} {
		in.paths["Mix."+field] = in.paths[field]
	}
	in.value(&f.s.Kneaded, "kneaded", "TIME", "how long it has been kneaded", "Kneaded")
	cmd.Flags().BoolVar(&f.s.Rested, "rested", false, "it was scraped down, has rested, and was kneaded again")
	cmd.Flags().BoolVar(&f.s.FatIn, "fat-in", false, "the fat of a rich dough is in")
	in.value(&f.s.Added, "added", "MASS", "flour that was already added against sticking", "Added")
	in.value(&f.s.Dough, "temperature", "TEMPERATURE", "of the dough now", "Dough.Temperature")
	f.register(cmd)
	cmd.RunE = func(_ *cobra.Command, args []string) error {
		if err := f.take(args); err != nil {
			return err
		}
		f.s.Mix = f.c
		c, err := f.s.Advise()
		in.paths["Dough"] = "temperature"
		if wrong := in.complain(err); wrong != nil {
			return wrong
		}
		return s.tell(f.output, c, true)
	}
	return cmd
}
