package curve

import (
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// Times of day go around the clock, to the nearest minute, and can be told in other words.
func TestTimesOfDayGoAroundTheClock(t *testing.T) {
	got, want := map[float64]string{}, map[float64]string{
		0: "00:00", 18.25: "18:15", 24: "00:00", 25.5: "01:30", -0.5: "23:30", -24: "00:00", 23.995: "00:00", 7.991: "07:59",
		7.993: "08:00", 49: "01:00",
	}
	for hours := range want {
		got[hours] = Plot{}.clock(hours)
	}
	if d := cmp.Diff(want, got); d != "" {
		t.Error(d)
	}
	minutes := -1
	p := Plot{ClockText: func(m int) string { minutes = m; return "half past one" }}
	if p.clock(-22.5) != "half past one" || minutes != 90 {
		t.Errorf("%d minutes after midnight", minutes)
	}
}

// Ticks of a time axis are written with the decimal sign of the plot, and stand at their times.
func TestTicksOfTimesHaveTheirDecimalSign(t *testing.T) {
	at, text := Plot{X: []float64{0, 2}, Decimal: ","}.timeTicks(5)
	if d := cmp.Diff([]float64{0, 0.5, 1, 1.5, 2}, at); d != "" {
		t.Error(d)
	}
	if d := cmp.Diff([]string{"0,0", "0,5", "1,0", "1,5", "2,0"}, text); d != "" {
		t.Error(d)
	}
	at, text = Plot{X: []float64{0, 4}, Clock: true, Zero: 22.5}.timeTicks(4)
	if d := cmp.Diff([]float64{0.5, 1.5, 2.5, 3.5}, at); d != "" {
		t.Error(d)
	}
	if d := cmp.Diff([]string{"23:00", "00:00", "01:00", "02:00"}, text); d != "" {
		t.Error(d)
	}
}

// A plot is drawn without what would spoil its text, in each of its words, and is itself left as it was.
func TestAPlotIsLeftAsItWas(t *testing.T) {
	of := func(s string) Plot {
		return Plot{
			Title: s + "1", About: s + "2", X: []float64{0, 5, 10}, Mid: []float64{0, 4, 9}, Low: []float64{0, 3, 8},
			High: []float64{0, 5, 10}, Second: []float64{20, 21, 22}, YLabel: s + "3", SecondLabel: s + "4", XLabel: s + "5",
			MidName: s + "6", BandName: s + "7", Beside: []Line{{s + "8", []float64{1, 2, 3}}},
			Marks: []Mark{{7, s + "9"}, {2, s + "10"}}, Levels: []Level{{6, s + "11"}},
		}
	}
	clear := func(p Plot) (svg, text string) {
		svg, err := p.SVG(Size{Width: 900, Height: 500})
		text, err2 := p.Text(Screen{Width: 100, Height: 20})
		if err != nil || err2 != nil {
			t.Fatal(err, err2)
		}
		return svg, text
	}
	for spoiled, want := range map[string]string{
		"a\u202eb": "a\ufffdb", "a\nb": "a b", "a\tb": "a b", "a\rb": "a b", "a\x00b": "a\ufffdb", "a\ufffeb": "a\ufffdb",
		"a\uffffb": "a\ufffdb", "a\xffb": "a\ufffdb",
	} {
		p := of(spoiled)
		svg, text := clear(p)
		if d := cmp.Diff(of(spoiled), p); d != "" {
			t.Errorf("%q: drawing changed the plot: %s", spoiled, d)
		}
		_, wantText := clear(of(want))
		if text != wantText {
			t.Errorf("%q: %s", spoiled, cmp.Diff(wantText, text))
		}
		for i := 1; i <= 11; i++ {
			if n := strconv.Itoa(i); !strings.Contains(svg, want+n) {
				t.Errorf("%q: word %s is not in the picture", spoiled, n)
			}
		}
	}
}

// Every line of a plot is drawn: two pictures differ where one line does.
func TestEveryLineIsDrawn(t *testing.T) {
	of := func() Plot {
		p := beside()
		p.Top, p.Mid = 0, []float64{0, 1, 2, 2.5}
		p.Low, p.High, p.Second = []float64{-1, 0, 1, 1}, []float64{1, 2, 2.8, 2.8}, []float64{20, 22, 24, 20}
		p.Levels = []Level{{1.7, "target"}}
		return p
	}
	draw := func(p Plot) (svg, text string) {
		svg, err := p.SVG(Size{Width: 600})
		text, err2 := p.Text(Screen{Width: 80, Height: 20})
		if err != nil || err2 != nil {
			t.Fatal(err, err2)
		}
		return svg[strings.Index(svg, "</style>"):], text
	}
	wholeSVG, wholeText := draw(of())
	for name, change := range map[string]func(p *Plot){
		"likely": func(p *Plot) { p.Mid[2] = 1.1 }, "low": func(p *Plot) { p.Low[1] = -0.8 },
		"high": func(p *Plot) { p.High[1] = 1.1 }, "second": func(p *Plot) { p.Second[1] = 20.2 },
		"beside": func(p *Plot) { p.Beside[0].Y[1] = 2.8 }, "level": func(p *Plot) { p.Levels[0].Y = 0.6 },
		"mark": func(p *Plot) { p.Marks[0].X = 15 },
	} {
		p := of()
		change(&p)
		svg, text := draw(p)
		if strings.Count(svg, "<path") != strings.Count(wholeSVG, "<path") || svg == wholeSVG {
			t.Errorf("%s: the picture is the same", name)
		}
		if text == wholeText && name != "low" && name != "high" {
			t.Errorf("%s: the text is the same", name)
		}
	}
	one, _ := draw(Plot{X: []float64{0, 1}, Mid: []float64{0, 1}})
	two, _ := draw(Plot{X: []float64{0, 1}, Mid: []float64{0, 1}, Beside: []Line{{"b", []float64{1, 0}}}})
	if strings.Count(two, "<path") != strings.Count(one, "<path")+2 { // the line and its sample in the legend
		t.Errorf("%d lines with one beside, %d without", strings.Count(two, "<path"), strings.Count(one, "<path"))
	}
}
