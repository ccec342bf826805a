package mixing_test

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"sync"
	"testing"
	"time"

	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/workcheck"
)

// fields lists the refused fields with their reasons.
func fields(err error) string {
	var out []string
	for _, e := range quantity.InputErrors(err) {
		out = append(out, e.GoPath+" "+errors.Unwrap(e).Error())
	}
	return strings.Join(out, "; ")
}

func TestEveryProblemIsReportedInFieldOrder(t *testing.T) {
	nan := math.NaN()
	for name, c := range map[string]struct {
		err  error
		want string
	}{
		"water, zero": {second(mixing.Factors{}.Water()), "Target required; Others required"},
		"water": {second(mixing.Factors{
			Target: quantity.Celsius(400), Others: []mixing.Factor{{Name: "flour"},
				{Temperature: quantity.Celsius(200)}}, Friction: quantity.DeltaCelsius(nan),
			Coldest: quantity.Celsius(50), Warmest: quantity.Celsius(20), Pour: quantity.Grams(-1),
			Tap: quantity.Celsius(120), Mixing: quantity.Elapsed(-time.Minute),
		}.Water()), "Target out of range; Others[0].Temperature required; Others[1].Temperature out of range; " +
			"Friction out of range; Warmest inconsistent; Pour out of range; Tap out of range; Mixing out of range"},
		"water, many factors": {second(mixing.Factors{Target: quantity.Celsius(25), Others: make([]mixing.Factor,
			1_000_000)}.Water()), "Others out of range"},
		"water below zero kelvin": {second(mixing.Factors{
			Target: quantity.Celsius(0), Others: repeat(quantity.Celsius(95), 5),
		}.Water()), "Others inconsistent"},
		"friction, zero": {second(mixing.Measured{}.Friction()), "Dough required; Water required; Others required"},
		"rise": {second(mixing.Friction{Factor: quantity.DeltaCelsius(nan)}.Rise()),
			"Factor out of range; Factors required"},
		"friction of": {second(mixing.FrictionOf(quantity.DeltaCelsius(1e6), -1)),
			"rise out of range; factors out of range"},
		"convert": {second(mixing.Friction{Factor: quantity.DeltaCelsius(1e6), Factors: 1}.For(1e9)),
			"Factor out of range; Factors out of range; factors out of range"},
		"ice, zero": {second(mixing.IceWater{}.Replace()), "Water required; Tap required; Need required"},
		"ice": {second(mixing.IceWater{Water: quantity.Grams(nan), Tap: quantity.Celsius(99),
			Need: quantity.Celsius(-5), Ice: quantity.Celsius(5), Melting: quantity.DeltaCelsius(-3)}.Add()),
			"Water out of range; Tap out of range; Need out of range; Ice out of range; Melting out of range"},
		"prior, zero": {second(mixing.MixerKind(0).Prior()), "kind required"},
		"prior":       {second(mixing.MixerKind(99).Prior()), "kind out of range"},
		"fits, zero":  {second(mixing.Mix{}.Fit()), "Mixer required; Dough required; Flour required"},
		"fits": {second(mixing.Mix{Mixer: -1, Bowl: quantity.Liters(1e5), Dough: quantity.Grams(1),
			Flour: quantity.Grams(10), Water: quantity.Grams(100), Kind: 77, WaterTemperature: quantity.Celsius(2000),
			Rated: quantity.Grams(-3)}.Fit()),
			"Mixer out of range; Bowl out of range; Kind out of range; Water out of range; Dough " +
				"inconsistent; WaterTemperature out of range; Rated out of range"},
		"fits, no bowl": {second(mixing.Mix{Mixer: mixing.Fork, Dough: quantity.Grams(900), Flour: quantity.Grams(500),
			Water: quantity.Grams(300)}.Fit()), "Bowl required"},
		"kneading, zero": {second(mixing.Mix{}.Kneading()), "Mixer required; Dough required; Flour required"},
		"kneading": {second(mixing.Mix{
			Mixer: mixing.Hand, Dough: quantity.Grams(900), Flour: quantity.Grams(500), Water: quantity.Grams(300),
			Salt: quantity.Grams(-1), Fat: quantity.Grams(nan), Sugar: quantity.Grams(-1),
			Prefermented: quantity.Grams(501),
		}.Kneading()), "Salt out of range; Fat out of range; Sugar out of range; Prefermented inconsistent"},
		"sticking, zero": {second(mixing.Sticking{Kneaded: -1}.Advise()),
			"Mix.Mixer required; Mix.Dough required; Mix.Flour required; Kneaded out of range"},
		"sticking": {second(mixing.Sticking{
			Mix: mixing.Mix{Mixer: mixing.Hand, Dough: quantity.Grams(900), Flour: quantity.Grams(500),
				Water: quantity.Grams(300)},
			Kneaded: quantity.Elapsed(5 * time.Hour), Added: quantity.Grams(101), Dough: quantity.Celsius(60),
		}.Advise()), "Kneaded out of range; Added out of range; Dough out of range"},
		"flour for": {second(mixing.Mix{Mixer: mixing.Hand, Dough: quantity.Grams(900),
			Flour: quantity.Grams(500), Water: quantity.Grams(300)}.FlourFor(quantity.NewPercent(61))),
			"hydration inconsistent"},
		"flour for, none": {second(mixing.Mix{Mixer: mixing.Hand, Dough: quantity.Grams(900),
			Flour: quantity.Grams(500), Water: quantity.Grams(300)}.FlourFor(quantity.NewPercent(nan))),
			"hydration out of range"},
		"change": {second(mixing.DoughChange{From: quantity.Celsius(60), SaltFrom: quantity.NewPercent(-1),
			SaltTo: quantity.NewPercent(3.1), Development: -1}.Effect()),
			"From out of range; To required; SaltFrom out of range; SaltTo out of range; Development out of range"},
		"change, vanishing": {second(mixing.DoughChange{From: quantity.Celsius(10), To: quantity.Celsius(40)}.Effect()),
			"Development outside the model's range"},
		"scald, zero": {second(mixing.Scald{}.Pour()),
			"Flour required; FlourTemperature required; Water required"},
		"scald": {second(mixing.Scald{
			Flour: quantity.Grams(100), FlourTemperature: quantity.Celsius(90), Water: quantity.Grams(40),
			Mash: quantity.Celsius(99),
			Bowl: mixing.HeatCapacity(nan), BowlTemperature: quantity.Celsius(200), Altitude: quantity.Meters(9000),
		}.Pour()), "FlourTemperature out of range; Water out of range; Mash out of range; Bowl out of range; " +
			"BowlTemperature out of range; Altitude out of range"},
		"balance, zero": {second(mixing.Balance{}.Final()),
			"Ingredients required; Water required; WaterTemperature required"},
		"balance": {second(hostileBalance().WaterFor(quantity.Celsius(nan))),
			"Ingredients[0].Mass out of range; Ingredients[0].Temperature required; Ingredients[0].Substance " +
				"required; Ingredients[1].SpecificHeat out of range; Ingredients[2].Hydration out of range; Ice " +
				"inconsistent; IceTemperature out of range; Bowl out of range; RoomExchange out of range; " +
				"Hydration out of range; Mixing out of range; WaterHeat out of range; target required"},
		"balance, no flour": {second(mixing.Balance{Ingredients: []mixing.Portion{{Mass: quantity.Grams(1),
			Temperature: quantity.Celsius(20), Substance: mixing.Salt}}, Water: quantity.Grams(100),
			WaterTemperature: quantity.Celsius(20)}.FlourFor(quantity.Celsius(25))), "Ingredients inconsistent"},
		"compare": {second(mixing.Balance{}.Compare(mixing.Factors{})),
			"Factors.Target required; Factors.Others required; Balance.Ingredients required; Balance.Water " +
				"required; Balance.target required"},
		"work": {second(mixing.Motor{Watts: nan, Share: quantity.NewPercent(101)}.Work()),
			"Watts out of range; Share out of range; Time required; Dough required"},
		"learn": {second(mixing.Log{Batches: []mixing.Logged{{}, {Speeds: make([]quantity.Elapsed, 9),
			Ingredients: make([]mixing.Portion, 300)}}, Thermometer: quantity.DeltaCelsius(-1),
			Hydration: mixing.SpecificEnergy(nan), Bowl: quantity.NewPercent(nan)}.Learn()),
			"Kind required; Batches[0].Ingredients required; Batches[0].Bowl required; Batches[0].Speeds " +
				"required; Batches[0].Dough required; Batches[1].Ingredients out of range; Batches[1].Dough " +
				"required; Thermometer out of range; Hydration out of range; Bowl out of range; " +
				"BowlSpread required"},
		"learn, too many": {second(mixing.Log{Kind: mixing.Spiral, Batches: make([]mixing.Logged, 10_001)}.Learn()),
			"Batches out of range"},
		"predict, zero": {second(mixing.Learned{}.Predict(mixing.Logged{}, quantity.Percent{})),
			"Learned required"},
		"minutes, zero": {second(mixing.Learned{}.MinutesLeft(mixing.Running{})), "Learned required"},
		"water plan, zero": {second(mixing.Planned{}.Pour()),
			"Target required; Room required; Ingredients required; Water required; Mixer required"},
		"kind, empty":      {second(mixing.ParseMixerKind("")), " required"},
		"kind, a megabyte": {second(mixing.ParseMixerKind(strings.Repeat("x", 1<<20))), " out of range"},
	} {
		if got := fields(c.err); got != c.want {
			t.Errorf("%s:\n got %s\nwant %s", name, got, c.want)
		}
		if c.err != nil && len(c.err.Error()) > 4000 {
			t.Errorf("%s: an error of %d bytes", name, len(c.err.Error()))
		}
	}
}

func second[T any](_ T, err error) error { return err }

func repeat(t quantity.Temperature, n int) []mixing.Factor {
	var out []mixing.Factor
	for range n {
		out = append(out, mixing.Factor{Temperature: t})
	}
	return out
}

func hostileBalance() mixing.Balance {
	nan := math.NaN()
	return mixing.Balance{
		Ingredients: []mixing.Portion{
			{Mass: quantity.Grams(nan)},
			{Mass: quantity.Grams(5), Temperature: quantity.Celsius(20), SpecificHeat: mixing.SpecificHeat(nan)},
			{Mass: quantity.Grams(5), Temperature: quantity.Celsius(20), Substance: mixing.Levain,
				Hydration: quantity.NewPercent(-4)},
		},
		Water: quantity.Grams(100), WaterTemperature: quantity.Celsius(20), Ice: quantity.Grams(101),
		IceTemperature: quantity.Celsius(3), Bowl: mixing.HeatCapacity(math.Inf(1)),
		RoomExchange: -1, Room: quantity.Celsius(20), Hydration: -1, Mixing: mixing.SpecificEnergy(nan), WaterHeat: 7,
	}
}

func TestLearnedRefusesWhatItHasNotSeen(t *testing.T) {
	l, err := mixing.Log{Kind: mixing.Planetary}.Learn()
	if err != nil {
		t.Fatal(err)
	}
	b := planned(20, 20, 20, 20, time.Minute, time.Minute) // two speeds; the prior alone knows one
	if got := fields(second(l.Predict(b, quantity.MustPercent("100 %")))); got != "Batch.Speeds inconsistent; "+
		"probability out of range" {
		t.Error(got)
	}
	if got := fields(second(l.MinutesLeft(mixing.Running{Now: quantity.Celsius(20), Limit: quantity.Celsius(25),
		Speed: 2, Probability: quantity.MustPercent("80 %")}))); got != "Speed out of range" {
		t.Error(got)
	}
	b.Speeds = b.Speeds[:1]
	// A log of a mixer that cools its dough says so instead of counting minutes backward.
	var cooling []mixing.Logged
	for range 200 {
		cooling = append(cooling, simulate(planned(25, 25, 25, 25, 5*time.Minute, 5*time.Minute), -1, -1, 0.05, 0))
	}
	l, err = mixing.Log{Kind: mixing.Planetary, Batches: cooling}.Learn()
	if err != nil {
		t.Fatal(err)
	}
	_, err = l.MinutesLeft(mixing.Running{Now: quantity.Celsius(20), Limit: quantity.Celsius(25), Speed: 1,
		Probability: quantity.MustPercent("80 %")})
	if !errors.Is(err, quantity.ErrModelRange) {
		t.Error(err)
	}
}

// Results that were never computed print something and have empty workings; long names stay short.
func TestZeroResultsPrint(t *testing.T) {
	for _, r := range []fmt.Stringer{
		mixing.WaterResult{}, mixing.Friction{}, mixing.IceResult{}, mixing.Prior{}, mixing.BowlFit{},
		mixing.BalanceResult{}, mixing.Comparison{}, mixing.Learned{},
		mixing.Prediction{}, mixing.MinutesLeft{}, mixing.PlannedWater{}, mixing.WaterRemedy{}, mixing.Way(-1),
		mixing.Way(99), mixing.Fullness(-1), mixing.Fullness(99), mixing.DoughKind(-1),
		mixing.DoughKind(99), mixing.Substance(-1), mixing.Substance(99), mixing.MixerKind(99), mixing.Kneading{},
		mixing.KneadingStage{}, mixing.Clearing{}, mixing.DoughChanged{}, mixing.ScaldWater{},
		mixing.RiseEstimate{}, mixing.ShareEstimate{},
	} {
		_ = r.String()
	}
	for want, r := range map[string]fmt.Stringer{
		"no water": mixing.WaterResult{}, "0.41 Δ°C ± 0.06 Δ°C": mixing.RiseEstimate{
			Value: quantity.DeltaCelsius(0.41), StandardError: quantity.DeltaCelsius(0.06)},
	} {
		if r.String() != want {
			t.Errorf("%q, want %q", r, want)
		}
	}
	r, err := mixing.Factors{Target: quantity.Celsius(25), Others: []mixing.Factor{{Name: strings.Repeat("n", 1<<20),
		Temperature: quantity.Celsius(60)}}}.Water()
	if err != nil {
		t.Fatal(err)
	}
	if text := r.String() + r.Working().Text(80); len(text) > 5000 {
		t.Errorf("a name of a megabyte made a text of %d bytes", len(text))
	}
}

// What a result remembers is its own: changing the input afterwards changes nothing.
func TestResultsKeepTheirInputs(t *testing.T) {
	in := hall()
	r, err := in.Water()
	if err != nil {
		t.Fatal(err)
	}
	before := r.Working().Text(80)
	in.Others[0] = mixing.Factor{Name: "something else", Temperature: quantity.Celsius(1)}
	if after := r.Working().Text(80); after != before {
		t.Error("the working changed with the caller's slice")
	}
	b := planned(18, 20, 22, 20, time.Minute, time.Minute)
	l, err := mixing.Log{Kind: mixing.Spiral, Batches: []mixing.Logged{simulate(b, 0.4, 0.4, 0.05, 0)}}.Learn()
	if err != nil {
		t.Fatal(err)
	}
	before = l.Working().Text(80)
	b.Ingredients[0].Mass = quantity.Kilograms(9)
	b.Speeds[0] = 0
	if after := l.Working().Text(80); after != before {
		t.Error("the working changed with the caller's batch")
	}
}

func TestConcurrentUse(t *testing.T) {
	in := hall()
	l, err := mixing.Log{Kind: mixing.Planetary, Batches: []mixing.Logged{simulate(planned(18, 20, 22, 20, time.Minute,
		time.Minute), 0.4, 0.4, 0.05, 0)}}.Learn()
	if err != nil {
		t.Fatal(err)
	}
	want, _ := in.Water()
	p, _ := l.Predict(planned(18, 20, 22, 20, time.Minute, time.Minute), quantity.MustPercent("80 %"))
	var wg sync.WaitGroup
	for range 8 {
		wg.Go(func() {
			for range 25 {
				if got, err := in.Water(); err != nil || got.Working().Text(80) != want.Working().Text(80) {
					t.Error("water differs between goroutines")
				}
				if q, err := l.Predict(planned(18, 20, 22, 20, time.Minute, time.Minute),
					quantity.MustPercent("80 %")); err != nil || q.Dough != p.Dough {
					t.Error("prediction differs between goroutines")
				}
			}
		})
	}
	wg.Wait()
}

// Whatever a person types is read as a kind or refused; what the kind prints is read in files too.
func FuzzParseMixerKind(f *testing.F) {
	f.Add("planetary")
	f.Add(" Spiral")
	f.Add("")
	f.Fuzz(func(t *testing.T, text string) {
		k, err := mixing.ParseMixerKind(text)
		var u mixing.MixerKind
		exact := u.UnmarshalText([]byte(text)) == nil
		if exact && text != "" && (err != nil || u != k) {
			t.Errorf("%q is %v in a file and %v, %v typed", text, u, k, err)
		}
		if err == nil && (u.UnmarshalText([]byte(k.String())) != nil || u != k) {
			t.Errorf("%q read as %v, which does not read what it prints", text, k)
		}
	})
}

func TestKindsAndPriors(t *testing.T) {
	for k := mixing.Hand; k <= mixing.Processor; k++ {
		text, err := k.MarshalText()
		var back mixing.MixerKind
		if err != nil || back.UnmarshalText(text) != nil || back != k {
			t.Errorf("%v does not read what it prints", k)
		}
		p, err := k.Prior()
		if err != nil {
			t.Fatal(err)
		}
		workcheck.Verify(t, p.Working())
		if p.Low.Compare(p.Friction.Factor) > 0 || p.High.Compare(p.Friction.Factor) < 0 || p.Evidence.IsZero() ||
			p.RiseSpread.Sign() <= 0 || len(p.Figures) == 0 {
			t.Errorf("%+v", p)
		}
		for _, f := range p.Figures {
			if f.Source.IsZero() || f.Friction.Compare(p.Low) < 0 || f.Friction.Compare(p.High) > 0 {
				t.Errorf("%v: figure %+v outside the spread or without a source", k, f)
			}
		}
	}
	for i := range 10 {
		words := []interface {
			fmt.Stringer
			MarshalText() ([]byte, error)
		}{mixing.Way(i), mixing.Fullness(i), mixing.DoughKind(i), mixing.Substance(i), mixing.Find(i)}
		var way mixing.Way
		var verdict mixing.Fullness
		var kind mixing.DoughKind
		var substance mixing.Substance
		var find mixing.Find
		reads := []interface{ UnmarshalText([]byte) error }{&way, &verdict, &kind, &substance, &find}
		for j, w := range words {
			text, err := w.MarshalText()
			if err != nil {
				continue
			}
			if reads[j].UnmarshalText(text) != nil {
				t.Errorf("%T does not read %q", w, text)
			}
			if reads[j].UnmarshalText([]byte(strings.Repeat("x", 1<<20))) == nil {
				t.Errorf("%T reads anything", w)
			}
		}
		if i < 5 && (way != mixing.Way(i) || verdict != mixing.Fullness(i) || kind != mixing.DoughKind(i) ||
			substance != mixing.Substance(i) || find != mixing.Find(i)) {
			t.Errorf("%d came back as %v %v %v %v %v", i, way, verdict, kind, substance, find)
		}
	}
	if text, err := mixing.MixerKind(0).MarshalText(); err != nil || len(text) > 0 {
		t.Errorf("no kind was written as %q, %v", text, err)
	}
	if text, err := mixing.MixerKind(99).MarshalText(); err == nil {
		t.Errorf("an unknown kind was written as %q", text)
	}
}
