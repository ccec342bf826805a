package ferment

import (
	"math"

	"example.org/maslin/internal/numeric"
)

// A table holds, cell by cell of temperature, the Taylor series of the rate and with it the antiderivative
// F(T) = ∫ μ dT, so that the dose over a straight run of temperature from T₀ to T₁ is
//
//	Δt·(F(T₁) − F(T₀))/(T₁ − T₀)
//
// one evaluation for each reading. The coefficients come from the differential equation x·μ′ = (b − c·x)·μ that
// the Gänzle form satisfies, not from a fit: in the cells used the series is exact to rounding, because the
// half-width of a cell is at most a sixteenth of the distance to the nearest singularity at Tmax. Closer to Tmax the
// antiderivative is the series of the incomplete gamma function.
type table struct {
	cells  []cell
	pieces []piece
}

const degree = 9

// cell is one stretch of temperature: μ(T) = Σ m_k·δ^k, F(T) = start + Σ m_k·δ^(k+1)/(k+1), δ = T − center.
type cell struct {
	center, start float64
	f             [degree + 1]float64 // coefficients of F from δ¹ on
}

const (
	tableLow  = -25.0
	tableHigh = 60.0
	cellWidth = 0.5
	// nearest is how close to Tmax the series is used, °C: 4 is sixteen half-widths, so that the first term left
	// out is below 1e-11 of the rate.
	nearest = 4.0
)

// newTable builds the cells from the cold end up. Where a piece begins inside a cell, or Tmax is near, the cell is
// left to direct evaluation (center NaN).
func newTable(pieces []piece) *table {
	n := int(math.Round((tableHigh - tableLow) / cellWidth))
	t := &table{cells: make([]cell, n), pieces: pieces}
	edge := 0.0 // F at the lower edge of the cell
	for i := range t.cells {
		c := &t.cells[i]
		lo := tableLow + float64(i)*cellWidth
		hi := lo + cellWidth
		p, broken := t.pieceOver(lo, hi)
		c.center = (lo + hi) / 2
		if broken || !p.series(c.center, &c.f) {
			c.center, c.start = math.NaN(), edge
			edge += t.area(lo, hi)
			continue
		}
		c.start = edge - c.sum(-cellWidth/2)
		edge = c.start + c.sum(cellWidth/2)
	}
	return t
}

// pieceOver finds the piece that covers a cell, and whether another begins inside it.
func (t *table) pieceOver(lo, hi float64) (piece, bool) {
	k := 0
	for i := 1; i < len(t.pieces); i++ {
		if t.pieces[i].low <= lo {
			k = i
		} else if t.pieces[i].low < hi {
			return piece{}, true
		}
	}
	return t.pieces[k], false
}

// series fills the coefficients of F around a center; false where the series would not be exact.
func (p piece) series(center float64, f *[degree + 1]float64) bool {
	if p.flat || p.line {
		f[0] = p.rate(center)
		if p.line {
			f[1] = p.slope / 2
		}
		return true
	}
	g := p.form
	x := g.max + p.shift - center
	if x <= -cellWidth {
		return true // beyond Tmax: all zero
	}
	if x < nearest {
		return false
	}
	// Taylor coefficients of μ in ξ = x − x₀, from x·μ′ = (b − c·x)·μ; δ = −ξ.
	var m [degree + 1]float64
	m[0] = g.rate(center - p.shift)
	for k := range degree {
		next := (g.b - g.c*x - float64(k)) * m[k]
		if k > 0 {
			next -= g.c * m[k-1]
		}
		m[k+1] = next / (x * float64(k+1))
	}
	sign := 1.0
	for k := 0; k <= degree; k++ {
		f[k] = sign * m[k] / float64(k+1)
		sign = -sign
	}
	return true
}

// sum is F(center + d) − F(center).
func (c *cell) sum(d float64) float64 {
	f := &c.f
	s := f[9]*d + f[8]
	s = s*d + f[7]
	s = s*d + f[6]
	s = s*d + f[5]
	s = s*d + f[4]
	s = s*d + f[3]
	s = s*d + f[2]
	s = s*d + f[1]
	s = s*d + f[0]
	return s * d
}

// slope is μ at center + d, the derivative of sum.
func (c *cell) slope(d float64) float64 {
	f := &c.f
	s := 10*f[9]*d + 9*f[8]
	s = s*d + 8*f[7]
	s = s*d + 7*f[6]
	s = s*d + 6*f[5]
	s = s*d + 5*f[4]
	s = s*d + 4*f[3]
	s = s*d + 3*f[2]
	s = s*d + 2*f[1]
	return s*d + f[0]
}

// rate is μ(T).
func (t *table) rate(celsius float64) float64 {
	if i := int((celsius - tableLow) * (1 / cellWidth)); celsius >= tableLow && i < len(t.cells) {
		if c := &t.cells[i]; c.center == c.center {
			return c.slope(celsius - c.center)
		}
	}
	i := len(t.pieces) - 1
	for i > 0 && celsius < t.pieces[i].low {
		i--
	}
	return t.pieces[i].rate(celsius)
}

// at is F(T) for −25 ≤ T < 60 °C, the temperatures a History may hold; 60 °C itself is in the last cell.
func (t *table) at(celsius float64) float64 {
	i := min(int((celsius-tableLow)*(1/cellWidth)), len(t.cells)-1)
	c := &t.cells[i]
	if c.center != c.center {
		return c.start + t.area(tableLow+float64(i)*cellWidth, celsius)
	}
	return c.start + c.sum(celsius-c.center)
}

// area is ∫ μ dT from one temperature up to another, piece by piece.
func (t *table) area(from, to float64) float64 {
	sum := 0.0
	for i, p := range t.pieces {
		lo, hi := math.Max(p.low, from), to
		if i+1 < len(t.pieces) {
			hi = math.Min(hi, t.pieces[i+1].low)
		}
		if hi > lo {
			sum += p.area(lo, hi)
		}
	}
	return sum
}

// area is ∫ μ dT from one temperature up to another within the piece.
func (p piece) area(from, to float64) float64 {
	switch {
	case p.flat:
		return p.rate(from) * (to - from)
	case p.line:
		if p.slope == 0 {
			return 0
		}
		return p.slope * ((to-p.low)*(to-p.low) - (from-p.low)*(from-p.low)) / 2
	}
	g := p.form
	hi := math.Max(0, g.max+p.shift-from)
	lo := math.Max(0, g.max+p.shift-to)
	// a > 0, b > −1 and finite bounds: the integral exists, so the error cannot occur.
	v, _ := numeric.PowerExp(g.a, g.b, g.c, lo, hi)
	return v
}
