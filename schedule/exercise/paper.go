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
			Key: "question_" + strconv.Itoa(i+1), Title: title(i, e),
			Blocks: []report.Block{
				report.Say(e.Question),
				report.Say(working.Tell("exercise.room_for_answer", "Answer: ______________________")),
			},
		})
	}
	out.Sections = append(out.Sections, s.remarks()...)
	return out
}

// Key is the answers with their tolerance, each line of the arithmetic, and what wrong answers come from. Formulas
// are in the units of the reader.
func (s Set) Key(r working.Reader) report.Report {
	out := report.Report{
		Headline: s.headline(working.Tell("exercise.key", "Key")),
		Sections: []report.Section{{Key: "reading", Blocks: []report.Block{report.Say(reading())}}},
	}
	for i, e := range s.Exercises {
		blocks := []report.Block{report.Say(working.Tell("exercise.answer", "%s, give or take %s", e.Answer.Text(r),
			e.Tolerance.Text(r)))}
		var slips report.List
		for _, slip := range e.Slips {
			slips = append(slips, working.Tell("exercise.slip", "%s: %v", slip.Value.Text(r), slip.Mistake))
		}
		blocks = append(blocks, report.Reckoning{Of: e.key})
		if len(slips) > 0 {
			blocks = append(blocks, slips)
		}
		out.Sections = append(out.Sections, report.Section{
			Key: "exercise_" + strconv.Itoa(i+1), Title: title(i, e), Blocks: blocks,
		})
	}
	out.Sections = append(out.Sections, s.remarks()...)
	return out
}

// reading says how a key is read.
func reading() working.Message {
	return working.Tell("exercise.slips", "Last come the usual wrong answers, each with the mistake that leads to it.")
}

// remarks explain what may be new to a class in the units of the paper.
func (s Set) remarks() []report.Section {
	var blocks []report.Block
	for _, m := range s.remarked() {
		blocks = append(blocks, report.Paragraph{Text: m, Tone: report.Aside})
	}
	if len(blocks) == 0 {
		return nil
	}
	return []report.Section{{Key: "remarks", Blocks: blocks}}
}

func (s Set) remarked() []working.Message {
	weighed, warmed := false, false
	for _, e := range s.Exercises {
		switch e.Task.Topic {
		case Percentages, Levain, Loss:
			weighed = true
		case Water:
			weighed, warmed = true, true
		case Altitude, Cooling:
			warmed = true
		}
	}
	from, to := quantity.Celsius(20), quantity.Celsius(22)
	if s.Paper.Units == working.USCustomary {
		from, to = quantity.Fahrenheit(70), quantity.Fahrenheit(74)
	}
	var out []working.Message
	if warmed {
		out = append(out, working.Tell("exercise.remark_difference",
			"Δ marks a difference of temperatures: from %v to %v it is %v.", from, to, to.Sub(from)))
	}
	if weighed && s.Paper.Units == working.USCustomary {
		out = append(out, working.Tell("exercise.remark_pound", "A pound (lb) has 16 ounces (oz)."))
	}
	return out
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
	return s.endTeX(&b, t)
}

// KeyLaTeX is the key as LaTeX, with fractions, roots and indices set.
func (s Set) KeyLaTeX(t working.Telling) string {
	var b strings.Builder
	s.beginTeX(&b, t, working.Tell("exercise.key", "Key"), reading())
	for _, e := range s.Exercises {
		answer := working.Tell("exercise.answer", "%s, give or take %s", e.Answer.Text(t.Reader),
			e.Tolerance.Text(t.Reader))
		b.WriteString("\\item " + working.TeX(working.Tell("exercise.topic_answer", "%v: %v", e.Task.Topic,
			answer).Text(t.Reader)) + "\\nopagebreak\n" +
			t.LaTeXLines(e.key))
		for _, slip := range e.Slips {
			line := working.Tell("exercise.slip", "%s: %v", slip.Value.Text(t.Reader), slip.Mistake)
			b.WriteString("\\par\\emph{\\small " + working.TeX(line.Text(t.Reader)) + "}\n")
		}
	}
	return s.endTeX(&b, t)
}

func (s Set) beginTeX(b *strings.Builder, t working.Telling, what working.Message, more ...working.Message) {
	b.WriteString("\\subsection*{" + working.TeX(s.headline(what).Text(t.Reader)) + "}\n")
	for _, m := range more {
		b.WriteString(working.TeX(m.Text(t.Reader)) + "\n")
	}
	b.WriteString("\\begin{enumerate}\n")
}

func (s Set) endTeX(b *strings.Builder, t working.Telling) string {
	b.WriteString("\\end{enumerate}\n")
	for _, m := range s.remarked() {
		b.WriteString("\\noindent{\\small " + working.TeX(m.Text(t.Reader)) + "\\par}\n")
	}
	if t.Document {
		return working.TeXDocument(b.String())
	}
	return b.String()
}
