package ferment

import (
	"math"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/gasbalance"
	"example.org/maslin/internal/sources"
)

// times derives early, late and likely: in one line each at a steady temperature, otherwise from a table whose rows
// add up to the gas.
func (t *telling) times(need func(celsius float64) working.Expr, o gasbalance.Outcome) {
	steady := len(t.d.knots) == 1 && (t.d.start.Levain == 0 || t.d.start.Yeast == 0)
	limit := hours(Horizon)
	if o.Likely >= limit {
		t.Find(working.Finding{
			Name: working.Tell("ferment.derive_not_reached", "gas after the longest time looked at"), Symbol: "G_end",
			Is: working.Amount(t.gasAt(&o.Path, limit), "L/kg", 4), Source: growthSource(),
			Look: working.Tell("ferment.look_not_reached",
				"the dough was followed for %v and had not made what the rise takes", Horizon),
		})
		return
	}
	if steady {
		t.steady(need(t.d.knots[0].Celsius), o)
		return
	}
	state := func(hour float64) gasbalance.State { s, _ := o.Path.At(hour); return s }
	until, name := o.Likely, working.Tell("ferment.derive_table_likely", "gas until the likely time, row by row")
	if o.Late < limit {
		until, name = o.Late, working.Tell("ferment.derive_table_late", "gas until the late time, row by row")
	}
	rows := t.rows(History{knots: t.d.knots}, state, until)
	t.gasTable(name, "G_rows", rows)
	if o.Late < limit {
		_, early := o.Path.At(o.Early)
		_, late := o.Path.At(o.Late)
		t.timeOf("early", working.Tell("ferment.derive_early_followed", "early time"), fastReady(o.Early),
			t.margin(need(early), false, o.Early, o), o.Early, rows, state)
		t.timeOf("late", working.Tell("ferment.derive_late_followed", "late time"), slowReady(o.Late),
			t.margin(need(late), true, o.Late, o), o.Late, rows, state)
	}
	_, likely := o.Path.At(o.Likely)
	t.timeOf("likely", working.Tell("ferment.derive_likely_followed", "likely time"), likelyReady(o.Likely), need(likely),
		o.Likely, rows, state)
}

// gasAt is the gas along a path.
func (t *telling) gasAt(p *gasbalance.Path, hour float64) float64 {
	s, _ := p.At(hour)
	return t.d.clock.Gas(&s)
}

// steady is the closed form at one temperature.
func (t *telling) steady(need working.Expr, o gasbalance.Outcome) {
	celsius := t.d.knots[0].Celsius
	growth, gas := t.rates(celsius)
	still := t.d.start.Cells() >= t.d.law.Capacity || t.grows(celsius) == 0
	at := func(n working.Expr) working.Expr { // minutes until so much gas is made
		if still {
			return n.Over(gas.Times(t.start)).Times(60)
		}
		inner := working.Exp(n.Times(growth).Over(gas.Times(t.d.law.Capacity))).Minus(1)
		return working.Ln(working.Num(t.d.law.Capacity).Over(t.start).Times(inner).Plus(1)).Over(growth).Times(60)
	}
	note := working.Tell("ferment.note_closed_form",
		"cells grow as X = X_0 × exp(μ t) ÷ (1 + X_0 ÷ 1.70 × (exp(μ t) − 1)), the gas is q times their sum over time, "+
			"and that is solved for the time; the 60 makes minutes of hours")
	if still {
		note = working.Tell("ferment.note_no_growth",
			"the cells do not grow, and make the same gas every hour; the 60 makes minutes of hours")
	}
	find := func(symbol string, name, brief working.Message, n working.Expr, hour float64) {
		t.Find(working.Finding{
			Name: name, Brief: brief, Symbol: symbol, Is: onScreen(hour), Decimals: working.WholeNumber, By: at(n), Note: note,
			Source: growthSource(),
			Within: 0.5 + hour*60*2e-3,
		})
	}
	if o.Late < hours(Horizon) {
		find("t_early", working.Tell("ferment.derive_early", "early time"), fastReady(o.Early),
			t.margin(need, false, o.Early, o), o.Early)
		find("t_late", working.Tell("ferment.derive_late", "late time"), slowReady(o.Late), t.margin(need, true, o.Late, o),
			o.Late)
	}
	find("t_likely", working.Tell("ferment.derive_likely", "likely time"), likelyReady(o.Likely), need, o.Likely)
}

// The times of an answer in a sentence each.
func fastReady(hour float64) working.Message {
	return working.Tell("ferment.brief_early", "A fast culture is there after %v.", quantity.Elapsed(onScreen(hour)))
}

func slowReady(hour float64) working.Message {
	return working.Tell("ferment.brief_late", "A slow one takes %v.", quantity.Elapsed(onScreen(hour)))
}

func likelyReady(hour float64) working.Message {
	return working.Tell("ferment.brief_likely", "Most likely it takes %v.", quantity.Elapsed(onScreen(hour)))
}

// onScreen is a number of hours as the answer shows it: kept to the second, shown to the minute.
func onScreen(h float64) time.Duration { return span(h).Round(time.Minute) }

// rates derives the rates of growth and of gas at one temperature.
func (t *telling) rates(celsius float64) (growth, gas working.Expr) {
	l, d := t.d.law, t.d
	T := working.Given("T", working.Tell("ferment.symbol_temperature", "temperature of the dough"),
		working.Amount(celsius, working.Celsius, 2))
	curve := func(symbol string, name working.Message, lowest, bend, highest float64, why working.Source) working.Expr {
		root := func(at working.Expr) working.Expr {
			return at.Minus(lowest).Times(working.Num(1).Minus(working.Exp(working.Num(bend).Times(at.Minus(highest)))))
		}
		return t.Find(working.Finding{
			Name: name, Symbol: symbol, Unit: working.Number, By: root(T).Over(root(working.Num(27))).ToThe(2),
			Note: working.Tell("ferment.note_curve", "the square-root curve of growth, 1 at 27 °C; nothing goes on at %v "+
				"and at %v", quantity.Celsius(lowest), quantity.Celsius(highest)), Source: why,
		})
	}
	standing := d.law == gasbalance.Standard()
	if !standing || celsius <= 0.4 || celsius >= 36 {
		look := working.Tell("ferment.look_curve", "the curve itself at this temperature")
		gas = t.Find(working.Finding{Name: working.Tell("ferment.derive_gas_curve_read",
			"gas at this temperature over that at 27 °C"), Symbol: "r",
			Is: working.Amount(l.GasCurve.Rate(celsius), working.Number, 5), Look: look, Source: growthSource()})
		growth = t.Find(working.Finding{Name: working.Tell("ferment.derive_growth_curve_read",
			"growth at this temperature over that at 27 °C"), Symbol: "g",
			Is: working.Amount(t.grows(celsius), working.Number, 5), Look: look, Source: growthSource()})
	} else {
		gas = curve("r", working.Tell("ferment.derive_gas_curve", "gas at this temperature over that at 27 °C"), -1.2, 0.20,
			49.0,
			sources.Judged("ends and bend of the curve of gas; optimum near 38 °C"))
		growth = curve("g_y", working.Tell("ferment.derive_yeast_curve",
			"growth of S. cerevisiae at this temperature over that at 27 °C"), 0.4, 0.236, 42.2,
			sources.Ratkowsky1983)
		if d.start.Levain > 0 {
			x := working.Num(36).Minus(T)
			humilis := t.Find(working.Finding{
				Name:   working.Tell("ferment.derive_humilis", "growth of K. humilis at this temperature over that at 27 °C"),
				Symbol: "g_h", Unit: working.Number,
				By: x.Over(9).ToThe(2.981).Times(working.Exp(working.Num(-0.3355).Times(x.Minus(9)))), Source: sources.Ganzle1998,
			})
			growth = t.Find(working.Finding{
				Name: working.Tell("ferment.derive_mixture", "growth of the levain, a mixture of both"), Symbol: "g",
				Unit:   working.Number,
				By:     working.Num(1 - l.Mixture).Times(humilis).Plus(growth.Times(l.Mixture)),
				Source: sources.Judged("the two common yeasts of sourdough, 40 and 60 %"),
			})
		}
	}
	own := t.kitchen(celsius)
	hourly := l.Growth * l.Pace(d.formula) * d.pacing(celsius) * t.grows(celsius)
	mu := working.Num(l.Growth).Times(t.pace).Times(growth)
	q := working.Num(l.Gas).Times(t.pace).Times(gas)
	if own != (working.Expr{}) {
		mu, q = mu.Times(own), q.Times(own)
	}
	if w := d.belief.Mean[gasbalance.Mixture]; w != 0 && d.start.Levain > 0 {
		kappa := (l.YeastCurve.Rate(celsius) - l.HumilisCurve.Rate(celsius)) / l.LevainGrowth(celsius)
		hourly *= math.Exp(w * kappa)
		mu = mu.Times(working.Exp(t.unknown(gasbalance.Mixture, w).
			Times(working.Given("κ", working.Tell("ferment.symbol_lean", "what that does to the log of its growth here"),
				working.Amount(kappa, working.Number, 5))),
		))
	}
	if y := d.belief.Mean[gasbalance.Growth]; y != 0 && d.start.Levain == 0 {
		hourly *= math.Exp(y)
		mu = mu.Times(working.Exp(t.unknown(gasbalance.Growth, y)))
	}
	if a := d.belief.Mean[gasbalance.Amplitude]; a != 0 {
		q = q.Times(working.Exp(t.unknown(gasbalance.Amplitude, a)))
	}
	growth = t.Find(working.Finding{Name: working.Tell("ferment.derive_growth", "growth of the cells"), Symbol: "μ",
		Unit: "/h", By: mu, Source: growthSource(),
		Brief: working.Tell("ferment.brief_growth", "At %.1f there is %.0f more yeast after each hour, while there is room.",
			quantity.Celsius(celsius), quantity.NewPercent(100*(math.Exp(hourly)-1))),
		Term: working.Tell("ferment.term_growth", "by which share the cells grow in an hour while there is room")})
	gas = t.Find(working.Finding{Name: working.Tell("ferment.derive_gas", "gas that a percent of cells makes"),
		Symbol: "q", Unit: "L/(h kg)", By: q, Source: growthSource(),
		Term: working.Tell("ferment.term_gas_rate",
			"liters of gas an hour for each kilogram of flour and each percent of cells")})
	return growth, gas
}

// grows is the growth of the dough's cells at a temperature over that at 27 °C.
func (t *telling) grows(celsius float64) float64 {
	if t.d.start.Levain > 0 {
		return t.d.law.LevainGrowth(celsius)
	}
	return t.d.law.YeastCurve.Rate(celsius)
}

// kitchen is what is learned of this kitchen's pace at a temperature; the zero Expr when nothing is.
func (t *telling) kitchen(celsius float64) working.Expr {
	m := &t.d.belief.Mean
	if *m == (gasbalance.Vector{}) {
		return working.Expr{}
	}
	b, slope := t.unknown(gasbalance.Pace, m[gasbalance.Pace]), t.unknown(gasbalance.Slope, m[gasbalance.Slope])
	by := working.Given("ΔT", working.Tell("ferment.symbol_above", "degrees above 24 °C"),
		working.Amount(celsius-reference, working.DeltaCelsius, 2))
	c := t.unknown(gasbalance.ColdEnd, m[gasbalance.ColdEnd])
	k := working.Given("k", working.Tell("ferment.symbol_cold_shift",
		"what a degree of that does to the log of every rate "+
			"here"), working.Amount(gasbalance.ColdShift(celsius), working.Number, 6))
	return t.Find(working.Finding{
		Name: working.Tell("ferment.derive_kitchen", "pace of this kitchen"), Symbol: "P", Unit: working.Number,
		By: working.Exp(b.Plus(slope.Times(by)).Plus(c.Times(k))), Brief: working.Tell("ferment.brief_kitchen",
			"This culture goes at %.0f of the usual pace, by its bakes and readings.",
			quantity.NewPercent(100*t.d.pacing(celsius))),
		Source: sources.Judged("pace, slope and cold end as parts of one logarithm, the same for growth and gas"),
	})
}

// margin derives the spread at a time from its named parts, and the likely gas at which a fast kitchen or, for
// the late end, a slow one is ready.
func (t *telling) margin(need working.Expr, late bool, hour float64, o gasbalance.Outcome) working.Expr {
	s, _ := o.Path.At(hour)
	e := s.LogGas()
	parts := t.d.belief.Spread(e)
	sum := variances(working.Tell("ferment.part_amplitude",
		"variance of the log of the gas from the amplitude of the culture"), "v", parts.Kitchen)
	add := func(symbol string, meaning working.Message, v float64) {
		if v != 0 {
			sum = append(sum, working.Given(symbol, meaning, working.Amount(v, working.Number, 7)))
		}
	}
	add("v_s", working.Tell("ferment.part_luck", "from what differs from bake to bake"), parts.Luck)
	add("v_f", working.Tell("ferment.part_formula", "from what the formula leaves unsure"), parts.Formula)
	add("v_o", working.Tell("ferment.part_opening", "from cold below every bake learned from"), parts.Opening)
	name, gas, symbol := working.Tell("ferment.derive_spread_early", "spread of the log of the gas at the early end"),
		working.Tell("ferment.derive_gas_early", "likely gas at which a fast kitchen is ready"), "early"
	if late {
		name, gas, symbol = working.Tell("ferment.derive_spread_late", "spread of the log of the gas at the late end"),
			working.Tell("ferment.derive_gas_late", "likely gas at which a slow kitchen is ready"), "late"
	}
	spread := math.Sqrt(parts.Total())
	sigma := t.Find(working.Finding{
		Name: name, Symbol: "σ_" + symbol, Unit: working.Number, By: working.Sqrt(working.Sum(sum...)),
		Note: working.Tell("ferment.note_spread",
			"each part is the square of what one standard deviation of it does to the log of the gas by then"),
		Term: working.Tell("ferment.term_spread",
			"how far the logs of what one expects lie apart: 0.1 is about a tenth"),
		Brief: working.Tell("ferment.brief_spread",
			"The culture and the dough may make %.0f more or %.0f less gas than expected by then: two doughs of three lie "+
				"within that.", quantity.NewPercent(100*math.Expm1(spread)), quantity.NewPercent(-100*math.Expm1(-spread))),
		Source: sources.Judged("spreads of an unknown culture, narrowed by bakes and readings"),
	})
	reach := working.Given("z_"+symbol, working.Tell("ferment.symbol_reach",
		"standard deviations an 80 % range reaches to each side: 1.2816, and more while few bakes are known"),
		working.Amount(t.d.belief.Reach(parts.Total(),
			parts.Luck), working.Number, 5))
	off := reach.Times(sigma)
	if s := t.d.belief.Stretch; s > 0 && s != 1 {
		off = off.Times(working.Given("s", working.Tell("ferment.symbol_stretch",
			"factor by which the ranges of this culture have been too narrow so far"), working.Amount(s, working.Number, 5)))
	}
	if !late {
		off = off.Neg()
	}
	return t.Find(working.Finding{Name: gas, Symbol: "N_" + symbol, Unit: "L/kg", By: need.Times(working.Exp(off)),
		Source: sources.NormalQuantiles})
}

// Working derives the answer step by step.
func (r Ripeness) Working() working.Working {
	if r.d.law == nil {
		return working.Working{}
	}
	t := r.d.tell(working.Tell("ferment.derive_ripeness", "When the preferment is ripe"))
	t.formula()
	b := Bulk{Inoculation: r.of.Seed, Yeast: r.of.Yeast, ColdLevain: r.of.ColdSeed}
	t.cells(&b)
	need := t.peakGas(r.of.Seed)
	t.times(func(float64) working.Expr { return need }, r.outcome)
	return t.Working()
}

// peakGas derives the gas at which a preferment stands highest.
func (t *telling) peakGas(seed quantity.Percent) working.Expr {
	by := working.Num(t.d.law.Ripe)
	if !seed.IsZero() {
		s := working.Given("s", working.Tell("ferment.symbol_seed", "share of its flour that comes with the seed"),
			seed)
		by = by.Times(working.Num(1).Minus(s.Share()))
	}
	return t.Find(working.Finding{
		Name: working.Tell("ferment.derive_peak_gas", "gas at its peak"), Symbol: "G_peak", Unit: "L/kg", By: by,
		Note: working.Tell("ferment.note_peak",
			"5.85 L per kg is what the sugar at hand in fresh flour makes; ripe from ¾ of that, usable until 2½ times that "+
				"(judgments)"),
		Term: working.Tell("ferment.term_peak", "where a preferment stands highest: the sugar at hand is used"),
		Source: sources.Judged(
			"free sugars of flour, Saunders, Ng and Kline 1972 (abstract), fitted to rules of the trade"),
	})
}
