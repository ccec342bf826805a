package textpage_test

import (
	"regexp"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"example.org/maslin/internal/textpage"
)

func TestPage(t *testing.T) {
	p := textpage.New(24)
	p.Section("What you weigh")
	p.Rows(2, "rl", [][]string{{"289 g", "whole rye flour"}, {"9 g", "salt"}})
	p.Section("The dough")
	p.Para(2, "pour it at a temperature of 20.4 °C")
	p.Gap()
	p.Write("as it is → here\n")
	want := `What you weigh
  289 g  whole rye flour
    9 g  salt

The dough
  pour it at a
    temperature of
    20.4 °C

as it is → here
`
	if diff := cmp.Diff(want, p.String()); diff != "" {
		t.Error(diff)
	}
}

func TestPageInASCII(t *testing.T) {
	p := textpage.New(40)
	p.ASCII = true
	p.Rows(0, "lr", [][]string{{"Brühstück", "12 Δ°C"}, {"flour", "½ → 3"}})
	if diff := cmp.Diff("Bruehstueck  12 dC\nflour        1/2 ? 3\n", p.String()); diff != "" {
		t.Error(diff)
	}
}

// Signs of units and powers have a likeness in ASCII that can be read and typed.
func TestSignsInASCII(t *testing.T) {
	for text, want := range map[string]string{"20 Δ°F": "20 dF", "12 dm³ of 3 m²": "12 dm^3 of 3 m^2", "10⁻¹": "10^-^1",
		"½ × ¾ ÷ ¼": "1/2 x 3/4 / 1/4", "µg ≤ 5 ± 1 … −2": "ug <= 5 +- 1 ... -2", "Süßes Gebäck": "Suesses Gebaeck",
		"麦": "?"} {
		if got := textpage.ASCII(text); got != want {
			t.Errorf("%q is %q, want %q", text, got, want)
		}
	}
}

func TestColorsTakeNoColumns(t *testing.T) {
	p := textpage.New(20)
	plain := p.Bold("a b")
	p.Color = true
	for _, shown := range []string{p.Bold("a b"), p.Warn("a b"), p.Time("a b")} {
		if plain != "a b" || shown == plain || textpage.Width(shown) != 3 || strings.Count(shown, "\x1b[0m") != 2 {
			t.Errorf("%q is shown as %q, %d columns wide", plain, shown, textpage.Width(shown))
		}
	}
}

func TestWidth(t *testing.T) {
	for text, want := range map[string]int{"": 0, "abc": 3, "é": 1, "e\u0301": 1, "麦": 2, "🍞": 2, "\x1b[1mx\x1b[0m": 1} {
		if got := textpage.Width(text); got != want {
			t.Errorf("%q is %d columns wide, want %d", text, got, want)
		}
	}
}

// Whatever is written, no line is wider than the page unless one word is, and no word is lost.
func TestLinesFit(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		words := rapid.SliceOfN(rapid.StringMatching(`[a-z麦é]{1,6}`), 1, 40).Draw(t, "words")
		p := textpage.New(rapid.IntRange(-5, 120).Draw(t, "width"))
		p.Para(rapid.IntRange(0, 4).Draw(t, "indent"), strings.Join(words, " "))
		for _, line := range strings.Split(p.String(), "\n") {
			if textpage.Width(line) > p.Columns() {
				t.Errorf("%q is wider than %d", line, p.Columns())
			}
		}
		if diff := cmp.Diff(words, strings.Fields(p.String())); diff != "" {
			t.Error(diff)
		}
	})
}

// What steers a terminal is seen in its place; letters, marks on them and joined pictures stay.
func TestPrintable(t *testing.T) {
	// Unicode 17.0, PropList.txt: Bidi_Control; and the separators of lines and paragraphs (Zl, Zp).
	for _, r := range "\x00\a\t\n\x1b\x7f\u0080\u0085\u009b\u061c\u200e\u200f\u2028\u2029\u202a\u202b\u202c\u202d\u202e" +
		"\u2066\u2067\u2068\u2069" {
		if got := textpage.Printable("a" + string(r) + "b"); got != "a·b" || !textpage.Steers(r) {
			t.Errorf("%U: %q", r, got)
		}
	}
	for _, text := range []string{"", "Rüebli", "e\u0301", "👩\u200d🍳", "5\u00a0°C", "1\u202f150",
		"\u2027\u202f\u2065\u206a"} {
		if got := textpage.Printable(text); got != text {
			t.Errorf("%q is shown as %q", text, got)
		}
	}
	if got := textpage.Printable("a\xffb"); got != "a\ufffdb" {
		t.Errorf("%q", got)
	}
}

func FuzzPrintable(f *testing.F) {
	f.Add("loaf\x1b[2J\u202e\xff")
	f.Fuzz(func(t *testing.T, text string) {
		safe := textpage.Printable(text)
		if !utf8.ValidString(safe) || strings.ContainsAny(safe, "\x1b\x00\n\u202e\u2066") {
			t.Errorf("%q is shown as %q", text, safe)
		}
		if again := textpage.Printable(safe); again != safe {
			t.Errorf("%q changes to %q", safe, again)
		}
		for _, r := range textpage.ASCII(text) {
			if r > 0x7e {
				t.Errorf("%q holds %q", textpage.ASCII(text), r)
			}
		}
	})
}

func TestAColoredNumberStaysWithItsUnit(t *testing.T) {
	want := "pour no more than\n  907 g of it\n"
	for _, color := range []bool{false, true} {
		p := textpage.New(21)
		p.Color = color
		p.Para(0, p.Bold("pour no more than 907 g of it"))
		if got := regexp.MustCompile("\x1b\\[[0-9]*m").ReplaceAllString(p.String(), ""); got != want {
			t.Errorf("color %v: %q, want %q", color, got, want)
		}
	}
}

// A table that is too wide keeps its columns: the widest column of text wraps, the last apart; where even that is too
// little, or there is only a column of numbers, one cell follows the other.
func TestTheWidestColumnMakesRoom(t *testing.T) {
	rows := [][]string{
		{"after", "phase", "takes", "oven"},
		{"50m", "load: boil each in a wide pot, drain it and load", "15m to 25m", "220 °C"},
		{"1h10m", "reheat", "10m", "220 °C"},
	}
	p := textpage.New(52)
	p.Rows(2, "rlll", rows)
	want := `  after  phase                 takes       oven
    50m  load: boil each in a  15m to 25m  220 °C
           wide pot, drain it
           and load
  1h10m  reheat                10m         220 °C
`
	if diff := cmp.Diff(want, p.String()); diff != "" {
		t.Error(diff)
	}
	for name, c := range map[string]struct {
		width int
		align string
		rows  [][]string
		want  string
	}{
		"too narrow": {40, "rlll", rows[1:2],
			"  50m load: boil each in a wide pot,\n    drain it and load 15m to 25m 220 °C\n"},
		"numbers": {20, "rrr", [][]string{{"123456789", "123456789", "12345"}}, "  123456789\n    123456789 12345\n"},
		"a long word": {44, "rlll", [][]string{{"50m", "Sauerteigvollkornroggenbrote", "15m", "220 °C"}},
			"  50m Sauerteigvollkornroggenbrote 15m\n    220 °C\n"},
	} {
		p := textpage.New(c.width)
		p.Rows(2, c.align, c.rows)
		if got := p.String(); got != c.want {
			t.Errorf("%s:\n%s", name, got)
		}
	}
}

// Source: WHATWG HTML, 13.3, escaping a string, and the apostrophe of 13.1.2.3.
func TestATextStaysATextInHTML(t *testing.T) {
	if got := textpage.Escaped(`<a href="x" title='y'>5 & 6 &amp;</a>`); got !=
		"&lt;a href=&#34;x&#34; title=&#39;y&#39;&gt;5 &amp; 6 &amp;amp;&lt;/a&gt;" {
		t.Error(got)
	}
}

// A file is whole, says its language, shows its title as a text, and may load nothing.
func TestDocument(t *testing.T) {
	for tag, lang := range map[string]string{"": `<html lang="en">`, "de": `<html lang="de">`} {
		page := textpage.Document(tag, "<b>\x1b bread", "p { margin: 0 }", "<main>x</main>\n")
		for _, part := range []string{lang, "<title>&lt;b&gt;", "default-src 'none'", "<style>\np { margin: 0 }</style>",
			"<body>\n<main>x</main>\n</body>\n</html>\n"} {
			if !strings.HasPrefix(page, "<!DOCTYPE html>\n<html ") || strings.Count(page, part) != 1 ||
				strings.Contains(page, "\x1b") {
				t.Errorf("%q is not on the page once:\n%s", part, page)
			}
		}
	}
}
