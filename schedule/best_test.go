package schedule

import (
	"context"
	"testing"
	"time"
)

func TestKitchenOptima(t *testing.T) {
	for _, c := range []struct {
		name string
		want int
	}{{"home4", 309}, {"home8", 429}, {"home12", 766}, {"shop60", 1125}} {
		ctx, cancel := context.WithTimeout(context.Background(), 20*time.Second)
		start := time.Now()
		tt, err := loadKitchen(t, c.name).Best(ctx)
		cancel()
		if err != nil {
			t.Fatal(err)
		}
		t.Logf("%s: %v %d/5 = %d, bound %d, %d nodes, %v", c.name, tt.Verdict, tt.Cost, tt.Cost/5, tt.Bound/5, tt.Nodes, time.Since(start))
		if tt.Verdict != Optimal || tt.Cost != 5*c.want {
			t.Errorf("%s: %v, cost %d for 5 minutes each, want %d", c.name, tt.Verdict, tt.Cost/5, c.want)
		}
	}
}
