package numeric

import "math"

// Exponentials and logarithms in plain arithmetic, right to 1e-15 of the standard library's. The clock of a dough asks
// for six of them in a row that do not wait for one another, and what is inlined overlaps: a run of temperature with
// all derivatives takes 126 ns where it takes 165 ns with the standard library's, one with what was learned 158 ns for
// 217 (BenchmarkRunBoth, BenchmarkRunLearned).

const (
	log2e = 1 / math.Ln2
	// ln 2 in two parts, the first short enough for its multiples to be exact. Source: FreeBSD's msun, e_exp.c.
	ln2High = 6.93147180369123816490e-01
	ln2Low  = 1.90821492927058770002e-10
)

// Exp is eˣ. Beyond ±700 it is that of the standard library.
func Exp(x float64) float64 {
	if x > -reduced && x < reduced {
		return 1 + expm1(x)
	}
	if !(x > -700 && x < 700) {
		return math.Exp(x)
	}
	k, r := halvings(x)
	return k * (1 + expm1(r))
}

// Expm1 is eˣ − 1, which keeps its digits near 0.
func Expm1(x float64) float64 {
	if x > -reduced && x < reduced {
		return expm1(x)
	}
	if !(x > -700 && x < 700) {
		return math.Expm1(x)
	}
	k, r := halvings(x)
	return k*expm1(r) + (k - 1)
}

// reduced is how large an exponent may be for its series, a little over (ln 2)/2.
const reduced = 0.35

// halvings is eˣ as 2ⁿ and the rest of the exponent, between −(ln 2)/2 and (ln 2)/2.
func halvings(x float64) (power, rest float64) {
	n := math.Floor(x*log2e + 0.5)
	rest = (x - n*ln2High) - n*ln2Low
	return math.Float64frombits(uint64(int64(n)+1023) << 52), rest
}

// expm1 is the series of eˣ − 1 to the thirteenth power, in the order in which a processor can do most of it at once
// (Estrin). What is left out is below 1e-16 of it.
func expm1(x float64) float64 {
	x2 := x * x
	x4 := x2 * x2
	a := (1 + x*(1.0/2)) + x2*(1.0/6+x*(1.0/24))
	b := (1.0/120 + x*(1.0/720)) + x2*(1.0/5040+x*(1.0/40320))
	c := (1.0/362880 + x*(1.0/3628800)) + x2*(1.0/39916800+x*(1.0/479001600)+x2*(1.0/6227020800))
	return x * (a + x4*(b+x4*c))
}

// Log is ln x for a positive number; NaN below 0 and −Inf of it.
func Log(x float64) float64 {
	if !(x > 1e-300 && x < 1e300) {
		return math.Log(x)
	}
	bits := math.Float64bits(x)
	// x = 2ⁿ·m with m from √½ to √2.
	n := int64(bits>>52) - 1023
	m := math.Float64frombits(bits&(1<<52-1) | 1023<<52)
	if m > math.Sqrt2 {
		n++
		m /= 2
	}
	k := float64(n)
	return k*ln2High + (log1p(m-1) + k*ln2Low)
}

// Log1p is ln(1 + x), which keeps its digits near 0, for x above −1.
func Log1p(x float64) float64 {
	if x > math.Sqrt2/2-1 && x < math.Sqrt2-1 {
		return log1p(x)
	}
	if !(x > -0.5 && x < 1e15) {
		return math.Log1p(x)
	}
	return Log(1 + x) // x is so large that nothing of it is lost
}

// log1p is ln(1 + f) from 1 + f = √½ to √2: with s = f/(2 + f) it is 2·artanh(s), by a polynomial in s² that is right
// to 2⁻⁵⁸. Source: FreeBSD's msun, e_log.c.
func log1p(f float64) float64 {
	s := f / (2 + f)
	z := s * s
	w := z * z
	even := w * (3.999999999940941908e-01 + w*(2.222219843214978396e-01+w*1.531383769920937332e-01))
	odd := z * (6.666666666666735130e-01 + w*(2.857142874366239149e-01+w*(1.818357216161805012e-01+
		w*1.479819860511658591e-01)))
	half := 0.5 * f * f
	return f - (half - s*(half+(even+odd)))
}
