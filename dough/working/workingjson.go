package working

import (
	"encoding/json"
	"strconv"
)

// wireSymbol is a symbol of a derivation in JSON; other places name it by its identity.
type wireSymbol struct {
	ID      string  `json:"id"`
	Name    string  `json:"name"`
	Meaning Message `json:"meaning"`
	Term    Message `json:"term,omitzero"`
	Value   *Value  `json:"value,omitempty"`
	Shown   string  `json:"shown,omitempty"`
	Step    int     `json:"step,omitzero"`
}

type wireLine struct {
	Symbol  string   `json:"symbol"`
	Formula string   `json:"formula,omitzero"`
	Numbers string   `json:"numbers,omitzero"`
	Value   Value    `json:"value"`
	Shown   string   `json:"shown"`
	Rounded *Value   `json:"rounded,omitempty"`
	Exact   bool     `json:"exact"`
	Uses    []string `json:"uses,omitempty"`
}

type wireTable struct {
	Columns []wireColumn `json:"columns"`
	Rows    [][]Value    `json:"rows"`
}

type wireColumn struct {
	Symbol  string `json:"symbol"`
	Meaning string `json:"meaning"`
	Unit    string `json:"unit"`
	Formula string `json:"formula,omitzero"`
}

type wireStep struct {
	Name     Message    `json:"name"`
	Lines    []wireLine `json:"lines"`
	Table    *wireTable `json:"table,omitempty"`
	Look     Message    `json:"look,omitzero"`
	Rounding Message    `json:"rounding,omitzero"`
	Note     Message    `json:"note,omitzero"`
	Source   string     `json:"source,omitzero"`
}

// MarshalJSON writes the derivation in metric units: the symbols with their identities, values as number, unit and
// decimals, the lines of each step, and the sources by key.
func (w Working) MarshalJSON() ([]byte, error) {
	r := Reader{}
	names := newNames(w.steps, Reader{})
	out := struct {
		Title   Message           `json:"title,omitzero"`
		Symbols []wireSymbol      `json:"symbols"`
		Steps   []wireStep        `json:"steps"`
		Sources map[string]Source `json:"sources,omitempty"`
	}{Title: w.title, Symbols: []wireSymbol{}, Steps: []wireStep{}, Sources: map[string]Source{}}
	ids := map[bindingKey]string{}
	id := func(b *binding) string {
		k := b.key()
		if ids[k] == "" {
			ids[k] = "s" + strconv.Itoa(len(ids)+1)
			s := wireSymbol{ID: ids[k], Name: names.name(b), Meaning: b.meaning, Term: b.term, Step: names.step[k]}
			if !b.column {
				v := b.shown(r)
				s.Value, s.Shown = &v, v.text(r)
			}
			out.Symbols = append(out.Symbols, s)
		}
		return ids[k]
	}
	key := sourceKeys(w.Sources())
	for src, k := range key {
		out.Sources[k] = src
	}
	for _, s := range w.steps {
		f := s.finding
		step := wireStep{
			Name: f.Name, Look: f.Look, Rounding: f.Rounding, Note: f.Note, Source: key[f.Source],
		}
		for _, l := range s.lines(r, names) {
			line := wireLine{
				Symbol:  id(l.symbol),
				Formula: l.Formula,
				Numbers: l.Numbers,
				Value:   l.value,
				Shown:   l.Value,
				Exact:   l.Exact,
			}
			if l.Rounded+l.Taken != "" {
				v := s.result.value.For(r)
				line.Rounded = &v
			}
			if l.formula != nil {
				for _, sym := range l.formula.symbols() {
					line.Uses = append(line.Uses, id(sym.symbol))
				}
			}
			step.Lines = append(step.Lines, line)
		}
		if t := s.table(r, names); len(t.Columns) > 0 {
			step.Table = &wireTable{Rows: t.values}
			for _, c := range t.Columns {
				step.Table.Columns = append(step.Table.Columns, wireColumn{c.Symbol, c.Meaning, c.Unit, c.Formula})
			}
		}
		out.Steps = append(out.Steps, step)
	}
	return json.Marshal(out)
}

// sourceKeys gives each source its key, with a number where two have the same.
func sourceKeys(sources []Source) map[Source]string {
	out := map[Source]string{}
	taken := map[string]bool{}
	for _, s := range sources {
		base := s.Key
		if base == "" {
			base = "source"
		}
		k := base
		for i := 2; taken[k]; i++ {
			k = base + "-" + strconv.Itoa(i)
		}
		out[s], taken[k] = k, true
	}
	return out
}

// MarshalJSON writes number, unit and decimals; a number that is none is null.
func (v Value) MarshalJSON() ([]byte, error) {
	out := struct {
		Number   *float64 `json:"number"`
		Unit     Unit     `json:"unit,omitzero"`
		Decimals int      `json:"decimals"`
	}{Unit: v.Unit, Decimals: v.Decimals}
	if v.IsValid() {
		out.Number = &v.Number
	}
	return json.Marshal(out)
}
