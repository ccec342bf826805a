package desk

import (
	"strconv"
	"strings"

	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
)

// task asks the library the question of a task, and shows what it says as far as the phase allows.
func (q Request) task(s State, whole bool) Response {
	t, _ := taskOf(s.At)
	r := s.reader()
	v := &values{task: t, texts: s.Fields, reader: r}
	out := Response{Places: map[string]int{}, Board: map[string]string{}}
	side, _ := q.columns()
	for _, f := range t.fields {
		if f.kind == aTable {
			if drawing, ok := drawBoard(v, f.name, side); ok && f.drawn {
				out.Board[f.name] = drawing
			}
		} else if place := f.place(v.text(f.name), r); place >= 0 {
			out.Places[f.name] = place
		}
	}
	if q.Quick && t.slow {
		return out
	}
	if t.guess.kind == onTheClock && s.Phase == guessing {
		if given, err := s.handGiven(t); err != nil && len(given) > 0 {
			out.Problems, _ = problemTexts(err, t, nil, r)
			out.Status = problemStatus(len(out.Problems), r)
			return out
		}
	}
	a, err := t.solve(v)
	if err != nil {
		var others []string
		out.Problems, others = problemTexts(err, t, t.paths, r)
		out.Status = problemStatus(len(out.Problems)+len(others), r)
		out.Answer = problemList(out.Problems, others, t, r)
		return out
	}
	out.Headline = a.report.Headline.Text(r)
	out.Value = exact(a.truth)
	if t.guesses() && (s.Phase == guessing || s.Phase == locked) {
		out.Answer = " " // nothing before the guess is revealed
		out.Headline, out.Value = "", ""
		return out
	}
	out.Status = out.Headline
	out.Answer = q.show(s, t, a)
	if q.Working && !q.Quick {
		out.Working = q.workingOf(a, r)
	}
	return out
}

// exact is a value with every digit it has, for comparing and for a program.
func exact(v any) string {
	if v == nil {
		return ""
	}
	return working.Tell("desk.value", "%v", v).Text(working.Reader{})
}

func problemStatus(n int, r working.Reader) string {
	return working.Tell("desk.problems", "%d {1|thing|things} to mend before there is an answer.", n).Text(r)
}

// problemList lists what is to be mended; what stands at a field is linked to it.
func problemList(byField map[string]string, others []string, t task, r working.Reader) string {
	var b builder
	b.tag("div", "class", "problem")
	b.el("p", problemStatus(len(byField)+len(others), r))
	b.raw("<ul>")
	for _, name := range sortedKeys(byField) {
		b.raw("<li>")
		b.el("a", t.pathLabel(name, r), "href", "#"+fieldID(name), "data-focus", fieldID(name))
		b.text(": " + byField[name])
		b.end("li")
	}
	for _, text := range others {
		b.el("li", text)
	}
	b.raw("</ul>")
	b.end("div")
	return b.String()
}

// pathLabel is what the field of a path is called; of a cell of a table, its column and row as well.
func (t task) pathLabel(path string, r working.Reader) string {
	for _, f := range t.fields {
		if path == f.name {
			return f.label.Text(r)
		}
		rest, ok := strings.CutPrefix(path, f.name+"[")
		if f.kind != aTable || !ok {
			continue
		}
		number, column, _ := strings.Cut(rest, "]")
		row, err := strconv.Atoi(number)
		for _, c := range f.columns {
			if err == nil && column == "."+c.name {
				return f.label.Text(r) + ": " + cellLabel(c, row, r)
			}
		}
		return f.label.Text(r)
	}
	return path
}

// show is the answer: how the guess stands, what a change did, pictures, and the report of the library.
func (q Request) show(s State, t task, a solved) string {
	var b builder
	r := s.reader()
	if s.Phase == shown {
		guessed := a
		if t.guess.kind != onTheClock && !s.sameAsAtLock(t) {
			if was, err := s.atLock(t); err == nil {
				guessed = was
			}
		}
		b.el("p", s.verdict(t, guessed).Text(r), "class", "verdict", "id", "verdict", "tabindex", "-1")
		b.el("p", s.changed(t, a).Text(r), "class", "changed")
	}
	_, wide := q.columns()
	if a.picture != nil {
		b.raw(a.picture(r, wide))
	}
	if t.guess.kind == onTheClock && s.Phase == shown {
		if section, _ := s.byHandSection(t, a.plan); len(section.Blocks) > 0 {
			a.report.Sections = append([]report.Section{section}, a.report.Sections...)
		}
	}
	on := report.Options{Units: r.Units, Language: r.Language, Rank: 3, Picture: min(max(wide, 280), 720),
		WithSources: true}
	b.raw(`<div class="report" id="answer-title" tabindex="-1">`)
	if q.Quick {
		b.el("h3", a.report.Headline.Text(r))
		b.charts(a.report, on)
	} else {
		b.raw(a.report.Fragment(on))
	}
	b.end("div")
	return b.String()
}

// charts are the pictures of a report, without their tables: a slider is moving.
func (b *builder) charts(doc report.Report, on report.Options) {
	for _, s := range doc.Sections {
		for _, block := range s.Blocks {
			c, ok := block.(report.Chart)
			if !ok {
				continue
			}
			if picture, err := c.SVG(on, on.Picture, chartHeight); err == nil {
				b.raw("<figure>", picture, "</figure>")
			}
		}
	}
}

const chartHeight = 360

func (q Request) workingOf(a solved, r working.Reader) string {
	var level working.Level
	if q.Level != "" && level.UnmarshalText([]byte(q.Level)) != nil {
		level = working.Everything
	}
	tell := working.Telling{Reader: r, Level: level}
	text := ""
	for _, w := range a.workings() {
		text += tell.HTML(w, 3)
	}
	return text
}
