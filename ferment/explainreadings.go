package ferment

import (
	"math"
	"strconv"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/gasbalance"
	"example.org/maslin/internal/sources"
)

// readings derives how each reading of the dough was taken in: what was expected and how surely, what was read and how
// surely, both weighed by their precision, and what that says of the culture. Times derived behind it start from there.
func (t *telling) readings(e *Estimate) {
	if len(e.readings) == 0 {
		return
	}
	before, err := e.bulk.prepare(true)
	if err != nil {
		return
	}
	_, taken := before.take(e.readings)
	for i := range taken {
		t.reading(i, e.readings[i], &taken[i])
	}
}

// normalUpdate is what two normal distributions say together.
func normalUpdate() working.Source {
	return sources.Gelman.At("chapter 2, the normal distribution with known variance")
}

// reading derives one step of Bayes' rule for normal distributions, on the log of the rise.
func (t *telling) reading(i int, r RiseReading, taken *gasbalance.Taken) {
	n := "_" + strconv.Itoa(i+1)
	find := func(symbol string, name working.Message, by working.Expr, note working.Message) working.Expr {
		return t.Find(working.Finding{Name: name, Symbol: symbol + n, Unit: working.Number, By: by, Note: note,
			Source: normalUpdate()})
	}
	given := func(symbol string, meaning working.Message, v float64) working.Expr {
		return working.Given(symbol+n, meaning, working.Amount(v, working.Number, 7))
	}
	percent := func(v float64) working.Value { return working.Amount(v, working.Percent, digits(v)) }
	off := working.Given("δ"+n, working.Tell("ferment.symbol_reading_error", "how far the reading may be off"),
		percent(100*r.within()))
	seen := 100 * max(r.Rise.Fraction(), -r.within()/2)
	read := working.Given("R"+n, working.Tell("ferment.symbol_read", "rise read after %v", r.At), percent(seen))
	y := find("l", working.Tell("ferment.derive_read", "what was read after %v, as a log", r.At),
		working.Ln(read.Share().Plus(off.Share())), working.Tell("ferment.note_read",
			"a log, because twice as fast and half as fast are equally far off; with the error added, a dough that has not "+
				"risen has one too"))
	noise := find("r", working.Tell("ferment.derive_read_spread", "spread of what was read after %v", r.At),
		off.Over(read.Plus(off)),
		working.Message{})
	expected := working.Ln(working.Given("E"+n, working.Tell("ferment.symbol_expected",
		"rise expected by then before the reading, by the law"), working.Amount(100*taken.Expected, working.Percent, 6)).
		Share().Plus(off.Share()))
	bend := taken.Straight - math.Log(taken.Expected+r.within())
	if bend > 1e-7 || bend < -1e-7 {
		expected = expected.Plus(given("k", working.Tell("ferment.symbol_bend",
			"what the law bends between what was expected and the answer"), bend))
	}
	x := find("x", working.Tell("ferment.derive_expected", "what was expected by then, as a log"), expected,
		working.Message{})
	spread := find("s", working.Tell("ferment.derive_expected_spread", "spread of what was expected"),
		working.Sqrt(working.Sum(variances(working.Tell("ferment.part_amplitude_rise",
			"variance of the log of the rise from the amplitude of the culture"), "u"+n, taken.Parts)...)),
		working.Tell("ferment.note_expected_spread",
			"each part is the square of what one standard deviation of it does to the log of the rise by then"))
	one := working.Num(1)
	precise, known := one.Over(noise.ToThe(2)), one.Over(spread.ToThe(2))
	share := taken.Variance() / (taken.Variance() + taken.Noise*taken.Noise)
	weight := t.Find(working.Finding{
		Name: working.Tell("ferment.derive_weight", "weight of the reading"), Symbol: "w" + n, Unit: working.Number,
		By: precise.Over(precise.Plus(known)), Source: normalUpdate(),
		Note: working.Tell("ferment.note_weight", "each counts by its precision, which is 1 ÷ spread²"),
		Brief: working.Tell("ferment.brief_weight",
			"You read %.0f, and %.1f was expected by then; the reading counts %.0f, what was expected the rest.",
			r.Rise, quantity.NewPercent(100*taken.Expected), quantity.NewPercent(100*share)),
	})
	both := find("z", working.Tell("ferment.derive_both", "what both say together"),
		x.Plus(weight.Times(y.Minus(x))), working.Message{})
	find("σ", working.Tell("ferment.derive_both_spread", "its spread, narrower than either"),
		working.Sqrt(one.Over(precise.Plus(known))), working.Message{})
	t.Find(working.Finding{
		Name: working.Tell("ferment.derive_rise_now", "the rise that is believed now"), Symbol: "B" + n,
		Is: working.Amount(100*taken.Rise, working.Percent, 3), Within: 0.05, Source: normalUpdate(),
		Brief: working.Tell("ferment.brief_rise_now", "Together they say that the dough has risen %.1f.",
			quantity.NewPercent(100*taken.Rise)),
		By: working.Exp(both).Minus(off.Share()).Times(100),
	})
	all := spread.ToThe(2).Plus(noise.ToThe(2))
	for k := range gasbalance.Unknowns {
		const rounding = 1e-12 // what does not go with the rise, as the slope at 24 °C, is left as the rounding of zero
		if math.Abs(taken.Together[k]) < rounding {
			continue
		}
		name := unknowns()[k]
		together := given("C_"+name.symbol, working.Tell("ferment.symbol_together",
			"how it goes with the log of the rise: %v", name.meaning), taken.Together[k])
		by := together.Over(all).Times(y.Minus(x))
		if taken.Before.Mean[k] != 0 {
			by = t.unknown(k, taken.Before.Mean[k]).Plus(by)
		}
		t.learned[k] = t.Find(working.Finding{
			Name:   working.Tell("ferment.derive_learned", "after the reading at %v: %v", r.At, name.meaning),
			Symbol: name.symbol + n, Is: working.Amount(taken.After.Mean[k], working.Number, 6), By: by,
			Within: 1e-5, Source: normalUpdate(),
		})
		if k == gasbalance.Pace {
			old := given("V_b", working.Tell("ferment.symbol_pace_variance",
				"variance of the log of the pace before, what differs from bake to bake included"),
				taken.After.Cov[k][k]+taken.Together[k]*taken.Together[k]/(taken.Variance()+taken.Noise*taken.Noise))
			find("σ_b", working.Tell("ferment.derive_pace_spread", "spread of the log of the pace, after the reading"),
				working.Sqrt(old.Minus(together.ToThe(2).Over(all))), working.Message{})
		}
	}
}

// An unknown of a kitchen as it is told: its symbol in derivations, what stands for it, and its part of a variance.
type unknown struct {
	symbol  string
	meaning working.Message
	part    working.Message // empty for the first, which says what all are
	of      string
}

// unknowns are those of a dough, in the order of [gasbalance.Vector].
func unknowns() [gasbalance.Unknowns]unknown {
	return [gasbalance.Unknowns]unknown{
		gasbalance.Amplitude: {symbol: "a", of: "a", meaning: working.Tell("ferment.symbol_amplitude",
			"log of the amplitude of this culture")},
		gasbalance.Pace: {symbol: "b", of: "b", meaning: working.Tell("ferment.symbol_pace",
			"log of the pace of this culture and dough, by the bakes and readings so far"),
			part: working.Tell("ferment.part_pace", "from its pace")},
		gasbalance.Slope: {symbol: "d", of: "d", meaning: working.Tell("ferment.symbol_slope",
			"its slope for each degree from 24 °C"),
			part: working.Tell("ferment.part_slope", "from its slope by temperature")},
		gasbalance.ColdEnd: {symbol: "c", of: "c", meaning: working.Tell("ferment.symbol_cold_end",
			"how much higher its cold end lies, in degrees"),
			part: working.Tell("ferment.part_cold_end", "from where its cold end lies")},
		gasbalance.Mixture: {symbol: "m", of: "w", meaning: working.Tell("ferment.symbol_mixture",
			"how far this levain leans to S. cerevisiae"),
			part: working.Tell("ferment.part_mixture", "from the mixture of its yeasts")},
		gasbalance.Growth: {symbol: "y", of: "y", meaning: working.Tell("ferment.symbol_yeast_growth",
			"log of how fast yeast grows in doughs here"),
			part: working.Tell("ferment.part_yeast_growth", "from how fast commercial yeast grows")},
	}
}

// unknown is one of them as a symbol: as readings have left it, or as it is known from elsewhere.
func (t *telling) unknown(k int, value float64) working.Expr {
	if x := t.learned[k]; x.String() != "" {
		return x
	}
	u := unknowns()[k]
	return working.Given(u.symbol, u.meaning, working.Amount(value, working.Number, 6))
}

// variances are the parts of a variance by what they come from; first says what they are variances of.
func variances(first working.Message, symbol string, parts gasbalance.Vector) (out []working.Expr) {
	for k, u := range unknowns() {
		if k == gasbalance.Amplitude {
			u.part = first
		}
		if parts[k] != 0 {
			out = append(out, working.Given(symbol+"_"+u.of, u.part, working.Amount(parts[k], working.Number, 7)))
		}
	}
	return out
}
