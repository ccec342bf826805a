package desk

import (
	"strconv"
	"strings"

	"example.org/maslin/dough/working"
)

// fieldsPart is the fields of a task. A locked guess holds them still until it is revealed.
func (s State) fieldsPart(b *builder, t task, out Response) {
	r := s.reader()
	attributes := []string{"class", "fields"}
	if s.Phase == locked {
		attributes = append(attributes, "disabled", "")
	}
	b.tag("fieldset", attributes...)
	b.el("legend", working.Tell("desk.fields", "What you can change").Text(r))
	v := &values{task: t, texts: s.Fields, reader: r}
	for _, f := range t.fields {
		if f.hand {
			continue
		}
		if f.kind == aTable {
			s.tableField(b, f, v, out)
			continue
		}
		f.put(b, fieldID(f.name), v.text(f.name), out.Places, out.Problems[f.name], r)
	}
	b.end("fieldset")
}

// put is one field: its label, a text field, and a slider where it has one. Both say the same.
func (f field) put(b *builder, id, text string, places map[string]int, problem string, r working.Reader) {
	b.raw(`<div class="field">`)
	label := f.label.Text(r)
	b.el("label", label, "for", id)
	if f.kind == aChoice {
		b.tag("select", "id", id, "data-field", f.name, "aria-describedby", id+"-problem")
		options(b, text, f.choices, r)
		b.end("select")
	} else {
		attributes := []string{"id", id, "type", "text", "autocomplete", "off", "spellcheck", "false", "data-field", f.name,
			"value", text,
			"aria-describedby", id + "-problem"}
		if problem != "" {
			attributes = append(attributes, "aria-invalid", "true")
		}
		if f.kind == aText {
			attributes = append(attributes, "class", "wide")
		}
		b.tag("input", attributes...)
	}
	if stops := f.stops(r); len(stops) > 1 {
		place, known := places[f.name]
		if !known {
			place = 0
		}
		b.tag("input", "type", "range", "min", "0", "max", strconv.Itoa(len(stops)-1), "step", "1", "value",
			strconv.Itoa(place),
			"data-slide", f.name, "data-stops", strings.Join(stops, "|"), "aria-label", label, "aria-valuetext", text)
	}
	b.el("p", problem, "class", "field-problem", "id", id+"-problem", "data-problem", f.name)
	b.raw("</div>")
}

func cellID(table string, row int, column string) string {
	return fieldID(table + "[" + strconv.Itoa(row) + "]." + column)
}

// cellLabel is what a cell of a column is called; rows are counted from 1 where people read.
func cellLabel(column field, row int, r working.Reader) string {
	return working.Tell("desk.cell", "%s, row %d", column.label.Text(r), row+1).Text(r)
}

// tableField is a table to type into, with its drawing where it has one.
func (s State) tableField(b *builder, f field, v *values, out Response) {
	r := s.reader()
	id := fieldID(f.name)
	b.tag("div", "class", "table-field", "role", "group", "aria-labelledby", id+"-label", "id", id, "tabindex", "-1")
	b.el("p", f.label.Text(r), "class", "table-label", "id", id+"-label")
	if f.drawn {
		b.tag("div", "data-board", f.name)
		b.raw(out.Board[f.name])
		b.end("div")
	}
	rows := rowsOf(v.text(f.name))
	b.raw(`<div class="scroll"><table><thead><tr>`)
	for _, c := range f.columns {
		b.el("th", c.label.Text(r)+", "+string(c.unit(r.Units)), "scope", "col")
	}
	b.raw("<td></td></tr></thead><tbody>")
	for i, cells := range rows {
		b.raw("<tr>")
		for k, c := range f.columns {
			text := ""
			if k < len(cells) {
				text = cells[k]
			}
			path := f.name + "[" + strconv.Itoa(i) + "]." + c.name
			attributes := []string{"id", fieldID(path), "type", "text", "autocomplete", "off", "value", text, "data-cell",
				f.name,
				"aria-label", cellLabel(c, i, r), "data-path", path}
			if out.Problems[path] != "" {
				attributes = append(attributes, "aria-invalid", "true")
			}
			b.raw("<td>")
			b.tag("input", attributes...)
			b.raw("</td>")
		}
		b.raw("<td>")
		b.el("button", "×", "type", "button", "data-do", "drop", "data-name", f.name, "data-row", strconv.Itoa(i),
			"aria-label",
			working.Tell("desk.drop", "Take out row %d", i+1).Text(r))
		b.raw("</td></tr>")
	}
	b.raw("</tbody></table></div>")
	b.el("p", out.Problems[f.name], "class", "field-problem", "data-problem", f.name)
	if len(rows) < f.most {
		b.el("button", working.Tell("desk.add", "Add a row").Text(r), "type", "button", "data-do", "add", "data-name",
			f.name, "id",
			"add-"+f.name)
	}
	b.end("div")
}
