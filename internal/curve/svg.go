package curve

import (
	"encoding/hex"
	"fmt"
	"hash/fnv"
	"math"
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
