package cli

import (
	"encoding"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// output is how a command prints: the flags that every answering command has.
type output struct {
	json    bool
	us      bool
	working string

	everyCaution bool // those that come with every bake in full too
}

func (o *output) register(cmd *cobra.Command) {
	cmd.Flags().BoolVar(&o.json, "json", false, "print the answer as JSON")
	cmd.Flags().BoolVar(&o.us, "us", false, "pounds, ounces and °F")
	cmd.Flags().StringVar(&o.working, "working", "", "print how each number was reached, with its source: `FORM` is text, markdown or latex")
	cmd.Flags().Lookup("working").NoOptDefVal = "text"
}

// answer is what a command has to say, in every form it can be asked for.
type answer struct {
	page     func(p *page, u units) // for a person
	data     any                    // for --json
	workings []working.Working
	cautions []working.Caution
	no       bool // there is no answer, and the page says why: exit status 1
}

// show prints the answer in the form asked for.
func (s System) show(o output, a answer) error {
	if err := o.check(); err != nil {
		return err
	}
	var err error
	switch {
	case o.json:
		err = writeJSON(s.Out, a.data)
	case o.working == "markdown" || o.working == "latex":
		err = writeWorkings(s.Out, o, a.workings)
	default:
		p := s.page()
		a.page(p, units{o.us})
		for i, c := range a.cautions {
			if i == 0 {
				p.care("Take care")
			}
			p.Para(2, units{o.us}.say(c.Message()))
		}
		if o.working != "" {
			p.heading("How each number was reached")
			if o.us {
				p.Para(0, computedIn)
			}
			for _, w := range a.workings {
				p.Line("")
				p.Write(w.Text(p.Columns()))
			}
		}
		err = p.flush(s.Out)
	}
	if err != nil {
		return err
	}
	if a.no {
		return &exit{status: exitNoAnswer}
	}
	return nil
}

func (o output) check() error {
	switch o.working {
	case "", "text", "markdown", "latex":
		return nil
	}
	return badInput("--working: got %s, want text, markdown or latex", quantity.Excerpt(o.working))
}

// computedIn heads derivations that are asked for with --us.
const computedIn = "The derivations stay in the units they are computed in: grams, °C, or those of the source."

func writeWorkings(w io.Writer, o output, all []working.Working) error {
	var b strings.Builder
	if o.us {
		b.WriteString(computedIn + "\n\n")
	}
	for i, one := range all {
		if i > 0 {
			b.WriteString("\n")
		}
		if o.working == "latex" {
			b.WriteString(one.LaTeX())
		} else {
			b.WriteString(one.Markdown())
		}
	}
	_, err := io.WriteString(w, b.String())
	return err
}

func writeJSON(w io.Writer, v any) error {
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	return e.Encode(v)
}

// widthOf is how wide the output may be: COLUMNS, or as the terminal is, or 80.
func widthOf(s System) int {
	if n, err := strconv.Atoi(s.Getenv("COLUMNS")); err == nil && n >= 20 {
		return n
	}
	if s.Width > 0 {
		return s.Width
	}
	return 80
}

// textFlag is a flag whose value reads itself from text: a mass, a temperature, a clock time.
type textFlag struct {
	target encoding.TextUnmarshaler
	kind   string
	given  string
}

func (f *textFlag) Set(text string) error {
	if err := f.target.UnmarshalText([]byte(text)); err != nil {
		return err
	}
	f.given = text
	return nil
}

func (f *textFlag) String() string { return f.given }
func (f *textFlag) Type() string   { return f.kind }

// text adds a flag that reads a quantity (or anything with UnmarshalText); kind names it in the
// help: "MASS", "TEMPERATURE".
func text(flags *pflag.FlagSet, target encoding.TextUnmarshaler, name, kind, usage string) {
	flags.Var(&textFlag{target: target, kind: kind}, name, usage)
}

// complaints turns the library's input errors into one message that names flags: flag maps a
// field path of the input to the flag that fills it.
func complaints(command string, err error, flag map[string]string) error {
	if err == nil {
		return nil
	}
	var lines []string
	for _, e := range quantity.InputErrors(err) {
		moved := *e
		if name, ok := flag[e.GoPath]; ok {
			moved.Path, moved.GoPath = "", name
		}
		lines = append(lines, "maslin "+command+": "+moved.Error())
	}
	if len(lines) == 0 {
		var e *exit
		if errors.As(err, &e) {
			return err
		}
		lines = append(lines, fmt.Sprintf("maslin %s: %v", command, err))
	}
	return badInput("%s", strings.Join(lines, "\n"))
}
