package mixing_test

import (
	"testing"
	"time"

	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
)

// Each field takes what its documentation says, to the edge, and nothing beyond.
func TestBounds(t *testing.T) {
	celsius, delta, percent := quantity.Celsius, quantity.DeltaCelsius, quantity.NewPercent
	hours := func(h float64) quantity.Elapsed { return quantity.Elapsed(h * float64(time.Hour)) }
	factors := func(change func(*mixing.Factors, float64)) func(float64) error {
		return func(x float64) error {
			in := mixing.Factors{Target: celsius(25), Others: []mixing.Factor{{Temperature: celsius(25)}}}
			change(&in, x)
			return second(in.Water())
		}
	}
	ice := func(change func(*mixing.IceWater, float64)) func(float64) error {
		return func(x float64) error {
			in := mixing.IceWater{Water: quantity.Grams(1000), Tap: celsius(20), Need: celsius(10)}
			change(&in, x)
			return second(in.Replace())
		}
	}
	balance := func(change func(*mixing.Balance, float64)) func(float64) error {
		return func(x float64) error {
			in := mixing.Balance{
				Ingredients: []mixing.Portion{
					{Mass: quantity.Grams(1000), Temperature: celsius(20), Substance: mixing.Flour},
				},
				Water: quantity.Grams(650), WaterTemperature: celsius(20), Room: celsius(20),
			}
			change(&in, x)
			return second(in.Final())
		}
	}
	log := func(change func(*mixing.Log, float64)) func(float64) error {
		return func(x float64) error {
			b := planned(20, 20, 20, 20, time.Minute, time.Minute)
			b.Dough = celsius(22)
			in := mixing.Log{Kind: mixing.Spiral, Batches: []mixing.Logged{b}}
			change(&in, x)
			return second(in.Learn())
		}
	}
	mix := func(change func(*mixing.Mix, float64)) func(float64) error {
		return func(x float64) error {
			in := mixing.Mix{Mixer: mixing.Planetary, Bowl: quantity.Liters(5), Flour: quantity.Grams(500),
				Water: quantity.Grams(300), Dough: quantity.Grams(1500)}
			change(&in, x)
			return second(in.Fit())
		}
	}
	scald := func(change func(*mixing.Scald, float64)) func(float64) error {
		return func(x float64) error {
			in := mixing.Scald{Flour: quantity.Grams(100), FlourTemperature: celsius(20), Water: quantity.Grams(200)}
			change(&in, x)
			return second(in.Pour())
		}
	}
	plan := func(change func(*mixing.Planned, float64)) func(float64) error {
		return func(x float64) error {
			in := hallPlan()
			change(&in, x)
			return second(in.Pour())
		}
	}
	const step = 0.001
	for name, c := range map[string]struct {
		low, high float64
		ask       func(float64) error
	}{
		"target":   {0, 50, factors(func(f *mixing.Factors, x float64) { f.Target = celsius(x) })},
		"other":    {-40, 95, factors(func(f *mixing.Factors, x float64) { f.Others[0].Temperature = celsius(x) })},
		"friction": {-90, 90, factors(func(f *mixing.Factors, x float64) { f.Friction = delta(x) })},
		"coldest": {0, 95, factors(func(f *mixing.Factors, x float64) {
			f.Coldest, f.Warmest = celsius(x),
				celsius(95)
		})},
		"warmest":       {1, 95, factors(func(f *mixing.Factors, x float64) { f.Warmest = celsius(x) })},
		"tap":           {0, 95, factors(func(f *mixing.Factors, x float64) { f.Tap = celsius(x) })},
		"ice of water":  {-40, 0, factors(func(f *mixing.Factors, x float64) { f.Ice = celsius(x) })},
		"mixing":        {0, 4, factors(func(f *mixing.Factors, x float64) { f.Mixing = hours(x) })},
		"ice, tap":      {0, 60, ice(func(f *mixing.IceWater, x float64) { f.Tap = celsius(x) })},
		"ice, need":     {-270, 60, ice(func(f *mixing.IceWater, x float64) { f.Need = celsius(x) })},
		"ice":           {-40, 0, ice(func(f *mixing.IceWater, x float64) { f.Ice = celsius(x) })},
		"melting":       {70, 90, ice(func(f *mixing.IceWater, x float64) { f.Melting = delta(x) })},
		"bowl capacity": {0, 1000, balance(func(b *mixing.Balance, x float64) { b.Bowl = mixing.HeatCapacity(x) })},
		"exchange":      {0, 1000, balance(func(b *mixing.Balance, x float64) { b.RoomExchange = mixing.HeatCapacity(x) })},
		"hydration":     {0, 50, balance(func(b *mixing.Balance, x float64) { b.Hydration = mixing.SpecificEnergy(x) })},
		"work":          {0, 200, balance(func(b *mixing.Balance, x float64) { b.Mixing = mixing.SpecificEnergy(x) })},
		"rise":          {-10, 40, balance(func(b *mixing.Balance, x float64) { b.Rise = delta(x) })},
		"water heat":    {3, 4.4, balance(func(b *mixing.Balance, x float64) { b.WaterHeat = mixing.SpecificHeat(x) })},
		"specific heat": {0.1, 6, balance(func(b *mixing.Balance,
			x float64) {
			b.Ingredients[0].SpecificHeat = mixing.SpecificHeat(x)
		})},
		"levain": {0, 1000, balance(func(b *mixing.Balance, x float64) {
			b.Ingredients[0].Substance, b.Ingredients[0].Hydration = mixing.Levain, percent(x)
		})},
		"ice in bowl":   {-40, 0, balance(func(b *mixing.Balance, x float64) { b.IceTemperature = celsius(x) })},
		"thermometer":   {0.05, 10, log(func(l *mixing.Log, x float64) { l.Thermometer = delta(x) })},
		"bowl share":    {0, 200, log(func(l *mixing.Log, x float64) { l.Bowl, l.BowlSpread = percent(x), percent(10) })},
		"bowl spread":   {0.01, 200, log(func(l *mixing.Log, x float64) { l.Bowl, l.BowlSpread = percent(10), percent(x) })},
		"wetting":       {0, 50, log(func(l *mixing.Log, x float64) { l.Hydration = mixing.SpecificEnergy(x) })},
		"minutes":       {0, 4, log(func(l *mixing.Log, x float64) { l.Batches[0].Speeds[0] = hours(x) })},
		"bowl":          {0.5, 400, mix(func(m *mixing.Mix, x float64) { m.Bowl = quantity.Liters(x) })},
		"absorption":    {20, 150, mix(func(m *mixing.Mix, x float64) { m.Water = quantity.Grams(5 * x) })},
		"mash":          {40, 95, scald(func(s *mixing.Scald, x float64) { s.Mash = celsius(x) })},
		"scalded flour": {-25, 60, scald(func(s *mixing.Scald, x float64) { s.FlourTemperature = celsius(x) })},
		"scald water":   {50, 2000, scald(func(s *mixing.Scald, x float64) { s.Water = quantity.Grams(x) })},
		"scald bowl":    {0, 1000, scald(func(s *mixing.Scald, x float64) { s.Bowl = mixing.HeatCapacity(x) })},
		"altitude":      {0, 6000, scald(func(s *mixing.Scald, x float64) { s.Altitude = quantity.Meters(x) })},
		"warming":       {-10, 40, plan(func(p *mixing.Planned, x float64) { p.Warming = delta(x) })},
		"room":          {-40, 95, plan(func(p *mixing.Planned, x float64) { p.Room = celsius(x) })},
		"probability":   {1, 99.9, plan(func(p *mixing.Planned, x float64) { p.Probability = percent(x) })},
		"plan, minutes": {0, 4, plan(func(p *mixing.Planned, x float64) { p.Mixing = hours(x) })},
		"salt": {0, 3, func(x float64) error {
			return second(mixing.DoughChange{SaltFrom: percent(x), SaltTo: percent(2)}.Effect())
		}},
		"changed dough": {5, 40, func(x float64) error {
			return second(mixing.DoughChange{From: celsius(x), To: celsius(x)}.Effect())
		}},
		"development": {1.0 / 60, 0.5,
			func(x float64) error { return second(mixing.DoughChange{Development: hours(x)}.Effect()) }},
		"motor": {0, 100_000, func(x float64) error {
			return second(mixing.Motor{Watts: x, Time: 1,
				Dough: quantity.Grams(1)}.Work())
		}},
		"motor share": {0, 100, func(x float64) error {
			return second(mixing.Motor{Share: percent(x), Time: 1, Dough: quantity.Grams(1)}.Work())
		}},
		"energy": {-1000, 1000, func(x float64) error { return second(mixing.SpecificEnergy(x).Warming(2.8)) }},
		"energy's heat": {0.1, 6, func(x float64) error {
			return second(mixing.SpecificEnergy(1).Warming(mixing.SpecificHeat(x)))
		}},
		"rise to friction": {-90, 90, func(x float64) error { return second(mixing.FrictionOf(delta(x), 2)) }},
	} {
		for _, x := range []float64{c.low, c.high} {
			if err := c.ask(x); err != nil {
				t.Errorf("%s: %v is refused: %v", name, x, err)
			}
		}
		for _, x := range []float64{c.low - step, c.high + step} {
			if x != 0 && c.ask(x) == nil {
				t.Errorf("%s: %v is accepted, beyond %v to %v", name, x, c.low, c.high)
			}
		}
	}
	for n, ok := range map[int]bool{1: true, 11: true, 12: false} {
		in := mixing.Factors{Target: celsius(25), Others: repeat(celsius(25), n)}
		if err := second(in.Water()); (err == nil) != ok {
			t.Errorf("%d other factors: %v", n, err)
		}
	}
	for n, ok := range map[int]bool{1: false, 2: true, 12: true, 13: false} {
		if err := second(mixing.FrictionOf(delta(1), n)); (err == nil) != ok {
			t.Errorf("%d factors: %v", n, err)
		}
	}
}

// Without limits given, water from 1 °C to 110 °F can be poured, both included.
func TestWaterThatCanBePoured(t *testing.T) {
	for x, ok := range map[quantity.Temperature]bool{
		quantity.Celsius(1): true, quantity.Celsius(0.99): false, quantity.Fahrenheit(110): true,
		quantity.Fahrenheit(110.1): false,
	} {
		in := mixing.Factors{Target: quantity.Celsius(25),
			Others: []mixing.Factor{{Kind: mixing.FlourFactor, Temperature: quantity.Celsius(25)}}}
		in.Friction = in.Target.Sub(x)
		if r, err := in.Water(); err != nil || r.Temperature != x || r.Feasible != ok || (len(r.Remedies) == 0) != ok {
			t.Errorf("%v: %v, %v, %v, %v", x, r.Temperature, r.Feasible, r.Remedies, err)
		}
	}
	// A remedy holds as long as flour stands between a freezer and 40 °C.
	for x, ok := range map[float64]bool{-25: true, -25.1: false} {
		in := mixing.Factors{Target: quantity.Celsius(25),
			Others: []mixing.Factor{{Kind: mixing.FlourFactor, Temperature: quantity.Celsius(25)}}}
		in.Friction = quantity.DeltaCelsius(24 + 25 - x) // water at 1 °C needs the flour at x
		r, err := in.Water()
		if err != nil || len(r.Remedies) < 2 || r.Remedies[1].Way != mixing.ChilledFlour || r.Remedies[1].Enough != ok {
			t.Errorf("flour at %v: %+v, %v", x, r.Remedies, err)
		}
	}
}

// Flour is what can be chilled, wherever it stands among the factors; the room cannot.
func TestTheFlourIsChilled(t *testing.T) {
	in := mixing.Factors{Target: quantity.Celsius(25), Friction: quantity.DeltaCelsius(30), Others: []mixing.Factor{
		{Kind: mixing.RoomFactor, Temperature: quantity.Celsius(30)},
		{Kind: mixing.LevainFactor, Temperature: quantity.Celsius(28)},
		{Kind: mixing.FlourFactor, Temperature: quantity.Celsius(22)}}}
	// Water at 4 · 25 − 30 − 28 − 22 − 30 = −10 °C; at 1 °C, which can be poured, the flour has to be 11 °C cooler.
	r, err := in.Water()
	if err != nil {
		t.Fatal(err)
	}
	for _, m := range r.Remedies {
		if m.Way == mixing.ChilledFlour {
			if m.Factor != "flour" || m.Temperature != quantity.Celsius(11) {
				t.Errorf("chill the %s to %v", m.Factor, m.Temperature)
			}
			return
		}
	}
	t.Errorf("nobody says to chill the flour: %v", r.Remedies)
}

// Mixing less is reckoned alike whether the heat of mixing was given as work or as a rise, and does what it says.
func TestLessWorkReachesTheTarget(t *testing.T) {
	for _, rise := range []bool{false, true} {
		b := hallBalance()
		for i := range b.Ingredients {
			b.Ingredients[i].Temperature = quantity.Celsius(27)
		}
		b.Room, b.Mixing = quantity.Celsius(28), 25
		if rise {
			b.Mixing, b.Rise = 0, quantity.DeltaCelsius(7)
		}
		target := quantity.Celsius(23)
		w, err := b.WaterFor(target)
		if err != nil || w.Feasible {
			t.Fatalf("%v, %v", w, err)
		}
		found := false
		for _, m := range w.Remedies {
			if m.Way != mixing.ShorterMixing {
				continue
			}
			found = true
			c := b
			c.Mixing, c.Rise, c.WaterTemperature = 0, m.Rise, quantity.Celsius(1)
			if got, err := c.Final(); err != nil || !m.Enough || !(abs(got.Dough.Sub(target).Celsius()) <= 0.001) {
				t.Errorf("with a rise of %v the dough is %v, %v; want %v (enough: %v)", m.Rise, got.Dough, err,
					target, m.Enough)
			}
		}
		if !found {
			t.Errorf("no way by mixing less: %v", w.Remedies)
		}
	}
}

func abs(x float64) float64 { return max(x, -x) }
