package bench

import (
	"testing"
	"time"

	"example.org/maslin/dough/report"
)

func TestWithoutWhatIsThere(t *testing.T) {
	a, b := note("a"), note("b")
	there := a
	there.At = a.At.In(time.UTC)
	got, err := Observations{a, b, b}.Without(Observations{there})
	if err != nil || len(got) != 1 || got[0].Note != "b" {
		t.Errorf("%v, %v", got, err)
	}
	if got, err := (Observations{a}).Without(nil); err != nil || len(got) != 1 {
		t.Errorf("%v, %v", got, err)
	}
}

func TestReportOfALog(t *testing.T) {
	one := note("a new bag of flour")
	one.By = "Vreni"
	r := Observations{one, note("b")}.Report()
	if grids := r.Grids(); r.Headline.String() != "2 observations" || len(grids) != 1 || len(grids[0].Rows) != 2 {
		t.Error(r.Text(report.Options{}))
	}
	if got := (Observations{}).String(); got != "nothing is logged" {
		t.Error(got)
	}
}
