package bakeday

import (
	"context"
	"fmt"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/schedule/wallclock"
)

// early is a day whose two breads take hands in the small hours, with a lever on one of them.
func early() Order {
	o := sunday()
	o.Bakes = o.Bakes[1:]
	o.Kitchen.Asleep = nil
	for i := range o.Bakes {
		o.Bakes[i].Wanted = OnDate(wallclock.MustMoment([]string{"2026-11-29 11:00", "2026-11-29 16:00"}[i]))
	}
	o.Bakes[0].Levers = Levers{Temperature: []quantity.Temperature{quantity.Celsius(26), quantity.Celsius(30)}}
	return o
}

func ExampleOrder_Fit() {
	zone := time.FixedZone("Europe/Zurich", 3600)
	clock := KitchenClock{Now: time.Date(2026, 11, 25, 19, 0, 0, 0, time.UTC), Zone: zone}
	fit, err := early().Fit(context.Background(), clock, nil)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(fit.Best.Changes)
	fmt.Println(fit.Best.Points < fit.AsWritten.Points, fit.Day.Possible())
	// Output:
	// [Focaccia: dough at 30 °C instead of 26 °C]
	// true true
}

// A lever of one bread is moved when that helps the day; what it costs is weighed for all breads.
func TestFitADay(t *testing.T) {
	o := early()
	var told []int
	fit, err := o.Fit(context.Background(), wednesday(t), func(tried, left int) { told = append(told, tried, left) })
	if err != nil || !fit.Day.Possible() {
		t.Fatal(err)
	}
	if fit.Best.Points >= fit.AsWritten.Points || len(fit.Best.Changes) != 1 || fit.Tried < 2 ||
		len(told) != 2*(fit.Tried-1) {
		t.Errorf("best %v, as written %v, %d tried, told %v", fit.Best, fit.AsWritten, fit.Tried, told)
	}
	if words := fit.Best.Changes[0].String(); !strings.HasPrefix(words, "Focaccia: dough at ") {
		t.Error(words)
	}
	// The day that is told is the one that is planned with the best setting.
	o.Bakes[0].Mixing.Temperature = fit.Day.Breads[0].Bake.Mixing.Temperature
	again := planAll(t, o)
	for i, s := range fit.Day.Timetable.Steps {
		if !s.Start.Equal(again.Timetable.Steps[i].Start) {
			t.Errorf("%s at %v, planned again at %v", s.ID, s.Start, again.Timetable.Steps[i].Start)
		}
	}
	page := fit.Report().Text(report.Options{})
	for _, want := range []string{"this fits better", "As written", "What fits best", "Timetable"} {
		if !strings.Contains(page, want) {
			t.Errorf("%q is not in the page", want)
		}
	}
	if len(fit.Workings()) == 0 || (FittedDay{}).Report().Headline.IsZero() {
		t.Error("nothing is told")
	}
}

// Where no bread names levers the usual ones of all are tried; a wrong order is refused.
func TestFitWithUsualLevers(t *testing.T) {
	o := early()
	o.Bakes[0].Levers = Levers{}
	fit, err := o.Fit(context.Background(), wednesday(t), nil)
	if err != nil || fit.Tried < 3 || fit.Best.Points > fit.AsWritten.Points {
		t.Error(fit.Tried, fit.Best, err)
	}
	o.Bakes[1].Name = o.Bakes[0].Name
	if _, err := o.Fit(context.Background(), wednesday(t), nil); len(quantity.InputErrors(err)) == 0 {
		t.Error("two breads of one name are fitted")
	}
}

// Breads that share a levain are fed with one: its feed moves for all.
func TestFitASharedLevain(t *testing.T) {
	o := Order{Kitchen: hall().Kitchen}
	for i, name := range []string{"Rye", "White"} {
		b := hall()
		l := *b.Levain
		l.Name, l.CultureAtHand = "levain of the day", quantity.Mass{}
		b.Levain, b.Name, b.Kitchen, b.Loaves.Pieces = &l, name, Kitchen{}, 2
		b.Levers = Levers{}
		if i == 0 {
			b.Levers.Inoculation = []quantity.Percent{quantity.NewPercent(20), quantity.NewPercent(100)}
		}
		o.Bakes = append(o.Bakes, b)
	}
	fit, err := o.Fit(context.Background(), wednesday(t), nil)
	if err != nil {
		t.Fatal(err)
	}
	a, b := fit.Day.Breads[0].Bake.Levain, fit.Day.Breads[1].Bake.Levain
	if a.Inoculation != b.Inoculation {
		t.Errorf("fed with %v and %v", a.Inoculation, b.Inoculation)
	}
	f, err := newFitting(o, fit.Day, wednesday(t))
	if err != nil {
		t.Fatal(err)
	}
	bakes := append([]Bake{}, f.written...)
	l := *bakes[0].Levain
	l.Inoculation = quantity.NewPercent(33)
	bakes[0].Levain = &l
	f.feedAlike(bakes, 0)
	if bakes[1].Levain.Inoculation != l.Inoculation || f.written[1].Levain.Inoculation == l.Inoculation {
		t.Error("the partner is not fed alike, or what was written was changed")
	}
}
