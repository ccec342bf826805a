package ferment

import (
	"math"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/numeric"
)

// In every cell that has a series its rate and its area are those of the form itself to eleven digits, at both ends of
// the cell too.
func TestTheSeriesOfATableHasElevenDigits(t *testing.T) {
	for _, g := range []ganzle{ganzleYeast, ganzleLacto} {
		table := newTable([]piece{{low: math.Inf(-1), form: g}})
		for i := range table.cells {
			low := tableLow + float64(i)*cellWidth
			c := &table.cells[i]
			if g.max-c.center < nearest || c.center != c.center {
				continue
			}
			for part := 0.0; part <= 1; part += 0.125 {
				d := (part - 0.5) * cellWidth
				want := g.rate(c.center + d)
				if got := c.slope(d); !(math.Abs(got/want-1) <= 1e-11) {
					t.Fatalf("in the cell from %v °C, %v from its middle: %v, the form has %v", low, d, got, want)
				}
				// from the middle of the cell, so that only the series counts
				area, err := numeric.PowerExp(g.a, g.b, g.c, g.max-c.center-max(d, 0), g.max-c.center-min(d, 0))
				if err != nil {
					t.Fatal(err)
				}
				area = math.Copysign(area, d)
				if got := c.sum(d); d != 0 && !(math.Abs(got/area-1) <= 1e-11) {
					t.Fatalf("in the cell from %v °C, up to %v from its middle: area %v, the form has %v", low, d, got, area)
				}
			}
		}
	}
}

// A table knows the area from its lowest temperature on, where a piece does not end and in the last cell too.
func TestATableOfStraightPieces(t *testing.T) {
	held := newTable([]piece{{low: math.Inf(-1), flat: true, form: ganzleYeast},
		{low: 20.25, line: true, slope: 0.25}})
	best := ganzleYeast.rate(ganzleYeast.optimum())
	for celsius, want := range map[float64]float64{-25: 0, -24.9: 0.1 * best, -24.5: 0.5 * best, 0: 25 * best,
		20.25: 45.25 * best, 24.25: 45.25*best + 2, 59.9: 45.25*best + 0.125*39.65*39.65,
		60: 45.25*best + 0.125*39.75*39.75} {
		if got := held.at(celsius); !(math.Abs(got-want) <= 1e-11) {
			t.Errorf("up to %v °C the area is %v, want %v", celsius, got, want)
		}
	}
	for celsius, want := range map[float64]float64{-40: best, -25: best, 20.2: best, 20.3: 0.0125, 59.99: 9.935,
		60: 9.9375, 70: 12.4375} {
		if got := held.rate(celsius); !(math.Abs(got-want) <= 1e-12) {
			t.Errorf("at %v °C the rate is %v, want %v", celsius, got, want)
		}
	}
}

// The date of a bake counts its days and their parts: a year has 365 of them, six hours are a quarter.
func TestDaysOfBakes(t *testing.T) {
	start := time.Date(2026, 11, 28, 9, 0, 0, 0, time.UTC)
	day := func(on time.Time) float64 { return (&LoggedBulk{On: on}).day() }
	for _, c := range []struct {
		years, days, hours int
		want               float64
	}{{0, 1, 0, 1}, {1, 0, 0, 365}, {0, 0, 6, 0.25}, {-1, 0, 0, -365}, {2, 0, 12, 731.5}} {
		later := start.AddDate(c.years, 0, c.days).Add(time.Duration(c.hours) * time.Hour)
		if got := day(later) - day(start); got != c.want {
			t.Errorf("%v to %v are %v days, want %v", start, later, got, c.want)
		}
	}
	if got := day(time.Time{}); got != 0 {
		t.Errorf("a bake without a date is of day %v", got)
	}
}

// A range whose last minute is today is told by the clock alone; one that ends at midnight, as it is shown, names days.
func TestRangesUpToMidnight(t *testing.T) {
	mixed := time.Date(2026, 11, 28, 20, 0, 0, 0, time.UTC)
	for late, want := range map[time.Duration]string{
		4*time.Hour - time.Minute:      "by the clock: 21:00 to 23:59 (80 %), likely 22:00",
		4*time.Hour - 31*time.Second:   "by the clock: 21:00 to 23:59 (80 %), likely 22:00",
		4*time.Hour - 29*time.Second:   "by the clock: Sat 21:00 to Sun 00:00 (80 %), likely Sat 22:00",
		4 * time.Hour:                  "by the clock: Sat 21:00 to Sun 00:00 (80 %), likely Sat 22:00",
		4*time.Hour + 30*time.Minute:   "by the clock: Sat 21:00 to Sun 00:30 (80 %), likely Sat 22:00",
		7*24*time.Hour - 2*time.Minute: "by the clock: Sat 21:00 to Sat 19:58 (80 %), likely Sat 22:00",
	} {
		got := byClock(quantity.TimeRange{Early: time.Hour, Likely: 2 * time.Hour, Late: late,
			Probability: probabilityClaimed}, mixed).String()
		if got != want {
			t.Errorf("up to %v after %v: %q, want %q", late, mixed, got, want)
		}
	}
}
