package curve

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"
	"unicode/utf8"

	"example.org/maslin/dough/quantity"
)

// Screen says what kind of terminal picture is wanted.
type Screen struct {
	Width  int  // columns, 40 to 300; 0 means 72
	Height int  // rows of the curve itself, 5 to 60; 0 means 14
	ASCII  bool // only ASCII characters
}

// strokes are the characters a picture is made of.
type strokes struct {
	flat, upright             string // one column of the likely line
	turn                      [4]string
	band, second, level, mark string
	side, corner, floor, tick string
	sideTick, rightTick       string
	beside                    [maxBeside]string
}

var (
	lines = strokes{
		flat: "━", upright: "┃", turn: [4]string{"┛", "┏", "┓", "┗"}, // arriving, leaving upward; arriving, leaving downward
		band: "░", second: "∙", level: "┄", mark: "┆",
		side: "│", corner: "└", floor: "─", tick: "┴", sideTick: "┤", rightTick: "├",
		beside: [maxBeside]string{"∙", "×", "+"},
	}
	ascii = strokes{
		flat: "-", upright: "|", turn: [4]string{"'", ".", ".", "'"},
		band: ":", second: "o", level: "=", mark: "!",
		side: "|", corner: "+", floor: "-", tick: "+", sideTick: "+", rightTick: "+",
		beside: [maxBeside]string{"o", "x", "*"},
	}
)

// Text draws the plot with characters. The curve is exactly as wide as the screen; a text of
// the caller's that is longer is kept whole. Marks have letters, explained below the curve.
// Columns are counted as one per character, so wide characters in a label may push the one
// beside it.
func (p Plot) Text(s Screen) (string, error) {
	if s.Width == 0 {
		s.Width = 72
	}
	if s.Height == 0 {
		s.Height = 14
	}
	var bad quantity.Problems
	bad.Join("", p.Check())
	bad.Int("Width", s.Width, 40, 300)
	bad.Int("Height", s.Height, 5, 60)
	if err := bad.ErrFor(nil); err != nil {
		return "", err
	}
	p = p.with(clean)
	if s.ASCII {
		p = p.with(toASCII)
	}
	slices.SortStableFunc(p.Marks, func(a, b Mark) int { return cmp.Compare(a.X, b.X) })
	g := newGrid(p, s)
	g.draw()
	out := g.print()
	if s.ASCII {
		out = strings.ReplaceAll(out, "−", "-")
	}
	return out, nil
}

// grid is a picture of characters in the making.
type grid struct {
	p          Plot
	s          Screen
	use        strokes
	y, second  axis
	margin     int // columns of the left-hand axis, its line included
	columns    int // of the curve
	cells      [][]string
	labelLeft  []string // by row
	labelRight []string
}

func newGrid(p Plot, s Screen) *grid {
	g := &grid{p: p, s: s, use: lines}
	if s.ASCII {
		g.use = ascii
	}
	levels := make([]float64, len(p.Levels))
	for i, l := range p.Levels {
		levels[i] = l.Y
	}
	g.y = p.heightAxis(max(2, s.Height/3), levels)
	g.y.decimal = p.Decimal
	g.labelLeft, g.labelRight = make([]string, s.Height), make([]string, s.Height)
	left, right := g.labels(g.y, g.labelLeft), 0
	if p.Second != nil {
		g.second = valueAxis(max(2, s.Height/4), 2, p.Second)
		g.second.decimal = p.Decimal
		right = g.labels(g.second, g.labelRight) + 2
	}
	g.margin = left + 1
	g.columns = s.Width - g.margin - right
	for range s.Height {
		row := make([]string, g.columns)
		for i := range row {
			row[i] = " "
		}
		g.cells = append(g.cells, row)
	}
	return g
}

// labels writes the ticks of an axis to their rows and returns how wide they are.
func (g *grid) labels(a axis, to []string) int {
	width := 0
	for _, v := range a.ticks() {
		t := a.text(v)
		to[g.row(a, v)] = t
		width = max(width, utf8.RuneCountInString(t))
	}
	return width
}

// row is where a value stands, counted from the top.
func (g *grid) row(a axis, v float64) int {
	r := int(math.Round(steady((1 - a.place(v)) * float64(g.s.Height-1))))
	return max(0, min(g.s.Height-1, r))
}

// x is the time in the middle of a column.
func (g *grid) x(column int) float64 {
	first, last := g.p.X[0], g.p.X[len(g.p.X)-1]
	return first + (last-first)*float64(column)/float64(g.columns-1)
}

func (g *grid) column(x float64) int {
	first, last := g.p.X[0], g.p.X[len(g.p.X)-1]
	c := int(math.Round(steady((x - first) / (last - first) * float64(g.columns-1))))
	return max(0, min(g.columns-1, c))
}

// draw puts in the least important things first, so that the likely line is never covered.
func (g *grid) draw() {
	p := g.p
	if p.Low != nil {
		for c := range g.columns {
			if p.beyond(p.at(p.Low, g.x(c))) {
				continue
			}
			for r := g.row(g.y, p.at(p.High, g.x(c))); r <= g.row(g.y, p.at(p.Low, g.x(c))); r++ {
				g.cells[r][c] = g.use.band
			}
		}
	}
	for _, l := range p.Levels {
		r := g.row(g.y, l.Y)
		for c := range g.columns {
			if g.cells[r][c] == " " {
				g.cells[r][c] = g.use.level
			}
		}
	}
	for _, m := range p.Marks {
		c := g.column(m.X)
		for r := range g.s.Height {
			g.cells[r][c] = g.use.mark
		}
	}
	if p.Second != nil {
		for c := range g.columns {
			g.cells[g.row(g.second, p.at(p.Second, g.x(c)))][c] = g.use.second
		}
	}
	for i, l := range p.Beside {
		for c := range g.columns {
			if v := p.at(l.Y, g.x(c)); !p.beyond(v) {
				g.cells[g.row(g.y, v)][c] = g.use.beside[i]
			}
		}
	}
	before := g.row(g.y, p.at(p.Mid, g.x(0)))
	for c := range g.columns {
		if p.beyond(p.at(p.Mid, g.x(c))) { // it leaves the picture: cut, not drawn along its frame
			before = 0
			continue
		}
		now := g.row(g.y, p.at(p.Mid, g.x(c)))
		switch {
		case now == before:
			g.cells[now][c] = g.use.flat
		case now < before: // upward
			g.cells[before][c], g.cells[now][c] = g.use.turn[0], g.use.turn[1]
		default:
			g.cells[before][c], g.cells[now][c] = g.use.turn[2], g.use.turn[3]
		}
		for r := min(before, now) + 1; r < max(before, now); r++ {
			g.cells[r][c] = g.use.upright
		}
		before = now
	}
}

func (g *grid) print() string {
	p := g.p
	var b strings.Builder
	line := func(s string) { b.WriteString(strings.TrimRight(s, " ") + "\n") }
	if p.Title != "" {
		line(p.Title)
	}
	for _, l := range g.legend() {
		line(l)
	}
	if p.YLabel != "" || p.Second != nil && p.SecondLabel != "" {
		left, right := p.YLabel, ""
		if p.Second != nil {
			right = p.SecondLabel
		}
		gap := g.s.Width - utf8.RuneCountInString(left) - utf8.RuneCountInString(right)
		if gap < 2 {
			line(left)
			line(right)
		} else {
			line(left + strings.Repeat(" ", gap) + right)
		}
	}
	if len(p.Marks) > 0 {
		line(strings.Repeat(" ", g.margin) + g.letters())
	}
	for r, cells := range g.cells {
		side := g.use.side
		if g.labelLeft[r] != "" {
			side = g.use.sideTick
		}
		text := strings.Repeat(" ",
			g.margin-1-utf8.RuneCountInString(g.labelLeft[r])) + g.labelLeft[r] + side + strings.Join(cells, "")
		if g.labelRight[r] != "" {
			text += g.use.rightTick + " " + g.labelRight[r]
		}
		line(text)
	}
	for _, l := range g.timeLines() {
		line(l)
	}
	for i, m := range p.Marks {
		line(fmt.Sprintf("%c  %s  %s", 'a'+i, p.when(m.X), m.Text))
	}
	return b.String()
}

// letters is the line above the curve that names the marks.
func (g *grid) letters() string {
	row := []byte(strings.Repeat(" ", g.columns))
	for i, m := range g.p.Marks {
		c := g.column(m.X)
		for c < len(row)-1 && row[c] != ' ' {
			c++
		}
		row[c] = byte('a' + i)
	}
	return string(row)
}

// legend names the lines, in as many rows as they need.
func (g *grid) legend() []string {
	entries := []string{g.use.flat + g.use.flat + " " + g.p.midName()}
	add := func(stroke, text string) { entries = append(entries, stroke+stroke+" "+text) }
	if g.p.Low != nil {
		add(g.use.band, g.p.bandName())
	}
	for i, l := range g.p.Beside {
		add(g.use.beside[i], l.Name)
	}
	if g.p.Second != nil {
		add(g.use.second, or(g.p.SecondLabel, "second line"))
	}
	for _, l := range g.p.Levels {
		add(g.use.level, l.Text)
	}
	var rows []string
	for _, e := range entries {
		n := len(rows) - 1
		if n >= 0 && utf8.RuneCountInString(rows[n])+3+utf8.RuneCountInString(e) <= g.s.Width {
			rows[n] += "   " + e
		} else {
			rows = append(rows, e)
		}
	}
	return rows
}

// timeLines are the time axis, its numbers and its name.
func (g *grid) timeLines() []string {
	floor := make([]string, g.columns)
	for i := range floor {
		floor[i] = g.use.floor
	}
	numbers := []rune(strings.Repeat(" ", g.s.Width))
	at, words := g.p.timeTicks(max(2, g.columns/9))
	free := 0
	for i, v := range at {
		c := g.column(v)
		floor[c] = g.use.tick
		word := []rune(words[i])
		from := max(0, min(g.margin+c-len(word)/2, g.s.Width-len(word)))
		if from >= free {
			copy(numbers[from:], word)
			free = from + len(word) + 1
		}
	}
	out := []string{strings.Repeat(" ", g.margin-1) + g.use.corner + strings.Join(floor, ""), string(numbers)}
	if g.p.XLabel != "" {
		label := g.p.XLabel
		pad := max(0, g.margin+(g.columns-utf8.RuneCountInString(label))/2)
		out = append(out, strings.Repeat(" ", pad)+label)
	}
	return out
}

// toASCII replaces what a label may hold beyond ASCII.
func toASCII(s string) string {
	var b strings.Builder
	for _, r := range s {
		switch {
		case r < utf8.RuneSelf:
			b.WriteRune(r)
		case r == '°':
			b.WriteString("deg ")
		case r == '−' || r == '–' || r == '—':
			b.WriteByte('-')
		case r == '…':
			b.WriteString("...")
		default:
			b.WriteByte('?')
		}
	}
	return b.String()
}
