package assemble

import "strings"

// inText writes bytes as text that a page can carry in any server's encoding of UTF-8: seven bits to a character, an
// eighth more than the bytes where base64 takes a third. Characters that a page or an editor would change stand 128
// higher; the page's script undoes it with the low seven bits of each.
func inText(b []byte) string {
	var out strings.Builder
	out.Grow(len(b)*8/7 + len(b)/20)
	var held, bits uint
	put := func(v uint) {
		switch v {
		case 0, '\n', '\r', 0x1a, '<':
			v += 128
		}
		out.WriteRune(rune(v))
	}
	for _, c := range b {
		held = held<<8 | uint(c)
		for bits += 8; bits >= 7; bits -= 7 {
			put(held >> (bits - 7) & 127)
		}
		held &= 1<<bits - 1
	}
	if bits > 0 {
		put(held << (7 - bits) & 127)
	}
	return out.String()
}
