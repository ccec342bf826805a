package curve

import (
	"cmp"
	"encoding/hex"
	"fmt"
	"hash/fnv"
	"math"
	"slices"
	"strconv"
	"strings"

	"example.org/maslin/dough/quantity"
)

// Size is the size of a picture in CSS pixels. It also sets how large the letters are against
// the curve: draw a picture for a phone 340 wide rather than shrinking a wide one.
type Size struct{ Width, Height float64 }

// withDefaults fills in what is not given: 480 wide, and high enough for the curve.
func (s Size) withDefaults() Size {
	if s.Width == 0 {
		s.Width = 480
	}
	if s.Height == 0 {
		s.Height = max(350, 0.55*s.Width)
	}
	return s
}

const (
	letter = 14.0 // font size
	row    = 19.0 // from line to line
	bold   = 1.12 // how much wider bold letters are

	leastCurve = 130.0 // height left for the curve itself
	mostRows   = 4     // rows of words above the curve; with more, the marks get letters
)

// SVG draws the plot as one self-contained SVG element. The width may be 240 to 2000 (0 means
// 480), the height 200 to 2000 (0 means one that suits the width). A picture too low for its
// texts grows.
func (p Plot) SVG(size Size) (string, error) {
	size = size.withDefaults()
	var bad quantity.Problems
	bad.Join("", p.Check())
	bad.Float("Width", size.Width, 240, 2000, "px")
	bad.Float("Height", size.Height, 200, 2000, "px")
	if err := bad.ErrFor(nil); err != nil {
		return "", err
	}
	d := drawing{p: p.with(clean), size: size}
	d.layOut()
	d.open()
	d.heading()
	d.axes()
	d.lines()
	d.text("</svg>\n")
	return d.b.String(), nil
}

// drawing is a picture in the making.
type drawing struct {
	p    Plot
	size Size
	b    strings.Builder

	y, second                axis
	left, right, top, bottom float64 // the frame of the curve
	headline                 []string
	legend                   []legendEntry
	marks                    []placedMark
	key                      []string // what the letters of the marks mean
	legendTop, labelsTop     float64
	id                       string
}

type legendEntry struct {
	kind string // class of the sample
	text string
	x, y float64
}

type placedMark struct {
	x      float64
	text   string
	row    int
	anchor string
	at     float64 // where the text is anchored

	from, to float64 // what the text covers
}

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

func (d *drawing) px(x float64) float64 {
	first, last := d.p.X[0], d.p.X[len(d.p.X)-1]
	return d.left + (x-first)/(last-first)*(d.right-d.left)
}

func (d *drawing) py(a axis, v float64) float64 { return d.bottom - a.place(v)*(d.bottom-d.top) }

func (d *drawing) text(s string) { d.b.WriteString(s) }

func (d *drawing) printf(form string, args ...any) { fmt.Fprintf(&d.b, form, args...) }

// label writes a text element; the text is escaped.
func (d *drawing) label(x, y float64, anchor, extra, s string) {
	if anchor != "start" {
		extra = ` text-anchor="` + anchor + `"` + extra
	}
	d.printf("<text x=\"%s\" y=\"%s\"%s>%s</text>\n", c(x), c(y), extra, escape(s))
}

// c writes a coordinate.
func c(v float64) string {
	s := strconv.FormatFloat(steady(v), 'f', 1, 64)
	return strings.TrimSuffix(s, ".0")
}

// steady is a value without its last digits, which differ between processors that round a product and a sum at once
// and those that round each: a tie between two printed digits then falls the same way on both.
func steady(v float64) float64 {
	const digits = 1e7
	if !(math.Abs(v) < 1e8) {
		return v
	}
	return math.Round(v*digits) / digits
}

func escape(s string) string {
	return strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", `"`, "&quot;", "'", "&#39;").Replace(s)
}

// look is the only style sheet. svg:root is the picture when it stands alone and never one
// inside a page, so the page's own ink is not touched. Each element also has plain attributes,
// for pages that allow no styles.
const look = `<style>
svg:root{color:#1b1b1b;background:#fff}
@media(prefers-color-scheme:dark){svg:root{color:#e9e6e1;background:#191817}}
@media print{svg:root{color:#000;background:none}}
.curve-line{stroke:var(--curve-line,currentColor)}
.curve-band{fill:var(--curve-band,currentColor)}
.curve-edge{stroke:var(--curve-band,currentColor)}
.curve-second{stroke:var(--curve-second,currentColor)}
</style>
`

func (d *drawing) open() {
	p, title, about := d.p, or(d.p.Title, "Rise over time"), d.p.About
	// Two pictures on one page must not share an identifier.
	h := fnv.New64a()
	fmt.Fprintf(h, "%s\x00%s\x00%v", title, about, d.size)
	all := [][]float64{p.X, p.Mid, p.Low, p.High, p.Second}
	for _, l := range p.Beside {
		all = append(all, l.Y)
	}
	for _, series := range all {
		for _, v := range series { // to six digits, so that processors that differ in the last bit agree
			fmt.Fprintf(h, " %.6g", v)
		}
		h.Write([]byte{0})
	}
	d.id = "curve-" + hex.EncodeToString(h.Sum(nil))
	d.printf(
		"<svg xmlns=\"http://www.w3.org/2000/svg\" role=\"img\" aria-labelledby=\"%[1]s-t %[1]s-d\" width=\"%[2]s\" "+
			"height=\"%[3]s\" viewBox=\"0 0 %[2]s %[3]s\""+
			" font-family=\"system-ui, sans-serif\" font-size=\"%[4]s\" fill=\"currentColor\" stroke=\"none\" "+
			"style=\"max-width:100%%;height:auto\">\n", d.id, c(d.size.Width), c(d.size.Height), c(letter))
	d.printf("<title id=\"%s-t\">%s</title>\n<desc id=\"%s-d\">%s</desc>\n", d.id, escape(title), d.id, escape(about))
	d.text(look)
}

func (d *drawing) heading() {
	for i, line := range d.headline {
		d.label(6, 6+letter*1.15+float64(i)*(row+2), "start", ` font-size="`+c(letter*1.15)+`" font-weight="600"`, line)
	}
	for _, e := range d.legend {
		switch e.kind {
		case "band":
			d.printf(
				"<rect class=\"curve-band\" x=\"%s\" y=\"%s\" width=\"28\" height=\"12\" fill-opacity=\"0.18\"/>\n",
				c(e.x), c(e.y-6))
			for _, y := range []float64{e.y - 6, e.y + 6} {
				d.printf("<path d=\"M%s %sh28\"%s/>\n", c(e.x), c(y), stroke("edge"))
			}
		default:
			d.printf("<path d=\"M%s %sh28\"%s/>\n", c(e.x), c(e.y), stroke(e.kind))
		}
		d.label(e.x+34, e.y+letter*0.35, "start", "", e.text)
	}
	y := d.labelsTop + letter
	if d.p.YLabel != "" {
		d.label(6, y, "start", ` opacity="0.85"`, d.p.YLabel)
	}
	if d.p.Second != nil && d.p.SecondLabel != "" {
		d.label(d.size.Width-6, y, "end", ` opacity="0.85"`, d.p.SecondLabel)
	}
}

// stroke gives the attributes of each kind of line. Width and dashes tell them apart without
// color.
func stroke(kind string) string {
	const plain = ` fill="none" stroke="currentColor" class="curve-`
	switch kind {
	case "line":
		return plain + `line" stroke-width="2.5" stroke-linejoin="round"`
	case "edge":
		return plain + `edge" stroke-width="0.8" stroke-opacity="0.7"`
	case "beside0":
		return plain + `second" stroke-width="1.8" stroke-dasharray="8 4" stroke-linejoin="round"`
	case "beside1":
		return plain + `second" stroke-width="1.8" stroke-dasharray="2.5 3" stroke-linejoin="round"`
	case "beside2":
		return plain + `second" stroke-width="1.8" stroke-dasharray="12 3 2.5 3" stroke-linejoin="round"`
	case "second":
		return plain + `second" stroke-width="1.8" stroke-dasharray="8 4" stroke-linejoin="round"`
	case "level":
		return plain + `level" stroke-width="1.6" stroke-dasharray="1.6 4" stroke-linecap="round"`
	case "mark":
		return plain + `mark" stroke-width="1.1" stroke-opacity="0.8"`
	case "grid":
		return plain + `grid" stroke-width="1" stroke-opacity="0.16"`
	default:
		return plain + `axis" stroke-width="1.2"`
	}
}

func (d *drawing) axes() {
	for _, v := range d.y.ticks() {
		y := d.py(d.y, v)
		d.printf("<path d=\"M%s %sH%s\"%s/>\n", c(d.left), c(y), c(d.right), stroke("grid"))
		d.label(d.left-6, y+letter*0.35, "end", "", d.y.text(v))
	}
	if d.p.Second != nil {
		for _, v := range d.second.ticks() {
			y := d.py(d.second, v)
			d.printf("<path d=\"M%s %sh5\"%s/>\n", c(d.right), c(y), stroke("axis"))
			d.label(d.right+9, y+letter*0.35, "start", "", d.second.text(v))
		}
		d.printf("<path d=\"M%s %sV%s\"%s/>\n", c(d.right), c(d.top), c(d.bottom), stroke("axis"))
	}
	at, words := d.p.timeTicks(int(max(2, (d.right-d.left)/60)))
	for i, v := range at {
		x := d.px(v)
		d.printf("<path d=\"M%s %sv5\"%s/>\n", c(x), c(d.bottom), stroke("axis"))
		anchor := "middle"
		if w := textWidth(words[i], letter) / 2; x+w > d.size.Width-2 {
			anchor = "end"
		}
		d.label(x, d.bottom+row, anchor, "", words[i])
	}
	d.printf("<path d=\"M%s %sV%sH%s\"%s/>\n", c(d.left), c(d.top), c(d.bottom), c(d.right), stroke("axis"))
	if d.p.XLabel != "" {
		d.label((d.left+d.right)/2, d.bottom+2*row, "middle", ` opacity="0.85"`, d.p.XLabel)
	}
	for i, k := range d.key {
		d.label(6, d.size.Height-8-float64(len(d.key)-1-i)*row, "start", "", k)
	}
}

func (d *drawing) lines() {
	p := d.p
	path := func(a axis, series []float64) string {
		var b strings.Builder
		for i, v := range series {
			b.WriteString(c(d.px(p.X[i])) + " " + c(d.py(a, v)) + " ")
		}
		return strings.TrimSuffix(b.String(), " ")
	}
	cut := p.Top != 0
	if cut { // what leaves the picture is cut at its frame
		d.printf("<clipPath id=\"%s-c\"><path d=\"M%s %sH%sV%sH%sZ\"/></clipPath>\n<g clip-path=\"url(#%s-c)\">\n",
			d.id, c(d.left), c(d.top), c(d.right), c(d.bottom), c(d.left), d.id)
	}
	if p.Low != nil {
		var back strings.Builder
		for i := len(p.X) - 1; i >= 0; i-- {
			back.WriteString(" " + c(d.px(p.X[i])) + " " + c(d.py(d.y, p.Low[i])))
		}
		d.printf("<path class=\"curve-band\" d=\"M%s%sZ\" fill-opacity=\"0.18\"/>\n", path(d.y, p.High), back.String())
		d.printf("<path d=\"M%s\"%s/>\n<path d=\"M%s\"%s/>\n", path(d.y, p.High), stroke("edge"), path(d.y, p.Low),
			stroke("edge"))
	}
	for _, l := range p.Levels {
		d.printf("<path d=\"M%s %sH%s\"%s/>\n", c(d.left), c(d.py(d.y, l.Y)), c(d.right), stroke("level"))
	}
	if p.Second != nil {
		d.printf("<path d=\"M%s\"%s/>\n", path(d.second, p.Second), stroke("second"))
	}
	for i, l := range p.Beside {
		d.printf("<path d=\"M%s\"%s/>\n", path(d.y, l.Y), stroke("beside"+strconv.Itoa(i)))
	}
	d.printf("<path d=\"M%s\"%s/>\n", path(d.y, p.Mid), stroke("line"))
	if cut {
		d.text("</g>\n")
	}
	rows := 0
	for _, m := range d.marks {
		rows = max(rows, m.row+1)
	}
	for _, m := range d.marks {
		base := d.top - 8 - float64(rows-1-m.row)*row
		d.printf("<path d=\"M%s %sV%s\"%s/>\n", c(m.x), c(base+4), c(d.bottom), stroke("mark"))
		d.label(m.at, base, m.anchor, "", m.text)
	}
}
