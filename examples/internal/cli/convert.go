package cli

import (
	"strconv"
	"strings"

	"example.org/maslin/bake"
	"example.org/maslin/dough/food"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"github.com/spf13/cobra"
)

func newConvert(s System) *cobra.Command {
	cmd := &cobra.Command{
		Use:   "convert AMOUNT [FOOD]",
		Short: "Cups and spoons to grams, and ounces, pounds, °F and the like exactly",
		Long: `convert turns a weight, a volume, a length, a pressure or a temperature into other units, exactly. With the name
of a food it turns a volume into a weight, as a range: a cup of flour differs by a quarter by
how it was filled, so name the method. A stick, a packet, a pinch and eggs are read too. Weigh when you
can.`,
		Example: `  maslin convert 2cups bread flour --method scooped
  maslin convert 2 1/4 tsp instant yeast
  maslin convert 20oz
  maslin convert 375F`,
	}
	var o output
	var v food.FoodVolume
	a := ask(cmd)
	a.word(&v.Method, wordsOf(food.Sifted, food.Spooned, food.Scooped, food.Leveled), "method", "how the cup was filled", "Method")
	a.paths["Food"], a.paths["Volume"], a.paths["Amount"] = "FOOD", "AMOUNT", "AMOUNT"
	o.register(cmd)
	cmd.RunE = func(_ *cobra.Command, args []string) error {
		if err := o.check(); err != nil {
			return err
		}
		return runConvert(s, o, a, v, args)
	}
	return cmd
}

// amountOf finds how many of the arguments are the amount: "2 cups", "2cups" or "2 1/4 tsp", and what follows
// is the food.
func amountOf(args []string) (amount, food string) {
	words := strings.Fields(strings.Join(args, " "))
	for n := min(len(words), 5); n >= 1; n-- {
		text := strings.Join(words[:n], " ")
		if len(inUnits(text)) > 0 {
			return text, strings.Join(words[n:], " ")
		}
	}
	return strings.Join(words, " "), ""
}

type unitLine struct {
	Unit  string `json:"unit"`
	Value string `json:"value"`
}

// inUnits says an amount in the usual units of its kind; none when it cannot be read.
func inUnits(text string) []unitLine {
	var out []unitLine
	if p, err := bake.ParsePressure(text); err == nil {
		out = append(out, unitLine{"hectopascals", p.String()}, unitLine{"inches of mercury", strconv.FormatFloat(p.InchesOfMercury(), 'f', 2, 64) + " inHg"})
		return out
	}
	add := func(unit, value string) { out = append(out, unitLine{unit, value}) }
	if m, err := quantity.ParseMass(text); err == nil {
		add("grams", m.Text(quantity.Gram, 2))
		add("kilograms", m.Text(quantity.Kilogram, 4))
		add("ounces", m.Text(quantity.Ounce, 3))
		add("pounds", m.Text(quantity.Pound, 4))
		return out
	}
	if v, err := quantity.ParseVolume(text); err == nil {
		add("milliliters", v.Text(quantity.Milliliter, 2))
		add("liters", v.Text(quantity.Liter, 4))
		add("US cups", v.Text(quantity.USCup, 3))
		add("US quarts", v.Text(quantity.USQuart, 3))
		add("US tablespoons", v.Text(quantity.USTablespoon, 2))
		add("US teaspoons", v.Text(quantity.USTeaspoon, 2))
		return out
	}
	if t, err := quantity.ParseTemperature(text); err == nil {
		add("Celsius", t.Text(quantity.CelsiusScale, 1))
		add("Fahrenheit", t.Text(quantity.FahrenheitScale, 1))
		return out
	}
	if d, err := quantity.ParseDelta(text); err == nil {
		add("Celsius", d.Text(quantity.CelsiusScale, 2))
		add("Fahrenheit", d.Text(quantity.FahrenheitScale, 2))
		return out
	}
	if l, err := quantity.ParseLength(text); err == nil {
		add("centimeters", l.Text(quantity.Centimeter, 2))
		add("meters", l.Text(quantity.Meter, 3))
		add("inches", l.Text(quantity.Inch, 3))
		add("feet", l.Text(quantity.Foot, 3))
	}
	return out
}

// inOtherUnits is an amount in the usual units of its kind.
type inOtherUnits struct {
	Amount string     `json:"amount"`
	Units  []unitLine `json:"units"`
}

// Report lists the units.
func (c inOtherUnits) Report() report.Report {
	t := report.Grid{Key: "units", Columns: []report.GridColumn{{Key: "value", Right: true}, {Key: "unit"}}}
	for _, l := range c.Units {
		t.Rows = append(t.Rows, []report.Cell{report.Of(l.Value), report.Of(l.Unit)})
	}
	return report.Report{Headline: working.Tell("cli.amount", "%s", c.Amount), Sections: []report.Section{{Key: "units", Blocks: []report.Block{t}}}}
}

func runConvert(s System, o output, a *asked, v food.FoodVolume, args []string) error {
	var p quantity.Problems
	amount, what := amountOf(args)
	lines := inUnits(amount)
	var weight food.FoodWeight
	said, err := food.ReadVolume(strings.Join(args, " "))
	switch {
	case len(args) == 0:
		p.Required("Amount", quantity.Tell("cli.want_amount_2_cups_1_2", `an amount, such as "2 cups", "1/2 cup honey", "20 oz" or "375F"`))
	case err == nil:
		if v.Method != 0 {
			said.Method = v.Method
		}
		weight, err = said.Weight()
		p.Join("", err)
	case len(lines) > 0 && what != "":
		p.Add("Amount", quantity.Excerpt(amount), quantity.Tell("cli.want_volume_2_cups_or_250", `a volume, such as "2 cups" or "250 mL", to know what it weighs`), quantity.ErrUnit)
	case len(lines) == 0:
		p.Add("Amount", quantity.Excerpt(amount), quantity.Tell("cli.want_amount_unit_2_cups_1", `an amount with its unit, such as "2 cups", "1/2 cup honey", "20 oz", "375F" or "9 in"`), quantity.ErrUnit)
	default:
		a.only("a food", "method")
		a.only("a food: units are converted by definition", "working")
	}
	if wrong := a.complain(p.Err()); wrong != nil {
		return wrong
	}
	if len(weight.Used) > 0 {
		return s.tell(o, weight, true)
	}
	return s.tell(o, inOtherUnits{amount, lines}, true)
}
