package curve

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// clean makes a text safe to show: bytes that are not UTF-8, control characters and the ones
// that reorder text become U+FFFD; line breaks and tabs become spaces.
func clean(s string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\n' || r == '\r' || r == '\t':
			return ' '
		case r == utf8.RuneError || unicode.IsControl(r) || unicode.Is(unicode.Bidi_Control, r) || r == 0xfffe || r == 0xffff:
			return utf8.RuneError
		}
		return r
	}, s)
}

// with is the same plot with every text changed.
func (p Plot) with(change func(string) string) Plot {
	for _, t := range []*string{&p.Title, &p.YLabel, &p.SecondLabel, &p.XLabel, &p.MidName, &p.BandName, &p.About} {
		*t = change(*t)
	}
	p.Marks, p.Levels, p.Beside = slices.Clone(p.Marks), slices.Clone(p.Levels), slices.Clone(p.Beside)
	for i := range p.Beside {
		p.Beside[i].Name = change(p.Beside[i].Name)
	}
	for i := range p.Marks {
		p.Marks[i].Text = change(p.Marks[i].Text)
	}
	for i := range p.Levels {
		p.Levels[i].Text = change(p.Levels[i].Text)
	}
	return p
}
