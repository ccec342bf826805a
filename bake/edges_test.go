package bake

import (
	"errors"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
)

// A bake has the phases that take time, and no others.
func TestPhasesOfAProgram(t *testing.T) {
	within := func(m int) quantity.Elapsed { return quantity.Elapsed(time.Duration(m) * time.Minute) }
	likely := func(m int) quantity.TimeRange { return quantity.TimeRange{Likely: time.Duration(m) * time.Minute} }
	for _, c := range []struct {
		program Program
		want    []HeatPhase
	}{
		{Program{}, nil},
		{Program{Covered: within(20), Oven: quantity.Celsius(240)}, []HeatPhase{{quantity.Celsius(240), within(20), true}}},
		{Program{Uncovered: likely(25), Then: quantity.Celsius(220)}, []HeatPhase{
			{quantity.Celsius(220), within(25), false}}},
		{Program{Covered: within(1), Oven: quantity.Celsius(240), Uncovered: likely(1), Then: quantity.Celsius(200)},
			[]HeatPhase{{quantity.Celsius(240), within(1), true}, {quantity.Celsius(200), within(1), false}}},
	} {
		got := c.program.OvenBake().Phases
		if len(got) != len(c.want) {
			t.Errorf("%+v, want %+v", got, c.want)
			continue
		}
		for i := range got {
			if got[i] != c.want[i] {
				t.Errorf("%+v, want %+v", got[i], c.want[i])
			}
		}
	}
}

// A lid may stay on as long as the bake may take, and not a second longer.
func TestLidAsLongAsTheBake(t *testing.T) {
	in := OvenLoad{Style: LeanHearth, Dough: quantity.Grams(900), Pieces: 1}
	whole, err := OvenPiece{Style: LeanHearth, Dough: quantity.Grams(900)}.BakeTime()
	if err != nil {
		t.Fatal(err)
	}
	for more, ok := range map[time.Duration]bool{0: true, time.Second: false, -time.Minute: true} {
		in.Covered = quantity.Elapsed(whole.Time.Late + more)
		if _, err := in.Program(); (err == nil) != ok {
			t.Errorf("%v of %v under the lid: %v", in.Covered, whole.Time, err)
		}
	}
}

// What is kept, cut and read is taken up to its limits.
func TestLimitsOfCooling(t *testing.T) {
	stay := func(d time.Duration) error {
		_, err := StoredLoaf{Style: LeanHearth, Stays: []Stay{{For: quantity.Elapsed(d),
			At: quantity.Celsius(-18)}}}.Staling()
		return err
	}
	year := 366 * 24 * time.Hour
	for d, ok := range map[time.Duration]bool{year: true, year + time.Minute: false, time.Minute: true,
		time.Second: false} {
		if err := stay(d); (err == nil) != ok || !ok && !errors.Is(err, quantity.ErrOutOfRange) {
			t.Errorf("%v in the freezer: %v", d, err)
		}
	}
	for slice, ok := range map[float64]bool{5: true, 4.9: false, 80: true, 80.1: false} {
		in := CoolingLoaf{Style: LeanHearth, Baked: quantity.Grams(780), Room: quantity.Celsius(2),
			Slice: quantity.Celsius(slice)}
		if _, err := in.Time(); (err == nil) != ok {
			t.Errorf("sliced at %v °C: %v", slice, err)
		}
	}
	probe := CoolingProbe{}
	for i := range mostSamples + 1 {
		probe.Samples = append(probe.Samples, Sample{At: quantity.Elapsed(time.Duration(i) * time.Second)})
	}
	tooMany := func(n int) bool {
		p := probe
		p.Samples = p.Samples[:n]
		_, err := p.TimeLeft()
		for _, e := range quantity.InputErrors(err) {
			if e.GoPath == "Samples" {
				return true
			}
		}
		return false
	}
	if tooMany(mostSamples) || !tooMany(mostSamples+1) {
		t.Errorf("%d readings are too many: %v, one more: %v", mostSamples, tooMany(mostSamples), tooMany(mostSamples+1))
	}
}

// A color has both a shade and a difference that can be.
func TestColorsThatAreNone(t *testing.T) {
	for _, c := range []struct {
		color CrustColor
		none  bool
	}{
		{CrustColor{Difference: 34, Shade: GoldenBrown}, false}, {CrustColor{Difference: 0, Shade: GoldenBrown}, false},
		{CrustColor{Difference: 100, Shade: GoldenBrown}, false}, {CrustColor{Difference: 100.5, Shade: GoldenBrown}, true},
		{CrustColor{Difference: -1, Shade: GoldenBrown}, true}, {CrustColor{Difference: 34, Shade: 99}, true},
	} {
		if got := c.color.String() == "no color"; got != c.none {
			t.Errorf("%+v is told as %s", c.color, c.color)
		}
	}
}
