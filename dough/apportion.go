package dough

import (
	"cmp"
	"math/bits"
	"slices"

	"example.org/maslin/dough/quantity"
)

type leftover struct {
	of    uint64
	index int
}

// apportion splits a positive whole over the percentages of ingredients, as [quantity.Apportion] does,
// straight into masses: this is the one loop that every batch runs through, and it needs
// no memory of its own for up to 32 lines. A total of zero leaves the masses at zero.
func apportion(whole int64, items []item, masses []quantity.Mass) {
	var sum int64
	for i := range items {
		sum += millionths(items[i].percent)
	}
	if sum == 0 {
		return
	}
	var few [32]leftover
	rest := few[:0]
	left := whole
	for i := range items {
		var q, r uint64
		// hi < sum, because each percentage is at most the sum and the whole is below 2^63.
		if hi, lo := bits.Mul64(uint64(whole), uint64(millionths(items[i].percent))); hi == 0 {
			q, r = lo/uint64(sum), lo%uint64(sum)
		} else {
			q, r = bits.Div64(hi, lo, uint64(sum))
		}
		masses[i] = quantity.Micrograms(int64(q))
		left -= int64(q)
		rest = append(rest, leftover{r, i})
	}
	if left == 0 {
		return
	}
	slices.SortFunc(rest, func(a, b leftover) int {
		if a.of != b.of {
			return -cmp.Compare(a.of, b.of)
		}
		return a.index - b.index
	})
	unit := quantity.Micrograms(1)
	for _, l := range rest[:left] {
		masses[l.index] = masses[l.index].Add(unit)
	}
}
