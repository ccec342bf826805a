package dough

import (
	"math/big"

	"example.org/maslin/dough/quantity"
)

// Target says how much dough is wanted. The targets are [ByFlour], [ByDough], [Pieces], [Baked],
// [ByLevain], [AtHand] and [ByVolume].
type Target interface{ isTarget() }

func (ByFlour) isTarget()  {}
func (ByDough) isTarget()  {}
func (Pieces) isTarget()   {}
func (Baked) isTarget()    {}
func (ByLevain) isTarget() {}
func (AtHand) isTarget()   {}
func (ByVolume) isTarget() {}

// goalOf turns the target into a mass of flour or of dough, or notes what is wrong with it. The
// calls are direct, so that nothing has to live on the heap for them.
func goalOf(target Target, c *compiled, p *quantity.Problems) goal {
	switch t := target.(type) {
	case ByFlour:
		return t.goal(p)
	case ByDough:
		return t.goal(p)
	case Pieces:
		return piecesGoal(p, "Pieces.", "Count", t.Count, t.Each, quantity.Percent{}, t.ProcessLoss)
	case Baked:
		return piecesGoal(p, "Baked.", "Pieces", t.Pieces, t.Each, t.Loss, t.ProcessLoss)
	case ByLevain:
		return t.goal(c, p)
	case AtHand:
		return t.goal(c, p)
	case ByVolume:
		return t.goal(p)
	}
	p.Add("Target", quantity.Tell("dough.got_pointer_or_another_type", "a pointer, or another type"),
		quantity.Tell("dough.want_one_targets_this_package_by",
			"one of the targets of this package, by value"), quantity.ErrRequired)
	return goal{}
}

// goal is a target worked out: so much flour, or so much dough. One of the two is zero.
type goal struct {
	flour, dough quantity.Mass
	scaled       quantity.Mass // what is left to divide after the process loss
	pieces       int
	limiting     string
}

var (
	leastDough = quantity.Grams(1)
	mostDough  = quantity.Kilograms(100_000)
	mostLoss   = quantity.MustPercent("90 %")
)

func checkMass(p *quantity.Problems, path string, m quantity.Mass) bool {
	return quantity.Check(p, path, m, leastDough, mostDough)
}

func checkLoss(p *quantity.Problems, path string, loss quantity.Percent) bool {
	return quantity.Check(p, path, loss, noPercent, mostLoss)
}

// ByFlour asks for the dough that so much flour makes. The flour includes that of the
// preferments.
type ByFlour struct {
	Mass quantity.Mass `json:"mass"`
}

func (t ByFlour) goal(p *quantity.Problems) goal {
	checkMass(p, "ByFlour.Mass", t.Mass)
	return goal{flour: t.Mass}
}

// ByDough asks for so much dough in the bowl.
type ByDough struct {
	Mass quantity.Mass `json:"mass"`
}

func (t ByDough) goal(p *quantity.Problems) goal {
	checkMass(p, "ByDough.Mass", t.Mass)
	return goal{dough: t.Mass}
}

// Pieces asks for so many pieces of dough of a scaling weight.
//
//	dough = count · each ÷ (1 − process loss)
//
// ProcessLoss is what stays in the bowl, on hands and on the bench, as a percentage of the dough
// that is mixed. It is not the bake loss.
type Pieces struct {
	Count       int              `json:"count"`
	Each        quantity.Mass    `json:"each"` // the scaling weight
	ProcessLoss quantity.Percent `json:"process_loss,omitzero"`
}

// Baked asks for so many loaves of a weight when baked and cooled.
//
//	dough = pieces · each ÷ (1 − loss) ÷ (1 − process loss)
//
// Loss is the bake loss, as a percentage of the scaling weight of a piece; ProcessLoss as in
// [Pieces].
type Baked struct {
	Pieces      int              `json:"pieces"`
	Each        quantity.Mass    `json:"each"` // baked and cooled
	Loss        quantity.Percent `json:"loss,omitzero"`
	ProcessLoss quantity.Percent `json:"process_loss,omitzero"`
}

func piecesGoal(p *quantity.Problems, path, countName string, n int, each quantity.Mass, bakeLoss,
	processLoss quantity.Percent) goal {
	ok := p.Int(path+countName, n, 1, 1_000_000)
	ok = checkMass(p, path+"Each", each) && ok
	ok = checkLoss(p, path+"Loss", bakeLoss) && ok
	ok = checkLoss(p, path+"ProcessLoss", processLoss) && ok
	if !ok {
		return goal{}
	}
	all := each.Times(int64(n))
	scaled := all.Over(wholeFlour.Sub(bakeLoss))
	// Both losses in one division, so that the dough is rounded once.
	both := millionths(wholeFlour.Sub(bakeLoss)) * millionths(wholeFlour.Sub(processLoss))
	mixed := massRatio(micrograms(all), []int64{one, one}, []int64{both})
	if checkMass(p, path+"Each", scaled) {
		checkMass(p, path+"Each", mixed)
	}
	return goal{dough: mixed, scaled: scaled, pieces: n}
}

// ByLevain asks for the dough that a preferment at hand raises: all of it is used. The dough's
// part of the preferment agrees with Mass within a few micrograms.
type ByLevain struct {
	Preferment string        `json:"preferment"` // its name in the formula
	Mass       quantity.Mass `json:"mass"`
}

func (t ByLevain) goal(c *compiled, p *quantity.Problems) goal {
	checkMass(p, "ByLevain.Mass", t.Mass)
	k := c.node(t.Preferment)
	if k == nobody {
		p.Add("ByLevain.Preferment", quantity.Excerpt(t.Preferment),
			quantity.Tell("dough.want_preferment_formula", "a preferment of the formula"), quantity.ErrInconsistent)
	}
	if p.Err() != nil {
		return goal{}
	}
	return goal{flour: c.flourOf(k, t.Mass)}
}

// flourOf is the total flour of the dough of which so much of node k goes on.
func (c *compiled) flourOf(k int, m quantity.Mass) quantity.Mass {
	if c.nodes[k].parent > 0 && c.carries(k) {
		// A stage with starter that is removed at the end weighs more than its share: by how much, a large batch says.
		trial := Batch{c: *c, goal: goal{flour: quantity.Kilograms(1000)}}
		if err := trial.weigh(); err == nil {
			used, _ := trial.goesOn(k)
			return m.Scale(trial.flour, used)
		}
	}
	return massRatioDown(micrograms(m), []int64{one, one}, []int64{c.nodes[k].shareSum()})
}

// carries reports whether a starter that is removed at the end is in node k or in what goes into it.
func (c *compiled) carries(k int) bool {
	for i := k; i < len(c.nodes); i++ {
		if s := c.nodes[i].seed; s.Account == SeedRemovedAtEnd && !s.Percent.IsZero() {
			for up := i; up > 0; up = c.nodes[up].parent {
				if up == k {
					return true
				}
			}
		}
	}
	return false
}

func (n *node) shareSum() int64 {
	var sum int64
	for _, s := range n.share {
		sum += s
	}
	return sum
}

// Stock is what there is of one ingredient or preferment.
type Stock struct {
	Name string        `json:"name"`
	Mass quantity.Mass `json:"mass"`
}

// AtHand asks for the largest dough that what is at hand allows; [Batch.Limiting] names what runs
// out first. Ingredients that are not listed are taken to be plenty.
type AtHand struct {
	Stock []Stock `json:"stock"`
}

func (t AtHand) goal(c *compiled, p *quantity.Problems) goal {
	var g goal
	if len(t.Stock) == 0 {
		p.Required("AtHand.Stock", quantity.Tell("dough.want_at_least_one_ingredient_weight",
			"at least one ingredient with its weight"))
	}
	if len(t.Stock) > maxLines {
		p.Add("AtHand.Stock", quantity.Tell("dough.got_too_many_lines", "too many lines"),
			quantity.Tell("dough.want_at_most_200_lines", "at most 200 lines"), quantity.ErrOutOfRange)
		return g
	}
	for i, s := range t.Stock {
		path := at("AtHand.Stock", i)
		quantity.Check(p, path+".Mass", s.Mass, quantity.Mass{}, mostDough)
		var flour quantity.Mass
		switch j, k := c.item(s.Name), c.node(s.Name); {
		case j == nobody && k == nobody:
			p.Add(path+".Name", quantity.Excerpt(s.Name),
				quantity.Tell("dough.want_ingredient_or_preferment_formula", "an ingredient or preferment of the formula"),
				quantity.ErrInconsistent)
			continue
		case p.Err() != nil, j != nobody && c.items[j].percent.IsZero(), j == nobody && c.nodes[k].shareSum() == 0:
			continue
		case j != nobody:
			flour = massRatioDown(micrograms(s.Mass), []int64{one}, []int64{millionths(c.items[j].percent)})
		default:
			flour = c.flourOf(k, s.Mass)
		}
		if g.limiting == "" || flour.Compare(g.flour) < 0 {
			g.flour, g.limiting = flour, s.Name
		}
	}
	if p.Err() != nil {
		return goal{}
	}
	if g.limiting == "" {
		p.Add("AtHand.Stock", quantity.Tell("dough.got_nothing_formula_uses", "nothing that the formula uses"),
			quantity.Tell("dough.want_ingredient_share_above_0_percent", "an ingredient with a share above 0 %%"),
			quantity.ErrInconsistent)
		return goal{}
	}
	quantity.Check(p, "AtHand.Stock", g.flour, leastDough, mostDough)
	return g
}

// exceeded is by how much the batch takes more of something than there is.
func (t AtHand) exceeded(b *Batch) quantity.Mass {
	var over quantity.Mass
	for _, s := range t.Stock {
		var uses quantity.Mass
		if j := b.c.item(s.Name); j != nobody {
			uses = b.mass[j]
		} else if k := b.c.node(s.Name); k != nobody {
			uses, _ = b.goesOn(k)
		}
		if more := uses.Sub(s.Mass); more.Compare(over) > 0 {
			over = more
		}
	}
	return over
}

// ByVolume asks for the dough that fills a vessel once it has risen.
//
//	dough = volume · density ÷ (1 + rise)
//
// Density is that of the dough before it rises, in kg/L (an unrisen lean dough is near
// 1.1 to 1.2 with little gas in it); Rise is the increase in volume, 100 % for double.
type ByVolume struct {
	Volume  quantity.Volume  `json:"volume"`
	Density float64          `json:"density"` // kg/L
	Rise    quantity.Percent `json:"rise"`
}

func (t ByVolume) goal(p *quantity.Problems) goal {
	ok := quantity.Check(p, "ByVolume.Volume", t.Volume, quantity.Milliliters(1), quantity.Liters(100_000))
	ok = p.Float("ByVolume.Density", t.Density, 0.1, 2, "kg/L") && ok
	ok = quantity.Check(p, "ByVolume.Rise", t.Rise, noPercent, mostOfFlour) && ok
	if !ok {
		return goal{}
	}
	m := quantity.Kilograms(t.Volume.Liters() * t.Density / (1 + t.Rise.Fraction()))
	checkMass(p, "ByVolume.Volume", m)
	return goal{dough: m}
}

func micrograms(m quantity.Mass) int64 {
	n, _ := m.Micrograms()
	return n
}

// massRatio returns m·Πnum/Πden rounded once, half to even, or an invalid mass.
func massRatio(m int64, num, den []int64) quantity.Mass {
	n, d := big.NewInt(m), big.NewInt(1)
	for _, f := range num {
		n.Mul(n, big.NewInt(f))
	}
	for _, f := range den {
		d.Mul(d, big.NewInt(f))
	}
	return ratioMass(n, d)
}

// massRatioDown is massRatio rounded down, for positive numbers.
func massRatioDown(m int64, num, den []int64) quantity.Mass {
	exact := massRatio(m, num, den)
	n, d := big.NewInt(m), big.NewInt(micrograms(exact))
	for _, f := range num {
		n.Mul(n, big.NewInt(f))
	}
	for _, f := range den {
		d.Mul(d, big.NewInt(f))
	}
	if d.Cmp(n) > 0 {
		return exact.Sub(quantity.Micrograms(1))
	}
	return exact
}

func ratioMass(n, d *big.Int) quantity.Mass {
	if d.Sign() == 0 {
		return invalidMass()
	}
	if d.Sign() < 0 {
		n, d = n.Neg(n), d.Neg(d)
	}
	q, r := new(big.Int).DivMod(n, d, new(big.Int)) // 0 ≤ r < d
	if c := r.Lsh(r, 1).Cmp(d); c > 0 || c == 0 && q.Bit(0) == 1 {
		q.Add(q, big.NewInt(1))
	}
	if !q.IsInt64() {
		return invalidMass()
	}
	return quantity.Micrograms(q.Int64())
}

func invalidMass() quantity.Mass { return quantity.Micrograms(1 << 62) }
