package cli

import (
	"example.org/maslin/bake"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/ferment"
	"example.org/maslin/schedule/bench"
	"github.com/spf13/cobra"
)

// valueInto reads the one argument of a command into the part of an observation.
func (f *noteFlags) valueInto(s System, command, text string, to interface{ UnmarshalText([]byte) error }, kind bench.Sight, part func(*bench.Observation)) error {
	if err := to.UnmarshalText([]byte(text)); err != nil {
		return argument(command, err)
	}
	o, err := f.observation(s, kind, nil)
	if err != nil {
		return err
	}
	part(&o)
	return f.write(s, o)
}

func newLogRise(s System) *cobra.Command {
	var f noteFlags
	var heights ferment.Heights
	rise := bench.SeenRise{}
	cmd := &cobra.Command{
		Use:     "rise [PERCENT]",
		Short:   "How far the dough has risen; answers with the new range",
		Example: "  maslin log rise 30% --at 10:40\n  maslin log rise --from 12cm --to 15.6cm",
		Args:    cobra.ArbitraryArgs,
	}
	f.register(cmd)
	f.in.value(&heights.Start, "from", "LENGTH", "height of the dough after mixing, in a straight-sided container", "Start", "start")
	f.in.value(&heights.Now, "to", "LENGTH", "its height now", "Now", "now")
	f.in.value(&rise.Error, "error", "PERCENT", "how far off the reading may be, in points of rise (5 %)", "rise.error")
	f.in.paths["rise.rise"] = ""
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		switch byHeight := f.in.given("from") || f.in.given("to"); {
		case byHeight && len(args) > 0:
			return badInput("maslin log rise: want a percentage or --from and --to, not both")
		case byHeight:
			read, err := heights.Rise()
			if err != nil || len(f.in.faults) > 0 {
				return f.in.complain(err)
			}
			args = []string{read.Text(1)}
		default:
			if err := oneValue(`a rise such as 30%, or --from and --to`)(cmd, args); err != nil {
				return err
			}
		}
		return f.valueInto(s, "log rise", args[0], &rise.Rise, bench.SawRise, func(o *bench.Observation) { o.Rise = &rise })
	}
	return cmd
}

func newLogReady(s System) *cobra.Command {
	var f noteFlags
	var probe string
	ready := bench.ReadyDough{}
	cmd := &cobra.Command{
		Use:     "ready PERCENT",
		Short:   "When the dough was really ready, and how far it had risen: what a culture is learned from",
		Example: "  maslin log ready 28% --at 19:40\n  maslin log ready 75% --readings probe.csv",
		Args:    oneValue("how far it had risen, such as 28%"),
	}
	f.register(cmd)
	cmd.Flags().StringVar(&probe, "readings", "", "`FILE` of a probe in the dough, from mixing on")
	f.in.paths["ready.readings"], f.in.paths["ready.rise"] = "readings", ""
	cmd.RunE = func(_ *cobra.Command, args []string) error {
		if probe != "" {
			r, err := readReadings(probe)
			if err != nil {
				return err
			}
			if _, err := r.History(); err != nil {
				return badInput("%s", readingFaults(probe, err))
			}
			for _, one := range r.Points {
				ready.Readings = append(ready.Readings, bench.ProbeReading{After: one.At, Temperature: one.Temperature})
			}
		}
		return f.valueInto(s, "log ready", args[0], &ready.Rise, bench.SawReady, func(o *bench.Observation) { o.Ready = &ready })
	}
	return cmd
}

func newLogCore(s System) *cobra.Command {
	var f noteFlags
	core := bench.SeenCore{}
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
		return f.valueInto(s, "log core", args[0], &core.Core, bench.SawCore, func(o *bench.Observation) { o.Core = &core })
	}
	return cmd
}

func newLogWeights(s System) *cobra.Command {
	var f noteFlags
	w := bench.LoafWeights{Style: bake.LeanHearth}
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
		o, err := f.observation(s, bench.SawWeights, nil)
		if err != nil {
			return err
		}
		o.Weights = &w
		return f.write(s, o)
	}
	return cmd
}

func newLogNote(s System) *cobra.Command {
	var f noteFlags
	cmd := &cobra.Command{
		Use:     "note TEXT",
		Short:   "Anything else",
		Example: `  maslin log note "crust a little pale"`,
		Args:    oneValue("a text in quotation marks"),
	}
	f.register(cmd)
	f.in.paths["note"] = ""
	cmd.RunE = func(_ *cobra.Command, args []string) error {
		o, err := f.observation(s, bench.SawNote, nil)
		if err != nil {
			return err
		}
		o.Note = args[0]
		return f.write(s, o)
	}
	return cmd
}
