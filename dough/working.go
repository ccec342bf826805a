package dough

import (
	"strconv"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// Working derives the weights: the dough from the target, the flour from the dough, each line
// from the flour, what each preferment holds, and what is left to weigh at mixing.
func (b Batch) Working() working.Working {
	d := &batchDerivation{b: &b, d: working.Derive(working.Tell("dough.derive_batch", "Weights of the dough"))}
	if len(b.mass) == 0 {
		return d.d.Working()
	}
	d.lines = make([]working.Expr, len(b.c.items))
	if b.weighed {
		d.fromWeights()
	} else {
		d.fromTarget()
		for k := 1; k < len(b.work); k++ {
			d.build(k)
		}
		for k := 1; k < len(b.work); k++ {
			d.starter(k)
		}
	}
	d.shares()
	d.finalDough()
	return d.d.Working()
}

// batchDerivation is the derivation of a batch as it grows.
type batchDerivation struct {
	b       *Batch
	d       *working.Derivation
	percent []working.Expr // of the lines, in percent of all flour
	lines   []working.Expr // their weights
	flour   working.Expr
	in      [][]working.Expr // what each build holds of each line
}

func itemName(name string) working.Message { return working.Tell("dough.item", "%s", name) }

func inBuild(item, build string) working.Message {
	return working.Tell("dough.item_in", "%s in %s", item, build)
}

func subscript(letter string, i int) string { return letter + "_" + strconv.Itoa(i+1) }

// buildSymbol is the symbol of line j in build k: builds have letters.
func buildSymbol(letter string, k, j int) string {
	return letter + "_" + buildLetter(k) + strconv.Itoa(j+1)
}

func buildLetter(k int) string {
	if k > 26 {
		return string(rune('A'+(k-27)/26)) + string(rune('A'+(k-1)%26))
	}
	return string(rune('A' + k - 1))
}

// fine is how many decimals of a gram a weight is derived with.
func fine(m quantity.Mass) int {
	if m.Compare(quantity.Grams(10)) < 0 {
		return 3
	}
	return 1
}

func (d *batchDerivation) find(name working.Message, symbol string, by working.Expr, is quantity.Mass,
	source working.Source) working.Expr {
	return d.d.Find(weight(working.Finding{Name: name, Symbol: symbol, By: by, Is: is, Source: source}, is))
}

// weight sets how a mass that was found is shown. Masses are exact to a microgram, which shows only in tiny ones.
func weight(f working.Finding, is quantity.Mass) working.Finding {
	f.Decimals = fine(is)
	if is.Compare(quantity.Grams(1)) < 0 {
		f.Within, f.Note = 5e-6, working.Tell("dough.microgram", "every mass is rounded to a microgram")
	}
	return f
}

// fromTarget derives the flour and every line of the overall formula.
func (d *batchDerivation) fromTarget() {
	b := d.b
	var total working.Expr
	for i := range b.c.items {
		it := &b.c.items[i]
		p := working.Given(subscript("p", i), working.Tell("dough.symbol_percent", "%s, of all flour", it.name),
			it.percent)
		d.percent = append(d.percent, p)
		if i == 0 {
			total = p
		} else {
			total = total.Plus(p)
		}
	}
	if b.goal.flour.IsZero() {
		dough := d.target()
		sum := d.d.Find(working.Finding{
			Name:   working.Tell("dough.total_percent", "total of the percentages"),
			Symbol: "P", By: total, Is: b.c.total, Decimals: 2, Source: sources.Gisslen,
		})
		d.flour = d.find(working.Tell("dough.total_flour", "flour in all"), "F", dough.Over(sum.Share()), b.flour,
			sources.Gisslen)
	} else {
		d.flour = d.target()
	}
	for i := range b.c.items {
		d.lines[i] = d.find(itemName(b.c.items[i].name), subscript("m", i), d.percent[i].Share().Times(d.flour),
			b.mass[i], sources.Gisslen)
	}
}

// target derives the dough to mix, or the flour, from what was asked for.
func (d *batchDerivation) target() working.Expr {
	b := d.b
	pieces := func(n int, each, name working.Message, m quantity.Mass, bake, process quantity.Percent) working.Expr {
		by := working.Given("n", each, n).Times(working.Given("w", name, m))
		if !bake.IsZero() {
			by = by.Over(working.Num(1).Minus(working.Given("l",
				working.Tell("dough.symbol_loss", "bake loss, of the scaling weight"), bake).Share()))
		}
		if !process.IsZero() {
			by = by.Over(working.Num(1).Minus(working.Given("v",
				working.Tell("dough.symbol_process", "process loss, of the dough mixed"), process).Share()))
		}
		return d.find(working.Tell("dough.to_mix", "dough to mix"), "D", by, b.dough, sources.Gisslen)
	}
	count := working.Tell("dough.symbol_pieces", "pieces")
	switch t := b.target.(type) {
	case Pieces:
		return pieces(t.Count, count, working.Tell("dough.symbol_scaled", "weight of one, as scaled"), t.Each,
			quantity.Percent{}, t.ProcessLoss)
	case Baked:
		return pieces(t.Pieces, count, working.Tell("dough.symbol_baked", "weight of one, baked and cooled"), t.Each,
			t.Loss, t.ProcessLoss)
	case ByVolume:
		v := working.Given("V", working.Tell("dough.symbol_volume", "volume of the vessel"), t.Volume)
		density := working.Given("ρ", working.Tell("dough.symbol_density", "density of the dough before it rises"),
			working.Amount(t.Density, "g/mL", 2))
		rise := working.Given("r", working.Tell("dough.symbol_rise", "increase in volume"), t.Rise)
		return d.find(working.Tell("dough.to_fill", "dough that fills the vessel when risen"), "D",
			v.In(working.Milliliter).Times(density).Over(working.Num(1).Plus(rise.Share())), b.dough, working.Algebra())
	case ByLevain:
		return d.stock(t.Preferment, t.Mass)
	case AtHand:
		for _, s := range t.Stock {
			if s.Name == b.goal.limiting {
				return d.stock(s.Name, s.Mass)
			}
		}
	case ByDough:
		return working.Given("D", working.Tell("dough.symbol_dough", "dough wanted"), t.Mass)
	}
	return working.Given("F", working.Tell("dough.symbol_flour", "flour wanted, that of the preferments included"),
		b.goal.flour)
}

// stock derives the flour from what is at hand of one ingredient or preferment.
func (d *batchDerivation) stock(name string, m quantity.Mass) working.Expr {
	share := 0.0
	if j := d.b.c.item(name); j != nobody {
		share = d.b.c.items[j].percent.Points()
	} else if k := d.b.c.node(name); k != nobody {
		used, _ := d.b.goesOn(k)
		share = used.Grams() / d.b.flour.Grams() * 100
		if d.b.c.nodes[k].parent == 0 || !d.b.c.carries(k) {
			share = float64(d.b.c.nodes[k].shareSum()) / one / one * 100
		}
	}
	q := working.Given("q", working.Tell("dough.symbol_stock_share", "%s, of all flour", name),
		working.Amount(share, working.Percent, 2))
	at := working.Given("m_0", working.Tell("dough.symbol_stock", "%s at hand", name), m)
	return d.find(working.Tell("dough.flour_from_stock", "flour in all, from what is at hand"), "F", at.Over(q.Share()),
		d.b.goal.flour, working.Algebra())
}

// build derives what build k holds of every line.
func (d *batchDerivation) build(k int) {
	b := d.b
	n, w := &b.c.nodes[k], &b.work[k]
	for len(d.in) <= k {
		d.in = append(d.in, make([]working.Expr, len(b.c.items)))
	}
	basis := d.flour
	if n.fermented {
		share := working.Given(
			"f_"+buildLetter(k),
			working.Tell("dough.symbol_prefermented", "flour in %s, of all flour",
				n.name),
			n.flour,
		)
		basis = d.find(working.Tell("dough.flour_in", "flour in %s", n.name), "F_"+buildLetter(k),
			share.Share().Times(d.flour),
			quantity.Sum(w.total[:b.c.flours]...), sources.HamelmanBread)
	}
	var sum working.Expr
	for j, m := range w.total {
		if m.IsZero() {
			continue
		}
		by := basis
		// All flour of one kind is the basis itself; as much water as flour is said to be 100 %.
		if share := n.ofBasis(j); share != wholeFlour || !n.fermented || j >= b.c.flours {
			meaning := working.Tell("dough.symbol_of_build", "%s in %s, of its flour", b.c.items[j].name, n.name)
			if !n.fermented {
				meaning = working.Tell("dough.symbol_of_soaker", "%s in %s, of all flour", b.c.items[j].name, n.name)
			}
			by = working.Given(buildSymbol("q", k, j), meaning, share).Share().Times(basis)
		}
		if b.c.items[j].role == RoleStarter {
			by = d.lines[j]
		}
		x := d.find(inBuild(b.c.items[j].name, n.name), buildSymbol("m", k, j), by, m, working.Algebra())
		d.in[k][j] = x
		sum = plus(sum, x)
	}
	d.find(working.Tell("dough.in_all", "%s in all", n.name), "U_"+buildLetter(k), sum, quantity.Sum(w.total...),
		working.Algebra())
}

// plus adds to a sum that may be nothing yet.
func plus(sum, x working.Expr) working.Expr {
	if sum == (working.Expr{}) {
		return x
	}
	return sum.Plus(x)
}

// ofBasis is what a build holds of an item, in percent of its own flour or, in a soaker, of all flour.
func (n *node) ofBasis(item int) quantity.Percent {
	if n.fermented && item < len(n.blend) {
		return n.blend[item]
	}
	for _, part := range n.parts {
		if part.item == item {
			return part.percent
		}
	}
	return wholeFlour
}

// finalDough subtracts what is made beforehand from the lines of the formula and ends with the dough.
func (d *batchDerivation) finalDough() {
	b := d.b
	var sum working.Expr
	for j := range b.c.items {
		own := b.mass[j]
		by := d.lines[j]
		if len(b.work) > 0 {
			own = b.work[0].own[j]
			taken := false
			for k := 1; k < len(b.work); k++ {
				if b.c.nodes[k].parent == 0 && !b.work[k].total[j].IsZero() {
					by, taken = by.Minus(d.in[k][j]), true
				}
			}
			if taken && !b.weighed {
				by = d.find(working.Tell("dough.left_to_weigh", "%s left to weigh at mixing", b.c.items[j].name),
					subscript("x", j), by, own, working.Algebra())
			} else if b.weighed {
				by = working.Given(subscript("x", j), working.Tell("dough.at_mixing", "%s at mixing", b.c.items[j].name), own)
			}
		}
		if !own.IsZero() {
			sum = plus(sum, by)
		}
	}
	for k := 1; k < len(b.work); k++ {
		if b.c.nodes[k].parent == 0 {
			used := quantity.Sum(b.work[k].total...)
			sum = plus(
				sum,
				working.Given("U_"+buildLetter(k), working.Tell("dough.in_all", "%s in all", b.c.nodes[k].name),
					used),
			)
		}
	}
	d.find(working.Tell("dough.adds_up", "dough, weighed at mixing"), "D_mix", sum, b.dough, working.Algebra())
}

// shares derives the hydration and the flour that ferments beforehand.
func (d *batchDerivation) shares() {
	b := d.b
	var water working.Expr
	for i := range b.c.items {
		if b.c.items[i].isWater() {
			water = plus(water, d.percent[i])
		}
	}
	if water != (working.Expr{}) {
		d.d.Find(working.Finding{
			Name: working.Tell("dough.hydration",
				"hydration"), Symbol: "h", By: water, Is: b.Hydration(), Decimals: 2, Source: sources.Gisslen,
		})
	}
	var pre working.Expr
	for k := 1; k < len(b.c.nodes); k++ {
		if n := &b.c.nodes[k]; n.parent == 0 && n.fermented {
			pre = plus(pre, working.Given("f_"+buildLetter(k),
				working.Tell("dough.symbol_prefermented", "flour in %s, of all flour", n.name), n.flour))
		}
	}
	if pre != (working.Expr{}) {
		d.d.Find(working.Finding{
			Name:   working.Tell("dough.prefermented", "prefermented flour"),
			Symbol: "x_pre", By: pre, Is: b.Prefermented(), Decimals: 2, Source: sources.HamelmanBread,
		})
	}
}
