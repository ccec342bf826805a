package calendar_test

import (
	"fmt"
	"strings"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule/calendar"
)

func ExampleFile_Encode() {
	at := time.Date(2026, 11, 28, 16, 10, 0, 0, time.UTC) // 09:10 in the hall
	text, err := calendar.File{
		Plan: "b7c1", Name: "Maslin", Stamp: at.Add(-30 * time.Hour), Sequence: 1,
		Events: []calendar.Event{{
			Step: "bake 1", Summary: "Bake three loaves, covered", From: at, To: at.Add(30 * time.Minute), Busy: true,
			Alarms: []calendar.Alarm{{Before: quantity.Elapsed(40 * time.Minute), Text: "Light the oven"}},
		}},
	}.Encode()
	fmt.Println(strings.ReplaceAll(string(text), "\r\n", "\n"), err)
	// Output:
	// BEGIN:VCALENDAR
	// VERSION:2.0
	// PRODID:-//maslin//bake timetable//EN
	// CALSCALE:GREGORIAN
	// NAME:Maslin
	// X-WR-CALNAME:Maslin
	// BEGIN:VEVENT
	// UID:01de84b6-26ad-5fa9-8169-e584309aaa6f
	// DTSTAMP:20261127T101000Z
	// SEQUENCE:1
	// DTSTART:20261128T161000Z
	// DTEND:20261128T164000Z
	// SUMMARY:Bake three loaves\, covered
	// TRANSP:OPAQUE
	// BEGIN:VALARM
	// ACTION:DISPLAY
	// TRIGGER:-PT40M
	// DESCRIPTION:Light the oven
	// END:VALARM
	// END:VEVENT
	// END:VCALENDAR
	//  <nil>
}

func ExampleUID() {
	fmt.Println(calendar.UID("b7c1", "shape"))
	fmt.Println(calendar.UID("b7c1", "bake 1"))
	// Output:
	// 0fbdcd60-acae-598f-974d-adbad08db7ec
	// 01de84b6-26ad-5fa9-8169-e584309aaa6f
}
