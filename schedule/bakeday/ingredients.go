package bakeday

import (
	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
)

const levainName = "levain"

// formula turns the bake's lines into a formula.
func (b *Bake) formula() dough.Formula {
	f := dough.Formula{
		Name:    b.Name,
		Flours:  parts(b.Flours),
		Liquids: parts(b.Liquids), Salt: b.Salt, Others: parts(b.Others), Inclusions: parts(b.Inclusions),
	}
	if l := b.Levain; l != nil {
		p := dough.Preferment{Name: levainName, Kind: dough.Levain, Flour: l.Prefermented, Hydration: l.Hydration}
		if l.Flour != "" {
			p.Blend = []dough.Part{{Name: l.Flour, Percent: quantity.NewPercent(100)}}
		}
		if !l.Inoculation.IsZero() && !l.standing() {
			p.Seed = dough.Seed{Percent: l.Inoculation, Of: dough.OfNewFlour, Hydration: l.CultureHydration}
			if l.CultureHydration.IsZero() {
				p.Seed.Hydration = l.Hydration
			}
		}
		f.Preferments = []dough.Preferment{p}
	}
	f.Preferments = append(f.Preferments, b.preferments()...)
	f.Soakers = b.soakers()
	return f
}

func parts(lines []Ingredient) []dough.Part {
	var out []dough.Part
	for _, l := range lines {
		out = append(out, dough.Part{Name: l.Name, Percent: l.Percent, Kind: l.Kind, Water: l.Water})
	}
	return out
}

// yeast returns the line of baker's yeast, if there is one.
func (b *Bake) yeast() (Ingredient, bool) {
	for _, l := range b.Others {
		if l.Kind.Yeast() {
			return l, true
		}
	}
	return Ingredient{}, false
}

func (b *Bake) scales() dough.Scales {
	s := dough.Scales{Flour: b.Kitchen.Scale, Fine: b.Kitchen.FineScale}
	if s.Flour.IsZero() {
		s.Flour = quantity.Grams(1)
	}
	return s
}
