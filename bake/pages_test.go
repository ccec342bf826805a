package bake

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
)

// page is the text of an answer's page, spaces in a row made one.
func page(r report.Report) string {
	return strings.Join(strings.Fields(r.Text(report.Options{Width: 400})), " ")
}

// says reports an error unless the text has each of the parts, and lacks those that begin with "not ".
func says(t *testing.T, name, text string, parts ...string) {
	t.Helper()
	for _, part := range parts {
		part, absent := strings.CutPrefix(part, "NOT ")
		if strings.Contains(text, part) == absent {
			t.Errorf("%s: %q in %q: want %v", name, part, text, !absent)
		}
	}
}

// The page of a verdict gives each criterion its own word: the core, the weight, the time held. At sea level the target
// of a hearth loaf is 96 °C, 10 % lighter than its dough.
func TestThePageOfAVerdict(t *testing.T) {
	minutes := func(n int) quantity.Elapsed { return quantity.Elapsed(time.Duration(n) * time.Minute) }
	reading := func(style Style, celsius, lost float64, held, in int) LoafReading {
		r := LoafReading{Goal: Goal{Style: style}, Held: minutes(held), InOven: minutes(in)}
		if celsius > 0 {
			r.Core = quantity.Celsius(celsius)
		}
		if lost > 0 {
			r.Dough, r.Loaf = quantity.Grams(1000), quantity.Grams(1000-10*lost)
		}
		return r
	}
	for name, c := range map[string]struct {
		reading LoafReading
		says    []string
	}{
		"short": {reading(LeanHearth, 80, 0, 0, 0), []string{"core 80.0 °C; short of 96.0 °C",
			"weight not weighed", "yours to judge", "What done means here: lean hearth", "water boils here at 100.0 °C",
			"as long again as the core took"}},
		"accepted": {reading(LeanHearth, 94, 0, 0, 0), []string{"short of 96.0 °C; some take it out from here"}},
		"there": {reading(LeanHearth, 96.5, 11, 0, 0),
			[]string{"core 96.5 °C; there", "11.0 % lighter: baked out", "NOT so close"}},
		"flat":       {reading(LeanHearth, 98.9, 12, 0, 0), []string{"there, but so close to boiling that it tells no more"}},
		"heavy":      {reading(LeanHearth, 96.5, 7, 2, 0), []string{"7.0 % lighter; 10 % wanted"}},
		"light":      {reading(LeanHearth, 98.9, 24, 0, 0), []string{"24.0 % lighter: drier than usual"}},
		"held":       {reading(Rye, 98.2, 0, 10, 28), []string{"time held 10m: long enough"}},
		"held short": {reading(Rye, 98.2, 0, 8, 28), []string{"time held 2m more at the target would"}},
		"usual time": {reading(LeanHearth, 96.5, 0, 10, 45), []string{"more at the target would prove it without a scale"}},
		"par-baked": {reading(ParBaked, 91, 0, 0, 0), []string{"weight no criterion for this bread",
			"time held no criterion", "NOT and baked out"}},
		"thin": {reading(Pizza, 0, 0, 0, 7), []string{"usual time", "in the oven for 7m",
			"1 to 2 minutes in an oven of 450 °C",
			"NOT What done means"}},
		"thin, just in": {reading(Pizza, 0, 0, 0, 0), []string{"usual time", "NOT in the oven for"}},
	} {
		v, err := c.reading.Judge()
		if err != nil {
			t.Fatal(name, err)
		}
		says(t, name, page(v.Report()), c.says...)
	}
}

// The page of a setting says why it is set so, and what other scales make of it: 200 °C less 20 for a fan is 180 °C,
// 356 °F, nearest to gas mark 4, which is 350 °F or 177 °C.
func TestThePageOfASetting(t *testing.T) {
	for name, c := range map[string]struct {
		in   OvenSetting
		says []string
	}{
		"plain": {OvenSetting{Wanted: quantity.Celsius(200)}, []string{"set 200 °C", "200 °C, 400 °F", "gas mark 6",
			"which is 204 °C", "thermostats are off by 10 Δ°C to 30 Δ°C", "NOT advice on fan", "NOT hotter than ovens",
			"NOT runs"}},
		"fan": {OvenSetting{Wanted: quantity.Celsius(200), Fan: true}, []string{"set 180 °C; for 200 °C, with a fan",
			"180 °C, 350 °F", "gas mark 4", "which is 177 °C, 175 °C on dials",
			"advice on fan ovens differs: 170 °C to 185 °C"}},
		"fan and hot": {OvenSetting{Wanted: quantity.Celsius(200), Fan: true, Off: quantity.DeltaCelsius(10)},
			[]string{"set 170 °C", "with a fan and an oven that is +10 Δ°C off", "NOT thermostats"}},
		"hot": {OvenSetting{Wanted: quantity.Celsius(200), Off: quantity.DeltaCelsius(10)},
			[]string{"set 190 °C; for 200 °C, in an oven that runs 10 Δ°C hot"}},
		"cold": {OvenSetting{Wanted: quantity.Celsius(200), Off: quantity.DeltaCelsius(-10)},
			[]string{"set 210 °C; for 200 °C, in an oven that runs 10 Δ°C cold"}},
		"mistaken": {OvenSetting{Wanted: quantity.Celsius(450)}, []string{"no mark comes near",
			"hotter than ovens for bread: 450 °F would be 232 °C"}},
		"at 300": {OvenSetting{Wanted: quantity.Celsius(300)}, []string{"NOT hotter than ovens"}},
	} {
		d, err := c.in.Dial()
		if err != nil {
			t.Fatal(name, err)
		}
		says(t, name, page(d.Report()), c.says...)
	}
}

// The page of a program counts from switching on: rounds are numbered where there are several.
func TestThePageOfAProgram(t *testing.T) {
	load := OvenLoad{Style: LeanHearth, Dough: quantity.Grams(886), Pieces: 5, Vessel: Pot, Together: 2,
		Oven: quantity.Celsius(240), Covered: quantity.Elapsed(20 * time.Minute),
		Uncovered: quantity.Elapsed(22 * time.Minute)}
	p, err := load.Program()
	if err != nil {
		t.Fatal(err)
	}
	first := quantity.Elapsed(p.Preheat.Duration().Round(time.Minute)).String()
	says(t, "three rounds", page(p.Report()), "3 rounds of 2, from switching on",
		first+" load, round 1",
		"load, round 3", "NOT preheat, round", "240 °C", "each bake 37m to 47m (80 %), likely 42m",
		"in all "+p.Total.String(),
		"go by the core and the color")
	load.Pieces, load.Together = 2, 2
	if p, err = load.Program(); err != nil {
		t.Fatal(err)
	}
	says(t, "one round", page(p.Report()), "1 round of 2", "NOT round 1:", "NOT , round")
	flat := OvenLoad{Style: Pizza, Dough: quantity.Grams(260), Pieces: 4, Together: 1, Oven: quantity.Celsius(275)}
	if p, err = flat.Program(); err != nil {
		t.Fatal(err)
	}
	says(t, "thin", page(p.Report()), "4 rounds of 1", "go by the color, not by the clock")
}

// The page of "how long still" tells its range by the clock where the clock is known, and what would be if the loaf
// came out now; near boiling it no longer does.
func TestThePageOfTheTimeLeft(t *testing.T) {
	now := time.Date(2026, 11, 28, 9, 30, 0, 0, time.UTC)
	probe := Probe{Goal: Goal{Style: LeanHearth}, Samples: readings(16, 60, 20, 70, 25, 80), Now: now}
	l, err := probe.TimeLeft()
	if err != nil || l.State != Rising {
		t.Fatalf("%v, %v", l, err)
	}
	clock := func(r quantity.TimeRange) string {
		at := func(d time.Duration) string { return now.Add(d.Round(time.Minute)).Format("15:04") }
		return fmt.Sprintf("by the clock %s to %s, likely %s", at(r.Early), at(r.Late), at(r.Likely))
	}
	says(t, "rising", page(l.Report()), "to the target "+l.ToTarget.String(), clock(l.ToTarget),
		"until baked out "+l.ToOut.String(), clock(l.ToOut), "If it came out now", "3 readings",
		"water boils here at 100.0 °C",
		"bakes out in about as long again", "color of the crust is yours", "NOT plain law", "NOT not known")
	probe.EntryUnknown, probe.Now = true, time.Time{}
	probe.Approach = Exponential
	if l, err = probe.TimeLeft(); err != nil {
		t.Fatal(err)
	}
	says(t, "entry unknown", page(l.Report()), "when the loaf went in is not known", "NOT by the clock",
		"NOT as long again", "this is the plain law, and it runs late")
	near := Probe{Goal: Goal{Style: LeanHearth}, Samples: readings(40, 98.8, 45, 99.2)}
	if l, err = near.TimeLeft(); err != nil || l.State != NearBoiling {
		t.Fatalf("%v, %v", l, err)
	}
	says(t, "near boiling", page(l.Report()), "the probe says nothing more", "NOT to the target ",
		"NOT If it came out now",
		"until baked out")
}

// A core tells how fast a loaf cools while it is three degrees and more above its room.
func TestCoresNearTheRoom(t *testing.T) {
	for celsius, ok := range map[float64]bool{24: true, 23.9: false} {
		_, err := CoolingProbe{Room: quantity.Celsius(21), Slice: quantity.Celsius(23.5),
			Samples: readings(0, 60, 60, 40, 240, celsius)}.TimeLeft()
		if (err == nil) != ok {
			t.Errorf("%v °C in a room of 21 °C: %v", celsius, err)
		}
	}
}
