package flour_test

import (
	"testing"

	"example.org/maslin/dough/flour"
	"example.org/maslin/dough/quantity"
)

func BenchmarkShares(b *testing.B) {
	in := flour.FlourBlend{Target: quantity.MustPercent("11.5 %"), Total: quantity.Kilograms(25)}
	for i := range 6 {
		share := "16 %"
		if i == 0 {
			share = "20 %"
		}
		in.Flours = append(in.Flours, flour.FlourLot{Protein: quantity.NewPercent(9 + float64(i)),
			Share: quantity.MustPercent(share)})
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := in.Shares(); err != nil {
			b.Fatal(err)
		}
	}
}
