package sources

import (
	"testing"

	"example.org/maslin/dough/working"
)

// What no publication says is told with its standing, so that nobody takes it for published.
func TestWhatIsNotPublishedSaysSo(t *testing.T) {
	for want, s := range map[string]working.Source{
		"a pinch of salt [common practice, no source]": Practice("a pinch of salt"),
		"a pinch of salt [from memory]":                FromMemory("a pinch of salt"),
		"a pinch of salt [judgment]":                   Judged("a pinch of salt"),
	} {
		if got := s.String(); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
	// A rule that rooms tell from others by its key is common practice too.
	if FanOven.Standing != working.CommonPractice || FanOven.Key == PotPreheat.Key || FanOven.Title == "" {
		t.Errorf("%+v, %+v", FanOven, PotPreheat)
	}
}
