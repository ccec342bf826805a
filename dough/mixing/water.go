package mixing

import (
	"strconv"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// FactorKind says which temperature a factor is.
type FactorKind int

// The factors beside the water. Zero is any other.
const (
	OtherFactor FactorKind = iota
	FlourFactor
	RoomFactor
	LevainFactor
	BowlFactor
)

// Factor is one of the temperatures that act on a dough beside its water.
type Factor struct {
	Kind FactorKind `json:"kind,omitzero"`
	// Name is what the baker calls it; not given: the word of its kind.
	Name        string               `json:"name,omitempty"`
	Temperature quantity.Temperature `json:"temperature,omitzero"`
}

// Factors are the temperatures that act on a dough, as the factor method counts them.
type Factors struct {
	// Target is the dough temperature wanted at the end of mixing.
	Target quantity.Temperature `json:"target,omitzero"`
	// Others are the temperatures beside the water: flour and room, and the levain when there
	// is one. At least one, at most eleven.
	Others []Factor `json:"others,omitempty"`
	// Friction is the friction factor for this number of factors, the water included; see
	// [Measured.Friction], [Friction.For] and [MixerKind.Prior].
	Friction quantity.TemperatureDelta `json:"friction"`
	// Warming, instead of Friction, is by how much mixing warms the dough itself, whatever the number of factors.
	Warming quantity.TemperatureDelta `json:"warming,omitzero"`
	// Mixer, when given and neither Friction nor Warming is, takes the guide value for the mixer.
	Mixer MixerKind `json:"mixer,omitzero"`

	// Coldest and Warmest bound the water that can be poured. Not given: 1 °C, and 110 °F
	// (43.3 °C), above which yeast suffers.
	Coldest quantity.Temperature `json:"coldest,omitzero"`
	Warmest quantity.Temperature `json:"warmest,omitzero"`
	// Pour and Tap, when both are given, turn a need for cold into a weight of ice: the water
	// of the dough that is not yet bound in a preferment, and how cold it comes.
	Pour quantity.Mass        `json:"pour,omitzero"`
	Tap  quantity.Temperature `json:"tap,omitzero"`
	// Ice is the temperature of the ice; not given: 0 °C.
	Ice quantity.Temperature `json:"ice,omitzero"`
	// Mixing, when given, is the time that Friction stands for; it turns "less friction" into
	// minutes.
	Mixing quantity.Elapsed `json:"mixing,omitzero"`
}

// Limits of what can be asked; not of what is wise.
var (
	coldestDough = quantity.Celsius(0)
	hottestDough = quantity.Celsius(50)
	coldestThing = quantity.Celsius(-40)
	hottestThing = quantity.Celsius(95)
	leastIce     = quantity.Celsius(-40)
)

const (
	mostFactors  = 12
	mostFriction = 90.0 // Δ°C
)

func defaultColdest() quantity.Temperature { return quantity.Celsius(1) }

// defaultWarmest is 110 °F, the top of the range for yeast suspended in water. Source: TM 10-412.
func defaultWarmest() quantity.Temperature { return quantity.Fahrenheit(110) }

// WaterResult is the answer of [Factors.Water].
type WaterResult struct {
	answer

	// Temperature is what the factor method asks for. Below 0 °C it is a reckoning figure, for
	// ice to make good.
	Temperature quantity.Temperature `json:"temperature,omitzero"`
	// Feasible reports whether it lies between the coldest and the warmest water.
	Feasible bool `json:"feasible"`
	// Friction is the friction factor that was used.
	Friction Friction `json:"friction"`
	// Notes say what the friction rests on.
	Notes []working.Message `json:"notes,omitempty"`
	// Remedies are ways to the target when it is not feasible, or when the tap is too warm.
	Remedies []WaterRemedy `json:"remedies,omitempty"`

	in Factors
}

// Water answers how warm the water must be for a dough to leave the mixer at the
// wanted temperature, by the factor method.
//
//	T_water = T + Σ(T − Tᵢ) − F
//
// T is the target, Tᵢ the other temperatures, F the friction factor for this count of factors.
// It is the trade's n·T − Σ Tᵢ − F written as one temperature plus differences: the same on every
// scale. Target 0 to 50 °C, others −40 to 95 °C, friction within ±90 Δ°C. The method is as
// good as the friction factor: measured on the same mixer and the same dough weight it
// holds within about 1 °C; taken from a table it may miss by 3 °C or more.
//
// Errors: ErrRequired and ErrOutOfRange for the inputs; ErrInconsistent when the limits are
// crossed, for a friction and a warming, or when the water would lie below absolute zero. A water
// that cannot be poured is an answer, with remedies.
//
// Source: San Francisco Baking Institute, Artisan I; NAVEDTRA 14163, ch. 8.
func (in Factors) Water() (WaterResult, error) {
	var p quantity.Problems
	quantity.Check(&p, "Target", in.Target, coldestDough, hottestDough)
	checkFactors(&p, "Others", in.Others)
	quantity.Check(&p, "Friction", in.Friction, quantity.DeltaCelsius(-mostFriction),
		quantity.DeltaCelsius(mostFriction))
	in.warmed(&p)
	cold, warm := in.limits()
	quantity.Check(&p, "Coldest", cold, coldestDough, hottestThing)
	quantity.Check(&p, "Warmest", warm, coldestDough, hottestThing)
	if cold.Compare(warm) > 0 {
		p.Add("Warmest", warm, quantity.Tell("mixing.want_not_below_coldest", "not below the coldest, %v", cold),
			quantity.ErrInconsistent)
	}
	quantity.Check(&p, "Pour", in.Pour, quantity.Mass{}, mostMass)
	if !in.Tap.IsZero() {
		quantity.Check(&p, "Tap", in.Tap, coldestDough, hottestThing)
	}
	if !in.Ice.IsZero() {
		quantity.Check(&p, "Ice", in.Ice, leastIce, coldestDough)
	}
	p.Duration("Mixing", in.Mixing.Duration(), 0, mostMixing)
	notes := in.guide(&p)
	if err := p.ErrFor(in); err != nil {
		return WaterResult{}, err
	}
	in.Others = append([]Factor(nil), in.Others...)
	t := in.Target.Add(in.sum())
	if t.IsZero() {
		p.Add("Others", quantity.Tell("mixing.got_temperatures_ask_water_below_absolute",
			"temperatures that ask for water below absolute zero"),
			quantity.Tell("mixing.want_friction_and_factors_nearer_target",
				"a friction and factors nearer the target"), quantity.ErrInconsistent)
		return WaterResult{}, p.ErrFor(in)
	}
	r := WaterResult{
		Temperature: t, Feasible: t.Compare(cold) >= 0 && t.Compare(warm) <= 0, Friction: Friction{Factor: in.Friction,
			Factors: in.Count()},
		Notes: notes, in: in,
	}
	r.Remedies = r.remedies()
	return r, nil
}

// warmed takes the friction factor that a warming is with these factors.
func (in *Factors) warmed(p *quantity.Problems) {
	if in.Warming == (quantity.TemperatureDelta{}) {
		return
	}
	most := quantity.DeltaCelsius(mostFriction / float64(in.Count()))
	switch ok := quantity.Check(p, "Warming", in.Warming, most.Neg(), most); {
	case ok && in.Friction.Sign() != 0:
		p.Add("Warming", in.Warming, quantity.Tell("mixing.want_friction_or_warming",
			"it without a friction factor, which says as much"), quantity.ErrInconsistent)
	case ok:
		in.Friction, in.Warming = in.Warming.Times(int64(in.Count())), quantity.TemperatureDelta{}
	}
}

// Weighed is the same dough for the heat balance, which counts everything by its weight: with the weights of all but
// the water to pour, which is the Pour. The room is that among the others; a guide value is the balance's own.
func (in Factors) Weighed(ingredients ...Portion) Planned {
	out := Planned{
		Target: in.Target, Ingredients: ingredients, Water: in.Pour, Warming: in.Warming, Mixer: in.Mixer, Tap: in.Tap,
		Ice: in.Ice, Coldest: in.Coldest, Warmest: in.Warmest, Mixing: in.Mixing,
	}
	for _, o := range in.Others {
		if o.Kind == RoomFactor {
			out.Room = o.Temperature
		}
	}
	if in.Friction.Sign() != 0 {
		out.Warming = in.Friction.Divide(int64(in.Count()))
	}
	return out
}

// guide takes the guide value of the mixer when no friction was given, and says so.
func (in *Factors) guide(p *quantity.Problems) []working.Message {
	if in.Mixer == 0 || in.Friction.Sign() != 0 || !mixerKinds.Check(p, "Mixer", in.Mixer) || p.Err() != nil {
		return nil
	}
	prior, err := in.Mixer.Prior()
	if err != nil {
		p.Join("", err)
		return nil
	}
	friction, err := prior.Friction.For(in.Count())
	if err != nil {
		p.Join("", err)
		return nil
	}
	in.Friction = friction.Factor
	return []working.Message{working.Tell(
		"mixing.note_guide_friction", "the friction is a guide value (published: %.1f to %.1f for %d factors); "+
			"measure a dough once, and use what you find",
		prior.Low, prior.High, prior.Friction.Factors)}
}

func checkFactors(p *quantity.Problems, path string, others []Factor) {
	if len(others) == 0 {
		p.Required(path, quantity.Tell("mixing.want_at_least_one_other_temperature",
			"at least one other temperature, such as flour and room"))
	}
	if len(others) > mostFactors-1 {
		p.Add(path, quantity.Tell("mixing.got_factors", "%d factors", len(others)),
			quantity.Tell("mixing.want_1_to", "1 to %d", mostFactors-1), quantity.ErrOutOfRange)
		return
	}
	for i, o := range others {
		factorKinds.CheckIfGiven(p, path+"["+strconv.Itoa(i)+"].Kind", o.Kind)
		checkName(p, path+"["+strconv.Itoa(i)+"].Name", o.Name)
		quantity.Check(p, path+"["+strconv.Itoa(i)+"].Temperature", o.Temperature, coldestThing, hottestThing)
	}
}

func (in Factors) limits() (cold, warm quantity.Temperature) {
	cold, warm = in.Coldest, in.Warmest
	if cold.IsZero() {
		cold = defaultColdest()
	}
	if warm.IsZero() {
		warm = defaultWarmest()
	}
	return cold, warm
}

// sum is Σ(T − Tᵢ) − F.
func (in Factors) sum() quantity.TemperatureDelta {
	d := in.Friction.Neg()
	for _, o := range in.Others {
		d = d.Add(in.Target.Sub(o.Temperature))
	}
	return d
}

// Count is the number of factors, the water included.
func (in Factors) Count() int { return len(in.Others) + 1 }

// String says the water and, when it cannot be poured, the first remedy.
func (r WaterResult) String() string { return r.Message().String() }

// Message says the water and, when it cannot be poured, the first remedy, for the units of its reader.
func (r WaterResult) Message() working.Message {
	switch {
	case r.Temperature.IsZero():
		return working.Tell("mixing.no_water", "no water")
	case r.Feasible && len(r.Remedies) > 0:
		return working.Tell("mixing.water_at_by", "%v at %.1f: %v", Water, r.Temperature, r.Remedies[0].Text)
	case r.Feasible:
		return working.Tell("mixing.water_at", "%v at %.1f", Water, r.Temperature)
	case len(r.Remedies) > 0:
		return working.Tell("mixing.water_not_poured", "%v at %.1f, which cannot be poured: %v", Water, r.Temperature,
			r.Remedies[0].Text)
	}
	return working.Tell("mixing.water_not_reached", "%v at %.1f, which cannot be poured", Water, r.Temperature)
}

// Working derives the water temperature.
func (r WaterResult) Working() working.Working {
	d := working.Derive(working.Tell("mixing.derive_water", "Water temperature"))
	if r.Temperature.IsZero() {
		return d.Working()
	}
	in := r.in
	target := working.Given("T", working.Tell("mixing.symbol_target", "dough temperature wanted"), in.Target)
	sum := target
	for i, o := range in.Others {
		sum = sum.Plus(target.Minus(o.given(i)))
	}
	d.Find(working.Finding{
		Name: working.Tell("mixing.water_by_factors", "water temperature by the factor method"), Symbol: "T_water",
		By: sum.Minus(givenFriction(r.Friction)), Is: r.Temperature, Decimals: 1, Source: sources.SFBIWater,
		Brief: working.Tell("mixing.take_water", "take the water at %.1f", r.Temperature),
	})
	return d.Working()
}

// Workings derive the water, and each way to it that is reckoned.
func (r WaterResult) Workings() []working.Working { return withWays(r.Working(), r.Remedies) }

// withWays adds the derivations of the ways to that of the answer.
func withWays(first working.Working, ways []WaterRemedy) []working.Working {
	out := []working.Working{first}
	for _, m := range ways {
		if w := m.Working(); w.Len() > 0 {
			out = append(out, w)
		}
	}
	return out
}

// given is the factor as a symbol.
func (f Factor) given(i int) working.Expr {
	return working.Given(f.symbol(i), working.Tell("mixing.symbol_factor", "temperature of %v", f.told(i)),
		f.Temperature)
}

func givenFriction(f Friction) working.Expr {
	return working.Given("F", working.Tell("mixing.symbol_friction", "friction factor for %d factors", f.Factors),
		f.Factor).
		Explained(working.Tell(
			"mixing.term_friction", "how much mixing warms the dough, as a difference of temperatures, counted once "+
				"for every factor"))
}

// symbol is T_ with the word of the kind, otherwise with its number.
func (f Factor) symbol(i int) string {
	if f.Kind.IsValid() {
		return "T_" + f.Kind.String()
	}
	return "T_" + strconv.Itoa(i+1)
}

// label is the name in a derivation, cut to a length that fits a line.
func (f Factor) label(i int) string {
	if f.Name == "" && f.Kind.IsValid() {
		return f.Kind.String()
	}
	return nameOf(f.Name, i)
}

// told is the name in a sentence: the baker's own, the kind as a word, or its number.
func (f Factor) told(i int) any {
	switch {
	case f.Name != "":
		return nameOf(f.Name, i)
	case f.Kind.IsValid():
		return f.Kind
	}
	return working.Tell("mixing.factor_number", "factor %d", i+1)
}

// nameOf is a name in a derivation, cut to a length that fits a line.
func nameOf(name string, i int) string {
	if name == "" {
		return "factor " + strconv.Itoa(i+1)
	}
	if len(name) > 40 {
		return quantity.Excerpt(name)
	}
	return name
}
