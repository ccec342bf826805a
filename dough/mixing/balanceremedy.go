package mixing

import (
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

// remedies are the ways to the target when the water asked for cannot be poured. Each is solved with the same
// balance, so that what it says, put into the bowl, gives the target.
func (r *BalanceResult) remedies() []WaterRemedy {
	switch {
	case r.Feasible:
		return nil
	case r.Water.Compare(r.in.Warmest) > 0:
		return r.warmer()
	}
	return r.colder()
}

// warmer are the ways for a dough that asks for water too warm to pour.
func (r *BalanceResult) warmer() []WaterRemedy {
	at := r.in
	at.WaterTemperature = at.Warmest
	out := append(r.together(), at.warmParts(r.target)...)
	levain, from, hasLevain := at.solveFor(Levain, r.target)
	if hasLevain {
		out = append(out, WaterRemedy{
			Way: WarmLevain, Levain: levain, from: from, Enough: levain.Compare(warmestLevain) <= 0,
			Text: working.Tell(
				"mixing.remedy_warm_levain", "let the levain be at %.1f when you mix, with %v at %.1f", levain,
				at.pours(), at.Warmest),
		})
	}
	flour, from, hasFlour := at.solveFor(Flour, r.target)
	if hasFlour {
		out = append(out, WaterRemedy{
			Way: WarmFlour, from: from, Factor: Flour.String(), Temperature: flour,
			Enough: flour.Compare(warmestFlour) <= 0,
			Text: working.Tell("mixing.remedy_warm_flour", "warm the flour to %.1f, with %v at %.1f", flour,
				at.pours(), at.Warmest),
		})
	}
	if m, ok := at.warmBoth(r.target); ok && hasLevain && hasFlour {
		out = append(out, m)
	}
	return append(out, at.otherDough(at.Warmest)...)
}

// warmBoth warms the levain to the top of what suits it, or as far as is needed, and the flour for the rest.
func (b Balance) warmBoth(target quantity.Temperature) (WaterRemedy, bool) {
	const warmLevain = 28 // °C, where most levains ripen fast; judgment
	top := quantity.Celsius(warmLevain)
	isLevain := func(i int) bool { return b.goesAs(i, Levain) }
	isFlour := func(i int) bool { return b.goesAs(i, Flour) }
	c := b.with(isLevain, top)
	flour, from, ok := c.solveFor(Flour, target)
	if !ok || b.mean(isLevain).Compare(top) >= 0 || flour.Compare(b.mean(isFlour)) <= 0 {
		return WaterRemedy{}, false
	}
	return WaterRemedy{
		Way: WarmFlourAndLevain, from: from, Factor: Flour.String(), Temperature: flour, Levain: top,
		Enough: flour.Compare(warmestFlour) <= 0,
		Text: working.Tell(
			"mixing.remedy_warm_both", "let the levain be at %.1f and warm the flour to %.1f, with %v at %.1f", top,
			flour, b.pours(), b.Warmest),
	}, true
}

// colder are the ways for a dough that asks for water too cold to pour.
func (r *BalanceResult) colder() []WaterRemedy {
	b := r.in
	at := b
	at.WaterTemperature = b.Coldest
	var out []WaterRemedy
	withIce := b
	if withIce.WaterTemperature.IsZero() {
		withIce.WaterTemperature = b.Coldest
	}
	if ice, err := withIce.IceFor(r.target); err == nil && b.poursWater() {
		out = append(out, WaterRemedy{
			Way: Ice, Ice: ice.Ice, Liquid: b.Water.Sub(ice.Ice), Enough: ice.Feasible, Text: ice.Message(),
			from: origin{balance: &ice},
		})
	}
	if flour, from, ok := at.solveFor(Flour, r.target); ok {
		out = append(out, WaterRemedy{
			Way: ChilledFlour, from: from, Factor: Flour.String(), Temperature: flour,
			Enough: flour.Compare(coldestFlour) >= 0,
			Text: working.Tell("mixing.remedy_chill_flour", "chill the flour to %.1f, with %v at %.1f", flour,
				b.pours(), b.Coldest),
		})
	}
	if m, ok := at.mixLess(r); ok {
		out = append(out, m)
	}
	return append(out, at.otherDough(b.Coldest)...)
}

// mixLess is the rise that would do with water at the limit: what is too much, off the heat added by mixing.
func (b Balance) mixLess(r *BalanceResult) (WaterRemedy, bool) {
	rise := quantity.DeltaCelsius((b.Mixing.of(r.mix) + b.Rise.Celsius()*r.total) / r.total)
	if rise.Sign() <= 0 {
		return WaterRemedy{}, false
	}
	less := rise.Sub(quantity.DeltaCelsius(r.Sensitivity * b.WaterTemperature.Sub(r.Water).Celsius()))
	m := WaterRemedy{
		Way: ShorterMixing, Rise: less, Enough: less.Sign() >= 0 && b.Ice.IsZero(),
		from: origin{balance: r, asked: r.Water, limit: b.WaterTemperature, friction: Friction{Factor: rise},
			share: r.Sensitivity},
	}
	m.Text = working.Tell(
		"mixing.remedy_mix_less_rise", "mix less: a warming of %.1f by mixing instead of %.1f would do, with folds "+
			"later for strength", less, rise)
	if !m.Enough {
		m.Text = working.Tell("mixing.remedy_mix_less_not_enough", "less mixing helps but does not do it alone")
	}
	return m, true
}

// otherDough is the dough that the water at the limit gives.
func (b Balance) otherDough(limit quantity.Temperature) []WaterRemedy {
	f, err := b.Final()
	if err != nil {
		return nil
	}
	return []WaterRemedy{{
		Way: OtherTarget, Temperature: f.Dough, Enough: true,
		Text: working.Tell("mixing.remedy_other_target", "take the %v at %.1f and expect a dough of %.1f", b.pours(), limit,
			f.Dough), from: origin{balance: &f},
	}}
}

// together is milk that is warmed with the water, both to one temperature; none where there is no milk.
//
//	T = (C_water·T_water + C_milk·T_milk) ÷ (C_water + C_milk)      T_water as asked for
func (r *BalanceResult) together() []WaterRemedy {
	var out []WaterRemedy
	water := float64(r.terms[0].capacity)
	for i, part := range r.in.Ingredients {
		if part.Substance != Milk || part.Warmest.IsZero() {
			continue
		}
		share := water / (water + float64(r.terms[i+1].capacity))
		t := share*r.wanted + (1-share)*part.Temperature.Celsius()
		both := quantity.Celsius(t)
		out = append(out, WaterRemedy{
			Way: WarmPart, Factor: part.label(), Temperature: both, Enough: both.Compare(r.in.Warmest) <= 0,
			from: origin{balance: r, asked: r.Water, before: part.Temperature, share: share, found: t, together: true},
			Text: working.Tell("mixing.remedy_together", "warm %s and %v together, to %.1f both", part.label(), r.in.pours(),
				both),
		})
	}
	return out
}

// warmParts are the parts that may be warmed, each by itself, with the water at its limit.
func (b Balance) warmParts(target quantity.Temperature) []WaterRemedy {
	var out []WaterRemedy
	for i, part := range b.Ingredients {
		if part.Warmest.IsZero() || part.Substance == Milk {
			continue
		}
		t, from, ok := b.solve(func(k int) bool { return k == i }, target)
		if !ok {
			continue
		}
		m := WaterRemedy{
			Way: WarmPart, from: from, Factor: part.label(), Temperature: t, Enough: t.Compare(part.Warmest) <= 0,
			Text: working.Tell("mixing.remedy_warm_part", "warm %s to %.1f just before you mix, with %v at %.1f",
				part.label(), t, b.pours(), b.Warmest),
		}
		if m.Enough {
			out = append(out, m)
		}
	}
	return out
}

// solveFor is the temperature that everything of a substance must have, and from what it was found; false when there
// is none of it.
func (b Balance) solveFor(s Substance, target quantity.Temperature) (quantity.Temperature, origin, bool) {
	return b.solve(func(i int) bool { return b.goesAs(i, s) }, target)
}

// goesAs reports whether a part is of a substance, and not warmed by itself.
func (b Balance) goesAs(i int, s Substance) bool {
	return b.Ingredients[i].Substance == s && b.Ingredients[i].Warmest.IsZero()
}

// solve is the temperature that the chosen parts must have, and from what it was found; false when there are none.
func (b Balance) solve(
	chosen func(int) bool, target quantity.Temperature,
) (quantity.Temperature, origin, bool) {
	mean := b.mean(chosen)
	if mean.IsZero() {
		return mean, origin{}, false
	}
	f, err := b.with(chosen, mean).Final()
	if err != nil {
		return mean, origin{}, false
	}
	share := 0.0
	for i := range b.Ingredients {
		if chosen(i) {
			share += float64(f.terms[i+1].capacity) / f.total
		}
	}
	found := mean.Celsius() + (target.Celsius()-f.wanted)/share
	t := quantity.Celsius(found)
	return t, origin{balance: &f, before: mean, share: share, target: target, found: found}, share > 0 && t.IsValid() &&
		!t.IsZero()
}

// with is the balance with the chosen parts at one temperature.
func (b Balance) with(chosen func(int) bool, t quantity.Temperature) Balance {
	b.Ingredients = append([]Portion(nil), b.Ingredients...)
	for i := range b.Ingredients {
		if chosen(i) {
			b.Ingredients[i].Temperature = t
		}
	}
	return b
}

// mean is the temperature of the chosen parts, by heat capacity; not given when there are none.
func (b Balance) mean(chosen func(int) bool) quantity.Temperature {
	c, h := 0.0, 0.0
	for k, i := range b.Ingredients {
		if chosen(k) {
			w := i.Mass.Kilograms() * float64(i.heat())
			c += w
			h += w * i.Temperature.Celsius()
		}
	}
	if c <= 0 {
		return quantity.Temperature{}
	}
	return quantity.Celsius(h / c)
}
