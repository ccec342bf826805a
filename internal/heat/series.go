package heat

import (
	"math"

	"example.org/maslin/internal/numeric"
)

// Shape is one of the three bodies in which heat flows along one coordinate.
type Shape int

// The three shapes. The half thickness or radius is the length in the Biot and Fourier numbers.
const (
	Slab Shape = iota
	Cylinder
	Sphere
)

// String names the shape.
func (s Shape) String() string {
	switch s {
	case Slab:
		return "slab"
	case Cylinder:
		return "cylinder"
	case Sphere:
		return "sphere"
	}
	return "unknown shape"
}

// terms is how many eigenvalues a series keeps. From Fo = 2.5e-4 on the first omitted term is below
// 1e-16; before that the omitted tail is estimated.
const terms = 128

// Term is one term of a series: θ = Σ Coefficient·exp(−Eigenvalue²·Fo)·shape(Eigenvalue·x).
type Term struct {
	Eigenvalue  float64
	Coefficient float64
	MeanFactor  float64 // the mean of the shape over the volume
}

// Series is the solution for one shape and Biot number, set up once and then evaluated quickly. It is
// read-only after [NewSeries] and safe for concurrent use.
type Series struct {
	shape Shape
	biot  float64
	term  []Term
	tail  float64 // what the omitted terms add to the mean at Fo = 0
	steep bool    // the omitted mean terms fall as z⁻² (Bi beyond the last eigenvalue), not z⁻⁴
}

// NewSeries finds the eigenvalues and coefficients for a shape and a Biot number h·R/k. An infinite Biot
// number is a surface held at the temperature of the surroundings.
//
// Formula (z the eigenvalue, C the coefficient):
//
//	slab      z·tan z = Bi              C = 4 sin z/(2z + sin 2z)                shape cos(z·x)
//	cylinder  z·J1(z)/J0(z) = Bi        C = (2/z)·J1(z)/(J0(z)² + J1(z)²)        shape J0(z·x)
//	sphere    1 − z·cot z = Bi          C = 4(sin z − z cos z)/(2z − sin 2z)     shape sin(z·x)/(z·x)
//
// Valid range: 1e-6 ≤ Bi ≤ 1e6, or +Inf. Accuracy: eigenvalues to 1e-14. Errors: [quantity.ErrOutOfRange].
//
// Source: Çengel, Heat and Mass Transfer, chapter 4; Carslaw and Jaeger, Conduction of Heat in Solids
// (1959).
func NewSeries(shape Shape, biot float64) (*Series, error) { return newSeries(shape, biot, terms) }

// newSeries keeps so many terms.
func newSeries(shape Shape, biot float64, kept int) (*Series, error) {
	if err := checkBiot(biot); err != nil {
		return nil, err
	}
	s := &Series{shape: shape, biot: biot, term: make([]Term, kept)}
	sum := 0.0
	before := 0.0
	for n := range s.term {
		z, err := eigenvalue(shape, biot, n, before)
		if err != nil {
			return nil, err
		}
		before = z
		if math.IsInf(biot, 1) {
			s.term[n] = fixedSurfaceTerm(shape, z, n)
		} else {
			s.term[n] = term(shape, z)
		}
		sum += s.term[n].Coefficient * s.term[n].MeanFactor
	}
	s.tail = max(0, 1-sum)
	s.steep = biot > s.term[len(s.term)-1].Eigenvalue
	return s, nil
}

func checkBiot(biot float64) error {
	if !within(biot, 1e-6, 1e6) && !math.IsInf(biot, 1) {
		return outOfRange("Biot number", biot, 1e-6, 1e6, "")
	}
	return nil
}

func term(shape Shape, z float64) Term {
	sin, cos := math.Sincos(z)
	switch shape {
	case Slab:
		return Term{z, 4 * sin / (2*z + math.Sin(2*z)), sin / z}
	case Cylinder:
		j0, j1 := math.J0(z), math.J1(z)
		return Term{z, 2 / z * j1 / (j0*j0 + j1*j1), 2 * j1 / z}
	}
	if z < 0.02 { // the differences below vanish as z³
		z2 := z * z
		top := 1.0/3 - z2/30 + z2*z2/840        // (sin z − z cos z)/z³
		bottom := 4.0/3 - 4*z2/15 + 8*z2*z2/315 // (2z − sin 2z)/z³
		return Term{z, 4 * top / bottom, 3 * top}
	}
	top := sin - z*cos
	return Term{z, 4 * top / (2*z - math.Sin(2*z)), 3 * top / (z * z * z)}
}

// fixedSurfaceTerm is the limit of term for an infinite Biot number, in its closed form.
func fixedSurfaceTerm(shape Shape, z float64, n int) Term {
	sign := 1.0
	if n%2 == 1 {
		sign = -1
	}
	switch shape {
	case Slab:
		return Term{z, 2 * sign / z, sign / z}
	case Cylinder:
		j1 := math.J1(z)
		return Term{z, 2 / (z * j1), 2 * j1 / z}
	}
	return Term{z, 2 * sign, 3 * sign / (z * z)}
}

// Shape returns the shape.
func (s *Series) Shape() Shape { return s.shape }

// Biot returns the Biot number.
func (s *Series) Biot() float64 { return s.biot }

// Term returns the n-th term, counted from zero; the zero Term beyond those kept.
func (s *Series) Term(n int) Term {
	if n < 0 || n >= len(s.term) {
		return Term{}
	}
	return s.term[n]
}

// cut is where exp(−x) no longer counts.
const cut = 40

// Center is θ in the middle at a Fourier number α·t/R²: 1 at Fo ≤ 0, falling to 0.
// Accuracy: 1e-13 absolute. NaN gives NaN. It does not allocate.
func (s *Series) Center(fo float64) float64 {
	if fo < 1.5e-3 { // the deviation from 1 is below 2·erfc(12)
		if math.IsNaN(fo) {
			return fo
		}
		return 1
	}
	sum := 0.0
	for i := range s.term {
		t := &s.term[i]
		x := t.Eigenvalue * t.Eigenvalue * fo
		if x > cut {
			break
		}
		sum += t.Coefficient * math.Exp(-x)
	}
	return sum
}

// Mean is θ averaged over the volume at a Fourier number. The heat exchanged is (1 − θ) of the whole.
// Accuracy: 1e-13 absolute from Fo = 2.5e-4 on, and 1e-4 before. NaN gives NaN.
func (s *Series) Mean(fo float64) float64 {
	if !(fo > 0) {
		if math.IsNaN(fo) {
			return fo
		}
		return 1
	}
	sum := 0.0
	for i := range s.term {
		t := &s.term[i]
		x := t.Eigenvalue * t.Eigenvalue * fo
		if x > cut {
			return sum
		}
		sum += t.Coefficient * t.MeanFactor * math.Exp(-x)
	}
	return sum + s.tail*s.tailShape(fo)
}

// tailShape is how the omitted terms fade, taken as a continuous spectrum: ∫₁^∞ u⁻²e^(−u²x) du or
// 3∫₁^∞ u⁻⁴e^(−u²x) du with x = z²·Fo at the last eigenvalue.
func (s *Series) tailShape(fo float64) float64 {
	z := s.term[len(s.term)-1].Eigenvalue + math.Pi/2
	x := z * z * fo
	e2 := math.Exp(-x) - math.Sqrt(math.Pi*x)*math.Erfc(math.Sqrt(x))
	if s.steep {
		return e2
	}
	return math.Exp(-x) - 2*x*e2
}

// At is θ at a relative position, 0 in the middle and 1 at the surface, at a Fourier number. Accuracy:
// 1e-13 absolute from Fo = 2.5e-4 on; earlier the semi-infinite solid stands in, within 0.02. A position
// outside 0 to 1 or a NaN gives NaN.
func (s *Series) At(fo, position float64) float64 {
	if !within(position, 0, 1) || math.IsNaN(fo) {
		return math.NaN()
	}
	if fo <= 0 {
		return 1
	}
	if fo < 2.5e-4 {
		return s.early(fo, 1-position)
	}
	sum := 0.0
	for i := range s.term {
		t := &s.term[i]
		x := t.Eigenvalue * t.Eigenvalue * fo
		if x > cut {
			break
		}
		sum += t.Coefficient * math.Exp(-x) * s.profile(t.Eigenvalue*position)
	}
	return sum
}

func (s *Series) profile(zx float64) float64 {
	switch s.shape {
	case Slab:
		return math.Cos(zx)
	case Cylinder:
		return math.J0(zx)
	}
	if zx == 0 {
		return 1
	}
	return math.Sin(zx) / zx
}

// early is the semi-infinite solid at a relative depth below its surface.
// Source: Carslaw and Jaeger, Conduction of Heat in Solids (1959), 2.7.
func (s *Series) early(fo, depth float64) float64 {
	root := math.Sqrt(fo)
	eta := depth / (2 * root)
	theta := math.Erf(eta)
	if h := s.biot * root; h < 20 {
		// erfc(η + h)·exp(2ηh + h²), without overflow because its factors nearly cancel.
		if e := eta + h; e < 25 {
			theta += math.Exp(h*h+2*eta*h) * math.Erfc(e)
		}
	} else if !math.IsInf(h, 1) {
		theta += math.Exp(-eta*eta) / (math.Sqrt(math.Pi) * (eta + h))
	}
	return math.Min(1, theta)
}

// CenterTime is the Fourier number at which θ in the middle has fallen to theta, 0 < theta < 1.
// Errors: [ErrUnreachable] for theta ≤ 0, [quantity.ErrOutOfRange] for theta ≥ 1 or NaN.
func (s *Series) CenterTime(theta float64) (float64, error) { return s.time(s.Center, theta, 1) }

// MeanTime is the Fourier number at which the mean θ has fallen to theta; see [Series.CenterTime].
func (s *Series) MeanTime(theta float64) (float64, error) {
	return s.time(s.Mean, theta, s.term[0].MeanFactor)
}

func (s *Series) time(f func(float64) float64, theta, factor float64) (float64, error) {
	if theta <= 0 {
		return 0, ErrUnreachable
	}
	if !(theta < 1) {
		return 0, outOfRange("share of the temperature difference", theta, 0, 1, "")
	}
	z2 := s.term[0].Eigenvalue * s.term[0].Eigenvalue
	// The first term alone is exact late, and bounds the time from above early, where the
	// other terms take away from it.
	late := math.Max(math.Log(s.term[0].Coefficient*factor/theta), 1e-9) / z2
	return solveFalling(f, theta, late)
}

// solveFalling finds x with f(x) = y for an f that falls from f(0) = 1 to 0, near a guess.
func solveFalling(f func(float64) float64, y, guess float64) (float64, error) {
	low, high := 0.0, guess*1.0000001
	for f(high) > y {
		low, high = high, 2*high
	}
	return numeric.Root(func(x float64) float64 { return f(x) - y }, low, high, 1e-13*high)
}
