package bench

import (
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
)

// A log of more doughs than a mixer is learned from goes on teaching: the latest count, and the page says how many do
// not.
func TestLogsHaveNoEnd(t *testing.T) {
	all, older := latest([]int{1, 2, 3, 4, 5}, 3)
	if len(all) != 3 || all[0] != 3 || older != 2 {
		t.Errorf("%v, %d", all, older)
	}
	if all, older = latest([]int{1, 2}, 3); len(all) != 2 || older != 0 {
		t.Errorf("%v, %d", all, older)
	}
	const doughs = mostBatches + 7
	bakes := make([]LoggedBake, doughs)
	at := time.Date(2020, 1, 1, 8, 0, 0, 0, time.UTC)
	for i := range bakes {
		// The mixer warmed the first doughs by far more: they count no more.
		warm := 24.0
		if i < 7 {
			warm = 34
		}
		bakes[i] = LoggedBake{Mixed: at.Add(time.Duration(i) * time.Hour), Mix: DoughMixed{
			Mixer: mixing.Planetary, FlourWeight: quantity.Kilograms(1), WaterWeight: quantity.Grams(700),
			Flour: quantity.Celsius(20), Water: quantity.Celsius(20), Dough: quantity.Celsius(warm),
			Room: quantity.Celsius(20), Slow: quantity.Elapsed(8 * time.Minute),
		}}
	}
	l, ok, err := learnMixer(mixing.Planetary, bakes)
	if err != nil || !ok || len(l.Batches) != mostBatches || l.Older != 7 {
		t.Fatalf("%d batches, %d older, %v", len(l.Batches), l.Older, err)
	}
	if hot := l.Batches[0].Dough.Celsius(); hot > 30 {
		t.Errorf("the oldest that counts has a dough of %v °C", hot)
	}
	page := report.Report{Sections: []report.Section{{Blocks: l.blocks()}}}.Text(report.Options{Width: 100})
	if !strings.Contains(page, "7 older doughs are not counted any more") {
		t.Error(page)
	}
}
