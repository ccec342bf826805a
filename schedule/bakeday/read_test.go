package bakeday

import (
	"encoding/json"
	"strings"
	"testing"

	"example.org/maslin/dough/quantity"
	"github.com/google/go-cmp/cmp"
)

// What is wrong with a text is listed all at once, each with the path of the text.
func TestReadListsEverything(t *testing.T) {
	text, err := json.Marshal(hall())
	if err != nil {
		t.Fatal(err)
	}
	broken := strings.NewReplacer(`"percent":"75 %"`, `"percent":"75"`, `"salt":"2.1 %"`, `"salt":2.1`,
		`"mixer":"planetary"`, `"mixer":"spoon"`,
		`"rise":"75 %"`, `"rize":"75 %"`, BakeFormat, "maslin bake 9").
		Replace(string(text))
	_, err = Read([]byte(broken))
	var got []string
	for _, e := range quantity.InputErrors(err) {
		got = append(got, e.Path)
	}
	want := []string{"salt", "flour[0].percent", "mixing.mixer", "bulk.rize", "format"}
	less := func(a, b string) bool { return a < b }
	if diff := cmp.Diff(sorted(want, less), sorted(got, less)); diff != "" {
		t.Error(diff, err)
	}
	for _, hostile := range []string{"", "null", "[]", "{", `{"flour":null,"flour":[]}`, strings.Repeat("[", 1000),
		`{"name":"` + strings.Repeat("x", 11<<20) + `"}`, `{"salt":null}`} {
		if _, err := Read([]byte(hostile)); len(quantity.InputErrors(err)) == 0 {
			t.Errorf("%.40q: %v", hostile, err)
		}
	}
	again, err := Read(text)
	if err != nil {
		t.Fatal(err)
	}
	once, _ := json.Marshal(again)
	if diff := cmp.Diff(string(text), string(once)); diff != "" {
		t.Error(diff)
	}
}

func sorted(list []string, less func(a, b string) bool) []string {
	out := append([]string(nil), list...)
	for i := range out {
		for k := i + 1; k < len(out); k++ {
			if less(out[k], out[i]) {
				out[i], out[k] = out[k], out[i]
			}
		}
	}
	return out
}

// Nothing is said of nothing, and nothing panics.
func TestZeroDayHasData(t *testing.T) {
	for name, d := range map[string]Day{"zero": {}, "without a zone": {Timetable: plan(t, rolls()).Timetable}} {
		s := d.Data()
		if s.Possible || len(s.Steps) != 0 {
			t.Errorf("%s: %+v", name, s)
		}
		if _, err := json.Marshal(d); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
	if events := (PlanData{Steps: []StepData{{}}}).CalendarEvents(); len(events) != 1 {
		t.Error(events)
	}
	if !OnDay(12, hall().Wanted.Clock).IsZero() {
		t.Error("a twelfth weekday")
	}
	if text, err := (Wish{Weekday: 12, weekly: true}).MarshalText(); err == nil {
		t.Errorf("%s", text)
	}
}
