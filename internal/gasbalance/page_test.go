package gasbalance

import (
	"flag"
	"fmt"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"
)

var updatePage = flag.Bool("page", false, "rewrite the tables of CLOCK.md")

const page = "../../ferment/CLOCK.md"

// The tables of the page that tells how the clock works are worked out here: a number that changes is seen.
func TestPage(t *testing.T) {
	text, err := os.ReadFile(page)
	if err != nil {
		t.Fatal(err)
	}
	out := string(text)
	for name, table := range map[string]string{
		"hours": hoursTable(), "rows": rowsTable(t), "elasticities": elasticityTable(), "spread": spreadTable(),
	} {
		from, to := "<!-- "+name+" -->\n", "<!-- end -->"
		head, rest, ok := strings.Cut(out, from)
		_, tail, ok2 := strings.Cut(rest, to)
		if !ok || !ok2 {
			t.Errorf("no place for the table %q", name)
			continue
		}
		out = head + from + table + to + tail
	}
	if out == string(text) {
		return
	}
	if !*updatePage {
		t.Error("the tables of ferment/CLOCK.md are not those of the law: go test ./internal/gasbalance -run " +
			"TestPage -page")
		return
	}
	if err := os.WriteFile(page, []byte(out), 0o644); err != nil {
		t.Fatal(err)
	}
}

// exemplar is a dough the page speaks of.
type exemplar struct {
	name          string
	levain, yeast float64
	f             Formula
	celsius       float64
	rise          float64 // 0 is ripeness
}

var exemplars = []exemplar{
	{"levain 9.1 %, 24 °C, to 75 %", 0.091, 0, plain, 24, 0.75},
	{"levain 9.1 %, 10 °C, to 50 %", 0.091, 0, plain, 10, 0.5},
	{"levain 9.1 %, 30 °C, to 50 %", 0.091, 0, plain, 30, 0.5},
	{"1 % instant yeast, 24.5 °C, doubled", 0, 1, Formula{Hydration: 0.65, Salt: 2}, 24.5, 1},
	{"0.08 % instant yeast, 21 °C, to 175 %", 0, 0.08, Formula{Hydration: 0.75, Salt: 2.1}, 21, 1.75},
	{"1 % instant yeast, 4 °C, doubled", 0, 1, Formula{Hydration: 0.65, Salt: 2}, 4, 1},
	{"1.2 % instant yeast, 20 % sugar, 25 °C, doubled", 0, 1.2, Formula{Hydration: 0.58, Salt: 1.2, Sugar: 20}, 25, 1},
	{"poolish 0.033 % instant yeast, 24 °C, ripe", 0, 0.0333, Formula{Hydration: 1}, 24, 0},
}

func (x exemplar) kind() Leavening {
	if x.levain > 0 {
		return ByLevain
	}
	return ByYeast
}

func (x exemplar) times(l *Law) (Outcome, Belief) {
	need := l.Need(x.rise, x.f.Hydration, 1)
	if x.rise == 0 {
		need = l.Ripeness(0)
	}
	b := Prior(x.kind()).For(l.Unusual(x.f))
	o := l.Clock(x.f, Vector{}).Times(Start(x.levain*l.RipeLevain(), x.yeast), []Knot{{0, x.celsius}}, need, &b, 2000)
	return o, b
}

// elasticityTable is by how many percent the likely time changes when a number of the law is one percent, or one
// degree, higher.
func elasticityTable() string {
	var s strings.Builder
	s.WriteString("| dough | q₂₇ | μ₂₇ | X_m | S_r | w₀ | Π₅₀ | stiffness | R_m | cold end of gas, % a °C | cold end " +
		"of growth, % a °C |\n")
	s.WriteString("|---|---|---|---|---|---|---|---|---|---|---|\n")
	changes := []func(p *Parameters, x float64){
		func(p *Parameters, x float64) { p.Gas *= 1 + x },
		func(p *Parameters, x float64) { p.Growth *= 1 + x },
		func(p *Parameters, x float64) { p.Capacity *= 1 + x },
		func(p *Parameters, x float64) { p.Ripe *= 1 + x },
		func(p *Parameters, x float64) { p.Mixture *= 1 + x },
		func(p *Parameters, x float64) { p.Halfway *= 1 + x },
		func(p *Parameters, x float64) { p.Stiffness *= 1 + x },
		func(p *Parameters, x float64) { p.Fullest *= 1 + x },
		func(p *Parameters, x float64) { p.GasCurve = SquareRoot("", coldestGas+100*x, 0.20, 49) },
		func(p *Parameters, x float64) { p.YeastCurve = SquareRoot("", 0.4+100*x, 0.236, 42.2) },
	}
	for _, x := range exemplars {
		fmt.Fprintf(&s, "| %s |", x.name)
		for i, change := range changes {
			at := func(d float64) float64 {
				p := Standing()
				change(&p, d)
				l, _ := New(p)
				o, _ := x.times(l)
				return math.Log(o.Likely)
			}
			const step = 0.005
			e := (at(step) - at(-step)) / (2 * step)
			if i >= 8 {
				e = 100 * (at(step) - at(-step)) / (200 * step)
				fmt.Fprintf(&s, " %s |", signed(math.Round(e)))
				continue
			}
			fmt.Fprintf(&s, " %s |", signed(e))
		}
		s.WriteString("\n")
	}
	return s.String()
}

func signed(e float64) string {
	s := fmt.Sprintf("%+.2f", e)
	if s == "+0.00" || s == "-0.00" {
		return "0"
	}
	return strings.TrimSuffix(strings.Replace(s, "-", "−", 1), ".00")
}

// spreadTable is what the range of an unknown kitchen is made of: each part alone, as a standard deviation of the log
// of the time.
func spreadTable() string {
	var s strings.Builder
	s.WriteString("| dough | amplitude | pace | slope | cold end | mixture | growth of yeast | luck | formula | " +
		"together " +
		"|\n|---|---|---|---|---|---|---|---|---|---|\n")
	for _, x := range exemplars {
		o, b := x.times(Standard())
		state, _ := o.Path.At(o.Likely)
		e := state.LogGas()
		p := b.Spread(e)
		fmt.Fprintf(&s, "| %s |", x.name)
		for _, v := range []float64{p.Kitchen[0], p.Kitchen[1], p.Kitchen[2], p.Kitchen[3], p.Kitchen[4], p.Kitchen[Growth],
			p.Luck, p.Formula, p.Total()} {
			fmt.Fprintf(&s, " %.2f |", math.Sqrt(v)/e[Pace])
		}
		s.WriteString("\n")
	}
	return s.String()
}

// hoursTable is the likely time of a plain levain dough at a steady temperature.
func hoursTable() string {
	var s strings.Builder
	s.WriteString("| °C | 30 % | 50 % | 75 % | 100 % | 75 %, range | 1 % instant yeast doubled " +
		"|\n|---|---|---|---|---|---|---|\n")
	for _, c := range []float64{4, 10, 18, 20, 22, 24, 26, 28, 30, 33} {
		fmt.Fprintf(&s, "| %.0f |", c)
		var last Outcome
		for _, rise := range []float64{0.3, 0.5, 0.75, 1} {
			o, _ := exemplar{"", 0.091, 0, plain, c, rise}.times(Standard())
			fmt.Fprintf(&s, " %.3g |", o.Likely)
			if rise == 0.75 {
				last = o
			}
		}
		y, _ := exemplar{"", 0, 1, Formula{Hydration: 0.65, Salt: 2}, c, 1}.times(Standard())
		fmt.Fprintf(&s, " %.3g to %.3g | %.3g (%.3g to %.3g) |\n", last.Early, last.Late, y.Likely, y.Early, y.Late)
	}
	return s.String()
}

// rowsTable sets the older law and this one side by side on the rows of the trade.
func rowsTable(t *testing.T) string {
	older := map[string][3]float64{}
	for _, f := range readCSV(t, "testdata/older.csv") {
		var v [3]float64
		for i := range v {
			var err error
			if v[i], err = strconv.ParseFloat(f[i+1], 64); err != nil {
				t.Fatal(err)
			}
		}
		older[f[0]] = v
	}
	var s strings.Builder
	s.WriteString("| row of the trade | it says | older law | this law | outside |\n|---|---|---|---|---|\n")
	var both, oldIn, newIn int
	var oldWide, newWide float64
	for _, r := range readTrade(t) {
		a, _ := strconv.ParseFloat(r.fields[3], 64)
		z, _ := strconv.ParseFloat(r.fields[4], 64)
		middle := math.Sqrt(a * z)
		low, likely, high := r.predict(Standard())
		unit := " h"
		if r.fields[9] == "rise" {
			unit = " of rise"
		}
		old, outside := "no answer", []string{}
		in := func(lo, hi float64) bool { return lo <= middle && middle <= hi }
		if v, ok := older[r.fields[0]]; ok {
			old = fmt.Sprintf("%.3g to %.3g, likely %.3g", v[0], v[2], v[1])
			both++
			oldWide += math.Log(v[2] / v[0])
			newWide += math.Log(high / low)
			if in(v[0], v[2]) {
				oldIn++
			} else {
				outside = append(outside, "older")
			}
			if in(low, high) {
				newIn++
			}
		}
		if !in(low, high) {
			outside = append(outside, "this: "+tradeOutside[r.fields[0]])
		}
		fmt.Fprintf(&s, "| %s | %.3g to %.3g%s | %s | %.3g to %.3g, likely %.3g | %s |\n",
			strings.ReplaceAll(r.fields[1], "|", "/"), a, z, unit, old, low, high, likely, strings.Join(outside, "; "))
	}
	fmt.Fprintf(&s, "\nOf the %d rows that both answer the older law's range holds the middle of %d at a mean width "+
		"of %.2f, this one's of %d at %.2f.\n",
		both, oldIn, oldWide/float64(both), newIn, newWide/float64(both))
	return s.String()
}
