package calendar_test

import (
	"strings"
	"testing"
	"time"
	_ "time/tzdata"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule/calendar"
)

// reading is what any reader should see of an event, in UTC and with all escapes undone.
type reading struct {
	UID, Stamp, Start, End, Summary, Description, Location, Transparency string
	Sequence                                                             int
	Alarms                                                               []bell
}

type bell struct {
	Seconds int // from the start of the event (or its end) to the alarm
	AtEnd   bool
	Text    string
}

const form = "2006-01-02T15:04:05Z"

// night is a plan over the night of 25 October 2026 in Berlin, in which the clocks go back,
// with names of loaves that try to be something else.
func night(t *testing.T) (file calendar.File, want []reading) {
	berlin, err := time.LoadLocation("Europe/Berlin")
	if err != nil {
		t.Fatal(err)
	}
	evening := time.Date(2026, 10, 24, 22, 0, 0, 0, berlin)
	half := time.Date(2026, 10, 24, 23, 30, 0, 0, time.UTC) // 01:30, before the clocks go back
	file = calendar.File{
		Plan: "b7c1", Name: `Hall kitchen; maslin, six loaves \ Sunday`, Stamp: evening.Add(-24 * time.Hour), Sequence: 7,
		Events: []calendar.Event{
			{Step: "shape", Summary: "Shape the loaves", From: evening, To: evening.Add(30 * time.Minute), Busy: true,
				Location: "hall",
				Alarms: []calendar.Alarm{{Before: quantity.Elapsed(15 * time.Minute)},
					{Before: quantity.Elapsed(-5 * time.Minute), AtEnd: true, Text: "Into the cold, now; all six"}}},
			{Step: "retard", Summary: "Retard, three hours over the jump", From: half, To: half.Add(3 * time.Hour),
				Alarms: []calendar.Alarm{{Before: quantity.Elapsed(-16 * time.Hour), Text: "16 h"}, {Before: 0}}},
			{Step: "name", Summary: "loaf\r\nEND:VEVENT\r\nBEGIN:VEVENT\r\nSUMMARY:mine", From: half,
				Description: strings.Repeat("ä", 40) + `, semi; back\slash` + "\nnew line"},
			{Step: "emoji", Summary: strings.Repeat("👩‍🍳🍞", 20), From: half, To: half.Add(time.Minute),
				Description: strings.Repeat("日本のパン, ", 30)},
			{Step: "bytes", Summary: "bell \a, nul \x00 and \xff", From: half},
		},
	}
	at := func(h, m int) string { return time.Date(2026, 10, 24, h, m, 0, 0, time.UTC).Format(form) }
	stamp := "2026-10-23T20:00:00Z"
	// Written out by hand: what the standard says a reader gets.
	want = []reading{
		{calendar.UID("b7c1", "shape"), stamp, at(20, 0), at(20, 30), "Shape the loaves", "", "hall", "OPAQUE", 7,
			[]bell{{-900, false, "Shape the loaves"}, {300, true, "Into the cold, now; all six"}}},
		{calendar.UID("b7c1", "retard"), stamp, at(23, 30), "2026-10-25T02:30:00Z", "Retard, three hours over the jump", "",
			"", "TRANSPARENT", 7,
			[]bell{{57600, false, "16 h"}, {0, false, "Retard, three hours over the jump"}}},
		{calendar.UID("b7c1", "name"), stamp, at(23, 30), at(23, 30), "loaf\nEND:VEVENT\nBEGIN:VEVENT\nSUMMARY:mine",
			strings.Repeat("ä", 40) + `, semi; back\slash` + "\nnew line", "", "TRANSPARENT", 7, []bell{}},
		{calendar.UID("b7c1", "emoji"), stamp, at(23, 30), at(23, 31), strings.Repeat("👩‍🍳🍞", 20),
			strings.Repeat("日本のパン, ", 30), "", "TRANSPARENT", 7, []bell{}},
		{calendar.UID("b7c1", "bytes"), stamp, at(23, 30), at(23, 30), "bell ␇, nul ␀ and \uFFFD", "", "", "TRANSPARENT", 7,
			[]bell{}},
	}
	return file, want
}

func written(t *testing.T) (text []byte, name string, want []reading) {
	file, want := night(t)
	text, err := file.Encode()
	if err != nil {
		t.Fatal(err)
	}
	return text, file.Name, want
}
