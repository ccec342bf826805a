package mixing

import (
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

// Way names a way to the target temperature when plain water does not reach it.
type Way int

// The ways, in the order in which they are offered.
const (
	_ Way = iota
	// Ice replaces part of the water.
	Ice
	// ChilledWater is water from the refrigerator instead of the tap.
	ChilledWater
	// ChilledFlour is flour (or the factor named) cooled beforehand.
	ChilledFlour
	// WarmFlour is flour (or the factor named) warmed beforehand.
	WarmFlour
	// WarmLevain is a levain that is used warm.
	WarmLevain
	// WarmFlourAndLevain is both.
	WarmFlourAndLevain
	// WarmPart is another part of the dough that is warmed: milk, eggs, a soaker.
	WarmPart
	// ShorterMixing brings less friction.
	ShorterMixing
	// OtherTarget is the dough temperature that the coldest or warmest water gives.
	OtherTarget
)

// WaterRemedy is one way to the target when the water asked for cannot be poured. Only the fields that
// belong to the Way are set.
type WaterRemedy struct {
	Way Way `json:"way"`
	// Text says what to do, in one sentence.
	Text working.Message `json:"text"`
	// Ice and Liquid are the weights when the water's weight and the tap's temperature were given.
	Ice    quantity.Mass `json:"ice,omitzero"`
	Liquid quantity.Mass `json:"liquid,omitzero"`
	// Factor is the name of the factor or part to cool or warm, and Temperature where to; for
	// OtherTarget the dough's.
	Factor      string               `json:"factor,omitempty"`
	Temperature quantity.Temperature `json:"temperature,omitzero"`
	// Levain is how warm the levain should be.
	Levain quantity.Temperature `json:"levain,omitzero"`
	// Rise is the warming by mixing that would do, in an answer of the heat balance.
	Rise quantity.TemperatureDelta `json:"rise,omitzero"`
	// Friction is the friction factor that would do, and Mixing the mixing time that goes with
	// it in proportion, when the mixing time was given.
	Friction quantity.TemperatureDelta `json:"friction,omitzero"`
	Mixing   quantity.Elapsed          `json:"mixing,omitzero"`
	// Enough reports whether this way reaches the target by itself.
	Enough bool `json:"enough"`

	from origin
}

// String prints what to do.
func (r WaterRemedy) String() string { return r.Text.String() }

func (r WaterResult) remedies() []WaterRemedy {
	in := r.in
	cold, warm := in.limits()
	var out []WaterRemedy
	tooWarmATap := in.Tap.IsValid() && r.Temperature.Compare(in.Tap) < 0
	switch {
	case r.Temperature.Compare(cold) < 0 || tooWarmATap:
		out = append(out, r.ice()...)
		if tooWarmATap && r.Temperature.Compare(cold) >= 0 {
			out = append(out, chillWater(working.Say("%v", Water), r.Temperature))
		}
		if r.Temperature.Compare(cold) < 0 {
			out = append(out, r.factorAt(ChilledFlour, cold), r.lessFriction(cold), r.otherTarget(cold))
		}
	case r.Temperature.Compare(warm) > 0:
		out = append(out, r.factorAt(WarmFlour, warm), r.otherTarget(warm))
	}
	return out
}

func chillWater(pours working.Message, t quantity.Temperature) WaterRemedy {
	return WaterRemedy{
		Way: ChilledWater, Temperature: t, Enough: true,
		Text: working.Tell("mixing.remedy_chill_water", "chill the %v to %.1f in the refrigerator", pours, t),
	}
}

func (r WaterResult) ice() []WaterRemedy {
	in := r.in
	m := WaterRemedy{Way: Ice}
	if in.Pour.IsZero() || in.Tap.IsZero() {
		m.Text = working.Tell(
			"mixing.remedy_ice_amount",
			"replace part of the water with ice; give the weight of the water and the temperature of the tap for the "+
				"amount")
		return []WaterRemedy{m}
	}
	ice, err := IceWater{Water: in.Pour, Tap: in.Tap, Need: r.Temperature, Ice: in.Ice}.Replace()
	if err != nil {
		return nil
	}
	m.Ice, m.Liquid, m.Enough, m.Text = ice.Ice, ice.Liquid, ice.Feasible, ice.Message()
	m.from.ice = &ice
	return []WaterRemedy{m}
}

// factorAt finds what the flour (or else the first factor) must be for the water to be `limit`.
func (r WaterResult) factorAt(way Way, limit quantity.Temperature) WaterRemedy {
	in := r.in
	k := 0
	for i, o := range in.Others {
		if o.Kind == FlourFactor {
			k = i
			break
		}
	}
	o := in.Others[k]
	// The water moves by as much as the factor, the other way.
	t := o.Temperature.Add(r.Temperature.Sub(limit))
	m := WaterRemedy{
		Way: way, Factor: o.label(k), Temperature: t, Enough: t.Compare(coldestFlour) >= 0 &&
			t.Compare(warmestFlour) <= 0,
		from: origin{asked: r.Temperature, limit: limit, factor: &o, number: k},
	}
	name := o.told(k)
	switch {
	case !m.Enough && way == WarmFlour:
		m.Text = working.Tell(
			"mixing.remedy_warm_not_enough", "warming helps but does not do it alone: the %v would have to be at %.1f",
			name, t)
	case !m.Enough:
		m.Text = working.Tell(
			"mixing.remedy_chill_not_enough", "chilling helps but does not do it alone: the %v would have to be at "+
				"%.1f", name, t)
	case way == WarmFlour:
		m.Text = working.Tell("mixing.remedy_warm_factor", "warm the %v to %.1f, with water at %.1f", name, t, limit)
	default:
		m.Text = working.Tell("mixing.remedy_chill_factor", "chill the %v to %.1f, with water at %.1f", name, t, limit)
	}
	return m
}

func (r WaterResult) lessFriction(limit quantity.Temperature) WaterRemedy {
	in := r.in
	f := in.Friction.Sub(limit.Sub(r.Temperature))
	m := WaterRemedy{
		Way: ShorterMixing, Friction: f, Enough: f.Sign() >= 0,
		from: origin{asked: r.Temperature, limit: limit, friction: r.Friction, mixing: in.Mixing},
	}
	m.Text = working.Tell(
		"mixing.remedy_mix_less",
		"mix less: a friction factor of %.1f instead of %.1f would do, and folds later", f, in.Friction)
	if m.Enough && in.Friction.Sign() > 0 && in.Mixing > 0 {
		m.Mixing = proportion(in.Mixing, f.Celsius()/in.Friction.Celsius())
		m.Text = working.Tell("mixing.remedy_mix_less_minutes", "%v, about %v of mixing", m.Text, m.Mixing)
	}
	if !m.Enough {
		m.Text = working.Tell("mixing.remedy_mix_less_not_enough", "less mixing helps but does not do it alone")
	}
	return m
}

// otherTarget is the dough temperature with the water at the limit: the water moves n times as
// much as the target.
func (r WaterResult) otherTarget(limit quantity.Temperature) WaterRemedy {
	in := r.in
	t := in.Target.Add(limit.Sub(r.Temperature).Divide(int64(in.Count())))
	return WaterRemedy{
		Way: OtherTarget, Temperature: t, Enough: true,
		Text: working.Tell("mixing.remedy_other_target", "take the %v at %.1f and expect a dough of %.1f", Water, limit,
			t),
		from: origin{asked: r.Temperature, limit: limit, target: in.Target, friction: r.Friction},
	}
}

// proportion is a share of a time, to the second.
func proportion(t quantity.Elapsed, share float64) quantity.Elapsed {
	return quantity.Elapsed(time.Duration(float64(t) * share).Round(time.Second))
}
