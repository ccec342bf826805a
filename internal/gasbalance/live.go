package gasbalance

import "math"

// live is what is known of those effects that may vary and that a log of bakes speaks of. All others follow from them,
// so that the luck is looked for among few, and bakes are taken in one by one without the rest.
type live struct {
	n  int
	of [effects]int // which effects they are, in order
	// What was known before the bakes: its precision among them, and the mean of all.
	before effectMatrix
	all    effect
	// What is known with them, once their luck is settled; of the covariance only the lower half counts.
	mean effect
	cov  effectMatrix
}

// live are the effects of a distribution that may vary, of the ways of kneading those that were used.
func (g *gaussian) live(used *[kneadings]bool) (l live) {
	l.all = g.mean
	for i := range g.cov {
		if g.cov[i][i] != 0 && (i < Unknowns || used[i-Unknowns]) {
			l.of[l.n] = i
			l.n++
		}
	}
	for a, i := range l.of[:l.n] {
		for b, j := range l.of[:l.n] {
			l.before[a][b] = g.cov[i][j]
		}
	}
	l.before.invert(l.n)
	return l
}

// kneaded are the ways of kneading of the bakes in the sums.
func (s *Sums) kneaded() (used [kneadings]bool) {
	for k := range s.Gram {
		used[k] = s.Gram[k][Pace][Pace] != 0 // the pace of each bake counts 1
	}
	return used
}

// invert puts the inverse of the first n rows and columns of a positive matrix in its place, which needs no pivots.
func (a *effectMatrix) invert(n int) {
	for k := range n {
		pivot := a[k][:n]
		inv := 1 / pivot[k]
		pivot[k] = 1
		for j := range pivot {
			pivot[j] *= inv
		}
		for i := range n {
			if i == k {
				continue
			}
			row := a[i][:n]
			f := row[k]
			row[k] = 0
			for j, p := range pivot {
				row[j] -= f * p
			}
		}
	}
}

// settle takes in the sums of a log: for each luck the closed form of normal regression, and the luck by
//
//	σ² = (ν₀·σ₀² + Σ w·((y − hᵀx)² + hᵀPh)/k)/(ν₀ + Σ w)
//
// in rounds from a guess; used is the luck of the last of them.
//
//	P = (P₀⁻¹ + J/σ²)⁻¹     x = x₀ + P·q/σ²     q = Σ w·h·(y − hᵀx₀)/k     J = Σ w·h·hᵀ/k
//
// Source: Gelman et al., Bayesian Data Analysis, chapter 14.
func (l *live) settle(s *Sums, kind Leavening, guess float64) (luck, used, degrees float64) {
	e := s.evidence(1)
	jx := e.precision.times(&l.all)
	squares := s.Squares - 2*e.moment.dot(&l.all) + l.all.dot(&jx) // Σ w·(y − hᵀx₀)²/k
	of := l.of[:l.n]
	var q effect
	var j effectMatrix
	for a, i := range of {
		q[a] = e.moment[i] - jx[i]
		for b, k := range of {
			j[a][b] = e.precision[i][k]
		}
	}
	ordinary, ordinarySquares := s.Weighing.ordinary()
	degrees = freedom + s.Weight/ordinary
	prior := freedom * luckOf(kind) * luckOf(kind)
	luck = guess
	var by effect // x − x₀
	for range rounds {
		used = luck
		r := 1 / (luck * luck)
		for a := range of {
			for b := range of {
				l.cov[a][b] = l.before[a][b] + j[a][b]*r
			}
		}
		l.cov.invert(l.n)
		left := squares
		for a := range of {
			d := 0.0
			for b := range of {
				d += l.cov[a][b] * q[b]
			}
			by[a] = d * r
		}
		for a := range of {
			// (δᵀJδ − 2·δᵀq) + tr(J·P)
			d := -2 * q[a]
			for b := range of {
				d += j[a][b] * by[b]
				left += j[a][b] * l.cov[a][b]
			}
			left += d * by[a]
		}
		luck = math.Sqrt((prior + max(0, left)/ordinarySquares) / degrees)
		if math.Abs(luck-used) < settled {
			break
		}
	}
	for a, i := range of {
		l.mean[a] = l.all[i] + by[a]
	}
	return luck, used, degrees
}

// among are the live ones of the effects of a row.
func (l *live) among(r *Row) (h effect) {
	for a, i := range l.of[:l.n] {
		switch {
		case i < Unknowns:
			h[a] = r.H[i]
		case i-Unknowns == r.Kneading:
			h[a] = r.H[Pace] // its pace counts once more for its way of kneading
		}
	}
	return h
}

// expected is how a row goes with the live effects, P·h, and hᵀx and hᵀPh: what is expected of it and how surely.
func (l *live) expected(h *effect) (ph effect, mean, variance float64) {
	for i := range l.n {
		row, x, sum := l.cov[i][:i], h[i], 0.0
		for j, c := range row {
			sum += c * h[j]
			ph[j] += c * x
		}
		ph[i] = sum + l.cov[i][i]*x
	}
	for i := range l.n {
		mean += h[i] * l.mean[i]
		variance += h[i] * ph[i]
	}
	return ph, mean, variance
}

// take takes in a row that fell off what was expected, of which off over its whole variance and one over that is told.
func (l *live) take(ph *effect, off, precision float64) {
	for i := range l.n {
		l.mean[i] += ph[i] * off
		by, row := ph[i]*precision, l.cov[i][:i+1]
		for j := range row {
			row[j] -= by * ph[j]
		}
	}
}
