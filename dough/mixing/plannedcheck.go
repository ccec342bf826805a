package mixing

import (
	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/numeric"
)

func within(t, low, high quantity.Temperature) quantity.Temperature {
	switch {
	case t.Compare(low) < 0:
		return low
	case t.Compare(high) > 0:
		return high
	}
	return t
}

func (in Planned) clone() Planned {
	in.Ingredients = append([]Portion(nil), in.Ingredients...)
	in.Speeds = append([]quantity.Elapsed(nil), in.Speeds...)
	in.Liquids = append([]string(nil), in.Liquids...)
	return in
}

// check finds what is wrong with the input, and the balance that stands for it.
func (in Planned) check(p *quantity.Problems, r *PlannedWater) Balance {
	quantity.Check(p, "Target", in.Target, coldestDough, hottestDough)
	room := quantity.Check(p, "Room", in.Room, coldestThing, hottestThing)
	b := Balance{
		Ingredients: append([]Portion(nil), in.Ingredients...), Water: in.Water, WaterTemperature: in.Tap,
		IceTemperature: in.Ice,
		Coldest:        in.Coldest, Warmest: in.Warmest, Pours: in.Pours, Liquids: in.Liquids,
	}
	for i := range b.Ingredients {
		if b.Ingredients[i].Temperature.IsZero() && room {
			b.Ingredients[i].Temperature = in.Room
		}
	}
	b.check(p, false, false)
	p.Duration("Mixing", in.Mixing.Duration(), 0, mostMixing)
	if !in.Probability.IsZero() {
		quantity.Check(p, "Probability", in.Probability, quantity.MustPercent("1 %"), quantity.MustPercent("99.9 %"))
	}
	in.warming(p, &b, r)
	return b
}

// warming finds by how much mixing warms the dough, and puts it into the balance.
func (in Planned) warming(p *quantity.Problems, b *Balance, r *PlannedWater) {
	switch {
	case in.Warming.Sign() != 0:
		quantity.Check(p, "Warming", in.Warming, quantity.DeltaCelsius(-10), quantity.DeltaCelsius(mostRise))
		r.Basis, r.Warming, b.Rise = GivenWarming, in.Warming, in.Warming
	case !in.Learned.IsZero():
		r.Basis = LearnedWarming
		if p.Err() == nil {
			in.learned(p, b, r)
		}
	default:
		prior, err := in.Mixer.Prior()
		if err != nil {
			mixerKinds.Check(p, "Mixer", in.Mixer)
			return
		}
		r.Basis = GuideValue
		r.Warming, _ = prior.Friction.Rise()
		b.Rise = r.Warming
	}
}

// learned puts the learned model into the balance: T·(1 + k) = T₀ + Σ r·t + k·T_bowl.
func (in Planned) learned(p *quantity.Problems, b *Balance, r *PlannedWater) {
	l := in.Learned
	batch := in.batch(quantity.Celsius(20))
	l.ready(p, "", batch, in.claim())
	if p.Err() != nil {
		return
	}
	k := l.theta[l.speeds()]
	sum := 0.0
	for j, minutes := range batch.minutes(l.speeds()) {
		sum += l.theta[j] * minutes
	}
	r.Warming = quantity.DeltaCelsius(sum - k*(in.Target.Celsius()-in.Room.Celsius()))
	b.Rise = r.Warming
	if k > 0 {
		_, capacity := batch.meeting(0)
		b.Bowl, b.BowlTemperature = HeatCapacity(k*capacity), in.Room
		b.Rise = quantity.DeltaCelsius(sum / (1 + k))
	}
	b.Hydration = l.in.Hydration
}

func (in Planned) claim() quantity.Percent {
	if in.Probability.IsZero() {
		return quantity.NewPercent(80)
	}
	return in.Probability
}

// batch is the plan as a batch of the log, with its water at a temperature.
func (in Planned) batch(water quantity.Temperature) Logged {
	out := Logged{Bowl: in.Room, Speeds: in.Speeds, Extrapolate: in.Extrapolate}
	for _, i := range in.Ingredients {
		if i.Temperature.IsZero() {
			i.Temperature = in.Room
		}
		out.Ingredients = append(out.Ingredients, i)
	}
	pours := in.Pours
	if pours == 0 {
		pours = Water
	}
	out.Ingredients = append(out.Ingredients, Portion{
		Name: pours.String(), Mass: in.Water, Temperature: water, Substance: pours, Hydration: quantity.NewPercent(100),
	})
	return out
}

// expect is the range of the dough about its likely temperature.
func (in Planned) expect(
	likely quantity.Temperature, basis WarmingBasis, warming quantity.TemperatureDelta,
) (quantity.Range[quantity.Temperature], error) {
	out := quantity.Range[quantity.Temperature]{Likely: likely, Probability: in.claim()}
	upper := 0.5 + out.Probability.Fraction()/2
	var low, high float64
	switch basis {
	case GuideValue:
		prior, err := in.Mixer.Prior()
		if err != nil {
			return out, err
		}
		// The published figures are taken as an 80 % range about the guide value. Judgment.
		z, err := numeric.NormalQuantile(upper)
		if err != nil {
			return out, err
		}
		const z80 = 1.2815515655446004
		low = prior.Low.Sub(prior.Friction.Factor).Celsius() / 3 * z / z80
		high = prior.High.Sub(prior.Friction.Factor).Celsius() / 3 * z / z80
	case GivenWarming:
		q, err := numeric.StudentQuantile(upper, priorFreedom)
		if err != nil {
			return out, err
		}
		low, high = -q*thermometer0, q*thermometer0
	case LearnedWarming:
		prediction, err := in.Learned.Predict(in.batch(quantity.Celsius(20)), out.Probability)
		if err != nil {
			return out, err
		}
		half := prediction.quantile * prediction.spread
		low, high = -half, half
	}
	out.Low, out.High = likely.Add(quantity.DeltaCelsius(low)), likely.Add(quantity.DeltaCelsius(high))
	return out, nil
}
