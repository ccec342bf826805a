package handcheck

import (
	"strings"
	"testing"
)

// Minutes beside a time of day are read as minutes, whatever stands behind them; no other word is.
func TestMinutesBesideAClock(t *testing.T) {
	for line, want := range map[string]float64{
		"40 min": 40, "(5 min) + 3": 8, "5 min + 3": 8, "Sat 23:35 + 40 min": 6*1440 + 23*60 + 35 + 40, "5": 5,
	} {
		if _, got, err := Evaluate(line); err != nil || got != want {
			t.Errorf("%s: %v, %v; want %v", line, got, err, want)
		}
	}
	for _, line := range []string{"5 minutes", "5 min3", "5 mint", "5 max"} {
		if _, got, err := Evaluate(line); err == nil {
			t.Errorf("%s is read as %v", line, got)
		}
	}
}

// A time of day on either side of midnight between Saturday and Sunday is a minute away, not a week.
func TestClocksAcrossTheWeek(t *testing.T) {
	sunday, ok := ReadValue("Sun 00:00")
	if !ok || !sunday.Gives(7*1440) || !sunday.Gives(0) || !sunday.Gives(7*1440-0.4) || sunday.Gives(7*1440-2) ||
		sunday.Gives(2) || sunday.Gives(3*1440) {
		t.Errorf("%+v", sunday)
	}
	saturday, _ := ReadValue("Sat 23:59")
	if !saturday.Gives(-1) || saturday.Gives(1) {
		t.Errorf("%+v", saturday)
	}
}

// Every power of ten is typed with its own digits.
func TestRaisedDigits(t *testing.T) {
	for cell, want := range map[string]float64{
		"2 × 10^(−7)": 2e-7, "2 × 10^8": 2e8, "1.5 × 10^(-13)": 1.5e-13, "3 × 10^46": 3e46, "1 × 10^25": 1e25,
		"1 × 10^(−90)": 1e-90,
	} {
		if got := cellValue(cell).Float(); got < want*(1-1e-12) || got > want*(1+1e-12) {
			t.Errorf("%s is %v, want %v", cell, got, want)
		}
	}
}

// A value that is taken as another, and lines that follow what their symbols stand for.
func TestTakenValuesAndLinesBehindSymbols(t *testing.T) {
	const text = `Oven
====

1. minutes
   x = a + b
   where
     a  4.2 min  heating
     b  3 min    waiting
   x = 4.2 + 3
   x = 7.2 min
   x, taken as: 7 min
   source: a book

2. twice
   y = 2 × x
   where
     x  7 min  minutes, from step 1
   y = 2 × 7
   y = 14 min
   source: a book
`
	faults, counts := Faults("the answer\n\n"+text, 80)
	if len(faults) > 0 || counts.Steps != 2 || counts.Lines != 2 {
		t.Errorf("%q, %+v", faults, counts)
	}
	d := Read("the answer\n\n"+text, 80)
	if got := d[0].Steps[0].Lines[0]; got.Rounded != "7 min" || len(got.Where) != 2 || got.Numbers != "4.2 + 3" {
		t.Errorf("%+v", got)
	}
	for from, to := range map[string]string{"taken as: 7 min": "taken as: 8 min",
		"taken as: 7 min\n": "taken as: soon\n"} {
		faults, _ := Faults("the answer\n\n"+strings.Replace(text, from, to, 1), 80)
		if len(faults) == 0 {
			t.Errorf("%q is not noticed", to)
		}
	}
	if faults, _ := Faults("the answer\n\n"+strings.Replace(text, "taken as: 7 min\n", "taken as: soon\n", 1),
		80); !strings.Contains(
		faults[0], "value soon does not begin with a number") {
		t.Error(faults)
	}
}
