package dough

import (
	"slices"

	"example.org/maslin/dough/quantity"
)

// Batch is a formula turned into weights. It is one value with three views that always
// reconcile to the microgram: the overall formula ([Batch.Overall]), what is made beforehand
// ([Batch.Builds]) and what is weighed at mixing ([Batch.FinalDough]).
type Batch struct {
	c      compiled
	target Target
	goal   goal
	mass   []quantity.Mass // of each ingredient, overall
	flour  quantity.Mass
	dough  quantity.Mass
	work   []work // one for each node of the tree; empty when nothing is made beforehand
	// weighed: the weights were given and the percentages follow from them.
	weighed bool
}

// work is what one node of the tree weighs.
type work struct {
	total     []quantity.Mass // of each ingredient, everything nested included
	own       []quantity.Mass // weighed for this node itself
	starter   quantity.Mass   // of a starter that is counted or removed again
	starterOf Seed
	carried   quantity.Mass // starter in it that is removed at the end, that of what goes into it included
	given     *given        // how it was weighed, when not all of it was used
}

// given is a bowl of which only a part went on, as it was weighed.
type given struct {
	own     []quantity.Mass // of each ingredient
	starter quantity.Mass
	removed quantity.Mass // taken away again before use
	used    quantity.Mass // what went on
}

// weighedFor is what was weighed for node k itself: every ingredient, and its starter.
func (b *Batch) weighedFor(k int) (own []quantity.Mass, starter quantity.Mass) {
	w := &b.work[k]
	if w.given != nil {
		return w.given.own, w.given.starter
	}
	return w.own, w.starter
}

// goesOn is how much of node k goes into the next bowl, and removed what is taken away before.
func (b *Batch) goesOn(k int) (used, removed quantity.Mass) {
	w := &b.work[k]
	if w.given != nil {
		return w.given.used, w.given.removed
	}
	used = quantity.Sum(w.total...)
	if w.starterOf.Account == SeedRemoved {
		removed = w.starter
	}
	if b.c.nodes[k].parent == 0 {
		return used, removed.Add(w.carried)
	}
	return used.Add(w.carried), removed
}

// For answers how much of everything the target takes.
//
//	flour = dough ÷ Σ percentages;  ingredient = flour · percentage
//
// The dough is apportioned over the lines by largest remainder, so that they add up to it to
// the microgram; with a target in flour, the flours add up to that flour and every other line is
// rounded once, half to even. What preferments and soakers hold is taken out of the same
// lines, so that the three views of the batch reconcile exactly.
//
// Percentages that come from weights are rounded to a millionth of a point; a preferment that by that
// much seems to hold more, or less, than all of an ingredient is taken to hold all of it.
//
// Masses from 1 g to 100 t. Exact to 1 µg per line, and to a few µg per line of a preferment. Errors:
// [quantity.InputError] for every field that is impossible, all at once; ErrInconsistent when flours do not add up to
// 100 % or a preferment holds more of an ingredient than the formula. Source: the formula procedure of Gisslen,
// Professional Baking; largest remainder as in [quantity.Apportion].
//
// The errors of the formula name its fields, and those of the target the fields below the key of its type, such as
// baked.each; a request that has a formula field puts that in front of what [Formula.Check] says.
func (f Formula) For(target Target) (Batch, error) {
	b, ofFormula, ofTarget := f.weighed(target)
	var p quantity.Problems
	p.Join("", ofFormula)
	p.Join("", ofTarget)
	return b, p.Err()
}

// weighed is For with what is wrong with the formula and with the target apart.
func (f Formula) weighed(target Target) (_ Batch, ofFormula, ofTarget error) {
	var p, q quantity.Problems
	c := compile(&f, &p)
	var g goal
	if target == nil {
		q.Required("Target", quantity.Tell("dough.want_how_much_wanted_loaves_or",
			"how much is wanted: loaves or pieces of a weight, or so much dough or flour"))
	} else {
		g = goalOf(target, &c, &q)
	}
	if ofFormula, ofTarget = p.ErrFor(f), q.ErrFor(targets{}); ofFormula != nil || ofTarget != nil {
		return Batch{}, ofFormula, ofTarget
	}
	b := Batch{c: c, target: target, goal: g}
	stock, atHand := target.(AtHand)
	if atHand { // keep nothing that the caller can change
		b.target = AtHand{Stock: slices.Clone(stock.Stock)}
	}
	for {
		if err := b.weigh(); err != nil {
			return Batch{}, quantity.DataPaths(f, err), nil
		}
		over := stock.exceeded(&b)
		if over.IsZero() {
			return b, nil, nil
		}
		// The lines of a preferment round by themselves and may add up to some micrograms more than there is.
		b.goal.flour = b.goal.flour.Sub(over)
		b.goal.scaled = quantity.Mass{}
	}
}

// Check reports everything that is wrong with the formula, whatever the target.
func (f Formula) Check() error {
	var p quantity.Problems
	compile(&f, &p)
	return p.ErrFor(f)
}

func (b *Batch) weigh() error {
	items, flours := b.c.items, b.c.flours
	b.mass = make([]quantity.Mass, len(items))
	if b.goal.flour.IsZero() {
		apportion(micrograms(b.goal.dough), items, b.mass)
	} else {
		apportion(micrograms(b.goal.flour), items[:flours], b.mass)
		for i := flours; i < len(items); i++ {
			b.mass[i] = items[i].percent.Of(b.goal.flour)
		}
	}
	b.flour = quantity.Sum(b.mass[:flours]...)
	b.dough = b.flour.Add(quantity.Sum(b.mass[flours:]...))
	if b.goal.scaled.IsZero() {
		b.goal.scaled = b.dough
	}
	var p quantity.Problems
	if !quantity.Check(&p, "Target", b.dough, leastDough, mostDough.Times(10)) {
		return p.ErrFor(b)
	}
	return b.weighTree()
}

// Dough returns the mass of the dough, inclusions and everything made beforehand in it.
func (b Batch) Dough() quantity.Mass { return b.dough }

// Flour returns the total flour, that of the preferments included.
func (b Batch) Flour() quantity.Mass { return b.flour }

// Water returns the total water: every liquid that is water, that of the preferments included.
func (b Batch) Water() quantity.Mass {
	var w quantity.Mass
	for i := range b.c.items {
		if b.c.items[i].isWater() {
			w = w.Add(b.mass[i])
		}
	}
	return w
}

// Scaled returns the dough left to divide after the process loss.
func (b Batch) Scaled() quantity.Mass { return b.goal.scaled }

// Pieces returns the number of pieces, or 0 if the target has none.
func (b Batch) Pieces() int { return b.goal.pieces }

// ScalingWeight returns the weight of one piece of dough, or zero if the target has no pieces.
func (b Batch) ScalingWeight() quantity.Mass {
	if b.goal.pieces == 0 {
		return quantity.Mass{}
	}
	return b.goal.scaled.Divide(int64(b.goal.pieces))
}

// Limiting names what runs out first with a target [AtHand]; otherwise it is empty.
func (b Batch) Limiting() string { return b.goal.limiting }

// Overall returns the overall formula with its weights: everything that is in the dough, each
// ingredient once. The lines add up to [Batch.Dough].
func (b Batch) Overall() []DoughLine {
	lines := make([]DoughLine, len(b.c.items))
	for i := range b.c.items {
		it := &b.c.items[i]
		lines[i] = DoughLine{Name: it.name, Kind: it.kind, Role: it.role, Mass: b.mass[i], Percent: it.percent}
	}
	return lines
}

// Formula returns the formula of the batch.
func (b Batch) Formula() Formula {
	f := Formula{Name: b.c.name}
	for i := range b.c.items {
		it := &b.c.items[i]
		part := Part{Name: it.name, Percent: it.percent, Kind: it.kind, Water: it.water, Contains: it.contains}
		switch it.role {
		case RoleFlour:
			f.Flours = append(f.Flours, part)
		case RoleLiquid:
			f.Liquids = append(f.Liquids, part)
		case RoleSalt:
			f.Salt = it.percent
		case RoleOther:
			f.Others = append(f.Others, part)
		case RoleInclusion:
			f.Inclusions = append(f.Inclusions, part)
		}
	}
	if len(b.c.nodes) > 0 {
		f.Preferments, f.Soakers = b.c.below(0)
	}
	return f
}
