package cli

import (
	"strings"

	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/ferment"
	"github.com/spf13/cobra"
)

func newTable(s System) *cobra.Command {
	cmd := &cobra.Command{
		Use:     "table",
		Short:   "Tables for teaching: bulk by temperature and leaven, water by flour and room",
		Example: "  maslin table bulk\n  maslin table water",
		Args:    subcommand,
		RunE:    func(cmd *cobra.Command, _ []string) error { return s.showHelp(cmd) },
	}
	cmd.AddCommand(newTableBulk(s), newTableWater(s))
	return cmd
}

// subcommand refuses a word that is no subcommand.
func subcommand(cmd *cobra.Command, args []string) error {
	if len(args) == 0 {
		return nil
	}
	var known []string
	for _, c := range cmd.Commands() {
		known = append(known, c.Name())
	}
	return badInput("maslin %s: no %s %s, want %s", cmd.Name(), cmd.Name(), quantity.Excerpt(args[0]), strings.Join(known, " or "))
}

func newTableBulk(s System) *cobra.Command {
	cmd := &cobra.Command{
		Use:   "bulk",
		Short: "How long bulk takes, by temperature and amount of leaven",
		Long: `bulk prints how long a dough held at one temperature takes to rise, for amounts of levain (flour
in it, of all flour) or of yeast (of the flour). Each time is the likely one; the line
below says how far doughs differ from it.`,
		Example: "  maslin table bulk\n  maslin table bulk --yeast instant --rise \"100 %\" --temperatures 20C,24C,28C",
		Args:    flagsOnly,
	}
	t := ferment.RiseTable{
		Bulk:         ferment.Bulk{Rise: quantity.NewPercent(75), Salt: quantity.NewPercent(2), Hydration: quantity.NewPercent(70)},
		Temperatures: celsius(18, 20, 22, 24, 26, 28),
	}
	var o output
	var rival ferment.Curve
	in := ask(cmd)
	listed(in, &t.Temperatures, quantity.ParseTemperature, "temperatures", "of the dough (18C,20C,22C,24C,26C,28C)", "Bulk.History", "Temperatures")
	listed(in, &t.Amounts, quantity.ParsePercent, "amounts", "of levain flour (5%,10%,15%,20%,30%), or of yeast (0.2%,0.5%,1%,1.5%,2%)",
		"Bulk.Inoculation", "Bulk.Yeast.Amount", "Amounts")
	in.value(&t.Bulk.Rise, "rise", "PERCENT", "wanted: 100 % is doubled (75 %)", "Bulk.Rise")
	in.value(&t.Bulk.Salt, "salt", "PERCENT", "of the flour (2 %)", "Bulk.Salt")
	in.value(&t.Bulk.Hydration, "hydration", "PERCENT", "of the flour (70 %)", "Bulk.Hydration")
	in.value(&t.Bulk.WholeGrain, "whole-grain", "PERCENT", "of the flour (0 %)", "Bulk.WholeGrain")
	in.word(yeastWord(&t.Bulk.Yeast.Kind), yeastWords, "yeast", "with yeast instead of a levain", "Bulk.Yeast.Kind")
	curveFlag(in, &rival)
	o.register(cmd)
	cmd.RunE = func(*cobra.Command, []string) error {
		if err := o.check(); err != nil {
			return err
		}
		amounts := percents(5, 10, 15, 20, 30)
		if in.given("yeast") {
			amounts = percents(0.2, 0.5, 1, 1.5, 2)
		}
		if t.Amounts == nil {
			t.Amounts = amounts
		}
		t.Bulk.Law = lawWith(rival, t.Bulk.Yeast.Kind != ferment.NoYeast)
		times, err := t.Times()
		if wrong := in.complain(err); wrong != nil {
			return wrong
		}
		return s.tell(o, times, true)
	}
	return cmd
}

func newTableWater(s System) *cobra.Command {
	cmd := &cobra.Command{
		Use:     "water",
		Short:   "How warm the water must be, by flour and room temperature",
		Example: "  maslin table water --dough 25C --warming 4dC\n  maslin table water --mixer planetary --levain 22C --us",
		Args:    flagsOnly,
	}
	var o output
	t := mixing.WaterTable{
		Target: quantity.Celsius(25), Mixer: mixing.Hand, Flour: celsius(10, 15, 18, 20, 22, 25, 28), Room: celsius(15, 18, 20, 22, 25, 28),
	}
	in := ask(cmd)
	in.value(&t.Target, "dough", "TEMPERATURE", "wanted when mixed (25C)", "Target")
	in.value(&t.Levain, "levain", "TEMPERATURE", "of the levain, when there is one", "Levain")
	in.value(&t.Warming, "warming", "DIFFERENCE", "how much mixing warms the dough: 4dC, 7dF", "Warming")
	in.word(&t.Mixer, wordsOf(quantity.Values[mixing.MixerKind]()...), "mixer", "whose guide value is taken without --warming (hand)", "Mixer")
	listed(in, &t.Flour, quantity.ParseTemperature, "flour", "temperatures of the flour (10C,15C,18C,20C,22C,25C,28C)", "Flour")
	listed(in, &t.Room, quantity.ParseTemperature, "room", "temperatures of the room (15C,18C,20C,22C,25C,28C)", "Room")
	o.register(cmd)
	cmd.RunE = func(*cobra.Command, []string) error {
		if err := o.check(); err != nil {
			return err
		}
		water, err := t.Water()
		if wrong := in.complain(err); wrong != nil {
			return wrong
		}
		return s.tell(o, water, true)
	}
	return cmd
}

// listed adds a flag that reads several quantities: "18C, 20C, 22C"; with decimal commas they are set apart by ";".
func listed[T any](in *asked, to *[]T, parse func(string) (T, error), name, usage string, fields ...string) {
	in.each(func(text string) error {
		at := ","
		if strings.Contains(text, ";") {
			at = ";"
		}
		*to = nil
		for _, part := range strings.Split(text, at) {
			v, err := parse(strings.TrimSpace(part))
			if err != nil {
				return err
			}
			*to = append(*to, v)
		}
		return nil
	}, name, "LIST", usage, fields...)
}

func celsius(values ...float64) []quantity.Temperature {
	var out []quantity.Temperature
	for _, v := range values {
		out = append(out, quantity.Celsius(v))
	}
	return out
}

func percents(values ...float64) []quantity.Percent {
	var out []quantity.Percent
	for _, v := range values {
		out = append(out, quantity.NewPercent(v))
	}
	return out
}
