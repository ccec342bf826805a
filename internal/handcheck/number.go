package handcheck

import (
	"math"
	"math/big"
	"regexp"
	"strconv"
	"strings"
)

// A Value is a printed value: its number, half a unit of its last digit, and its unit.
type Value struct {
	Text   string
	Number *big.Rat // minutes of the week for a time of day
	Half   float64
	Unit   string
	clock  bool
}

var valueForm = regexp.MustCompile(`^([−-]?)([0-9]+)(?:\.([0-9]+))?(?: × 10([⁻⁰¹²³⁴⁵⁶⁷⁸⁹]+))?`)

var plainDigits = strings.NewReplacer(
	"⁻", "-", "⁰", "0", "¹", "1", "²", "2", "³", "3", "⁴", "4", "⁵", "5", "⁶", "6", "⁷", "7", "⁸", "8", "⁹", "9",
)

// ReadValue reads a value such as "5.043 × 10⁻⁷ m²/s", "312 min (5h12m)" or "Sat 14:05".
func ReadValue(text string) (Value, bool) {
	if m := clockForm.FindStringSubmatch(text); m != nil {
		return Value{Text: text, Number: new(big.Rat).SetInt64(minutesOf(m)), Half: 0.5, Unit: "time of day",
			clock: true}, true
	}
	m := valueForm.FindStringSubmatch(text)
	if m == nil {
		return Value{}, false
	}
	exponent := 0
	if m[4] != "" {
		exponent, _ = strconv.Atoi(plainDigits.Replace(m[4]))
	}
	digits := strings.Replace(m[1], "−", "-", 1) + m[2] + "." + m[3] + "0e" + strconv.Itoa(exponent)
	number, ok := new(big.Rat).SetString(digits)
	unit, _, _ := strings.Cut(strings.TrimSpace(text[len(m[0]):]), " (")
	return Value{
		Text: text, Number: number, Half: 0.5 * math.Pow10(exponent-len(m[3])), Unit: strings.TrimSpace(unit),
	}, ok
}

// Float is the number.
func (v Value) Float() float64 {
	f, _ := v.Number.Float64()
	return f
}

// typed is the number as a line of arithmetic writes it.
func (v Value) typed() string {
	if v.clock {
		return clockForm.FindString(v.Text)
	}
	m := valueForm.FindStringSubmatch(v.Text)
	number := m[1] + m[2]
	if m[3] != "" {
		number += "." + m[3]
	}
	if m[4] != "" {
		power := strings.Replace(plainDigits.Replace(m[4]), "-", "−", 1)
		if strings.HasPrefix(power, "−") {
			power = "(" + power + ")"
		}
		number += " × 10^" + power
	}
	return number
}

// Gives reports whether a number that was reckoned is the value at its printed digits.
func (v Value) Gives(got float64) bool {
	want := v.Float()
	difference := math.Abs(got - want)
	if v.clock {
		difference = math.Mod(difference, week)
		difference = min(difference, week-difference)
	}
	return difference <= v.Half*(1+tie)+1e-12*math.Abs(want)
}

// agrees reports whether two values are the same at the digits of the coarser one.
func (v Value) agrees(w Value) bool {
	if v.Unit != w.Unit {
		return false
	}
	difference := math.Abs(v.Float() - w.Float())
	return difference <= max(v.Half, w.Half)*(1+tie)+1e-12*math.Abs(v.Float())
}

// tie is how far beyond half a digit, as a share of it, a line may lie: a result at a tie is rounded by a last quantum
// of its own that the numbers need not have.
const tie = 1e-4
