package dough

import (
	"testing"

	"pgregory.net/rapid"

	"example.org/maslin/dough/quantity"
)

// The loop every batch runs through gives what the textbook rule gives.
func TestApportionIsLargestRemainder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(0, 40).Draw(t, "lines")
		items := make([]item, n)
		shares := make([]quantity.Percent, n)
		high := rapid.SampledFrom([]int64{3, 1000, 1_000_000_000}).Draw(t, "high")
		for i := range items {
			shares[i] = percentOf(rapid.Int64Range(0, high).Draw(t, "share"))
			items[i].percent = shares[i]
		}
		whole := rapid.Int64Range(1, 100_000_000_000_000).Draw(t, "whole")
		if rapid.Bool().Draw(t, "small") {
			whole = whole%50 + 1
		}
		want, err := quantity.Apportion(quantity.Micrograms(whole), shares)
		if err != nil {
			want = make([]quantity.Mass, n) // nothing to share by
		}
		got := make([]quantity.Mass, n)
		apportion(whole, items, got)
		for i := range got {
			if got[i] != want[i] {
				t.Fatalf("share %d of %v: %v, want %v", i, shares, got, want)
			}
		}
	})
}
