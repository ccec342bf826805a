package curve

import (
	"encoding/xml"
	"errors"
	"io"
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// Everything that is wrong with a plot is told by its place, what it is and what it may be.
func TestWhatIsWrongIsToldByItsPlace(t *testing.T) {
	long := strings.Repeat("n", 201)
	plain := func() Plot {
		return Plot{
			X: []float64{0, 1, 2}, Mid: []float64{0, 1, 2}, Beside: []Line{{Y: []float64{3, 4, 5}}, {Y: []float64{3, 4, 5}}},
			Marks: []Mark{{X: 1}, {X: 2}}, Levels: []Level{{Y: 1}, {Y: 2}},
		}
	}
	const bytes = "out of range: got 201 bytes, want at most 200 bytes"
	for want, spoil := range map[string]func(p *Plot){
		"beside[1].name: " + bytes: func(p *Plot) {
			p.Beside[1].Name = long
		},
		"marks[1].text: " + bytes: func(p *Plot) {
			p.Marks[1].Text = long
		},
		"levels[1].text: " + bytes: func(p *Plot) {
			p.Levels[1].Text = long
		},
		"x_unit: " + bytes: func(p *Plot) {
			p.XUnit = long
		},
		"beside[1].y[2]: out of range: got 2000000000, want −1000000000 to 1000000000": func(p *Plot) {
			p.Beside[1].Y[2] = 2e9
		},
		"levels[0].y: out of range: got −2000000000, want −1000000000 to 1000000000": func(p *Plot) {
			p.Levels[0].Y = -2e9
		},
		"marks[0].x: out of range: got 2.5 h, want 0 h to 2 h": func(p *Plot) {
			p.Marks[0].X = 2.5
		},
		"x[2]: inconsistent: got 1, want more than X[1], 1": func(p *Plot) {
			p.X[2], p.Marks[1].X = 1, 1
		},
		"mid[1]: inconsistent: got 1, want from the low end, 0, to the high one, 0.5": func(p *Plot) {
			p.Low, p.High = []float64{0, 0, 0}, []float64{5, 0.5, 5}
		},
	} {
		p := plain()
		spoil(&p)
		if err := p.Check(); err == nil || err.Error() != want {
			t.Errorf("%v, want %q", err, want)
		}
	}
	empty := Plot{Marks: []Mark{{X: 1}}}
	if err := empty.Check(); err == nil || strings.Contains(err.Error(), "marks[") {
		t.Errorf("without times no mark is out of them: %v", err)
	}
	if err := plain().Check(); err != nil {
		t.Error(err)
	}
}

// Numbers are told with up to three digits that say something.
func TestNumbersAreToldShortly(t *testing.T) {
	got := map[float64]string{}
	want := map[float64]string{
		0: "0", 0.004: "0", -0.004: "0", 0.25: "0.25", 0.999: "1", 1.2: "1.2", 9.876: "9.88", 9.999: "10", 10: "10",
		10.04: "10", 10.26: "10.3", 99.96: "100", 100: "100", 100.4: "100", 1234.6: "1235", -3.5: "−3.5", -120: "−120",
		-10.75: "−10.8",
	}
	for v := range want {
		got[v] = number(v)
	}
	if d := cmp.Diff(want, got); d != "" {
		t.Error(d)
	}
}

// The axis covers lines beside the likely one and levels too, and ends at the top that is given, but never above it.
func TestWhatTheAxisCovers(t *testing.T) {
	p := Plot{X: []float64{0, 1}, Mid: []float64{0, 1}, Beside: []Line{{Y: []float64{-3, 8}}, {Y: []float64{2, 12}}}}
	for _, c := range []struct {
		top       float64
		levels    []float64
		low, high float64
	}{{0, nil, -3, 12}, {0, []float64{20, -7}, -7, 20}, {5, []float64{20}, -3, 5}, {100, nil, -3, 12}} {
		p.Top = c.top
		a := p.heightAxis(5, c.levels)
		fifth := a.step / 5
		if !(a.low <= c.low+1e-9 && a.low > c.low-fifth && a.high >= c.high-1e-9 && a.high < c.high+fifth) {
			t.Errorf("top %v, levels %v: from %v to %v, want %v to %v", c.top, c.levels, a.low, a.high, c.low, c.high)
		}
		if got := p.beyond(5); got {
			t.Errorf("top %v: 5 lies beyond it", c.top)
		}
	}
	if p.Top = 4; !p.beyond(5) || p.beyond(4) {
		t.Error("5 does not lie beyond 4, or 4 does")
	}
}

// What has a meaning in a picture's text is written so that it keeps its own.
func TestLettersWithAMeaning(t *testing.T) {
	const odd = `a<b>c&d"e'f&quot;g&lt;`
	var back struct {
		A string `xml:"a,attr"`
		T string `xml:",chardata"`
	}
	if err := xml.Unmarshal([]byte(`<x a="`+escape(odd)+`">`+escape(odd)+`</x>`), &back); err != nil || back.A != odd ||
		back.T != odd {
		t.Errorf("%q and %q, %v; want %q", back.A, back.T, err, odd)
	}
	if err := xml.Unmarshal([]byte(`<x a='`+escape(odd)+`'></x>`), &back); err != nil || back.A != odd {
		t.Errorf("%q, %v; want %q", back.A, err, odd)
	}
}

// Whatever is drawn, its elements close where they should.
func TestElementsClose(t *testing.T) {
	for _, top := range []float64{0, 3} {
		for _, second := range []string{"", "dough, °C"} {
			p := beside()
			p.Top, p.Second, p.SecondLabel = top, []float64{1, 2, 3, 4}, second
			svg, err := p.SVG(Size{Width: 500})
			if err != nil {
				t.Fatal(err)
			}
			d := xml.NewDecoder(strings.NewReader(svg))
			for err == nil {
				_, err = d.Token()
			}
			if !errors.Is(err, io.EOF) {
				t.Errorf("top %v: %v", top, err)
			}
			text, err := p.Text(Screen{Width: 60})
			if err != nil || second != "" && (!strings.Contains(svg, second) || !strings.Contains(text, second)) {
				t.Errorf("the second axis is not called %s: %v", second, err)
			}
		}
	}
	none := beside() // without a second line its name is not shown
	none.SecondLabel = "dough, °C"
	svg, err := none.SVG(Size{Width: 500})
	text, err2 := none.Text(Screen{Width: 60})
	if err != nil || err2 != nil || strings.Contains(svg, "dough") || strings.Contains(text, "dough") {
		t.Errorf("a line that is not there has a name: %v, %v", err, err2)
	}
}

// The words of marks stay in the picture and keep 8 apart from others in their row; a mark's words begin or end at its
// line wherever there is room.
func TestWordsOfMarksKeepApart(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := Plot{X: []float64{0, 10}, Mid: []float64{0, 1}}
		for range rapid.IntRange(1, 7).Draw(t, "marks") {
			words := strings.Repeat("fold ", rapid.IntRange(0, 6).Draw(t, "words"))
			p.Marks = append(p.Marks, Mark{float64(rapid.IntRange(0, 40).Draw(t, "at")) / 4, words})
		}
		d := drawing{p: p, size: Size{Width: float64(rapid.IntRange(260, 900).Draw(t, "width")), Height: 300}}
		d.layOut()
		rows := d.placeMarks(false)
		if len(d.marks) != len(p.Marks) {
			t.Fatalf("%d of %d marks are placed", len(d.marks), len(p.Marks))
		}
		used := 0
		for i, m := range d.marks {
			used = max(used, m.row+1)
			w := textWidth(m.text, letter)
			if m.from < 4-1e-9 || m.to > d.size.Width-4+1e-9 || !(math.Abs(m.to-m.from-w) <= 1e-9) {
				t.Fatalf("words from %v to %v, %v wide, in a picture of %v", m.from, m.to, w, d.size.Width)
			}
			right, left := math.Abs(m.at-(m.x-4)) < 1e-9, math.Abs(m.at-(m.x+4)) < 1e-9
			atEdge := m.from < 4+1e-9 || m.to > d.size.Width-4-1e-9
			if m.anchor == "start" && !right && !atEdge || m.anchor == "end" && !left && !atEdge {
				t.Fatalf("words at %v of a mark at %v", m.at, m.x)
			}
			for _, o := range d.marks[:i] {
				if m.row == o.row && m.from < o.to+8-1e-9 && o.from < m.to+8-1e-9 {
					t.Fatalf("%+v and %+v", m, o)
				}
			}
		}
		if used != rows {
			t.Fatalf("%d rows, told are %d", used, rows)
		}
	})
}

// Words in one row clash from less than 8 apart; a line that goes down through a row clashes with words from 3 beside
// them on.
func TestWhatGetsInTheWayOfAMark(t *testing.T) {
	words := placedMark{x: 100, from: 100, to: 150, row: 1}
	for _, c := range []struct {
		other placedMark
		want  bool
	}{
		{placedMark{x: 160, from: 157, to: 170, row: 1}, true}, {placedMark{x: 160, from: 158, to: 170, row: 1}, false},
		{placedMark{x: 90, from: 50, to: 93, row: 1}, true}, {placedMark{x: 90, from: 50, to: 92, row: 1}, false},
		// In the row above the line of the other comes down through these words.
		{placedMark{x: 98, from: 300, to: 310}, true}, {placedMark{x: 97, from: 300, to: 310}, false},
		{placedMark{x: 152, from: 300, to: 310}, true}, {placedMark{x: 153, from: 300, to: 310}, false},
		// In the row below these words' line comes down through the others'.
		{placedMark{x: 300, from: 102, to: 130, row: 2}, true}, {placedMark{x: 300, from: 103, to: 130, row: 2}, false},
		{placedMark{x: 125, from: 103, to: 130, row: 2}, false}, {placedMark{x: 60, from: 60, to: 98, row: 2}, true},
		{placedMark{x: 60, from: 60, to: 97, row: 2}, false},
	} {
		if got, back := words.clashes(c.other), c.other.clashes(words); got != c.want || back != c.want {
			t.Errorf("with %+v: %v, the other way round %v, want %v", c.other, got, back, c.want)
		}
	}
}
