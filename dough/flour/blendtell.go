package flour

import (
	"math/big"
	"slices"
	"strconv"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// String is the headline of the report.
func (r BlendedFlours) String() string { return r.Report().Headline.String() }

// Report tells the shares.
func (r BlendedFlours) Report() report.Report {
	if len(r.Flours) == 0 {
		return report.Report{Headline: working.Tell("flour.no_blend", "no blend")}
	}
	out := report.Report{Headline: working.Tell("flour.blend", "A blend of %.2f protein", r.Protein),
		Sources: []working.Source{r.source()}}
	if !r.Feasible {
		out.Headline = working.Tell("flour.blend_nearest",
			"The bounds do not allow %v; the nearest blend has %.2f protein", r.in.Target, r.Protein)
	}
	t := report.Grid{Key: "flours", Columns: []report.GridColumn{{Key: "share",
		Title: working.Tell("flour.column_share", "share"), Right: true}}}
	weighs := !r.in.Total.IsZero()
	if weighs {
		t.Columns = append(
			t.Columns,
			report.GridColumn{Key: "mass", Title: working.Tell("flour.column_weight", "weight"),
				Right: true},
		)
	}
	t.Columns = append(t.Columns, report.GridColumn{Key: "flour"},
		report.GridColumn{Key: "protein", Title: working.Tell("flour.column_protein", "protein"),
			Right: true}, report.GridColumn{Key: "held"})
	for i, f := range r.Flours {
		row := []report.Cell{report.Rounded(f.Share, 1)}
		if weighs {
			row = append(row, report.Rounded(f.Mass, 1))
		}
		row = append(row, report.Of(nameOf(f.Name, i)), report.Rounded(f.Protein, 1))
		switch f.Held {
		case HeldAtLeast:
			row = append(row, report.Of(working.Tell("flour.held_least", "held at its least")))
		case HeldAtMost:
			row = append(row, report.Of(working.Tell("flour.held_most", "held at its most")))
		case HeldByBoth:
			row = append(row, report.Of(working.Tell("flour.held_both", "held where it is")))
		default:
			row = append(row, report.Cell{})
		}
		t.Rows = append(t.Rows, row)
	}
	out.Sections = []report.Section{{Key: "flours", Blocks: []report.Block{t}}}
	return out
}

func (r BlendedFlours) source() working.Source {
	if r.pearson {
		return sources.PearsonMSU
	}
	return sources.LeastChange
}

// nameOf is what a flour is called.
func nameOf(name string, i int) working.Message {
	if name == "" {
		return working.Tell("flour.unnamed", "flour %d", i+1)
	}
	if len(name) > 40 {
		name = quantity.Excerpt(name)
	}
	return working.Tell("flour.name", "%s", name)
}

// Working derives the shares and ends with the protein of the blend.
func (r BlendedFlours) Working() working.Working {
	d := working.Derive(working.Tell("flour.derive_blend", "Flour blend"))
	if len(r.Flours) == 0 || len(r.in.Flours) != len(r.Flours) {
		return d.Working()
	}
	target := working.Given("T", working.Tell("flour.symbol_wanted", "protein wanted"), r.in.Target)
	proteins := make([]working.Expr, len(r.Flours))
	for i, f := range r.Flours {
		proteins[i] = working.Given("P_"+strconv.Itoa(i+1),
			working.Tell("flour.symbol_of", "protein of %v", nameOf(f.Name, i)), f.Protein)
	}
	var shares []working.Expr
	switch {
	case r.pearson:
		for i, f := range r.Flours {
			other := proteins[1-i]
			by := working.Num(100).Times(target.Minus(other)).Over(proteins[i].Minus(other))
			shares = append(shares, d.Find(r.share(i, f, by)))
		}
	case !r.Feasible:
		for i, f := range r.Flours {
			s := r.share(i, f, working.Expr{})
			s.By, s.Look = working.Expr{}, working.Tell("flour.as_near", "as near to the target as the bounds allow")
			shares = append(shares, d.Find(s))
		}
	default:
		shares = r.leastChange(d, target, proteins)
	}
	sum := shares[0].Times(proteins[0])
	for i := range shares[1:] {
		sum = sum.Plus(shares[i+1].Times(proteins[i+1]))
	}
	d.Find(working.Finding{
		Name: working.Tell("flour.protein",
			"protein of the blend"), Symbol: "P", By: sum.Over(100), Is: r.Protein, Decimals: 2,
		Source: sources.GlutenAlgebra,
	})
	return d.Working()
}

func (r BlendedFlours) share(i int, f BlendedFlour, by working.Expr) working.Finding {
	return working.Finding{
		Name: working.Tell("flour.share", "share of %v", nameOf(f.Name, i)), Symbol: "x_" +
			strconv.Itoa(i+1), By: by, Is: f.Share, Decimals: 2,
		Source: r.source(),
	}
}

// leastChange derives the shares of a least change: what the free flours lack of share and of protein, the two
// multipliers that make it up, and every share.
func (r BlendedFlours) leastChange(d *working.Derivation, target working.Expr, proteins []working.Expr) []working.Expr {
	now := make([]working.Expr, len(r.Flours))
	shares := make([]working.Expr, len(r.Flours))
	lackShare, lackProtein := working.Num(100), working.Num(100).Times(target)
	var sumP, sumP2 working.Expr
	var free []int
	for i, f := range r.Flours {
		n := strconv.Itoa(i + 1)
		now[i] = working.Given("s_"+n, working.Tell("flour.symbol_now", "share of %v now", nameOf(f.Name, i)),
			r.in.Flours[i].Share)
		x := now[i]
		if f.Held != 0 {
			held := r.share(i, f, working.Expr{})
			held.Look = working.Tell("flour.held", "held by its bound")
			shares[i] = d.Find(held)
			x = shares[i]
		} else if free = append(free, i); len(free) == 1 {
			sumP, sumP2 = proteins[i], proteins[i].Times(proteins[i])
		} else {
			sumP, sumP2 = sumP.Plus(proteins[i]), sumP2.Plus(proteins[i].Times(proteins[i]))
		}
		lackShare, lackProtein = lackShare.Minus(x), lackProtein.Minus(x.Times(proteins[i]))
	}
	if len(free) == 0 {
		return shares
	}
	m := r.multipliers(free)
	find := func(name working.Message, symbol string, by working.Expr, is *big.Rat) working.Expr {
		x, _ := is.Float64()
		return d.Find(working.Finding{Name: name, Symbol: symbol, By: by, Is: working.Amount(x, "", 4), Decimals: 4,
			Source: sources.LeastChange})
	}
	a := find(working.Tell("flour.lack_share", "share that is lacking"), "a", lackShare, m.share)
	count := working.Given("n", working.Tell("flour.symbol_free", "flours that no bound holds"), len(free))
	lambda := a.Over(count)
	var mu working.Expr
	if m.spread.Sign() != 0 {
		b := find(working.Tell("flour.lack_protein", "protein that is lacking, in hundredths"), "b", lackProtein,
			m.protein)
		p := find(working.Tell("flour.sum_protein", "sum of their proteins"), "p", sumP, m.sum)
		q := find(working.Tell("flour.sum_squares", "sum of the squares of their proteins"), "q", sumP2, m.squares)
		mu = find(working.Tell("flour.multiplier_protein", "change for each point of protein"), "μ",
			count.Times(b).Minus(p.Times(a)).Over(count.Times(q).Minus(p.Times(p))), m.mu)
		lambda = a.Minus(mu.Times(p)).Over(count)
	}
	l := find(working.Tell("flour.multiplier_share", "change of every share alike"), "λ", lambda, m.lambda)
	for _, i := range free {
		by := now[i].Plus(l)
		if m.spread.Sign() != 0 {
			by = by.Plus(mu.Times(proteins[i]))
		}
		shares[i] = d.Find(r.share(i, r.Flours[i], by))
	}
	return shares
}

// multipliers are the numbers of a least change, exactly.
type multipliers struct {
	share, protein *big.Rat // what is lacking
	sum, squares   *big.Rat // of the proteins of the free flours
	spread         *big.Rat // n·squares − sum²
	lambda, mu     *big.Rat
}

func (r BlendedFlours) multipliers(free []int) multipliers {
	points := func(p quantity.Percent) *big.Rat {
		n, _ := p.Millionths()
		return big.NewRat(n, 1_000_000)
	}
	times := func(a, b *big.Rat) *big.Rat { return new(big.Rat).Mul(a, b) }
	less := func(a, b *big.Rat) *big.Rat { return new(big.Rat).Sub(a, b) }
	hundred := big.NewRat(100, 1)
	m := multipliers{
		share: hundred, protein: times(hundred,
			points(r.in.Target)), sum: new(big.Rat), squares: new(big.Rat), mu: new(big.Rat),
	}
	for i, f := range r.Flours {
		x, p := points(f.Share), points(f.Protein)
		if slices.Contains(free, i) {
			x = points(r.in.Flours[i].Share)
			m.sum = new(big.Rat).Add(m.sum, p)
			m.squares = new(big.Rat).Add(m.squares, times(p, p))
		}
		m.share, m.protein = less(m.share, x), less(m.protein, times(x, p))
	}
	n := big.NewRat(int64(len(free)), 1)
	m.spread = less(times(n, m.squares), times(m.sum, m.sum))
	if m.spread.Sign() != 0 {
		m.mu = new(big.Rat).Quo(less(times(n, m.protein), times(m.sum, m.share)), m.spread)
	}
	m.lambda = new(big.Rat).Quo(less(m.share, times(m.mu, m.sum)), n)
	return m
}
