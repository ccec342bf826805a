package cli

import (
	"strconv"
	"strings"

	"example.org/maslin/bake"
	"example.org/maslin/dough"
	"example.org/maslin/dough/food"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
)

// convert asks for an amount in other units, what a volume of a food weighs, or for another form of yeast.
type convert struct {
	Method food.FillMethod `flag:"method" words:"sifted,spooned,scooped,leveled"`
	To     dough.Kind      `flag:"to" words:"fresh,active dry,instant" form:"* yeast"`
	_      struct{}        `paths:"Food=FOOD Volume=AMOUNT Amount=AMOUNT Mass=AMOUNT"`
}

func (q *convert) ask(c *call) error {
	var p quantity.Problems
	said, notVolume := food.ReadVolume(strings.Join(c.args, " "))
	amount, units, what := amountOf(strings.Fields(strings.Join(c.args, " ")))
	var yeast dough.Kind
	mass, notMass := quantity.ParseMass(amount)
	switch {
	case notMass == nil && yeastNamed(&yeast, what):
		c.only("a food by its volume", "method")
		return c.tell(food.YeastSwap{Mass: mass, From: yeast, To: q.To}.Convert())
	case notVolume == nil:
		if c.only("yeast by its weight", "to"); q.Method != 0 {
			said.Method = q.Method
		}
		return c.tell(said.Weight())
	case len(units) > 0 && what != "":
		p.Add("Amount", excerpt(amount), quantity.Tell("cli.want_volume_2_cups_or_250",
			`a volume, such as "2 cups" or "250 mL", to know what it weighs; or a weight of yeast`), quantity.ErrUnit)
	case len(units) == 0:
		p.Add("Amount", excerpt(strings.Join(c.args, " ")),
			quantity.Tell("cli.want_amount_unit_2_cups_1",
				`an amount with its unit, such as "2 cups", "1/2 cup honey", "20 oz", "375F" or "9 in"`), quantity.ErrUnit)
	default:
		c.only("a food", "method", "to")
		c.only("a food: units are converted by definition", "working")
	}
	return c.tell(inOtherUnits{amount, units}, p.Err())
}

// yeastNamed reads "fresh yeast", "active dry" or "dry yeast".
func yeastNamed(kind *dough.Kind, text string) bool {
	text = strings.Join(strings.Fields(strings.ReplaceAll(strings.ToLower(text), "-", " ")), " ")
	text = strings.TrimSuffix(text, " yeast")
	if text == "dry" {
		text = "active dry"
	}
	return kind.UnmarshalText([]byte(text+" yeast")) == nil
}

// amountOf finds how many of the words are the amount: "2 cups", "2cups" or "2 1/4 tsp", and what follows
// is the food.
func amountOf(words []string) (amount string, units []unitLine, food string) {
	for n := min(len(words), 5); n >= 1; n-- {
		amount = strings.Join(words[:n], " ")
		if units = inUnits(amount); len(units) > 0 {
			return amount, units, strings.Join(words[n:], " ")
		}
	}
	return strings.Join(words, " "), nil, ""
}

type unitLine struct {
	Unit  string `json:"unit"`
	Value string `json:"value"`
}

// inUnits says an amount in the usual units of its kind; none when it cannot be read.
func inUnits(text string) []unitLine {
	if p, err := bake.ParsePressure(text); err == nil {
		inches := strconv.FormatFloat(p.InchesOfMercury(), 'f', 2, 64) + " inHg"
		return []unitLine{{"hectopascals", p.String()}, {"inches of mercury", inches}}
	}
	if m, err := quantity.ParseMass(text); err == nil {
		return []unitLine{
			{"grams", m.Text(quantity.Gram, 2)}, {"kilograms", m.Text(quantity.Kilogram, 4)},
			{"ounces", m.Text(quantity.Ounce, 3)}, {"pounds", m.Text(quantity.Pound, 4)},
		}
	}
	if v, err := quantity.ParseVolume(text); err == nil {
		return []unitLine{
			{"milliliters", v.Text(quantity.Milliliter, 2)}, {"liters", v.Text(quantity.Liter, 4)},
			{"US cups", v.Text(quantity.USCup, 3)}, {"US quarts", v.Text(quantity.USQuart, 3)},
			{"US tablespoons", v.Text(quantity.USTablespoon, 2)}, {"US teaspoons", v.Text(quantity.USTeaspoon, 2)},
		}
	}
	if t, err := quantity.ParseTemperature(text); err == nil {
		return []unitLine{{"Celsius", t.Text(quantity.CelsiusScale, 1)}, {"Fahrenheit", t.Text(quantity.FahrenheitScale, 1)}}
	}
	if d, err := quantity.ParseDelta(text); err == nil {
		return []unitLine{{"Celsius", d.Text(quantity.CelsiusScale, 2)}, {"Fahrenheit", d.Text(quantity.FahrenheitScale, 2)}}
	}
	if l, err := quantity.ParseLength(text); err == nil {
		return []unitLine{
			{"centimeters", l.Text(quantity.Centimeter, 2)}, {"meters", l.Text(quantity.Meter, 3)},
			{"inches", l.Text(quantity.Inch, 3)}, {"feet", l.Text(quantity.Foot, 3)},
		}
	}
	return nil
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
	return report.Report{
		Headline: working.Tell("cli.amount", "%s", c.Amount),
		Sections: []report.Section{{Key: "units", Blocks: []report.Block{t}}},
	}
}
