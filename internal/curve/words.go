package curve

import (
	"fmt"
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
		case r == utf8.RuneError || unicode.IsControl(r) || r == 0xfffe || r == 0xffff:
			return utf8.RuneError
		case r >= 0x202a && r <= 0x202e || r >= 0x2066 && r <= 0x2069:
			return utf8.RuneError
		}
		return r
	}, s)
}

// with is the same plot with every text changed.
func (p Plot) with(change func(string) string) Plot {
	for _, t := range []*string{&p.Title, &p.YLabel, &p.SecondLabel, &p.XLabel, &p.MidName, &p.BandName} {
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

// describe says in words what the plot shows, for those who cannot see it.
func (p Plot) describe() string {
	var b strings.Builder
	last := len(p.X) - 1
	name := or(p.YLabel, "the curve")
	fmt.Fprintf(
		&b,
		"%s, %s: from %s at %s to %s at %s.",
		name,
		p.midName(),
		number(p.Mid[0]),
		p.when(p.X[0]),
		number(p.Mid[last]),
		p.when(p.X[last]),
	)
	if p.Low != nil {
		fmt.Fprintf(
			&b,
			" %s at the end: %s to %s.",
			upperFirst(p.bandName()),
			number(p.Low[last]),
			number(p.High[last]),
		)
	}
	for _, l := range p.Levels {
		fmt.Fprintf(&b, " %s: %s", l.Text, number(l.Y))
		if x, ok := p.reaches(p.Mid, l.Y); ok {
			fmt.Fprintf(&b, ", reached at %s", p.when(x))
			early, ok1 := p.reaches(p.High, l.Y)
			late, ok2 := p.reaches(p.Low, l.Y)
			switch {
			case ok1 && ok2:
				fmt.Fprintf(&b, " (%s to %s)", p.when(early), p.when(late))
			case ok1:
				fmt.Fprintf(&b, " (%s at the earliest)", p.when(early))
			}
		}
		b.WriteString(".")
	}
	for _, m := range p.Marks {
		fmt.Fprintf(&b, " %s: %s.", p.when(m.X), m.Text)
	}
	for _, l := range p.Beside {
		fmt.Fprintf(&b, " %s: from %s to %s.", l.Name, number(l.Y[0]), number(l.Y[last]))
	}
	if p.Top != 0 {
		fmt.Fprintf(&b, " What goes beyond %s is cut.", number(p.Top))
	}
	if p.Second != nil {
		low, high := p.Second[0], p.Second[0]
		for _, v := range p.Second {
			low, high = min(low, v), max(high, v)
		}
		fmt.Fprintf(
			&b,
			" %s: %s at first, %s at the end, between %s and %s.",
			or(p.SecondLabel, "second line"),
			number(p.Second[0]),
			number(p.Second[last]),
			number(low),
			number(high),
		)
	}
	return b.String()
}

// reaches returns the first time at which a series climbs to a height.
func (p Plot) reaches(series []float64, y float64) (float64, bool) {
	for i := 1; i < len(series); i++ {
		if series[i-1] < y && series[i] >= y {
			f := (y - series[i-1]) / (series[i] - series[i-1])
			return p.X[i-1] + f*(p.X[i]-p.X[i-1]), true
		}
	}
	return 0, false
}

func upperFirst(s string) string {
	r, n := utf8.DecodeRuneInString(s)
	if n == 0 {
		return s
	}
	return string(unicode.ToUpper(r)) + s[n:]
}
