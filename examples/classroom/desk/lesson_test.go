package desk

import (
	"strings"
	"testing"

	"example.org/maslin/examples/classroom/guide"
)

// Every link of the lesson can be read, and the page says there what the lesson says that it says.
func TestLesson(t *testing.T) {
	stops := guide.Lesson()
	if len(stops) < 15 {
		t.Fatalf("%d links", len(stops))
	}
	benches := map[string]bool{}
	for _, stop := range stops {
		s, told := ReadFragment(stop.Fragment)
		if len(told) > 0 || s.Fragment() != stop.Fragment {
			t.Errorf("%s: %v; it is %s", stop.Title, told, s.Fragment())
			continue
		}
		bench, _, _ := strings.Cut(s.At, ".")
		benches[bench] = true
		s.Phase = open
		if out := ask(t, Request{Do: "type", State: s}); out.Headline != stop.Says {
			t.Errorf("%s: the lesson says\n%s\nthe page\n%s", stop.Title, stop.Says, out.Headline)
		}
	}
	for _, bench := range []string{"percentages", "water", "clock", worksheet} {
		if !benches[bench] {
			t.Errorf("nothing of %s", bench)
		}
	}
}
