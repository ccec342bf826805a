// Package beside is the form in which a catalog of sentences lies beside a program: lines of a kind, a key and a text
// with tabs between. It is read without a library for JSON, which a small program need not carry.
package beside

import (
	"fmt"
	"slices"
	"strings"

	"example.org/maslin/dough/working"
)

// Section is the name of the section of the program that holds the catalog.
const Section = "catalog"

// The kinds of lines.
const (
	tag      = "t"
	decimal  = "d"
	clock    = "c"
	sentence = "s"
	word     = "w"
)

// Write writes a catalog, without the sentences that are not wanted. Errors: a text of several lines, or with a tab.
func Write(l working.Language, wanted func(id string) bool) (string, error) {
	style, err := l.Clock.MarshalText()
	if err != nil {
		return "", err
	}
	var lines []string
	put := func(kind, key, text string) {
		lines = append(lines, kind+"\t"+key+"\t"+text)
		if strings.ContainsAny(key+text, "\t\n") {
			err = fmt.Errorf("%s: a text of one line is needed, not %q", key, text)
		}
	}
	put(tag, "", l.Tag)
	put(decimal, "", l.Decimal)
	put(clock, "", string(style))
	for id, text := range l.Sentences {
		if wanted(id) {
			put(sentence, id, text)
		}
	}
	for key, text := range l.Words {
		put(word, key, text)
	}
	slices.Sort(lines)
	return strings.Join(lines, "\n"), err
}

// Read reads what Write wrote; a line of another kind is left out.
func Read(text string) working.Language {
	l := working.Language{Sentences: map[string]string{}, Words: map[string]string{}}
	for line := range strings.SplitSeq(text, "\n") {
		kind, rest, _ := strings.Cut(line, "\t")
		key, text, _ := strings.Cut(rest, "\t")
		switch kind {
		case tag:
			l.Tag = text
		case decimal:
			l.Decimal = text
		case clock:
			_ = l.Clock.UnmarshalText([]byte(text)) // Write wrote it
		case sentence:
			l.Sentences[key] = text
		case word:
			l.Words[key] = text
		}
	}
	return l
}
