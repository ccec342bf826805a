package exercise

import (
	"strconv"
	"strings"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/enum"
)

// A Paper asks for several exercises for a class.
type Paper struct {
	Topics     []Topic       `json:"topics,omitempty"` // in turn; not given: all
	Count      int           `json:"count"`            // 1 to 100
	Seed       uint64        `json:"seed"`
	Difficulty Difficulty    `json:"difficulty"`
	Units      working.Units `json:"units"`
}

// A Set is the exercises of one paper.
type Set struct {
	Paper     Paper      `json:"paper"`
	Exercises []Exercise `json:"exercises"`
}

// Exercises makes the exercises of a paper: the topics in turn, no question twice. Errors: [quantity.InputError] for
// each topic that is not known, a count that is not 1 to 100, and a difficulty or units that are not known.
func (in Paper) Exercises() (Set, error) {
	var bad quantity.Problems
	for i, t := range in.Topics {
		topics.Check(&bad, "Topics["+strconv.Itoa(i)+"]", t)
	}
	bad.Int("Count", in.Count, 1, 100)
	difficulties.Check(&bad, "Difficulty", in.Difficulty)
	if in.Units != working.Metric && in.Units != working.USCustomary {
		bad.AddCode("Units", enum.UnknownWord, in.Units,
			quantity.Tell("exercise.want_metric_or_us_customary", "metric or US customary"), quantity.ErrOutOfRange)
	}
	if err := bad.ErrFor(in); err != nil {
		return Set{}, err
	}
	order := in.Topics
	if len(order) == 0 {
		order = quantity.Values[Topic]()
	}
	out := Set{Paper: in}
	seen := map[working.Message]bool{}
	for i, seed := 0, in.Seed; i < in.Count; seed++ {
		task := Task{Topic: order[i%len(order)], Seed: seed, Difficulty: in.Difficulty, Units: in.Units}
		e, err := task.Exercise()
		if err != nil {
			return Set{}, err
		}
		if seen[e.Question] && seed < in.Seed+10_000 {
			continue
		}
		seen[e.Question] = true
		out.Exercises = append(out.Exercises, e)
		i++
	}
	return out, nil
}

// Reader is the reader for whom the numbers of the paper are friendly.
func (s Set) Reader(l working.Language) working.Reader {
	return working.Reader{Units: s.Paper.Units, Language: l}
}

// Worksheet is the questions, with room for the answers.
func (s Set) Worksheet() report.Report {
	out := report.Report{Headline: s.headline(working.Tell("exercise.worksheet", "Exercises"))}
	for i, e := range s.Exercises {
		out.Sections = append(out.Sections, report.Section{
			Key: "exercise_" + strconv.Itoa(i+1), Title: title(i, e),
			Blocks: []report.Block{
				report.Say(e.Question),
				report.Say(working.Tell("exercise.room_for_answer", "Answer: ______________________")),
			},
		})
	}
	return out
}

// Key is the answers with their tolerance, each line of the arithmetic, and what wrong answers come from. Formulas
// are in the units of the reader.
func (s Set) Key(r working.Reader) report.Report {
	out := report.Report{Headline: s.headline(working.Tell("exercise.key", "Key"))}
	for i, e := range s.Exercises {
		blocks := []report.Block{report.Say(working.Tell("exercise.answer", "%s, give or take %s", e.Answer.Text(r),
			e.Tolerance.Text(r)))}
		var lines, slips report.List
		for _, l := range e.key.Lines(r) {
			lines = append(lines, working.Tell("exercise.key_line", "%s", keyLine(l)))
		}
		for _, slip := range e.Slips {
			slips = append(slips, working.Tell("exercise.slip", "%s: %v", slip.Value.Text(r), slip.Mistake))
		}
		blocks = append(blocks, lines)
		if len(slips) > 0 {
			blocks = append(blocks, report.Say(working.Tell("exercise.slips", "Usual mistakes, by the answer that they give:")),
				slips)
		}
		out.Sections = append(out.Sections, report.Section{
			Key: "exercise_" + strconv.Itoa(i+1), Title: title(i, e), Blocks: blocks,
		})
	}
	return out
}

// keyLine is a line of arithmetic on one line.
func keyLine(l working.Line) string {
	parts := []string{l.Symbol}
	if l.Formula != "" && l.Formula != l.Numbers {
		parts = append(parts, l.Formula)
	}
	if l.Numbers != "" {
		parts = append(parts, l.Numbers)
	}
	relation := " ≈ "
	if l.Exact {
		relation = " = "
	}
	return strings.Join(parts, " = ") + relation + l.Value
}

func (s Set) headline(what working.Message) working.Message {
	return working.Tell("exercise.headline", "%v, paper %v, %v", what, s.Paper.Seed, s.Paper.Difficulty)
}

func title(i int, e Exercise) working.Message {
	return working.Tell("exercise.title", "%d. %v", i+1, e.Task.Topic)
}

// WorksheetLaTeX is the worksheet as LaTeX, a complete document if the telling asks for one.
func (s Set) WorksheetLaTeX(t working.Telling) string {
	var b strings.Builder
	s.beginTeX(&b, t, working.Tell("exercise.worksheet", "Exercises"))
	for _, e := range s.Exercises {
		b.WriteString("\\item " + working.TeX(e.Question.Text(t.Reader)) + "\n\n\\vspace{4em}\n")
	}
	return endTeX(&b, t)
}

// KeyLaTeX is the key as LaTeX, with fractions, roots and indices set.
func (s Set) KeyLaTeX(t working.Telling) string {
	var b strings.Builder
	s.beginTeX(&b, t, working.Tell("exercise.key", "Key"))
	for _, e := range s.Exercises {
		answer := working.Tell("exercise.answer", "%s, give or take %s", e.Answer.Text(t.Reader),
			e.Tolerance.Text(t.Reader))
		b.WriteString("\\item " + working.TeX(e.Task.Topic.String()+": "+answer.Text(t.Reader)) + "\n" +
			t.LaTeXLines(e.key))
		for _, slip := range e.Slips {
			line := working.Tell("exercise.slip", "%s: %v", slip.Value.Text(t.Reader), slip.Mistake)
			b.WriteString("\\par\\emph{\\small " + working.TeX(line.Text(t.Reader)) + "}\n")
		}
	}
	return endTeX(&b, t)
}

func (s Set) beginTeX(b *strings.Builder, t working.Telling, what working.Message) {
	b.WriteString("\\subsection*{" + working.TeX(s.headline(what).Text(t.Reader)) + "}\n\\begin{enumerate}\n")
}

func endTeX(b *strings.Builder, t working.Telling) string {
	b.WriteString("\\end{enumerate}\n")
	if t.Document {
		return working.TeXDocument(b.String())
	}
	return b.String()
}
