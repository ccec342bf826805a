package cli

import (
	"example.org/maslin/bake"
	"github.com/spf13/cobra"
)

type doneFlags struct {
	output
	goalFlags
	in *asked
	r  bake.LoafReading
}

func newDone(s System) *cobra.Command {
	cmd := &cobra.Command{
		Use:   "done",
		Short: "Is the loaf baked? By core temperature, and by weight or time held",
		Long: `done says whether a loaf is baked: the core at its target AND baked out, which its weight or the
time held at the target tells. The target is that of the bread, or what boiling water allows
at your altitude. The color of the crust is yours to judge.

A loaf whose core is there, but which was not weighed and has not had its time, is set, and not known to be baked out.

Exit status: 0 answered, done or not yet; 1 the reading says nothing, so close to boiling;
2 bad input.`,
		Example: `  maslin done --core 95C --altitude 1150m --dough 897g --loaf 795g
  maslin done --style "soft roll" --core 199F --held 3min --us`,
		Args: flagsOnly,
	}
	f := doneFlags{in: ask(cmd)}
	in := f.in
	in.value(&f.r.Core, "core", "TEMPERATURE", "what the probe reads in the middle of the loaf", "Core")
	f.goalFlags.register(in, true)
	in.value(&f.r.Dough, "dough", "MASS", "of the piece when it went in", "Dough")
	in.value(&f.r.Loaf, "loaf", "MASS", "of the loaf now", "Loaf")
	lasting(in, &f.r.Held, "held", "since the core reached its target", "Held")
	lasting(in, &f.r.InOven, "in-oven", "since the loaf went in", "InOven")
	in.value(&f.r.ProbeError, "probe-error", "DIFFERENCE", "how far the probe may be off (1dC)", "ProbeError")
	f.output.register(cmd)
	cmd.RunE = func(*cobra.Command, []string) error { return runDone(s, f) }
	return cmd
}

func runDone(s System, f doneFlags) error {
	if err := f.check(); err != nil {
		return err
	}
	f.r.Goal = f.goal
	v, err := f.r.Judge()
	if wrong := f.in.complain(err); wrong != nil {
		return wrong
	}
	return s.tell(f.output, v, v.State != bake.SaysNothing)
}
