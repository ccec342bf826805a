package gasbalance

import "testing"

var benchState State

func benchRun(b *testing.B, levain, yeast float64, u Vector) {
	c := Standard().Clock(plain, u)
	start := Start(levain, yeast)
	c.run(&start, 1, 24, 24)
	b.ReportAllocs()
	for b.Loop() {
		s := start
		c.stride(&s, 0.25, 24, 23.6)
		benchState = s
	}
}

func BenchmarkRunLevain(b *testing.B) { benchRun(b, 0.07, 0, Vector{}) }
func BenchmarkRunYeast(b *testing.B)  { benchRun(b, 0, 0.5, Vector{}) }
func BenchmarkRunBoth(b *testing.B)   { benchRun(b, 0.07, 0.1, Vector{}) }

// In a kitchen learned from, every unknown counts.
func BenchmarkRunLearned(b *testing.B) { benchRun(b, 0.07, 0.1, Vector{0.1, 0.1, 0.01, 0.2, 0.1}) }

func BenchmarkMeans(b *testing.B) {
	l := Standard()
	s := 0.0
	for b.Loop() {
		mean, _ := l.means(24, 23.6)
		s += mean.gas
	}
	benchState.Gas = s
}

func benchTimes(b *testing.B, history []Knot) {
	l := Standard()
	c := l.Clock(plain, Vector{})
	belief := Prior(ByLevain)
	need := l.Need(0.75, 0.72, 1)
	start := Start(0.091*l.RipeLevain(), 0)
	b.ReportAllocs()
	for b.Loop() {
		o := c.Times(start, history, need, &belief, 720)
		if !(o.Late < 720) {
			b.Fatal(o)
		}
	}
}

func BenchmarkTimesConstant(b *testing.B) { benchTimes(b, []Knot{{0, 24}}) }

func BenchmarkTimesProbe(b *testing.B) {
	h := make([]Knot, 145)
	for i := range h {
		h[i] = Knot{float64(i) / 6, 22 + float64(i%7)*0.1}
	}
	benchTimes(b, h)
}

func BenchmarkLikely(b *testing.B) {
	l := Standard()
	c := l.Clock(plain, Vector{})
	need := l.Need(0.75, 0.72, 1)
	start := Start(0.091*l.RipeLevain(), 0)
	b.ReportAllocs()
	for b.Loop() {
		c.Likely(start, []Knot{{0, 24}}, need, 720)
	}
}

func benchRows(n int) []Row {
	l := Standard()
	rows := make([]Row, n)
	for i := range rows {
		b := Logged{
			Start: Start(0.091*l.RipeLevain(), 0), Formula: plain, History: []Knot{{0, 20 + float64(i%9)}},
			Hours: 8 - float64(i%9)*0.5, Rise: 0.75, Error: 0.05, Pressure: 1, Kneading: i % 3,
		}
		rows[i], _ = l.Row(ByLevain, &b)
	}
	return rows
}

func benchOwnPace(b *testing.B, history []Knot) {
	l := Standard()
	bakes := make([]Logged, 64)
	for i := range bakes {
		bakes[i] = Logged{
			Start: Start(0.09*l.RipeLevain()*(1+0.1*float64(i%7)), 0), Formula: plain, History: history,
			Hours: 5 + 0.3*float64(i%11), Rise: 0.5 + 0.1*float64(i%5), Error: 0.05, Pressure: 1,
		}
	}
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		if _, ok := l.RowAtOwnPace(ByLevain, &bakes[i%len(bakes)]); !ok {
			b.Fatal("no row")
		}
	}
}

func BenchmarkOwnPaceHeld(b *testing.B)    { benchOwnPace(b, []Knot{{0, 24}}) }
func BenchmarkOwnPaceCooling(b *testing.B) { benchOwnPace(b, []Knot{{0, 26}, {3, 23}, {6, 21}}) }

func BenchmarkLearn1000(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		g := Group{}.With("", "", SumRows(benchRows(1000)))
		t := g.Taught("", "")
		if t.Bakes != 1000 {
			b.Fatal(t.Bakes)
		}
	}
}

func BenchmarkWithout10000(b *testing.B) {
	rows := benchRows(10_000)
	g, bakes := Group{}.With("", "", SumRows(rows)), dated(rows)
	for b.Loop() {
		g.Without("", "", bakes, nil, func(int, *Taught) {})
	}
}

func BenchmarkObserve(b *testing.B) {
	l := Standard()
	start := Start(0.091*l.RipeLevain(), 0)
	for b.Loop() {
		l.Observe(Prior(ByLevain), plain, Vessel{0.72, 1}, start, []Knot{{0, 24}}, []Reading{{4, 0.4, 0.05}})
	}
}
