package wallclock_test

import (
	"encoding/json"
	"errors"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule/wallclock"
)

func TestZeroValues(t *testing.T) {
	if d := (wallclock.Date{}); d.IsValid() || !d.IsZero() || d.String() != "no date" {
		t.Errorf("zero Date: %v", d)
	}
	if c := (wallclock.Clock{}); !c.IsValid() || c.String() != "00:00" {
		t.Errorf("zero Clock: %v", c)
	}
	if m := (wallclock.Moment{}); m.IsValid() || !m.IsZero() || m.String() != "no moment" {
		t.Errorf("zero Moment: %v", m)
	}
	var zero wallclock.Policy
	p := wallclock.Later
	if err := p.UnmarshalText(nil); err != nil || p != wallclock.RFC5545 || p != zero {
		t.Errorf("zero Policy: %v, %v", p, err)
	}
	if h := (wallclock.Habit{}); h.Check() != nil || h.String() != "all day every day" {
		t.Errorf("zero Habit: %v, %v", h, h.Check())
	}
}

func TestAccepted(t *testing.T) {
	for _, c := range []struct{ kind, text, want string }{
		{"date", "2026-11-28", "2026-11-28"},
		{"date", "2028-02-29", "2028-02-29"},
		{"date", "2000-02-29", "2000-02-29"},
		{"date", "0001-01-01", "0001-01-01"},
		{"date", "9999-12-31", "9999-12-31"},
		{"clock", "06:30", "06:30"},
		{"clock", "6:30", "06:30"},
		{"clock", "0:00", "00:00"},
		{"clock", "23:59", "23:59"},
		{"clock", "06:30:00", "06:30"},
		{"moment", "2026-11-28 12:30", "Sat 2026-11-28 12:30"},
		{"moment", "2026-11-28T12:30:00", "Sat 2026-11-28 12:30"},
		{"moment", "2026-11-28 6:30", "Sat 2026-11-28 06:30"},
		{"moment", "Sat 2026-11-28 12:30", "Sat 2026-11-28 12:30"},
		{"moment", "saturday, 2026-11-28 12:30", "Sat 2026-11-28 12:30"},
		{"days", "every day", "every day"},
		{"days", "daily", "every day"},
		{"days", "Fri", "Friday"},
		{"days", "weekdays", "Monday, Tuesday, Wednesday, Thursday and Friday"},
		{"days", "Mon to Fri", "Monday, Tuesday, Wednesday, Thursday and Friday"},
		{"days", "Sat to Mon", "Monday, Saturday and Sunday"},
		{"days", "weekends", "Saturday and Sunday"},
		{"days", "Sun,sat", "Saturday and Sunday"},
		{"days", "Mon, Wed, and Fri", "Monday, Wednesday and Friday"},
		{"days", "Mon to Sun", "every day"},
		{"policy", "rfc5545", "rfc5545"},
		{"policy", "refuse", "refuse"},
		{"habit", "asleep 22:30 to 06:30 every day", "asleep 22:30 to 06:30 every day"},
		{"habit", "asleep 22:30 to 6:30", "asleep 22:30 to 06:30 every day"},
		{"habit", "22:30-06:30", "22:30 to 06:30 every day"},
		{"habit", "22:30–06:30 weekdays", "22:30 to 06:30 on Monday, Tuesday, Wednesday, Thursday and Friday"},
		{"habit", "away 09:00 to 15:00 on Friday", "away 09:00 to 15:00 on Friday"},
		{"habit", "at market from 5:00 to 13:00 on Wed and Sat", "at market 05:00 to 13:00 on Wednesday and Saturday"},
		{"habit", "closed all day on 2026-11-27", "closed all day on 2026-11-27"},
		{"habit", "up all night 0:00 to 04:00", "up all night 00:00 to 04:00 every day"},
	} {
		if got, err := reparse(c.kind, c.text); err != nil || got != c.want {
			t.Errorf("%s %q: got %q, %v; want %q", c.kind, c.text, got, err, c.want)
		}
	}
}

// reparse reads a text and prints the value.
func reparse(kind, text string) (string, error) {
	switch kind {
	case "date":
		v, err := wallclock.ParseDate(text)
		return v.String(), err
	case "clock":
		v, err := wallclock.ParseClock(text)
		return v.String(), err
	case "moment":
		v, err := wallclock.ParseMoment(text)
		return v.String(), err
	case "days":
		v, err := wallclock.ParseDays(text)
		return v.String(), err
	case "policy":
		v, err := policyOf(text)
		return v.String(), err
	}
	v, err := wallclock.ParseHabit(text)
	return v.String(), err
}

func TestRefused(t *testing.T) {
	long := strings.Repeat("9", 1<<20)
	for _, c := range []struct {
		kind, text string
		reason     error
		says       string // part of the message
	}{
		{"date", "", quantity.ErrRequired, "2026-11-28"},
		{"date", "2026-02-30", quantity.ErrOutOfRange, "1 to 28 (February 2026)"},
		{"date", "1900-02-29", quantity.ErrOutOfRange, "1 to 28"},
		{"date", "2026-13-01", quantity.ErrOutOfRange, ""},
		{"date", "2026-00-01", quantity.ErrOutOfRange, ""},
		{"date", "0000-01-01", quantity.ErrOutOfRange, ""},
		{"date", "2026-11-00", quantity.ErrOutOfRange, "1 to 30"},
		{"date", "2026-1-28", wallclock.ErrSyntax, ""},
		{"date", "28.11.2026", wallclock.ErrSyntax, ""},
		{"date", "+026-11-28", wallclock.ErrSyntax, ""},
		{"date", "2026-11-28 ", wallclock.ErrSyntax, ""},
		{"date", "２026-11-28", wallclock.ErrSyntax, ""},
		{"date", long, wallclock.ErrSyntax, ""},
		{"clock", "", quantity.ErrRequired, ""},
		{"clock", "24:00", quantity.ErrOutOfRange, "midnight is 00:00"},
		{"clock", "25:00", quantity.ErrOutOfRange, "00:00 to 23:59"},
		{"clock", "12:60", quantity.ErrOutOfRange, ""},
		{"clock", "12:30:30", quantity.ErrTooPrecise, "whole minutes"},
		{"clock", "12:30:0", wallclock.ErrSyntax, ""},
		{"clock", "12:3", wallclock.ErrSyntax, ""},
		{"clock", "012:30", wallclock.ErrSyntax, ""},
		{"clock", "-1:30", wallclock.ErrSyntax, ""},
		{"clock", "12", wallclock.ErrSyntax, ""},
		{"clock", "1230", wallclock.ErrSyntax, ""},
		{"clock", "12:30 pm", wallclock.ErrSyntax, ""},
		{"clock", "12:30:00:00", wallclock.ErrSyntax, ""},
		{"clock", long, wallclock.ErrSyntax, ""},
		{"moment", "", quantity.ErrRequired, ""},
		{"moment", "2026-11-28", wallclock.ErrSyntax, ""},
		{"moment", "12:30", wallclock.ErrSyntax, ""},
		{"moment", "2026-02-30 12:30", quantity.ErrOutOfRange, "no such day"},
		{"moment", "2026-11-28 24:30", quantity.ErrOutOfRange, ""},
		{"moment", "Fri 2026-11-28 12:30", wallclock.ErrWeekday, "2026-11-28 is a Saturday"},
		{"moment", "Saxday 2026-11-28 12:30", wallclock.ErrSyntax, "weekday"},
		{"moment", "Sat", wallclock.ErrSyntax, ""},
		{"moment", "2026-11-28t12:30", wallclock.ErrSyntax, ""},
		{"moment", "2026-11-28 12:30Z", wallclock.ErrSyntax, ""},
		{"moment", long, wallclock.ErrSyntax, ""},
		{"days", "", quantity.ErrRequired, ""},
		{"days", "Mon,", wallclock.ErrSyntax, ""},
		{"days", "Mon and", wallclock.ErrSyntax, ""},
		{"days", "Mon to", wallclock.ErrSyntax, ""},
		{"days", "Mon to never", wallclock.ErrSyntax, ""},
		{"days", "Mo", wallclock.ErrSyntax, ""},
		{"days", long, wallclock.ErrSyntax, ""},
		{"policy", "first", quantity.ErrOutOfRange, "earlier"},
		{"habit", "", quantity.ErrRequired, ""},
		{"habit", "asleep", wallclock.ErrSyntax, ""},
		{"habit", "asleep 22:30", wallclock.ErrSyntax, ""},
		{"habit", "asleep 22:30 until 06:30", wallclock.ErrSyntax, ""},
		{"habit", "asleep 22:30 to 26:30", quantity.ErrOutOfRange, "to:"},
		{"habit", "asleep 22:99 to 06:30", quantity.ErrOutOfRange, "from:"},
		{"habit", "away 09:00 to 09:00", quantity.ErrInconsistent, "00:00 to 00:00"},
		{"habit", "away 09:00 to 15:00 on 2026-02-30", quantity.ErrOutOfRange, "On:"},
		{"habit", "away 09:00 to 15:00 on Frie", wallclock.ErrSyntax, "Days:"},
		{"habit", "away 09:00 to 15:00 on", quantity.ErrRequired, "Days:"},
		{"habit", "away 09:00 to 15:00 2026-11-27", wallclock.ErrSyntax, "Days:"},
		{"habit", "a\x00b 09:00 to 15:00", wallclock.ErrSyntax, "control"},
		{"habit", "\xff 09:00 to 15:00", wallclock.ErrSyntax, ""},
		{"habit", strings.Repeat("x", 65) + " 09:00 to 15:00", wallclock.ErrSyntax, "64 bytes"},
		{"habit", long, wallclock.ErrSyntax, ""},
	} {
		got, err := reparse(c.kind, c.text)
		if err == nil {
			t.Errorf("%s %.40q: accepted as %s", c.kind, c.text, got)
			continue
		}
		if !errors.Is(err, c.reason) || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s %.40q: %v; want %v … %s", c.kind, c.text, err, c.reason, c.says)
		}
		if len(err.Error()) > 400 || len(quantity.InputErrors(err)) == 0 {
			t.Errorf("%s %.40q: error is not a short InputError: %.80v", c.kind, c.text, err)
		}
	}
	// Both times of a habit are reported at once.
	if _, err := wallclock.ParseHabit("asleep 22:99 to 26:30"); len(quantity.InputErrors(err)) != 2 {
		t.Errorf("got %v, want two problems", err)
	}
}

func TestJSON(t *testing.T) {
	type plan struct {
		Wanted wallclock.Moment
		Day    wallclock.Date
		Clock  wallclock.Clock
		Days   wallclock.Days
		Policy wallclock.Policy
		Habits []wallclock.Habit
		Unset  wallclock.Moment
	}
	in := plan{
		Wanted: wallclock.MustMoment("2026-11-28 12:30"), Day: wallclock.MustDate("2026-11-27"),
		Clock: wallclock.MustClock("6:30"),
		Days:  wallclock.On(time.Friday), Policy: wallclock.Later,
		Habits: []wallclock.Habit{wallclock.MustHabit("away 09:00 to 15:00 on Friday")},
	}
	text, err := json.Marshal(in)
	if err != nil {
		t.Fatal(err)
	}
	want := `{"Wanted":"2026-11-28 12:30","Day":"2026-11-27","Clock":"06:30","Days":"Friday","Policy":"later",` +
		`"Habits":["away 09:00 to 15:00 on Friday"],"Unset":""}`
	if string(text) != want {
		t.Errorf("got  %s\nwant %s", text, want)
	}
	var out plan
	if err := json.Unmarshal(text, &out); err != nil {
		t.Fatal(err)
	}
	if out.Wanted != in.Wanted || out.Habits[0] != in.Habits[0] || out.Days != in.Days || out.Policy != in.Policy ||
		!out.Unset.IsZero() {
		t.Errorf("got %v, want %v", out, in)
	}
	for _, bad := range []any{
		wallclock.Date{Year: 2026, Month: 2, Day: 30}, wallclock.Clock{Hour: 24},
		wallclock.Moment{Date: wallclock.MustDate("2026-11-28"), Clock: wallclock.Clock{Hour: -1}},
		wallclock.Moment{Clock: wallclock.Clock{Hour: 1}}, wallclock.Policy(9), wallclock.Days(200),
		wallclock.Habit{To: wallclock.Clock{Hour: 99}},
	} {
		if text, err := json.Marshal(bad); err == nil {
			t.Errorf("%#v was written as %s", bad, text)
		}
	}
	for _, empty := range []any{new(wallclock.Clock), new(wallclock.Habit)} {
		if err := json.Unmarshal([]byte(`""`), empty); !errors.Is(err, quantity.ErrRequired) {
			t.Errorf("%T from an empty text: %v", empty, err)
		}
	}
}

// Fuzzing: whatever is accepted prints as something that reads back to the same value, and
// nothing panics.

func FuzzParseDate(f *testing.F) {
	f.Add("2026-11-28")
	f.Add("2026-02-30")
	f.Fuzz(func(t *testing.T, text string) {
		again(t, text, wallclock.ParseDate, wallclock.Date.String)
	})
}

func FuzzParseClock(f *testing.F) {
	f.Add("06:30")
	f.Add("6:30:00")
	f.Fuzz(func(t *testing.T, text string) {
		again(t, text, wallclock.ParseClock, wallclock.Clock.String)
	})
}

func FuzzParseMoment(f *testing.F) {
	f.Add("Sat 2026-11-28 12:30")
	f.Add("2026-11-28T12:30:00")
	f.Fuzz(func(t *testing.T, text string) {
		again(t, text, wallclock.ParseMoment, wallclock.Moment.String)
	})
}

func FuzzParseDays(f *testing.F) {
	f.Add("Mon, Wed and Fri")
	f.Add("Sat to Mon")
	f.Fuzz(func(t *testing.T, text string) {
		again(t, text, wallclock.ParseDays, wallclock.Days.String)
	})
}

func FuzzParsePolicy(f *testing.F) {
	f.Add("earlier")
	f.Fuzz(func(t *testing.T, text string) {
		again(t, text, policyOf, wallclock.Policy.String)
	})
}

func FuzzParseHabit(f *testing.F) {
	f.Add("asleep 22:30 to 06:30 every day")
	f.Add("at market from 5:00-13:00 on Wed and Sat")
	f.Add("closed all day on 2026-11-27")
	f.Add("from from 1:00 to 2:00")
	f.Fuzz(func(t *testing.T, text string) {
		h, err := wallclock.ParseHabit(text)
		if err != nil {
			return
		}
		if back, err := wallclock.ParseHabit(h.String()); err != nil || !back.Equal(h) {
			t.Fatalf("%q: %q reads back as %v, %v", text, h, back, err)
		}
	})
}

func again[T comparable](t *testing.T, text string, parse func(string) (T, error), print func(T) string) {
	v, err := parse(text)
	if err != nil {
		if len(err.Error()) > 400 {
			t.Fatalf("%d bytes of error", len(err.Error()))
		}
		return
	}
	if back, err := parse(print(v)); err != nil || back != v {
		t.Fatalf("%q: %q reads back as %v, %v", text, print(v), back, err)
	}
}

func policyOf(text string) (wallclock.Policy, error) {
	var p wallclock.Policy
	err := p.UnmarshalText([]byte(text))
	return p, err
}
