package nearest

import (
	"strings"
	"testing"
)

// The edits between words, counted by hand: an insertion, a deletion, a substitution and a swap of neighbors are one
// each, in either direction, and letters are characters, not bytes.
func TestEditsByHand(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want int
	}{
		{"", "", 0}, {"", "abc", 3}, {"rye", "rye", 0}, {"rye", "ryes", 1}, {"rye", "re", 1}, {"rye", "rie", 1},
		{"rye", "yre", 1}, {"rye", "eyr", 2}, {"kitten", "sitting", 3}, {"flaw", "lawn", 2}, {"ca", "abc", 3},
		{"ab", "ba", 1}, {"Brötchen", "Brotchen", 1}, {"süß", "süss", 2}, {"abcdef", "badcfe", 3},
	} {
		if got := edits(c.a, c.b); got != c.want {
			t.Errorf("%q to %q: %d, want %d", c.a, c.b, got, c.want)
		}
		if got := edits(c.b, c.a); got != c.want {
			t.Errorf("%q to %q: %d, want %d", c.b, c.a, got, c.want)
		}
	}
}

// Two edits of a word of five letters are a slip, of one of four they are not; of two words as near the first is meant;
// and a word of 64 letters is looked at, a longer one is not.
func TestWhatIsASlip(t *testing.T) {
	long := strings.Repeat("x", 64)
	for _, c := range []struct {
		word string
		from []string
		want string
	}{
		{"abxy", []string{"abcd"}, ""}, {"abcx", []string{"abcd"}, "abcd"}, {"abcxy", []string{"abcde"}, "abcde"},
		{"abxyz", []string{"abcde"}, ""}, {"rise", []string{"rice", "rite"}, "rice"},
		{"rise", []string{"rite", "rice"}, "rite"},
		{"rites", []string{"ricer", "rites"}, "rites"}, {long, []string{long + "x"}, long + "x"},
		{long + "x", []string{long}, ""},
	} {
		if got := Word(c.word, c.from); got != c.want {
			t.Errorf("%q of %v: %q, want %q", c.word, c.from, got, c.want)
		}
	}
	// A slip goes before a part, and of parts the first.
	if got := Name("salt", []string{"Sea salt", "sale"}); got != "sale" {
		t.Errorf("%q", got)
	}
	if got := Name("flour", []string{"Rye flour", "Bread flour"}); got != "Rye flour" {
		t.Errorf("%q", got)
	}
}
