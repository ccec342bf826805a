package bakeday

import (
	"testing"

	"example.org/maslin/dough/report"
)

// A day of which there is nothing worth knowing has no heading for it.
func TestNothingWorthKnowingHasNoHeading(t *testing.T) {
	d := plan(t, hall())
	headings := func() (n int) {
		for _, s := range d.Report().Sections {
			if s.Key == "notes" {
				n += len(s.Blocks[0].(report.List)) + 1
			}
		}
		return n
	}
	if told := headings(); told != len(d.Notes)+1 || len(d.Notes) == 0 {
		t.Errorf("%d notes, and with the heading %d lines", len(d.Notes), told)
	}
	d.Notes = nil
	if told := headings(); told != 0 {
		t.Errorf("no notes, and with the heading %d lines", told)
	}
}

// A day that nobody planned says just that.
func TestADayThatWasNotPlannedSaysSo(t *testing.T) {
	page := (KitchenDay{}).DayReport()
	if page.Headline.String() != "no plan was made" || len(page.Sections)+len(page.Cautions) > 0 {
		t.Errorf("%q, %d sections", page.Headline, len(page.Sections))
	}
}
