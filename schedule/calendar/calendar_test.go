package calendar_test

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"math"
	"net/url"
	"os"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule/calendar"
)

var noon = time.Date(2026, 11, 28, 12, 0, 0, 0, time.UTC)

// file is a small file that is right, to be changed by tests.
func file() calendar.File {
	return calendar.File{
		Plan: "hall kitchen 48", Name: "Maslin for Saturday", Stamp: noon.Add(-48 * time.Hour), Sequence: 3,
		Events: []calendar.Event{
			{Step: "bake", Summary: "Bake, covered", Description: "six loaves;\ntwo pots", Location: "hall", From: noon,
				To: noon.Add(time.Hour), Busy: true,
				Alarms: []calendar.Alarm{{Before: quantity.Elapsed(15 * time.Minute)},
					{Before: quantity.Elapsed(-5 * time.Minute), AtEnd: true, Text: "check the core"}}},
			{Step: "lunch", Summary: "Lunch", From: noon.Add(2 * time.Hour)},
		},
	}
}

func TestPublished(t *testing.T) {
	f, err := os.Open("testdata/published.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range rows[1:] {
		if got, err := compute(row[2]); err != nil || got != row[3] {
			t.Errorf("%s: got %q, %v; want %q", row[0], got, err, row[3])
		}
	}
}

// compute makes a file of one event from the inputs of a row and returns what the row asks
// for: the octets of the lines of the title, or a property as it is written.
func compute(inputs string) (string, error) {
	e := calendar.Event{Step: "s", Summary: "title", From: noon}
	f := calendar.File{Plan: "p", Stamp: noon}
	var alarm calendar.Alarm
	ask, hasAlarm := "", false
	var bad error
	for pair := range strings.SplitSeq(inputs, ";") {
		key, value, _ := strings.Cut(pair, "=")
		value, err := url.PathUnescape(value)
		bad = errors.Join(bad, err)
		switch key {
		case "summary":
			e.Summary = value
		case "plan":
			f.Plan = value
		case "step":
			e.Step = value
		case "from":
			e.From, err = time.Parse(time.RFC3339, value)
		case "to":
			e.To, err = time.Parse(time.RFC3339, value)
		case "before":
			var before time.Duration
			before, err = time.ParseDuration(value)
			alarm.Before = quantity.Elapsed(before)
			hasAlarm = true
		case "atend":
			alarm.AtEnd = value == "true"
		case "ask":
			ask = value
		default:
			err = fmt.Errorf("input %q", key)
		}
		bad = errors.Join(bad, err)
	}
	if bad != nil {
		return "", bad
	}
	if hasAlarm {
		e.Alarms = []calendar.Alarm{alarm}
	}
	f.Events = []calendar.Event{e}
	text, err := f.Encode()
	if err != nil {
		return "", err
	}
	if _, err := strict(text); err != nil {
		return "", err
	}
	var lines []string
	for line := range strings.SplitSeq(string(text), "\r\n") {
		if strings.HasPrefix(line, "SUMMARY:") || len(lines) > 0 && strings.HasPrefix(line, " ") {
			lines = append(lines, fmt.Sprint(len(line)))
		} else if len(lines) > 0 {
			break
		}
	}
	if ask == "octets" {
		return strings.Join(lines, " "), nil
	}
	unfolded := strings.ReplaceAll(string(text), "\r\n ", "")
	for line := range strings.SplitSeq(unfolded, "\r\n") {
		if name, value, _ := strings.Cut(line, ":"); name == ask || strings.HasPrefix(name, ask+";") {
			return value, nil
		}
	}
	return "", fmt.Errorf("no %s", ask)
}

func TestWholeFile(t *testing.T) {
	got, err := file().Encode()
	if err != nil {
		t.Fatal(err)
	}
	want := strings.Join([]string{
		"BEGIN:VCALENDAR", "VERSION:2.0", "PRODID:-//maslin//bake timetable//EN", "CALSCALE:GREGORIAN",
		"NAME:Maslin for Saturday", "X-WR-CALNAME:Maslin for Saturday",
		"BEGIN:VEVENT", "UID:" + calendar.UID("hall kitchen 48", "bake"), "DTSTAMP:20261126T120000Z", "SEQUENCE:3",
		"DTSTART:20261128T120000Z", "DTEND:20261128T130000Z",
		`SUMMARY:Bake\, covered`, `DESCRIPTION:six loaves\;\ntwo pots`, "LOCATION:hall", "TRANSP:OPAQUE",
		"BEGIN:VALARM", "ACTION:DISPLAY", "TRIGGER:-PT15M", `DESCRIPTION:Bake\, covered`, "END:VALARM",
		"BEGIN:VALARM", "ACTION:DISPLAY", "TRIGGER;RELATED=END:PT5M", "DESCRIPTION:check the core", "END:VALARM",
		"END:VEVENT",
		"BEGIN:VEVENT", "UID:" + calendar.UID("hall kitchen 48", "lunch"), "DTSTAMP:20261126T120000Z", "SEQUENCE:3",
		"DTSTART:20261128T140000Z",
		"SUMMARY:Lunch", "TRANSP:TRANSPARENT", "END:VEVENT", "END:VCALENDAR", "",
	}, "\r\n")
	if diff := cmp.Diff(want, string(got)); diff != "" {
		t.Error(diff)
	}
	if _, err := strict(got); err != nil {
		t.Error(err)
	}
}

// What a reader should see of a text, said another way than the writer says it.
func visible(s string) string {
	s = strings.NewReplacer("\r\n", "\n", "\r", "\n", "\u0085", "\n", "\u2028", "\n", "\u2029",
		"\n").Replace(string([]rune(s)))
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\n' || r == '\t':
			return r
		case r <= 0x1f:
			return r + '␀'
		case r == 0x7f:
			return '␡'
		case r >= 0x80 && r <= 0x9f:
			return '\uFFFD'
		case strings.ContainsRune("\u061c\u200e\u200f\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069", r):
			return '\uFFFD'
		}
		return r
	}, s)
}

// check writes a file with the text in every place and decodes it again.
func check(text string) error {
	f := file()
	f.Name = text
	f.Events = []calendar.Event{{
		Step: "s", Summary: "x" + text, Description: text, Location: text, From: noon, To: noon.Add(time.Hour),
		Alarms: []calendar.Alarm{{Text: text}},
	}}
	out, err := f.Encode()
	if err != nil {
		return err
	}
	c, err := strict(out)
	if err != nil {
		return fmt.Errorf("%w in\n%q", err, out)
	}
	event := c.inside[0]
	alarm := event.inside[0]
	want := visible(text)
	got := []string{
		strings.Join(c.properties["NAME"], "|"), strings.Join(c.properties["X-WR-CALNAME"], "|"),
		strings.TrimPrefix(event.properties["SUMMARY"][0], "x"),
		strings.Join(event.properties["DESCRIPTION"], "|"), strings.Join(event.properties["LOCATION"], "|"),
		alarm.properties["DESCRIPTION"][0],
	}
	inAlarm := want
	if text == "" {
		inAlarm = "x"
	}
	if diff := cmp.Diff([]string{want, want, want, want, want, inAlarm}, got); diff != "" {
		return fmt.Errorf("%q: %s", text, diff)
	}
	return nil
}

func TestTextStaysText(t *testing.T) {
	for _, text := range []string{
		"", "Maslin", "wheat, rye; and a \\ of salt: 2 %", "two\nlines", "two\r\nlines", "old\rMac", "\n\n", "ends in \\",
		"END:VEVENT", "loaf\r\nEND:VEVENT\r\nBEGIN:VEVENT\r\nSUMMARY:mine", "loaf\nATTACH:file:///etc/passwd",
		"\r\n END:VCALENDAR",
		"🍞🥖 " + strings.Repeat("👩‍🍳", 30), strings.Repeat("日本のパン", 20), strings.Repeat("ä", 200), strings.Repeat(",", 100),
		strings.Repeat(" ", 300),
		"nul \x00, bell \a, escape \x1b[31m, delete \x7f", "C1 \u0080\u009b, next line \u0085, separators \u2028\u2029",
		"not UTF-8: \xff\xc3\xe4\xb8", "\ttabs\tstay", "e\u0301 combining", "\u202eright to left", "\uFEFFmark",
		"isolated \u2066a\u2069, marked \u200e\u200f\u061c",
	} {
		if err := check(text); err != nil {
			t.Error(err)
		}
	}
}

func TestAnyTextStaysText(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.OneOf(
			rapid.StringN(0, 200, 1000),
			rapid.Map(rapid.SliceOfN(rapid.Byte(), 0, 200), func(b []byte) string { return string(b) }),
			rapid.Map(
				rapid.SliceOfN(
					rapid.SampledFrom([]string{"\\", "n", ";", ",", ":", "\r", "\n", " ", "\t", "ä", "日", "🍞",
						"END:VEVENT", "\xff", "\x00"}),
					0,
					80,
				),
				func(s []string) string { return strings.Join(s, "") },
			),
		).Draw(t, "text")
		if err := check(text); err != nil {
			t.Fatal(err)
		}
	})
}

func FuzzText(f *testing.F) {
	f.Add("loaf\r\nEND:VEVENT")
	f.Add(strings.Repeat("ä", 40) + ", semi; back\\slash\nnl")
	f.Add("\xff\x00\u2028")
	f.Fuzz(func(t *testing.T, text string) {
		if len(text) > 1000 {
			text = text[:1000]
		}
		if err := check(text); err != nil {
			t.Fatal(err)
		}
	})
}

func TestTimesAndAlarms(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := file()
		e := &f.Events[0]
		zone := time.FixedZone("", rapid.IntRange(-14*3600, 14*3600).Draw(t, "offset"))
		e.From = time.Unix(rapid.Int64Range(-60000000000, 250000000000).Draw(t, "from"), 0).In(zone)
		length := time.Duration(rapid.Int64Range(0, 1<<20).Draw(t, "length")) * time.Second
		e.To = e.From.Add(length)
		before := time.Duration(rapid.Int64Range(-366*86400, 366*86400).Draw(t, "before")) * time.Second
		e.Alarms = []calendar.Alarm{
			{Before: quantity.Elapsed(before), AtEnd: length > 0 && rapid.Bool().Draw(t, "at end")},
		}
		f.Sequence = rapid.IntRange(0, math.MaxInt32).Draw(t, "sequence")
		out, err := f.Encode()
		if err != nil {
			t.Fatal(err)
		}
		c, err := strict(out)
		if err != nil {
			t.Fatal(err)
		}
		event := c.inside[0]
		instant := func(name string) time.Time {
			at, err := time.Parse("20060102T150405Z", event.properties[name][0])
			if err != nil {
				t.Fatal(err)
			}
			return at
		}
		if !instant("DTSTART").Equal(e.From) || length > 0 && !instant("DTEND").Equal(e.To) || length == 0 &&
			event.properties["DTEND"] != nil {
			t.Fatalf("%v to %v written as %v", e.From, e.To, event.properties)
		}
		trigger := event.inside[0].properties["TRIGGER"][0]
		if e.Alarms[0].AtEnd != (event.inside[0].properties["TRIGGER;RELATED=END"] != nil) {
			t.Fatalf("%v written as %v", e.Alarms, event.inside[0].properties)
		}
		sign, magnitude := time.Duration(-1), trigger
		if strings.HasPrefix(trigger, "-") {
			sign, magnitude = 1, trigger[1:]
		}
		back, err := time.ParseDuration(strings.ToLower(strings.TrimPrefix(magnitude, "PT")))
		if err != nil || sign*back != before {
			t.Fatalf("%v written as %s", before, trigger)
		}
		if event.properties["SEQUENCE"][0] != fmt.Sprint(f.Sequence) {
			t.Fatalf("sequence %d written as %s", f.Sequence, event.properties["SEQUENCE"][0])
		}
	})
}

func TestUID(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		words := rapid.StringMatching(`[a-z0-9äß ]{1,20}`)
		p1, s1, p2, s2 := words.Draw(t, "plan"), words.Draw(t, "step"), words.Draw(t, "other plan"), words.Draw(t,
			"other step")
		a, b := calendar.UID(p1, s1), calendar.UID(p2, s2)
		if !uuid.MatchString(a) {
			t.Fatalf("%s is not a UUID", a)
		}
		if (a == b) != (p1 == p2 && s1 == s2) {
			t.Fatalf("%q/%q and %q/%q: %s and %s", p1, s1, p2, s2, a, b)
		}
	})
	if calendar.UID("ab", "c") == calendar.UID("a", "bc") {
		t.Error("where the plan ends and the step begins does not matter")
	}
	if id := calendar.UID(strings.Repeat("x", 1<<20), "\xff"); !uuid.MatchString(id) {
		t.Errorf("got %s", id)
	}
}

func TestEverythingWrongIsReportedAtOnce(t *testing.T) {
	long := strings.Repeat("x", 1<<20)
	f := calendar.File{
		Plan: "a\nb", Name: long, Sequence: -1,
		Events: []calendar.Event{
			{},
			{Step: "twice", Summary: "a", From: noon, To: noon.Add(-time.Hour),
				Alarms: []calendar.Alarm{{Before: quantity.Elapsed(400 * 24 * time.Hour)},
					{Before: quantity.Elapsed(time.Millisecond)}, {AtEnd: true}}},
			{Step: "twice", Summary: " \n", Description: long, Location: long, From: noon.Add(time.Nanosecond),
				To: time.Date(10000, 1, 1, 0, 0, 0, 0, time.UTC)},
			{Step: long, Summary: long, From: time.Date(-5, 1, 1, 0, 0, 0, 0, time.UTC),
				Alarms: []calendar.Alarm{{AtEnd: true, Text: long}}},
			{Step: "\xff", Summary: "a", From: noon, Alarms: make([]calendar.Alarm, 21)},
		},
	}
	out, err := f.Encode()
	if out != nil {
		t.Errorf("wrote %d bytes", len(out))
	}
	var got []string
	for _, e := range quantity.InputErrors(err) {
		got = append(got, e.GoPath)
	}
	if diff := cmp.Diff([]string{
		"Plan", "Name", "Stamp", "Sequence",
		"Events[0].Step", "Events[0].Summary", "Events[0].From",
		"Events[1].To", "Events[1].Alarms[0].Before", "Events[1].Alarms[1].Before",
		"Events[2].Summary", "Events[2].Description", "Events[2].Location", "Events[2].From", "Events[2].To",
		"Events[2].Step",
		"Events[3].Step", "Events[3].Summary", "Events[3].From", "Events[3].Alarms[0].AtEnd", "Events[3].Alarms[0].Text",
		"Events[4].Step", "Events[4].Alarms",
	}, got); diff != "" {
		t.Error(diff)
	}
	if len(err.Error()) > 3000 {
		t.Errorf("%d bytes of error", len(err.Error()))
	}
	for name, f := range map[string]calendar.File{
		"zero":            {},
		"no events":       {Plan: "p", Stamp: noon},
		"too many events": {Plan: "p", Stamp: noon, Events: make([]calendar.Event, 10_001)},
	} {
		if _, err := f.Encode(); err == nil {
			t.Errorf("%s: accepted", name)
		}
	}
}

func TestSameInputSameBytes(t *testing.T) {
	first, err := file().Encode()
	if err != nil {
		t.Fatal(err)
	}
	f := file()
	f.Stamp = f.Stamp.In(time.FixedZone("", 3600)).Add(999 * time.Millisecond)
	second, err := f.Encode()
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(first, second) {
		t.Error("the zone or the fraction of the stamp changes the file")
	}
}

// The strict reader must find planted faults, or the tests above prove nothing.
func TestStrictReaderFindsFaults(t *testing.T) {
	good, err := file().Encode()
	if err != nil {
		t.Fatal(err)
	}
	drop := func(line string) func(string) string {
		return func(s string) string { return strings.Replace(s, line, "", 1) }
	}
	swap := func(old, with string) func(string) string {
		return func(s string) string { return strings.Replace(s, old, with, 1) }
	}
	faults := map[string]func(string) string{
		"line feeds only":       func(s string) string { return strings.ReplaceAll(s, "\r\n", "\n") },
		"one bare line feed":    swap("six loaves", "six\nloaves"),
		"no last line break":    func(s string) string { return strings.TrimSuffix(s, "\r\n") },
		"a line of 76 octets":   swap("LOCATION:hall", "LOCATION:"+strings.Repeat("x", 67)),
		"cut character":         swap("LOCATION:hall", "LOCATION:\xc3\r\n \xa4"),
		"no UID":                drop("UID:" + calendar.UID("hall kitchen 48", "bake") + "\r\n"),
		"two UIDs":              swap("DTSTAMP:", "UID:"+calendar.UID("a", "b")+"\r\nDTSTAMP:"),
		"no DTSTAMP":            drop("DTSTAMP:20261126T120000Z\r\n"),
		"no PRODID":             drop("PRODID:-//maslin//bake timetable//EN\r\n"),
		"two VERSIONs":          swap("CALSCALE", "VERSION:2.0\r\nCALSCALE"),
		"local time":            swap("DTSTART:20261128T120000Z", "DTSTART:20261128T120000"),
		"February 30":           swap("DTSTART:20261128T120000Z", "DTSTART:20260230T120000Z"),
		"end before start":      swap("DTEND:20261128T130000Z", "DTEND:20261128T110000Z"),
		"bare comma":            swap(`Bake\,`, "Bake,"),
		"unknown escape":        swap(`Bake\,`, `Bake\x`),
		"nominal day":           swap("-PT15M", "-P1D"),
		"hours then seconds":    swap("-PT15M", "-PT1H5S"),
		"missing END":           drop("END:VEVENT\r\n"),
		"a second calendar":     func(s string) string { return s + s },
		"property out of place": swap("BEGIN:VEVENT", "SUMMARY:x\r\nBEGIN:VEVENT"),
		"empty line":            swap("BEGIN:VEVENT", "\r\nBEGIN:VEVENT"),
	}
	for name, plant := range faults {
		bad := plant(string(good))
		if bad == string(good) {
			t.Errorf("%s: nothing planted", name)
		} else if _, err := strict([]byte(bad)); err == nil {
			t.Errorf("%s: not found", name)
		}
	}
	if _, err := strict(slices.Clone(good)); err != nil {
		t.Error(err)
	}
}

func BenchmarkEncode(b *testing.B) {
	f := file()
	for b.Loop() {
		if _, err := f.Encode(); err != nil {
			b.Fatal(err)
		}
	}
}
