package ferment_test

import (
	"errors"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/ferment"
)

// What no dough is, or no law is for, is refused at its field.
func TestDoughsThatAreNone(t *testing.T) {
	yeast := func(b *ferment.Bulk, percent float64) {
		b.Inoculation = quantity.Percent{}
		b.Yeast = ferment.Yeast{Kind: ferment.InstantYeast, Amount: pct(percent)}
	}
	at := func(c float64) func(*ferment.Bulk) {
		return func(b *ferment.Bulk) { b.History = ferment.Constant(quantity.Celsius(c)) }
	}
	for name, c := range map[string]struct {
		change func(*ferment.Bulk)
		err    error
		path   string
	}{
		"sugar of 60 %": {func(b *ferment.Bulk) { b.Sugar = pct(60) }, quantity.ErrModelRange, "Sugar"},
		"50 % yeast":    {func(b *ferment.Bulk) { yeast(b, 50) }, quantity.ErrOutOfRange, "Yeast.Amount"},
		"−10 °C":        {at(-10), quantity.ErrModelRange, "History"},
		"45 °C":         {at(45), quantity.ErrModelRange, "History"},
		"no air": {func(b *ferment.Bulk) { b.Altitude = quantity.Meters(40_000) }, quantity.ErrOutOfRange,
			"Altitude"},
		"no water":             {func(b *ferment.Bulk) { b.Hydration = pct(5) }, quantity.ErrOutOfRange, "Hydration"},
		"a rise beyond any":    {func(b *ferment.Bulk) { b.Rise = pct(500) }, quantity.ErrOutOfRange, "Rise"},
		"salt of the sea":      {func(b *ferment.Bulk) { b.Salt = pct(40) }, quantity.ErrOutOfRange, "Salt"},
		"negative whole grain": {func(b *ferment.Bulk) { b.WholeGrain = pct(-1) }, quantity.ErrOutOfRange, "WholeGrain"},
	} {
		b := good()
		c.change(&b)
		_, err := b.Estimate()
		if !errors.Is(err, c.err) {
			t.Errorf("%s: %v", name, err)
			continue
		}
		refuses(t, err, c.err, c.path)
	}
}

// A probe in °F tells the same time as one in °C, a history of a second is as good as a constant, and one of a month
// ends.
func TestHistoriesOfASecondAndOfAMonth(t *testing.T) {
	readings := func(unit func(float64) quantity.Temperature, temps []float64, every time.Duration) ferment.History {
		var knots []ferment.Knot
		for i, c := range temps {
			knots = append(knots, ferment.Knot{At: quantity.Elapsed(time.Duration(i) * every), Temperature: unit(c)})
		}
		h, err := ferment.Readings{Points: knots}.History()
		if err != nil {
			t.Fatal(err)
		}
		return h
	}
	ready := func(h ferment.History) quantity.TimeRange {
		b := good()
		b.History = h
		return estimate(t, b).Ready()
	}
	c, f := []float64{24, 23, 22.5, 22}, []float64{75.2, 73.4, 72.5, 71.6}
	if a, b := ready(readings(quantity.Celsius, c, time.Hour)), ready(readings(quantity.Fahrenheit, f,
		time.Hour)); a != b {
		t.Errorf("in °C %v, in °F %v", a, b)
	}
	second := ready(readings(quantity.Celsius, []float64{24, 24}, time.Second))
	if constant := ready(ferment.Constant(quantity.Celsius(24))); second != constant {
		t.Errorf("a second %v, constant %v", second, constant)
	}
	month := make([]float64, 30*24)
	for i := range month {
		month[i] = 2 + float64(i%2)*0.5
	}
	b := good()
	b.History = readings(quantity.Celsius, month, time.Hour)
	e := estimate(t, b)
	if r := e.Ready(); r.Late > ferment.Horizon || r.Early > r.Likely || r.Likely > r.Late {
		t.Errorf("a month in the cold %v", r)
	}
}

// Dry yeast wakes up before it works: short doughs raised by it alone say so, others do not.
func TestDryYeastWakes(t *testing.T) {
	wakes := func(y ferment.Yeast, levain quantity.Percent, rise float64) bool {
		e, err := ferment.Bulk{
			Yeast: y, Inoculation: levain, Hydration: quantity.NewPercent(65), Salt: quantity.NewPercent(2),
			Rise: quantity.NewPercent(rise), History: ferment.Constant(quantity.Celsius(25)), Law: ferment.GasBalance(),
		}.Estimate()
		if err != nil {
			t.Fatal(err)
		}
		for _, n := range e.Notes() {
			if n.ID() == "ferment.waking" {
				return true
			}
		}
		return false
	}
	one := func(k ferment.YeastKind, percent float64) ferment.Yeast {
		return ferment.Yeast{Kind: k, Amount: quantity.NewPercent(percent)}
	}
	for _, k := range []ferment.YeastKind{ferment.InstantYeast, ferment.ActiveDryYeast, ferment.OsmotolerantYeast} {
		if !wakes(one(k, 1), quantity.Percent{}, 100) {
			t.Errorf("1 %% %v: nothing said of its waking up", k)
		}
	}
	switch {
	case wakes(one(ferment.FreshYeast, 3), quantity.Percent{}, 100):
		t.Error("fresh yeast is awake")
	case wakes(one(ferment.InstantYeast, 0.1), quantity.Percent{}, 100):
		t.Error("a dough of six hours: a quarter of an hour does not count")
	case wakes(one(ferment.InstantYeast, 1), quantity.NewPercent(5), 100):
		t.Error("with levain the dough has not to wait")
	}
}
