package dough

import (
	"slices"

	"example.org/maslin/dough/quantity"
)

// batch turns the gathered weights into a formula, and the formula's batch into these weights.
func (t *tally) batch() (Batch, error) {
	nodes := *t.nodes
	for k := range nodes {
		nodes[k].lines = append(nodes[k].lines, make([]quantity.Mass, len(t.names)-len(nodes[k].lines))...)
	}
	seeds := make([]quantity.Mass, len(nodes)) // flour in the counted starter of each node
	for k := len(nodes) - 1; k >= 0; k-- {
		n := &nodes[k]
		n.total = slices.Clone(n.lines)
		if err := t.split(k, seeds); err != nil {
			return Batch{}, err
		}
		for i := k + 1; i < len(nodes); i++ {
			if nodes[i].parent == k {
				for j, m := range nodes[i].total {
					n.total[j] = n.total[j].Add(m)
				}
			}
		}
	}
	f, err := t.formula()
	if err != nil {
		return Batch{}, err
	}
	var p quantity.Problems
	c := compile(&f, &p)
	if err := p.ErrFor(t); err != nil {
		return Batch{}, err
	}
	return t.fill(c)
}

// split adds the flour and water of a counted starter to the totals of its node.
func (t *tally) split(k int, seeds []quantity.Mass) error {
	n := &(*t.nodes)[k]
	s := n.seed
	if s.Mass.IsZero() || s.Account != SeedCounted {
		return nil
	}
	seeds[k] = Starter{s.Mass, s.Hydration}.Flour()
	shares := make([]quantity.Mass, len(t.names))
	if len(s.Blend) == 0 {
		for j := range t.names {
			if t.names[j].role == RoleFlour {
				shares[j] = n.lines[j]
			}
		}
	}
	for _, part := range s.Blend {
		for j := range t.names {
			if t.names[j].w.Name == part.Name {
				shares[j] = quantity.Micrograms(millionths(part.Percent))
			}
		}
	}
	flours, err := quantity.ApportionLike(seeds[k], shares)
	if err != nil {
		return &quantity.InputError{GoPath: n.path + ".Seed.Blend",
			Want: quantity.Tell("dough.want_flours_starter", "the flours of the culture"),
			Err:  quantity.ErrRequired}
	}
	for j, m := range flours {
		n.total[j] = n.total[j].Add(m)
	}
	water := t.water()
	if water == nobody {
		t.names = append(t.names, tallyName{Weight{Name: "water", Kind: KindWater}, RoleLiquid})
		water = len(t.names) - 1
		for i := range *t.nodes {
			m := &(*t.nodes)[i]
			m.lines = append(m.lines, quantity.Mass{})
			if m.total != nil {
				m.total = append(m.total, quantity.Mass{})
			}
		}
	}
	n.total[water] = n.total[water].Add(s.Mass.Sub(seeds[k]))
	return nil
}

func (t *tally) water() int {
	for j := range t.names {
		if it := (item{role: t.names[j].role, kind: t.names[j].w.Kind}); it.isWater() {
			return j
		}
	}
	return nobody
}

func (t *tally) flourOf(masses []quantity.Mass) quantity.Mass {
	var sum quantity.Mass
	for j, m := range masses {
		if t.names[j].role == RoleFlour {
			sum = sum.Add(m)
		}
	}
	return sum
}

// shares splits 100 % like the flours among masses.
func (t *tally) shares(masses []quantity.Mass) ([]quantity.Percent, error) {
	flours := make([]quantity.Mass, len(masses))
	for j, m := range masses {
		if t.names[j].role == RoleFlour {
			flours[j] = m
		}
	}
	parts, err := quantity.ApportionLike(quantity.Micrograms(one), flours)
	if err != nil {
		return nil, err
	}
	out := make([]quantity.Percent, len(parts))
	for j, m := range parts {
		out[j] = percentOf(micrograms(m))
	}
	return out, nil
}

// formula turns the totals into percentages.
func (t *tally) formula() (Formula, error) {
	f := Formula{Name: t.title}
	root := &(*t.nodes)[0]
	flour := t.flourOf(root.total)
	shares, err := t.shares(root.total)
	if err != nil || flour.Sign() <= 0 {
		return f, &quantity.InputError{GoPath: "Final.Flours",
			Want: quantity.Tell("dough.want_flour_at_mixing_or_preferment", "flour, at mixing or in a preferment"),
			Err:  quantity.ErrRequired}
	}
	for j, n := range t.names {
		part := Part{Name: n.w.Name, Percent: root.total[j].PercentOf(flour), Kind: n.w.Kind, Water: n.w.Water,
			Contains: n.w.Contains}
		switch n.role {
		case RoleFlour:
			part.Percent = shares[j]
			f.Flours = append(f.Flours, part)
		case RoleLiquid:
			if !root.total[j].IsZero() {
				f.Liquids = append(f.Liquids, part)
			}
		case RoleSalt:
			f.Salt = part.Percent
		case RoleOther:
			f.Others = append(f.Others, part)
		case RoleInclusion:
			f.Inclusions = append(f.Inclusions, part)
		}
	}
	f.Preferments, f.Soakers, err = t.below(0, flour)
	return f, err
}

func (t *tally) below(k int, flour quantity.Mass) (prefs []Preferment, soakers []Soaker, err error) {
	water := t.water()
	for i := k + 1; i < len(*t.nodes); i++ {
		n := &(*t.nodes)[i]
		if n.parent != k {
			continue
		}
		if !n.fermented {
			s := Soaker{Name: n.name, Kind: n.soaker}
			for j, m := range n.total {
				if !m.IsZero() {
					s.Parts = append(s.Parts, Part{Name: t.names[j].w.Name, Percent: m.PercentOf(flour)})
				}
			}
			soakers = append(soakers, s)
			continue
		}
		own := t.flourOf(n.total)
		shares, err := t.shares(n.total)
		if err != nil || own.Sign() <= 0 {
			return nil, nil, &quantity.InputError{GoPath: n.path + ".Bowl.Flours",
				Want: quantity.Tell("dough.want_flour_preferment", "flour in the preferment"),
				Err:  quantity.ErrRequired}
		}
		pf := Preferment{Name: n.name, Kind: n.kind, Flour: own.PercentOf(flour)}
		var newFlour quantity.Mass
		for j, m := range n.total {
			role := t.names[j].role
			part := Part{Name: t.names[j].w.Name, Percent: m.PercentOf(own)}
			switch {
			case role == RoleFlour:
				newFlour = newFlour.Add(n.lines[j])
				if !shares[j].IsZero() {
					part.Percent = shares[j]
					pf.Blend = append(pf.Blend, part)
				}
			case m.IsZero():
			case j == water:
				pf.Hydration = part.Percent
			case role == RoleSalt:
				pf.Salt = part.Percent
			default:
				pf.Others = append(pf.Others, part)
			}
		}
		if s := n.seed; !s.Mass.IsZero() {
			pf.Seed = Seed{
				Percent:   s.Mass.PercentOf(newFlour),
				Hydration: s.Hydration,
				Blend:     s.Blend,
				Account:   s.Account,
			}
			if newFlour.IsZero() {
				return nil, nil, &quantity.InputError{
					GoPath: n.path + ".Bowl.Flours",
					Want:   quantity.Tell("dough.want_new_flour_besides_starter", "new flour besides the culture"),
					Err:    quantity.ErrRequired,
				}
			}
		}
		if pf.Preferments, pf.Soakers, err = t.below(i, flour); err != nil {
			return nil, nil, err
		}
		prefs = append(prefs, pf)
	}
	return prefs, soakers, nil
}

// fill gives the batch of the compiled formula the weights that were weighed.
func (t *tally) fill(c compiled) (Batch, error) {
	nodes := *t.nodes
	b := Batch{c: c, mass: make([]quantity.Mass, len(c.items)), work: make([]work, len(c.nodes))}
	for i := range b.work {
		b.work[i] = work{total: make([]quantity.Mass, len(c.items)), own: make([]quantity.Mass, len(c.items))}
	}
	// The formula lists preferments before soakers, as the weights do, so that its tree has the
	// same order.
	for i := range b.work {
		for j, n := range t.names {
			at := c.item(n.w.Name)
			if at == nobody { // salt or a liquid of 0 g
				continue
			}
			b.work[i].total[at] = nodes[i].total[j]
			b.work[i].own[at] = nodes[i].lines[j]
		}
	}
	if len(b.work) == 0 {
		for j, n := range t.names {
			if at := c.item(n.w.Name); at != nobody {
				b.mass[at] = nodes[0].total[j]
			}
		}
	}
	for i := 1; i < len(b.work); i++ {
		s := nodes[i].seed
		b.work[i].given = t.givenTo(c, i)
		switch at := c.nodes[i].starter; {
		case s.Mass.IsZero():
		case at == nobody:
			b.work[i].starter, b.work[i].starterOf = s.Mass, c.nodes[i].seed
		default:
			b.work[i].own[at] = s.Mass
			for k := i; k >= 0; k = c.nodes[k].parent {
				b.work[k].total[at] = b.work[k].total[at].Add(s.Mass)
			}
		}
	}
	for i := len(b.work) - 1; i > 0; i-- {
		b.carry(i)
	}
	if len(b.work) > 0 {
		b.mass = slices.Clone(b.work[0].total)
	}
	b.flour = quantity.Sum(b.mass[:c.flours]...)
	b.dough = quantity.Sum(b.mass...)
	b.goal = goal{dough: b.dough, scaled: b.dough}
	b.weighed = true
	var p quantity.Problems
	quantity.Check(&p, "Final", b.dough, leastDough, mostDough.Times(10))
	return b, p.ErrFor(t)
}

// givenTo is how bowl i was weighed, by the ingredients of the formula.
func (t *tally) givenTo(c compiled, i int) *given {
	n := &(*t.nodes)[i]
	if n.given == nil {
		return nil
	}
	g := *n.given
	g.own = make([]quantity.Mass, len(c.items))
	for j, m := range n.given.own {
		if at := c.item(t.names[j].w.Name); at != nobody {
			g.own[at] = m
		}
	}
	if at := c.nodes[i].starter; at != nobody {
		g.own[at], g.starter = g.starter, quantity.Mass{}
	}
	return &g
}
