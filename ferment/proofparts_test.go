package ferment_test

import (
	"math"
	"slices"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/ferment"
	"example.org/maslin/internal/trial"
)

// loafInto is a loaf that stands in a room for some hours.
func loafInto(room ferment.Room, hours float64) ferment.Piece {
	return ferment.Piece{Mass: quantity.Grams(850), Into: room, Exposure: ferment.Fan, For: span(hours)}
}

// through is a dough's history until it is shaped at a time, then along the bench and through its stages, laid out one
// by one; and for how long.
func through(t rapid.TB, p ferment.Proof, shaped time.Duration) (ferment.History, time.Duration) {
	t.Helper()
	must := func(h ferment.History, err error) ferment.History {
		if err != nil {
			t.Fatal(err)
		}
		return h
	}
	end := shaped + p.Bench.Duration()
	whole := p.Bulk.History
	if end > 0 {
		whole = must(ferment.Join(ferment.Stretch{History: whole, For: quantity.Elapsed(end)},
			ferment.Stretch{History: ferment.Constant(whole.At(end))}))
	}
	for _, s := range p.Stages {
		s.Start = whole.At(end)
		if s.Into.Day.IsValid() {
			s.Into.Starts = (s.Into.Starts + quantity.Elapsed(end)) % quantity.Elapsed(24*time.Hour)
		}
		length := s.For
		s.For = 0
		stage := must(s.History())
		if end > 0 {
			stage = must(ferment.Join(ferment.Stretch{History: whole, For: quantity.Elapsed(end)},
				ferment.Stretch{History: stage}))
		}
		whole, end = stage, end+length.Duration()
	}
	return whole, end
}

// Whatever follows shaping, bench, cold or a room that goes with the hour of the day: along the history that is laid
// out piece by piece the dough comes to the total, the temperatures are those of the answer, shaped at once it would
// rise as far as is said, and a dough shaped at a rise that is given is the dough at that rise.
func TestShapingIsTheDoughAlongItsWay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		drift := ferment.Relaxing{Start: quantity.Celsius(rapid.Float64Range(20, 27).Draw(t, "start")),
			Room: ferment.Room{Night: quantity.Celsius(rapid.Float64Range(18, 25).Draw(t, "room"))}}
		h, err := drift.History()
		if err != nil {
			t.Fatal(err)
		}
		p := ferment.Proof{Bulk: good(), Bench: span(rapid.SampledFrom([]float64{0, 0.25, 1}).Draw(t, "bench")),
			Total: pct(rapid.Float64Range(60, 180).Draw(t, "total"))}
		p.Bulk.History = h
		for range rapid.IntRange(1, 3).Draw(t, "stages") {
			room := ferment.Room{Night: quantity.Celsius(rapid.Float64Range(2, 20).Draw(t, "night")),
				Starts: span(rapid.Float64Range(0, 24).Draw(t, "clock"))}
			if rapid.Bool().Draw(t, "changes") {
				room.Day = room.Night.Add(quantity.DeltaCelsius(6))
			}
			p.Stages = append(p.Stages, loafInto(room, rapid.SampledFrom([]float64{0.2, 1, 3}).Draw(t, "hours")))
		}
		if rapid.Bool().Draw(t, "at a rise") {
			p.ShapeAt = pct(rapid.Float64Range(5, 50).Draw(t, "shape at"))
		}
		got, err := p.RiseBeforeShaping()
		if err != nil {
			t.Fatal(err)
		}
		along := func(shaped time.Duration) (float64, []float64) {
			b := p.Bulk
			whole, end := through(t, p, shaped)
			b.History, b.Rise = whole, p.Total
			band, err := estimate(t, b).RiseAt(end)
			if err != nil {
				t.Fatal(err)
			}
			at := shaped + p.Bench.Duration()
			temperatures := []float64{whole.At(shaped).Celsius(), whole.At(at).Celsius()}
			for _, s := range p.Stages {
				at += s.For.Duration()
				temperatures = append(temperatures, whole.At(at).Celsius())
			}
			return band.Likely.Points(), temperatures
		}
		if unrisen, _ := along(0); !(math.Abs(got.Unrisen.Points()/unrisen-1) <= 0.01) {
			t.Errorf("shaped at once %v, along its way %v %%", got.Unrisen, unrisen)
		}
		if !got.Feasible {
			if got.Shaped != h.At(0) {
				t.Errorf("shaped at once at %v, mixed at %v", got.Shaped, h.At(0))
			}
			return
		}
		b := p.Bulk
		if b.Rise = got.Rise; p.ShapeAt.IsValid() && !p.ShapeAt.IsZero() {
			b.Rise = p.ShapeAt
		}
		shaped := estimate(t, b).Ready().Likely
		if got.Rise != b.Rise || got.Shape.Ready().Likely != shaped {
			t.Errorf("shaped at %v after %v, want %v after %v", got.Rise, got.Shape.Ready().Likely, b.Rise, shaped)
		}
		rise, temperatures := along(shaped)
		if !(math.Abs(got.After.Likely.Points()/rise-1) <= 0.01) {
			t.Errorf("in the oven at %v, along its way %v %%", got.After, rise)
		}
		if p.ShapeAt.IsZero() && !(math.Abs(rise/p.Total.Points()-1) <= 0.01) {
			t.Errorf("the total is %v, it comes to %v %%", p.Total, rise)
		}
		for i, at := range append([]quantity.Temperature{got.Shaped}, got.Then...) {
			if !(math.Abs(at.Celsius()-temperatures[i]) <= 0.08) {
				t.Errorf("temperature %d is %v, along its way %.3f °C", i, at, temperatures[i])
			}
		}
	})
}

// A dough shaped as soon as it is mixed is in as much doubt as one that is never touched: the band of the total is that
// of the estimate along the same history. One that is seen to rise first is in less.
func TestTheBandOfATotal(t *testing.T) {
	p := ferment.Proof{Bulk: good(), Total: pct(75),
		Stages: []ferment.Piece{loafInto(ferment.Room{Night: quantity.Celsius(23)}, 8)}}
	atOnce, err := p.RiseBeforeShaping()
	if err != nil || atOnce.Feasible {
		t.Fatal(atOnce, err)
	}
	band, err := estimate(t, good()).RiseAt(8 * time.Hour)
	if err != nil {
		t.Fatal(err)
	}
	for i, x := range [][2]quantity.Percent{{atOnce.After.Low, band.Low}, {atOnce.After.Likely, band.Likely},
		{atOnce.After.High, band.High}} {
		if !(math.Abs(x[0].Points()/x[1].Points()-1) <= 0.02) {
			t.Errorf("end %d of the band is %v, of the estimate %v", i, x[0], x[1])
		}
	}
	last := math.Inf(1)
	for _, hours := range []float64{5, 3, 1, 0.1} {
		p.Stages[0].For = span(hours)
		got, err := p.RiseBeforeShaping()
		if err != nil || !got.Feasible {
			t.Fatal(got, err)
		}
		width := got.After.High.Points() - got.After.Low.Points()
		if !(width < last) || !(got.After.Low.Points() < 75 && got.After.High.Points() > 75) {
			t.Errorf("%v h after shaping the band is %v", hours, got.After)
		}
		last = width
	}
}

// A stage may last for longer than its temperatures are laid out: two stages of ten days in the same place are one of
// twenty. There are ten at most.
func TestStagesInParts(t *testing.T) {
	cold := ferment.Room{Night: quantity.Celsius(3)}
	with := func(hours ...float64) ferment.ShapeTarget {
		p := ferment.Proof{Bulk: changed(func(b *ferment.Bulk) { b.Inoculation = pct(1) }), Total: pct(60)}
		for _, h := range hours {
			p.Stages = append(p.Stages, loafInto(cold, h))
		}
		got, err := p.RiseBeforeShaping()
		if err != nil {
			t.Fatal(err)
		}
		return got
	}
	for _, c := range [][2][]float64{{{480}, {240, 240}}, {{150}, {75, 75}}, {{145}, {144, 1}}} {
		one, parts := with(c[0]...), with(c[1]...)
		if !(math.Abs(one.Rise.Points()-parts.Rise.Points()) <= 0.05) || one.Feasible != parts.Feasible ||
			!(math.Abs(one.Unrisen.Points()-parts.Unrisen.Points()) <= 0.05) {
			t.Errorf("%v h: %v (%v), in parts %v (%v)", c[0], one, one.Unrisen, parts, parts.Unrisen)
		}
		if last := len(parts.Then) - 1; !(math.Abs(one.Then[1].Celsius()-parts.Then[last].Celsius()) <= 0.06) {
			t.Errorf("%v h: %v, in parts %v", c[0], one.Then, parts.Then)
		}
	}
	p := ferment.Proof{Bulk: good(), Total: pct(60), Stages: slices.Repeat([]ferment.Piece{loafInto(cold, 0.1)}, 10)}
	if _, err := p.RiseBeforeShaping(); err != nil {
		t.Error(err)
	}
	p.Stages = append(p.Stages, p.Stages[0])
	if d := cmp.Diff("stages: out of range: got 11, want at most 10 stages",
		saying(trial.Err(p.RiseBeforeShaping()))); d != "" {
		t.Error(d)
	}
}

// A total that hardly more than an unrisen dough comes to leaves no time to rise before: shaping at less than 1 % is
// shaping at once.
func TestNextToNoRiseBeforeShaping(t *testing.T) {
	p := ferment.Proof{Bulk: good(), Total: pct(50),
		Stages: []ferment.Piece{loafInto(ferment.Room{Night: quantity.Celsius(23)}, 6)}}
	first, err := p.RiseBeforeShaping()
	if err != nil || first.Feasible {
		t.Fatal(first, err)
	}
	falling := p
	falling.Bulk.History = bends(t, 0, 25, 1, 23)
	if atOnce, err := falling.RiseBeforeShaping(); err != nil || atOnce.Feasible || atOnce.Shaped != quantity.Celsius(25) {
		t.Errorf("shaped at %v, mixed at 25 °C: %v (%v)", atOnce.Shaped, atOnce, err)
	}
	unrisen := first.Unrisen.Points()
	last := -1.0
	for _, more := range []float64{-0.5, 0, 0.5, 4, 12, 25} {
		p.Total = pct(unrisen + more)
		got, err := p.RiseBeforeShaping()
		rise := got.Rise.Points()
		if err != nil || got.Feasible != (rise >= 1) || more > 0.1 != (rise > 0) || rise < last {
			t.Errorf("%v more than the %v of an unrisen dough: %v, shaped at %v %% (%v)", more, first.Unrisen, got, rise, err)
		}
		last = rise
	}
	if last < 1 {
		t.Errorf("a quarter more leaves %v %%", last)
	}
}

// Less than a second on the bench is none.
func TestABlinkOnTheBench(t *testing.T) {
	p := ferment.Proof{Bulk: good(), Total: pct(60),
		Stages: []ferment.Piece{loafInto(ferment.Room{Night: quantity.Celsius(5)}, 8)}}
	want, err := p.RiseBeforeShaping()
	if err != nil {
		t.Fatal(err)
	}
	p.Bench = quantity.Elapsed(400 * time.Millisecond)
	got, err := p.RiseBeforeShaping()
	if err != nil || !(math.Abs(got.Rise.Points()-want.Rise.Points()) <= 0.01) {
		t.Errorf("%v, without a bench %v (%v)", got, want, err)
	}
}

// What is wrong with a dough only when its clock is set going stands at its place in the proof, and no answer with it.
func TestDoughsOfAProofThatCannotRun(t *testing.T) {
	p := ferment.Proof{Bulk: good(), Total: pct(60),
		Stages: []ferment.Piece{loafInto(ferment.Room{Night: quantity.Celsius(5)}, 8)}}
	still, err := ferment.NewCurve(ferment.About{Name: "own", Low: 0, High: 40}, func(c float64) float64 {
		return math.Abs(c - 27)
	})
	if err != nil {
		t.Fatal(err)
	}
	p.Bulk.Law = ferment.GasBalance().With(ferment.Rivals{Gas: still})
	got, err := p.RiseBeforeShaping()
	if refused := trial.Refused(err); refused != "bulk.law.gas inconsistent" || got.Feasible {
		t.Errorf("%v, refused are %q", got, refused)
	}
	// shaped after some hours it never becomes so hot, but the late end of its estimate would
	p.Bulk = changed(func(b *ferment.Bulk) { b.History = bends(t, 0, 23, 6, 23, 6.5, 45) })
	got, err = p.RiseBeforeShaping()
	if refused := trial.Refused(err); refused != "bulk.history outside the model's range" || got.Feasible {
		t.Errorf("%v, refused are %q", got, refused)
	}
}

// What follows shaping may leave the law's temperatures as little as the bulk, and an error in a stage has its place.
func TestStagesAreChecked(t *testing.T) {
	p := ferment.Proof{Bulk: good(), Total: pct(60), Stages: []ferment.Piece{
		loafInto(ferment.Room{Night: quantity.Celsius(5)}, 2), loafInto(ferment.Room{Night: quantity.Celsius(-12)}, 30)}}
	const outside = "stages: outside the model's range: got −12.0 °C to 23.0 °C, want −1 °C to 43 °C for the gas balance" +
		", unless extrapolating is allowed"
	if d := cmp.Diff(outside, saying(trial.Err(p.RiseBeforeShaping()))); d != "" {
		t.Error(d)
	}
	p.Bulk.Extrapolate = true
	if _, err := p.RiseBeforeShaping(); err != nil {
		t.Error(err)
	}
	p.Stages[1].Mass, p.Stages[1].Into = quantity.Grams(1), ferment.Room{}
	p.Bulk.Salt, p.Bench = pct(-1), span(25)
	want := "bulk.salt out of range; bench out of range; stages[1].mass out of range; stages[1].into.night required"
	if got := trial.Refused(trial.Err(p.RiseBeforeShaping())); got != want {
		t.Errorf("refused are %q, want %q", got, want)
	}
}
