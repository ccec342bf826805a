package cli

import (
	"encoding"

	"example.org/maslin/dough/food"
	"example.org/maslin/dough/quantity"
	"github.com/spf13/cobra"
)

// shortWord reads a word of the library without what every one of them begins or ends with: "fresh" for "fresh yeast".
type shortWord struct {
	before string
	of     encoding.TextUnmarshaler
	after  string
}

func (w shortWord) UnmarshalText(text []byte) error {
	return w.of.UnmarshalText([]byte(w.before + string(text) + w.after))
}

// yeastWord reads a form of yeast: "fresh", "active dry", "instant".
func yeastWord(kind encoding.TextUnmarshaler) shortWord { return shortWord{of: kind, after: " yeast"} }

var yeastWords = []string{"fresh", "active dry", "instant"}

func newYeast(s System) *cobra.Command {
	cmd := &cobra.Command{
		Use:   "yeast",
		Short: "One form of yeast for another: fresh, active dry, instant",
		Long: `yeast says how much of another form of yeast raises a dough alike, with the spread of the published
tables, which do not agree. Without --to it gives all forms.`,
		Example: `  maslin yeast --amount 20g --from fresh --to instant
  maslin yeast --amount 0.25oz --from active-dry --us`,
		Args: flagsOnly,
	}
	var o output
	var in food.YeastSwap
	a := ask(cmd)
	a.value(&in.Mass, "amount", "MASS", "of yeast", "Mass")
	a.word(yeastWord(&in.From), yeastWords, "from", "what it is", "From")
	a.word(yeastWord(&in.To), yeastWords, "to", "what it is to be (all)", "To")
	o.register(cmd)
	cmd.RunE = func(*cobra.Command, []string) error {
		if err := o.check(); err != nil {
			return err
		}
		if !a.given("amount") {
			a.fault("amount", "", quantity.Tell("cli.want_weight_yeast", "a weight of yeast"), quantity.ErrRequired)
		}
		r, err := in.Convert()
		if wrong := a.complain(err); wrong != nil {
			return wrong
		}
		return s.tell(o, r, true)
	}
	return cmd
}
