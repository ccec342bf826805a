package ferment_test

import (
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/ferment"
	"example.org/maslin/internal/trial"
)

// A field has a name as it is refused by, a question with it, and where it ends.
type field struct {
	name      string
	ask       func(x float64) error
	low, high float64 // infinite: it has no such end of its own
	by        float64 // beyond an end it is refused by this
}

func span(hours float64) quantity.Elapsed {
	return quantity.Elapsed(math.Round(hours*3600)) * quantity.Elapsed(time.Second)
}

// tin is a kilogram of dough in a refrigerator.
func tin(change func(*ferment.Piece)) error {
	p := ferment.Piece{Mass: quantity.Kilograms(1), Form: ferment.SlabOfDough, Start: quantity.Celsius(24),
		Into: ferment.Room{Night: quantity.Celsius(5)}, Exposure: ferment.Refrigerator, For: span(2)}
	change(&p)
	return trial.Err(p.History())
}

func fieldsOfSurroundings() []field {
	c := quantity.Celsius
	room := func(change func(*ferment.Room)) error {
		r := ferment.Room{Night: c(17), Day: c(23)}
		change(&r)
		return trial.Err(r.At(0))
	}
	drift := func(change func(*ferment.Relaxing)) error {
		r := ferment.Relaxing{Start: c(25), Room: ferment.Room{Night: c(20)}}
		change(&r)
		return trial.Err(r.History())
	}
	probe := func(gap float64) error {
		return trial.Err(ferment.Readings{MaxGap: span(gap), Points: []ferment.Knot{{Temperature: c(20)}}}.History())
	}
	return []field{
		{"mass", func(x float64) error { return tin(func(p *ferment.Piece) { p.Mass = quantity.Grams(x) }) }, 10, 1e5,
			0.01},
		{"start", func(x float64) error { return tin(func(p *ferment.Piece) { p.Start = c(x) }) }, -25, 60, 0.01},
		{"height", func(x float64) error { return tin(func(p *ferment.Piece) { p.Height = quantity.Centimeters(x) }) }, 1,
			100, 0.01},
		{"surface", func(x float64) error { return tin(func(p *ferment.Piece) { p.Surface = x }) }, 0.5, 1000, 0.001},
		{"for", func(x float64) error { return tin(func(p *ferment.Piece) { p.For = span(x) }) }, 1, 144, 1.0 / 3600},
		{"into.night", func(x float64) error { return tin(func(p *ferment.Piece) { p.Into.Night = c(x) }) }, -25, 60, 0.01},
		{"night", func(x float64) error { return room(func(r *ferment.Room) { r.Night = c(x) }) }, -25, 60, 0.01},
		{"day", func(x float64) error { return room(func(r *ferment.Room) { r.Day = c(x) }) }, -25, 60, 0.01},
		{"warmest_at", func(x float64) error { return room(func(r *ferment.Room) { r.WarmestAt = span(x) }) }, 0, 24,
			1.0 / 3600},
		{"starts", func(x float64) error { return room(func(r *ferment.Room) { r.Starts = span(x) }) }, 0, 24, 1.0 / 3600},
		{"start", func(x float64) error { return drift(func(r *ferment.Relaxing) { r.Start = c(x) }) }, -25, 60, 0.01},
		{"room.night", func(x float64) error { return drift(func(r *ferment.Relaxing) { r.Room.Night = c(x) }) }, -25, 60,
			0.01},
		{"time_constant", func(x float64) error { return drift(func(r *ferment.Relaxing) { r.TimeConstant = span(x) }) },
			1.0 / 60, 7 * 24, 1.0 / 3600},
		{"max_gap", func(x float64) error { return probe(x) }, 1.0 / 3600, 366 * 24, 2.0 / 3600},
	}
}

func fieldsOfCurves() []field {
	none := math.Inf(1)
	cardinal := func(change func(*ferment.Cardinal)) error {
		m := ferment.Cardinal{Min: 2, Opt: 30, Max: 40, Rate: 0.4}
		change(&m)
		return trial.Err(m.Curve())
	}
	root := func(change func(*ferment.SquareRoot)) error {
		m := ferment.SquareRoot{Min: 2, Max: 40, B: 0.03, C: 0.2}
		change(&m)
		return trial.Err(m.Curve())
	}
	rule := func(change func(*ferment.ConstantQ10)) error {
		m := ferment.ConstantQ10{Q: 2, Rate: 0.3, Reference: 24, Low: 10, High: 40}
		change(&m)
		return trial.Err(m.Curve())
	}
	at := func(x float64) error {
		return trial.Err(ferment.CurveTable{Curves: ferment.Curves(), Temperatures: []quantity.Temperature{
			quantity.Celsius(20), quantity.Celsius(x)}}.Rates())
	}
	return []field{
		{"min", func(x float64) error { return cardinal(func(m *ferment.Cardinal) { m.Min = x }) }, -25, none, 0.01},
		{"max", func(x float64) error { return cardinal(func(m *ferment.Cardinal) { m.Max, m.Opt = x, 59 }) }, -none, 60,
			0.01},
		{"rate", func(x float64) error { return cardinal(func(m *ferment.Cardinal) { m.Rate = x }) }, 1e-6, 10, 1e-9},
		{"min", func(x float64) error { return root(func(m *ferment.SquareRoot) { m.Min, m.Max = x, 60 }) }, -25, none, 0.01},
		{"max", func(x float64) error { return root(func(m *ferment.SquareRoot) { m.Max = x }) }, 2.01, 60, 0.01},
		{"b", func(x float64) error { return root(func(m *ferment.SquareRoot) { m.B = x }) }, 1e-6, 10, 1e-9},
		{"c", func(x float64) error { return root(func(m *ferment.SquareRoot) { m.C = x }) }, 0, 100, 1e-9},
		{"q", func(x float64) error { return rule(func(m *ferment.ConstantQ10) { m.Q = x }) }, 1, 20, 1e-9},
		{"rate", func(x float64) error { return rule(func(m *ferment.ConstantQ10) { m.Rate = x }) }, 1e-6, 10, 1e-9},
		{"reference", func(x float64) error { return rule(func(m *ferment.ConstantQ10) { m.Reference = x }) }, -25, 60, 0.01},
		{"low", func(x float64) error { return rule(func(m *ferment.ConstantQ10) { m.Low = x }) }, -25, none, 0.01},
		{"high", func(x float64) error { return rule(func(m *ferment.ConstantQ10) { m.High = x }) }, 10.01, 60, 0.01},
		{"temperatures[1]", at, -25, 60, 0.01},
	}
}

func fieldsOfReadings(t *testing.T) []field {
	e := estimate(t, good())
	read := func(x ferment.RiseReading) error { return trial.Err(e.Update(x)) }
	stand := func(start, now float64) error {
		return trial.Err(ferment.Heights{Start: quantity.Centimeters(start), Now: quantity.Centimeters(now)}.Rise())
	}
	return []field{
		{"start", func(x float64) error { return stand(x, 8) }, 0.1, 200, 0.0005},
		{"now", func(x float64) error { return stand(8, x) }, 0.1, 200, 0.0005},
		{"readings[0].at", func(x float64) error { return read(ferment.RiseReading{At: span(x), Rise: pct(20)}) }, 1.0 / 3600,
			30 * 24, 2.0 / 3600},
		{"readings[0].rise", func(x float64) error { return read(ferment.RiseReading{At: span(3), Rise: pct(x)}) }, -20, 300,
			0.001},
		{"readings[0].error", func(x float64) error {
			return read(ferment.RiseReading{At: span(3), Rise: pct(20), Error: pct(x)})
		}, 0.1, 50, 0.001},
	}
}

func fieldsOfQuestions(t *testing.T) []field {
	levain := good()
	drift := ferment.Relaxing{Start: quantity.Celsius(25), Room: ferment.Room{Night: quantity.Celsius(22)}}
	fed := ferment.Ripening{Seed: pct(20), Law: ferment.GasBalance(), History: ferment.Constant(quantity.Celsius(24))}
	after := func(x float64) time.Duration { return span(x).Duration() }
	dose := func(x float64) error {
		b := levain
		b.Yeast = ferment.Yeast{Kind: ferment.InstantYeast, Amount: pct(x)}
		return trial.Err(b.Estimate())
	}
	feed := func(change func(*ferment.Ripening)) error {
		f := fed
		f.Extrapolate = true
		change(&f)
		return trial.Err(f.Ripe())
	}
	out := []field{
		{"hydration", func(x float64) error { return feed(func(f *ferment.Ripening) { f.Hydration = pct(x) }) }, 30, 300,
			0.001},
		{"salt", func(x float64) error {
			return feed(func(f *ferment.Ripening) { f.Salt, f.Hydration = pct(x), pct(250) })
		},
			0, 15, 0.001},
		{"sugar", func(x float64) error { return feed(func(f *ferment.Ripening) { f.Sugar = pct(x) }) }, 0, 100, 0.001},
		{"whole_grain", func(x float64) error { return feed(func(f *ferment.Ripening) { f.WholeGrain = pct(x) }) }, 0, 100,
			0.001},
		{"yeast.amount", dose, 0.001, 15, 0.0001},
		{"seed", func(x float64) error { f := fed; f.Seed = pct(x); return trial.Err(f.Ripe()) }, 0.1, 90, 0.001},
		{"seed_hydration", func(x float64) error {
			return trial.Err(ferment.FeedRatio{Seed: 1, Flour: 2, SeedHydration: pct(x)}.SeedShare())
		}, 30, 500, 0.001},
	}
	for _, ask := range []func(x float64) error{
		func(x float64) error { return trial.Err(levain.AmountFor(after(x))) },
		func(x float64) error { return trial.Err(levain.StartFor(after(x), drift)) },
		func(x float64) error { return trial.Err(levain.RoomFor(after(x), drift)) },
		func(x float64) error { return trial.Err(levain.HeldFor(after(x))) },
		func(x float64) error { _, _, err := fed.SeedFor(after(x)); return err },
		func(x float64) error { _, _, err := fed.YeastFor(after(x)); return err },
	} {
		out = append(out, field{"ready", ask, 1.0 / 6, 30 * 24, 1.0 / 3600})
	}
	return out
}

func fieldsOfLogsAndProofs(t *testing.T) []field {
	log := bakeLog(t, 1)
	bake := func(change func(*ferment.LoggedBulk)) error {
		one := log[0]
		change(&one)
		return trial.Err(ferment.Learning{Bakes: []ferment.LoggedBulk{one}}.Learn())
	}
	proof := func(change func(*ferment.Proof)) error {
		p := ferment.Proof{Bulk: good(), Total: pct(80), Stages: []ferment.Piece{{Mass: quantity.Grams(900),
			Into: ferment.Room{Night: quantity.Celsius(4)}, Exposure: ferment.Refrigerator, For: span(10)}}}
		change(&p)
		return trial.Err(p.RiseBeforeShaping())
	}
	return []field{
		{"half_life", func(x float64) error {
			return trial.Err(ferment.Learning{Bakes: log, HalfLife: span(x)}.Learn())
		}, 24, 100 * 365 * 24, 1.0 / 3600},
		{"bakes[0].took", func(x float64) error { return bake(func(k *ferment.LoggedBulk) { k.Took = span(x) }) }, 1.0 / 60,
			30 * 24, 1.0 / 3600},
		{"bakes[0].error", func(x float64) error { return bake(func(k *ferment.LoggedBulk) { k.Error = pct(x) }) }, 0.1, 50,
			0.001},
		{"shape_at", func(x float64) error { return proof(func(p *ferment.Proof) { p.ShapeAt = pct(x) }) }, 1, 300, 0.001},
		{"bench", func(x float64) error { return proof(func(p *ferment.Proof) { p.Bench = span(x) }) }, 0, 24, 1.0 / 3600},
		{"total", func(x float64) error { return proof(func(p *ferment.Proof) { p.Total = pct(x) }) }, 1, 300, 0.001},
		{"stages[0].for", func(x float64) error { return proof(func(p *ferment.Proof) { p.Stages[0].For = span(x) }) },
			1.0 / 60, 30 * 24, 1.0 / 3600},
	}
}

// A number at either of its ends is taken, and just beyond it is refused: by its name, nothing else is refused with it,
// and what is wanted is said.
func TestNumbersAtTheirEnds(t *testing.T) {
	var told strings.Builder
	for _, f := range append(append(append(append(fieldsOfSurroundings(), fieldsOfCurves()...), fieldsOfReadings(t)...),
		fieldsOfQuestions(t)...), fieldsOfLogsAndProofs(t)...) {
		for _, x := range []float64{f.low, f.high} {
			if math.IsInf(x, 0) {
				continue
			}
			if err := f.ask(x); err != nil {
				t.Errorf("%s of %v: %v", f.name, x, err)
			}
		}
		for _, x := range []float64{f.low - f.by, f.high + f.by} {
			if math.IsInf(x, 0) {
				continue
			}
			err := f.ask(x)
			if got := trial.Refused(err); got != f.name+" "+quantity.ErrOutOfRange.Error() {
				t.Errorf("%s of %v: refused are %q", f.name, x, got)
			}
			fmt.Fprintf(&told, "%s of %v\n    %v\n", f.name, x, err)
		}
	}
	trial.Kept(t, "refused.txt", told.String())
}
