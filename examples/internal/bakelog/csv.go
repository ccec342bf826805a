package bakelog

import (
	"encoding"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule/bench"
)

// A column of a CSV file: what it fills, and for which kinds of observation.
type column struct {
	fill  func(e *bench.Observation, text string) error
	kinds []bench.Sight
}

func reads[T any, P interface {
	*T
	encoding.TextUnmarshaler
}](of func(e *bench.Observation) *T, kinds ...bench.Sight) column {
	return column{func(e *bench.Observation, text string) error { return P(of(e)).UnmarshalText([]byte(text)) }, kinds}
}

func columns() map[string]column {
	words := func(of func(e *bench.Observation) *string, kinds ...bench.Sight) column {
		return column{func(e *bench.Observation, text string) error { *of(e) = text; return nil }, kinds}
	}
	type (
		temperature = quantity.Temperature
		mass        = quantity.Mass
		percent     = quantity.Percent
		elapsed     = quantity.Elapsed
	)
	return map[string]column{
		"bread":         words(func(e *bench.Observation) *string { return &e.Bread }, quantity.Values[bench.Sight]()...),
		"note":          words(func(e *bench.Observation) *string { return &e.Note }, bench.SawNote),
		"dough":         reads(func(e *bench.Observation) *temperature { return &e.Mix.Dough }, bench.SawMixed),
		"flour":         reads(func(e *bench.Observation) *temperature { return &e.Mix.Flour }, bench.SawMixed),
		"water":         reads(func(e *bench.Observation) *temperature { return &e.Mix.Water }, bench.SawMixed),
		"levain":        reads(func(e *bench.Observation) *temperature { return &e.Mix.Levain }, bench.SawMixed),
		"bowl":          reads(func(e *bench.Observation) *temperature { return &e.Mix.Bowl }, bench.SawMixed),
		"room":          reads(func(e *bench.Observation) *temperature { return &e.Mix.Room }, bench.SawMixed),
		"flour weight":  reads(func(e *bench.Observation) *mass { return &e.Mix.FlourWeight }, bench.SawMixed),
		"water weight":  reads(func(e *bench.Observation) *mass { return &e.Mix.WaterWeight }, bench.SawMixed),
		"levain weight": reads(func(e *bench.Observation) *mass { return &e.Mix.LevainWeight }, bench.SawMixed),
		"weight":        reads(func(e *bench.Observation) *mass { return &e.Mix.Weight }, bench.SawMixed),
		"mixer":         {func(e *bench.Observation, text string) error { return e.Mix.Mixer.UnmarshalText([]byte(text)) }, []bench.Sight{bench.SawMixed}},
		"slow":          reads(func(e *bench.Observation) *elapsed { return &e.Mix.Slow }, bench.SawMixed),
		"fast":          reads(func(e *bench.Observation) *elapsed { return &e.Mix.Fast }, bench.SawMixed),
		"inoculation":   reads(func(e *bench.Observation) *percent { return &e.Mix.Inoculation }, bench.SawMixed),
		"yeast":         reads(func(e *bench.Observation) *percent { return &e.Mix.Yeast }, bench.SawMixed),
		"yeast kind":    yeastKind(),
		"salt":          reads(func(e *bench.Observation) *percent { return &e.Mix.Salt }, bench.SawMixed),
		"hydration":     reads(func(e *bench.Observation) *percent { return &e.Mix.Hydration }, bench.SawMixed),
		"whole grain":   reads(func(e *bench.Observation) *percent { return &e.Mix.WholeGrain }, bench.SawMixed),
		"rise": {func(e *bench.Observation, text string) error {
			switch e.Kind {
			case bench.SawRise:
				return e.Rise.Rise.UnmarshalText([]byte(text))
			case bench.SawReady:
				return e.Ready.Rise.UnmarshalText([]byte(text))
			}
			return e.Mix.Rise.UnmarshalText([]byte(text))
		}, []bench.Sight{bench.SawMixed, bench.SawRise, bench.SawReady}},
		"core":  reads(func(e *bench.Observation) *temperature { return &e.Core.Core }, bench.SawCore),
		"after": reads(func(e *bench.Observation) *elapsed { return &e.Core.After }, bench.SawCore),
		"in":    reads(func(e *bench.Observation) *mass { return &e.Weights.In }, bench.SawWeights),
		"out":   reads(func(e *bench.Observation) *mass { return &e.Weights.Out }, bench.SawWeights),
		"style": {func(e *bench.Observation, text string) error { return e.Weights.Style.UnmarshalText([]byte(text)) }, []bench.Sight{bench.SawWeights}},
	}
}

// yeastKind reads "instant" for "instant yeast".
func yeastKind() column {
	return column{func(e *bench.Observation, text string) error {
		if e.Mix.YeastKind.UnmarshalText([]byte(text)) == nil {
			return nil
		}
		return e.Mix.YeastKind.UnmarshalText([]byte(text + " yeast"))
	}, []bench.Sight{bench.SawMixed}}
}

// imported are the kinds that a spreadsheet may hold, with their parts.
var imported = map[bench.Sight]func(e *bench.Observation){
	bench.SawMixed: func(e *bench.Observation) { e.Mix = &bench.DoughMixed{} }, bench.SawRise: func(e *bench.Observation) { e.Rise = &bench.SeenRise{} }, bench.SawReady: func(e *bench.Observation) { e.Ready = &bench.ReadyDough{} },
	bench.SawCore: func(e *bench.Observation) { e.Core = &bench.SeenCore{} }, bench.SawWeights: func(e *bench.Observation) { e.Weights = &bench.LoafWeights{} }, bench.SawNote: func(*bench.Observation) {},
}

// Columns lists the columns that ReadCSV knows.
func Columns() []string {
	return []string{
		"time", "kind", "bread", "dough", "flour", "water", "levain", "bowl", "room", "flour weight", "water weight", "levain weight", "weight",
		"mixer", "slow", "fast", "inoculation", "yeast", "yeast kind", "salt", "hydration", "whole grain", "rise", "core", "after", "in", "out", "style", "note",
	}
}

// A RowProblem is a fault in a line of a CSV file.
type RowProblem struct {
	Line   int
	Column string
	Why    string
}

func (p RowProblem) String() string {
	if p.Column == "" {
		return fmt.Sprintf("%d: %s", p.Line, p.Why)
	}
	return fmt.Sprintf("%d: %s: %s", p.Line, p.Column, p.Why)
}

const mostRows = 100_000

// ReadCSV reads observations from a spreadsheet: one a row, under a heading with the names of
// Columns in any order; time and kind are needed. Values carry their units; cells may be empty.
// Comma, semicolon or tab separate, whichever the heading has. parseTime reads the time column.
// When anything is wrong there are no entries, and up to twenty problems.
func ReadCSV(in io.Reader, parseTime func(string) (time.Time, error)) (bench.Observations, []RowProblem, error) {
	const most = 64 << 20
	source, err := io.ReadAll(io.LimitReader(in, most+1))
	if err != nil {
		return nil, nil, err
	}
	if len(source) > most {
		return nil, nil, fmt.Errorf("larger than %d MB", most>>20)
	}
	text := strings.TrimPrefix(string(source), "\ufeff")
	heading, _, _ := strings.Cut(text, "\n")
	r := csv.NewReader(strings.NewReader(text))
	r.Comment, r.TrimLeadingSpace, r.FieldsPerRecord = '#', true, -1
	for _, sep := range []rune{';', '\t'} {
		if strings.Count(heading, string(sep)) > strings.Count(heading, ",") {
			r.Comma = sep
		}
	}
	known := columns()
	var names []string
	var problems []RowProblem
	report := func(line int, column, why string) {
		if len(problems) < mostProblems {
			problems = append(problems, RowProblem{line, column, why})
		}
	}
	var out bench.Observations
	for {
		row, err := r.Read()
		if err == io.EOF {
			break
		}
		if err != nil {
			var bad *csv.ParseError
			if errors.As(err, &bad) {
				report(bad.Line, "", bad.Err.Error())
				break
			}
			return nil, nil, err
		}
		line, _ := r.FieldPos(0)
		if names == nil {
			if names = heads(row, known, func(column, why string) { report(line, column, why) }); len(problems) > 0 {
				break
			}
			continue
		}
		if len(out) == mostRows {
			report(line, "", fmt.Sprintf("more than %d rows", mostRows))
			break
		}
		if e, blank := fromRow(row, names, known, parseTime, func(column, why string) { report(line, column, why) }); !blank {
			out = append(out, e)
		}
	}
	if names == nil && len(problems) == 0 {
		report(1, "", "no heading; want one with time, kind and any of "+strings.Join(Columns()[2:], ", "))
	}
	if len(problems) > 0 {
		return nil, problems, nil
	}
	return out, nil, nil
}

func heads(row []string, known map[string]column, report func(column, why string)) []string {
	names := make([]string, len(row))
	seen := map[string]bool{}
	for i, cell := range row {
		name := strings.Join(strings.Fields(strings.ToLower(strings.NewReplacer("_", " ", "-", " ").Replace(cell))), " ")
		if name == "at" {
			name = "time"
		}
		_, ok := known[name]
		switch {
		case !ok && name != "time" && name != "kind":
			report(quantity.Excerpt(cell), "unknown column; want "+strings.Join(Columns(), ", "))
		case seen[name]:
			report(quantity.Excerpt(cell), "given twice")
		}
		seen[name] = true
		names[i] = name
	}
	for _, needed := range []string{"time", "kind"} {
		if !seen[needed] {
			report(needed, "no such column, and it is needed")
		}
	}
	return names
}

func fromRow(row, names []string, known map[string]column, parseTime func(string) (time.Time, error), report func(column, why string)) (e bench.Observation, blank bool) {
	cell := map[string]string{}
	blank = true
	for i, text := range row {
		text = strings.TrimSpace(text)
		if text == "" {
			continue
		}
		blank = false
		if i >= len(names) {
			report("", "more cells than the heading has columns")
			return e, false
		}
		cell[names[i]] = text
	}
	if blank {
		return e, true
	}
	e.Version = bench.Format
	kind := strings.ToLower(cell["kind"])
	_ = e.Kind.UnmarshalText([]byte(kind)) // an unknown kind is not among those imported
	start, ok := imported[e.Kind]
	if !ok {
		report("kind", fmt.Sprintf("got %s, want mix, rise, ready, core, weights or note", quantity.Excerpt(cell["kind"])))
		return e, false
	}
	start(&e)
	bad := false
	var err error
	if e.At, err = parseTime(cell["time"]); err != nil {
		report("time", err.Error())
		bad = true
	}
	for _, name := range names {
		text, given := cell[name]
		c, ok := known[name]
		if !given || !ok {
			continue
		}
		if !slices.Contains(c.kinds, e.Kind) {
			report(name, fmt.Sprintf("does not belong to an observation of the kind %s", e.Kind))
			bad = true
			continue
		}
		if err := c.fill(&e, text); err != nil {
			report(name, err.Error())
			bad = true
		}
	}
	if bad {
		return e, false
	}
	for _, one := range quantity.InputErrors(e.Check()) {
		_, path, found := strings.Cut(one.Path, ".")
		if !found {
			path = one.Path
		}
		moved := *one
		moved.Path, moved.GoPath = "", ""
		report(strings.ReplaceAll(path, "_", " "), strings.TrimPrefix(moved.Error(), ": "))
	}
	return e, false
}
