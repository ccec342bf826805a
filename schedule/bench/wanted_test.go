package bench

import (
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule/bakeday"
)

// A bread is wanted by its weekday within the week, and by its date after that: the next Saturday of two is meant.
func TestWantedThisWeekOrLater(t *testing.T) {
	now := time.Date(2026, 11, 27, 15, 0, 0, 0, time.UTC)
	const day = 24 * time.Hour
	for ahead, want := range map[time.Duration]string{day: "Rye, wanted Sat 15:00", 6 * day: "Rye, wanted Thu 15:00",
		6*day + time.Minute: "Rye, wanted Thursday 3 December 2026, 15:01",
		7 * day:             "Rye, wanted Friday 4 December 2026, 15:00"} {
		m := DayNow{Name: "Rye", Wanted: now.Add(ahead)}
		if got := m.wanted(now).String(); got != want {
			t.Errorf("in %v: %s", ahead, got)
		}
	}
}

// A load without pots has no lid that comes off.
func TestLidOrSteam(t *testing.T) {
	start := time.Date(2026, 11, 28, 4, 16, 0, 0, time.UTC)
	minutes := func(n int) quantity.Elapsed { return quantity.Elapsed(time.Duration(n) * time.Minute) }
	covered := bakeday.OvenData{Covered: minutes(15), Uncovered: minutes(27)}
	inPots := covered
	inPots.Pots = 1
	for want, o := range map[string]bakeday.OvenData{
		"15m covered: the lid comes off at 04:31; then about 27m uncovered": inPots,
		"15m with steam or a cover, until 04:31; then about 27m without":    covered,
		"": {Pots: 1, Uncovered: minutes(27)},
	} {
		got := DayNow{}.baking(bakeday.PlanData{Oven: o}, bakeday.StepData{Start: start})
		if said := len(got) > 1; said != (want != "") || said && got[1].String() != want {
			t.Errorf("%v, want %s", got, want)
		}
	}
}

// The clock after mixing is that of the timetable, which begins at the next minute.
func TestReadyOnTheMinute(t *testing.T) {
	mixed := time.Date(2026, 11, 28, 3, 28, 0, 0, time.UTC)
	for after, want := range map[time.Duration]string{2 * time.Hour: "05:28", 2*time.Hour + time.Second: "05:29",
		2*time.Hour + 59*time.Second: "05:29"} {
		if got := onTheMinute(mixed, after).Format("15:04"); got != want {
			t.Errorf("%v: %s", after, got)
		}
	}
}
