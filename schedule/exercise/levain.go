package exercise

import (
	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

// levain is the weight of a levain, taking it out of the formula, and building it.
func levain(d *dice, hard Difficulty) *sheet {
	flour := d.mass(2000, 10000, 500)
	share := d.percent(10, 30, 5)
	hydration := quantity.NewPercent(float64(of(d, 50, 60, 80, 100, 125)))
	f := symbol("F", working.Tell("exercise.symbol_all_flour", "all flour, that in the levain included"), flour)
	p := symbol("p", working.Tell("exercise.symbol_prefermented", "part of the flour that is in the levain"), share)
	h := symbol("h", working.Tell("exercise.symbol_levain_hydration",
		"water in the levain, in percent of its own flour"), hydration)
	switch hard {
	case OneStep:
		out := newSheet(working.Tell("exercise.levain_weight",
			"Of %v of flour, %v goes into the levain, which has %v of its own flour in water. How much does the levain weigh?",
			flour, share, hydration))
		in := out.find(working.Tell("exercise.find_levain_flour", "flour in the levain"), "f", working.Gram,
			working.WholeNumber,
			f.Times(p).Over(100))
		out.find(working.Tell("exercise.find_levain", "levain"), "L", working.Gram, working.WholeNumber,
			in.Times(working.Num(1).Plus(h.Over(100))))
		out.tolerance = 1
		out.slip("flour_alone", working.Tell("exercise.slip_levain_flour_alone",
			"the flour of the levain was given without its water"), in)
		out.slip("water_alone", working.Tell("exercise.slip_levain_water_alone", "the water of the levain was given"),
			in.Times(h).Over(100))
		out.slip("of_all_flour", working.Tell("exercise.slip_hydration_of_all_flour",
			"the water of the levain was taken of all the flour"),
			in.Plus(f.Times(h).Over(100)))
		return out
	case Usual:
		water := d.percent(60, 80, 1)
		formula := dough.Formula{
			Flours:  []dough.Part{{Name: "flour", Percent: quantity.NewPercent(100)}},
			Liquids: []dough.Part{{Name: pouredName, Percent: water}}, Salt: quantity.NewPercent(2),
			Preferments: []dough.Preferment{{Name: "levain", Flour: share, Hydration: hydration}},
		}
		batch, err := formula.For(dough.ByFlour{Mass: flour})
		if err != nil {
			return nil
		}
		out := newSheet(working.Tell("exercise.levain_water",
			"A dough has %v of flour and %v water in all. %v of the flour is in a levain of %v hydration. How much water do "+
				"you pour when you mix?", flour, water, share, hydration))
		w := symbol("w", working.Tell("exercise.symbol_water_percent", "water in percent of the flour"), water)
		all := out.find(working.Tell("exercise.find_all_water", "all water"), "W", working.Gram, working.WholeNumber,
			f.Times(w).Over(100))
		in := out.find(working.Tell("exercise.find_levain_flour", "flour in the levain"), "f", working.Gram,
			working.WholeNumber,
			f.Times(p).Over(100))
		inside := out.find(working.Tell("exercise.find_levain_water", "water in the levain"), "W_L", working.Gram,
			working.WholeNumber,
			in.Times(h).Over(100))
		poured, ok := pouredWater(batch)
		if !ok {
			return nil
		}
		out.agree(working.Tell("exercise.find_poured", "water to pour"), "W_pour", working.WholeNumber, all.Minus(inside),
			poured)
		out.tolerance = 2
		out.slip("levain_twice", working.Tell("exercise.slip_levain_twice",
			"the levain was counted twice: its water was not taken out"), all)
		out.slip("whole_levain", working.Tell("exercise.slip_whole_levain",
			"the whole levain was taken out of the water, not its water alone"),
			all.Minus(inside).Minus(in))
		out.slip("share_of_water", working.Tell("exercise.slip_share_of_water",
			"the share of the flour was taken off the water"),
			all.Times(working.Num(100).Minus(p)).Over(100))
		return out
	}
	starter := d.mass(20, 100, 10)
	flourParts, waterParts := d.between(2, 6, 1), d.between(1, 5, 1)
	total := starter.Times(int64(1 + flourParts + waterParts))
	keep := starter
	want, ok := d.tidy(total.Sub(keep))
	if !ok {
		return nil
	}
	out := newSheet(working.Tell("exercise.levain_build",
		"You need %v of ripe levain, and %v to keep as the next culture. It is fed with %d {3|part|parts} of flour and %d "+
			"{4|part|parts} of water "+
			"to one part of culture. How much culture do you take?", want, keep, flourParts, waterParts))
	l := symbol("L", working.Tell("exercise.symbol_levain_wanted", "levain for the dough"), want)
	k := symbol("K", working.Tell("exercise.symbol_kept", "levain to keep"), keep)
	a := symbol("a", working.Tell("exercise.symbol_flour_parts", "parts of flour"), flourParts)
	b := symbol("b", working.Tell("exercise.symbol_water_parts", "parts of water"), waterParts)
	all := out.find(working.Tell("exercise.find_levain_all", "levain to make"), "M", working.Gram, working.WholeNumber,
		l.Plus(k))
	out.find(working.Tell("exercise.find_starter", "culture"), "S", working.Gram, working.WholeNumber,
		all.Over(working.Num(1).Plus(a).Plus(b)))
	out.tolerance = 1
	out.slip("nothing_kept", working.Tell("exercise.slip_nothing_kept", "what is kept was forgotten"),
		l.Over(working.Num(1).Plus(a).Plus(b)))
	out.slip("starter_no_part", working.Tell("exercise.slip_starter_no_part", "the culture was not counted as a part"),
		all.Over(a.Plus(b)))
	out.slip("flour_parts_alone", working.Tell("exercise.slip_flour_parts_alone",
		"it was divided by the parts of flour alone"), all.Over(a))
	return out
}

// pouredName is what the water is called in the formulas of exercises.
const pouredName = "water"

// pouredWater is the water that is weighed at mixing.
func pouredWater(b dough.Batch) (quantity.Mass, bool) {
	for _, l := range b.FinalDough() {
		if l.Name == pouredName {
			return l.Mass, true
		}
	}
	return quantity.Mass{}, false
}
