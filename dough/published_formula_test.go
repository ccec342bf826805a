package dough_test

import (
	"strings"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
)

var formulaChecks = map[string]check{
	"formula": checkFormula,
}

// formulaOf reads a formula: flours, liquids, others and inclusions are lists of percentages.
func formulaOf(in *inputs) dough.Formula {
	parts := func(key string) []dough.Part {
		if !in.has(key) {
			return nil
		}
		names, values := in.list(key)
		var out []dough.Part
		for i, v := range values {
			share, water, _ := strings.Cut(v, "/") // "30%/88.13%": the ingredient's water content
			part := dough.Part{Name: names[i], Percent: percentIn(in, share)}
			if water != "" {
				part.Water, part.Kind = percentIn(in, water), dough.KindOther
			}
			if names[i] == "milk" {
				part.Kind = dough.KindMilk
			}
			out = append(out, part)
		}
		return out
	}
	f := dough.Formula{Flours: parts("flours"), Liquids: parts("liquids"), Others: parts("others"), Inclusions: parts("inclusions")}
	if in.has("salt") {
		f.Salt = in.percent("salt")
	}
	return f
}

func percentIn(in *inputs, text string) quantity.Percent {
	p, err := quantity.ParsePercent(text)
	if err != nil {
		in.t.Fatal(err)
	}
	return p
}

func massUnit(in *inputs) quantity.MassUnit {
	switch u := in.text("unit"); u {
	case "g":
		return quantity.Gram
	case "kg":
		return quantity.Kilogram
	case "oz":
		return quantity.Ounce
	case "lb":
		return quantity.Pound
	default:
		in.t.Fatalf("unit %q", u)
		return 0
	}
}

func checkFormula(in *inputs) float64 {
	f := formulaOf(in)
	var target dough.Target = dough.ByFlour{Mass: quantity.Kilograms(1)}
	switch {
	case in.has("dough"):
		target = dough.ByDough{Mass: in.mass("dough")}
	case in.has("flour"):
		target = dough.ByFlour{Mass: in.mass("flour")}
	}
	b, err := f.For(target)
	if err != nil {
		in.t.Fatal(err)
	}
	what, name, _ := strings.Cut(in.text("get"), ":")
	switch what {
	case "total":
		return b.Total().Points()
	case "dough":
		return b.Dough().In(massUnit(in))
	case "flour":
		return b.Flour().In(massUnit(in))
	case "line":
		for _, l := range b.Overall() {
			if l.Name == name {
				return l.Mass.In(massUnit(in))
			}
		}
	}
	in.t.Fatalf("cannot get %q", in.text("get"))
	return 0
}
