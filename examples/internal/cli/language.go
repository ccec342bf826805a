package cli

import (
	"example.org/maslin/dough/working"
	"example.org/maslin/examples/internal/language"
)

// languageFlag is the language that answers are told in.
type languageFlag struct {
	to    *working.Language
	given string
}

func (f *languageFlag) Set(tag string) error {
	l, err := language.Named(tag)
	if err != nil {
		return err
	}
	*f.to, f.given = l, tag
	return nil
}

func (f *languageFlag) String() string { return f.given }
func (f *languageFlag) Type() string   { return "LANGUAGE" }
