package ferment

import (
	"strconv"

	"example.org/maslin/dough/working"
)

// formulaTold is the formula of a curve with its decimals as numbers, so that a reader has them with the decimal sign
// of the language.
func formulaTold(formula string) working.Message {
	var parts []working.Message
	for formula != "" {
		from, point, to, ok := decimalIn(formula)
		if !ok {
			break
		}
		x, err := strconv.ParseFloat(formula[from:to], 64)
		if err != nil {
			break
		}
		parts = append(parts, working.Say("%s", formula[:from]), working.Say("%."+strconv.Itoa(to-point-1)+"f", x))
		formula = formula[to:]
	}
	return working.Join(append(parts, working.Say("%s", formula)), "")
}

// decimalIn is where the first number with a decimal point stands.
func decimalIn(text string) (from, point, to int, ok bool) {
	digit := func(i int) bool { return i >= 0 && i < len(text) && text[i] >= '0' && text[i] <= '9' }
	for i := range len(text) {
		if text[i] != '.' || !digit(i-1) || !digit(i+1) {
			continue
		}
		for from, to = i, i+1; digit(from - 1); from-- {
		}
		for digit(to) {
			to++
		}
		return from, i, to, true
	}
	return 0, 0, 0, false
}
