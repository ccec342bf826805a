package heat

import "math"

// Material holds the properties that conduction needs.
type Material struct {
	Conductivity float64 // k, W/(m K)
	Density      float64 // ρ, kg/m³
	HeatCapacity float64 // c, J/(kg K)
}

// Diffusivity is k/(ρ·c) in m²/s.
func (m Material) Diffusivity() float64 { return m.Conductivity / (m.Density * m.HeatCapacity) }

// Geometry is the form and size of a body: one of [Plate], [LongCylinder], [Ball], [ShortCylinder],
// [Block].
type Geometry struct {
	axes  [3]axis
	count int
}

type axis struct {
	shape  Shape
	radius float64 // half thickness or radius, m
}

// Plate is a slab of a half thickness, wide in the other two directions.
func Plate(half float64) Geometry { return Geometry{axes: [3]axis{{Slab, half}}, count: 1} }

// LongCylinder is a cylinder much longer than its radius.
func LongCylinder(radius float64) Geometry {
	return Geometry{axes: [3]axis{{Cylinder, radius}}, count: 1}
}

// Ball is a sphere.
func Ball(radius float64) Geometry { return Geometry{axes: [3]axis{{Sphere, radius}}, count: 1} }

// ShortCylinder is a cylinder of a radius and a whole height, exposed on all sides.
func ShortCylinder(radius, height float64) Geometry {
	return Geometry{axes: [3]axis{{Cylinder, radius}, {Slab, height / 2}}, count: 2}
}

// Block is a rectangular body of three whole edge lengths, exposed on all sides.
func Block(length, width, height float64) Geometry {
	return Geometry{axes: [3]axis{{Slab, length / 2}, {Slab, width / 2}, {Slab, height / 2}}, count: 3}
}

// Volume is the volume in m³; +Inf for bodies without ends.
func (g Geometry) Volume() float64 {
	switch {
	case g.count == 1 && g.axes[0].shape == Sphere:
		r := g.axes[0].radius
		return 4.0 / 3 * math.Pi * r * r * r
	case g.count == 2:
		r := g.axes[0].radius
		return math.Pi * r * r * 2 * g.axes[1].radius
	case g.count == 3:
		return 8 * g.axes[0].radius * g.axes[1].radius * g.axes[2].radius
	}
	return math.Inf(1)
}

// Body is a solid of one form, material and surface coefficient, set up once and then evaluated quickly. It
// is read-only and safe for concurrent use.
type Body struct {
	factors [3]*Series
	rates   [3]float64 // α/R², 1/s
	radii   [3]float64 // R, m
	count   int
}

// NewBody sets up the exact solution for a body whose surface coefficient is h W/(m² K); +Inf holds the
// surface at the temperature of the surroundings. Bodies with several axes are products of one-dimensional
// solutions.
//
// Errors: [quantity.ErrOutOfRange] for sizes outside 0.1 mm to 10 m, properties that are not positive, or a
// Biot number outside 1e-6 to 1e6.
//
// Source: Çengel, Heat and Mass Transfer, chapter 4; products after Langston (1982) as given there.
func NewBody(g Geometry, m Material, h float64) (*Body, error) {
	return newBody(g, m, h, [3]int{terms, terms, terms})
}

// NewFollowed sets up a body for [Body.Follow] and [Body.SlowestTime] alone, in a fraction of the time: with as many
// terms of each axis as its slowest exponentials take. Otherwise as [NewBody].
func NewFollowed(g Geometry, m Material, h float64) (*Body, error) {
	var kept [3]int
	volume := 1.0
	for i := range g.count {
		volume *= g.axes[i].radius
	}
	for i := range g.count {
		// Rates grow as the squares of the terms' numbers, so that the slowest products lie within an ellipse or an
		// ellipsoid whose half axes are as the radii; a few more leave room for their first terms.
		n := singleModes + 1.0
		switch r := g.axes[i].radius; g.count {
		case 2:
			n = 4 + math.Sqrt(4/math.Pi*mostModes/volume)*r
		case 3:
			n = 4 + math.Cbrt(6/math.Pi*mostModes/volume)*r
		}
		kept[i] = int(math.Max(4, math.Min(n, terms))) // also of a radius that is none
	}
	return newBody(g, m, h, kept)
}

// Check reports what speaks against a body of a form, material and surface coefficient; errors as of [NewBody].
func (g Geometry) Check(m Material, h float64) error {
	switch {
	case !within(m.Conductivity, 1e-6, 1e6):
		return outOfRange("conductivity", m.Conductivity, 1e-6, 1e6, "W/(m K)")
	case !within(m.Density, 1e-3, 1e6):
		return outOfRange("density", m.Density, 1e-3, 1e6, "kg/m³")
	case !within(m.HeatCapacity, 1, 1e6):
		return outOfRange("heat capacity", m.HeatCapacity, 1, 1e6, "J/(kg K)")
	case !(h > 0):
		return outOfRange("surface coefficient", h, 0, math.Inf(1), "W/(m² K)")
	case g.count == 0:
		return outOfRange("size", 0, 1e-4, 10, "m")
	}
	for i := range g.count {
		r := g.axes[i].radius
		if !within(r, 1e-4, 10) {
			return outOfRange("half thickness or radius", r, 1e-4, 10, "m")
		}
		if err := checkBiot(h * r / m.Conductivity); err != nil {
			return err
		}
	}
	return nil
}

func newBody(g Geometry, m Material, h float64, kept [3]int) (*Body, error) {
	if err := g.Check(m, h); err != nil {
		return nil, err
	}
	b := &Body{count: g.count}
	for i := range g.count {
		r := g.axes[i].radius
		s, err := newSeries(g.axes[i].shape, h*r/m.Conductivity, kept[i])
		if err != nil {
			return nil, err
		}
		b.factors[i] = s
		b.rates[i] = m.Diffusivity() / (r * r)
		b.radii[i] = r
	}
	return b, nil
}

// Center is θ in the middle after a time in seconds.
func (b *Body) Center(seconds float64) float64 {
	theta := 1.0
	for i := range b.count {
		theta *= b.factors[i].Center(seconds * b.rates[i])
	}
	return theta
}

// Mean is θ averaged over the volume after a time in seconds.
func (b *Body) Mean(seconds float64) float64 {
	theta := 1.0
	for i := range b.count {
		theta *= b.factors[i].Mean(seconds * b.rates[i])
	}
	return theta
}

// At is θ after a time in seconds at a relative position on each axis, 0 in the middle and 1 at the
// surface. Axes are in the order of the geometry's constructor; missing positions are 0, the middle.
func (b *Body) At(seconds float64, position ...float64) float64 {
	theta := 1.0
	for i := range b.count {
		x := 0.0
		if i < len(position) {
			x = position[i]
		}
		theta *= b.factors[i].At(seconds*b.rates[i], x)
	}
	return theta
}

// AxisTerm is the first term of the series along one axis of a body.
type AxisTerm struct {
	Shape       Shape
	Radius      float64 // half thickness or radius, m
	Biot        float64
	Eigenvalue  float64
	Coefficient float64
	Later       [8]Term // the next terms
}

// FirstTerms are the first terms along each axis, in the order of the geometry's constructor.
func (b *Body) FirstTerms() []AxisTerm {
	out := make([]AxisTerm, b.count)
	for i := range out {
		t := b.factors[i].term[0]
		out[i] = AxisTerm{b.factors[i].shape, b.radii[i], b.factors[i].biot, t.Eigenvalue, t.Coefficient, [8]Term{}}
		copy(out[i].Later[:], b.factors[i].term[1:])
	}
	return out
}

// SlowestTime is the time constant in seconds of the last exponential, 1/Σ z₁²·α/R²: after the first part
// of the way the middle approaches the surroundings as exp(−t/τ).
func (b *Body) SlowestTime() float64 {
	rate := 0.0
	for i := range b.count {
		z := b.factors[i].term[0].Eigenvalue
		rate += z * z * b.rates[i]
	}
	return 1 / rate
}

// CenterTime is the time in seconds at which θ in the middle has fallen to theta.
// Errors: [ErrUnreachable] for theta ≤ 0; [quantity.ErrOutOfRange] for theta ≥ 1 or NaN.
func (b *Body) CenterTime(theta float64) (float64, error) { return b.time(b.Center, theta) }

// MeanTime is the time in seconds at which the mean θ has fallen to theta; see [Body.CenterTime].
func (b *Body) MeanTime(theta float64) (float64, error) { return b.time(b.Mean, theta) }

func (b *Body) time(f func(float64) float64, theta float64) (float64, error) {
	if theta <= 0 {
		return 0, ErrUnreachable
	}
	if !(theta < 1) {
		return 0, outOfRange("share of the temperature difference", theta, 0, 1, "")
	}
	return solveFalling(f, theta, b.SlowestTime()*math.Log(1/theta))
}
