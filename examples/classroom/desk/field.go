package desk

import (
	"cmp"
	"math"
	"slices"
	"strconv"
	"strings"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

// A kind is what is typed into a field.
type kind int

const (
	aMass kind = iota
	aPercent
	aTemperature
	aDelta
	aTime // of elapsed time
	aLength
	aCount // a whole number
	aText
	aChoice
	aTable
	aMoment    // a date and a time of the class's days
	onTheClock // of a guess: moments for steps, each a field of its own
)

// A field is one thing that a reader can change.
type field struct {
	name    string // in the data form of the library's input, such as "room" or "samples"
	label   working.Message
	kind    kind
	start   [2]string // what stands in it at first: metric, US customary
	slide   [2]slide  // metric, US customary; its unit is that of a bare number
	places  []string  // of a slider that does not stand at numbers
	choices []choice
	columns []field // of a table
	most    int     // rows of a table
	empty   bool    // it may be left empty
	drawn   bool    // a table that a pointer may draw
	hand    bool    // a moment that the class puts by hand: a part of the guess
}

// A slide is where a slider can stand, from low to high by steps, in a unit. Without a step there is no slider.
type slide struct {
	low, high, step float64
	unit            working.Unit
}

// A choice is one of several words.
type choice struct {
	value string
	label working.Message
}

// choicesOf lists the values of an enumeration.
func choicesOf[E interface{ String() string }](values []E) []choice {
	var out []choice
	for _, v := range values {
		out = append(out, choice{v.String(), working.Tell("desk.word", "%v", v)})
	}
	return out
}

func both(text string) [2]string { return [2]string{text, text} }

// starts is what stands in the field at first, with the decimal sign of the reader.
func (f field) starts(r working.Reader) string {
	text := f.start[system(r.Units)]
	if r.Language.Decimal == "" || f.kind == aText || f.kind == aChoice || f.kind == aMoment {
		return text
	}
	return strings.ReplaceAll(text, ".", r.Language.Decimal)
}

func (f field) slides(u working.Units) slide { return f.slide[system(u)] }

func system(u working.Units) int {
	if u == working.USCustomary {
		return 1
	}
	return 0
}

// unit is what a bare number in the field is taken in.
func (f field) unit(u working.Units) working.Unit {
	if given := f.slides(u).unit; given != "" {
		return given
	}
	metric, us := working.Number, working.Number
	switch f.kind {
	case aMass:
		metric, us = working.Gram, working.Ounce
	case aPercent:
		metric, us = working.Percent, working.Percent
	case aTemperature:
		metric, us = working.Celsius, working.Fahrenheit
	case aDelta:
		metric, us = working.DeltaCelsius, working.DeltaFahrenheit
	case aTime:
		metric, us = working.Minute, working.Minute
	case aLength:
		metric, us = working.Meter, working.Foot
	}
	if u == working.USCustomary {
		return us
	}
	return metric
}

// stops are what the slider writes into the field at each of its places.
func (f field) stops(r working.Reader) []string {
	s := f.slides(r.Units)
	if f.places != nil || s.step <= 0 {
		return f.places
	}
	var out []string
	for i := 0; ; i++ {
		x := s.low + float64(i)*s.step
		if x > s.high+s.step/1000 {
			return out
		}
		out = append(out, strings.TrimSpace(r.Number(math.Round(x*1e6)/1e6, -1)+" "+string(s.unit)))
	}
}

// place is where a slider stands that is nearest to what is typed; -1 if that cannot be read.
func (f field) place(text string, r working.Reader) int {
	if f.places != nil {
		return slices.Index(f.places, strings.TrimSpace(text))
	}
	s := f.slides(r.Units)
	v, err := f.number(text, r)
	if err != nil || s.step <= 0 {
		return -1
	}
	return int(math.Round((min(max(v, s.low), s.high) - s.low) / s.step))
}

// number is what is typed as a number of the field's unit.
func (f field) number(text string, r working.Reader) (float64, error) {
	q, err := f.parse(text, r)
	if err != nil {
		return 0, err
	}
	if n, ok := q.(int); ok {
		return float64(n), nil
	}
	v := working.ValueOf(q).In(f.unit(r.Units))
	if !v.IsValid() {
		return 0, quantity.ErrForm
	}
	return v.Number, nil
}

// parse reads what is typed. A bare number is taken in the unit that stands beside the field.
func (f field) parse(text string, r working.Reader) (any, error) {
	text = f.withUnit(strings.TrimSpace(text), r.Units)
	switch f.kind {
	case aMass:
		return parsed(quantity.ParseMass(text))
	case aPercent:
		return parsed(quantity.ParsePercent(text))
	case aTemperature:
		return parsed(quantity.ParseTemperature(text))
	case aDelta:
		return parsed(quantity.ParseDelta(text))
	case aTime:
		d, err := quantity.ParseDuration(text)
		return parsed(quantity.Elapsed(d), err)
	case aLength:
		return parsed(quantity.ParseLength(text))
	case aMoment:
		return parsed(momentOf(text))
	case aCount:
		n, err := strconv.Atoi(text)
		if err != nil {
			return nil, &quantity.InputError{Got: quantity.Excerpt(text), Want: quantity.Tell("desk.want_whole_number", "a whole number"), Err: quantity.ErrForm}
		}
		return n, nil
	case aChoice:
		for _, c := range f.choices {
			if c.value == text {
				return text, nil
			}
		}
		return nil, &quantity.InputError{Got: quantity.Excerpt(text), Want: quantity.Tell("desk.want_one_list", "one of the list"), Err: quantity.ErrForm}
	}
	return text, nil
}

// withUnit puts the unit that stands beside the field behind a bare number.
func (f field) withUnit(text string, u working.Units) string {
	switch f.kind {
	case aCount, aText, aChoice, aMoment, onTheClock:
		return text
	}
	if !bare(text) {
		return text
	}
	return text + " " + string(f.unit(u))
}

func parsed[T any](v T, err error) (any, error) {
	if err != nil {
		return nil, err
	}
	return v, nil
}

// bare reports whether a text is a number and nothing else, so that a unit can be put behind it.
func bare(text string) bool {
	digits := false
	for i, c := range text {
		switch {
		case c >= '0' && c <= '9':
			digits = true
		case c == '.' || c == ',':
		case i == 0 && (c == '-' || c == '+' || c == '−'):
		default:
			return false
		}
	}
	return digits
}

// A table is typed as rows of cells. In a state its text has cells between bars and rows between semicolons.
const (
	betweenCells = "|"
	betweenRows  = ";"
)

func rowsOf(text string) [][]string {
	if strings.TrimSpace(text) == "" {
		return nil
	}
	var rows [][]string
	for _, r := range strings.Split(text, betweenRows) {
		cells := strings.Split(r, betweenCells)
		for i := range cells {
			cells[i] = strings.TrimSpace(cells[i])
		}
		rows = append(rows, cells)
	}
	return rows
}

func blank(cells []string) bool { return strings.Join(cells, "") == "" }

func textOf(rows [][]string) string {
	var out []string
	for _, r := range rows {
		clean := make([]string, len(r))
		for i, c := range r {
			clean[i] = strings.NewReplacer(betweenCells, " ", betweenRows, " ").Replace(c)
		}
		out = append(out, strings.Join(clean, betweenCells))
	}
	return strings.Join(out, betweenRows)
}

// values are what is typed into the fields of a task, read one after the other. What cannot be read is a problem at
// its field; all of them are told at once.
type values struct {
	task     task
	texts    map[string]string
	reader   working.Reader
	problems quantity.Problems
}

func (v *values) text(name string) string {
	if t, ok := v.texts[name]; ok {
		return t
	}
	f, _ := v.task.field(name)
	return f.starts(v.reader)
}

// get reads a field as a quantity of type T; the zero value of an empty field that may be empty.
func get[T any](v *values, name string) (out T) {
	f, ok := v.task.field(name)
	if !ok {
		v.problems.Required(name, quantity.Tell("desk.want_field_task", "a field of the task"))
		return out
	}
	return cell[T](v, f, name, v.text(name))
}

func cell[T any](v *values, f field, path, text string) (out T) {
	if strings.TrimSpace(text) == "" {
		if !f.empty {
			v.problems.Required(path, quantity.Tell("desk.want_value", "a value"))
		}
		return out
	}
	q, err := f.parse(text, v.reader)
	if err != nil {
		v.problems.Join(path, err)
		return out
	}
	out, _ = q.(T)
	return out
}

// A row is one row of a table, to be read cell by cell.
type row struct {
	v     *values
	table field
	path  string
	cells []string
}

// rows are those rows of a table in which anything is typed.
func (v *values) rows(name string) []row {
	f, _ := v.task.field(name)
	var out []row
	for i, cells := range rowsOf(v.text(name)) {
		if blank(cells) {
			continue
		}
		if len(out) >= f.most {
			v.problems.Add(name, quantity.Tell("desk.got_rows", "%d rows", i+1), quantity.Tell("desk.want_at_most_rows", "at most %d rows", f.most), quantity.ErrOutOfRange)
			break
		}
		out = append(out, row{v, f, name + "[" + strconv.Itoa(i) + "]", cells})
	}
	return out
}

func at[T any](r row, column string) (out T) {
	for i, c := range r.table.columns {
		if c.name != column {
			continue
		}
		text := ""
		if i < len(r.cells) {
			text = r.cells[i]
		}
		return cell[T](r.v, c, r.path+"."+column, text)
	}
	return out
}

// word reads a choice into a value that reads its own words.
func word[T any, P interface {
	*T
	UnmarshalText(text []byte) error
}](v *values, name string) (out T) {
	text := get[string](v, name)
	if text != "" {
		v.problems.Join(name, P(&out).UnmarshalText([]byte(text)))
	}
	return out
}

func elapsed(v *values, name string) quantity.Elapsed { return get[quantity.Elapsed](v, name) }

func percent(v *values, name string) quantity.Percent { return get[quantity.Percent](v, name) }

func temperature(v *values, name string) quantity.Temperature {
	return get[quantity.Temperature](v, name)
}

func mass(v *values, name string) quantity.Mass { return get[quantity.Mass](v, name) }

// problemTexts are the problems of an error by the field that each is about, and those about none.
func problemTexts(err error, t task, paths map[string]string, r working.Reader) (byField map[string]string,
	others []string) {
	byField = map[string]string{}
	seen := map[string]bool{}
	for _, e := range quantity.InputErrors(err) {
		path := cmp.Or(e.Path, e.GoPath)
		if to, ok := paths[path]; ok {
			path = to
		}
		here := *e
		here.Path, here.GoPath = "", ""
		if name := t.nearest(path); name != "" {
			if byField[name] == "" {
				byField[name] = working.Problem(&here).Text(r)
			}
			seen[name] = true
			continue
		}
		others = append(others, working.Problem(e).Text(r))
	}
	if len(seen) == 0 && len(others) == 0 && err != nil {
		others = append(others, working.Problem(err).Text(r))
	}
	return byField, others
}
