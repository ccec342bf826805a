package desk

import (
	"fmt"

	"example.org/maslin/dough/working"
)

// A Request is what the page asks.
type Request struct {
	// Do is "open" for a link, "type" for a change of a field, "draw" for a pointer on a board, "working" when it is
	// opened, "link" for the link alone, or what a button does: see [Answer].
	Do       string  `json:"do"`
	Fragment string  `json:"fragment"` // of "open"
	State    State   `json:"state"`
	Name     string  `json:"name"` // the field, the choice or the exercise that is meant
	Row      int     `json:"row"`
	Across   float64 `json:"across"` // of "draw": shares of the board's width and height
	Down     float64 `json:"down"`
	Width    int     `json:"width"`   // of the page, in CSS pixels, for pictures
	Quick    bool    `json:"quick"`   // the headline and the pictures only: a slider is moving
	Working  bool    `json:"working"` // the working is open
	Level    string  `json:"level"`   // of the working
}

// A Response is what the page shows. Parts that are empty stay as they are.
type Response struct {
	State    State  `json:"state"`
	Fragment string `json:"fragment"`
	Title    string `json:"title,omitempty"`
	Page     string `json:"page,omitempty"`   // all of it, after a button or a link
	Answer   string `json:"answer,omitempty"` // HTML
	Working  string `json:"working,omitempty"`
	Status   string `json:"status"` // one sentence that is announced
	// Problems are told at the fields, by name, or by name, row and column of a table.
	Problems map[string]string `json:"problems,omitempty"`
	// Places are where the sliders stand.
	Places map[string]int `json:"places,omitempty"`
	// Board is the drawing of a table, by its name.
	Board map[string]string `json:"board,omitempty"`
	Focus string            `json:"focus,omitempty"` // the element that has the attention now
	// Headline is the answer in one sentence, and Value what was guessed at, to the last digit: for comparing.
	Headline string `json:"headline,omitempty"`
	Value    string `json:"value,omitempty"`
}

// columns are how wide the two columns of a bench are, as the style sheet has them: beside each other from 60 rem on.
func (q Request) columns() (side, main int) {
	const rem, gap, border = 16, 40, 40
	width := min(q.Width, 78*rem) - border
	if q.Width < 60*rem {
		return width, width
	}
	return 26 * rem, width - 26*rem - gap
}

// Answer is the door. Buttons do: "lock", "reveal", "again", "show", "units", "language", "large", "add" and "drop" (a
// row), "check" (an exercise), "key". Whatever comes in, something that a person can read comes out.
func Answer(q Request) (out Response) {
	defer func() {
		if fault := recover(); fault != nil {
			out = failed(working.Tell("desk.fault",
				"This page met a fault of its own (%s). Nothing is lost: go back, or begin anew.",
				fmt.Sprint(fault)))
		}
	}()
	return q.answer()
}

func failed(m working.Message) Response {
	s := State{At: firstTask}
	var b builder
	b.el("p", m.Text(working.Reader{}), "class", "problem", "role", "alert")
	return Response{State: s, Fragment: s.Fragment(), Status: m.Text(working.Reader{}), Answer: b.String()}
}

func (q Request) answer() Response {
	s, told := q.State.settled()
	if q.Do == "open" {
		s, told = ReadFragment(q.Fragment)
	}
	if q.Do == "draw" {
		s = q.drawn(s)
	}
	if q.Do == "link" {
		return Response{State: s, Fragment: s.Fragment()}
	}
	whole := q.Do != "type" && q.Do != "draw" && q.Do != "working"
	s, focus := q.act(s)
	var out Response
	if s.At == worksheet {
		out = q.paper(s)
	} else {
		out = q.task(s, whole)
	}
	out.State, out.Fragment = s, s.Fragment()
	if whole {
		out.Title = s.title()
		out.Page = q.page(s, out, told)
		out.Focus = focus
	}
	if len(told) > 0 {
		out.Status = working.Join(told, " ").Text(s.reader())
	}
	return out
}

func (q Request) drawn(s State) State {
	t, ok := taskOf(s.At)
	if f, is := t.field(q.Name); ok && is && f.drawn {
		v := &values{task: t, texts: s.Fields, reader: s.reader()}
		side, _ := q.columns()
		s.Fields = with(s.Fields, q.Name, v.drawn(q.Name, q.Across, q.Down, side))
	}
	return s
}

// with is a copy of the texts with one changed: a state may be shared.
func with(texts map[string]string, name, text string) map[string]string {
	out := map[string]string{}
	for k, v := range texts {
		out[k] = v
	}
	out[name] = text
	return out
}

// act is the state after a button, and what has the attention then.
func (q Request) act(s State) (State, string) {
	switch q.Do {
	case "lock":
		return s.lock()
	case "reveal":
		if s.Phase == locked {
			s.Phase = shown
		}
		return s, "verdict"
	case "show":
		s.Phase, s.Was = open, nil
		return s, "answer-title"
	case "again":
		s.Phase, s.Guess, s.Why, s.Was = guessing, "", "", nil
		if t, ok := taskOf(s.At); ok {
			s.Fields = s.withoutHand(t)
		}
		return s, "guess"
	case "fresh":
		s.Fields, s.Was, s.Phase, s.Guess, s.Why = nil, nil, guessing, "", ""
		return s, "task-title"
	case "units":
		s = s.withUnits()
		s.Units = q.Name
		s, _ = s.settled()
		return s, "units"
	case "language":
		s.Language = q.Name
		s, _ = s.settled()
		return s, "language"
	case "large":
		s.Large = !s.Large
		return s, "large"
	case "add", "drop":
		return q.changeRows(s)
	case "key":
		if s.At == worksheet {
			now := map[bool]string{true: "off", false: "on"}[s.Fields["key"] == "on"]
			s.Fields = with(s.Fields, "key", now)
		}
		return s, "key"
	case "check":
		return s, "check-" + q.Name
	}
	return s, "task-title"
}

// lock keeps a guess that can be read, and what the fields were then.
func (s State) lock() (State, string) {
	t, ok := taskOf(s.At)
	if !ok || s.Phase != guessing {
		return s, "guess"
	}
	if t.guess.kind == onTheClock {
		if _, err := s.handGiven(t); err != nil {
			return s, "guess"
		}
	} else if _, err := t.guess.parse(s.Guess, s.reader()); err != nil {
		return s, "guess"
	}
	s.Phase, s.Was = locked, map[string]string{}
	v := &values{task: t, texts: s.Fields, reader: s.reader()}
	for _, f := range t.fields {
		s.Was[f.name] = v.text(f.name)
	}
	return s, "reveal"
}

func (q Request) changeRows(s State) (State, string) {
	t, _ := taskOf(s.At)
	f, ok := t.field(q.Name)
	if !ok || f.kind != aTable {
		return s, "task-title"
	}
	v := &values{task: t, texts: s.Fields, reader: s.reader()}
	rows := rowsOf(v.text(f.name))
	if q.Do == "add" && len(rows) < f.most {
		rows = append(rows, make([]string, len(f.columns)))
		s.Fields = with(s.Fields, f.name, textOf(rows))
		return s, cellID(f.name, len(rows)-1, f.columns[0].name)
	}
	if q.Do == "drop" && q.Row >= 0 && q.Row < len(rows) {
		rows = append(rows[:q.Row:q.Row], rows[q.Row+1:]...)
		s.Fields = with(s.Fields, f.name, textOf(rows))
	}
	return s, "add-" + f.name
}

// fieldID is the id of a field's element.
func fieldID(name string) string { return "f-" + name }
