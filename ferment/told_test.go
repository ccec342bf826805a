package ferment_test

import (
	"encoding/json"
	"fmt"
	"math"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/ferment"
	"example.org/maslin/internal/workcheck"
)

// The ways to a wanted time are those that its dough leaves open, and each leads there.
func TestWaysToATime(t *testing.T) {
	drift := ferment.Relaxing{Start: quantity.Celsius(25), Room: ferment.Room{Night: quantity.Celsius(22)}}
	drifting, probed := good(), good()
	var err error
	if drifting.History, err = drift.History(); err != nil {
		t.Fatal(err)
	}
	var read []ferment.Knot
	for hour := range 10 {
		read = append(read, ferment.Knot{At: quantity.Elapsed(time.Duration(3*hour) * time.Hour),
			Temperature: quantity.Celsius(25 - 0.2*float64(hour))})
	}
	if probed.History, err = (ferment.Readings{Points: read}).History(); err != nil {
		t.Fatal(err)
	}
	const wanted = 6 * time.Hour
	mixed := time.Date(2026, 11, 28, 8, 15, 0, 0, time.UTC)
	for name, c := range map[string]struct {
		bulk  ferment.Bulk
		drift ferment.Relaxing
		says  []string
	}{
		"drifting": {drifting, drift, []string{"by the amount: ", "by the dough: ", "by the room: ",
			"not by a proofing box"}},
		"steady": {good(), ferment.Relaxing{}, []string{"by the amount: ", "by a proofing box: ", "not by the room"}},
		"probed": {probed, drift, []string{"by the amount: ", "not by the dough", "not by the room", "not by a proofing"}},
	} {
		w, err := c.bulk.WaysTo(wanted, c.drift)
		if err != nil {
			t.Fatal(name, err)
		}
		tells(t, told(w.ReportFrom(mixed), "ways"), append(c.says, "Ready after 6h, at 14:15")...)
		tells(t, told(w.Report(), "ways"), "Ready after 6h", "not , at")
		for _, a := range []*ferment.TemperatureAnswer{w.Dough, w.Room, w.Held} {
			if a != nil && a.Feasible && (a.Estimate.Ready().Likely-wanted).Abs() > 20*time.Second {
				t.Errorf("%s: %v", name, a)
			}
		}
		if !w.Amount.Feasible || (w.Amount.Estimate.Ready().Likely-wanted).Abs() > 2*time.Second {
			t.Errorf("%s: %v", name, w.Amount)
		}
	}
}

// Where readings are as expected the page says so; else how much earlier or later.
func TestThePageOfReadings(t *testing.T) {
	e := estimate(t, good())
	at := e.Ready().Likely / 2
	band, err := e.RiseAt(at)
	if err != nil {
		t.Fatal(err)
	}
	for says, rise := range map[string]quantity.Percent{
		"what you saw: as expected":       band.Likely,
		"later than expected: ":           pct(band.Likely.Points() * 0.5),
		"earlier than expected: ":         pct(band.Likely.Points() * 1.6),
		"is far from what the dough was ": pct(250),
	} {
		p, err := e.Update(ferment.RiseReading{At: quantity.Elapsed(at), Rise: rise})
		if err != nil {
			t.Fatal(err)
		}
		page := p.Report()
		tells(t, told(page, "ready")+told(page, "know"), says)
		tells(t, fmt.Sprint(page.RestsOn), "1 reading of this dough")
		for _, f := range workcheck.Faults(p.Working()) {
			t.Error(f)
		}
		// Kept and read again it says the same.
		var again ferment.Estimate
		text, err := json.Marshal(p.Now)
		if err == nil {
			err = json.Unmarshal(text, &again)
		}
		if err != nil || again.Ready() != p.Now.Ready() {
			t.Errorf("%v came back as %v, %v", p.Now.Ready(), again.Ready(), err)
		}
	}
}

// How much seed or yeast makes a preferment ripe at a time is what the preferment that has so much says; and an answer
// that was kept comes back.
func TestRipenessInverted(t *testing.T) {
	in := ferment.Ripening{Seed: pct(20), Hydration: pct(100), History: ferment.Constant(quantity.Celsius(24)),
		Law: ferment.GasBalance()}
	r, err := in.Ripe()
	if err != nil {
		t.Fatal(err)
	}
	seed, ok, err := in.SeedFor(r.Peak.Likely)
	if err != nil || !ok || seed.Points() < 19.99 || seed.Points() > 20.01 {
		t.Errorf("%v of seed, %v, %v; it was 20 %%", seed, ok, err)
	}
	poolish := in
	poolish.Seed, poolish.Yeast = quantity.Percent{}, ferment.Yeast{Kind: ferment.FreshYeast, Amount: pct(0.2)}
	p, err := poolish.Ripe()
	if err != nil {
		t.Fatal(err)
	}
	yeast, ok, err := poolish.YeastFor(p.Peak.Likely)
	if err != nil || !ok || yeast.Kind != ferment.FreshYeast || yeast.Amount.Points() < 0.1999 ||
		yeast.Amount.Points() > 0.2001 {
		t.Errorf("%v, %v, %v; it was 0.2 %%", yeast, ok, err)
	}
	poolish.Yeast = ferment.Yeast{}
	if yeast, ok, err = poolish.YeastFor(p.Peak.Likely); err != nil || !ok || yeast.Kind != ferment.InstantYeast {
		t.Errorf("%v, %v, %v; nothing else asked for is instant yeast", yeast, ok, err)
	}
	for _, ready := range []time.Duration{15 * time.Minute, 29 * 24 * time.Hour} {
		if seed, ok, err := in.SeedFor(ready); err != nil || ok {
			t.Errorf("%v of seed for %v: %v, %v", seed, ready, ok, err)
		}
	}
	for _, r := range []ferment.Ripeness{r, p} {
		var again ferment.Ripeness
		text, err := json.Marshal(r)
		if err == nil {
			err = json.Unmarshal(text, &again)
		}
		if err != nil || again.From != r.From || again.Peak != r.Peak || again.Until != r.Until {
			t.Errorf("%v came back as %v, %v", r, again, err)
		}
	}
	var none ferment.Ripeness
	if text, err := json.Marshal(none); err != nil || string(text) != "null" || json.Unmarshal(text, &none) != nil {
		t.Errorf("%s, %v", text, err)
	}
	if err := json.Unmarshal([]byte(`{"of":{"seed":"20 %","history":{}}}`), &none); err == nil {
		t.Error("a preferment without a law comes back")
	}
}

// The page of shaping says at which rise, or that it is too late for any.
func TestThePageOfShaping(t *testing.T) {
	b := good()
	b.History = ferment.Constant(quantity.Celsius(24))
	cold := ferment.Piece{Mass: quantity.Grams(900), Form: ferment.Round, Into: ferment.Room{Night: quantity.Celsius(4)},
		Exposure: ferment.Refrigerator, For: quantity.Elapsed(10 * time.Hour)}
	shaped, err := ferment.Proof{Bulk: b, Bench: quantity.Elapsed(30 * time.Minute), Stages: []ferment.Piece{cold},
		Total: pct(80)}.RiseBeforeShaping()
	if err != nil || !shaped.Feasible {
		t.Fatal(shaped, err)
	}
	tells(t, told(shaped.Report(), "ready"), "shape when it has risen by ", "brings it to about 80 %")
	late := cold
	late.Into, late.For = ferment.Room{Night: quantity.Celsius(26)}, quantity.Elapsed(20*time.Hour)
	never, err := ferment.Proof{Bulk: b, Stages: []ferment.Piece{late}, Total: pct(40)}.RiseBeforeShaping()
	if err != nil || never.Feasible {
		t.Fatal(never, err)
	}
	tells(t, told(never.Report(), "ready"), "do not wait: even shaped at once", "not shape when")
	for _, s := range []ferment.ShapeTarget{shaped, never} {
		codes := map[string]int{}
		for _, c := range s.Report().Cautions {
			codes[c.Code()]++
		}
		for code, n := range codes {
			if n > 1 {
				t.Errorf("%s stands %d times", code, n)
			}
		}
	}
	if page := (ferment.ShapeTarget{}).Report(); len(page.Sections) != 0 {
		t.Error(page.Text(report.Options{}))
	}
}

// Every named curve is told by its own arithmetic, in each of its pieces.
func TestCurvesAreToldInEachPiece(t *testing.T) {
	for _, celsius := range []float64{2, 9, 12, 18, 24, 28.5, 33, 35.5} {
		table := ferment.CurveTable{Curves: ferment.Curves(), Temperatures: []quantity.Temperature{quantity.Celsius(celsius)}}
		r, err := table.Rates()
		if err != nil {
			t.Fatal(err)
		}
		w := r.Working()
		for _, f := range workcheck.Faults(w) {
			t.Errorf("at %v °C: %s", celsius, f)
		}
	}
}

// A dough with more cells than it can feed, one that is never ready, one beyond the ends of the curves, one with other
// curves and one whose gas is followed along a history are derived as they are answered.
func TestFarDoughsAreDerived(t *testing.T) {
	full, never, hot, other := good(), good(), good(), good()
	full.Inoculation, full.Yeast = quantity.Percent{}, ferment.Yeast{Kind: ferment.FreshYeast, Amount: pct(9)}
	full.History, full.Rise = ferment.Constant(quantity.Celsius(12)), pct(200) // slow, so that a minute tells
	never.History, never.Inoculation, never.Rise = ferment.Constant(quantity.Celsius(1)), pct(1), pct(250)
	hot.History = ferment.Constant(quantity.Celsius(36.5))
	hot.Extrapolate = true
	other.Law = ferment.GasBalance().With(ferment.Rivals{Yeast: ferment.SaccharomycesCardinal(),
		Gas: ferment.GanzleYeastHeld()})
	never2 := never
	var err error
	if never2.History, err = (ferment.Relaxing{Start: quantity.Celsius(20),
		Room: ferment.Room{Night: quantity.Celsius(1)}}).History(); err != nil {
		t.Fatal(err)
	}
	for name, b := range map[string]ferment.Bulk{"full": full, "never": never, "never, cooling": never2, "hot": hot,
		"other curves": other} {
		e := estimate(t, b)
		if reached := e.Reached(); reached == (name == "never" || name == "never, cooling") {
			t.Errorf("%s: reached %v", name, reached)
		}
		for _, f := range workcheck.Faults(e.Working()) {
			t.Errorf("%s: %s", name, f)
		}
	}
}

// The numbers of a growth curve and of a preferment end where they say.
func TestLimitsOfGrowthAndPreferments(t *testing.T) {
	for name, c := range map[string]struct {
		of ferment.Baranyi
		ok bool
	}{
		"lowest start":  {ferment.Baranyi{Start: -50, Max: 8, Work: 2}, true},
		"below it":      {ferment.Baranyi{Start: -50.5, Max: 8, Work: 2}, false},
		"highest end":   {ferment.Baranyi{Start: 3, Max: 100, Work: 2}, true},
		"above it":      {ferment.Baranyi{Start: 3, Max: 100.5, Work: 2}, false},
		"most work":     {ferment.Baranyi{Start: 3, Max: 8, Work: 100}, true},
		"more work":     {ferment.Baranyi{Start: 3, Max: 8, Work: 100.5}, false},
		"less than no":  {ferment.Baranyi{Start: 3, Max: 8, Work: -0.5}, false},
		"no room":       {ferment.Baranyi{Start: 8, Max: 8, Work: 2}, false},
		"not a number":  {ferment.Baranyi{Start: math.NaN(), Max: 8, Work: 2}, false},
		"no lag at all": {ferment.Baranyi{Start: 3, Max: 8}, true},
	} {
		if _, err := c.of.After(1); (err == nil) != c.ok {
			t.Errorf("%s: %v", name, err)
		}
	}
	b := good()
	b.Preferments = []ferment.HandedOn{{Flour: pct(20), Ripened: quantity.Elapsed(12 * time.Hour), Of: ferment.Ripening{
		Yeast: ferment.Yeast{Kind: ferment.FreshYeast, Amount: pct(0.2)}, Hydration: pct(100),
		History: ferment.Constant(quantity.Celsius(20))}}}
	estimate(t, b)
	for _, ripened := range []time.Duration{-time.Minute, 30*24*time.Hour + time.Minute} {
		b.Preferments[0].Ripened = quantity.Elapsed(ripened)
		_, err := b.Estimate()
		refuses(t, err, quantity.ErrOutOfRange, "Preferments[0].Ripened")
	}
}
