package mixing

import (
	"strings"

	"example.org/maslin/dough/quantity"
)

// Named constants print and read their words, in files as in Go.

func wordOf(words []string, i int, otherwise string) string {
	if i < 0 || i >= len(words) || words[i] == "" {
		return otherwise
	}
	return words[i]
}

func listOf(words []string) string { return "one of " + strings.Join(words, ", ") }

func writeWord(words []string, i int) ([]byte, error) {
	if i < 0 || i >= len(words) {
		return nil, &quantity.InputError{Got: "a value without a name", Want: listOf(words), Err: quantity.ErrOutOfRange}
	}
	return []byte(words[i]), nil
}

func readWord(text []byte, words []string) (int, error) {
	for i, w := range words {
		if string(text) == w {
			return i, nil
		}
	}
	return 0, &quantity.InputError{Got: quantity.Excerpt(string(text[:min(len(text), 64)])), Want: listOf(words), Err: quantity.ErrOutOfRange}
}

var wayWords = []string{"none", "ice", "chilled water", "chilled flour", "warm flour", "shorter mixing", "other target"}

// String names the way: "ice".
func (w Way) String() string { return wordOf(wayWords, int(w), "no way") }

// MarshalText implements encoding.TextMarshaler: "ice".
func (w Way) MarshalText() ([]byte, error) { return writeWord(wayWords, int(w)) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads what String prints.
func (w *Way) UnmarshalText(text []byte) error {
	i, err := readWord(text, wayWords)
	if err == nil {
		*w = Way(i)
	}
	return err
}

var fullnessWords = []string{"unknown", "comfortable", "tight", "too much", "too little"}

// String names it: "too much".
func (v Fullness) String() string { return wordOf(fullnessWords, int(v), "unknown fullness") }

// MarshalText implements encoding.TextMarshaler: "too much".
func (v Fullness) MarshalText() ([]byte, error) { return writeWord(fullnessWords, int(v)) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads what String prints.
func (v *Fullness) UnmarshalText(text []byte) error {
	i, err := readWord(text, fullnessWords)
	if err == nil {
		*v = Fullness(i)
	}
	return err
}

var doughWords = []string{"wheat", "whole grain", "rye", "spelt", "pizza", "sweet"}

// String names the kind: "wheat".
func (k DoughKind) String() string { return wordOf(doughWords, int(k), "unknown dough") }

// MarshalText implements encoding.TextMarshaler: "wheat".
func (k DoughKind) MarshalText() ([]byte, error) { return writeWord(doughWords, int(k)) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads what String prints.
func (k *DoughKind) UnmarshalText(text []byte) error {
	i, err := readWord(text, doughWords)
	if err == nil {
		*k = DoughKind(i)
	}
	return err
}

var substanceWords = []string{"none", "flour", "water", "levain", "milk", "egg", "butter", "oil", "sugar", "salt"}

// String names the substance: "flour".
func (s Substance) String() string { return wordOf(substanceWords, int(s), "unknown substance") }

// MarshalText implements encoding.TextMarshaler: "flour".
func (s Substance) MarshalText() ([]byte, error) { return writeWord(substanceWords, int(s)) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads what String prints.
func (s *Substance) UnmarshalText(text []byte) error {
	i, err := readWord(text, substanceWords)
	if err == nil {
		*s = Substance(i)
	}
	return err
}

var findWords = []string{"nothing", "dough", "water", "ice", "flour"}

// String names what is found: "water".
func (f Find) String() string { return wordOf(findWords, int(f), "nothing") }

// MarshalText implements encoding.TextMarshaler: "water".
func (f Find) MarshalText() ([]byte, error) { return writeWord(findWords, int(f)) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads what String prints.
func (f *Find) UnmarshalText(text []byte) error {
	i, err := readWord(text, findWords)
	if err == nil {
		*f = Find(i)
	}
	return err
}
