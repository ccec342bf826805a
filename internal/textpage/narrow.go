package textpage

import "strings"

// leastColumn is how narrow a column of text may get. Judgment.
const leastColumn = 16

// narrowed are the rows with the widest column of text, the last apart, wrapped into rows of its own so that the others
// have room; false where there is no such column, or it has words too long for that.
func (p *Page) narrowed(indent int, align string, rows [][]string) ([][]string, bool) {
	widths, begins := p.columns(indent, align, rows)
	wide, last := -1, 0
	for i, w := range widths {
		if align[i] == 'l' && (wide < 0 || w > widths[wide]) {
			wide = i
		}
	}
	for _, r := range rows {
		if len(r) == len(align) {
			last = max(last, Width(p.Plain(r[len(r)-1])))
		}
	}
	if wide < 0 {
		return nil, false
	}
	room := widths[wide] - (begins + last - p.width)
	if room < leastColumn {
		return nil, false
	}
	var out [][]string
	for _, r := range rows {
		if wide >= len(r) {
			out = append(out, r)
			continue
		}
		lines := p.wrapped(r[wide], room)
		for i, line := range lines {
			if Width(line) > room {
				return nil, false // a word of its own that is longer
			}
			part := make([]string, len(align))
			if i == 0 {
				copy(part, r)
			}
			part[wide] = line
			out = append(out, part)
		}
	}
	return out, true
}

// wrapped is a text in lines of a width, the second and all further ones two columns deeper.
func (p *Page) wrapped(text string, width int) []string {
	var out []string
	line := ""
	for _, word := range strings.FieldsFunc(p.Plain(Glue(text)), isBlank) {
		switch {
		case line == "":
			line = word
		case Width(line)+1+Width(word) > width:
			out = append(out, line)
			line = NoBreak + NoBreak + word
		default:
			line += " " + word
		}
	}
	return append(out, line)
}
