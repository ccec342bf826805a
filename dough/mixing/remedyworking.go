package mixing

import (
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// An origin is what a remedy was found from, for its working.
type origin struct {
	asked, limit quantity.Temperature // the water asked for, and the nearest that can be poured
	factor       *Factor
	number       int
	friction     Friction
	mixing       quantity.Elapsed
	target       quantity.Temperature
	ice          *IceResult

	// of the heat balance: the dough before the remedy, the temperature of the substance then, and its share of the heat
	// capacity
	balance *BalanceResult
	before  quantity.Temperature
	share   float64
	found   float64 // °C

	together bool // warmed with the water
}

// Working derives the figure of the way; a way without arithmetic has no steps.
func (r WaterRemedy) Working() working.Working {
	from := r.from
	switch {
	case from.ice != nil:
		return from.ice.Working()
	case r.Way == Ice && from.balance != nil:
		return from.balance.Working()
	}
	d := working.Derive(working.Tell("mixing.derive_way", "Another way to the dough: %v", r.Way))
	asked := working.Given("T_water", working.Tell("mixing.symbol_asked", "water asked for"), from.asked)
	limit := working.Given("T_limit", working.Tell("mixing.symbol_limit", "water that can be poured"), from.limit)
	switch {
	case from.balance != nil:
		r.byBalance(d)
	case from.factor != nil:
		d.Find(working.Finding{
			Name:   working.Tell("mixing.way_factor", "%v instead", from.factor.told(from.number)),
			Symbol: from.factor.symbol(from.number) + "_new",
			By:     from.factor.given(from.number).Plus(asked.Minus(limit)), Is: r.Temperature, Decimals: 1,
			Source: working.Algebra(),
		})
	case r.Way == ShorterMixing:
		f := givenFriction(from.friction)
		less := d.Find(working.Finding{
			Name: working.Tell("mixing.way_friction", "friction factor that would do"), Symbol: "F_new",
			By: f.Minus(limit.Minus(asked)), Is: r.Friction,
			Decimals: 1, Source: working.Algebra(),
		})
		if r.Mixing > 0 {
			t := working.Given("t", working.Tell("mixing.symbol_mixing", "mixing time"), from.mixing)
			d.Find(working.Finding{
				Name: working.Tell("mixing.way_minutes", "mixing time in proportion"), Symbol: "t_new",
				By: t.Times(less.Over(f)), Unit: working.Minute,
				Decimals: 1, Source: working.Algebra(),
			})
		}
	case r.Way == OtherTarget:
		t := working.Given("T", working.Tell("mixing.symbol_target", "dough temperature wanted"), from.target)
		n := working.Given("n", working.Tell("mixing.symbol_count", "number of factors, the water included"),
			from.friction.Factors)
		d.Find(working.Finding{
			Name: working.Tell("mixing.way_target", "dough with water at the limit"), Symbol: "T_new",
			By: t.Plus(limit.Minus(asked).Over(n)),
			Is: r.Temperature, Decimals: 1, Source: sources.FrictionIsRise,
		})
	}
	return d.Working()
}

// byBalance derives a way of the heat balance: what the dough is without it, and what a degree of the substance moves.
func (r WaterRemedy) byBalance(d *working.Derivation) {
	from := r.from
	if r.Way == OtherTarget {
		d.Add(from.balance.Working())
		return
	}
	if r.Way == ShorterMixing {
		rise := working.Given("d", working.Tell("mixing.symbol_rise", "warming by mixing"), from.friction.Factor)
		share := working.Given("w", working.Tell("mixing.symbol_sensitivity",
			"degrees of dough for each degree of water"), working.Amount(from.share, "", 4))
		limit := working.Given("T_limit", working.Tell("mixing.symbol_limit", "water that can be poured"), from.limit)
		asked := working.Given("T_water", working.Tell("mixing.symbol_asked", "water asked for"), from.asked)
		less := d.Find(working.Finding{
			Name: working.Tell("mixing.way_rise", "warming by mixing that would do"), Symbol: "d_new",
			By: rise.Minus(share.Times(limit.Minus(asked))), Is: r.Rise,
			Decimals: 1, Source: sources.HeatBalance,
		})
		if r.Mixing > 0 && from.mixing > 0 {
			t := working.Given("t", working.Tell("mixing.symbol_mixing", "mixing time"), from.mixing)
			d.Find(working.Finding{
				Name: working.Tell("mixing.way_minutes", "mixing time in proportion"), Symbol: "t_new",
				By: t.Times(less.Over(rise)), Unit: working.Minute,
				Decimals: 1, Source: working.Algebra(),
			})
		}
		return
	}
	if from.together {
		asked := d.Add(from.balance.Working())
		before := working.Given("T_before", working.Tell("mixing.symbol_before_way", "its temperature now"), from.before)
		share := working.Given("w", working.Tell("mixing.symbol_water_share",
			"share of the water in the heat capacity of both"), working.Amount(from.share, "", 4))
		d.Find(working.Finding{
			Name: working.Tell("mixing.way_together", "temperature of both for the dough wanted"), Symbol: "T_both",
			By: share.Times(asked).Plus(working.Num(1).Minus(share).Times(before)),
			Is: celsius(from.found), Decimals: 1, Source: sources.HeatBalance,
		})
		return
	}
	dough := d.Add(from.balance.Working())
	target := working.Given("T", working.Tell("mixing.symbol_target", "dough temperature wanted"), from.target)
	before := working.Given("T_before", working.Tell("mixing.symbol_before_way", "its temperature now"), from.before)
	share := working.Given("w", working.Tell("mixing.symbol_share", "its share of the heat capacity"),
		working.Amount(from.share, "", 4))
	d.Find(working.Finding{
		Name: working.Tell("mixing.way_substance", "its temperature for the dough wanted"), Symbol: "T_new",
		By: before.Plus(target.Minus(dough).Over(share)),
		Is: celsius(from.found), Decimals: 1, Source: sources.HeatBalance,
	})
}
