package cost_test

import (
	"errors"
	"strings"
	"testing"

	"example.org/maslin/dough/cost"
	"example.org/maslin/dough/quantity"
)

func TestMoneyIsReadAsWritten(t *testing.T) {
	for in, want := range map[string]string{"20": "20", " 0.90 ": "0.9", "0,90": "0.9", "0,125": "0.125",
		"1.250": "1.25", "1000000000": "1000000000", "00.5": "0.5"} {
		if d, err := cost.ParseMoney(in); err != nil || d.String() != want {
			t.Errorf("%q: %v, %v; want %s", in, d, err, want)
		}
	}
	for in, want := range map[string]error{
		"": quantity.ErrRequired, " ": quantity.ErrRequired, "€5": quantity.ErrUnit, "5 " +
			"EUR": quantity.ErrUnit, "-1": quantity.ErrUnit, "1,250": quantity.ErrUnit, "1.2.3": quantity.ErrUnit,
		"1,250.00": quantity.ErrUnit, ".5": quantity.ErrUnit, "5.": quantity.ErrUnit, "1e9": quantity.ErrUnit,
		"NaN": quantity.ErrUnit, "1000000001": quantity.ErrOutOfRange,
		"0.0000000000001": quantity.ErrTooPrecise, strings.Repeat("9", 1<<20): quantity.ErrOutOfRange,
	} {
		if d, err := cost.ParseMoney(in); !errors.Is(err, want) {
			t.Errorf("%.20q: %v, %v; want %v", in, d, err, want)
		}
	}
}

// Spaces count among the 64 bytes that are looked at.
func TestLongestTextOfMoney(t *testing.T) {
	text := strings.Repeat(" ", 63) + "7"
	if d, err := cost.ParseMoney(text); err != nil || d.String() != "7" {
		t.Errorf("64 bytes: %v, %v", d, err)
	}
	if _, err := cost.ParseMoney(" " + text); !errors.Is(err, quantity.ErrOutOfRange) {
		t.Errorf("65 bytes: %v", err)
	}
}

func FuzzParseMoney(f *testing.F) {
	for _, s := range []string{"20", "0.90", "0,90", "1e999999999", "\xff", "1,250"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		if d, err := cost.ParseMoney(s); err == nil {
			if again, err := cost.ParseMoney(d.String()); err != nil || !again.Equal(d) {
				t.Errorf("%q: %v, then %v, %v", s, d, again, err)
			}
		}
	})
}
