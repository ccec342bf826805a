package mixing

import (
	"strconv"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// ComparedPart is one part of a dough as the two methods weigh it, with the water as one.
type ComparedPart struct {
	Name string `json:"name,omitempty"`
	// Weight is the part's heat capacity over that of the water: what the balance counts.
	Weight float64 `json:"weight"`
	// Counted is 1 when the part is a factor, 0 when the factor method leaves it out.
	Counted int `json:"counted"`
	// Shift is what the part adds to the difference of the two water temperatures, factor method
	// less balance.
	Shift quantity.TemperatureDelta `json:"shift"`
}

// Comparison is the answer of [Balance.Compare].
type Comparison struct {
	answer

	// ByFactors and ByBalance are the two water temperatures, and Difference the first less the second.
	ByFactors  quantity.Temperature      `json:"by_factors,omitzero"`
	ByBalance  quantity.Temperature      `json:"by_balance,omitzero"`
	Difference quantity.TemperatureDelta `json:"difference"`
	// Parts share out the difference; together with HeatShift they add up to it.
	Parts []ComparedPart `json:"parts,omitempty"`
	// Heat is the heat added in degrees of the water; the friction factor stands for it. HeatShift is the first
	// less the second.
	Heat      quantity.TemperatureDelta `json:"heat"`
	Friction  quantity.TemperatureDelta `json:"friction"`
	HeatShift quantity.TemperatureDelta `json:"heat_shift"`
	// AgreeingFriction is the friction factor with which the factor method gives the balance's water for
	// these temperatures, and for these only.
	AgreeingFriction quantity.TemperatureDelta `json:"agreeing_friction"`
	// SensitivityByFactors and SensitivityByBalance are degrees of dough for each degree of water. A
	// field rule of 5 °F of water for 2 °F of dough is 0.4.
	SensitivityByFactors float64 `json:"sensitivity_by_factors"`
	SensitivityByBalance float64 `json:"sensitivity_by_balance"`

	in     Factors
	target float64
	parts  []comparedPart
	heat   float64 // in degrees of the water
	water  float64 // its heat capacity, kJ/K
}

type comparedPart struct {
	name                   string
	counted                bool
	weight, capacity, heat float64 // over the water's; kJ/K; C·T of the balance
	factor, balance, shift float64 // °C
}

// Compare answers where and why the factor method and the heat balance ask for different water.
//
//	T_w(factors) − T_w(balance) = Σ [nᵢ·(T − Tᵢ) − wᵢ·(T − T'ᵢ)] − (F − Q ÷ C_water)
//
// nᵢ is 1 for a factor and 0 for a part that the factor method leaves out; wᵢ = Cᵢ ÷ C_water is the
// part's weight in the balance; Tᵢ and T'ᵢ its temperature in the one and the other (normally the
// same). The factor method is the special case in which every factor weighs as much as the water
// and nothing else counts. A FlourFactor stands for all ingredients of the substance flour, a LevainFactor for those
// of the substance levain (several such factors for one each, in order), a RoomFactor for the room exchange and a
// BowlFactor for the bowl; any other for nothing in the balance.
//
// Errors: those of [Factors.Water] and of [Balance.WaterFor], under Factors and Balance. Source:
// algebra on the two.
func (b Balance) Compare(f Factors) (Comparison, error) {
	var p quantity.Problems
	byFactors, err := f.Water()
	p.Join("Factors", err)
	byBalance, err := b.WaterFor(f.Target)
	p.Join("Balance", err)
	if p.Err() == nil && !byBalance.in.Ice.IsZero() {
		p.Add("Balance.Ice", byBalance.in.Ice, quantity.Tell("mixing.want_no_ice_comparison", "no ice in a comparison"),
			quantity.ErrInconsistent)
	}
	if err := p.ErrFor(b); err != nil {
		return Comparison{}, err
	}
	cw := float64(byBalance.terms[0].capacity)
	c := Comparison{
		ByFactors: byFactors.Temperature, ByBalance: byBalance.Water,
		Difference: byFactors.Temperature.Sub(byBalance.Water),
		Friction:   f.Friction, in: byFactors.in, target: f.Target.Celsius(), heat: byBalance.HeatAdded / cw, water: cw,
		SensitivityByFactors: 1 / float64(f.Count()), SensitivityByBalance: byBalance.Sensitivity,
	}
	c.Heat = quantity.DeltaCelsius(c.heat)
	c.HeatShift = c.Heat.Sub(f.Friction)
	c.AgreeingFriction = f.Friction.Add(c.Difference)
	c.join(byBalance)
	for i := range c.parts {
		q := &c.parts[i]
		q.weight = q.capacity / cw
		part := ComparedPart{Name: q.name, Weight: q.weight}
		if q.counted {
			part.Counted = 1
			q.shift += c.target - q.factor
		}
		if q.capacity > 0 {
			q.balance = q.heat / q.capacity
			q.shift -= q.weight * (c.target - q.balance)
		}
		part.Shift = quantity.DeltaCelsius(q.shift)
		c.Parts = append(c.Parts, part)
	}
	return c, nil
}

// join pairs the factors with the terms of the balance.
func (c *Comparison) join(r BalanceResult) {
	used := make([]bool, len(r.terms))
	seen := map[FactorKind]int{}
	for i, o := range c.in.Others {
		q := comparedPart{name: o.label(i), counted: true, factor: o.Temperature.Celsius()}
		for _, k := range c.termsOf(o.Kind, seen[o.Kind], r) {
			if !used[k] {
				used[k] = true
				q.capacity += float64(r.terms[k].capacity)
				q.heat += float64(r.terms[k].capacity) * r.terms[k].temperature.Celsius()
			}
		}
		seen[o.Kind]++
		c.parts = append(c.parts, q)
	}
	for i, t := range r.terms {
		if i > 0 && !used[i] {
			c.parts = append(c.parts, comparedPart{
				name: nameOf(t.name, i), capacity: float64(t.capacity),
				heat: float64(t.capacity) * t.temperature.Celsius(),
			})
		}
	}
}

// termsOf lists the terms of the balance that the k-th factor of its kind stands for: all the flour, the room, the
// bowl; and all levains when one factor is of levains, otherwise each its own.
func (c *Comparison) termsOf(kind FactorKind, k int, r BalanceResult) []int {
	var out []int
	for i, t := range r.terms {
		if t.is == kind && kind != OtherFactor {
			out = append(out, i)
		}
	}
	if kind != LevainFactor || c.count(LevainFactor) < 2 {
		return out
	}
	if k < len(out) {
		return out[k : k+1]
	}
	return nil
}

func (c *Comparison) count(kind FactorKind) int {
	n := 0
	for _, o := range c.in.Others {
		if o.Kind == kind {
			n++
		}
	}
	return n
}

// String says both temperatures and the largest reason for the difference.
func (c Comparison) String() string { return c.Message().String() }

// Message says both temperatures and the largest reason for the difference, for the units of its reader.
func (c Comparison) Message() working.Message {
	if c.ByFactors.IsZero() {
		return working.Tell("mixing.nothing_compared", "nothing compared")
	}
	both := working.Tell("mixing.compared", "factor method %.1f, heat balance %.1f", c.ByFactors, c.ByBalance)
	if abs(c.Difference.Celsius()) < 0.05 {
		return both
	}
	why := working.Tell("mixing.compared_heat", "the friction factor against the heat added (%.1f)", c.HeatShift)
	most := abs(c.HeatShift.Celsius())
	for i, p := range c.Parts {
		if abs(p.Shift.Celsius()) > most {
			why = working.Tell("mixing.compared_weight", "the weight of %v (%.1f)", nameOf(p.Name, i), p.Shift)
			most = abs(p.Shift.Celsius())
		}
	}
	return working.Tell("mixing.compared_most", "%v; most of it is %v", both, why)
}

// Working derives the weight of each part and its share of the difference, and the friction factor that would agree.
func (c Comparison) Working() working.Working {
	d := working.Derive(working.Tell("mixing.derive_compare", "Factor method against heat balance"))
	if c.ByFactors.IsZero() {
		return d.Working()
	}
	target := working.Given("T", working.Tell("mixing.symbol_target", "dough temperature wanted"), c.in.Target)
	water := working.Given("C_0", working.Tell("mixing.capacity_water", "heat capacity of the water"),
		working.Amount(c.water, "kJ/K", 4))
	heat := d.Find(working.Finding{
		Name: working.Tell("mixing.symbol_heat_in_water", "heat added, over the heat capacity of the water"),
		By: working.Given("Q", working.Tell("mixing.symbol_heat_added", "heat added by mixing and wetting"),
			working.Amount(c.heat*c.water, "kJ", 3)).Over(water),
		Symbol: "Q_w", Is: c.Heat, Decimals: 2, Source: sources.HeatBalance,
	})
	friction := givenFriction(Friction{Factor: c.Friction, Factors: c.in.Count()})
	sum := heat.Minus(friction)
	for i, q := range c.parts {
		n := strconv.Itoa(i + 1)
		name := nameOf(q.name, i)
		if !q.counted && q.capacity <= 0 {
			continue // it shifts nothing
		}
		by := working.Num(0)
		if q.counted {
			by = target.Minus(working.Given("T_"+n, working.Tell("mixing.symbol_as_factor", "%v as a factor", name),
				c.in.Others[i].Temperature))
		}
		if q.capacity > 0 {
			weight := d.Find(working.Finding{
				Name:   working.Tell("mixing.symbol_weight", "heat capacity of %v over that of the water", name),
				Symbol: "w_" + n, Is: working.Amount(q.weight, "", 3), Decimals: 3, Source: sources.HeatBalance,
				By: working.Given("C_"+n, working.Tell("mixing.capacity_of", "heat capacity of %v", name),
					working.Amount(q.capacity, "kJ/K", 4)).Over(water),
			})
			at := working.Given("t_"+n, working.Tell("mixing.symbol_in_balance", "%v in the balance", name),
				quantity.Celsius(q.balance))
			by = by.Minus(weight.Times(target.Minus(at)))
		}
		sum = sum.Plus(d.Find(working.Finding{
			Name: working.Tell("mixing.shift_of", "shift by %v", name), Symbol: "s_" + n, By: by,
			Unit: working.DeltaCelsius, Decimals: 2,
			Source: sources.HeatBalance,
		}))
	}
	difference := d.Find(working.Finding{
		Name: working.Tell("mixing.label_difference", "factors less balance"), Symbol: "Δ", By: sum, Is: c.Difference,
		Decimals: 1,
		Source:   working.Algebra(),
	})
	d.Find(working.Finding{
		Name: working.Tell("mixing.agreeing", "friction factor with which both agree today"), Symbol: "F_agree",
		By: friction.Plus(difference),
		Is: c.AgreeingFriction, Decimals: 1, Source: working.Algebra(),
	})
	return d.Working()
}
