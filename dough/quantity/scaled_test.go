package quantity

import (
	"math"
	"math/big"
	"testing"

	"pgregory.net/rapid"
)

// The digits that are printed are those of the exact fraction, rounded half to even.
func TestDigitsAreExact(t *testing.T) {
	kinds := []*kind{&masses, &temperatures, &percents, &lengths, &volumes}
	for _, k := range kinds { // what 64 bits do not hold, and what they just hold
		for i := range k.scales {
			for places := range 13 {
				for _, q := range []int64{0, 1, math.MaxInt64, math.MinInt64, 1 << 40} {
					checkDigits(t, q, &k.scales[i], places)
				}
			}
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		q := rapid.OneOf(rapid.Int64(), rapid.Int64Range(-1e9, 1e9), rapid.SampledFrom([]int64{0, math.MinInt64,
			math.MaxInt64, 4500, -4500, 13500, 500_000})).Draw(t, "q")
		k := rapid.SampledFrom(kinds).Draw(t, "kind")
		s := &k.scales[rapid.IntRange(0, len(k.scales)-1).Draw(t, "unit")]
		checkDigits(t, q, s, rapid.IntRange(0, 12).Draw(t, "places"))
	})
}

func checkDigits(t interface {
	Helper()
	Fatalf(format string, args ...any)
}, q int64, s *scale, places int) {
	t.Helper()
	exact := big.NewRat(q, 1)
	exact.Mul(exact, big.NewRat(s.den, s.num)).Mul(exact, new(big.Rat).SetInt(new(big.Int).Exp(big.NewInt(10),
		big.NewInt(int64(places)), nil)))
	digits, negative := scaled(nil, q, s, places)
	n, ok := new(big.Int).SetString(string(digits), 10)
	if !ok || n.Sign() < 0 || len(digits) > 1 && digits[0] == '0' {
		t.Fatalf("digits %q", digits)
	}
	if negative != (q < 0 && n.Sign() > 0) {
		t.Fatalf("%d is below nothing: %v", q, negative)
	}
	off := new(big.Rat).Sub(exact.Abs(exact), new(big.Rat).SetInt(n))
	if c := off.Abs(off).Cmp(big.NewRat(1, 2)); c > 0 || c == 0 && n.Bit(0) == 1 {
		t.Fatalf("%d at %d places: %s of %s", q, places, digits, exact.FloatString(3))
	}
}

// 22,679,618.5 µg are exactly 0.05 lb, so 22,679,619 µg take more decimals to come back: at 0.05 they would be a tie.
func TestTiesTakeMoreDecimals(t *testing.T) {
	pound := &masses.scales[4]
	if pound.symbol != "lb" || masses.back(22_679_619, pound, 2) || !masses.back(453_592_370, pound, 0) {
		t.Errorf("0.05 %s are read back as 22,679,619 µg", pound.symbol)
	}
}
