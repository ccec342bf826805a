package cli

import (
	"errors"
	"strings"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/examples/internal/tomlbind"
	"example.org/maslin/internal/textpage"
	"example.org/maslin/schedule/bakeday"
	"github.com/spf13/cobra"
)

type formulaFlags struct {
	output
	in           *asked
	pieces       int
	each, baked  quantity.Mass
	loss         quantity.Percent
	dough, flour quantity.Mass
	levain       quantity.Mass
	stock        []dough.Stock
	weights      []string
	scale, fine  quantity.Mass
	extra        []dough.Stock
	restore      dough.Restore
	repair       bool
}

func newFormula(s System) *cobra.Command {
	cmd := &cobra.Command{
		Use:   "formula FILE",
		Short: "How much of everything: scale a formula, read one from weights, mend a dough",
		Long: `formula scales the formula of a bake file and shows it three ways: the overall formula, the
levain to build, and what to weigh at mixing. Without a target it makes the loaves of
the file. With --weights it needs no file: it says which formula the weights are.
With --too-much and --too-little it says what a dough has become in which something was
weighed wrongly, and what to add so that it comes back.`,
		Example: `  maslin formula examples/bakes/hall-kitchen.toml --pieces 4
  maslin formula --weights '800 g wheat, 200 g whole rye, 700 g water, 20 g salt'
  maslin formula examples/bakes/hall-kitchen.toml --too-much '40 g water'`,
	}
	f := formulaFlags{in: ask(cmd)}
	in := f.in
	in.number(&f.pieces, "pieces", "so many loaves or pieces", "Pieces.Count", "Baked.Pieces", "Loaves.Pieces")
	in.value(&f.each, "each", "MASS", "dough in each piece", "Pieces.Each")
	in.value(&f.baked, "baked", "MASS", "each loaf when baked and cool", "Baked.Each", "Loaves.Baked")
	in.value(&f.loss, "loss", "PERCENT", "lost in the oven, of the dough (with --baked)", "Baked.Loss", "Loaves.Loss")
	in.value(&f.dough, "dough", "MASS", "so much dough", "ByDough.Mass")
	in.value(&f.flour, "flour", "MASS", "the dough that so much flour makes, the levain's flour included", "ByFlour.Mass")
	in.value(&f.levain, "levain-at-hand", "MASS", "the dough that so much ripe levain raises", "ByLevain.Mass", "ByLevain.Preferment")
	in.each(func(text string) error { return stockOf(text, &f.stock) }, "stock", "NAME=MASS",
		"what there is of an ingredient (may be repeated): the largest dough it allows", "AtHand.Stock")
	in.each(func(text string) error { f.weights = append(f.weights, text); return nil }, "weights", "LIST",
		"read the formula from weights: '800 g wheat, 700 g water, 20 g salt, 250 g levain at 100 %'", "Final", "Preferments", "Flours", "Liquids")
	in.each(func(text string) error { return extraOf(text, 1, &f.extra) }, "too-much", "'MASS NAME'",
		"so much more of it is in the dough than planned (may be repeated)", "Extra")
	in.each(func(text string) error { return extraOf(text, -1, &f.extra) }, "too-little", "'MASS NAME'",
		"so much less of it is in the dough than planned (may be repeated)")
	in.word(&f.restore, wordsOf(dough.RestoreHydrationAndSalt, dough.RestoreHydration, dough.RestoreAll), "restore", "what is to come back", "Restore")
	in.value(&f.scale, "scale", "MASS", "step of the scale for flour and water (the file's, or 1 g)", "Flour")
	in.value(&f.fine, "fine-scale", "MASS", "step of the scale for salt and yeast (the file's, or none)", "Fine")
	f.register(cmd)
	cmd.Args = func(cmd *cobra.Command, args []string) error {
		if in.given("weights") && len(args) > 0 {
			return badInput("maslin formula: got %s and --weights, want one of them", quantity.Excerpt(textpage.Printable(args[0])))
		}
		if in.given("weights") {
			return nil
		}
		return oneFile(cmd, args)
	}
	cmd.RunE = func(_ *cobra.Command, args []string) error { return runFormula(s, args, f) }
	return cmd
}

func stockOf(text string, out *[]dough.Stock) error {
	var m quantity.Mass
	name, err := named(text, &m, quantity.Tell("cli.want_name_and_weight_water_2", `a name and a weight, such as "water=2 kg"`))
	if err == nil {
		*out = append(*out, dough.Stock{Name: name, Mass: m})
	}
	return err
}

// extraOf reads "40 g water".
func extraOf(text string, sign int64, out *[]dough.Stock) error {
	m, name, err := massOf(text)
	if err == nil {
		*out = append(*out, dough.Stock{Name: name, Mass: m.Times(sign)})
	}
	return err
}

// massOf reads a mass and what it is of: "40 g water", "2 oz rye".
func massOf(text string) (quantity.Mass, string, error) {
	words := strings.Fields(text)
	for n := min(len(words)-1, 4); n >= 1; n-- {
		if m, err := quantity.ParseMass(strings.Join(words[:n], " ")); err == nil {
			return m, strings.Join(words[n:], " "), nil
		}
	}
	return quantity.Mass{}, "", &quantity.InputError{Got: quantity.Excerpt(text), Want: quantity.Tell("cli.want_weight_and_what_40_g", `a weight and what it is of, such as "40 g water"`), Err: quantity.ErrUnit}
}

// A formulaFile is a bake file read for its formula; the rest of it may be missing.
type formulaFile struct {
	name string
	file *tomlbind.File
	bake bakeday.Bake
}

func readFormula(name string) (formulaFile, error) {
	f := formulaFile{name: name}
	l, _, err := readBake(name)
	if err != nil {
		return f, err
	}
	f.file, f.bake = l.file, l.bake
	if len(f.file.Faults) > 0 && f.file.Faults[0].Key == "" {
		return f, f.complain(nil)
	}
	if err := f.bake.Formula().Check(); err != nil || len(f.file.Faults) > 0 {
		_, err = f.bake.Batch(dough.ByDough{Mass: quantity.Kilograms(1)})
		return f, f.complain(err)
	}
	return f, nil
}

// complain puts what the library says at its place in the file.
func (f formulaFile) complain(err error) error {
	var faults []placed
	for _, t := range f.file.Faults {
		text := t.Text
		if t.Key != "" {
			text = t.Key + ": " + text
		}
		faults = append(faults, placed{t.Line, t.Column, working.Say(text)})
	}
	return complain(f.name, append(faults, located(f.file, err)...))
}

// target is what the flags ask for; nil is what the file says.
func (f *formulaFlags) target(b bakeday.Bake) dough.Target {
	in := f.in
	var asked []string
	for _, n := range []string{"dough", "flour", "levain-at-hand", "stock"} {
		if in.given(n) {
			asked = append(asked, n)
		}
	}
	for _, n := range []string{"pieces", "each", "baked"} {
		if in.given(n) {
			asked = append(asked, n)
			break
		}
	}
	if len(asked) > 1 {
		in.fault(asked[1], quantity.Tell("cli.got_together", "it together with --%s", asked[0]), quantity.Tell("cli.want_one_wish_loaves_dough_flour", "one wish: loaves, --dough, --flour, --levain-at-hand or --stock"), quantity.ErrInconsistent)
		return nil
	}
	if in.given("each") {
		in.not("--each, which gives the dough and not the bread", "baked", "loss")
	}
	pieces := f.pieces
	if !in.given("pieces") {
		pieces = b.Loaves.Pieces
		if own, err := b.Batch(nil); err == nil {
			pieces = own.Pieces() // where the file leaves it to the weights
		}
	}
	switch {
	case in.given("dough"):
		return dough.ByDough{Mass: f.dough}
	case in.given("flour"):
		return dough.ByFlour{Mass: f.flour}
	case in.given("levain-at-hand"):
		return dough.ByLevain{Preferment: "levain", Mass: f.levain}
	case in.given("stock"):
		return dough.AtHand{Stock: f.stock}
	case in.given("each"):
		return dough.Pieces{Count: pieces, Each: f.each}
	}
	return nil
}

func runFormula(s System, args []string, f formulaFlags) error {
	if err := f.check(); err != nil {
		return err
	}
	in := f.in
	f.repair = in.given("too-much") || in.given("too-little")
	if f.restore != 0 && !f.repair {
		in.only("--too-much or --too-little", "restore")
	}
	var batch dough.Batch
	var err error
	scales := dough.Scales{Flour: f.scale, Fine: f.fine}
	if in.given("weights") {
		in.not("--weights, which scales nothing", "pieces", "each", "baked", "loss", "dough", "flour", "levain-at-hand", "stock")
		if !in.given("scale") {
			scales.Flour = quantity.Grams(1)
		}
		if !in.given("fine-scale") && !in.given("scale") {
			scales.Fine = quantity.Grams(0.1)
		}
		w, words := weightsOf(f.weights)
		if words != nil {
			in.note("weights", words)
		} else if batch, err = w.Batch(); err != nil {
			return in.complain(err)
		}
	} else {
		file, fault := readFormula(args[0])
		if fault != nil {
			var flags *exit
			if wrong := in.complain(nil); errors.As(wrong, &flags) {
				return badInput("%s\n%s", flags.text, fault)
			}
			return fault
		}
		b := file.bake
		own := b.Scales()
		if in.given("scale") {
			own.Flour = f.scale
		}
		if in.given("fine-scale") {
			own.Fine = f.fine
		}
		scales = own
		target := f.target(b)
		if target == nil {
			overlay(in, &b.Loaves, f)
		}
		if wrong := in.complain(nil); wrong != nil {
			return wrong
		}
		if batch, err = b.Batch(target); err != nil {
			if target == nil && !in.given("pieces") && !in.given("baked") && !in.given("loss") {
				return file.complain(err)
			}
			return in.complain(err)
		}
	}
	if wrong := in.complain(nil); wrong != nil {
		return wrong
	}
	if f.repair {
		r, err := dough.Mishap{Batch: batch, Extra: f.extra, Restore: f.restore}.Repair()
		if err != nil {
			return in.complain(err)
		}
		return s.tell(f.output, r, true)
	}
	w, err := batch.Weigh(scales)
	if err != nil {
		return in.complain(err)
	}
	return s.tell(f.output, w, true)
}

// overlay puts the loaves of the flags over those of the file.
func overlay(in *asked, l *bakeday.Loaves, f formulaFlags) {
	if in.given("pieces") {
		l.Pieces = f.pieces
	}
	if in.given("baked") {
		l.Baked = f.baked
	}
	if in.given("loss") {
		l.Loss = f.loss
	}
}
