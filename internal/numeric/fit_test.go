package numeric

import (
	"errors"
	"math"
	"testing"
)

// Equations with one solution, by hand: 2·c = 6; c₁ = 3, c₂ = 5; 2c₁ + c₂ = 8 and c₁ + 3c₂ = 9 (3 and 2); and of a sign
// below 0.
func TestEquationsByHand(t *testing.T) {
	for _, c := range []struct {
		rows [][]float64
		y    []float64
		want []float64
	}{
		{[][]float64{{2}}, []float64{6}, []float64{3}},
		{[][]float64{{-2}}, []float64{6}, []float64{-3}},
		{[][]float64{{1, 0}, {0, 1}}, []float64{3, 5}, []float64{3, 5}},
		{[][]float64{{2, 1}, {1, 3}}, []float64{8, 9}, []float64{3, 2}},
		{[][]float64{{0, 1}, {4, 0}}, []float64{7, 8}, []float64{2, 7}},
		{[][]float64{{1, 0, 0}, {0, -1, 0}, {0, 0, 2}}, []float64{1, 2, 3}, []float64{1, -2, 1.5}},
	} {
		fit, err := LeastSquares(c.rows, c.y, nil)
		if err != nil || len(fit.Coefficients) != len(c.want) {
			t.Fatalf("%v: %+v, %v", c.rows, fit, err)
		}
		for i, want := range c.want {
			if !(math.Abs(fit.Coefficients[i]-want) <= 1e-13) {
				t.Errorf("%v: %v, want %v", c.rows, fit.Coefficients, c.want)
			}
		}
		if !math.IsNaN(fit.Variance) {
			t.Errorf("%v: nothing is left over, yet its variance is %v", c.rows, fit.Variance)
		}
	}
}

// A parabola through five points by hand: at −2, −1, 0, 1, 2 the columns 1, x, x² have XᵀX = [5 0 10; 0 10 0; 10 0 34],
// whose inverse is [34 0 −10; 0 7 0; −10 0 5]/70. For y = 5, 0, 1, 2, 5: Xᵀy = (13, 2, 42), coefficients 22/70, 14/70,
// 80/70; what is left over is yᵀy − Σ coefficient·Xᵀy = 55 − (286 + 28 + 3360)/70 = 176/70, over 5 − 3.
func TestAParabolaByHand(t *testing.T) {
	var rows [][]float64
	for x := -2.0; x <= 2; x++ {
		rows = append(rows, []float64{1, x, x * x})
	}
	fit, err := LeastSquares(rows, []float64{5, 0, 1, 2, 5}, nil)
	if err != nil {
		t.Fatal(err)
	}
	cov := [3][3]float64{{34, 0, -10}, {0, 7, 0}, {-10, 0, 5}}
	for i, want := range [3]float64{22, 14, 80} {
		if !(math.Abs(fit.Coefficients[i]-want/70) <= 1e-13) {
			t.Errorf("coefficient %d is %v, want %v", i, fit.Coefficients[i], want/70)
		}
		for j := range 3 {
			if !(math.Abs(fit.Cov[i][j]-cov[i][j]/70) <= 1e-13) {
				t.Errorf("covariance %d, %d is %v, want %v", i, j, fit.Cov[i][j], cov[i][j]/70)
			}
		}
	}
	if !(math.Abs(fit.Variance-88.0/70) <= 1e-13) {
		t.Errorf("variance %v, want %v", fit.Variance, 88.0/70)
	}
}

// A weight of n counts a point n times, and one of 0 leaves it out.
func TestWeightsCountPoints(t *testing.T) {
	weighted, err := FitLine([]float64{1, 2, 4, 9}, []float64{3, 4, 9, 50}, []float64{2, 1, 3, 0})
	counted, err2 := FitLine([]float64{1, 1, 2, 4, 4, 4}, []float64{3, 3, 4, 9, 9, 9}, nil)
	if err != nil || err2 != nil || !(math.Abs(weighted.Slope-counted.Slope) <= 1e-13) ||
		!(math.Abs(weighted.Intercept-counted.Intercept) <= 1e-13) || weighted.N != 3 || counted.N != 6 ||
		// One is over 3 − 2, the other over 6 − 2.
		!(math.Abs(weighted.Variance-4*counted.Variance) <= 1e-12) {
		t.Errorf("%+v and %+v, %v, %v", weighted, counted, err, err2)
	}
	if y := counted.At(3); !(math.Abs(y-counted.Intercept-3*counted.Slope) <= 1e-13) {
		t.Errorf("at 3: %v", y)
	}
}

// How far apart two places have to be is relative to how far away they are.
func TestALineAcrossVerySmallPlaces(t *testing.T) {
	l, err := FitLine([]float64{1e-15, 2e-15}, []float64{1, 4}, nil)
	if err != nil || !(math.Abs(l.Slope/3e15-1) <= 1e-12) || !(math.Abs(l.Intercept+2) <= 1e-12) {
		t.Errorf("%+v, %v", l, err)
	}
}

// What determines no line or no coefficients, and what is no number.
func TestWhatCannotBeFitted(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	one := []float64{1, 2, 3}
	near := 1 + math.Ldexp(1, -50)
	for name, c := range map[string]struct {
		x, y, w []float64
		want    error
	}{
		"nothing":        {nil, nil, nil, ErrSingular},
		"one place":      {[]float64{0, 0, 0}, one, nil, ErrSingular},
		"hardly apart":   {[]float64{1, near, 1}, one, nil, ErrSingular},
		"hardly, far":    {[]float64{1e9, 1e9 + math.Ldexp(1, -23), 1e9}, one, nil, ErrSingular},
		"one counts":     {one, one, []float64{0, 2, 0}, ErrSingular},
		"none counts":    {one, one, []float64{0, 0, 0}, ErrSingular},
		"no x":           {[]float64{1, nan, 3}, one, nil, ErrDomain},
		"no y":           {one, []float64{1, inf, 3}, nil, ErrDomain},
		"no weight":      {one, one, []float64{1, nan, 1}, ErrDomain},
		"below 0":        {one, one, []float64{1, -1, 1}, ErrDomain},
		"too few y":      {one, []float64{1, 2}, nil, ErrDomain},
		"too few weight": {one, one, []float64{1, 2}, ErrDomain},
		"too large":      {[]float64{-1e200, 0, 1e200}, one, nil, ErrDomain},
	} {
		if l, err := FitLine(c.x, c.y, c.w); !errors.Is(err, c.want) || l != (Line{}) {
			t.Errorf("line, %s: %+v, %v", name, l, err)
		}
	}
	wide := func(n int) [][]float64 {
		rows := make([][]float64, n)
		for i := range rows {
			rows[i] = make([]float64, n)
			rows[i][i] = 1
		}
		return rows
	}
	for name, c := range map[string]struct {
		rows [][]float64
		y, w []float64
		want error
	}{
		"nothing":          {nil, nil, nil, ErrDomain},
		"no columns":       {[][]float64{{}, {}}, []float64{1, 2}, nil, ErrDomain},
		"seventeen":        {wide(17), make([]float64, 17), nil, ErrDomain},
		"sixteen":          {wide(16), make([]float64, 16), nil, nil},
		"too few rows":     {[][]float64{{1, 2}}, []float64{1}, nil, ErrSingular},
		"rows differ":      {[][]float64{{1}, {1, 2}}, []float64{1, 2}, nil, ErrDomain},
		"too few y":        {[][]float64{{1}, {2}}, []float64{1}, nil, ErrDomain},
		"too few weights":  {[][]float64{{1}, {2}}, []float64{1, 2}, []float64{1}, ErrDomain},
		"no number":        {[][]float64{{1}, {nan}}, []float64{1, 2}, nil, ErrDomain},
		"no y":             {[][]float64{{1}, {2}}, []float64{1, inf}, nil, ErrDomain},
		"no weight":        {[][]float64{{1}, {2}}, []float64{1, 2}, []float64{1, inf}, ErrDomain},
		"below 0":          {[][]float64{{1}, {2}}, []float64{1, 2}, []float64{1, -1}, ErrDomain},
		"twice the same":   {[][]float64{{1, 3}, {2, 6}, {3, 9}}, one, nil, ErrSingular},
		"only zeros":       {[][]float64{{0}, {0}}, []float64{1, 2}, nil, ErrSingular},
		"one counts":       {[][]float64{{1, 0}, {1, 1}}, []float64{1, 2}, []float64{1, 0}, ErrSingular},
		"beyond a number":  {[][]float64{{1e-200}, {1e-200}}, []float64{1e200, 1e200}, nil, ErrSingular},
		"a small column":   {[][]float64{{1, 0}, {1, 1e-9}, {1, 2e-9}}, one, nil, nil},
		"columns too long": {[][]float64{{1e308}, {1.7e308}, {1.7e308}}, one, nil, ErrSingular},
	} {
		if fit, err := LeastSquares(c.rows, c.y, c.w); !errors.Is(err, c.want) || err != nil && fit.Coefficients != nil {
			t.Errorf("coefficients, %s: %+v, %v", name, fit, err)
		}
	}
}
