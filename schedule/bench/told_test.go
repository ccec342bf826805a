package bench_test

import (
	"context"
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"example.org/maslin/bake"
	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/ferment"
	"example.org/maslin/schedule/bench"
)

func saw(when time.Time, kind bench.Sight, change func(*bench.Observation)) bench.Observation {
	o := bench.Observation{Version: bench.Format, At: when, Kind: kind, Bread: "hall"}
	change(&o)
	return o
}

func weighed(when time.Time, in, out float64) bench.Observation {
	return saw(when, bench.SawWeights, func(o *bench.Observation) {
		o.Weights = &bench.LoafWeights{In: quantity.Grams(in), Out: quantity.Grams(out), Style: bake.LeanHearth}
	})
}

// Each observation tells itself, with what was said and nothing else.
func TestObservationsInWords(t *testing.T) {
	when := at(4, 16, 0)
	c := quantity.Celsius
	for want, o := range map[string]bench.Observation{
		"nothing":       saw(when, bench.SawNote, func(*bench.Observation) {}),
		"risen by 30 %": risen(when, 30),
		"core 96.5 °C":  saw(when, bench.SawCore, func(o *bench.Observation) { o.Core = &bench.SeenCore{Core: c(96.5)} }),
		"note: pale":    saw(when, bench.SawNote, func(o *bench.Observation) { o.Note = "pale" }),
		"done: fold-1":  saw(when, bench.SawStep, func(o *bench.Observation) { o.Step = "fold-1" }),
		"ready, risen by 28 %": saw(when, bench.SawReady, func(o *bench.Observation) {
			o.Ready = &bench.ReadyDough{Rise: quantity.NewPercent(28)}
		}),
		"ready, risen by 28 %, with 2 readings of the probe": saw(when, bench.SawReady, func(o *bench.Observation) {
			o.Ready = &bench.ReadyDough{Rise: quantity.NewPercent(28), Readings: make([]ferment.Knot, 2)}
		}),
		"core 96.0 °C after 35m, taken out": saw(when, bench.SawCore, func(o *bench.Observation) {
			o.Core = &bench.SeenCore{Core: c(96), After: quantity.Elapsed(35 * time.Minute), Out: true}
		}),
		"weights: 900 g in, 780 g out, lean hearth": weighed(when, 900, 780),
		"mixed, dough 25.0 °C": saw(when, bench.SawMixed,
			func(o *bench.Observation) { o.Mix = &bench.DoughMixed{Dough: c(25)} }),
		"mixed, dough 25.0 °C, flour 20.0 °C, water 30.0 °C, levain 24.0 °C, room 22.0 °C, planetary, " +
			"3m at the first speed, 5m at the second speed, 12.0 % in the levain, 0.20 % fresh yeast": saw(when, bench.SawMixed,
			func(o *bench.Observation) {
				o.Mix = &bench.DoughMixed{Dough: c(25), Flour: c(20), Water: c(30), Levain: c(24), Room: c(22),
					Mixer: mixing.Planetary, Slow: quantity.Elapsed(3 * time.Minute), Fast: quantity.Elapsed(5 * time.Minute),
					Inoculation: quantity.NewPercent(12), Yeast: quantity.NewPercent(0.2), YeastKind: ferment.FreshYeast}
			}),
	} {
		if got := o.String(); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

// What is said at once to an observation: how long since mixing, when it is ready, whether the range held, what the
// oven took.
func TestToldAtOnce(t *testing.T) {
	when := at(4, 16, 0)
	m := mixed(when, 26)
	ready := func(after time.Duration) bench.Observation {
		return saw(when.Add(after), bench.SawReady, func(o *bench.Observation) {
			o.Ready = &bench.ReadyDough{Rise: quantity.NewPercent(28)}
		})
	}
	bulk, _, err := m.Mix.Bulk(nil)
	if err != nil {
		t.Fatal(err)
	}
	bulk.Rise = m.Mix.Rise
	e, err := bulk.Estimate()
	if err != nil {
		t.Fatal(err)
	}
	r := e.Ready()
	clock := func(d time.Duration) string { return when.Add(d.Round(time.Minute)).Format("15:04") }
	aimless, unknown := m, m
	mix, bare := *m.Mix, bench.DoughMixed{Dough: quantity.Celsius(26)}
	mix.Rise = quantity.Percent{}
	aimless.Mix, unknown.Mix = &mix, &bare
	for name, c := range map[string]struct {
		before bench.Observations
		o      bench.Observation
		says   []string
	}{
		"mixed": {nil, m, []string{"risen by 28 %: ", "likely Fri " + clock(r.Likely),
			"not teaches nothing about the mixer"}},
		"mixed, of which little is known": {nil, unknown, []string{
			"it teaches nothing about the culture yet: not logged: inoculation or yeast, hydration and room"}},
		"mixed, without an aim": {nil, aimless, []string{"not risen by"}},
		"looked at, without aim": {bench.Observations{aimless}, risen(when.Add(90*time.Minute), 12),
			[]string{"1h30m after mixing"}},
		"looked at": {bench.Observations{m}, risen(when.Add(90*time.Minute), 12),
			[]string{"risen by 28 %, ", "by the clock"}},
		"looked at, of no dough":  {nil, risen(when, 12), []string{"no mixing was logged before it"}},
		"ready, as was expected":  {bench.Observations{m}, ready(r.Likely), []string{"inside the range"}},
		"ready, at the late end":  {bench.Observations{m}, ready(r.Late - time.Minute), []string{"inside the range"}},
		"ready, after the late":   {bench.Observations{m}, ready(r.Late + time.Minute), []string{"outside the range"}},
		"ready, before the early": {bench.Observations{m}, ready(r.Early - time.Minute), []string{"outside the range"}},
		"ready, of no dough":      {nil, ready(0), []string{"no mixing was logged before it"}},
		"ready, of little known": {bench.Observations{unknown}, ready(2 * time.Hour),
			[]string{"it teaches nothing about the culture: not logged"}},
		"weighed": {nil, weighed(when, 900, 774), []string{"lost 14.0 % of the dough"}},
		"weighed, hardly true": {nil, weighed(when, 900, 300), []string{
			"300 g of bread from 900 g of dough would have lost 67 %", "changes nothing until it is confirmed"}},
	} {
		all := append(c.before[:len(c.before):len(c.before)], c.o)
		says, err := all.Tells(c.o)
		if err != nil {
			t.Errorf("%s: %v", name, err)
		}
		text := fmt.Sprint(says)
		for _, part := range c.says {
			part, absent := strings.CutPrefix(part, "not ")
			if strings.Contains(text, part) == absent {
				t.Errorf("%s: %q in %q: want %v", name, part, text, !absent)
			}
		}
	}
}

// A dough is looked for five days back, with the name of its bread and the name of its baker.
func TestTheDoughOfAnObservation(t *testing.T) {
	when := at(1, 16, 0)
	all := bench.Observations{mixed(when.Add(-time.Hour), 24), mixed(when, 26)}
	const days = 5 * 24 * time.Hour
	for name, c := range map[string]struct {
		o    bench.Observation
		want float64 // °C of the dough; 0: none
	}{
		"the last of two":    {risen(when.Add(time.Hour), 12), 26},
		"between the two":    {risen(when.Add(-time.Minute), 12), 24},
		"before both":        {risen(when.Add(-2*time.Hour), 12), 0},
		"just in five days":  {risen(when.Add(days-time.Second), 12), 26},
		"after five days":    {risen(when.Add(days), 12), 0},
		"of any bread":       {saw(when.Add(time.Hour), bench.SawNote, func(o *bench.Observation) { o.Bread = "" }), 26},
		"of another bread":   {saw(when.Add(time.Hour), bench.SawNote, func(o *bench.Observation) { o.Bread = "rye" }), 0},
		"of another's bread": {saw(when.Add(time.Hour), bench.SawNote, func(o *bench.Observation) { o.By = "Vreni" }), 0},
	} {
		b, ok := all.DoughOf(c.o)
		if ok != (c.want > 0) || ok && b.Mix.Dough != quantity.Celsius(c.want) {
			t.Errorf("%s: %v at %v, want %v °C", name, ok, b.Mix.Dough, c.want)
		}
	}
}

// The page of lessons: what is doubted, what was learned of each, what taught nothing, and how the ranges held.
func TestThePageOfLessons(t *testing.T) {
	var all bench.Observations
	first := at(1, 6, 0)
	for i := range 7 { // a day apart; the range of 80 % holds the likely time
		m := mixed(first.AddDate(0, 0, i), 25)
		bulk, _, err := m.Mix.Bulk(nil)
		if err != nil {
			t.Fatal(err)
		}
		bulk.Rise = m.Mix.Rise
		e, err := bulk.Estimate()
		if err != nil {
			t.Fatal(err)
		}
		done := saw(m.At.Add(e.Ready().Likely), bench.SawReady, func(o *bench.Observation) {
			o.Ready = &bench.ReadyDough{Rise: m.Mix.Rise}
		})
		all = append(all, m, done, weighed(m.At.Add(9*time.Hour), 900, 774))
	}
	for i := range 7 { // nothing is known of when these were ready
		all = append(all, mixed(first.AddDate(0, 0, 10+i), 25))
	}
	all = append(all, weighed(first.AddDate(0, 0, 20), 900, 300))
	page := func(halfLife time.Duration) string {
		l, err := all.Learn(halfLife)
		if err != nil {
			t.Fatal(err)
		}
		return strings.Join(strings.Fields(l.Report().Text(report.Options{Width: 300})), " ")
	}
	text := page(0)
	for _, want := range []string{
		"29 observations of 14 doughs", "Is this so?", "300 g of bread from 900 g", "learned from this many bakes 7",
		"likely 100 %", "7 of 7 bakes", "What the other bakes would have said", "inside", "hardly learned",
		"from 7 loaves", "no reading of 10 % or more", "and 2 more that teach nothing",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in %s", want, text)
		}
	}
	for _, absent := range []string{"outside", "counts half", "not counted any more"} {
		if strings.Contains(text, absent) {
			t.Errorf("%q in %s", absent, text)
		}
	}
	if text := page(36 * time.Hour); !strings.Contains(text, "a bake counts half after 2 days") {
		t.Errorf("the half-life is not told: %s", text)
	}
	if none, err := (bench.Observations{}).Learn(0); err != nil || !none.IsZero() ||
		!strings.Contains(none.String(), "nothing to learn from yet") {
		t.Errorf("%v, %v", none, err)
	}
}

// The next plan stands beside the plan as it is written: the learned loss asks for that much more dough for a loaf.
func TestThePageOfTheNextPlan(t *testing.T) {
	var all bench.Observations
	for i := range 6 {
		all = append(all, weighed(at(1, 6+i, 0), 1000, 850))
	}
	l, err := all.Learn(0)
	if err != nil {
		t.Fatal(err)
	}
	n, err := l.NextPlan(context.Background(), hall(t), clock(at(3, 8, 0)))
	if err != nil {
		t.Fatal(err)
	}
	// Six loaves say 15 %, and the usual loss, 11.6 %, still counts a little; bread of 780 g then is 780/(1 − loss) of
	// dough.
	before, after, loss := n.Before.Baking.Scaling.Grams(), n.After.Baking.Scaling.Grams(), n.Loss.Points()
	if loss < 14 || loss > 14.9 || !(math.Abs(after-780/(1-loss/100)) <= 0.01) ||
		!(math.Abs(before-780/(1-0.116)) <= 0.6) {
		t.Errorf("%v g of dough, before it was %v, for a loss of %v %%", after, before, loss)
	}
	text := strings.Join(strings.Fields(n.Report().Text(report.Options{Width: 300})), " ")
	for _, want := range []string{
		"The next plan of hall", fmt.Sprintf("loss in the oven 11.6 %% %.1f %%", loss),
		fmt.Sprintf("dough for one loaf %.0f g %.0f g", before, after),
		fmt.Sprintf("To keep it, write into the bake loaves.loss %.1f %%", loss), "weighed on 6 loaves",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in %s", want, text)
		}
	}
	if strings.Contains(text, "mixing.warming") {
		t.Error("a warming is to be kept that was not learned")
	}
}

// Whatever lies beyond its limits is named, and at the limit it is not.
func TestLimitsOfObservations(t *testing.T) {
	when := at(4, 10, 0)
	p, c, kg := quantity.NewPercent, quantity.Celsius, quantity.Kilograms
	hours := func(h float64) quantity.Elapsed { return quantity.Elapsed(h * float64(time.Hour)) }
	mix := func(change func(*bench.DoughMixed)) bench.Observation {
		o := mixed(when, 26)
		m := *o.Mix
		change(&m)
		o.Mix = &m
		return o
	}
	core := func(celsius, after float64) bench.Observation {
		return saw(when, bench.SawCore, func(o *bench.Observation) {
			o.Core = &bench.SeenCore{Core: c(celsius), After: hours(after)}
		})
	}
	probe := func(celsius float64) bench.Observation {
		return saw(when, bench.SawReady, func(o *bench.Observation) {
			o.Ready = &bench.ReadyDough{Rise: p(300), Readings: []ferment.Knot{{Temperature: c(celsius)}}}
		})
	}
	sure := func(percent float64) bench.Observation {
		o := risen(when, 300)
		o.Rise.Error = p(percent)
		return o
	}
	limits := map[string]struct{ at, past bench.Observation }{
		"rise.rise":                     {risen(when, 300), risen(when, 300.1)},
		"rise.error":                    {sure(50), sure(50.1)},
		"core.core":                     {core(150, 0), core(150.5, 0)},
		"core.after":                    {core(97, 24), core(97, 24.1)},
		"weights.out":                   {weighed(when, 900, 900), weighed(when, 900, 901)},
		"weights.in":                    {weighed(when, 100_000, 900), weighed(when, 100_001, 900)},
		"ready.readings[0].temperature": {probe(60), probe(60.5)},
		"mix.yeast_kind": {mix(func(m *bench.DoughMixed) { m.Yeast, m.YeastKind = p(1), ferment.FreshYeast }),
			mix(func(m *bench.DoughMixed) { m.Yeast = p(1) })},
		"note": {saw(when, bench.SawNote, func(o *bench.Observation) { o.Note = strings.Repeat("a", 4000) }),
			saw(when, bench.SawNote, func(o *bench.Observation) { o.Note = strings.Repeat("a", 4001) })},
		"bread": {saw(when, bench.SawNote, func(o *bench.Observation) { o.Note, o.Bread = "pale", "Grüne\tRolls" }),
			saw(when, bench.SawNote, func(o *bench.Observation) { o.Note, o.Bread = "pale", "a\u202eb" })},
		"by": {saw(when, bench.SawNote, func(o *bench.Observation) { o.Note, o.By = "pale", "Vreni" }),
			saw(when, bench.SawNote, func(o *bench.Observation) { o.Note, o.By = "pale", "a\xff" })},
		"step": {saw(when, bench.SawStep, func(o *bench.Observation) { o.Step = "fold-1" }),
			saw(when, bench.SawStep, func(o *bench.Observation) { o.Step = " " })},
	}
	// Of a dough: the field at its limit, or over it by a part of it.
	for path, set := range map[string]func(m *bench.DoughMixed, over float64){
		"mix.dough":        func(m *bench.DoughMixed, over float64) { m.Dough = c(50 * over) },
		"mix.water":        func(m *bench.DoughMixed, over float64) { m.Water = c(95 * over) },
		"mix.flour":        func(m *bench.DoughMixed, over float64) { m.Flour = c(-40 * over) },
		"mix.flour_weight": func(m *bench.DoughMixed, over float64) { m.FlourWeight = kg(1000 * over) },
		"mix.weight":       func(m *bench.DoughMixed, over float64) { m.Weight = kg(1000 * over) },
		"mix.slow":         func(m *bench.DoughMixed, over float64) { m.Slow = hours(4 * over) },
		"mix.fast":         func(m *bench.DoughMixed, over float64) { m.Fast = hours(4 * over) },
		"mix.inoculation":  func(m *bench.DoughMixed, over float64) { m.Inoculation = p(100 * over) },
		"mix.salt":         func(m *bench.DoughMixed, over float64) { m.Salt = p(10 * over) },
		"mix.sugar":        func(m *bench.DoughMixed, over float64) { m.Sugar = p(60 * over) },
		"mix.hydration":    func(m *bench.DoughMixed, over float64) { m.Hydration = p(200 * over) },
		"mix.whole_grain":  func(m *bench.DoughMixed, over float64) { m.WholeGrain = p(100 * over) },
		"mix.rise":         func(m *bench.DoughMixed, over float64) { m.Rise = p(300 * over) },
		"mix.altitude":     func(m *bench.DoughMixed, over float64) { m.Altitude = quantity.Meters(9000 * over) },
	} {
		limits[path] = struct{ at, past bench.Observation }{
			mix(func(m *bench.DoughMixed) { set(m, 1) }), mix(func(m *bench.DoughMixed) { set(m, 1.00005) }),
		}
	}
	// Of what has a lower end too.
	for path, x := range map[string]struct{ at, past bench.Observation }{
		"rise.rise": {risen(when, -20), risen(when, -20.5)}, "rise.error": {sure(0.1), sure(0.05)},
		"core.core": {core(-5, 0), core(-5.5, 0)}, "core.after": {core(97, 0), core(97, -1)},
		"ready.rise":                    {readied(when, 1), readied(when, 0.9)},
		"ready.readings[0].temperature": {probe(-25), probe(-25.5)},
		"weights.out":                   {weighed(when, 900, 1), weighed(when, 900, 0.9)},
		"weights.in":                    {weighed(when, 1, 1), weighed(when, 0.5, 1)},
		"mix.dough": {mix(func(m *bench.DoughMixed) { m.Dough = c(0) }),
			mix(func(m *bench.DoughMixed) { m.Dough = c(-0.5) })},
		"mix.slow": {mix(func(m *bench.DoughMixed) { m.Slow = 0 }),
			mix(func(m *bench.DoughMixed) { m.Slow = hours(-1) })},
		"mix.altitude": {mix(func(m *bench.DoughMixed) { m.Altitude = quantity.Meters(-500) }),
			mix(func(m *bench.DoughMixed) { m.Altitude = quantity.Meters(-501) })},
	} {
		limits[path+" below"] = x
	}
	for path, x := range limits {
		path = strings.TrimSuffix(path, " below")
		if err := x.at.Check(); err != nil {
			t.Errorf("%s at its limit: %v", path, err)
		}
		var got []string
		for _, e := range quantity.InputErrors(x.past.Check()) {
			got = append(got, e.Path)
		}
		if len(got) != 1 || got[0] != path {
			t.Errorf("%s past its limit: %v", path, got)
		}
	}
}

// Cores are of one loaf until one is taken out, and while the time in the oven goes on; a core without its time goes on
// from those before it.
func TestCoresOfOneLoaf(t *testing.T) {
	when := at(5, 9, 0)
	core := func(minute int, celsius float64, after int, out bool) bench.Observation {
		return saw(when.Add(time.Duration(minute)*time.Minute), bench.SawCore, func(o *bench.Observation) {
			o.Core = &bench.SeenCore{Core: quantity.Celsius(celsius), Out: out,
				After: quantity.Elapsed(time.Duration(after) * time.Minute)}
		})
	}
	for name, c := range map[string]struct {
		all  bench.Observations
		left bool // how long still, which takes two readings of one loaf
	}{
		"two":                       {bench.Observations{core(0, 70, 20, false), core(5, 80, 25, false)}, true},
		"one":                       {bench.Observations{core(5, 80, 25, false)}, false},
		"the last without its time": {bench.Observations{core(0, 70, 20, false), core(5, 80, 0, false)}, true},
		"the first without":         {bench.Observations{core(0, 70, 0, false), core(5, 80, 25, false)}, true},
		"taken out":                 {bench.Observations{core(0, 70, 20, true), core(5, 80, 25, false)}, false},
		"another loaf":              {bench.Observations{core(0, 70, 30, false), core(5, 80, 25, false)}, false},
		"another loaf, as long in":  {bench.Observations{core(0, 70, 25, false), core(5, 80, 25, false)}, false},
		"hours before":              {bench.Observations{core(-130, 70, 0, false), core(5, 80, 25, false)}, false},
	} {
		last := c.all[len(c.all)-1]
		says, err := c.all.Tells(last)
		if err != nil {
			t.Fatal(name, err)
		}
		text := fmt.Sprint(says)
		if got := strings.Contains(text, "to a core of"); got != c.left || !strings.Contains(text, "80.0 °C") {
			t.Errorf("%s: %s; how long still: want %v", name, text, c.left)
		}
	}
}
