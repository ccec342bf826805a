package working

import (
	"strconv"
	"strings"

	"example.org/maslin/internal/textpage"
)

// HTML tells the derivation as elements of a page: a heading of that rank (1 to 5; otherwise 2), and an item of a list
// for each step, its formulas in MathML. Classes begin with "working-".
func (t Telling) HTML(w Working, rank int) string {
	if rank < 1 || rank > 5 {
		rank = 2
	}
	p := pager{t: t, n: newNames(w.steps, t.Reader), rank: rank}
	p.element("h"+strconv.Itoa(rank), "", w.heading(t.Reader))
	p.put(`<ol class="working-steps">`, "\n")
	for i, s := range t.told(w) {
		p.put("<li>")
		p.step(w, s, i)
		p.put("</li>\n")
	}
	p.put("</ol>\n")
	if glossary := w.Glossary(t.Reader); t.Level == Everything && len(glossary) > 0 {
		p.element("h"+strconv.Itoa(rank+1), "", t.word("In other words"))
		p.put(`<dl class="working-words">`, "\n")
		for _, g := range glossary {
			p.pair(g.Symbol, "", g.Meaning)
		}
		p.put("</dl>\n")
	}
	return p.b.String()
}

// A pager writes a derivation as HTML.
type pager struct {
	b    strings.Builder
	t    Telling
	n    *names
	rank int
}

func (p *pager) put(parts ...string) {
	for _, s := range parts {
		p.b.WriteString(s)
	}
}

func (p *pager) text(s string) { p.b.WriteString(textpage.Escaped(textpage.Printable(s))) }

func (p *pager) element(tag, class, text string) {
	if text == "" {
		return
	}
	p.put("<", tag)
	if class != "" {
		p.put(` class="`, class, `"`)
	}
	p.put(">")
	p.text(text)
	p.put("</", tag, ">\n")
}

// pair says what a symbol, or a symbol with its value, stands for.
func (p *pager) pair(symbol, value, text string) {
	p.put("<div><dt>", htmlSymbol(symbol))
	p.text(value)
	p.put("</dt><dd>")
	p.text(text)
	p.put("</dd></div>\n")
}

func (p *pager) step(w Working, s step, i int) {
	f := s.finding
	if p.t.Level == InWords {
		p.element("p", "", s.brief(p.t.Reader))
		return
	}
	p.element("h"+strconv.Itoa(p.rank+1), "", f.Name.Text(p.t.Reader))
	p.table(s.table(p.t.Reader, p.n), f.Name.Text(p.t.Reader))
	p.put(`<div class="working-lines" role="group" tabindex="0" aria-label="`)
	p.text(f.Name.Text(p.t.Reader))
	p.put(`">`, "\n", p.t.MathML(w, i+1), "</div>\n")
	if p.t.Level != Everything {
		return
	}
	p.where(s)
	for _, note := range s.notes(p.t.Reader) {
		p.element("p", "working-note", note)
	}
	if !f.Source.IsZero() {
		p.element("p", "working-source", p.t.word("source")+": "+f.Source.Message().Text(p.t.Reader))
	}
}

// where lists what the symbols of a step stand for, each once.
func (p *pager) where(s step) {
	told := map[string]bool{}
	var items []Binding
	for _, l := range s.lines(p.t.Reader, p.n) {
		for _, v := range l.Where {
			if key := v.Symbol + "\x00" + v.Value; !told[key] {
				told[key] = true
				items = append(items, v)
			}
		}
	}
	if len(items) == 0 {
		return
	}
	p.put(`<dl class="working-where">`, "\n")
	for _, v := range items {
		meaning := v.Meaning
		if v.Step > 0 {
			meaning = Tell("working.from_step", "%s, from step %d", v.Meaning, v.Step).Text(p.t.Reader)
		}
		p.pair(v.Symbol, " = "+v.Value, meaning)
	}
	p.put("</dl>\n")
}

func (p *pager) table(told ToldTable, caption string) {
	if len(told.Columns) == 0 {
		return
	}
	p.put(`<div class="working-table" role="group" tabindex="0" aria-label="`)
	p.text(caption)
	p.put(`"><table><thead><tr>`)
	for _, c := range told.Columns {
		p.put(`<th scope="col">`, htmlSymbol(c.Symbol))
		if c.Unit != "" && c.Unit != string(Clock) {
			p.text(" " + c.Unit)
		}
		p.put("</th>")
	}
	p.put("</tr></thead>\n<tbody>\n")
	for _, row := range told.Rows {
		p.put("<tr>")
		for _, cell := range row {
			p.put("<td>")
			p.text(cell)
			p.put("</td>")
		}
		p.put("</tr>\n")
	}
	p.put("</tbody></table></div>\n")
	if p.t.Level != Everything {
		return
	}
	p.put(`<dl class="working-where">`, "\n")
	for _, c := range told.Columns {
		p.pair(c.Symbol, "", c.Meaning)
		if c.formula != nil {
			p.put(`<div><dt></dt><dd><math><mrow>`, mathSymbol(c.Symbol), "<mo>=</mo>", p.t.mathML(c.formula, p.n),
				"</mrow></math></dd></div>\n")
		}
	}
	p.put("</dl>\n")
}
