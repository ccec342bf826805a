package dough

import (
	"slices"

	"example.org/maslin/dough/quantity"
)

// children checks what goes into node parent and adds it, depth first.
func (c *compiled) children(p *quantity.Problems, names *nameSet, path string, parent int, prefs []Preferment,
	soakers []Soaker, depth int) {
	if len(prefs)+len(soakers) == 0 {
		return
	}
	if depth > maxDepth {
		p.Add(join(path, "Preferments"), quantity.Tell("dough.got_more_than_8_levels", "more than 8 levels"),
			quantity.Tell("dough.want_at_most_8_levels_nesting", "at most 8 levels of nesting"), quantity.ErrOutOfRange)
		return
	}
	if len(prefs)+len(soakers)+len(c.nodes) > maxNodes+1 {
		p.Add(join(path, "Preferments"), quantity.Tell("dough.got_preferments_and_soakers", "%d preferments and soakers",
			len(prefs)+len(soakers)),
			quantity.Tell("dough.want_at_most_50_all", "at most 50 in all"), quantity.ErrOutOfRange)
		return
	}
	for i := range prefs {
		c.preferment(p, names, join(path, at("Preferments", i)), join(path, "Preferments"), i, parent, &prefs[i], depth)
	}
	for i := range soakers {
		c.soak(p, names, join(path, at("Soakers", i)), join(path, "Soakers"), i, parent, &soakers[i])
	}
}

func (c *compiled) preferment(p *quantity.Problems, names *nameSet, path, list string, i, parent int, pf *Preferment,
	depth int) {
	names.add(c, p, at(list, i)+".Name", pf.Name)
	prefermentWords.Check(p, path+".Kind", pf.Kind)
	n := node{
		name: pf.Name, path: path, kind: pf.Kind, fermented: true, parent: parent, flour: pf.Flour, hydration: pf.Hydration,
		share: make([]int64, len(c.items)), seed: pf.Seed, starter: nobody,
	}
	n.seed.Blend = slices.Clone(pf.Seed.Blend)
	if outside(pf.Flour, noPercent, wholeFlour) || pf.Flour.IsZero() {
		p.Add(path+".Flour", pf.Flour,
			quantity.Tell("dough.want_more_than_0_percent_and", "more than 0 %% and at most 100 %% of total flour"),
			quantity.ErrOutOfRange)
	}
	switch {
	case outside(pf.Hydration, noPercent, mostOfFlour) || !pf.Hydration.IsZero() && pf.Hydration.Compare(leastWater) < 0:
		p.Add(path+".Hydration", pf.Hydration,
			quantity.Tell("dough.want_1_percent_to_1000_percent", "1 %% to 1000 %% of the preferment's flour"),
			quantity.ErrOutOfRange)
	case pf.Hydration.IsZero() && !c.hasLiquid(pf.Others):
		p.Required(
			path+".Hydration",
			quantity.Tell("dough.want_preferments_water_1_percent_to",
				"the preferment's water, 1 %% to 1000 %% of its flour, or another liquid among the others"),
		)
	}
	if outside(pf.Salt, noPercent, wholeFlour) {
		p.Add(path+".Salt", pf.Salt, quantity.Tell("dough.want_0_percent_to_100_percent_preferments",
			"0 %% to 100 %% of the preferment's flour"), quantity.ErrOutOfRange)
	}
	n.blend = c.blend(p, path+".Blend", pf.Blend)
	switch {
	case pf.Hydration.IsZero():
	case c.water == nobody:
		p.Add(path+".Hydration", quantity.Tell("dough.got_no_water_formula", "no water in the formula"),
			quantity.Tell("dough.want_liquid_water_from_which_preferment",
				"a liquid that is water, from which the preferment takes its part"), quantity.ErrInconsistent)
	default:
		n.parts = append(n.parts, nodePart{c.water, pf.Hydration})
	}
	if !pf.Salt.IsZero() {
		if c.salt == nobody {
			p.Add(
				path+".Salt",
				quantity.Tell("dough.got_salt", "salt %v", pf.Salt),
				quantity.Tell("dough.want_salt_formula_from_which_preferment",
					"salt in the formula, from which the preferment takes its part"),
				quantity.ErrInconsistent,
			)
		} else {
			n.parts = append(n.parts, nodePart{c.salt, pf.Salt})
		}
	}
	c.parts(p, path+".Others", pf.Others, &n, false)
	for j, b := range n.blend {
		n.share[j] = millionths(n.flour) * millionths(b)
	}
	for _, part := range n.parts {
		n.share[part.item] += millionths(n.flour) * millionths(part.percent)
	}
	self := len(c.nodes)
	c.nodes = append(c.nodes, n)
	c.children(p, names, path, self, pf.Preferments, pf.Soakers, depth+1)
	c.addSeed(p, names, path, self)
}

// soak adds a soaker. Its parts are percentages of total flour.
func (c *compiled) soak(p *quantity.Problems, names *nameSet, path, list string, i, parent int, s *Soaker) {
	names.add(c, p, at(list, i)+".Name", s.Name)
	soakerWords.Check(p, path+".Kind", s.Kind)
	n := node{name: s.Name, path: path, soaker: s.Kind, parent: parent, share: make([]int64, len(c.items)),
		starter: nobody}
	if len(s.Parts) == 0 {
		p.Required(path+".Parts", quantity.Tell("dough.want_at_least_one_ingredient_formula",
			"at least one ingredient of the formula"))
	}
	c.parts(p, path+".Parts", s.Parts, &n, true)
	for _, part := range n.parts {
		n.share[part.item] += millionths(part.percent) * one
	}
	c.nodes = append(c.nodes, n)
}

// blend reads the flours of a preferment; without any, those of the formula are taken.
func (c *compiled) blend(p *quantity.Problems, path string, parts []Part) []quantity.Percent {
	out := make([]quantity.Percent, c.flours)
	if len(parts) == 0 {
		for i := range out {
			out[i] = c.items[i].percent
		}
		return out
	}
	if len(parts) > maxLines {
		p.Add(path, quantity.Tell("dough.got_flours", "%d flours", len(parts)),
			quantity.Tell("dough.want_at_most_200", "at most 200"), quantity.ErrOutOfRange)
		return out
	}
	var sum quantity.Percent
	ok := true
	for i, part := range parts {
		if outside(part.Percent, noPercent, wholeFlour) {
			p.Add(at(path, i)+".Percent", part.Percent, quantity.Tell("dough.want_0_percent_to_100_percent_preferments",
				"0 %% to 100 %% of the preferment's flour"),
				quantity.ErrOutOfRange)
			ok = false
		}
		j := c.item(part.Name)
		if j == nobody || j >= c.flours {
			p.Add(
				at(path, i)+".Name",
				quantity.Excerpt(part.Name),
				quantity.Tell("dough.want_one_formulas_flours", "one of the formula's flours"), quantity.ErrInconsistent,
			)
			ok = false
			continue
		}
		out[j] = out[j].Add(part.Percent)
		sum = sum.Add(part.Percent)
	}
	if ok && sum != wholeFlour {
		p.Add(path, quantity.Tell("dough.got_flours_add_up_to", "flours that add up to %v", sum),
			quantity.Tell("dough.want_100_percent", "100 %%"), quantity.ErrInconsistent)
	}
	return out
}

// parts reads amounts of ingredients that the formula has.
func (c *compiled) parts(p *quantity.Problems, path string, parts []Part, n *node, flours bool) {
	if len(parts) > maxLines {
		p.Add(path, quantity.Tell("dough.got_lines", "%d lines", len(parts)),
			quantity.Tell("dough.want_at_most_200", "at most 200"), quantity.ErrOutOfRange)
		return
	}
	for i, part := range parts {
		if outside(part.Percent, noPercent, mostOfFlour) {
			p.Add(at(path, i)+".Percent", part.Percent, quantity.Tell("dough.want_0_percent_to_1000_percent",
				"0 %% to 1000 %%"), quantity.ErrOutOfRange)
		}
		j := c.item(part.Name)
		switch {
		case j == nobody || c.items[j].role == RoleStarter:
			p.Add(at(path, i)+".Name", quantity.Excerpt(part.Name),
				quantity.Tell("dough.want_ingredient_formula_which_lists_everything",
					"an ingredient of the formula, which lists everything that is in the dough"), quantity.ErrInconsistent)
		case j < c.flours && !flours:
			p.Add(
				at(path, i)+".Name",
				quantity.Tell("dough.got_flour", "%s, a flour", quantity.Excerpt(part.Name)),
				quantity.Tell("dough.want_flours_blend", "flours in the blend"), quantity.ErrInconsistent,
			)
		case n.uses(j):
			p.Add(
				at(path, i)+".Name",
				quantity.Tell("dough.got_second_time", "%s a second time", quantity.Excerpt(part.Name)),
				quantity.Tell("dough.want_each_ingredient_once_water_given",
					"each ingredient once; water is given by the hydration, salt by its own percentage"),
				quantity.ErrInconsistent,
			)
		default:
			n.parts = append(n.parts, nodePart{j, part.Percent})
		}
	}
}

func (c *compiled) hasLiquid(parts []Part) bool {
	return len(parts) <= maxLines && slices.ContainsFunc(parts, func(part Part) bool {
		j := c.item(part.Name)
		return j != nobody && c.items[j].role == RoleLiquid
	})
}

func (n *node) uses(item int) bool {
	return slices.ContainsFunc(n.parts, func(p nodePart) bool { return p.item == item })
}

func (c *compiled) addSeed(p *quantity.Problems, names *nameSet, path string, self int) {
	n := &c.nodes[self]
	s := n.seed
	basisWords.Check(p, path+".Seed.Of", s.Of)
	seedWords.Check(p, path+".Seed.Account", s.Account)
	most := mostOfFlour
	if s.Of == OfMix {
		most = quantity.MustPercent("90 %")
	}
	if outside(s.Percent, noPercent, most) {
		p.Add(path+".Seed.Percent", s.Percent,
			quantity.Tell("dough.want_0_percent_to_4", "0 %% to %v %v", most, s.Of), quantity.ErrOutOfRange)
	}
	if s.Percent.IsZero() {
		return
	}
	switch s.Account {
	case SeedCounted:
		if s.Hydration.IsZero() {
			p.Required(path+".Seed.Hydration", quantity.Tell("dough.want_hydration_starter_to_split_into",
				"the hydration of the culture, to split it into flour and water"))
		} else if outside(s.Hydration, leastWater, mostOfFlour) {
			p.Add(path+".Seed.Hydration", s.Hydration, quantity.Tell("dough.want_1_percent_to_1000_percent_6",
				"1 %% to 1000 %%"), quantity.ErrOutOfRange)
		}
		n.seedBlend = n.blend
		if len(s.Blend) > 0 {
			n.seedBlend = c.blend(p, path+".Seed.Blend", s.Blend)
		}
	case SeedSeparate:
		if p.Err() != nil { // its share follows from the others
			return
		}
		basis := c.ownFlour(self)
		percent := s.Percent.OfPercent(basis)
		if s.Of == OfMix {
			// starter ÷ (starter + rest) = s, so starter = rest · s ÷ (100 % − s)
			percent = s.Percent.OfPercent(c.ownMass(self)).Over(wholeFlour.Sub(s.Percent))
		}
		if !percent.IsValid() {
			p.Add(path+".Seed.Percent", s.Percent,
				quantity.Tell("dough.want_starter_within_limits_formula", "a culture within the limits of a formula"),
				quantity.ErrOutOfRange)
			return
		}
		name := "culture of " + n.name
		names.add(c, p, join(path, "Seed"), name)
		n.starter = len(c.items)
		c.items = append(c.items, item{name: name, kind: KindStarter, role: RoleStarter, percent: percent})
		c.total = c.total.Add(percent)
		c.nodes[0].share = append(c.nodes[0].share, make([]int64, len(c.items)-len(c.nodes[0].share))...)
		c.nodes[0].share[n.starter] = millionths(percent) * one
		for k := self; k > 0; k = c.nodes[k].parent {
			m := &c.nodes[k]
			m.share = append(m.share, make([]int64, len(c.items)-len(m.share))...)
			m.share[n.starter] = millionths(percent) * one
		}
	}
}

// ownFlour is the flour weighed for node k itself, as a percentage of total flour.
func (c *compiled) ownFlour(k int) quantity.Percent {
	own := c.nodes[k].flour
	for i := k + 1; i < len(c.nodes); i++ {
		if c.nodes[i].parent == k {
			for j := range c.flours {
				own = own.Sub(shareOfFlour(c.nodes[i].share[j]))
			}
		}
	}
	return own
}

// ownMass is everything in node k, as a percentage of total flour.
func (c *compiled) ownMass(k int) quantity.Percent {
	var sum quantity.Percent
	for _, s := range c.nodes[k].share {
		sum = sum.Add(shareOfFlour(s))
	}
	return sum
}

// shareOfFlour turns an exact share into a percentage of total flour, rounded half to even to a
// millionth of a point.
func shareOfFlour(s int64) quantity.Percent {
	q, r := s/one, s%one
	if r > one/2 || r == one/2 && q&1 == 1 {
		q++
	}
	return percentOf(q)
}

func percentOf(millionths int64) quantity.Percent {
	return quantity.MustPercent("0.000001 %").Times(millionths)
}

// rounding is how far the share of ingredient j in a node may be off, in units of 10⁻¹⁶ of total
// flour, when its percentages were rounded to a millionth of a point, as those that come from
// weights are: a preferment with all the rye may then seem to hold a little more than there
// is, or a little less.
func (n *node) rounding(j int) int64 {
	f := millionths(n.flour)
	if !n.fermented || f == 0 { // the dough, or a soaker: one percentage
		return one
	}
	return f + n.share[j]/f + 1 // a product of two
}

// checkTree refuses a preferment that holds more of an ingredient than what it goes into.
func (c *compiled) checkTree(p *quantity.Problems) {
	for k := range c.nodes {
		left := slices.Clone(c.nodes[k].share)
		slack := make([]int64, len(left))
		for j := range slack {
			slack[j] = c.nodes[k].rounding(j)
		}
		for i := k + 1; i < len(c.nodes); i++ {
			if c.nodes[i].parent != k {
				continue
			}
			for j, s := range c.nodes[i].share {
				left[j] -= s
				slack[j] += c.nodes[i].rounding(j)
			}
		}
		for j, s := range left {
			if s >= -slack[j] {
				continue
			}
			has := c.nodes[k].share[j]
			in := "the formula"
			if k > 0 {
				in = quantity.Excerpt(c.nodes[k].name)
			}
			p.Add(
				join(c.nodes[k].path, "Preferments"),
				quantity.Tell("dough.got_total_flour_what_made_beforehand", "%s %v of total flour in what is made beforehand",
					quantity.Excerpt(c.items[j].name), shareOfFlour(has-s)),
				quantity.Tell("dough.want_at_most", "at most the %v in %s", shareOfFlour(has), in),
				quantity.ErrInconsistent,
			)
		}
	}
}

// below turns what goes into node k back into the form it was given in.
func (c *compiled) below(k int) (prefs []Preferment, soakers []Soaker) {
	for i := k + 1; i < len(c.nodes); i++ {
		n := &c.nodes[i]
		if n.parent != k {
			continue
		}
		var others []Part
		pf := Preferment{Name: n.name, Kind: n.kind, Flour: n.flour, Hydration: n.hydration, Seed: n.seed}
		for _, part := range n.parts {
			switch {
			case n.fermented && part.item == c.salt:
				pf.Salt = part.percent
			case n.fermented && part.item == c.water:
			default:
				others = append(others, Part{Name: c.items[part.item].name, Percent: part.percent})
			}
		}
		if !n.fermented {
			soakers = append(soakers, Soaker{Name: n.name, Kind: n.soaker, Parts: others})
			continue
		}
		for j, share := range n.blend {
			if !share.IsZero() {
				pf.Blend = append(pf.Blend, Part{Name: c.items[j].name, Percent: share})
			}
		}
		pf.Others = others
		pf.Preferments, pf.Soakers = c.below(i)
		prefs = append(prefs, pf)
	}
	return prefs, soakers
}
