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
			if want := (excess(up) - excess(down)) / (2 * step) / byPace; !(math.Abs(r.H[i]-want) <= 5e-3*(1+math.Abs(want))) {
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

// heldBake draws a bake of one leavening at one temperature: fresh cells, or cells handed on from a preferment, with
// what is unsure of them.
func heldBake(t *rapid.T, l *Law) (b Logged) {
	between := func(label string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, label) }
	b = Logged{
		Formula: Formula{Hydration: between("water", 0.5, 1.1), Salt: between("salt", 0, 3), Whole: between("whole", 0, 1)},
		History: []Knot{{0, between("°C", 2, 42)}}, Hours: between("hours", 0.1, 100), Rise: between("rise", 0.05, 2.5),
		Error: 0.05, Pressure: between("atm", 0.7, 1),
	}
	x := between("cells", 0.001, 1.5)
	b.Start = Start(x, 0)
	if rapid.Bool().Draw(t, "yeast") {
		b.Start = Start(0, x)
	}
	if rapid.Bool().Draw(t, "preferment") {
		ripe := l.Clock(plain, Vector{}).AdvanceAlong(b.Start, []Knot{{0, 24}}, 0, between("ripened", 1, 12))
		b.Start = ripe.HandOn(between("share", 0.05, 0.5))
	}
	return b
}

// A dough that is held at one temperature has the pace and the derivatives that following it gives, by the same steps.
func TestTheOwnPaceOfAHeldDough(t *testing.T) {
	l := Standard()
	drawn, held := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		b := heldBake(t, l)
		drawn++
		n := l.Need(b.Rise, b.Formula.Hydration, b.Pressure)
		need, pace := n.Gas(b.History[0].Celsius), l.Pace(b.Formula)
		y, by, ok := l.heldPace(&b, pace, need)
		want, wantBy, wantOK := l.ownPace(&b, pace, need)
		if !ok {
			return // it is followed instead
		}
		held++
		if !wantOK || !(math.Abs(y-want) <= 1e-9) {
			t.Fatalf("the log of its pace is %v, followed %v, %v", y, want, wantOK)
		}
		for i := range by {
			if !(math.Abs(by[i]-wantBy[i]) <= 1e-8*(1+math.Abs(wantBy[i]))) {
				t.Errorf("unknown %d: %v, followed %v", i, by[i], wantBy[i])
			}
		}
		if b.Start.levain[Pace-1]+b.Start.yeast[Pace-1] != 0 {
			return // the steps are those of cells that go with the pace as well
		}
		// Independently of any step: the pace between two that make too little and too much.
		low, high := -20.0, 20.0
		for range 80 {
			mid := (low + high) / 2
			c := l.ClockAt(pace, Vector{Pace: mid})
			s := c.Advance(b.Start, b.Hours, b.History[0].Celsius, b.History[0].Celsius)
			if s.Gas < need {
				low = mid
			} else {
				high = mid
			}
		}
		if math.Abs(low) < 3 && !(math.Abs(y-low) <= 1e-5) { // no kitchen is twenty times as fast
			t.Errorf("the log of its pace is %v, by halving %v", y, low)
		}
	})
	if 2*held < drawn {
		t.Errorf("only %d of %d doughs were held", held, drawn)
	}
}

// What is not held at one temperature, has two leavenings or makes no gas is not answered for as if it were.
func TestWhatIsNoHeldDough(t *testing.T) {
	l := Standard()
	plainly := Logged{Start: Start(0.1, 0), Formula: plain, History: []Knot{{0, 24}}, Hours: 5, Rise: 0.5, Pressure: 1}
	if _, _, ok := l.heldPace(&plainly, 1, 2); !ok {
		t.Fatal("a dough at 24 °C is not held")
	}
	for name, change := range map[string]func(*Logged){
		"two temperatures": func(b *Logged) { b.History = []Knot{{0, 24}, {1, 25}} },
		"two leavenings":   func(b *Logged) { b.Start = Start(0.1, 0.1) },
		"no cells":         func(b *Logged) { b.Start = Start(0, 0) },
		"crowded":          func(b *Logged) { b.Start = Start(l.Capacity, 0) },
		"no time":          func(b *Logged) { b.Hours = 0 },
		"too long":         func(b *Logged) { b.Hours = longest },
		"no gas":           func(b *Logged) { b.History = []Knot{{0, -20}} },
		"no growth":        func(b *Logged) { b.History = []Knot{{0, 45}} },
	} {
		b := plainly
		change(&b)
		if y, _, ok := l.heldPace(&b, 1, 2); ok {
			t.Errorf("%s: the log of the pace is %v", name, y)
		}
	}
	cold := plainly
	cold.History = []Knot{{0, -20}}
	if r, ok := l.RowAtOwnPace(ByLevain, &cold); ok {
		t.Errorf("a frozen dough has the row %+v", r)
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
