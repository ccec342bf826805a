package desk

import "strings"

// Links are percent-encoded as in RFC 3986, section 2.1: everything but the unreserved characters, so that a link
// passes through mail and chat as it is. A plus sign is itself.

func unreserved(c byte) bool {
	return c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= '0' && c <= '9' || strings.IndexByte("-._~", c) >= 0
}

func escape(text string) string {
	const digits = "0123456789ABCDEF"
	var b strings.Builder
	for i := range len(text) {
		if c := text[i]; unreserved(c) {
			b.WriteByte(c)
		} else {
			b.Write([]byte{'%', digits[c>>4], digits[c&15]})
		}
	}
	return b.String()
}

// unescape reads what escape wrote; false where a percent sign is followed by no two hexadecimal digits.
func unescape(text string) (string, bool) {
	var b strings.Builder
	for i := 0; i < len(text); i++ {
		if text[i] != '%' {
			b.WriteByte(text[i])
			continue
		}
		if i+2 >= len(text) {
			return "", false
		}
		high, low := hexDigit(text[i+1]), hexDigit(text[i+2])
		if high < 0 || low < 0 {
			return "", false
		}
		b.WriteByte(byte(high<<4 | low))
		i += 2
	}
	return b.String(), true
}

func hexDigit(c byte) int {
	switch {
	case c >= '0' && c <= '9':
		return int(c - '0')
	case c >= 'A' && c <= 'F':
		return int(c-'A') + 10
	case c >= 'a' && c <= 'f':
		return int(c-'a') + 10
	}
	return -1
}

// splitPairs reads key=value pairs between ampersands; false if one is not of that form or stands there twice.
func splitPairs(text string) (map[string]string, bool) {
	pairs := map[string]string{}
	for _, part := range strings.Split(text, "&") {
		k, v, ok := strings.Cut(part, "=")
		if !ok {
			return pairs, false
		}
		key, ok1 := unescape(k)
		value, ok2 := unescape(v)
		if _, twice := pairs[key]; !ok1 || !ok2 || twice {
			return pairs, false
		}
		pairs[key] = value
	}
	return pairs, true
}
