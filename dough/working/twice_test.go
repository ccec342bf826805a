package working_test

import (
	"encoding/json"
	"testing"
	"time"
	_ "time/tzdata"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

// The hour that clocks put back show twice is told with the zone's abbreviation: directly, in a message, in one that
// has traveled, and to a reader of another zone. The moments of change are those of the IANA time zone database.
func TestTheHourThatIsShownTwice(t *testing.T) {
	for _, c := range []struct {
		zone, utc, want string
	}{
		{"Europe/Zurich", "2026-10-24T23:59:00Z", "Sun 01:59"},
		{"Europe/Zurich", "2026-10-25T00:00:00Z", "Sun 02:00 CEST"},
		{"Europe/Zurich", "2026-10-25T00:59:00Z", "Sun 02:59 CEST"},
		{"Europe/Zurich", "2026-10-25T01:00:00Z", "Sun 02:00 CET"},
		{"Europe/Zurich", "2026-10-25T01:59:00Z", "Sun 02:59 CET"},
		{"Europe/Zurich", "2026-10-25T01:59:40Z", "Sun 03:00"},
		{"Europe/Zurich", "2026-03-29T01:00:00Z", "Sun 03:00"}, // put forward: nothing is shown twice
		{"Europe/Zurich", "2026-03-29T00:59:00Z", "Sun 01:59"},
		{"America/Denver", "2026-11-01T07:30:00Z", "Sun 01:30 MDT"},
		{"America/Denver", "2026-11-01T08:30:00Z", "Sun 01:30 MST"},
		{"Australia/Lord_Howe", "2026-04-04T14:45:00Z", "Sun 01:45 +11"}, // by half an hour
		{"Australia/Lord_Howe", "2026-04-04T15:15:00Z", "Sun 01:45 +1030"},
		{"Australia/Lord_Howe", "2026-04-04T14:15:00Z", "Sun 01:15"},
		{"UTC", "2026-10-25T01:00:00Z", "Sun 01:00"},
	} {
		zone, err := time.LoadLocation(c.zone)
		if err != nil {
			t.Fatal(err)
		}
		at, err := time.Parse(time.RFC3339, c.utc)
		if err != nil {
			t.Fatal(err)
		}
		at = at.In(zone)
		m := working.Tell("t.at", "%v", at)
		text, err := json.Marshal(m)
		if err != nil {
			t.Fatal(err)
		}
		var back working.Message
		if err := json.Unmarshal(text, &back); err != nil {
			t.Fatal(err)
		}
		for how, got := range map[string]string{
			"directly":      working.Reader{}.DayClock(at),
			"message":       m.String(),
			"traveled":      back.String(),
			"to the reader": working.Tell("t.at", "%v", at.UTC()).Text(working.Reader{Zone: zone}),
			"with its zone": m.Text(working.Reader{Zone: zone}),
		} {
			if got != c.want {
				t.Errorf("%s %s, %s: %q, want %q", c.zone, c.utc, how, got, c.want)
			}
		}
		if back != m {
			t.Errorf("%v came back as %v", m, back)
		}
	}
	zone, _ := time.LoadLocation("Europe/Zurich")
	at := time.Date(2026, 10, 25, 0, 30, 0, 0, time.UTC).In(zone)
	for template, want := range map[string]string{
		"%t": "02:30 CEST", "%x": "Sunday 25 October 2026, 02:30 CEST", "%d": "Sunday 25 October",
	} {
		if got := working.Tell("t.at", template, at).String(); got != want {
			t.Errorf("%s: %q, want %q", template, got, want)
		}
	}
	w := quantity.Window{From: at, To: at.Add(time.Hour)}
	if got := working.Tell("t.w", "%v", w).String(); got != "Sun 02:30 CEST to 02:30 CET" {
		t.Error(got)
	}
	abroad := working.Tell("t.at", "%v", at).Text(working.Reader{Zone: time.UTC})
	if abroad != "Sun 00:30" {
		t.Error(abroad)
	}
}
