package calendar

import (
	"fmt"
	"strings"
	"time"
	"unicode"
	"unicode/utf8"

	"example.org/maslin/dough/quantity"
)

// File is a calendar file: the events of one plan.
type File struct {
	// Plan identifies the plan for its whole life, over all exports. Together with an event's
	// Step it makes the UID. It should say nothing about a person.
	Plan string `json:"plan"`

	// Name is what calendar programs show for the whole file; it may be empty.
	Name string `json:"name,omitempty"`

	// Stamp is when this export is made, from the caller's clock; it is written to the second.
	Stamp time.Time `json:"stamp"`

	// Sequence counts the exports of the plan, from 0; each later one needs a higher number, or
	// calendar programs may keep what they have. A caller who does not count can use the
	// minutes of Stamp since some fixed day.
	Sequence int `json:"sequence"`

	Events []Event `json:"events"`
}

// Event is a step of the plan, or a moment in it.
type Event struct {
	Step        string `json:"step"`                  // identifies the step within the plan, for its whole life
	Summary     string `json:"summary"`               // the title: "shape the loaves"
	Description string `json:"description,omitempty"` // may be empty
	Location    string `json:"location,omitempty"`    // may be empty

	From time.Time `json:"from"`
	To   time.Time `json:"to,omitzero"` // zero or equal to From: a moment

	// Busy says that the step keeps the baker busy. The others (bulk, retard, cooling) do not
	// block the time for appointments.
	Busy bool `json:"busy"`

	Alarms []Alarm `json:"alarms,omitempty"`
}

// Alarm is a reminder with a text.
type Alarm struct {
	// Before is how long before the event begins the alarm is shown, in exact elapsed time;
	// zero is at its beginning, negative is after it.
	Before quantity.Elapsed `json:"before"`
	AtEnd  bool             `json:"at_end,omitempty"` // Before counts from the end of the event instead
	Text   string           `json:"text,omitempty"`   // empty: the event's Summary
}

const (
	maxID     = 256
	maxLine   = 1 << 10 // bytes of a name, summary, location or alarm text
	maxText   = 1 << 14 // bytes of a description
	maxEvents = 10_000
	maxAlarms = 20
	maxBefore = 366 * 24 * time.Hour
)

// Check returns everything that is wrong with the file, in field order, or nil.
func (f File) Check() error {
	var bad quantity.Problems
	checkID(&bad, "Plan", f.Plan)
	checkLength(&bad, "Name", f.Name, maxLine)
	checkTime(&bad, "Stamp", f.Stamp)
	bad.Int("Sequence", f.Sequence, 0, 1<<31-1)
	switch n := len(f.Events); {
	case n == 0:
		bad.Required("Events", quantity.Tell("calendar.want_at_least_one_event", "at least one event"))
	case n > maxEvents:
		bad.Int("Events", n, 1, maxEvents)
		return bad.ErrFor(f)
	}
	seen := map[string]int{}
	for i, e := range f.Events {
		path := fmt.Sprintf("Events[%d]", i)
		bad.Join(path, e.check())
		if first, twice := seen[e.Step]; twice && e.Step != "" {
			bad.Add(path+".Step", quantity.Excerpt(e.Step),
				quantity.Tell("calendar.want_another_one_than_event_has", "another one than event %d has", first+1),
				quantity.ErrInconsistent)
		} else {
			seen[e.Step] = i
		}
	}
	return bad.ErrFor(f)
}

func (e Event) check() error {
	var bad quantity.Problems
	checkID(&bad, "Step", e.Step)
	if strings.TrimSpace(e.Summary) == "" {
		bad.Required("Summary", quantity.Tell("calendar.want_title", "a title"))
	}
	checkLength(&bad, "Summary", e.Summary, maxLine)
	checkLength(&bad, "Description", e.Description, maxText)
	checkLength(&bad, "Location", e.Location, maxLine)
	fromOK := checkTime(&bad, "From", e.From) && checkWhole(&bad, "From", e.From)
	if !e.To.IsZero() {
		toOK := checkTime(&bad, "To", e.To) && checkWhole(&bad, "To", e.To)
		if fromOK && toOK && e.To.Before(e.From) {
			bad.Add("To", stampOf(e.To), quantity.Tell("calendar.want_not_before_beginning", "not before the beginning (%s)",
				stampOf(e.From)), quantity.ErrInconsistent)
		}
	}
	if len(e.Alarms) > maxAlarms {
		bad.Int("Alarms", len(e.Alarms), 0, maxAlarms)
		return bad.ErrFor(e)
	}
	for i, a := range e.Alarms {
		path := fmt.Sprintf("Alarms[%d]", i)
		if before := a.Before.Duration(); bad.Duration(path+".Before", before, -maxBefore, maxBefore) &&
			before%time.Second != 0 {
			bad.Add(path+".Before", before, quantity.Tell("calendar.want_whole_seconds", "whole seconds"),
				quantity.ErrTooPrecise)
		}
		if a.AtEnd && e.moment() {
			bad.Add(path+".AtEnd", "true", quantity.Tell("calendar.want_event_end", "an event with an end"),
				quantity.ErrInconsistent)
		}
		checkLength(&bad, path+".Text", a.Text, maxLine)
	}
	return bad.ErrFor(e)
}

func (e Event) moment() bool { return e.To.IsZero() || e.To.Equal(e.From) }

func checkID(bad *quantity.Problems, path, id string) {
	switch {
	case id == "":
		bad.Required(path, quantity.Tell("calendar.want_identifier", "an identifier"))
	case len(id) > maxID:
		bad.Add(path, quantity.Excerpt(id), quantity.Tell("calendar.want_at_most_bytes", "at most %d bytes", maxID),
			quantity.ErrOutOfRange)
	case !utf8.ValidString(id) || strings.ContainsFunc(id, unicode.IsControl):
		bad.Add(path, quantity.Excerpt(id), quantity.Tell("calendar.want_utf_8_text_without_control",
			"UTF-8 text without control characters"), quantity.ErrOutOfRange)
	}
}

func checkLength(bad *quantity.Problems, path, text string, most int) {
	if len(text) > most {
		bad.Add(path, quantity.Tell("calendar.got_bytes", "%d bytes", len(text)),
			quantity.Tell("calendar.want_at_most_bytes", "at most %d bytes", most), quantity.ErrOutOfRange)
	}
}

// checkTime wants an instant whose UTC year has four digits, as the format can write.
func checkTime(bad *quantity.Problems, path string, t time.Time) bool {
	if t.IsZero() {
		bad.Required(path, quantity.Tell("calendar.want_instant", "an instant"))
		return false
	}
	if y := t.UTC().Year(); y < 1 || y > 9999 {
		bad.Add(path, quantity.Tell("calendar.got_year", "the year %d", y),
			quantity.Tell("calendar.want_years_1_to_9999", "years 1 to 9999"), quantity.ErrOutOfRange)
		return false
	}
	return true
}

func checkWhole(bad *quantity.Problems, path string, t time.Time) bool {
	if t.Nanosecond() != 0 {
		bad.Add(path, t.UTC().Format(time.RFC3339Nano), quantity.Tell("calendar.want_whole_seconds", "whole seconds"),
			quantity.ErrTooPrecise)
		return false
	}
	return true
}
