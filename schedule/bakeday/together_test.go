package bakeday

import (
	"bytes"
	"context"
	"encoding/json"
	"sync"
	"testing"
	"time"
)

// Plans that share a bake, a day, a clock and all that is kept between calls are asked for at once and are one answer.
// This is what the race detector is run on: the library starts nothing at once by itself.
func TestPlansAskedAtOnceAreTheSame(t *testing.T) {
	zone := time.FixedZone("Europe/Zurich", 3600)
	clock := KitchenClock{Now: time.Date(2026, 11, 25, 19, 0, 0, 0, time.UTC), Zone: zone}
	bake, day := hall(), sunday()
	ask := func() []byte {
		one, err := bake.Plan(context.Background(), clock)
		if err != nil {
			t.Error(err)
			return nil
		}
		all, err := day.Plan(context.Background(), clock)
		if err != nil {
			t.Error(err)
			return nil
		}
		text, err := json.Marshal(one)
		if err != nil {
			t.Error(err)
		}
		more, err := json.Marshal(all)
		if err != nil {
			t.Error(err)
		}
		working, err := json.Marshal(one.Workings())
		if err != nil {
			t.Error(err)
		}
		return bytes.Join([][]byte{text, more, working}, nil)
	}
	want := ask()
	var group sync.WaitGroup
	for range 3 {
		group.Go(func() {
			if got := ask(); !bytes.Equal(got, want) {
				t.Error("a plan asked for beside others is another plan")
			}
		})
	}
	group.Wait()
}
