package cli

import (
	"encoding/json"
	"io"

	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
)

// A telling is an answer of the library, which tells itself.
type telling interface{ Report() report.Report }

// derivations are how the numbers of an answer were reached, one or several.
func derivations(a telling) []working.Working {
	switch a := a.(type) {
	case interface{ Workings() []working.Working }:
		return a.Workings()
	case interface{ Working() working.Working }:
		return []working.Working{a.Working()}
	}
	return nil
}

// tell prints an answer in the form asked for. Possible is false when the answer is that there is none.
func (s System) tell(o output, a telling, possible bool) error {
	if err := o.check(); err != nil {
		return err
	}
	text, err := s.told(o, a)
	if err != nil {
		return err
	}
	if _, err := io.WriteString(s.Out, text); err != nil {
		return err
	}
	if !possible {
		return &exit{status: exitNoAnswer}
	}
	return nil
}

// told is the answer as text: as data with --json, as a document with its derivation in the form of --working.
func (s System) told(o output, a telling) (string, error) {
	if o.json {
		return toldAsData(o, a)
	}
	on := s.options(o)
	tell := working.Telling{Reader: on.Reader(), Width: on.Width, Level: o.level}
	switch o.working {
	case "":
		return a.Report().Text(on), nil
	case "markdown":
		return o.tellWorkings(a.Report().Markdown(on), tell, derivations(a)), nil
	case "latex":
		answer := `\section*{` + working.TeX(a.Report().Headline.Text(on.Reader())) + "}\n"
		return o.tellWorkings(answer, tell, derivations(a)), nil
	}
	text := a.Report().Text(on) + "\n" + s.plain("How each number was reached") + "\n"
	for _, w := range derivations(a) {
		text += "\n" + s.plain(tell.Text(w))
	}
	return text, nil
}

// tellWorkings tells derivations behind a text, as LaTeX or Markdown; a document of LaTeX is complete.
func (o output) tellWorkings(text string, tell working.Telling, all []working.Working) string {
	for _, one := range all {
		text += "\n"
		if o.working == "latex" {
			text += tell.LaTeX(one)
		} else {
			text += tell.Markdown(one)
		}
	}
	if o.working == "latex" && o.document {
		return working.TeXDocument(text)
	}
	return text
}

// options are those of the reader at this terminal.
func (s System) options(o output) report.Options {
	to := s.reader(o)
	return report.Options{
		Units: to.Units, Language: to.Language,
		Width: min(widthOf(s), 100), Color: s.colored(), ASCII: asciiOnly(s), EveryCaution: o.everyCaution,
	}
}

// reader is whom an answer is told to.
func (s System) reader(o output) working.Reader {
	to := working.Reader{}
	if s.language != nil {
		to.Language = *s.language
	}
	if o.us {
		to.Units = working.USCustomary
	}
	return to
}

// toldAsData is the answer's own data form; with --working beside its derivations.
func toldAsData(o output, a telling) (string, error) {
	var v any = a
	if o.working != "" {
		v = struct {
			Answer  telling           `json:"answer"`
			Working []working.Working `json:"working"`
		}{a, derivations(a)}
	}
	b, err := json.MarshalIndent(v, "", "  ")
	return string(b) + "\n", err
}
