package calendar_test

import (
	"fmt"
	"strings"
	"time"

	"example.org/maslin/schedule/calendar"
)

// A reminder to look at the dough, in a file that any calendar opens.
func Example() {
	look := time.Date(2026, 11, 27, 17, 45, 0, 0, time.UTC)
	text, err := calendar.File{
		Plan: "saturday lunch", Name: "Maslin", Stamp: look.Add(-24 * time.Hour),
		Events: []calendar.Event{{
			Step: "look", Summary: "Look at the dough", From: look, To: look.Add(5 * time.Minute),
			Alarms: []calendar.Alarm{{Text: "Look at the dough"}},
		}},
	}.Encode()
	if err != nil {
		fmt.Println(err)
		return
	}
	for line := range strings.Lines(string(text)) {
		if strings.HasPrefix(line, "DTSTART") || strings.HasPrefix(line, "SUMMARY") {
			fmt.Println(strings.TrimSpace(line))
		}
	}
	// Output:
	// DTSTART:20261127T174500Z
	// SUMMARY:Look at the dough
}
