package bake

import (
	"math"
	"strconv"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/enum"
)

// Shade is the color of a crust, from its difference to the raw surface.
type Shade int

// The shades, from light to dark. Which difference of color is which shade is a judgment: the published kinetics end at
// 52, a burnt sample, and name no shade.
const (
	Pale        Shade = iota // below 20: hardly colored
	PaleGolden               // from 20
	GoldenBrown              // from 28
	DarkBrown                // from 39
	NearlyBurnt              // from 47
)

var shades = enum.Of[Shade]("shade of a crust", "pale", "pale golden", "golden brown", "dark brown", "nearly burnt")

// String names the shade.
func (s Shade) String() string { return shades.String(s) }

// MarshalText implements encoding.TextMarshaler.
func (s Shade) MarshalText() ([]byte, error) { return shades.Marshal(s) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads the words that String prints, and no others.
func (s *Shade) UnmarshalText(text []byte) error { return shades.Unmarshal(s, text) }

// shadeFrom is where each shade begins, in units of color difference.
var shadeFrom = [...]float64{0, 20, 28, 39, 47}

func shadeOf(difference float64) Shade {
	s := Pale
	for i, from := range shadeFrom {
		if difference >= from {
			s = Shade(i)
		}
	}
	return s
}

// middle is a color difference in the middle of a shade.
func (s Shade) middle() float64 {
	if int(s)+1 < len(shadeFrom) {
		return (shadeFrom[s] + shadeFrom[s+1]) / 2
	}
	return (shadeFrom[s] + burnt) / 2
}

// The kinetics of Zanoni, Peri and Bruno (1995): dried crumb on a plate of 140 to 250 °C.
const (
	burnt      = 52.0    // the color difference of the burnt sample, to which every temperature tends
	browningK  = 42000.0 // 1/s
	browningE  = 64151.0 // J/mol
	gasJoule   = 8.314   // J/(mol K)
	zeroKelvin = 273.15
)

// browningRate is how fast a dry crust colors, in 1/s.
func browningRate(celsius float64) float64 {
	return browningK * math.Exp(-browningE/(gasJoule*(celsius+zeroKelvin)))
}

// colorAfter is the color difference after an exposure ∫k dt.
func colorAfter(exposure float64) float64 { return burnt * (1 - math.Exp(-exposure)) }

// DryCrust asks for the color of a crust whose surface temperature is known.
type DryCrust struct {
	// Surface are temperatures of the surface in order of time, from when it is dry; straight lines between them.
	Surface []Sample `json:"surface"`
	// Browning is the pace of this dough's crust over that of the plain crumb that was measured: more with sugar, milk or
	// malt. 0: 1. [OvenBake.LearnBrowning] finds it from a bake of your own.
	Browning float64 `json:"browning,omitzero"`
}

// CrustColor is how dark a crust gets.
type CrustColor struct {
	answer

	Difference float64 `json:"difference"` // CIE color difference to the raw surface
	Shade      Shade   `json:"shade"`
	exposure   float64
	in         DryCrust
}

// Color answers: how dark does this crust get?
//
// Formula: ΔE = 52·(1 − e^(−I)), I = f·∫k dt, k = 42,000·e^(−64,151/(8.314·(T + 273.15))) 1/s. Symbols: T temperature
// of the dry surface in °C; f browning of the dough. Valid range: measured from 140 to 250 °C on dried crumb; below
// 140 °C almost nothing happens. While the surface is wet, under a lid or in steam, there is no color. Accuracy:
// which difference is which shade is a judgment. Errors: [quantity.ErrRequired], [quantity.ErrOutOfRange],
// [quantity.ErrInconsistent] (times not rising). Source: Zanoni, Peri and Bruno (1995).
func (c DryCrust) Color() (CrustColor, error) {
	var p quantity.Problems
	if len(c.Surface) < 2 {
		p.Required("Surface", quantity.Tell("bake.want_at_least_two_temperatures_surface",
			"at least two temperatures of the surface"))
	}
	if len(c.Surface) > mostSamples {
		p.Int("Surface", len(c.Surface), 2, mostSamples)
		return CrustColor{}, p.ErrFor(c)
	}
	checkBrowning(&p, c.Browning)
	exposure := 0.0
	for i, s := range c.Surface {
		path := "Surface[" + strconv.Itoa(i) + "]"
		p.Duration(path+".At", s.At.Duration(), 0, 48*time.Hour)
		quantity.Check(&p, path+".Core", s.Core, quantity.Celsius(0), quantity.Celsius(300))
		if i == 0 {
			continue
		}
		before := c.Surface[i-1]
		if s.At <= before.At {
			p.Add(path+".At", s.At, quantity.Tell("bake.want_later_than_one_before", "later than the one before, %v",
				before.At), quantity.ErrInconsistent)
		}
		exposure += exposureOf((s.At - before.At).Duration().Seconds(), before.Core.Celsius(), s.Core.Celsius())
	}
	if err := p.ErrFor(c); err != nil {
		return CrustColor{}, err
	}
	exposure *= factor(c.Browning)
	difference := colorAfter(exposure)
	return CrustColor{Difference: difference, Shade: shadeOf(difference), exposure: exposure, in: c}, nil
}

func checkBrowning(p *quantity.Problems, f float64) {
	if f != 0 {
		p.Float("Browning", f, 0.01, 100, "")
	}
}

func factor(browning float64) float64 {
	if browning == 0 {
		return 1
	}
	return browning
}

// exposureOf is ∫k dt over a straight piece, by Simpson's rule on 20 parts.
func exposureOf(seconds, from, to float64) float64 {
	const parts = 20
	sum := 0.0
	for i := 0; i <= parts; i++ {
		weight := 2.0
		switch {
		case i == 0 || i == parts:
			weight = 1
		case i%2 == 1:
			weight = 4
		}
		sum += weight * browningRate(from+(to-from)*float64(i)/parts)
	}
	return sum * seconds / parts / 3
}

// String prints "golden brown (color difference 34)".
func (c CrustColor) String() string { return c.message().String() }

func (c CrustColor) message() working.Message {
	if !(c.Difference >= 0 && c.Difference <= 100) || !shades.Has(c.Shade) {
		return working.Tell("bake.no_color", "no color")
	}
	return working.Tell("bake.crust_color", "%v (color difference %.0f)", c.Shade, c.Difference)
}
