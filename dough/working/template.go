package working

import (
	"strconv"
	"strings"
)

// A piece of a template is text, a placeholder, or the words of a number.
type piece struct {
	text   string // as written
	plain  string // of text: as shown
	index  int    // from 0; −1 for text
	places int    // −1 when none are named
	// of a number written with zeros in front: %02d; steps of a dial, of temperatures and differences: %05.0f
	width int
	sign  bool     // a plus before what is not negative
	verb  byte     // v s d f g q t x
	words []string // of {1|piece|pieces}
}

// pieces reads a template. It never fails: what is no placeholder is text.
func pieces(template string) []piece {
	var out []piece
	var plain strings.Builder
	start, next := 0, 0
	flush := func(end int) {
		if end > start {
			out = append(out, piece{text: template[start:end], plain: plain.String(), index: -1})
		}
		plain.Reset()
	}
	for i := 0; i < len(template); {
		var p piece
		n := 0
		switch template[i] {
		case '%':
			if strings.HasPrefix(template[i:], "%%") {
				plain.WriteByte('%')
				i += 2
				continue
			}
			p, n = placeholder(template[i:], next)
		case '{':
			p, n = choice(template[i:])
		}
		if n == 0 {
			plain.WriteByte(template[i])
			i++
			continue
		}
		flush(i)
		out = append(out, p)
		if p.words == nil {
			next = p.index + 1
		}
		i += n
		start = i
	}
	flush(len(template))
	return out
}

// placeholder reads %v, %[2].1f, %+.1f, %02d at the start of the text; length 0 if there is none.
func placeholder(text string, next int) (piece, int) {
	p := piece{index: next, places: -1}
	i := 1
	digits := func() (int, bool) {
		from := i
		for i < len(text) && text[i] >= '0' && text[i] <= '9' && i-from < 4 {
			i++
		}
		n, err := strconv.Atoi(text[from:i])
		return n, err == nil
	}
	if i < len(text) && text[i] == '+' {
		p.sign = true
		i++
	}
	if i < len(text) && text[i] == '[' {
		i++
		n, ok := digits()
		if !ok || n < 1 || i >= len(text) || text[i] != ']' {
			return piece{}, 0
		}
		p.index = n - 1
		i++
	}
	if i < len(text) && text[i] == '0' {
		i++
		p.width, _ = digits()
	}
	if i < len(text) && text[i] == '.' {
		i++
		n, ok := digits()
		if !ok || n > 12 {
			return piece{}, 0
		}
		p.places = n
	}
	if i >= len(text) || p.width > 12 || !strings.ContainsRune("vsdfgqtx", rune(text[i])) {
		return piece{}, 0
	}
	p.verb = text[i]
	p.text = text[:i+1]
	return p, i + 1
}

// choice reads {1|piece|pieces} at the start of the text; length 0 if there is none.
func choice(text string) (piece, int) {
	end := strings.IndexAny(text[1:], "{}%") + 1
	if end < 1 || text[end] != '}' {
		return piece{}, 0
	}
	parts := strings.Split(text[1:end], "|")
	n, err := strconv.Atoi(parts[0])
	if err != nil || n < 1 || n > 9999 || len(parts) < 3 {
		return piece{}, 0
	}
	return piece{text: text[:end+1], index: n - 1, words: parts[1:]}, end + 1
}

// uses lists which arguments the placeholders of a template show, and whether all are there.
func uses(template string, args int) (shown map[int]bool, ok bool) {
	shown = map[int]bool{}
	for _, p := range pieces(template) {
		if p.index >= args {
			return shown, false
		}
		if p.index >= 0 && p.words == nil {
			shown[p.index] = true
		}
	}
	return shown, true
}

// fits reports whether a translation shows every argument that the English template shows, and no other.
func fits(translation, english string, args int) bool {
	want, _ := uses(english, args)
	got, ok := uses(translation, args)
	if !ok || len(got) != len(want) {
		return false
	}
	for i := range want {
		if !got[i] {
			return false
		}
	}
	return true
}
