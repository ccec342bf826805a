package cli

import "strings"

// The few colors of the program. Nothing is said by color alone.
const (
	escBold   = "\x1b[1m"
	escAmber  = "\x1b[33m"
	escCyan   = "\x1b[36m"
	escNormal = "\x1b[0m"
)

// colored reports whether the output may have colors: on a terminal that has them, unless NO_COLOR is set.
func (s System) colored() bool {
	term := s.Getenv("TERM")
	return s.Terminal && s.Getenv("NO_COLOR") == "" && term != "" && term != "dumb"
}

func (p *page) in(code, text string) string {
	if !p.color || text == "" {
		return text
	}
	// Every word carries its own code, so that a line can break between any two.
	words := strings.Split(text, " ")
	for i, w := range words {
		if w != "" {
			words[i] = code + w + escNormal
		}
	}
	return strings.Join(words, " ")
}

func (p *page) bold(text string) string { return p.in(escBold, text) }
func (p *page) warn(text string) string { return p.in(escAmber, text) }

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
