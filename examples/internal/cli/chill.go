package cli

import (
	"slices"

	"example.org/maslin/dough/food"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/textpage"
	"github.com/spf13/cobra"
)

func newChill(s System) *cobra.Command {
	kinds := wordsOf(food.Cooked, food.MixedCold, food.InfusedOil, food.WetGrain)
	cmd := &cobra.Command{
		Use:   "chill FOOD",
		Short: "By when a filling, a soaker or garlic oil must be cold, and is thrown away",
		Long: `chill says by when food beside the dough must be cold, as food authorities ask, and when it is thrown
away. FOOD is cooked (a custard, cream, porridge, cooked filling or soaker), mixed-cold (a filling
that was not cooked), infused-oil (oil with garlic or herbs) or wet-grain (a soaker of raw grain).`,
		Example: `  maslin chill cooked --made 14:00
  maslin chill infused-oil --made '2026-11-30 18:00'`,
		ValidArgs: kinds,
	}
	var o output
	var in food.ChilledFood
	a := ask(cmd)
	a.each(func(text string) (err error) { in.Made, err = timeIn(text, s.Now()); return err }, "made", "TIME", "when it left the heat, or was mixed (no clock, durations alone)", "Made")
	o.register(cmd)
	cmd.Args = cobra.ArbitraryArgs
	cmd.RunE = func(_ *cobra.Command, args []string) error {
		if err := o.check(); err != nil {
			return err
		}
		if len(args) != 1 {
			return badInput("maslin chill: required: want one of %s\nfor example: maslin chill cooked --made 14:00", either(kinds))
		}
		i := slices.IndexFunc(kinds, func(w string) bool { return folded(w) == folded(args[0]) })
		if i < 0 {
			return badInput("maslin chill: got %s, want %s", quantity.Excerpt(textpage.Printable(args[0])), either(kinds))
		}
		in.Kind = food.ChilledKind(i)
		r, err := in.Limits()
		if wrong := a.complain(err); wrong != nil {
			return wrong
		}
		return s.tell(o, r, true)
	}
	return cmd
}
