package ferment_test

import (
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/ferment"
	"example.org/maslin/internal/workcheck"
)

// told is the text of one section of a page, spaces in a row made one.
func told(r report.Report, key string) string {
	text := report.Report{Sections: []report.Section{r.Section(key)}}.Text(report.Options{Width: 400})
	return strings.Join(strings.Fields(text), " ")
}

// tells reports an error unless the text has each of the parts, and lacks those that begin with "not ".
func tells(t *testing.T, text string, parts ...string) {
	t.Helper()
	for _, part := range parts {
		part, absent := strings.CutPrefix(part, "not ")
		if strings.Contains(text, part) == absent {
			t.Errorf("%q in %q: want %v", part, text, !absent)
		}
	}
}

// value is a line at a place between its points.
func value(x, y []float64, at float64) float64 {
	for i := 1; i < len(x); i++ {
		if at <= x[i] {
			return y[i-1] + (y[i]-y[i-1])*(at-x[i-1])/(x[i]-x[i-1])
		}
	}
	return math.NaN()
}

// The page of a dough names what went in and nothing else; by the clock its range is that after mixing; and its picture
// crosses the wanted rise where the answer says.
func TestThePageOfADough(t *testing.T) {
	whole := good()
	whole.WholeGrain, whole.Sugar, whole.Altitude = pct(30), pct(4), quantity.Meters(1150)
	yeasted := good()
	yeasted.Inoculation, yeasted.Yeast = quantity.Percent{}, ferment.Yeast{Kind: ferment.FreshYeast, Amount: pct(0.8)}
	for name, c := range map[string]struct {
		bulk  ferment.Bulk
		dough []string
	}{
		"plain": {good(), []string{"levain 10.0 %", "water 72 %", "salt 2.0 %", "temperature", "23", "not sugar",
			"not whole", "not altitude", "not yeast", "not preferment"}},
		"whole": {whole, []string{"whole grain 30 %", "sugar 4.0 %", "altitude 1150 m"}},
		"yeast": {yeasted, []string{"commercial yeast 0.80 % fresh yeast", "not levain"}},
	} {
		t.Run(name, func(t *testing.T) {
			e := estimate(t, c.bulk)
			tells(t, told(e.Report(), "dough"), c.dough...)
			ready := e.Ready()
			tells(t, told(e.Report(), "ready"), "75 % risen", "not by the clock")
			mixed := time.Date(2026, 11, 28, 0, 30, 0, 0, time.UTC)
			page := e.ReportFrom(mixed)
			minute := func(d time.Duration) string { return mixed.Add(d.Round(time.Minute)).Format("15:04") }
			tells(t, told(page, "ready"), fmt.Sprintf("by the clock: %s to %s (80 %%), likely %s",
				minute(ready.Early), minute(ready.Late), minute(ready.Likely)))
			// Late in the evening the days are named.
			evening := mixed.Add(23 * time.Hour)
			tells(t, told(e.ReportFrom(evening), "ready"), "by the clock: Sun ", "likely Sun "+
				evening.Add(ready.Likely.Round(time.Minute)).Format("15:04"))
			chart := page.Section("rise").Blocks[0].(report.Chart)
			zero := 0.5
			for _, x := range []struct {
				line []float64
				at   time.Duration
			}{{chart.Main.Values, ready.Likely}, {chart.High.Values, ready.Early}, {chart.Low.Values, ready.Late}} {
				if got := value(chart.X.Values, x.line, zero+x.at.Hours()); !(math.Abs(got-75) <= 0.5) {
					t.Errorf("the picture is at %v after %v, want 75", got, x.at)
				}
			}
			if l := chart.Levels; len(l) != 1 || l[0].At != 75 {
				t.Errorf("%+v", l)
			}
			for _, celsius := range chart.Second.Values {
				if !(math.Abs(celsius-23) <= 1e-9) {
					t.Errorf("the dough is drawn at %v", celsius)
				}
			}
			for _, f := range workcheck.Faults(e.Working()) {
				t.Error(f)
			}
		})
	}
	small := good()
	small.Rise = pct(5)
	tells(t, estimate(t, small).String(), "5.0 % rise after")
	tells(t, estimate(t, good()).String(), "75 % rise after", "not 75.0")
}

// Each remark stands where its reason holds, and only there.
func TestRemarks(t *testing.T) {
	at := func(celsius float64, change func(*ferment.Bulk)) ferment.Bulk {
		b := good()
		b.History = ferment.Constant(quantity.Celsius(celsius))
		if change != nil {
			change(&b)
		}
		return b
	}
	yeast := func(percent float64, kind ferment.YeastKind) func(*ferment.Bulk) {
		return func(b *ferment.Bulk) {
			b.Inoculation, b.Yeast = quantity.Percent{}, ferment.Yeast{Kind: kind, Amount: pct(percent)}
		}
	}
	for remark, c := range map[string]struct{ with, without ferment.Bulk }{
		"part ways":          {at(30.5, nil), at(29.5, nil)},
		"little is measured": {at(9.5, nil), at(10.5, nil)},
		"wake up": {at(30, yeast(3, ferment.InstantYeast)),
			at(30, yeast(9, ferment.FreshYeast))},
		"few doughs hold": {at(23, func(b *ferment.Bulk) { b.Rise = pct(201) }),
			at(23, func(b *ferment.Bulk) { b.Rise = pct(200) })},
		"crowd each other": {at(23, func(b *ferment.Bulk) {
			b.Yeast = ferment.Yeast{Kind: ferment.InstantYeast, Amount: pct(0.1)}
		}), at(23, yeast(0.1, ferment.InstantYeast))},
		"not ready within 30 days": {at(2, func(b *ferment.Bulk) { b.Inoculation, b.Rise = pct(1), pct(200) }), at(20, nil)},
		"too wide to plan by":      {at(1, func(b *ferment.Bulk) { b.Inoculation = pct(40) }), at(23, nil)},
	} {
		notes := func(b ferment.Bulk) string { return fmt.Sprint(estimate(t, b).Notes()) }
		if got := notes(c.with); !strings.Contains(got, remark) {
			t.Errorf("%q is missing in %q", remark, got)
		}
		if got := notes(c.without); strings.Contains(got, remark) {
			t.Errorf("%q without a reason in %q", remark, got)
		}
	}
}

// The page of a fed levain has its three times, by the clock where a clock is given, and what is not reached.
func TestThePageOfALevain(t *testing.T) {
	fed := time.Date(2026, 11, 28, 6, 0, 0, 0, time.UTC)
	r, err := ferment.Ripening{Seed: pct(20), Hydration: pct(100), History: ferment.Constant(quantity.Celsius(24)),
		Law: ferment.GasBalance()}.Ripe()
	if err != nil {
		t.Fatal(err)
	}
	short := func(d time.Duration) string { return quantity.Elapsed(d.Round(time.Minute)).String() }
	by := func(d time.Duration) string { return fed.Add(d.Round(time.Minute)).Format("15:04") }
	text := told(r.ReportFrom(fed), "ripe")
	for _, x := range []struct {
		stage string
		when  quantity.TimeRange
	}{{"ripe", r.From}, {"stands highest", r.Peak}, {"usable until", r.Until}} {
		tells(t, text, fmt.Sprintf("%s %s to %s (80 %%), likely %s", x.stage, short(x.when.Early), short(x.when.Late),
			short(x.when.Likely)), "likely "+by(x.when.Likely))
	}
	tells(t, told(r.Report(), "ripe"), "not by the clock", "not not within")
	tells(t, told(r.Report(), "look"), "domed", "not stiff")
	if blocks := r.Report().Section("look").Blocks; len(blocks) != 1 {
		t.Errorf("%d blocks where there is nothing to remark", len(blocks))
	}
	for _, f := range workcheck.Faults(r.Working()) {
		t.Error(f)
	}
	cold, err := ferment.Ripening{Seed: pct(1), Hydration: pct(50), History: ferment.Constant(quantity.Celsius(1)),
		Law: ferment.GasBalance()}.Ripe()
	if err != nil {
		t.Fatal(err)
	}
	if _, _, past := cold.Reached(); past {
		t.Fatal("a levain at 1 °C is past its use")
	}
	tells(t, told(cold.Report(), "ripe"), "usable until not within 30 days")
	tells(t, told(cold.Report(), "look"), "a stiff preferment")
	codes := func(r ferment.Ripeness) string { return fmt.Sprint(r.Cautions()) }
	tells(t, codes(r), "raw flour", "pink or orange", "never seal the jar", "not refrigerator")
	poolish, err := ferment.Ripening{Yeast: ferment.Yeast{Kind: ferment.FreshYeast, Amount: pct(0.2)}, Hydration: pct(100),
		History: ferment.Constant(quantity.Celsius(7)), Law: ferment.GasBalance()}.Ripe()
	if err != nil {
		t.Fatal(err)
	}
	tells(t, codes(poolish), "never seal the jar", "not pink", "refrigerator for food")
}

// Doubling times are ln 2 over the rate, on the page as in the rows, and where there is no growth there is none.
func TestThePageOfTheCurves(t *testing.T) {
	own, err := ferment.ConstantQ10{Name: "by two", Q: 2, Rate: math.Ln2, Reference: 20, Low: 5, High: 40}.Curve()
	if err != nil {
		t.Fatal(err)
	}
	table := ferment.CurveTable{Curves: []ferment.Curve{own, ferment.SaccharomycesCardinal()},
		Temperatures: []quantity.Temperature{quantity.Celsius(0), quantity.Celsius(20), quantity.Celsius(30),
			quantity.Celsius(50)}}
	r, err := table.Rates()
	if err != nil {
		t.Fatal(err)
	}
	// One doubling an hour at 20 °C, two at 30 °C, a quarter at 0 °C, eight at 50 °C, the last two out of range.
	grid := told(r.Report(), "curves")
	tells(t, grid, "0 °C 4.0 h (out of range) no growth", "20 °C 1.0 h ", "30 °C 0.5 h ",
		"50 °C 0.1 h (out of range) no growth")
	tells(t, told(r.Report(), "about"), "by two", "between 5 °C and 40 °C", "between 0 °C and 45 °C")
	anyone, err := ferment.NewCurve(ferment.About{Name: "mine", Low: 5, High: 40}, func(float64) float64 { return 0.3 })
	if err != nil {
		t.Fatal(err)
	}
	with := table
	with.Curves = append([]ferment.Curve{anyone}, table.Curves...)
	rates, err := with.Rates()
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range append(workcheck.Faults(r.Working()), workcheck.Faults(rates.Working())...) {
		t.Error(f)
	}
	chart := r.Report().Section("curves").Blocks[1].(report.Chart)
	x := chart.X.Values
	if first, last := x[0], x[len(x)-1]; !(math.Abs(first-5) <= 1e-9) || !(math.Abs(last-40) <= 1e-9) {
		t.Errorf("drawn from %v to %v, where both may be used it is 5 to 40", first, last)
	}
	if got := value(x, chart.Main.Values, 20); !(math.Abs(got-math.Ln2) <= 1e-3) || len(chart.Beside) != 1 {
		t.Errorf("%v at 20 °C, %d lines beside", got, len(chart.Beside))
	}
	five := ferment.CurveTable{Curves: ferment.Curves()[:5], Temperatures: table.Temperatures[1:2]}
	if r, err = five.Rates(); err != nil || len(r.Report().Section("curves").Blocks) != 1 {
		t.Errorf("five curves are drawn: %v", err)
	}
}

// A table of rises is the estimates of its cells, each line warmer and each column more.
func TestThePageOfRises(t *testing.T) {
	in := ferment.RiseTable{Bulk: good(), Amounts: []quantity.Percent{pct(5), pct(10), pct(20)},
		Temperatures: []quantity.Temperature{quantity.Celsius(20), quantity.Celsius(23), quantity.Celsius(26)}}
	r, err := in.Times()
	if err != nil {
		t.Fatal(err)
	}
	for i, row := range r.Times {
		for j, cell := range row {
			if j > 0 && cell.Likely >= row[j-1].Likely || i > 0 && cell.Likely >= r.Times[i-1][j].Likely {
				t.Errorf("%v at %v with %v", cell, in.Temperatures[i], in.Amounts[j])
			}
		}
	}
	middle := estimate(t, good()).Ready()
	if r.Times[1][1] != middle {
		t.Errorf("%v in the middle, the dough itself %v", r.Times[1][1], middle)
	}
	part := func(d time.Duration) string { return fmt.Sprintf("%.0f %%", 100*float64(d)/float64(middle.Likely)) }
	page := told(r.Report(), "times")
	tells(t, page, "columns: flour in the levain", "5 %", "10 %", "20 %",
		"23.0 °C "+quantity.Elapsed(r.Times[1][0].Likely.Round(time.Minute)).String(),
		"between "+part(middle.Early)+" and "+part(middle.Late)+" of the likely time")
	for _, f := range workcheck.Faults(r.Working()) {
		t.Error(f)
	}
	in.Bulk.Inoculation, in.Bulk.Yeast = quantity.Percent{}, ferment.Yeast{Kind: ferment.FreshYeast, Amount: pct(1)}
	in.Amounts = []quantity.Percent{pct(1), pct(3), pct(10)}
	if r, err = in.Times(); err != nil {
		t.Fatal(err)
	}
	tells(t, told(r.Report(), "times"), "columns: fresh yeast, of the flour")
	yeasted := in.Bulk
	yeasted.Yeast.Amount, yeasted.History = pct(10), ferment.Constant(quantity.Celsius(26))
	if got, want := r.Times[2][2], estimate(t, yeasted).Ready(); got != want {
		t.Errorf("%v with 10 %% of yeast, the dough itself %v", got, want)
	}
}

// The page of a lesson says what was learned; that temperature taught nothing, only of bakes hardly apart.
func TestThePageOfALesson(t *testing.T) {
	log := func(apart float64) (out []ferment.LoggedBulk) {
		for i := range 6 {
			b := good()
			b.History = ferment.Constant(quantity.Celsius(23 + apart*float64(i%2)))
			out = append(out, ferment.LoggedBulk{Bulk: b, Took: quantity.Elapsed(estimate(t, b).Ready().Likely)})
		}
		return out
	}
	near := learn(t, ferment.Learning{Bakes: log(1.5)})
	// Bakes as expected teach the usual pace, and each lies within what the others say of it.
	tells(t, told(near.Report(), "culture"), "likely 100 %", "hardly learned: all bakes were at 23.0 °C to 24.5 °C",
		"6 of 6 bakes came within the range")
	apart := learn(t, ferment.Learning{Bakes: log(3)})
	tells(t, told(apart.Report(), "culture"), "not hardly learned", "6 of 6 bakes")
	one := learn(t, ferment.Learning{Bakes: log(0)[:1]})
	tells(t, told(one.Report(), "culture"), "not bakes came within")
	for _, l := range []ferment.Lesson{near, apart, one} {
		for _, f := range workcheck.Faults(l.Working()) {
			t.Error(f)
		}
	}
	if low, high := apart.Temperatures(); !(math.Abs(low.Celsius()-23) <= 0.01) || !(math.Abs(high.Celsius()-26) <= 0.01) {
		t.Errorf("bakes at %v to %v", low, high)
	}
}

// What is asked for comes out of the answer: an amount, a temperature, and where there is none, on which side.
func TestThePagesOfInverses(t *testing.T) {
	yeasted := good()
	yeasted.Inoculation, yeasted.Yeast = quantity.Percent{}, ferment.Yeast{Kind: ferment.InstantYeast, Amount: pct(1)}
	beside := good()
	beside.Yeast = ferment.Yeast{Kind: ferment.InstantYeast}
	likely := estimate(t, good()).Ready().Likely
	for name, c := range map[string]struct {
		bulk  ferment.Bulk
		ready time.Duration
		says  string
	}{
		"levain":          {good(), likely, "10.0 % of the flour prefermented: 75 % rise after"},
		"yeast":           {yeasted, 5 * time.Hour, "instant yeast: 75 % rise after"},
		"beside a levain": {beside, 2 * likely / 3, "instant yeast: 75 % rise after"},
		"too soon":        {good(), 300 * time.Hour, "no amount does it: even the least amount would be ready sooner"},
		"too late":        {good(), 15 * time.Minute, "no amount does it: it would take more than can be put in"},
		"levain alone":    {beside, 2 * likely, "the levain alone would be ready by then"},
	} {
		a, err := c.bulk.AmountFor(c.ready)
		if err != nil {
			t.Fatal(name, err)
		}
		tells(t, a.Report().Headline.String(), c.says)
		if !a.Feasible {
			continue
		}
		if got := a.Estimate.Ready().Likely; (got - c.ready).Abs() > 2*time.Second {
			t.Errorf("%s: ready after %v, wanted %v", name, got, c.ready)
		}
		for _, f := range workcheck.Faults(a.Working()) {
			t.Errorf("%s: %s", name, f)
		}
	}
	drift := ferment.Relaxing{Start: quantity.Celsius(25), Room: ferment.Room{Night: quantity.Celsius(22)}}
	b := good()
	var err error
	if b.History, err = drift.History(); err != nil {
		t.Fatal(err)
	}
	likely = estimate(t, b).Ready().Likely
	start, err := b.StartFor(likely, drift)
	if err != nil || !(math.Abs(start.Temperature.Celsius()-25) <= 0.01) {
		t.Errorf("the dough has to be at %v, it was at 25 °C: %v", start, err)
	}
	room, err := b.RoomFor(likely, drift)
	if err != nil || !(math.Abs(room.Temperature.Celsius()-22) <= 0.01) {
		t.Errorf("the room has to be at %v, it was at 22 °C: %v", room, err)
	}
	tells(t, room.Report().Headline.String(), "22.0 °C: 75 % rise after")
	for says, ready := range map[string]time.Duration{
		"with the room at 10 °C it would still be ready sooner": 200 * time.Hour,
		"with the room at 30.0 °C, where warmer stops":          time.Hour,
	} {
		if room, err = b.RoomFor(ready, drift); err != nil {
			t.Fatal(err)
		}
		tells(t, room.Report().Headline.String(), says)
	}
	for says, ready := range map[string]time.Duration{
		"with the dough at 10 °C it would still be ready sooner": 200 * time.Hour,
		"with the dough at 30.0 °C, where warmer stops":          time.Hour,
	} {
		held, err := b.HeldFor(ready)
		if err != nil {
			t.Fatal(err)
		}
		tells(t, held.Report().Headline.String(), says)
	}
	held, err := yeasted.HeldFor(10 * time.Minute)
	if err != nil {
		t.Fatal(err)
	}
	tells(t, held.String(), "with the dough at 37.0 °C, where warmer stops")
}
