package dough

import (
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// starter derives the starter of build k and what is then left of every line to feed it with.
func (d *batchDerivation) starter(k int) {
	b := d.b
	n, w := &b.c.nodes[k], &b.work[k]
	letter := buildLetter(k)
	left := make([]working.Expr, len(b.c.items))
	nested := false
	for j := range b.c.items {
		if w.total[j].IsZero() {
			continue
		}
		left[j] = d.in[k][j]
		for i := k + 1; i < len(b.work); i++ {
			if b.c.nodes[i].parent == k && !b.work[i].total[j].IsZero() {
				left[j], nested = left[j].Minus(d.in[i][j]), true
			}
		}
	}
	s := w.starterOf
	switch {
	case w.starter.IsZero() && !nested:
		return
	case w.starter.IsZero():
		d.feed(k, left, nil)
		return
	case s.Account != SeedCounted:
		d.asideStarter(k, left)
		return
	}
	percent := working.Given("s_"+letter, working.Tell("dough.symbol_inoculation", "inoculation of %s, %v", n.name,
		s.Of), s.Percent)
	h := working.Given("k_"+letter, working.Tell("dough.symbol_starter_hydration", "hydration of the culture of %s",
		n.name), s.Hydration)
	hundred := working.Num(100)
	var by working.Expr
	if s.Of == OfMix {
		by = working.Given("U_"+letter, working.Tell("dough.in_all", "%s in all", n.name),
			quantity.Sum(w.total...)).Times(percent.Share())
	} else {
		var flour working.Expr
		for j := range b.c.flours {
			if !w.total[j].IsZero() {
				flour = plus(flour, left[j])
			}
		}
		by = flour.Times(percent.Share()).Times(hundred.Plus(h)).Over(hundred.Plus(h).Plus(percent))
	}
	c := d.find(working.Tell("dough.starter_in", "culture in %s, its flour and water counted", n.name), "c_"+letter, by,
		w.starter, working.Algebra())
	in := massRatio(micrograms(w.starter), []int64{one}, []int64{one + millionths(s.Hydration)})
	flour := d.find(working.Tell("dough.starter_flour", "flour in the culture of %s", n.name), "g_"+letter,
		c.Over(working.Num(1).Plus(h.Share())), in, working.Algebra())
	took := make([]working.Expr, len(b.c.items))
	for j, share := range n.seedBlend {
		if !share.IsZero() {
			took[j] = flour
			if share != wholeFlour {
				blend := working.Given(buildSymbol("b", k, j),
					working.Tell("dough.symbol_starter_blend", "%s in the culture of %s", b.c.items[j].name, n.name),
					share)
				took[j] = blend.Share().Times(flour)
			}
		}
	}
	took[b.c.water] = c.Minus(flour)
	d.feed(k, left, took)
}

// feed subtracts what goes into build k, and what its starter brings, from what it holds.
func (d *batchDerivation) feed(k int, left, took []working.Expr) {
	b := d.b
	n, w := &b.c.nodes[k], &b.work[k]
	for j := range b.c.items {
		if w.total[j].IsZero() || w.own[j] == w.total[j] {
			continue
		}
		by := left[j]
		if took != nil && took[j] != (working.Expr{}) {
			by = by.Minus(took[j])
		}
		d.find(working.Tell("dough.to_feed", "%s to feed %s with", b.c.items[j].name, n.name), buildSymbol("x", k, j),
			by, w.own[j], working.Algebra())
	}
}

// asideStarter derives a starter that counts nowhere because as much is taken away again.
func (d *batchDerivation) asideStarter(k int, left []working.Expr) {
	b := d.b
	n, w := &b.c.nodes[k], &b.work[k]
	letter := buildLetter(k)
	s := w.starterOf
	percent := working.Given("s_"+letter, working.Tell("dough.symbol_inoculation", "inoculation of %s, %v", n.name,
		s.Of), s.Percent)
	var by working.Expr
	if s.Of == OfMix {
		rest := quantity.Sum(w.total...).Add(w.carried)
		if s.Account == SeedRemovedAtEnd {
			rest = rest.Sub(w.starter)
		}
		all := working.Given("R_"+letter, working.Tell("dough.symbol_rest", "everything else in %s", n.name), rest)
		by = all.Times(percent).Over(working.Num(100).Minus(percent))
	} else {
		var flour working.Expr
		for j := range b.c.flours {
			if !w.total[j].IsZero() {
				flour = plus(flour, left[j])
			}
		}
		by = flour.Times(percent.Share())
	}
	d.find(working.Tell("dough.starter_aside", "culture in %s, taken away again", n.name), "c_"+letter, by, w.starter,
		sources.HamelmanBread)
	d.feed(k, left, nil)
}
