package cli

import (
	"example.org/maslin/bake"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/examples/internal/bakelog"
	"example.org/maslin/schedule/bakeday"
	"github.com/spf13/cobra"
)

func newLogCore(s System) *cobra.Command {
	var f noteFlags
	core := bakelog.Core{}
	cmd := &cobra.Command{
		Use:     "core TEMPERATURE",
		Short:   "A reading of the core in the oven",
		Example: "  maslin log core 94.1C --after 42m --out",
		Args:    oneValue("the core temperature, such as 94.1C"),
	}
	f.register(cmd)
	f.in.value(&core.After, "after", "TIME", "in the oven", "core.after")
	cmd.Flags().BoolVar(&core.Out, "out", false, "the loaf was done and taken out")
	f.in.paths["core.core"] = ""
	cmd.RunE = func(_ *cobra.Command, args []string) error {
		if err := core.Core.UnmarshalText([]byte(args[0])); err != nil {
			return argument("log core", err)
		}
		e, err := f.entry(s, bakelog.KindCore, nil)
		if err != nil {
			return err
		}
		e.Core = &core
		return f.write(s, e, nil)
	}
	return cmd
}

func newLogWeights(s System) *cobra.Command {
	var f noteFlags
	w := bakelog.Weights{}
	cmd := &cobra.Command{
		Use:     "weights",
		Short:   "A loaf weighed as dough and when cool: what the oven takes",
		Example: "  maslin log weights --in 897g --out 781g",
		Args:    flagsOnly,
	}
	f.register(cmd)
	f.in.value(&w.In, "in", "MASS", "of the dough that went in", "weights.in")
	f.in.value(&w.Out, "out", "MASS", "of the bread when cool", "weights.out")
	f.in.word(&w.Style, wordsOf(quantity.Values[bake.Style]()...), "style", "kind of bread (lean hearth)", "weights.style")
	cmd.RunE = func(*cobra.Command, []string) error {
		e, err := f.entry(s, bakelog.KindWeights, nil)
		if err != nil {
			return err
		}
		e.Weights = &w
		return f.write(s, e, func(e bakelog.Entry) ([]string, *bakeday.Range, error) {
			loss := quantity.NewPercent(100 * (1 - w.Out.Grams()/w.In.Grams()))
			return []string{"lost " + percent(loss, 1) + " of the dough"}, nil, nil
		})
	}
	return cmd
}
