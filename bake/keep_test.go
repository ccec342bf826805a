package bake

import (
	"math"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/internal/trial"
	"example.org/maslin/internal/workcheck"
)

func anyStay(t *rapid.T) Stay {
	c := rapid.Float64Range(-1, 32).Draw(t, "stay °C")
	if rapid.IntRange(0, 3).Draw(t, "frozen") == 0 {
		c = rapid.Float64Range(-40, -12).Draw(t, "freezer °C")
	}
	return Stay{quantity.Elapsed(time.Duration(rapid.IntRange(1, 20000).Draw(t, "min")) * time.Minute),
		quantity.Celsius(c)}
}

// Time never makes bread fresher, a stay cut in two is the same stay, the order of stays does not matter, warmer never
// stales faster, and °F is °C; the likely share lies in its range, and the working holds.
func TestStalingProperties(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		loaf := StoredLoaf{Style: anyStyle(rt), Stays: rapid.SliceOfN(rapid.Custom(anyStay), 1, 5).Draw(rt, "stays")}
		share := func(l StoredLoaf) Staleness {
			s, err := l.Staling()
			if err != nil {
				rt.Fatal(err)
			}
			return s
		}
		s := share(loaf)
		if s.Share.Low.Compare(s.Share.Likely) > 0 || s.Share.Likely.Compare(s.Share.High) > 0 {
			rt.Fatal(s.Share)
		}
		for i := 1; i < len(s.After); i++ {
			if s.After[i].Compare(s.After[i-1]) < 0 {
				rt.Fatalf("fresher after stay %d: %v", i, s.After)
			}
		}
		if s.After[len(s.After)-1] != s.Share.Likely {
			rt.Fatal(s.After, s.Share)
		}
		near := func(what string, l StoredLoaf) {
			if d := share(l).Share.Likely.Points() - s.Share.Likely.Points(); !(math.Abs(d) <= 1e-5) {
				rt.Fatalf("%s: %v apart", what, d)
			}
		}
		first := loaf.Stays[0]
		half := Stay{first.For / 2, first.At}
		if half.For >= quantity.Elapsed(time.Minute) {
			near("in two", StoredLoaf{loaf.Style, append([]Stay{half, half}, loaf.Stays[1:]...)})
		}
		near("turned", StoredLoaf{loaf.Style, append(append([]Stay{}, loaf.Stays[1:]...), first)})
		f := Stay{first.For, quantity.Fahrenheit(first.At.Fahrenheit())}
		near("°F", StoredLoaf{loaf.Style, append([]Stay{f}, loaf.Stays[1:]...)})
		if c := first.At.Celsius(); c >= -1 && c < 31 {
			warm := Stay{first.For, quantity.Celsius(c + 1)}
			if share(StoredLoaf{loaf.Style, append([]Stay{warm}, loaf.Stays[1:]...)}).Share.Likely.Compare(s.Share.Likely) > 0 {
				rt.Fatalf("warmer than %v stales faster", first.At)
			}
		}
		longer := Stay{first.For + quantity.Elapsed(time.Hour), first.At}
		if share(StoredLoaf{loaf.Style, append([]Stay{longer}, loaf.Stays[1:]...)}).Share.Likely.Compare(s.Share.Likely) < 0 {
			rt.Fatal("longer is fresher")
		}
		for _, fault := range workcheck.Faults(s.Working()) {
			rt.Fatal(fault)
		}
		if n := s.Working().Len(); n < 3 {
			rt.Fatal(n)
		}
	})
}

// The time at 21 °C that an answer names firms as far.
func TestStalingAtRoomTemperature(t *testing.T) {
	s, err := StoredLoaf{Style: Pan, Stays: []Stay{{minuteOf(24 * 60), quantity.Celsius(4)}}}.Staling()
	if err != nil {
		t.Fatal(err)
	}
	same, err := StoredLoaf{Style: Pan, Stays: []Stay{{s.AtRoom, quantity.Celsius(21)}}}.Staling()
	if err != nil || !(math.Abs(same.Share.Likely.Points()-s.Share.Likely.Points()) <= 0.05) {
		t.Error(s, same, err)
	}
	text := s.Report().Text(report.Options{Width: 80})
	for _, want := range []string{"bread firms fastest", "2 to 3 days", "freeze it on the day"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in\n%s", want, text)
		}
	}
	frozen, err := StoredLoaf{Style: Baguette, Stays: []Stay{{minuteOf(9999), quantity.Celsius(-18)}}}.Staling()
	if err != nil || !frozen.Share.High.IsZero() || frozen.AtRoom != 0 {
		t.Error(frozen, err)
	}
	if text := frozen.Report().Text(report.Options{Width: 80}); !strings.Contains(text, "stands still") ||
		!strings.Contains(text, "4 to 8 hours") {
		t.Error(text)
	}
}

func minuteOf(n int) quantity.Elapsed { return quantity.Elapsed(time.Duration(n) * time.Minute) }

func TestHostileStays(t *testing.T) {
	day, c := minuteOf(1440), quantity.Celsius
	for name, x := range map[string]struct {
		loaf StoredLoaf
		want string
	}{
		"nothing": {StoredLoaf{}, "stays required"},
		"many":    {StoredLoaf{Stays: make([]Stay, 101)}, "stays out of range"},
		"wild": {StoredLoaf{Style: 99, Stays: []Stay{{0, c(math.NaN())}, {day * 400, c(99)}}},
			"style out of range; stays[0].for required; stays[0].at required; stays[1].for out of range; " +
				"stays[1].at out of range"},
		"half frozen": {StoredLoaf{Stays: []Stay{{day, c(-5)}}}, "stays[0].at outside the model's range"},
		"just frozen": {StoredLoaf{Stays: []Stay{{day, c(-11.9)}}}, "stays[0].at outside the model's range"},
		"hot":         {StoredLoaf{Stays: []Stay{{day, c(20)}, {day, c(32.1)}}}, "stays[1].at outside the model's range"},
	} {
		_, err := x.loaf.Staling()
		if got := trial.Refused(err); got != x.want {
			t.Errorf("%s: %s, want %s", name, got, x.want)
		}
	}
	for _, edge := range []float64{-12, -1, 32} {
		if _, err := (StoredLoaf{Stays: []Stay{{day, c(edge)}}}).Staling(); err != nil {
			t.Error(edge, err)
		}
	}
}
