package ferment_test

import (
	"math"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/ferment"
)

// A room comes back to the same temperature after a day, is warmest at its hour and coldest twelve hours from it, and
// is between them in the mean.
func TestARoomRepeatsItsDay(t *testing.T) {
	for _, room := range []ferment.Room{
		{Night: quantity.Celsius(17), Day: quantity.Celsius(23)},
		{Night: quantity.Celsius(17), Day: quantity.Celsius(23), WarmestAt: quantity.Elapsed(13 * time.Hour),
			Starts: quantity.Elapsed(20 * time.Hour)},
	} {
		at := func(h float64) float64 {
			c, err := room.At(time.Duration(h * float64(time.Hour)))
			if err != nil {
				t.Fatal(err)
			}
			return c.Celsius()
		}
		warmest := 15.0
		if room.WarmestAt > 0 {
			warmest = room.WarmestAt.Duration().Hours()
		}
		first := math.Mod(warmest-room.Starts.Duration().Hours()+24, 24) // hours from the start
		if !(math.Abs(at(first)-23) <= 1e-3 && math.Abs(at(first+12)-17) <= 1e-3) {
			t.Errorf("%+v: warmest %v, coldest %v", room, at(first), at(first+12))
		}
		for _, h := range []float64{0, 2.5, 7, 19} {
			if !(math.Abs(at(h)-at(h+24)) <= 1e-3 && math.Abs(at(h)+at(h+12)-40) <= 2e-3) {
				t.Errorf("%+v: %v after %v h, %v half a day later, %v a day later", room, at(h), h, at(h+12), at(h+24))
			}
		}
	}
}

// Parts of a feeding are taken from a thousandth to ten thousand; as much seed as flour at 100 % is a third of it.
func TestPartsOfAFeeding(t *testing.T) {
	whole := quantity.NewPercent(100)
	if s, err := (ferment.FeedRatio{Seed: 1, Flour: 1, SeedHydration: whole}).SeedShare(); err != nil ||
		!(math.Abs(s.Points()-100.0/3) <= 1e-5) {
		t.Errorf("%v, %v", s, err)
	}
	for parts, ok := range map[float64]bool{0.001: true, 0.000999: false, 0.0010001: true, 10_000: true, 10_000.1: false} {
		for _, f := range []ferment.FeedRatio{{Seed: parts, Flour: 1, SeedHydration: whole},
			{Seed: 1, Flour: parts, SeedHydration: whole}} {
			if _, err := f.SeedShare(); (err == nil) != ok {
				t.Errorf("%+v: %v", f, err)
			}
		}
	}
}

// A law whose curves are another's says so in its name, and its own does not.
func TestARivalLawSaysSo(t *testing.T) {
	own := ferment.GasBalance()
	rival := own.With(ferment.Rivals{Gas: ferment.GanzleYeast()})
	if a, b := own.About().Name, rival.About().Name; strings.Contains(a, "rival") || b != a+" with rival curves" {
		t.Errorf("%q and %q", a, b)
	}
}

// A probe may read what a freezer and a hot proofer have, to the degree, and nothing beyond.
func TestReadingsAtTheirLimits(t *testing.T) {
	for celsius, ok := range map[float64]bool{-25: true, -25.1: false, 60: true, 60.1: false} {
		_, err := ferment.Readings{Points: []ferment.Knot{{Temperature: quantity.Celsius(celsius)}}}.History()
		if (err == nil) != ok {
			t.Errorf("%v °C: %v", celsius, err)
		}
	}
}
