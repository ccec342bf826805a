package handcheck

import (
	"math"
	"math/big"
	"strings"
	"testing"
)

// good is a derivation as it is printed: units, a step that builds on another, a table, a conversion, a rounding.
const good = `Loaf
====

1. scaling weight
   D = B ÷ (1 − L ÷ 100)
   where
     B  780 g  baked and cool
     L  12 %  loss in the oven
   D = 780 ÷ (1 − 12 ÷ 100)
   D ≈ 886.36 g
   source: algebra

2. dough for all
   M = D × 6
   where
     D  886.364 g  scaling weight, from step 1
   M = 886.364 × 6
   M ≈ 5318.18 g
   M, rounded: 5320 g
   note: up to what the scale shows
   source: algebra

3. gas
     T  temperature of the row
     t  how long
     G  gas
   G = t × exp(T ÷ 100) ÷ 1000
       T °C   t h           G
      −5.5  0.25 2.366 × 10^(−4)
      24    0.5  6.356 × 10^(−4)
   G_2 = Σ G
   where
     G  in the table  gas
   G_2 = 2.366 × 10^(−4) + 6.356 × 10^(−4)
   G_2 ≈ 8.7 × 10⁻⁴
   source: a table

4. into the oven
   T_K = T_0 + 273.15
   where
     T_0  24.36 °C  dough
   T_K = 24.36 + 273.15
   T_K = 297.51 K
   t_1 = t_0 − Δ
   where
     t_0  Sun 00:15  out of the oven
     Δ    40 min  baking
   t_1 = Sun 00:15 − 40 min
   t_1 = Sat 23:35
   note: a day earlier
   source: the clock

5. look
   x = 3 °C
   note: in the chart
   source: a chart

6. over the end of the week
   w = t_0 − t_1
   where
     t_0  Sun 00:15  out of the oven
     t_1  Sat 23:35  look, from step 4
   w = Sun 00:15 − Sat 23:35
   w = 40 min
   source: the clock
`

func TestAGoodDerivationPasses(t *testing.T) {
	faults, counts := Faults("the answer\n\n"+good+"\nIn other words\n  D  dough\n", 80)
	if len(faults) > 0 {
		t.Error(strings.Join(faults, "\n"))
	}
	if counts.Steps != 6 || counts.Lines != 7 || len(counts.Bare) != 1 || counts.Bare[0] != "Loaf: look" {
		t.Errorf("%+v", counts)
	}
}

func TestFaultsAreFound(t *testing.T) {
	for name, change := range map[string][2]string{
		"wrong digit":               {"D ≈ 886.36 g", "D ≈ 886.37 g"},
		"not exact":                 {"D ≈ 886.36 g", "D = 886.36 g"},
		"other numbers":             {"D = 780 ÷ (1 − 12 ÷ 100)", "D = 780 ÷ (1 − 12.0001 ÷ 100)"},
		"another value":             {"L  12 %", "L  12.01 %"},
		"no unit where there was":   {"D  886.364 g", "D  886.364"},
		"another value of a step":   {"D  886.364 g", "D  886.37 g"},
		"another step":              {"from step 1", "from step 2"},
		"a step that is not there":  {"from step 1", "from step 9"},
		"a symbol unexplained":      {"     L  12 %  loss in the oven\n", ""},
		"no meaning":                {"L  12 %  loss in the oven", "L  12 %"},
		"two meanings":              {"t_0  Sun 00:15", "D  Sun 00:15"},
		"another formula":           {"D = B ÷ (1 − L ÷ 100)", "D = B × (1 − L ÷ 100)"},
		"another unit":              {"D  886.364 g", "D  886.364 kg"},
		"no number":                 {"D ≈ 886.36 g", "D ≈ much"},
		"no number in a symbol":     {"L  12 %", "L  some"},
		"no arithmetic":             {"D = 780 ÷ (1 − 12 ÷ 100)", "D = 780 ÷ much"},
		"rounded to nothing":        {"rounded: 5320 g", "rounded: so"},
		"no source":                 {"   source: a chart\n", ""},
		"nowhere to look":           {"   note: in the chart\n", ""},
		"a wrong cell":              {"0.5  6.356 × 10^(−4)", "0.5  6.357 × 10^(−4)"},
		"a wrong given cell":        {"−5.5  0.25", "−5.5  0.26"},
		"a cell missing":            {"      24    0.5 ", "      24    "},
		"a cell that is no number":  {"0.5  6.356 × 10^(−4)", "0.5  much"},
		"a sum of other cells":      {"G_2 = 2.366 × 10^(−4)", "G_2 = 2.365 × 10^(−4)"},
		"a wrong sum":               {"G_2 ≈ 8.7 ×", "G_2 ≈ 8.8 ×"},
		"a wrong power":             {"8.7 × 10⁻⁴", "8.7 × 10⁻⁵"},
		"a table with no rows":      {"      −5.5  0.25 2.366 × 10^(−4)\n      24    0.5  6.356 × 10^(−4)\n", ""},
		"a column unexplained":      {"G = t × exp(T", "G = t × exp(U"},
		"a clock that is wrong":     {"t_1 = Sat 23:35", "t_1 = Sat 23:30"},
		"a span that is wrong":      {"w = 40 min", "w = 41 min"},
		"a conversion that is not":  {"T_K = 297.51 K", "T_K = 297.15 K"},
		"a column meaning two":      {"B  780 g  baked and cool", "T  780 g  baked and cool"},
		"another value found":       {"   x = 3 °C", "   D = 886.1 g"},
		"parentheses left out":      {"D = 780 ÷ (1 − 12 ÷ 100)", "D = 780 ÷ 1 − 12 ÷ 100"},
		"a symbol with two values":  {"T_0  24.36 °C  dough", "L  24.36 °C  loss in the oven"},
		"a value without a number":  {"B  780 g", "B  g"},
		"a formula with a stranger": {"M = D × 6\n   where", "M = D × e × 6\n   where"},
	} {
		text := strings.Replace(good, change[0], change[1], 1)
		if text == good {
			t.Errorf("%s: nothing changed", name)
		}
		if faults, _ := Faults(text, 80); len(faults) == 0 {
			t.Errorf("%s: not found", name)
		}
	}
}

func TestBrokenLinesAreJoined(t *testing.T) {
	wide := "Loaf\n====\n\n1. sum\n   s = first + second + third\n   where\n     first   1 g  what comes first of all " +
		"of them\n" +
		"     second  2 g  second\n     third   3 g  third\n   s = 1 + 2 + 3\n   s = 6 g\n   source: a book with a long " +
		"title\n"
	narrow := "Loaf\n====\n\n1. sum\n   s = first + second +\n     third\n   where\n     first   1 g  what\n       " +
		"comes first of\n" +
		"       all of them\n     second  2 g\n       second\n     third   3 g  third\n   s = 1 + 2 + 3\n   s = 6 g\n" +
		"   source: a book with\n     a long title\n"
	one, other := Read(wide, 200), Read(narrow, 23)
	if len(one) != 1 || len(other) != 1 || len(one[0].Steps) != 1 || len(other[0].Steps) != 1 {
		t.Fatalf("%+v, %+v", one, other)
	}
	a, b := one[0].Steps[0], other[0].Steps[0]
	if a.Source != b.Source || a.Lines[0].Formula != b.Lines[0].Formula || len(b.Lines[0].Where) != 3 ||
		a.Lines[0].Where[0] != b.Lines[0].Where[0] {
		t.Errorf("%+v\n%+v", a, b)
	}
}

func TestEvaluateKeepsFractionsExact(t *testing.T) {
	got, _, err := Evaluate("900.0 ÷ (172.2 ÷ 100)")
	if err != nil || got == nil || got.Cmp(big.NewRat(150000, 287)) != 0 {
		t.Fatalf("got %v, %v; want 150000/287", got, err)
	}
	for line, want := range map[string]float64{
		"26 + (26 − 21) + (26 − 23) − 12": 22, "2 ^ 3 ^ 2": 512, "−2 ^ 2": -4, "exp(0) + ln(1)": 1,
		"max(1, 3, 2) × min(4; 5)": 12, "1.5e-3 × 1000": 1.5, "sqrt(16) ÷ 2": 2, "2^−1": 0.5, "cos(π)": -1,
		"8 − 3 − 2": 3, "ceil(−1.5) + floor(−1.5) + abs(−3)": 0, "ceil(2) × floor(2.5)": 4, "log10(1000)": 3,
		"sin(0) + tan(0)": 0, "+3": 3,
	} {
		_, got, err := Evaluate(line)
		if err != nil || !(math.Abs(got-want) <= 1e-12) {
			t.Errorf("%s = %v, %v; want %v", line, got, err, want)
		}
	}
	if r, _, _ := Evaluate("ceil(7 ÷ 2) × 10"); r == nil || r.Cmp(big.NewRat(40, 1)) != 0 {
		t.Errorf("ceil is not exact: %v", r)
	}
	for _, line := range []string{"", "1 +", "(1", "1)", "1 ÷ 0", "foo(1)", "x", "1..2", "1 2",
		strings.Repeat("(", 1000)} {
		if _, v, err := Evaluate(line); err == nil {
			t.Errorf("%q evaluated to %v", line, v)
		}
	}
}

func FuzzEvaluate(f *testing.F) {
	f.Add("26 + (26 − 21) − 12")
	f.Add("exp(1)^2e3")
	f.Fuzz(func(t *testing.T, line string) { _, _, _ = Evaluate(line) })
}

// FuzzFaults: whatever is read, nothing panics.
func FuzzFaults(f *testing.F) {
	f.Add(good)
	f.Add("0000\n====\n\n0. \nD = \x88\nD = 0\nD ≈ 0") // no UTF-8
	f.Fuzz(func(t *testing.T, text string) { _, _ = Faults(text, 80) })
}

func TestValuesAreRead(t *testing.T) {
	for text, want := range map[string]struct {
		number, half float64
		unit         string
	}{
		"3 °C": {3, 0.5, "°C"}, "−5.50 g": {-5.5, 0.005, "g"}, "312 min (5h12m)": {312, 0.5, "min"}, "7": {7, 0.5, ""},
		"5.04 × 10⁻⁷ m²/s": {5.04e-7, 0.5e-9, "m²/s"}, "2 × 10³": {2000, 500, ""}, "Sun 00:15": {15, 0.5, "time of day"},
		"Mon 2:05 pm": {24*60 + 14*60 + 5, 0.5, "time of day"}, "Sat 12:00 am": {6 * 24 * 60, 0.5, "time of day"},
	} {
		v, ok := ReadValue(text)
		if !ok || !(math.Abs(v.Float()-want.number) <= 1e-12) ||
			!(math.Abs(v.Half/want.half-1) <= 1e-9) || v.Unit != want.unit {
			t.Errorf("%s is %v ± %v %q, %v", text, v.Float(), v.Half, v.Unit, ok)
		}
	}
	for _, text := range []string{"", "much", "°C 3", "− 3"} {
		if v, ok := ReadValue(text); ok {
			t.Errorf("%q is %v", text, v)
		}
	}
	three, _ := ReadValue("3.0")
	for got, want := range map[float64]bool{3.05: true, 2.95: true, 3.0501: false, 2.9499: false} {
		if three.Gives(got) != want {
			t.Errorf("%v gives 3.0: %v", got, !want)
		}
	}
}

// A row may take a symbol that an earlier step found.
func TestRowsTakeWhatWasFound(t *testing.T) {
	const text = "x\n=\n\n1. pace\n   k = 2 × 3\n   k = 6\n   source: s\n\n2. rows\n     t  how long\n     G  gas\n   " +
		"G = k × t\n" +
		"      t  G\n      1  6\n      2 12\n   G_2 = Σ G\n   where\n     G  in the table  gas\n   G_2 = 6 + 12\n   G_2 = " +
		"18\n   source: s\n"
	if faults, counts := Faults(text, 80); len(faults) > 0 || counts.Steps != 2 || len(counts.Bare) != 0 {
		t.Errorf("%v %+v", faults, counts)
	}
	same := strings.Replace(text, "   k = 2 × 3\n", "   k = t × 3\n   where\n     t  2  how long\n   k = 2 × 3\n", 1)
	if faults, _ := Faults(same, 80); len(faults) > 0 {
		t.Error(faults)
	}
	for _, wrong := range []string{strings.Replace(same, "2  how long", "2  how short", 1),
		strings.Replace(text, "2 12", "2 13", 1), strings.Replace(text, "k × t", "k + t", 1),
		strings.Replace(text, "1  6", "1  6  7", 1)} {
		if faults, _ := Faults(wrong, 80); len(faults) == 0 {
			t.Errorf("passes:\n%s", wrong)
		}
	}
}
