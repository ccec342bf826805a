package report

import (
	"math"
	"slices"
	"strings"
	"testing"

	"example.org/maslin/dough/working"
)

func near(got, want []float64) bool {
	return slices.EqualFunc(got, want, func(a, b float64) bool { return math.Abs(a-b) < 1e-9 })
}

// A picture is drawn in the reader's units: the values, the top, the levels and the names of the axes. An ounce is
// 28.349523125 g, a foot 0.3048 m (NIST SP 811, appendix B.8); 37 °C are 98.6 °F.
func TestPicturesInTheUnitsOfTheReader(t *testing.T) {
	us, metric := working.Reader{Units: working.USCustomary}, working.Reader{}
	for _, c := range []struct {
		of           Axis
		metric, us   []float64
		unit, usUnit string
	}{
		{Degrees, []float64{-40, 0, 37, 100}, []float64{-40, 32, 98.6, 212}, "°C", "°F"},
		{Grams, []float64{0, 28.349523125, 453.59237}, []float64{0, 1, 16}, "g", "oz"},
		{MetersAbove, []float64{0, 304.8, 1609.344}, []float64{0, 1000, 5280}, "m", "ft"},
		{Percents, []float64{0, 50}, []float64{0, 50}, "%", "%"}, {Hours, []float64{1, 2}, []float64{1, 2}, "h", "h"},
		{Minutes, []float64{5, 9}, []float64{5, 9}, "min", "min"}, {Numbers, []float64{1, 3}, []float64{1, 3}, "", ""},
	} {
		last := len(c.metric) - 1
		chart := Chart{X: Series{Of: Hours, Values: []float64{0, 1, 2, 3}[:len(c.metric)]},
			Main: Series{Name: working.Say("core"), Of: c.of, Values: c.metric}, Top: c.metric[last],
			Levels: []Mark{{At: c.metric[1]}}}
		for _, to := range []struct {
			reader working.Reader
			values []float64
			unit   string
		}{{metric, c.metric, c.unit}, {us, c.us, c.usUnit}} {
			p := chart.plot(to.reader)
			label := "core"
			if to.unit != "" {
				label += ", " + to.unit
			}
			if !near(p.Mid, to.values) || !near([]float64{p.Top, p.Levels[0].Y}, []float64{to.values[last], to.values[1]}) ||
				p.YLabel != label || p.XUnit != "h" {
				t.Errorf("%v: %v, top %v, level %v, %q, %q; want %v, %q", c.of, p.Mid, p.Top, p.Levels, p.YLabel, p.XUnit,
					to.values, label)
			}
		}
		chart.Top, chart.Beside = 0, []Series{{Of: c.of, Values: c.metric}}
		chart.Main.Name = working.Message{}
		if p := chart.plot(us); p.Top != 0 || p.YLabel != c.usUnit || !near(p.Beside[0].Y, c.us) {
			t.Errorf("%v: top %v, %q, %v", c.of, p.Top, p.YLabel, p.Beside)
		}
	}
}

// Times of day are drawn from the first one on; marks go with them, and a picture of nothing is not drawn.
func TestPicturesByTheClock(t *testing.T) {
	c := Chart{X: Series{Of: ClockHours, Values: []float64{18.25, 19, 20.25}},
		Main: Series{Of: Percents, Values: []float64{0, 5, 40}}, Marks: []Mark{{At: 19.25}}}
	p := c.plot(working.Reader{})
	if !p.Clock || p.Zero != 18.25 || !near(p.X, []float64{0, 0.75, 2}) || p.Marks[0].X != 1 || p.XUnit != "" {
		t.Errorf("%+v", p)
	}
	if p := (Chart{X: Series{Of: ClockHours}}).plot(working.Reader{}); p.Clock || len(p.X) != 0 {
		t.Errorf("%+v", p)
	}
	text := Report{Headline: working.Say("a rise"), Sections: []Section{{Blocks: []Block{c}}}}
	if wide := text.Text(Options{Width: 80}); !strings.Contains(wide, "18:15") && !strings.Contains(wide, "19:00") {
		t.Errorf("no picture by the clock:\n%s", wide)
	}
	c.Main.Values = c.Main.Values[:1]
	text.Sections[0].Blocks[0] = c
	if lines := strings.Count(text.Text(Options{Width: 80}), "\n"); lines > 4 {
		t.Errorf("a picture of what cannot be drawn has %d lines", lines)
	}
}

// A level that only the upper end of the band climbs to has no range to name.
func TestLevelThatOneEndReaches(t *testing.T) {
	c := Chart{X: Series{Of: Hours, Values: []float64{0, 2, 4}}, Main: Series{Of: Percents, Values: []float64{0, 40, 80}},
		Low: Series{Of: Percents, Values: []float64{0, 20, 50}}, High: Series{Of: Percents, Values: []float64{0, 80, 120}}}
	for at, want := range map[float64]string{
		60: "wanted: 60 %, reached at 3h.", 30: "wanted: 30 %, reached at 1h30m (45m to 2h40m).", 100: "wanted: 100 %.",
	} {
		if got := c.aboutLevel(Mark{At: at, Text: working.Say("wanted")}).String(); got != want {
			t.Errorf("%v: %s, want %s", at, got, want)
		}
	}
}

// What has a meaning in HTML is written as a text, each character once.
func TestTextsStayTextsInHTML(t *testing.T) {
	got, want := escapedHTML(`<b a="1" c='2'>&lt;>`), "&lt;b a=&#34;1&#34; c=&#39;2&#39;&gt;&amp;lt;&gt;"
	if got != want {
		t.Errorf("got %s, want %s", got, want)
	}
}

// Sections stand one rank below the headline; a picture in a narrow page is at least 260 high.
func TestRanksAndHeights(t *testing.T) {
	r := Report{Headline: working.Say("head"), Sections: []Section{{Title: working.Say("section"),
		Blocks: []Block{Say(working.Say("words"))}}}}
	if page := r.HTML(Options{}); !strings.Contains(page, "<h1>head</h1>") || !strings.Contains(page, "<h2>section</h2>") {
		t.Error(page)
	}
	for picture, want := range map[int][2]float64{100: {240, 260}, 600: {600, 312}, 1000: {1000, 420}, 9000: {2000, 420}} {
		if got := (Options{Picture: picture}).pictureSize(); got.Width != want[0] || got.Height != want[1] {
			t.Errorf("%d: %v, want %v", picture, got, want)
		}
	}
	var a Axis
	if err := a.UnmarshalText([]byte("furlongs")); err == nil {
		t.Error("furlongs are an axis")
	}
	if err := a.UnmarshalText([]byte("altitude")); err != nil || a != MetersAbove {
		t.Errorf("%v, %v", a, err)
	}
}
