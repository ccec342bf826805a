package ferment_test

import (
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/ferment"
)

// Each remark begins exactly where it says: between two doughs that hardly differ, of which one has it, stands the
// number of its words.
func TestRemarksBeginWhereTheySay(t *testing.T) {
	held := func(celsius float64) ferment.Bulk {
		return changed(func(b *ferment.Bulk) { b.History, b.Extrapolate = ferment.Constant(quantity.Celsius(celsius)), true })
	}
	width := func(e ferment.Estimate) float64 { return e.Ready().Late.Seconds() / e.Ready().Early.Seconds() }
	late := estimate(t, good()).Ready().Late.Hours()
	for remark, c := range map[string]struct {
		with, without float64
		dough         func(x float64) ferment.Bulk
		number        func(x float64, e ferment.Estimate) float64
		want, within  float64
	}{
		"part ways":          {36, 25, held, nil, 30, 2e-3},
		"little is measured": {7, 12, held, nil, 10, 2e-3},
		"too wide to plan by": {0, 20, func(x float64) ferment.Bulk {
			b := held(x)
			b.Inoculation, b.Rise = pct(90), pct(20)
			return b
		}, func(_ float64, e ferment.Estimate) float64 { return width(e) }, 6, 2e-3},
		"few doughs hold": {250, 150, func(x float64) ferment.Bulk {
			return changed(func(b *ferment.Bulk) { b.Rise = pct(x) })
		}, nil, 200, 1e-5},
		"nothing measured stands behind": {40, 10, func(x float64) ferment.Bulk {
			return changed(func(b *ferment.Bulk) { b.Sugar = pct(x) })
		}, nil, 25, 1e-5},
		"takes 10 to 15 minutes to wake up": {6, 0.1, func(x float64) ferment.Bulk {
			return yeasted(ferment.ActiveDryYeast, x)
		}, func(_ float64, e ferment.Estimate) float64 { return e.Ready().Likely.Hours() }, 2, 1e-3},
		"the history ends after": {1, 20, func(x float64) ferment.Bulk {
			return changed(func(b *ferment.Bulk) {
				b.History = history(t, ferment.Readings{MaxGap: span(30), Points: []ferment.Knot{
					{Temperature: quantity.Celsius(23)}, {At: span(x), Temperature: quantity.Celsius(23)}}})
			})
		}, nil, late, 1e-3},
		"the late end lies beyond 30 days": {2, 8, held,
			func(_ float64, e ferment.Estimate) float64 { return e.Ready().Late.Hours() }, 720, 1},
		"above 43 °C yeast dies":                 {45, 40, held, nil, 43, 2e-3},
		"the law is for −1 °C to 43 °C":          {44, 40, held, nil, 43, 2e-3},
		"is at −1.0 °C, the law is for −1 °C to": {-2, 2, held, nil, -1, 2e-3},
	} {
		said := func(x float64) (ferment.Estimate, bool) {
			e := estimate(t, c.dough(x))
			return e, strings.Contains(fmt.Sprint(e.Notes()), remark)
		}
		with, without := c.with, c.without
		if remark == "is at −1.0 °C, the law is for −1 °C to" {
			with = -1.04
		}
		if _, ok := said(with); !ok {
			t.Errorf("%q is not said at %v", remark, with)
		}
		for range 40 {
			x := (with + without) / 2
			if _, ok := said(x); ok {
				with = x
			} else {
				without = x
			}
		}
		e, ok := said(without)
		got := without
		if c.number != nil {
			got = c.number(without, e)
		}
		if c.number == nil && remark != "the history ends after" && !strings.Contains(remark, "little") &&
			!strings.Contains(remark, "part ways") { // a mean is worked out, and may be off by its last digit
			if _, at := said(c.want); at {
				t.Errorf("%q is said at %v already", remark, c.want)
			}
		}
		if ok || !(math.Abs(got-c.want) <= c.within) {
			t.Errorf("%q begins at %v, want %v", remark, got, c.want)
		}
	}
}

// A flavor leans from 5 of 100 on, and says so on its page.
func TestWhereAFlavorLeans(t *testing.T) {
	for index, want := range map[float64]string{94.99: "flavor leans to mild: index 95", 95: "flavor leans neither",
		100: "flavor leans neither", 105: "flavor leans neither to mild nor to acid: index 105",
		105.01: "flavor leans to acid: index 105", 105.9: "flavor leans to acid: index 106"} {
		page := ferment.Flavor{Index: index}.Report().Text(report.Options{Width: 200})
		if !strings.Contains(page, want) || !strings.Contains(page, "Mild or sharp") {
			t.Errorf("index %v: %s", index, page)
		}
	}
}

// A dough is early or late from more than five minutes on.
func TestWhenADoughIsEarlyOrLate(t *testing.T) {
	e := estimate(t, good())
	said := "4h41m to 9h24m (80 %), likely 6h35m"
	for later, want := range map[time.Duration]string{-5*time.Minute - 31*time.Second: "6m earlier than expected: " + said,
		-5 * time.Minute: "as expected: " + said, 0: "as expected: " + said, 5 * time.Minute: "as expected: " + said,
		5*time.Minute + 31*time.Second: "6m later than expected: " + said,
		-3 * time.Hour:                 "3h earlier than expected: " + said,
	} {
		before := e.Ready()
		before.Likely -= later
		p := ferment.Progress{Now: e, Before: before}
		if d := cmp.Diff(want, p.String()); d != "" || p.Shift() != later {
			t.Errorf("%v: %v, %s", later, p.Shift(), d)
		}
	}
}

// A picture ends where the numbers do: at 300 % the high end stands for that or more, and the picture is cut below it;
// a rise that stays below is drawn whole. By the clock it begins when mixing ended.
func TestWhereThePictureOfARiseEnds(t *testing.T) {
	for rise, cut := range map[float64]bool{5: false, 30: false, 100: true, 300: true} {
		e := estimate(t, changed(func(b *ferment.Bulk) { b.Rise = pct(rise) }))
		chart := e.ReportFrom(time.Date(2026, 11, 28, 13, 45, 0, 0, time.UTC)).Section("rise").Blocks[0].(report.Chart)
		last := chart.High.Values[len(chart.High.Values)-1]
		if (last >= 300) != cut || (chart.Top > 0) != cut || cut && !(chart.Top > 280 && chart.Top < 300) {
			t.Errorf("a rise of %v %% goes up to %v, and the picture to %v", rise, last, chart.Top)
		}
		x := chart.X.Values
		if n := len(x); n != 97 || x[0] != 13.75 || !(math.Abs(x[n-1]-13.75-1.1*e.Ready().Late.Hours()) <= 2e-3) {
			t.Errorf("%d points from %v to %v", n, x[0], x[n-1])
		}
		for i, p := range e.RiseCurve(97) {
			if d := cmp.Diff([]float64{p.Rise.Low.Points(), p.Rise.Likely.Points(), p.Rise.High.Points(), 23},
				[]float64{chart.Low.Values[i], chart.Main.Values[i], chart.High.Values[i], chart.Second.Values[i]}); d != "" {
				t.Fatalf("point %d: %s", i, d)
			}
		}
	}
}
