package bake

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/trial"
)

// A limited field has the name it is refused by, a question with it, its ends, and by how little it is beyond them.
type limited struct {
	name          string
	ask           func(x float64) error
	low, high, by float64
}

// asked is a question about one field of a usual one.
func asked[T, A any](usual T, set func(*T, float64), answer func(T) (A, error)) func(x float64) error {
	return func(x float64) error {
		q := usual
		set(&q, x)
		return trial.Err(answer(q))
	}
}

func minutesIn(x float64) quantity.Elapsed {
	return quantity.Elapsed(time.Duration(x*60+0.5) * time.Second)
}

func limitedOfTheCore() []limited {
	c, g := quantity.Celsius, quantity.Grams
	reading := LoafReading{Core: c(92), Dough: g(897), Loaf: g(795)}
	probe := func() Probe { return Probe{Samples: []Sample{{minutesIn(20), c(70)}, {minutesIn(26), c(78)}}} }
	left := func(set func(*Probe, float64)) func(float64) error {
		return func(x float64) error {
			p := probe()
			set(&p, x)
			return trial.Err(p.TimeLeft())
		}
	}
	const second = 1.0 / 60
	return []limited{
		{"probe_error", asked(reading, func(r *LoafReading, x float64) { r.ProbeError = quantity.DeltaCelsius(x) },
			LoafReading.Judge), 0, 10, 0.01},
		{"dough", asked(OvenPiece{Extrapolate: true}, func(q *OvenPiece, x float64) { q.Dough = g(x) },
			OvenPiece.BakeTime), 20, 5000, 0.01},
		{"known_dough", asked(OvenPiece{Dough: g(900), KnownTime: minutesIn(40), Extrapolate: true},
			func(q *OvenPiece, x float64) { q.KnownDough = g(x) }, OvenPiece.BakeTime), 20, 5000, 0.01},
		{"known_time", asked(OvenPiece{Dough: g(900), KnownDough: g(800)},
			func(q *OvenPiece, x float64) { q.KnownTime = minutesIn(x) }, OvenPiece.BakeTime), 1, 24 * 60, second},
		{"held", asked(reading, func(r *LoafReading, x float64) { r.Held = minutesIn(x) },
			LoafReading.Judge), -1, 24 * 60,
			second},
		{"in_oven", asked(reading, func(r *LoafReading, x float64) { r.InOven = minutesIn(x) }, LoafReading.Judge), -1,
			24 * 60, second},
		{"error", left(func(p *Probe, x float64) { p.Error = quantity.DeltaCelsius(x) }), 0, 10, 0.01},
		{"window", left(func(p *Probe, x float64) { p.Window = minutesIn(x) }), -1, 24 * 60, second},
		{"in_oven", left(func(p *Probe, x float64) { p.InOven = minutesIn(x) }), 6, 48 * 60, second},
		{"samples[1].at", left(func(p *Probe, x float64) { p.Samples[1].At = minutesIn(x) }), 21, -1, second},
		{"samples[1].at", left(func(p *Probe, x float64) {
			p.Samples[0].At, p.Samples[1].At = minutesIn(x-5), minutesIn(x)
		}), -1, 48 * 60, second},
		{"place.station", asked(Goal{}, func(q *Goal, x float64) { q.Place.Station = Hectopascals(x) },
			Goal.Target), 300, 1100,
			0.1},
		{"core", asked(TakenOut{}, func(q *TakenOut, x float64) { q.Core = c(x) }, TakenOut.CarryOver), 60, -1, 0.01},
		{"dough", asked(UnprobedLoaf{}, func(q *UnprobedLoaf, x float64) { q.Dough = g(x) },
			UnprobedLoaf.Arrival), 20, 5000,
			0.01},
		{"start", asked(UnprobedLoaf{Dough: g(900)}, func(q *UnprobedLoaf, x float64) { q.Start = c(x) },
			UnprobedLoaf.Arrival), -5, 45, 0.01},
	}
}

func limitedOfTheLoaf() []limited {
	c, g, pct := quantity.Celsius, quantity.Grams, quantity.NewPercent
	cooling := CoolingLoaf{Baked: g(780), Room: c(20), Slice: c(35), From: c(94)}
	cooled := func(set func(*CoolingProbe, float64)) func(float64) error {
		return func(x float64) error {
			p := CoolingProbe{Room: c(20), Slice: c(35), Samples: []Sample{{minutesIn(20), c(80)},
				{minutesIn(40), c(60)}}}
			set(&p, x)
			return trial.Err(p.TimeLeft())
		}
	}
	stay := func(set func(*Stay, float64)) func(float64) error {
		return func(x float64) error {
			s := Stay{For: minutesIn(600), At: c(20)}
			set(&s, x)
			return trial.Err(StoredLoaf{Stays: []Stay{s}}.Staling())
		}
	}
	solids := Solids{Water: pct(65)}
	const second = 1.0 / 60
	return []limited{
		{"baked", asked(cooling, func(q *CoolingLoaf, x float64) { q.Baked = g(x) }, CoolingLoaf.Time), 20, 5000, 0.01},
		{"room", asked(cooling, func(q *CoolingLoaf, x float64) { q.Room, q.Slice = c(x), c(50) },
			CoolingLoaf.Time), -25, 40,
			0.01},
		{"from", asked(cooling, func(q *CoolingLoaf, x float64) { q.From = c(x) }, CoolingLoaf.Time), 45, 102, 0.01},
		{"slice", asked(cooling, func(q *CoolingLoaf, x float64) { q.Slice, q.Room = c(x), c(-20) },
			CoolingLoaf.Time), 5, 80,
			0.01},
		{"loses", asked(cooling, func(q *CoolingLoaf, x float64) { q.Loses = pct(x) }, CoolingLoaf.Time), 0, 8, 0.001},
		{"room", cooled(func(p *CoolingProbe, x float64) { p.Room, p.Slice = c(x), c(50) }), -25, 40, 0.01},
		{"slice", cooled(func(p *CoolingProbe, x float64) { p.Slice, p.Room = c(x), c(-20) }), 5, 80, 0.01},
		{"error", cooled(func(p *CoolingProbe, x float64) { p.Error = quantity.DeltaCelsius(x) }), 0, 10, 0.01},
		{"stays[0].for", stay(func(s *Stay, x float64) { s.For = minutesIn(x) }), 1, 366 * 24 * 60, second},
		{"stays[0].at", stay(func(s *Stay, x float64) { s.At = c(x) }), -80, -1, 0.01},
		{"nominal", asked(PackedWeight{}, func(q *PackedWeight, x float64) { q.Nominal = g(x) },
			PackedWeight.Limits), 5, 1e4,
			0.01},
		{"flour_moisture", asked(solids, func(q *Solids, x float64) { q.FlourMoisture = pct(x) },
			Solids.LeastLoss), 5, 20,
			0.001},
		{"water", asked(solids, func(q *Solids, x float64) { q.Water = pct(x) }, Solids.LeastLoss), 30, 150, 0.001},
		{"other_solids", asked(solids, func(q *Solids, x float64) { q.OtherSolids = pct(x) },
			Solids.LeastLoss), 0, 60, 0.001},
		{"least", asked(solids, func(q *Solids, x float64) { q.Least = pct(x) }, Solids.LeastLoss), 30, 95, 0.001},
		{"baked", asked(PromisedLoaf{Loss: pct(12)}, func(q *PromisedLoaf, x float64) { q.Baked = g(x) },
			PromisedLoaf.Scaling), 5, -1, 0.01},
		{"cooling", asked(PromisedLoaf{Loss: pct(12), Baked: g(700)},
			func(q *PromisedLoaf, x float64) { q.Cooling = pct(x) }, PromisedLoaf.Scaling), 0, 10, 0.001},
	}
}

func limitedOfTheOven() []limited {
	c, g := quantity.Celsius, quantity.Grams
	load := OvenLoad{Dough: g(900), Pieces: 2}
	bakeOut := func(set func(*HeatPhase, float64)) func(float64) error {
		return func(x float64) error {
			h := HeatPhase{Oven: c(230), For: minutesIn(40)}
			set(&h, x)
			return trial.Err(OvenBake{Dough: g(900), Phases: []HeatPhase{h}}.BakeOut())
		}
	}
	color := func(set func(*Sample, float64)) func(float64) error {
		return func(x float64) error {
			s := Sample{minutesIn(30), c(170)}
			set(&s, x)
			return trial.Err(DryCrust{Surface: []Sample{{minutesIn(10), c(100)}, s}}.Color())
		}
	}
	const second = 1.0 / 60
	return []limited{
		{"wanted", asked(OvenSetting{}, func(q *OvenSetting, x float64) { q.Wanted = c(x) },
			OvenSetting.Dial), 50, 500, 0.01},
		{"off", asked(OvenSetting{Wanted: c(230)}, func(q *OvenSetting, x float64) { q.Off = quantity.DeltaCelsius(x) },
			OvenSetting.Dial), -60, 60, 0.01},
		{"pieces", asked(load, func(q *OvenLoad, x float64) { q.Pieces = int(x) }, OvenLoad.Program), 1, 1000, 1},
		{"oven", asked(load, func(q *OvenLoad, x float64) { q.Oven = c(x) }, OvenLoad.Program), 120, 500, 0.01},
		{"then", asked(load, func(q *OvenLoad, x float64) { q.Then = c(x) }, OvenLoad.Program), 100, 500, 0.01},
		{"preheat", asked(load, func(q *OvenLoad, x float64) { q.Preheat = minutesIn(x) },
			OvenLoad.Program), -1, 360, second},
		{"reheat", asked(load, func(q *OvenLoad, x float64) { q.Reheat = minutesIn(x) },
			OvenLoad.Program), -1, 120, second},
		{"phases[0].oven", bakeOut(func(h *HeatPhase, x float64) { h.Oven = c(x) }), 120, 350, 0.01},
		{"phases[0].for", bakeOut(func(h *HeatPhase, x float64) { h.For = minutesIn(x) }), second, 24 * 60, second},
		{"surface[1].core", color(func(s *Sample, x float64) { s.Core = c(x) }), 0, 300, 0.01},
		{"surface[1].at", color(func(s *Sample, x float64) { s.At = minutesIn(x) }), -1, 48 * 60, second},
	}
}

// Each number is taken up to its ends, and refused by its own name a hair beyond; where -1 stands, this end belongs to
// something else. What is said then is kept.
func TestNumbersAtTheirEnds(t *testing.T) {
	var told strings.Builder
	for _, f := range append(append(limitedOfTheCore(), limitedOfTheLoaf()...), limitedOfTheOven()...) {
		for i, end := range []float64{f.low, f.high} {
			if end == -1 {
				continue
			}
			if err := f.ask(end); err != nil {
				t.Errorf("%s of %v: %v", f.name, end, err)
			}
			beyond := end + f.by*float64(2*i-1)
			err := f.ask(beyond)
			if len(quantity.InputErrors(err)) == 0 {
				t.Errorf("%s of %v is taken", f.name, beyond)
			}
			fmt.Fprintf(&told, "%s of %v\n    %v\n", f.name, beyond, err)
		}
	}
	trial.Kept(t, "refused.txt", told.String())
}
