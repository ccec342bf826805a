package ferment_test

import (
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/ferment"
	"github.com/google/go-cmp/cmp"
)

func TestParseReadings(t *testing.T) {
	c := quantity.Celsius
	want := []ferment.Knot{{0, c(24.5)}, {quantity.Elapsed(90 * time.Minute), c(22)}}
	for name, text := range map[string]string{
		"headings":        "time (h),temperature (°C)\n0,24.5\n1.5,22\n",
		"other headings":  "minutes;°F\n0;76.1\n90;71.6\n",
		"seconds, kelvin": "# probe 3\n\nseconds\tkelvin\n0\t297.65\n5400\t295.15\n",
		"carried units":   "0h, 24.5 °C\n1h30m, 22 °C",
		"jotted":          "0 min, 76.1 °F\r\n90 min, 71.6 °F\r\n",
		"times of day":    "when,celsius\n22:45,24.5\n00:15,22\n",
		"dates":           "time,C\n2025-11-25 22:45,24.5\n2025-11-26 00:15,22",
		"instants":        "time,C,battery\n2025-11-25T22:45:00+01:00,24.5,90\n2025-11-25T23:15:00Z,22,89",
		"quoted":          "\"time (min)\",\"temp C\"\n\"0\",\"24.5\"\n\"90\",\"22\"",
		"decimal commas":  "Minutes;Celsius\n0;24,5\n90;22,0\n",
		"byte order mark": "\ufeffhours,celsius\n0,24.5\n1.5,22.0\n",
	} {
		got, err := ferment.ParseReadings(text)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		if diff := cmp.Diff(want, got.Points); diff != "" {
			t.Errorf("%s: %s", name, diff)
		}
	}
}

func TestParseReadingsRefuses(t *testing.T) {
	for name, x := range map[string]struct {
		text   string
		reason error
		path   string
	}{
		"a bare number":      {"0,24\n1,23", quantity.ErrUnit, "line 1 time"},
		"a bare temperature": {"0h,24", quantity.ErrUnit, "line 1 temperature"},
		"one column":         {"24.5 °C", quantity.ErrRequired, "line 1 row"},
		"NaN":                {"hours,celsius\n0,NaN", quantity.ErrUnit, "line 2 temperature"},
		"infinite time":      {"hours,celsius\n1e300,20", quantity.ErrOutOfRange, "line 2 time"},
		"negative time":      {"hours,celsius\n-1,20", quantity.ErrOutOfRange, "line 2 time"},
		"an hour too many":   {"25:00,20 °C", quantity.ErrUnit, "line 1 time"},
		"below zero kelvin":  {"hours,kelvin\n0,-5", quantity.ErrOutOfRange, "line 2 temperature"},
		"a megabyte":         {"0h," + strings.Repeat("9", 1<<20), quantity.ErrOutOfRange, "line 1 temperature"},
		"a megabyte of time": {strings.Repeat("9", 1<<20) + ",20 °C", quantity.ErrUnit, "line 1 time"},
		"nothing but remark": {"# nothing", quantity.ErrRequired, "Text"},
		"back in time":       {"time,C\n2025-11-25 22:45,24.5\n2025-11-24 00:15,22", quantity.ErrOutOfRange, "line 3 time"},
	} {
		_, err := ferment.ParseReadings(x.text)
		if err == nil {
			t.Errorf("%s: accepted", name)
			continue
		}
		refuses(t, err, x.reason, x.path)
	}
	if _, err := ferment.ParseReadings(strings.Repeat("x,y\n", 100_000)); len(quantity.InputErrors(err)) > 50 {
		t.Error("too many errors")
	}
}

func FuzzParseReadings(f *testing.F) {
	for _, seed := range []string{"time (h),temperature (°C)\n0,24.5\n1.5,22\n", "0h, 24.5 °C\n1h30m;22 °C",
		"22:45,24.5 °C\n00:15,22 °C", "2025-11-25T22:45:00Z\t20 " +
			"°C", "\"0\",\"1\"", ",,,\n;\n\t", "h,c\n1e9,-1e9", "\xff\xfe,\x00"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		r, err := ferment.ParseReadings(text)
		if err != nil {
			return
		}
		for _, p := range r.Points {
			if p.At < 0 || !p.Temperature.IsValid() {
				t.Fatalf("%v", p)
			}
		}
		h, err := r.History()
		if err != nil {
			return
		}
		if _, err := ferment.GanzleYeastHeld().Dose(h, 0, time.Hour); err != nil {
			t.Fatal(err)
		}
	})
}
