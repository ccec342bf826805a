package curve

import (
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// Lines keep to their room and hold every letter in order; no line could have taken the word behind it.
func TestWrapKeepsEveryLetter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		words := rapid.SliceOfN(rapid.StringMatching(`[a-z0-9ABm.]{1,14}|麦+`), 0, 8).Draw(t, "words")
		room, size := rapid.Float64Range(14, 120).Draw(t, "room"), 12.0
		lines := wrap(strings.Join(words, " "), room, size)
		if got := strings.ReplaceAll(strings.Join(lines, ""), " ", ""); got != strings.Join(words, "") {
			t.Fatalf("%q became %q", words, lines)
		}
		for i, l := range lines {
			if l == "" || strings.HasPrefix(l, " ") || textWidth(l, size) > room {
				t.Errorf("line %q in %.0f", l, room)
			}
			if i+1 < len(lines) {
				next := strings.Fields(lines[i+1])[0]
				if containsWord(words, next) && containsWord(words, l) && textWidth(l+" "+next, size) <= room {
					t.Errorf("%q had room for %q", l, next)
				}
			}
		}
	})
	// What is just as wide as the room fits, as words and as a piece of one.
	for first, text := range map[string]string{"ab cd": "ab cd ef", "abc": "abcdefg", "wide": "wide"} {
		if got := wrap(text, textWidth(first, 10), 10)[0]; got != first {
			t.Errorf("%q in the room of %q: %q", text, first, got)
		}
	}
	// A letter of 0.62 and a wide one of 0.8 times the size.
	if got := strings.Join(wrap("abc mm abcdefg", 30, 10), "|"); got != "abc|mm|abcd|efg" {
		t.Errorf("%s", got)
	}
}

func containsWord(words []string, word string) bool {
	for _, w := range words {
		if w == word {
			return true
		}
	}
	return false
}

func TestLabelsInASCII(t *testing.T) {
	for text, want := range map[string]string{"−3 °C": "-3 deg C", "5–7 — x…": "5-7 - x...",
		"Brot für Ωmega": "Brot f?r ?mega"} {
		if got := toASCII(text); got != want {
			t.Errorf("%q is %q, want %q", text, got, want)
		}
	}
}

// Where both labels do not fit in one line they stand in two.
func TestLabelsOfTwoAxes(t *testing.T) {
	left := strings.Repeat("h", 20)
	for n, between := range map[int]string{18: "  ", 17: "   ", 19: "\n"} {
		right := strings.Repeat("t", n)
		p := Plot{X: []float64{0, 1}, Mid: []float64{0, 1}, Second: []float64{0, 1}, YLabel: left, SecondLabel: right}
		text, err := p.Text(Screen{Width: 40})
		if err != nil || !strings.Contains(text, left+between+right+"\n") {
			t.Errorf("%d letters: %v\n%s", n, err, text)
		}
	}
}
