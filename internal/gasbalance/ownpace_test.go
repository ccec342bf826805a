package gasbalance

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// At its own pace a bake is just ready when it was: its gas is what its rise takes. The derivatives are those of that
// pace by the other unknowns: a kitchen that is otherwise by a little has a pace that is otherwise by so much.
func TestABakeIsReadyAtItsOwnPace(t *testing.T) {
	l := Standard()
	rapid.Check(t, func(t *rapid.T) {
		between := func(label string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, label) }
		b := Logged{
			Start: Start(between("levain", 0.02, 0.4), 0), Formula: plain,
			History: []Knot{{0, between("°C", 16, 27)}, {4, between("later °C", 16, 27)}},
			Hours:   between("hours", 2, 9), Rise: between("rise", 0.2, 1.2), Error: 0.05, Pressure: 1,
		}
		kind := ByLevain
		if rapid.Bool().Draw(t, "yeast") {
			kind, b.Start = ByYeast, Start(0, between("yeast", 0.02, 0.4))
		}
		r, ok := l.RowAtOwnPace(kind, &b)
		if !ok {
			t.Fatalf("no pace at all for %+v", b)
		}
		n := l.Need(b.Rise, b.Formula.Hydration, b.Pressure)
		need := n.Gas(celsius(b.History, b.Hours))
		excess := func(u Vector) float64 {
			c := l.Clock(b.Formula, u)
			s := c.AdvanceAlong(b.Start, b.History, 0, b.Hours)
			return math.Log(c.Gas(&s) / need)
		}
		if got := excess(Vector{Pace: r.Y}); !(math.Abs(got) <= 2e-3) {
			t.Errorf("the log of the gas is off by %v at the pace %v", got, r.Y)
		}
		if !(math.Abs(r.Y) <= 2) {
			return // a bake that no kitchen could have had
		}
		if !(math.Abs(r.H[Pace]-1) <= 1e-12) {
			t.Errorf("the pace by itself: %v", r.H[Pace])
		}
		const step = 1e-4
		byPace := (excess(Vector{Pace: r.Y + step}) - excess(Vector{Pace: r.Y - step})) / (2 * step)
		for _, i := range []int{Amplitude, Slope, ColdEnd, Mixture, Growth} {
			up, down := Vector{Pace: r.Y}, Vector{Pace: r.Y}
			up[i] += step
			down[i] -= step
			if want := (excess(up) - excess(down)) / (2 * step) / byPace; math.Abs(r.H[i]-want) > 5e-3*(1+math.Abs(want)) {
				t.Errorf("unknown %d: %v, by differences %v", i, r.H[i], want)
			}
		}
		if r.Scale < 1 {
			t.Errorf("a bake more certain than its luck: %v", r.Scale)
		}
		// A rise that was read less well counts for less.
		b.Error = 0.1
		if worse, _ := l.RowAtOwnPace(kind, &b); worse.Scale <= r.Scale {
			t.Errorf("a worse reading has the scale %v, a better one %v", worse.Scale, r.Scale)
		}
	})
	none := Logged{Start: Start(0, 0), Formula: plain, History: []Knot{{0, 24}}, Hours: 4, Rise: 0.5, Pressure: 1}
	if _, ok := l.RowAtOwnPace(ByLevain, &none); ok {
		t.Error("a dough without cells rises")
	}
	none.Start, none.Rise = Start(0.1, 0), 0
	if _, ok := l.RowAtOwnPace(ByLevain, &none); ok {
		t.Error("a dough that did not rise has a pace")
	}
}

// The temperature of a row is the mean over the fermentation: that of a dough at one temperature is that one.
func TestTheTemperatureOfARow(t *testing.T) {
	l := Standard()
	for _, at := range []float64{17, 24, 28} {
		b := Logged{Start: Start(0.1, 0), Formula: plain, History: []Knot{{0, at}}, Hours: 5, Rise: 0.5, Error: 0.05,
			Pressure: 1}
		r, ok := l.RowAtOwnPace(ByLevain, &b)
		if !ok || !(math.Abs(r.Celsius-at) <= 1e-6) {
			t.Errorf("%v, a dough held at %v", r.Celsius, at)
		}
	}
}

// What is mixed of parts has the cells of its parts, and they go with the unknowns as in the parts; its gas is new.
func TestPartsOfADough(t *testing.T) {
	l := Standard()
	c := l.Clock(plain, Vector{})
	ripe := c.AdvanceAlong(Start(0.1, 0.03), []Knot{{0, 24}}, 0, 6)
	a, b := ripe.HandOn(0.2), ripe.HandOn(0.05)
	whole, want := Mix(a, b), ripe.HandOn(0.25)
	same := func(x, y float64) bool { return math.Abs(x-y) <= 1e-12*(1+math.Abs(y)) }
	if !same(whole.Levain, 0.25*ripe.Levain) || !same(whole.Yeast, 0.25*ripe.Yeast) || whole.Gas != 0 || want.Gas != 0 ||
		!same(whole.Cells(), 0.25*ripe.Cells()) {
		t.Errorf("%+v of %+v", whole, ripe)
	}
	for j := range rides {
		if !same(whole.levain[j], want.levain[j]) || !same(whole.yeast[j], want.yeast[j]) || whole.gas[j] != 0 {
			t.Errorf("unknown %d: %v, %v; want %v, %v", j, whole.levain[j], whole.yeast[j], want.levain[j], want.yeast[j])
		}
	}
	if ripe.levain[Pace-1] == 0 || ripe.yeast[Growth-1] == 0 {
		t.Errorf("cells that do not go with the pace: %+v", ripe)
	}
	fresh := Start(1, 1)
	if got := fresh.LogGas(); got != (Vector{1, 1, 1, 1, 1, 1}) {
		t.Errorf("without gas: %v", got)
	}
}

// Sums that no bakes can have are told from those that some have.
func TestSoundSums(t *testing.T) {
	good := SumRows(invented(5, 1))
	if !good.Sound() || !(&Sums{}).Sound() {
		t.Error("sums of bakes are refused")
	}
	for name, change := range map[string]func(*Sums){
		"bakes":          func(s *Sums) { s.Bakes = -1 },
		"weight":         func(s *Sums) { s.Weight = -1e-9 },
		"weight, none":   func(s *Sums) { s.Weight = math.Inf(1) },
		"squares":        func(s *Sums) { s.Squares = -1e-9 },
		"squares, none":  func(s *Sums) { s.Squares = math.NaN() },
		"coldest":        func(s *Sums) { s.Coldest = math.NaN() },
		"day":            func(s *Sums) { s.Day = math.Inf(-1) },
		"moment":         func(s *Sums) { s.Moment[1][Slope] = math.NaN() },
		"gram":           func(s *Sums) { s.Gram[2][Slope][Pace] = math.Inf(1) },
		"gram, diagonal": func(s *Sums) { s.Gram[0][Pace][Pace] = -1e-9 },
	} {
		s := good
		change(&s)
		if s.Sound() {
			t.Errorf("%s: taken", name)
		}
	}
	known := Group{}.With("", "", good).Taught("", "")
	mean, sd := known.Unknown(Pace)
	if b := known.Belief(0); sd <= 0 || sd >= math.Sqrt(b.Cov[Pace][Pace]) || math.IsNaN(mean) {
		t.Errorf("%v ± %v, with its kneading ± %v", mean, sd, math.Sqrt(b.Cov[Pace][Pace]))
	}
}
