package desk

import "slices"

// A Field is what a program may put into a field of a task.
type Field struct {
	Name  string
	Stops []string // where its slider stands, or the words of its list
	Place int      // of what is in it now; 0 if that is none of them
	Rows  []string // of a table
}

// Fields lists the fields of the state's task.
func Fields(s State) []Field {
	t, _ := taskOf(s.At)
	r := s.reader()
	v := &values{task: t, texts: s.Fields, reader: r}
	var out []Field
	for _, f := range t.fields {
		if f.hand && s.Phase != guessing {
			continue // they are gone when the guess is locked
		}
		text := v.text(f.name)
		one := Field{Name: f.name, Stops: f.stops(r), Place: max(f.place(text, r), 0)}
		switch f.kind {
		case aChoice:
			for _, c := range f.choices {
				one.Stops = append(one.Stops, c.value)
			}
			one.Place = max(slices.Index(one.Stops, text), 0)
		case aTable:
			for _, cells := range rowsOf(text) {
				one.Rows = append(one.Rows, textOf([][]string{cells}))
			}
		}
		out = append(out, one)
	}
	return out
}
