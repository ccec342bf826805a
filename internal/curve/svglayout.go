package curve

import (
	"cmp"
	"slices"
	"strconv"
	"strings"
)

// textWidth estimates how wide a text is; letters differ, so it errs to the wide side.
func textWidth(s string, size float64) float64 {
	w := 0.0
	for _, r := range s {
		switch {
		case r >= 0x1100:
			w += 1.05
		case strings.ContainsRune(" .,:;!'ijl|()", r):
			w += 0.4
		case r >= 'A' && r <= 'Z' || r == 'm' || r == 'w' || r == '%':
			w += 0.8
		case r >= '0' && r <= '9':
			w += 0.65
		default:
			w += 0.62
		}
	}
	return w * size
}

// wrap breaks a text into lines no wider than room, at spaces where there are any.
func wrap(s string, room, size float64) []string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(s) {
		for textWidth(word, size) > room && len([]rune(word)) > 1 { // one word wider than the picture
			cut := []rune(word)
			n := 1
			for n < len(cut) && textWidth(string(cut[:n+1]), size) <= room {
				n++
			}
			if line != "" {
				lines, line = append(lines, line), ""
			}
			lines, word = append(lines, string(cut[:n])), string(cut[n:])
		}
		switch {
		case line == "":
			line = word
		case textWidth(line+" "+word, size) <= room:
			line += " " + word
		default:
			lines, line = append(lines, line), word
		}
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}

// layOut decides where everything goes, from the top down; what is left is for the curve.
func (d *drawing) layOut() {
	p := d.p
	levels := make([]float64, len(p.Levels))
	for i, l := range p.Levels {
		levels[i] = l.Y
	}
	d.y = p.heightAxis(5, levels)
	d.y.decimal = p.Decimal
	widest := func(a axis) float64 {
		w := 0.0
		for _, v := range a.ticks() {
			w = max(w, textWidth(a.text(v), letter))
		}
		return w
	}
	d.left = widest(d.y) + 12
	d.right = d.size.Width - 10
	if p.Second != nil {
		d.second = valueAxis(5, 2, p.Second)
		d.second.decimal = p.Decimal
		d.right = d.size.Width - widest(d.second) - 14
	}

	y := 6.0
	d.headline = wrap(p.Title, d.size.Width-12, letter*1.15*bold)
	y += float64(len(d.headline)) * (row + 2)
	d.legendTop = y
	y = d.placeLegend(y)
	d.labelsTop = y
	if p.YLabel != "" || p.SecondLabel != "" {
		y += row
	}
	rows := d.placeMarks(false)
	if rows > mostRows {
		rows = d.placeMarks(true)
	}
	y += float64(rows) * row
	d.top = y + 8
	d.bottom = d.size.Height - row - 6
	if p.XLabel != "" {
		d.bottom -= row
	}
	d.bottom -= float64(len(d.key)) * row
	// A picture too low for its texts grows rather than losing the curve.
	if d.bottom-d.top < leastCurve {
		grow := leastCurve - (d.bottom - d.top)
		d.size.Height += grow
		d.bottom += grow
	}
}

func (d *drawing) placeLegend(y float64) float64 {
	p := d.p
	add := func(kind, text string) { d.legend = append(d.legend, legendEntry{kind: kind, text: text}) }
	add("line", p.midName())
	if p.Low != nil {
		add("band", p.bandName())
	}
	for i, l := range p.Beside {
		add("beside"+strconv.Itoa(i), l.Name)
	}
	if p.Second != nil {
		add("second", or(p.SecondLabel, "second line"))
	}
	for _, l := range p.Levels {
		add("level", l.Text)
	}
	const sample, gap = 28.0, 14.0
	x := 6.0
	for i := range d.legend {
		e := &d.legend[i]
		room := d.size.Width - sample - 18
		if textWidth(e.text, letter) > room {
			e.text = shorten(e.text, room)
		}
		w := sample + 6 + textWidth(e.text, letter)
		if x > 6 && x+w > d.size.Width-6 {
			x, y = 6, y+row
		}
		e.x, e.y = x, y+row/2
		x += w + gap
	}
	return y + row + 2
}

// shorten cuts a text to what fits, with an ellipsis.
func shorten(s string, room float64) string {
	runes := []rune(s)
	for len(runes) > 0 && textWidth(string(runes)+"…", letter) > room {
		runes = runes[:len(runes)-1]
	}
	return strings.TrimRight(string(runes), " ") + "…"
}

// placeMarks puts the words of the marks above the frame, in as many rows as they need so that
// no words cover others or are crossed by the line of another mark, and returns how many rows
// that is. Where that cannot be had the words get a row of their own. With letters, each mark
// has a letter above the frame and its words in a key below.
func (d *drawing) placeMarks(letters bool) int {
	d.marks, d.key = nil, nil
	marks := slices.Clone(d.p.Marks)
	slices.SortStableFunc(marks, func(a, b Mark) int { return cmp.Compare(a.X, b.X) })
	rows := 0
	for i, m := range marks {
		text := strings.TrimSpace(d.p.when(m.X) + " " + m.Text)
		if letters {
			text = string(rune('a'+i)) + "  " + text
		}
		if room := d.size.Width - 12; textWidth(text, letter) > room {
			text = shorten(text, room)
		}
		if letters {
			d.key = append(d.key, text)
			text = text[:1]
		}
		x, w := d.px(m.X), textWidth(text, letter)
		right := placedMark{x: x, text: text, anchor: "start", at: max(4, min(x-4, d.size.Width-4-w))}
		right.from, right.to = right.at, right.at+w
		left := placedMark{x: x, text: text, anchor: "end", at: min(d.size.Width-4, max(x+4, 4+w))}
		left.from, left.to = left.at-w, left.at
		placed := false
	search:
		for r := 0; r <= rows; r++ {
			for _, try := range []placedMark{right, left} {
				try.row = r
				if !slices.ContainsFunc(d.marks, try.clashes) {
					d.marks, rows, placed = append(d.marks, try), max(rows, r+1), true
					break search
				}
			}
		}
		if !placed {
			right.row = rows
			d.marks, rows = append(d.marks, right), rows+1
		}
	}
	return rows
}

// clashes reports whether two marks' words, or the words of one and the line of the other, get
// in each other's way. Lines go down from their words through the rows below.
func (m placedMark) clashes(other placedMark) bool {
	const gap = 8
	crosses := func(line, words placedMark) bool { return line.x > words.from-3 && line.x < words.to+3 }
	switch {
	case m.row == other.row:
		return m.from < other.to+gap && other.from < m.to+gap
	case m.row < other.row:
		return crosses(m, other)
	default:
		return crosses(other, m)
	}
}
