package bake

import (
	"math"
	"slices"
	"strconv"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/numeric"
)

// CoolingProbe is a probe in a cooling loaf.
type CoolingProbe struct {
	Samples []Sample `json:"samples"` // two or more, in order of time
	// the clock at the last reading; given, the answer is told by the clock too
	Now   time.Time                 `json:"now,omitzero"`
	Room  quantity.Temperature      `json:"room,omitzero"`  // the air around it; not given: 22 °C
	Slice quantity.Temperature      `json:"slice,omitzero"` // not given: 35 °C, or 6 °C above a room warmer than 29 °C
	Error quantity.TemperatureDelta `json:"error,omitzero"` // how far the probe may be off; 0 takes ±1 °C
}

// CoolingLeft is how long a loaf still cools, from its last reading.
type CoolingLeft struct {
	answer

	Ready        quantity.TimeRange   `json:"ready"`
	Slice        quantity.Temperature `json:"slice"`
	TimeConstant quantity.Elapsed     `json:"time_constant,omitzero"`
	Reached      bool                 `json:"reached"`
	in           CoolingProbe
	usual        quantity.Temperature // as in CoolingTime
	tau          float64              // minutes
	now          float64              // °C above the room on the fitted line
}

// coolingModelError is the model's own error as a share of the remaining time, one standard deviation.
const coolingModelError = 0.10

// TimeLeft answers: how long still until I may cut it, from two or more readings?
//
// Formula: T = T_a + (T₁ − T_a)·e^(−t/τ): ln(T − T_a) falls in a straight line, fitted by weighted least squares;
// from two readings τ = Δt/ln((T₁ − T_a)/(T₂ − T_a)) and the time left is τ·ln((T₂ − T_a)/(T_s − T_a)). Symbols: T_a
// room, T_s slicing temperature. Valid range: readings at least 3 minutes apart, more than 3 °C above the room. In
// the first 10 to 20 minutes the core hardly falls and the answer is too long. Accuracy: the range claims 80 %:
// reading error, ±1 °C of room and 10 % of the time for the model. Errors: [quantity.ErrRequired],
// [quantity.ErrOutOfRange], [quantity.ErrInconsistent] (rising, room too warm), [quantity.ErrModelRange] (too close
// together). Source: the last exponential of the conduction series, Çengel, chapter 4.
func (in CoolingProbe) TimeLeft() (CoolingLeft, error) {
	given := !in.Slice.IsZero()
	in, err := in.check()
	if err != nil {
		return CoolingLeft{}, err
	}
	in.Samples = slices.Clone(in.Samples)
	room, slice := in.Room.Celsius(), in.Slice.Celsius()
	out := CoolingLeft{Slice: in.Slice, in: in}
	if !given {
		out.usual = usualSlice(LeanHearth, highestCore)
	}
	last := in.Samples[len(in.Samples)-1]
	if last.Core.Compare(in.Slice) <= 0 {
		out.Reached = true
		out.Ready = leftRange(0, 0, 0)
		return out, nil
	}
	sigma := probeSigma(in.Error)
	x, y, w := make([]float64, len(in.Samples)), make([]float64, len(in.Samples)), make([]float64, len(in.Samples))
	for i, s := range in.Samples {
		d := s.Core.Celsius() - room
		x[i], y[i], w[i] = (s.At - last.At).Duration().Minutes(), math.Log(d), d*d/(sigma*sigma)
	}
	line, err := numeric.FitLine(x, y, w)
	if err != nil || !(line.Slope < -1e-6) {
		return CoolingLeft{}, quantity.DataPaths(in, notCooling(in))
	}
	goal := math.Log(slice - room)
	likely := math.Max(0, (goal-line.Intercept)/line.Slope)
	// First-order propagation: the value and the slope of the line, the room, and the model.
	inflate := 1.0
	if line.N > 2 && line.Variance > 1 {
		inflate = line.Variance
	}
	at := line.Cov[0][0] + 2*likely*line.Cov[0][1] + likely*likely*line.Cov[1][1]
	byLine := math.Sqrt(math.Max(0, at*inflate)) / -line.Slope
	byRoom := 1 / (slice - room) / -line.Slope
	half := quantile80 * math.Sqrt(byLine*byLine+byRoom*byRoom*0.25+coolingModelError*coolingModelError*likely*likely)
	if likely+half > 48*60 {
		return CoolingLeft{}, &quantity.InputError{
			GoPath: "Samples",
			Got: quantity.Tell("bake.got_fall_from_to", "a fall from %s to %s", celsius(in.Samples[0].Core),
				celsius(last.Core)),
			Want: quantity.Tell("bake.want_readings_far_enough_apart_to",
				"readings far enough apart to tell how fast it cools"),
			Err: quantity.ErrModelRange,
		}
	}
	out.tau, out.now = -1/line.Slope, math.Exp(line.Intercept)
	out.TimeConstant = quantity.Elapsed(minutes(out.tau))
	out.Ready = leftRange(math.Max(0, likely-half), likely, likely+half)
	return out, nil
}

func notCooling(in CoolingProbe) error {
	first, last := in.Samples[0], in.Samples[len(in.Samples)-1]
	return &quantity.InputError{
		GoPath: "Samples",
		Got:    quantity.Tell("bake.got_core_from_to", "core from %s to %s", celsius(first.Core), celsius(last.Core)),
		Want:   quantity.Tell("bake.want_falling_core", "a falling core"),
		Err:    quantity.ErrInconsistent,
	}
}

func (in CoolingProbe) check() (CoolingProbe, error) {
	var p quantity.Problems
	if in.Room.IsZero() {
		in.Room = quantity.Celsius(22)
	}
	room := quantity.Check(&p, "Room", in.Room, quantity.Celsius(-25), quantity.Celsius(40))
	if in.Slice.IsZero() && room {
		in.Slice = sliceIn(in.Room, LeanHearth)
	}
	if !in.Slice.IsZero() && quantity.Check(&p, "Slice", in.Slice, quantity.Celsius(5), quantity.Celsius(80)) && room &&
		in.Slice.Celsius() < in.Room.Celsius()+2 {
		p.Add("Slice", in.Slice, quantity.Tell("bake.want_at_least_2_c_above", "at least 2 °C above the room, %v", in.Room),
			quantity.ErrInconsistent)
	}
	quantity.Check(&p, "Error", in.Error, quantity.TemperatureDelta{}, mostProbeError)
	n := len(in.Samples)
	if n < 2 {
		p.Required("Samples", quantity.Tell("bake.want_at_least_two_readings_ten",
			"at least two readings, ten minutes or more apart"))
	}
	if n > mostSamples {
		p.Int("Samples", n, 2, mostSamples)
		return in, p.ErrFor(in)
	}
	good := true
	for i, s := range in.Samples {
		path := "Samples[" + strconv.Itoa(i) + "]"
		good = p.Duration(path+".At", s.At.Duration(), 0, 48*time.Hour) && good
		if i > 0 && s.At <= in.Samples[i-1].At {
			p.Add(path+".At", s.At,
				quantity.Tell("bake.want_later_than_reading_before", "later than the reading before, %v", in.Samples[i-1].At),
				quantity.ErrInconsistent)
			good = false
		}
		ok := checkProbe(&p, path+".Core", s.Core)
		if ok && room && s.Core.Celsius() < in.Room.Celsius()+3 && (in.Slice.IsZero() || s.Core.Compare(in.Slice) > 0) {
			p.Add(path+".Core", s.Core,
				quantity.Tell("bake.want_more_than_3_c_above", "more than 3 °C above the room, %v", in.Room),
				quantity.ErrInconsistent)
			ok = false
		}
		good = good && ok
	}
	if good && n >= 2 {
		first, last := in.Samples[0], in.Samples[n-1]
		switch {
		case last.Core.Compare(in.Slice) <= 0: // reached: nothing to fit
		case last.Core.Compare(first.Core) >= 0:
			p.Join("", notCooling(in))
		case (last.At - first.At).Duration() < 3*time.Minute:
			p.Add("Samples",
				quantity.Tell("bake.got_from_first_to_last", "%v from first to last", (last.At-first.At)),
				quantity.Tell("bake.want_at_least_3m_apart_better", "at least 3m apart, better 15m"),
				quantity.ErrModelRange)
		}
	}
	return in, p.ErrFor(in)
}

// String prints "20m to 35m (80 %), likely 27m, until the core is at 35 °C".
func (c CoolingLeft) String() string { return c.message().String() }

func (c CoolingLeft) message() working.Message {
	if c.Reached {
		return working.Tell("bake.cool_enough", "the core is at %v: it may be cut", c.Slice)
	}
	return working.Tell("bake.cooling", "%v, until the core is at %v", c.Ready, c.Slice)
}

// Cautions says what goes wrong with warm bread.
func (c CoolingLeft) Cautions() []working.Caution { return coolingCautions() }
