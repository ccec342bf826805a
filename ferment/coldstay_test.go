package ferment

import (
	"math"
	"testing"

	"example.org/maslin/dough/quantity"
)

// stays is a history of hours and temperatures.
func stays(hoursAndCelsius ...float64) (h History) {
	for i := 0; i < len(hoursAndCelsius); i += 2 {
		h.knots = append(h.knots, knot{Hour: hoursAndCelsius[i], Celsius: hoursAndCelsius[i+1]})
	}
	return h
}

// Time above a limit is counted along the straight runs; a dough held at the limit of a refrigerator is not above it,
// and what is below 10 °C is a stay in the cold, however short its coldest moment.
func TestTimeInTheWarmAndInTheCold(t *testing.T) {
	for name, c := range map[string]struct {
		h                    History
		until                float64
		above, long, coldest float64
	}{
		"held warm":           {stays(0, 24), 6, 6, 0, 24},
		"held cold":           {stays(0, 4), 6, 0, 6, 4},
		"held at 5 °C":        {stays(0, 5), 6, 0, 6, 5},
		"held at 10 °C":       {stays(0, 10), 6, 6, 6, 10},
		"held just above":     {stays(0, 5.001), 6, 6, 6, 5.001},
		"cooling through 5":   {stays(0, 7, 4, 3), 4, 2, 4, 3},
		"cooling through 10":  {stays(0, 16, 4, 8), 4, 4, 1, 8},
		"down and up":         {stays(0, 20, 2, 0, 4, 20), 4, 3, 2, 0},
		"coldest in between":  {stays(0, 12, 1, 2, 2, 12, 9, 12), 9, 1.4 + 7, 1.6, 2},
		"up from 5 °C":        {stays(0, 5, 2, 9), 2, 2, 2, 5},
		"jumping into a room": {stays(0, 4, 3, 4, 3, 21), 5, 2, 3, 4},
	} {
		above, cold := timeAbove(c.h, c.until, 5)
		if !(math.Abs(above-c.above) <= 1e-9 && math.Abs(cold.long-c.long) <= 1e-9 && cold.coldest == c.coldest) {
			t.Errorf("%s: %v h above 5 °C, %+v; want %v, %v, %v", name, above, cold, c.above, c.long, c.coldest)
		}
	}
}

// A refrigerator is too warm when a dough was in it for over two hours and did not come to 5.5 °C, which leaves a large
// dough half a degree to go.
func TestWhenARefrigeratorIsTooWarm(t *testing.T) {
	for c, want := range map[chill]bool{{2, 8}: false, {2.01, 8}: true, {2.5, 8}: true, {12, 5.5}: false, {12, 5.51}: true,
		{12, 4}: false, {0, 100}: false} {
		if c.tooWarm() != want {
			t.Errorf("%+v: %v", c, !want)
		}
	}
}

// No dough holds more than 300 %, so that much is told as over it.
func TestRisesInWords(t *testing.T) {
	for rise, want := range map[float64]string{0: "0 %", 99.4: "99 %", 299: "299 %", 300: "over 300 %"} {
		if got := riseWords(quantity.NewPercent(rise)).String(); got != want {
			t.Errorf("%v %%: %q, want %q", rise, got, want)
		}
	}
	if got, want := bandWords(newBand(0.5, 1, 4)).String(), "50 % to over 300 %, likely 100 %"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}

// A table of a derivation has rows of a round number of hours, the shortest with which there are at most twelve.
func TestRowsOfATable(t *testing.T) {
	round := []float64{0.25, 0.5, 1, 2, 3, 4, 6, 8, 12, 24, 48}
	for i, step := range round {
		if got := rowLength(12 * step); got != step {
			t.Errorf("%v h in rows of %v h, want twelve of %v h", 12*step, got, step)
		}
		want := (12*step + 0.01) / 12
		if i+1 < len(round) {
			want = round[i+1]
		}
		if got := rowLength(12*step + 0.01); got != want {
			t.Errorf("%v h in rows of %v h, want %v h", 12*step+0.01, got, want)
		}
	}
}

// The decimals of a formula are found as whole numbers, one after the other, and nothing else is.
func TestDecimalsInAFormula(t *testing.T) {
	for text, want := range map[string]string{"0.0124·(36 − T)^2.981": "0.0124", "·12.75·T": "12.75", "a.b + 3.5": "3.5",
		"1. and .5 and 2": "", "": "", "7.0": "7.0"} {
		from, point, to, ok := decimalIn(text)
		if got := text[from:to]; got != want || ok != (want != "") || ok && text[point] != '.' {
			t.Errorf("%q in %q, want %q", got, text, want)
		}
	}
	if got := formulaTold("50 %d of 12.75·T^0.5").String(); got != "50 %d of 12.75·T^0.5" {
		t.Error(got)
	}
}

// A function is followed by straight lines within the tolerance, with a knot at each mark and no more than it takes.
func TestFunctionsAreFollowed(t *testing.T) {
	bent := func(x float64) float64 { return 20 + math.Abs(x-2) }
	got := follow(bent, []float64{0, 2, 5}, 0.001)
	if want := []knot{{Hour: 0, Celsius: 22}, {Hour: 2, Celsius: 20}, {Hour: 5, Celsius: 23}}; len(got) != 3 ||
		got[0] != want[0] || got[1] != want[1] || got[2] != want[2] {
		t.Errorf("%v, want %v", got, want)
	}
	cooling := func(x float64) float64 { return 4 + 20*math.Exp(-40*x) } // settles within minutes of two days
	h := History{knots: follow(cooling, []float64{0, 48}, 0.01)}
	for x := 0.0; x < 48; x += 0.003 {
		if c := h.celsius(x); !(math.Abs(c-cooling(x)) <= 0.012) {
			t.Fatalf("%v °C after %v h, want %v °C", c, x, cooling(x))
		}
	}
	if n := len(h.knots); n > 120 {
		t.Errorf("%d knots", n)
	}
}

// The end of a stretch is what was there before a jump, its beginning what is there after it; and before the first knot
// and after the last the temperature is held.
func TestHistoriesAtTheirKnots(t *testing.T) {
	h := stays(1, 20, 3, 24, 3, 6, 5, 10)
	for _, c := range []struct{ at, now, ending float64 }{{0, 20, 20}, {1, 20, 20}, {2, 22, 22}, {3, 6, 24}, {4, 8, 8},
		{5, 10, 10}, {9, 10, 10}} {
		if now, ending := h.celsius(c.at), h.endingAt(c.at); now != c.now || ending != c.ending {
			t.Errorf("at %v h: %v °C, ending at %v °C; want %v and %v", c.at, now, ending, c.now, c.ending)
		}
	}
}
