package cli

import (
	"strconv"

	"example.org/maslin/bake"
	"example.org/maslin/dough/quantity"
	"github.com/spf13/cobra"
)

type leftFlags struct {
	output
	goalFlags
	in   *asked
	p    bake.Probe
	read readings
}

func newLeft(s System) *cobra.Command {
	cmd := &cobra.Command{
		Use:   "left",
		Short: "Minutes left in the oven, from two or more readings of a probe",
		Long: `left says how long a loaf still bakes: from readings a few minutes apart it follows the core on
its way to the boiling point. Readings are in order of time, by the clock or by the time
since the loaf went in; by the clock, say with --in-oven how long it has been in the oven, since
bake-out counts from there.

Exit status: 0 answered; 1 the readings allow no answer, and it says what to do; 2 bad input.`,
		Example: `  maslin left --reading 14:05=72C --reading 14:11=80C --in-oven 26min --altitude 1150m
  maslin left --style rye --reading 25min=165F --reading 32min=183F --us`,
		Args: flagsOnly,
	}
	f := &leftFlags{in: ask(cmd)}
	in := f.in
	in.each(f.read.read, "reading", "TIME=TEMPERATURE", "of the core (two or more)", "Samples")
	f.goalFlags.register(in, true)
	in.word(&f.p.Approach, wordsOf(quantity.Values[bake.Approach]()...), "approach", "of the core to boiling (quickening, the better of the two)", "Approach")
	lasting(in, &f.p.InOven, "in-oven", "since the loaf went in, at the last reading (the readings count from there)", "InOven")
	lasting(in, &f.p.Window, "window", "only readings this close to the last one count (15min)", "Window")
	in.value(&f.p.Error, "probe-error", "DIFFERENCE", "how far the probe may be off (1dC)", "Error")
	cmd.Flags().BoolVar(&f.p.Extrapolate, "extrapolate", false, "use readings of the early part too, where the core still gains speed")
	f.output.register(cmd)
	cmd.RunE = func(*cobra.Command, []string) error { return runLeft(s, f) }
	return cmd
}

func runLeft(s System, f *leftFlags) error {
	if err := f.check(); err != nil {
		return err
	}
	f.p.Goal, f.p.Samples, f.p.Now = f.goal, f.read.samples(f.in), f.read.last(s.Now())
	f.p.EntryUnknown = f.read.clocks > 0 && f.p.InOven == 0
	left, err := f.p.TimeLeft()
	if wrong := f.in.complain(err); wrong != nil {
		return wrong
	}
	return s.tell(f.output, left, left.State != bake.NearBoiling && left.State != bake.Vague)
}

// count says how many there are.
func count(n int, one, more string) string {
	if n == 1 {
		return "1 " + one
	}
	return strconv.Itoa(n) + " " + more
}
