package bake

import (
	"strconv"
	"strings"
	"time"

	"example.org/maslin/dough/quantity"
)

// fixed prints x with exactly that many decimals and a true minus sign.
func fixed(x float64, places int) string {
	s := strconv.FormatFloat(x, 'f', places, 64)
	if strings.HasPrefix(s, "-") {
		if strings.Trim(s, "-0.") == "" {
			return s[1:]
		}
		return "−" + s[1:]
	}
	return s
}

// celsius prints a temperature in °C to a tenth.
func celsius(t quantity.Temperature) string { return t.Text(quantity.CelsiusScale, 1) }

// degrees prints a float in °C to a tenth.
func degrees(c float64) string { return fixed(c, 1) + " °C" }

func minutes(m float64) time.Duration { return time.Duration(m * float64(time.Minute)) }

// wholeMinutes rounds up to the minute: nobody holds a loaf for 14m43s.
func wholeMinutes(e quantity.Elapsed) quantity.Elapsed {
	return (e + quantity.Elapsed(time.Minute) - 1) / quantity.Elapsed(time.Minute) * quantity.Elapsed(time.Minute)
}

func seconds(s float64) time.Duration { return time.Duration(s * float64(time.Second)) }
