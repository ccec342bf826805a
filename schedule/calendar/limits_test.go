package calendar_test

import (
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/trial"
	"example.org/maslin/schedule/calendar"
)

// What may just be: 2³¹ − 1 changes, twenty alarms, the first year. An end before all years is told once.
func TestLimitsOfAFile(t *testing.T) {
	f := file()
	f.Sequence, f.Stamp = 1<<31-1, time.Date(1, 1, 1, 0, 0, 1, 0, time.UTC)
	f.Events[0].Alarms = make([]calendar.Alarm, 20)
	if err := f.Check(); err != nil {
		t.Error(err)
	}
	f.Stamp = time.Date(9999, 12, 31, 23, 59, 59, 0, time.UTC)
	if err := f.Check(); err != nil {
		t.Error(err)
	}
	f.Events[0].Alarms[19].Before = quantity.Elapsed(367 * 24 * time.Hour)
	if got := trial.Refused(f.Check()); got != "events[0].alarms[19].before out of range" {
		t.Error(got)
	}
	f.Events[0].Alarms = nil
	f.Sequence++
	f.Events[1].To = time.Date(-1, 1, 1, 0, 0, 0, 0, time.UTC)
	if got := trial.Refused(f.Check()); got != "sequence out of range; events[1].to out of range" {
		t.Error(got)
	}
}
