package calendar

import (
	"strconv"
	"strings"
	"time"
)

// product names the writer; RFC 5545 section 3.7.3 requires a globally unique identifier.
const product = "-//maslin//bake timetable//EN"

// Encode answers: what are the bytes of the calendar file?
//
// The result is a complete iCalendar object with one VEVENT per event, in the order given. It
// is the same, byte for byte, for the same File.
//
// Errors: everything that [File.Check] finds, all at once; then nothing is written.
//
// Source: RFC 5545 (2009), sections 3.1 (lines), 3.3.11 (text), 3.6.1 (events), 3.6.6 (alarms);
// RFC 7986 (2016) for NAME and the UID.
func (f File) Encode() ([]byte, error) {
	if err := f.Check(); err != nil {
		return nil, err
	}
	var w writer
	w.line("BEGIN", "VCALENDAR")
	w.line("VERSION", "2.0")
	w.line("PRODID", product)
	w.line("CALSCALE", "GREGORIAN")
	if f.Name != "" {
		w.line("NAME", escape(f.Name))
		w.line("X-WR-CALNAME", escape(f.Name)) // what most programs read
	}
	for _, e := range f.Events {
		f.event(&w, e)
	}
	w.line("END", "VCALENDAR")
	return w.out, nil
}

func (f File) event(w *writer, e Event) {
	w.line("BEGIN", "VEVENT")
	w.line("UID", UID(f.Plan, e.Step))
	w.line("DTSTAMP", stampOf(f.Stamp))
	w.line("SEQUENCE", strconv.Itoa(f.Sequence))
	w.line("DTSTART", stampOf(e.From))
	if !e.moment() {
		w.line("DTEND", stampOf(e.To))
	}
	w.line("SUMMARY", escape(e.Summary))
	if e.Description != "" {
		w.line("DESCRIPTION", escape(e.Description))
	}
	if e.Location != "" {
		w.line("LOCATION", escape(e.Location))
	}
	if e.Busy {
		w.line("TRANSP", "OPAQUE")
	} else {
		w.line("TRANSP", "TRANSPARENT")
	}
	for _, a := range e.Alarms {
		text := a.Text
		if text == "" {
			text = e.Summary
		}
		w.line("BEGIN", "VALARM")
		w.line("ACTION", "DISPLAY")
		if a.AtEnd {
			w.line("TRIGGER;RELATED=END", trigger(a.Before.Duration()))
		} else {
			w.line("TRIGGER", trigger(a.Before.Duration()))
		}
		w.line("DESCRIPTION", escape(text))
		w.line("END", "VALARM")
	}
	w.line("END", "VEVENT")
}

// stampOf writes an instant in UTC (RFC 5545, section 3.3.5, form 2).
func stampOf(t time.Time) string { return t.UTC().Format("20060102T150405Z") }

// trigger writes how long before an event an alarm is due: "-PT15M". Only hours, minutes and
// seconds are used, which are exact; days are nominal and stretch with the clock (RFC 5545,
// section 3.3.6, whose grammar wants the minutes between hours and seconds even when zero).
func trigger(before time.Duration) string {
	var b strings.Builder
	if before > 0 {
		b.WriteByte('-')
	} else {
		before = -before
	}
	b.WriteString("PT")
	h, m, s := before/time.Hour, before%time.Hour/time.Minute, before%time.Minute/time.Second
	if h > 0 {
		b.WriteString(strconv.Itoa(int(h)) + "H")
	}
	if m > 0 || h > 0 && s > 0 {
		b.WriteString(strconv.Itoa(int(m)) + "M")
	}
	if s > 0 || h == 0 && m == 0 {
		b.WriteString(strconv.Itoa(int(s)) + "S")
	}
	return b.String()
}
