package bench_test

import (
	"testing"
	"time"

	"example.org/maslin/bake"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/internal/trial"
	"example.org/maslin/schedule/bench"
)

// Moments of one bake as they are told today, from the plan to the dough that is late, and a kitchen with two breads.
// That they are right the other tests know; here stands that nothing is lost, and that no number moves unseen.
func TestWholeMoments(t *testing.T) {
	when := at(4, 16, 0)
	follow := bench.Observation{Version: bench.Format, At: at(4, 6, 0), Kind: bench.SawPlan, Bread: "hall",
		Plan: &bench.FollowedPlan{Made: at(4, 6, 0), Wanted: at(5, 12, 30)}}
	o := report.Options{Width: 110}
	after := func(d time.Duration) time.Time { return when.Add(d) }
	seen := []bench.Observation{follow, mixed(when, 24.5), risen(after(2*time.Hour), 12), risen(after(3*time.Hour), 21)}
	out := ""
	for _, m := range []struct {
		name string
		now  time.Time
		saw  []bench.Observation
	}{
		{"the plan alone", at(4, 6, 0), nil},
		{"followed", at(4, 7, 0), seen[:1]},
		{"mixed", after(30 * time.Minute), seen[:2]},
		{"read once", after(2*time.Hour + time.Minute), seen[:3]},
		{"read twice", after(3*time.Hour + time.Minute), seen},
		{"doubted", after(20 * time.Minute), []bench.Observation{mixed(when, 26), risen(after(18*time.Minute), 30)}},
		{"late", at(5, 3, 0), seen},
	} {
		out += "== " + m.name + "\n" + moment(t, m.now, m.saw...).Report().Text(o) + "\n"
	}
	trial.Kept(t, "moments.txt", out)

	made := at(4, 6, 0)
	out = together(t, made, following(made)...).Report().Text(o) + "\n" + together(t, at(5, 9, 0),
		append(following(made), mixed(when, 25))...).Report().Text(o)
	trial.Kept(t, "kitchen.txt", out)
}

// What bakes have taught, and the log of them.
func TestWholeLessons(t *testing.T) {
	var all bench.Observations
	for week := range 4 {
		start := at(4, 16, 0).AddDate(0, 0, 7*week)
		ready := start.Add(4*time.Hour + time.Duration(10*week)*time.Minute)
		all = append(all, mixed(start, 24.5+0.3*float64(week)), risen(start.Add(2*time.Hour), 11),
			saw(ready, bench.SawReady, func(o *bench.Observation) {
				o.Ready = &bench.ReadyDough{Rise: quantity.NewPercent(28)}
			}),
			saw(ready.Add(14*time.Hour), bench.SawCore, func(o *bench.Observation) {
				o.Core = &bench.SeenCore{Core: quantity.Celsius(94.6), After: quantity.Elapsed(43 * time.Minute), Out: true}
			}),
			saw(ready.Add(15*time.Hour), bench.SawWeights, func(o *bench.Observation) {
				o.Weights = &bench.LoafWeights{In: quantity.Grams(897), Out: quantity.Grams(781 - 2*float64(week)),
					Style: bake.LeanHearth}
			}))
	}
	lessons, err := all.Learn(0)
	if err != nil {
		t.Fatal(err)
	}
	o := report.Options{Width: 110}
	trial.Kept(t, "lessons.txt", lessons.Report().Text(o)+"\n"+all.Report().Text(o))
}
