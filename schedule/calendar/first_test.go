package calendar_test

import (
	"strings"
	"testing"
	"time"

	"example.org/maslin/schedule/calendar"
)

func TestFoldedLine(t *testing.T) {
	at := time.Date(2026, 11, 28, 11, 30, 0, 0, time.UTC)
	b, err := calendar.File{Plan: "p", Name: "Bread, Saturday", Stamp: at, Events: []calendar.Event{{
		Step: "s", Summary: "ääääääääääääääääääääääääääääääääääääääää, semi; back\\slash\nnl", From: at,
		Alarms: []calendar.Alarm{{Before: 15 * time.Minute}},
	}}}.Encode()
	if err != nil {
		t.Fatal(err)
	}
	want := "\r\nSUMMARY:" + strings.Repeat("ä", 33) + "\r\n " + strings.Repeat("ä", 7) + `\, semi\; back\\slash\nnl` + "\r\n"
	if !strings.Contains(string(b), want) {
		t.Errorf("got %q", b)
	}
}
