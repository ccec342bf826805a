package quantity_test

import (
	"errors"
	"math"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"github.com/google/go-cmp/cmp"
)

func TestDurations(t *testing.T) {
	for in, want := range map[string]string{
		"4h30m": "4h30m", "4 h 30 min": "4h30m", "90 min": "1h30m", "1.5 h": "1h30m", "20s": "20s", "2d12h": "60h",
		"0m": "0m", "-15 min": "−15m", "1h05m": "1h05m", "36 hours": "36h",
	} {
		d, err := quantity.ParseDuration(in)
		if err != nil || quantity.FormatDuration(d) != want {
			t.Errorf("%q is %v (%v), want %s", in, quantity.FormatDuration(d), err, want)
		}
	}
	for in, want := range map[string]error{
		"": quantity.ErrRequired, "90": quantity.ErrUnit, "30m4h": quantity.ErrUnit, "1h1h": quantity.ErrUnit,
		"1e9h": quantity.ErrUnit, "9999999h": quantity.ErrOutOfRange,
		"0.0000000001s": quantity.ErrTooPrecise, "1.2.3h": quantity.ErrUnit, "h": quantity.ErrUnit,
		strings.Repeat("1h", 1<<19): quantity.ErrOutOfRange, "400d": quantity.ErrOutOfRange,
	} {
		if _, err := quantity.ParseDuration(in); !errors.Is(err, want) {
			t.Errorf("%.20q: %v, want %v", in, err, want)
		}
	}
	r := quantity.TimeRange{Early: 310 * time.Minute, Likely: 370 * time.Minute, Late: 445 * time.Minute,
		Probability: quantity.NewPercent(80)}
	if got := r.String(); got != "5h10m to 7h25m (80 %), likely 6h10m" {
		t.Error(got)
	}
	if !r.Contains(6*time.Hour) || r.Contains(8*time.Hour) || r.Spread() != 135*time.Minute ||
		r.Add(time.Hour).Early != 370*time.Minute {
		t.Error("range arithmetic")
	}
}

func TestErrorsNameTheField(t *testing.T) {
	var p quantity.Problems
	quantity.Check(&p, "Target", quantity.Temperature{}, quantity.Celsius(0), quantity.Celsius(60))
	quantity.Check(&p, "Room", quantity.Celsius(400), quantity.Celsius(-40), quantity.Celsius(60))
	p.Float("Minutes", math.NaN(), 0, 60, "min")
	p.Int("Pieces", -1, 1, 1000)
	p.Duration("Retard", -time.Hour, 0, time.Hour)
	var inner quantity.Problems
	quantity.Check(&inner, "Percent", quantity.NewPercent(-2), quantity.Percent{}, quantity.NewPercent(1000))
	p.Join("Flours[2]", inner.Err())
	p.Join("Other", errors.New("plain"))
	p.Join("Nothing", nil)
	err := quantity.At("Dough", p.Err())
	want := `Dough.Target: required: want 0 °C to 60 °C
Dough.Room: out of range: got 400 °C, want −40 °C to 60 °C
Dough.Minutes: out of range: got NaN min, want 0 min to 60 min
Dough.Pieces: out of range: got −1, want 1 to 1000
Dough.Retard: out of range: got −1h, want 0m to 1h
Dough.Flours[2].Percent: out of range: got −2 %, want 0 % to 1000 %
Dough: Other: plain`
	if diff := cmp.Diff(want, err.Error()); diff != "" {
		t.Error(diff)
	}
	if got := quantity.InputErrors(err); len(got) != 6 || got[5].GoPath != "Dough.Flours[2].Percent" ||
		!errors.Is(got[0], quantity.ErrRequired) {
		t.Errorf("InputErrors: %v", got)
	}
	if quantity.At("x", nil) != nil || (&quantity.Problems{}).Err() != nil || quantity.InputErrors(nil) != nil {
		t.Error("nothing wrong must stay nil")
	}
}

func TestBoundsAreIncluded(t *testing.T) {
	var p quantity.Problems
	if !p.Float("X", 0, 0, 1, "") || !p.Float("X", 1, 0, 1, "") || !p.Int("N", 1, 1, 9) || !p.Int("N", 9, 1, 9) ||
		!p.Duration("D", 0, 0, time.Hour) || !p.Duration("D", time.Hour, 0, time.Hour) ||
		!quantity.Check(&p, "M", quantity.Grams(1), quantity.Grams(1), quantity.Grams(1)) || p.Err() != nil {
		t.Error("a bound is refused:", p.Err())
	}
	if p.Float("X", 1.001, 0, 1, "") || p.Int("N", 10, 1, 9) || p.Duration("D", -1, 0, time.Hour) ||
		quantity.Check(&p, "M", quantity.Micrograms(999_999), quantity.Grams(1), quantity.Grams(1)) {
		t.Error("what lies beyond a bound is accepted")
	}
}
