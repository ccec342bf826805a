package cli

import (
	"encoding/json"
	"io"
	"strconv"
	"strings"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule/exercise"
	"github.com/spf13/cobra"
)

// paperForms are the forms that a worksheet and its key are printed in.
var paperForms = []string{"text", "markdown", "html", "latex"}

func newExercise(s System) *cobra.Command {
	cmd := &cobra.Command{
		Use:   "exercise",
		Short: "Exercises for a class, and the key apart from them",
		Long: `exercise prints a worksheet of questions with friendly numbers. The same seed gives the same questions; with
--key it prints their answers, each line of the arithmetic, and the mistakes that the usual wrong answers come from.`,
		Example: `  maslin exercise --topic water --topic levain --count 4 --seed 7
  maslin exercise --topic water --topic levain --count 4 --seed 7 --key
  maslin exercise --difficulty hard --form latex --key`,
		Args: flagsOnly,
	}
	paper := exercise.Paper{Count: 7, Seed: 1, Difficulty: exercise.Usual}
	form, key, us, asJSON := "text", false, false, false
	in := ask(cmd)
	in.each(func(text string) error {
		var t exercise.Topic
		err := t.UnmarshalText([]byte(text))
		paper.Topics = append(paper.Topics, t)
		return err
	}, "topic", "TOPIC", "percentages, levain, water, rising, altitude, loss, cooling or backward; again for more "+
		"(all)", "Topics")
	in.each(whole(&paper.Count), "count", "N", "how many questions (7)", "Count")
	in.each(seed(&paper.Seed), "seed", "N", "which questions (1)", "Seed")
	in.value(&paper.Difficulty, "difficulty", "WORD", "one step, usual or hard (usual)", "Difficulty")
	in.each(func(text string) error {
		form = text
		for _, f := range paperForms {
			if text == f {
				return nil
			}
		}
		return &quantity.InputError{Got: quantity.Excerpt(text), Want: either(paperForms), Err: quantity.ErrUnit}
	}, "form", "FORM", "text, markdown, html or latex (text)")
	cmd.Flags().BoolVar(&key, "key", false, "the key to the questions")
	cmd.Flags().BoolVar(&us, "us", false, "pounds, ounces and °F")
	cmd.Flags().BoolVar(&asJSON, "json", false, "print questions and key as JSON")
	cmd.RunE = func(*cobra.Command, []string) error {
		if us {
			paper.Units = working.USCustomary
		}
		set, err := paper.Exercises()
		if wrong := in.complain(err); wrong != nil {
			return wrong
		}
		text, err := s.paper(set, form, key, asJSON)
		if err != nil {
			return err
		}
		_, err = io.WriteString(s.Out, text)
		return err
	}
	return cmd
}

// paper is a worksheet or its key in the form asked for.
func (s System) paper(set exercise.Set, form string, key, asJSON bool) (string, error) {
	if asJSON {
		b, err := json.MarshalIndent(set, "", "  ")
		return string(b) + "\n", err
	}
	on := s.options(output{us: set.Paper.Units == working.USCustomary})
	if form == "latex" {
		tell := working.Telling{Reader: on.Reader(), Document: true}
		if key {
			return set.KeyLaTeX(tell), nil
		}
		return set.WorksheetLaTeX(tell), nil
	}
	var sheet report.Report
	if sheet = set.Worksheet(); key {
		sheet = set.Key(on.Reader())
	}
	switch form {
	case "markdown":
		return sheet.Markdown(on), nil
	case "html":
		return sheet.HTML(on), nil
	}
	return sheet.Text(on), nil
}

// whole reads a whole number.
func whole(n *int) func(string) error {
	return func(text string) error {
		v, err := strconv.Atoi(strings.TrimSpace(text))
		if err != nil {
			return &quantity.InputError{Got: quantity.Excerpt(text), Want: quantity.Tell("cli.want_whole_number", "a whole number"), Err: quantity.ErrForm}
		}
		*n = v
		return nil
	}
}

// seed reads a whole number that is not negative.
func seed(n *uint64) func(string) error {
	return func(text string) error {
		v, err := strconv.ParseUint(strings.TrimSpace(text), 10, 64)
		if err != nil {
			return &quantity.InputError{Got: quantity.Excerpt(text), Want: quantity.Tell("cli.want_whole_number_from_0", "a whole number from 0"), Err: quantity.ErrForm}
		}
		*n = v
		return nil
	}
}
