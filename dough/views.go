package dough

import (
	"slices"

	"example.org/maslin/dough/quantity"
)

// Build is one thing that is made beforehand: a preferment, or a soaker.
type Build struct {
	Name      string         `json:"name"`
	Kind      PrefermentKind `json:"kind,omitzero"`   // of a preferment
	Soaker    SoakerKind     `json:"soaker,omitzero"` // of a soaker
	Fermented bool           `json:"fermented"`       // false for a soaker
	Into      string         `json:"into,omitzero"`   // the name of the build it goes into; empty for the dough
	Lines     []DoughLine    `json:"lines"`           // what to weigh; they add up to Made
	Made      quantity.Mass  `json:"made"`
	Removed   quantity.Mass  `json:"removed,omitzero"` // taken away again before use, to be the next culture
	Used      quantity.Mass  `json:"used"`             // what goes on: Made − Removed − Left
	Left      quantity.Mass  `json:"left,omitzero"`    // made and not used; only of weights of which a part was used
	Flour     quantity.Mass  `json:"flour"`            // flour that it brings into the dough, nested builds included
	Water     quantity.Mass  `json:"water"`            // water that it brings into the dough, nested builds included
}

// Hydration returns water ÷ flour of the build; invalid if it has no flour.
func (b Build) Hydration() quantity.Percent { return b.Water.PercentOf(b.Flour) }

// weighTree works out what every preferment and soaker holds and takes it out of what it goes
// into. Every amount is rounded once to the microgram; where a preferment uses up all that there
// is of an ingredient, it takes the whole line, so that nothing is left over.
func (b *Batch) weighTree() error {
	if len(b.c.nodes) == 0 {
		return nil
	}
	b.work = make([]work, len(b.c.nodes))
	b.work[0].total = slices.Clone(b.mass)
	for k := 1; k < len(b.c.nodes); k++ {
		n, w := &b.c.nodes[k], &b.work[k]
		w.total = make([]quantity.Mass, len(b.c.items))
		basis := b.flour
		if n.fermented {
			basis = n.flour.Of(b.flour)
			flours, err := quantity.Apportion(basis, n.blend)
			if err != nil {
				return err
			}
			copy(w.total, flours)
		}
		for _, part := range n.parts {
			w.total[part.item] = part.percent.Of(basis)
		}
		for j := range b.c.items {
			if b.c.items[j].role == RoleStarter && n.share[j] > 0 {
				w.total[j] = b.mass[j]
			}
		}
	}
	for k := range b.work {
		if err := b.settle(k); err != nil {
			return err
		}
	}
	for k := len(b.work) - 1; k > 0; k-- { // what goes into a build first
		if err := b.seed(k); err != nil {
			return err
		}
		b.carry(k)
	}
	return nil
}

// carry adds up the starters in node k that are removed at the end; what goes into it has been added up before.
func (b *Batch) carry(k int) {
	w := &b.work[k]
	if w.starterOf.Account == SeedRemovedAtEnd {
		w.carried = w.carried.Add(w.starter)
	}
	if parent := b.c.nodes[k].parent; parent > 0 {
		b.work[parent].carried = b.work[parent].carried.Add(w.carried)
	}
}

// settle subtracts what goes into node k from its totals. Parents come before their children.
func (b *Batch) settle(k int) error {
	w := &b.work[k]
	w.own = slices.Clone(w.total)
	for j := range w.own {
		share := b.c.nodes[k].share[j]
		largest, slack := nobody, b.c.nodes[k].rounding(j)
		for i := k + 1; i < len(b.work); i++ {
			if b.c.nodes[i].parent != k {
				continue
			}
			slack += b.c.nodes[i].rounding(j)
			share -= b.c.nodes[i].share[j]
			w.own[j] = w.own[j].Sub(b.work[i].total[j])
			if b.c.nodes[i].share[j] == 0 {
				continue
			}
			if largest == nobody || b.work[i].total[j].Compare(b.work[largest].total[j]) > 0 {
				largest = i
			}
		}
		if largest == nobody || w.own[j].Sign() > 0 && share > slack || w.own[j].IsZero() {
			continue
		}
		// Rounding only: the largest holder of the ingredient bears it.
		child := &b.work[largest]
		child.total[j] = child.total[j].Add(w.own[j])
		w.own[j] = quantity.Mass{}
		if child.total[j].Sign() < 0 {
			return &quantity.InputError{
				GoPath: b.c.nodes[largest].path, Got: quantity.Tell("dough.got_bounds", "%s %v",
					quantity.Excerpt(b.c.items[j].name), child.total[j]),
				Want: quantity.Tell("dough.want_shares_leave_something_every_ingredient",
					"shares that leave something of every ingredient"), Err: quantity.ErrInconsistent,
			}
		}
	}
	return nil
}

// seed splits off the starter of node k.
func (b *Batch) seed(k int) error {
	n, w := &b.c.nodes[k], &b.work[k]
	s := n.seed
	if s.Percent.IsZero() || s.Account == SeedSeparate {
		return nil
	}
	flour := micrograms(quantity.Sum(w.own[:b.c.flours]...))
	mix := micrograms(quantity.Sum(w.total...).Add(w.carried))
	ps, ph := millionths(s.Percent), millionths(s.Hydration)
	w.starterOf = s
	if s.Account == SeedRemoved || s.Account == SeedRemovedAtEnd {
		if s.Of == OfMix { // starter ÷ (starter + rest) = s
			w.starter = massRatio(mix, []int64{ps}, []int64{one - ps})
		} else {
			w.starter = massRatio(flour, []int64{ps}, []int64{one})
		}
		return nil
	}
	// Counted. Of new flour: S = s·(F − S ÷ (1 + h)), so S = F·s·(1 + h) ÷ (1 + h + s).
	if s.Of == OfMix {
		w.starter = massRatio(mix, []int64{ps}, []int64{one})
	} else {
		w.starter = massRatio(flour, []int64{ps, one + ph}, []int64{one, one + ph + ps})
	}
	in := massRatio(micrograms(w.starter), []int64{one}, []int64{one + ph})
	flours, err := quantity.Apportion(in, n.seedBlend)
	if err != nil {
		return err
	}
	take := func(j int, m quantity.Mass) error {
		w.own[j] = w.own[j].Sub(m)
		if w.own[j].Sign() >= 0 {
			return nil
		}
		if micrograms(w.own[j]) >= -3 { // rounding: the starter is as much smaller
			w.starter = w.starter.Add(w.own[j])
			w.own[j] = quantity.Mass{}
			return nil
		}
		return &quantity.InputError{
			GoPath: n.path + ".Seed", Got: quantity.Tell("dough.got_starter_more_than_whole_has",
				"a culture of %v in %s with more %s than the whole has", w.starter, quantity.Excerpt(n.name),
				quantity.Excerpt(b.c.items[j].name)),
			Want: quantity.Tell("dough.want_smaller_starter_or_one_another",
				"a smaller culture, or one of another hydration or blend"), Err: quantity.ErrInconsistent,
		}
	}
	water := w.starter.Sub(in)
	for j, m := range flours {
		if err := take(j, m); err != nil {
			return err
		}
	}
	return take(b.c.water, water)
}

// FinalDough returns what is weighed at mixing: what is left of each ingredient, and every
// preferment and soaker as a whole. The lines add up to [Batch.Dough].
func (b Batch) FinalDough() []DoughLine {
	if len(b.work) == 0 {
		lines := slices.DeleteFunc(b.Overall(), func(l DoughLine) bool { return l.Mass.IsZero() })
		ofListFlour(lines)
		return lines
	}
	return b.list(0)
}

// list is the weighing list of one node.
func (b *Batch) list(k int) []DoughLine {
	own, starter := b.weighedFor(k)
	var lines, last []DoughLine
	for j := range b.c.items {
		it := &b.c.items[j]
		if own[j].IsZero() {
			continue
		}
		l := DoughLine{Name: it.name, Kind: it.kind, Role: it.role, Mass: own[j]}
		if it.role == RoleInclusion {
			last = append(last, l)
		} else {
			lines = append(lines, l)
		}
	}
	if !starter.IsZero() {
		lines = append(lines, DoughLine{Name: "culture", Kind: KindStarter, Role: RoleStarter, Mass: starter})
	}
	for i := k + 1; i < len(b.work); i++ {
		if b.c.nodes[i].parent == k {
			used, _ := b.goesOn(i)
			lines = append(lines, DoughLine{Name: b.c.nodes[i].name, Role: RolePreferment, Mass: used})
		}
	}
	lines = append(lines, last...)
	ofListFlour(lines)
	return lines
}

// Builds returns what is made beforehand, in an order in which it can be made: what goes into
// another build comes before it.
func (b Batch) Builds() []Build {
	var out []Build
	for _, k := range b.buildOrder(0, nil) {
		n, w := &b.c.nodes[k], &b.work[k]
		build := Build{
			Name: n.name, Kind: n.kind, Soaker: n.soaker, Fermented: n.fermented, Lines: b.list(k),
			Flour: quantity.Sum(w.total[:b.c.flours]...),
		}
		build.Used, build.Removed = b.goesOn(k)
		for _, l := range build.Lines {
			build.Made = build.Made.Add(l.Mass)
		}
		build.Left = build.Made.Sub(build.Removed).Sub(build.Used)
		if n.parent > 0 {
			build.Into = b.c.nodes[n.parent].name
		}
		for j := range b.c.items {
			if b.c.items[j].isWater() {
				build.Water = build.Water.Add(w.total[j])
			}
		}
		out = append(out, build)
	}
	return out
}

// buildOrder lists the nodes below k, each after what goes into it.
func (b *Batch) buildOrder(k int, order []int) []int {
	for i := k + 1; i < len(b.work); i++ {
		if b.c.nodes[i].parent == k {
			order = append(b.buildOrder(i, order), i)
		}
	}
	return order
}

// Build returns the preferment or soaker of that name.
func (b Batch) Build(name string) (Build, bool) {
	for _, build := range b.Builds() {
		if build.Name == name {
			return build, true
		}
	}
	return Build{}, false
}
