package gasbalance

import "math"

// kneadings is how many ways of kneading have a pace of their own.
const kneadings = 3

// effects is how many unknowns a log of bakes speaks of: those of a dough, and the pace of each way of kneading.
const effects = Unknowns + kneadings

type effect [effects]float64

type effectMatrix [effects][effects]float64

// times is A·v of a symmetric matrix, column by column: many effects take no part in a row.
func (a *effectMatrix) times(v *effect) (out effect) {
	for j, x := range v {
		if x == 0 {
			continue
		}
		for i, y := range a[j] {
			out[i] += x * y
		}
	}
	return out
}

func (a *effectMatrix) multiply(b *effectMatrix) (out effectMatrix) {
	for i := range a {
		for k, x := range a[i] {
			if x == 0 {
				continue
			}
			for j, y := range b[k] {
				out[i][j] += x * y
			}
		}
	}
	return out
}

func (a *effectMatrix) add(b *effectMatrix, sign float64) {
	for i := range a {
		for j := range a[i] {
			a[i][j] += sign * b[i][j]
		}
	}
}

func (v *effect) add(w *effect, sign float64) {
	for i := range v {
		v[i] += sign * w[i]
	}
}

func (v *effect) dot(w *effect) (s float64) {
	for i := range v {
		s += v[i] * w[i]
	}
	return s
}

// symmetric evens out what rounding does to a covariance.
func (a *effectMatrix) symmetric() {
	for i := range a {
		for j := range i {
			m := (a[i][j] + a[j][i]) / 2
			a[i][j], a[j][i] = m, m
		}
	}
}

// solve is (I + A)⁻¹·B for A = J·D with J and D symmetric and not negative, so that I + A can always be inverted;
// by Gauss with pivots.
func solve(a *effectMatrix, b *effectMatrix) effectMatrix {
	m, out := *a, *b
	for i := range m {
		m[i][i]++
	}
	for col := range m {
		best := col
		for r := col + 1; r < effects; r++ {
			if math.Abs(m[r][col]) > math.Abs(m[best][col]) {
				best = r
			}
		}
		m[col], m[best] = m[best], m[col]
		out[col], out[best] = out[best], out[col]
		inv := 1 / m[col][col]
		for r := range m {
			if r == col {
				continue
			}
			f := m[r][col] * inv
			if f == 0 {
				continue
			}
			for k := col; k < effects; k++ {
				m[r][k] -= f * m[col][k]
			}
			for k := range out[r] {
				out[r][k] -= f * out[col][k]
			}
		}
	}
	for r := range out {
		inv := 1 / m[r][r]
		for k := range out[r] {
			out[r][k] *= inv
		}
	}
	return out
}

// gaussian is a normal distribution over the effects.
type gaussian struct {
	mean effect
	cov  effectMatrix
}

// seen is the distribution after evidence of precision J and moment r about the effects:
//
//	P = (I + S·J)⁻¹·S,   x = m + P·(r − J·m)
//
// which holds for a singular S as well: what cannot vary does not. Effects of which the evidence says nothing, or
// that do not vary, take no part in the inverse; the former follow by P = S − S·J·P.
func (g *gaussian) seen(j *effectMatrix, r *effect) gaussian {
	var list [effects]int
	n := 0
	for i := range g.cov {
		if j[i][i] != 0 && g.cov[i][i] != 0 {
			list[n] = i
			n++
		}
	}
	on := list[:n]
	var sj effectMatrix // S·J, its columns in the order of the list
	for i := range g.cov {
		for _, k := range on {
			if x := g.cov[i][k]; x != 0 {
				for b, l := range on {
					sj[i][b] += x * j[k][l]
				}
			}
		}
	}
	var m [effects][2 * effects]float64 // I + S·J, and beside it S
	for a, i := range on {
		copy(m[a][:n], sj[i][:n])
		m[a][a]++
		copy(m[a][n:], g.cov[i][:])
	}
	for col := range n { // by Gauss with pivots
		best := col
		for r := col + 1; r < n; r++ {
			if math.Abs(m[r][col]) > math.Abs(m[best][col]) {
				best = r
			}
		}
		if best != col {
			m[col], m[best] = m[best], m[col]
		}
		pivot := m[col][col+1 : n+effects]
		inv := 1 / m[col][col]
		for k := range pivot {
			pivot[k] *= inv
		}
		for r := range n {
			if f := m[r][col]; r != col && f != 0 {
				row := m[r][col+1 : n+effects]
				for k, p := range pivot {
					row[k] -= f * p
				}
			}
		}
	}
	out := gaussian{cov: g.cov}
	for i, done := 0, 0; i < effects; i++ {
		if done < n && on[done] == i {
			copy(out.cov[i][:], m[done][n:])
			done++
			continue
		}
		for a := range on {
			if x := sj[i][a]; x != 0 {
				for c, y := range m[a][n : n+effects] {
					out.cov[i][c] -= x * y
				}
			}
		}
	}
	out.cov.symmetric()
	left := j.times(&g.mean)
	for i := range left {
		left[i] = r[i] - left[i]
	}
	out.mean = out.cov.times(&left)
	out.mean.add(&g.mean, 1)
	return out
}

// evidence is what a group of bakes says about its own effects, as a precision and a moment.
type evidence struct {
	precision effectMatrix
	moment    effect
}

func (e *evidence) add(f *evidence, sign float64) {
	e.precision.add(&f.precision, sign)
	e.moment.add(&f.moment, sign)
}

// up is what the evidence says about the group above, from which this one differs with covariance D: (I + J·D)⁻¹·J
// and (I + J·D)⁻¹·r.
func (e *evidence) up(d *effectMatrix) (out evidence) {
	jd := e.precision.multiply(d)
	out.precision = solve(&jd, &e.precision)
	out.precision.symmetric()
	var r effectMatrix
	for i := range r {
		r[i][0] = e.moment[i]
	}
	r = solve(&jd, &r)
	for i := range r {
		out.moment[i] = r[i][0]
	}
	return out
}
