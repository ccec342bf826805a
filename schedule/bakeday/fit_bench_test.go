package bakeday

import (
	"context"
	"testing"
)

// Where nothing speaks against the bake as written only that is planned, however many settings there are: what is left
// is what planning once takes.
func BenchmarkFitWithNothingWrong(bench *testing.B) {
	b := rolls()
	b.Levers = fiveLevers().Levers
	when := wednesday(bench)
	bench.Run("fit", func(bench *testing.B) {
		for bench.Loop() {
			f, err := b.Fit(context.Background(), when, nil)
			if err != nil || f.Tried != 1 || f.AsWritten.Points != 0 {
				bench.Fatal(f.Tried, f.AsWritten.Against, err)
			}
		}
	})
	bench.Run("plan", func(bench *testing.B) {
		for bench.Loop() {
			if _, err := b.Plan(context.Background(), when); err != nil {
				bench.Fatal(err)
			}
		}
	})
}
