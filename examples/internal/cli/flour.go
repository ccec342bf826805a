package cli

import (
	"fmt"
	"strconv"
	"strings"

	"example.org/maslin/dough/flour"
	"example.org/maslin/dough/quantity"
	"github.com/spf13/cobra"
)

type flourFlags struct {
	output
	in       *asked
	lots     []flour.FlourLot
	target   quantity.Percent
	total    quantity.Mass
	protein  quantity.Percent
	gluten   bool
	strength flour.FlourStrength
}

func newFlour(s System) *cobra.Command {
	cmd := &cobra.Command{
		Use:   "flour",
		Short: "Blend flours to a protein, add gluten, judge whether a flour carries the water",
		Long: `flour blends flours to a protein target: two by their proteins, more by changing their shares as little
as possible. With --gluten it says how much dry gluten takes a flour there. With --hydration
it lists which published figures speak for or against so much water, and where they disagree.`,
		Example: `  maslin flour --lot 'bread flour=13.2%' --lot 'all-purpose=10.5%' --target 12% --total 2kg
  maslin flour --lot 'strong=13.5%@60%' --lot 'wheat=11%@30%' --lot 'rye=8.5%@10%' --target 12.4%
  maslin flour --protein 10.5% --target 12.5% --gluten --total 1kg
  maslin flour --hydration 75% --protein 12% --w 260`,
		Args: flagsOnly,
	}
	f := &flourFlags{in: ask(cmd)}
	in := f.in
	in.each(f.readLot, "lot", "NAME=PROTEIN[@SHARE]", "a flour with its protein, and its share now (may be repeated)", "Flours")
	in.value(&f.target, "target", "PERCENT", "protein of the blend", "Target")
	in.value(&f.total, "total", "MASS", "of the blend; of the flour, with --gluten", "Total", "Flour")
	in.value(&f.protein, "protein", "PERCENT", "of the flour", "Protein")
	cmd.Flags().BoolVar(&f.gluten, "gluten", false, "reach the target with dry gluten")
	in.value(&f.strength.Hydration, "hydration", "PERCENT", "which the flour is to carry", "Hydration")
	in.each(f.plain(&f.strength.W), "w", "W", "the work to blow up a bubble of dough, in 10⁻⁴ J (alveograph)", "W")
	in.each(f.plain(&f.strength.PL), "pl", "P/L", "how much the dough resists over how far it stretches (alveograph)", "PL")
	in.each(f.plain(&f.strength.FallingNumber), "falling-number", "SECONDS", "a plunger takes through a hot paste: few mean much enzyme", "FallingNumber")
	in.value(&f.strength.Absorption, "absorption", "PERCENT", "water that the flour takes at 14 % moisture (farinograph)", "Absorption")
	f.register(cmd)
	cmd.RunE = func(*cobra.Command, []string) error { return runFlour(s, f) }
	return cmd
}

// plain reads a number without a unit.
func (f *flourFlags) plain(target *float64) func(string) error {
	return func(text string) error {
		x, err := strconv.ParseFloat(strings.Replace(strings.TrimSpace(text), ",", ".", 1), 64)
		if err != nil {
			return &quantity.InputError{Got: quantity.Excerpt(text), Want: quantity.Tell("cli.want_number", "a number"), Err: quantity.ErrUnit}
		}
		*target = x
		return nil
	}
}

// readLot reads "bread flour=13.2%" or "bread flour=13.2%@60%".
func (f *flourFlags) readLot(text string) error {
	before, share, shared := strings.Cut(text, "@")
	var lot flour.FlourLot
	name, err := named(before, &lot.Protein, quantity.Tell("cli.want_flour_and_protein_bread_flour", `a flour and its protein, such as "bread flour=13.2%%", and its share now after an @`))
	if err == nil && shared {
		err = lot.Share.UnmarshalText([]byte(share))
	}
	if err != nil {
		return err
	}
	lot.Name = name
	f.lots = append(f.lots, lot)
	return nil
}

func runFlour(s System, f *flourFlags) error {
	if err := f.check(); err != nil {
		return err
	}
	in := f.in
	need := func(flag string, want quantity.Phrase) {
		if !in.given(flag) {
			in.fault(flag, "", want, quantity.ErrRequired)
		}
	}
	var a telling
	var err error
	possible := true
	switch {
	case in.given("lot"):
		in.not("--lot, which asks for a blend", "gluten", "hydration", "protein", "w", "pl", "falling-number", "absorption")
		need("target", quantity.Tell("cli.want_protein_blend", "the protein of the blend"))
		for i := range f.lots {
			in.paths[fmt.Sprintf("Flours[%d]", i)] = "lot"
		}
		var blend flour.BlendedFlours
		blend, err = flour.FlourBlend{Flours: f.lots, Target: f.target, Total: f.total}.Shares()
		a, possible = blend, blend.Feasible
	case f.gluten:
		in.not("--gluten, which asks for gluten", "hydration", "w", "pl", "falling-number", "absorption")
		need("protein", quantity.Tell("cli.want_protein_flour", "the protein of the flour"))
		need("target", quantity.Tell("cli.want_protein_wanted", "the protein wanted"))
		a, err = flour.GlutenBoost{Protein: f.protein, Target: f.target, Flour: f.total}.Doses()
	case in.given("hydration"):
		in.not("--hydration, which asks for a judgment", "target", "total")
		f.strength.Protein = f.protein
		a, err = f.strength.Judge()
	default:
		in.fault("lot", "", quantity.Tell("cli.want_flours_to_blend_or_gluten", "flours to blend; or --gluten to reach a protein with gluten, or --hydration to judge a flour"), quantity.ErrRequired)
	}
	if wrong := in.complain(err); wrong != nil {
		return wrong
	}
	return s.tell(f.output, a, possible)
}
