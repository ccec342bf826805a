package handcheck

import (
	"regexp"
	"strings"
	"unicode/utf8"
)

// A Derivation is one derivation as it is printed.
type Derivation struct {
	Title string
	Steps []Step
}

// A Step is one step of it.
type Step struct {
	Name   string
	Table  *Table
	Lines  []Line
	Notes  []string
	Source string
}

// A Line is a value with the formula and the arithmetic printed above it, where there are such.
type Line struct {
	Symbol, Formula, Numbers, Value, Rounded string
	Exact                                    bool // "=" and not "≈" stands before the value
	Where                                    []Binding
}

// A Binding is what a symbol is said to be.
type Binding struct{ Symbol, Value, Meaning string }

// A Table is the rows of a step that is reckoned row by row.
type Table struct {
	Columns []Column
	Rows    [][]string
}

// A Column has a symbol, a meaning and, where its cells are worked out, a formula.
type Column struct{ Symbol, Meaning, Unit, Formula string }

// Read finds the derivations in what is printed at the width; what stands around them is skipped.
func Read(text string, width int) []Derivation {
	r := reader{lines: unwrap(strings.Split(text, "\n"), width)}
	var out []Derivation
	for r.at < len(r.lines) {
		if !r.title() {
			r.at++
			continue
		}
		d := Derivation{Title: r.lines[r.at]}
		r.at += 2
		for r.more() {
			d.Steps = append(d.Steps, r.step())
		}
		out = append(out, d)
	}
	return out
}

// unwrap joins the lines that were broken between words, further ones indented by two more.
func unwrap(lines []string, width int) []string {
	var out []string
	last, base := 0, -1 // length of the last printed line, indent of the joined one
	for i, l := range lines {
		if i == 0 {
			out, base, last = append(out, l), 0, utf8.RuneCountInString(l)
			continue
		}
		text := strings.TrimLeft(l, " ")
		indent := len(l) - len(text)
		first, _, _ := strings.Cut(text, " ")
		full := last+1+utf8.RuneCountInString(first) > width
		// A line of a symbol has two gaps of two spaces; one that was broken at the second has only one.
		atGap := base == 5 && len(gap.FindAllString(strings.TrimSpace(out[len(out)-1]), -1)) == 1 &&
			last+2+utf8.RuneCountInString(first) > width
		if base > 0 && text != "" && indent == base+2 && (full || atGap) {
			if atGap {
				out[len(out)-1] += " "
			}
			out[len(out)-1] += " " + text
		} else {
			out, base = append(out, l), indent
		}
		last = utf8.RuneCountInString(l)
	}
	return out
}

type reader struct {
	lines []string
	at    int
}

var numbered = regexp.MustCompile(`^[0-9]+\. `)

// title reports whether a derivation begins here: a heading underlined with =, and its first step.
func (r *reader) title() bool {
	if r.at+3 >= len(r.lines) || r.lines[r.at] == "" {
		return false
	}
	rule := strings.Repeat("=", utf8.RuneCountInString(r.lines[r.at]))
	return r.lines[r.at+1] == rule && r.lines[r.at+2] == "" && numbered.MatchString(r.lines[r.at+3])
}

// more goes to the next step, if there is one.
func (r *reader) more() bool {
	for r.at < len(r.lines) && r.lines[r.at] == "" {
		r.at++
	}
	return r.at < len(r.lines) && numbered.MatchString(r.lines[r.at])
}

func (r *reader) step() Step {
	_, name, _ := strings.Cut(r.lines[r.at], ". ")
	r.at++
	s := Step{Name: name}
	if r.at < len(r.lines) && strings.HasPrefix(r.lines[r.at], "     ") {
		s.Table = r.table()
	}
	var told group
	done := func() {
		if told.symbol != "" {
			s.Lines = append(s.Lines, told.line())
		}
		told = group{}
	}
	inWhere := false
	for ; r.at < len(r.lines) && r.lines[r.at] != ""; r.at++ {
		l := r.lines[r.at]
		text := strings.TrimLeft(l, " ")
		switch {
		case text == "where":
			inWhere = true
			continue
		case inWhere && strings.HasPrefix(l, "     "):
			told.where = append(told.where, binding(text))
			continue
		}
		inWhere = false
		note, isNote := strings.CutPrefix(text, "note: ")
		source, isSource := strings.CutPrefix(text, "source: ")
		_, rounded, isRounded := strings.Cut(text, ", rounded: ")
		if !isRounded {
			_, rounded, isRounded = strings.Cut(text, ", taken as: ")
		}
		switch {
		case isNote:
			done()
			s.Notes = append(s.Notes, note)
		case isSource:
			done()
			s.Source = source
		case isRounded:
			done()
			s.Lines[len(s.Lines)-1].Rounded = rounded
		default:
			symbol, rest, exact := cutRelation(text)
			if symbol != told.symbol {
				done()
			}
			told.symbol, told.exact = symbol, exact
			told.rest = append(told.rest, rest)
		}
	}
	done()
	return s
}

// A group is what is printed of one symbol: formula, arithmetic and value, or fewer.
type group struct {
	symbol string
	rest   []string
	exact  bool // the last of them
	where  []Binding
}

func (g group) line() Line {
	l := Line{Symbol: g.symbol, Exact: g.exact, Where: g.where, Value: g.rest[len(g.rest)-1]}
	if len(g.rest) > 1 {
		l.Numbers = g.rest[len(g.rest)-2]
	}
	if len(g.rest) > 2 {
		l.Formula = g.rest[len(g.rest)-3]
	}
	return l
}

func cutRelation(text string) (symbol, rest string, exact bool) {
	if symbol, rest, exact = strings.Cut(text, " = "); exact {
		return symbol, rest, true
	}
	symbol, rest, _ = strings.Cut(text, " ≈ ")
	return symbol, rest, false
}

var gap = regexp.MustCompile(` {2,}`)

func binding(text string) Binding {
	parts := append(gap.Split(text, 3), "", "")
	return Binding{Symbol: parts[0], Value: parts[1], Meaning: parts[2]}
}

// table reads the heads of the columns, each with its meaning and its formula, and the rows.
func (r *reader) table() *Table {
	t := &Table{}
	for ; r.at < len(r.lines); r.at++ {
		text := strings.TrimLeft(r.lines[r.at], " ")
		if formula := strings.SplitN(text, " = ", 2); len(formula) == 2 && len(t.Columns) > 0 &&
			formula[0] == t.Columns[len(t.Columns)-1].Symbol {
			t.Columns[len(t.Columns)-1].Formula = formula[1]
			continue
		}
		if len(t.Columns) > 0 && strings.HasPrefix(text, t.Columns[0].Symbol+" ") {
			r.units(t, text)
			r.at++
			break
		}
		b := gap.Split(text, 2)
		if len(b) < 2 {
			return t
		}
		t.Columns = append(t.Columns, Column{Symbol: b[0], Meaning: gap.ReplaceAllString(b[1], " ")})
	}
	for ; r.at < len(r.lines) && strings.HasPrefix(r.lines[r.at], "     "); r.at++ {
		t.Rows = append(t.Rows, cells(r.lines[r.at]))
	}
	return t
}

// units reads those behind the symbols in the head of a table.
func (r *reader) units(t *Table, head string) {
	for k := len(t.Columns) - 1; k >= 0; k-- {
		at := strings.LastIndex(" "+head, " "+t.Columns[k].Symbol+" ")
		if strings.HasSuffix(" "+head, " "+t.Columns[k].Symbol) {
			at = len(head) - len(t.Columns[k].Symbol)
		}
		if at < 0 {
			continue
		}
		t.Columns[k].Unit = strings.TrimSpace(strings.TrimPrefix(head[at:], t.Columns[k].Symbol))
		head = strings.TrimRight(head[:at], " ")
	}
}

// cells splits a row; a time of day is two words, or three.
func cells(row string) []string {
	var out []string
	for text := strings.TrimSpace(row); text != ""; text = strings.TrimSpace(text) {
		cell := clockForm.FindString(text)
		if cell == "" {
			cell = powered.FindString(text)
		}
		if cell == "" {
			cell, _, _ = strings.Cut(text, " ")
		}
		out, text = append(out, cell), text[len(cell):]
	}
	return out
}

var powered = regexp.MustCompile(`^[−-]?[0-9.]+ × 10\^(\([−-]?[0-9]+\)|[0-9]+)`)
