package bake

import (
	"math"
	"strings"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/heat"
	"example.org/maslin/internal/sources"
)

// CoolingLoaf asks when a loaf out of the oven may be cut.
type CoolingLoaf struct {
	Style Style
	Shape Shape
	Baked quantity.Mass        // the loaf out of the oven
	From  quantity.Temperature // core out of the oven; not given: 2 °C under the boiling point at sea level, or the room's if lower
	Room  quantity.Temperature // the air around it; not given: 22 °C
	Slice quantity.Temperature // core at which it is cut; not given: 35 °C, or 6 °C above a room warmer than 29 °C
}

// CoolingTime is when a loaf may be cut.
type CoolingTime struct {
	Ready quantity.TimeRange // until the core is at Slice
	Slice quantity.Temperature
	Room  quantity.Temperature
	Rest  time.Duration // what the style asks for beyond cooling: a rye loaf is cut the next day, a rye roll is not
	in    CoolingLoaf
	from  float64
	prior coolPrior
}

type coolPrior struct {
	volume     float64 // m³
	tau        float64 // slowest time constant, s
	lead       float64 // A in T = Ta + (T0 − Ta)·A·exp(−t/τ)
	surface, k float64
	alpha      float64
}

// Sizes of the ranges. Source of the h values: ASHRAE-style table 9.4 W/(m² K) in still air with radiation;
// the spread is judgment.
const (
	stillAir, leastAir, mostAir = 10.0, 7.0, 15.0 // W/(m² K)
	breadK                      = 0.24            // W/(m K), sources.Rask
	coolingProbability          = 80.0            // %
	defaultSlice                = 35.0            // °C
)

func specificVolume(s Style) (mlPerGram, porosity float64) {
	c := rowOf(s).crumb
	return c.mlPerGram, c.porosity
}

// Time answers: when is the core at slicing temperature?
//
// Formula: the exact conduction series for the loaf's shape with a convecting surface, T = Ta + (T₀ −
// Ta)·θ(t), solved for t; early with h = 15 W/(m² K), a draft and a rack, late with h = 7, a still corner,
// and a diffusivity 20 % off each way.
// Symbols: Ta room, T₀ core out of the oven, θ the share of the difference that is left; diffusivity of
// crumb by porosity (Zanoni 1995), conductivity 0.24 W/(m K) (Rask 1989), volume from the style's usual
// specific volume.
// Valid range: 20 g to 5 kg; room −25 to 40 °C; slicing at least 2 °C above the room.
// Accuracy: no measured cooling curve was found; the range claims 80 % and is a judgment. Two probe
// readings give a much better answer: [CoolingProbe.TimeLeft].
// Errors: [quantity.ErrRequired], [quantity.ErrOutOfRange], [quantity.ErrInconsistent] when the room is too
// warm ever to reach Slice.
// Source: Çengel, chapter 4; slicing at 30 to 40 °C, bread cooling pages; rye rests longer, common
// practice.
func (in CoolingLoaf) Time() (CoolingTime, error) {
	in, err := checkCooling(in)
	if err != nil {
		return CoolingTime{}, err
	}
	from, room, slice := in.From.Celsius(), in.Room.Celsius(), in.Slice.Celsius()
	in.Shape = in.Shape.For(in.Style)
	c := CoolingTime{Slice: in.Slice, Room: in.Room, Rest: restOf(in.Style, in.Baked), in: in, from: from}
	theta := (slice - room) / (from - room)
	times := [3]float64{}
	for i, v := range [3]struct{ h, diffusivity float64 }{{mostAir, 1.2}, {stillAir, 1}, {leastAir, 0.8}} {
		body, prior, err := coolingBody(in.Style, in.Shape, in.Baked, v.h, v.diffusivity)
		if err != nil {
			return CoolingTime{}, err
		}
		if times[i], err = body.CenterTime(theta); err != nil {
			return CoolingTime{}, err
		}
		if i == 1 {
			c.prior = prior
		}
	}
	c.Ready = quantity.TimeRange{Early: seconds(times[0]), Likely: seconds(times[1]), Late: seconds(times[2]), Probability: quantity.NewPercent(coolingProbability)}
	return c, nil
}

func coolingBody(style Style, shape Shape, baked quantity.Mass, h, diffusivity float64) (*heat.Body, coolPrior, error) {
	ml, porosity := specificVolume(style)
	volume := baked.Grams() * ml * 1e-6
	alpha, err := heat.CrumbDiffusivity(porosity)
	if err != nil {
		return nil, coolPrior{}, err
	}
	alpha *= diffusivity
	// Only k, h and α matter: density and heat capacity are chosen to give this α.
	const c = 2800
	body, err := heat.NewBody(shape.solid(volume), heat.Material{Conductivity: breadK, HeatCapacity: c, Density: breadK / (alpha * c)}, h)
	if err != nil {
		return nil, coolPrior{}, err
	}
	tau := body.SlowestTime()
	late := 4 * tau // far enough out for the first exponential to stand alone
	return body, coolPrior{volume: volume, tau: tau, lead: body.Center(late) * math.Exp(late/tau), surface: h, k: breadK, alpha: alpha}, nil
}

func checkCooling(in CoolingLoaf) (CoolingLoaf, error) {
	var p quantity.Problems
	if !in.Style.IsValid() {
		p.Add("Style", in.Style.String(), strings.Join(styleNames(), ", "), quantity.ErrOutOfRange)
	}
	if !in.Shape.IsValid() {
		p.Add("Shape", in.Shape.String(), strings.Join(shapeNames[:], ", "), quantity.ErrOutOfRange)
	}
	quantity.Check(&p, "Baked", in.Baked, quantity.Grams(20), quantity.Grams(5000))
	if in.Room.IsZero() {
		in.Room = quantity.Celsius(22)
	}
	if in.From.IsZero() {
		in.From = quantity.Celsius(98)
	}
	room := quantity.Check(&p, "Room", in.Room, quantity.Celsius(-25), quantity.Celsius(40))
	from := quantity.Check(&p, "From", in.From, quantity.Celsius(45), highestCore)
	if in.Slice.IsZero() && room {
		in.Slice = quantity.Celsius(math.Max(defaultSlice, in.Room.Celsius()+6))
	}
	slice := quantity.Check(&p, "Slice", in.Slice, quantity.Celsius(5), quantity.Celsius(80))
	if room && slice && in.Slice.Celsius() < in.Room.Celsius()+2 {
		p.Add("Slice", in.Slice.String(), "at least 2 °C above the room, "+in.Room.String(), quantity.ErrInconsistent)
	}
	if from && slice && in.From.Compare(in.Slice) <= 0 {
		p.Add("From", in.From.String(), "warmer than the slicing temperature, "+in.Slice.String(), quantity.ErrInconsistent)
	}
	return in, p.Err()
}

// roll is the largest piece that is eaten as a roll; half a pound is where bread begins in 21 CFR 136.3.
var roll = quantity.Grams(226.796)

// restOf is how long a loaf rests before it cuts well, beyond cooling. From memory: 12 to 24 h for rye; rye rolls are eaten the day
// they are baked (common practice, no source).
func restOf(s Style, baked quantity.Mass) time.Duration {
	if s == Rye && baked.Compare(roll) > 0 {
		return 12 * time.Hour
	}
	return 0
}

// String prints "1h5m to 2h10m (80 %), likely 1h29m, until the core is at 35 °C".
func (c CoolingTime) String() string {
	s := c.Ready.String() + ", until the core is at " + c.Slice.String()
	if c.Rest > 0 {
		s += "; " + c.in.Style.String() + " cuts best after " + quantity.FormatDuration(c.Rest)
	}
	return s
}

// Cautions says what goes wrong with warm bread.
func (c CoolingTime) Cautions() []working.Caution {
	return []working.Caution{
		{Subject: "do not wrap warm", Text: working.Say("Cool on a rack with air all around, and wrap or bag only when the core is at room temperature: warm bread sweats in its wrapping and molds."), Source: sources.NoWarmWrap},
		FoodCautions()[3],
	}
}

// Working derives the likely cooling time.
func (c CoolingTime) Working() working.Working {
	room, slice, p := c.Room.Celsius(), c.Slice.Celsius(), c.prior
	theta := (slice - room) / (c.from - room)
	ml, porosity := specificVolume(c.in.Style)
	tau := p.tau / 60
	return working.Working{Title: "Cooling to slicing temperature", Steps: []working.Step{
		{
			Name: "volume of the loaf", Symbol: "V", Formula: "B × v", Numbers: fixed(c.in.Baked.Grams(), 1) + " × " + fixed(ml, 1), Value: fixed(p.volume*1e6, 0) + " mL", Tolerance: 0.5 * ml,
			Where:  []working.Binding{{Symbol: "B", Meaning: "baked weight", Value: fixed(c.in.Baked.Grams(), 1) + " g"}, {Symbol: "v", Meaning: "usual volume of a gram of " + c.in.Style.String() + " bread", Value: fixed(ml, 1) + " mL/g"}},
			Source: sources.OvenJudgment("typical specific volumes (from memory)"),
		},
		{
			Name: "thermal diffusivity of the crumb", Symbol: "α", Formula: "exp(0.01 × ε − 15.25) × 10000000", Numbers: "exp(0.01 × " + fixed(porosity*100, 0) + " − 15.25) × 10000000", Value: fixed(p.alpha*1e7, 3) + " × 10⁻⁷ m²/s",
			Where: []working.Binding{{Symbol: "ε", Meaning: "porosity", Value: fixed(porosity*100, 0) + " %"}}, Source: sources.Zanoni1995,
		},
		{
			Name: "share of the temperature difference left", Symbol: "θ", Formula: "(T_s − T_a) ÷ (T_0 − T_a)",
			Numbers: "(" + fixed(slice, 1) + " − " + num(room, 1) + ") ÷ (" + fixed(c.from, 1) + " − " + num(room, 1) + ")", Value: fixed(theta, 4), Tolerance: 0.002,
			Where:  []working.Binding{{Symbol: "T_s", Meaning: "core when cut", Value: degrees(slice)}, {Symbol: "T_a", Meaning: "room", Value: degrees(room)}, {Symbol: "T_0", Meaning: "core out of the oven", Value: degrees(c.from)}},
			Source: working.Algebra(),
		},
		{
			Name: "time constant of the " + c.in.Shape.String() + " loaf", Symbol: "τ", Value: fixed(tau, 1) + " min",
			Note: "from the first eigenvalues at a surface coefficient of " + fixed(p.surface, 0) + " W/(m² K) and a conductivity of " + fixed(p.k, 2) + " W/(m K)", Source: sources.Conduction,
		},
		{
			Name: "lead of the first term", Symbol: "A", Value: fixed(p.lead, 4), Note: "product of the first coefficients of the series", Source: sources.Conduction,
		},
		{
			Name: "likely time", Symbol: "t", Formula: "τ × ln(A ÷ θ)", Numbers: fixed(tau, 1) + " × ln(" + fixed(p.lead, 4) + " ÷ " + fixed(theta, 4) + ")", Value: fixed(c.Ready.Likely.Minutes(), 0) + " min",
			Where: []working.Binding{{Symbol: "τ", Meaning: "time constant", Value: fixed(tau, 1) + " min"}, {Symbol: "A", Meaning: "lead of the first term", Value: fixed(p.lead, 4)}, {Symbol: "θ", Meaning: "share left", Value: fixed(theta, 4)}},
			// The result uses the whole series; the first term alone is this close when θ is below a half.
			Tolerance: 0.5 + 0.03*c.Ready.Likely.Minutes(), Note: "by the whole series; the line shows its first term", Source: sources.Conduction,
		},
	}}
}
