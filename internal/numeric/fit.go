package numeric

import "math"

// Line is the straight line y = Intercept + Slope·x fitted to weighted points.
type Line struct {
	Intercept, Slope float64
	// Cov is the covariance of intercept and slope when each point has variance 1/weight: multiply by
	// Variance when the weights are only relative.
	Cov [2][2]float64
	// Variance is the weighted sum of squared residuals over n − 2; NaN for two points.
	Variance float64
	N        int
}

// FitLine fits a straight line by weighted least squares. Nil weights mean equal weights of one; a
// weight of zero leaves the point out.
//
// Errors: ErrDomain when the lengths differ, a value is not finite or a weight negative; ErrSingular with
// fewer than two different x.
//
// Source: Bevington, Data Reduction and Error Analysis for the Physical Sciences, chapter 6, centered on
// the weighted mean.
func FitLine(x, y, w []float64) (Line, error) {
	if len(x) != len(y) || w != nil && len(w) != len(x) {
		return Line{}, ErrDomain
	}
	weight := func(i int) float64 {
		if w == nil {
			return 1
		}
		return w[i]
	}
	var sw, sx, sy float64
	n := 0
	for i := range x {
		if !finite(x[i], y[i], weight(i)) || weight(i) < 0 {
			return Line{}, ErrDomain
		}
		if weight(i) > 0 {
			n++
		}
		sw += weight(i)
		sx += weight(i) * x[i]
		sy += weight(i) * y[i]
	}
	if n < 2 {
		return Line{}, ErrSingular
	}
	mx, my := sx/sw, sy/sw
	var sxx, sxy float64
	for i := range x {
		dx := x[i] - mx
		sxx += weight(i) * dx * dx
		sxy += weight(i) * dx * (y[i] - my)
	}
	if !finite(sxx, sxy, mx, my) {
		return Line{}, ErrDomain
	}
	if sxx <= 1e-24*sw*mx*mx || sxx == 0 {
		return Line{}, ErrSingular
	}
	l := Line{Slope: sxy / sxx, N: n, Variance: math.NaN()}
	l.Intercept = my - l.Slope*mx
	l.Cov = [2][2]float64{{1/sw + mx*mx/sxx, -mx / sxx}, {-mx / sxx, 1 / sxx}}
	if n > 2 {
		rss := 0.0
		for i := range x {
			r := y[i] - l.Intercept - l.Slope*x[i]
			rss += weight(i) * r * r
		}
		l.Variance = rss / float64(n-2)
	}
	return l, nil
}

// At is the line's value at x.
func (l Line) At(x float64) float64 { return l.Intercept + l.Slope*x }

// Fit is a weighted linear least-squares solution with several coefficients.
type Fit struct {
	Coefficients []float64
	// Cov is the covariance of the coefficients when each point has variance 1/weight.
	Cov [][]float64
	// Variance is the weighted sum of squared residuals over n − k; NaN when n = k.
	Variance float64
}

// LeastSquares finds the k coefficients that minimize Σ w·(y − row·coefficients)², by Householder
// reflections on the weighted rows. Nil weights mean ones. k is at most 16.
//
// Errors: ErrDomain when lengths differ or a value is not finite; ErrSingular when the rows do not
// determine the coefficients.
//
// Source: Golub and Van Loan, Matrix Computations, 5.2.
func LeastSquares(rows [][]float64, y, w []float64) (Fit, error) {
	n := len(rows)
	if n == 0 || len(y) != n || w != nil && len(w) != n {
		return Fit{}, ErrDomain
	}
	k := len(rows[0])
	if k == 0 || k > 16 {
		return Fit{}, ErrDomain
	}
	if n < k {
		return Fit{}, ErrSingular
	}
	a := make([][]float64, n) // weighted rows with the right-hand side as last column
	for i, row := range rows {
		if len(row) != k {
			return Fit{}, ErrDomain
		}
		root := 1.0
		if w != nil {
			if !finite(w[i]) || w[i] < 0 {
				return Fit{}, ErrDomain
			}
			root = math.Sqrt(w[i])
		}
		a[i] = make([]float64, k+1)
		for j, v := range row {
			if !finite(v) {
				return Fit{}, ErrDomain
			}
			a[i][j] = root * v
		}
		if !finite(y[i]) {
			return Fit{}, ErrDomain
		}
		a[i][k] = root * y[i]
	}
	size := make([]float64, k) // lengths of the columns, to tell a small column from a dependent one
	for j := range k {
		for i := range n {
			size[j] = math.Hypot(size[j], a[i][j])
		}
	}
	for j := range k {
		norm := 0.0
		for i := j; i < n; i++ {
			norm = math.Hypot(norm, a[i][j])
		}
		if !(norm > 1e-12*size[j]) || !finite(norm) {
			return Fit{}, ErrSingular
		}
		if a[j][j] > 0 {
			norm = -norm
		}
		v := make([]float64, n)
		vv := 0.0
		for i := j; i < n; i++ {
			v[i] = a[i][j]
			if i == j {
				v[i] -= norm
			}
			vv += v[i] * v[i]
		}
		for c := j; c <= k; c++ {
			dot := 0.0
			for i := j; i < n; i++ {
				dot += v[i] * a[i][c]
			}
			dot *= 2 / vv
			for i := j; i < n; i++ {
				a[i][c] -= dot * v[i]
			}
		}
	}
	fit := Fit{Coefficients: make([]float64, k), Variance: math.NaN()}
	for j := k - 1; j >= 0; j-- {
		s := a[j][k]
		for c := j + 1; c < k; c++ {
			s -= a[j][c] * fit.Coefficients[c]
		}
		fit.Coefficients[j] = s / a[j][j]
	}
	if !finite(fit.Coefficients...) {
		return Fit{}, ErrSingular
	}
	if n > k {
		rss := 0.0
		for i := k; i < n; i++ {
			rss += a[i][k] * a[i][k]
		}
		fit.Variance = rss / float64(n-k)
	}
	fit.Cov = inverseGram(a, k)
	return fit, nil
}

// inverseGram is (RᵀR)⁻¹ for the upper triangle R left in a.
func inverseGram(a [][]float64, k int) [][]float64 {
	inv := make([][]float64, k) // R⁻¹
	for j := range k {
		inv[j] = make([]float64, k)
	}
	for c := range k {
		for j := c; j >= 0; j-- {
			s := 0.0
			if j == c {
				s = 1
			}
			for i := j + 1; i <= c; i++ {
				s -= a[j][i] * inv[i][c]
			}
			inv[j][c] = s / a[j][j]
		}
	}
	out := make([][]float64, k)
	for i := range k {
		out[i] = make([]float64, k)
		for j := range k {
			for c := range k {
				out[i][j] += inv[i][c] * inv[j][c]
			}
		}
	}
	return out
}
