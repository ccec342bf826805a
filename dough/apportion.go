package dough

import (
	"math/bits"

	"example.org/maslin/dough/quantity"
)

// apportion splits a positive whole over the percentages of ingredients by largest remainder, as
// [quantity.Apportion] does, straight into masses: this is the one loop that every batch runs through,
// and it needs no memory of its own for up to 32 lines. A total of zero leaves the masses at zero.
//
// Every part is first rounded to the nearest microgram. That is nearly the answer: the parts then
// miss the whole by a microgram or two, which are given to, or taken from, the parts
// whose remainders stand closest to being rounded the other way.
func apportion(whole int64, items []item, masses []quantity.Mass) {
	var sum int64
	for i := range items {
		sum += millionths(items[i].percent)
	}
	if sum == 0 {
		return
	}
	var few [32]int64
	rest := few[:]
	if len(items) > len(few) {
		rest = make([]int64, len(items))
	}
	rest = rest[:len(items)]
	left := whole
	for i := range items {
		var q, r uint64
		// hi < sum, because each percentage is at most the sum and the whole is below 2^63.
		if hi, lo := bits.Mul64(uint64(whole), uint64(millionths(items[i].percent))); hi == 0 {
			q, r = lo/uint64(sum), lo%uint64(sum)
		} else {
			q, r = bits.Div64(hi, lo, uint64(sum))
		}
		// rest is how far the part lies above (or, negative, below) its exact share once rounded.
		rest[i] = -int64(r)
		if int64(r) > sum-int64(r) {
			q++
			rest[i] += sum
		}
		masses[i] = quantity.Micrograms(int64(q))
		left -= int64(q)
	}
	for ; left > 0; left-- { // one more for the largest remainder not yet rounded up, the first of equals
		best := 0
		for i := range rest {
			if rest[i] < rest[best] {
				best = i
			}
		}
		rest[best] += sum
		masses[best] = masses[best].Add(quantity.Micrograms(1))
	}
	for ; left < 0; left++ { // one less for the smallest remainder rounded up, the last of equals
		worst := 0
		for i := range rest {
			if rest[i] >= rest[worst] {
				worst = i
			}
		}
		rest[worst] -= sum
		masses[worst] = masses[worst].Sub(quantity.Micrograms(1))
	}
}
