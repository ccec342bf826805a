package ferment

import (
	"slices"
	"strconv"

	"example.org/maslin/dough/working"
	"example.org/maslin/internal/gasbalance"
	"example.org/maslin/internal/sources"
)

// retold is how many bakes are told one by one; those before them are told together.
const retold = 24

// Working derives what was learned: how each of the last bakes moved the log of the pace and its spread, and from both
// the pace and its range.
func (l Lesson) Working() working.Working {
	if l.Culture.IsZero() {
		return working.Working{}
	}
	t := l.Culture.taught()
	m, s := t.Unknown(gasbalance.Pace)
	d := working.Derive(working.Tell("ferment.derive_lesson", "What the logged bakes say"))
	luck := working.Given("σ", working.Tell("ferment.symbol_luck",
		"standard deviation of the log of the time from bake to bake, found together with it"),
		working.Amount(t.Luck, working.Number, 6))
	l.fading(d)
	pace := l.Culture.Pace()
	d.Find(working.Finding{Name: working.Tell("ferment.derive_bake_to_bake", "from bake to bake"), Symbol: "v",
		Is: l.Culture.BakeToBake(), Decimals: 1, By: luck.Times(100), Source: sources.Gelman})
	b, sd := l.moved(d, m, s, t.Bakes)
	d.Find(
		working.Finding{Name: working.Tell("ferment.derive_pace_low", "low end of the pace (10 %%)"), Symbol: "p_low",
			Is: pace.Low, Decimals: 1,
			By: working.Exp(b.Minus(sd.Times(z80))).Times(100), Source: sources.NormalQuantiles},
	)
	d.Find(working.Finding{Name: working.Tell("ferment.derive_pace_high", "high end of the pace (90 %%)"),
		Symbol: "p_high", Is: pace.High, Decimals: 1,
		By: working.Exp(b.Plus(sd.Times(z80))).Times(100), Source: sources.NormalQuantiles})
	d.Find(working.Finding{Name: working.Tell("ferment.derive_pace_likely", "pace of the culture, of the typical one"),
		Symbol: "p", Is: pace.Likely, Decimals: 1,
		By: working.Exp(b).Times(100), Source: sources.Gelman})
	return d.Working()
}

// fading derives how much likelier the log is when old bakes count less than when all count alike, by which it is
// chosen how they count.
func (l *Lesson) fading(d *working.Derivation) {
	all := l.Culture.of.group.Foretold(l.in.Person, l.in.Name)
	if len(all) == 0 {
		return
	}
	alike := working.Given("L_0", working.Tell("ferment.symbol_foretold_alike",
		"logarithm of how likely the bakes were, each by those before it, when all count alike"),
		working.Amount(all[0].Log, working.Number, 4))
	for i, f := range all[1:] {
		days := int(f.HalfLife)
		fades := working.Given("L_"+strconv.Itoa(i+1), working.Tell("ferment.symbol_foretold_fading",
			"the same when a bake counts half after %d {1|day|days}", days), working.Amount(f.Log, working.Number, 4))
		d.Find(working.Finding{
			Name: working.Tell("ferment.derive_foretold",
				"logarithm of how many times as likely the bakes are when one counts half after %d {1|day|days}", days),
			Symbol: "D_" + strconv.Itoa(i+1), Unit: working.Number, Decimals: 4, By: fades.Minus(alike),
			Source: sources.Dawid,
			Note: working.Tell("ferment.note_foretold",
				"old bakes count less by the one of these that is largest, when it is above 0.15; otherwise all count alike"),
		})
	}
}

// moved derives the mean and the spread of the log of the pace from the bakes, one after the other: each is what was
// expected of it and what it was, weighed by their precision.
func (l *Lesson) moved(d *working.Derivation, mean, sd float64, bakes int) (b, spread working.Expr) {
	last := l.order()[max(0, len(l.rows)-retold):]
	before, variance, each := l.Culture.of.group.Retold(l.in.Person, l.in.Name, l.ordered(last), l.orderedWeights(last))
	if len(each) == 0 {
		return working.Given("b", working.Tell("ferment.symbol_log_pace",
				"mean of the log of the pace, from %d {1|bake|bakes}", bakes), working.Amount(mean, working.Number, 6)),
			working.Given("s", working.Tell("ferment.symbol_log_pace_sd", "its standard deviation"),
				working.Amount(sd, working.Number, 6))
	}
	cells := func(of func(*gasbalance.Weighed) float64) (out []float64) {
		for i := range each {
			out = append(out, of(&each[i]))
		}
		return out
	}
	columns := []working.Column{
		{Symbol: "y", Meaning: working.Tell("ferment.column_read",
			"log of the pace at which the bake would have been just ready"), Decimals: 5,
			Cells: cells(func(w *gasbalance.Weighed) float64 { return w.Read })},
		{Symbol: "x", Meaning: working.Tell("ferment.column_expected", "what was expected of it before"), Decimals: 5,
			Cells: cells(func(w *gasbalance.Weighed) float64 { return w.Expected })},
		{Symbol: "u", Meaning: working.Tell("ferment.column_variance", "variance of what was expected"), Decimals: 6,
			Cells: cells(func(w *gasbalance.Weighed) float64 { return w.Variance })},
		{Symbol: "n", Meaning: working.Tell("ferment.column_noise",
			"variance of the bake: its luck, its reading and its formula, over its weight"), Decimals: 6,
			Cells: cells(func(w *gasbalance.Weighed) float64 { return w.Noise })},
		{Symbol: "w", Meaning: working.Tell("ferment.column_weight",
			"weight of the bake: its precision 1 ÷ n over both, 1 ÷ n + 1 ÷ u"), Decimals: 6,
			By: func(_ int, c []working.Expr) working.Expr { u, n := c[len(c)-2], c[len(c)-1]; return u.Over(u.Plus(n)) }},
		{Symbol: "c", Meaning: working.Tell("ferment.column_share",
			"how much of what is expected is the pace of the culture"), Decimals: 5,
			Cells: cells(func(w *gasbalance.Weighed) float64 { return w.Share })},
	}
	gained := d.Find(working.Finding{
		Name:   working.Tell("ferment.derive_gained", "what the bakes add to the log of the pace, one after the other"),
		Symbol: "D", Unit: working.Number, Decimals: 6, Source: sources.Gelman,
		Note: working.Tell("ferment.note_gained",
			"a bake that is off by y − x moves what is known by its weight, and the pace by its share of that; bakes that "+
				"surprise much weigh less, old ones too where a half-life is set"),
		Table: working.Table{Columns: append(columns, working.Column{Symbol: "g",
			Meaning: working.Tell("ferment.column_gain", "what it adds to the log of the pace"), Decimals: 7,
			By: func(_ int, c []working.Expr) working.Expr { return c[5].Times(c[4]).Times(c[0].Minus(c[1])) }})},
	})
	start := working.Given("b_0", working.Tell("ferment.symbol_log_pace_before",
		"mean of the log of the pace before these bakes; 0 for the typical culture"),
		working.Amount(before, working.Number, 6))
	b = d.Find(working.Finding{
		Name:   working.Tell("ferment.symbol_log_pace", "mean of the log of the pace, from %d {1|bake|bakes}", bakes),
		Symbol: "b", Is: working.Amount(mean, working.Number, 6), By: start.Plus(gained), Within: 1e-5,
		Source: sources.Gelman,
	})
	narrowed := d.Find(working.Finding{
		Name:   working.Tell("ferment.derive_narrowed", "what the bakes take off the variance of the log of the pace"),
		Symbol: "Q", Unit: working.Number, Decimals: 7, Source: sources.Gelman,
		Table: working.Table{Columns: []working.Column{columns[2], columns[3], columns[4], columns[5], {Symbol: "f",
			Meaning: working.Tell("ferment.column_narrows", "what it takes off the variance"), Decimals: 8,
			By: func(_ int, c []working.Expr) working.Expr { return c[3].ToThe(2).Times(c[0]).Times(c[2]) }}}},
	})
	old := working.Given("V_0", working.Tell("ferment.symbol_variance_before",
		"variance of the log of the pace before these bakes"), working.Amount(variance, working.Number, 7))
	spread = d.Find(working.Finding{
		Name:   working.Tell("ferment.symbol_log_pace_sd", "its standard deviation"),
		Symbol: "s", Is: working.Amount(sd, working.Number, 6), By: working.Sqrt(old.Minus(narrowed)), Within: 1e-5,
		Source: sources.Gelman,
	})
	return b, spread
}

// order are the bakes by date, as they were taken in.
func (l *Lesson) order() []int {
	order := make([]int, len(l.rows))
	for i := range order {
		order[i] = i
	}
	byDate := func(a, b int) int { return l.in.Bakes[a].On.Compare(l.in.Bakes[b].On) }
	if !slices.IsSortedFunc(order, byDate) {
		slices.SortStableFunc(order, byDate)
	}
	return order
}

func (l *Lesson) ordered(order []int) []gasbalance.Dated {
	if slices.IsSorted(order) && len(order) == len(l.rows) {
		return l.rows
	}
	out := make([]gasbalance.Dated, len(order))
	for k, i := range order {
		out[k] = l.rows[i]
	}
	return out
}

func (l *Lesson) orderedWeights(order []int) []float64 {
	out := make([]float64, len(order))
	for k, i := range order {
		out[k] = l.weights[i]
	}
	return out
}
