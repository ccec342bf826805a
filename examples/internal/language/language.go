// Package language holds the languages that the program speaks beside English. The library speaks English and takes
// any other language as data; these are that data.
//
//	which languages are there?             Tags
//	the language of a tag                  Named
//	the language of the reader's machine   Preferred
package language

import (
	_ "embed" // the catalogs
	"encoding/json"
	"strings"

	"example.org/maslin/dough/working"
)

//go:embed de.json
var german []byte

// Tags lists the languages: BCP 47 tags, English first.
func Tags() []string { return []string{"en", "de"} }

// Named returns the language of a tag such as "de" or "de-CH"; ok is false when there is none. English is the
// zero language.
func Named(tag string) (l working.Language, ok bool) {
	primary, _, _ := strings.Cut(strings.ReplaceAll(strings.ToLower(tag), "_", "-"), "-")
	switch primary {
	case "en":
		return working.Language{}, true
	case "de":
		if err := json.Unmarshal(german, &l); err != nil {
			return working.Language{}, false
		}
		return l, true
	}
	return working.Language{}, false
}

// Preferred is the language that the environment asks for: the first of LC_ALL, LC_MESSAGES and LANG that is set
// decides. C, POSIX and a language that is not here mean English. Source: POSIX.1-2024, section 8.2.
func Preferred(getenv func(string) string) working.Language {
	for _, name := range []string{"LC_ALL", "LC_MESSAGES", "LANG"} {
		value := getenv(name)
		if value == "" {
			continue
		}
		tag, _, _ := strings.Cut(value, ".")
		tag, _, _ = strings.Cut(tag, "@")
		l, _ := Named(tag)
		return l
	}
	return working.Language{}
}
