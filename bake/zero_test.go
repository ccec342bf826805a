package bake

import (
	"encoding/json"
	"math"
	"strings"
	"testing"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
)

// Zero answers, which the library never made, print, tell and derive themselves without panics and without numbers
// that are none.
func TestZeroAnswersAreHarmless(t *testing.T) {
	type answer interface {
		String() string
		Report() report.Report
	}
	for _, z := range []answer{
		LoafVerdict{}, Left{}, CoolingTime{}, CoolingLeft{}, Program{}, BakeTime{}, Arrival{}, Boiling{}, CoreTarget{},
		StyleGuide{}, LossGuide{}, Scaling{},
		LearnedLoss{}, WeightLoss{}, AverageWeight{}, SolidsLoss{}, OvenDial{}, CarryOver{}, Atmosphere{}, BakedOut{},
		CrustColor{}, Staleness{},
	} {
		text := z.Report().Text(report.Options{Width: 80})
		if w, ok := z.(interface{ Working() working.Working }); ok {
			text += w.Working().
				Text(80) +
				working.Telling{
					Reader: working.Reader{Units: working.USCustomary},
				}.Text(w.Working())
		}
		b, err := json.Marshal(z)
		if err != nil || string(b) == "{}" {
			t.Errorf("%T: %s, %v", z, b, err)
		}
		for _, bad := range []string{"NaN", "Inf", "%!"} {
			if strings.Contains(text, bad) {
				t.Errorf("%T says %s: %s", z, bad, text)
			}
		}
	}
}

// A hearth loaf of which the probe's readings count from any moment bakes out by the time since it went in, not by the
// time since the first reading.
func TestBakeOutCountsFromTheOven(t *testing.T) {
	since := Probe{Samples: readings(26, 72, 32, 80)}
	byClock := Probe{Samples: readings(0, 72, 6, 80), InOven: within(32)}
	unknown := Probe{Samples: readings(0, 72, 6, 80), EntryUnknown: true}
	a, err1 := since.TimeLeft()
	b, err2 := byClock.TimeLeft()
	c, err3 := unknown.TimeLeft()
	if err1 != nil || err2 != nil || err3 != nil {
		t.Fatal(err1, err2, err3)
	}
	if a.ToOut != b.ToOut || a.ToTarget != b.ToTarget {
		t.Errorf("from the oven %v, by the clock %v", a.ToOut, b.ToOut)
	}
	if want := c.ToTarget.Likely + rowOf(LeanHearth).done.hold; c.ToOut.Likely != want {
		t.Errorf("entry unknown: %v, want a usual hold, %v", c.ToOut.Likely, want)
	}
	if _, err := (Probe{Samples: readings(0, 72, 6, 80), InOven: within(3)}).TimeLeft(); err == nil {
		t.Error("less time in the oven than between the readings accepted")
	}
	if _, err := (Probe{Samples: readings(0, 72, 6, 80), InOven: within(30), EntryUnknown: true}).TimeLeft(); err == nil {
		t.Error("an unknown entry with a time accepted")
	}
	// A core that was at its target before the last reading has held it since.
	held, err := Probe{Samples: readings(30, 90, 36, 96.2, 46, 97.8)}.TimeLeft()
	later, err2 := Probe{Samples: readings(30, 90, 36, 96.2, 56, 97.9)}.TimeLeft()
	if err != nil || err2 != nil || held.State != Reached ||
		later.ToOut.Late != max(0, held.ToOut.Late-within(10).Duration()) {
		t.Errorf("held: %v (%v), ten minutes later %v (%v)", held, err, later, err2)
	}
}

// The baker's setting stays when the lid comes off; the style's own fall is taken only where no setting is given.
func TestSettingsAreTheBakers(t *testing.T) {
	for _, c := range []struct {
		in   OvenLoad
		then float64
	}{
		{OvenLoad{Oven: quantity.Fahrenheit(450)}, 232.2222222},
		{OvenLoad{Oven: quantity.Celsius(250), Then: quantity.Celsius(215)}, 215},
		{OvenLoad{}, 220},
	} {
		c.in.Dough, c.in.Pieces, c.in.Vessel = quantity.Grams(900), 1, Pot
		p, err := c.in.Program()
		if err != nil || !(math.Abs(p.Then.Celsius()-c.then) <= 1e-3) {
			t.Errorf("%+v: then %v, %v", c.in, p.Then, err)
		}
		if last := p.Phases[len(p.Phases)-1]; last.Oven != p.Then || last.Kind != Uncovered {
			t.Errorf("last phase %v", last)
		}
	}
	// What a program takes adds up by hand: 45 min of preheating, two rounds of 22 and 30, 10 between them.
	p, err := OvenLoad{
		Dough:     quantity.Grams(900),
		Pieces:    3,
		Together:  2,
		Vessel:    Pot,
		Covered:   within(22),
		Uncovered: within(30),
	}.Program()
	if err != nil || p.Total.Likely.Minutes() != 45+2*52+10 || p.Rounds != 2 || p.Uncovered.Early.Minutes() < 23.7 ||
		p.Uncovered.Early.Minutes() > 23.8 {
		t.Errorf("%v (early %v), %v", p.Total, p.Uncovered.Early, err)
	}
}

// The tolerable negative errors of the directive, band by band, as its table has them.
// Source: Directive 76/211/EEC, annex I, 2.4 (from memory).
func TestToleranceBands(t *testing.T) {
	for nominal, want := range map[float64]float64{5: 0.5, 20: 1.8, 40: 3.6, 50: 4.5, 75: 4.5, 100: 4.5, 150: 6.8,
		200: 9, 250: 9, 300: 9, 400: 12, 500: 15, 750: 15, 1000: 15, 2000: 30, 10000: 150} {
		a, err := PackedWeight{Nominal: quantity.Grams(nominal)}.Limits()
		if err != nil || a.Tolerance != quantity.Grams(want) || a.Few != quantity.Grams(nominal-want) ||
			a.None != quantity.Grams(nominal-2*want) {
			t.Errorf("%g g: %v, %v; want a tolerance of %g g", nominal, a, err, want)
		}
	}
}

// Above about 4,000 m the crumb may not set, and the answer says so; below it does not.
func TestMayNotSet(t *testing.T) {
	for altitude, want := range map[float64]bool{0: false, 1150: false, 3800: false, 4100: true, 5500: true} {
		target, err := Goal{Place: At(quantity.Meters(altitude))}.Target()
		if err != nil || target.MayNotSet != want {
			t.Errorf("%g m: %v, %v", altitude, target, err)
		}
		v, err := LoafReading{
			Goal:  Goal{Place: At(quantity.Meters(altitude))},
			Core:  target.Core,
			Dough: quantity.Grams(900),
			Loaf:  quantity.Grams(780),
		}.Judge()
		if err != nil || v.State != Done || v.MayNotSet != want {
			t.Errorf("%g m: %v, %v", altitude, v, err)
		}
	}
}
