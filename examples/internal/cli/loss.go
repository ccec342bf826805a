package cli

import (
	"fmt"
	"strings"

	"example.org/maslin/bake"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
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
	in.word(&f.w.Basis, wordsOf(bake.OfDough, bake.OfBread), "basis", "of --loss", "Basis")
	in.each(f.readWeighed, "weighed", "DOUGH=BREAD", "a loaf weighed before and after (may be repeated)", "Loaves")
	in.value(&f.packed, "packed", "MASS", "nominal weight of packed loaves: what the average system asks", "nominal")
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
		return &quantity.InputError{Got: quantity.Excerpt(text), Want: `the dough and the cool loaf, such as "897g=781g"`, Err: quantity.ErrUnit}
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

// lossFound is everything loss was asked for.
type lossFound struct {
	usual   *bake.LossGuide
	learned *bake.LearnedLoss
	scaling *bake.Scaling
	average *bake.AverageWeight
	solids  *bake.SolidsLoss
}

func runLoss(s System, f *lossFlags) error {
	if err := f.check(); err != nil {
		return err
	}
	in := f.in
	var p quantity.Problems
	found, workings, cautions := f.find(&p)
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
		in.fault("baked", "", "the weight of a cool loaf; or --dough, --weighed, --packed or --hydration", quantity.ErrRequired)
	}
	if wrong := in.complain(p.Err()); wrong != nil {
		return wrong
	}
	return s.show(f.output, answer{
		page: func(p *page, u units) { lossPage(p, u, f, found) }, data: lossData(f, found), workings: workings, cautions: cautions,
	})
}

// find asks for everything the flags ask for.
func (f *lossFlags) find(p *quantity.Problems) (lossFound, []working.Working, []working.Caution) {
	var out lossFound
	var workings []working.Working
	var cautions []working.Caution
	in := f.in
	if len(f.weighed) > 0 {
		learned, err := bake.LossLog{Style: f.style, Loaves: f.weighed}.Learn()
		p.Join("", err)
		if err == nil {
			out.learned, workings = &learned, append(workings, learned.Working())
		}
	}
	size := f.dough
	if in.given("baked") {
		size = f.w.Baked
	}
	if in.given("baked") || in.given("dough") {
		usual, err := f.usual(size)
		p.Join("", err)
		if err == nil {
			out.usual, workings = &usual, append(workings, usual.Working())
			w := f.w
			switch {
			case in.given("loss"):
			case out.learned != nil:
				w.Loss = out.learned.Mean
			default:
				w.Loss = usual.Likely
			}
			if in.given("baked") {
				scaling, err := w.Scaling()
				p.Join("", err)
				if err == nil {
					out.scaling, workings = &scaling, append(workings, scaling.Working())
				}
			}
		}
	}
	if in.given("packed") {
		average, err := (bake.PackedWeight{Nominal: f.packed}).Limits()
		p.Join("", quantity.At("nominal", err))
		if err == nil {
			out.average, workings, cautions = &average, append(workings, average.Working()), average.Cautions()
		}
	}
	if in.given("hydration") {
		solids, err := f.solids.LeastLoss()
		p.Join("", err)
		if err == nil {
			out.solids, workings = &solids, append(workings, solids.Working())
			if len(cautions) == 0 {
				cautions = solids.Cautions()
			}
		}
	}
	return out, workings, cautions
}

// usual is the guide value for the dough, or for a bread when that is given: then the dough is first
// taken to be an eighth heavier, and the guide is asked again for what follows.
func (f *lossFlags) usual(size quantity.Mass) (bake.LossGuide, error) {
	if !f.in.given("baked") {
		return f.style.UsualLoss(size)
	}
	g, err := f.style.UsualLoss(size.Over(quantity.NewPercent(88)))
	if err != nil {
		return g, err
	}
	scaling, err := bake.PromisedLoaf{Baked: size, Loss: g.Likely}.Scaling()
	if err != nil {
		return g, err
	}
	return f.style.UsualLoss(scaling.Dough)
}

func lossPage(p *page, u units, f *lossFlags, r lossFound) {
	switch {
	case r.scaling != nil:
		p.para(0, fmt.Sprintf("Scale %s of dough for %s of bread", u.mass(tenthGram(r.scaling.Dough)), u.mass(f.w.Baked)))
	case r.usual != nil:
		p.para(0, u.mass(f.dough)+" of dough makes about "+f.makes(r, u))
	case r.learned != nil:
		p.para(0, "This bread loses "+percent(r.learned.Mean, 1)+" of the dough")
	default:
		p.para(0, "Weight rules, as information")
	}
	if r.usual != nil || r.learned != nil {
		section(p, "The loss")
		var rows [][]string
		if f.in.given("loss") {
			own := percent(f.w.Loss, 1) + " " + f.w.Basis.String()
			if f.w.Cooling.Sign() > 0 {
				own += ", and " + percent(f.w.Cooling, 1) + " while cooling"
			}
			rows = append(rows, []string{"yours", own})
		}
		if l := r.learned; l != nil {
			rows = append(rows, []string{"weighed", fmt.Sprintf("%s of the dough, from %s; the next: %s to %s (80 %%)", percent(l.Mean, 1), count(l.Count, "loaf", "loaves"), percent(l.Low, 1), percent(l.High, 1))})
		}
		if g := r.usual; g != nil {
			rows = append(rows, []string{"usual", fmt.Sprintf("%s of the dough (%s to %s), %s of %s", percent(g.Likely, 1), percent(g.Low, 1), percent(g.High, 1), g.Style, u.mass(rounded(g.Dough)))})
		}
		p.rows(2, "ll", rows)
		if r.scaling != nil {
			p.para(2, u.mass(tenthGram(r.scaling.Lost))+" of each piece goes into the air")
		}
		if r.usual != nil && r.usual.Note != "" {
			p.para(2, r.usual.Note)
		}
	}
	if a := r.average; a != nil {
		section(p, "Packed loaves of "+u.mass(a.Nominal)+", average system of the UK and the EU")
		p.rows(2, "ll", [][]string{
			{"on average at least", u.mass(a.Mean)}, {"at most 1 in 40 below", u.mass(a.Few)}, {"none below", u.mass(a.None)},
		})
	}
	if l := r.solids; l != nil {
		section(p, "Bread by the US standard: at least 62 % solids")
		if l.Loss.Sign() <= 0 {
			p.para(2, "the dough itself is dry enough")
		} else {
			p.para(2, "it must lose at least "+percent(l.Loss, 1)+" of the dough")
		}
	}
}

// bread is what comes of a dough that loses so much: what it is to the dough for a kilogram of bread.
func bread(dough quantity.Mass, w bake.PromisedLoaf) quantity.Mass {
	w.Baked = quantity.Kilograms(1)
	scaling, err := w.Scaling()
	if err != nil {
		return quantity.Mass{}
	}
	return rounded(dough.PercentOf(scaling.Dough).Of(w.Baked))
}

// makes says how much bread the dough makes, with the range that belongs to the loss.
func (f *lossFlags) makes(r lossFound, u units) string {
	of := func(loss quantity.Percent) string { return u.mass(bread(f.dough, bake.PromisedLoaf{Loss: loss})) }
	switch {
	case f.in.given("loss"):
		return u.mass(bread(f.dough, f.w)) + " of bread"
	case r.learned != nil:
		return of(r.learned.Mean) + " of bread (" + of(r.learned.High) + " to " + of(r.learned.Low) + ")"
	}
	return of(r.usual.Likely) + " of bread (" + of(r.usual.High) + " to " + of(r.usual.Low) + ")"
}

type lossAnswer struct {
	Format  string       `json:"format"`
	Style   bake.Style   `json:"style"`
	Usual   *lossRange   `json:"usual,omitempty"`
	Learned *lossRange   `json:"learned,omitempty"`
	Loaves  int          `json:"loaves_weighed,omitempty"`
	Scaling *massesData  `json:"scaling,omitempty"`
	Average *averageData `json:"average_system,omitempty"`
	Solids  *solidsData  `json:"solids_rule,omitempty"`
}

type lossRange struct {
	Low    quantity.Percent `json:"low"`
	Likely quantity.Percent `json:"likely"`
	High   quantity.Percent `json:"high"`
}

type massesData struct {
	Dough quantity.Mass `json:"dough"`
	Baked quantity.Mass `json:"baked"`
	Lost  quantity.Mass `json:"lost"`
}

type averageData struct {
	Nominal quantity.Mass `json:"nominal"`
	Mean    quantity.Mass `json:"mean_at_least"`
	Few     quantity.Mass `json:"one_in_forty_below"`
	None    quantity.Mass `json:"none_below"`
}

type solidsData struct {
	Loss quantity.Percent `json:"loss_at_least"`
}

func lossData(f *lossFlags, r lossFound) lossAnswer {
	out := lossAnswer{Format: "maslin loss 1", Style: f.style}
	if g := r.usual; g != nil {
		out.Usual = &lossRange{g.Low, g.Likely, g.High}
	}
	if l := r.learned; l != nil {
		out.Learned, out.Loaves = &lossRange{l.Low, l.Mean, l.High}, l.Count
	}
	if w := r.scaling; w != nil {
		out.Scaling = &massesData{w.Dough, f.w.Baked, w.Lost}
	}
	if a := r.average; a != nil {
		out.Average = &averageData{a.Nominal, a.Mean, a.Few, a.None}
	}
	if l := r.solids; l != nil {
		out.Solids = &solidsData{l.Loss}
	}
	return out
}
