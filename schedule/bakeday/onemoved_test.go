package bakeday

import (
	"context"
	"fmt"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule"
	"example.org/maslin/schedule/wallclock"
)

// A bread is not moved into the hour that the clocks show twice: no wish can say which of the two is meant. The clocks
// of Zurich are put back at 03:00 on 25 October 2026.
func TestNoBreadIsMovedIntoTheHourThatComesTwice(t *testing.T) {
	o := Order{Kitchen: hall().Kitchen}
	o.Kitchen.Away, o.Kitchen.Asleep = nil, nil
	for i := range 2 {
		b := rolls()
		b.Kitchen, b.Name, b.Loaves.Pieces = Kitchen{}, fmt.Sprint("Rolls ", i+1), 2
		b.Wanted = OnDate(wallclock.MustMoment("2026-10-25 06:30"))
		o.Bakes = append(o.Bakes, b)
	}
	clock := wednesday(t)
	clock.Now = time.Date(2026, 10, 24, 8, 0, 0, 0, time.UTC)
	k, err := o.Plan(context.Background(), clock)
	if err != nil || !k.Possible() {
		t.Fatal(k.Possible(), err)
	}
	whole, err := o.whole()
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		earlier time.Duration
		helps   bool
	}{
		{3 * time.Hour, true}, {210 * time.Minute, true}, // 03:30, 03:00
		{4 * time.Hour, false}, {5 * time.Hour, false}, // 02:30 of winter, and of summer
		{6 * time.Hour, true}, // 01:30
	} {
		m := RuleData{Wanted: true, Step: "Rolls 2/" + idCool, Easing: schedule.Earlier,
			Change: quantity.Elapsed(c.earlier)}
		if got := whole.helps(context.Background(), &k, m, clock); got != c.helps {
			t.Errorf("%v earlier, at %v: %v", c.earlier, k.wanted()[1].Add(-c.earlier).In(k.Zone), got)
		}
	}
}
