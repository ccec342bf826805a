package schedule

import (
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"github.com/google/go-cmp/cmp"
)

// A rule gives more than it has to, as far as it can.
func TestWidened(t *testing.T) {
	at := func(m int) time.Time { return dawn.Add(mins(m).Duration()) }
	span := &Span{From: at(60), To: at(180)}
	for _, c := range []struct {
		rule   Rule
		easing Easing
		change int
		by     int
		want   string // nothing: it cannot give as much
		eases  Easing
		gives  int
	}{
		{StepMin, Shorter, 20, 15, "35m shorter: 25m", Shorter, 35},
		{StepExact, Shorter, 20, 40, "1h shorter: 0m", Shorter, 60},
		{StepMin, Shorter, 20, 41, "", 0, 0},
		{StepMax, Longer, 20, 15, "35m longer: 1h35m", Longer, 35},
		{LinkMin, Shorter, 5, 15, "20m less: 40m", Shorter, 20},
		{LinkMax, Longer, 5, 15, "20m more: 1h20m", Longer, 20},
		{Absence, Begins, 20, 15, "from Sat 07:35 instead of Sat 07:00", Begins, 35},
		{Absence, Ends, 20, 15, "until Sat 08:25 instead of Sat 09:00", Ends, 35},
		{Absence, Ends, 20, 100, "not at all", Dropped, 120},
		{Absence, Begins, 20, 99, "from Sat 08:59 instead of Sat 07:00", Begins, 119},
		{Absence, Dropped, 120, 15, "not at all", Dropped, 120},
		{StepMax, Longer, 20, 0, "20m longer: 1h20m", Longer, 20},
		{StepMax, Longer, 20, -1, "", 0, 0},
		{NotAfter, Later, 20, 15, "", 0, 0},
		{Capacity, More, 0, 15, "", 0, 0},
	} {
		m := Member{Enough: true, Least: true, Easing: c.easing, Change: mins(c.change), Limit: mins(60)}
		if m.Rule = c.rule; c.rule == Absence {
			m.Closed, m.Limit = span, 0
		}
		got, ok := m.Widened(mins(c.by))
		if ok != (c.want != "") || ok && (got.Remedy.String() != c.want || got.Easing != c.eases ||
			got.Change != mins(c.gives) ||
			got.Least != (c.by == 0)) {
			t.Errorf("%v by %v and %dm: %v, %v by %v: %v", c.rule, m.Change, c.by, ok, got.Easing, got.Change, got.Remedy)
		}
		m.Enough = false
		if _, ok := m.Widened(mins(c.by)); ok {
			t.Errorf("%v gives more than what is not enough", c.rule)
		}
	}
	if diff := cmp.Diff(quantity.Elapsed(2*time.Hour), quantity.Elapsed(span.To.Sub(span.From))); diff != "" {
		t.Error("the span was changed")
	}
}
