package cli

import (
	"math"
	"strconv"

	"example.org/maslin/dough/quantity"
)

// units shows quantities the way the reader wants them: metric, or pounds, ounces and °F.
type units struct{ us bool }

// mass prints a weight: grams with the decimals it has, or pounds and ounces to a tenth.
func (u units) mass(m quantity.Mass) string {
	if !u.us {
		if g := math.Abs(m.Grams()); g >= 10 && g == math.Trunc(g) {
			return m.Text(quantity.Gram, 0)
		}
		return m.Text(quantity.Gram, 1)
	}
	tenths := math.Round(m.In(quantity.Ounce) * 10)
	if math.Abs(tenths) < 10 {
		return m.Text(quantity.Ounce, 2)
	}
	pounds := math.Trunc(tenths / 160)
	ounces := strconv.FormatFloat(math.Abs(tenths-pounds*160)/10, 'f', 1, 64) + " oz"
	if pounds == 0 {
		if tenths < 0 {
			return "−" + ounces
		}
		return ounces
	}
	return strconv.FormatFloat(pounds, 'f', 0, 64) + " lb " + ounces
}

// temperature prints whole degrees or tenths.
func (u units) temperature(t quantity.Temperature, places int) string {
	if u.us {
		return t.Text(quantity.FahrenheitScale, max(0, places-1))
	}
	return t.Text(quantity.CelsiusScale, places)
}

func (u units) delta(d quantity.TemperatureDelta) string {
	scale, unit := quantity.CelsiusScale, " °C"
	if u.us {
		scale, unit = quantity.FahrenheitScale, " °F"
	}
	return strconv.FormatFloat(d.In(scale), 'f', 1, 64) + unit
}

func (u units) length(l quantity.Length) string {
	if u.us {
		return l.Text(quantity.Foot, 0)
	}
	return l.Text(quantity.Meter, 0)
}

func percent(p quantity.Percent, places int) string { return p.Text(places) }
