package ferment

import (
	"math"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

// horizon is how far histories of rooms are laid out, h; after it they are held.
const horizon = 6 * 24

// straightness is how far a straight line may be from the true curve of temperature, °C: 0.01 °C is 0.1 % of the rate.
const straightness = 0.01

// Relaxing is a dough that starts at one temperature and drifts to its room's, as a small or well-stirred
// body does:
//
//	dT/dt = (T_room(t) − T)/τ
//
// τ is TimeConstant: after τ a dough has gone 63 % of the way. A kilogram in a covered bowl has about 4 hours, 5 kg in
// a tub about 7 ([Piece.TimeConstant]); measure your own from two readings, or use [Piece], which knows conduction.
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
	if err := p.ErrFor(r); err != nil {
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
		label: working.Tell("ferment.relaxing", "from %v toward %v", r.Start, r.Room),
	}, nil
}

// settle lays out a function that settles within some time constants, until an hour.
func settle(f func(float64) float64, constant, until float64, goesOn bool) []knot {
	marks := []float64{0}
	for x := constant / 8; x < math.Min(25*constant, until); x *= 2 {
		marks = append(marks, x)
	}
	if goesOn {
		for x := 6 * math.Ceil(marks[len(marks)-1]/6); x < until; x += 6 {
			marks = append(marks, x)
		}
	}
	return follow(f, append(marks, until), straightness)
}
