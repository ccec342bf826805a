package mixing

import (
	"unicode"
	"unicode/utf8"

	"example.org/maslin/dough/quantity"
)

// checkName notes a name that is no text of one line: names come from people and are shown to people.
func checkName(p *quantity.Problems, path, name string) {
	ok := utf8.ValidString(name)
	for _, r := range name {
		ok = ok && !unicode.IsControl(r) && !unicode.Is(unicode.Bidi_Control, r)
	}
	if !ok {
		p.Add(path, quantity.Excerpt(name), quantity.Tell("mixing.want_text_without_control_or_direction",
			"text without control or direction characters"), quantity.ErrOutOfRange)
	}
}
