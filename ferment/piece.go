package ferment

import (
	"math"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/heat"
)

// Dough as a material: density of a fermenting dough that has begun to rise, heat capacity and conductivity at about 65
// to 70 % hydration, by the mixture rules of Choi and Okos (1986). Its diffusivity, 1.3e-7 m²/s, hardly changes with
// gas, because density falls together with conductivity.
var doughMaterial = heat.Material{Conductivity: 0.41, Density: 1100, HeatCapacity: 2800}

// Piece is a piece of dough of a given mass and form put into other surroundings, colder or warmer: a
// refrigerator, a proofing box, a room.
//
// The temperature inside is the exact series of transient conduction with a convecting surface, for a sphere, a long
// cylinder, a slab or a short cylinder; heat made by the ferment itself is ignored, which makes a real dough cool a
// little more slowly.
type Piece struct {
	Mass     quantity.Mass        `json:"mass"`
	Form     Form                 `json:"form"`
	Start    quantity.Temperature `json:"start"` // of the whole piece
	Into     Room                 `json:"into"`
	Exposure Exposure             `json:"exposure"`
	// Height is the thickness of a SlabOfDough, zero meaning 6 cm, and the length of a Log, zero meaning 30 cm.
	Height quantity.Length `json:"height,omitzero"`
	// Surface is a surface coefficient in W/(m² K) instead of the exposure's own; zero means that.
	Surface  float64 `json:"surface,omitzero"`
	Metallic bool    `json:"metallic,omitzero"` // in a metal bowl or on a metal sheet: 2 W/(m² K) more
	Crowded  bool    `json:"crowded,omitzero"`  // close among others: a quarter less crosses its surface (judgment)
	// For is how long the history is laid out, 1 hour to 6 days; after it the last temperature is held. Zero means
	// 6 days; a plan that needs less is made faster.
	For quantity.Elapsed `json:"for,omitzero"`
}

// solid is the piece as a body with a surface coefficient.
func (c Piece) solid() (g heat.Geometry, h float64, err error) {
	var p problems
	quantity.Check(&p.Problems, "Mass", c.Mass, quantity.Grams(10), quantity.Kilograms(100))
	forms.Check(&p.Problems, "Form", c.Form)
	quantity.Check(&p.Problems, "Start", c.Start, lowestTemperature, highestTemperature)
	c.Into.check(&p, "Into")
	exposures.Check(&p.Problems, "Exposure", c.Exposure)
	if !c.Height.IsZero() {
		quantity.Check(&p.Problems, "Height", c.Height, quantity.Centimeters(1), quantity.Centimeters(100))
	}
	if h = c.Surface; h == 0 {
		h = c.Exposure.surface()
	} else {
		p.Float("Surface", h, 0.5, 1000, "W/(m² K)")
	}
	if c.For != 0 {
		p.Duration("For", c.For.Duration(), time.Hour, horizon*time.Hour)
	}
	if err := p.ErrFor(c); err != nil {
		return g, h, err
	}
	if c.Metallic {
		h += 2
	}
	if c.Crowded {
		h *= crowded
	}
	volume := c.Mass.Kilograms() / doughMaterial.Density
	height := c.Height.Meters()
	switch c.Form {
	case Round:
		g = heat.Ball(math.Cbrt(3 * volume / (4 * math.Pi)))
	case Log:
		if height == 0 {
			height = 0.30
		}
		g = heat.LongCylinder(math.Sqrt(volume / (math.Pi * height)))
	case SlabOfDough:
		if height == 0 {
			height = 0.06
		}
		g = heat.Plate(height / 2)
	case Tub:
		r := math.Cbrt(volume / (2 * math.Pi))
		g = heat.ShortCylinder(r, 2*r)
	}
	return g, h, nil // from a millimeter to a few meters across: never out of what conducts
}

// body sets up the conduction problem.
func (c Piece) body() (*heat.Body, error) {
	g, h, err := c.solid()
	if err != nil {
		return nil, err
	}
	return heat.NewFollowed(g, doughMaterial, h)
}

// History is the mean temperature of the piece: what its fermentation follows. Accuracy: 0.02 °C of the series; the
// surface coefficient is the real uncertainty, about a quarter. Errors: ErrRequired, ErrOutOfRange in the fields.
// Source: Carslaw and Jaeger, Conduction of Heat in Solids (1959); Çengel, Heat and Mass Transfer, chapter 4.
func (c Piece) History() (History, error) { return c.history(heat.Average) }

// Core is the temperature in the middle of the piece; see [Piece.History].
func (c Piece) Core() (History, error) { return c.history(heat.Middle) }

func (c Piece) history(part heat.Part) (History, error) {
	h, err := c.untold(part)
	if err == nil {
		h.label = c.says()
	}
	return h, err
}

// untold is the history without what it says of itself.
func (c Piece) untold(part heat.Part) (History, error) {
	b, err := c.body()
	if err != nil {
		return History{}, err
	}
	until := float64(horizon)
	if c.For != 0 {
		until = hours(c.For.Duration())
	}
	var knots []heat.Knot
	if c.Into.changes() {
		for x := 0.0; x < until+0.5; x += 0.5 {
			knots = append(knots, heat.Knot{Seconds: x * 3600, Celsius: c.Into.celsius(x)})
		}
	} else {
		knots = []heat.Knot{{Seconds: 0, Celsius: c.Into.celsius(0)}}
	}
	trace, err := b.Follow(part, c.Start.Celsius(), knots)
	if err != nil {
		return History{}, err
	}
	f := func(h float64) float64 { return trace.At(h * 3600) }
	return History{knots: settle(f, b.SlowestTime()/3600, until, c.Into.changes())}, nil
}

// says is what the history of a piece says of itself.
func (c Piece) says() working.Message {
	return working.Tell("ferment.piece", "%v %v from %.1f into %v, %v", c.Mass, c.Form, c.Start, c.Into, c.Exposure)
}

// TimeConstant is how long the piece takes for 63 % of the way to its surroundings once its inside has settled: what
// [Relaxing] asks for. Accuracy: the surface coefficient is known to about a quarter. Errors: as [Piece.History].
// Source: the slowest exponential of the series of [Piece.History].
func (c Piece) TimeConstant() (time.Duration, error) {
	b, err := c.body()
	if err != nil {
		return 0, err
	}
	return span(b.SlowestTime() / 3600), nil
}
