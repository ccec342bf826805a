package desk

import (
	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

const (
	wheat  = "wheat bread flour"
	rye    = "whole rye flour"
	water  = "water"
	levain = "levain"
)

func percentageTasks() []task { return []task{scaleTask(), weightsTask(), meaningTask(), mishapTask()} }

// formulaFields are a bread of wheat and rye with a levain. The wheat is what is left to 100 %.
func formulaFields() []field {
	return []field{
		{name: "pieces", label: working.Tell("desk.field_pieces", "loaves"), kind: aCount, start: both("6"),
			slide: counts(1, 40)},
		{name: "each", label: working.Tell("desk.field_each", "weight of a loaf, baked"), kind: aMass,
			start: [2]string{"780 g", "27.5 oz"},
			slide: [2]slide{{100, 2000, 10, working.Gram}, {4, 70, 0.5, working.Ounce}}},
		{name: "loss", label: working.Tell("desk.field_loss", "lost in the oven, of the dough"), kind: aPercent,
			start: both("13 %"), slide: percents(0, 25, 0.5)},
		{name: "flours[1].percent", label: working.Tell("desk.field_rye", "whole rye; the rest is wheat"), kind: aPercent,
			start: both("25 %"), slide: percents(0, 100, 1)},
		{name: "liquids[0].percent", label: working.Tell("desk.field_water", "water"), kind: aPercent,
			start: both("70 %"), slide: percents(50, 100, 1)},
		{name: "salt", label: working.Tell("desk.field_salt", "salt"), kind: aPercent, start: both("2 %"),
			slide: percents(0, 3, 0.1)},
		{name: "preferments[0].flour", label: working.Tell("desk.field_prefermented", "flour that is in the levain"),
			kind: aPercent, start: both("12 %"), slide: percents(0, 50, 1)},
		{name: "preferments[0].hydration", label: working.Tell("desk.field_levain_hydration", "hydration of the levain"),
			kind: aPercent, start: both("100 %"), slide: percents(50, 130, 5)},
	}
}

// formulaPaths lead from the library's names of a formula and its target to formulaFields.
func formulaPaths() map[string]string {
	return map[string]string{"flours[0].percent": "flours[1].percent", "flours": "flours[1].percent",
		"preferments[0]": "preferments[0].flour", "baked.pieces": "pieces", "baked.each": "each", "baked.loss": "loss",
		"extra.liquids[0].percent": "extra[0].mass"}
}

// batch is the bread of formulaFields.
func (v *values) batch() (dough.Batch, error) {
	whole := quantity.Millionths(100_000_000)
	ryes, inLevain := percent(v, "flours[1].percent"), percent(v, "preferments[0].flour")
	f := dough.Formula{
		Flours:  []dough.Part{{Name: wheat, Percent: whole.Sub(ryes), Kind: dough.KindWheat}},
		Liquids: []dough.Part{{Name: water, Percent: percent(v, "liquids[0].percent")}},
		Salt:    percent(v, "salt"),
	}
	if ryes != (quantity.Percent{}) {
		f.Flours = append(f.Flours, dough.Part{Name: rye, Percent: ryes, Kind: dough.KindWholeRye})
	}
	hydration := percent(v, "preferments[0].hydration")
	if inLevain != (quantity.Percent{}) {
		f.Preferments = []dough.Preferment{{Name: levain, Flour: inLevain, Hydration: hydration}}
	}
	target := dough.Baked{Pieces: get[int](v, "pieces"), Each: mass(v, "each"), Loss: percent(v, "loss")}
	if err := v.problems.Err(); err != nil {
		return dough.Batch{}, err
	}
	return f.For(target)
}

// lineOf is what a list says of one ingredient.
func lineOf(lines []dough.DoughLine, name string) quantity.Mass {
	for _, l := range lines {
		if l.Name == name {
			return l.Mass
		}
	}
	return quantity.Mass{}
}

func scaleTask() task {
	return task{
		id: firstTask, title: working.Tell("desk.scale", "Flour is 100 %"),
		about: working.Tell("desk.scale_about",
			"Every percentage is of all the flour, the flour inside the levain too. Move "+
				"the levain: flour and water go from one bowl into the other, and the dough stays the same dough."),
		ask: working.Tell("desk.scale_ask",
			"How much water do you pour when you mix? The water in the levain is poured already."),
		guess: field{name: "guess", kind: aMass,
			slide: [2]slide{{unit: working.Gram}, {unit: working.Ounce}}},
		near: 5, fields: formulaFields(),
		paths: formulaPaths(),
		solve: func(v *values) (solved, error) {
			b, err := v.batch()
			if err != nil {
				return solved{}, err
			}
			return solved{
				report: b.Report(), workings: only(b), truth: lineOf(b.FinalDough(), water),
				picture: func(r working.Reader, width int) string { return drawBowls(b, r, width) },
			}, nil
		},
	}
}

// only is the working of one answer, made when it is asked for.
func only(of ...interface{ Working() working.Working }) func() []working.Working {
	return func() []working.Working {
		var out []working.Working
		for _, w := range of {
			out = append(out, w.Working())
		}
		return out
	}
}

func weighField(name string, label working.Message, metric, us string, high, highUS float64) field {
	return field{name: name, label: label, kind: aMass, start: [2]string{metric, us},
		slide: [2]slide{{0, high, 5, working.Gram}, {0, highUS, 0.25, working.Ounce}}}
}

func weightsTask() task {
	return task{
		id: "percentages.weights", title: working.Tell("desk.weights", "From the scale to percentages"),
		about: working.Tell("desk.weights_about",
			"These are weights from a bench. Pull any of them: the flour stays 100 %, and all "+
				"else is measured against it. The levain is half flour, half water here unless you change it."),
		ask: working.Tell("desk.weights_ask",
			"How much water has the dough in percent of its flour, when the levain is counted with "+
				"both its flour and its water?"),
		guess: field{name: "guess", kind: aPercent, slide: percents(40, 110, 0)}, near: 1,
		fields: []field{
			weighField("final.flours[0].mass", working.Tell("desk.field_weigh_wheat", "wheat flour"), "660 g", "23.25 oz",
				2000, 70),
			weighField("final.flours[1].mass", working.Tell("desk.field_weigh_rye", "whole rye flour"), "220 g", "7.75 oz",
				2000, 70),
			weighField("final.liquids[0].mass", working.Tell("desk.field_weigh_water", "water"), "580 g", "20.5 oz", 2000, 70),
			weighField("final.salt", working.Tell("desk.field_weigh_salt", "salt"), "20 g", "0.75 oz", 60, 2.5),
			weighField("levain", working.Tell("desk.field_weigh_levain", "levain"), "240 g", "8.5 oz", 1000, 35),
			{name: "levain_hydration", label: working.Tell("desk.field_levain_hydration", "hydration of the levain"),
				kind:  aPercent,
				start: both("100 %"), slide: percents(50, 130, 5)},
		},
		paths: map[string]string{"preferments[0]": "levain", "preferments": "levain", "final.flours": "final.flours[0].mass",
			"liquids[0].percent": "final.liquids[0].mass", "salt": "final.salt", "preferments[0].hydration": "levain_hydration",
			"preferments[0].bowl.flours[0].mass": "levain", "preferments[0].bowl.liquids[0].mass": "levain"},
		solve: func(v *values) (solved, error) {
			w := dough.Weights{Final: dough.Bowl{
				Liquids: []dough.Weight{{Name: water, Mass: mass(v, "final.liquids[0].mass")}}, Salt: mass(v, "final.salt"),
			}}
			for _, f := range []struct {
				name, path string
				kind       dough.Kind
			}{{wheat, "final.flours[0].mass", dough.KindWheat}, {rye, "final.flours[1].mass", dough.KindWholeRye}} {
				if m := mass(v, f.path); m != (quantity.Mass{}) {
					w.Final.Flours = append(w.Final.Flours, dough.Weight{Name: f.name, Mass: m, Kind: f.kind})
				}
			}
			ripe, wet := mass(v, "levain"), percent(v, "levain_hydration")
			if err := v.problems.Err(); err != nil {
				return solved{}, err
			}
			if ripe != (quantity.Mass{}) {
				bowl, err := splitLevain(ripe, wet)
				if err != nil {
					return solved{}, quantity.At("levain", err)
				}
				w.Preferments = []dough.PrefermentWeights{{Name: levain, Bowl: bowl}}
			}
			b, err := w.Batch()
			if err != nil {
				return solved{}, err
			}
			return solved{report: b.Report(), workings: only(b), truth: b.Hydration(),
				picture: func(r working.Reader, width int) string { return drawBowls(b, r, width) }}, nil
		},
	}
}

// splitLevain is the flour and the water in a ripe levain of wheat.
func splitLevain(ripe quantity.Mass, wet quantity.Percent) (dough.Bowl, error) {
	parts, err := quantity.Apportion(ripe, []quantity.Percent{quantity.Millionths(100_000_000), wet})
	if err != nil {
		return dough.Bowl{}, err
	}
	return dough.Bowl{
		Flours:  []dough.Weight{{Name: wheat, Mass: parts[0], Kind: dough.KindWheat}},
		Liquids: []dough.Weight{{Name: water, Mass: parts[1]}},
	}, nil
}

func mishapTask() task {
	return task{
		id: "percentages.mishap", title: working.Tell("desk.mishap", "Too much water in the bowl"),
		about: working.Tell("desk.mishap_about",
			"Somebody poured too much. What the dough has become, and what brings its hydration "+
				"and salt back, is the library's to say; how much bread it makes then, too."),
		ask: working.Tell("desk.mishap_ask", "How much flour, wheat and rye together, mends it?"),
		guess: field{name: "guess", kind: aMass,
			slide: [2]slide{{unit: working.Gram}, {unit: working.Ounce}}},
		near: 5,
		fields: append([]field{{name: "extra[0].mass", label: working.Tell("desk.field_extra", "water too much"), kind: aMass,
			start: [2]string{"40 g", "1.5 oz"},
			slide: [2]slide{{0, 400, 5, working.Gram}, {0, 14, 0.25, working.Ounce}}}}, formulaFields()...),
		paths: formulaPaths(),
		solve: func(v *values) (solved, error) {
			extra := mass(v, "extra[0].mass")
			b, err := v.batch()
			if err != nil {
				return solved{}, err
			}
			r, err := dough.Mishap{Batch: b, Extra: []dough.Stock{{Name: water, Mass: extra}}}.Repair()
			if err != nil {
				return solved{}, err
			}
			flour := quantity.Sum(lineOf(r.Add, wheat), lineOf(r.Add, rye))
			return solved{report: r.Report(), workings: only(r), truth: flour,
				picture: func(r2 working.Reader, width int) string { return drawBowls(r.After, r2, width) }}, nil
		},
	}
}
