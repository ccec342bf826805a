package gasbalance

import (
	"math"
	"testing"

	"example.org/maslin/internal/numeric"
)

func TestNewRefusesWhatIsNoLaw(t *testing.T) {
	if _, ok := New(Standing()); !ok {
		t.Fatal("the standing law is refused")
	}
	for name, change := range map[string]func(*Parameters){
		"no gas": func(p *Parameters) { p.Gas = 0 }, "no growth": func(p *Parameters) { p.Growth = -1 },
		"no capacity":       func(p *Parameters) { p.Capacity = math.NaN() },
		"no ripeness":       func(p *Parameters) { p.Ripe = math.Inf(1) },
		"no halfway":        func(p *Parameters) { p.Halfway = 0 },
		"none for tolerant": func(p *Parameters) { p.HalfwayTolerant = 0 },
		"not full":          func(p *Parameters) { p.Fullest = 0 }, "stiffness": func(p *Parameters) { p.Stiffness = 6 },
		"negative stiffness": func(p *Parameters) { p.Stiffness = -0.1 }, "mixture": func(p *Parameters) { p.Mixture = 1.1 },
		"negative mixture": func(p *Parameters) { p.Mixture = -0.1 }, "whole": func(p *Parameters) { p.Whole = -6 },
		"gas curve":     func(p *Parameters) { p.GasCurve = Curve{} },
		"yeast curve":   func(p *Parameters) { p.YeastCurve = Curve{} },
		"humilis curve": func(p *Parameters) { p.HumilisCurve = Curve{} },
	} {
		p := Standing()
		change(&p)
		if _, ok := New(p); ok {
			t.Errorf("%s: taken", name)
		}
	}
	p := Standing()
	p.Stiffness, p.Mixture, p.Whole = 0, 1, 0
	l, ok := New(p)
	if !ok || l.Pace(Formula{Hydration: 0.5, Whole: 1}) != 1 || l.LevainGrowth(20) != l.YeastCurve.Rate(20) {
		t.Error("zeros that mean something are refused, or mean something else")
	}
}

// A rival curve made of a function is tabulated like those in closed form.
func TestCustomCurve(t *testing.T) {
	own := YeastGrowth()
	if _, ok := Custom("slow", 0, 40, func(x float64) float64 { return 0.3 * own.Rate(x) }); !ok {
		t.Error("a rate below one is refused")
	}
	c, ok := Custom("mine", 0, 40, func(x float64) float64 { return 3 * own.Rate(x) })
	if !ok {
		t.Fatal("refused")
	}
	if v := c.Rate(27); !(math.Abs(v-1) <= 1e-12) {
		t.Errorf("%v at 27 °C", v)
	}
	if a, b := c.Integral(5, 31), own.Integral(5, 31); !(math.Abs(a/b-1) <= 1e-9) {
		t.Errorf("integral %v, in closed form %v", a, b)
	}
	for _, bad := range []func(float64) float64{
		func(float64) float64 { return 0 }, func(float64) float64 { return math.NaN() },
		func(float64) float64 { return math.Inf(1) },
	} {
		if _, ok := Custom("bad", 0, 1, bad); ok {
			t.Error("a curve without growth at 27 °C is taken")
		}
	}
	wild, _ := Custom("wild", 0, 40, func(x float64) float64 {
		if x < 10 {
			return -1
		}
		return x
	})
	if wild.Rate(5) != 0 || wild.Rate(27) != 1 {
		t.Errorf("%v, %v", wild.Rate(5), wild.Rate(27))
	}
}

// The parts of the spread add up to what the range uses, and the opening is that of the doc comment.
func TestSpreadParts(t *testing.T) {
	l := Standard()
	c := l.Clock(plain, Vector{})
	s := c.Advance(Start(0.07, 0), 30, 12, 12)
	e := s.LogGas()
	b := Prior(ByLevain).For(0.4)
	b.Cov[Amplitude][Pace], b.Cov[Pace][Amplitude] = -0.02, -0.02
	b.Opens, b.Coldest = true, 20
	p := b.Spread(e)
	if v := b.variance(&e); !(math.Abs(p.Total()-v) <= 1e-12*v) {
		t.Errorf("parts %v, whole %v", p.Total(), v)
	}
	p2 := e[Pace] * e[Pace]
	for name, x := range map[string][2]float64{
		"opening": {p.Opening, p2 * 0.05 * 0.05 * 8 * 8}, "luck": {p.Luck, p2 * 0.12 * 0.12},
		"formula": {p.Formula, p2 * 0.09 * 0.16},
		"slope":   {p.Kitchen[Slope], e[Slope] * e[Slope] * 4e-4}, "amplitude": {p.Kitchen[Amplitude], 0.09 - 0.02*e[Pace]},
	} {
		if !(math.Abs(x[0]-x[1]) <= 1e-9*(1+x[1])) {
			t.Errorf("%s %v, want %v", name, x[0], x[1])
		}
	}
	b.Coldest = 11
	if o := b.Spread(e).Opening; o != 0 {
		t.Errorf("opens by %v above the coldest bake", o)
	}
}

// Where the luck is known from few bakes the range reaches as far as Student's t.
func TestReachIsStudents(t *testing.T) {
	for _, nu := range []float64{6, 12, 30, 1000} {
		b := Belief{Freedom: nu}
		want, err := numeric.StudentQuantile(0.9, nu)
		if err != nil {
			t.Fatal(err)
		}
		const series = 1.4e-3 // what the expansion leaves at six degrees of freedom
		if got := b.Reach(0.02, 0.02); !(math.Abs(got-want) <= series) {
			t.Errorf("ν %v: %v, Student %v", nu, got, want)
		}
		// Welch and Satterthwaite: with half of the variance known the degrees of freedom count four times.
		want, _ = numeric.StudentQuantile(0.9, 4*nu)
		if got := b.Reach(0.04, 0.02); !(math.Abs(got-want) <= 2e-4) {
			t.Errorf("ν %v, half known: %v, Student %v", nu, got, want)
		}
	}
	if b := (Belief{}); b.Reach(1, 1) != z80 {
		t.Error("a luck that is known reaches further")
	}
}

// Ways of kneading have a pace of their own in the belief.
func TestKneadingsPartWays(t *testing.T) {
	rows := benchRows(90)
	for i := range rows {
		rows[i].Y = 0
		if rows[i].Kneading == 1 {
			rows[i].Y = 0.2
		}
	}
	taught := Group{}.With("", "", SumRows(rows)).Taught("", "")
	b0, b1, b2 := taught.Belief(0), taught.Belief(1), taught.Belief(2)
	if d := b1.Mean[Pace] - b2.Mean[Pace]; d < 0.15 || d > 0.2 {
		t.Errorf("the second way is %v faster", d)
	}
	if d := b0.Mean[Pace] - b2.Mean[Pace]; !(math.Abs(d) <= 0.01) {
		t.Errorf("two ways alike differ by %v", d)
	}
}

// The weights that spare ordinary bakes leave their luck as it is, on average.
func TestWeighingIsFair(t *testing.T) {
	var alike, robust, streamed float64
	const n = 30
	for seed := range uint64(n) {
		rows := invented(60, 100+seed)
		for i := range rows {
			rows[i].Scale = 1
		}
		g := Group{}
		bakes := dated(rows)
		for i := range bakes {
			bakes[i].Day = 0 // all of one day: none fades
		}
		weighed, _ := g.LearnRobustly("", "", bakes)
		learned, _ := g.Learn("", "", bakes)
		a, r, l := g.With("", "", SumRows(rows)).Taught("", ""), weighed.Taught("", ""), learned.Taught("", "")
		alike, robust, streamed = alike+a.Luck/n, robust+r.Luck/n, streamed+l.Luck/n
	}
	if !(math.Abs(robust/alike-1) <= 0.05) || !(math.Abs(streamed/alike-1) <= 0.03) {
		t.Errorf("luck %v, by Tukey's weights %v, by surprise %v", alike, robust, streamed)
	}
}

// A dough that keeps its heat warms by 0.40 °C for each L/kg, along a history with a jump too; one that loses it at
// once does not warm.
func TestWarming(t *testing.T) {
	c := Standard().Clock(plain, Vector{})
	h := []Knot{{0, 24}, {2, 22}, {2, 25}}
	knots, s := c.FollowWarm(Start(0, 0.8), h, Warming{}, 3)
	end := knots[len(knots)-1]
	const trial = 0.02 // the heat is that of the gas of a step before it was warmed
	if want := 25 + heatOfGas*c.Gas(&s); !(math.Abs(end.Celsius-want) <= trial) || end.Hour != 3 {
		t.Errorf("%+v, want %v °C", end, want)
	}
	half, s2 := c.FollowWarm(Start(0, 0.8), h, Warming{Share: 0.5}, 3)
	if got, want := half[len(half)-1].Celsius, 25+heatOfGas/2*c.Gas(&s2); !(math.Abs(got-want) <= trial) {
		t.Errorf("half of the heat: %v, want %v", got, want)
	}
	cold := c.AdvanceAlong(Start(0, 0.8), h, 0, 3)
	lost, s3 := c.FollowWarm(Start(0, 0.8), h, Warming{Constant: 0.01}, 3)
	if d := lost[len(lost)-1].Celsius - 25; d < 0 || d > 0.05 || !(math.Abs(s3.Gas/cold.Gas-1) <= 0.01) {
		t.Errorf("%v °C warmer, gas %v for %v", d, s3.Gas, cold.Gas)
	}
	// The jump is in the history of the dough as well, with its excess carried over.
	found := false
	for i := 1; i < len(knots); i++ {
		found = found ||
			knots[i].Hour == 2 && knots[i-1].Hour == 2 && math.Abs(knots[i].Celsius-knots[i-1].Celsius-3) < 1e-9
	}
	if !found {
		t.Errorf("no jump in %v", knots)
	}
	if !(s.Gas > s2.Gas && s2.Gas > s3.Gas) {
		t.Errorf("gas %v, %v, %v", s.Gas, s2.Gas, s3.Gas)
	}
}

// Followed reading by reading a dough is ready when it is by the whole history; its state comes back from its numbers.
func TestCrossedIsTimes(t *testing.T) {
	l := Standard()
	c := l.Clock(plain, Vector{0, 0.1, 0.01, 0, 0})
	b := Prior(ByLevain)
	need := l.Need(0.75, 0.72, 1)
	h := []Knot{{0, 26}, {2, 24}, {4, 23}, {6, 22}, {8, 22}, {12, 21}, {20, 21}}
	start := Start(0.07, 0)
	o := c.Times(start, h, need, &b, 100)
	for side, want := range map[int]float64{-1: o.Early, 0: o.Likely, 1: o.Late} {
		s := start
		for i := 1; i < len(h); i++ {
			hours := h[i].Hour - h[i-1].Hour
			after, ok := c.Crossed(s, hours, h[i-1].Celsius, h[i].Celsius, &need, &b, side)
			if ok {
				if got := h[i-1].Hour + after; !(math.Abs(got-want) <= 2e-3) {
					t.Errorf("side %d: %v h, by the whole history %v", side, got, want)
				}
				if again, ok := c.Crossed(c.Advance(s, hours, h[i-1].Celsius, h[i].Celsius), 1, 22, 22, &need, &b, side); !ok ||
					again != 0 {
					t.Errorf("side %d: crossed already, and again after %v", side, again)
				}
				break
			}
			s = c.Advance(s, hours, h[i-1].Celsius, h[i].Celsius)
		}
		if back := StateOf(s.Floats()); back != s {
			t.Errorf("%+v came back as %+v", s, back)
		}
	}
}
