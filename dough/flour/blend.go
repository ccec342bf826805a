package flour

import (
	"math/big"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/enum"

	"github.com/shopspring/decimal"
)

// FlourLot is a flour of a blend. All lots of a blend stand on the same moisture basis; see [FlourBasis].
type FlourLot struct {
	Name    string           `json:"name"`
	Protein quantity.Percent `json:"protein"`
	// Share is what it has of all flour now. Two flours need none.
	Share quantity.Percent `json:"share,omitzero"`
	// Least and Most bound the new share; Most zero means 100 %.
	Least quantity.Percent `json:"least,omitzero"`
	Most  quantity.Percent `json:"most,omitzero"`
}

func (f FlourLot) most() quantity.Percent {
	if f.Most.IsZero() {
		return wholeFlour
	}
	return f.Most
}

// FlourBlend is flours that are to reach a protein together.
type FlourBlend struct {
	// Flours are 2 to 50. Their shares add up to 100 %, except that two flours without shares and bounds are blended by
	// their proteins alone.
	Flours []FlourLot       `json:"flours"`
	Target quantity.Percent `json:"target"`
	// Total is the weight of the blend; zero gives shares only.
	Total quantity.Mass `json:"total,omitzero"`
}

// ShareBound says which of its bounds holds a share.
type ShareBound int

// The bounds; the zero value is a share that none holds.
const (
	HeldAtLeast ShareBound = iota + 1
	HeldAtMost
	HeldByBoth // the bounds are one
)

var boundWords = enum.Of[ShareBound]("bound", "", "least", "most", "both")

// String names the bound: "least".
func (b ShareBound) String() string { return boundWords.String(b) }

// MarshalText implements encoding.TextMarshaler.
func (b ShareBound) MarshalText() ([]byte, error) { return boundWords.Marshal(b) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads the words that String prints, and no others.
func (b *ShareBound) UnmarshalText(text []byte) error { return boundWords.Unmarshal(b, text) }

// BlendedFlour is one flour of a blend.
type BlendedFlour struct {
	Name    string           `json:"name"`
	Protein quantity.Percent `json:"protein"`
	Share   quantity.Percent `json:"share"` // of the blend
	Mass    quantity.Mass    `json:"mass,omitzero"`
	// Change is the share less what it was before; of two flours without shares it is not set.
	Change quantity.Percent `json:"change,omitzero"`
	Held   ShareBound       `json:"held,omitzero"`
}

// BlendedFlours is the answer of [FlourBlend.Shares].
type BlendedFlours struct {
	answer

	Flours []BlendedFlour `json:"flours"`
	// Protein is that of the blend with the shares as given.
	Protein quantity.Percent `json:"protein"`
	// Feasible reports whether the bounds allow the target; otherwise the blend is the nearest that they
	// allow.
	Feasible bool `json:"feasible"`

	in      FlourBlend
	pearson bool
}

const mostFlours = 50

// Shares answers how to reach a protein with flours while changing their shares as little as possible.
//
//	minimize Σ (xᵢ − sᵢ)²  with  Σ xᵢ = 100 %,  Σ xᵢ·Pᵢ = 100 %·T,  lowᵢ ≤ xᵢ ≤ highᵢ
//
// sᵢ are the shares now, xᵢ the new ones, Pᵢ the proteins, T the target. The answer is xᵢ = sᵢ + λ
// + μ·Pᵢ, held at its bounds. Two flours without shares have one answer, the square x₁ = (T − P₂) ÷ (P₁ − P₂), and a
// target outside the two is refused. Shares are rounded to a millionth of a point by
// largest remainder, so that they add up to 100 %; the protein then agrees with the target within
// about a millionth of a point. When the bounds do not allow the target the nearest blend is the
// answer and Feasible is false. Errors: ErrRequired, ErrOutOfRange; ErrInconsistent when shares do
// not add up to 100 %, bounds cross, or two flours cannot make the target. Source: the Pearson square, Montana State
// University Extension; least squares with bounds.
func (in FlourBlend) Shares() (BlendedFlours, error) {
	var p quantity.Problems
	if n := len(in.Flours); n == 0 {
		p.Required("Flours", quantity.Tell("flour.want_2_to_50_flours_protein", "2 to 50 flours with protein and share"))
	} else if n == 1 || n > mostFlours {
		p.Add("Flours", quantity.Tell("flour.got_flours", "%d flours", n), quantity.Tell("flour.want_2_to_50", "2 to 50"),
			quantity.ErrOutOfRange)
		return BlendedFlours{}, p.ErrFor(in)
	}
	in.Flours = append([]FlourLot(nil), in.Flours...)
	if in.ofTwo() {
		return in.square(&p)
	}
	quantity.Check(&p, "Target", in.Target, quantity.Percent{}, wholeFlour)
	quantity.Check(&p, "Total", in.Total, quantity.Mass{}, mostDough)
	s := in.check(&p)
	if err := p.ErrFor(in); err != nil {
		return BlendedFlours{}, err
	}
	x := s.solve(in.Target.Points())
	r := BlendedFlours{Feasible: s.feasible, in: in}
	shares := roundShares(x)
	masses, err := quantity.Apportion(in.Total, shares)
	if err != nil {
		return BlendedFlours{}, err
	}
	for i, f := range in.Flours {
		b := BlendedFlour{
			Name:    f.Name,
			Protein: f.Protein,
			Share:   shares[i],
			Mass:    masses[i],
			Change:  shares[i].Sub(f.Share),
		}
		switch {
		case f.Least == f.most():
			b.Held = HeldByBoth
		case x[i] <= s.low[i]:
			b.Held = HeldAtLeast
		case x[i] >= s.high[i]:
			b.Held = HeldAtMost
		}
		r.Flours = append(r.Flours, b)
	}
	r.Protein, err = proteinOf(shares, in.Flours)
	return r, err
}

// ofTwo reports whether the proteins alone decide.
func (in FlourBlend) ofTwo() bool {
	if len(in.Flours) != 2 {
		return false
	}
	for _, f := range in.Flours {
		if !f.Share.IsZero() || !f.Least.IsZero() || !f.Most.IsZero() {
			return false
		}
	}
	return true
}

// check notes what is wrong with the flours and gathers them for the solver.
func (in FlourBlend) check(p *quantity.Problems) *blendSolver {
	s := &blendSolver{}
	var now, least, most quantity.Percent
	for i, f := range in.Flours {
		path := at("Flours", i)
		f.Most = f.most()
		quantity.Check(p, path+".Protein", f.Protein, quantity.Percent{}, wholeFlour)
		quantity.Check(p, path+".Share", f.Share, quantity.Percent{}, wholeFlour)
		ok := quantity.Check(p, path+".Least", f.Least, quantity.Percent{}, wholeFlour)
		ok = quantity.Check(p, path+".Most", f.Most, quantity.Percent{}, wholeFlour) && ok
		if ok && f.Least.Compare(f.Most) > 0 {
			p.Add(path+".Least", f.Least, quantity.Tell("flour.want_at_most_most", "at most the most, %v", f.Most),
				quantity.ErrInconsistent)
		}
		now, least, most = now.Add(f.Share), least.Add(f.Least), most.Add(f.Most)
		s.add(f)
	}
	if p.Err() == nil {
		if now != wholeFlour {
			p.Add("Flours", quantity.Tell("flour.got_shares_adding_up_to", "shares adding up to %v", now),
				quantity.Tell("flour.want_shares_adding_up_to_100", "shares adding up to 100 %%"), quantity.ErrInconsistent)
		}
		if least.Compare(wholeFlour) > 0 || most.Compare(wholeFlour) < 0 {
			p.Add("Flours", quantity.Tell("flour.got_bounds_allow_to", "bounds that allow %v to %v", least, most),
				quantity.Tell("flour.want_bounds_allow_100_percent", "bounds that allow 100 %%"),
				quantity.ErrInconsistent)
		}
	}
	return s
}

// square blends two flours by their proteins.
func (in FlourBlend) square(p *quantity.Problems) (BlendedFlours, error) {
	a, b := in.Flours[0].Protein, in.Flours[1].Protein
	ok := quantity.Check(p, "Flours[0].Protein", a, quantity.Percent{}, wholeFlour)
	ok = quantity.Check(p, "Flours[1].Protein", b, quantity.Percent{}, wholeFlour) && ok
	ok = quantity.Check(p, "Target", in.Target, quantity.Percent{}, wholeFlour) && ok
	quantity.Check(p, "Total", in.Total, quantity.Mass{}, mostDough)
	if ok {
		low, high := a, b
		if low.Compare(high) > 0 {
			low, high = high, low
		}
		switch {
		case low == high:
			p.Add("Flours[1].Protein", b, quantity.Tell("flour.want_another_protein_than_first_flours",
				"another protein than the first flour's"), quantity.ErrInconsistent)
		case in.Target.Compare(low) < 0 || in.Target.Compare(high) > 0:
			p.Add("Target", in.Target, quantity.Tell("flour.want_to_between_two_flours", "%v to %v, between the two flours",
				low, high),
				quantity.ErrInconsistent)
		}
	}
	if err := p.ErrFor(in); err != nil {
		return BlendedFlours{}, err
	}
	partA, partB := in.Target.Sub(b), a.Sub(in.Target)
	if partA.Sign() < 0 || partB.Sign() < 0 {
		partA, partB = partA.Neg(), partB.Neg()
	}
	shareA := partA.Over(partA.Add(partB))
	masses, err := quantity.Apportion(in.Total, []quantity.Percent{partA, partB})
	if err != nil {
		return BlendedFlours{}, err
	}
	return BlendedFlours{Feasible: true, in: in, pearson: true, Protein: in.Target, Flours: []BlendedFlour{
		{Name: in.Flours[0].Name, Protein: a, Share: shareA, Mass: masses[0]},
		{Name: in.Flours[1].Name, Protein: b, Share: wholeFlour.Sub(shareA), Mass: masses[1]},
	}}, nil
}

// Protein answers what protein the flours have together at the shares that they have now.
//
//	P = Σ sᵢ·Pᵢ
//
// It is the inverse of [FlourBlend.Shares]. Exact but for one rounding, half to even, to a millionth of a point.
// Errors:
// ErrRequired, ErrOutOfRange; ErrInconsistent when the shares do not add up to 100 %. Source: weighted mean.
func (in FlourBlend) Protein() (quantity.Percent, error) {
	var p quantity.Problems
	if len(in.Flours) == 0 {
		p.Required("Flours", quantity.Tell("flour.want_at_least_one_flour_protein",
			"at least one flour with protein and share"))
	}
	if n := len(in.Flours); n > mostFlours {
		p.Add("Flours", quantity.Tell("flour.got_flours", "%d flours", n), quantity.Tell("flour.want_1_to_50", "1 to 50"),
			quantity.ErrOutOfRange)
		return quantity.Percent{}, p.ErrFor(in)
	}
	in.check(&p)
	if err := p.ErrFor(in); err != nil {
		return quantity.Percent{}, err
	}
	shares := make([]quantity.Percent, len(in.Flours))
	for i, f := range in.Flours {
		shares[i] = f.Share
	}
	return proteinOf(shares, in.Flours)
}

// proteinOf is the weighted mean of the proteins.
func proteinOf(shares []quantity.Percent, flours []FlourLot) (quantity.Percent, error) {
	sum := new(big.Int)
	for i, f := range flours {
		a, _ := shares[i].Millionths()
		q, _ := f.Protein.Millionths()
		sum.Add(sum, new(big.Int).Mul(big.NewInt(a), big.NewInt(q)))
	}
	return quantity.PercentOfDecimal(decimal.NewFromBigInt(divideHalfEven(sum, big.NewInt(one)), -6))
}

// divideHalfEven is n ÷ d for d > 0 and n ≥ 0, rounded half to even.
func divideHalfEven(n, d *big.Int) *big.Int {
	q, r := new(big.Int).QuoRem(n, d, new(big.Int))
	if c := r.Lsh(r, 1).Cmp(d); c > 0 || c == 0 && q.Bit(0) == 1 {
		q.Add(q, big.NewInt(1))
	}
	return q
}
