package ferment_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/ferment"
	"example.org/maslin/internal/trial"
)

// leaf is one page of a kept file.
type leaf struct {
	name string
	page report.Report
}

// keep compares whole pages with those in a file: that they are right the other tests know; here stands that nothing is
// lost, and that no number and no word moves unseen.
func keep(t *testing.T, file string, leaves ...leaf) {
	t.Helper()
	var out strings.Builder
	for _, l := range leaves {
		fmt.Fprintf(&out, "== %s\n%s\n", l.name, l.page.Text(report.Options{Width: 110, WithSources: true}))
	}
	trial.Kept(t, file, out.String())
}

// brief is a page without its pictures, its cautions and its sources, where another page of the file has them.
func brief(r report.Report) report.Report {
	r.Sections = slices.DeleteFunc(slices.Clone(r.Sections), func(s report.Section) bool { return s.Key == "rise" })
	r.Cautions, r.Sources = nil, nil
	return r
}

func history(t *testing.T, of interface {
	History() (ferment.History, error)
}) ferment.History {
	t.Helper()
	h, err := of.History()
	if err != nil {
		t.Fatal(err)
	}
	return h
}

// bends is a history through temperatures at hours, one after the other.
func bends(t *testing.T, hourCelsius ...float64) ferment.History {
	t.Helper()
	var knots []ferment.Knot
	for i := 0; i < len(hourCelsius); i += 2 {
		knots = append(knots, ferment.Knot{At: span(hourCelsius[i]), Temperature: quantity.Celsius(hourCelsius[i+1])})
	}
	h, err := ferment.FromKnots(knots...)
	if err != nil {
		t.Fatal(err)
	}
	return h
}

// probed are readings of a probe every two hours.
func probed(t *testing.T, celsius ...float64) ferment.History {
	t.Helper()
	var points []ferment.Knot
	for i, c := range celsius {
		points = append(points, ferment.Knot{At: span(2 * float64(i)), Temperature: quantity.Celsius(c)})
	}
	return history(t, ferment.Readings{Points: points})
}

func changed(change func(*ferment.Bulk)) ferment.Bulk {
	b := good()
	change(&b)
	return b
}

// Doughs of a village-hall kitchen: plain and with all that can be in one, along each kind of history, by hours and by
// the clock, within the law and beyond it, ready soon, late and never.
func TestWholePagesOfDoughs(t *testing.T) {
	morning, evening := time.Date(2026, 11, 28, 7, 20, 0, 0, time.UTC), time.Date(2026, 11, 28, 21, 5, 0, 0, time.UTC)
	biga := ferment.HandedOn{Flour: pct(30), Ripened: span(14), Of: ferment.Ripening{Hydration: pct(50),
		Yeast: ferment.Yeast{Kind: ferment.InstantYeast, Amount: pct(0.1)}, History: ferment.Constant(quantity.Celsius(18))}}
	rich := changed(func(b *ferment.Bulk) {
		b.Inoculation, b.WholeGrain, b.Sugar, b.Altitude = pct(8.25), pct(45), pct(26), quantity.Meters(640)
		b.Preferments, b.OwnHeat = []ferment.HandedOn{biga, biga}, span(10)
		b.Yeast = ferment.Yeast{Kind: ferment.OsmotolerantYeast, Amount: pct(0.4)}
		b.History = history(t, ferment.Relaxing{Start: quantity.Celsius(26), TimeConstant: span(5), Room: ferment.Room{
			Night: quantity.Celsius(18), Day: quantity.Celsius(22), Starts: span(9)}})
	})
	at := func(celsius float64) func(*ferment.Bulk) {
		return func(b *ferment.Bulk) { b.History = ferment.Constant(quantity.Celsius(celsius)) }
	}
	beyond := func(h ferment.History) ferment.Bulk {
		return changed(func(b *ferment.Bulk) { b.History, b.Extrapolate = h, true })
	}
	page := func(b ferment.Bulk) report.Report { return brief(estimate(t, b).Report()) }
	keep(t, "doughs.txt",
		leaf{"plain", estimate(t, good()).Report()},
		leaf{"in the evening, by the clock", brief(estimate(t, good()).ReportFrom(evening))},
		leaf{"with yeast, by the clock", estimate(t, yeasted(ferment.FreshYeast, 1.5)).ReportFrom(morning)},
		leaf{"with all there is", estimate(t, rich).ReportFrom(morning)},
		leaf{"a tenth", page(changed(func(b *ferment.Bulk) { b.Rise = pct(10) }))},
		leaf{"less than a tenth", page(changed(func(b *ferment.Bulk) { b.Rise = pct(9.5) }))},
		leaf{"in a hot tin", page(changed(func(b *ferment.Bulk) {
			b.Rise, b.History = pct(230), history(t, ferment.Piece{Mass: quantity.Grams(900), Form: ferment.Log,
				Start: quantity.Celsius(25), Into: ferment.Room{Night: quantity.Celsius(33)}, Exposure: ferment.Fan})
		}))},
		leaf{"in the cold", page(changed(at(7)))},
		leaf{"with a probe", page(changed(func(b *ferment.Bulk) { b.History = probed(t, 26, 25, 24.25) }))},
		leaf{"with a probe until after", page(changed(func(b *ferment.Bulk) {
			b.History = probed(t, 26, 25, 24, 23, 23, 23, 23, 22, 22, 22)
		}))},
		leaf{"perhaps in °F", page(beyond(probed(t, 36, 35, 34)))},
		leaf{"late end beyond", page(changed(func(b *ferment.Bulk) { at(2.2)(b); b.Inoculation = pct(20) }))},
		leaf{"never", page(changed(func(b *ferment.Bulk) { at(0)(b); b.Inoculation = pct(2) }))},
		leaf{"too hot for the law", page(beyond(ferment.Constant(quantity.Celsius(44.5))))},
		leaf{"too cold for the law", page(beyond(ferment.Constant(quantity.Celsius(-1.5))))},
		leaf{"from one end beyond to the other", page(beyond(bends(t, 0, -3.25, 2, 30, 4, 30, 5, 45.5)))},
		leaf{"from too cold up to the end", page(beyond(bends(t, 0, -3.25, 2, 30, 4, 30, 5, 43)))},
		leaf{"no dough", ferment.Estimate{}.Report()},
	)
}
