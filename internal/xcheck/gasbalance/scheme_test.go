// Package gasbalance compares the closed forms of internal/gasbalance with a solver of differential equations,
// SciPy's LSODA.
package gasbalance

import (
	"bytes"
	"encoding/json"
	"math"
	"math/rand/v2"
	"os"
	"os/exec"
	"strconv"
	"syscall"
	"testing"
	"time"

	"example.org/maslin/internal/gasbalance"
)

// script solves the equations of the package comment once more, from the printed formulas and constants alone.
const script = `
import json, sys, time
from math import exp
from scipy.integrate import solve_ivp
def sq(T, T0, j, Tx):
    if T <= T0 or T >= Tx: return 0.0
    f = lambda T: (T - T0)*(1 - exp(j*(T - Tx)))
    return (f(T)/f(27.0))**2
def z(T):
    x = 36 - T
    return 0.0 if x <= 0 else (x/9)**2.981*exp(-0.3355*(x - 9))
def solve(case):
    pi = case['pace']
    knots = case['knots']
    s = [case['levain'], case['yeast'], 0.0]
    for (t0, a), (t1, b) in zip(knots, knots[1:]):
        if t1 <= t0: continue
        def f(t, s):
            T = a + (b - a)*(t - t0)/(t1 - t0)
            X, Y = s[0], s[1]
            phi = max(0.0, 1 - (X + Y)/1.70)
            gy = sq(T, 0.4, 0.236, 42.2)
            gl = 0.6*z(T) + 0.4*gy
            return [pi*0.37*gl*phi*X, pi*0.37*gy*phi*Y, pi*2.05*sq(T, -1.2, 0.20, 49.0)*(X + Y)]
        r = solve_ivp(f, (t0, t1), s, method='LSODA', rtol=1e-10, atol=1e-14, max_step=(t1 - t0)/4)
        if not r.success: raise SystemExit(r.message)
        s = list(r.y[:, -1])
    return s
cases = json.load(sys.stdin)
start = time.process_time()
out = [solve(c) for c in cases]
print(json.dumps(dict(seconds=time.process_time() - start, states=out)))
`

func python() string {
	for _, name := range []string{"python3", "/usr/bin/python3"} {
		if exec.Command(name, "-c", "import scipy").Run() == nil {
			return name
		}
	}
	return ""
}

type history struct {
	Pace   float64      `json:"pace"`
	Levain float64      `json:"levain"`
	Yeast  float64      `json:"yeast"`
	Knots  [][2]float64 `json:"knots"`

	formula gasbalance.Formula
	knots   []gasbalance.Knot
}

// random makes a history of one to twelve straight stretches between −2 and 43 °C, with jumps, over minutes to days.
func random(rng *rand.Rand) (h history) {
	h.formula = gasbalance.Formula{
		Hydration: 0.45 + 0.8*rng.Float64(), Salt: 3 * rng.Float64(),
		Sugar: 20 * math.Pow(rng.Float64(), 3), Whole: rng.Float64(),
	}
	h.Pace = gasbalance.Standard().Pace(h.formula)
	kind := rng.IntN(3)
	if kind != 1 {
		h.Levain = 0.78 * math.Exp(math.Log(0.002)*rng.Float64())
	}
	if kind != 0 {
		h.Yeast = 3 * math.Exp(math.Log(0.003)*rng.Float64())
	}
	t, c := 0.0, -2+45*rng.Float64()
	h.knots = append(h.knots, gasbalance.Knot{Hour: t, Celsius: c})
	for range 1 + rng.IntN(12) {
		t += math.Exp(math.Log(0.05) + math.Log(400)*rng.Float64())
		switch rng.IntN(3) {
		case 0: // held
		case 1: // drifts
			c = math.Max(-2, math.Min(43, c+8*rng.NormFloat64()))
		default:
			c = -2 + 45*rng.Float64()
		}
		h.knots = append(h.knots, gasbalance.Knot{Hour: t, Celsius: c})
		if rng.IntN(6) == 0 {
			c = -2 + 45*rng.Float64()
			h.knots = append(h.knots, gasbalance.Knot{Hour: t, Celsius: c})
		}
	}
	for _, k := range h.knots {
		h.Knots = append(h.Knots, [2]float64{k.Hour, k.Celsius})
	}
	return h
}

// processor is the time this process has computed for.
func processor(t *testing.T) time.Duration {
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		t.Skip(err)
	}
	return time.Duration(u.Utime.Nano())
}

// The log of the gas is off by at most 3e-3 in random histories, and the closed forms are at least a thousand times
// as fast. MASLIN_HISTORIES sets how many (10,000 take some minutes).
func TestSchemeAgainstSciPy(t *testing.T) {
	py := python()
	if py == "" {
		t.Skip("no Python 3 with SciPy (Debian: apt-get install python3-scipy)")
	}
	n := 300
	if v, err := strconv.Atoi(os.Getenv("MASLIN_HISTORIES")); err == nil {
		n = v
	}
	rng := rand.New(rand.NewPCG(20261128, 1))
	cases := make([]history, n)
	for i := range cases {
		cases[i] = random(rng)
	}
	input, err := json.Marshal(cases)
	if err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command(py, "-c", script)
	cmd.Stdin = bytes.NewReader(input)
	cmd.Stderr = os.Stderr
	text, err := cmd.Output()
	if err != nil {
		t.Fatal(err)
	}
	var solved struct {
		Seconds float64
		States  [][3]float64
	}
	if err := json.Unmarshal(text, &solved); err != nil {
		t.Fatal(err)
	}
	follow := func(h *history) gasbalance.State {
		c := gasbalance.Standard().Clock(h.formula, gasbalance.Vector{})
		return c.AdvanceAlong(gasbalance.Start(h.Levain, h.Yeast), h.knots, 0, h.knots[len(h.knots)-1].Hour)
	}
	worst, at, sum := 0.0, 0, 0.0
	for i := range cases {
		s := follow(&cases[i])
		want := solved.States[i]
		if want[2] < 1e-9 {
			continue
		}
		off := math.Abs(math.Log(s.Gas / want[2]))
		sum += off
		if off > 1.5e-3 {
			t.Logf("history %d: off by %.2g: levain %.3g, yeast %.3g, pace %.2f, %.4v, gas %.3g", i, off,
				cases[i].Levain, cases[i].Yeast, cases[i].Pace, cases[i].Knots, want[2])
		}
		if off > worst {
			worst, at = off, i
		}
		for k, x := range [2]float64{s.Levain, s.Yeast} {
			if want[k] > 0 && math.Abs(math.Log(x/want[k])) > 2e-2 {
				t.Errorf("history %d: cells %v, LSODA %v", i, x, want[k])
			}
		}
	}
	// Processor time on both sides: what else the machine does is in neither.
	start, rounds := processor(t), 0
	for ; processor(t)-start < 300*time.Millisecond; rounds++ {
		for i := range cases {
			follow(&cases[i])
		}
	}
	ours := (processor(t) - start).Seconds() / float64(rounds)
	t.Logf("%d histories: worst error of ln G %.2g (history %d), mean %.2g", n, worst, at, sum/float64(n))
	t.Logf("LSODA %.3g ms a history, closed forms with all derivatives %.3g µs: %.0f times as fast",
		1e3*solved.Seconds/float64(n), 1e6*ours/float64(n), solved.Seconds/ours)
	if worst > 3e-3 {
		t.Errorf("worst error of ln G %v", worst)
	}
}
