package bench_test

import (
	"errors"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/schedule/bench"
)

// A levain that was slow through the winter and is fast now: with a half-life the last weeks count, with a long one the
// whole log, and when none is given the log chooses; bakes of a few days count alike with any half-life.
func TestLogThatFades(t *testing.T) {
	log := func(apart time.Duration) (all bench.Observations) {
		for i := range 12 {
			m := mixed(at(4, 10, 0).Add(-time.Duration(11-i)*apart), 24)
			bulk, _, err := m.Mix.Bulk(nil)
			if err != nil {
				t.Fatal(err)
			}
			bulk.Rise = quantity.NewPercent(50)
			e, err := bulk.Estimate()
			if err != nil {
				t.Fatal(err)
			}
			pace := 0.8
			if i >= 8 {
				pace = 1.25
			}
			all = append(all, m, bench.Observation{
				Version: 1, At: m.At.Add(time.Duration(float64(e.Ready().Likely) / pace)),
				Kind: bench.SawReady, Bread: "hall", Ready: &bench.ReadyDough{Rise: quantity.NewPercent(50)},
			})
		}
		return all
	}
	// The likely time of a dough like the logged ones, in hours.
	hours := func(all bench.Observations, halfLife time.Duration) float64 {
		l, err := all.Learn(halfLife)
		if err != nil || len(l.Cultures) != 1 || len(l.Cultures[0].Bakes) != 12 {
			t.Fatalf("%+v, %v", l, err)
		}
		bulk, _, err := all[0].Mix.Bulk(nil)
		if err != nil {
			t.Fatal(err)
		}
		bulk.Rise, bulk.Culture = quantity.NewPercent(50), l.Cultures[0].Lesson.Culture
		e, err := bulk.Estimate()
		if err != nil {
			t.Fatal(err)
		}
		return e.Ready().Likely.Hours()
	}
	const month, year = 30 * 24 * time.Hour, 366 * 24 * time.Hour
	weekly := log(7 * 24 * time.Hour)
	// The log of the time is 0.223 above the typical one in eight bakes and 0.223 below in four: 0.058 above on
	// average when the weights are 2^(-7k/366), and 0.025 below when they are 2^(-7k/30): a ratio of e^(-0.08), 0.92,
	// less what is known before.
	if ratio := hours(weekly, month) / hours(weekly, year); ratio < 0.89 || ratio > 0.96 {
		t.Errorf("with a half-life of a month the dough takes %.3f of the time of a year's", ratio)
	}
	// By 2^(-7k/15) it is 0.136 below, e^(-0.19), 0.82 of it.
	if ratio := hours(weekly, 0) / hours(weekly, year); ratio < 0.80 || ratio > 0.90 {
		t.Errorf("as the log chooses the dough takes %.3f of the time of a year's half-life", ratio)
	}
	chosen, err := weekly.Learn(0)
	if err != nil {
		t.Fatal(err)
	}
	page := strings.Join(strings.Fields(chosen.Report().Text(report.Options{})), " ") // in one line
	if !strings.Contains(page,
		"the pace has changed over the log, so recent bakes count more: one counts half after 15 days") {
		t.Errorf("the page does not say that the pace has changed:\n%s", page)
	}
	// In a log of four days nothing has had time to fade by a half-life of half a year: 1/65 of a weight at most.
	days := log(8 * time.Hour)
	if ratio := hours(days, year) / hours(days, year/2); ratio < 0.999 || ratio > 1.001 {
		t.Errorf("bakes of four days: %.4f of the time with a half-life of half a year", 1/ratio)
	}
	l, err := weekly.Learn(month)
	if err != nil {
		t.Fatal(err)
	}
	if page := l.Report().Text(report.Options{}); !strings.Contains(page, "a bake counts half after 30 days") {
		t.Errorf("the page does not say that bakes fade:\n%s", page)
	}
	for _, wrong := range []time.Duration{-month, time.Hour, 101 * 366 * 24 * time.Hour} {
		_, err := weekly.Learn(wrong)
		if bad := quantity.InputErrors(err); len(bad) != 1 || bad[0].GoPath != "HalfLife" ||
			!errors.Is(err, quantity.ErrOutOfRange) {
			t.Errorf("half-life %v: %v", wrong, err)
		}
	}
}
