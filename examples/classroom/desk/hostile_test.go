package desk

import (
	"strings"
	"testing"
	"time"
)

var nonsense = []string{
	"", "twelve", "1e400 g", "-40 %", "∞", "NaN", "<img src=x onerror=alert(1)>", strings.Repeat("9", 3000), "\u202e12",
	"0 K", "-0", "0",
	"9999999999999999 g", "366 d", "100000 m", "1,000.5", "12 °C", "0 %", "1e9", ";;;", "|||", "1|2|3|4|5|6|7", "\x00",
}

// Whatever is typed into whichever field of whichever task, something readable comes back, soon, and never a fault.
func TestNonsenseInEveryField(t *testing.T) {
	for _, id := range Tasks() {
		for _, f := range Fields(State{At: id}) {
			for _, text := range nonsense {
				began := time.Now()
				out := ask(t, Request{Do: "type", Width: 800,
					State: State{At: id, Phase: open, Fields: map[string]string{f.Name: text}}})
				if took := time.Since(began); took > patience+10*time.Second {
					t.Errorf("%s, %s = %.20q took %v", id, f.Name, text, took)
				}
				if out.Headline == "" && len(out.Problems) == 0 && !strings.Contains(out.Answer, "<li>") {
					t.Errorf("%s, %s = %.20q: neither an answer nor a problem: %.200q", id, f.Name, text, out.Answer)
				}
				for _, s := range []string{out.Answer, out.Status} {
					if strings.Contains(s, "fault of its own") || strings.Contains(s, "<img") || strings.Contains(s, "\u202e") {
						t.Errorf("%s, %s = %.20q: %.300q", id, f.Name, text, s)
					}
				}
			}
		}
	}
}

// What cannot be is told at its field, from which a reader can mend it, and not by a name of the library.
func TestProblemsStandAtTheirFields(t *testing.T) {
	absurd := []string{"", "1000000000", "-5", "0", "100 kg", "1e9 %", "500 °C", "-200 °C", "99999 h", "1|2|3;4|5|6"}
	for _, id := range Tasks() {
		for _, f := range Fields(State{At: id}) {
			for _, text := range absurd {
				out := ask(t, Request{Do: "type", Width: 800,
					State: State{At: id, Phase: open, Fields: map[string]string{f.Name: text}}})
				if _, others, _ := strings.Cut(out.Answer, `<div class="problem">`); out.Headline == "" &&
					strings.Count(others, "<li>") != strings.Count(others, "<li><a") {
					t.Errorf("%s, %s = %s: %s", id, f.Name, text, others)
				}
			}
		}
	}
}

// FuzzAnswer: whatever is asked, the response is a response, and says no fault.
func FuzzAnswer(f *testing.F) {
	for _, id := range append(Tasks(), worksheet, "nowhere") {
		f.Add("type", "", 0, 0.0, 0.0, State{At: id, Phase: open, Guess: "12",
			Fields: map[string]string{"water": "70 %"}}.Fragment(), "water", "70 %", 800)
	}
	for _, do := range []string{"lock", "reveal", "up", "add", "drop", "draw", "open", "key", "check", "units",
		"language", "paper"} {
		f.Add(do, "history", -1, 1e300, -1e300, State{At: "clock.rise"}.Fragment(), "history", "|||;;", -5)
	}
	f.Fuzz(func(t *testing.T, do, name string, row int, across, down float64, fragment, field, text string, width int) {
		s, _ := ReadFragment(fragment)
		s.Fields = with(s.Fields, field, text)
		out := Answer(Request{Do: do, Name: name, Row: row, Across: across, Down: down, Fragment: fragment, State: s,
			Width: width})
		if strings.Contains(out.Status, "fault of its own") {
			t.Fatal(out.Status)
		}
		if again, told := ReadFragment(out.Fragment); len(told) > 0 || again.At != out.State.At {
			t.Fatalf("%s: %v", out.Fragment, told)
		}
	})
}
