package ferment

import (
	"fmt"
	"math"
	"sort"
	"strings"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/numeric"
)

// Estimate is when a dough is ready and how it rises until then: a range, never one number.
type Estimate struct {
	bulk  Bulk
	f     fermentation
	nodes []node
	// hours until ready; +Inf when not within the Horizon
	early, likely, late float64
	readings            []RiseReading
	notes               []working.Message
}

// Estimate answers: when has the dough risen that far, in this kitchen, with this culture?
//
//	M(t) = ∫ μ(T(t)) dt,   R(t) = f·s/K·(exp(p·M(t)) − 1),   ready when p·M = ln(1 + K·R/(f·s))
//
// M is the dose; μ the curve's rate, 1/h; T the history; R the rise (0.75 is 75 %); f the prefermented share of the flour; s the salt
// factor, 1 for 2 % salt at 75 % hydration; K the amplitude, 1 for a culture nothing is known of; p its pace, with its
// temperature sensitivity. For commercial yeast f is 10 for each percent of instant yeast and μ is 0.07/h at 27 °C, so that the time goes as one over
// the dose.
//
// ln K and ln p are normal; to first order so is the log of the dose received over the dose needed, which gives the times at which the dough is
// ready with 10, 50 and 90 % probability: Early, Likely and Late enclose 80 %.
//
// Valid for inoculations of 0.01 to 100 % and rises of 1 to 300 %, at temperatures the curve may be used at; metabolic heat and the
// gas that dissolves before anything rises (a quarter of what a doubling needs) are within the amplitude's spread. Accuracy is what the range
// claims; it holds the truth in four of five bakes.
//
// Errors: ErrRequired, ErrOutOfRange and ErrInconsistent in the fields; ErrModelRange when the history leaves the curve's range before
// the late end, unless Extrapolate. A dough that is not ready within 30 days is an answer: see [Estimate.Reached].
//
// Source: growth: Gänzle, Ehmann and Hammes 1998; rise from growth, amplitude and spreads: judgments set on trade practice, as the package
// comment says.
func (b Bulk) Estimate() (Estimate, error) {
	f, err := b.check(true)
	if err != nil {
		return Estimate{}, err
	}
	return estimate(b, f, nil)
}

func estimate(b Bulk, f fermentation, readings []RiseReading) (Estimate, error) {
	e := Estimate{bulk: b, f: f, readings: readings}
	if err := e.run(); err != nil {
		return Estimate{}, err
	}
	if err := e.inRange(); err != nil {
		return Estimate{}, err
	}
	e.note()
	return e, nil
}

// run finds the three times of the target.
func (e *Estimate) run() error {
	h, sens := e.f.need(e.f.target)
	nodes, times := e.f.walk(e.bulk.History, h, sens)
	e.nodes, e.early, e.likely, e.late = nodes, times[0], times[1], times[2]
	return sane(nodes[len(nodes)-1].dose)
}

// walk follows a history until the dose received has passed exp(h) with 90 % probability, and returns the corners on
// the way and the times of the 10, 50 and 90 % quantiles, +Inf where not within the Horizon.
func (f *fermentation) walk(history History, h, sens float64) (nodes []node, times [3]float64) {
	knots := history.knots
	nodes = make([]node, 1, min(len(knots)+2, 64))
	nodes[0] = node{knot: knot{0, history.celsius(0)}}
	times = [3]float64{math.Inf(1), math.Inf(1), math.Inf(1)}
	next := 0
	at := nodes[0]
	visit := func(q knot) {
		n := f.step(at, q)
		for next < 3 && f.score(n, h, sens, float64(next-1)) >= 0 {
			times[next] = f.cross(at, n, h, sens, float64(next-1))
			next++
		}
		at = n
		nodes = append(nodes, n)
	}
	last := hours(Horizon)
	i := history.after(0)
	for ; i < len(knots) && next < 3 && knots[i].h <= last; i++ {
		visit(knots[i])
	}
	if next < 3 && at.h < last {
		c := at.c
		if i < len(knots) {
			c = between(at.knot, knots[i], last)
		}
		visit(knot{last, c})
	}
	return nodes, times
}

// score is the expected log of the dose received over the dose needed, less q spreads: 0 at the time of the quantile.
func (f *fermentation) score(n node, h, sens, q float64) float64 {
	if !(n.dose > 0) {
		return math.Inf(-1)
	}
	mean := n.mean()
	s := f.expected(n.dose, mean) - h
	if q != 0 {
		v := f.variance(mean, sens)
		s -= q * f.out.spread(v) * math.Sqrt(v)
	}
	return s
}

// cross is the time within a run at which the score turns positive.
func (f *fermentation) cross(p, n node, h, sens, q float64) float64 {
	// Only the end of the run has a jump's later temperature; within, it runs straight.
	at := func(t float64) float64 {
		m := f.step(p, knot{t, between(p.knot, n.knot, t)})
		return math.Max(f.score(m, h, sens, q), -700)
	}
	if n.h <= p.h || at(p.h) >= 0 {
		return p.h
	}
	t, err := numeric.Root(at, p.h, n.h, 1e-7)
	if err != nil {
		return n.h
	}
	return t
}

// at is the node at any time.
func (e *Estimate) at(t float64) node {
	i := sort.Search(len(e.nodes), func(i int) bool { return e.nodes[i].h > t })
	p := e.nodes[i-1]
	if i < len(e.nodes) {
		return e.f.step(p, knot{t, between(p.knot, e.nodes[i].knot, t)})
	}
	// Beyond the late end: on along the history.
	from := p.h
	e.bulk.History.segments(from, t, func(a, b knot) {
		if a.h == p.h {
			p.c = a.c
		}
		p = e.f.step(p, b)
	})
	return p
}

// inRange refuses temperatures at which the curve may not be used.
func (e *Estimate) inRange() error {
	about := e.bulk.bounds()
	lo, hi := math.Inf(1), math.Inf(-1)
	end := math.Min(e.late, hours(Horizon))
	for _, n := range e.nodes {
		if n.h > end {
			c := e.bulk.History.celsius(end)
			lo, hi = math.Min(lo, c), math.Max(hi, c)
			break
		}
		lo, hi = math.Min(lo, n.c), math.Max(hi, n.c)
	}
	const rounding = 1e-6
	if lo >= about.Low-rounding && hi <= about.High+rounding {
		return nil
	}
	got := fixed(lo, 1) + " to " + fixed(hi, 1) + " °C"
	want := fixed(about.Low, 0) + " to " + fixed(about.High, 0) + " °C for the curve " + about.Name
	if !e.bulk.Extrapolate {
		var p problems
		p.Add("History", got, want+", or Extrapolate", quantity.ErrModelRange)
		return p.Err()
	}
	e.notes = append(e.notes, working.Say("extrapolated: the dough is at %.1f to %.1f, the curve %s is for %.0f to %.0f",
		degrees(lo), degrees(hi), about.Name, degrees(about.Low), degrees(about.High)))
	return nil
}

func (e *Estimate) note() {
	h := e.bulk.History
	e.notes = append(e.notes, h.notes...)
	if h.measured && e.late > h.knots[len(h.knots)-1].h {
		e.notes = append(e.notes, working.Say("the history ends after %s; from there the last temperature, %.1f, is held",
			quantity.FormatDuration(h.Known()), degrees(h.knots[len(h.knots)-1].c)))
	}
	if mean := e.at(math.Min(e.likely, hours(Horizon))).mean(); mean > e.f.hot() {
		e.notes = append(e.notes, working.Say("above %.0f growth and gas production part ways: the range is wider", degrees(e.f.hot())))
	} else if mean < cold {
		e.notes = append(e.notes, working.Say("below %.0f the curves part ways: the range is wider, and if it is wrong the dough is early", degrees(cold)))
	}
	if e.f.kind == byBoth {
		e.notes = append(e.notes, working.Say("levain and yeast together: their gas is added up; that neither hinders the other is a judgment, and the range is wider for it"))
	}
	if e.f.target > 2 {
		e.notes = append(e.notes, working.Say("few doughs hold a rise beyond 200 % without falling"))
	}
	switch {
	case math.IsInf(e.likely, 1):
		e.notes = append(e.notes, working.Say("not ready within 30 days at these temperatures"))
	case math.IsInf(e.late, 1):
		e.notes = append(e.notes, working.Say("the late end lies beyond 30 days"))
	}
}

// Ready is when the dough is ready, from the start of the history. An end that is not within the 30 days of [Horizon] is given
// as 30 days; [Estimate.Reached] tells.
func (e Estimate) Ready() quantity.TimeRange {
	cap := hours(Horizon)
	return quantity.TimeRange{
		Early: span(math.Min(e.early, cap)), Likely: span(math.Min(e.likely, cap)), Late: span(math.Min(e.late, cap)),
		Probability: probabilityClaimed,
	}
}

// Reached reports whether the dough is more likely than not to be ready within 30 days.
func (e Estimate) Reached() bool { return len(e.nodes) > 0 && !math.IsInf(e.likely, 1) }

// Bulk is the input the estimate was made from.
func (e Estimate) Bulk() Bulk { return e.bulk }

// Notes are things to know about this estimate.
func (e Estimate) Notes() []working.Message { return append([]working.Message(nil), e.notes...) }

// Band is a rise at one time: Low and High enclose 80 %. A value of 300 % means that or more: gas enough is made, but no dough
// holds it.
type Band struct {
	Low, Likely, High quantity.Percent
}

// String prints "52 % to 97 %, likely 70 %".
func (b Band) String() string {
	text := func(p quantity.Percent) string {
		if p.Compare(greatestRise) >= 0 {
			return "over " + greatestRise.String()
		}
		return p.Text(0)
	}
	return text(b.Low) + " to " + text(b.High) + ", likely " + text(b.Likely)
}

// RiseAt is how far the dough has risen at a time, with a band of 80 %. Errors: ErrRequired for the zero Estimate,
// ErrOutOfRange unless 0 ≤ t ≤ 30 days.
func (e Estimate) RiseAt(t time.Duration) (Band, error) {
	var p problems
	if len(e.nodes) == 0 {
		p.Required("Estimate", "a result of Bulk.Estimate")
	}
	p.Duration("At", t, 0, Horizon)
	if err := p.Err(); err != nil {
		return Band{}, err
	}
	return e.band(hours(t)), nil
}

func (e *Estimate) band(t float64) Band {
	n := e.at(t)
	if !(n.dose > 0) {
		return Band{}
	}
	var r [3]float64
	for i := range r {
		r[i] = e.f.riseQuantile(n, float64(i-1))
	}
	return Band{percent(r[0]), percent(r[1]), percent(r[2])}
}

// riseQuantile finds the rise for which the score is 0: its own sensitivity is in the spread, so by iteration.
func (f *fermentation) riseQuantile(n node, q float64) float64 {
	mean := n.mean()
	h := f.expected(n.dose, mean)
	m := math.Exp(h)
	A := math.Expm1(math.Max(0, m-f.lag))
	if q != 0 {
		plain, both := f.paceVariance(mean), f.together(mean)
		for range 12 {
			e := A / ((1 + A) * m)
			v := e*e*f.out.aa + plain - 2*e*both
			m = math.Exp(h + q*f.out.spread(v)*math.Sqrt(math.Max(0, v)))
			next := math.Expm1(math.Max(0, m-f.lag))
			done := math.Abs(next-A) <= 1e-4*A
			A = next
			if done {
				break
			}
		}
	}
	return A * f.share / f.amplitude
}

// percent is a fraction as a percentage, to a hundredth, and at most the greatest rise: that or more, as Band says.
func percent(fraction float64) quantity.Percent {
	return quantity.NewPercent(math.Round(math.Min(fraction*1e4, greatestRise.Points()*100)) / 100)
}

// RisePoint is one point of the rise over time.
type RisePoint struct {
	At          quantity.Elapsed     `json:"at"`
	Temperature quantity.Temperature `json:"temperature"`
	Rise        Band                 `json:"rise"`
}

// RiseCurve is the rise with its band at n times evenly spaced from 0 to a tenth beyond the late end (30 days at most), n from 2 to
// 10,000; other n give 25.
func (e Estimate) RiseCurve(n int) []RisePoint {
	if len(e.nodes) == 0 {
		return nil
	}
	if n < 2 || n > 10_000 {
		n = 25
	}
	end := math.Min(1.1*math.Min(e.late, 1e6), hours(Horizon))
	out := make([]RisePoint, n)
	for i := range out {
		t := end * float64(i) / float64(n-1)
		out[i] = RisePoint{quantity.Elapsed(span(t)), degrees(e.bulk.History.celsius(t)), e.band(t)}
	}
	return out
}

// Doublings is how often the culture doubles until the dough is likely ready.
func (e Estimate) Doublings() float64 {
	h, _ := e.f.need(e.f.target)
	return math.Exp(h) / math.Ln2
}

// Mean is the mean temperature that counts: weighted by fermentation, until the dough is likely ready.
func (e Estimate) Mean() quantity.Temperature {
	if len(e.nodes) == 0 {
		return quantity.Temperature{}
	}
	return degrees(e.at(math.Min(e.likely, hours(Horizon))).mean())
}

// RestsOn says what the estimate rests on, in plain words.
func (e Estimate) RestsOn() []working.Message {
	if len(e.nodes) == 0 {
		return nil
	}
	b := e.bulk
	var out []working.Message
	add := func(format string, args ...any) { out = append(out, working.Say(format, args...)) }
	if e.f.kind != byYeast {
		add("%.1f of the flour prefermented", b.Inoculation)
	}
	if e.f.kind != byLevain {
		add("%v", b.Yeast)
	}
	if e.f.kind == byBoth {
		n := e.at(math.Min(e.likely, hours(Horizon)))
		add("levain and yeast together: their gas is added up, the yeast making %s %% of it", fixed(100*e.f.shareOfYeast(n), 0))
	}
	add("%.1f salt in the water: %s of the gas at 2 %% salt and 75 %% hydration (judgment)", b.SaltInWater, fixed(e.f.salt, 2))
	add("%s; %v", curves(b), b.History.Message())
	if b.WholeGrain.Sign() > 0 {
		add("%.0f whole grain: %s %% faster (common practice)", b.WholeGrain, fixed(100*math.Expm1(b.WholeGrain.Fraction()*wholeGrainPace), 0))
	}
	if b.Culture.b == nil {
		add("a culture nothing is known of: the range narrows with every bake logged")
	} else {
		add("%v", b.Culture)
	}
	if len(e.readings) > 0 {
		add("%s of this dough", plural(len(e.readings), "reading"))
	}
	return out
}

// curves names the rate curves of a dough.
func curves(b Bulk) string {
	name := b.Curve.About().Name + " curve"
	if b.leavening() == byBoth {
		name += ", " + b.YeastCurve.About().Name + " for the yeast"
	}
	return name
}

// String prints the range and the rise: "75 % rise after 5h10m to 9h00m (80 %), likely 6h50m".
func (e Estimate) String() string {
	if len(e.nodes) == 0 {
		return "no estimate"
	}
	var s strings.Builder
	rise := e.bulk.Rise.Text(0)
	if e.f.target < 0.1 {
		rise = e.bulk.Rise.Text(1)
	}
	fmt.Fprintf(&s, "%s rise after %s", rise, e.Ready())
	if !e.Reached() {
		s.WriteString("; not within 30 days")
	}
	return s.String()
}
