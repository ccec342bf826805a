package calendar

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// escape writes any Go string as a TEXT value (RFC 5545, section 3.3.11). Characters that TEXT
// does not allow are shown as the package comment says.
func escape(s string) string {
	var b strings.Builder
	for i := 0; i < len(s); {
		r, n := utf8.DecodeRuneInString(s[i:])
		i += n
		switch {
		case r == '\\' || r == ';' || r == ',':
			b.WriteByte('\\')
			b.WriteRune(r)
		case r == '\r':
			if strings.HasPrefix(s[i:], "\n") {
				i++
			}
			b.WriteString(`\n`)
		case r == '\n' || r == 0x85 || r == 0x2028 || r == 0x2029:
			b.WriteString(`\n`)
		case r == '\t':
			b.WriteByte('\t')
		case r < ' ':
			b.WriteRune(0x2400 + r) // ␀ to ␟
		case r == 0x7f:
			b.WriteRune('␡')
		case r > 0x7f && r < 0xa0 || unicode.Is(unicode.Bidi_Control, r):
			b.WriteRune(utf8.RuneError)
		default: // RuneError for bytes that are not UTF-8
			b.WriteRune(r)
		}
	}
	return b.String()
}
