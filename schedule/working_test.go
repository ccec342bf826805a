package schedule

import (
	"slices"
	"strings"
	"testing"

	"example.org/maslin/dough/working"
	"example.org/maslin/internal/workcheck"
)

func TestWorkingOfTheHall(t *testing.T) {
	tt := plan(t, hall())
	w := tt.Working()
	workcheck.Verify(t, w)
	if w.Len() != 2*len(tt.Steps) {
		t.Errorf("%d lines for %d steps", w.Len(), len(tt.Steps))
	}
	// The times derived are those of the timetable.
	var derived []string
	for _, line := range w.Lines(working.Reader{}) {
		derived = append(derived, line.Value)
	}
	for _, s := range tt.Steps {
		for _, at := range []string{s.Start.Format("Mon 15:04"), s.End.Format("Mon 15:04")} {
			if !slices.Contains(derived, at) {
				t.Errorf("%s at %s is not among %v", s.ID, at, derived)
			}
		}
	}
	text := w.Text(100)
	for _, want := range []string{"lunch at 12:30", "asleep 22:30 to 06:30", "Fri 22:30"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is missing in\n%s", want, text)
		}
	}
	for _, name := range []string{"home12", "shop60"} {
		p := loadKitchen(t, name)
		workcheck.Verify(t, plan(t, p).Working())
	}
	var none Timetable
	if none.Working().Len() != 0 {
		t.Error("nothing has a working")
	}
}
