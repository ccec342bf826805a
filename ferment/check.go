package ferment

import (
	"strconv"
	"time"

	"example.org/maslin/dough/quantity"
)

var errOutOfRange = quantity.ErrOutOfRange

type problems struct{ quantity.Problems }

// temperature checks a plain °C.
func (p *problems) temperature(path string, celsius float64) bool {
	return p.Float(path, celsius, tableLow, tableHigh, "°C")
}

// percent is [quantity.Check] of a share, which answers at once where nothing is wrong: a log of bakes asks it often. A
// share that is none comes before every other.
func (p *problems) percent(path string, got, low, high quantity.Percent) bool {
	return got.Compare(low) >= 0 && got.Compare(high) <= 0 || quantity.Check(&p.Problems, path, got, low, high)
}

// listed checks how many items a list has: some, and at most so many.
func (p *problems) listed(path string, n, most int, want quantity.Phrase) {
	switch {
	case n == 0:
		p.Required(path, want)
	case n > most:
		p.Add(path, n, want, errOutOfRange)
	}
}

func indexed(field string, i int) string { return field + "[" + strconv.Itoa(i) + "]" }

func hours(d time.Duration) float64 { return float64(d) / float64(time.Hour) }

// span is the duration of a number of hours, rounded to the second; the limits of the package keep it far
// from overflow.
func span(h float64) time.Duration {
	return (time.Duration(h*3600*1e3) * time.Millisecond).Round(time.Second)
}

func degrees(c float64) quantity.Temperature { return quantity.Celsius(c) }

var (
	lowestTemperature  = quantity.Celsius(tableLow)
	highestTemperature = quantity.Celsius(tableHigh)
)
