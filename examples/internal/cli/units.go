package cli

import (
	"strconv"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/textpage"
)

// units shows quantities the way the reader wants them: metric, or pounds, ounces and °F.
type units struct{ us bool }

func (u units) system() working.Units {
	if u.us {
		return working.USCustomary
	}
	return working.Metric
}

// say prints a sentence of the library.
func (u units) say(m working.Message) string {
	return textpage.Printable(m.Text(working.Reader{Units: u.system()}))
}

// mass prints a weight: grams with the decimals it has, or pounds and ounces to a tenth.
func (u units) mass(m quantity.Mass) string { return u.system().Mass(m) }

// temperature prints whole degrees or tenths.
func (u units) temperature(t quantity.Temperature, places int) string {
	return u.system().Temperature(t, places)
}

func (u units) delta(d quantity.TemperatureDelta) string {
	scale, unit := quantity.CelsiusScale, " °C"
	if u.us {
		scale, unit = quantity.FahrenheitScale, " °F"
	}
	return strconv.FormatFloat(d.In(scale), 'f', 1, 64) + unit
}

func percent(p quantity.Percent, places int) string { return p.Text(places) }
