package cli

import (
	"strings"

	"example.org/maslin/bake"
	"example.org/maslin/dough/quantity"
	"github.com/spf13/cobra"
)

type ovenFlags struct {
	output
	in  *asked
	set bake.OvenSetting
	b   bake.OvenLoad
}

var roundFlags = []string{"pieces", "dough", "together", "style", "shape", "vessel", "cold", "then", "preheat", "reheat", "covered", "uncovered", "rescore", "known-dough", "known-time", "extrapolate"}

func newOven(s System) *cobra.Command {
	cmd := &cobra.Command{
		Use:   "oven [SETTING]",
		Short: "What to set the oven to, and the rounds of a bake",
		Long: `oven turns a setting into the other scales: °C, °F and gas mark, for an oven with a fan and for
one that is off. With --pieces and --dough it lays out the whole bake: preheating, lid on and
off, rounds, and reheating between them, in ranges.`,
		Example: `  maslin oven 230C --fan
  maslin oven gas 7
  maslin oven 475F --off 15dF --us
  maslin oven 245C --pieces 6 --dough 897g --vessel pot --together 2`,
	}
	f := &ovenFlags{in: ask(cmd)}
	in, b := f.in, &f.b
	cmd.Flags().BoolVar(&f.set.Fan, "fan", false, "the oven blows its air")
	in.value(&f.set.Off, "off", "DIFFERENCE", "what a thermometer in the oven shows, less its dial", "Off")
	in.number(&b.Pieces, "pieces", "to bake", "Pieces")
	in.value(&b.Dough, "dough", "MASS", "of each piece", "Dough")
	in.number(&b.Together, "together", "pieces in one round (all)", "Together")
	styleFlag(in, &b.Style)
	shapeFlag(in, &b.Shape)
	in.word(&b.Vessel, wordsOf(quantity.Values[bake.Vessel]()...), "vessel", "what it bakes on or in (stone)", "Vessel")
	cmd.Flags().BoolVar(&b.Cold, "cold", false, "straight from the refrigerator")
	in.value(&b.Then, "then", "TEMPERATURE", "when the lid comes off or the steam is let out (as before)", "Then")
	lasting(in, &b.Preheat, "preheat", "before the first round (the vessel's)", "Preheat")
	lasting(in, &b.Reheat, "reheat", "between rounds (the vessel's)", "Reheat")
	lasting(in, &b.Covered, "covered", "lid on, or steam in (the style's)", "Covered")
	lasting(in, &b.Uncovered, "uncovered", "until done (what is left of the bake)", "Uncovered")
	cmd.Flags().BoolVar(&b.Rescore, "rescore", false, "open the cuts again after the first minutes")
	in.value(&b.KnownDough, "known-dough", "MASS", "a piece of a bake of your own that the time is scaled from", "KnownDough")
	lasting(in, &b.KnownTime, "known-time", "how long that piece baked", "KnownTime")
	cmd.Flags().BoolVar(&b.Extrapolate, "extrapolate", false, "accept sizes outside the data")
	in.paths["Wanted"], in.paths["Oven"] = "SETTING", "SETTING"
	f.register(cmd)
	cmd.RunE = func(_ *cobra.Command, args []string) error { return runOven(s, args, f) }
	return cmd
}

// setting reads "230C", "450 °F" or "gas 7".
func setting(text string) (quantity.Temperature, error) {
	t, err := quantity.ParseTemperature(text)
	if err == nil {
		return t, nil
	}
	if mark, e := bake.ParseGasMark(text); e == nil && strings.Contains(strings.ToLower(text), "gas") {
		return mark.Temperature(), nil
	}
	return t, &quantity.InputError{Got: quantity.Excerpt(text), Want: quantity.Tell("cli.want_oven_temperature_230c_or_450f", `an oven temperature, such as "230C" or "450F", or a gas mark from "gas 1/4" to "gas 10"`), Err: quantity.ErrUnit}
}

func runOven(s System, args []string, f *ovenFlags) error {
	if err := f.check(); err != nil {
		return err
	}
	in := f.in
	var p quantity.Problems
	var all together
	rounds := in.given("pieces") || in.given("dough")
	if text := strings.Join(args, " "); text != "" {
		var err error
		if f.set.Wanted, err = setting(text); err != nil {
			p.Join("Wanted", err)
		} else {
			f.b.Oven = f.set.Wanted
			dial, err := f.set.Dial()
			all.add(&p, "setting", dial, err)
		}
	} else {
		in.only("a setting, such as 230C", "fan", "off")
		if !rounds {
			p.Required("Wanted", quantity.Tell("cli.want_oven_temperature_230c_or_gas", `an oven temperature, such as "230C" or "gas 7"; or --pieces and --dough for the rounds of a bake`))
		}
	}
	if rounds {
		program, err := f.b.Program()
		all.add(&p, "program", program, err)
		if err == nil {
			// What the bake does to the crust comes on top, where it can be said: not of thin breads.
			if out, err := program.BakeOut(); err == nil {
				all.add(&p, "baked_out", out, nil)
			}
		}
	} else {
		in.only("--pieces and --dough", roundFlags...)
	}
	if wrong := in.complain(p.Err()); wrong != nil {
		return wrong
	}
	return s.tell(f.output, all, true)
}
