package food

import (
	"errors"
	"strings"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
)

// SaidAmount is an amount as somebody says it, and what it is of.
type SaidAmount struct {
	Amount string `json:"amount"`       // "2 1/4 tsp"; with its unit
	Of     string `json:"of,omitempty"` // "instant yeast"; may be empty
}

// ReadAmount splits what somebody says into the amount, which is as many of the first words as are one, and what it is
// of: "2cups", "2 1/4 tsp instant yeast". Errors: ErrUnit for a text that begins with no amount.
func ReadAmount(text string) (SaidAmount, error) {
	words := strings.Fields(text)
	for n := min(len(words), 5); n >= 1; n-- {
		said := SaidAmount{strings.Join(words[:n], " "), strings.Join(words[n:], " ")}
		if len(said.units()) > 0 {
			return said, nil
		}
	}
	var wrong *quantity.InputError
	if _, err := ReadVolume(text); errors.As(err, &wrong) && wrong.Code == noSize {
		return SaidAmount{}, err
	}
	return SaidAmount{}, &quantity.InputError{
		Got: quantity.Excerpt(text), Err: quantity.ErrUnit, Want: quantity.Tell("food.want_amount",
			`an amount with its unit, such as "2 cups", "1/2 cup honey", "20 oz", "375F", "gas 6" or "9 in"`),
	}
}

// Yeast answers: is it a weight of yeast? "20 g fresh yeast", "7 g active dry"; "dry" is active dry.
func (a SaidAmount) Yeast() (YeastSwap, bool) {
	of := strings.Join(strings.Fields(strings.ReplaceAll(strings.ToLower(a.Of), "-", " ")), " ")
	of = strings.TrimSuffix(of, " yeast")
	if of == "dry" {
		of = "active dry"
	}
	var kind dough.Kind
	mass, err := quantity.ParseMass(a.Amount)
	if err != nil || kind.UnmarshalText([]byte(of+" yeast")) != nil {
		return YeastSwap{}, false
	}
	return YeastSwap{Mass: mass, From: kind}, true
}

// OtherUnits is an amount in the usual units of its kind. It is exact but for the last decimal that is shown.
type OtherUnits struct {
	Amount string        `json:"amount"`
	Units  []InOtherUnit `json:"units"`
}

// InOtherUnit is an amount in one unit.
type InOtherUnit struct {
	Unit  string `json:"unit"`
	Value string `json:"value"`
}

// OtherUnits answers: how much is it in the other units of a mass, a volume, a temperature, a difference of
// temperatures or a length?
//
// Units are converted by definition. Errors: ErrUnit for what is none of them, and for an amount of
// something, whose weight is [FoodVolume]'s to tell. Source: NIST SP 811 (2008), appendix B.8.
func (a SaidAmount) OtherUnits() (OtherUnits, error) {
	var p quantity.Problems
	units := a.units()
	if len(units) == 0 {
		_, err := ReadAmount(a.Amount)
		p.Join("Amount", err)
	}
	if a.Of != "" {
		p.Add("Amount", quantity.Excerpt(a.Amount), quantity.Tell("food.want_amount_alone",
			`a volume, such as "2 cups" or "250 mL", to know what it weighs; or a weight of yeast`), quantity.ErrUnit)
	}
	return OtherUnits{a.Amount, units}, p.ErrFor(a)
}

// units are the amount in the usual units of its kind; none when it cannot be read.
func (a SaidAmount) units() []InOtherUnit {
	if m, err := quantity.ParseMass(a.Amount); err == nil {
		return []InOtherUnit{
			{"grams", m.Text(quantity.Gram, 2)}, {"kilograms", m.Text(quantity.Kilogram, 4)},
			{"ounces", m.Text(quantity.Ounce, 3)}, {"pounds", m.Text(quantity.Pound, 4)},
		}
	}
	if v, err := quantity.ParseVolume(a.Amount); err == nil {
		return []InOtherUnit{
			{"milliliters", v.Text(quantity.Milliliter, 2)}, {"deciliters", v.Text(quantity.Deciliter, 3)},
			{"liters", v.Text(quantity.Liter, 4)},
			{"US cups", v.Text(quantity.USCup, 3)}, {"US quarts", v.Text(quantity.USQuart, 3)},
			{"US tablespoons", v.Text(quantity.USTablespoon, 2)}, {"US teaspoons", v.Text(quantity.USTeaspoon, 2)},
		}
	}
	if t, err := quantity.ParseTemperature(a.Amount); err == nil {
		return []InOtherUnit{{"Celsius", t.Text(quantity.CelsiusScale, 1)},
			{"Fahrenheit", t.Text(quantity.FahrenheitScale, 1)}}
	}
	if d, err := quantity.ParseDelta(a.Amount); err == nil {
		return []InOtherUnit{{"Celsius", d.Text(quantity.CelsiusScale, 2)},
			{"Fahrenheit", d.Text(quantity.FahrenheitScale, 2)}}
	}
	if l, err := quantity.ParseLength(a.Amount); err == nil {
		return []InOtherUnit{
			{"centimeters", l.Text(quantity.Centimeter, 2)}, {"meters", l.Text(quantity.Meter, 3)},
			{"inches", l.Text(quantity.Inch, 3)}, {"feet", l.Text(quantity.Foot, 3)},
		}
	}
	return nil
}

// String is the headline of the report.
func (u OtherUnits) String() string { return u.Report().Headline.String() }

// Report lists the units.
func (u OtherUnits) Report() report.Report {
	t := report.Grid{Key: "units", Columns: []report.GridColumn{{Key: "value", Right: true}, {Key: "unit"}}}
	for _, l := range u.Units {
		t.Rows = append(t.Rows, []report.Cell{report.Of(l.Value), report.Of(working.Tell("food.unit", "%s", l.Unit))})
	}
	return report.Report{
		Headline: working.Tell("food.amount", "%s", u.Amount),
		Sections: []report.Section{{Key: "units", Blocks: []report.Block{t}}},
	}
}
