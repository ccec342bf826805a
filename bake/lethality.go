package bake

import (
	"math"
	"slices"
	"strconv"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/numeric"
	"example.org/maslin/internal/sources"
)

// Organism is how fast a bacterium dies in a dough: D(T) = D·10^((Reference − T)/Z).
type Organism struct {
	Name      string
	D         time.Duration        // for one log reduction at Reference
	Reference quantity.Temperature // where D was measured
	Z         quantity.TemperatureDelta
	From, To  quantity.Temperature // where it was measured
	Source    working.Source
}

// SalmonellaInBuns is a mix of three serovars in hamburger-bun dough, by the published z.
func SalmonellaInBuns() Organism {
	return Organism{"Salmonella in bun dough", seconds(3.14 * 60), quantity.Celsius(61), quantity.DeltaCelsius(6.58), quantity.Celsius(55), quantity.Celsius(61), sources.Channaiah2016}
}

// FaeciumInBuns is Enterococcus faecium ATCC 8459 in hamburger-bun dough, a surrogate that dies more
// slowly: the careful choice.
func FaeciumInBuns() Organism {
	return Organism{"Enterococcus faecium in bun dough", seconds(14.72 * 60), quantity.Celsius(61), quantity.DeltaCelsius(6.25), quantity.Celsius(55), quantity.Celsius(61), sources.Channaiah2016}
}

// SalmonellaInMuffins is a mix of three serovars in English-muffin dough.
func SalmonellaInMuffins() Organism {
	return Organism{"Salmonella in muffin dough", seconds(3.0 * 60), quantity.Celsius(62), quantity.DeltaCelsius(6.2), quantity.Celsius(55), quantity.Celsius(62), sources.MuffinKillStep}
}

// Organisms lists the organisms with published figures in dough.
func Organisms() []Organism {
	return []Organism{SalmonellaInBuns(), FaeciumInBuns(), SalmonellaInMuffins()}
}

// DecimalTime answers: how long for one log reduction at a temperature?
//
// Formula: D(T) = D_ref·10^((T_ref − T)/z). Valid range: measured from From to To; above, it is an
// extrapolation. NaN-safe: a temperature that is not given gives 0. Source: Bigelow (1921).
func (o Organism) DecimalTime(t quantity.Temperature) time.Duration {
	m := o.dMinutes(t.Celsius())
	if !(m < 1e9) {
		return 0
	}
	return minutes(m)
}

func (o Organism) dMinutes(celsius float64) float64 {
	return o.D.Minutes() * math.Pow(10, (o.Reference.Celsius()-celsius)/o.Z.Celsius())
}

// Heating is a history of a core, for its lethality.
type Heating struct {
	Samples  []Sample // in order of time, at least two; straight lines between them
	Organism Organism
}

// Lethality is a log reduction by a model, as information. It is never a statement that food is safe.
type Lethality struct {
	LogReduction float64
	Extrapolated bool // part of it above the temperatures where the organism was measured: nearly always
	Within       float64
	in           Heating
}

// LogReduction answers: by how many powers of ten would these bacteria have fallen in the core, by the
// log-linear model?
//
// Formula: Σ ∫ dt/D(T), each straight piece in closed form: Δt·(r₂ − r₁)/ln(r₂/r₁) with r = 1/D.
// Symbols: D time for one log reduction, T core.
// Valid range: cores from −5 to 110 °C; D was measured from 55 to 62 °C and everything above is
// extrapolated, which the result says. Within is the part below the highest measured temperature.
// Accuracy: D of a strain in another dough differs by a factor of two and more. It is information: never
// "safe to eat". Dry zones, fillings, flour on the crust and what lands on the loaf later are outside of
// it, and dry flour is far more resistant than dough.
// Errors: [quantity.ErrRequired], [quantity.ErrOutOfRange], [quantity.ErrInconsistent] (times not rising).
// Source: Bigelow (1921); D and z, Channaiah et al. (2016) and an English-muffin study.
func LogReduction(in Heating) (Lethality, error) {
	var p quantity.Problems
	if len(in.Samples) < 2 {
		p.Required("Samples", "at least two readings of the core")
	}
	if len(in.Samples) > mostSamples {
		p.Int("Samples", len(in.Samples), 2, mostSamples)
		return Lethality{}, p.Err()
	}
	for i, s := range in.Samples {
		path := "Samples[" + strconv.Itoa(i) + "]"
		p.Duration(path+".At", s.At, 0, 48*time.Hour)
		if i > 0 && s.At <= in.Samples[i-1].At {
			p.Add(path+".At", quantity.FormatDuration(s.At), "later than the reading before", quantity.ErrInconsistent)
		}
		checkProbe(&p, path+".Core", s.Core)
	}
	o := in.Organism
	if o.D == 0 && o.Reference.IsZero() {
		p.Required("Organism", "one of Organisms(), or your own D, Reference and Z with their source")
	} else {
		p.Duration("Organism.D", o.D, time.Millisecond, 30*24*time.Hour)
		quantity.Check(&p, "Organism.Reference", o.Reference, quantity.Celsius(30), quantity.Celsius(150))
		quantity.Check(&p, "Organism.Z", o.Z, quantity.DeltaCelsius(1), quantity.DeltaCelsius(60))
	}
	if err := p.Err(); err != nil {
		return Lethality{}, err
	}
	in.Samples = slices.Clone(in.Samples)
	out := Lethality{in: in}
	highest := o.To.Celsius()
	if math.IsNaN(highest) {
		highest = o.Reference.Celsius()
	}
	for i := 1; i < len(in.Samples); i++ {
		a, b := in.Samples[i-1], in.Samples[i]
		dt, t1, t2 := (b.At - a.At).Minutes(), a.Core.Celsius(), b.Core.Celsius()
		out.LogReduction += o.piece(dt, t1, t2)
		if math.Max(t1, t2) > highest {
			out.Extrapolated = true
		}
		// The part of the piece below the highest measured temperature.
		switch low, high := math.Min(t1, t2), math.Max(t1, t2); {
		case high <= highest:
			out.Within += o.piece(dt, t1, t2)
		case low < highest:
			out.Within += o.piece(dt*(highest-low)/(high-low), low, highest)
		}
	}
	return out, nil
}

// piece is ∫ dt/D over a straight piece, in minutes.
func (o Organism) piece(dt, t1, t2 float64) float64 {
	r1, r2 := 1/o.dMinutes(t1), 1/o.dMinutes(t2)
	x := math.Ln10 * (t2 - t1) / o.Z.Celsius() // ln(r2/r1)
	if math.Abs(x) < 1e-6 {
		return dt * (r1 + r2) / 2
	}
	return dt * (r2 - r1) / x
}

// String prints "40.7 log (model; mostly extrapolated) of Salmonella in bun dough: information, never a
// statement that food is safe".
func (l Lethality) String() string {
	s := fixed(l.LogReduction, 1) + " log of " + l.in.Organism.Name + " by the model"
	if l.Extrapolated {
		s += ", " + fixed(l.Within, 2) + " of it within the temperatures it was measured at"
	}
	return s + ": information, never a statement that food is safe"
}

// Cautions says what the number cannot promise.
func (l Lethality) Cautions() []working.Caution { return FoodCautions() }

// Working derives the sum, piece by piece for up to ten pieces.
func (l Lethality) Working() working.Working {
	o := l.in.Organism
	w := working.Working{Title: "Log reduction in the core"}
	where := []working.Binding{
		{Symbol: "D_r", Meaning: "time for one log at " + celsius(o.Reference) + ", " + o.Name, Value: fixed(o.D.Minutes(), 4) + " min"},
		{Symbol: "z", Meaning: "degrees for a factor of ten", Value: fixed(o.Z.Celsius(), 2) + " °C"},
	}
	if len(l.in.Samples) <= 11 {
		for i := 1; i < len(l.in.Samples); i++ {
			a, b := l.in.Samples[i-1], l.in.Samples[i]
			dt, t1, t2 := (b.At - a.At).Minutes(), a.Core.Celsius(), b.Core.Celsius()
			v := o.piece(dt, t1, t2)
			step := working.Step{
				Name: "piece " + strconv.Itoa(i), Symbol: "R", Where: append([]working.Binding{
					{Symbol: "Δt", Meaning: "length of the piece", Value: fixed(dt, 3) + " min"}, {Symbol: "T_1", Meaning: "core at its start", Value: fixed(t1, 3) + " °C"},
					{Symbol: "T_2", Meaning: "core at its end", Value: fixed(t2, 3) + " °C"}, {Symbol: "T_r", Meaning: "reference temperature", Value: fixed(o.Reference.Celsius(), 3) + " °C"},
				}, where...),
				Value: fixed(v, 4), Tolerance: 0.002*v + 1e-4, Source: sources.Bigelow,
			}
			r := func(t float64) string {
				return "10^((" + fixed(t, 3) + " − " + fixed(o.Reference.Celsius(), 3) + ") ÷ " + fixed(o.Z.Celsius(), 2) + ")"
			}
			if math.Abs(t2-t1) < 0.01 {
				step.Formula, step.Numbers = "Δt ÷ D_r × 10^((T_1 − T_r) ÷ z)", fixed(dt, 3)+" ÷ "+fixed(o.D.Minutes(), 4)+" × "+r(t1)
				step.Tolerance += 0.005 * v
			} else {
				step.Formula = "Δt ÷ D_r × (10^((T_2 − T_r) ÷ z) − 10^((T_1 − T_r) ÷ z)) ÷ (ln(10) × (T_2 − T_1) ÷ z)"
				step.Numbers = fixed(dt, 3) + " ÷ " + fixed(o.D.Minutes(), 4) + " × (" + r(t2) + " − " + r(t1) + ") ÷ (ln(10.0) × (" + fixed(t2, 3) + " − " + num(t1, 3) + ") ÷ " + fixed(o.Z.Celsius(), 2) + ")"
			}
			w.Steps = append(w.Steps, step)
		}
	}
	w.Steps = append(w.Steps, working.Step{
		Name: "log reduction", Symbol: "R_all", Value: fixed(l.LogReduction, 2), Note: "the sum over all pieces; information, never a statement that food is safe", Source: o.sourceOr(),
	})
	return w
}

func (o Organism) sourceOr() working.Source {
	if o.Source.IsZero() {
		return sources.Practice("the caller's own figures")
	}
	return o.Source
}

// DeathPoint is one measured D.
type DeathPoint struct {
	At quantity.Temperature
	D  time.Duration
}

// FitZ answers: what z follows from D measured at several temperatures?
//
// Formula: z = −1/slope of the straight line of log₁₀ D on T by least squares; D is taken from the line at
// the highest temperature.
// Valid range: two or more different temperatures. Accuracy: published z, from replicates, may differ from
// the z of mean D: bun dough's three means give 6.25 where 6.58 is printed. Errors: [quantity.ErrRequired],
// [quantity.ErrOutOfRange], [quantity.ErrInconsistent] (D not falling with temperature).
// Source: Bigelow (1921).
func FitZ(name string, points []DeathPoint) (Organism, error) {
	var p quantity.Problems
	if len(points) < 2 {
		p.Required("points", "at least two D at different temperatures")
	}
	if len(points) > mostSamples {
		p.Int("points", len(points), 2, mostSamples)
		return Organism{}, p.Err()
	}
	var x, y []float64
	low, high := math.Inf(1), math.Inf(-1)
	for i, d := range points {
		path := "points[" + strconv.Itoa(i) + "]"
		if quantity.Check(&p, path+".At", d.At, quantity.Celsius(30), quantity.Celsius(150)) && p.Duration(path+".D", d.D, time.Millisecond, 30*24*time.Hour) {
			x, y = append(x, d.At.Celsius()), append(y, math.Log10(d.D.Minutes()))
			low, high = math.Min(low, d.At.Celsius()), math.Max(high, d.At.Celsius())
		}
	}
	if err := p.Err(); err != nil {
		return Organism{}, err
	}
	line, err := numeric.FitLine(x, y, nil)
	if err != nil || !(line.Slope < -1e-3) {
		return Organism{}, &quantity.InputError{Path: "points", Got: quantity.Excerpt(name), Want: "D that falls with temperature, at two or more temperatures", Err: quantity.ErrInconsistent}
	}
	return Organism{
		Name: name, D: minutes(math.Pow(10, line.At(high))), Reference: quantity.Celsius(high), Z: quantity.DeltaCelsius(-1 / line.Slope),
		From: quantity.Celsius(low), To: quantity.Celsius(high), Source: sources.Bigelow,
	}, nil
}

// String prints "Salmonella in bun dough: D 3m08s at 61 °C, z 6.58 Δ°C".
func (o Organism) String() string {
	return o.Name + ": D " + fixed(o.D.Minutes(), 2) + " min at " + o.Reference.String() + ", z " + o.Z.String()
}
