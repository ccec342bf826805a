package ferment

import (
	"math"

	"example.org/maslin/dough/quantity"
)

// Proof is a dough that goes on fermenting after shaping: bench rest, retard, warm-up.
type Proof struct {
	// Bulk is the dough; its Rise is not used, it is what is asked for.
	Bulk Bulk `json:"bulk"`
	// Then is the temperature from shaping on, starting at the temperature the dough has when shaped; ThenFor is how long until
	// it is baked.
	Then    History          `json:"then"`
	ThenFor quantity.Elapsed `json:"then_for"`
	// Total is the rise wanted when it goes into the oven, counted over everything as if nothing were lost in shaping.
	Total quantity.Percent `json:"total"`
}

// ShapeTarget is how far a dough may rise before it is shaped.
type ShapeTarget struct {
	// Rise is the rise at which to shape; zero and not Feasible when even unrisen dough would go beyond the total.
	Rise     quantity.Percent
	Feasible bool
	// Unrisen is how far the dough would rise after shaping if it were shaped at once.
	Unrisen quantity.Percent
	// After is the band of the total when shaped at that rise: the dough's own pace is then known only through
	// what is known of the culture.
	After Band

	proof Proof
	after node // what the dough receives from shaping to the oven
	f     fermentation
}

// RiseBeforeShaping answers: how far may the dough rise before shaping, so that what follows brings it to the wanted total?
//
//	1 + K·R₁/(f·s) = (1 + K·R/(f·s))·exp(−p·M₂)
//
// R₁ is the rise at shaping, R the total, M₂ the dose from shaping to the oven, the other symbols as in [Bulk.Estimate]. Accuracy: the
// likely value; After gives the band of 80 % about the total. Errors: as [Bulk.Estimate]; ErrOutOfRange for ThenFor outside 0 to 30 days.
// Source: the growth law of [Bulk.Estimate], solved for the rise.
func (p Proof) RiseBeforeShaping() (ShapeTarget, error) {
	b := p.Bulk
	b.Rise = p.Total
	f, err := b.check(true)
	var faults problems
	for _, e := range quantity.InputErrors(err) {
		path := "Bulk." + e.GoPath
		if e.GoPath == "Rise" {
			path = "Total"
		}
		faults.Add(path, e.Got, e.Want, e.Err)
	}
	if p.Then.IsZero() {
		faults.Required("Then", "a temperature history between −25 and 60 °C")
	}
	faults.Duration("ThenFor", p.ThenFor.Duration(), 0, Horizon)
	if err := faults.Err(); err != nil {
		return ShapeTarget{}, err
	}
	n := f.afterShaping(b.History, p.Then, hours(p.ThenFor.Duration()))
	if err := sane(n.dose); err != nil {
		return ShapeTarget{}, err
	}
	if err := withinCurve(b, p.Then, hours(p.ThenFor.Duration()), "Then"); err != nil {
		return ShapeTarget{}, err
	}
	t := ShapeTarget{proof: p, after: n, f: f}
	m2 := 0.0
	if n.dose > 0 {
		m2 = math.Exp(f.expected(n.dose, n.mean()))
	}
	k := math.Exp(f.out.a) / f.share
	a1 := math.Exp(math.Log1p(k*f.target)-m2) - 1
	t.Unrisen = percent(math.Expm1(m2) / k)
	t.Feasible = a1 > 0
	r1 := 0.0
	if t.Feasible {
		r1 = a1 / k
		t.Rise = percent(r1)
	}
	// The band of the total when R₁ is seen, not predicted: R = ((1 + k·R₁)·exp(m₂) − 1)/k over a and b.
	total := func(a, m float64) float64 {
		k := math.Exp(a) / f.share
		return ((1+k*r1)*math.Exp(m) - 1) / k
	}
	r := total(f.out.a, m2)
	const step = 1e-4
	da := (total(f.out.a+step, m2) - total(f.out.a-step, m2)) / (2 * step) / r
	db := (total(f.out.a, m2*math.Exp(step)) - total(f.out.a, m2*math.Exp(-step))) / (2 * step) / r
	v := da*da*f.out.aa + db*db*f.paceVariance(n.mean()) + 2*da*db*f.together(n.mean())
	s := math.Exp(f.out.spread(v/math.Max(db*db, 1e-9)) * math.Sqrt(v))
	t.After = Band{percent(r / s), percent(r), percent(r * s)}
	return t, nil
}

// ShapeAt is when the dough reaches the rise at which to shape. Errors: as [Proof.RiseBeforeShaping]; ErrInconsistent when no rise
// is left for the bulk.
func (p Proof) ShapeAt() (Estimate, error) {
	t, err := p.RiseBeforeShaping()
	if err != nil {
		return Estimate{}, err
	}
	b := p.Bulk
	b.Rise = t.Rise
	if !t.Feasible || t.Rise.Compare(leastRise) < 0 {
		var faults problems
		faults.Add("Total", p.Total.String(), "more than the "+t.Unrisen.Text(0)+" that follow shaping", quantity.ErrInconsistent)
		return Estimate{}, faults.Err()
	}
	return b.Estimate()
}

// String prints "shape at 35 %, for the oven at 59 % to 95 %, likely 75 % (80 %)".
func (t ShapeTarget) String() string {
	if !t.Feasible {
		return "even unrisen dough would rise " + t.Unrisen.Text(0) + " after shaping: shorten or cool what follows"
	}
	return "shape at " + t.Rise.Text(0) + ", for the oven at " + t.After.String() + " (80 %)"
}

// afterShaping is what the dough receives from shaping on. With levain and yeast together it depends on how far each has come by then,
// and that on the rise at which it is shaped: the two are brought to agree.
func (f *fermentation) afterShaping(bulk, then History, until float64) node {
	if f.second == nil {
		return f.through(then, until)
	}
	var after node
	shaped := node{}
	k := f.amplitude / f.share
	for range 20 {
		end := f.follow(shaped, then, until)
		before := after.dose
		after = node{knot: end.knot, dose: end.dose - shaped.dose, heat: end.heat - shaped.heat}
		if !(after.dose > 0) || math.Abs(after.dose-before) < 1e-7 {
			break
		}
		left := math.Expm1(math.Log1p(k*f.target)-math.Exp(f.expected(after.dose, after.mean()))) / k
		if !(left > 0) {
			break
		}
		h, sens := f.need(left)
		_, times := f.walk(bulk, h, sens)
		shaped = f.through(bulk, math.Min(times[1], hours(Horizon)))
	}
	return after
}

// through is the node at the end of a stretch of a history.
func (f *fermentation) through(h History, until float64) node { return f.follow(node{}, h, until) }

// follow goes on from a node along a history of its own.
func (f *fermentation) follow(n node, h History, until float64) node {
	n.knot = knot{0, h.celsius(0)}
	h.segments(0, until, func(a, b knot) {
		n.c = a.c
		n = f.step(n, b)
	})
	return n
}

// withinCurve refuses a history that leaves the curve's range, unless extrapolating.
func withinCurve(b Bulk, h History, until float64, path string) error {
	if b.Extrapolate {
		return nil
	}
	about := b.bounds()
	lo := h.celsius(0)
	hi := lo
	h.segments(0, until, func(p, q knot) {
		lo, hi = min(lo, p.c, q.c), max(hi, p.c, q.c)
	})
	const rounding = 1e-6
	if lo >= about.Low-rounding && hi <= about.High+rounding {
		return nil
	}
	var p problems
	p.Add(path, fixed(lo, 1)+" to "+fixed(hi, 1)+" °C", fixed(about.Low, 0)+" to "+fixed(about.High, 0)+" °C for the curve "+about.Name+", or Extrapolate", quantity.ErrModelRange)
	return p.Err()
}
