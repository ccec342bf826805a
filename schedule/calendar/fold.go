package calendar

import "unicode/utf8"

// longest is how many octets a line may have, not counting its line break (RFC 5545, section 3.1).
const longest = 75

// writer collects content lines.
type writer struct{ out []byte }

// line writes one content line, folded. A fold is CRLF and one space; it comes before a
// character that would not fit whole.
func (w *writer) line(name, value string) {
	rest := name + ":" + value
	room := longest
	for len(rest) > room {
		cut := room
		for cut > 0 && !utf8.RuneStart(rest[cut]) {
			cut--
		}
		w.out = append(w.out, rest[:cut]...)
		w.out = append(w.out, "\r\n "...)
		rest, room = rest[cut:], longest-1
	}
	w.out = append(w.out, rest...)
	w.out = append(w.out, "\r\n"...)
}
