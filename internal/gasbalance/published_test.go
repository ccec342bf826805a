package gasbalance

import (
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"
)

// row is one line of testdata/published.csv with its inputs taken apart.
type row struct {
	t  *testing.T
	id string
	in map[string]string
}

func (r row) has(key string) bool { return r.in[key] != "" }

func (r row) f(key string) float64 {
	if !r.has(key) {
		return 0
	}
	return r.parse(r.in[key])
}

func (r row) parse(s string) float64 {
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		r.t.Fatalf("%s: %v", r.id, err)
	}
	return v
}

func (r row) numbers(key string) (out []float64) {
	for _, s := range strings.Fields(r.in[key]) {
		out = append(out, r.parse(s))
	}
	return out
}

func (r row) formula() Formula {
	return Formula{
		Hydration: r.f("h"), Salt: r.f("salt"), Sugar: r.f("sugar"), Whole: r.f("whole"),
		Osmotolerant: r.has("osmotolerant"),
	}
}

func (r row) atm() float64 {
	if r.has("atm") {
		return r.f("atm")
	}
	return 1
}

// start is the dough: levain in percent of the flour, times a ripe levain's cells; yeast as instant yeast.
func (r row) start() State {
	return Start(r.f("levain")/100*Standard().RipeLevain(), r.f("yeast"))
}

func (r row) kind() Leavening {
	if !r.has("levain") {
		return ByYeast
	}
	if r.has("yeast") {
		return ByBoth
	}
	return ByLevain
}

// history is the path given, or the dough drifting from start toward temperatures: triples of °C, time constant and
// hours, a knot each quarter of an hour.
func (r row) history() (out []Knot) {
	for _, s := range strings.Fields(r.in["path"]) {
		h, c, _ := strings.Cut(s, ":")
		out = append(out, Knot{r.parse(h), r.parse(c)})
	}
	if v := r.numbers("toward"); len(v) > 0 {
		at, c := 0.0, r.f("start")
		out = append(out, Knot{at, c})
		for ; len(v) >= 3; v = v[3:] {
			n := int(math.Round(v[2] / 0.25))
			for i := 1; i <= n; i++ {
				out = append(out, Knot{at + 0.25*float64(i), v[0] + (c-v[0])*math.Exp(-0.25*float64(i)/v[1])})
			}
			at, c = at+v[2], out[len(out)-1].Celsius
		}
	}
	return out
}

func (r row) unknowns() Vector {
	return Vector{r.f("a"), r.f("b"), r.f("d"), r.f("c"), r.f("w"), 0}
}

// known is the prior with its luck and the growth of yeast known, as in the reference.
func known(kind Leavening) Belief {
	b := Prior(kind)
	b.Freedom, b.Cov[Growth][Growth] = 0, 0
	return b
}

func (r row) answer() float64 {
	l := Standard()
	curve := map[string]Curve{"gas": l.GasCurve, "yeast": l.YeastCurve, "humilis": l.HumilisCurve}[r.in["curve"]]
	switch r.in["calc"] {
	case "rate":
		if r.in["curve"] == "levain" {
			return l.LevainGrowth(r.f("t"))
		}
		return curve.Rate(r.f("t"))
	case "integral":
		return curve.Integral(r.f("from"), r.f("to"))
	case "ostwald":
		return Ostwald(r.f("t"))
	case "solutes":
		return r.formula().Solutes()
	case "ideal":
		return r.formula().Ideal()
	case "ideal-atm":
		return Atmospheres(r.formula().Ideal(), 27)
	case "pace":
		return l.Pace(r.formula())
	case "ripe-levain":
		return l.RipeLevain()
	case "volume":
		return Volume(r.f("h"))
	case "pressure":
		return Pressure(r.f("m"))
	case "pressure-hpa":
		return 1013.25 * Pressure(r.f("m"))
	case "need":
		n := l.Need(r.f("rise"), r.f("h"), r.atm())
		return n.Gas(r.f("t"))
	case "rise":
		return l.Rise(r.f("gas"), r.f("t"), r.f("h"), r.atm())
	case "state":
		return r.state()
	case "times":
		return r.times()
	case "handed":
		c := l.Clock(r.formula(), Vector{})
		h := c.Likely(r.start(), []Knot{{0, r.f("t")}}, l.Ripeness(0), 100)
		s := r.start()
		c.run(&s, h, r.f("t"), r.f("t"))
		handed := s.HandOn(1)
		return handed.Yeast
	case "heat":
		c := l.Clock(r.formula(), Vector{})
		knots, s := c.FollowWarm(r.start(), []Knot{{0, r.f("t")}}, Warming{Constant: r.f("tau")}, r.f("hours"))
		if r.in["out"] == "excess" {
			return knots[len(knots)-1].Celsius - r.f("t")
		}
		return c.Gas(&s)
	case "learned":
		return r.learned()
	}
	r.t.Fatalf("%s: no calculation %q", r.id, r.in["calc"])
	return 0
}

func (r row) state() float64 {
	c := Standard().Clock(r.formula(), r.unknowns())
	s := r.start()
	h := r.history()
	for i := 1; i < len(h); i++ {
		c.run(&s, h[i].Hour-h[i-1].Hour, h[i-1].Celsius, h[i].Celsius)
	}
	e := s.LogGas()
	end := h[len(h)-1].Celsius
	switch r.in["out"] {
	case "levain":
		return s.Levain
	case "yeast":
		return s.Yeast
	case "gas":
		return c.Gas(&s)
	case "celsius":
		return end
	case "rise":
		return Standard().Rise(c.Gas(&s), end, r.f("h"), r.atm())
	case "db":
		return e[Pace]
	case "dd":
		return e[Slope]
	case "dc":
		return e[ColdEnd]
	case "dw":
		return e[Mixture]
	}
	r.t.Fatalf("%s: no output %q", r.id, r.in["out"])
	return 0
}

func (r row) times() float64 {
	l := Standard()
	f := r.formula()
	need := l.Need(r.f("rise"), f.Hydration, r.atm())
	if r.has("ripe") {
		need = l.Ripeness(r.f("ripe"))
	}
	b := known(r.kind()).For(l.Unusual(f))
	o := l.Clock(f, Vector{}).Times(r.start(), r.history(), need, &b, 720)
	return map[string]float64{"early": o.Early, "likely": o.Likely, "late": o.Late}[r.in["out"]]
}

func TestPublished(t *testing.T) {
	rows := readCSV(t, "testdata/published.csv")
	if len(rows) < 130 {
		t.Fatalf("%d rows", len(rows))
	}
	seen := map[string]bool{}
	for _, fields := range rows {
		r := row{t, fields[0], map[string]string{}}
		if seen[r.id] {
			t.Errorf("%s: twice", r.id)
		}
		seen[r.id] = true
		for _, pair := range strings.Split(fields[2], ";") {
			k, v, _ := strings.Cut(pair, "=")
			r.in[k] = v
		}
		want, tolerance := r.parse(fields[3]), r.parse(fields[4])
		if got := r.answer(); !(math.Abs(got-want) <= tolerance) {
			t.Errorf("%s: %s: %s = %.9g, want %g ± %g", r.id, fields[1], fields[2], got, want, tolerance)
		}
	}
}

func readCSV(t testing.TB, name string) [][]string {
	t.Helper()
	f, err := os.Open(name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(fmt.Errorf("%s: %w", name, err))
	}
	return rows[1:]
}
