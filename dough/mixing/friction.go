package mixing

import (
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

var mostMass = quantity.Kilograms(10_000)

const mostMixing = 4 * time.Hour

// Measured is a batch with its temperatures: what went into the bowl, and the dough that came out.
type Measured struct {
	Dough  quantity.Temperature `json:"dough,omitzero"` // at the end of mixing
	Water  quantity.Temperature `json:"water,omitzero"`
	Others []Factor             `json:"others,omitempty"` // flour and room, and the levain when there was one
}

// Friction is a friction factor with the number of temperatures that it is counted for: 24 °F for three factors
// is 32 °F for four.
type Friction struct {
	// Factor is the friction factor. It may be negative: a cold bowl or a cold bench takes heat.
	Factor quantity.TemperatureDelta `json:"factor"`
	// Factors is the number of temperatures, the water included.
	Factors int `json:"factors"`

	in Measured // what it was found from, for the working
}

// Friction answers what friction factor a mixer has, from one measured batch.
//
//	F = (T_dough − T_water) + Σ(T_dough − Tᵢ)
//
// T_dough is the dough at the end of mixing, T_water the water poured, Tᵢ the other temperatures.
// It is the trade's n·T_dough − Σ T written as differences. Dough 0 to 50 °C, everything else −40 to
// 95 °C. It holds for the same mixer, dough weight, stiffness and mixing time; a thermometer
// error of 1 °C in the dough moves it by n °C. See [Log.Learn] for several batches.
//
// Errors: ErrRequired, ErrOutOfRange. Source: NAVEDTRA 14163, ch. 8.
func (m Measured) Friction() (Friction, error) {
	var p quantity.Problems
	quantity.Check(&p, "Dough", m.Dough, coldestDough, hottestDough)
	quantity.Check(&p, "Water", m.Water, coldestThing, hottestThing)
	checkFactors(&p, "Others", m.Others)
	if err := p.ErrFor(m); err != nil {
		return Friction{}, err
	}
	m.Others = append([]Factor(nil), m.Others...)
	f := m.Dough.Sub(m.Water)
	for _, o := range m.Others {
		f = f.Add(m.Dough.Sub(o.Temperature))
	}
	return Friction{Factor: f, Factors: len(m.Others) + 1, in: m}, nil
}

// String says the factor, its count and the rise of the dough.
func (f Friction) String() string { return f.Message().String() }

// Message says the factor, its count and the rise of the dough, for the units of its reader.
func (f Friction) Message() working.Message {
	rise, err := f.Rise()
	if err != nil {
		return working.Tell("mixing.no_friction", "no friction factor")
	}
	return working.Tell("mixing.friction", "friction factor %.1f for %d factors (the dough warms by %.1f)", f.Factor,
		f.Factors, rise)
}

// Working derives the friction factor and the dough's own rise.
func (f Friction) Working() working.Working {
	d := working.Derive(working.Tell("mixing.derive_friction", "Friction factor"))
	rise, err := f.Rise()
	if err != nil {
		return d.Working()
	}
	factor := givenFriction(f)
	if in := f.in; !in.Dough.IsZero() {
		dough := working.Given("T_dough", working.Tell("mixing.symbol_mixed", "dough at the end of mixing"), in.Dough)
		sum := dough.Minus(working.Given("T_water", working.Tell("mixing.symbol_poured", "water poured"), in.Water))
		for i, o := range in.Others {
			sum = sum.Plus(dough.Minus(o.given(i)))
		}
		factor = d.Find(working.Finding{
			Name: working.Tell("mixing.friction_name", "friction factor"), Symbol: "F", By: sum, Is: f.Factor,
			Decimals: 1, Source: sources.NavyFriction,
		})
	}
	n := working.Given("n", working.Tell("mixing.symbol_count", "number of factors, the water included"), f.Factors)
	d.Find(working.Finding{
		Name: working.Tell("mixing.rise_name", "the dough's own rise"), Symbol: "d", By: factor.Over(n), Is: rise,
		Decimals: 1,
		Source:   sources.FrictionIsRise,
	})
	return d.Working()
}

func (f Friction) check(p *quantity.Problems) {
	quantity.Check(p, "Factor", f.Factor, quantity.DeltaCelsius(-10*mostFriction),
		quantity.DeltaCelsius(10*mostFriction))
	p.Int("Factors", f.Factors, 2, mostFactors)
}

// Rise answers by how much the dough itself warms for a friction factor.
//
//	d = F ÷ n
//
// F is the friction factor, n the number of factors that it is counted for, the water included: 2 to 12.
// Rounded half to even to 1/9000 K. Errors: ErrOutOfRange. Source: algebra of the factor method.
func (f Friction) Rise() (quantity.TemperatureDelta, error) {
	var p quantity.Problems
	f.check(&p)
	if err := p.ErrFor(f); err != nil {
		return quantity.TemperatureDelta{}, err
	}
	return f.Factor.Divide(int64(f.Factors)), nil
}

// For answers what a friction factor that was measured with one count of factors is with another: 24 °F with
// three (flour, room, water) is 32 °F with four (and the levain).
//
//	F_to = F · to ÷ n
//
// Both counts include the water, 2 to 12. Rounded once, half to even, to 1/9000 K. Errors: ErrOutOfRange.
// Source: both stand for the same rise of the dough.
func (f Friction) For(factors int) (Friction, error) {
	var p quantity.Problems
	f.check(&p)
	p.Int("factors", factors, 2, mostFactors)
	if err := p.ErrFor(f); err != nil {
		return Friction{}, err
	}
	return Friction{Factor: f.Factor.Times(int64(factors)).Divide(int64(f.Factors)), Factors: factors}, nil
}

// FrictionOf answers what friction factor a rise of the dough makes with so many factors: F = n·d, exactly.
// See [Friction.Rise], whose inverse it is. Rise within ±90 Δ°C, factors 2 to 12. Errors: ErrOutOfRange.
func FrictionOf(rise quantity.TemperatureDelta, factors int) (Friction, error) {
	var p quantity.Problems
	quantity.Check(&p, "rise", rise, quantity.DeltaCelsius(-mostFriction), quantity.DeltaCelsius(mostFriction))
	p.Int("factors", factors, 2, mostFactors)
	if err := p.ErrFor(nil); err != nil {
		return Friction{}, err
	}
	return Friction{Factor: rise.Times(int64(factors)), Factors: factors}, nil
}
