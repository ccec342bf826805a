package mixing

import (
	"strconv"

	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// Working derives the water by the heat balance.
func (r PlannedWater) Working() working.Working {
	d := working.Derive(working.Tell("mixing.derive_planned", "Water for a planned batch"))
	if r.Temperature.IsZero() {
		return d.Working()
	}
	if r.Basis == LearnedWarming {
		r.deriveLearned(d)
	}
	d.Add(r.balance.Working())
	return d.Working()
}

// deriveLearned derives what mixing does to this dough from what was learned of each speed.
func (r PlannedWater) deriveLearned(d *working.Derivation) {
	l := r.in.Learned
	k := l.speeds()
	sum := working.Num(0)
	for j, minutes := range r.in.batch(r.in.Room).minutes(k) {
		n := strconv.Itoa(j + 1)
		rate := working.Given("r_"+n, working.Tell("mixing.label_speed", "warming a minute at speed %d", j+1),
			working.Amount(l.theta[j], "Δ°C/min", 4))
		t := working.Given("t_"+n, working.Tell("mixing.symbol_minutes", "minutes at speed %d", j+1),
			working.Amount(minutes, working.Minute, 2))
		if j == 0 {
			sum = rate.Times(t)
			continue
		}
		sum = sum.Plus(rate.Times(t))
	}
	if k < 0 {
		return // nothing was learned
	}
	share := working.Given("k", working.Tell("mixing.bowl_share", "bowl's heat capacity over the dough's"),
		working.Amount(l.theta[k], "", 4))
	f := working.Finding{
		Name: working.Tell("mixing.learned_rise", "warming of dough and bowl by mixing"), Symbol: "d",
		By: sum.Over(working.Num(1).Plus(share)),
		Is: r.balance.in.Rise, Decimals: 2, Source: sources.ConjugateRegression,
	}
	if l.theta[k] <= 0 {
		f.Name = working.Tell("mixing.learned_rise_dough", "warming of the dough by mixing")
		target := working.Given("T", working.Tell("mixing.symbol_target", "dough temperature wanted"), r.in.Target)
		room := working.Given("T_room", working.Tell("mixing.symbol_room", "room and bowl"), r.in.Room)
		f.By = sum.Minus(share.Times(target.Minus(room)))
	}
	d.Find(f)
}

// Workings derive the water, the factor method beside it, and each way to it that is reckoned.
func (r PlannedWater) Workings() []working.Working {
	out := withWays(r.Working(), nil)
	if c, ok := r.Comparison(); ok {
		out = append(out, r.factors.Working(), c.Working())
	}
	for _, m := range r.Remedies {
		if w := m.Working(); w.Len() > 0 {
			out = append(out, w)
		}
	}
	return out
}

// Workings derive what was found, and each way to it that is reckoned.
func (r BalanceResult) Workings() []working.Working { return withWays(r.Working(), r.Remedies) }
