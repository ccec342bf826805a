package mixing

import (
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

// Planned is a batch before it is mixed: what goes in, how warm it is, and what mixing does to it. It is the one
// account of the bowl: what [Logged.Warming] and [Log.Learn] find out about mixed batches is reckoned in the same
// way, so that a batch that was mixed as planned and came out as planned changes no plan.
type Planned struct {
	// Target is the dough temperature wanted at the end of mixing.
	Target quantity.Temperature `json:"target,omitzero"`
	// Ingredients are all but the water to pour: flour, levain and other preferments, salt, fat. One without a
	// temperature is as warm as the room.
	Ingredients []Portion `json:"ingredients,omitempty"`
	// Water is the liquid to pour, and Pours what it is; not given: water. Milk takes its place in a brioche. Liquids
	// are the baker's names of what is poured instead of water.
	Water   quantity.Mass `json:"water"`
	Pours   Substance     `json:"pours,omitzero"`
	Liquids []string      `json:"liquids,omitempty"`
	// Room is the temperature of the room, and of the bowl.
	Room quantity.Temperature `json:"room,omitzero"`

	// Warming is by how much mixing warms this dough above where its ingredients meet, as [Logged.Warming] finds
	// it. Zero: what Learned says for Speeds, or a guide value for the Mixer.
	Warming quantity.TemperatureDelta `json:"warming,omitzero"`
	// Learned is what logged batches say about the mixer, and Speeds the times at each of its speeds, slow first.
	Learned Learned            `json:"learned,omitzero"`
	Speeds  []quantity.Elapsed `json:"speeds,omitempty"`
	// Extrapolate allows a batch of a weight outside that of the log.
	Extrapolate bool `json:"extrapolate,omitzero"`
	// Mixer gives the guide value when nothing else is known.
	Mixer MixerKind `json:"mixer,omitzero"`

	// Tap is how cold the water comes; it turns a need for cold into a weight of ice.
	Tap quantity.Temperature `json:"tap,omitzero"`
	// Ice is the temperature of the ice; not given: 0 °C.
	Ice quantity.Temperature `json:"ice,omitzero"`
	// Coldest and Warmest bound the water that can be poured, as in [Factors].
	Coldest quantity.Temperature `json:"coldest,omitzero"`
	Warmest quantity.Temperature `json:"warmest,omitzero"`
	// Mixing, when given, is how long mixing takes; it turns "mix less" into minutes.
	Mixing quantity.Elapsed `json:"mixing,omitzero"`
	// Probability is what the range of the dough shall claim; zero means 80 %.
	Probability quantity.Percent `json:"probability,omitzero"`
}

// WarmingBasis says what a warming by mixing rests on.
type WarmingBasis int

// What a warming rests on.
const (
	_ WarmingBasis = iota
	// GuideValue is a figure of the trade for the kind of mixer.
	GuideValue
	// GivenWarming was given: measured by the baker.
	GivenWarming
	// LearnedWarming comes from logged batches.
	LearnedWarming
)

// PlannedWater is the answer of [Planned.Pour].
type PlannedWater struct {
	answer

	// Temperature is what the heat balance asks for. Below 0 °C it is a reckoning figure, for ice to make good.
	Temperature quantity.Temperature `json:"temperature,omitzero"`
	// Feasible reports whether it lies between the coldest and the warmest water.
	Feasible bool `json:"feasible"`
	// Warming is what mixing is taken to do to the dough, and Basis what that rests on.
	Warming quantity.TemperatureDelta `json:"warming"`
	Basis   WarmingBasis              `json:"basis"`
	// Sensitivity is how much the dough moves for each degree of water.
	Sensitivity float64 `json:"sensitivity"`
	// Dough is what to expect of the dough with this water, or with water at the limit when it cannot be poured.
	Dough quantity.Range[quantity.Temperature] `json:"dough"`
	// ByFactors is what the factor method asks for with the same warming, and Agree whether the two lie within
	// 1 °C of each other. Where they do not, the balance is used, and Notes say so.
	ByFactors quantity.Temperature `json:"by_factors,omitzero"`
	Agree     bool                 `json:"agree"`
	// AgreeingFriction is the friction factor with which the factor method gives Temperature today.
	AgreeingFriction Friction `json:"agreeing_friction,omitzero"`
	// Notes say what the answer rests on, and what moves this dough.
	Notes []working.Message `json:"notes,omitempty"`
	// Remedies are ways to the target when the water is not feasible, or when the tap is too warm.
	Remedies []WaterRemedy `json:"remedies,omitempty"`

	in      Planned
	balance BalanceResult
	factors WaterResult
}

// agreement is how far the two methods may differ in the water and still be called one: about half a degree of
// dough, which a thermometer does not tell apart. Judgment.
const agreement = 1.0 // Δ°C

// dullWater is the sensitivity below which water is no way to steer a dough. Judgment.
const dullWater = 0.25

// Pour answers how warm the water of a planned batch must be, by the heat balance of everything that goes in.
//
//	T_water = T + Σ (Cᵢ ÷ C_water)·(T − Tᵢ) − d·Σ C ÷ C_water
//
// T is the target, Cᵢ = mᵢ·cᵢ and Tᵢ the heat capacity and temperature of each ingredient, d the warming by mixing.
// With Learned the bowl takes part as it was learned to, at the temperature of the room. Target 0 to 50 °C,
// ingredients −40 to 95 °C, warming −10 to 40 Δ°C, masses to 10 t. The answer has the factor method beside it: where
// the two differ by more than 1 °C, which they do in doughs with much levain and on days unlike the one on which a
// friction factor was measured, the balance is right and is used.
//
// Accuracy: that of the warming, which Dough states as a range. It claims 80 % (or Probability) if the spread of
// published figures is taken as an 80 % range (guide value), if single batches stray by 0.7 °C (given warming), or as
// the log's own residuals say (learned). Errors: ErrRequired, ErrOutOfRange, ErrInconsistent; ErrModelRange as in
// [Learned.Predict]. Water that cannot be poured is an answer, with remedies. Source: heat balance.
func (in Planned) Pour() (PlannedWater, error) {
	var p quantity.Problems
	r := PlannedWater{}
	b := in.check(&p, &r)
	if err := p.ErrFor(in); err != nil {
		return PlannedWater{}, err
	}
	r.in = in.clone()
	solved, err := b.WaterFor(in.Target)
	if err != nil {
		return PlannedWater{}, err
	}
	r.balance = solved
	r.Temperature, r.Feasible, r.Sensitivity, r.Remedies = solved.Water, solved.Feasible, solved.Sensitivity,
		solved.Remedies
	poured := b
	poured.WaterTemperature = within(solved.Water, solved.in.Coldest, solved.in.Warmest)
	final, err := poured.Final()
	if err != nil {
		return PlannedWater{}, err
	}
	if r.Dough, err = in.expect(final.Dough, r.Basis, r.Warming); err != nil {
		return PlannedWater{}, err
	}
	r.compare()
	r.tap()
	r.minutes()
	r.note()
	return r, nil
}

// compare sets the factor method beside the balance.
func (r *PlannedWater) compare() {
	in := r.in
	f := Factors{Target: in.Target, Coldest: in.Coldest, Warmest: in.Warmest}
	at := r.balance.in
	if flour := at.mean(func(i int) bool { return at.Ingredients[i].Substance == Flour }); !flour.IsZero() {
		f.Others = append(f.Others, Factor{Kind: FlourFactor, Temperature: flour})
	}
	f.Others = append(f.Others, Factor{Kind: RoomFactor, Temperature: in.Room})
	for _, x := range r.balance.in.Ingredients {
		if x.Substance == Levain {
			f.Others = append(f.Others, Factor{Kind: LevainFactor, Name: x.Name, Temperature: x.Temperature})
		}
	}
	f.Friction = r.Warming.Times(int64(f.Count()))
	byFactors, err := f.Water()
	if err != nil { // more levains than the factor method counts, or a figure below absolute zero
		return
	}
	r.factors = byFactors
	r.ByFactors = byFactors.Temperature
	d := byFactors.Temperature.Sub(r.Temperature)
	r.Agree = d.Celsius() <= agreement && d.Celsius() >= -agreement
	r.AgreeingFriction = Friction{Factor: f.Friction.Add(d), Factors: f.Count()}
}

// Comparison sets the factor method beside the balance, part by part; false when the factor method has no answer.
func (r PlannedWater) Comparison() (Comparison, bool) {
	if r.ByFactors.IsZero() {
		return Comparison{}, false
	}
	c, err := r.balance.in.Compare(r.factors.in)
	return c, err == nil
}

// tap adds what to do about a tap that is too warm for water that could be poured.
func (r *PlannedWater) tap() {
	in := r.in
	if in.Tap.IsZero() || !r.Feasible || r.Temperature.Compare(in.Tap) >= 0 {
		return
	}
	withIce := r.balance.in
	withIce.WaterTemperature = in.Tap
	if ice, err := withIce.IceFor(in.Target); err == nil && withIce.poursWater() {
		r.Remedies = append(r.Remedies, WaterRemedy{
			Way: Ice, Ice: ice.Ice, Liquid: in.Water.Sub(ice.Ice), Enough: ice.Feasible, Text: ice.Message(),
			from: origin{balance: &ice},
		})
	}
	r.Remedies = append(r.Remedies, chillWater(withIce.pours(), r.Temperature))
}

// minutes turns less warming into minutes, in proportion.
func (r *PlannedWater) minutes() {
	for i := range r.Remedies {
		m := &r.Remedies[i]
		if m.Way != ShorterMixing || !m.Enough || r.in.Mixing <= 0 || m.from.friction.Factor.Sign() <= 0 {
			continue
		}
		m.Mixing, m.from.mixing = proportion(r.in.Mixing, m.Rise.Celsius()/m.from.friction.Factor.Celsius()),
			r.in.Mixing
		m.Text = working.Tell("mixing.remedy_mix_less_minutes", "%v, about %v of mixing", m.Text, m.Mixing)
	}
}

func (r *PlannedWater) note() {
	note := func(m working.Message) { r.Notes = append(r.Notes, m) }
	if r.Basis == GuideValue {
		note(working.Tell(
			"mixing.note_guide_value", "the warming of %.1f is a guide value; measure the dough when mixing stops, "+
				"and the next plan is better", r.Warming))
	}
	if !r.ByFactors.IsZero() && !r.Agree {
		note(working.Tell(
			"mixing.note_balance_used",
			"the factor method would ask for %v at %.1f; the balance is used, which weighs each part",
			r.balance.in.pours(), r.ByFactors))
	}
	if r.Sensitivity < dullWater {
		note(working.Tell(
			"mixing.note_dull_water",
			"a degree of water moves this dough by only %.2f of a degree: what else goes in decides how warm it is",
			r.Sensitivity))
	}
}

// String says the water, and what to do when it cannot be poured.
func (r PlannedWater) String() string { return r.Message().String() }

// Message says the water, and what to do when it cannot be poured, for the units of its reader.
func (r PlannedWater) Message() working.Message {
	switch {
	case r.Temperature.IsZero():
		return working.Tell("mixing.no_water", "no water")
	case r.Feasible && len(r.Remedies) == 0:
		return working.Tell("mixing.water_at", "%v at %.1f", r.balance.in.pours(), r.Temperature)
	}
	for _, m := range r.Remedies {
		if m.Enough && m.Way != OtherTarget {
			if r.Feasible {
				return working.Tell("mixing.water_at_by", "%v at %.1f: %v", r.balance.in.pours(), r.Temperature, m.Text)
			}
			return working.Tell("mixing.water_not_poured", "%v at %.1f, which cannot be poured: %v", r.balance.in.pours(),
				r.Temperature, m.Text)
		}
	}
	return working.Tell("mixing.water_not_reached", "%v at %.1f, which cannot be poured", r.balance.in.pours(),
		r.Temperature)
}
