package desk

import (
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/ferment"
)

func clockTasks() []task { return []task{riseTask(), rivalsTask(), ripeTask(), cultureClassTask()} }

func doughFields() []field {
	return []field{
		{name: "inoculation", label: working.Tell("desk.field_prefermented", "flour that is in the levain"), kind: aPercent,
			start: both("12 %"), slide: percents(0, 50, 1)},
		{name: "yeast.kind", label: working.Tell("desk.field_yeast_kind", "yeast put into the dough"), kind: aChoice,
			start: both(ferment.NoYeast.String()), choices: choicesOf([]ferment.YeastKind{ferment.NoYeast,
				ferment.FreshYeast, ferment.ActiveDryYeast, ferment.InstantYeast, ferment.OsmotolerantYeast})},
		{name: "yeast.amount", label: working.Tell("desk.field_yeast_amount", "how much yeast"), kind: aPercent,
			start: both("0 %"), slide: percents(0, 4, 0.05)},
		{name: "hydration", label: working.Tell("desk.field_water", "water"), kind: aPercent, start: both("70 %"),
			slide: percents(50, 100, 1)},
		{name: "salt", label: working.Tell("desk.field_salt", "salt"), kind: aPercent, start: both("2 %"),
			slide: percents(0, 3, 0.1)},
		{name: "rise", label: working.Tell("desk.field_rise", "rise wanted"), kind: aPercent, start: both("75 %"),
			slide: percents(10, 200, 5)},
	}
}

func (v *values) bulk() ferment.Bulk {
	b := ferment.Bulk{
		Inoculation: percent(v, "inoculation"), Hydration: percent(v, "hydration"), Salt: percent(v, "salt"),
		Rise: percent(v, "rise"), Law: ferment.GasBalance(),
	}
	if kind := word[ferment.YeastKind](v, "yeast.kind"); kind != ferment.NoYeast {
		b.Yeast = ferment.Yeast{Kind: kind, Amount: percent(v, "yeast.amount")}
	}
	return b
}

func (v *values) history(name string) ferment.History {
	var knots []ferment.Knot
	for _, r := range v.rows(name) {
		knots = append(knots, ferment.Knot{At: at[quantity.Elapsed](r, "at"),
			Temperature: at[quantity.Temperature](r, "temperature")})
	}
	if v.problems.Err() != nil {
		return ferment.History{}
	}
	h, err := ferment.FromKnots(knots...)
	v.problems.Join(name, err)
	return h
}

func historyField() field {
	return field{name: "history", label: working.Tell("desk.field_history", "how warm the dough is"), kind: aTable,
		most: 24, drawn: true,
		start: [2]string{"0 h|26 °C;2 h|25 °C;5 h|23 °C;12 h|22 °C", "0 h|79 °F;2 h|77 °F;5 h|73 °F;12 h|72 °F"},
		columns: []field{
			{name: "at", label: working.Tell("desk.field_after_mixing", "after mixing"), kind: aTime,
				slide: times(0, 24, 0, working.Hour)},
			{name: "temperature", label: working.Tell("desk.field_temperature", "temperature"), kind: aTemperature},
		}}
}

func riseTask() task {
	fields := append(doughFields(), altitudeField("altitude"), historyField(),
		field{name: "jar", label: working.Tell("desk.field_jar", "what the jar shows"), kind: aTable, most: 12, empty: true,
			columns: []field{
				{name: "at", label: working.Tell("desk.field_after_mixing", "after mixing"), kind: aTime,
					slide: times(0, 24, 0, working.Hour)},
				{name: "rise", label: working.Tell("desk.field_risen", "risen by"), kind: aPercent},
			}})
	return task{
		id: "clock.rise", title: working.Tell("desk.rise", "When has it risen?"),
		about: working.Tell("desk.rise_about",
			"Draw how warm the dough is, hour by hour. Its rise follows with a band; a reading of the "+
				"jar narrows it. Levain and yeast may work together."),
		ask:    working.Tell("desk.rise_ask", "How long after mixing has the dough likely risen as far as wanted?"),
		guess:  field{name: "guess", kind: aTime, slide: times(0, 24, 0, working.Hour)},
		fields: fields,
		solve: func(v *values) (solved, error) {
			b := v.bulk()
			b.Altitude, b.History = get[quantity.Length](v, "altitude"), v.history("history")
			var jar []ferment.RiseReading
			for _, r := range v.rows("jar") {
				jar = append(jar, ferment.RiseReading{At: at[quantity.Elapsed](r, "at"), Rise: at[quantity.Percent](r, "rise")})
			}
			if err := v.problems.Err(); err != nil {
				return solved{}, err
			}
			e, err := b.Estimate()
			if err != nil {
				return solved{}, err
			}
			if len(jar) == 0 {
				return readyAt(e.Ready(), e.Reached(), solved{report: e.Report(), workings: only(e)}), nil
			}
			p, err := e.Update(jar...)
			if err != nil {
				return solved{}, err
			}
			return readyAt(p.Now.Ready(), p.Now.Reached(), solved{report: p.Report(), workings: only(p)}), nil
		},
		paths: map[string]string{"readings": "jar"},
	}
}

// readyAt is what a time is guessed at: nothing, where the dough never gets there.
func readyAt(ready quantity.TimeRange, reached bool, s solved) solved {
	if reached {
		s.truth = quantity.Elapsed(ready.Likely)
		s.low, s.high = quantity.Elapsed(ready.Early), quantity.Elapsed(ready.Late)
	}
	return s
}

func rivalsTask() task {
	var curves []choice
	for _, c := range ferment.Curves() {
		curves = append(curves, choice{c.About().Key, working.Say("%s", c.About().Name)})
	}
	fields := append(doughFields(),
		kitchenTemperature("temperature", working.Tell("desk.field_steady", "dough, all the time"), "25 °C", "77 °F"),
		field{name: "curve", label: working.Tell("desk.field_curve", "growth by this curve"), kind: aChoice,
			start: both(curves[0].value), choices: curves})
	return task{
		id: "clock.rivals", title: working.Tell("desk.rivals", "Rival curves"),
		about: working.Tell("desk.rivals_about",
			"Several people measured how temperature moves a culture, and they do not agree. Put another "+
				"curve into the clock, change the temperature, and see where it matters."),
		ask:    working.Tell("desk.rivals_ask", "How long does this dough take, by the chosen curve?"),
		guess:  field{name: "guess", kind: aTime, slide: times(0, 24, 0, working.Hour)},
		fields: fields,
		paths:  map[string]string{"history": "temperature"},
		solve: func(v *values) (solved, error) {
			b := v.bulk()
			steady := temperature(v, "temperature")
			b.History = ferment.Constant(steady)
			rival, _ := ferment.CurveNamed(get[string](v, "curve"))
			if err := v.problems.Err(); err != nil {
				return solved{}, err
			}
			own, err := b.Estimate()
			if err != nil {
				return solved{}, err
			}
			b.Law = b.Law.With(ferment.Rivals{Levain: rival, Yeast: rival})
			other, err := b.Estimate()
			if err != nil {
				return solved{}, err
			}
			table := ferment.CurveTable{Curves: ferment.Curves()}
			for _, c := range []float64{4, 10, 16, 20, 24, 27, 30, 34} {
				table.Temperatures = append(table.Temperatures, quantity.Celsius(c))
			}
			rates, err := table.Rates()
			if err != nil {
				return solved{}, err
			}
			doc := other.Report()
			doc.Sections = append(doc.Sections, report.Section{Key: "own", Title: own.Bulk().Law.Message(),
				Blocks: []report.Block{report.Say(own.Message())}})
			doc.Sections = append(doc.Sections, rates.Report().Sections...)
			return readyAt(other.Ready(), other.Reached(), solved{report: doc, workings: only(other)}), nil
		},
	}
}

func ripeTask() task {
	return task{
		id: "clock.ripe", title: working.Tell("desk.ripe", "When is the levain ripe?"),
		about: working.Tell("desk.ripe_about",
			"Feed it more and it takes longer; keep it warmer and it takes less. It is ripe before it stands "+
				"highest, and usable for a while."),
		ask:   working.Tell("desk.ripe_ask", "How long after feeding is it likely ripe?"),
		guess: field{name: "guess", kind: aTime, slide: times(0, 24, 0, working.Hour)},
		fields: []field{
			{name: "seed", label: working.Tell("desk.field_seed", "flour that comes with the seed"), kind: aPercent,
				start: both("20 %"),
				slide: percents(1, 60, 1)},
			{name: "hydration", label: working.Tell("desk.field_levain_hydration", "hydration of the levain"), kind: aPercent,
				start: both("100 %"), slide: percents(50, 130, 5)},
			{name: "whole_grain", label: working.Tell("desk.field_whole_grain", "whole grain in its flour"), kind: aPercent,
				start: both("0 %"), slide: percents(0, 100, 5)},
			kitchenTemperature("temperature", working.Tell("desk.field_stands_at", "where it stands"), "25 °C", "77 °F"),
		},
		paths: map[string]string{"history": "temperature"},
		solve: func(v *values) (solved, error) {
			in := ferment.Ripening{Seed: percent(v, "seed"), Hydration: percent(v, "hydration"),
				WholeGrain: percent(v, "whole_grain"),
				History:    ferment.Constant(temperature(v, "temperature")), Law: ferment.GasBalance()}
			if err := v.problems.Err(); err != nil {
				return solved{}, err
			}
			r, err := in.Ripe()
			if err != nil {
				return solved{}, err
			}
			ripe, _, _ := r.Reached()
			return readyAt(r.From, ripe, solved{report: r.Report(), workings: only(r)}), nil
		},
	}
}

// cultureClassTask pools the jars of a class, which all hold the same culture.
func cultureClassTask() task {
	return task{
		id: "clock.class", title: working.Tell("desk.culture_class", "The class times its culture"),
		about: working.Tell("desk.culture_class_about",
			"Every group makes a dough with the same culture, keeps it at one temperature, and writes "+
				"down how long it took to rise so far. What all rows together say is the culture's pace."),
		ask:   working.Tell("desk.culture_class_ask", "How long does the next dough like the last row take?"),
		guess: field{name: "guess", kind: aTime, slide: times(0, 0, 0, working.Hour)},
		fields: []field{
			{name: "hydration", label: working.Tell("desk.field_water", "water"), kind: aPercent, start: both("70 %"),
				slide: percents(50, 100, 1)},
			{name: "salt", label: working.Tell("desk.field_salt", "salt"), kind: aPercent, start: both("2 %"),
				slide: percents(0, 3, 0.1)},
			{name: "bakes", label: working.Tell("desk.field_jars", "what the groups saw"), kind: aTable, most: 40,
				start: [2]string{"12 %|25 °C|50 %|4.2 h;12 %|22 °C|50 %|5.6 h;20 %|25 °C|60 %|3.4 h",
					"12 %|77 °F|50 %|4.2 h;12 %|72 °F|50 %|5.6 h;20 %|77 °F|60 %|3.4 h"},
				columns: []field{
					{name: "bulk.inoculation", label: working.Tell("desk.field_prefermented", "flour that is in the levain"),
						kind: aPercent},
					{name: "bulk.history", label: working.Tell("desk.field_temperature", "temperature"), kind: aTemperature},
					{name: "bulk.rise", label: working.Tell("desk.field_risen", "risen by"), kind: aPercent},
					{name: "took", label: working.Tell("desk.field_took", "it took"), kind: aTime,
						slide: times(0, 24, 0, working.Hour)},
				}},
		},
		solve: func(v *values) (solved, error) {
			wet, salt := percent(v, "hydration"), percent(v, "salt")
			var in ferment.Learning
			for _, r := range v.rows("bakes") {
				in.Bakes = append(in.Bakes, ferment.LoggedBulk{
					Bulk: ferment.Bulk{Inoculation: at[quantity.Percent](r, "bulk.inoculation"), Hydration: wet, Salt: salt,
						Rise: at[quantity.Percent](r, "bulk.rise"), Law: ferment.GasBalance(),
						History: ferment.Constant(at[quantity.Temperature](r, "bulk.history"))},
					Took: at[quantity.Elapsed](r, "took"),
				})
			}
			if err := v.problems.Err(); err != nil {
				return solved{}, err
			}
			l, err := in.Learn()
			if err != nil {
				return solved{}, err
			}
			s := solved{workings: only(l)}
			doc := l.Report()
			next := in.Bakes[len(in.Bakes)-1].Bulk
			next.Culture = l.Culture
			if e, err := next.Estimate(); err == nil {
				doc.Sections = append(doc.Sections, report.Section{Key: "next", Title: working.Tell("desk.next_dough",
					"The next dough like the last row"), Blocks: []report.Block{report.Say(e.Message())}})
				s = readyAt(e.Ready(), e.Reached(), s)
			}
			s.report = doc
			return s, nil
		},
	}
}

// day is how far a drawing of temperatures reaches.
const day = 12 * time.Hour
