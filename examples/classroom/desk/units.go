package desk

// withUnits is a state that asks the same in whatever units it is told next: what was typed as a bare number keeps the
// unit that stood beside it, and while a guess stands, so do the values that nobody has typed.
func (s State) withUnits() State {
	t, ok := taskOf(s.At)
	if !ok {
		return s
	}
	v := &values{task: t, texts: s.Fields, reader: s.reader()}
	typed, was := map[string]string{}, map[string]string{}
	for _, f := range t.fields {
		if _, ok := s.Fields[f.name]; ok || len(s.Was) > 0 && !f.hand {
			typed[f.name] = f.inUnits(v.text(f.name), v)
		}
		if text, ok := s.Was[f.name]; ok {
			was[f.name] = f.inUnits(text, v)
		}
	}
	s.Fields, s.Was = typed, was
	s.Guess = t.guess.withUnit(s.Guess, s.unitsOf())
	return s
}

// inUnits is a text of the field, or the cells of a table, with the unit of each.
func (f field) inUnits(text string, v *values) string {
	if f.kind != aTable {
		return f.withUnit(text, v.reader.Units)
	}
	rows := rowsOf(text)
	for _, cells := range rows {
		for i := range min(len(cells), len(f.columns)) {
			cells[i] = f.columns[i].withUnit(cells[i], v.reader.Units)
		}
	}
	return textOf(rows)
}
