package bake

import (
	"errors"
	"math"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
)

// What is done with the pieces as they go in, and what heats before: common practice, no source.
func TestWhatIsDoneAtTheOven(t *testing.T) {
	for style, want := range map[Style]string{
		LeanHearth: "score and load", Rye: "score and load", Bagel: "drain and load", Focaccia: "dimple and load",
		Pizza: "stretch and load", FlatBread: "stretch and load", SoftRoll: "load", Pan: "load", Enriched: "load",
	} {
		pr, err := OvenLoad{Style: style, Dough: quantity.Grams(500), Pieces: 1, Extrapolate: true}.Program()
		if err != nil {
			t.Fatal(style, err)
		}
		for _, ph := range pr.Phases {
			if ph.Kind == Load && ph.Note.String() != want {
				t.Errorf("%v: %s, want %s", style, ph.Note, want)
			}
		}
	}
	for vessel, want := range map[Vessel]string{Pot: "oven with the pots and their lids in it",
		Stone: "oven with the stone in it", Tray: "oven"} {
		pr, err := OvenLoad{Dough: quantity.Grams(900), Pieces: 1, Vessel: vessel}.Program()
		if err != nil || pr.Phases[0].Kind != Preheating || pr.Phases[0].Note.String() != want {
			t.Errorf("%v: %v, %v", vessel, pr.Phases, err)
		}
		for _, ph := range pr.Phases {
			lid := strings.Contains(ph.Note.String(), "lid o")
			if (ph.Kind == Covered || ph.Kind == Vent) && lid != (vessel == Pot) {
				t.Errorf("%v: %v", vessel, ph)
			}
		}
		if pots := len(pr.Cautions()) > len(OvenCautions())+1; pots != (vessel == Pot) {
			t.Errorf("%v: %v", vessel, pr.Cautions())
		}
	}
}

// A batch takes at most fifty rounds, the last of which need not be full; how many there would be is said.
func TestFiftyRounds(t *testing.T) {
	for _, c := range []struct{ pieces, together, rounds, each int }{
		{100, 2, 50, 2}, {99, 2, 50, 2}, {50, 1, 50, 1}, {7, 3, 3, 3}, {6, 3, 2, 3}, {3, 3, 1, 3}, {2, 3, 1, 2}, {4, 0, 1, 4},
		{1000, 20, 50, 20},
	} {
		pr, err := OvenLoad{Dough: quantity.Grams(900), Pieces: c.pieces, Together: c.together}.Program()
		if err != nil || pr.Rounds != c.rounds || pr.PerRound != c.each {
			t.Errorf("%+v: %d of %d, %v", c, pr.Rounds, pr.PerRound, err)
		}
		reheats := 0
		for _, ph := range pr.Phases {
			if ph.Kind == Reheating {
				reheats++
			}
		}
		if reheats != c.rounds-1 {
			t.Errorf("%+v: heated again %d times", c, reheats)
		}
	}
	for _, c := range []struct {
		pieces, together int
		says             string
	}{{101, 2, "which are 51 rounds"}, {51, 1, "which are 51 rounds"}, {1000, 7, "which are 143 rounds"}} {
		_, err := OvenLoad{Dough: quantity.Grams(900), Pieces: c.pieces, Together: c.together}.Program()
		if paths(err) != "Together" || !errors.Is(err, quantity.ErrOutOfRange) || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%+v: %v", c, err)
		}
	}
	for _, c := range []struct {
		load OvenLoad
		want string
	}{
		{OvenLoad{Pieces: 0}, "Pieces"}, {OvenLoad{Pieces: 1001}, "Pieces"}, {OvenLoad{Pieces: 4, Together: -1}, "Together"},
		{OvenLoad{Pieces: 4, Together: 1001}, "Together"}, {OvenLoad{Pieces: 0, Together: 1001}, "Pieces Together"},
		{OvenLoad{Pieces: 1, Oven: quantity.Celsius(119)}, "Oven"},
		{OvenLoad{Pieces: 1, Oven: quantity.Celsius(501)}, "Oven"},
		{OvenLoad{Pieces: 1, Then: quantity.Celsius(99)}, "Then"}, {OvenLoad{Pieces: 1, Then: quantity.Celsius(501)}, "Then"},
		{OvenLoad{Pieces: 1, Oven: quantity.Celsius(120), Then: quantity.Celsius(100)}, ""},
		{OvenLoad{Pieces: 1, Oven: quantity.Celsius(500), Then: quantity.Celsius(500)}, ""},
		{OvenLoad{Pieces: 1, Preheat: minute(361)}, "Preheat"}, {OvenLoad{Pieces: 1, Reheat: minute(121)}, "Reheat"},
		{OvenLoad{Pieces: 1, Preheat: minute(360), Reheat: minute(120), Uncovered: minute(360)}, ""},
		{OvenLoad{Pieces: 1, Uncovered: minute(361)}, "Uncovered"}, {OvenLoad{Pieces: 1, Vessel: 99}, "Vessel"},
		{OvenLoad{Pieces: 1, Covered: minute(361)}, "Covered"},
	} {
		c.load.Dough = quantity.Grams(900)
		if _, err := c.load.Program(); paths(err) != c.want {
			t.Errorf("%+v: %v, want %q", c.load, err, c.want)
		}
	}
}

// A core is still to be held only while it is at its target and has not been held long enough.
func TestHowLongToHold(t *testing.T) {
	for _, c := range []struct {
		core       float64
		held, more time.Duration
	}{{90, 0, 0}, {94, 5 * time.Minute, 0}, {96.5, 8 * time.Minute, 12 * time.Minute}, {96.5, 20 * time.Minute, 0},
		{96.5, 25 * time.Minute, 0}, {95.96, 0, 20 * time.Minute}} {
		v, err := LoafReading{Core: quantity.Celsius(c.core), Held: quantity.Elapsed(c.held)}.Judge()
		if err != nil || v.HoldFor.Duration() != c.more || v.Hold.Duration() != 20*time.Minute ||
			v.CoreThere != (c.core > 95.9) || v.HeldThere != (c.held >= 20*time.Minute) {
			t.Errorf("%+v: %+v, %v", c, v, err)
		}
	}
}

// A loaf that has lost just what it has to lose is baked out; a hundredth of a gram heavier, and it is not.
func TestALoafThatHasLostJustEnough(t *testing.T) {
	for _, style := range []Style{LeanHearth, Pan, Rye} {
		dough := quantity.Grams(1000)
		least := quantity.NewPercent(100 - rowOf(style).done.loss).Of(dough)
		for more, there := range map[quantity.Mass]bool{quantity.Grams(0): true, quantity.Grams(0.01): false,
			quantity.Grams(-0.01): true} {
			v, err := LoafReading{Goal: Goal{Style: style}, Core: quantity.Celsius(98.9), Dough: dough,
				Loaf: least.Add(more)}.Judge()
			if err != nil || v.LossThere != there {
				t.Errorf("%v with %v more: %+v, %v", style, more, v.Loss, err)
			}
		}
	}
}

// A target of the baker's within a degree of boiling, or above it, is never reached; below, it is taken at most two
// degrees under boiling.
func TestTargetsThatNoCoreReaches(t *testing.T) {
	_, boils, err := Site{}.boil()
	if err != nil {
		t.Fatal(err)
	}
	for above, want := range map[float64]LeftState{-1.5: Rising, -1.1: Rising, -0.9: Unreachable, 0.5: Unreachable,
		1.5: Unreachable, -4: Rising} {
		probe := Probe{Goal: Goal{Wanted: quantity.Celsius(boils + above)}, Samples: readings(20, 70, 25, 82)}
		l, err := probe.TimeLeft()
		if err != nil || l.State != want || l.Capped != (above > -2) ||
			!(math.Abs(l.Target.Celsius()-(boils+min(above, -2))) <= 0.01) {
			t.Errorf("%v °C over boiling: %v, %+v, %v", above, l.State, l.Target, err)
		}
	}
}

// A core counts as there when it prints like its target: half of a tenth of a degree below it.
func TestACoreThatPrintsLikeItsTarget(t *testing.T) {
	for below, there := range map[float64]bool{0: true, 0.04: true, 0.05: true, 0.06: false, -0.04: true} {
		l, err := Probe{Samples: readings(30, 90, 36, 96-below)}.TimeLeft()
		if err != nil || (l.State == Reached) != there {
			t.Errorf("%v °C below: %v, %v", below, l.State, err)
		}
		v, err := LoafReading{Core: quantity.Celsius(96 - below)}.Judge()
		if err != nil || v.CoreThere != there || !v.InAccepted {
			t.Errorf("%v °C below: %+v, %v", below, v, err)
		}
		v, err = LoafReading{Core: quantity.Celsius(93 - below)}.Judge()
		if err != nil || v.CoreThere || v.InAccepted != there {
			t.Errorf("%v °C below what some take: %+v, %v", below, v, err)
		}
	}
}

// A core that stands still is not cooling; one that has not fallen far is asked for again later.
func TestACoreThatDoesNotCool(t *testing.T) {
	for name, c := range map[string]struct {
		samples []Sample
		paths   string
		reason  error
	}{
		"still":        {readings(0, 60, 20, 60), "Samples", quantity.ErrInconsistent},
		"still, soon":  {readings(0, 60, 1, 60), "Samples", quantity.ErrInconsistent},
		"rising":       {readings(0, 60, 20, 61), "Samples", quantity.ErrInconsistent},
		"falling":      {readings(0, 61, 20, 55), "", nil},
		"too soon":     {readings(0, 61, 2.9, 60), "Samples", quantity.ErrModelRange},
		"just in time": {readings(0, 61, 3, 58), "", nil},
		"reached":      {readings(0, 34, 1, 34), "", nil},
		"backward":     {readings(5, 61, 5, 58), "Samples[1].At", quantity.ErrInconsistent},
		"only one":     {readings(0, 61), "Samples", quantity.ErrRequired},
		"two days on":  {readings(0, 61, 2881, 58), "Samples[1].At", quantity.ErrOutOfRange},
	} {
		_, err := CoolingProbe{Room: quantity.Celsius(22), Samples: c.samples}.TimeLeft()
		got := paths(err)
		if got != c.paths && c.reason != quantity.ErrInconsistent || (err == nil) != (c.reason == nil) ||
			c.reason != nil && !errors.Is(err, c.reason) {
			t.Errorf("%s: %q, %v", name, got, err)
		}
	}
}

// A core is cut two degrees above the room at the least.
func TestACoreIsCutAboveTheRoom(t *testing.T) {
	for slice, want := range map[float64]string{24: "", 24.1: "", 23.9: "Slice"} {
		_, err := CoolingProbe{Room: quantity.Celsius(22), Slice: quantity.Celsius(slice),
			Samples: readings(0, 61, 20, 50)}.TimeLeft()
		if paths(err) != want {
			t.Errorf("cut at %v °C: %v", slice, err)
		}
	}
}

// A loaf that comes out colder than it is cut, or out of what can be, is named once.
func TestACoolingLoafIsNamedOnce(t *testing.T) {
	for _, c := range []struct {
		from, room, slice float64
		want              string
	}{
		{98, 22, 35, ""}, {44, 22, 60, "From"}, {103, 22, 35, "From"}, {98, 41, 35, "Room"}, {98, -26, 35, "Room"},
		{98, 22, 23.9, "Slice"}, {98, 22, 24.1, ""}, {60, 22, 60, "From"}, {60.1, 22, 60, ""}, {50, 22, 60, "From"},
		{50, 22, 81, "Slice"}, {44, 22, 23, "Slice From"},
	} {
		in := CoolingLoaf{Baked: quantity.Grams(780), Room: quantity.Celsius(c.room), From: quantity.Celsius(c.from),
			Slice: quantity.Celsius(c.slice)}
		_, err := in.Time()
		got := strings.Fields(paths(err))
		if want := strings.Fields(c.want); len(got) != len(want) || len(want) == 1 && got[0] != want[0] {
			t.Errorf("%+v: %v", c, err)
		}
	}
	for grams, ok := range map[float64]bool{19.9: false, 20: true, 5000: true, 5001: false} {
		_, err := CoolingLoaf{Baked: quantity.Grams(grams)}.Time()
		if (err == nil) != ok || !ok && paths(err) != "Baked" {
			t.Errorf("%v g: %v", grams, err)
		}
	}
}

// What was typed in °F is told so, at a core taken out as at any other; what no oven gives is out of range.
func TestACoreTakenOut(t *testing.T) {
	for core, says := range map[float64]string{203: "was it °F?", 216: "a core of", 59: "60 °C to",
		105: "water boils here"} {
		_, err := TakenOut{Core: quantity.Celsius(core)}.CarryOver()
		if paths(err) != "Core" || !errors.Is(err, quantity.ErrOutOfRange) || !strings.Contains(err.Error(), says) {
			t.Errorf("%v °C: %v", core, err)
		}
	}
	_, boils, _ := Site{}.boil()
	for _, core := range []float64{60, 85, boils, boils + 1} {
		c, err := TakenOut{Core: quantity.Celsius(core)}.CarryOver()
		below := max(0, boils-core)
		for share, got := range map[float64]quantity.Temperature{0.2: c.Peak.Low, 0.5: c.Peak.Likely, 0.8: c.Peak.High} {
			if err != nil || !(math.Abs(got.Celsius()-(core+share*below)) <= 0.01) {
				t.Errorf("%v °C: %+v, %v", core, c.Peak, err)
			}
		}
	}
}

// Three loaves of 900 g of dough that lost 10, 11 and 12 %: the usual 11.5 % of such a loaf counts as a fourth,
// 11.125 %; they spread by 1, and the next lies within t·√(1 + 1/4), where t with two degrees of freedom is 1.8856.
func TestLossesByHand(t *testing.T) {
	weighed := func(losses ...float64) LossLog {
		log := LossLog{}
		for _, l := range losses {
			log.Loaves = append(log.Loaves, WeighedLoaf{Dough: quantity.Grams(900), Baked: quantity.Grams(9 * (100 - l))})
		}
		return log
	}
	for _, c := range []struct {
		losses             []float64
		mean, spread, half float64
	}{
		{[]float64{10, 11, 12}, 11.125, 1, 1.8856 * math.Sqrt(1.25)},
		{[]float64{10, 12}, 33.5 / 3, 1, 1.3104 * math.Sqrt(4.0/3)}, // the usual spread, known as from thirty
		{[]float64{11, 11, 11, 11}, 11.1, 0.3, 0.3 * 1.6377 * math.Sqrt(1.2)},
	} {
		l, err := weighed(c.losses...).Learn()
		if err != nil || l.Count != len(c.losses) || !(math.Abs(l.Mean.Points()-c.mean) <= 1e-5) ||
			!(math.Abs(l.Spread.Points()-c.spread) <= 1e-5) || !(math.Abs(l.Next.High.Points()-c.mean-c.half) <= 2e-4) ||
			!(math.Abs(l.Next.Low.Points()-c.mean+c.half) <= 2e-4) || l.Next.Likely != l.Mean {
			t.Errorf("%v: %+v, %v", c.losses, l, err)
		}
	}
	many := LossLog{Loaves: make([]WeighedLoaf, mostSamples)}
	for i := range many.Loaves {
		many.Loaves[i] = WeighedLoaf{Dough: quantity.Grams(900), Baked: quantity.Grams(801)}
	}
	if l, err := many.Learn(); err != nil || l.Count != mostSamples || l.Mean.Text(1) != "11.0 %" {
		t.Errorf("%v, %v", l, err)
	}
	many.Loaves = append(many.Loaves, many.Loaves[0])
	if _, err := many.Learn(); paths(err) != "Loaves" {
		t.Error(err)
	}
	if _, err := (LossLog{}).Learn(); paths(err) != "Loaves" || !errors.Is(err, quantity.ErrRequired) {
		t.Error(err)
	}
}

// What was lost while cooling is said where it was asked for, and what a time rests on only where it rests on it.
func TestWhatIsSaidOfLosses(t *testing.T) {
	s, err := PromisedLoaf{Baked: quantity.Grams(780), Loss: quantity.NewPercent(12)}.Scaling()
	if err != nil || strings.Contains(page(s.Report()), "while cooling") {
		t.Errorf("%s, %v", page(s.Report()), err)
	}
	s, err = PromisedLoaf{Baked: quantity.Grams(780), Loss: quantity.NewPercent(12),
		Cooling: quantity.NewPercent(2)}.Scaling()
	if err != nil {
		t.Fatal(err)
	}
	says(t, "cooling", page(s.Report()), "and 2.0 % while cooling")
	long, err := Probe{Samples: readings(30, 90, 36, 96.2, 90, 98)}.TimeLeft()
	if err != nil || long.ToOut.Late != 0 || !strings.Contains(long.String(), "long enough: baked out by time") {
		t.Errorf("%s, %v", long, err)
	}
	reached, err := Probe{Samples: readings(30, 90, 36, 96.2)}.TimeLeft()
	if err != nil || reached.State != Reached || strings.Contains(page(reached.Report()), "0 readings") ||
		strings.Contains(reached.String(), "long enough") {
		t.Errorf("%s, %v", page(reached.Report()), err)
	}
}
