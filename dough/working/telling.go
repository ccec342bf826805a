package working

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"example.org/maslin/internal/enum"
)

// Level is how much of a derivation is told.
type Level int

// The levels. The zero value is Everything.
const (
	// Everything tells formulas, what each symbol stands for, numbers, notes, sources and the glossary.
	Everything Level = iota
	// WithNumbers tells the formula and the line with the numbers put in.
	WithNumbers
	// InWords tells one sentence for each step.
	InWords
)

var levels = enum.Of[Level]("level of a derivation", "everything", "with numbers", "in words")

// String returns the word.
func (l Level) String() string { return levels.String(l) }

// MarshalText implements encoding.TextMarshaler.
func (l Level) MarshalText() ([]byte, error) { return levels.Marshal(l) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads the words that String prints, and no others.
func (l *Level) UnmarshalText(text []byte) error { return levels.Unmarshal(l, text) }

// A Telling says for whom and how fully a derivation is told, and tells it. The zero value tells everything to a
// reader of metric English.
type Telling struct {
	Reader
	Level    Level `json:"level,omitzero"`
	Width    int   `json:"width"`    // of plain text; below 20 means 80
	Document bool  `json:"document"` // a complete LaTeX or HTML document and not a part of one
}

// Text tells the derivation for a terminal, no line longer than the width where words allow it.
func (t Telling) Text(w Working) string {
	if t.Width < 20 {
		t.Width = 80
	}
	var b strings.Builder
	if title := w.heading(t.Reader); title != "" {
		fmt.Fprintf(&b, "%s\n%s\n", title, strings.Repeat("=", utf8.RuneCountInString(title)))
	}
	n := newNames(w.steps, t.Reader)
	for i, s := range t.told(w) {
		if i > 0 || w.heading(t.Reader) != "" {
			b.WriteByte('\n')
		}
		t.step(&b, s, i+1, n)
	}
	if glossary := w.Glossary(t.Reader); t.Level == Everything && len(glossary) > 0 {
		fmt.Fprintf(&b, "\n%s\n", t.word("In other words"))
		for _, g := range glossary {
			wrap(&b, t.Width, "  ", g.Symbol+"  "+g.Meaning)
		}
	}
	return b.String()
}

// heading is the title for the reader.
func (w Working) heading(r Reader) string {
	return w.title.Text(r)
}

func (t Telling) step(b *strings.Builder, s step, number int, n *names) {
	f := s.finding
	if t.Level == InWords {
		wrap(b, t.Width, "", fmt.Sprintf("%d. %s", number, s.brief(t.Reader)))
		return
	}
	fmt.Fprintf(b, "%d. %s\n", number, f.Name.Text(t.Reader))
	if table := s.table(t.Reader, n); len(table.Columns) > 0 {
		table.text(b, t, t.Level == Everything)
	}
	lines := s.lines(t.Reader, n)
	told := map[string]bool{}
	for _, l := range lines {
		l.text(b, t, told)
	}
	if t.Level != Everything {
		return
	}
	for _, note := range s.notes(t.Reader) {
		wrap(b, t.Width, "   ", note)
	}
	if !f.Source.IsZero() {
		wrap(b, t.Width, "   ", t.word("source")+": "+f.Source.Message().Text(t.Reader))
	}
}

// notes are the sentences behind the lines of a step: where to look, how it was rounded, and what else there is to
// say.
func (s step) notes(r Reader) []string {
	var out []string
	f := s.finding
	for _, m := range []Message{f.Look, f.Rounding, f.Note} {
		if !m.IsZero() {
			out = append(out, Tell("working.note", "note: %v", m).Text(r))
		}
	}
	return out
}

func (l Line) text(b *strings.Builder, t Telling, told map[string]bool) {
	if l.formula != nil && l.Formula != l.Numbers {
		wrap(b, t.Width, "   ", l.Symbol+" = "+l.Formula)
	}
	if t.Level == Everything {
		var where []Binding
		longest := 0
		for _, v := range l.Where {
			if key := v.Symbol + "\x00" + v.Value; !told[key] {
				told[key] = true
				where = append(where, v)
				longest = max(longest, utf8.RuneCountInString(v.Symbol))
			}
		}
		if len(where) > 0 {
			b.WriteString("   " + t.word("where") + "\n")
		}
		for _, v := range where {
			pad := strings.Repeat(" ", longest-utf8.RuneCountInString(v.Symbol))
			meaning := v.Meaning
			if v.Step > 0 {
				meaning = Tell("working.from_step", "%s, from step %d", v.Meaning, v.Step).Text(t.Reader)
			}
			wrap(b, t.Width, "     ", v.Symbol+pad+"  "+v.Value+"  "+meaning)
		}
	}
	if l.formula != nil {
		wrap(b, t.Width, "   ", l.Symbol+" = "+l.Numbers)
	}
	wrap(b, t.Width, "   ", l.Symbol+" "+l.relation()+" "+l.Value)
	if after := l.after(); !after.IsZero() {
		wrap(b, t.Width, "   ", after.Text(t.Reader))
	}
}

// after is what becomes of the value.
func (l Line) after() Message {
	switch {
	case l.Rounded != "":
		return Tell("working.rounded", "%s, rounded: %s", l.Symbol, l.Rounded)
	case l.Taken != "":
		return Tell("working.taken", "%s, taken as: %s", l.Symbol, l.Taken)
	}
	return Message{}
}

func (l Line) relation() string {
	if l.Exact {
		return "="
	}
	return "≈"
}

func (told ToldTable) text(b *strings.Builder, t Telling, where bool) {
	width := make([]int, len(told.Columns))
	head := make([]string, len(told.Columns))
	for k, c := range told.Columns {
		head[k] = c.Symbol
		if c.Unit != "" && c.Unit != string(Clock) {
			head[k] += " " + c.Unit
		}
		width[k] = utf8.RuneCountInString(head[k])
		for _, row := range told.Rows {
			width[k] = max(width[k], utf8.RuneCountInString(row[k]))
		}
		if where {
			wrap(b, t.Width, "     ", c.Symbol+"  "+c.Meaning)
		}
		if c.Formula != "" {
			wrap(b, t.Width, "   ", c.Symbol+" = "+c.Formula)
		}
	}
	line := func(cells []string) {
		text := "    "
		for k, c := range cells {
			text += " " + strings.Repeat(" ", width[k]-utf8.RuneCountInString(c)) + c
		}
		b.WriteString(text + "\n")
	}
	line(head)
	for _, row := range told.Rows {
		line(row)
	}
}

// Glossary lists what the symbols of the derivation are in the words of a student, each once, in order of appearance;
// behind them the terms that the names of its steps and symbols use.
func (w Working) Glossary(r Reader) []Binding {
	symbols, terms := w.glossary(r)
	return append(symbols, terms...)
}

// glossary is [Working.Glossary], its symbols and its terms apart.
func (w Working) glossary(r Reader) (symbols, terms []Binding) {
	n := newNames(w.steps, r)
	seen := map[Message]bool{}
	add := func(b *binding) {
		if b != nil && !b.term.IsZero() && !seen[b.term] {
			seen[b.term] = true
			symbols = append(symbols, Binding{Symbol: n.name(b), Meaning: b.term.Text(r)})
		}
	}
	for _, s := range w.steps {
		for _, sym := range symbolsOf(s.finding.By) {
			add(sym.symbol)
		}
		add(s.result)
	}
	for _, t := range w.used(seen) {
		terms = append(terms, Binding{Symbol: t.Word.Text(r), Meaning: t.Explains.Text(r)})
	}
	return symbols, terms
}
