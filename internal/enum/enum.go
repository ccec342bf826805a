package enum

import (
	"strings"

	"example.org/maslin/dough/quantity"
)

// Integer is what an enumeration may be made of.
type Integer interface {
	~int | ~int8 | ~uint8 | ~int16 | ~uint16 | ~int32
}

// Words are the words of one enumeration. They do not change.
type Words[E Integer] struct {
	noun  string
	words []string
}

// UnknownWord is the code of the error for a word, or a value, that an enumeration does not have.
const UnknownWord = "unknown_word"

// Of declares an enumeration: what one of it is called in an error ("style of bread"), and the words of the values
// 0, 1, 2, …; the first is "" where zero means "not given".
func Of[E Integer](noun string, words ...string) Words[E] { return Words[E]{noun, words} }

// Has reports whether the value has a word; "not given" has none.
func (w Words[E]) Has(e E) bool { return w.known(e) && w.words[int(e)] != "" }

func (w Words[E]) known(e E) bool { return int(e) >= 0 && int(e) < len(w.words) }

// String returns the word; it is empty for "not given".
func (w Words[E]) String(e E) string {
	if !w.known(e) {
		return w.unknown(e).String()
	}
	return w.words[int(e)]
}

// Marshal returns the word as MarshalText does, empty for "not given", and an error for a value without a word.
func (w Words[E]) Marshal(e E) ([]byte, error) {
	if !w.known(e) {
		return nil, w.refuse(w.unknown(e))
	}
	return []byte(w.words[int(e)]), nil
}

// Unmarshal reads exactly the words that Marshal writes; the empty text is "not given" where zero is that, and
// otherwise an error.
func (w Words[E]) Unmarshal(into *E, text []byte) error {
	for i, word := range w.words {
		if word == string(text) {
			*into = E(i)
			return nil
		}
	}
	if len(text) == 0 {
		return &quantity.InputError{Want: w.Accepted(), Err: quantity.ErrRequired}
	}
	return w.refuse(quantity.Excerpt(string(text)))
}

// Parse reads a word as a person types it: in any case, with spaces around it, and with space, hyphen, underscore or
// nothing between its parts. It needs a word.
func (w Words[E]) Parse(text string) (E, error) {
	if len(text) <= maxWord {
		typed := plain(text)
		if typed == "" {
			return 0, &quantity.InputError{Want: w.Accepted(), Err: quantity.ErrRequired}
		}
		for i, word := range w.words {
			if word != "" && plain(word) == typed {
				return E(i), nil
			}
		}
	}
	return 0, w.refuse(quantity.Excerpt(text))
}

const maxWord = 64

func plain(s string) string {
	return strings.Map(func(r rune) rune {
		if r == ' ' || r == '-' || r == '_' {
			return -1
		}
		return r
	}, strings.ToLower(strings.TrimSpace(s)))
}

// Check notes a problem unless the value is given and known.
func (w Words[E]) Check(p *quantity.Problems, path string, e E) bool {
	if w.Has(e) {
		return true
	}
	if w.known(e) {
		p.Required(path, w.Accepted())
		return false
	}
	p.Join(path, w.refuse(w.unknown(e)))
	return false
}

// CheckIfGiven notes a problem unless the value is known or not given.
func (w Words[E]) CheckIfGiven(p *quantity.Problems, path string, e E) bool {
	return e == 0 || w.Check(p, path, e)
}

// A Noun is what one of an enumeration is called in an error. A language has a word for it by the key
// "enum.Noun/style of bread"; the words of the enumeration stay as they have to be given.
type Noun string

// Accepted lists the words for an error: "style of bread: lean hearth, baguette".
func (w Words[E]) Accepted() quantity.Phrase {
	words := w.words
	if len(words) > 0 && words[0] == "" {
		words = words[1:]
	}
	return quantity.Tell("enum.want_word", "%v: %s", Noun(w.noun), strings.Join(words, ", "))
}

func (w Words[E]) refuse(got any) error {
	return &quantity.InputError{Got: got, Want: w.Accepted(), Code: UnknownWord, Err: quantity.ErrOutOfRange}
}

func (w Words[E]) unknown(e E) quantity.Phrase {
	return quantity.Tell("enum.got_unknown", "unknown %v %d", Noun(w.noun), int(e))
}
