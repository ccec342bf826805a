package cli

import (
	"strconv"
	"strings"

	"example.org/maslin/bake"
	"example.org/maslin/dough"
	"example.org/maslin/dough/food"
	"example.org/maslin/dough/quantity"
)

// convert asks for an amount in other units, what a volume of a food weighs, or for another form of yeast.
type convert struct {
	Method food.FillMethod `flag:"method" words:"sifted,spooned,scooped,leveled"`
	To     dough.Kind      `flag:"to" words:"fresh,active dry,instant" form:"* yeast"`
	_      struct{}        `paths:"Food=FOOD Volume=AMOUNT Amount=AMOUNT Mass=AMOUNT Of=AMOUNT"`
}

func (q *convert) ask(c *call) error {
	text := strings.Join(c.args, " ")
	if p, err := bake.ParsePressure(text); err == nil {
		c.only(quantity.Tell("cli.with_food", "a food"), "method", "to", "working")
		inches := strconv.FormatFloat(p.InchesOfMercury(), 'f', 2, 64) + " inHg"
		return c.tell(food.OtherUnits{Amount: text, Units: []food.InOtherUnit{
			{Unit: "hectopascals", Value: p.String()}, {Unit: "inches of mercury", Value: inches}}}, nil)
	}
	said, wrong := food.ReadAmount(text)
	volume, notVolume := food.ReadVolume(text)
	yeast, isYeast := said.Yeast()
	switch {
	case isYeast:
		c.only(quantity.Tell("cli.with_food_by_volume", "a food by its volume"), "method")
		yeast.To = q.To
		return c.tell(yeast.Convert())
	case notVolume == nil:
		if c.only(quantity.Tell("cli.with_yeast_by_weight", "yeast by its weight"), "to"); q.Method != 0 {
			volume.Method = q.Method
		}
		return c.tell(volume.Weight())
	case wrong != nil:
		if oven, err := bake.ReadOvenSetting(text); err == nil {
			c.only(quantity.Tell("cli.with_food", "a food"), "method", "to", "working")
			return c.tell(oven.Dial())
		}
		var p quantity.Problems
		p.Join("Amount", wrong)
		return c.tell(food.OtherUnits{}, p.Err())
	case said.Of == "":
		c.only(quantity.Tell("cli.with_food", "a food"), "method", "to")
		c.only(quantity.Tell("cli.with_food_not_units", "a food: units are converted by definition"), "working")
	}
	out, err := said.OtherUnits()
	if t, e := quantity.ParseTemperature(text); e == nil {
		if mark, _ := bake.NearestMark(t); mark.IsValid() {
			out.Units = append(out.Units, food.InOtherUnit{Unit: "gas mark, the nearest", Value: mark.Number()})
		}
	}
	return c.tell(out, err)
}
