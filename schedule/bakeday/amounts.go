package bakeday

import (
	"fmt"
	"slices"

	"example.org/maslin/dough/quantity"
)

// amount is one place in a bake where a share of all flour or a weight may stand.
type amount struct {
	share, weight string // their paths
	percent       quantity.Percent
	mass          quantity.Mass
}

// lists are the lines of the formula by the names of their fields.
func (b *Bake) lists() []struct {
	field string
	lines []Ingredient
} {
	return []struct {
		field string
		lines []Ingredient
	}{{"Flours", b.Flours}, {"Liquids", b.Liquids}, {"Others", b.Others}, {"Inclusions", b.Inclusions}}
}

// amounts lists all places, the flours apart.
func (b *Bake) amounts() []amount {
	out := []amount{{"Salt", "SaltWeight", b.Salt, b.SaltWeight}}
	for _, list := range b.lists()[1:] {
		for i, l := range list.lines {
			path := fmt.Sprintf("%s[%d]", list.field, i)
			out = append(out, amount{path + ".Percent", path + ".Weight", l.Percent, l.Weight})
		}
	}
	return append(out, b.built()...)
}

// built are the places of what is made beforehand.
func (b *Bake) built() []amount {
	var out []amount
	if l := b.Levain; l != nil {
		out = append(out, amount{"Levain.Prefermented", "Levain.Weight", l.Prefermented, l.Weight})
	}
	for i, x := range b.Preferments {
		path := fmt.Sprintf("Preferments[%d]", i)
		out = append(out, amount{path + ".Prefermented", path + ".Weight", x.Prefermented, x.Weight})
	}
	for i, s := range b.Soakers {
		for j, part := range s.Parts {
			path := fmt.Sprintf("Soakers[%d].Parts[%d]", i, j)
			out = append(out, amount{path + ".Percent", path + ".Weight", part.Percent, part.Weight})
		}
	}
	return out
}

// weighed reports whether the flours are given by weight.
func (b *Bake) weighed() bool {
	return slices.ContainsFunc(b.Flours, func(l Ingredient) bool { return !l.Weight.IsZero() })
}

// checkAmounts reports where percentages and weights contradict each other. Of weights of some lines and percentages of
// others a dough follows only where all flour is weighed; and a preferment of so much of all flour would then be either
// taken out of the flour that was weighed or added to it, which nobody but the baker knows.
func (b *Bake) checkAmounts(p *quantity.Problems) {
	most := quantity.Kilograms(10000)
	check := func(a amount) {
		quantity.Check(p, a.weight, a.mass, quantity.Mass{}, most)
		if !a.mass.IsZero() && !a.percent.IsZero() {
			p.AddCode(a.weight, "weight_and_percent", quantity.Tell("bakeday.got_beside", "%v beside %v", a.mass, a.percent),
				quantity.Tell("bakeday.want_one_two_percentage_all_flour",
					"one of the two: a percentage of all flour, or a weight"), quantity.ErrInconsistent)
		}
	}
	weighed := b.weighed()
	for i, l := range b.Flours {
		path := fmt.Sprintf("Flours[%d]", i)
		check(amount{path + ".Percent", path + ".Weight", l.Percent, l.Weight})
		switch {
		case !weighed || !l.Weight.IsZero() || b.holds(l.Name):
		case l.Percent.IsZero():
			p.Required(path+".Weight", quantity.Tell("bakeday.want_weight_other_flours_have_one",
				"its weight, as the other flours have one"))
		default:
			p.AddCode(path+".Percent", "flour_not_weighed", l.Percent,
				quantity.Tell("bakeday.want_weight_other_flours_have_one",
					"its weight, as the other flours have one"), quantity.ErrInconsistent)
		}
	}
	for _, a := range b.amounts() {
		check(a)
		if !weighed && a.mass.Sign() > 0 && a.percent.IsZero() {
			p.AddCode(a.weight, "flour_not_weighed", a.mass,
				quantity.Tell("bakeday.want_percentage_all_flour_or_weight",
					"a percentage of all flour, or a weight for every flour too"), quantity.ErrInconsistent)
		}
	}
	for _, a := range b.built() {
		switch {
		case !weighed || !a.mass.IsZero():
		case a.percent.IsZero():
			p.Required(a.weight, quantity.Tell("bakeday.want_weight_flours_have_one", "its weight, as the flours have one"))
		default:
			p.AddCode(a.share, "flour_weighed", a.percent,
				quantity.Tell("bakeday.want_weight_flours_have_one_share",
					"its weight, as the flours have one: a share could be part of the weighed flour or beside it"),
				quantity.ErrInconsistent)
		}
	}
	for _, list := range b.lists() {
		for i, l := range list.lines {
			quantity.Check(p, fmt.Sprintf("%s[%d].AtHand", list.field, i), l.AtHand, quantity.Mass{}, most)
		}
	}
	if b.PerLoaf && !weighed {
		p.AddCode("PerLoaf", "nothing_weighed", "true",
			quantity.Tell("bakeday.want_flours_by_weight_or_false", "flours by weight, or false"), quantity.ErrInconsistent)
	}
}

// holds reports whether something made beforehand holds a flour of that name, so that its own line may hold none.
func (b *Bake) holds(name string) bool {
	if b.Levain != nil && b.Levain.Flour == name {
		return true
	}
	part := func(x SoakerPart) bool { return x.Name == name }
	return slices.ContainsFunc(b.Preferments, func(x PrefermentWork) bool { return x.Flour == name }) ||
		slices.ContainsFunc(b.Soakers, func(s SoakerWork) bool { return slices.ContainsFunc(s.Parts, part) })
}

// inPercent is the bake with every amount as a percentage of all flour and with its loaves; a bake that already is so
// comes back as it is. What was weighed goes into the bowl at mixing: the whole formula has what is made beforehand,
// too.
func (b Bake) inPercent() (Bake, error) {
	var p quantity.Problems
	b.checkAmounts(&p)
	if err := p.Err(); err != nil {
		return b, err
	}
	var all quantity.Mass
	if b.weighed() {
		b, all = b.unweighed()
	}
	b.share(&p, all)
	return b, p.Err()
}

// builtMass is a preferment's weight, split by the percentages of its own flour.
type builtMass struct {
	flour, water, salt, yeast quantity.Mass
	of                        string // the flour; empty: all in proportion
}

func splitBuild(weight quantity.Mass, of string, hydration, salt, yeast quantity.Percent) builtMass {
	whole := quantity.NewPercent(100)
	m := builtMass{of: of, flour: weight.Over(whole.Add(hydration).Add(salt).Add(yeast))}
	m.salt, m.yeast = salt.Of(m.flour), yeast.Of(m.flour)
	m.water = weight.Sub(m.flour).Sub(m.salt).Sub(m.yeast)
	return m
}

// unweighed turns weights into percentages of all flour, and says how much dough the weights make.
//
//	all flour F = Σ weighed + Σ in what is made beforehand
//
// A preferment of all flours in proportion, of flour P in all, leaves their proportions as they are: flour i is
// (weighed + held by name)·F ÷ (F − P).
func (b Bake) unweighed() (Bake, quantity.Mass) {
	var builds []builtMass
	if l := b.Levain; l != nil {
		builds = append(builds, splitBuild(l.Weight, l.Flour, l.Hydration, quantity.Percent{}, quantity.Percent{}))
	}
	for _, x := range b.Preferments {
		builds = append(builds, splitBuild(x.Weight, x.Flour, x.Hydration, x.Salt, x.Yeast))
	}
	var water, salt, yeast, inProportion quantity.Mass
	held := map[string]quantity.Mass{} // by the line it is of
	first := len(builds) - len(b.Preferments)
	for i, m := range builds {
		salt, yeast = salt.Add(m.salt), yeast.Add(m.yeast)
		if i >= first && b.waterless(b.Preferments[i-first]) {
			l, _ := b.liquidOf(b.Preferments[i-first])
			held[l.Name] = held[l.Name].Add(m.water)
		} else {
			water = water.Add(m.water)
		}
		if m.of == "" {
			inProportion = inProportion.Add(m.flour)
		} else {
			held[m.of] = held[m.of].Add(m.flour)
		}
	}
	for _, s := range b.Soakers {
		for _, part := range s.Parts {
			held[part.Name] = held[part.Name].Add(part.Weight)
		}
	}
	if i := b.waterLine(); i >= 0 {
		held[b.Liquids[i].Name] = held[b.Liquids[i].Name].Add(water)
	}
	if y, ok := b.yeast(); ok {
		held[y.Name] = held[y.Name].Add(yeast)
	}
	named := make([]quantity.Mass, len(b.Flours))
	for i, l := range b.Flours {
		named[i] = l.Weight.Add(held[l.Name])
	}
	all := quantity.Sum(named...).Add(inProportion)
	b = b.sharesOf(named, held, all)
	if !b.SaltWeight.IsZero() {
		b.Salt, b.SaltWeight = b.SaltWeight.Add(salt).PercentOf(all), quantity.Mass{}
	}
	var sum quantity.Percent
	for _, list := range b.lists() {
		for _, l := range list.lines {
			sum = sum.Add(l.Percent)
		}
	}
	i := 0
	part := func(flour quantity.Mass) quantity.Percent { i++; return flour.PercentOf(all) }
	if b.Levain != nil {
		l := *b.Levain
		l.Prefermented, l.Weight = part(builds[i].flour), quantity.Mass{}
		b.Levain = &l
	}
	b.Preferments = slices.Clone(b.Preferments)
	for k := range b.Preferments {
		x := &b.Preferments[k]
		x.Prefermented, x.Weight = part(builds[i].flour), quantity.Mass{}
	}
	b.Soakers = slices.Clone(b.Soakers)
	for k := range b.Soakers {
		parts := slices.Clone(b.Soakers[k].Parts)
		for j := range parts {
			parts[j].Percent, parts[j].Weight = parts[j].Weight.PercentOf(all), quantity.Mass{}
		}
		b.Soakers[k].Parts = parts
	}
	return b, sum.Add(b.Salt).Of(all)
}

// sharesOf are the lines of the formula in percent of all flour; the flours add up to 100 %.
func (b Bake) sharesOf(named []quantity.Mass, held map[string]quantity.Mass, all quantity.Mass) Bake {
	b.Flours = slices.Clone(b.Flours)
	// A hundred percent has as many millionths as a hundred grams have micrograms.
	if parts, err := quantity.ApportionLike(quantity.Grams(100), named); err == nil {
		for i := range b.Flours {
			b.Flours[i].Percent, b.Flours[i].Weight = parts[i].PercentOf(quantity.Grams(100)), quantity.Mass{}
		}
	}
	for _, list := range []*[]Ingredient{&b.Liquids, &b.Others, &b.Inclusions} {
		*list = slices.Clone(*list)
		for i := range *list {
			l := &(*list)[i]
			if l.Percent.IsZero() {
				l.Percent, l.Weight = l.Weight.Add(held[l.Name]).PercentOf(all), quantity.Mass{}
			}
		}
	}
	return b
}

// waterLine is the line of the water that preferments take theirs from, or -1.
func (b *Bake) waterLine() int {
	return slices.IndexFunc(b.Liquids, Ingredient.isWater)
}
