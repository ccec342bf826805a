package textpage

import "strings"

// The few colors of a terminal. Nothing is said by color alone.
const (
	escBold   = "\x1b[1m"
	escAmber  = "\x1b[33m"
	escCyan   = "\x1b[36m"
	escNormal = "\x1b[0m"
)

func (p *Page) in(code, text string) string {
	if !p.Color || text == "" {
		return text
	}
	// Every word carries its own code, so that a line can break between any two; a number stays with its unit.
	words := strings.Split(Glue(text), " ")
	for i, w := range words {
		if w != "" {
			words[i] = code + w + escNormal
		}
	}
	return strings.Join(words, " ")
}

// Bold sets a heading off.
func (p *Page) Bold(text string) string { return p.in(escBold, text) }

// Warn marks what can hurt.
func (p *Page) Warn(text string) string { return p.in(escAmber, text) }

// Time marks a moment.
func (p *Page) Time(text string) string { return p.in(escCyan, text) }

// withoutCodes is a text without the escape codes of colors, which take no column.
func withoutCodes(s string) string {
	for {
		from := strings.Index(s, "\x1b[")
		if from < 0 {
			return s
		}
		to := strings.IndexByte(s[from:], 'm')
		if to < 0 {
			return s
		}
		s = s[:from] + s[from+to+1:]
	}
}
