package cli

import (
	"strings"

	"example.org/maslin/bake"
	"example.org/maslin/dough/quantity"
	"github.com/spf13/cobra"
)

type lossFlags struct {
	output
	in      *asked
	style   bake.Style
	dough   quantity.Mass
	w       bake.PromisedLoaf
	weighed []bake.WeighedLoaf
	packed  quantity.Mass
	solids  bake.Solids
}

func newLoss(s System) *cobra.Command {
	cmd := &cobra.Command{
		Use:   "loss",
		Short: "What a loaf loses in the oven, and how much dough to scale for it",
		Long: `loss says how much weight a loaf loses in the oven and how much dough to scale so that it weighs
what was promised. Give your own loss, or weighed loaves to learn it from; without them it
takes the usual loss for style and size. A loss of the dough and a loss of the bread are
different numbers for the same loaf; name the basis when it is the bread.

--packed and --hydration add what weight rules ask for, as information: your local law decides.`,
		Example: `  maslin loss --baked 780g
  maslin loss --baked 2lb --loss "12 %" --us
  maslin loss --baked 780g --weighed 897g=781g --weighed 900g=790g
  maslin loss --packed 400g`,
		Args: flagsOnly,
	}
	f := &lossFlags{in: ask(cmd)}
	in := f.in
	in.value(&f.w.Baked, "baked", "MASS", "each loaf when baked and cool: how much dough?", "Baked")
	in.value(&f.dough, "dough", "MASS", "of each piece: how heavy is the loaf?", "dough", "Dough")
	styleFlag(in, &f.style)
	in.value(&f.w.Loss, "loss", "PERCENT", "lost in the oven (the usual loss)", "Loss")
	in.value(&f.w.Cooling, "cooling", "PERCENT", "lost while cooling, where --loss is without it", "Cooling")
	in.word(&f.w.Basis, wordsOf(quantity.Values[bake.LossBasis]()...), "basis", "of --loss", "Basis")
	in.each(f.readWeighed, "weighed", "DOUGH=BREAD", "a loaf weighed before and after (may be repeated)", "Loaves")
	in.value(&f.packed, "packed", "MASS", "nominal weight of packed loaves: what the average system asks", "Nominal")
	in.value(&f.solids.Water, "hydration", "PERCENT", "of the dough: what loss makes it bread by the US solids rule", "Water")
	in.value(&f.solids.OtherSolids, "other-solids", "PERCENT", "salt, sugar, fat and the like, dry, of flour (with --hydration)", "OtherSolids")
	f.register(cmd)
	cmd.RunE = func(*cobra.Command, []string) error { return runLoss(s, f) }
	return cmd
}

func (f *lossFlags) readWeighed(text string) error {
	var w bake.WeighedLoaf
	before, after, found := strings.Cut(text, "=")
	if !found {
		return &quantity.InputError{Got: quantity.Excerpt(text), Want: quantity.Tell("cli.want_dough_and_cool_loaf_897g", `the dough and the cool loaf, such as "897g=781g"`), Err: quantity.ErrUnit}
	}
	if err := w.Dough.UnmarshalText([]byte(before)); err != nil {
		return err
	}
	if err := w.Baked.UnmarshalText([]byte(after)); err != nil {
		return err
	}
	f.weighed = append(f.weighed, w)
	return nil
}

func runLoss(s System, f *lossFlags) error {
	if err := f.check(); err != nil {
		return err
	}
	in := f.in
	var p quantity.Problems
	all := f.find(&p)
	if !in.given("loss") {
		in.only("--loss", "cooling", "basis")
	}
	if !in.given("hydration") {
		in.only("--hydration", "other-solids")
	}
	if in.given("baked") {
		in.not("--baked: either the bread is given or the dough", "dough")
	}
	if !in.given("baked") && !in.given("dough") && len(f.weighed) == 0 && !in.given("packed") && !in.given("hydration") && !in.given("weighed") {
		in.fault("baked", "", quantity.Tell("cli.want_weight_cool_loaf_or_dough", "the weight of a cool loaf; or --dough, --weighed, --packed or --hydration"), quantity.ErrRequired)
	}
	if wrong := in.complain(p.Err()); wrong != nil {
		return wrong
	}
	return s.tell(f.output, all, true)
}

// find asks for everything the flags ask for.
func (f *lossFlags) find(p *quantity.Problems) together {
	var first, rest together
	in, w := f.in, f.w
	var usual bake.LossGuide
	var err error
	switch {
	case in.given("baked"):
		usual, err = f.style.LossOfBread(w.Baked)
		rest.add(p, "usual", usual, err)
	case in.given("dough"):
		usual, err = f.style.UsualLoss(f.dough)
		rest.add(p, "usual", usual, err)
	}
	loss := usual.Loss.Likely
	if len(f.weighed) > 0 {
		learned, err := bake.LossLog{Style: f.style, Loaves: f.weighed}.Learn()
		rest.add(p, "learned", learned, err)
		loss = learned.Mean
	}
	if !in.given("loss") {
		w.Loss = loss
	}
	switch {
	case in.given("baked"):
		scaling, err := w.Scaling()
		first.add(p, "scaling", scaling, err)
	case in.given("dough"):
		bread, err := bake.ScaledPiece{Dough: f.dough, Loss: w.Loss, Cooling: w.Cooling, Basis: w.Basis}.Bread()
		first.add(p, "scaling", bread, err)
	}
	if in.given("packed") {
		limits, err := (bake.PackedWeight{Nominal: f.packed}).Limits()
		rest.add(p, "average_system", limits, err)
	}
	if in.given("hydration") {
		solids, err := f.solids.LeastLoss()
		rest.add(p, "solids_rule", solids, err)
	}
	return together{append(first.all, rest.all...)}
}
