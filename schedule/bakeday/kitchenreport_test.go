package bakeday

import (
	"strings"
	"testing"

	"example.org/maslin/dough/report"
	"example.org/maslin/schedule"
)

// The page of a bread has its own steps of the day: an oven that another bread leaves hot is not heated again.
func TestPagesOfTheBreads(t *testing.T) {
	k := planAll(t, sunday())
	pages := k.BreadReports()
	if len(pages) != 3 {
		t.Fatalf("%d pages for 3 breads", len(pages))
	}
	day := k.Data()
	for i, page := range pages {
		text := page.Text(report.Options{Width: 100})
		if len(page.Cautions) > 0 || strings.Contains(text, "wishes") {
			t.Errorf("%s tells what the day tells", day.Breads[i].Name)
		}
		for _, s := range day.Steps {
			if s.Kind == schedule.Preheat && s.Bread == day.Breads[i].Name &&
				!strings.Contains(text, s.Start.Format("Mon 15:04")+"  "+s.End.Format("Mon 15:04")) {
				t.Errorf("the oven for %s from %v to %v is not on its page:\n%s", s.Bread, s.Start, s.End, text)
			}
		}
	}
	if first := pages[0].Sections[0]; first.Key != "timetable" {
		t.Errorf("a page begins with %q", first.Key)
	}
}

// The headline says once when and which; what the breads carry is said of each where they differ.
func TestHeadAndAllergensOfTheDay(t *testing.T) {
	k := planAll(t, sunday())
	want := "3 breads, 15 pieces, wanted Sunday 29 November 2026, 12:30 to 15:00: Loaf, Focaccia and Buns"
	if k.String() != want {
		t.Errorf("%q, want %q", k, want)
	}
	var told []string
	for _, c := range k.Cautions() {
		if c.Subject == allergenSubject {
			told = append(told, c.Text.String())
		}
	}
	if len(told) != 2 || !strings.HasPrefix(told[0], "in Loaf and Focaccia: ") || strings.Contains(told[0], "milk") ||
		!strings.HasPrefix(told[1], "in Buns: ") || !strings.Contains(told[1], "milk") {
		t.Errorf("allergens: %q", told)
	}
	o := sunday()
	o.Bakes = o.Bakes[:2]
	for _, c := range planAll(t, o).Cautions() {
		if c.Subject == allergenSubject && strings.HasPrefix(c.Text.String(), "in ") {
			t.Errorf("what all carry is told of each: %v", c)
		}
	}
}
