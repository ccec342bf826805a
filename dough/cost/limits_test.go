package cost

import (
	"errors"
	"math/big"
	"strings"
	"testing"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/workcheck"
	"github.com/shopspring/decimal"
)

func flourAt(price string, used quantity.Mass) CostSheet {
	return CostSheet{Loaves: 1, Unit: quantity.Kilogram, Places: 2, Lines: []CostLine{{Name: "flour", Used: used,
		Price: decimal.RequireFromString(price), Pack: quantity.Kilograms(1)}}}
}

// As many ingredients as may be, and one more; as many digits as a price may be written with, and one more.
func TestMostLinesAndDigits(t *testing.T) {
	in := flourAt("1", quantity.Grams(1))
	for len(in.Lines) < maxLines {
		in.Lines = append(in.Lines, in.Lines[0])
	}
	if _, err := in.Cost(); err != nil {
		t.Errorf("%d lines: %v", len(in.Lines), err)
	}
	in.Lines = append(in.Lines, in.Lines[0])
	if _, err := in.Cost(); !errors.Is(err, quantity.ErrOutOfRange) {
		t.Errorf("%d lines: %v", len(in.Lines), err)
	}
	// A decimal of 60 digits is compared with what a price may be; one of 61 is not even looked at.
	for digits, extreme := range map[int]bool{60: false, 61: true} {
		in := flourAt("1", quantity.Grams(1))
		in.Lines[0].Price = decimal.RequireFromString(strings.Repeat("1", digits)).Shift(-35)
		_, err := in.Cost()
		if !errors.Is(err, quantity.ErrOutOfRange) || strings.Contains(err.Error(), "extreme size") != extreme {
			t.Errorf("%d digits: %v", digits, err)
		}
	}
	// So is one of 40 decimals, and a billion written as 1e9.
	for exponent, want := range map[int32]string{
		-41: "extreme size", -40: "at most 12 decimals", 9: "", 10: "extreme size",
	} {
		in := flourAt("1", quantity.Grams(1))
		in.Lines[0].Price = decimal.New(1, exponent)
		_, err := in.Cost()
		extreme := err != nil && strings.Contains(err.Error(), "extreme size")
		if (err == nil) != (want == "") || extreme != (want == "extreme size") {
			t.Errorf("a price of 1e%d: %v", exponent, err)
		}
	}
}

// A decimal is the fraction that it is: 12.5 is 25/2, 3e4 thirty thousand, and 0.001 a thousandth.
func TestFractions(t *testing.T) {
	for text, want := range map[string]*big.Rat{"12.5": big.NewRat(25, 2), "0.001": big.NewRat(1, 1000),
		"7": big.NewRat(7, 1)} {
		if got := rat(decimal.RequireFromString(text)); got.Cmp(want) != 0 {
			t.Errorf("%s is %v", text, got)
		}
	}
	if got := rat(decimal.New(3, 4)); got.Cmp(big.NewRat(30_000, 1)) != 0 {
		t.Errorf("3e4 is %v", got)
	}
}

// The price of a unit is told with two decimals where those are enough, and with four at most.
func TestPricesOfAUnit(t *testing.T) {
	for text, want := range map[string]string{
		"1.2": "1.20", "1.25": "1.25", "1.255": "1.255", "1.2555": "1.2555", "1.25555": "1.2556", "1.25505": "1.255",
		"1.250049": "1.25", "0": "0.00",
	} {
		got := unitMoney(decimal.RequireFromString(text)).String()
		if got != want && !(strings.TrimRight(got, "0") == strings.TrimRight(want, "0")) || len(got) > 6 {
			t.Errorf("%s is told as %s, want %s", text, got, want)
		}
	}
}

// What costs nothing is nothing, with and without decimals, and its derivation says so without a rounding.
func TestWhatCostsNothing(t *testing.T) {
	for _, places := range []int{2, -1, 4} {
		for _, price := range []string{"0", "0.001", "3"} {
			in := flourAt(price, quantity.Kilograms(1))
			in.Places, in.Rounding, in.UnitRounding = places, MoneyUp, MoneyExact
			c, err := in.Cost()
			if err != nil {
				t.Fatal(err)
			}
			workcheck.Verify(t, c.Working())
			told := strings.Contains(c.Working().Text(80), "rounded up")
			if odd := price == "0.001" && places < 4; told != odd {
				t.Errorf("%s at %d places: a rounding is told: %v\n%s", price, places, told, c.Working().Text(80))
			}
		}
	}
}
