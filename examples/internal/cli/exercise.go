package cli

import (
	"io"

	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule/exercise"
)

// exercises asks for a worksheet for a class, or for the key to it.
type exercises struct {
	_     struct{}       `usual:"count=7; seed=1; difficulty=usual"`
	Paper exercise.Paper `flags:"* Topics=topic"`
	Form  string         `flag:"form" words:"text,markdown,html,latex"`
	Key   bool           `flag:"key"`
	US    bool           `flag:"us"`
	JSON  bool           `flag:"json"`
}

// tellsItself: a worksheet has forms of its own.
func (*exercises) tellsItself() {}

func (q *exercises) ask(c *call) error {
	if q.US {
		q.Paper.Units = working.USCustomary
	}
	set, err := q.Paper.Exercises()
	if wrong := c.complain(err); wrong != nil {
		return wrong
	}
	text, err := q.paper(c.options(output{US: q.US}), set)
	if err == nil {
		_, err = io.WriteString(c.Out, text)
	}
	return err
}

// paper is the worksheet or its key in the form asked for.
func (q *exercises) paper(on report.Options, set exercise.Set) (string, error) {
	tell := working.Telling{Reader: on.Reader(), Document: true}
	sheet := set.Worksheet()
	switch {
	case q.JSON:
		return asJSON(set)
	case q.Form == "latex" && q.Key:
		return set.KeyLaTeX(tell), nil
	case q.Form == "latex":
		return set.WorksheetLaTeX(tell), nil
	case q.Key:
		sheet = set.Key(on.Reader())
	}
	switch q.Form {
	case "markdown":
		return sheet.Markdown(on), nil
	case "html":
		return sheet.HTML(on), nil
	}
	return sheet.Text(on), nil
}
