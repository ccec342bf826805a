package cli

import (
	"example.org/maslin/dough/mixing"
	"github.com/spf13/cobra"
)

func newScald(s System) *cobra.Command {
	cmd := &cobra.Command{
		Use:   "scald",
		Short: "How hot the water of a scald must be for the mash to reach 65 °C",
		Long: `scald says how hot the water must be that is poured over flour for the mash to reach a temperature,
65 °C unless you say otherwise, and what boiling water gives where you are.`,
		Example: `  maslin scald --flour-weight 200g --flour 20C --water-weight 400g
  maslin scald --flour-weight 200g --flour 20C --water-weight 250g --altitude 1150m`,
		Args: flagsOnly,
	}
	var o output
	var q mixing.Scald
	in := ask(cmd)
	in.value(&q.Flour, "flour-weight", "MASS", "the flour", "Flour")
	in.value(&q.FlourTemperature, "flour", "TEMPERATURE", "of the flour", "FlourTemperature")
	in.value(&q.Water, "water-weight", "MASS", "the water", "Water")
	in.value(&q.Mash, "mash", "TEMPERATURE", "wanted of the mash (65 °C)", "Mash")
	in.value(&q.Altitude, "altitude", "LENGTH", "where you are, for the boiling point", "Altitude")
	o.register(cmd)
	cmd.RunE = func(*cobra.Command, []string) error {
		if err := o.check(); err != nil {
			return err
		}
		r, err := q.Pour()
		if wrong := in.complain(err); wrong != nil {
			return wrong
		}
		return s.tell(o, r, true)
	}
	return cmd
}
