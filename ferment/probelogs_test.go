package ferment_test

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/ferment"
	"github.com/google/go-cmp/cmp"
)

// A heading names its units in any of the usual words, whatever stands around them.
func TestHeadingsOfProbeLogs(t *testing.T) {
	times := map[string]time.Duration{"h": time.Hour, "hr": time.Hour, "hour": time.Hour, "hours": time.Hour,
		"min": time.Minute, "minute": time.Minute, "minutes": time.Minute, "s": time.Second, "sec": time.Second,
		"second": time.Second, "seconds": time.Second}
	scales := map[string]func(float64) quantity.Temperature{"°C": quantity.Celsius, "c": quantity.Celsius,
		"Celsius": quantity.Celsius, "degC": quantity.Celsius, "\xb0C": quantity.Celsius, "°F": quantity.Fahrenheit,
		"f":          quantity.Fahrenheit,
		"fahrenheit": quantity.Fahrenheit, "degF": quantity.Fahrenheit, "\xb0F": quantity.Fahrenheit,
		"K": quantity.Kelvin, "kelvin": quantity.Kelvin}
	around := []string{"%s", "%s_", "x %s", "x(%s)", "x[%s]", "x_%s", "x/%s", "x.%s", "%s.x", "%s/x", "(%s"}
	for word, unit := range times {
		for scale, celsius := range scales {
			for _, form := range around {
				heading := fmt.Sprintf(form, strings.ToUpper(word)) + ";" + fmt.Sprintf(form, scale)
				got, err := ferment.ParseReadings(heading + "\n0;290\n90;291,5")
				want := []ferment.Knot{{Temperature: celsius(290)},
					{At: quantity.Elapsed(90 * unit), Temperature: celsius(291.5)}}
				if diff := cmp.Diff(want, got.Points); err != nil || diff != "" {
					t.Fatalf("%q: %v %s", heading, err, diff)
				}
			}
		}
	}
	for _, heading := range []string{"xh;C", "h2;C", "h-x;C", "h;xC", "h;C2", "h;C:x"} {
		if got, err := ferment.ParseReadings(heading + "\n0;20"); err == nil {
			t.Errorf("%q is read as %v", heading, got)
		}
	}
}

// Times of day go on after midnight, night after night; what is not a time of day is refused.
func TestTimesOfDayInProbeLogs(t *testing.T) {
	var log strings.Builder
	log.WriteString("when,C\n")
	var want []ferment.Knot
	for i := range 9 { // every nine hours from 6:05:07 on
		at := time.Duration(i) * 9 * time.Hour
		day := (6*time.Hour + 5*time.Minute + 7*time.Second + at) % (24 * time.Hour)
		fmt.Fprintf(&log, "%d:%02d:%02d,%d\n", int(day.Hours()), int(day.Minutes())%60, int(day.Seconds())%60, 20+i)
		want = append(want, ferment.Knot{At: quantity.Elapsed(at), Temperature: quantity.Celsius(float64(20 + i))})
	}
	got, err := ferment.ParseReadings(log.String())
	if diff := cmp.Diff(want, got.Points); err != nil || diff != "" {
		t.Errorf("%v %s", err, diff)
	}
	for text, ok := range map[string]bool{"00:00": true, "0:00": true, "23:59:59": true, "24:00": false, "23:60": false,
		"23:59:60": false, "-1:00": false, "+1:00": false, "1:+2": false, "1:-2": false, "1:2": true, "001:00": false,
		"1:002": false, ":30": false, "1:": false, "1:2:3:4": false, "9": false} {
		if _, err := ferment.ParseReadings(text + ",20 °C"); (err == nil) != ok {
			t.Errorf("%q: %v", text, err)
		}
	}
}

// A log lasts up to 366 days, by the clock, by dates, or by numbers.
func TestTheLongestProbeLogs(t *testing.T) {
	var byClock strings.Builder
	byClock.WriteString("when,C\n")
	for range 366 {
		byClock.WriteString("08:00,20\n20:00,20\n")
	}
	byClock.WriteString("08:00,20\n")
	const year = 366 * 24
	for _, c := range []struct{ name, text, after string }{
		{"by the clock", byClock.String(), "08:01,20\n"},
		{"by dates", "2024-01-01 08:00,20 °C\n2025-01-01 08:00:00,20 °C\n", "2025-01-01 08:00:01,20 °C\n"},
		{"by numbers", fmt.Sprintf("h,C\n0,20\n%d,20\n", year), fmt.Sprintf("%d.001,20\n", year)},
	} {
		got, err := ferment.ParseReadings(c.text)
		if err != nil || got.Points[len(got.Points)-1].At != quantity.Elapsed(year*time.Hour) {
			t.Errorf("%s: %d readings, %v", c.name, len(got.Points), err)
		}
		if _, err = ferment.ParseReadings(c.text + c.after); len(quantity.InputErrors(err)) != 1 {
			t.Errorf("%s, longer: %v", c.name, err)
		}
	}
}

// Times in numbers are kept to the millisecond, however they are rounded on the way.
func TestTimesInNumbersAreExact(t *testing.T) {
	var text strings.Builder
	text.WriteString("h;C\n")
	for i := range 2000 {
		fmt.Fprintf(&text, "%d,%03d;20\n", i/1000, i%1000)
	}
	got, err := ferment.ParseReadings(text.String())
	if err != nil {
		t.Fatal(err)
	}
	for i, k := range got.Points {
		if want := quantity.Elapsed(time.Duration(i) * 3600 * time.Millisecond); k.At != want {
			t.Fatalf("line %d: %v, want %v", i+2, k.At, want)
		}
	}
}

// A log of up to 64 MB is read, a longer one is not looked at.
func TestTheLargestProbeLog(t *testing.T) {
	if testing.Short() {
		t.Skip("64 MB take a while to be read")
	}
	text := strings.Repeat("#", 64<<20+1)
	for size, want := range map[int]string{
		64 << 20:   "text: required: want at least one reading, such as 0h, 24.5 °C",
		64<<20 + 1: "text: out of range: got 67108865 bytes, want at most 64 MB",
	} {
		if _, err := ferment.ParseReadings(text[:size]); err == nil || err.Error() != want {
			t.Errorf("%d bytes: %v, want %s", size, err, want)
		}
	}
}

// Blank lines and remarks are passed over wherever they stand; a row without a number is a heading only before all
// others, and an empty cell is one that is missing.
func TestRowsOfProbeLogs(t *testing.T) {
	want := []ferment.Knot{{Temperature: quantity.Celsius(24)}, {At: quantity.Elapsed(time.Hour),
		Temperature: quantity.Celsius(23)}}
	got, err := ferment.ParseReadings("\n  # in the cellar\r\n \t \r\n  0h, 24 °C\r\n   \r\n1h, 23 °C  \r\n\r\n")
	if diff := cmp.Diff(want, got.Points); err != nil || diff != "" {
		t.Errorf("%v %s", err, diff)
	}
	var a answers
	for name, text := range map[string]string{"a heading below": "0h, 24 °C\nhours, C\n", "no first time": ",24 °C\n",
		"no first temperature": "0h,\n", "neither": ",\n", "no later time": "h,C\n0,20\n,21",
		"no later temperature":    "h,C\n1,",
		"a time of 64 signs":      "h,C\n" + strings.Repeat("0", 61) + "1.5,20",
		"a time of 65 signs":      "h,C\n" + strings.Repeat("0", 62) + "1.5,20",
		"a degree too cold":       "h,K\n1,-1",
		"a long temperature":      "h,C\n1," + strings.Repeat("0", 31) + "7",
		"a longer one":            "h,C\n1," + strings.Repeat("0", 32) + "7",
		"neither is a number":     "h,C\nx,y",
		"a heading of one column": "hours,\n0,20"} {
		_, err := ferment.ParseReadings(text)
		a.add(name, err)
	}
	a.kept(t, "rows.txt")
}

// Twenty faults of a log are told, wherever they are, and no more.
func TestTwentyFaultsOfALogAreTold(t *testing.T) {
	for name, row := range map[string]string{"no rows": "x\n", "times": "x,20\n", "temperatures": "1,x\n",
		"both": "x,x\n"} {
		_, err := ferment.ParseReadings("h,C\n" + strings.Repeat(row, 40))
		if n := len(quantity.InputErrors(err)); n != 20 {
			t.Errorf("%s: %d faults", name, n)
		}
		_, err = ferment.ParseReadings("h,C\nx,20\n" + strings.Repeat(row, 40))
		if n := len(quantity.InputErrors(err)); n != 20 {
			t.Errorf("%s after another: %d faults", name, n)
		}
	}
	var knots []ferment.Knot
	for range 40 {
		knots = append(knots, ferment.Knot{Temperature: quantity.Celsius(80)})
	}
	_, err := ferment.FromKnots(knots...)
	if n := len(quantity.InputErrors(err)); n != 20 {
		t.Errorf("%d faults of knots", n)
	}
}
