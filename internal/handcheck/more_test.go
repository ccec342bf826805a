package handcheck

import (
	"math"
	"strings"
	"testing"
)

// More ways to be wrong, each noticed by what it says.
func TestFaultsSayWhatIsWrong(t *testing.T) {
	for name, c := range map[string]struct{ from, to, says string }{
		"a column's formula uses what is not explained": {
			"G = t × exp(T ÷ 100) ÷ 1000", "G = t × exp(T ÷ 100) ÷ k", "uses k, which is not explained",
		},
		"a formula uses what is not explained": {"M = D × 6\n   where", "M = D × n\n   where",
			"formula D × n uses n, which is not explained"},
		"numbers go on behind those of the formula": {
			"M = 886.364 × 6\n", "M = 886.364 × 6 + 0\n", "",
		},
	} {
		bad := strings.Replace(good, c.from, c.to, 1)
		if bad == good {
			t.Fatalf("%s: nothing was changed", name)
		}
		faults, _ := Faults("the answer\n\n"+bad, 80)
		if all := strings.Join(faults, "\n"); len(faults) == 0 || !strings.Contains(all, c.says) {
			t.Errorf("%s: %q", name, all)
		}
	}
}

// Units of a table stand behind their symbols in its head: of the first column too, and of one that another's name
// ends.
func TestUnitsOfATable(t *testing.T) {
	const text = `Rows
====

1. gas
     T  temperature
     t  how long
     G  gas
       T °C   t h      G L
      24    0.5  0.75
   G_1 = Σ G
   where
     G  in the table  gas
   G_1 = 0.75
   G_1 = 0.75 L
   source: a table
`
	d := Read("the answer\n\n"+text, 80)
	if len(d) != 1 || len(d[0].Steps) != 1 || d[0].Steps[0].Table == nil {
		t.Fatalf("%+v", d)
	}
	var units []string
	for _, c := range d[0].Steps[0].Table.Columns {
		units = append(units, c.Symbol+" "+c.Unit)
	}
	if got := strings.Join(units, ", "); got != "T °C, t h, G L" {
		t.Errorf("units %q", got)
	}
}

// Arithmetic as it is written by hand: products first, powers from the right, whole in brackets, 200 deep and no
// deeper.
func TestEvaluateByHand(t *testing.T) {
	for line, want := range map[string]float64{
		"exp(0) + exp(0) + ln(1)": 2, "5 − exp(0) × 3": 2, "6 × exp(0) ÷ 4": 1.5, "−exp(0)": -1, "2e-3 + 1": 1.002,
		"2e3":     2000,
		"7 − 2e1": -13, "0^0": 1,
		"2 + 3 × 4": 14, "(2 + 3) × 4": 20, "2 × (3 + 4) − 1": 13, "10 ÷ 4": 2.5, "2^3": 8, "2^(−1)": 0.5,
		"−3 + 5": 2, "1.5 × 10^(−2)": 0.015, "max(2, 3)": 3, "min(2, 3)": 2, "ln(exp(2))": 2,
	} {
		_, got, err := Evaluate(line)
		if err != nil || !(math.Abs(got-want) <= 1e-12) {
			t.Errorf("%s = %v, %v, want %v", line, got, err, want)
		}
	}
	nested := func(n int) string { return strings.Repeat("(", n) + "1" + strings.Repeat(")", n) }
	if _, _, err := Evaluate(nested(150)); err != nil {
		t.Errorf("150 deep: %v", err)
	}
	if _, _, err := Evaluate(nested(250)); err == nil {
		t.Error("250 deep is read")
	}
	for _, line := range []string{"", "(", "1 +", "2 3", "(1", "1)", "()", "exp", "exp(", "max(1", "1 ÷ 0", "a"} {
		if _, got, err := Evaluate(line); err == nil && !math.IsInf(got, 0) && !math.IsNaN(got) {
			t.Errorf("%q is read as %v", line, got)
		}
	}
}

// Pounds and ounces on a screen are ounces: 2 lb 3.5 oz are 35.5.
func TestPoundsOnTheScreen(t *testing.T) {
	v, ok := ReadValue("35.5 oz")
	if !ok || !OnScreen("dough 2 lb 3.5 oz", v) {
		t.Errorf("%+v", v)
	}
	for _, wrong := range []string{"dough 4 lb 3.5 oz", "dough 1 lb 3.5 oz", "dough 35.5 g", "nothing"} {
		if OnScreen(wrong, v) {
			t.Errorf("%s is taken for 35.5 oz", wrong)
		}
	}
}

// A power is typed with its sign in brackets when it is negative.
func TestPowersAreTyped(t *testing.T) {
	for text, want := range map[string]string{"2.5 × 10⁻⁴": "2.5 × 10^(−4)", "2.5 × 10⁶": "2.5 × 10^6",
		"12.25 g": "12.25"} {
		v, ok := ReadValue(text)
		if !ok || v.typed() != want {
			t.Errorf("%s is typed %q, %v, want %q", text, v.typed(), ok, want)
		}
	}
}
