package cli

import (
	"encoding/json"
	"fmt"
	"io"
	"strings"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/textpage"
)

// output is how a command prints: the flags that every answering command has.
type output struct {
	JSON     bool          `flag:"json"`
	US       bool          `flag:"us"`
	As       string        `flag:"as" words:"text,markdown,html,csv"` // the form of the answer
	Working  string        `flag:"working" words:"text,markdown,latex"`
	Document bool          `flag:"document"` // of LaTeX: a complete one
	Level    working.Level `flag:"level"`    // how much of a derivation is told

	everyCaution bool // those that come with every bake in full too
}

// checkOutput notes the flags that have nothing to do with the form that is asked for.
func (c *call) checkOutput() {
	if c.JSON || c.Working != "" {
		c.not(quantity.Tell("cli.with_own_forms", "--json and --working, which have forms of their own"), "as")
	}
	if c.Working == "" {
		c.only("--working", "level")
	}
	if c.Working != "latex" {
		c.only("--working=latex", "document")
	}
}

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

// write prints an answer in the form asked for.
func (c *call) write(a telling) (int, error) {
	text, err := c.told(a)
	if err != nil {
		return 0, err
	}
	return io.WriteString(c.Out, text)
}

// told is the answer as text: as data with --json, as a document with its derivation in the form of --working.
func (c *call) told(a telling) (string, error) {
	if c.JSON {
		return asData(c.Working != "", a)
	}
	on := c.options(c.output)
	switch c.As {
	case "markdown":
		return a.Report().Markdown(on), nil
	case "html":
		return a.Report().HTML(on), nil
	case "csv":
		return tables(a.Report())
	}
	tell := working.Telling{Reader: on.Reader(), Width: on.Width, Level: c.Level}
	switch c.Working {
	case "":
		return a.Report().Text(on), nil
	case "markdown":
		return c.tellWorkings(a.Report().Markdown(on), tell.Markdown, derivations(a)), nil
	case "latex":
		answer := `\section*{` + working.TeX(a.Report().Headline.Text(on.Reader())) + "}\n"
		return c.tellWorkings(answer, tell.LaTeX, derivations(a)), nil
	}
	how := working.Tell("cli.how_reached", "How each number was reached").Text(on.Reader())
	heading := a.Report().Text(on) + "\n" + c.plain(how) + "\n"
	return c.tellWorkings(heading, func(w working.Working) string { return c.plain(tell.Text(w)) }, derivations(a)), nil
}

// tables are the tables of an answer for a spreadsheet, one under the other.
func tables(r report.Report) (string, error) {
	var all []string
	for _, g := range r.Grids() {
		all = append(all, string(g.CSV()))
	}
	if len(all) == 0 {
		return "", badInput(working.Tell("cli.csv_want_another_form_there",
			"--as: got csv, want another form: there is no table in this answer"))
	}
	return strings.Join(all, "\n"), nil
}

// tellWorkings tells derivations behind a text; a document of LaTeX is complete.
func (o output) tellWorkings(text string, tell func(working.Working) string, all []working.Working) string {
	for _, one := range all {
		text += "\n" + tell(one)
	}
	if o.Document {
		return working.TeXDocument(text)
	}
	return text
}

// options are those of the reader at this terminal.
func (s System) options(o output) report.Options {
	to := s.reader(o)
	return report.Options{
		Units: to.Units, Language: to.Language,
		Width: min(s.width(), 100), Color: s.colored(), ASCII: s.asciiOnly(), EveryCaution: o.everyCaution,
	}
}

// reader is whom an answer is told to.
func (s System) reader(o output) working.Reader {
	to := working.Reader{}
	if s.language != nil {
		to.Language = *s.language
	}
	if o.US {
		to.Units = working.USCustomary
	}
	return to
}

// tells is a sentence as this reader reads it.
func (s System) tells(m working.Message) string { return m.Text(s.reader(output{})) }

// asData is the answer's own data form, beside its derivations where they are asked for.
func asData(derived bool, a telling) (string, error) {
	var v any = a
	if derived {
		v = struct {
			Answer  telling           `json:"answer"`
			Working []working.Working `json:"working"`
		}{a, derivations(a)}
	}
	return asJSON(v)
}

// asJSON writes what steers a terminal as JSON's escapes: a name read back is the same, and one that is shown harmless.
func asJSON(v any) (string, error) {
	b, err := json.MarshalIndent(v, "", "  ")
	var safe strings.Builder
	for _, r := range string(b) + "\n" {
		if r != '\n' && textpage.Steers(r) {
			fmt.Fprintf(&safe, `\u%04x`, r)
		} else {
			safe.WriteRune(r)
		}
	}
	return safe.String(), err
}
