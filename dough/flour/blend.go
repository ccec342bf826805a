package flour

import (
	"math"
	"math/big"
	"slices"
	"sort"
	"strconv"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"

	"github.com/shopspring/decimal"
)

// FlourLot is a flour with its protein. All lots of a blend stand on the same moisture basis; see
// [ConvertBasis].
type FlourLot struct {
	Name    string
	Protein quantity.Percent
}

// TwoFlours is the input of [PearsonSquare].
type TwoFlours struct {
	A, B   FlourLot
	Target quantity.Percent
	// Total is the weight of the blend; zero gives shares only.
	Total quantity.Mass
}

// BlendedFlour is one flour of a blend.
type BlendedFlour struct {
	Name    string
	Protein quantity.Percent
	Share   quantity.Percent // of the blend
	Mass    quantity.Mass
	// Change is the share less what it was before; of a two-flour blend it is not set.
	Change quantity.Percent
	// Held is "least" or "most" when a bound holds the share, "both" when the bounds are one.
	Held string
}

// FlourBlend is the answer of [PearsonSquare] and [BlendFlours].
type FlourBlend struct {
	Flours []BlendedFlour
	// Protein is that of the blend with the shares as printed.
	Protein quantity.Percent
	// Feasible reports whether the bounds allow the target; otherwise the blend is the nearest that they
	// allow.
	Feasible bool

	target     quantity.Percent
	before     []quantity.Percent
	lambda, mu float64
	pearson    bool
}

// PearsonSquare answers in which proportion two flours give a protein target.
//
//	share_A = (T − P_B) ÷ (P_A − P_B);  share_B = (P_A − T) ÷ (P_A − P_B)
//
// P are the proteins, T the target, all on the same moisture basis. The weights add up to the total
// to the microgram. Protein 0 to 100 %. A target outside the two cannot be blended and is refused.
// Errors: ErrOutOfRange; ErrInconsistent for equal flours or a target outside. Source: the Pearson
// square, Montana State University Extension.
func PearsonSquare(in TwoFlours) (FlourBlend, error) {
	var p quantity.Problems
	a, b := in.A.Protein, in.B.Protein
	ok := quantity.Check(&p, "A.Protein", a, quantity.Percent{}, wholeFlour)
	ok = quantity.Check(&p, "B.Protein", b, quantity.Percent{}, wholeFlour) && ok
	ok = quantity.Check(&p, "Target", in.Target, quantity.Percent{}, wholeFlour) && ok
	quantity.Check(&p, "Total", in.Total, quantity.Mass{}, mostDough)
	if ok {
		low, high := a, b
		if low.Compare(high) > 0 {
			low, high = high, low
		}
		switch {
		case low == high:
			p.Add("B.Protein", b.String(), "another protein than the first flour's", quantity.ErrInconsistent)
		case in.Target.Compare(low) < 0 || in.Target.Compare(high) > 0:
			p.Add("Target", in.Target.String(), low.String()+" to "+high.String()+", between the two flours", quantity.ErrInconsistent)
		}
	}
	if err := p.Err(); err != nil {
		return FlourBlend{}, err
	}
	partA, partB := in.Target.Sub(b), a.Sub(in.Target)
	if partA.Sign() < 0 || partB.Sign() < 0 {
		partA, partB = partA.Neg(), partB.Neg()
	}
	shareA := partA.Over(partA.Add(partB))
	masses, err := quantity.Apportion(in.Total, []quantity.Percent{partA, partB})
	if err != nil {
		return FlourBlend{}, err
	}
	r := FlourBlend{Feasible: true, target: in.Target, pearson: true, Protein: in.Target, Flours: []BlendedFlour{
		{Name: in.A.Name, Protein: a, Share: shareA, Mass: masses[0]},
		{Name: in.B.Name, Protein: b, Share: wholeFlour.Sub(shareA), Mass: masses[1]},
	}}
	return r, nil
}

// WeighedFlour is a flour with its protein and its weight.
type WeighedFlour struct {
	FlourLot
	Mass quantity.Mass
}

// BlendProtein answers what protein a blend of weighed flours has.
//
//	P = Σ mᵢ·Pᵢ ÷ Σ mᵢ
//
// It is the inverse of [PearsonSquare] and [BlendFlours]. 1 to 50 flours; exact but for one
// rounding, half to even, to a millionth of a point. Errors: ErrRequired, ErrOutOfRange. Source:
// weighted mean.
func BlendProtein(flours []WeighedFlour) (quantity.Percent, error) {
	var p quantity.Problems
	if len(flours) == 0 {
		p.Required("flours", "at least one flour with its weight")
	}
	if len(flours) > mostFlours {
		p.Add("flours", strconv.Itoa(len(flours))+" flours", "1 to 50", quantity.ErrOutOfRange)
		return quantity.Percent{}, p.Err()
	}
	sum, total := new(big.Int), new(big.Int)
	for i, f := range flours {
		ok := quantity.Check(&p, at("flours", i)+".Protein", f.Protein, quantity.Percent{}, wholeFlour)
		ok = quantity.Check(&p, at("flours", i)+".Mass", f.Mass, quantity.Mass{}, mostDough) && ok
		if ok {
			m, _ := f.Mass.Micrograms()
			q, _ := f.Protein.Millionths()
			sum.Add(sum, new(big.Int).Mul(big.NewInt(m), big.NewInt(q)))
			total.Add(total, big.NewInt(m))
		}
	}
	if p.Err() == nil && total.Sign() == 0 {
		p.Add("flours", "no weight", "at least one flour above 0 g", quantity.ErrOutOfRange)
	}
	if err := p.Err(); err != nil {
		return quantity.Percent{}, err
	}
	return quantity.PercentOfDecimal(decimal.NewFromBigInt(divideHalfEven(sum, total), -6))
}

// divideHalfEven is n ÷ d for d > 0 and n ≥ 0, rounded half to even.
func divideHalfEven(n, d *big.Int) *big.Int {
	q, r := new(big.Int).QuoRem(n, d, new(big.Int))
	if c := r.Lsh(r, 1).Cmp(d); c > 0 || c == 0 && q.Bit(0) == 1 {
		q.Add(q, big.NewInt(1))
	}
	return q
}

const mostFlours = 50

// FlourShare is a flour with the share it has now and the bounds it must keep.
type FlourShare struct {
	FlourLot
	Share quantity.Percent // now, of all flour
	// Least and Most bound the new share; Most zero means 100 %.
	Least, Most quantity.Percent
}

func (f FlourShare) most() quantity.Percent {
	if f.Most.IsZero() {
		return wholeFlour
	}
	return f.Most
}

// BlendGoal is the input of [BlendFlours].
type BlendGoal struct {
	Flours []FlourShare // their shares add up to 100 %
	Target quantity.Percent
	Total  quantity.Mass // zero gives shares only
}

// BlendFlours answers how to reach a protein target with several flours while changing the shares
// as little as possible.
//
//	minimize Σ (xᵢ − sᵢ)²  with  Σ xᵢ = 100 %,  Σ xᵢ·Pᵢ = 100 %·T,  lowᵢ ≤ xᵢ ≤ highᵢ
//
// sᵢ are the shares now, xᵢ the new ones, Pᵢ the proteins, T the target. The answer is xᵢ = sᵢ + λ
// + μ·Pᵢ, held at its bounds. 2 to 50 flours. Shares are rounded to a millionth of a point by
// largest remainder, so that they add up to 100 %; the protein then agrees with the target within
// about a millionth of a point. When the bounds do not allow the target the nearest blend is the
// answer and Feasible is false. Errors: ErrRequired, ErrOutOfRange; ErrInconsistent when shares do
// not add up to 100 % or bounds cross. Source: least squares with bounds.
func BlendFlours(in BlendGoal) (FlourBlend, error) {
	var p quantity.Problems
	n := len(in.Flours)
	if n == 0 {
		p.Required("Flours", "2 to 50 flours with protein and share")
	} else if n == 1 || n > mostFlours {
		p.Add("Flours", strconv.Itoa(n)+" flours", "2 to 50", quantity.ErrOutOfRange)
		return FlourBlend{}, p.Err()
	}
	quantity.Check(&p, "Target", in.Target, quantity.Percent{}, wholeFlour)
	quantity.Check(&p, "Total", in.Total, quantity.Mass{}, mostDough)
	s := blendSolver{}
	var now, least, most quantity.Percent
	for i, f := range in.Flours {
		path := at("Flours", i)
		f.Most = f.most()
		quantity.Check(&p, path+".Protein", f.Protein, quantity.Percent{}, wholeFlour)
		quantity.Check(&p, path+".Share", f.Share, quantity.Percent{}, wholeFlour)
		ok := quantity.Check(&p, path+".Least", f.Least, quantity.Percent{}, wholeFlour)
		ok = quantity.Check(&p, path+".Most", f.Most, quantity.Percent{}, wholeFlour) && ok
		if ok && f.Least.Compare(f.Most) > 0 {
			p.Add(path+".Least", f.Least.String(), "at most Most, "+f.Most.String(), quantity.ErrInconsistent)
		}
		now, least, most = now.Add(f.Share), least.Add(f.Least), most.Add(f.Most)
		s.add(f)
	}
	if p.Err() == nil {
		if now != wholeFlour {
			p.Add("Flours", "shares adding up to "+now.String(), "shares adding up to 100 %", quantity.ErrInconsistent)
		}
		if least.Compare(wholeFlour) > 0 || most.Compare(wholeFlour) < 0 {
			p.Add("Flours", "bounds that allow "+least.String()+" to "+most.String(), "bounds that allow 100 %", quantity.ErrInconsistent)
		}
	}
	if err := p.Err(); err != nil {
		return FlourBlend{}, err
	}
	r := FlourBlend{target: in.Target}
	x := s.solve(in.Target.Points())
	r.Feasible, r.lambda, r.mu = s.feasible, s.lambda, s.mu
	shares := roundShares(x)
	masses, err := quantity.Apportion(in.Total, shares)
	if err != nil {
		return FlourBlend{}, err
	}
	sum := new(big.Int)
	for i, f := range in.Flours {
		b := BlendedFlour{Name: f.Name, Protein: f.Protein, Share: shares[i], Mass: masses[i], Change: shares[i].Sub(f.Share)}
		switch {
		case f.Least == f.most():
			b.Held = "both"
		case s.free(i):
		case x[i] <= s.low[i]:
			b.Held = "least"
		case x[i] >= s.high[i]:
			b.Held = "most"
		}
		a, _ := shares[i].Millionths()
		q, _ := f.Protein.Millionths()
		sum.Add(sum, new(big.Int).Mul(big.NewInt(a), big.NewInt(q)))
		r.Flours = append(r.Flours, b)
		r.before = append(r.before, f.Share)
	}
	r.Protein, err = quantity.PercentOfDecimal(decimal.NewFromBigInt(divideHalfEven(sum, big.NewInt(one)), -6))
	return r, err
}

// blendSolver finds x = clip(s + λ + μ·(p − mean)) by bisection for μ, with the λ that belongs to
// it: the protein only grows with μ, and the sum with λ. Shares are in points, 0 to 100.
type blendSolver struct {
	p, s, low, high []float64
	lambda, mu      float64 // for p itself, not p − mean
	feasible        bool
}

func (b *blendSolver) add(f FlourShare) {
	b.p, b.s = append(b.p, f.Protein.Points()), append(b.s, f.Share.Points())
	b.low, b.high = append(b.low, f.Least.Points()), append(b.high, f.Most.Points())
}

func (b *blendSolver) free(i int) bool {
	x := b.s[i] + b.lambda + b.mu*b.p[i]
	return b.feasible && x > b.low[i] && x < b.high[i]
}

func (b *blendSolver) solve(target float64) []float64 {
	const whole = 100.0
	mean, spread := 0.0, 0.0
	for _, p := range b.p {
		mean += p / float64(len(b.p))
	}
	for _, p := range b.p {
		spread = math.Max(spread, math.Abs(p-mean))
	}
	least, most := b.extreme(-1), b.extreme(1)
	protein := func(x []float64) float64 {
		sum := 0.0
		for i := range x {
			sum += x[i] * b.p[i]
		}
		return sum / whole
	}
	lowest, highest := protein(least), protein(most)
	const slack = 1e-9
	switch {
	case target < lowest-slack:
		return least
	case target > highest+slack:
		return most
	}
	b.feasible = true
	x := make([]float64, len(b.s))
	breaks := make([]float64, 0, 2*len(x))
	// at fills x for a μ and returns the λ that makes the shares a whole. Their sum grows with λ
	// along straight lines between the points where a share meets a bound.
	at := func(mu float64) (lambda float64) {
		fill := func(l float64) float64 {
			sum := 0.0
			for i := range x {
				x[i] = math.Min(math.Max(b.s[i]+l+mu*(b.p[i]-mean), b.low[i]), b.high[i])
				sum += x[i]
			}
			return sum
		}
		breaks = breaks[:0]
		for i := range x {
			a := b.s[i] + mu*(b.p[i]-mean)
			breaks = append(breaks, b.low[i]-a, b.high[i]-a)
		}
		slices.Sort(breaks)
		k := sort.Search(len(breaks), func(k int) bool { return fill(breaks[k]) >= whole })
		if k == 0 || k == len(breaks) {
			lambda = breaks[min(k, len(breaks)-1)]
			fill(lambda)
			return lambda
		}
		lo, hi := fill(breaks[k-1]), fill(breaks[k])
		lambda = breaks[k-1] + (whole-lo)/(hi-lo)*(breaks[k]-breaks[k-1])
		fill(lambda)
		return lambda
	}
	if spread == 0 {
		b.lambda = at(0)
		return x
	}
	// Differences of protein down to a millionth of a point can decide: μ may be large.
	lo, hi := -1.0, 1.0
	for at(lo); protein(x) > target && lo > -1e12; at(lo) {
		lo *= 4
	}
	for at(hi); protein(x) < target && hi < 1e12; at(hi) {
		hi *= 4
	}
	for range 200 {
		mid := lo + (hi-lo)/2
		if mid == lo || mid == hi {
			break
		}
		at(mid)
		p := protein(x)
		if math.Abs(p-target) < 1e-13 {
			hi = mid
			break
		}
		if p < target {
			lo = mid
		} else {
			hi = mid
		}
	}
	b.mu = hi
	b.lambda = at(hi) - hi*mean
	return x
}

// extreme is the blend with the least (sign −1) or most (+1) protein that the bounds allow.
func (b *blendSolver) extreme(sign float64) []float64 {
	x := append([]float64(nil), b.low...)
	left := 100.0
	for _, v := range x {
		left -= v
	}
	used := make([]bool, len(x))
	for range x {
		best := -1
		for i := range x {
			if !used[i] && (best < 0 || sign*b.p[i] > sign*b.p[best]) {
				best = i
			}
		}
		used[best] = true
		more := math.Min(left, b.high[best]-x[best])
		x[best] += more
		left -= more
	}
	return x
}

// roundShares rounds points to millionths so that they add up to 100 %, by largest remainder.
func roundShares(x []float64) []quantity.Percent {
	units := make([]int64, len(x))
	rest := make([]float64, len(x))
	left := int64(one)
	for i, v := range x {
		q := v * 1e6
		f := math.Floor(q + 1e-3) // a value a hair below a whole unit is that unit
		units[i], rest[i] = int64(f), q-f
		left -= units[i]
	}
	for ; left > 0; left-- {
		best := 0
		for i := range rest {
			if rest[i] > rest[best] {
				best = i
			}
		}
		units[best]++
		rest[best] -= 1
	}
	for ; left < 0; left++ {
		best := 0
		for i := range rest {
			if units[i] > 0 && (units[best] == 0 || rest[i] < rest[best]) {
				best = i
			}
		}
		units[best]--
		rest[best]++
	}
	out := make([]quantity.Percent, len(x))
	for i, u := range units {
		out[i], _ = quantity.PercentOfDecimal(decimal.New(u, -6))
	}
	return out
}

// String lists the shares.
func (r FlourBlend) String() string {
	if len(r.Flours) == 0 {
		return "no blend"
	}
	text := ""
	for i, f := range r.Flours {
		if i > 0 {
			text += ", "
		}
		text += f.Share.Text(2) + " " + shortName(f.Name, "flour "+strconv.Itoa(i+1))
		if !f.Mass.IsZero() {
			text += " (" + f.Mass.Text(quantity.Gram, 0) + ")"
		}
	}
	text += ": " + r.Protein.Text(2) + " protein"
	if !r.Feasible {
		text += ", the nearest to " + r.target.String() + " that the bounds allow"
	}
	return text
}

// Working derives the shares and checks the protein of the blend.
func (r FlourBlend) Working() working.Working {
	w := working.Working{Title: "Flour blend"}
	check := working.Step{Name: "protein of the blend", Symbol: "P", Value: r.Protein.Text(4), Source: sources.GlutenAlgebra, Tolerance: 2e-6}
	if len(r.Flours) == 0 {
		return w
	}
	for i, f := range r.Flours {
		n := strconv.Itoa(i + 1)
		name := shortName(f.Name, "flour "+n)
		s := working.Step{Name: "share of " + name, Symbol: "x_" + n, Value: f.Share.String(), Source: sources.LeastChange}
		switch {
		case r.pearson:
			other := r.Flours[1-i]
			m := strconv.Itoa(2 - i)
			s.Formula = "100 × (T − P_" + m + ") ÷ (P_" + n + " − P_" + m + ")"
			s.Numbers = "100 × (" + points(r.target) + " − " + points(other.Protein) +
				") ÷ (" + points(f.Protein) + " − " + points(other.Protein) + ")"
			s.Where = []working.Binding{
				{Symbol: "T", Meaning: "protein wanted", Value: r.target.String()},
				{Symbol: "P_" + m, Meaning: "protein of " + shortName(other.Name, "flour "+m), Value: other.Protein.String()},
				{Symbol: "P_" + n, Meaning: "protein of " + name, Value: f.Protein.String()},
			}
			s.Source, s.Tolerance = sources.PearsonMSU, 1e-6
		case !r.Feasible || f.Held != "":
			s.Note = "held by its bounds"
			if !r.Feasible {
				s.Note = "as near as the bounds allow"
			}
		default:
			s.Formula = "s_" + n + " + λ + μ × P_" + n
			s.Numbers = points(r.before[i]) + " + " + inLine(r.lambda, 9) + " + " + inLine(r.mu, 9) + " × " + points(f.Protein)
			s.Where = []working.Binding{
				{Symbol: "s_" + n, Meaning: "share before", Value: r.before[i].String()},
				{Symbol: "λ", Meaning: "the same for every flour, so that shares add up to 100 %", Value: decimals(r.lambda, 9) + " %"},
				{Symbol: "μ", Meaning: "the same for every flour, so that the protein is met", Value: decimals(r.mu, 9) + " (no unit)"},
				{Symbol: "P_" + n, Meaning: "protein of " + name, Value: f.Protein.String()},
			}
			s.Tolerance = 2e-6 + 1e-9*f.Protein.Points() + 1e-9
			s.Note = "rounded to a millionth of a point by largest remainder"
			if math.Abs(r.mu) > 1e5 {
				s.Formula, s.Numbers, s.Where, s.Note = "", "", nil, "proteins lie too near each other to print the line"
			}
		}
		w.Steps = append(w.Steps, s)
		if i > 0 {
			check.Formula += " + "
			check.Numbers += " + "
		}
		check.Formula += "x_" + n + " × P_" + n
		check.Numbers += points(f.Share) + " × " + points(f.Protein)
		check.Where = append(check.Where, working.Binding{Symbol: "P_" + n, Meaning: "protein of " + name, Value: f.Protein.String()})
	}
	check.Formula, check.Numbers = "("+check.Formula+") ÷ 100", "("+check.Numbers+") ÷ 100"
	w.Steps = append(w.Steps, check)
	return w
}
