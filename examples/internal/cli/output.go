package cli

import (
	"strconv"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"github.com/spf13/cobra"
)

// output is how a command prints: the flags that every answering command has.
type output struct {
	json    bool
	us      bool
	working string

	document bool          // of LaTeX: a complete one
	level    working.Level // how much of a derivation is told

	everyCaution bool // those that come with every bake in full too
}

func (o *output) register(cmd *cobra.Command) {
	cmd.Flags().BoolVar(&o.json, "json", false, "print the answer as JSON")
	cmd.Flags().BoolVar(&o.us, "us", false, "pounds, ounces and °F")
	cmd.Flags().StringVar(&o.working, "working", "", "print how each number was reached, with its source: `FORM` is text, markdown or latex")
	cmd.Flags().Lookup("working").NoOptDefVal = "text"
	cmd.Flags().Func("level", "how much of a derivation is told, `WORD`: everything, with numbers, in words",
		func(word string) error { return o.level.UnmarshalText([]byte(word)) })
	cmd.Flags().BoolVar(&o.document, "document", false, "with --working=latex: a complete document, not a part of one")
}

func (o output) check() error {
	if o.level != working.Everything && o.working == "" {
		return badInput("--level: got %s, want --working with it", quantity.Excerpt(o.level.String()))
	}
	if o.document && o.working != "latex" {
		return badInput("--document: got %s, want --working=latex with it", quantity.Excerpt("--working="+o.working))
	}
	switch o.working {
	case "", "text", "markdown", "latex":
		return nil
	}
	return badInput("--working: got %s, want text, markdown or latex", quantity.Excerpt(o.working))
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
