package cli

import (
	"strings"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/ferment"
	"github.com/spf13/cobra"
)

func curveKeys() []string {
	var out []string
	for _, c := range ferment.Curves() {
		out = append(out, c.About().Key)
	}
	return out
}

// curveNamed finds a rate curve by its key.
func curveNamed(key string) (ferment.Curve, error) {
	if c, ok := ferment.CurveNamed(key); ok {
		return c, nil
	}
	return ferment.Curve{}, &quantity.InputError{Got: quantity.Excerpt(key), Want: quantity.Tell("cli.want_one", "one of %s", strings.Join(curveKeys(), ", ")), Err: quantity.ErrOutOfRange}
}

// curveFlag reads a rival rate curve by its name.
func curveFlag(in *asked, to *ferment.Curve, fields ...string) {
	in.each(func(text string) (err error) { *to, err = curveNamed(text); return err }, "curve", "NAME",
		"rival rate curve of growth in place of the law's own; maslin compare curves lists them", append(fields, "Law", "Law.Levain", "Law.Yeast")...)
}

// lawWith is the gas balance, with a rival curve of growth when one is asked for.
func lawWith(rival ferment.Curve, ofYeast bool) ferment.Law {
	switch {
	case rival.IsZero():
		return ferment.GasBalance()
	case ofYeast:
		return ferment.GasBalance().With(ferment.Rivals{Yeast: rival})
	}
	return ferment.GasBalance().With(ferment.Rivals{Levain: rival})
}

func newCompareCurves(s System) *cobra.Command {
	cmd := &cobra.Command{
		Use:     "curves [CURVE CURVE]",
		Short:   "Rate curves side by side: how fast the culture doubles at each temperature",
		Example: "  maslin compare curves\n  maslin compare curves ganzle-yeast-held trade-q10 --temperatures 5C,15C,25C",
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) != 0 && len(args) != 2 {
				return badInput("maslin compare curves: got %d curves, want two or none; there are: %s", len(args), strings.Join(curveKeys(), ", "))
			}
			return nil
		},
		ValidArgsFunction: func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
			return curveKeys(), cobra.ShellCompDirectiveNoFileComp
		},
	}
	var o output
	in := ask(cmd)
	t := ferment.CurveTable{Temperatures: celsius(4, 8, 12, 16, 20, 24, 28, 32, 36)}
	listed(in, &t.Temperatures, quantity.ParseTemperature, "temperatures", "at these (4C,8C,12C,16C,20C,24C,28C,32C,36C)", "Temperatures")
	in.paths["Curves"] = "CURVE"
	o.register(cmd)
	cmd.RunE = func(_ *cobra.Command, args []string) error {
		if err := o.check(); err != nil {
			return err
		}
		t.Curves = []ferment.Curve{ferment.GanzleYeastHeld(), ferment.TradeQ10()}
		var p quantity.Problems
		for i, key := range args {
			c, err := curveNamed(key)
			p.Join("Curves", err)
			t.Curves[i] = c
		}
		rates, err := t.Rates()
		if p.Err() != nil {
			err = p.Err()
		}
		if wrong := in.complain(err); wrong != nil {
			return wrong
		}
		return s.tell(o, rates, true)
	}
	return cmd
}
