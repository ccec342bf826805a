package wallclock_test

import (
	"fmt"
	"time"

	"example.org/maslin/schedule/wallclock"
)

func mountain() *time.Location {
	z, err := time.LoadLocation("America/Denver")
	if err != nil {
		panic(err)
	}
	return z
}

func ExampleParseMoment() {
	m, err := wallclock.ParseMoment("Sat 2026-11-28 12:30")
	fmt.Println(m, err)
	_, err = wallclock.ParseMoment("Fri 2026-11-28 12:30")
	fmt.Println(err)
	// Output:
	// Sat 2026-11-28 12:30 <nil>
	// inconsistent: the weekday does not belong to the date: got "Fri 2026-11-28 12:30", want Saturday (2026-11-28 is a Saturday)
}

func ExampleParseDate() {
	_, err := wallclock.ParseDate("2026-02-30")
	fmt.Println(err)
	// Output:
	// out of range: there is no such day: got "2026-02-30", want a day from 1 to 28 (February 2026)
}

func ExampleParseClock() {
	c, err := wallclock.ParseClock("6:30")
	fmt.Println(c, err)
	// Output:
	// 06:30 <nil>
}

func ExampleParseDays() {
	d, err := wallclock.ParseDays("Wed and Sat")
	fmt.Println(d, d.Has(time.Saturday), err)
	// Output:
	// Wednesday and Saturday true <nil>
}

// On the morning on which the clocks go forward, half past two is never shown.
func ExampleResolve() {
	m := wallclock.MustMoment("2026-03-08 02:30")
	for _, p := range []wallclock.Policy{wallclock.RFC5545, wallclock.Earlier, wallclock.Refuse} {
		r, err := wallclock.Resolve(m, mountain(), p)
		if err != nil {
			fmt.Println(err)
			continue
		}
		fmt.Println(r)
	}
	// Output:
	// Sun 2026-03-08 03:30 -06:00 (for Sun 2026-03-08 02:30, which the clocks skip)
	// Sun 2026-03-08 01:30 -07:00 (for Sun 2026-03-08 02:30, which the clocks skip)
	// inconsistent: the clocks skip this time: got Sunday 2026-03-08 02:30 in America/Denver, want Sunday 2026-03-08 01:59 -07:00 or Sunday 2026-03-08 03:00 -06:00
}

func ExampleMomentOf() {
	wanted, err := wallclock.Resolve(wallclock.MustMoment("2026-11-28 12:30"), mountain(), wallclock.RFC5545)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(wallclock.MomentOf(wanted.At.Add(-16*time.Hour), mountain()))
	// Output:
	// Fri 2026-11-27 20:30
}

// The night in which the clocks go forward is an hour short.
func ExampleHabit_Over() {
	asleep := wallclock.MustHabit("asleep 22:30 to 06:30 every day")
	from := time.Date(2026, 3, 7, 12, 0, 0, 0, mountain())
	nights, err := asleep.Over(wallclock.Occurrence{From: from, To: from.Add(48 * time.Hour)}, mountain())
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, n := range nights {
		fmt.Println(n, n.Elapsed())
	}
	// Output:
	// 2026-03-08 05:30Z to 2026-03-08 12:30Z (asleep 22:30 to 06:30) 7h0m0s
	// 2026-03-09 04:30Z to 2026-03-09 12:30Z (asleep 22:30 to 06:30) 8h0m0s
}

// When can somebody be in the hall kitchen on Friday?
func ExampleExpand() {
	z := mountain()
	from := time.Date(2026, 11, 27, 0, 0, 0, 0, z)
	friday := wallclock.Occurrence{From: from, To: from.Add(24 * time.Hour)}
	busy, err := wallclock.Expand([]wallclock.Habit{
		wallclock.MustHabit("asleep 22:30 to 06:30 every day"),
		wallclock.MustHabit("away 09:00 to 15:00 on Friday"),
	}, friday, z)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, s := range wallclock.Free(friday, busy) {
		fmt.Println(wallclock.ClockOf(s.From, z), "to", wallclock.ClockOf(s.To, z), s.Elapsed())
	}
	fmt.Println("asleep or away", wallclock.Total(wallclock.Clip(busy, friday)))
	// Output:
	// 06:30 to 09:00 2h30m0s
	// 15:00 to 22:30 7h30m0s
	// asleep or away 14h0m0s
}

func ExampleMerge() {
	at := func(hour int) time.Time { return time.Date(2026, 11, 27, hour, 0, 0, 0, time.UTC) }
	for _, s := range wallclock.Merge([]wallclock.Occurrence{
		{From: at(9), To: at(15), Words: "away"}, {From: at(14), To: at(16), Words: "choir"},
		{From: at(22), To: at(23), Words: "asleep"},
	}) {
		fmt.Println(s)
	}
	// Output:
	// 2026-11-27 09:00Z to 2026-11-27 16:00Z (away, choir)
	// 2026-11-27 22:00Z to 2026-11-27 23:00Z (asleep)
}
