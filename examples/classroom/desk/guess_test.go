package desk

import (
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule"
)

// A guess stands against the fields as they were when it was locked, whatever is changed afterward; and where the
// headline stays the same, the change is told by what was guessed at.
func TestAGuessIsOfWhatWasLocked(t *testing.T) {
	s := State{At: "percentages.scale", Guess: "1814 g"}
	s = ask(t, Request{Do: "reveal", State: ask(t, Request{Do: "lock", State: s}).State}).State
	s.Fields = map[string]string{"preferments[0].flour": "30 %"}
	out := ask(t, Request{Do: "type", State: s})
	if !strings.Contains(out.Answer, "Your guess of 1814 g is right") ||
		!strings.Contains(out.Answer, "from 12 % to 30 %. Before: 1814.0 g. Now: 1251.0 g.") {
		t.Errorf("%.600s", out.Answer)
	}
	s.Fields = map[string]string{"pieces": "1000000000"}
	if out := ask(t, Request{Do: "type", State: s}); out.Problems["pieces"] == "" {
		t.Errorf("%.600s", out.Answer)
	}
}

// What the class measures is guessed at too.
func TestClassesGuess(t *testing.T) {
	for at, c := range map[string]struct{ guess, want string }{
		"water.class": {"1 Δ°C", "is right"}, "clock.class": {"3.5 h", "lies in the library"},
	} {
		out := ask(t, Request{Do: "type", State: State{At: at, Guess: c.guess, Phase: shown}})
		if !strings.Contains(out.Answer, c.want) {
			t.Errorf("%s: %.400s", at, out.Answer)
		}
		if out := ask(t, Request{Do: "type", State: State{At: at}}); out.Headline != "" || out.Value != "" {
			t.Errorf("%s: told before it is guessed", at)
		}
	}
}

// Times are told to the minute: their ranges are hours wide.
func TestTimesAreToldToTheMinute(t *testing.T) {
	out := ask(t, Request{Do: "type", State: State{At: "clock.rise", Guess: "4 h", Phase: shown}})
	if !strings.Contains(out.Answer, "3h17m to 7h25m, likely 4h54m") {
		t.Errorf("%.400s", out.Answer)
	}
	if got := shownValue(quantity.Elapsed(90*time.Second + time.Minute)); got != quantity.Elapsed(3*time.Minute) {
		t.Errorf("2 min 30 s are told as %v", got)
	}
}

// A moment beside a window by a quarter of an hour can be kept, one farther off cannot.
func TestNearAWindow(t *testing.T) {
	at := func(clock string) time.Time {
		m, err := time.Parse("15:04", clock)
		if err != nil {
			t.Fatal(err)
		}
		return m
	}
	s := schedule.Timed{Windows: []schedule.Span{{From: at("08:00"), To: at("09:00")}, {From: at("11:00"), To: at("11:00")}},
		EarliestStart: at("08:00"), LatestStart: at("11:00"), Drives: working.Say("the night")}
	for clock, want := range map[string]string{
		"08:00": "possible", "09:00": "possible", "11:00": "possible", "07:45": "possible, to a quarter of an hour",
		"11:15": "possible, to a quarter of an hour", "07:44": "too early: what stands before it is not done",
		"11:16": "too late; it is held by: the night", "10:00": "not then: somebody sleeps or is away, or something is in use",
	} {
		says, fits := judgedByHand(at(clock), s)
		if says.String() != want || fits != strings.HasPrefix(want, "possible") {
			t.Errorf("%s: %v, %v", clock, says, fits)
		}
	}
	if got := spansOf(s).String(); !strings.Contains(got, " to ") || !strings.Contains(got, " and ") {
		t.Error(got)
	}
	s.Drives = working.Message{}
	if says, _ := judgedByHand(at("12:00"), s); says.String() != "too late" {
		t.Error(says)
	}
}

// What stands in a field at first has the decimal sign of its reader; dates and words stay as they are.
func TestFieldsBeginInTheLanguageOfTheReader(t *testing.T) {
	out := ask(t, Request{Do: "open", Fragment: State{At: "water.class", Language: "de"}.Fragment()})
	if !strings.Contains(out.Page, `value="25,5 °C"`) || strings.Contains(out.Page, `value="25.5 °C"`) {
		t.Error("25.5 °C stands there with a point")
	}
	out = ask(t, Request{Do: "open", Fragment: State{At: "water.class"}.Fragment()})
	if !strings.Contains(out.Page, `value="25.5 °C"`) {
		t.Error("25.5 °C does not stand there")
	}
}
