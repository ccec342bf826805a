package desk

import (
	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
)

// readings are the four meanings in which print says "20 % levain".
func readings() []dough.LevainReading { return quantity.Values[dough.LevainReading]() }

// meaningTask asks what a printed percentage of levain means: the same words, four doughs.
func meaningTask() task {
	return task{
		id: "percentages.meaning", title: working.Tell("desk.meaning", "20 % levain: of what?"),
		about: working.Tell("desk.meaning_about",
			"Books print a percentage of levain and mean four different things by it. Choose what it is a percentage of, and "+
				"see how much levain goes into the same dough."),
		ask: working.Tell("desk.meaning_ask",
			"How much of all the flour is then inside the levain?"),
		guess: field{name: "guess", kind: aPercent, slide: percents(0, 60, 0)}, near: 1,
		fields: []field{
			{name: "percent", label: working.Tell("desk.field_printed", "levain, as it is printed"), kind: aPercent,
				start: both("20 %"), slide: percents(5, 60, 1)},
			{name: "reading", label: working.Tell("desk.field_reading", "what it is a percentage of"), kind: aChoice,
				start: both(dough.LevainOfAddedFlour.String()), choices: choicesOf(readings())},
			{name: "hydration", label: working.Tell("desk.field_levain_hydration", "hydration of the levain"),
				kind: aPercent, start: both("100 %"), slide: percents(50, 130, 5)},
			{name: "water", label: working.Tell("desk.field_water", "water"), kind: aPercent, start: both("70 %"),
				slide: percents(50, 100, 1)},
			weighField("dough", working.Tell("desk.field_dough", "dough"), "1720 g", "60 oz", 5000, 180),
		},
		paths: map[string]string{"liquids[0].percent": "water", "liquids": "water", "each": "dough", "pieces.each": "dough",
			"preferments[0].hydration": "hydration", "preferments[0].flour": "percent", "preferments[0]": "percent", "preferments": "percent", "Percent": "percent"},
		solve: func(v *values) (solved, error) {
			m := meaning{percent: percent(v, "percent"), hydration: percent(v, "hydration"), water: percent(v, "water"),
				weight: mass(v, "dough")}
			reading := word[dough.LevainReading](v, "reading")
			if err := v.problems.Err(); err != nil {
				return solved{}, err
			}
			return m.solve(reading)
		},
	}
}

// A meaning is a dough of which the levain is printed as a percentage.
type meaning struct {
	percent, hydration, water quantity.Percent
	weight                    quantity.Mass
}

// meaningSalt is that of every one of these doughs.
var meaningSalt = quantity.Millionths(2_000_000)

// printed is what the text says, with this reading.
func (m meaning) printed(reading dough.LevainReading) dough.PrintedLevain {
	total := quantity.Millionths(100_000_000).Add(m.water).Add(meaningSalt)
	return dough.PrintedLevain{Percent: m.percent, Reading: reading, Hydration: m.hydration, Total: total}
}

// batch is the dough with so much of its flour in the levain.
func (m meaning) batch(flour quantity.Percent) (dough.Batch, error) {
	f := dough.Formula{
		Flours:      []dough.Part{{Name: wheat, Percent: quantity.Millionths(100_000_000), Kind: dough.KindWheat}},
		Liquids:     []dough.Part{{Name: water, Percent: m.water}},
		Salt:        meaningSalt,
		Preferments: []dough.Preferment{{Name: levain, Flour: flour, Hydration: m.hydration}},
	}
	return f.For(dough.Pieces{Count: 1, Each: m.weight})
}

func (m meaning) solve(asked dough.LevainReading) (solved, error) {
	grid := report.Grid{Key: "readings", Columns: []report.GridColumn{
		{Key: "reading", Title: working.Tell("desk.column_reading", "%v is", m.percent)},
		{Key: "flour", Title: working.Tell("desk.column_inside", "of all flour in the levain"), Right: true},
		{Key: "levain", Title: working.Tell("desk.column_levain", "levain to weigh"), Right: true},
		{Key: "water", Title: working.Tell("desk.column_pour", "water to pour"), Right: true},
	}}
	var out solved
	for _, reading := range readings() {
		p := m.printed(reading)
		flour, err := p.Flour()
		if err != nil && reading != asked {
			continue // this reading asks for more flour than there is
		}
		if err != nil {
			return solved{}, err
		}
		b, err := m.batch(flour)
		if err != nil {
			if reading == asked {
				return solved{}, err
			}
			continue
		}
		build, _ := b.Build(levain)
		grid.Rows = append(grid.Rows, []report.Cell{report.Of(reading), report.Rounded(flour, 2),
			report.Rounded(build.Used, 0), report.Rounded(lineOf(b.FinalDough(), water), 0)})
		if reading == asked {
			out.truth, out.workings = flour, only(p, b)
			out.picture = func(r working.Reader, width int) string { return drawBowls(b, r, width) }
			out.report.Headline = working.Tell("desk.meaning_is", "%v, read as %v: %.2f of the flour is in %.0f of levain",
				m.percent, reading, flour, build.Used)
		}
	}
	out.report.Sections = []report.Section{{Key: "readings",
		Title: working.Tell("desk.title_readings", "The same words, four doughs"), Blocks: []report.Block{grid}}}
	return out, nil
}
