package handcheck

import (
	"math"
	"strings"
	"testing"
)

// A printed value stands for what is within half its last digit and a ten-thousandth of that, and for no more; of large
// ones within 10⁻¹².
func TestHowFarAPrintedValueReaches(t *testing.T) {
	for _, c := range []struct {
		printed string
		got     float64
		ok      bool
	}{
		{"12.5 g", 12.55, true}, {"12.5 g", 12.45, true},
		{"12.5 g", 12.55 + 4.98e-6, true}, {"12.5 g", 12.55 + 5.02e-6, false},
		{"12.5 g", 12.45 - 4.98e-6, true}, {"12.5 g", 12.45 - 5.02e-6, false},
		{"1000000000000000", 1e15 + 1000, true}, {"1000000000000000", 1e15 + 1002, false},
		{"Sun 00:01", 1, true}, {"Sun 00:01", 1.5, true}, {"Sun 00:01", 1.6, false}, {"Sun 00:01", 0.4, false},
		{"Sun 00:01", 1 + 2*week, true}, {"Sat 23:59", -1, true},
		{"Sun 00:01", week + 0.6, true}, {"Sun 00:01", 61, false},
	} {
		v, ok := ReadValue(c.printed)
		if !ok || v.Gives(c.got) != c.ok {
			t.Errorf("%s stands for %v: %v", c.printed, c.got, !c.ok)
		}
	}
	for _, c := range []struct {
		a, b string
		ok   bool
	}{
		{"12.5 g", "12.55 g", true}, {"12.5 g", "12.56 g", false}, {"12.5 g", "12.5 oz", false}, {"13 g", "12.5 g", true},
		{"13 g", "12.4 g", false}, {"1000000000000000 g", "1000000000001000 g", true},
		{"1000000000000000 g", "1000000000001002 g", false}, {"0.004 g", "0 g", true},
	} {
		v, _ := ReadValue(c.a)
		w, _ := ReadValue(c.b)
		if v.agrees(w) != c.ok || w.agrees(v) != c.ok {
			t.Errorf("%s and %s are the same: %v", c.a, c.b, !c.ok)
		}
	}
}

// Noon and midnight are twelve o'clock, of which the one is half a day after the other.
func TestTwelveOClock(t *testing.T) {
	for text, want := range map[string]int64{
		"Sun 12:05 am": 5, "Sun 12:05 pm": 725, "Sun 1:05 pm": 785, "Sun 11:59 pm": 1439, "Mon 12:00 am": 1440,
		"Sat 23:59": 6*1440 + 1439, "Tue 9:30 am": 2*1440 + 570,
	} {
		v, ok := ReadValue(text)
		if !ok || v.Number.Num().Int64() != want {
			t.Errorf("%s is minute %v of the week, want %d", text, v.Number, want)
		}
	}
	monday, _ := ReadValue("Mon 10:05")
	for shown, want := range map[string]bool{"at 10:05": true, "at Mon 10:05": true, "at Tue 10:05": false,
		"at 10:06": false, "at 22:05": false, "at 10:05 pm": false, "at 10:05 am": true} {
		if OnScreen(shown, monday) != want {
			t.Errorf("%q shows Monday, 10:05: %v", shown, !want)
		}
	}
}

// Whole powers of fractions are exact up to the 64th, and only they.
func TestWhichPowersAreExact(t *testing.T) {
	for line, exactly := range map[string]bool{
		"2^64": true, "2^(−64)": true, "2^65": false, "2^(−65)": false, "2^0.5": false, "0.5^3": true, "exp(1)^2": false,
		"0^2": true, "0^(−1)": false, "(−2)^3": true,
	} {
		r, got, err := Evaluate(line)
		if err != nil || (r != nil) != exactly {
			t.Errorf("%s = %v, exact %v, %v", line, got, r, err)
		}
		if f := got; r != nil {
			if x, _ := r.Float64(); x != f {
				t.Errorf("%s is %v and %v", line, x, f)
			}
		}
	}
	if _, got, _ := Evaluate("2^(−2)"); got != 0.25 {
		t.Errorf("2^−2 = %v", got)
	}
	if _, got, _ := Evaluate("2^(−65)"); !(math.Abs(got*math.Pow(2, 65)-1) <= 1e-12) {
		t.Errorf("2^−65 = %v", got)
	}
}

// Lines of 20,000 bytes and numbers of 60 digits are read, and none that are longer.
func TestLongestLine(t *testing.T) {
	for n, ok := range map[int]bool{20_000: true, 20_001: false} {
		if _, _, err := Evaluate("1" + strings.Repeat(" ", n-1)); (err == nil) != ok {
			t.Errorf("a line of %d bytes: %v", n, err)
		}
	}
	for n, ok := range map[int]bool{60: true, 61: false} {
		if _, _, err := Evaluate(strings.Repeat("1", n)); (err == nil) != ok {
			t.Errorf("a number of %d digits: %v", n, err)
		}
	}
	if _, got, err := Evaluate("2e0 + 3e9"); err != nil || got != 3_000_000_002 {
		t.Errorf("2e0 + 3e9 = %v, %v", got, err)
	}
}

// What a symbol stands for is told once and the same everywhere, with its value.
func TestSymbolsKeepTheirMeaning(t *testing.T) {
	for name, c := range map[string]struct {
		binds []Binding
		want  string
	}{
		"no value":   {[]Binding{{Symbol: "m", Meaning: "dough"}}, "symbol m has no value or no meaning"},
		"no meaning": {[]Binding{{Symbol: "m", Value: "5 g"}}, "symbol m has no value or no meaning"},
		"two meanings": {[]Binding{{Symbol: "m", Meaning: "dough", Value: "5 g"},
			{Symbol: "m", Meaning: "water", Value: "5 g"}}, `symbol m stands for "dough" and for "water"`},
		"two values": {[]Binding{{Symbol: "m", Meaning: "dough", Value: "5 g"},
			{Symbol: "m", Meaning: "dough", Value: "6 g"}}, "symbol m is 5 g and 6 g"},
		"another step": {[]Binding{{Symbol: "m", Meaning: "dough, from step 3", Value: "5 g"}},
			"symbol m is not found in step 3"},
		"no number": {[]Binding{{Symbol: "m", Meaning: "dough", Value: "much"}},
			"symbol m: much does not begin with a number"},
		"sound": {[]Binding{{Symbol: "m", Meaning: "dough", Value: "5 g"},
			{Symbol: "m", Meaning: "dough", Value: "5 g"}}, ""},
	} {
		c1 := checker{title: "T", where: "W", symbols: map[string]*symbol{}}
		for _, b := range c.binds {
			c1.bind(b)
		}
		got := strings.TrimPrefix(strings.Join(c1.faults, "; "), "T: W: ")
		if got != c.want {
			t.Errorf("%s: %q, want %q", name, got, c.want)
		}
	}
}

// The numbers of a line are those of its formula to a billionth.
func TestAFormulaGivesItsNumbers(t *testing.T) {
	for want, ok := range map[float64]bool{2e6: true, 2e6 + 0.001: true, 2e6 + 0.003: false, 2e6 - 0.1: false} {
		c := checker{symbols: map[string]*symbol{}}
		v, _ := ReadValue("1000000 g")
		c.symbols["m"] = &symbol{meaning: "dough", values: []Value{v}}
		c.putIn(Line{Symbol: "M", Formula: "m × 2", Numbers: "1000000 × 2"}, want)
		if (len(c.faults) == 0) != ok {
			t.Errorf("2 × 10⁶ by its formula, %v by its numbers: %v", want, c.faults)
		}
	}
}
