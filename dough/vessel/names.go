package vessel

import (
	"strconv"

	"example.org/maslin/dough/quantity"
)

var wholeFlour = quantity.MustPercent("100 %")

// at is the path of one item of a list.
func at(list string, i int) string { return list + "[" + strconv.Itoa(i) + "]" }
