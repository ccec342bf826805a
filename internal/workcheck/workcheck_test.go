package workcheck

import (
	"math"
	"math/big"
	"strings"
	"testing"

	"example.org/maslin/dough/working"
)

func TestEvaluateKeepsFractionsExact(t *testing.T) {
	got, _, err := Evaluate("900.0 ÷ (172.2 ÷ 100)")
	if err != nil || got == nil || got.Cmp(big.NewRat(150000, 287)) != 0 {
		t.Fatalf("got %v, %v; want 150000/287", got, err)
	}
	for line, want := range map[string]float64{
		"26 + (26 − 21) + (26 − 23) − 12": 22, "2 ^ 3 ^ 2": 512, "−2 ^ 2": -4, "exp(0) + ln(1)": 1,
		"max(1, 3, 2) × min(4; 5)": 12,
		"1.5e-3 × 1000":            1.5, "sqrt(16) ÷ 2": 2, "2^−1": 0.5, "cos(π)": -1, "8 − 3 − 2": 3,
	} {
		_, got, err := Evaluate(line)
		if err != nil || math.Abs(got-want) > 1e-12 {
			t.Errorf("%s = %v, %v; want %v", line, got, err, want)
		}
	}
	for _, line := range []string{"", "1 +", "(1", "1)", "1 ÷ 0", "foo(1)", "x", "1..2", "1 2",
		strings.Repeat("(", 1000)} {
		if _, v, err := Evaluate(line); err == nil {
			t.Errorf("%q evaluated to %v", line, v)
		}
	}
}

func TestFaultsAreFound(t *testing.T) {
	good := working.Step{
		Name: "sum", Symbol: "s", Formula: "a + b", Numbers: "1 + 2", Value: "3 g", Exact: true, Source: working.Algebra(),
		Where: []working.Binding{
			{Symbol: "a", Meaning: "one", Value: "1 g"},
			{Symbol: "b", Meaning: "two", Value: "2 g"},
		},
	}
	if f := Faults(working.Working{Steps: []working.Step{good}}); len(f) != 0 {
		t.Fatalf("a good step was faulted: %v", f)
	}
	spoil := map[string]func(*working.Step){
		"wrong value":     func(s *working.Step) { s.Value = "4 g" },
		"no source":       func(s *working.Step) { s.Source = working.Source{} },
		"unbound symbol":  func(s *working.Step) { s.Formula = "a + b + c" },
		"inexact exact":   func(s *working.Step) { s.Numbers = "1 + 2.0001"; s.Value = "3 g" },
		"too far":         func(s *working.Step) { s.Exact = false; s.Numbers = "1 + 2.6" },
		"no symbol":       func(s *working.Step) { s.Symbol = "" },
		"bad numbers":     func(s *working.Step) { s.Numbers = "1 + two" },
		"numbers missing": func(s *working.Step) { s.Numbers = "" },
	}
	for name, f := range spoil {
		s := good
		f(&s)
		if got := Faults(working.Working{Steps: []working.Step{s}}); len(got) == 0 {
			t.Errorf("%s: not found", name)
		}
	}
	if len(Faults(working.Working{})) == 0 {
		t.Error("a working without steps was accepted")
	}
}

func FuzzEvaluate(f *testing.F) {
	f.Add("26 + (26 − 21) − 12")
	f.Add("exp(1)^2e3")
	f.Fuzz(func(t *testing.T, line string) { _, _, _ = Evaluate(line) })
}
