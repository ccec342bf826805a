package ferment

import (
	"fmt"
	"math"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/heat"
)

// Room is what a dough stands in: one temperature (Night alone), or a day and a night.
//
//	T = (Day + Night)/2 + (Day − Night)/2·cos(2π·(clock − WarmestAt)/24 h)
type Room struct {
	Night quantity.Temperature `json:"night"`
	Day   quantity.Temperature `json:"day,omitzero"` // not given: the same as Night
	// WarmestAt is the time of day when it is warmest; zero means 15:00.
	WarmestAt quantity.Elapsed `json:"warmest_at,omitzero"`
	// Starts is the time of day at which the history begins, 0 to 24 h.
	Starts quantity.Elapsed `json:"starts,omitzero"`
}

func (r Room) check(p *problems, path string) {
	if path != "" {
		path += "."
	}
	quantity.Check(&p.Problems, path+"Night", r.Night, lowestTemperature, highestTemperature)
	if !r.Day.IsZero() {
		quantity.Check(&p.Problems, path+"Day", r.Day, lowestTemperature, highestTemperature)
	}
	p.Duration(path+"WarmestAt", r.WarmestAt.Duration(), 0, 24*time.Hour)
	p.Duration(path+"Starts", r.Starts.Duration(), 0, 24*time.Hour)
}

func (r Room) changes() bool { return !r.Day.IsZero() && r.Day != r.Night }

// celsius is the room's temperature some hours after the start.
func (r Room) celsius(h float64) float64 {
	if !r.changes() {
		return r.Night.Celsius()
	}
	night, day := r.Night.Celsius(), r.Day.Celsius()
	return (day+night)/2 + (day-night)/2*math.Cos(2*math.Pi*(hours(r.Starts.Duration())+h-r.warmest())/24)
}

// warmest is the hour of day at which the room is warmest.
func (r Room) warmest() float64 {
	if r.WarmestAt == 0 {
		return 15
	}
	return hours(r.WarmestAt.Duration())
}

// At answers: how warm is the room some time after the start? Errors: ErrRequired and ErrOutOfRange in the fields of the
// room; ErrOutOfRange for a time outside 0 to 366 days. Source: the cosine of [Room], a judgment: no room follows one exactly.
func (r Room) At(after time.Duration) (quantity.Temperature, error) {
	var p problems
	r.check(&p, "")
	p.Duration("After", after, 0, longest)
	if err := p.Err(); err != nil {
		return quantity.Temperature{}, err
	}
	return degrees(r.celsius(hours(after))), nil
}

// String prints "21 °C" or "19 °C by night, 22 °C by day".
func (r Room) String() string { return r.Message().String() }

// Message says how warm the room is, for the units of its reader.
func (r Room) Message() working.Message {
	if !r.changes() {
		return working.Say("%v", r.Night)
	}
	return working.Say("%v by night, %v by day", r.Night, r.Day)
}

// horizon is how far histories of rooms are laid out, h; after it they are held.
const horizon = 6 * 24

// straightness is how far a straight line may be from the true curve of temperature, °C: 0.01 °C is 0.1 % of the rate.
const straightness = 0.01

// Relaxing is a dough that starts at one temperature and drifts to its room's, as a small or well-stirred
// body does:
//
//	dT/dt = (T_room(t) − T)/τ
//
// τ is TimeConstant: after τ a dough has gone 63 % of the way. A kilogram in a covered bowl has about 4 hours, 5 kg in a
// tub about 7 ([Piece.TimeConstant]); measure your own from two readings, or use [Piece], which knows conduction.
type Relaxing struct {
	Start        quantity.Temperature `json:"start"` // of the dough when it leaves the mixer
	Room         Room                 `json:"room"`
	TimeConstant quantity.Elapsed     `json:"time_constant,omitzero"` // zero means 4 hours
}

// History makes the history. Accuracy: within 0.01 °C of the equation. Errors: ErrRequired, ErrOutOfRange for
// temperatures outside −25 to 60 °C or a time constant outside 1 minute to 7 days. Source: Newton's law of cooling.
func (r Relaxing) History() (History, error) {
	var p problems
	quantity.Check(&p.Problems, "Start", r.Start, lowestTemperature, highestTemperature)
	r.Room.check(&p, "Room")
	tau := r.TimeConstant.Duration()
	if tau == 0 {
		tau = 4 * time.Hour
	}
	p.Duration("TimeConstant", tau, time.Minute, 7*24*time.Hour)
	if err := p.Err(); err != nil {
		return History{}, err
	}
	k := hours(tau)
	start := r.Start.Celsius()
	f := func(h float64) float64 {
		room := r.Room.Night.Celsius()
		return room + (start-room)*math.Exp(-h/k)
	}
	if r.Room.changes() {
		// The steady answer to a cosine lags it by atan(ω·τ) and is smaller by √(1 + (ω·τ)²).
		w := 2 * math.Pi / 24
		night, day := r.Room.Night.Celsius(), r.Room.Day.Celsius()
		shrunk := (day - night) / 2 / math.Hypot(1, w*k)
		lag := math.Atan(w*k) / w
		warmest := r.Room.warmest()
		steady := func(h float64) float64 {
			return (day+night)/2 + shrunk*math.Cos(w*(hours(r.Room.Starts.Duration())+h-lag-warmest))
		}
		f = func(h float64) float64 { return steady(h) + (start-steady(0))*math.Exp(-h/k) }
	}
	return History{
		knots: settle(f, math.Min(k, horizon), horizon, r.Room.changes()),
		label: working.Say("from %v toward %v", r.Start, r.Room.Message()),
	}, nil
}

// settle lays out a function that settles within some time constants, until an hour.
func settle(f func(float64) float64, constant, until float64, goesOn bool) []knot {
	marks := []float64{0}
	for x := constant / 8; x < math.Min(25*constant, until); x *= 2 {
		marks = append(marks, x)
	}
	if goesOn {
		last := math.Ceil(marks[len(marks)-1]/6) * 6
		for x := last; x <= until; x += 6 {
			if x > marks[len(marks)-1] {
				marks = append(marks, x)
			}
		}
	}
	if marks[len(marks)-1] < until {
		marks = append(marks, until)
	}
	return follow(f, marks, straightness)
}

// Form is the form of a piece of dough.
type Form int

// The forms of dough. Round is a sphere: a ball of dough or a boule. Log is a long cylinder: a batard or baguette. Slab is
// dough spread in a tray or a wide box, cooled from both faces. Tub is dough filling a round container as wide as
// it is deep, cooled all around.
const (
	Round Form = iota
	Log
	SlabOfDough
	Tub
)

// String names the form.
func (f Form) String() string {
	switch f {
	case Round:
		return "round"
	case Log:
		return "log"
	case SlabOfDough:
		return "slab"
	case Tub:
		return "tub"
	}
	return "unknown form"
}

// Exposure is where dough stands, for the heat that crosses its surface.
type Exposure int

// The places. Each has a surface coefficient in W/(m² K): Open still air 9 (natural convection and radiation); Covered bowl,
// tub or basket 5; Refrigerator 8; Proofing box or retarder with a fan 20.
const (
	Covered Exposure = iota
	Open
	Refrigerator
	Fan
)

// String names the place.
func (p Exposure) String() string {
	switch p {
	case Covered:
		return "covered"
	case Open:
		return "open"
	case Refrigerator:
		return "in a refrigerator"
	case Fan:
		return "in moving air"
	}
	return "unknown place"
}

// surface is h in W/(m² K). Sources: 9 for still air, radiation included, tables of cold-store design (9.37); on a refrigerator's rack natural
// convection alone gives 6 (Lienhard and Lienhard, A Heat Transfer Textbook, example 5.2) and radiation there is of the same size (Laguerre
// 2010), so that 8 is taken, a judgment; 5 covered and 20 in moving air are judgments within 4 to 6 and 15 to 30.
func (p Exposure) surface() float64 {
	switch p {
	case Covered:
		return 5
	case Open:
		return 9
	case Refrigerator:
		return 8
	case Fan:
		return 20
	}
	return math.NaN()
}

// Dough as a material: density of a fermenting dough that has begun to rise, heat capacity and conductivity
// at about 65 to 70 % hydration, by the mixture rules of Choi and Okos (1986). Its diffusivity, 1.3e-7 m²/s, hardly changes with
// gas, because density falls together with conductivity.
var doughMaterial = heat.Material{Conductivity: 0.41, Density: 1100, HeatCapacity: 2800}

// Piece is a piece of dough of a given mass and form put into other surroundings, colder or warmer: a
// refrigerator, a proofing box, a room.
//
// The temperature inside is the exact series of transient conduction with a convecting surface, for a sphere, a long cylinder, a
// slab or a short cylinder; heat made by the ferment itself is ignored, which makes a real dough cool a little more slowly.
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
	// For is how long the history is laid out, 1 hour to 6 days; after it the last temperature is held. Zero means
	// 6 days; a plan that needs less is made faster.
	For quantity.Elapsed `json:"for,omitzero"`
}

// body sets up the conduction problem.
func (c Piece) body() (*heat.Body, error) {
	var p problems
	quantity.Check(&p.Problems, "Mass", c.Mass, quantity.Grams(10), quantity.Kilograms(100))
	if c.Form < Round || c.Form > Tub {
		p.Add("Form", fmt.Sprint(int(c.Form)), "Round, Log, SlabOfDough or Tub", errOutOfRange)
	}
	quantity.Check(&p.Problems, "Start", c.Start, lowestTemperature, highestTemperature)
	c.Into.check(&p, "Into")
	if c.Exposure < Covered || c.Exposure > Fan {
		p.Add("Exposure", fmt.Sprint(int(c.Exposure)), "Covered, Open, Refrigerator or Fan", errOutOfRange)
	}
	if !c.Height.IsZero() {
		quantity.Check(&p.Problems, "Height", c.Height, quantity.Centimeters(1), quantity.Centimeters(100))
	}
	h := c.Surface
	if h == 0 {
		h = c.Exposure.surface()
	} else {
		p.Float("Surface", h, 0.5, 1000, "W/(m² K)")
	}
	if c.For != 0 {
		p.Duration("For", c.For.Duration(), time.Hour, horizon*time.Hour)
	}
	if err := p.Err(); err != nil {
		return nil, err
	}
	if c.Metallic {
		h += 2
	}
	volume := c.Mass.Kilograms() / doughMaterial.Density
	height := c.Height.Meters()
	var g heat.Geometry
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
	b, err := heat.NewBody(g, doughMaterial, h)
	if err != nil {
		return nil, quantity.At("Mass", &quantity.InputError{Got: c.Mass.String(), Want: "a piece between 0.2 mm and 20 m across", Err: quantity.ErrOutOfRange})
	}
	return b, nil
}

// History is the mean temperature of the piece: what its fermentation follows. Accuracy: 0.02 °C of the series;
// the surface coefficient is the real uncertainty, about a quarter. Errors: ErrRequired, ErrOutOfRange in the fields. Source: Carslaw and
// Jaeger, Conduction of Heat in Solids (1959); Çengel, Heat and Mass Transfer, chapter 4.
func (c Piece) History() (History, error) { return c.history(false) }

// Core is the temperature in the middle of the piece; see [Piece.History].
func (c Piece) Core() (History, error) { return c.history(true) }

func (c Piece) history(core bool) (History, error) {
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
	trace, err := b.Follow(c.Start.Celsius(), knots)
	if err != nil {
		return History{}, err
	}
	f := func(h float64) float64 { return trace.Mean(h * 3600) }
	if core {
		f = func(h float64) float64 { return trace.Core(h * 3600) }
	}
	return History{
		knots: settle(f, b.SlowestTime()/3600, until, c.Into.changes()),
		label: working.Say("%v %s from %v into %v, %s", c.Mass, c.Form, c.Start, c.Into.Message(), c.Exposure),
	}, nil
}

// TimeConstant is how long the piece takes for 63 % of the way to its surroundings once its inside has settled: what
// [Relaxing] asks for. Accuracy: the surface coefficient is known to about a quarter. Errors: as [Piece.History]. Source: the slowest
// exponential of the series of [Piece.History].
func (c Piece) TimeConstant() (time.Duration, error) {
	b, err := c.body()
	if err != nil {
		return 0, err
	}
	return span(b.SlowestTime() / 3600), nil
}
