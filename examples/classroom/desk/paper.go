package desk

import (
	"slices"
	"strconv"
	"strings"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule/exercise"
)

// The worksheet is a task of its own kind: its fields say which exercises, and its answers are fields too.
const (
	topicField  = "topic." // and the topic: "on" or "off"
	answerField = "answer."
	mostOnPaper = 30
)

func paperFields() []field {
	return []field{
		{name: "count", label: working.Tell("desk.field_count", "how many questions"), kind: aCount, start: both("6"),
			slide: counts(1, mostOnPaper)},
		{name: "seed", label: working.Tell("desk.field_seed_number", "number of the paper"), kind: aCount, start: both("1"),
			slide: counts(1, 99)},
		{name: "difficulty", label: working.Tell("desk.field_difficulty", "how hard"), kind: aChoice,
			start:   both(exercise.Usual.String()),
			choices: choicesOf([]exercise.Difficulty{exercise.OneStep, exercise.Usual, exercise.Hard})},
	}
}

func topics() []exercise.Topic { return quantity.Values[exercise.Topic]() }

func paperFieldNames(s State) []string {
	out := []string{"key"}
	for _, f := range paperFields() {
		out = append(out, f.name)
	}
	for _, t := range topics() {
		out = append(out, topicField+t.String())
	}
	for i := range mostOnPaper {
		out = append(out, answerField+strconv.Itoa(i+1))
	}
	return out
}

// set is the exercises that the state asks for.
func (s State) set() (exercise.Set, error) {
	v := &values{task: task{fields: paperFields()}, texts: s.Fields, reader: s.reader()}
	p := exercise.Paper{Count: get[int](v, "count"), Difficulty: word[exercise.Difficulty](v, "difficulty"),
		Units: s.unitsOf()}
	if seed := get[int](v, "seed"); seed >= 0 {
		p.Seed = uint64(seed)
	} else {
		v.problems.Add("seed", seed, quantity.Tell("desk.want_whole_number_from_0", "a whole number from 0"), quantity.ErrOutOfRange)
	}
	for _, t := range topics() {
		if s.Fields[topicField+t.String()] == "on" {
			p.Topics = append(p.Topics, t)
		}
	}
	if p.Count > mostOnPaper {
		v.problems.Int("count", p.Count, 1, mostOnPaper)
	}
	if err := v.problems.Err(); err != nil {
		return exercise.Set{}, err
	}
	return p.Exercises()
}

func (q Request) paper(s State) Response {
	out := Response{Places: map[string]int{}}
	r := s.reader()
	for _, f := range paperFields() {
		text, ok := s.Fields[f.name]
		if !ok {
			text = f.starts(r)
		}
		if place := f.place(text, r); place >= 0 {
			out.Places[f.name] = place
		}
	}
	set, err := s.set()
	form := task{fields: paperFields()}
	var others []string
	if err != nil {
		out.Problems, others = problemTexts(err, form, nil, r)
		out.Status = problemStatus(len(out.Problems)+len(others), r)
	}
	var b builder
	b.el("h1", working.Tell("desk.worksheet", "Worksheet").Text(r))
	b.raw(`<div class="bench"><section class="ask" aria-labelledby="task-title">`)
	b.el("h2", working.Tell("desk.paper", "A paper for the class").Text(r), "id", "task-title", "tabindex", "-1")
	b.el("p", working.Tell("desk.paper_about",
		"The same number gives the same questions everywhere: copy the link to hand out the paper. The "+
			"key is apart from it, for the teacher.").Text(r))
	s.paperForm(&b, out, r)
	b.raw(`</section><section class="tell" aria-labelledby="tell-title">`)
	b.el("h2", working.Tell("desk.questions", "Questions").Text(r), "id", "tell-title")
	if err != nil {
		b.raw(problemList(out.Problems, others, form, r))
	} else {
		s.questions(&b, set, r)
		out.Status = working.Tell("desk.paper_ready", "%d {1|question|questions}", len(set.Exercises)).Text(r)
		if q.Do == "check" {
			if i, e := strconv.Atoi(q.Name); e == nil && i >= 1 && i <= len(set.Exercises) {
				out.Status = judged(set.Exercises[i-1], s.Fields[answerField+q.Name], r).Text(r)
			}
		}
	}
	b.raw(`</section></div>`)
	out.Answer = b.String()
	return out
}

func (s State) paperForm(b *builder, out Response, r working.Reader) {
	b.tag("fieldset", "class", "fields")
	b.el("legend", working.Tell("desk.paper_fields", "Which questions").Text(r))
	for _, f := range paperFields() {
		text, ok := s.Fields[f.name]
		if !ok {
			text = f.starts(r)
		}
		f.put(b, fieldID(f.name), text, out.Places, out.Problems[f.name], r)
	}
	b.tag("div", "role", "group", "aria-labelledby", "topics", "class", "topics")
	b.el("p", working.Tell("desk.topics", "topics; none chosen: all").Text(r), "id", "topics")
	for _, t := range topics() {
		name := topicField + t.String()
		attributes := []string{"type", "checkbox", "id", fieldID(name), "data-check", name}
		if s.Fields[name] == "on" {
			attributes = append(attributes, "checked", "")
		}
		b.raw(`<label class="check">`)
		b.tag("input", attributes...)
		b.text(" " + working.Tell("desk.word", "%v", t).Text(r))
		b.end("label")
	}
	b.end("div")
	b.end("fieldset")
}

// questions are the exercises with room for answers, and behind them what is printed.
func (s State) questions(b *builder, set exercise.Set, r working.Reader) {
	on := report.Options{Units: r.Units, Language: r.Language, Rank: 2, WithSources: false}
	b.raw(`<ol class="questions">`)
	for i, e := range set.Exercises {
		number := strconv.Itoa(i + 1)
		id := fieldID(answerField + number)
		b.raw("<li>")
		b.el("p", e.Question.Text(r))
		b.raw(`<div class="field">`)
		b.el("label", working.Tell("desk.answer", "Answer to question %d, in %s", i+1, unitWord(e.Answer.Unit)).Text(r),
			"for", id)
		given := s.Fields[answerField+number]
		b.tag("input", "id", id, "type", "text", "autocomplete", "off", "data-field", answerField+number, "value", given,
			"aria-describedby", id+"-verdict")
		b.el("button", working.Tell("desk.check", "Check").Text(r), "type", "button", "data-do", "check", "data-name",
			number, "id", "check-"+number,
			"aria-label", working.Tell("desk.check_number", "Check answer %d", i+1).Text(r))
		verdict := ""
		if strings.TrimSpace(given) != "" {
			verdict = judged(e, given, r).Text(r)
		}
		b.el("p", verdict, "class", "verdict", "id", id+"-verdict")
		b.raw("</div></li>")
	}
	b.raw(`</ol><div class="buttons">`)
	b.el("button", working.Tell("desk.print_paper", "Print the worksheet").Text(r), "type", "button", "data-print",
		"worksheet", "id", "print-worksheet")
	key := working.Tell("desk.show_key", "Show the key")
	if s.Fields["key"] == "on" {
		key = working.Tell("desk.hide_key", "Hide the key")
	}
	b.el("button", key.Text(r), "type", "button", "data-do", "key", "id", "key")
	if s.Fields["key"] == "on" {
		b.el("button", working.Tell("desk.print_key", "Print the key").Text(r), "type", "button", "data-print", "key", "id",
			"print-key")
	}
	b.end("div")
	b.tag("div", "class", "paper paper-worksheet report")
	b.raw(set.Worksheet().Fragment(on))
	b.end("div")
	if s.Fields["key"] == "on" {
		b.tag("div", "class", "paper paper-key report")
		b.raw(set.Key(r).Fragment(on))
		b.end("div")
	}
}

func unitWord(u working.Unit) string {
	if u == working.Number {
		return "1"
	}
	return string(u)
}

// judged says whether an answer is right, and otherwise which usual mistake it comes from.
func judged(e exercise.Exercise, text string, r working.Reader) working.Message {
	given, err := answerIn(e.Answer.Unit, text, r)
	if err != nil {
		return working.Tell("desk.answer_unread", "That cannot be read: %v", working.Problem(err))
	}
	if e.Right(given) {
		return working.Tell("desk.answer_right", "Right.")
	}
	if slip, ok := e.SlipOf(given); ok {
		return working.Tell("desk.answer_slip", "Not yet: %v.", slip.Mistake)
	}
	return working.Tell("desk.answer_wrong",
		"Not yet. It is not one of the usual mistakes either; go through it step by step.")
}

// answerIn reads an answer in the dimension of the exercise; a bare number is in its unit.
func answerIn(u working.Unit, text string, r working.Reader) (any, error) {
	kinds := []struct {
		kind  kind
		units []working.Unit
	}{
		{aMass, []working.Unit{working.Gram, working.Kilogram, working.Ounce, working.Pound}},
		{aPercent, []working.Unit{working.Percent}},
		{aTemperature, []working.Unit{working.Celsius, working.Fahrenheit, working.Kelvin}},
		{aDelta, []working.Unit{working.DeltaCelsius, working.DeltaFahrenheit}},
		{aTime, []working.Unit{working.Second, working.Minute, working.Hour}},
		{aLength, []working.Unit{working.Meter, working.Centimeter, working.Foot, working.Inch}},
	}
	for _, k := range kinds {
		if slices.Contains(k.units, u) {
			s := slide{unit: u}
			return field{kind: k.kind, slide: [2]slide{s, s}}.parse(text, r)
		}
	}
	number := strings.Replace(strings.TrimSpace(text), ",", ".", 1)
	if number = strings.TrimSuffix(number, " "+string(u)); u != working.Number {
		number = strings.TrimSuffix(number, string(u))
	}
	x, err := strconv.ParseFloat(number, 64)
	if err != nil {
		return nil, &quantity.InputError{Got: quantity.Excerpt(text), Want: quantity.Tell("desk.want_number", "a number %s", u),
			Err: quantity.ErrForm}
	}
	return working.Amount(x, u, 3), nil
}
