package cli

import (
	"example.org/maslin/bake"
	"example.org/maslin/dough/quantity"
	"github.com/spf13/cobra"
)

type coolFlags struct {
	output
	in   *asked
	c    bake.CoolingLoaf
	read readings
	off  quantity.TemperatureDelta
}

func newCool(s System) *cobra.Command {
	cmd := &cobra.Command{
		Use:   "cool",
		Short: "When the loaf may be cut",
		Long: `cool says when the core of a loaf is at slicing temperature, from its weight and shape; or, much
better, from two or more readings of a probe taken while it cools.`,
		Example: `  maslin cool --loaf 780g --room 21C
  maslin cool --style rye --loaf 1.5kg --shape long
  maslin cool --reading 9:40=88C --reading 10:05=61C --room 21C`,
		Args: flagsOnly,
	}
	f := &coolFlags{in: ask(cmd)}
	in := f.in
	in.value(&f.c.Baked, "loaf", "MASS", "of the loaf out of the oven", "Baked")
	styleFlag(in, &f.c.Style)
	shapeFlag(in, &f.c.Shape)
	in.value(&f.c.From, "core", "TEMPERATURE", "of the core out of the oven (just under boiling)", "From")
	in.value(&f.c.Room, "room", "TEMPERATURE", "of the air around it (22 °C)", "Room")
	in.value(&f.c.Slice, "slice", "TEMPERATURE", "of the core when it is cut (35 °C)", "Slice")
	in.value(&f.c.Loses, "loses", "PERCENT", "of its weight while it cools (2 %)", "Loses")
	in.each(f.read.read, "reading", "TIME=TEMPERATURE", "of the cooling core (two or more), instead of the weight", "Samples")
	in.value(&f.off, "probe-error", "DIFFERENCE", "how far the probe may be off (1dC)", "Error")
	f.register(cmd)
	cmd.RunE = func(*cobra.Command, []string) error { return runCool(s, f) }
	return cmd
}

func runCool(s System, f *coolFlags) error {
	if err := f.check(); err != nil {
		return err
	}
	in := f.in
	if len(f.read.all) > 0 || in.given("reading") {
		in.not("--reading, which says more", "loaf", "style", "shape", "core", "loses")
		r, err := bake.CoolingProbe{
			Samples: f.read.samples(in), Now: f.read.last(s.Now()), Room: f.c.Room, Slice: f.c.Slice, Error: f.off,
		}.TimeLeft()
		if wrong := in.complain(err); wrong != nil {
			return wrong
		}
		return s.tell(f.output, r, true)
	}
	in.only("--reading", "probe-error")
	r, err := f.c.Time()
	if wrong := in.complain(err); wrong != nil {
		return wrong
	}
	return s.tell(f.output, r, true)
}
