package exercise

import (
	"example.org/maslin/bake"
	"example.org/maslin/dough/working"
)

// loss is what a loaf loses, what to scale for it, and what to mix for many.
func loss(d *dice, hard Difficulty) *sheet {
	scaled := d.mass(400, 1600, 50)
	percent := d.percent(8, 20, 1)
	baked, ok := d.tidy(scaled.Sub(percent.Of(scaled)))
	if !ok {
		return nil
	}
	b := symbol("B", working.Tell("exercise.symbol_baked", "baked and cool"), baked)
	l := symbol("L", working.Tell("exercise.symbol_loss", "loss in the oven, of the dough"), percent)
	switch hard {
	case OneStep:
		out := newSheet(working.Tell("exercise.loss_percent",
			"A piece of dough of %v gives a loaf of %v. How much did it lose, in percent of the dough?", scaled, baked))
		s := symbol("D", working.Tell("exercise.symbol_scaled", "dough scaled"), scaled)
		out.find(working.Tell("exercise.find_loss", "loss"), "L", working.Percent, 1, s.Minus(b).Over(s).Times(100))
		out.tolerance = 0.1
		out.slip("of_bread", working.Tell("exercise.slip_of_bread", "the loss was taken in percent of the bread"),
			s.Minus(b).Over(b).Times(100))
		out.slip("what_stays", working.Tell("exercise.slip_what_stays", "what stays was given instead of what is lost"),
			b.Over(s).Times(100))
		return out
	case Usual:
		is, err := bake.PromisedLoaf{Baked: baked, Loss: percent}.Scaling()
		if err != nil {
			return nil
		}
		out := newSheet(working.Tell("exercise.loss_scaling",
			"A loaf shall weigh %v when it is cool. It loses %v of the dough in the oven. How much dough do you "+
				"scale?", baked, percent))
		out.agree(working.Tell("exercise.find_scaled", "dough to scale"), "D", working.WholeNumber,
			b.Over(working.Num(1).Minus(l.Over(100))), is.Dough)
		out.tolerance = 1
		out.slip("added", working.Tell("exercise.slip_loss_added",
			"the loss was added to the bread, but it is a percentage of the dough"),
			b.Times(working.Num(1).Plus(l.Over(100))))
		out.slip("taken_off", working.Tell("exercise.slip_loss_taken_off", "the loss was taken off once more"),
			b.Times(working.Num(1).Minus(l.Over(100))))
		return out
	}
	count := d.between(4, 30, 2)
	process := d.percent(2, 5, 1)
	n := symbol("n", working.Tell("exercise.symbol_loaves", "loaves"), count)
	v := symbol("v", working.Tell("exercise.symbol_process", "what stays in bowl and on bench, of the dough mixed"),
		process)
	out := newSheet(working.Tell("exercise.loss_batch",
		"%d loaves shall weigh %v each when they are cool. They lose %v of the dough in the oven, and %v of the dough "+
			"mixed stays in the bowl and on the "+
			"bench. How much dough do you mix?", count, baked, percent, process))
	each := out.find(working.Tell("exercise.find_scaled", "dough to scale"), "D", working.Gram, working.WholeNumber,
		b.Over(working.Num(1).Minus(l.Over(100))))
	out.find(working.Tell("exercise.find_mixed", "dough to mix"), "M", working.Gram, working.WholeNumber,
		n.Times(each).Over(working.Num(1).Minus(v.Over(100))))
	out.tolerance = max(2, 0.0015*float64(count)*scaled.Grams())
	all := n.Times(b)
	out.slip("losses_added", working.Tell("exercise.slip_losses_added",
		"both losses were taken off the dough mixed, as if they were percentages of the same"),
		all.Over(working.Num(1).Minus(l.Plus(v).Over(100))))
	out.slip("added", working.Tell("exercise.slip_loss_added",
		"the loss was added to the bread, but it is a percentage of the dough"),
		all.Times(working.Num(1).Plus(l.Plus(v).Over(100))))
	out.slip("bowl_forgotten", working.Tell("exercise.slip_bowl_forgotten", "what stays in the bowl was forgotten"),
		n.Times(each))
	out.slip("one_loaf", working.Tell("exercise.slip_one_loaf", "it was reckoned for one loaf"),
		each.Over(working.Num(1).Minus(v.Over(100))))
	return out
}
