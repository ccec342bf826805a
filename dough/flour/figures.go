package flour

import (
	"math"
	"strconv"
	"strings"

	"example.org/maslin/dough/quantity"
)

// waterForGluten is how much water dry gluten takes beside the flour's: 1.5 times its weight.
const waterForGluten = 1.5

func nan() float64 { return math.NaN() }

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

// inLine is decimals, in parentheses when negative.
func inLine(x float64, places int) string {
	s := decimals(x, places)
	if strings.HasPrefix(s, "−") {
		return "(" + s + ")"
	}
	return s
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

const one = 100_000_000 // 100 % in millionths of a point

var (
	wholeFlour = quantity.MustPercent("100 %")
	mostDough  = quantity.Kilograms(100_000)
)

// at is the path of one item of a list.
func at(list string, i int) string { return list + "[" + strconv.Itoa(i) + "]" }
