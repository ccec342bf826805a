package bake

import (
	"math"
	"slices"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/enum"
	"example.org/maslin/internal/numeric"
)

// Sample is one reading of a probe.
type Sample struct {
	At   quantity.Elapsed     `json:"at"` // since the loaf went in, or since any moment that is the same for all readings
	Core quantity.Temperature `json:"core"`
}

// Probe is a probe in a loaf, with its readings in order of time.
type Probe struct {
	Goal
	Samples []Sample `json:"samples"`
	// InOven is how long the loaf has been in the oven at the last reading, where the times of the readings do not
	// count from then; 0: they do.
	InOven quantity.Elapsed `json:"in_oven,omitzero"`
	// EntryUnknown: nobody knows when the loaf went in. Bake-out is then reckoned from a usual bake of the style.
	EntryUnknown bool `json:"entry_unknown,omitzero"`
	// the clock at the last reading; given, the answer is told by the clock too
	Now      time.Time                 `json:"now,omitzero"`
	Error    quantity.TemperatureDelta `json:"error,omitzero"` // how far the probe may be off; 0 takes ±1 °C
	Approach Approach                  `json:"approach,omitzero"`
	// only readings this close to the last one count; 0: 15 minutes
	Window      quantity.Elapsed `json:"window,omitzero"`
	Extrapolate bool             `json:"extrapolate,omitzero"` // use readings of the early part too
}

// LeftState is the kind of answer to "how long still?".
type LeftState int

// The kinds of answers.
const (
	Rising  LeftState = iota // on its way, with a range
	Reached                  // the target is reached
	// the baker's own target is at or above what boiling allows; the range is for the target that can be reached
	Unreachable
	NearBoiling // within 1.5 °C of boiling: the probe says nothing more
	Vague       // the readings lie too close together for a range: read again
)

var leftStates = enum.Of[LeftState]("state of a rising core", "rising", "reached", "unreachable", "near boiling",
	"vague")

// String names the state.
func (s LeftState) String() string { return leftStates.String(s) }

// MarshalText implements encoding.TextMarshaler.
func (s LeftState) MarshalText() ([]byte, error) { return leftStates.Marshal(s) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads the words that String prints, and no others.
func (s *LeftState) UnmarshalText(text []byte) error { return leftStates.Unmarshal(s, text) }

// Left is how long a loaf still bakes, from its last reading.
type Left struct {
	answer

	State        LeftState            `json:"state"`
	Approach     Approach             `json:"approach"`               // by which it was reckoned
	ToTarget     quantity.TimeRange   `json:"to_target"`              // until the core is at Target
	ToOut        quantity.TimeRange   `json:"to_out"`                 // until the loaf has baked out too
	Target       quantity.Temperature `json:"target"`                 // the core that means done here
	Boiling      quantity.Temperature `json:"boiling"`                // of water, here
	TimeConstant quantity.Elapsed     `json:"time_constant,omitzero"` // τ, of the end of the bake for Quickening
	// the target is what boiling allows here, less than was asked
	Capped bool `json:"capped"`
	Used   int  `json:"used"` // readings used
	// readings left out because the core was still in the early part
	Early     int              `json:"early"`
	ReadAgain quantity.Elapsed `json:"read_again,omitzero"` // when the next reading is worth taking
	probe     Probe
	fit       fitted
	arrival   time.Duration // of the core at its target, likely, from the last reading on; negative: before it
}

// fitted is the straight line behind a Left, with its time in minutes from the last reading.
type fitted struct {
	line     numeric.Line
	boiling  float64
	target   float64
	sigma    float64    // of one reading and, as much again, of all of them together, °C
	first    [2]float64 // minutes before the last, °C
	last     float64    // °C
	hold     float64    // minutes
	pressure float64
	sea      float64
}

const (
	earlyBelow  = 45.0 // °C below boiling: above 55 °C at sea level the curve bends the right way
	probeWindow = 15.0 // minutes
	leastSpan   = 1.0  // minutes between first and last reading
	// The model's own error as a share of the remaining time, one standard deviation, at the end of the
	// bake and added for readings that begin early (times the square of the distance to boiling over 75
	// °C): measured on numerical loaves.
	modelError, earlyError = 0.08, 0.15
	boilingError           = 0.4 // °C, weather and dissolved salt, one standard deviation
	leftProbability        = 80.0
	quantile80             = 1.2815515655446004
)

// TimeLeft answers: how long until the core is at its target and the loaf has baked out, from two or more readings of
// a probe?
//
// Formula: the core nears the boiling point, T(t) = T_b − (T_b − T₁)·e^(−(t−t₁)/τ), so that ln(T_b − T) falls in a
// straight line. From two readings τ = Δt/ln((T_b − T₁)/(T_b − T₂)), and the time left is τ·ln((T_b − T₂)/(T_b −
// T*)): that is [Exponential]. [Quickening], which is taken unless another is asked for, replaces the logarithm by ln
// d + 0.75·(d/75)² with d = T_b − T. More readings are fitted by weighted least squares, each with its own weight
// because an error of 1 °C counts more the nearer the boiling point is. The range comes from the reading error
// (Fieller's interval of the line), a common error of the probe, weather on the boiling point, and 8 to 13 % for the
// model; the exponential's early end reaches down to what Quickening says. Bake-out follows by the rule of
// [LoafReading.Judge], from the moment the loaf went in. Symbols: T_b local boiling point; T* target; τ time
// constant. Valid range: cores from 45 °C below boiling on (55 °C at sea level); before that the curve is still
// bending up and the answer would be too long, so such readings are left out, or all used with Extrapolate. Readings
// at least 1 minute apart. Accuracy: no measured series of a core was found in open data. On numerical loaves with a
// moving evaporation front the exponential is about 60 % too long from readings that end at 63 °C, 40 % at 70 °C, 25
// % at 78 °C, 13 % at 85 °C and 7 % at 92 °C; Quickening 11, 6, 3, 3 and 5 %. The trade's rule that 55 °C comes at
// half of the bake speaks for the exponential. The range held the truth in 8 of 10 cases or more for both. Errors:
// [quantity.ErrRequired] (fewer than two readings), [quantity.ErrOutOfRange] (above boiling; °F typed as °C is
// suspected and said), [quantity.ErrInconsistent] (not in order of time, falling, not rising),
// [quantity.ErrModelRange] (too early, too close together; a thin bread). Source: evaporation front at the boiling
// point and crumb tending to it, Zanoni, Peri and Pierucci (1993).
func (p Probe) TimeLeft() (Left, error) {
	t, err := p.check()
	if err != nil {
		return Left{}, err
	}
	p.Samples = slices.Clone(p.Samples)
	last := p.Samples[len(p.Samples)-1]
	out := Left{
		Approach: p.Approach, Target: quantity.Celsius(t.core), Boiling: quantity.Celsius(t.boiling),
		Capped: t.capped(p.Goal), probe: p,
	}
	f := fitted{
		boiling:  t.boiling,
		target:   t.core,
		sigma:    probeSigma(p.Error) / math.Sqrt2,
		last:     last.Core.Celsius(),
		pressure: t.pressure,
		sea:      t.sea,
	}
	out.fit = f
	if f.last >= t.core-0.05 {
		out.State = Reached
		if f.last > t.boiling-flat {
			out.State = NearBoiling
		}
		out.ToTarget = leftRange(0, 0, 0)
		since := last.At - p.arrived(t.core).At
		out.arrival = -since.Duration()
		out.ToOut = p.toOut(t,
			quantity.TimeRange{Early: -since.Duration(), Likely: -since.Duration(), Late: -since.Duration()},
			&out.fit)
		return out, nil
	}
	used, early := p.usable(t.boiling)
	out.Early = early
	if err := checkUsable(p, used, early, t.boiling, f.sigma); err != nil {
		return Left{}, quantity.DataPaths(p, err)
	}
	f.line, f.first = fitApproach(p.Approach, used, last.At, t.boiling, f.sigma)
	likely, low, high, bounded := f.remaining(p.Approach)
	if p.Approach == Exponential && bounded {
		// The same readings by the other approach: an honest early end.
		g := f
		g.line, _ = fitApproach(Quickening, used, last.At, t.boiling, f.sigma)
		if _, other, _, ok := g.remaining(Quickening); ok {
			low = math.Min(low, other)
		}
	}
	if !bounded {
		out.State = Vague
		out.ReadAgain = quantity.Elapsed(3 * time.Minute)
		return out, nil
	}
	out.Used = len(used)
	out.TimeConstant = quantity.Elapsed(minutes(-1 / f.line.Slope))
	out.ReadAgain = quantity.Elapsed(minutes(math.Min(math.Max(likely/3, 2), 5)))
	out.ToTarget = leftRange(low, likely, high)
	out.arrival = out.ToTarget.Likely
	out.ToOut = p.toOut(t, out.ToTarget, &f)
	out.fit = f
	// Without an altitude rule in between, the baker's own target may lie where no core gets.
	if !p.Wanted.IsZero() && p.Wanted.Celsius() > t.boiling-reach {
		out.State = Unreachable
	}
	return out, nil
}

// inOven is how long the loaf has been in the oven at the last reading.
func (p Probe) inOven() time.Duration {
	if p.InOven > 0 {
		return p.InOven.Duration()
	}
	return p.Samples[len(p.Samples)-1].At.Duration()
}

// arrived is the first reading at the target.
func (p Probe) arrived(core float64) Sample {
	i := slices.IndexFunc(p.Samples, func(s Sample) bool { return s.Core.Celsius() >= core-0.05 })
	return p.Samples[i]
}

// toOut is when the loaf has baked out, counted from the last reading as the arrival at the target is; an arrival
// before the last reading is negative.
func (p Probe) toOut(t target, arrival quantity.TimeRange, f *fitted) quantity.TimeRange {
	hold := func(at time.Duration) holds {
		if p.EntryUnknown {
			usual := rowOf(p.Style).done.hold
			return holds{usual / 2, usual, usual * 3 / 2}
		}
		return t.bakeOut(p.Style, max(0, p.inOven()+at))
	}
	early, likely, late := hold(arrival.Early), hold(arrival.Likely), hold(arrival.Late)
	f.hold = likely.likely.Minutes()
	return quantity.TimeRange{
		Early:  max(0, arrival.Early+early.early),
		Likely: max(0, arrival.Likely+likely.likely), Late: max(0, arrival.Late+late.late),
		Probability: quantity.NewPercent(leftProbability),
	}
}

func leftRange(low, likely, high float64) quantity.TimeRange {
	return quantity.TimeRange{
		Early:       minutes(low),
		Likely:      minutes(likely),
		Late:        minutes(high),
		Probability: quantity.NewPercent(leftProbability),
	}
}

// fitApproach fits the straight line of the ordinate on time in minutes from the last reading.
func fitApproach(a Approach, used []Sample, last quantity.Elapsed, boiling, sigma float64) (numeric.Line, [2]float64) {
	x, y, w := make([]float64, len(used)), make([]float64, len(used)), make([]float64, len(used))
	for i, s := range used {
		below := boiling - s.Core.Celsius()
		sd := sigma * a.slope(below)
		x[i], y[i], w[i] = (s.At - last).Duration().Minutes(), a.ordinate(below), 1/(sd*sd)
	}
	line, err := numeric.FitLine(x, y, w)
	if err != nil || !(line.Slope < 0) {
		line.Slope = math.Copysign(1e-12, -1) // not rising on the whole: remaining() calls that unbounded
	}
	return line, [2]float64{x[0], used[0].Core.Celsius()}
}

// remaining is the time to the target in minutes with its 80 % range; bounded is false when the readings
// allow no upper end.
func (f fitted) remaining(a Approach) (likely, low, high float64, bounded bool) {
	l := f.line
	goal := a.ordinate(f.boiling - f.target)
	likely = math.Max((goal-l.Intercept)/l.Slope, 0)
	inflate := 1.0
	if l.N > 2 && l.Variance > 1 {
		inflate = l.Variance
	}
	z := quantile80
	// Fieller: (α + β·t − goal)² = z²·(var α + 2·cov·t + var β·t²).
	za := z * z * inflate
	qa := l.Slope*l.Slope - za*l.Cov[1][1]
	qb := 2 * ((l.Intercept-goal)*l.Slope - za*l.Cov[0][1])
	qc := (l.Intercept-goal)*(l.Intercept-goal) - za*l.Cov[0][0]
	disc := qb*qb - 4*qa*qc
	if !(qa > 0) || !(disc >= 0) {
		return likely, 0, 0, false
	}
	root := math.Sqrt(disc)
	low, high = (-qb-root)/(2*qa), (-qb+root)/(2*qa)
	if !(high < 24*60) {
		return likely, 0, 0, false
	}
	// An error common to all readings, and a boiling point moved by the weather: one standard deviation
	// each way. Both act more strongly on the late side.
	probeUp, probeDown := f.swing(a, likely, f.sigma, 0)
	boilUp, boilDown := f.swing(a, likely, 0, boilingError)
	y := (f.boiling - f.first[1]) / scaleOf
	model := (modelError + earlyError*y*y) * likely
	low = math.Max(0, likely-math.Hypot(likely-low, z*math.Hypot(model, math.Hypot(probeDown, boilDown))))
	high = likely + math.Hypot(high-likely, z*math.Hypot(model, math.Hypot(probeUp, boilUp)))
	return likely, low, high, true
}

// swing is how far the remaining time rises and falls when all readings, or the boiling point, lie up to
// that many °C off.
func (f fitted) swing(a Approach, likely, readings, boiling float64) (up, down float64) {
	// The two-point line through first and last reading, scaled to agree with the fit when nothing is off.
	at := func(readings, boiling float64) float64 {
		ordinate := func(core float64) float64 { return a.ordinate(math.Max(f.boiling+boiling-core, 0.3)) }
		y1, y2 := ordinate(f.first[1]+readings), ordinate(f.last+readings)
		return (y2 - ordinate(f.target)) / (y1 - y2) * -f.first[0]
	}
	base := at(0, 0)
	if !(base > 0) {
		return 0, 0
	}
	for _, sign := range [2]float64{1, -1} {
		d := likely * (at(sign*readings, sign*boiling)/base - 1)
		up, down = math.Max(up, d), math.Max(down, -d)
	}
	return up, down
}

// String prints "8m to 13m (80 %), likely 10m, to a core of 94.1 °C; baked out in 14m to 19m …".
func (l Left) String() string { return l.message().String() }

func (l Left) message() working.Message {
	switch l.State {
	case Reached:
		if l.ToOut.Late == 0 {
			return working.Tell("bake.left_out",
				"the core has been at its target of %.1f long enough: baked out by time; the color is yours to judge",
				l.Target)
		}
		return working.Tell("bake.left_reached", "the core is at its target of %.1f; baked out in %v, or weigh it",
			l.Target, l.ToOut)
	case NearBoiling:
		return working.Tell("bake.left_near_boiling",
			"the core is within %v of boiling (%.1f): the probe says nothing more; weigh the loaf, or go by the time: baked "+
				"out in %v", quantity.DeltaCelsius(flat), l.Boiling, l.ToOut)
	case Vague:
		return working.Tell("bake.left_vague", "too little rise between the readings for a range: read again in %v",
			l.ReadAgain)
	case Unreachable:
		return working.Tell("bake.left_unreachable",
			"%.1f is never reached here, water boils at %.1f; %v to a core of %.1f; baked out in %v", l.probe.Wanted,
			l.Boiling, l.ToTarget, l.Target, l.ToOut)
	}
	return working.Tell("bake.left", "%v, to a core of %v; baked out in %v", l.ToTarget,
		wish(l.Target, l.Capped, l.probe.Goal), l.ToOut)
}

// Cautions says what can hurt at the oven.
func (l Left) Cautions() []working.Caution { return doorCautions() }
