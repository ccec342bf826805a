package cli

import (
	"example.org/maslin/dough"
	"example.org/maslin/dough/food"
	"example.org/maslin/dough/quantity"
	"github.com/spf13/cobra"
)

// yeastWord is a form of yeast as a flag reads it: "fresh", "active dry", "instant".
type yeastWord struct{ kind dough.Kind }

func (y *yeastWord) UnmarshalText(text []byte) error {
	return y.kind.UnmarshalText(append(text, " yeast"...))
}

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
	var from, to yeastWord
	var in food.YeastSwap
	a := ask(cmd)
	a.value(&in.Mass, "amount", "MASS", "of yeast", "Mass")
	a.word(&from, yeastWords, "from", "what it is", "From")
	a.word(&to, yeastWords, "to", "what it is to be (all)", "To")
	o.register(cmd)
	cmd.RunE = func(*cobra.Command, []string) error {
		if err := o.check(); err != nil {
			return err
		}
		if !a.given("amount") {
			a.fault("amount", "", "a weight of yeast", quantity.ErrRequired)
		}
		in.From, in.To = from.kind, to.kind
		r, err := in.Convert()
		if wrong := a.complain(err); wrong != nil {
			return wrong
		}
		return s.tell(o, r, true)
	}
	return cmd
}
