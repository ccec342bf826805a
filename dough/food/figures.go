package food

import (
	"strconv"
	"strings"

	"example.org/maslin/dough/quantity"
)

// bareNumber is the number of a quantity's text, in parentheses when it is negative.
func bareNumber(text string) string {
	n, _, _ := strings.Cut(text, " ")
	if strings.HasPrefix(n, "−") {
		return "(" + n + ")"
	}
	return n
}

// decimals prints x with a typographic minus; in a line of numbers use inLine.
func decimals(x float64, places int) string {
	return strings.Replace(strconv.FormatFloat(x, 'f', places, 64), "-", "−", 1)
}

// shortName keeps a name from the outside to a length that fits a line.
func shortName(name, otherwise string) string {
	switch {
	case name == "":
		return otherwise
	case len(name) > 40:
		return quantity.Excerpt(name)
	}
	return name
}

var (
	leastWater = quantity.MustPercent("1 %")
	wholeFlour = quantity.MustPercent("100 %")
	mostDough  = quantity.Kilograms(100_000)
)

// at is the path of one item of a list.
func at(list string, i int) string { return list + "[" + strconv.Itoa(i) + "]" }
