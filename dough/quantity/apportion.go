package quantity

import (
	"math/bits"
	"slices"
	"strconv"
)

// Apportion splits a mass by shares so that the parts add up to the whole, to the
// microgram.
//
//	part_i = ⌊whole · share_i / Σ share⌋, then one microgram more for the parts with the
//	largest remainders until the whole is used up
//
// whole is zero or more; shares are zero or more with a positive sum of at most
// 1,000,000,000 %. Each part is within one microgram of its exact share; equal remainders are
// served in order. Errors: ErrOutOfRange for a negative or invalid whole or share,
// ErrInconsistent when a positive whole has no shares. Source: the largest-remainder
// (Hamilton) method of apportionment; see Balinski and Young, Fair Representation (1982).
func Apportion(whole Mass, shares []Percent) ([]Mass, error) {
	weights := make([]int64, len(shares))
	var problems Problems
	for i, s := range shares {
		if !s.IsValid() || s.Sign() < 0 {
			problems.Add(index("shares", i), s, Tell("quantity.want_0_percent_or_more", "0 %% or more"), ErrOutOfRange)
		}
		weights[i] = s.quanta
	}
	return apportion(whole, weights, &problems, percents.high)
}

// ApportionLike splits a mass in the proportions of the given masses; see [Apportion].
func ApportionLike(whole Mass, pattern []Mass) ([]Mass, error) {
	weights := make([]int64, len(pattern))
	var problems Problems
	for i, m := range pattern {
		if !m.IsValid() || m.Sign() < 0 {
			problems.Add(index("pattern", i), m, Tell("quantity.want_0_g_or_more", "0 g or more"), ErrOutOfRange)
		}
		weights[i] = m.quanta
	}
	return apportion(whole, weights, &problems, masses.high)
}

func index(name string, i int) string { return name + "[" + strconv.Itoa(i) + "]" }

type remainder struct {
	of    uint64
	index int
}

func apportion(whole Mass, weights []int64, problems *Problems, high int64) ([]Mass, error) {
	Check(problems, "whole", whole, Mass{}, newMass(masses.high))
	if err := problems.ErrFor(nil); err != nil {
		return nil, err
	}
	var sum int64
	for _, w := range weights {
		sum += w
		if sum > high {
			problems.Add("shares", Tell("quantity.got_sum_beyond_limit", "a sum beyond the limit"),
				Tell("quantity.want_shares_within_limit_their_quantity",
					"shares within the limit of their quantity"), ErrOutOfRange)
			return nil, problems.ErrFor(nil)
		}
	}
	parts := make([]Mass, len(weights))
	if sum == 0 {
		if whole.IsZero() {
			return parts, nil
		}
		problems.Add("shares", Tell("quantity.got_sum_zero", "a sum of zero"),
			Tell("quantity.want_at_least_one_positive_share", "at least one positive share"), ErrInconsistent)
		return nil, problems.ErrFor(nil)
	}
	left := whole.quanta
	rest := make([]remainder, len(weights))
	for i, w := range weights {
		hi, lo := bits.Mul64(uint64(whole.quanta), uint64(w))
		q, r := bits.Div64(hi, lo, uint64(sum)) // hi < sum, because w ≤ sum and whole < 2^64
		parts[i] = newMass(int64(q))
		left -= int64(q)
		rest[i] = remainder{r, i}
	}
	slices.SortFunc(rest, func(a, b remainder) int {
		switch {
		case a.of > b.of:
			return -1
		case a.of < b.of:
			return 1
		}
		return a.index - b.index
	})
	for i := range left {
		parts[rest[i].index].quanta++
	}
	return parts, nil
}
