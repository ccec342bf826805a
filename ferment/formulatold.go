package ferment

import (
	"strconv"
	"strings"

	"example.org/maslin/dough/working"
)

// formulaTold is the formula of a curve with its decimals as numbers, so that a reader has them with the decimal sign of
// the language.
func formulaTold(formula string) working.Message {
	var parts []working.Message
	for formula != "" {
		from, to, ok := decimalIn(formula)
		if !ok {
			break
		}
		number := formula[from:to]
		x, err := strconv.ParseFloat(number, 64)
		if err != nil {
			break
		}
		_, digits, _ := strings.Cut(number, ".")
		parts = append(parts, working.Say("%s", formula[:from]), working.Say("%."+strconv.Itoa(len(digits))+"f", x))
		formula = formula[to:]
	}
	return working.Join(append(parts, working.Say("%s", formula)), "")
}

// decimalIn is where the first number with a decimal point stands.
func decimalIn(text string) (from, to int, ok bool) {
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
		return from, to, true
	}
	return 0, 0, false
}
