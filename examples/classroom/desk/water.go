package desk

import (
	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

func waterTasks() []task { return []task{planWaterTask(), frictionTask(), iceTask(), mixerClassTask()} }

func mixerField() field {
	return field{name: "mixer", label: working.Tell("desk.field_mixer", "how it is mixed"), kind: aChoice,
		start: both(mixing.Planetary.String()), choices: choicesOf([]mixing.MixerKind{
			mixing.Hand, mixing.Planetary, mixing.Spiral, mixing.Fork, mixing.Processor})}
}

func planWaterTask() task {
	return task{
		id: "water.plan", title: working.Tell("desk.water_plan", "How warm must the water be?"),
		about: working.Tell("desk.water_plan_about",
			"Each thermometer pulls the dough away from what is wanted, as a lever about it. "+
				"The factor method gives every lever the same arm; the heat balance an arm as long as its heat is heavy."),
		ask:   working.Tell("desk.water_plan_ask", "How warm must the water be?"),
		guess: field{name: "guess", kind: aTemperature, slide: temperatures(-20, 60, 0, -4, 140, 0)}, near: 1,
		fields: []field{
			kitchenTemperature("target", working.Tell("desk.field_target", "dough wanted"), "25 °C", "77 °F"),
			kitchenTemperature("ingredients[0].temperature", working.Tell("desk.field_flour_temperature", "flour"), "20 °C",
				"68 °F"),
			kitchenTemperature("ingredients[1].temperature", working.Tell("desk.field_levain_temperature", "levain"), "24 °C",
				"75 °F"),
			kitchenTemperature("room", working.Tell("desk.field_room", "room"), "22 °C", "72 °F"),
			kitchenTemperature("tap", working.Tell("desk.field_tap", "tap"), "12 °C", "54 °F"),
			weighField("ingredients[0].mass", working.Tell("desk.field_flour_mass", "weight of the flour"), "1760 g", "62 oz",
				5000, 180),
			weighField("ingredients[1].mass", working.Tell("desk.field_levain_mass", "weight of the levain"), "480 g", "17 oz",
				3000, 100),
			weighField("water", working.Tell("desk.field_water_mass", "weight of the water to pour"), "1160 g", "41 oz", 4000,
				140),
			mixerField(),
		},
		paths: map[string]string{"factors.others[0].temperature": "ingredients[0].temperature", "water_temperature": "tap"},
		solve: func(v *values) (solved, error) {
			in := mixing.Planned{
				Target: temperature(v, "target"), Room: temperature(v, "room"), Tap: temperature(v, "tap"),
				Water: mass(v, "water"), Mixer: word[mixing.MixerKind](v, "mixer"),
				Ingredients: []mixing.Portion{
					{Name: "flour", Mass: mass(v, "ingredients[0].mass"), Temperature: temperature(v, "ingredients[0].temperature"),
						Substance: mixing.Flour},
					{Name: levain, Mass: mass(v, "ingredients[1].mass"), Temperature: temperature(v, "ingredients[1].temperature"),
						Substance: mixing.Levain, Hydration: quantity.Millionths(100_000_000)},
				},
			}
			if err := v.problems.Err(); err != nil {
				return solved{}, err
			}
			p, err := in.Pour()
			if err != nil {
				return solved{}, err
			}
			return solved{report: p.Report(), workings: p.Workings, truth: p.Temperature,
				picture: func(r working.Reader, width int) string { return drawLevers(in, p, r, width) }}, nil
		},
	}
}

func factorFields() []field {
	return []field{
		kitchenTemperature("others[0].temperature", working.Tell("desk.field_flour_temperature", "flour"),
			"21 °C", "70 °F"),
		kitchenTemperature("others[1].temperature", working.Tell("desk.field_room", "room"), "23 °C", "73 °F"),
	}
}

func (v *values) factors() []mixing.Factor {
	return []mixing.Factor{
		{Kind: mixing.FlourFactor, Temperature: temperature(v, "others[0].temperature")},
		{Kind: mixing.RoomFactor, Temperature: temperature(v, "others[1].temperature")},
	}
}

func frictionTask() task {
	return task{
		id: "water.friction", title: working.Tell("desk.friction", "What does your mixer do?"),
		about: working.Tell("desk.friction_about",
			"Measure one dough when the mixer stops, and the mixer has told you its friction "+
				"factor. It is a difference of temperatures, counted once for every thermometer."),
		ask:   working.Tell("desk.friction_ask", "Which friction factor has this mixer, for three factors?"),
		guess: field{name: "guess", kind: aDelta}, near: 0.5,
		fields: append([]field{
			kitchenTemperature("dough", working.Tell("desk.field_dough_measured", "dough when the mixer stops"), "26 °C",
				"79 °F"),
			kitchenTemperature("water", working.Tell("desk.field_water_poured", "water that was poured"), "20 °C", "68 °F"),
		}, factorFields()...),
		solve: func(v *values) (solved, error) {
			in := mixing.Measured{Dough: temperature(v, "dough"), Water: temperature(v, "water"), Others: v.factors()}
			if err := v.problems.Err(); err != nil {
				return solved{}, err
			}
			f, err := in.Friction()
			if err != nil {
				return solved{}, err
			}
			return solved{report: f.Report(), workings: only(f), truth: f.Factor}, nil
		},
	}
}

func iceTask() task {
	return task{
		id: "water.ice", title: working.Tell("desk.ice", "Ice, where water cannot be poured so cold"),
		about: working.Tell("desk.ice_about",
			"On a hot day the water would have to be colder than the tap, perhaps colder than ice water. "+
				"Some of it goes in as ice then; melting takes the heat of eighty degrees."),
		ask: working.Tell("desk.ice_ask", "How much of the water must be ice?"),
		guess: field{name: "guess", kind: aMass,
			slide: [2]slide{{unit: working.Gram}, {unit: working.Ounce}}}, near: 15,
		fields: []field{
			weighField("water", working.Tell("desk.field_all_water", "all of the water"), "1000 g", "35 oz", 4000, 140),
			kitchenTemperature("tap", working.Tell("desk.field_tap", "tap"), "18 °C", "64 °F"),
			{name: "need", label: working.Tell("desk.field_need", "as cold as it must act"), kind: aTemperature,
				start: [2]string{"4 °C", "39 °F"}, slide: temperatures(-40, 20, 0.5, -40, 68, 1)},
			{name: "ice", label: working.Tell("desk.field_ice", "the ice"), kind: aTemperature,
				start: [2]string{"0 °C", "32 °F"}, slide: temperatures(-25, 0, 0.5, -13, 32, 1)},
		},
		solve: func(v *values) (solved, error) {
			in := mixing.IceWater{Water: mass(v, "water"), Tap: temperature(v, "tap"), Need: temperature(v, "need"),
				Ice: temperature(v, "ice")}
			if err := v.problems.Err(); err != nil {
				return solved{}, err
			}
			r, err := in.Replace()
			if err != nil {
				return solved{}, err
			}
			return solved{report: r.Report(), workings: only(r), truth: r.Ice}, nil
		},
	}
}

// mixerClassTask pools what a class measured on one mixer.
func mixerClassTask() task {
	celsius := func(name string, label working.Message) field {
		return field{name: name, label: label, kind: aTemperature}
	}
	return task{
		id: "water.class", title: working.Tell("desk.mixer_class", "The class measures its mixer"),
		about: working.Tell("desk.mixer_class_about",
			"Every group mixes one dough of the same weight, and writes down a row. The more rows, "+
				"the better the class knows its mixer."),
		ask: working.Tell("desk.mixer_class_ask",
			"By how much does this mixer warm the dough in one minute, by all that was measured?"),
		guess: field{name: "guess", kind: aDelta}, near: 0.1,
		fields: []field{
			weighField("flour", working.Tell("desk.field_flour_mass", "weight of the flour"), "1000 g", "35 oz", 5000, 180),
			weighField("water", working.Tell("desk.field_water_mass", "weight of the water to pour"), "650 g", "23 oz", 4000,
				140),
			mixerField(),
			{name: "batches", label: working.Tell("desk.field_batches", "what the groups measured"), kind: aTable, most: 40,
				start: [2]string{
					"21 °C|15 °C|22 °C|8 min|25.5 °C;21 °C|18 °C|22 °C|8 min|27 °C;20 °C|16 °C|21 °C|10 min|27 °C",
					"70 °F|59 °F|72 °F|8 min|78 °F;70 °F|64 °F|72 °F|8 min|81 °F;68 °F|61 °F|70 °F|10 min|81 °F"},
				columns: []field{
					celsius("flour", working.Tell("desk.field_flour_temperature", "flour")),
					celsius("water", working.Tell("desk.field_water_poured", "water that was poured")),
					celsius("room", working.Tell("desk.field_room", "room")),
					{name: "mixed", label: working.Tell("desk.field_mixed", "mixed"), kind: aTime},
					celsius("dough", working.Tell("desk.field_dough_measured", "dough when the mixer stops")),
				}},
		},
		paths: map[string]string{"kind": "mixer"},
		solve: func(v *values) (solved, error) {
			in := mixing.Log{Kind: word[mixing.MixerKind](v, "mixer")}
			flour, poured := mass(v, "flour"), mass(v, "water")
			for _, r := range v.rows("batches") {
				in.Batches = append(in.Batches, mixing.Logged{
					Ingredients: []mixing.Portion{
						{Name: "flour", Mass: flour, Temperature: at[quantity.Temperature](r, "flour"), Substance: mixing.Flour},
						{Name: water, Mass: poured, Temperature: at[quantity.Temperature](r, "water"), Substance: mixing.Water},
					},
					Bowl: at[quantity.Temperature](r, "room"), Dough: at[quantity.Temperature](r, "dough"),
					Speeds: []quantity.Elapsed{at[quantity.Elapsed](r, "mixed")},
				})
			}
			if err := v.problems.Err(); err != nil {
				return solved{}, err
			}
			l, err := in.Learn()
			if err != nil {
				return solved{}, err
			}
			s := solved{report: l.Report(), workings: only(l)}
			if len(l.PerMinute) > 0 {
				s.truth = l.PerMinute[0].Value
			}
			return s, nil
		},
	}
}
