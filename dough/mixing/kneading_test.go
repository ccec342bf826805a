package mixing_test

import (
	"encoding/json"
	"fmt"
	"math"
	"slices"
	"testing"
	"time"

	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/workcheck"
)

// hallMix is the hall kitchen's wheat dough in a household mixer.
func hallMix() mixing.Mix {
	return mixing.Mix{
		Mixer: mixing.Planetary, Bowl: quantity.Liters(4.8), Dough: quantity.Grams(1180), Flour: quantity.Grams(680),
		Water: quantity.Grams(476),
		Salt:  quantity.Grams(14), Prefermented: quantity.Grams(136),
	}
}

func ExampleMix_Kneading() {
	k, err := hallMix().Kneading()
	fmt.Println(k, err)
	for _, s := range k.Ready {
		fmt.Println("-", s)
	}
	fmt.Println("windowpane:", k.Windowpane)
	// Output:
	// mix at speed 1 of 10, 2m to 4m; knead at speed 2 of 10, 6m to 8m <nil>
	// - it lets go of the bowl and winds round the hook; smooth and elastic
	// - a small piece stretches to a film, the windowpane; for an open crumb stop before it is thin
	// windowpane: transparent
}

// Rye is mixed and not kneaded, by hand too.
func ExampleMix_Kneading_rye() {
	m := hallMix()
	m.Mixer, m.Kind = mixing.Hand, mixing.RyeDough
	k, err := m.Kneading()
	fmt.Println(k, err)
	fmt.Println(k.Ready[0])
	fmt.Println("windowpane:", k.Windowpane)
	// Output:
	// mix by hand, 4m to 6m <nil>
	// even, without dry specks: a paste that spreads with a wet hand
	// windowpane: none
}

// A braid of 1.1 kg fits a household bowl in one batch.
func ExampleMix_Fit_household() {
	braid := mixing.Mix{
		Mixer: mixing.Planetary, Bowl: quantity.Liters(4.5), Kind: mixing.EnrichedDough, Dough: quantity.Grams(1100),
		Flour: quantity.Grams(580),
		Water: quantity.Grams(250), Fat: quantity.Grams(90), Sugar: quantity.Grams(70),
	}
	r, err := braid.Fit()
	fmt.Println(r, err)
	fmt.Println(r.Fullness, "by", r.Basis, "in", r.Batches, "batch")
	// Output:
	// 1100 g of dough is likely to fit: the most is about 2134 g to 2304 g, which is no maker's figure <nil>
	// likely to fit by household rule in 1 batch
}

func ExampleDoughChange_Effect() {
	r, err := mixing.DoughChange{From: quantity.Celsius(25), To: quantity.Celsius(20)}.Effect()
	fmt.Println(r, err)
	fmt.Print(r.Working().Text(100))
	// Output:
	// 1.39 times the kneading time; the dough is as stiff as with 2.6 points less water <nil>
	// What temperature and salt do to kneading
	// ========================================
	//
	// 1. development longer by
	//    Δt = 0.39 × (T_from − T_to)
	//    where
	//      T_from  25 °C  dough before
	//      T_to    20 °C  dough now
	//    Δt = 0.39 × (25 − 20)
	//    Δt = 1.95 min
	//    source: Hlynka, Influence of temperature, speed of mixing, and salt on some rheological
	//      properties of dough in the farinograph, Cereal Chemistry 39:286-303 (1962), abstract; one flour
	//
	// 2. factor on the kneading time
	//    k = (t + Δt) ÷ t
	//    where
	//      t   5 min  development time of the flour
	//      Δt  1.95 min  development longer by, from step 1
	//    k = (5 + 1.95) ÷ 5
	//    k = 1.390
	//    source: arithmetic on the values above [computed]
	//
	// 3. water more at the same consistency, points of the flour
	//    Δw = 0.52 × (T_from − T_to)
	//    where
	//      T_from  25 °C  dough before
	//      T_to    20 °C  dough now
	//    Δw = 0.52 × (25 − 20)
	//    Δw = 2.60 %
	//    source: Hlynka, Influence of temperature, speed of mixing, and salt on some rheological
	//      properties of dough in the farinograph, Cereal Chemistry 39:286-303 (1962), abstract; one flour
}

func ExampleSticking_Advise() {
	s := mixing.Sticking{Mix: hallMix(), Kneaded: quantity.Elapsed(9 * time.Minute)}
	c, err := s.Advise()
	fmt.Println(c.Step, err)
	s.Rested = true
	c, err = s.Advise()
	fmt.Println(c.Step, err)
	for _, m := range c.Say {
		fmt.Println("-", m)
	}
	for _, a := range c.Additions {
		fmt.Printf("%.1f: water %.1f, salt %.2f, prefermented %.1f\n", a.Flour, a.Hydration, a.Salt, a.Prefermented)
	}
	// Output:
	// scrape and rest <nil>
	// add flour <nil>
	// - a teaspoon of flour (2.6 g), knead a minute, look again; at most 20 g more in all
	// - write it down: it changes water, salt and levain for all of the flour
	// - switch the machine off before you scrape
	// 2.6 g: water 69.7 %, salt 2.05 %, prefermented 19.9 %
	// 7.8 g: water 69.2 %, salt 2.04 %, prefermented 19.8 %
	// 20.4 g: water 68.0 %, salt 2.00 %, prefermented 19.4 %
}

func ExampleMix_FlourFor() {
	m := mixing.Mix{Mixer: mixing.Hand, Dough: quantity.Grams(885), Flour: quantity.Grams(500),
		Water: quantity.Grams(375), Salt: quantity.Grams(10)}
	a, err := m.FlourFor(quantity.NewPercent(72))
	fmt.Printf("%.1f of flour; salt goes to %.2f %v\n", a.Flour, a.Salt, err)
	// Output:
	// 20.8 g of flour; salt goes to 1.92 % <nil>
}

func ExampleScald_Pour() {
	r, err := mixing.Scald{
		Flour: quantity.Grams(200), FlourTemperature: quantity.Celsius(20), Water: quantity.Grams(400), Bowl: 0.4,
		Altitude: quantity.Meters(1150),
	}.Pour()
	fmt.Println(r, err)
	fmt.Print(r.Working().Text(100))
	// Output:
	// water of 86 °C or hotter for a mash of 65 °C; boiling water gives 72 °C <nil>
	// Water for a scald
	// =================
	//
	// 1. heat capacity of the flour
	//    m_flour_kg = m_flour ÷ 1000
	//    where
	//      m_flour  200 g  flour
	//    m_flour_kg = 200 ÷ 1000
	//    m_flour_kg = 0.2 kg
	//    C_flour = m_flour_kg × c_flour
	//    where
	//      m_flour_kg  0.2 kg  flour
	//      c_flour     1.85 kJ/(kg·K)  specific heat of flour
	//    C_flour = 0.2 × 1.85
	//    C_flour = 0.3700 kJ/K
	//    source: Geankoplis, Transport Processes and Separation Process Principles, 4th ed., appendix A.4
	//
	// 2. heat capacity of the water
	//    m_water_kg = m_water ÷ 1000
	//    where
	//      m_water  400 g  water
	//    m_water_kg = 400 ÷ 1000
	//    m_water_kg = 0.4 kg
	//    C_water = m_water_kg × c_water
	//    where
	//      m_water_kg  0.4 kg  water
	//      c_water     4.186 kJ/(kg·K)  specific heat of water
	//    C_water = 0.4 × 4.186
	//    C_water = 1.6744 kJ/K
	//    source: GNU Project, GNU units 2.22, definitions file, water
	//
	// 3. water for the mash
	//    T_water = T + (C_flour × (T − T_flour) + C_bowl × (T − T_bowl)) ÷ C_water
	//    where
	//      T        65 °C  mash wanted
	//      C_flour  0.3700 kJ/K  heat capacity of the flour, from step 1
	//      T_flour  20 °C  flour
	//      C_bowl   0.400 kJ/K  heat capacity of the bowl
	//      T_bowl   20 °C  bowl
	//      C_water  1.6744 kJ/K  heat capacity of the water, from step 2
	//    T_water = 65 + (0.3700 × (65 − 20) + 0.400 × (65 − 20)) ÷ 1.6744
	//    T_water ≈ 85.7 °C
	//    source: heat given off equals heat taken up, with constant specific heats [computed]
	//
	// In other words
	//   heat capacity  How much heat it takes to warm something by one degree. Water takes more than twice
	//     as much as flour.
	//   mash or scald  Flour on which hot water was poured, so that its starch swells and holds more
	//     water.
	//   specific heat  The heat that warms one kilogram of something by one degree. A kelvin (K) is a step
	//     of one degree Celsius.
}

// Every dough has times in every mixer, in order, with signs and sources; rye is never kneaded.
func TestEveryDoughIsKneaded(t *testing.T) {
	for _, mixer := range quantity.Values[mixing.MixerKind]() {
		for _, kind := range quantity.Values[mixing.DoughKind]() {
			for _, water := range []float64{45, 55, 65, 73, 85} {
				for _, fat := range []float64{0, 5, 40} {
					for _, liters := range []float64{5, 20} {
						m := mixing.Mix{
							Mixer: mixer, Kind: kind, Bowl: quantity.Liters(liters), Flour: quantity.Grams(1000),
							Water: quantity.Grams(10 * water), Fat: quantity.Grams(10 * fat),
							Dough: quantity.Grams(2500),
						}
						k, err := m.Kneading()
						if err != nil || len(k.Stages) == 0 || len(k.Ready) == 0 || len(k.Under) == 0 ||
							len(k.Over) == 0 || !k.Windowpane.IsValid() {
							t.Fatalf("%v %v: %+v, %v", mixer, kind, k, err)
						}
						var from, to quantity.Elapsed
						for i, s := range k.Stages {
							from, to = from+s.From, to+s.To
							if s.From <= 0 || s.To < s.From || s.Source.IsZero() || !s.Step.IsValid() || i > 0 &&
								s.Step <= k.Stages[i-1].Step {
								t.Errorf("%v %v: stage %+v", mixer, kind, s)
							}
							machine := mixer == mixing.Planetary || mixer == mixing.Spiral || mixer == mixing.Fork
							if machine != (s.Speed > 0 && s.Speed <= s.Scale) {
								t.Errorf("%v %v: speed %d of %d", mixer, kind, s.Speed, s.Scale)
							}
							if s.Scale == 10 && s.Speed > 3 || s.Scale == 2 && water <= 50 &&
								kind != mixing.EnrichedDough && s.Speed > 1 {
								t.Errorf("%v %v at %v %%: speed %d of %d is too fast", mixer, kind, water, s.Speed,
									s.Scale)
							}
							if (kind == mixing.RyeDough || kind == mixing.GlutenFreeDough) && s.Step != mixing.MixTogether {
								t.Errorf("rye is kneaded: %v", k)
							}
						}
						if from != k.From || to != k.To || to > quantity.Elapsed(40*time.Minute) {
							t.Errorf("%v %v: %v to %v in all", mixer, kind, k.From, k.To)
						}
						if (kind == mixing.RyeDough || kind == mixing.GlutenFreeDough) != (k.Windowpane == mixing.NoWindowpane) {
							t.Errorf("%v: windowpane %v", kind, k.Windowpane)
						}
						// Butter after the gluten, where there is much of it.
						last := k.Stages[len(k.Stages)-1].Step == mixing.KneadFatIn
						wheaten := kind == mixing.WheatDough || kind == mixing.PizzaDough ||
							kind == mixing.EnrichedDough
						if rich := fat >= 10 || kind == mixing.EnrichedDough && fat == 0; wheaten && last != rich &&
							!(kind == mixing.PizzaDough && water <= 45) {
							t.Errorf("%v %v with %v %% of fat: %v", mixer, kind, fat, k)
						}
						workcheck.Verify(t, k.Working())
						if _, err := json.Marshal(k); err != nil {
							t.Error(err)
						}
					}
				}
			}
		}
	}
}

// The advice goes from waiting to resting to flour to folding, and never past the cap.
func TestStickingAdvice(t *testing.T) {
	minutes := func(m float64) quantity.Elapsed { return quantity.Elapsed(m * float64(time.Minute)) }
	plain := hallMix()
	with := func(change func(*mixing.Mix)) mixing.Mix {
		m := plain
		change(&m)
		return m
	}
	for name, c := range map[string]struct {
		in       mixing.Sticking
		step     mixing.ClearingStep
		expected bool
	}{
		"early":      {mixing.Sticking{Mix: plain, Kneaded: minutes(7.9)}, mixing.KneadOn, true},
		"first rest": {mixing.Sticking{Mix: plain, Kneaded: minutes(8)}, mixing.ScrapeAndRest, false},
		"then flour": {mixing.Sticking{Mix: plain, Kneaded: minutes(10), Rested: true}, mixing.AddFlour, false},
		"cap": {mixing.Sticking{Mix: plain, Kneaded: minutes(10), Rested: true, Added: quantity.Grams(20.4)},
			mixing.StopAndFold, false},
		"nearly cap": {mixing.Sticking{Mix: plain, Kneaded: minutes(10), Rested: true, Added: quantity.Grams(20.39)},
			mixing.AddFlour, false},
		"too long":     {mixing.Sticking{Mix: plain, Kneaded: minutes(18.1), Rested: true}, mixing.StopAndFold, false},
		"not yet long": {mixing.Sticking{Mix: plain, Kneaded: minutes(18), Rested: true}, mixing.AddFlour, false},
		"warm": {mixing.Sticking{Mix: plain, Kneaded: minutes(10), Dough: quantity.Celsius(28.1)},
			mixing.CoolIt, false},
		"not warm": {mixing.Sticking{Mix: plain, Kneaded: minutes(10), Dough: quantity.Celsius(28)},
			mixing.ScrapeAndRest, false},
		"rye": {mixing.Sticking{Mix: with(func(m *mixing.Mix) { m.Kind = mixing.RyeDough }),
			Kneaded: minutes(10)}, mixing.LeaveIt, true},
		"gluten-free": {mixing.Sticking{Mix: with(func(m *mixing.Mix) { m.Kind = mixing.GlutenFreeDough }),
			Kneaded: minutes(1)}, mixing.LeaveIt, true},
		"whole, early": {mixing.Sticking{Mix: with(func(m *mixing.Mix) { m.Kind = mixing.WholeGrainDough }),
			Kneaded: minutes(9.9)}, mixing.KneadOn, true},
		"whole": {mixing.Sticking{Mix: with(func(m *mixing.Mix) { m.Kind = mixing.WholeGrainDough }),
			Kneaded: minutes(10)}, mixing.ScrapeAndRest, false},
		"mixed rye": {mixing.Sticking{Mix: with(func(m *mixing.Mix) { m.Kind = mixing.MixedRyeDough }),
			Kneaded: minutes(7)}, mixing.ScrapeAndRest, true},
		"wet": {mixing.Sticking{Mix: with(func(m *mixing.Mix) {
			m.Water, m.Dough = quantity.Grams(517),
				quantity.Grams(1230)
		}), Kneaded: minutes(14), Rested: true}, mixing.StopAndFold, true},
		"rather wet": {mixing.Sticking{Mix: with(func(m *mixing.Mix) {
			m.Water, m.Dough = quantity.Grams(500),
				quantity.Grams(1230)
		}), Kneaded: minutes(14)}, mixing.ScrapeAndRest, true},
		"rich, no butter": {mixing.Sticking{Mix: with(func(m *mixing.Mix) {
			m.Kind, m.Fat, m.Dough = mixing.EnrichedDough, quantity.Grams(200), quantity.Grams(1500)
		}), Kneaded: minutes(16)}, mixing.KneadOn, true},
		"rich, butter in": {mixing.Sticking{Mix: with(func(m *mixing.Mix) {
			m.Kind, m.Fat, m.Dough = mixing.EnrichedDough, quantity.Grams(200), quantity.Grams(1500)
		}), Kneaded: minutes(16), FatIn: true}, mixing.ScrapeAndRest, false},
	} {
		r, err := c.in.Advise()
		if err != nil || r.Step != c.step || r.Expected != c.expected || len(r.Say) == 0 || r.String() == "" {
			t.Errorf("%s: %v, expected %v, %v; want %v, %v", name, r.Step, r.Expected, err, c.step, c.expected)
		}
		workcheck.Verify(t, r.Working())
		for _, a := range r.Additions {
			if a.Flour.Compare(r.Left) > 0 || r.Step != mixing.AddFlour && r.Step != mixing.ScrapeAndRest {
				t.Errorf("%s: %v of flour where %v is left and the step is %v", name, a.Flour, r.Left, r.Step)
			}
			all := 680 + c.in.Added.Grams() + a.Flour.Grams()
			for _, x := range [][2]float64{{a.Hydration.Points(), c.in.Mix.Water.Grams()}, {a.Salt.Points(), 14},
				{a.Prefermented.Points(), 136}} {
				if !(math.Abs(x[0]-100*x[1]/all) <= 1e-5) {
					t.Errorf("%s: %v, want %v", name, x[0], 100*x[1]/all)
				}
			}
		}
	}
}

// So stiff a dough is too much for a household mixer alone: it is finished by hand. A machine of the trade kneads it.
func TestStiffDoughIsFinishedByHand(t *testing.T) {
	for _, c := range []struct {
		mixer mixing.MixerKind
		bowl  float64
		kind  mixing.DoughKind
		water string
		want  bool
	}{
		{mixing.Planetary, 5, mixing.WheatDough, "55 %", true}, {mixing.Planetary, 5, mixing.WheatDough, "56 %", false},
		{mixing.Planetary, 5, mixing.PizzaDough, "50 %", true}, {mixing.Planetary, 5, mixing.EnrichedDough, "50 %", false},
		{mixing.Planetary, 20, mixing.WheatDough, "55 %", false}, {mixing.Spiral, 20, mixing.WheatDough, "55 %", false},
		{mixing.Hand, 0, mixing.WheatDough, "55 %", false},
	} {
		flour := quantity.Grams(800)
		water := quantity.MustPercent(c.water).Of(flour)
		k, err := mixing.Mix{Mixer: c.mixer, Bowl: quantity.Liters(c.bowl), Kind: c.kind, Flour: flour, Water: water,
			Dough: flour.Add(water)}.Kneading()
		if err != nil {
			t.Fatal(err)
		}
		got := slices.ContainsFunc(k.Notes, func(m working.Message) bool { return m.ID() == "mixing.note_stiff_household" })
		if got != c.want {
			t.Errorf("%v, %v L, %v, %v: said %v", c.mixer, c.bowl, c.kind, c.water, got)
		}
	}
}
