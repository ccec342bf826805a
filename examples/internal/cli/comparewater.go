package cli

import (
	"context"

	"example.org/maslin/internal/textpage"
	"github.com/spf13/cobra"
)

func newCompareWater(s System) *cobra.Command {
	var o output
	var now string
	cmd := &cobra.Command{
		Use:   "water FILE",
		Short: "The factor method and the heat balance for the water of one bake",
		Long: `water works out the water of one batch twice: by the trade's factor method, in which flour, room
and levain count as much as the water, and by a heat balance, in which each counts by its
mass and specific heat. Mixing warms the dough by the same in both.`,
		Example:           "  maslin compare water examples/bakes/hall-kitchen.toml",
		Args:              oneFile,
		ValidArgsFunction: bakeFiles,
		RunE: func(cmd *cobra.Command, args []string) error {
			return runCompareWater(cmd.Context(), s, o, args[0], now)
		},
	}
	o.register(cmd)
	nowFlag(cmd, &now)
	return cmd
}

func runCompareWater(ctx context.Context, s System, o output, name, now string) error {
	if err := o.check(); err != nil {
		return err
	}
	l, err := load(s, name, now)
	if err != nil {
		return err
	}
	day, err := l.bake.Plan(ctx, l.clock)
	if err != nil {
		return complain(name, located(l.file, err))
	}
	c, ok := day.Water.Comparison()
	if !ok {
		return badInput("maslin compare water: %s: the two methods cannot be compared here", textpage.Printable(name))
	}
	return s.tell(o, c, true)
}
