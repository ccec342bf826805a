package calendar_test

import (
	"bytes"
	"fmt"
	"io"
	"testing"
	"time"

	ical "github.com/emersion/go-ical"
)

func TestGoDecoder(t *testing.T) {
	text, name, want := written(t)
	decoder := ical.NewDecoder(bytes.NewReader(text))
	cal, err := decoder.Decode()
	if err != nil {
		t.Fatal(err)
	}
	if _, err := decoder.Decode(); err != io.EOF {
		t.Errorf("after the calendar: %v, want the end of the file", err)
	}
	if got, err := cal.Props.Text("X-WR-CALNAME"); err != nil || got != name {
		t.Errorf("calendar name %q, %v; want %q", got, err, name)
	}
	events := cal.Events()
	if len(events) != len(want) {
		t.Fatalf("%d events, want %d", len(events), len(want))
	}
	for i, e := range events {
		got, err := read(e)
		if err != nil {
			t.Errorf("%s: %v", want[i].Summary, err)
		} else if fmt.Sprintf("%#v", got) != fmt.Sprintf("%#v", want[i]) {
			t.Errorf("event %d\ngot  %#v\nwant %#v", i, got, want[i])
		}
	}
	// The encoder checks that required properties are there, and once.
	if err := ical.NewEncoder(io.Discard).Encode(cal); err != nil {
		t.Error(err)
	}
}

func read(e ical.Event) (r reading, err error) {
	keep := func(s string, err2 error) string {
		if err == nil {
			err = err2
		}
		return s
	}
	instant := func(at time.Time, err2 error) string { return keep(at.UTC().Format(form), err2) }
	r = reading{
		UID: keep(e.Props.Text("UID")), Stamp: instant(e.Props.DateTime("DTSTAMP", nil)),
		Start: instant(e.DateTimeStart(nil)), End: instant(e.DateTimeEnd(nil)),
		Summary: keep(e.Props.Text("SUMMARY")), Description: keep(e.Props.Text("DESCRIPTION")),
		Location: keep(e.Props.Text("LOCATION")), Transparency: keep(e.Props.Text("TRANSP")),
		Alarms: []bell{},
	}
	if err != nil {
		return r, err
	}
	if r.Sequence, err = e.Props.Get("SEQUENCE").Int(); err != nil {
		return r, err
	}
	for _, c := range e.Children {
		if c.Name != "VALARM" || keep(c.Props.Text("ACTION")) != "DISPLAY" {
			return r, fmt.Errorf("a %s, %v", c.Name, c.Props)
		}
		trigger := c.Props.Get("TRIGGER")
		d, err := trigger.Duration()
		if err != nil {
			return r, err
		}
		r.Alarms = append(r.Alarms, bell{int(d / time.Second), trigger.Params.Get("RELATED") == "END",
			keep(c.Props.Text("DESCRIPTION"))})
	}
	return r, err
}
