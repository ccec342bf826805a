package ferment

import (
	"math"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/gasbalance"
	"example.org/maslin/internal/sources"
)

// telling derives answers of one dough step by step.
type telling struct {
	*working.Derivation
	d *prepared
	// Symbols that later steps use.
	pace, start working.Expr
	// learned are the unknowns as readings of the dough have left them; the zero Expr where none has.
	learned [gasbalance.Unknowns]working.Expr
}

func (d *prepared) tell(title working.Message) *telling {
	return &telling{Derivation: working.Derive(title), d: d}
}

// growthSource is what cells and gas rest on.
func growthSource() working.Source {
	return sources.Judged("logistic growth (Verhulst) and gas from cells (Luedeking and Piret 1959); four numbers " +
		"fitted to rules of the trade")
}

// Working derives the estimate step by step: what the formula leaves of every rate, the cells, the rates at the dough's
// temperature, the gas the rise takes, the spread from its parts, and early, late and likely times.
func (e Estimate) Working() working.Working {
	if !e.given() {
		return working.Working{}
	}
	t := e.d.tell(working.Tell("ferment.derive_ready", "When the dough is ready"))
	t.formula()
	t.cells(&e.bulk)
	t.readings(&e)
	found := map[float64]working.Expr{}
	t.times(func(celsius float64) working.Expr {
		at := math.Round(celsius*100) / 100
		if _, ok := found[at]; !ok {
			found[at] = t.need("N", working.Tell("ferment.gas_needed", "gas that the rise takes, the dough at %.2f",
				quantity.Celsius(celsius)), e.d.target, celsius)
		}
		return found[at]
	}, e.outcome)
	return t.Working()
}

// formula derives what salt, sugar, water and whole grain leave of every rate.
func (t *telling) formula() {
	f, l := &t.d.formula, t.d.law
	half := l.Halfway
	if f.Osmotolerant {
		half = l.HalfwayTolerant
	}
	amount := func(v float64, u working.Unit) working.Value { return working.Amount(v, u, digits(v)) }
	h := working.Given("h", working.Tell("ferment.symbol_hydration", "water over flour"),
		amount(f.Hydration, working.Number))
	salt := working.Given("c_s", working.Tell("ferment.symbol_salt", "salt in percent of the flour"),
		amount(f.Salt, working.Number))
	solutes := working.Num(10).Over(h).Times(salt.Over(58.44).Times(1.86))
	particles := working.Tell("ferment.note_salt",
		"58.44 is the molar mass of salt, which comes apart into 1.86 particles")
	if f.Sugar > 0 {
		particles = working.Tell("ferment.note_solutes",
			"58.44 and 342.3 are the molar masses of salt and table sugar; salt comes apart into 1.86 particles, "+
				"sugar is split in two")
		sugar := working.Given("c_z", working.Tell("ferment.symbol_sugar", "sugar in percent of the flour"),
			amount(f.Sugar, working.Number))
		solutes = working.Num(10).Over(h).Times(salt.Over(58.44).Times(1.86).Plus(sugar.Over(342.3).Times(2)))
	}
	osmol := t.Find(working.Finding{
		Name:   working.Tell("ferment.derive_solutes", "what salt and sugar press with in the dough's water"),
		Symbol: "Π",
		Unit:   "osmol/kg", By: solutes,
		Note: particles,
		Term: working.Tell("ferment.term_solutes",
			"how strongly dissolved salt and sugar hold on to the water that yeast needs"),
		Source: sources.Judged("van 't Hoff; the osmotic coefficient of salt from memory"),
	})
	soft := h
	if f.Hydration > 1 {
		soft = working.Num(1)
	}
	half50 := working.Given("Π₅₀", working.Tell("ferment.symbol_halfway",
		"solutes at which the yeast works at half its pace"), working.Amount(half, "osmol/kg", 1))
	by := working.Num(1).Over(working.Num(1).Plus(osmol.Over(half50).ToThe(2))).Times(soft.Over(0.72).ToThe(0.4))
	if f.Whole > 0 {
		w := working.Given("w", working.Tell("ferment.symbol_whole", "share of whole grain in the flour"),
			amount(f.Whole, working.Number))
		by = by.Times(working.Exp(w.Times(0.182)))
	}
	t.pace = t.Find(working.Finding{
		Name: working.Tell("ferment.derive_pace", "what the formula leaves of every rate"), Symbol: "φ",
		Unit: working.Number, By: by,
		Brief: working.Tell("ferment.brief_pace",
			"Salt, sugar and water leave the culture %.0f of the pace it has in a dough without salt at 72 %% water.",
			quantity.NewPercent(100*l.Pace(*f))),
		Term: working.Tell("ferment.term_pace",
			"how fast everything goes in this dough, beside one without salt at 72 % water"),
		Source: sources.Judged(
			"between salt 10 to 30 % longer, sugar harmless to 5 % and slow above 10 %, stiff slower, " +
				"whole grain a fifth faster"),
	})
}

// digits are as many decimals as show a number of an input.
func digits(v float64) int {
	for n := range 6 {
		if p := math.Pow(10, float64(n)); math.Abs(math.Round(v*p)/p-v) < 1e-9 {
			return n
		}
	}
	return 6
}

// ripeCells derives the strength of a ripe levain, from its own ripening.
func (t *telling) ripeCells() working.Expr {
	l := t.d.law
	const seed, at = 0.2, 24.0
	growth := working.Given("g_l", working.Tell("ferment.symbol_growth24",
		"growth of a levain at 24 °C over that at 27 °C"), working.Amount(l.LevainGrowth(at), working.Number, 5))
	gas := working.Given("r_q", working.Tell("ferment.symbol_gas24", "gas from cells at 24 °C over that at 27 °C"),
		working.Amount(l.GasCurve.Rate(at), working.Number, 5))
	u := t.Find(working.Finding{
		Name: working.Tell("ferment.derive_feed",
			"what a feed of 1 : 2 : 2 at 24 °C grows by until the sugar of its fresh flour is used"), Symbol: "u",
		Unit: working.Number,
		By: working.Exp(
			working.Num(l.Ripe).
				Times(working.Num(1).Minus(seed)).
				Times(l.Growth).
				Times(growth).
				Over(working.Num(l.Gas).Times(gas).Times(l.Capacity)),
		),
		Note: working.Tell("ferment.note_feed",
			"5.85 L of gas per kg of fresh flour, growth of 0.37 an hour and 2.05 L of gas per hour, kg and percent of cells "+
				"at 27 °C, "+
				"and a crowd of 1.70 % at which growth ends; a fifth of its flour, 0.2, comes with the culture"),
		Source: growthSource(),
	})
	return t.Find(working.Finding{
		Name:   working.Tell("ferment.derive_ripe", "cells of a ripe levain, in percent of its flour as instant yeast"),
		Symbol: "X_L", Unit: working.Number, Decimals: 5,
		By: working.Num(l.Capacity).Times(u.Minus(1)).Over(u.Minus(seed)),
		Term: working.Tell("ferment.term_cells",
			"how much gas the yeast can make, told as the instant yeast that makes as much; not a count of cells"),
		Source: growthSource(),
	})
}

// cells derives what the dough starts with.
func (t *telling) cells(b *Bulk) {
	var parts []working.Expr
	if !b.Inoculation.IsZero() {
		f := working.Given("f",
			working.Tell("ferment.symbol_share", "share of the flour that comes with the ripe levain"), b.Inoculation)
		by := f.Share().Times(t.ripeCells())
		if b.ColdLevain {
			by = by.Times(working.Exp(working.Num(-coldLag)))
		}
		parts = append(parts, t.Find(working.Finding{
			Name: working.Tell("ferment.derive_levain", "cells of the levain in the dough"), Symbol: "X_0",
			Unit: working.Number, By: by, Source: growthSource(),
			Brief: working.Tell("ferment.brief_levain",
				"The levain brings as much yeast as %.2f of instant yeast would.", quantity.NewPercent(t.d.start.Levain)),
		}))
	}
	if b.Yeast.Kind != NoYeast {
		y := working.Given("y", working.Tell("ferment.symbol_dose", "%v in percent of the flour", b.Yeast.Kind),
			working.Amount(b.Yeast.Amount.Points(), working.Number, digits(b.Yeast.Amount.Points())))
		parts = append(parts, t.Find(working.Finding{
			Name:   working.Tell("ferment.derive_yeast", "cells of the yeast in the dough"),
			Symbol: "Y_0", Unit: working.Number,
			By: y.Times(b.Yeast.worth()), Note: working.Tell("ferment.note_yeast",
				"1 part of instant yeast is 3 of fresh or 1.2 of active dry"),
			Source: sources.Practice(
				"fresh yeast is replaced by a third of its weight in instant or 0.4 of it in active dry " +
					"yeast"),
		}))
	}
	handed := t.d.start.Cells()
	for i := range b.Preferments {
		h := &b.Preferments[i]
		own, err := h.prepare(b.Law)
		if err != nil {
			continue
		}
		s := own.at(own.start, hours(h.Ripened.Duration()))
		share := working.Given("f_p", working.Tell("ferment.symbol_preferment",
			"share of the flour that is in the preferment"), h.Flour)
		grown := working.Given("X_p", working.Tell("ferment.symbol_grown", "cells in it after %v, by the same law",
			h.Ripened), working.Amount(s.Cells(), working.Number, 5))
		parts = append(parts, t.Find(working.Finding{
			Name: working.Tell("ferment.derive_handed", "cells that the preferment hands on"), Symbol: "X_h",
			Unit: working.Number, By: share.Share().Times(grown), Source: growthSource(),
		}))
	}
	if len(parts) == 1 {
		t.start = parts[0]
		return
	}
	sum := parts[0]
	for _, p := range parts[1:] {
		sum = sum.Plus(p)
	}
	t.start = t.Find(working.Finding{
		Name: working.Tell("ferment.derive_all_cells", "cells in the dough, all together"), Symbol: "Z_0",
		Is: working.Amount(handed, working.Number, 5), By: sum, Source: working.Algebra(),
	})
}

// worth is what one part of the yeast is worth in instant yeast, as arithmetic.
func (y Yeast) worth() working.Expr {
	switch y.Kind {
	case FreshYeast:
		return working.Num(1).Over(3)
	case ActiveDryYeast:
		return working.Num(1).Over(3).Over(0.4)
	}
	return working.Num(1)
}

// pacing is what the kitchen does to every rate beside the formula, at a temperature: e^(b + d·(T − 24) + c·k).
func (d *prepared) pacing(celsius float64) float64 {
	m := &d.belief.Mean
	return math.Exp(m[gasbalance.Pace] + m[gasbalance.Slope]*(celsius-reference) +
		m[gasbalance.ColdEnd]*gasbalance.ColdShift(celsius))
}

// Working derives the index step by step.
func (f Flavor) Working() working.Working {
	if f.Yeast == 0 {
		return working.Working{}
	}
	d := working.Derive(working.Tell("ferment.derive_flavor", "Mild or sharp"))
	l := working.Given("L", working.Tell("ferment.symbol_lactobacilli",
		"doublings of the lactobacilli over the history"), working.Amount(f.Lactobacilli, working.Number, 5))
	y := working.Given("Y", working.Tell("ferment.symbol_yeast", "doublings of the yeast"),
		working.Amount(f.Yeast, working.Number, 5))
	ml := working.Given("μ_L", working.Tell("ferment.symbol_rate_lactobacilli", "rate of the lactobacilli at 24 °C"),
		working.Amount(GanzleLactobacilli().Rate(reference), "/h", 5))
	my := working.Given("μ_Y", working.Tell("ferment.symbol_rate_yeast", "rate of the yeast at 24 °C"),
		working.Amount(GanzleYeast().Rate(reference), "/h", 5))
	d.Find(working.Finding{
		Name: working.Tell("ferment.derive_index", "acid index"), Symbol: "I",
		Is: working.Amount(f.Index, working.Number, 0), Decimals: working.WholeNumber,
		By: working.Num(100).Times(l.Over(y)).Over(ml.Over(my)), Source: sources.Ganzle1998,
	})
	return d.Working()
}
