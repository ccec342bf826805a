package ferment_test

import (
	"math"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/ferment"
)

// The optimum of a curve is where it is highest, by looking everywhere; and the curves of growth have theirs where
// their authors put it: 27.1 °C for the yeast of Gänzle, Ehmann and Hammes, 33.0 °C for their lactobacilli, 32.3 °C for
// the cardinal curve.
func TestOptimumIsTheHighestPoint(t *testing.T) {
	published := map[string]float64{"ganzle-yeast": 27.1, "ganzle-lactobacilli": 33.0, "saccharomyces": 32.3}
	for _, c := range ferment.Curves() {
		about := c.About()
		best, at := 0.0, 0.0
		for x := about.Low; x <= about.High; x += 0.01 {
			if r := c.Rate(x); r > best {
				best, at = r, x
			}
		}
		peak, rate := c.Optimum()
		if rate < best*(1-1e-9) || rate > best*1.002 { // a step of 0.01 °C further there may be a little more
			t.Errorf("%s: optimum %v of %g, looking everywhere finds %g at %.2f", about.Key, peak, rate, best, at)
		}
		if want, ok := published[about.Key]; ok && !(math.Abs(peak.Celsius()-want) <= 0.06) {
			t.Errorf("%s: optimum at %v, published %.1f °C", about.Key, peak, want)
		}
	}
}

// Reading a law that there is not leaves none behind, whatever was there before.
func TestReadingALawReplacesIt(t *testing.T) {
	for _, text := range []string{"", "nonsense"} {
		l := ferment.GasBalance()
		err := l.UnmarshalText([]byte(text))
		if (err != nil) != (text != "") || !l.IsZero() {
			t.Errorf("%q: %v, %v left", text, err, l)
		}
	}
}

// A followed dough equals itself and its copy, and no other: neither one with a reading more nor one of another dough.
func TestFollowedEquality(t *testing.T) {
	start := func(rise float64) ferment.Followed {
		f, err := ferment.Bulk{
			Inoculation: quantity.NewPercent(9), Hydration: quantity.NewPercent(72), Salt: quantity.NewPercent(2),
			Rise: quantity.NewPercent(rise), Law: ferment.GasBalance(),
		}.Follow(quantity.Celsius(24))
		if err != nil {
			t.Fatal(err)
		}
		return f
	}
	a := start(75)
	if !a.Equal(start(75)) {
		t.Error("the same dough is not equal")
	}
	if a.Equal(start(80)) {
		t.Error("another rise is equal")
	}
	none := ferment.Followed{}
	if a.Equal(none) || none.Equal(a) || !none.Equal(ferment.Followed{}) {
		t.Error("a dough is equal to none")
	}
	read := func(f ferment.Followed, minutes int, celsius float64) ferment.Followed {
		g, err := f.Read(time.Duration(minutes)*time.Minute, quantity.Celsius(celsius))
		if err != nil {
			t.Fatal(err)
		}
		return g
	}
	once := read(a, 10, 24)
	switch {
	case once.Equal(a):
		t.Error("a reading more is equal")
	case !once.Equal(read(a, 10, 24)):
		t.Error("the same reading is not equal")
	case once.Equal(read(a, 11, 24)) || once.Equal(read(a, 10, 25)):
		t.Error("another reading is equal")
	case once.Equal(read(start(80), 10, 24)):
		t.Error("the same reading of another dough is equal")
	}
}
