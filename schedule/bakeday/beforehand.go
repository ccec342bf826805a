package bakeday

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule"
)

// PrefermentWork is a poolish, biga, sponge or old dough: a part of the flour that ferments beforehand with yeast, or
// with nothing of its own. It is taken out of the lines of the formula, its yeast and salt too. How long it takes is
// computed from its yeast, unless the baker says it.
type PrefermentWork struct {
	Name string `json:"name"` // as it stands on the lists
	// "poolish", "biga", "sponge", "old dough"; the levain has a place of its own
	Kind dough.PrefermentKind `json:"kind,omitzero"`
	// flour in it, of all flour
	Prefermented quantity.Percent `json:"prefermented,omitzero" fills:"formula:Flour"`
	// instead of prefermented, where flours are weighed: all of it, beside them
	Weight    quantity.Mass    `json:"weight,omitzero"`
	Hydration quantity.Percent `json:"hydration"` // its liquid, of its flour
	// name of the liquid it is made with; empty: the water, and milk where the dough has no water
	Liquid string `json:"liquid,omitzero"`
	// name of the flour it is made with; empty: all flours in proportion
	Flour string `json:"flour,omitzero" fills:"formula:Blend"`
	// of its own flour, of the yeast under other
	Yeast       quantity.Percent     `json:"yeast,omitzero" fills:"formula:Others"`
	Salt        quantity.Percent     `json:"salt,omitzero"`        // of its own flour
	Temperature quantity.Temperature `json:"temperature,omitzero"` // where it stands; not given: the room
	Takes       quantity.Elapsed     `json:"takes,omitzero"`       // to make it
	// how long it stands at least; without it and at_most: until its yeast has made it ripe
	AtLeast quantity.Elapsed `json:"at_least,omitzero"`
	AtMost  quantity.Elapsed `json:"at_most,omitzero"` // how long it stands at most and is not past its best
}

// SoakerWork is what is wetted beforehand without fermenting: seeds in water, a scald of rye. Its parts are taken out
// of the lines of the formula.
type SoakerWork struct {
	Name    string           `json:"name"`           // as it stands on the lists
	Kind    dough.SoakerKind `json:"kind,omitzero"`  // "cold soaker", "hot soaker", "scald"
	Parts   []SoakerPart     `json:"part"`           // what of the formula goes into it
	Takes   quantity.Elapsed `json:"takes,omitzero"` // to make it
	AtLeast quantity.Elapsed `json:"at_least"`       // how long it stands at least
	AtMost  quantity.Elapsed `json:"at_most"`        // how long it stands at most
	// how warm it goes into the dough; not given: as the room, and what is kept hot cools to 30 °C first
	Temperature quantity.Temperature `json:"temperature,omitzero"`
}

// SoakerPart is one ingredient of a soaker, in percent of all flour or by weight.
type SoakerPart struct {
	Name    string           `json:"name"`             // of a line of the formula
	Percent quantity.Percent `json:"percent,omitzero"` // of all flour, as in the formula
	Weight  quantity.Mass    `json:"weight,omitzero"`  // instead of percent, where flours are weighed: beside the line
}

// beforehand is a preferment or soaker as the timetable sees it.
type beforehand struct {
	name        string
	waits       schedule.StepKind
	path        string
	takes       time.Duration
	least, most time.Duration
	computed    bool // by the clock of the yeast in it
}

// beforehand lists what is made before the dough, the levain apart.
func (b *Bake) beforehand() []beforehand {
	var out []beforehand
	for i, p := range b.Preferments {
		out = append(
			out,
			beforehand{
				name: p.Name, waits: schedule.Ripen, path: fmt.Sprintf("Preferments[%d]", i), takes: p.Takes.Duration(),
				least: p.AtLeast.Duration(), most: p.AtMost.Duration(), computed: p.computed(),
			},
		)
	}
	for i, s := range b.Soakers {
		out = append(
			out,
			beforehand{
				name: s.Name, waits: schedule.Stand, path: fmt.Sprintf("Soakers[%d]", i), takes: s.Takes.Duration(),
				least: s.AtLeast.Duration(), most: s.AtMost.Duration(),
			},
		)
	}
	return out
}

// checkBeforehand reports what package dough does not.
func (b *Bake) checkBeforehand(p *quantity.Problems) {
	_, yeast := b.yeast()
	for i, x := range b.Preferments {
		path := fmt.Sprintf("Preferments[%d]", i)
		if x.Kind == dough.Levain || x.Kind == dough.RyeSour {
			p.Add(
				path+".Kind",
				x.Kind,
				quantity.Tell("bakeday.want_poolish_biga_sponge_old_dough",
					"poolish, biga, sponge, old dough or other; a levain or rye sour stands under levain, where its ripeness is "+
						"computed"),
				quantity.ErrInconsistent,
			)
		}
		if _, ok := b.liquidOf(x); x.Liquid != "" && !ok {
			p.Add(path+".Liquid", quantity.Excerpt(x.Liquid),
				quantity.Tell("bakeday.want_name_of_liquid", "the name of one of the liquids"), quantity.ErrInconsistent)
		}
		if !x.Yeast.IsZero() && !yeast {
			p.Add(path+".Yeast", x.Yeast,
				quantity.Tell("bakeday.want_line_yeast_under_other_which", "a line of yeast under other, of which this is a part"),
				quantity.ErrInconsistent)
		}
		if x.computed() && x.Yeast.IsZero() {
			p.Required(path+".AtLeast",
				quantity.Tell("bakeday.want_how_long_stands_at_least",
					"how long it stands, at least and at most; or yeast of its own, by which that is computed"))
		}
		if !x.Temperature.IsZero() {
			quantity.Check(p, path+".Temperature", x.Temperature, quantity.Celsius(0), quantity.Celsius(40))
		}
	}
	for i, x := range b.Soakers {
		if !x.Temperature.IsZero() {
			quantity.Check(p, fmt.Sprintf("Soakers[%d].Temperature", i), x.Temperature, quantity.Celsius(0),
				quantity.Celsius(60))
		}
	}
	for _, s := range b.beforehand() {
		if strings.TrimSpace(s.name) == "" {
			p.Required(s.path+".Name", quantity.Tell("bakeday.want_what_baker_calls", "what the baker calls it"))
		}
		p.Duration(s.path+".Takes", s.takes, time.Minute, 4*time.Hour)
		if s.computed {
			continue
		}
		least := shortestRest
		if p.Duration(s.path+".AtLeast", s.least, shortestRest, longestRest) {
			least = s.least
		}
		p.Duration(s.path+".AtMost", s.most, least, longestRest)
	}
}

// preferments turns them into those of the formula.
func (b *Bake) preferments() []dough.Preferment {
	var out []dough.Preferment
	for _, x := range b.Preferments {
		p := dough.Preferment{Name: x.Name, Kind: x.Kind, Flour: x.Prefermented, Hydration: x.Hydration, Salt: x.Salt}
		if x.Flour != "" {
			p.Blend = []dough.Part{{Name: x.Flour, Percent: quantity.NewPercent(100)}}
		}
		if l, _ := b.liquidOf(x); b.waterless(x) {
			p.Hydration = quantity.Percent{}
			p.Others = []dough.Part{{Name: l.Name, Percent: x.Hydration, Kind: l.Kind, Water: l.Water}}
		}
		if y, ok := b.yeast(); ok && !x.Yeast.IsZero() {
			p.Others = append(p.Others, dough.Part{Name: y.Name, Percent: x.Yeast, Kind: y.Kind, Water: y.Water})
		}
		out = append(out, p)
	}
	return out
}

// isWater reports whether a liquid counts as water.
func (l Ingredient) isWater() bool { return l.Kind == dough.KindWater || l.Kind == dough.KindUnstated }

// liquidOf is what a preferment is made with: the liquid it names, or else the water, or else the first liquid.
func (b *Bake) liquidOf(x PrefermentWork) (Ingredient, bool) {
	i := slices.IndexFunc(b.Liquids, func(l Ingredient) bool { return l.Name == x.Liquid })
	if x.Liquid == "" {
		if i = slices.IndexFunc(b.Liquids, Ingredient.isWater); i < 0 && len(b.Liquids) > 0 {
			i = 0
		}
	}
	if i < 0 {
		return Ingredient{}, false
	}
	return b.Liquids[i], true
}

// waterless reports whether a preferment is made with another liquid than water.
func (b *Bake) waterless(x PrefermentWork) bool {
	l, ok := b.liquidOf(x)
	return ok && !l.isWater()
}

// wetness is the water in a preferment, of its flour: milk is counted by the water that is stated of it.
func (b *Bake) wetness(x PrefermentWork) quantity.Percent {
	if l, _ := b.liquidOf(x); b.waterless(x) && !l.Water.IsZero() {
		return x.Hydration.OfPercent(l.Water)
	}
	return x.Hydration
}

func (b *Bake) soakers() []dough.Soaker {
	var out []dough.Soaker
	for _, x := range b.Soakers {
		s := dough.Soaker{Name: x.Name, Kind: x.Kind}
		for _, part := range x.Parts {
			s.Parts = append(s.Parts, dough.Part{Name: part.Name, Percent: part.Percent})
		}
		out = append(out, s)
	}
	return out
}
