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
)

// A column of a CSV file: what it fills, and for which kinds of observation.
type column struct {
	fill  func(e *Entry, text string) error
	kinds []Kind
}

func reads[T any, P interface {
	*T
	encoding.TextUnmarshaler
}](of func(e *Entry) *T, kinds ...Kind) column {
	return column{func(e *Entry, text string) error { return P(of(e)).UnmarshalText([]byte(text)) }, kinds}
}

func columns() map[string]column {
	words := func(of func(e *Entry) *string, kinds ...Kind) column {
		return column{func(e *Entry, text string) error { *of(e) = text; return nil }, kinds}
	}
	type (
		temperature = quantity.Temperature
		mass        = quantity.Mass
		percent     = quantity.Percent
		elapsed     = quantity.Elapsed
	)
	return map[string]column{
		"bread":         words(func(e *Entry) *string { return &e.Bread }, Kinds()...),
		"note":          words(func(e *Entry) *string { return &e.Note }, KindNote),
		"dough":         reads(func(e *Entry) *temperature { return &e.Mix.Dough }, KindMix),
		"flour":         reads(func(e *Entry) *temperature { return &e.Mix.Flour }, KindMix),
		"water":         reads(func(e *Entry) *temperature { return &e.Mix.Water }, KindMix),
		"levain":        reads(func(e *Entry) *temperature { return &e.Mix.Levain }, KindMix),
		"bowl":          reads(func(e *Entry) *temperature { return &e.Mix.Bowl }, KindMix),
		"room":          reads(func(e *Entry) *temperature { return &e.Mix.Room }, KindMix),
		"flour weight":  reads(func(e *Entry) *mass { return &e.Mix.FlourWeight }, KindMix),
		"water weight":  reads(func(e *Entry) *mass { return &e.Mix.WaterWeight }, KindMix),
		"levain weight": reads(func(e *Entry) *mass { return &e.Mix.LevainWeight }, KindMix),
		"weight":        reads(func(e *Entry) *mass { return &e.Mix.Weight }, KindMix),
		"mixer":         {func(e *Entry, text string) error { return e.Mix.Mixer.UnmarshalText([]byte(text)) }, []Kind{KindMix}},
		"slow":          reads(func(e *Entry) *elapsed { return &e.Mix.Slow }, KindMix),
		"fast":          reads(func(e *Entry) *elapsed { return &e.Mix.Fast }, KindMix),
		"inoculation":   reads(func(e *Entry) *percent { return &e.Mix.Inoculation }, KindMix),
		"yeast":         reads(func(e *Entry) *percent { return &e.Mix.Yeast }, KindMix),
		"yeast kind":    words(func(e *Entry) *string { return &e.Mix.YeastKind }, KindMix),
		"salt":          reads(func(e *Entry) *percent { return &e.Mix.Salt }, KindMix),
		"hydration":     reads(func(e *Entry) *percent { return &e.Mix.Hydration }, KindMix),
		"whole grain":   reads(func(e *Entry) *percent { return &e.Mix.WholeGrain }, KindMix),
		"rise": {func(e *Entry, text string) error {
			switch e.Kind {
			case KindRise:
				return e.Rise.Rise.UnmarshalText([]byte(text))
			case KindReady:
				return e.Ready.Rise.UnmarshalText([]byte(text))
			}
			return e.Mix.Rise.UnmarshalText([]byte(text))
		}, []Kind{KindMix, KindRise, KindReady}},
		"core":  reads(func(e *Entry) *temperature { return &e.Core.Core }, KindCore),
		"after": reads(func(e *Entry) *elapsed { return &e.Core.After }, KindCore),
		"in":    reads(func(e *Entry) *mass { return &e.Weights.In }, KindWeights),
		"out":   reads(func(e *Entry) *mass { return &e.Weights.Out }, KindWeights),
		"style": {func(e *Entry, text string) error { return e.Weights.Style.UnmarshalText([]byte(text)) }, []Kind{KindWeights}},
	}
}

// imported are the kinds that a spreadsheet may hold, with their parts.
var imported = map[Kind]func(e *Entry){
	KindMix: func(e *Entry) { e.Mix = &Mix{} }, KindRise: func(e *Entry) { e.Rise = &Rise{} }, KindReady: func(e *Entry) { e.Ready = &Ready{} },
	KindCore: func(e *Entry) { e.Core = &Core{} }, KindWeights: func(e *Entry) { e.Weights = &Weights{} }, KindNote: func(*Entry) {},
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
func ReadCSV(in io.Reader, parseTime func(string) (time.Time, error)) ([]Entry, []RowProblem, error) {
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
	var out []Entry
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

func fromRow(row, names []string, known map[string]column, parseTime func(string) (time.Time, error), report func(column, why string)) (e Entry, blank bool) {
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
	e.Version, e.Kind = Version, Kind(strings.ToLower(cell["kind"]))
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
		_, path, found := strings.Cut(one.GoPath, ".")
		if !found {
			path = one.GoPath
		}
		moved := *one
		moved.Path, moved.GoPath = "", ""
		report(strings.ReplaceAll(path, "_", " "), strings.TrimPrefix(moved.Error(), ": "))
	}
	return e, false
}
