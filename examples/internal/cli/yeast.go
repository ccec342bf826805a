package cli

import (
	"example.org/maslin/dough"
	"example.org/maslin/dough/food"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"github.com/spf13/cobra"
)

var yeasts = []dough.Kind{dough.KindFreshYeast, dough.KindActiveDryYeast, dough.KindInstantYeast}

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
		in.From = from.kind
		wanted := yeasts
		if a.given("to") {
			wanted = []dough.Kind{to.kind}
		}
		return runYeast(s, o, a, in, wanted)
	}
	return cmd
}

type yeastLine struct {
	Kind dough.Kind    `json:"kind"`
	Mass quantity.Mass `json:"mass"`
	Low  quantity.Mass `json:"low"`
	High quantity.Mass `json:"high"`
}

func runYeast(s System, o output, a *asked, in food.YeastSwap, wanted []dough.Kind) error {
	var p quantity.Problems
	if !a.given("amount") {
		p.Add("Mass", "", "a weight of yeast", quantity.ErrRequired)
	}
	var lines []yeastLine
	var workings []working.Working
	for i, kind := range wanted {
		if kind == in.From && len(wanted) > 1 {
			continue
		}
		in.To = kind
		r, err := food.ConvertYeast(in)
		if err != nil && i == 0 || len(lines) == 0 {
			p.Join("", err)
		}
		if err == nil {
			lines = append(lines, yeastLine{kind, r.Mass, r.Low, r.High})
			workings = append(workings, r.Working())
		}
	}
	if wrong := a.complain(p.Err()); wrong != nil {
		return wrong
	}
	return s.show(o, answer{
		page: func(p *page, u units) {
			p.para(0, "In place of "+u.mass(in.Mass)+" "+in.From.String())
			p.line("")
			var rows [][]string
			for _, l := range lines {
				rows = append(rows, []string{u.mass(tenthGram(l.Mass)), l.Kind.String(), "published: " + u.mass(tenthGram(l.Low)) + " to " + u.mass(tenthGram(l.High))})
			}
			p.rows(2, "rll", rows)
			p.para(2, "yeasts differ as much as the tables do: watch the dough")
			p.para(2, "fresh yeast is two thirds water, dry yeast has next to none")
		},
		data: struct {
			Format string        `json:"format"`
			From   dough.Kind    `json:"from"`
			Amount quantity.Mass `json:"amount"`
			To     []yeastLine   `json:"to"`
		}{"maslin yeast 1", in.From, in.Mass, lines},
		workings: workings,
	})
}
