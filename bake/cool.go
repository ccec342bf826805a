package bake

import (
	"math"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/heat"
)

// CoolingLoaf asks when a loaf out of the oven may be cut.
type CoolingLoaf struct {
	Style Style                `json:"style"`
	Shape Shape                `json:"shape,omitzero"`
	Baked quantity.Mass        `json:"baked"`         // the loaf out of the oven
	From  quantity.Temperature `json:"from,omitzero"` // core out of the oven; not given: 98 °C
	Room  quantity.Temperature `json:"room,omitzero"` // the air around it; not given: 22 °C
	// core at which it is cut; not given: 35 °C, 50 °C for what is eaten warm, at least 6 °C above the room
	Slice quantity.Temperature `json:"slice,omitzero"`
	Loses quantity.Percent     `json:"loses,omitzero"` // of its weight while it cools; 0 %: 1 to 3 %, likely 2
}

// CoolingTime is when a loaf may be cut.
type CoolingTime struct {
	answer

	Ready quantity.TimeRange   `json:"ready"` // until the core is at Slice
	Slice quantity.Temperature `json:"slice"`
	Room  quantity.Temperature `json:"room"`
	// what the style asks for beyond cooling: a rye loaf is cut the next day, a rye roll is not
	Rest  quantity.Elapsed `json:"rest,omitzero"`
	Warm  bool             `json:"warm,omitzero"` // eaten warm: nobody need wait for it to cool
	in    CoolingLoaf
	usual quantity.Temperature // at which it would be cut in a cooler room; zero: the room does not matter
	from  float64              // °C, after the heat that the steam takes with it
	lost  float64              // % of the loaf
	prior coolPrior
}

type coolPrior struct {
	volume     float64 // m³
	tau        float64 // slowest time constant, s
	lead       float64 // A in T = Ta + (T0 − Ta)·A·exp(−t/τ)
	surface, k float64
	alpha      float64
	terms      []heat.AxisTerm
}

// Sizes of the ranges. Source of the h values: ASHRAE-style table 9.4 W/(m² K) in still air with radiation;
// the spread is judgment.
const (
	stillAir, leastAir, mostAir = 10.0, 7.0, 15.0 // W/(m² K)
	breadK                      = 0.24            // W/(m K), sources.Rask
	coolingProbability          = 80.0            // %
	defaultSlice, warmSlice     = 35.0, 50.0      // °C
	// The loss of a cooling loaf: 1 to 3 % (from memory), 2 to 3 % (common practice, no source).
	leastCoolingLoss, usualCoolingLoss, mostCoolingLoss = 1.0, 2.0, 3.0 // %
	// coolPerPercent is how far a loaf cools for each percent of its mass that steams away: the latent heat near
	// 70 °C, 2.34 MJ/kg, over the heat capacity of bread, 2.8 kJ/(kg K), sources.Rask.
	coolPerPercent = 2340.0 / 100 / 2.8 // °C, 8.36
)

// specificVolume is the volume of a gram of bread in mL and the porosity of its crumb.
func specificVolume(s Style) (mlPerGram, porosity float64) {
	c := rowOf(s).crumb
	return c.mlPerGram, c.porosity
}

// Time answers: when is the core at slicing temperature?
//
// Formula: the exact conduction series for the loaf's shape with a convecting surface, T = Ta + (T₀ − 8.36·w −
// Ta)·θ(t), solved for t; early with h = 15 W/(m² K), a draft and a rack, and w = 3 %, late with h = 7, a still
// corner, and w = 1 %, and a diffusivity 20 % off each way. Symbols: Ta room, T₀ core out of the oven, w the percent
// of its weight that steams away while it cools, most of it in the first half hour, each taking 8.36 °C with it; θ
// the share of the difference that is left; diffusivity of crumb by porosity (Zanoni 1995), conductivity 0.24 W/(m K)
// (Rask 1989), volume from the style's usual specific volume. Valid range: 20 g to 5 kg; room −25 to 40 °C; slicing
// at least 2 °C above the room. Accuracy: no measured cooling curve was found; the range claims 80 % and is a
// judgment. Two probe readings give a much better answer: [CoolingProbe.TimeLeft]. Errors: [quantity.ErrRequired],
// [quantity.ErrOutOfRange], [quantity.ErrInconsistent] when the room is too warm ever to reach Slice. Source: Çengel,
// chapter 4; slicing at 30 to 40 °C and longer rests of rye, common practice.
func (in CoolingLoaf) Time() (CoolingTime, error) {
	given := !in.Slice.IsZero()
	in, err := in.check()
	if err != nil {
		return CoolingTime{}, err
	}
	from, room, slice := in.From.Celsius(), in.Room.Celsius(), in.Slice.Celsius()
	in.Shape = in.Shape.For(in.Style)
	c := CoolingTime{
		Slice: in.Slice,
		Room:  in.Room,
		Rest:  quantity.Elapsed(restOf(in.Style, in.Baked)),
		Warm:  rowOf(in.Style).warm,
		in:    in,
	}
	if !given {
		c.usual = usualSlice(in.Style, in.From)
	}
	losses := [3]float64{mostCoolingLoss, usualCoolingLoss, leastCoolingLoss}
	if !in.Loses.IsZero() {
		own := in.Loses.Points()
		losses = [3]float64{own, own, own}
	}
	times := [3]float64{}
	for i, v := range [3]struct{ h, diffusivity float64 }{{mostAir, 1.2}, {stillAir, 1}, {leastAir, 0.8}} {
		body, prior, err := coolingBody(in.Style, in.Shape, in.Baked, v.h, v.diffusivity)
		if err != nil {
			return CoolingTime{}, err
		}
		steamed := from - coolPerPercent*losses[i]
		if i == 1 {
			c.prior, c.from, c.lost = prior, steamed, losses[i]
		}
		if steamed <= slice {
			continue // what steams away cools it far enough at once
		}
		if times[i], err = body.CenterTime((slice - room) / (steamed - room)); err != nil {
			return CoolingTime{}, err
		}
	}
	c.Ready = quantity.TimeRange{
		Early:       seconds(times[0]),
		Likely:      seconds(times[1]),
		Late:        seconds(times[2]),
		Probability: quantity.NewPercent(coolingProbability),
	}
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
	body, err := heat.NewBody(shape.solid(volume),
		heat.Material{Conductivity: breadK, HeatCapacity: c, Density: breadK / (alpha * c)}, h)
	if err != nil {
		return nil, coolPrior{}, err
	}
	tau := body.SlowestTime()
	late := 4 * tau // far enough out for the first exponential to stand alone
	return body, coolPrior{
		volume:  volume,
		tau:     tau,
		lead:    body.Center(late) * math.Exp(late/tau),
		surface: h,
		k:       breadK,
		alpha:   alpha,
		terms:   body.FirstTerms(),
	}, nil
}

func (in CoolingLoaf) check() (CoolingLoaf, error) {
	var p quantity.Problems
	styles.Check(&p, "Style", in.Style)
	shapes.CheckIfGiven(&p, "Shape", in.Shape)
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
		in.Slice = sliceIn(in.Room, in.Style)
		if in.From.Compare(in.Slice) <= 0 {
			in.Slice = sliceIn(in.Room, LeanHearth)
		}
	}
	quantity.Check(&p, "Loses", in.Loses, quantity.Percent{}, quantity.NewPercent(8))
	slice := !in.Slice.IsZero() && quantity.Check(&p, "Slice", in.Slice, quantity.Celsius(5), quantity.Celsius(80))
	if room && slice && in.Slice.Celsius() < in.Room.Celsius()+2 {
		p.Add("Slice", in.Slice, quantity.Tell("bake.want_at_least_2_c_above", "at least 2 °C above the room, %v", in.Room),
			quantity.ErrInconsistent)
	}
	if from && slice && in.From.Compare(in.Slice) <= 0 {
		p.Add("From", in.From,
			quantity.Tell("bake.want_warmer_than_slicing_temperature", "warmer than the slicing temperature, %v", in.Slice),
			quantity.ErrInconsistent)
	}
	return in, p.ErrFor(in)
}

// aboveRoom is how far above its room a bread is cut where the room is nearly as warm: judgment, as the last degrees
// take hours.
const aboveRoom = 6.0 // °C

// sliceIn is where a bread is cut unless the baker says otherwise.
func sliceIn(room quantity.Temperature, style Style) quantity.Temperature {
	return quantity.Celsius(math.Max(usualSlice(style, highestCore).Celsius(), room.Celsius()+aboveRoom))
}

// usualSlice is where a bread that came out at some core is cut in a room that is not too warm for it.
func usualSlice(style Style, from quantity.Temperature) quantity.Temperature {
	if rowOf(style).warm && from.Celsius() > warmSlice {
		return quantity.Celsius(warmSlice)
	}
	return quantity.Celsius(defaultSlice)
}

// Notes says what to know of the answer: that the room is too warm for the core at which this bread is usually cut.
func (c CoolingTime) Notes() []working.Message { return warmRoom(c.usual, c.Slice, c.Room) }

func warmRoom(usual, slice, room quantity.Temperature) []working.Message {
	if usual.IsZero() || math.Round(slice.Celsius()) <= math.Round(usual.Celsius()) { // as it is told
		return nil
	}
	return []working.Message{working.Tell("bake.warm_room",
		"cut at %.0f, not at the usual %.0f: the room has %.0f, and the last degrees towards it take hours",
		slice, usual, room)}
}

// roll is the largest piece that is eaten as a roll; half a pound is where bread begins in 21 CFR 136.3.
var roll = quantity.Grams(226.796)

// restOf is how long a loaf rests before it cuts well, beyond cooling. From memory: 12 to 24 h for rye; rye rolls are
// eaten the day they are baked (common practice, no source).
func restOf(s Style, baked quantity.Mass) time.Duration {
	if s == Rye && baked.Compare(roll) > 0 {
		return 12 * time.Hour
	}
	return 0
}

// String prints "1h5m to 2h10m (80 %), likely 1h29m, until the core is at 35 °C".
func (c CoolingTime) String() string { return c.message().String() }

func (c CoolingTime) message() working.Message {
	switch {
	case c.Warm:
		return working.Tell("bake.cooling_warm", "eaten warm: %v, until the core is at %v", c.Ready, c.Slice)
	case c.Rest > 0:
		return working.Tell("bake.cooling_rest", "%v, until the core is at %v; %v cuts best after %v", c.Ready,
			c.Slice, c.in.Style, c.Rest)
	}
	return working.Tell("bake.cooling", "%v, until the core is at %v", c.Ready, c.Slice)
}

// Cautions says what goes wrong with warm bread.
func (c CoolingTime) Cautions() []working.Caution { return coolingCautions() }
