package bake

import (
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
)

// The front by its formula, set out a second time: a ball of 900 g whose usual loss is 11.5 %, 20 minutes under the lid
// and 25 at 220 °C, 10 more at 180 °C. Its surface boils long before the lid comes off.
func TestTheFrontByItsFormula(t *testing.T) {
	in := OvenBake{Shape: Ball, Dough: quantity.Grams(900), Phases: []HeatPhase{
		{quantity.Celsius(250), within(20), true}, {quantity.Celsius(220), within(25), false},
		{quantity.Celsius(180), within(10), false}}}
	b, err := in.BakeOut()
	if err != nil {
		t.Fatal(err)
	}
	boils, ml := b.Boiling.Celsius(), rowOf(LeanHearth).crumb.mlPerGram
	water := 460 / ml
	r := math.Cbrt(3 * 900 * 0.885 * ml * 1e-6 / (4 * math.Pi))
	area := 0.85 * 4 * math.Pi * r * r
	run := func(h, k float64) (depth, surface float64) {
		for _, phase := range [][2]float64{{220, 25 * 60}, {180, 10 * 60}} {
			gap := 1/h + depth/k
			depth = k * (math.Sqrt(gap*gap+2*(phase[0]-boils)*phase[1]/(k*water*2.257e6)) - 1/h)
			surface = boils + (phase[0]-boils)*(h*depth/k)/(1+h*depth/k)
		}
		return depth, surface
	}
	for name, c := range map[string]struct {
		h, k float64
		got  quantity.Percent
	}{"likely": {25, 0.06, b.Loss.Likely}, "low": {20, 0.045, b.Loss.Low}, "high": {30, 0.075, b.Loss.High}} {
		depth, _ := run(c.h, c.k)
		if want := water * area * depth / 0.9 * 100; !(math.Abs(c.got.Points()-want) <= 1e-4) {
			t.Errorf("%s: %v, want %v", name, c.got, want)
		}
	}
	depth, surface := run(25, 0.06)
	if !(math.Abs(b.Crust.Meters()-depth) <= 1e-6) || !(math.Abs(b.Surface.Celsius()-surface) <= 0.01) ||
		b.Dries != within(35) ||
		b.Loss.Probability != quantity.NewPercent(80) {
		t.Errorf("%+v, want %v m and %v °C", b, depth, surface)
	}
	// Without a lid the surface first has to boil, 4½ minutes by the likely reckoning, over as many phases as that takes.
	in.Phases = []HeatPhase{{quantity.Celsius(220), within(2), false}, {quantity.Celsius(220), within(10), false}}
	if b, err = in.BakeOut(); err != nil || b.Dries != within(7.5) {
		t.Errorf("dry for %v, %v", b.Dries, err)
	}
	in.Phases = in.Phases[:1]
	if b, err = in.BakeOut(); err != nil || b.Dries != 0 || b.Loss.High.Sign() != 0 || b.Surface != b.Boiling {
		t.Errorf("dry for %v, %v", b, err)
	}
	if _, err := in.LearnBrowning(GoldenBrown); paths(err) != "Phases" {
		t.Errorf("learned from a wet bake: %v", err)
	}
}

// The areas that dry, by what a shape is: of a liter, in square decimeters.
func TestAreasThatDry(t *testing.T) {
	for shape, want := range map[Shape]float64{
		Ball:  0.85 * math.Cbrt(36*math.Pi),                         // 0.85 of a sphere
		Long:  (0.875*12 + 2) * math.Pi / math.Pow(6*math.Pi, 2./3), // r = ∛(1/6π), six radii long
		Thin:  (0.875*36 + 2) * math.Pi / math.Pow(18*math.Pi, 2./3),
		Tin:   (2 + 8.0/3) * math.Pow(0.5, 2./3), // w, w and 2w: the top, and a third of base and walls
		Sheet: 6, Flat: 6,                        // 25 mm thick, half as much again for sides and base
	} {
		if got := shape.drying(1e-3) * 100; !(math.Abs(got/want-1) <= 1e-9) {
			t.Errorf("%v: %v dm², want %v", shape, got, want)
		}
	}
}

// A surface that stays at one temperature colors by the exponential alone; one that gets hotter, by the sum of many
// short pieces. Shades begin at 20, 28, 39 and 47.
func TestColorsByTheFormula(t *testing.T) {
	k := func(c float64) float64 { return 42000 * math.Exp(-64151/(8.314*(c+273.15))) }
	surface := func(from, to, minutes float64) []Sample {
		return []Sample{{0, quantity.Celsius(from)}, {within(minutes), quantity.Celsius(to)}}
	}
	for _, c := range []struct{ from, to, minutes, browning float64 }{
		{180, 180, 20, 0}, {180, 180, 20, 1}, {200, 200, 15, 2}, {140, 230, 12, 0}, {230, 140, 12, 0.5},
	} {
		sum := 0.0
		for i := range 10_000 {
			sum += k(c.from+(c.to-c.from)*(float64(i)+0.5)/10_000) * c.minutes * 60 / 10_000
		}
		if c.browning > 0 {
			sum *= c.browning
		}
		got, err := DryCrust{Surface: surface(c.from, c.to, c.minutes), Browning: c.browning}.Color()
		if want := 52 * (1 - math.Exp(-sum)); err != nil || !(math.Abs(got.Difference-want) <= 1e-3) {
			t.Errorf("%+v: %v, %v, want %v", c, got.Difference, err, want)
		}
	}
	for difference, want := range map[float64]Shade{0: Pale, 19.9: Pale, 20: PaleGolden, 27.9: PaleGolden, 28: GoldenBrown,
		38.9: GoldenBrown, 39: DarkBrown, 46.9: DarkBrown, 47: NearlyBurnt, 52: NearlyBurnt} {
		if got := shadeOf(difference); got != want {
			t.Errorf("%v is %v, want %v", difference, got, want)
		}
	}
	for _, c := range []struct {
		crust DryCrust
		want  string
	}{
		{DryCrust{Surface: surface(0, 300, 2880)}, ""}, {DryCrust{Surface: surface(-1, 301, 2881)},
			"Surface[0].Core Surface[1].At Surface[1].Core"}, {DryCrust{Surface: surface(180, 180, 0)}, "Surface[1].At"},
		{DryCrust{Surface: surface(180, 180, 9), Browning: 0.009}, "Browning"},
		{DryCrust{Surface: surface(180, 180, 9), Browning: 101}, "Browning"},
		{DryCrust{Surface: surface(180, 180, 9), Browning: 0.01}, ""},
		{DryCrust{Surface: surface(180, 180, 9), Browning: 100}, ""}, {DryCrust{Surface: surface(1, 1, 9)[:1]}, "Surface"},
	} {
		if _, err := c.crust.Color(); paths(err) != c.want {
			t.Errorf("%+v: %v", c.crust, err)
		}
	}
}

// The usual bake of a style has the color difference 34 by its own pace; who saw a shade learns the pace that makes its
// middle of it: 10, 24, 33.5, 43 and 49.5.
func TestWhatABakeTeachesOfBrowning(t *testing.T) {
	row := rowOf(LeanHearth)
	covered := coveredOf(LeanHearth, UsualVessel.of(LeanHearth), row.bake.minutes)
	in := OvenBake{Dough: quantity.Grams(row.bake.grams), Phases: []HeatPhase{
		{quantity.Celsius(row.oven[0]), within(covered), true},
		{quantity.Celsius(row.oven[1]), within(row.bake.minutes - covered), false}}}
	if b, err := in.BakeOut(); err != nil || !(math.Abs(b.Likely-34) <= 0.05) || b.Color != GoldenBrown {
		t.Errorf("the usual bake: %v, %v", b, err)
	}
	for shade, middle := range map[Shade]float64{Pale: 10, PaleGolden: 24, GoldenBrown: 33.5, DarkBrown: 43,
		NearlyBurnt: 49.5} {
		f, err := in.LearnBrowning(shade)
		if want := math.Log(1-middle/52) / math.Log(1-34.0/52); err != nil || !(math.Abs(f/want-1) <= 5e-3) {
			t.Errorf("%v: %v, %v, want %v", shade, f, err, want)
		}
	}
	for _, c := range []struct {
		change func(*OvenBake)
		want   string
	}{
		{func(o *OvenBake) { o.Phases = nil }, "Phases"},
		{func(o *OvenBake) { o.Phases = make([]HeatPhase, 101) }, "Phases"},
		{func(o *OvenBake) { o.Phases[0].Oven = quantity.Celsius(119) }, "Phases[0].Oven"},
		{func(o *OvenBake) { o.Phases[1].Oven = quantity.Celsius(351) }, "Phases[1].Oven"},
		{func(o *OvenBake) { o.Phases[1].For = 0 }, "Phases[1].For"},
		{func(o *OvenBake) { o.Phases[1].For = within(1441) }, "Phases[1].For"},
		{func(o *OvenBake) { o.Dough = quantity.Grams(19) }, "Dough"},
		{func(o *OvenBake) { o.Dough = quantity.Grams(5001) }, "Dough"}, {func(o *OvenBake) { o.Shape = 99 }, "Shape"},
		{func(o *OvenBake) { o.Style = Pizza }, "Style"}, {func(o *OvenBake) { o.Style = 99 }, "Style"},
		{func(o *OvenBake) { o.Browning = -1 }, "Browning"},
		{func(o *OvenBake) { o.Place = At(quantity.Meters(99_000)) }, "Place.Altitude"},
	} {
		bad := in
		bad.Phases = append([]HeatPhase{}, in.Phases...)
		c.change(&bad)
		_, err := bad.BakeOut()
		_, err2 := bad.LearnBrowning(GoldenBrown)
		if paths(err) != c.want || paths(err2) != c.want {
			t.Errorf("%s: %v, %v", c.want, err, err2)
		}
	}
	if _, err := in.LearnBrowning(99); paths(err) != "Shade" {
		t.Error(err)
	}
}

// One time constant of firming leaves 1/e: after 1.37 days at −1 °C, 2.57 at 10, 3.68 at 21 and 5.5 at 32, and after
// the geometric mean of two in the middle between them.
func TestOneTimeConstantOfFirming(t *testing.T) {
	for celsius, days := range map[float64]float64{-1: 1.37, 10: 2.57, 21: 3.68, 32: 5.5, 4.5: math.Sqrt(1.37 * 2.57),
		15.5: math.Sqrt(2.57 * 3.68), 26.5: math.Sqrt(3.68 * 5.5)} {
		stay := Stay{quantity.Elapsed(hoursOf(24 * days)), quantity.Celsius(celsius)}
		frozen := Stay{minute(9999), quantity.Celsius(-12)}
		s, err := StoredLoaf{Style: Pan, Stays: []Stay{stay, frozen, stay}}.Staling()
		if err != nil || len(s.After) != 3 {
			t.Fatal(s, err)
		}
		for i, want := range []float64{1, 1, 2} {
			if !(math.Abs(s.After[i].Points()-100*(1-math.Exp(-want))) <= 0.02) {
				t.Errorf("%v °C: %v after stay %d", celsius, s.After[i], i)
			}
		}
		for want, got := range map[float64]quantity.Percent{2: s.Share.Likely, 2 / 1.3: s.Share.Low, 2 / 0.7: s.Share.High} {
			if !(math.Abs(got.Points()-100*(1-math.Exp(-want))) <= 0.02) {
				t.Errorf("%v °C: %v, want %v", celsius, got, want)
			}
		}
		if d := s.AtRoom.Duration() - hoursOf(2*24*3.68); d < -2*time.Minute || d > 2*time.Minute {
			t.Errorf("%v °C: as long as %v at 21 °C", celsius, s.AtRoom)
		}
	}
}

// What a hearth loaf usually loses lies on straight lines over the logarithm of its dough, flat beyond both ends; a
// loaf of 8 kg, which can be weighed but not forecast, is light where one of 5 kg is.
func TestLossesOfHearthLoaves(t *testing.T) {
	for grams, want := range map[float64]float64{20: 14, 90: 14, 500: 13, 900: 11.5, 1750: 10, 5000: 9,
		math.Sqrt(90 * 500): 13.5, math.Sqrt(500 * 900): 12.3, math.Sqrt(900 * 1750): 10.8, math.Sqrt(1750 * 5000): 9.5} {
		g, err := LeanHearth.UsualLoss(quantity.Grams(grams))
		// A middle of 12.25 or 10.75 is rounded to a tenth.
		off := g.Loss.Likely.Points() - want
		if err != nil || !(math.Abs(off) <= 1e-6) && !(math.Abs(off+0.1) <= 1e-6) {
			t.Errorf("%v g: %v, %v, want %v", grams, g.Loss, err, want)
		}
		if row := rowOf(LeanHearth).loss; !(math.Abs(g.Loss.High.Sub(g.Loss.Likely).Points()-row.high) <= 1e-6) ||
			!(math.Abs(g.Loss.Likely.Sub(g.Loss.Low).Points()-row.low) <= 1e-6) {
			t.Errorf("%v g: %v", grams, g.Loss)
		}
	}
	most := 9 + rowOf(LeanHearth).loss.high
	for loss, light := range map[float64]bool{most: false, most + 0.1: true} {
		v, err := LoafReading{Core: quantity.Celsius(98), Dough: quantity.Grams(8000),
			Loaf: quantity.Grams(80 * (100 - loss))}.Judge()
		if err != nil || v.Light != light || v.State != Done {
			t.Errorf("8 kg that lost %v %%: %+v, %v", loss, v, err)
		}
	}
}

// How long bread keeps is told in hours where that begins before a day is over, and in days from there on.
func TestHowLongBreadKeepsIsTold(t *testing.T) {
	for _, style := range quantity.Values[Style]() {
		s, err := StoredLoaf{Style: style, Stays: []Stay{{minute(60), quantity.Celsius(21)}}}.Staling()
		if err != nil {
			t.Fatal(style, err)
		}
		row := rowOf(style).keeps
		want := fmt.Sprintf("good for %d to %d hours", int(row.from), int(row.to))
		if row.from >= 24 {
			want = fmt.Sprintf("good for %d to %d days", int(row.from)/24, int(row.to)/24)
		}
		says(t, style.String(), page(s.Report()), want)
	}
}

// From a bake of your own the time goes with the power of the mass, within half and twice of it and ±12 %; outside only
// when asked for and 10 % wider; from the refrigerator 6.4 % longer, unless the known bake came from there.
func TestTimesFromAKnownBake(t *testing.T) {
	known := OvenPiece{Dough: quantity.Grams(1000), KnownDough: quantity.Grams(800), KnownTime: minute(40)}
	for name, c := range map[string]struct {
		change          func(*OvenPiece)
		minutes, spread float64
	}{
		"heavier": {func(*OvenPiece) {}, 40 * math.Pow(1.25, 0.39), 0.12},
		"half":    {func(o *OvenPiece) { o.Dough = quantity.Grams(400) }, 40 * math.Pow(0.5, 0.39), 0.12},
		"twice":   {func(o *OvenPiece) { o.Dough = quantity.Grams(1600) }, 40 * math.Pow(2, 0.39), 0.12},
		"outside": {func(o *OvenPiece) { o.Dough, o.Extrapolate = quantity.Grams(1601), true },
			40 * math.Pow(1601./800, 0.39), 0.22},
		"cold":         {func(o *OvenPiece) { o.Cold = true }, 40 * math.Pow(1.25, 0.39) * 1.064, 0.12},
		"both cold":    {func(o *OvenPiece) { o.Cold, o.KnownCold = true, true }, 40 * math.Pow(1.25, 0.39), 0.12},
		"known cold":   {func(o *OvenPiece) { o.KnownCold = true }, 40 * math.Pow(1.25, 0.39) / 1.064, 0.12},
		"rye":          {func(o *OvenPiece) { o.Style = Rye }, 40 * math.Pow(1.25, 0.57), 0.12},
		"same shape":   {func(o *OvenPiece) { o.Shape, o.KnownShape = Tin, Tin }, 40 * math.Pow(1.25, 0.39), 0.12},
		"as it is now": {func(o *OvenPiece) { o.Shape = Tin }, 40 * math.Pow(1.25, 0.39), 0.12},
	} {
		in := known
		c.change(&in)
		b, err := in.BakeTime()
		for want, got := range map[float64]time.Duration{c.minutes: b.Time.Likely, c.minutes * (1 - c.spread): b.Time.Early,
			c.minutes * (1 + c.spread): b.Time.Late} {
			if err != nil || !(math.Abs(got.Minutes()-want) <= 0.02) || b.Extrapolated != (name == "outside") {
				t.Errorf("%s: %v, %v, want %v", name, b.Time, err, c.minutes)
			}
		}
		if strings.Contains(b.String(), "outside") != b.Extrapolated {
			t.Errorf("%s: %v", name, b)
		}
	}
	for _, c := range []struct {
		change func(*OvenPiece)
		want   string
	}{
		{func(o *OvenPiece) { o.Dough = quantity.Grams(399.9) }, "Dough"},
		{func(o *OvenPiece) { o.Dough = quantity.Grams(1600.1) }, "Dough"},
		{func(o *OvenPiece) { o.KnownDough = quantity.Mass{} }, "KnownDough"},
		{func(o *OvenPiece) { o.KnownTime = 0 }, "KnownTime"},
		{func(o *OvenPiece) { o.KnownTime = minute(1441) }, "KnownTime"},
		{func(o *OvenPiece) { o.KnownShape = 99 }, "KnownShape"}, {func(o *OvenPiece) { o.Shape = 99 }, "Shape"},
	} {
		in := known
		c.change(&in)
		if _, err := in.BakeTime(); paths(err) != c.want {
			t.Errorf("%s: %v", c.want, err)
		}
	}
}
