package exercise

import (
	"math"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

// percentages are baker's percentages: from flour to water, from dough to flour, and mending a dough that got too much
// water.
func percentages(d *dice, hard Difficulty) *sheet {
	salt := quantity.NewPercent(2)
	water := d.percent(60, 80, 1)
	formula := dough.Formula{
		Flours:  []dough.Part{{Name: "flour", Percent: quantity.NewPercent(100)}},
		Liquids: []dough.Part{{Name: "water", Percent: water}}, Salt: salt,
	}
	w := symbol("w", working.Tell("exercise.symbol_water_percent", "water in percent of the flour"), water)
	s := symbol("s", working.Tell("exercise.symbol_salt_percent", "salt in percent of the flour"), salt)
	switch hard {
	case OneStep:
		flour := d.mass(1000, 12000, 500)
		batch, err := formula.For(dough.ByFlour{Mass: flour})
		if err != nil {
			return nil
		}
		out := newSheet(working.Tell("exercise.percentages_water",
			"A formula has 100 %% flour, %v water and %v salt. You take %v of flour. How much water goes "+
				"in?", water, salt, flour))
		f := symbol("F", working.Tell("exercise.symbol_flour", "flour"), flour)
		out.agree(working.Tell("exercise.find_water", "water"), "W", working.WholeNumber, f.Times(w).Over(100), batch.Water())
		out.tolerance = 1
		out.slip("share_of_dough", working.Tell("exercise.slip_share_of_dough",
			"the percentage was taken as a share of the dough"),
			f.Times(w).Over(working.Num(100).Minus(w).Minus(s)))
		out.slip("share_of_total", working.Tell("exercise.slip_share_of_total",
			"the percentage was divided by the sum of the percentages, as if the flour were the dough"),
			f.Times(w).Over(working.Num(100).Plus(w).Plus(s)))
		out.slip("dry_only", working.Tell("exercise.slip_rest_of_hundred",
			"the water was taken as what is missing to 100 %%"),
			f.Times(working.Num(100).Minus(w)).Over(100))
		return out
	case Usual:
		flour := d.mass(2000, 20000, 1000)
		total := flour.Add(water.Of(flour)).Add(salt.Of(flour))
		count := d.between(2, 24, 1)
		each, ok := d.tidy(total.Divide(int64(count)))
		if !ok || each.Grams() < 200 || each.Grams() > 1500 {
			return nil
		}
		batch, err := formula.For(dough.Pieces{Count: count, Each: each})
		if err != nil {
			return nil
		}
		out := newSheet(working.Tell("exercise.percentages_flour",
			"You want %d pieces of %v from a dough of 100 %% flour, %v water and %v salt. How much flour do you weigh?",
			count, each, water, salt))
		n := symbol("n", working.Tell("exercise.symbol_pieces", "pieces"), count)
		m := symbol("m", working.Tell("exercise.symbol_each", "dough for one"), each)
		all := out.find(working.Tell("exercise.find_dough", "dough"), "D", working.Gram, working.WholeNumber, n.Times(m))
		out.agree(working.Tell("exercise.find_flour", "flour"), "F", working.WholeNumber,
			all.Times(100).Over(working.Num(100).Plus(w).Plus(s)), batch.Flour())
		out.tolerance = max(1, 0.002*flour.Grams())
		out.slip("share_of_dough", working.Tell("exercise.slip_share_of_dough",
			"the percentage was taken as a share of the dough"),
			all.Times(working.Num(100).Minus(w).Minus(s)).Over(100))
		out.slip("one_piece", working.Tell("exercise.slip_one_piece", "the flour of one piece was given"),
			m.Times(100).Over(working.Num(100).Plus(w).Plus(s)))
		out.slip("salt_forgotten", working.Tell("exercise.slip_salt_forgotten", "the salt was left out of the sum"),
			all.Times(100).Over(working.Num(100).Plus(w)))
		return out
	}
	flour, more := d.mass(2000, 10000, 500), d.mass(100, 1000, 100)
	poured, ok := d.tidy(water.Of(flour.Add(more)))
	if _, whole := d.tidy(water.Of(flour)); !ok || !whole {
		return nil
	}
	out := newSheet(working.Tell("exercise.percentages_mishap",
		"A dough of %v of flour should get %v water, but %v was poured in. How much flour do you add to have the same "+
			"dough again?",
		flour, water, poured))
	f := symbol("F", working.Tell("exercise.symbol_flour", "flour"), flour)
	p := symbol("W", working.Tell("exercise.symbol_poured", "water poured in"), poured)
	all := out.find(working.Tell("exercise.find_flour_for_water", "flour for that water"), "F_all", working.Gram,
		working.WholeNumber,
		p.Times(100).Over(w))
	out.find(working.Tell("exercise.find_flour_to_add", "flour to add"), "F_add", working.Gram, working.WholeNumber,
		all.Minus(f))
	out.tolerance = max(1, 0.005*more.Grams())
	out.slip("weight_for_weight", working.Tell("exercise.slip_weight_for_weight",
		"as much flour was added as there is too much water"),
		p.Minus(f.Times(w).Over(100)))
	out.slip("wrong_way", working.Tell("exercise.slip_wrong_way",
		"the water too much was multiplied by the percentage instead of divided by it"),
		p.Minus(f.Times(w).Over(100)).Times(w).Over(100))
	return out
}

// tidy is a weight that is a whole number of grams, or of tenths of an ounce, as it is weighed: micrograms that were
// lost on the way to it are put back.
func (d *dice) tidy(m quantity.Mass) (quantity.Mass, bool) {
	if d.us {
		tenths := math.Round(m.In(quantity.Ounce) * 10)
		return quantity.Ounces(tenths / 10), whole(m.In(quantity.Ounce) * 10)
	}
	return m, whole(m.Grams())
}

func whole(x float64) bool {
	n := float64(int64(x + 0.5))
	return x-n < 1e-5 && n-x < 1e-5
}
