package bakeday

import (
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
)

// A dough that goes into the cold undivided is told with how far it will have risen, and between what.
func TestHowFarAnUndividedDoughRises(t *testing.T) {
	d := plan(t, overnight())
	total := d.Rising.InOven
	if !(total.Low.Points() < total.Likely.Points()-1 && total.Likely.Points() < total.High.Points()-1) {
		t.Fatal(total)
	}
	want := working.Say("into the refrigerator when it has risen by %.0f, no more: the cold and the proof bring it to "+
		"about %.0f when it goes into the oven (%.0f to %.0f)", d.Data().Bulk.ShapeAt, total.Likely, total.Low, total.High)
	page := report.Report{Sections: []report.Section{{Key: "rising", Blocks: d.risingBlocks(d.Data())}}}
	text := strings.Join(strings.Fields(page.Text(report.Options{})), " ")
	if !strings.Contains(text, want.String()) {
		t.Errorf("no %q in\n%s", want, text)
	}
}

// Of a dough whose proof is long enough two thirds of the rise come before it is shaped.
func TestTwoThirdsOfTheRiseComeBeforeShaping(t *testing.T) {
	for _, rise := range []float64{210, 240} {
		b := folded(0.2, 0, 40)
		b.Bulk.Rise = quantity.NewPercent(rise)
		r := plan(t, b).Rising
		if got := r.ShapeAt.Points(); !(got-rise*2/3 < 1e-6 && rise*2/3-got < 1e-6) || r.Proof.Likely < 30*time.Minute {
			t.Errorf("of %v %%, %v before shaping, and a proof of %v", rise, r.ShapeAt, r.Proof.Likely)
		}
	}
}
