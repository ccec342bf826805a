package quantity

import (
	"github.com/shopspring/decimal"
)

func must[T any](v T, err error) T {
	if err != nil {
		panic("quantity: literal refused: " + err.Error())
	}
	return v
}

// textOf avoids copying a megabyte before the parser refuses it.
func textOf(text []byte) string {
	if len(text) > maxText {
		return string(text[:maxText+1])
	}
	return string(text)
}

// decimalText describes a decimal for an error without printing ten thousand digits.
func decimalText(d decimal.Decimal) string {
	if d.Exponent() > 100 || d.Exponent() < -100 || d.NumDigits() > 100 {
		return "a decimal of extreme size"
	}
	return d.String()
}
