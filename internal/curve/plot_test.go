package curve_test

import (
	"encoding/xml"
	"errors"
	"flag"
	"fmt"
	"io"
	"math"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/curve"
)

var update = flag.Bool("update", false, "write the pictures in testdata anew; then look at them")

// kitchen is the bulk of a maslin dough that drifts from 25 °C toward a cool hall.
func kitchen() curve.Plot {
	p := curve.Plot{
		Title: "Bulk rise of the maslin dough, hall kitchen", About: "rise from 0.4 % at 15:30 to 100 % at 22:42 & more",
		YLabel: "rise, %", SecondLabel: "dough, °C", XLabel: "time of day, Friday", BandName: "8 times of 10",
		Clock: true, Zero: 15.5,
		Marks: []curve.Mark{
			{X: 0.5, Text: "fold"},
			{X: 1.25, Text: "fold"},
			{X: 4.4, Text: "look at the dough"},
			{X: 5.2, Text: "shape"},
		},
		Levels: []curve.Level{{Y: 60, Text: "shape at 60 %"}},
	}
	rise := func(x, half float64) float64 { return 110 / (1 + math.Exp(-(x-half)*1.1)) }
	for i := range 61 {
		x := float64(i) * 0.12
		p.X = append(p.X, x)
		p.Low, p.Mid, p.High = append(p.Low, rise(x, 6.0)), append(p.Mid, rise(x, 5.1)), append(p.High, rise(x, 4.3))
		p.Second = append(p.Second, 20.5+4.5*math.Exp(-x/2.5))
	}
	return p
}

func TestPictures(t *testing.T) {
	bare := curve.Plot{X: []float64{0, 1, 2, 4}, Mid: []float64{0, 10, 60, 100}}
	crowded := kitchen()
	crowded.Marks = nil
	for i := range 12 {
		crowded.Marks = append(crowded.Marks, curve.Mark{X: float64(i*7%12) * 0.6, Text: "look"})
	}
	for name, draw := range map[string]func() (string, error){
		"kitchen.svg":       func() (string, error) { return kitchen().SVG(curve.Size{}) },
		"phone.svg":         func() (string, error) { return kitchen().SVG(curve.Size{Width: 340}) },
		"bare.svg":          func() (string, error) { return bare.SVG(curve.Size{}) },
		"crowded.svg":       func() (string, error) { return crowded.SVG(curve.Size{Width: 340}) },
		"kitchen.txt":       func() (string, error) { return kitchen().Text(curve.Screen{}) },
		"kitchen-ascii.txt": func() (string, error) { return kitchen().Text(curve.Screen{ASCII: true}) },
		"narrow.txt":        func() (string, error) { return kitchen().Text(curve.Screen{Width: 40, Height: 8}) },
		"bare.txt":          func() (string, error) { return bare.Text(curve.Screen{Width: 50, Height: 6}) },
	} {
		got, err := draw()
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		if *update {
			if err := os.WriteFile("testdata/"+name, []byte(got), 0o600); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile("testdata/" + name)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(string(want), got); diff != "" {
			t.Errorf("%s: %s", name, diff)
		}
	}
}

// picture is what an XML reader sees of an SVG.
type picture struct {
	elements map[string]int
	texts    []string // of text elements
	title    string
	about    string
	root     map[string]string
	numbers  []float64 // every coordinate of paths and texts
}

func readSVG(svg string) (p picture, err error) {
	p = picture{elements: map[string]int{}, root: map[string]string{}}
	d := xml.NewDecoder(strings.NewReader(svg))
	var inside []string
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return p, nil
		} else if err != nil {
			return p, err
		}
		switch e := token.(type) {
		case xml.StartElement:
			p.elements[e.Name.Local]++
			inside = append(inside, e.Name.Local)
			if e.Name.Local == "text" {
				p.texts = append(p.texts, "")
			}
			for _, a := range e.Attr {
				if len(inside) == 1 {
					p.root[a.Name.Local] = a.Value
				}
				switch a.Name.Local {
				case "d", "x", "y":
					for _, f := range strings.FieldsFunc(a.Value, func(r rune) bool { return strings.ContainsRune(" MHVhvZ", r) }) {
						v, err := strconv.ParseFloat(f, 64)
						if err != nil {
							return p, err
						}
						p.numbers = append(p.numbers, v)
					}
				}
			}
		case xml.EndElement:
			inside = inside[:len(inside)-1]
		case xml.CharData:
			if len(inside) == 0 {
				continue
			}
			switch inside[len(inside)-1] {
			case "title":
				p.title += string(e)
			case "desc":
				p.about += string(e)
			case "text":
				p.texts[len(p.texts)-1] += string(e)
			}
		}
	}
}

func TestAccessible(t *testing.T) {
	svg, err := kitchen().SVG(curve.Size{})
	if err != nil {
		t.Fatal(err)
	}
	p, err := readSVG(svg)
	if err != nil {
		t.Fatal(err)
	}
	if p.root["role"] != "img" {
		t.Errorf("role %q", p.root["role"])
	}
	for _, id := range strings.Fields(p.root["aria-labelledby"]) {
		if !strings.Contains(svg, `id="`+id+`"`) {
			t.Errorf("nothing has the id %s", id)
		}
	}
	if p.title != "Bulk rise of the maslin dough, hall kitchen" {
		t.Errorf("title %q", p.title)
	}
	want := kitchen().About
	if diff := cmp.Diff(want, p.about); diff != "" {
		t.Error(diff)
	}
	// Nothing is fetched, run, or colored in a way a page cannot change.
	for _, no := range []string{"http:", "https:", "<script", "<image", "url(", "stroke=\"#", "fill=\"#"} {
		if strings.Contains(strings.Replace(svg, "http://www.w3.org/2000/svg", "", 1), no) {
			t.Errorf("the picture holds %s", no)
		}
	}
}

func TestTwoPicturesOnOnePage(t *testing.T) {
	a, _ := kitchen().SVG(curve.Size{})
	other := kitchen()
	other.Mid[3] += 0.001
	b, _ := other.SVG(curve.Size{})
	c, _ := kitchen().SVG(curve.Size{})
	first, err1 := readSVG(a)
	second, err2 := readSVG(b)
	if err1 != nil || err2 != nil || first.root["aria-labelledby"] == second.root["aria-labelledby"] {
		t.Error("two pictures share their identifiers", err1, err2)
	}
	if a != c {
		t.Error("the same plot gives another picture")
	}
}

// Heights and times must be where the axes say: the level line is at the height of its tick, and
// the likely line crosses it at the time the description gives.
func TestReadsRight(t *testing.T) {
	p := curve.Plot{
		X:      []float64{0, 2, 4},
		Mid:    []float64{0, 50, 100},
		Levels: []curve.Level{{Y: 50, Text: "half"}},
		Marks:  []curve.Mark{{X: 2, Text: "then"}},
	}
	svg, err := p.SVG(curve.Size{Width: 400, Height: 300})
	if err != nil {
		t.Fatal(err)
	}
	var level, mark, line string
	for l := range strings.SplitSeq(svg, "\n") {
		switch {
		case strings.Contains(l, "curve-level") && !strings.Contains(l, "h28"):
			level = attribute(l, "d")
		case strings.Contains(l, "curve-mark"):
			mark = attribute(l, "d")
		case strings.Contains(l, `"curve-line`) && !strings.Contains(l, "h28"):
			line = attribute(l, "d")
		}
	}
	points := strings.Fields(strings.TrimPrefix(line, "M"))
	if len(points) != 6 {
		t.Fatalf("the line is %q", line)
	}
	if _, y, _ := strings.Cut(strings.Split(level, "H")[0], " "); y != points[3] {
		t.Errorf("the level is at %s, the line passes it at %s", y, points[3])
	}
	if x, _, _ := strings.Cut(strings.TrimPrefix(mark, "M"), " "); x != points[2] {
		t.Errorf("the mark is at %s, the line at %s", x, points[2])
	}
	number := func(s string) float64 {
		v, err := strconv.ParseFloat(s, 64)
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
	if !(math.Abs(number(points[0])+number(points[4])-2*number(points[2])) <= 0.2) ||
		!(math.Abs(number(points[1])+number(points[5])-2*number(points[3])) <= 0.2) {
		t.Errorf("the middle of %v is not in the middle", points)
	}
}

func attribute(line, name string) string {
	_, rest, _ := strings.Cut(line, " "+name+`="`)
	value, _, _ := strings.Cut(rest, `"`)
	return value
}

func anyPlot(t *rapid.T) curve.Plot {
	n := rapid.IntRange(2, 40).Draw(t, "points")
	text := rapid.StringN(0, 20, 120)
	p := curve.Plot{
		Title:  text.Draw(t, "title"),
		YLabel: text.Draw(t, "y"), SecondLabel: text.Draw(t, "second label"), XLabel: text.Draw(t, "x"),
		MidName: text.Draw(t, "mid name"), BandName: text.Draw(t, "band name"), Clock: rapid.Bool().Draw(t, "clock"),
		Zero: rapid.Float64Range(0, 24).Draw(t, "zero"),
	}
	scale := math.Pow(10, float64(rapid.IntRange(-6, 6).Draw(t, "scale")))
	x := rapid.Float64Range(-100, 100).Draw(t, "first")
	band, second := rapid.Bool().Draw(t, "band"), rapid.Bool().Draw(t, "second")
	for range n {
		mid := rapid.Float64Range(-100, 100).Draw(t, "mid") * scale
		p.X, p.Mid = append(p.X, x), append(p.Mid, mid)
		if band {
			p.Low = append(p.Low, mid-scale*rapid.Float64Range(0, 50).Draw(t, "below"))
			p.High = append(p.High, mid+scale*rapid.Float64Range(0, 50).Draw(t, "above"))
		}
		if second {
			p.Second = append(p.Second, rapid.Float64Range(-40, 250).Draw(t, "second value"))
		}
		x += rapid.Float64Range(0.001, 30).Draw(t, "step")
	}
	for range rapid.IntRange(0, 12).Draw(t, "marks") {
		p.Marks = append(
			p.Marks,
			curve.Mark{
				X:    p.X[0] + rapid.Float64Range(0, 1).Draw(t, "at")*(p.X[n-1]-p.X[0]),
				Text: text.Draw(t, "mark"),
			},
		)
	}
	for range rapid.IntRange(0, 4).Draw(t, "levels") {
		p.Levels = append(p.Levels,
			curve.Level{Y: rapid.Float64Range(-200, 200).Draw(t, "level") * scale, Text: text.Draw(t, "level text")})
	}
	for i := range p.Marks {
		p.Marks[i].X = min(p.Marks[i].X, p.X[n-1])
	}
	return p
}

func TestAnyPicture(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := anyPlot(t)
		svg, err := p.SVG(curve.Size{Width: rapid.Float64Range(240, 2000).Draw(t, "width")})
		if err != nil {
			t.Fatal(err)
		}
		seen, err := readSVG(svg)
		if err != nil {
			t.Fatal(err, svg)
		}
		box := strings.Fields(seen.root["viewBox"])
		width, _ := strconv.ParseFloat(box[2], 64)
		height, _ := strconv.ParseFloat(box[3], 64)
		for _, v := range seen.numbers {
			if !(v >= -1 && v <= max(width, height)+1) {
				t.Fatalf("%v lies outside the picture\n%s", v, svg)
			}
		}
		// Texts are texts: the elements are those the writer knows.
		for name := range seen.elements {
			if !slices.Contains([]string{"svg", "title", "desc", "style", "text", "path", "rect"}, name) {
				t.Fatalf("an element %s", name)
			}
		}
		if seen.elements["svg"] != 1 || seen.elements["title"] != 1 || seen.elements["desc"] != 1 ||
			seen.elements["style"] != 1 {
			t.Fatalf("elements %v", seen.elements)
		}
	})
}

func TestAnyTerminal(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := anyPlot(t)
		s := curve.Screen{
			Width:  rapid.IntRange(40, 300).Draw(t, "width"),
			Height: rapid.IntRange(5, 60).Draw(t, "height"),
			ASCII:  rapid.Bool().Draw(t, "ascii"),
		}
		out, err := p.Text(s)
		if err != nil {
			t.Fatal(err)
		}
		longest := 0
		for _, text := range []string{p.Title, p.MidName, p.BandName, p.SecondLabel, p.YLabel, p.XLabel} {
			longest = max(longest, 4*utf8.RuneCountInString(text))
		}
		for _, m := range p.Marks {
			longest = max(longest, 4*utf8.RuneCountInString(m.Text))
		}
		for _, l := range p.Levels {
			longest = max(longest, 4*utf8.RuneCountInString(l.Text))
		}
		for line := range strings.SplitSeq(out, "\n") {
			if n := utf8.RuneCountInString(line); n > max(s.Width, longest+30) {
				t.Fatalf("%d columns on a screen of %d: %q", n, s.Width, line)
			}
		}
		for _, r := range out {
			if r != '\n' && (r < ' ' || r >= 0x7f && r < 0xa0) || s.ASCII && r >= 0x7f {
				t.Fatalf("the picture holds %U", r)
			}
		}
	})
}

func TestTextWidth(t *testing.T) {
	for _, ascii := range []bool{false, true} {
		for width := 40; width <= 120; width += 7 {
			out, err := kitchen().Text(curve.Screen{Width: width, ASCII: ascii})
			if err != nil {
				t.Fatal(err)
			}
			for line := range strings.SplitSeq(out, "\n") {
				if strings.HasPrefix(line, "Bulk") {
					continue // the title is the caller's
				}
				if n := utf8.RuneCountInString(line); n > width {
					t.Errorf("%d columns on a screen of %d: %q", n, width, line)
				}
			}
		}
	}
}

func TestHostile(t *testing.T) {
	good := func() curve.Plot { return curve.Plot{X: []float64{0, 1}, Mid: []float64{0, 1}} }
	long := strings.Repeat("x", 1<<20)
	for name, c := range map[string]struct {
		change func(*curve.Plot)
		paths  []string
	}{
		"zero":        {func(p *curve.Plot) { *p = curve.Plot{} }, []string{"X"}},
		"one point":   {func(p *curve.Plot) { p.X, p.Mid = p.X[:1], p.Mid[:1] }, []string{"X"}},
		"no line":     {func(p *curve.Plot) { p.Mid = nil }, []string{"Mid"}},
		"half a band": {func(p *curve.Plot) { p.Low = []float64{0, 0} }, []string{"High"}},
		"NaN":         {func(p *curve.Plot) { p.Mid[1] = math.NaN() }, []string{"Mid[1]"}},
		"infinite":    {func(p *curve.Plot) { p.X[1] = math.Inf(1) }, []string{"X[1]"}},
		"huge":        {func(p *curve.Plot) { p.Second = []float64{1e300, -1e300} }, []string{"Second[0]"}},
		"time stands": {func(p *curve.Plot) { p.X[1] = 0 }, []string{"X[1]"}},
		"leaves band": {func(p *curve.Plot) { p.Low, p.High = []float64{0, 2}, []float64{1, 3} }, []string{"Mid[1]"}},
		"long texts":  {func(p *curve.Plot) { p.Title, p.BandName = long, long }, []string{"Title", "BandName"}},
		"mark outside": {func(p *curve.Plot) { p.Marks = []curve.Mark{{X: 2}, {X: math.NaN(), Text: long}} },
			[]string{"Marks[0].X", "Marks[1].X", "Marks[1].Text"}},
		"many marks":    {func(p *curve.Plot) { p.Marks = make([]curve.Mark, 1000) }, []string{"Marks"}},
		"many levels":   {func(p *curve.Plot) { p.Levels = make([]curve.Level, 5) }, []string{"Levels"}},
		"level nowhere": {func(p *curve.Plot) { p.Levels = []curve.Level{{Y: math.Inf(-1)}} }, []string{"Levels[0].Y"}},
		"clock nowhere": {func(p *curve.Plot) { p.Clock, p.Zero = true, math.NaN() }, []string{"Zero"}},
		"several at once": {func(p *curve.Plot) { p.Mid, p.Title, p.Zero = nil, long, math.Inf(1) },
			[]string{"Mid", "Title", "Zero"}},
	} {
		p := good()
		c.change(&p)
		_, err := p.SVG(curve.Size{})
		_, err2 := p.Text(curve.Screen{})
		for _, e := range []error{err, err2} {
			var paths []string
			for _, in := range quantity.InputErrors(e) {
				paths = append(paths, in.GoPath)
			}
			if diff := cmp.Diff(c.paths, paths); diff != "" {
				t.Errorf("%s: %s", name, diff)
			}
		}
	}
	for _, s := range []curve.Size{{Width: math.NaN()}, {Width: 1e9}, {Height: -1}, {Width: 100}} {
		if _, err := good().SVG(s); err == nil {
			t.Errorf("size %v accepted", s)
		}
	}
	for _, s := range []curve.Screen{{Width: -1}, {Width: 1 << 30}, {Height: 1 << 30}, {Height: 1}} {
		if _, err := good().Text(s); err == nil {
			t.Errorf("screen %v accepted", s)
		}
	}
	// Numbers at the edge of what is allowed are drawn.
	for _, p := range []curve.Plot{
		{X: []float64{-1e9, 1e9}, Mid: []float64{-1e9, 1e9}},
		{X: []float64{1e9 - 1e-6, 1e9}, Mid: []float64{1e9, 1e9}, Second: []float64{-1e9, -1e9}},
		{X: []float64{0, 5e-324}, Mid: []float64{0, 5e-324}, Clock: true},
		{X: []float64{0, 1}, Mid: []float64{0, 0}, Low: []float64{0, 0}, High: []float64{0, 0}},
	} {
		svg, err := p.SVG(curve.Size{})
		if err != nil || strings.Contains(svg, "NaN") || strings.Contains(svg, "Inf") {
			t.Errorf("%v: %v\n%s", p, err, svg)
		}
		if _, err := readSVG(svg); err != nil {
			t.Error(err)
		}
		if _, err := p.Text(curve.Screen{}); err != nil {
			t.Error(err)
		}
	}
}

func TestTextsStayTexts(t *testing.T) {
	for _, text := range []string{
		"</title><script>alert(1)</script>", `" onload="x`, "a & b < c", "]]>", "bell \a escape \x1b[31m", "not UTF-8 \xff",
		"\u202ereversed", "two\nlines", "\ufffe",
	} {
		p := kitchen()
		p.Title, p.YLabel, p.SecondLabel, p.XLabel, p.MidName, p.BandName, p.Marks[0].Text, p.Levels[0].Text = text,
			text, text, text, text, text, text, text
		svg, err := p.SVG(curve.Size{Width: 1000})
		if err != nil {
			t.Fatal(err)
		}
		seen, err := readSVG(svg)
		if err != nil || seen.elements["script"] != 0 {
			t.Errorf("%q: %v, %v", text, err, seen.elements)
		}
		if !slices.Contains(seen.texts, seen.title) || strings.ContainsAny(seen.title, "\a\x1b\n\u202e\ufffe") ||
			!utf8.ValidString(svg) {
			t.Errorf("%q is shown as %q", text, seen.title)
		}
		out, err := p.Text(curve.Screen{})
		if err != nil || strings.ContainsAny(out, "\a\x1b\u202e") || !utf8.ValidString(out) {
			t.Errorf("%q in a terminal: %v\n%q", text, err, out)
		}
	}
}

func ExamplePlot_Text() {
	out, err := curve.Plot{
		Title: "Rise of the maslin dough", YLabel: "rise, %", XLabel: "hours after mixing",
		X: []float64{
			0,
			1,
			2,
			3,
			4,
			5,
			6,
		}, Low: []float64{0, 1, 3, 10, 25, 45, 60}, Mid: []float64{0, 2, 8, 22, 45, 65, 80},
		High:   []float64{0, 4, 16, 40, 65, 85, 95},
		Levels: []curve.Level{{Y: 60, Text: "shape"}},
	}.Text(curve.Screen{Width: 50, Height: 10, ASCII: true})
	fmt.Print(out, err)
	// Output:
	// Rise of the maslin dough
	// -- likely   :: range   == shape
	// rise, %
	// 100+                                             :
	//    |                                     :::::::::
	//    |                                 :::::::::.---
	//    |                             ::::::::.----':::
	//    |==========================::::::.----'::::::::
	//  50+                       ::::::.--'::::::::
	//    |                   ::::::.---'::::::
	//    |                ::::.----'::::::
	//    |         :::.-------':::::
	//   0+------------':::::
	//    ++--------------+--------------+--------------+
	//     0              2              4              6
	//                   hours after mixing
	// <nil>
}

func BenchmarkSVG(b *testing.B) {
	p := kitchen()
	for b.Loop() {
		if _, err := p.SVG(curve.Size{}); err != nil {
			b.Fatal(err)
		}
	}
}
