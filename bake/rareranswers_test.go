package bake

import (
	"encoding/json"
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strings"
	"testing"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/internal/trial"
)

// readingsFrom are readings a few minutes apart, from the first minute on.
func readingsFrom(first, apart float64, cores ...float64) []Sample {
	var out []Sample
	for i, c := range cores {
		out = append(out, Sample{within(first + apart*float64(i)), quantity.Celsius(c)})
	}
	return out
}

// rarerAnswers are answers of the kinds that come seldom: scattered readings, readings too early to count, goals that
// are reached or out of reach, every shape, and the ends of the tables.
func rarerAnswers() map[string]trial.Told {
	c, g, pct := quantity.Celsius, quantity.Grams, quantity.NewPercent
	lean, hall := Goal{}, At(quantity.Meters(1150))
	out := map[string]trial.Told{
		"scattered": trial.Must(
			Probe{Goal: lean, Samples: readingsFrom(20, 3, 70, 74.6, 75, 80.3, 80.9)}.TimeLeft()),
		"three, in a line": trial.Must(Probe{Goal: lean, Samples: readingsFrom(20, 4, 70, 76, 81)}.TimeLeft()),
		"one too early":    trial.Must(Probe{Goal: lean, Samples: readingsFrom(18, 5, 50, 63, 73, 81)}.TimeLeft()),
		"early ones too": trial.Must(Probe{Goal: lean, Extrapolate: true, Window: within(60),
			Samples: readingsFrom(15, 5, 42, 54, 65, 74)}.TimeLeft()),
		"by exponential, scattered": trial.Must(Probe{Goal: lean, Approach: Exponential,
			Samples: readingsFrom(20, 3, 70, 74.6, 75, 80.3, 80.9)}.TimeLeft()),
		"reached": trial.Must(Probe{Goal: Goal{Style: SoftRoll}, Samples: readingsFrom(10, 3, 80, 88, 92.4),
			InOven: within(20)}.TimeLeft()),
		"near boiling": trial.Must(Probe{Goal: lean, Samples: readingsFrom(30, 4, 90, 96, 99.2)}.TimeLeft()),
		"vague":        trial.Must(Probe{Goal: lean, Samples: readingsFrom(30, 4, 70, 70.2)}.TimeLeft()),
		"out of reach": trial.Must(
			Probe{Goal: Goal{Wanted: c(98), Place: hall}, Samples: readingsFrom(30, 5, 78, 86)}.TimeLeft()),
		"rye": trial.Must(
			Probe{Goal: Goal{Style: Rye}, Samples: readingsFrom(35, 5, 80, 88), InOven: within(40)}.TimeLeft()),
		"with an error of the probe": trial.Must(Probe{Goal: lean, Error: quantity.DeltaCelsius(2),
			Samples: readingsFrom(20, 6, 70, 80)}.TimeLeft()),
		"cooling, scattered": trial.Must(
			CoolingProbe{Room: c(20), Samples: readingsFrom(20, 10, 80, 69, 64, 54, 49)}.TimeLeft()),
		"cooling, in a line": trial.Must(CoolingProbe{Room: c(20), Samples: readingsFrom(20, 15, 80, 64, 52.3)}.TimeLeft()),
		"cooling, reached":   trial.Must(CoolingProbe{Room: c(20), Samples: readingsFrom(20, 30, 60, 34)}.TimeLeft()),
		"cooling, in a room of no name": trial.Must(CoolingProbe{Samples: readingsFrom(20, 30, 80, 60),
			Error: quantity.DeltaCelsius(2)}.TimeLeft()),
		"cooling at once": trial.Must(
			CoolingLoaf{Style: LeanHearth, Baked: g(780), From: c(46), Slice: c(44), Room: c(22)}.Time()),
		"cooling a warm style": trial.Must(CoolingLoaf{Style: SoftRoll, Baked: g(70), From: c(90), Room: c(22)}.Time()),
		"cooling in a warm room": trial.Must(
			CoolingLoaf{Style: LeanHearth, Baked: g(780), From: c(94), Room: c(33)}.Time()),
		"cooling that loses much": trial.Must(
			CoolingLoaf{Style: LeanHearth, Baked: g(780), From: c(94), Room: c(22), Loses: pct(6)}.Time()),
		"carry-over from 60":      trial.Must(TakenOut{Core: c(60)}.CarryOver()),
		"carry-over near boiling": trial.Must(TakenOut{Core: c(99.5)}.CarryOver()),
		"by a station":            trial.Must(Goal{Place: Site{Station: Hectopascals(850)}}.Target()),
		"by the weather": trial.Must(
			Goal{Place: Site{Altitude: quantity.Meters(1150), SeaLevel: Hectopascals(990)}}.Target()),
		"in the freezer": trial.Must(
			StoredLoaf{Style: LeanHearth, Stays: []Stay{{within(600), c(20)}, {within(6000), c(-12)},
				{within(6000), c(-40)}, {within(90), c(32)}}}.Staling()),
		"at the colds of a table": trial.Must(
			StoredLoaf{Style: Rye, Stays: []Stay{{within(600), c(-1)}, {within(600), c(10)}}}.Staling()),
		"two loaves weighed":      trial.Must(LossLog{Loaves: []WeighedLoaf{{g(886), g(771)}, {g(884), g(782)}}}.Learn()),
		"one loaf weighed":        trial.Must(LossLog{Style: Rye, Loaves: []WeighedLoaf{{g(886), g(771)}}}.Learn()),
		"a loaf that may be left": trial.Must(LoafReading{Core: c(94.45), Dough: g(897), Loaf: g(830)}.Judge()),
		"a core that just counts": trial.Must(LoafReading{Goal: Goal{Style: Enriched}, Core: c(87.96)}.Judge()),
		"a light loaf":            trial.Must(LoafReading{Core: c(96), Dough: g(897), Loaf: g(690)}.Judge()),
		"held long enough":        trial.Must(LoafReading{Core: c(98.4), Held: within(25), InOven: within(60)}.Judge()),
		"color of nothing dry":    trial.Must(DryCrust{Surface: readingsFrom(0, 10, 90, 100)}.Color()),
		"color of much":           trial.Must(DryCrust{Surface: readingsFrom(0, 10, 100, 240, 250), Browning: 1.3}.Color()),
		"rounds without a lid": trial.Must(
			OvenLoad{Dough: g(600), Pieces: 5, Together: 2, Covered: within(1)}.Program()),
		"in one round": trial.Must(OvenLoad{Style: Focaccia, Dough: g(900), Pieces: 1, Oven: c(230)}.Program()),
		"covered and turned": trial.Must(
			OvenLoad{Dough: g(900), Pieces: 2, Vessel: Pot, Covered: within(20), Then: c(220),
				Reheat: within(15)}.Program()),
		"loss of the lightest":  trial.Must(LeanHearth.UsualLoss(g(20))),
		"loss of the heaviest":  trial.Must(Rye.UsualLoss(g(5000))),
		"loss of a small bread": trial.Must(SoftRoll.LossOfBread(g(45))),
		"limits of 300 g":       trial.Must(PackedWeight{Nominal: g(300)}.Limits()),
		"limits of 1001 g":      trial.Must(PackedWeight{Nominal: g(1001)}.Limits()),
	}
	for _, shape := range quantity.Values[Shape]() {
		if a, err := (UnprobedLoaf{Shape: shape, Dough: g(500), Start: c(24)}).Arrival(); err == nil {
			out["arrival, "+shape.String()] = a
		}
		if a, err := (CoolingLoaf{Shape: shape, Baked: g(500), From: c(94), Room: c(22)}).Time(); err == nil {
			out["cooling, "+shape.String()] = a
		}
	}
	return out
}

// fine are the digits behind the third of a fraction: the last of them differ from machine to machine.
var fine = regexp.MustCompile(`(\.\d{3})\d+`)

// The answers that come seldom, each as a page and as data, as they are told today.
func TestRarerAnswers(t *testing.T) {
	all := rarerAnswers()
	var b strings.Builder
	for _, name := range slices.Sorted(maps.Keys(all)) {
		data, err := json.Marshal(all[name])
		if err != nil {
			t.Errorf("%s: %v", name, err)
		}
		fmt.Fprintf(&b, "== %s\n%s%s\n\n", name, all[name].Report().Text(report.Options{Width: 100}),
			fine.ReplaceAllString(string(data), "$1"))
	}
	trial.Kept(t, "rarer.txt", b.String())
}

// A reading of the core that came too early is counted as one, and so is each that is used.
func TestEarlyReadingsAreCounted(t *testing.T) {
	for _, c := range []struct {
		cores       []float64
		early, used int
	}{
		{[]float64{63, 73, 81}, 0, 3}, {[]float64{50, 63, 73, 81}, 1, 3}, {[]float64{40, 50, 63, 73}, 2, 2},
		{[]float64{54.9, 63, 73}, 1, 2}, {[]float64{55.1, 63, 73}, 0, 3},
	} {
		left, err := Probe{Window: within(60), Samples: readingsFrom(10, 5, c.cores...)}.TimeLeft()
		if err != nil || left.Early != c.early || left.Used != c.used {
			t.Errorf("%v: %d early, %d used, want %d and %d; %v", c.cores, left.Early, left.Used, c.early, c.used, err)
		}
	}
}

// Readings before the window do not count, one at its very beginning does.
func TestReadingsWithinTheWindow(t *testing.T) {
	samples := readingsFrom(10, 5, 60, 68, 75, 81)
	for window, used := range map[float64]int{5: 2, 9.9: 2, 10: 3, 14.9: 3, 15: 4, 60: 4} {
		left, err := Probe{Window: within(window), Samples: samples}.TimeLeft()
		if err != nil || left.Used != used {
			t.Errorf("%v min: %d are used, want %d; %v", window, left.Used, used, err)
		}
	}
}
