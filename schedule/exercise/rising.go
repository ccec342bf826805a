package exercise

import (
	"math"

	"example.org/maslin/dough/working"
	"example.org/maslin/ferment"
)

// rising is dose and time: at one temperature, at two, and with less levain.
func rising(d *dice, hard Difficulty) *sheet {
	warm, cool := d.warm(25, 28), d.warm(18, 22)
	curve := ferment.GanzleYeast()
	rate := func(celsius float64) float64 { return math.Round(curve.Rate(celsius)*100) / 100 }
	fast, slow := rate(warm.Celsius()), rate(cool.Celsius())
	if slow <= 0 || fast-slow < 0.03 {
		return nil
	}
	rateName := "μ"
	if hard == Usual {
		rateName = "μ_1" // and another
	}
	mu := symbol(rateName, working.Tell("exercise.symbol_rate_warm", "rate in the warm"), working.Amount(fast, "/h", 2)).
		Explained(working.Explain("rate"))
	longest := 14
	if hard == OneStep {
		longest = 24
	}
	hours := float64(d.between(6, longest, 1)) / 2
	needed := math.Round(fast*hours*1e6) / 1e6
	dose := symbol("M", working.Tell("exercise.symbol_dose", "dose needed"), needed).Explained(working.Explain("dose"))
	switch hard {
	case OneStep:
		out := newSheet(working.Tell("exercise.rising_one",
			"At %v this culture works at a rate of %.2f in an hour. The dough needs a dose of %v. How long does it "+
				"take?", warm, fast, needed))
		out.find(working.Tell("exercise.find_time", "time"), "t", working.Hour, 2, dose.Over(mu))
		out.tolerance = 0.05
		out.slip("multiplied",
			working.Tell("exercise.slip_multiplied", "dose and rate were multiplied instead of divided"),
			dose.Times(mu))
		out.slip("upside_down", working.Tell("exercise.slip_upside_down", "the rate was divided by the dose"),
			mu.Over(dose))
		out.slip("rate_forgotten", working.Tell("exercise.slip_dose_as_hours", "the dose was taken for hours"), dose)
		return out
	case Usual:
		first := float64(d.between(1, int(hours)-1, 1))
		out := newSheet(working.Tell("exercise.rising_two",
			"A dough needs a dose of %v. It stands for %v h at %v, where the rate is %.2f in an hour, and then at %v, where "+
				"it is %.2f. "+
				"How long does it still take in the cool place?", needed, first, warm, fast, cool, slow))
		t1 := symbol("t_1", working.Tell("exercise.symbol_time_warm", "time in the warm"),
			working.Amount(first, working.Hour, 0))
		m2 := symbol("μ_2", working.Tell("exercise.symbol_rate_cool", "rate in the cool"),
			working.Amount(slow, "/h", 2))
		had := out.find(working.Tell("exercise.find_had", "dose it has had"), "M_1", working.Number, 2, mu.Times(t1))
		out.find(working.Tell("exercise.find_still", "time still to go"), "t_2", working.Hour, 2,
			dose.Minus(had).Over(m2))
		out.tolerance = 0.08
		out.slip("nothing_had",
			working.Tell("exercise.slip_nothing_had", "the dose that it had in the warm was forgotten"),
			dose.Over(m2))
		out.slip("time_off", working.Tell("exercise.slip_time_off",
			"the hours in the warm were taken off the time in the cool, as if both were as fast"),
			dose.Over(m2).Minus(t1))
		out.slip("warm_rate",
			working.Tell("exercise.slip_warm_rate", "the rest was reckoned with the rate in the warm"),
			dose.Minus(had).Over(mu))
		return out
	}
	part := d.between(2, 5, 1)
	percent := float64(part * d.between(4, 6, 1))
	out := newSheet(working.Tell("exercise.rising_less_levain",
		"With %v %% of the flour in the levain the dough took %v h at %v, where the rate is %.2f in an hour. With a small "+
			"levain the time grows by "+
			"ln(p ÷ q) ÷ μ when its share falls from p to q. How long does it take with %v %%?", percent, hours,
		warm, fast, percent/float64(part)))
	t1 := symbol("t_1", working.Tell("exercise.symbol_time_before", "time it took"),
		working.Amount(hours, working.Hour, 0))
	f1 := symbol("p", working.Tell("exercise.symbol_share_before", "flour in the levain, before"),
		working.Amount(percent, working.Percent, 0))
	f2 := symbol("q", working.Tell("exercise.symbol_share_after", "flour in the levain, now"),
		working.Amount(percent/float64(part), working.Percent, 0))
	more := out.find(working.Tell("exercise.find_longer", "how much longer"), "t_more", working.Hour, 2,
		working.Ln(f1.Over(f2)).Over(mu))
	out.find(working.Tell("exercise.find_time", "time"), "t", working.Hour, 2, t1.Plus(more))
	out.tolerance = 0.08
	out.slip("in_proportion", working.Tell("exercise.slip_in_proportion",
		"the time was taken in proportion: half the levain, twice the time"),
		t1.Times(f1).Over(f2))
	out.slip("wrong_way", working.Tell("exercise.slip_shorter", "the time was made shorter instead of longer"),
		t1.Minus(more))
	out.slip("longer_alone", working.Tell("exercise.slip_longer_alone", "only the time added was given"), more)
	return out
}
