package mixing

import (
	"fmt"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// WaterTable asks how warm the water must be for several temperatures of the flour and of the room.
type WaterTable struct {
	// Target is the dough temperature wanted.
	Target quantity.Temperature `json:"target,omitzero"`
	// Warming is what mixing adds to it; zero takes the guide value for the Mixer, whose [MixerKind.Prior] says how far
	// it is to be trusted.
	Warming quantity.TemperatureDelta `json:"warming,omitzero"`
	Mixer   MixerKind                 `json:"mixer,omitzero"`
	// Levain is the temperature of the levain; the zero value: the dough has none.
	Levain quantity.Temperature   `json:"levain,omitzero"`
	Flour  []quantity.Temperature `json:"flour"`
	Room   []quantity.Temperature `json:"room"`
}

// TabledWater is the answer of [WaterTable.Water].
type TabledWater struct {
	Table WaterTable `json:"table"`
	// Warming is what mixing is taken to do to the dough, and Basis what that rests on.
	Warming quantity.TemperatureDelta `json:"warming"`
	Basis   WarmingBasis              `json:"basis"`
	// Water[i][j] is for Flour[i] and Room[j].
	Water [][]WaterResult `json:"water"`
}

// mostRows bounds a table, each way.
const mostRows = 100

// Water answers by the factor method: how warm must the water be in each case? Errors: ErrRequired for empty lists or
// lists over 100 long, and for a warming of zero without a mixer; those of [Factors.Water] and [FrictionOf]. Source:
// [Factors.Water], case by case.
func (t WaterTable) Water() (TabledWater, error) {
	var p quantity.Problems
	for _, one := range []struct {
		path string
		list []quantity.Temperature
	}{{"Flour", t.Flour}, {"Room", t.Room}} {
		want := quantity.Tell("mixing.want_1_to_100_temperatures", "1 to 100 temperatures")
		switch n := len(one.list); {
		case n == 0:
			p.Required(one.path, want)
		case n > mostRows:
			p.Add(one.path, n, want, quantity.ErrOutOfRange)
		default:
			for i, c := range one.list {
				quantity.Check(&p, fmt.Sprintf("%s[%d]", one.path, i), c, coldestThing, hottestThing)
			}
		}
	}
	quantity.Check(&p, "Target", t.Target, coldestDough, hottestDough)
	if !t.Levain.IsZero() {
		quantity.Check(&p, "Levain", t.Levain, coldestThing, hottestThing)
	}
	out := TabledWater{Table: t, Warming: t.Warming, Basis: GivenWarming}
	known := t.Mixer == 0 && !t.Warming.IsZero() || mixerKinds.Check(&p, "Mixer", t.Mixer)
	if t.Warming.IsZero() && known {
		prior, err := t.Mixer.Prior()
		p.Join("Mixer", err)
		out.Basis = GuideValue
		out.Warming, err = prior.Friction.Rise()
		p.Join("Mixer", err)
	}
	count := 3
	if !t.Levain.IsZero() {
		count = 4
	}
	most := quantity.DeltaCelsius(mostFriction / float64(count))
	quantity.Check(&p, "Warming", out.Warming, most.Times(-1), most)
	if err := p.ErrFor(t); err != nil {
		return TabledWater{}, err
	}
	friction, err := FrictionOf(out.Warming, count)
	if err != nil {
		return TabledWater{}, err
	}
	for i, flour := range t.Flour {
		row := make([]WaterResult, len(t.Room))
		for j, room := range t.Room {
			if row[j], err = t.factors(flour, room, friction).Water(); err != nil {
				return TabledWater{}, t.refused(err, i)
			}
		}
		out.Water = append(out.Water, row)
	}
	return out, nil
}

// factors are those of one place of the table.
func (t WaterTable) factors(flour, room quantity.Temperature, friction Friction) Factors {
	f := Factors{Target: t.Target, Friction: friction.Factor, Others: []Factor{
		{Kind: FlourFactor, Name: "flour", Temperature: flour}, {Kind: RoomFactor, Name: "room", Temperature: room},
	}}
	if !t.Levain.IsZero() {
		f.Others = append(f.Others, Factor{Kind: LevainFactor, Name: "levain", Temperature: t.Levain})
	}
	return f
}

// refused says that the flour, with the room and all else, asks for water that cannot be.
func (t WaterTable) refused(err error, i int) error {
	var p quantity.Problems
	for _, e := range quantity.InputErrors(err) {
		p.Add(fmt.Sprintf("Flour[%d]", i), e.Got, e.Want, e.Err)
	}
	return p.ErrFor(t)
}

// middle is the place whose derivation stands for all.
func (t TabledWater) middle() WaterResult {
	if len(t.Water) == 0 || len(t.Water[len(t.Water)/2]) == 0 {
		return WaterResult{}
	}
	row := t.Water[len(t.Water)/2]
	return row[len(row)/2]
}

// String says what the table is of.
func (t TabledWater) String() string { return t.Message().String() }

// Message says what the table is of.
func (t TabledWater) Message() working.Message {
	if t.Table.Levain.IsZero() {
		return working.Tell("mixing.water_table",
			"how warm the water must be by the factor method, for a dough of %.1f, which mixing warms by %.1f (%v)",
			t.Table.Target, t.Warming, t.Basis)
	}
	return working.Tell("mixing.water_table_levain",
		"how warm the water must be by the factor method, for a dough of %.1f, which mixing warms by %.1f (%v), "+
			"with a levain of %.1f",
		t.Table.Target, t.Warming, t.Basis, t.Table.Levain)
}

// Working derives the water in the middle of the table.
func (t TabledWater) Working() working.Working { return t.middle().Working() }

// Report shows the water by flour and room; what cannot be poured is marked, and how to do without it said once.
func (t TabledWater) Report() report.Report {
	out := report.Report{Headline: t.Message(), Sources: []working.Source{sources.SFBIWater}}
	g := report.Grid{
		Key: "water", Caption: working.Tell("mixing.flour_by_room", "rows: temperature of the flour; columns: of the room"),
		Columns: []report.GridColumn{{Key: "flour", Title: working.Tell("mixing.column_flour", "flour")}},
	}
	for j, room := range t.Table.Room {
		g.Columns = append(g.Columns, report.GridColumn{
			Key: fmt.Sprintf("room_%d", j+1), Title: working.Tell("mixing.column_room", "%.1f", room), Right: true,
		})
	}
	var instead working.Message
	for i, row := range t.Water {
		if i == len(t.Table.Flour) {
			break // a table that was put together by hand
		}
		line := []report.Cell{report.Rounded(t.Table.Flour[i], 1)}
		for _, w := range row {
			if w.Feasible || w.Temperature.IsZero() {
				line = append(line, report.Rounded(w.Temperature, 1))
				continue
			}
			line = append(line, report.Of(working.Tell("mixing.cannot_be_poured", "%.1f*", w.Temperature)))
			if instead.IsZero() && len(w.Remedies) > 0 {
				instead = working.Tell("mixing.cannot_be_poured_so",
					"* cannot be poured as it is; for %.1f, for example: %v", w.Temperature, w.Remedies[0].Text)
			}
		}
		g.Rows = append(g.Rows, line)
	}
	if len(g.Rows) == 0 {
		return out
	}
	blocks := []report.Block{g, report.Paragraph{Tone: report.Aside, Text: working.Tell("mixing.water_table_method",
		"the factor method counts each temperature alike, whatever is weighed; a plan of a bake balances the heat of what "+
			"is weighed, and its water may differ from this by some degrees, most in cold and in hot rooms")}}
	if !instead.IsZero() {
		blocks = append(blocks, report.Say(instead))
	}
	out.Sections = []report.Section{{Key: "water", Blocks: blocks}}
	if chart, ok := t.chart(); ok {
		out.Sections = append(out.Sections, report.Section{
			Key: "picture", Title: working.Tell("mixing.title_picture", "As a picture"), Blocks: []report.Block{chart},
		})
	}
	return out
}

// chart draws the water against the temperature of the flour, for the room in the middle and those at both ends.
func (t TabledWater) chart() (report.Chart, bool) {
	var flour []float64
	for i, f := range t.Table.Flour {
		if i > 0 && f.Celsius() <= flour[i-1] {
			return report.Chart{}, false // no line without an order
		}
		flour = append(flour, f.Celsius())
	}
	if len(flour) < 3 || len(t.Water) != len(flour) || len(t.Table.Room) == 0 {
		return report.Chart{}, false
	}
	line := func(room int) report.Series {
		s := report.Series{Name: working.Tell("mixing.in_a_room", "in a room of %.1f", t.Table.Room[room]),
			Of: report.Degrees}
		for _, row := range t.Water {
			if room >= len(row) || row[room].Temperature.IsZero() {
				return report.Series{}
			}
			s.Values = append(s.Values, row[room].Temperature.Celsius())
		}
		return s
	}
	last := len(t.Table.Room) - 1
	c := report.Chart{
		Title: working.Tell("mixing.chart_water", "The water against the flour"),
		X:     report.Series{Name: working.Tell("mixing.axis_flour", "flour"), Of: report.Degrees, Values: flour},
		Main:  line(last / 2),
	}
	for _, room := range []int{0, last} {
		if s := line(room); room != last/2 && !s.IsZero() {
			c.Beside = append(c.Beside, s)
		}
	}
	return c, !c.Main.IsZero()
}
