package mixing

import (
	"strconv"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

var mostMass = quantity.Kilograms(10_000)

const mostMixing = 4 * time.Hour

// Measured is a batch with its temperatures: what went into the bowl, and the dough that came out.
type Measured struct {
	Dough  quantity.Temperature // at the end of mixing
	Water  quantity.Temperature
	Others []Factor // flour and room, and the levain when there was one
}

// FrictionResult is the answer of [FrictionFromBatch].
type FrictionResult struct {
	// Friction is the friction factor for Factors temperatures. It may be negative: a cold bowl
	// or a cold bench takes heat.
	Friction quantity.TemperatureDelta
	// Rise is the warming of the dough itself, Friction ÷ Factors.
	Rise quantity.TemperatureDelta
	// Factors is the number of temperatures, the water included.
	Factors int

	in Measured
}

// FrictionFromBatch answers what friction factor a mixer has, from one measured batch.
//
//	F = (T_dough − T_water) + Σ(T_dough − Tᵢ)
//
// T_dough is the dough at the end of mixing, T_water the water poured, Tᵢ the other temperatures.
// It is the trade's n·T_dough − Σ T written as differences. Dough 0 to 50 °C, everything else −40 to
// 95 °C. It holds for the same mixer, dough weight, stiffness and mixing time; a thermometer
// error of 1 °C in the dough moves it by n °C. See [Learn] for several batches.
//
// Errors: ErrRequired, ErrOutOfRange. Source: NAVEDTRA 14163, ch. 8.
func FrictionFromBatch(in Measured) (FrictionResult, error) {
	var p quantity.Problems
	quantity.Check(&p, "Dough", in.Dough, coldestDough, hottestDough)
	quantity.Check(&p, "Water", in.Water, coldestThing, hottestThing)
	checkFactors(&p, "Others", in.Others)
	if err := p.Err(); err != nil {
		return FrictionResult{}, err
	}
	in.Others = append([]Factor(nil), in.Others...)
	f := in.Dough.Sub(in.Water)
	for _, o := range in.Others {
		f = f.Add(in.Dough.Sub(o.Temperature))
	}
	n := len(in.Others) + 1
	return FrictionResult{Friction: f, Rise: f.Divide(int64(n)), Factors: n, in: in}, nil
}

// String prints "friction factor 4.444 Δ°C for 3 factors (the dough warms by 1.481 Δ°C)".
func (r FrictionResult) String() string {
	return "friction factor " + r.Friction.String() + " for " + strconv.Itoa(r.Factors) + " factors (the dough warms by " + r.Rise.String() + ")"
}

// Working derives the friction factor and the dough's own rise.
func (r FrictionResult) Working() working.Working {
	w := working.Working{Title: "Friction factor from a measured batch"}
	if r.Factors == 0 {
		return w
	}
	in := r.in
	temps := []quantity.Temperature{in.Dough, in.Water}
	for _, o := range in.Others {
		temps = append(temps, o.Temperature)
	}
	s := scaleOf(temps)
	step := working.Step{
		Name: "friction factor", Symbol: "F", Formula: "(T_dough − T_water)",
		Where: []working.Binding{
			bind("T_dough", "dough at the end of mixing", s.temperature(in.Dough)),
			bind("T_water", "water poured", s.temperature(in.Water)),
		},
		Numbers: "(" + s.number(in.Dough) + " − " + s.number(in.Water) + ")",
		Value:   s.delta(r.Friction), Exact: s.exact, Tolerance: s.tolerance(2 * r.Factors), Source: sources.NavyFriction,
	}
	for i, o := range in.Others {
		symbol := symbolOf(o.Name, i)
		step.Formula += " + (T_dough − " + symbol + ")"
		step.Numbers += " + (" + s.number(in.Dough) + " − " + s.number(o.Temperature) + ")"
		step.Where = append(step.Where, bind(symbol, "temperature of: "+nameOf(o.Name, i), s.temperature(o.Temperature)))
	}
	w.Steps = append(w.Steps, step, riseStep(s, r.Friction, r.Rise, r.Factors))
	return w
}

func riseStep(s scale, f, rise quantity.TemperatureDelta, n int) working.Step {
	return working.Step{
		Name: "the dough's own rise", Symbol: "d", Formula: "F ÷ n",
		Where: []working.Binding{
			bind("F", "friction factor", s.delta(f)),
			bind("n", "number of factors, the water included", strconv.Itoa(n)),
		},
		Numbers: s.deltaNumber(f) + " ÷ " + strconv.Itoa(n), Value: rise.Text(s.unit, 3),
		Tolerance: s.tolerance(1) + 0.0002, Note: "rounded to 0.001°", Source: sources.FrictionIsRise,
	}
}

// Rise answers by how much the dough itself warms for a friction factor.
//
//	d = F ÷ n
//
// n is the number of factors the friction factor was measured with, the water included: 2 to 12.
// Rounded half to even to 1/9000 K. Errors: ErrOutOfRange. Source: algebra of the factor method.
func Rise(friction quantity.TemperatureDelta, factors int) (quantity.TemperatureDelta, error) {
	var p quantity.Problems
	quantity.Check(&p, "friction", friction, quantity.DeltaCelsius(-10*mostFriction), quantity.DeltaCelsius(10*mostFriction))
	p.Int("factors", factors, 2, mostFactors)
	if err := p.Err(); err != nil {
		return quantity.TemperatureDelta{}, err
	}
	return friction.Divide(int64(factors)), nil
}

// FrictionOf answers what friction factor a rise of the dough makes with so many factors: F = n·d,
// exactly. See [Rise], whose inverse it is.
func FrictionOf(rise quantity.TemperatureDelta, factors int) (quantity.TemperatureDelta, error) {
	var p quantity.Problems
	quantity.Check(&p, "rise", rise, quantity.DeltaCelsius(-mostFriction), quantity.DeltaCelsius(mostFriction))
	p.Int("factors", factors, 2, mostFactors)
	if err := p.Err(); err != nil {
		return quantity.TemperatureDelta{}, err
	}
	return rise.Times(int64(factors)), nil
}

// ConvertFriction answers what a friction factor measured with one count of factors is with
// another: 24 °F with three (flour, room, water) is 32 °F with four (and the levain).
//
//	F_to = F_from · to ÷ from
//
// Both counts include the water, 2 to 12. Rounded once, half to even, to 1/9000 K. Errors:
// ErrOutOfRange. Source: both stand for the same rise of the dough.
func ConvertFriction(friction quantity.TemperatureDelta, from, to int) (quantity.TemperatureDelta, error) {
	var p quantity.Problems
	quantity.Check(&p, "friction", friction, quantity.DeltaCelsius(-10*mostFriction), quantity.DeltaCelsius(10*mostFriction))
	p.Int("from", from, 2, mostFactors)
	p.Int("to", to, 2, mostFactors)
	if err := p.Err(); err != nil {
		return quantity.TemperatureDelta{}, err
	}
	return friction.Times(int64(to)).Divide(int64(from)), nil
}
