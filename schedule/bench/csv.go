package bench

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"reflect"
	"slices"
	"strings"
	"time"

	"example.org/maslin/dough/quantity"
)

const (
	mostRows         = 100_000
	mostTable        = 64 << 20 // bytes
	mostCSVProblems  = 20
	yeastKindColumn  = "yeast kind"
	everyKindsColumn = "bread by"
)

// csvParts are the kinds of observation that a table may hold, and where the values of each stand in an observation.
func csvParts() map[string]reflect.Type {
	return map[string]reflect.Type{
		"mix": reflect.TypeFor[DoughMixed](), "rise": reflect.TypeFor[SeenRise](), "ready": reflect.TypeFor[ReadyDough](),
		"core": reflect.TypeFor[SeenCore](), "weights": reflect.TypeFor[LoafWeights](), "note": nil,
	}
}

// CSVColumns lists the columns that [ReadCSV] knows: time and kind, and then the keys of the data form, with spaces.
func CSVColumns() []string {
	out := append([]string{"time", "kind"}, strings.Fields(everyKindsColumn)...)
	parts := csvParts()
	for _, kind := range []string{"mix", "rise", "ready", "core", "weights"} {
		for i := range parts[kind].NumField() {
			key, _, _ := strings.Cut(parts[kind].Field(i).Tag.Get("json"), ",")
			if name := strings.ReplaceAll(key, "_", " "); name != "readings" && !slices.Contains(out, name) {
				out = append(out, name)
			}
		}
	}
	return append(out, "note")
}

// ReadCSV reads observations from a spreadsheet: one a row, under a heading with the names of [CSVColumns] in any
// order; time and kind (mix, rise, ready, core, weights or note) are needed. Values carry their units; cells may be
// empty. Comma, semicolon or tab separate, whichever the heading has; a line that begins with # is left out. At reads
// the time column. Accuracy: values are kept as they stand. Errors: an InputError for each thing that is wrong, up to
// twenty, with a path such as "line 3 dough"; there are no observations then. At most 100,000 rows and 64 MB. Source:
// RFC 4180 for what is in quotes.
func ReadCSV(text string, at func(string) (time.Time, error)) (Observations, error) {
	t := csvTable{at: at}
	if len(text) > mostTable {
		t.refuse(1, "", fmt.Sprintf("%d MB", len(text)>>20), quantity.Tell("bench.want_csv_size", "at most 64 MB"))
		return nil, t.p.Err()
	}
	text = strings.TrimPrefix(text, "\ufeff")
	heading, _, _ := strings.Cut(text, "\n")
	r := csv.NewReader(strings.NewReader(text))
	r.Comment, r.TrimLeadingSpace, r.FieldsPerRecord = '#', true, -1
	for _, sep := range []rune{';', '\t'} {
		if strings.Count(heading, string(sep)) > strings.Count(heading, ",") {
			r.Comma = sep
		}
	}
	for t.problems < mostCSVProblems {
		row, err := r.Read()
		if err == io.EOF {
			break
		}
		var bad *csv.ParseError
		if errors.As(err, &bad) {
			t.refuse(bad.Line, "", bad.Err.Error(), quantity.Tell("bench.want_csv_row", "a row of comma-separated values"))
			break
		}
		line, _ := r.FieldPos(0)
		if t.names == nil {
			if t.head(line, row); t.problems > 0 {
				break
			}
			continue
		}
		if len(t.out) == mostRows {
			t.refuse(line, "", "one more", quantity.Tell("bench.want_csv_rows", "at most %d rows", mostRows))
			break
		}
		t.row(line, row)
	}
	if t.names == nil && t.problems == 0 {
		t.refuse(1, "", "no heading", quantity.Tell("bench.want_csv_heading", "a heading with time, kind and any of %s",
			strings.Join(CSVColumns()[2:], ", ")))
	}
	if t.problems > 0 {
		return nil, t.p.Err()
	}
	return t.out, nil
}

// csvTable is a table while it is read.
type csvTable struct {
	at       func(string) (time.Time, error)
	names    []string
	out      Observations
	p        quantity.Problems
	problems int
}

func csvPath(line int, column string) string {
	return strings.TrimSpace(fmt.Sprintf("line %d %s", line, column))
}

func (t *csvTable) refuse(line int, column, got string, want quantity.Phrase) {
	t.problems++
	t.p.Add(csvPath(line, column), quantity.Excerpt(got), want, quantity.ErrForm)
}

// head reads the heading.
func (t *csvTable) head(line int, row []string) {
	known := CSVColumns()
	for _, cell := range row {
		name := strings.NewReplacer("_", " ", "-", " ").Replace(strings.ToLower(cell))
		if name = strings.Join(strings.Fields(name), " "); name == "at" {
			name = "time"
		}
		switch {
		case !slices.Contains(known, name):
			t.refuse(line, "", cell, quantity.Tell("bench.want_csv_column", "a column of the name %s",
				strings.Join(known, ", ")))
		case slices.Contains(t.names, name):
			t.refuse(line, "", cell, quantity.Tell("bench.want_csv_once", "each column once"))
		}
		t.names = append(t.names, name)
	}
	for _, needed := range []string{"time", "kind"} {
		if !slices.Contains(t.names, needed) {
			t.p.Required(csvPath(line, needed), quantity.Tell("bench.want_csv_needed", "this column"))
			t.problems++
		}
	}
}

// row reads one observation through its data form.
func (t *csvTable) row(line int, row []string) {
	form, cells := map[string][]string{}, map[string]string{}
	for i, text := range row {
		if text = strings.TrimSpace(text); text == "" {
			continue
		}
		if i >= len(t.names) {
			t.refuse(line, "", text, quantity.Tell("bench.want_csv_cells", "no more cells than the heading has columns"))
			return
		}
		cells[t.names[i]] = text
	}
	if len(cells) == 0 {
		return
	}
	kind := strings.ToLower(cells["kind"])
	part, known := csvParts()[kind]
	if !known {
		t.refuse(line, "kind", cells["kind"], quantity.Tell("bench.want_csv_kind", "mix, rise, ready, core, weights or note"))
		return
	}
	if y := cells[yeastKindColumn]; y != "" && !strings.HasSuffix(y, "yeast") {
		cells[yeastKindColumn] = y + " yeast"
	}
	form["kind"] = []string{kind}
	for name, text := range cells {
		key := strings.ReplaceAll(name, " ", "_")
		switch {
		case name == "time" || name == "kind":
			continue
		case part != nil && !slices.Contains(strings.Fields(everyKindsColumn), name):
			key = kind + "." + key
		}
		form[key] = []string{text}
	}
	o := Observation{Version: Format}
	err := quantity.ReadForm(form, &o)
	var wrong error
	if o.At, wrong = t.at(cells["time"]); wrong != nil {
		t.problems++
		t.p.Join(csvPath(line, "time"), wrong)
	}
	if err == nil && wrong == nil {
		err = o.Check()
	}
	for _, e := range quantity.InputErrors(err) {
		own := *e
		column := strings.ReplaceAll(strings.TrimPrefix(e.Path, kind+"."), "_", " ")
		own.Path, own.GoPath = "", csvPath(line, column)
		t.p.Join("", &own)
		t.problems++
	}
	t.out = append(t.out, o)
}
