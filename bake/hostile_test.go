package bake

import (
	"encoding"
	"errors"
	"math"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
)

// paths lists the field paths an error names, in order.
func paths(err error) string {
	var out []string
	for _, e := range quantity.InputErrors(err) {
		out = append(out, e.GoPath)
	}
	return strings.Join(out, " ")
}

func readings(pairs ...float64) []Sample {
	var out []Sample
	for i := 0; i < len(pairs); i += 2 {
		out = append(out, Sample{within(pairs[i]), quantity.Celsius(pairs[i+1])})
	}
	return out
}

func TestBadProbeReadings(t *testing.T) {
	hall := Goal{Place: At(quantity.Meters(1150))}
	cases := []struct {
		name    string
		samples []Sample
		reason  error
		says    string
	}{
		{"none", nil, quantity.ErrRequired, "two readings"},
		{"one only", readings(20, 70), quantity.ErrRequired, "two readings"},
		{"falling", readings(20, 85, 25, 80), quantity.ErrInconsistent, "has the probe moved"},
		{
			"falling on the way",
			readings(20, 70, 25, 85, 28, 80, 33, 88),
			quantity.ErrInconsistent,
			"has the probe moved",
		},
		{"equal", readings(20, 80, 25, 80), quantity.ErrInconsistent, "rising core"},
		{"above boiling", readings(20, 70, 25, 99.5), quantity.ErrOutOfRange, "water boils here at 96.1 °C"},
		{"212 °F typed as °C", readings(20, 70, 25, 212), quantity.ErrOutOfRange, "was it °F?"},
		{"180 °F typed as °C", readings(20, 160, 25, 180), quantity.ErrOutOfRange, "180 °F would be 82.2 °C"},
		{
			"20 s apart",
			[]Sample{
				{quantity.Elapsed(20 * time.Minute), quantity.Celsius(70)},
				{quantity.Elapsed(20*time.Minute + 20*time.Second), quantity.Celsius(74)},
			},
			quantity.ErrModelRange,
			"at least 1m apart",
		},
		{"out of order", readings(25, 70, 20, 80), quantity.ErrInconsistent, "later than the reading before"},
		{"same time", readings(25, 70, 25, 80), quantity.ErrInconsistent, "later than the reading before"},
		{"early part", readings(10, 30, 15, 40), quantity.ErrModelRange, "still gains speed"},
		{"long ago", readings(10, 60, 40, 85), quantity.ErrModelRange, "within 15m"},
		{
			"not given",
			[]Sample{
				{quantity.Elapsed(time.Minute), quantity.Temperature{}},
				{quantity.Elapsed(5 * time.Minute), quantity.Celsius(80)},
			},
			quantity.ErrRequired,
			"samples[0].core",
		},
		{"negative time", readings(-5, 70, 5, 80), quantity.ErrOutOfRange, "samples[0].at"},
	}
	for _, c := range cases {
		l, err := Probe{Goal: hall, Samples: c.samples}.TimeLeft()
		if !errors.Is(err, c.reason) || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v, %v; want %v saying %q", c.name, l, err, c.reason, c.says)
		}
	}
	if _, err := (Probe{Goal: hall, Samples: readings(10, 30, 15, 40), Extrapolate: true}).TimeLeft(); err != nil {
		t.Errorf("early readings with Extrapolate: %v", err)
	}
}

func TestProbeAnswersThatAreNoErrors(t *testing.T) {
	hall := Goal{Place: At(quantity.Meters(1150))}
	cases := []struct {
		name  string
		probe Probe
		state LeftState
	}{
		{"rising", Probe{Goal: hall, Samples: readings(20, 70, 25, 82)}, Rising},
		{"reached", Probe{Goal: hall, Samples: readings(20, 80, 30, 94.3)}, Reached},
		{"near boiling", Probe{Goal: hall, Samples: readings(20, 94, 30, 95.5)}, NearBoiling},
		{
			"98 °C is never reached at 1,150 m",
			Probe{Goal: Goal{Place: hall.Place, Wanted: quantity.Celsius(98)}, Samples: readings(20, 70, 25, 82)},
			Unreachable,
		},
		{"half a degree in two minutes", Probe{Goal: hall, Samples: readings(20, 80, 22, 80.5)}, Vague},
	}
	for _, c := range cases {
		l, err := c.probe.TimeLeft()
		if err != nil || l.State != c.state {
			t.Errorf("%s: %v (%v), %v", c.name, l.State, l, err)
		}
		if l.State == Rising && l.ToOut.Likely < l.ToTarget.Likely+6*time.Minute {
			t.Errorf("%s: no bake-out after arrival: %v", c.name, l)
		}
	}
}

func TestBadInputNamesItsFields(t *testing.T) {
	_, e1 := LoafReading{
		Goal: Goal{Style: 99, Place: At(quantity.Meters(9500)), Rule: 7},
		Core: quantity.Celsius(212),
		Loaf: quantity.Grams(500),
		Held: quantity.Elapsed(-time.Minute),
	}.Judge()
	_, e2 := LoafReading{
		Core:   quantity.Celsius(95),
		Dough:  quantity.Grams(500),
		Loaf:   quantity.Grams(510),
		Held:   quantity.Elapsed(time.Hour),
		InOven: quantity.Elapsed(30 * time.Minute),
	}.Judge()
	_, e3 := LeanHearth.UsualLoss(quantity.Grams(3))
	_, e4 := PromisedLoaf{Baked: quantity.Grams(-1), Loss: quantity.MustPercent("60 %"), Basis: 5}.Scaling()
	_, e5 := CoolingLoaf{Baked: quantity.Grams(800), Room: quantity.Celsius(34), Slice: quantity.Celsius(35)}.Time()
	_, e6 := OvenPiece{Dough: quantity.Grams(3000)}.BakeTime()
	_, e7 := OvenPiece{Dough: quantity.Grams(900), KnownDough: quantity.Grams(900)}.BakeTime()
	_, e8 := OvenLoad{Dough: quantity.Grams(900), Vessel: 9, Oven: quantity.Celsius(700), Together: -1}.Program()
	_, e9 := Site{Altitude: quantity.Meters(-600)}.BoilingPoint()
	_, e10 := Site{Station: Hectopascals(900), SeaLevel: Hectopascals(1010)}.BoilingPoint()
	_, e11 := OvenSetting{Wanted: quantity.Celsius(20), Off: quantity.DeltaCelsius(100)}.Dial()
	_, e12 := CoolingProbe{Samples: readings(10, 70, 20, 75)}.TimeLeft()
	_, e13 := LossLog{
		Loaves: []WeighedLoaf{{quantity.Grams(500), quantity.Grams(520)}, {quantity.Grams(500), quantity.Grams(200)}},
	}.Learn()
	_, e16 := Goal{Place: Site{Station: Hectopascals(880)}, Rule: Offset}.Target()
	_, e17 := UnprobedLoaf{Dough: quantity.Grams(900), Shape: 17, Start: quantity.Celsius(60)}.Arrival()
	_, e18 := TakenOut{Core: quantity.Celsius(200)}.CarryOver()
	_, e19 := Solids{Water: quantity.MustPercent("500 %")}.LeastLoss()
	_, e20 := (PackedWeight{Nominal: quantity.Grams(0)}).Limits()
	_, e21 := Style(-1).Guide()
	for i, c := range []struct {
		err    error
		want   string
		reason error
	}{
		{e1, "Style Place.Altitude Rule Core Dough Held", quantity.ErrOutOfRange},
		{e2, "Loaf Held", quantity.ErrInconsistent},
		{e3, "Dough", quantity.ErrOutOfRange},
		{e4, "Baked Loss Basis", quantity.ErrOutOfRange},
		{e5, "Slice", quantity.ErrInconsistent},
		{e6, "Dough", quantity.ErrModelRange},
		{e7, "KnownTime", quantity.ErrRequired},
		{e8, "Pieces Vessel Together Oven", quantity.ErrOutOfRange},
		{e9, "Altitude", quantity.ErrOutOfRange},
		{e10, "SeaLevel", quantity.ErrInconsistent},
		{e11, "Wanted Off", quantity.ErrOutOfRange},
		{e12, "Samples", quantity.ErrInconsistent},
		{e13, "Loaves[0].Baked Loaves[1].Baked", quantity.ErrOutOfRange},
		{e16, "Rule", quantity.ErrModelRange},
		{e17, "Shape Start", quantity.ErrOutOfRange},
		{e18, "Core", quantity.ErrOutOfRange},
		{e19, "Water", quantity.ErrOutOfRange},
		{e20, "Nominal", quantity.ErrRequired},
		{e21, "Style", quantity.ErrOutOfRange},
	} {
		if got := paths(c.err); got != c.want || !errors.Is(c.err, c.reason) {
			t.Errorf("case %d: paths %q, want %q; %v", i+1, got, c.want, c.err)
		}
	}
	// A loss of 0 % is possible arithmetic; 60 % is no loaf.
	if s, err := (PromisedLoaf{Baked: quantity.Grams(800)}).Scaling(); err != nil || s.Dough != quantity.Grams(800) {
		t.Errorf("a loss of 0 %%: %v, %v", s, err)
	}
	for _, z := range []float64{-500, 9000} {
		if _, err := (Goal{Place: At(quantity.Meters(z))}).Target(); err != nil {
			t.Errorf("%g m: %v", z, err)
		}
	}
}

// Hostile values give an error or an answer, never a panic, a hang or a range that is out of order.
func TestHostileValues(t *testing.T) {
	bad := []float64{math.NaN(), math.Inf(1), math.Inf(-1), 0, -1, 1e300, -1e300, 5e-324, 96.1, 1e9}
	durations := []time.Duration{0, -1, math.MaxInt64, math.MinInt64, time.Hour}
	inOrder := func(what string, r quantity.TimeRange) {
		t.Helper()
		if r.Early > r.Likely || r.Likely > r.Late {
			t.Errorf("%s: range out of order %+v", what, r)
		}
	}
	for _, a := range bad {
		for _, b := range bad {
			ta, tb, ma, mb := quantity.Celsius(a), quantity.Celsius(b), quantity.Grams(a), quantity.Grams(b)
			place := Site{Altitude: quantity.Meters(a), Station: Hectopascals(b)}
			_, _ = place.BoilingPoint()
			for _, d := range durations {
				if v, err := (LoafReading{Goal: Goal{Style: Style(int(d)), Place: place, Wanted: tb}, Core: ta,
					ProbeError: quantity.DeltaCelsius(b), Dough: ma, Loaf: mb, Held: quantity.Elapsed(d),
					InOven: quantity.Elapsed(d)}).Judge(); err == nil {
					_ = v.String()
				}
				l, err := Probe{
					Samples:     []Sample{{quantity.Elapsed(d), ta}, {quantity.Elapsed(d + time.Hour), tb}},
					Error:       quantity.DeltaCelsius(a),
					Window:      quantity.Elapsed(d),
					Extrapolate: true,
				}.TimeLeft()
				if err == nil {
					inOrder("TimeLeft", l.ToTarget)
				}
				c, err := CoolingProbe{
					Samples: []Sample{{quantity.Elapsed(d), ta}, {quantity.Elapsed(d + time.Hour), tb}},
					Room:    tb,
					Slice:   ta,
				}.TimeLeft()
				if err == nil {
					inOrder("RefitCooling", c.Ready)
				}
				if x, err := (OvenPiece{Style: Style(int(d)), Dough: ma, KnownDough: mb, KnownTime: quantity.Elapsed(d),
					Extrapolate: true}).BakeTime(); err == nil {
					inOrder("BakingTime", x.Time)
				}
				if x, err := (OvenLoad{Dough: ma, Pieces: int(d), Together: int(d), Oven: tb, Preheat: quantity.Elapsed(d),
					Reheat: quantity.Elapsed(d), Covered: quantity.Elapsed(d), Uncovered: quantity.Elapsed(d),
					Extrapolate: true}).Program(); err == nil {
					inOrder("Plan", x.Total)
				}
			}
			if x, err := (CoolingLoaf{Baked: ma, From: ta, Room: tb, Slice: tb}).Time(); err == nil {
				inOrder("CoolTime", x.Ready)
			}
			if x, err := (UnprobedLoaf{Goal: Goal{Place: place}, Dough: ma, Start: tb}).Arrival(); err == nil {
				inOrder("ArrivalTime", x.Time)
			}
			_, _ = LeanHearth.UsualLoss(ma)
			_, _ = PromisedLoaf{Baked: ma, Loss: quantity.NewPercent(b), Cooling: quantity.NewPercent(a)}.Scaling()
			_, _ = LossLog{Loaves: []WeighedLoaf{{ma, mb}}}.Learn()
			_, _ = (PackedWeight{Nominal: ma}).Limits()
			_, _ = Solids{FlourMoisture: quantity.NewPercent(a), Water: quantity.NewPercent(b)}.LeastLoss()
			_, _ = OvenSetting{Wanted: ta, Off: quantity.DeltaCelsius(b)}.Dial()
			_, _ = TakenOut{Place: place, Core: ta}.CarryOver()
			_, _ = NearestMark(ta)
		}
	}
	// Zero values print and derive without panics.
	for _, z := range []interface{ String() string }{
		LoafVerdict{}, Left{}, CoolingTime{}, CoolingLeft{}, Program{}, BakeTime{}, Arrival{}, Boiling{}, CoreTarget{},
		StyleGuide{}, LossGuide{}, Scaling{}, LearnedLoss{},
		AverageWeight{}, SolidsLoss{}, OvenDial{}, CarryOver{}, GasMark{}, Pressure{}, Style(-3), Shape(-3),
		AltitudeRule(-3), Vessel(-3), LossBasis(-3), Approach(-3),
		PhaseKind(-3), LoafState(-3), LeftState(-3), Confidence(-3),
	} {
		if z.String() == "" {
			t.Errorf("%T prints nothing", z)
		}
	}
	long := strings.Repeat("x", 1<<20)
	for _, err := range parseAll(long) {
		if err == nil || len(err.Error()) > 400 {
			t.Errorf("a text of 1 MB: accepted, or an error of %d bytes", len(err.Error()))
		}
	}
	many := make([]Sample, mostSamples+1)
	if _, err := (Probe{Samples: many}).TimeLeft(); err == nil || len(err.Error()) > 1000 {
		t.Error("too many readings accepted, or reported one by one")
	}
}

func parseAll(text string) []error {
	var (
		style    Style
		shape    Shape
		rule     AltitudeRule
		vessel   Vessel
		basis    LossBasis
		approach Approach
		state    LoafState
		left     LeftState
		phase    PhaseKind
		firm     Confidence
		out      []error
	)
	for _, e := range []encoding.TextUnmarshaler{&style, &shape, &rule, &vessel, &basis, &approach, &state, &left,
		&phase, &firm} {
		out = append(out, e.UnmarshalText([]byte(text)))
	}
	_, e7 := ParsePressure(text)
	_, e8 := ParseGasMark(text)
	return append(out, e7, e8)
}

type text interface {
	encoding.TextMarshaler
	String() string
}

// Every name that is written is read back.
func TestTextForms(t *testing.T) {
	check := func(v text, into interface {
		encoding.TextUnmarshaler
		text
	}) {
		t.Helper()
		b, err := v.MarshalText()
		if err != nil {
			t.Fatal(err)
		}
		if err := into.UnmarshalText(b); err != nil || into.String() != v.String() {
			t.Errorf("%v -> %s -> %v, %v", v, b, into, err)
		}
		if err := into.UnmarshalText([]byte("no such thing")); err == nil {
			t.Errorf("%T accepts nonsense", v)
		}
	}
	for _, s := range quantity.Values[Style]() {
		check(s, new(Style))
	}
	for _, s := range quantity.Values[Shape]() {
		check(s, new(Shape))
	}
	for _, a := range quantity.Values[Approach]() {
		check(a, new(Approach))
	}
	for _, v := range quantity.Values[Vessel]() {
		check(v, new(Vessel))
	}
	for _, v := range quantity.Values[LoafState]() {
		check(v, new(LoafState))
	}
	for _, v := range quantity.Values[LeftState]() {
		check(v, new(LeftState))
	}
	for _, v := range quantity.Values[PhaseKind]() {
		check(v, new(PhaseKind))
	}
	for _, v := range quantity.Values[Confidence]() {
		check(v, new(Confidence))
	}
	for n := 1; n <= 10; n++ {
		check(Mark(n), new(GasMark))
	}
	check(Cap, new(AltitudeRule))
	check(Offset, new(AltitudeRule))
	check(OfDough, new(LossBasis))
	check(OfBread, new(LossBasis))
	check(Hectopascals(882.5), new(Pressure))
	for given, want := range map[string]float64{"29.92 inHg": 1013.21, "760 mmHg": 1013.25, "14.696 psi": 1013.25,
		"101.325kPa": 1013.25, "1,013.25 hPa": 1013.25, "101325 Pa": 1013.25, "900 mbar": 900} {
		if p, err := ParsePressure(given); err != nil || !(math.Abs(p.Hectopascals()-want) <= 0.02) {
			t.Errorf("%s: %v, %v", given, p, err)
		}
	}
	if p := InchesOfMercury(29.92); !(math.Abs(p.InchesOfMercury()-29.92) <= 1e-6) || !p.Equal(p) ||
		p.Compare(Hectopascals(900)) != 1 {
		t.Errorf("inches: %v", p)
	}
	for _, bad := range []string{"1013", "hPa", "-5 hPa", "1e3 hPa", "0 hPa", "1..3 hPa", "NaN hPa", ""} {
		if p, err := ParsePressure(bad); err == nil {
			t.Errorf("%q accepted as %v", bad, p)
		}
	}
	for _, v := range []text{Style(99), Shape(99), AltitudeRule(99), Vessel(99), LossBasis(99), Approach(99)} {
		if _, err := v.MarshalText(); err == nil {
			t.Errorf("%T writes what it is not", v)
		}
	}
}

func FuzzParse(f *testing.F) {
	for _, s := range []string{"", "lean hearth", "Soft-Roll", "1013.25 hPa", "29.92 inHg", "gas 4", "½", "pot",
		"of bread", "offset"} {
		f.Add(s)
	}
	f.Fuzz(func(_ *testing.T, s string) { parseAll(s) })
}

func FuzzTimeLeft(f *testing.F) {
	f.Add(20.0, 70.0, 25.0, 82.0, 1150.0, 1.0, false)
	f.Add(0.0, 94.0, 30.0, 96.0, 0.0, 0.0, true)
	f.Fuzz(func(t *testing.T, t1, c1, t2, c2, z, e float64, quickening bool) {
		p := Probe{
			Goal:        Goal{Place: At(quantity.Meters(z))},
			Samples:     readings(t1, c1, t2, c2),
			Error:       quantity.DeltaCelsius(e),
			Extrapolate: true,
		}
		if quickening {
			p.Approach = Quickening
		}
		l, err := p.TimeLeft()
		if err != nil {
			return
		}
		if l.ToTarget.Early < 0 || l.ToTarget.Early > l.ToTarget.Likely || l.ToTarget.Likely > l.ToTarget.Late ||
			l.ToTarget.Late > 48*time.Hour {
			t.Errorf("%+v", l.ToTarget)
		}
		_, _ = l.String(), l.Working()
	})
}
