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

// A timetable that was found before the time ran out, and not brought together with the clocks of the doughs, is no
// proof that a day can be.
func TestWhatIsHalfWorkedOutIsNotPossible(t *testing.T) {
	o := sunday()
	whole, err := o.whole()
	if err != nil {
		t.Fatal(err)
	}
	for i := range whole.Bakes {
		whole.Bakes[i] = whole.Bakes[i].withDefaults()
	}
	k := planAll(t, o)
	cut, decided := 0, 0
	for asks := range 60 {
		ctx := &askedOften{Context: context.Background(), most: asks}
		switch ok, err := whole.possible(ctx, k.wanted(), wednesday(t), nil); {
		case ctx.asked > ctx.most && err == nil:
			t.Errorf("ended after %d questions: possible %v", asks, ok)
		case err != nil:
			cut++
			if ok || !errors.Is(err, context.DeadlineExceeded) {
				t.Errorf("%v, %v", ok, err)
			}
		default:
			decided++
		}
	}
	if cut == 0 || decided == 0 {
		t.Errorf("%d were cut, %d decided", cut, decided)
	}
}

// askedOften is a context that ends when it was asked so often.
type askedOften struct {
	context.Context
	asked, most int
}

func (a *askedOften) Err() error {
	if a.asked++; a.asked > a.most {
		return context.DeadlineExceeded
	}
	return nil
}
