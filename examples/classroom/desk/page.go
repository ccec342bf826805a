package desk

import (
	"strconv"

	"example.org/maslin/dough/working"
)

func (s State) title() string {
	r := s.reader()
	name := working.Tell("desk.page", "Maslin classroom").Text(r)
	if s.At == worksheet {
		return working.Tell("desk.worksheet", "Worksheet").Text(r) + " · " + name
	}
	t, _ := taskOf(s.At)
	return t.title.Text(r) + " · " + name
}

// elsewhere is a fresh state of another task for the same reader.
func (s State) elsewhere(at string) State {
	return State{At: at, Units: s.Units, Language: s.Language, Large: s.Large}
}

// page is everything between header and end.
func (q Request) page(s State, out Response, told []working.Message) string {
	var b builder
	r := s.reader()
	lang, class := r.Language.Tag, "page"
	if s.Large {
		class += " large"
	}
	b.tag("div", "class", class, "lang", lang)
	b.el("a", working.Tell("desk.skip", "To the task").Text(r), "class", "skip", "href", "#task-title", "data-focus",
		"task-title")
	s.header(&b)
	b.raw(`<main>`)
	for _, m := range told {
		b.el("p", m.Text(r), "class", "problem", "role", "alert")
	}
	if s.At == worksheet {
		b.raw(out.Answer)
	} else {
		q.taskPage(&b, s, out)
	}
	b.raw(`</main>`)
	b.tag("footer")
	b.el("p", working.Tell("desk.footer",
		"Everything is worked out in this page by the Maslin library. Nothing is sent or stored; the link "+
			"holds all that you typed. Times and temperatures are predictions and no promise that food is safe: local codes, "+
			"the maker's "+
			"manual and licensed professionals decide.").Text(r))
	b.end("footer")
	b.end("div")
	return b.String()
}

func (s State) header(b *builder) {
	r := s.reader()
	b.raw("<header>")
	b.el("p", working.Tell("desk.page", "Maslin classroom").Text(r), "class", "name")
	b.tag("nav", "aria-label", working.Tell("desk.benches", "Benches").Text(r))
	b.raw("<ul>")
	link := func(at string, label working.Message, here bool) {
		b.raw("<li>")
		attributes := []string{"href", s.elsewhere(at).Fragment()}
		if here {
			attributes = append(attributes, "aria-current", "true")
		}
		b.el("a", label.Text(r), attributes...)
		b.raw("</li>")
	}
	t, _ := taskOf(s.At)
	for _, each := range benches() {
		link(each.tasks()[0].id, each.title, t.bench == each.id)
	}
	link(worksheet, working.Tell("desk.worksheet", "Worksheet"), s.At == worksheet)
	b.raw("</ul></nav>")
	b.tag("div", "class", "settings")
	var units []choice
	for _, u := range []working.Units{working.Metric, working.USCustomary} {
		units = append(units, choice{u.String(), working.Tell("desk.word", "%v", u)})
	}
	chooser(b, "units", working.Tell("desk.units", "Units"), s.unitsOf().String(), units, r)
	chooser(b, "language", working.Tell("desk.language", "Language"), r.Language.Tag, tongues(), r)
	pressed := "false"
	if s.Large {
		pressed = "true"
	}
	b.el("button", working.Tell("desk.large", "Large type").Text(r), "type", "button", "id", "large", "data-do", "large",
		"aria-pressed", pressed)
	b.el("button", working.Tell("desk.copy", "Copy the link").Text(r), "type", "button", "id", "copy", "data-copy",
		working.Tell("desk.copied", "The link is copied. It holds this page as it is.").Text(r), "data-failed",
		working.Tell("desk.not_copied",
			"This browser does not let a page copy. The link stands in the address line.").Text(r))
	b.end("div")
	b.raw("</header>")
}

func chooser(b *builder, id string, label working.Message, now string, choices []choice, r working.Reader) {
	b.tag("label", "for", id)
	b.text(label.Text(r))
	b.end("label")
	b.tag("select", "id", id, "data-choose", id)
	options(b, now, choices, r)
	b.end("select")
}

func options(b *builder, now string, choices []choice, r working.Reader) {
	for _, c := range choices {
		attributes := []string{"value", c.value}
		if c.value == now {
			attributes = append(attributes, "selected", "")
		}
		b.el("option", c.label.Text(r), attributes...)
	}
}

func (q Request) taskPage(b *builder, s State, out Response) {
	r := s.reader()
	t, _ := taskOf(s.At)
	for _, each := range benches() {
		if each.id != t.bench {
			continue
		}
		b.el("h1", each.title.Text(r))
		b.tag("nav", "class", "tasks", "aria-label", working.Tell("desk.tasks", "Tasks of this bench").Text(r))
		b.raw("<ul>")
		for _, other := range each.tasks() {
			attributes := []string{"href", s.elsewhere(other.id).Fragment()}
			if other.id == t.id {
				attributes = append(attributes, "aria-current", "true")
			}
			b.raw("<li>")
			b.el("a", other.title.Text(r), attributes...)
			b.raw("</li>")
		}
		b.raw("</ul></nav>")
	}
	b.raw(`<div class="bench"><section class="ask" aria-labelledby="task-title">`)
	b.el("h2", t.title.Text(r), "id", "task-title", "tabindex", "-1")
	b.el("p", t.about.Text(r))
	q.guessPart(b, s, t, out)
	s.fieldsPart(b, t, out)
	// On a phone the answer is far below the slider: its sentence stays in sight. It is announced elsewhere.
	b.el("p", out.Headline, "class", "short", "id", "short", "aria-hidden", "true")
	b.raw(`</section><section class="tell" aria-labelledby="tell-title">`)
	b.el("h2", working.Tell("desk.library_says", "What the library says").Text(r), "id", "tell-title")
	hidden := t.guesses() && (s.Phase == guessing || s.Phase == locked)
	if hidden && len(out.Problems) == 0 {
		b.el("p", working.Tell("desk.after_guess", "The answer is shown when your guess is locked and revealed.").Text(r),
			"class", "hint")
	}
	b.tag("div", "id", "answer")
	b.raw(out.Answer)
	b.end("div")
	if !hidden {
		s.whyPart(b)
		q.workingPart(b, out, r)
	}
	b.raw(`</section></div>`)
}

func (s State) whyPart(b *builder) {
	r := s.reader()
	b.el("label", working.Tell("desk.why", "Say why, in a sentence of your own").Text(r), "for", "why")
	b.el("textarea", s.Why, "id", "why", "rows", "2", "maxlength", strconv.Itoa(1000))
}

func (q Request) workingPart(b *builder, out Response, r working.Reader) {
	attributes := []string{"id", "working-box"}
	if q.Working {
		attributes = append(attributes, "open", "")
	}
	b.tag("details", attributes...)
	b.el("summary", working.Tell("desk.working", "How it was reached").Text(r))
	var levels []choice
	for _, l := range []working.Level{working.Everything, working.WithNumbers, working.InWords} {
		levels = append(levels, choice{l.String(), working.Tell("desk.word", "%v", l)})
	}
	level := q.Level
	if level == "" {
		level = working.Everything.String()
	}
	chooser(b, "level", working.Tell("desk.level", "How fully"), level, levels, r)
	b.tag("div", "id", "working")
	b.raw(out.Working)
	b.end("div")
	b.end("details")
}

// guessPart is the question with its guess, as far as it has come.
func (q Request) guessPart(b *builder, s State, t task, out Response) {
	if !t.guesses() {
		return
	}
	r := s.reader()
	button := func(do, id string, label working.Message, class string) {
		b.el("button", label.Text(r), "type", "button", "data-do", do, "id", id, "class", class)
	}
	b.tag("div", "class", "guess", "role", "group", "aria-labelledby", "guess-title")
	b.el("h3", t.ask.Text(r), "id", "guess-title")
	switch s.Phase {
	case guessing:
		if t.guess.kind == onTheClock {
			s.handPart(b, t, out, q.Do == "lock")
		} else {
			s.guessField(b, t)
		}
		b.raw(`<div class="buttons">`)
		button("lock", "lock", working.Tell("desk.lock", "Lock my guess"), "main")
		button("show", "show", working.Tell("desk.show", "Show without a guess"), "")
		b.end("div")
	case locked:
		b.el("p", working.Tell("desk.locked", "Your guess is locked: %s", s.guessWords(t)).Text(r), "class", "hint")
		b.raw(`<div class="buttons">`)
		button("reveal", "reveal", working.Tell("desk.reveal", "Reveal the answer"), "main")
		b.end("div")
	default:
		b.raw(`<div class="buttons">`)
		button("again", "again", working.Tell("desk.again", "Ask me again"), "")
		button("fresh", "fresh", working.Tell("desk.fresh", "Everything as at first"), "")
		b.end("div")
	}
	b.end("div")
}

func (s State) guessField(b *builder, t task) {
	r := s.reader()
	unit := string(t.guess.unit(r.Units))
	b.raw(`<div class="field">`)
	b.el("label", working.Tell("desk.guess", "Your guess, in %s", unit).Text(r), "for", "guess")
	b.tag("input", "id", "guess", "type", "text", "inputmode", "text", "autocomplete", "off", "value", s.Guess,
		"aria-describedby", "guess-problem")
	problem := ""
	if s.Guess != "" {
		if _, err := t.guess.parse(s.Guess, r); err != nil {
			problem = working.Problem(err).Text(r)
		}
	}
	b.el("p", problem, "class", "field-problem", "id", "guess-problem", "data-problem", "guess")
	b.raw("</div>")
}

// guessWords is the guess as a reader sees it.
func (s State) guessWords(t task) string {
	if t.guess.kind == onTheClock {
		return s.handWords(t)
	}
	return s.Guess
}

// handPart is the fields that steps are put on the clock in.
func (s State) handPart(b *builder, t task, out Response, asked bool) {
	r := s.reader()
	v := &values{task: t, texts: s.Fields, reader: r}
	b.tag("div", "id", "guess", "tabindex", "-1")
	for _, f := range t.fields {
		if f.hand {
			f.put(b, fieldID(f.name), v.text(f.name), out.Places, out.Problems[f.name], r)
		}
	}
	problem := ""
	if given, err := s.handGiven(t); err != nil && len(given) == 0 && asked {
		problem = working.Problem(err).Text(r)
	}
	b.el("p", problem, "class", "field-problem", "data-problem", "guess")
	b.end("div")
}
