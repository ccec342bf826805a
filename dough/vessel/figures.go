package vessel

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

var wholeFlour = quantity.MustPercent("100 %")

// at is the path of one item of a list.
func at(list string, i int) string { return list + "[" + strconv.Itoa(i) + "]" }

// points prints the number of a percentage for a line of numbers, in parentheses when negative.
func points(p quantity.Percent) string { return bareNumber(p.String()) }
