// Package conductionsci compares the conduction series with SciPy: its root finder on the transcendental
// equations and a plain summation. It needs a Python 3 with SciPy and skips without one.
package conductionsci

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"os/exec"
	"testing"

	"example.org/maslin/internal/heat"
	"example.org/maslin/internal/numeric"
	"example.org/maslin/internal/steam"
)

const script = `
import json, sys, time
import numpy as np
from scipy.optimize import brentq
from scipy.special import j0, j1, jn_zeros, gammainc
from scipy.stats import norm, t as student

def roots(shape, bi, n):
    out = []
    if shape == 1:
        lows = np.concatenate(([0.0], jn_zeros(1, n)))
        highs = jn_zeros(0, n)
    for k in range(n):
        if shape == 0:
            f = lambda z: z*np.sin(z) - bi*np.cos(z); a, b = k*np.pi, k*np.pi + np.pi/2
        elif shape == 1:
            f = lambda z: z*j1(z) - bi*j0(z); a, b = lows[k], highs[k]
        else:
            f = lambda z: z*np.cos(z) + (bi-1)*np.sin(z); a, b = max(k*np.pi, 1e-4), (k+1)*np.pi
        out.append(brentq(f, a, b, xtol=1e-14))
    return np.array(out)

def series(shape, bi, fo, n):
    z = roots(shape, bi, n)
    if shape == 0:
        c = 4*np.sin(z)/(2*z + np.sin(2*z)); m = np.sin(z)/z
    elif shape == 1:
        c = 2/z*j1(z)/(j0(z)**2 + j1(z)**2); m = 2*j1(z)/z
    else:
        c = 4*(np.sin(z) - z*np.cos(z))/(2*z - np.sin(2*z)); m = 3*(np.sin(z) - z*np.cos(z))/z**3
    e = np.exp(-z*z*fo)
    return z, float(np.sum(c*e)), float(np.sum(c*m*e))

cases = []
for shape in (0, 1, 2):
    for bi in (0.05, 0.5, 2.08, 10.0, 200.0):
        for fo in (0.01, 0.1, 0.5, 2.0):
            z, center, mean = series(shape, bi, fo, 60)
            cases.append(dict(shape=shape, bi=bi, fo=fo, z=[float(x) for x in z[:8]], center=center, mean=mean))
times = []
for _ in range(9):
    start = time.perf_counter()
    for _ in range(20):
        series(2, 2.08, 0.1, 10)
    times.append((time.perf_counter() - start)/20)
gammas = [dict(s=s, x=x, p=float(gammainc(s, x))) for s in (0.5, 2.5, 3.3, 4.0) for x in (0.1, 1.0, 3.0, 7.0, 20.0)]
students = [dict(p=p, nu=nu, t=float(student.ppf(p, nu))) for p in (0.01, 0.1, 0.9, 0.975) for nu in (1, 2, 3.5, 9, 60)]
normals = [dict(p=p, z=float(norm.ppf(p))) for p in (1e-9, 0.01, 0.1, 0.9, 0.999)]
json.dump(dict(cases=cases, seconds=min(times), gammas=gammas, students=students, normals=normals), sys.stdout)
`

type answer struct {
	Cases []struct {
		Shape        int
		Bi, Fo       float64
		Z            []float64
		Center, Mean float64
	}
	Seconds  float64
	Gammas   []struct{ S, X, P float64 }
	Students []struct{ P, Nu, T float64 }
	Normals  []struct{ P, Z float64 }
}

func scipy(tb testing.TB) answer {
	tb.Helper()
	for _, python := range []string{"python3", "/usr/bin/python3"} {
		var stderr bytes.Buffer
		cmd := exec.Command(python, "-c", script)
		cmd.Stderr = &stderr
		out, err := cmd.Output()
		if err != nil {
			continue
		}
		var a answer
		if err := json.Unmarshal(out, &a); err != nil {
			tb.Fatal(err)
		}
		return a
	}
	tb.Skip("no Python 3 with SciPy on this machine")
	return answer{}
}

func TestAgainstSciPy(t *testing.T) {
	a := scipy(t)
	worst := 0.0
	check := func(what string, got, want, tolerance float64) {
		t.Helper()
		d := math.Abs(got - want)
		worst = math.Max(worst, d/(1+math.Abs(want)))
		if !(d <= tolerance*(1+math.Abs(want))) {
			t.Errorf("%s: %.15g, SciPy %.15g", what, got, want)
		}
	}
	for _, c := range a.Cases {
		s, err := heat.NewSeries(heat.Shape(c.Shape), c.Bi)
		if err != nil {
			t.Fatal(err)
		}
		name := fmt.Sprintf("%v Bi %g Fo %g", heat.Shape(c.Shape), c.Bi, c.Fo)
		for n, z := range c.Z {
			check(name+" eigenvalue", s.Term(n).Eigenvalue, z, 1e-12)
		}
		check(name+" center", s.Center(c.Fo), c.Center, 1e-11)
		check(name+" mean", s.Mean(c.Fo), c.Mean, 1e-11)
	}
	for _, g := range a.Gammas {
		lower, err := numeric.PowerExpFrom0(g.S-1, 1, g.X)
		if err != nil {
			t.Fatal(err)
		}
		check(fmt.Sprintf("P(%g, %g)", g.S, g.X), lower/math.Gamma(g.S), g.P, 1e-13)
	}
	for _, s := range a.Students {
		x, err := numeric.StudentQuantile(s.P, s.Nu)
		if err != nil {
			t.Fatal(err)
		}
		// SciPy 1.10 inverts Student's t to about 2e-9: its t(0.01, 2) misses the closed form (2p −
		// 1)/√(2p(1 − p)) by that much.
		if d := math.Abs(x - s.T); !(d <= 1e-8*(1+math.Abs(s.T))) {
			t.Errorf("t(%g, %g): %.15g, SciPy %.15g", s.P, s.Nu, x, s.T)
		}
	}
	for _, n := range a.Normals {
		z, err := numeric.NormalQuantile(n.P)
		if err != nil {
			t.Fatal(err)
		}
		check(fmt.Sprintf("z(%g)", n.P), z, n.Z, 1e-12)
	}
	t.Logf("%d conduction cases; largest difference of all values %.1e (relative to 1 + value)", len(a.Cases), worst)
}

// BenchmarkConductionAgainstSciPy times one evaluation of a series that is set up, and reports how many
// times faster it is than root finding plus summation of ten terms in SciPy on the same machine at the same
// time.
func BenchmarkConductionAgainstSciPy(b *testing.B) {
	a := scipy(b)
	s, err := heat.NewSeries(heat.Sphere, 2.08)
	if err != nil {
		b.Fatal(err)
	}
	sum := 0.0
	for b.Loop() {
		sum += s.Center(0.1)
	}
	if sum == 0 {
		b.Fatal("no heat")
	}
	own := b.Elapsed().Seconds() / float64(b.N)
	b.ReportMetric(a.Seconds/own, "times-faster-than-SciPy")
	b.ReportMetric(a.Seconds*1e6, "SciPy-µs")
}

// The industrial saturation line is inverted by its own equation to better than a microkelvin between 0 and
// 150 °C.
func TestSaturationRoundTrip(t *testing.T) {
	for k := 273.16; k < 423; k += 0.37 {
		p, err := steam.SaturationPressure(k)
		if err != nil {
			t.Fatal(err)
		}
		back, err := steam.SaturationTemperature(p)
		if err != nil || math.Abs(back-k) > 1e-6 {
			t.Errorf("%g K -> %g Pa -> %g K, %v", k, p, back, err)
		}
	}
}
