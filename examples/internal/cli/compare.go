package cli

import (
	"strings"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/ferment"
	"github.com/spf13/cobra"
)

func newCompare(s System) *cobra.Command {
	var f compareFlags
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
	text(cmd.Flags(), &f.machine, "machine", "KIND", "the same dough kneaded by machine: planetary, spiral or processor")
	cmd.Flags().StringVar(&f.now, "now", "", "plan as if it were this `TIME` in the bake's zone, such as \"2026-11-25 20:00\"")
	cmd.AddCommand(newCompareCurves(s), newCompareWater(s))
	return cmd
}

// curveNamed finds a rate curve by its key.
func curveNamed(command, where, key string) (ferment.Curve, error) {
	if c, ok := ferment.CurveNamed(key); ok {
		return c, nil
	}
	return ferment.Curve{}, badInput("maslin %s: %s: no curve %s, want one of: %s", command, where, quantity.Excerpt(key), strings.Join(curveKeys(), ", "))
}

func curveKeys() []string {
	var out []string
	for _, c := range ferment.Curves() {
		out = append(out, c.About().Key)
	}
	return out
}

func newCompareCurves(s System) *cobra.Command {
	var o output
	temperatures := celsius(4, 8, 12, 16, 20, 24, 28, 32, 36)
	cmd := &cobra.Command{
		Use:     "curves [CURVE CURVE]",
		Short:   "Rate curves side by side: how fast the culture doubles at each temperature",
		Example: "  maslin compare curves\n  maslin compare curves ganzle-yeast-held trade-q10 --temperatures 5C,15C,25C",
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) != 0 && len(args) != 2 {
				return badInput("maslin compare curves: got %d curves, want two or none; there are: %s", len(args), strings.Join(curveKeys(), ", "))
			}
			return nil
		},
		ValidArgsFunction: func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
			return curveKeys(), cobra.ShellCompDirectiveNoFileComp
		},
	}
	o.register(cmd)
	listed(cmd, &temperatures, quantity.ParseTemperature, "temperatures", "LIST", "at these (4C,8C,12C,16C,20C,24C,28C,32C,36C)")
	cmd.RunE = func(_ *cobra.Command, args []string) error {
		if len(args) == 0 {
			args = []string{ferment.GanzleYeastHeld().About().Key, ferment.TradeQ10().About().Key}
		}
		return runCompareCurves(s, o, args, temperatures)
	}
	return cmd
}

func runCompareCurves(s System, o output, keys []string, temperatures []quantity.Temperature) error {
	if err := o.check(); err != nil {
		return err
	}
	t := ferment.CurveTable{Temperatures: temperatures}
	for _, k := range keys {
		c, err := curveNamed("compare curves", "CURVE", k)
		if err != nil {
			return err
		}
		t.Curves = append(t.Curves, c)
	}
	rates, err := t.Rates()
	if err != nil {
		return complaints("compare curves", err, map[string]string{"Temperatures": "--temperatures"})
	}
	return s.tell(o, rates, true)
}
