package cli

import (
	"example.org/maslin/bake"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
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
	in.each(f.read.read, "reading", "TIME=TEMPERATURE", "of the cooling core (two or more), instead of the weight", "Samples")
	in.value(&f.off, "probe-error", "DIFFERENCE", "how far the probe may be off (1dC)", "Error")
	f.register(cmd)
	cmd.RunE = func(*cobra.Command, []string) error { return runCool(s, f) }
	return cmd
}

type coolAnswer struct {
	Format   string               `json:"format"`
	Ready    *rangeData           `json:"ready"`
	Slice    quantity.Temperature `json:"slice"`
	Rest     quantity.Elapsed     `json:"rest"`
	Reached  bool                 `json:"reached"`
	Cautions []cautionData        `json:"cautions"`
}

func runCool(s System, f *coolFlags) error {
	if err := f.check(); err != nil {
		return err
	}
	in := f.in
	if len(f.read.all) > 0 || in.given("reading") {
		return runCooling(s, f)
	}
	in.only("--reading", "probe-error")
	r, err := f.c.Time()
	if wrong := in.complain(err); wrong != nil {
		return wrong
	}
	return s.show(f.output, answer{
		page: func(p *page, u units) {
			p.para(0, "Cool enough to cut ("+u.temperature(r.Slice, 0)+") about "+minutes(r.Ready.Likely)+" after the oven")
			section(p, "How surely")
			p.para(2, r.Ready.String()+", in a room of "+u.temperature(r.Room, 0)+"; longer in a still corner, shorter on a rack in a draft")
			if r.Rest > 0 {
				p.para(2, "this bread rests "+quantity.FormatDuration(r.Rest)+" before it is cut")
			}
			p.para(2, "two readings of a probe, some 20 minutes apart, say much more: --reading")
		},
		data:     coolAnswer{"maslin cool 1", rangeOf(r.Ready), r.Slice, quantity.Elapsed(r.Rest), false, cautionsData(r.Cautions())},
		workings: []working.Working{r.Working()}, cautions: r.Cautions(),
	})
}

func runCooling(s System, f *coolFlags) error {
	in := f.in
	in.not("--reading, which says more", "loaf", "style", "shape", "core")
	r, err := bake.CoolingProbe{Samples: f.read.samples(in), Room: f.c.Room, Slice: f.c.Slice, Error: f.off}.TimeLeft()
	if wrong := in.complain(err); wrong != nil {
		return wrong
	}
	return s.show(f.output, answer{
		page: func(p *page, u units) {
			if r.Reached {
				p.para(0, "Cool enough to cut: the core is at "+u.temperature(r.Slice, 0)+" or below")
				return
			}
			p.para(0, "Cool enough to cut ("+u.temperature(r.Slice, 0)+") in about "+minutes(r.Ready.Likely))
			section(p, "From the last reading on")
			text := r.Ready.String()
			if at, ok := f.read.last(); ok {
				text += "; by the clock " + clockAfter(at, r.Ready.Early) + " to " + clockAfter(at, r.Ready.Late)
			}
			p.para(2, text)
		},
		data:     coolAnswer{"maslin cool 1", rangeOf(r.Ready), r.Slice, 0, r.Reached, cautionsData(r.Cautions())},
		workings: []working.Working{r.Working()}, cautions: r.Cautions(),
	})
}
