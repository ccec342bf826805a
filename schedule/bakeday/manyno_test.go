package bakeday

import (
	"context"
	"errors"
	"fmt"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule/wallclock"
)

// tooMany are same-day breads for one evening that one oven and one pair of hands cannot have.
func tooMany(breads int) Order {
	r := randomly(9)
	k := hall().Kitchen
	k.Away, k.Mixers[0].Bowl = nil, quantity.Liters(20)
	o := Order{Kitchen: k}
	for i := range breads {
		b := r.yeasted()
		b.Kitchen, b.Retard, b.Oven.Pots, b.Name = Kitchen{}, nil, 0, fmt.Sprint("Bread ", i+1)
		b.Loaves.FreshWithin = quantity.Elapsed(4 * time.Hour)
		b.Wanted = OnDate(wallclock.MustMoment(fmt.Sprintf("2026-11-28 %02d:00", 15+i%2*3)))
		o.Bakes = append(o.Bakes, b)
	}
	return o
}

// What nine and twelve breads with two wanted times cost that cannot be, with all that is said of it.
func BenchmarkTooManyBreads(b *testing.B) {
	for _, n := range []int{9, 12} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			for b.Loop() {
				k, err := tooMany(n).Plan(context.Background(), wednesday(b))
				if err != nil || k.Possible() {
					b.Fatal(k.Possible(), err)
				}
			}
		})
	}
}

// However early the time for planning ends, the answer is honest: the context's error when nothing was ruled out by
// then, and otherwise a no that says that time ran out, without ways out that were not tried.
func TestANoUnderADeadline(t *testing.T) {
	if testing.Short() {
		t.Skip("some seconds")
	}
	for _, patience := range []time.Duration{0, 20 * time.Millisecond, 200 * time.Millisecond, 800 * time.Millisecond} {
		ctx, cancel := context.WithTimeout(context.Background(), patience)
		k, err := tooMany(9).Plan(ctx, wednesday(t))
		over := ctx.Err() != nil
		cancel()
		switch {
		case errors.Is(err, context.DeadlineExceeded):
		case err != nil || k.Possible():
			t.Errorf("%v: possible %v, %v", patience, k.Possible(), err)
		case over && !k.TimeRanOut:
			t.Errorf("%v: time ran out, and nothing is said of it", patience)
		}
	}
}
