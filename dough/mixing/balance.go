package mixing

import (
	"strconv"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

// Portion is something that goes into the bowl with a temperature of its own.
type Portion struct {
	Name        string               `json:"name,omitempty"`
	Mass        quantity.Mass        `json:"mass"`
	Temperature quantity.Temperature `json:"temperature,omitzero"`
	Substance   Substance            `json:"substance,omitzero"`
	Hydration   quantity.Percent     `json:"hydration,omitzero"` // of a Levain
	// SpecificHeat, when not zero, is used instead of the substance's.
	SpecificHeat SpecificHeat `json:"specific_heat,omitzero"`
	// Warmest is how warm it may be made before mixing, where warming it is a way to a warmer dough: milk, eggs, a soaker.
	// Not given: it goes in as it is, but for the flour and the levain.
	Warmest quantity.Temperature `json:"warmest,omitzero"`
}

func (i Portion) heat() SpecificHeat {
	if i.SpecificHeat != 0 {
		return i.SpecificHeat
	}
	c, _ := i.Substance.Heat(i.Hydration)
	return c
}

// Balance is the heat that goes into a dough and out of it. The zero values of bowl, room, hydration,
// mixing work and ice leave them out.
type Balance struct {
	// Ingredients are all but the water: flour, levain, salt, fat.
	Ingredients []Portion `json:"ingredients,omitempty"`
	// Water is the water poured, ice included, and WaterTemperature how it comes.
	Water            quantity.Mass        `json:"water"`
	WaterTemperature quantity.Temperature `json:"water_temperature,omitzero"`
	// Ice is how much of Water is ice, at IceTemperature (not given: 0 °C). [Balance.IceFor] finds it.
	Ice            quantity.Mass        `json:"ice,omitzero"`
	IceTemperature quantity.Temperature `json:"ice_temperature,omitzero"`

	// Bowl is the heat capacity of bowl and hook, as far as they follow the dough: half a kJ/K for
	// each kilogram of steel. BowlTemperature not given is that of the room.
	Bowl            HeatCapacity         `json:"bowl,omitzero"`
	BowlTemperature quantity.Temperature `json:"bowl_temperature,omitzero"`
	// RoomExchange is how much heat dough and room exchange during mixing for every kelvin between them:
	// h·A·t ÷ 1000 kJ/K for a surface of A m² that meets the air for t seconds, with h about 8 to 9 W/(m²·K)
	// in still air. The temperature at the end stands for the mix, which is fair while the exchange is a small
	// part of the balance.
	RoomExchange HeatCapacity         `json:"room_exchange,omitzero"`
	Room         quantity.Temperature `json:"room,omitzero"`

	// Hydration is the heat of wetting for each kilogram of dry flour ([FlourHydrationHeat]).
	Hydration SpecificEnergy `json:"hydration,omitzero"`
	// Mixing is the work of mixing for each kilogram of dough ([WattHoursPerKilogram], [Motor.Work]).
	Mixing SpecificEnergy `json:"mixing,omitzero"`
	// Rise, instead of Mixing, is by how much mixing warms the dough above the temperature at which everything
	// in the balance meets: what [Logged.Warming] measures. A rise that was measured holds the heat of wetting
	// already: leave Hydration out then. It may be negative: a cold bowl takes heat.
	Rise quantity.TemperatureDelta `json:"rise,omitzero"`

	// WaterHeat, when not zero, replaces the specific heat of water, 4.186: milk, 3.85, may take its place.
	WaterHeat SpecificHeat `json:"water_heat,omitzero"`
	// Coldest and Warmest bound the water that can be poured, as in [Factors].
	Coldest quantity.Temperature `json:"coldest,omitzero"`
	Warmest quantity.Temperature `json:"warmest,omitzero"`
	// Pours is what is poured where it is not water, with its heat where WaterHeat gives none; Liquids are the baker's
	// names of it. Answers speak of them.
	Pours   Substance `json:"pours,omitzero"`
	Liquids []string  `json:"liquids,omitempty"`
}

// pours names what is poured.
func (b Balance) pours() working.Message {
	switch names := make([]any, len(b.Liquids)); {
	case len(names) > 0:
		for i, name := range b.Liquids {
			names[i] = working.Say("%s", name)
		}
		return working.And(names...)
	case b.Pours != 0:
		return working.Say("%v", b.Pours)
	}
	return working.Say("%v", Water)
}

// checkPours reports what cannot be poured, and takes its heat.
func (b *Balance) checkPours(p *quantity.Problems) {
	p.Int("Liquids", len(b.Liquids), 0, 200)
	if b.Pours == 0 || !substances.Check(p, "Pours", b.Pours) {
		return
	}
	heat, _ := b.Pours.Heat(quantity.NewPercent(100))
	if heat < leastPour {
		p.Add("Pours", b.Pours, quantity.Tell("mixing.want_liquid_water_milk_or_egg", "a liquid: water, milk or egg"),
			quantity.ErrOutOfRange)
	} else if b.WaterHeat == 0 {
		b.WaterHeat = heat
	}
}

// poursWater reports whether it is water: ice would thin milk.
func (b Balance) poursWater() bool { return len(b.Liquids) == 0 && (b.Pours == 0 || b.Pours == Water) }

// A term is one part of a balance: its heat capacity and its temperature.
type term struct {
	name        string
	is          FactorKind // the factor that it stands for in the factor method
	capacity    HeatCapacity
	temperature quantity.Temperature
}

// Find is what a balance is solved for.
type Find int

// What a balance can find.
const (
	_ Find = iota
	// FindDough: the temperature of the dough at the end of mixing.
	FindDough
	// FindWater: the temperature of the water.
	FindWater
	// FindIce: the part of the water to replace with ice.
	FindIce
	// FindFlour: the temperature of the flour.
	FindFlour
)

// BalanceResult is the answer of the methods of [Balance].
type BalanceResult struct {
	answer

	Found Find `json:"found"`
	// Dough, Water, Flour and Ice describe the solved balance; three were given and one was found. Flour
	// is not set when there is none.
	Dough quantity.Temperature `json:"dough,omitzero"`
	Water quantity.Temperature `json:"water,omitzero"`
	Flour quantity.Temperature `json:"flour,omitzero"`
	Ice   quantity.Mass        `json:"ice,omitzero"`
	// Feasible reports whether what was found can be done: water that can be poured, no more ice than
	// water, flour between −25 and 40 °C, a dough above freezing.
	Feasible bool `json:"feasible"`
	// Sensitivity is how much the dough moves for each degree of water: by the factor method
	// always 1 ÷ n, by the balance the water's share of the heat capacity.
	Sensitivity float64 `json:"sensitivity"`
	// HeatAdded is the heat of mixing work and hydration, in kJ.
	HeatAdded float64       `json:"heat_added"`
	Remedies  []WaterRemedy `json:"remedies,omitempty"`

	terms   []term // all parts with their capacities, the water first
	in      Balance
	target  quantity.Temperature
	mix     quantity.Mass
	total   float64 // kJ/K
	heatSum float64 // Σ C·T of everything but the unknown, kJ with 0 °C as zero
	wanted  float64 // the unknown before rounding, °C or g
}

// What flour and levain can be brought to at home. A freezer is at −18 °C or colder; flour above 40 °C and a ripe
// levain above 30 °C suffer. Judgment.
var (
	coldestFlour  = quantity.Celsius(-25)
	warmestFlour  = quantity.Celsius(40)
	warmestLevain = quantity.Celsius(30)
)

const (
	mostRise  = 40.0 // Δ°C
	leastPour = 3.0  // kJ/(kg·K), below that of egg
)

func (b *Balance) check(p *quantity.Problems, needWater, needFlour bool) {
	if len(b.Ingredients) == 0 {
		p.Required("Ingredients", quantity.Tell("mixing.want_flour_and_whatever_else_goes",
			"flour and whatever else goes into the bowl"))
	}
	if len(b.Ingredients) > 200 {
		p.Add("Ingredients", quantity.Tell("mixing.got_ingredients", "%d ingredients", len(b.Ingredients)),
			quantity.Tell("mixing.want_1_to_200", "1 to 200"), quantity.ErrOutOfRange)
		return
	}
	for i, g := range b.Ingredients {
		g.check(p, "Ingredients["+strconv.Itoa(i)+"]", !needFlour || g.Substance != Flour)
	}
	water := quantity.Check(p, "Water", b.Water, quantity.Grams(1), mostMass)
	b.checkPours(p)
	if needWater || !b.WaterTemperature.IsZero() {
		quantity.Check(p, "WaterTemperature", b.WaterTemperature, coldestDough, hottestThing)
	}
	if quantity.Check(p, "Ice", b.Ice, quantity.Mass{}, mostMass) && water && b.Ice.Compare(b.Water) > 0 {
		p.Add("Ice", b.Ice, quantity.Tell("mixing.want_at_most_water", "at most the water, %v", b.Water),
			quantity.ErrInconsistent)
	}
	if b.IceTemperature.IsZero() {
		b.IceTemperature = coldestDough
	}
	quantity.Check(p, "IceTemperature", b.IceTemperature, leastIce, coldestDough)
	p.Float("Bowl", float64(b.Bowl), 0, 1000, "kJ/K")
	p.Float("RoomExchange", float64(b.RoomExchange), 0, 1000, "kJ/K")
	if b.Bowl > 0 || b.RoomExchange > 0 {
		if b.BowlTemperature.IsZero() {
			b.BowlTemperature = b.Room
		}
		if b.RoomExchange > 0 || b.BowlTemperature.IsZero() {
			quantity.Check(p, "Room", b.Room, coldestThing, hottestThing)
		}
		if b.Bowl > 0 && !b.BowlTemperature.IsZero() {
			quantity.Check(p, "BowlTemperature", b.BowlTemperature, coldestThing, hottestThing)
		}
	}
	p.Float("Hydration", float64(b.Hydration), 0, 50, "kJ/kg")
	p.Float("Mixing", float64(b.Mixing), 0, 200, "kJ/kg")
	quantity.Check(p, "Rise", b.Rise, quantity.DeltaCelsius(-10), quantity.DeltaCelsius(mostRise))
	if b.Rise.Sign() != 0 && b.Mixing != 0 {
		p.Add("Rise", b.Rise, quantity.Tell("mixing.want_either_rise_or_work_mixing",
			"either the rise or the work of mixing, not both"), quantity.ErrInconsistent)
	}
	if b.WaterHeat == 0 {
		b.WaterHeat = heatWater
	}
	p.Float("WaterHeat", float64(b.WaterHeat), leastPour, 4.4, "kJ/(kg·K)")
	if b.Coldest.IsZero() {
		b.Coldest = defaultColdest()
	}
	if b.Warmest.IsZero() {
		b.Warmest = defaultWarmest()
	}
	quantity.Check(p, "Coldest", b.Coldest, coldestDough, hottestThing)
	quantity.Check(p, "Warmest", b.Warmest, coldestDough, hottestThing)
	if b.Coldest.Compare(b.Warmest) > 0 {
		p.Add("Warmest", b.Warmest, quantity.Tell("mixing.want_not_below_coldest", "not below the coldest, %v", b.Coldest),
			quantity.ErrInconsistent)
	}
}

// label is its name, or else the word of its substance.
func (i Portion) label() string {
	if i.Name == "" {
		return i.Substance.String()
	}
	return i.Name
}

func (i Portion) check(p *quantity.Problems, path string, needTemperature bool) {
	checkName(p, path+".Name", i.Name)
	quantity.Check(p, path+".Mass", i.Mass, quantity.Mass{}, mostMass)
	if needTemperature || !i.Temperature.IsZero() {
		quantity.Check(p, path+".Temperature", i.Temperature, coldestThing, hottestThing)
	}
	if !i.Warmest.IsZero() {
		quantity.Check(p, path+".Warmest", i.Warmest, coldestThing, hottestThing)
	}
	if i.SpecificHeat != 0 {
		p.Float(path+".SpecificHeat", float64(i.SpecificHeat), 0.1, 6, "kJ/(kg·K)")
	} else {
		substances.Check(p, path+".Substance", i.Substance)
	}
	if i.Substance == Levain {
		quantity.Check(p, path+".Hydration", i.Hydration, quantity.Percent{}, quantity.MustPercent("1000 %"))
	}
}

// terms lists capacities and temperatures, water first and then the ingredients, bowl and room.
func (b Balance) terms() []term {
	out := make([]term, 0, len(b.Ingredients)+3)
	out = append(out, term{Water.String(), OtherFactor, HeatCapacity(b.Water.Kilograms()) * HeatCapacity(b.WaterHeat),
		b.WaterTemperature})
	for _, i := range b.Ingredients {
		is := OtherFactor
		switch i.Substance {
		case Flour:
			is = FlourFactor
		case Levain:
			is = LevainFactor
		}
		out = append(out, term{i.label(), is, HeatCapacity(i.Mass.Kilograms()) * HeatCapacity(i.heat()), i.Temperature})
	}
	if b.Bowl > 0 {
		out = append(out, term{BowlFactor.String(), BowlFactor, b.Bowl, b.BowlTemperature})
	}
	if b.RoomExchange > 0 {
		out = append(out, term{RoomFactor.String(), RoomFactor, b.RoomExchange, b.Room})
	}
	return out
}

func (b Balance) dryFlour() quantity.Mass {
	var m quantity.Mass
	for _, i := range b.Ingredients {
		if i.Substance == Flour {
			m = m.Add(i.Mass)
		}
	}
	return m
}

// dough is the mass of everything in the bowl.
func (b Balance) dough() quantity.Mass {
	m := b.Water
	for _, i := range b.Ingredients {
		m = m.Add(i.Mass)
	}
	return m
}

// iceHeat is what the ice lacks against the same mass of water at the tap's temperature, kJ per kg.
func (b Balance) iceHeat() float64 {
	return float64(b.WaterHeat)*b.WaterTemperature.Celsius() + latentHeat - heatIce*b.IceTemperature.Celsius()
}

func (b Balance) start(u Find, target quantity.Temperature, p *quantity.Problems) (BalanceResult, error) {
	b.Ingredients = append([]Portion(nil), b.Ingredients...)
	b.check(p, u != FindWater || b.Ice.Sign() != 0, u == FindFlour)
	if u != FindDough {
		quantity.Check(p, "target", target, coldestDough, hottestDough)
	}
	if u == FindFlour && p.Err() == nil && b.dryFlour().IsZero() {
		p.Add("Ingredients", quantity.Tell("mixing.got_no_flour", "no flour"),
			quantity.Tell("mixing.want_flour_whose_temperature_asked",
				"flour, whose temperature is asked for"), quantity.ErrInconsistent)
	}
	if u == FindIce {
		b.Ice = quantity.Mass{}
	}
	if err := p.ErrFor(b); err != nil {
		return BalanceResult{}, err
	}
	r := BalanceResult{Found: u, Dough: target, Water: b.WaterTemperature, Ice: b.Ice, in: b, target: target,
		terms: b.terms()}
	r.mix = b.dough()
	if !r.mix.IsValid() {
		p.Add("Ingredients", quantity.Tell("mixing.got_dough_beyond_all_limits", "a dough beyond all limits"),
			quantity.Tell("mixing.want_at_most", "at most %v", mostMass), quantity.ErrOutOfRange)
		return BalanceResult{}, p.ErrFor(b)
	}
	for _, t := range r.terms {
		r.total += float64(t.capacity)
	}
	r.HeatAdded = b.Hydration.of(b.dryFlour()) + b.Mixing.of(r.mix) + b.Rise.Celsius()*r.total
	r.Sensitivity = float64(r.terms[0].capacity) / r.total
	return r, nil
}

// known sums C·T over the terms that skip does not leave out, with heat added and ice taken off.
func (r *BalanceResult) known(skip func(i int, t term) bool) float64 {
	sum := r.HeatAdded
	for i, t := range r.terms {
		if !skip(i, t) {
			sum += float64(t.capacity) * t.temperature.Celsius()
		}
	}
	if r.in.Ice.Sign() > 0 {
		sum -= r.in.Ice.Kilograms() * r.in.iceHeat()
	}
	return sum
}

// isSubstance reports whether the i-th term is an ingredient of the substance.
func (r *BalanceResult) isSubstance(i int, s Substance) bool {
	return i >= 1 && i <= len(r.in.Ingredients) && r.in.Ingredients[i-1].Substance == s
}

func (r *BalanceResult) flourTerm(i int) bool { return r.isSubstance(i, Flour) }

func (r *BalanceResult) meanFlour() quantity.Temperature {
	c, h := 0.0, 0.0
	for i, t := range r.terms {
		if r.flourTerm(i) {
			c += float64(t.capacity)
			h += float64(t.capacity) * t.temperature.Celsius()
		}
	}
	return quantity.Celsius(h / c) // no flour: NaN, which is "not given"
}
