package dough

import (
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// fromWeights derives the percentages from the weights that were given.
func (d *batchDerivation) fromWeights() {
	b := d.b
	d.in = make([][]working.Expr, len(b.work))
	for k := 1; k < len(b.work); k++ {
		d.in[k] = make([]working.Expr, len(b.c.items))
	}
	for i := range b.c.items {
		d.lines[i] = d.inAll(i)
	}
	var sum working.Expr
	for i := range b.c.flours {
		sum = plus(sum, d.lines[i])
	}
	d.flour = d.find(working.Tell("dough.total_flour", "flour in all"), "F", sum, b.flour, sources.Gisslen)
	for i := range b.c.items {
		it := &b.c.items[i]
		f := working.Finding{
			Name: working.Tell("dough.symbol_percent", "%s, of all flour", it.name), Symbol: subscript("p", i),
			By: working.Num(100).Times(d.lines[i]).Over(d.flour), Is: it.percent, Decimals: 2, Source: sources.Gisslen,
		}
		if it.percent.Compare(quantity.MustPercent("0.01 %")) < 0 {
			f.Within, f.Note = 2e-6, working.Tell("dough.millionth",
				"every percentage is rounded to a millionth of a point")
		}
		d.percent = append(d.percent, d.d.Find(f))
	}
}

// inAll adds up what there is of an ingredient: at mixing, and in what was made beforehand.
func (d *batchDerivation) inAll(i int) working.Expr {
	b := d.b
	name := b.c.items[i].name
	if len(b.work) == 0 {
		return working.Given(subscript("m", i), itemName(name), b.mass[i])
	}
	var by working.Expr
	terms := 0
	if own := b.work[0].own[i]; !own.IsZero() {
		by = working.Given(subscript("x", i), working.Tell("dough.at_mixing", "%s at mixing", name), own)
		terms++
	}
	for k := 1; k < len(b.work); k++ {
		if total := b.work[k].total[i]; b.c.nodes[k].parent == 0 && !total.IsZero() {
			by = plus(by, d.used(k, i, total))
			terms++
		}
	}
	if terms == 0 {
		return working.Given(subscript("m", i), itemName(name), quantity.Mass{})
	}
	return d.find(working.Tell("dough.line_in_all", "%s in all", name), subscript("m", i), by, b.mass[i],
		working.Algebra())
}

// used is what the dough has of an ingredient by a build: all that was weighed, or the part that was used.
func (d *batchDerivation) used(k, i int, total quantity.Mass) working.Expr {
	b := d.b
	n, w := &b.c.nodes[k], &b.work[k]
	symbol, name := buildSymbol("m", k, i), inBuild(b.c.items[i].name, n.name)
	if w.given == nil || !w.given.starter.IsZero() || b.nests(k) {
		return working.Given(symbol, working.Tell("dough.item_used", "%s in %s, as used", b.c.items[i].name, n.name),
			total)
	}
	made := quantity.Sum(w.given.own...)
	weighed := working.Given(buildSymbol("w", k, i),
		working.Tell("dough.item_weighed", "%s in %s, as weighed", b.c.items[i].name, n.name), w.given.own[i])
	part := working.Given("u_"+buildLetter(k), working.Tell("dough.symbol_used", "%s used", n.name), w.given.used)
	all := working.Given("M_"+buildLetter(k), working.Tell("dough.symbol_made", "%s made", n.name), made)
	return d.find(name, symbol, weighed.Times(part).Over(all), total, working.Algebra())
}

// nests reports whether something goes into build k.
func (b *Batch) nests(k int) bool {
	for i := k + 1; i < len(b.work); i++ {
		if b.c.nodes[i].parent == k {
			return true
		}
	}
	return false
}
