package desk

import (
	"strings"
	"testing"

	"example.org/maslin/dough/working"
)

// Whoever looks at the answer in other units sees the same question answered: what was typed as a bare number, the
// guess, and the values that stood in the fields when it was locked stay what they were.
func TestOtherUnitsChangeNoQuestion(t *testing.T) {
	for _, c := range []struct {
		at, guess, metric, us string
		fields                map[string]string
	}{
		{"water.friction", "12", "Your guess of 12 Δ°C is too low by 3.0 Δ°C: the library says 15.0 Δ°C.",
			"Your guess of 21.6 Δ°F is too low by 5.4 Δ°F: the library says 27.0 Δ°F.", map[string]string{"water": "19"}},
		{"clock.ripe", "5", "3h56m to 7h58m, likely 5h34m", "3h56m to 7h58m, likely 5h34m", map[string]string{"seed": "15"}},
		{"water.class", "1.5", "Your guess of 1.5 Δ°C", "Your guess of 2.7 Δ°F", map[string]string{
			"batches": "21|15|22|8|25;22|15|22|8|26"}},
		{"day.plan", "12", "can be kept", "can be kept", map[string]string{"by_hand.bake": "2026-11-28 12:00", "room": "23"}},
	} {
		first := ask(t, Request{Do: "lock", State: State{At: c.at, Guess: c.guess, Fields: c.fields}})
		shown := ask(t, Request{Do: "reveal", State: first.State})
		us := ask(t, Request{Do: "units", Name: "US customary", State: shown.State})
		if shown.State.Phase != "shown" || shown.Value == "" && c.at != "day.plan" || us.Value != shown.Value {
			t.Errorf("%s: %q, then %q in other units", c.at, shown.Value, us.Value)
		}
		if !strings.Contains(shown.Answer, c.metric) || !strings.Contains(us.Answer, c.us) {
			t.Errorf("%s: no %q in %.400s\nor no %q in %.400s", c.at, c.metric, shown.Answer, c.us, us.Answer)
		}
		if strings.Contains(us.Answer, "You changed") {
			t.Errorf("%s: something is changed: %.600s", c.at, us.Answer)
		}
		back := ask(t, Request{Do: "units", Name: "metric", State: us.State})
		if back.Answer != shown.Answer || back.Value != shown.Value {
			t.Errorf("%s: there and back is not the same: %.400s", c.at, back.Answer)
		}
	}
}

// A problem in a table is told by its column and its row, as a person counts rows.
func TestCellsAreNamedByColumnAndRow(t *testing.T) {
	task, _ := taskOf("clock.rise")
	for path, want := range map[string]string{
		"jar": "what the jar shows", "jar[0].rise": "what the jar shows: risen by, row 1",
		"jar[11].at": "what the jar shows: after mixing, row 12", "jar[0].color": "what the jar shows",
		"jar[x].rise": "what the jar shows", "jar[2]": "what the jar shows", "salt": "salt", "salt[1]": "salt[1]",
	} {
		if got := task.pathLabel(path, working.Reader{}); got != want {
			t.Errorf("%s: %q, want %q", path, got, want)
		}
	}
}

// Where a slider stands: at the nearest of its places, at its ends beyond them, nowhere without steps.
func TestPlacesOfASlider(t *testing.T) {
	s := slide{low: 10, high: 20, step: 2.5, unit: working.Percent}
	f := field{kind: aPercent, slide: [2]slide{s, s}}
	for text, want := range map[string]int{"10": 0, "11.2": 0, "11.3": 1, "12.5 %": 1, "20": 4, "300": 4, "-5": 0, "x": -1} {
		if got := f.place(text, working.Reader{}); got != want {
			t.Errorf("%q: %d, want %d", text, got, want)
		}
	}
	if stops := f.stops(working.Reader{}); strings.Join(stops, ", ") != "10 %, 12.5 %, 15 %, 17.5 %, 20 %" {
		t.Errorf("%v", stops)
	}
	s.step = 0
	still := field{kind: aPercent, slide: [2]slide{s, s}}
	if got := still.place("12", working.Reader{}); got != -1 || still.stops(working.Reader{}) != nil {
		t.Errorf("%d", got)
	}
}

// A part of a field is told at that field, and of two that fit at the longer one; a name that only begins alike is
// another.
func TestTheFieldNearestToAPath(t *testing.T) {
	tk := task{fields: []field{{name: "a"}, {name: "a.b"}, {name: "rows", kind: aTable}}}
	for path, want := range map[string]string{
		"a": "a", "a.c": "a", "a[3]": "a", "a.b": "a.b", "a.b.c": "a.b", "a.b[0].d": "a.b", "ab": "", "": "",
		"rows": "rows", "rows[1].x": "rows[1].x", "rows.x": "rows", "c": "",
	} {
		if got := tk.nearest(path); got != want {
			t.Errorf("%q: %q, want %q", path, got, want)
		}
	}
	tk.fields[0], tk.fields[1] = tk.fields[1], tk.fields[0]
	if got := tk.nearest("a.b.c"); got != "a.b" {
		t.Errorf("in the other order: %q", got)
	}
}
