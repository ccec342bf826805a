package desk

import (
	"encoding/json"
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

// FuzzAnswer: whatever bytes are asked, the response is a response, and says no fault.
func FuzzAnswer(f *testing.F) {
	for _, id := range append(Tasks(), worksheet, "nowhere") {
		in, err := json.Marshal(Request{Do: "type", State: State{At: id, Phase: open, Guess: "12",
			Fields: map[string]string{"water": "70 %"}}})
		if err != nil {
			f.Fatal(err)
		}
		f.Add(in)
	}
	for _, do := range []string{"lock", "reveal", "up", "add", "drop", "draw", "open", "key", "check", "units",
		"language"} {
		f.Add([]byte(`{"do":"` + do + `","name":"history","row":-1,"across":1e300,"state":{"at":"clock.rise"}}`))
	}
	f.Add([]byte(`{"do":1`))
	f.Add([]byte(nil))
	f.Fuzz(func(t *testing.T, in []byte) {
		var out Response
		if err := json.Unmarshal(Answer(in), &out); err != nil {
			t.Fatal(err)
		}
		if strings.Contains(out.Status, "fault of its own") {
			t.Fatal(out.Status)
		}
		if again, told := ReadFragment(out.Fragment); len(told) > 0 || again.At != out.State.At {
			t.Fatalf("%s: %v", out.Fragment, told)
		}
	})
}
