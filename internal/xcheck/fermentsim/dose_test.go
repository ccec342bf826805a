package fermentsim

import (
	"encoding/csv"
	"encoding/json"
	"math"
	"os"
	"os/exec"
	"strconv"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/ferment"
)

// doseScript integrates the Gänzle yeast rate over the same readings with NumPy and SciPy.
const doseScript = `
import json, sys, timeit
import numpy as np
from scipy.integrate import quad, solve_ivp
x, y = (np.array(v) for v in json.load(sys.stdin))
def mu(T):
    u = np.maximum(36 - T, 1e-300)
    return 0.0124 * u**2.981 * np.exp(-0.3355*u)
def segment(i):
    f = lambda t: float(mu(y[i] + (y[i+1]-y[i])*(t-x[i])/(x[i+1]-x[i])))
    return quad(f, x[i], x[i+1], epsabs=1e-15, epsrel=1e-13)[0]
exact = sum(segment(i) for i in range(len(x)-1))
trapezoid = lambda: np.trapz(mu(y), x)
def lsoda():
    return solve_ivp(lambda t, m: [mu(np.interp(t, x, y))], (x[0], x[-1]), [0.0], method='LSODA', rtol=1e-6, atol=1e-9, max_step=x[1]-x[0]).y[0, -1]
best = lambda f, n: min(timeit.repeat(f, number=n, repeat=9))/n
print(json.dumps(dict(exact=exact, trapezoid=float(trapezoid()), lsoda=float(lsoda()), t_trapezoid=best(trapezoid, 2000), t_lsoda=best(lsoda, 3))))
`

func python() string {
	for _, name := range []string{"python3", "/usr/bin/python3"} {
		if exec.Command(name, "-c", "import numpy, scipy").Run() == nil {
			return name
		}
	}
	return ""
}

// The dose over the refrigerator's 145 readings against SciPy's quadrature, with the times of one run: ours, NumPy's
// vectorized trapezoid and
// SciPy's LSODA. Times are reported, not judged.
func TestDoseAgainstSciPy(t *testing.T) {
	py := python()
	if py == "" {
		t.Skip("no Python 3 with NumPy and SciPy (Debian: apt-get install python3-scipy)")
	}
	file, err := os.Open("../../../ferment/testdata/refrigerator.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	reader := csv.NewReader(file)
	reader.Comment = '#'
	rows, err := reader.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	for column := 1; column <= 2; column++ {
		var x, y []float64
		var points []ferment.Knot
		for _, r := range rows[1:] {
			h, err1 := strconv.ParseFloat(r[0], 64)
			c, err2 := strconv.ParseFloat(r[column], 64)
			if err1 != nil || err2 != nil {
				t.Fatal(r)
			}
			at := time.Duration(math.Round(h*3600)) * time.Second
			points = append(points, ferment.Knot{At: quantity.Elapsed(at), Temperature: quantity.Celsius(c)})
			x, y = append(x, at.Hours()), append(y, quantity.Celsius(c).Celsius())
		}
		history, err := ferment.Readings{Points: points}.History()
		if err != nil {
			t.Fatal(err)
		}
		got, err := ferment.GanzleYeast().Dose(history, 0, history.Known())
		if err != nil {
			t.Fatal(err)
		}
		input, err := json.Marshal([2][]float64{x, y})
		if err != nil {
			t.Fatal(err)
		}
		cmd := exec.Command(py, "-W", "ignore", "-c", doseScript)
		cmd.Stdin = strings.NewReader(string(input))
		text, err := cmd.Output()
		if err != nil {
			t.Fatalf("%v: %s", err, text)
		}
		var want struct {
			Exact, Trapezoid, Lsoda float64
			TTrapezoid              float64 `json:"t_trapezoid"`
			TLsoda                  float64 `json:"t_lsoda"`
		}
		if err := json.Unmarshal(text, &want); err != nil {
			t.Fatal(err)
		}
		ours := math.Inf(1)
		for range 9 {
			const n = 2000
			start := time.Now()
			for range n {
				if _, err := ferment.GanzleYeast().Dose(history, 0, history.Known()); err != nil {
					t.Fatal(err)
				}
			}
			ours = math.Min(ours, time.Since(start).Seconds()/n)
		}
		relative := math.Abs(got-want.Exact) / want.Exact
		if relative > 1e-9 {
			t.Errorf("dose %v, SciPy's quadrature %v: relative error %.1e", got, want.Exact, relative)
		}
		t.Logf("%d readings: relative error %.1e (trapezoid %.1e, LSODA %.1e); %.2f µs, trapezoid %.2f µs (%.2f times "+
			"ours), LSODA %.2f ms (%.0f times ours)",
			len(points), relative, math.Abs(want.Trapezoid-want.Exact)/want.Exact, math.Abs(want.Lsoda-want.Exact)/want.Exact,
			1e6*ours, 1e6*want.TTrapezoid, want.TTrapezoid/ours, 1e3*want.TLsoda, want.TLsoda/ours)
	}
}
