package desk

import (
	"example.org/maslin/bake"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

func heatTasks() []task { return []task{probeTask(), boilingTask(), crustTask(), coolTask()} }

func styleField() field {
	return field{name: "style", label: working.Tell("desk.field_style", "kind of bread"), kind: aChoice,
		start: both(bake.LeanHearth.String()), choices: choicesOf(quantity.Values[bake.Style]())}
}

func probeTask() task {
	return task{
		id: "heat.probe", title: working.Tell("desk.probe", "A probe tells the future"),
		about: working.Tell("desk.probe_about",
			"The core's distance to the boiling point shrinks by nearly the same share every minute. Read "+
				"the probe every few minutes, put the readings in, and see how the answer gets surer."),
		ask:   working.Tell("desk.probe_ask", "How long until the core is at its target?"),
		guess: field{name: "guess", kind: aTime}, near: 2,
		fields: []field{
			styleField(), altitudeField("place.altitude"),
			{name: "samples", label: working.Tell("desk.field_samples", "readings of the probe"), kind: aTable, most: 30,
				start: [2]string{"20 min|62 °C;23 min|71 °C;26 min|78 °C", "20 min|144 °F;23 min|160 °F;26 min|172 °F"},
				columns: []field{
					{name: "at", label: working.Tell("desk.field_in_oven", "in the oven since"), kind: aTime},
					{name: "core", label: working.Tell("desk.field_core", "core"), kind: aTemperature},
				}},
		},
		solve: func(v *values) (solved, error) {
			in := bake.Probe{Goal: bake.Goal{Style: word[bake.Style](v, "style"),
				Place: bake.At(get[quantity.Length](v, "place.altitude"))}}
			for _, r := range v.rows("samples") {
				in.Samples = append(in.Samples, bake.Sample{At: at[quantity.Elapsed](r, "at"),
					Core: at[quantity.Temperature](r, "core")})
			}
			if err := v.problems.Err(); err != nil {
				return solved{}, err
			}
			l, err := in.TimeLeft()
			if err != nil {
				return solved{}, err
			}
			return readyAt(l.ToTarget, l.ToTarget.Likely > 0, solved{report: l.Report(), workings: only(l)}), nil
		},
	}
}

func boilingTask() task {
	return task{
		id: "heat.boiling", title: working.Tell("desk.boiling", "Water boils cooler up here"),
		about: working.Tell("desk.boiling_about",
			"A moist crumb gets no hotter than water boils. Climb, and see when the usual target of a bread "+
				"can no longer be reached."),
		ask:    working.Tell("desk.boiling_ask", "At how many degrees does water boil here?"),
		guess:  field{name: "guess", kind: aTemperature},
		near:   0.5,
		fields: []field{altitudeField("place.altitude"), styleField()},
		paths:  map[string]string{"altitude": "place.altitude"},
		solve: func(v *values) (solved, error) {
			goal := bake.Goal{Style: word[bake.Style](v, "style"), Place: bake.At(get[quantity.Length](v, "place.altitude"))}
			if err := v.problems.Err(); err != nil {
				return solved{}, err
			}
			b, err := goal.Place.BoilingPoint()
			if err != nil {
				return solved{}, quantity.At("place", err)
			}
			doc, workings := b.Report(), only(b)
			if goal.Style.ByCore() {
				target, err := goal.Target()
				if err != nil {
					return solved{}, err
				}
				of := target.Report()
				goalSays := say("target", of.Headline)
				goalSays.Title = working.Tell("desk.title_target", "The core that this bread is baked to")
				doc.Sections = append(doc.Sections, goalSays)
				doc.Sections = append(doc.Sections, of.Sections...)
				doc.Cautions, workings = of.Cautions, only(b, target)
			}
			return solved{report: doc, workings: workings, truth: b.Point}, nil
		},
	}
}

func crustTask() task {
	oven := func(name string, label working.Message, metric, us string) field {
		return field{name: name, label: label, kind: aTemperature, start: [2]string{metric, us},
			slide: temperatures(120, 300, 5, 250, 575, 5)}
	}
	minutes := func(name string, label working.Message, start string) field {
		return field{name: name, label: label, kind: aTime, start: both(start), slide: times(0, 120, 1, working.Minute)}
	}
	return task{
		id: "heat.crust", title: working.Tell("desk.crust", "Loss and crust"),
		about: working.Tell("desk.crust_about",
			"Under a lid nothing dries and nothing browns. Then a dry front moves into the loaf, and the "+
				"crust gets hotter than water ever boils."),
		ask:   working.Tell("desk.crust_ask", "How much of its weight does the loaf lose in the oven?"),
		guess: field{name: "guess", kind: aPercent}, near: 2,
		fields: []field{
			styleField(), altitudeField("place.altitude"),
			weighField("dough", working.Tell("desk.field_piece", "dough of one piece"), "880 g", "31 oz", 2500, 88),
			oven("phases[0].oven", working.Tell("desk.field_oven_wet", "oven with lid or steam"), "245 °C", "475 °F"),
			minutes("phases[0].for", working.Tell("desk.field_time_wet", "time with lid or steam"), "22 min"),
			oven("phases[1].oven", working.Tell("desk.field_oven_dry", "oven after it"), "230 °C", "445 °F"),
			minutes("phases[1].for", working.Tell("desk.field_time_dry", "time after it"), "20 min"),
		},
		solve: func(v *values) (solved, error) {
			in := bake.OvenBake{Style: word[bake.Style](v, "style"), Dough: mass(v, "dough"),
				Place: bake.At(get[quantity.Length](v, "place.altitude"))}
			for i, wet := range []bool{true, false} {
				path := [...]string{"phases[0]", "phases[1]"}[i]
				in.Phases = append(in.Phases, bake.HeatPhase{Oven: temperature(v, path+".oven"), For: elapsed(v, path+".for"),
					Wet: wet})
			}
			if err := v.problems.Err(); err != nil {
				return solved{}, err
			}
			b, err := in.BakeOut()
			if err != nil {
				return solved{}, err
			}
			return solved{report: b.Report(), workings: only(b), truth: b.Loss.Likely, low: b.Loss.Low, high: b.Loss.High}, nil
		},
	}
}

func coolTask() task {
	return task{
		id: "heat.cool", title: working.Tell("desk.cool", "When may it be sliced?"),
		about: working.Tell("desk.cool_about",
			"The heart of a loaf cools from outside in. A bigger loaf takes longer than its weight says; a warm "+
				"room costs more than it seems."),
		ask:   working.Tell("desk.cool_ask", "How long out of the oven may it be cut?"),
		guess: field{name: "guess", kind: aTime}, near: 10,
		fields: []field{
			styleField(),
			weighField("baked", working.Tell("desk.field_baked", "loaf out of the oven"), "780 g", "27.5 oz", 2500, 88),
			kitchenTemperature("room", working.Tell("desk.field_room", "room"), "22 °C", "72 °F"),
		},
		paths: map[string]string{"slice": "room"},
		solve: func(v *values) (solved, error) {
			in := bake.CoolingLoaf{Style: word[bake.Style](v, "style"), Baked: mass(v, "baked"), Room: temperature(v, "room")}
			if err := v.problems.Err(); err != nil {
				return solved{}, err
			}
			c, err := in.Time()
			if err != nil {
				return solved{}, err
			}
			return readyAt(c.Ready, true, solved{report: c.Report(), workings: only(c)}), nil
		},
	}
}
