package cli

import (
	"slices"

	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"github.com/spf13/cobra"
)

func newCompare(s System) *cobra.Command {
	f := &compareFlags{}
	cmd := &cobra.Command{
		Use:   "compare FILE [OTHER]",
		Short: "Side by side: a bake by hand and by machine, two bakes, two rate curves, two water methods",
		Long: `compare plans the same bake twice and puts the plans side by side: kneaded by machine and by
hand (--hand), or by hand and by machine (--machine), or a second bake file. Kneading by
machine warms the dough; compare shows what that changes in water, bulk and timetable.`,
		Example: "  maslin compare examples/bakes/hall-kitchen.toml --hand\n  maslin compare examples/bakes/hall-kitchen.toml examples/bakes/same-day-rolls.toml\n" +
			"  maslin compare curves ganzle-yeast-held trade-q10\n  maslin compare water examples/bakes/hall-kitchen.toml",
		Args: func(cmd *cobra.Command, args []string) error {
			if len(args) > 2 {
				return badInput("maslin compare: got %d files, want one or two", len(args))
			}
			if len(args) == 0 {
				return badInput("maslin compare: no bake file given; for example: maslin compare examples/bakes/hall-kitchen.toml --hand")
			}
			return nil
		},
		ValidArgsFunction: func(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
			return []string{"toml"}, cobra.ShellCompDirectiveFilterFileExt
		},
		RunE: func(cmd *cobra.Command, args []string) error { return runCompare(cmd.Context(), s, args, f) },
	}
	f.register(cmd)
	cmd.Flags().BoolVar(&f.hand, "hand", false, "the same dough kneaded by hand")
	f.in = ask(cmd)
	kinds := wordsOf(quantity.Values[mixing.MixerKind]()...)
	f.in.word(&f.machine, slices.DeleteFunc(kinds, func(w string) bool { return w == mixing.Hand.String() }), "machine",
		"the same dough kneaded by machine", "Mixing.Mixer")
	nowFlag(cmd, &f.now)
	cmd.AddCommand(newCompareCurves(s), newCompareWater(s))
	return cmd
}
