package curve

import (
	"fmt"
	"math"
	"strings"
	"testing"
)

// The steps of a time axis are those of a clock: minutes, quarters, halves, hours; with as many ticks as have room.
func TestStepsOfATimeAxis(t *testing.T) {
	for _, c := range []struct {
		hours float64
		n     int
		step  float64 // hours
	}{
		{0.09, 6, 1.0 / 60}, {0.5, 6, 1.0 / 12}, {1.5, 6, 0.25}, {3, 6, 0.5}, {3.1, 6, 1}, {12, 6, 2}, {18, 6, 3},
		{24, 6, 4}, {36, 6, 6}, {72, 6, 12}, {144, 6, 24}, {288, 6, 48}, {576, 6, 96}, {600, 6, 100},
	} {
		a := timeAxis(2, 2+c.hours, c.n)
		if a.step != c.step || a.low != 2 || !(math.Abs(a.high-2-c.hours) <= 1e-12) {
			t.Errorf("%v h: %+v, want a step of %v h", c.hours, a, c.step)
		}
	}
}

// Who tells the time in words of his own has them on the axis and beside the marks.
func TestTimesInOtherWords(t *testing.T) {
	p := Plot{X: []float64{0, 3}, Mid: []float64{0, 1}, Clock: true, Zero: 23.5, Marks: []Mark{{X: 1, Text: "fold"}},
		ClockText: func(minutes int) string { return fmt.Sprintf("%d_past_midnight", minutes) }}
	text, err := p.Text(Screen{Width: 100})
	if err != nil || !strings.Contains(text, "a  30_past_midnight  fold") {
		t.Errorf("%v\n%s", err, text)
	}
	for width := 40; width <= 160; width++ { // numbers on the axis never run into each other
		text, err := p.Text(Screen{Width: width})
		if err != nil {
			t.Fatal(err)
		}
		rows := strings.Split(text, "\n")
		for i, row := range rows {
			if !strings.Contains(row, "└") {
				continue
			}
			words := strings.Fields(rows[i+1])
			for _, w := range words {
				var minutes int
				if n, err := fmt.Sscanf(w, "%d_past_midnight", &minutes); n != 1 || err != nil || minutes%15 != 0 ||
					w != p.ClockText(minutes) {
					t.Fatalf("%q below an axis of %d columns", w, width)
				}
			}
			if len(words) < 2 {
				t.Errorf("%d columns: %q", width, words)
			}
		}
	}
}

// One mark has its letter above the picture, at its column: the middle of the times is that of the frame, wherever
// the times begin.
func TestOneMarkHasItsLetter(t *testing.T) {
	for _, first := range []float64{0, 5, -30} {
		p := Plot{X: []float64{first, first + 10}, Mid: []float64{0, 1}, Marks: []Mark{{X: first + 5, Text: "fold"}}}
		text, err := p.Text(Screen{Width: 60})
		if err != nil {
			t.Fatal(err)
		}
		letter, mark, side := -1, -1, -1
		for _, row := range strings.Split(text, "\n") {
			if strings.TrimSpace(row) == "a" {
				letter = len([]rune(row)) - 1
			}
			for i, r := range []rune(row) {
				switch r {
				case '┆':
					mark = i
				case '│':
					side = i
				}
			}
		}
		if letter < 0 || letter != mark || max(2*mark-side-60, side+60-2*mark) > 1 {
			t.Errorf("the letter is in column %d, its line in %d, the frame from %d on:\n%s", letter, mark, side, text)
		}
	}
}

// Words of a mark that are wider than the picture are cut, with an ellipsis; those that just fit are not.
func TestLongWordsOfAMark(t *testing.T) {
	for n, cut := range map[int]bool{60: false, 199: true} {
		words := strings.Repeat("n", n)
		p := Plot{X: []float64{0, 10}, Mid: []float64{0, 1}, Marks: []Mark{{X: 5, Text: words}}}
		svg, err := p.SVG(Size{Width: 600, Height: 300})
		if err != nil {
			t.Fatal(err)
		}
		d := drawing{p: p, size: Size{Width: 600, Height: 300}}
		d.placeMarks(false)
		shown := d.marks[0].text
		if strings.HasSuffix(shown, "…") != cut || !strings.Contains(svg, ">"+shown+"<") ||
			textWidth(shown, letter) > 600-12 {
			t.Errorf("%d letters are shown as %q", n, shown)
		}
	}
}

// Ticks are written with the decimals of their step, and with the sign of the reader's language.
func TestTicksAreWritten(t *testing.T) {
	for _, c := range []struct {
		step, v       float64
		decimal, want string
	}{{1, 3, "", "3"}, {100, 300, ",", "300"}, {0.5, 1.5, "", "1.5"}, {0.25, -0.75, ",", "−0,75"}, {0.2, 1, ",", "1,0"},
		{2.5, 7.5, "", "7.5"}} {
		if got := (axis{step: c.step, decimal: c.decimal}).text(c.v); got != c.want {
			t.Errorf("%v in steps of %v: %q, want %q", c.v, c.step, got, c.want)
		}
	}
}

// As much as a plot may hold is drawn, and one more is refused.
func TestMostOfAPlot(t *testing.T) {
	for more, ok := range map[int]bool{0: true, 1: false} {
		p := Plot{X: make([]float64, 5000+more), Mid: make([]float64, 5000+more)}
		for i := range p.X {
			p.X[i] = float64(i)
		}
		words := Plot{X: []float64{0, 1}, Mid: []float64{0, 1}, Title: strings.Repeat("t", 200+more)}
		if (p.Check() == nil) != ok || (words.Check() == nil) != ok {
			t.Errorf("%d more: %v, %v", more, p.Check(), words.Check())
		}
	}
}

// A picture of a width alone is 0.55 times as high, and 350 at least; words of the legend keep to its width.
func TestSizesOfAPicture(t *testing.T) {
	for width, height := range map[float64]float64{0: 350, 480: 350, 1000: 550} {
		if got := (Size{Width: width}).withDefaults(); got.Height != height {
			t.Errorf("%v wide: %v", width, got)
		}
	}
	p := Plot{X: []float64{0, 10}, Mid: []float64{0, 1}, Levels: []Level{{Y: 0.5, Text: strings.Repeat("n", 199)}}}
	d := drawing{p: p, size: Size{Width: 480, Height: 350}}
	d.placeLegend(0)
	for _, e := range d.legend {
		if e.x+28+6+textWidth(e.text, letter) > 480 {
			t.Errorf("%q begins at %v", e.text, e.x)
		}
	}
}
