package textpage

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// Width counts what a terminal shows: combining marks take no column, East Asian wide
// letters and emoji two.
func Width(s string) int {
	n := 0
	for _, r := range withoutCodes(s) {
		switch {
		case unicode.Is(unicode.Mn, r) || r == '\u200d' || r == '\ufe0f':
		case r >= 0x1100 && (r <= 0x115f || r >= 0x2e80 && r <= 0xa4cf || r >= 0xac00 && r <= 0xd7a3 ||
			r >= 0xf900 && r <= 0xfaff || r >= 0xfe30 && r <= 0xfe6f || r >= 0xff00 && r <= 0xff60 ||
			r >= 0x1f300 && r <= 0x1faff):
			n += 2
		default:
			n++
		}
	}
	return n
}

// Printable makes a text that a user gave safe for a terminal: control characters, marks of direction and the
// separators of lines become visible, and broken UTF-8 is replaced.
func Printable(s string) string {
	if !utf8.ValidString(s) {
		s = strings.ToValidUTF8(s, "\uFFFD")
	}
	return strings.Map(func(r rune) rune {
		if Steers(r) {
			return '\u00b7'
		}
		return r
	}, s)
}

// Steers reports whether a character shows nothing of itself and changes what stands around it: Unicode's control
// characters, those that have the property Bidi_Control, and its separators of lines and paragraphs.
func Steers(r rune) bool {
	return unicode.IsControl(r) || unicode.Is(unicode.Bidi_Control, r) || r == 0x2028 || r == 0x2029
}

var entities = strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", `"`, "&#34;", "'", "&#39;")

// Escaped keeps a text a text in HTML. Package html does the same, with a table of two thousand entities that no page
// of ours needs and that every program would carry.
func Escaped(s string) string { return entities.Replace(s) }
