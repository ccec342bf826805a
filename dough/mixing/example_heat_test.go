package mixing_test

import (
	"fmt"
	"math/rand/v2"
	"time"

	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
)

// hallBalance is the hall kitchen's dough in its mixer: bowl and hook of 2 kg of steel, eight minutes
// on a planetary mixer that puts 12 kJ into a kilogram.
func hallBalance() mixing.Balance {
	return mixing.Balance{
		Ingredients: []mixing.Portion{
			{Name: "bread flour", Mass: quantity.Grams(1060), Temperature: quantity.Celsius(18),
				Substance: mixing.Flour},
			{Name: "whole rye", Mass: quantity.Grams(265), Temperature: quantity.Celsius(18), Substance: mixing.Flour},
			{Name: "levain", Mass: quantity.Grams(460), Temperature: quantity.Celsius(23), Substance: mixing.Levain,
				Hydration: quantity.MustPercent("100 %")},
			{Name: "salt", Mass: quantity.Grams(31), Temperature: quantity.Celsius(18), Substance: mixing.Salt},
		},
		Water: quantity.Grams(890), WaterTemperature: quantity.Celsius(12),
		Bowl: 1, Room: quantity.Celsius(21), RoomExchange: 0.8,
		Mixing: 12, Hydration: mixing.FlourHydrationHeat,
	}
}

func ExampleBalance_Final() {
	r, err := hallBalance().Final()
	fmt.Println(r, err)
	lines := r.Working().Lines(working.Reader{})
	for _, l := range lines[len(lines)-5:] {
		fmt.Printf("%s: %s = %s, %s\n", l.Name, l.Symbol, l.Formula, l.Value)
	}
	// Output:
	// dough at 22.5 °C <nil>
	// heat capacity of everything in the bowl: C = C_0 + C_1 + C_2 + C_3 + C_4 + C_5 + C_6, 9.392 kJ/K
	// heat of wetting: Q_wet = q × m_flour, 20.033 kJ
	// work of mixing: Q_mix = e × m_dough, 32.472 kJ
	// heat brought along, with 0 °C as zero: H = Q_wet + Q_mix + C_0 × T_0 + C_1 × T_1 + C_2 × T_2 + C_3 × T_3 + C_4 × T_4 + C_5 × T_5 + C_6 × T_6, 211.550 kJ
	// dough temperature: T_dough = H ÷ C, 22.5 °C
}

func ExampleBalance_WaterFor() {
	r, err := hallBalance().WaterFor(quantity.Celsius(25))
	fmt.Println(r, err)
	fmt.Printf("a degree of water moves the dough by %.2f\n", r.Sensitivity)
	// Output:
	// water at 18.2 °C <nil>
	// a degree of water moves the dough by 0.40
}

func ExampleBalance_IceFor() {
	b := hallBalance()
	b.WaterTemperature = quantity.Celsius(17)
	for i := range b.Ingredients {
		b.Ingredients[i].Temperature = quantity.Celsius(29)
	}
	r, err := b.IceFor(quantity.Celsius(25))
	fmt.Println(r, err)
	// Output:
	// replace 77 g of the water with crushed ice and pour 813 g of tap water <nil>
}

func ExampleBalance_FlourFor() {
	r, err := hallBalance().FlourFor(quantity.Celsius(25))
	fmt.Println(r, r.Feasible, err)
	// Output:
	// flour at 27.5 °C true <nil>
}

func ExampleBalance_Compare() {
	c, err := hallBalance().Compare(hall())
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(c)
	for _, p := range c.Parts {
		fmt.Printf("%-12s weighs %.2f, counted as %d: %.1f\n", p.Name, p.Weight, p.Counted, p.Shift)
	}
	fmt.Printf("heat added less friction factor: %.1f\n", c.HeatShift)
	fmt.Printf("the friction factor that would agree: %.1f\n", c.AgreeingFriction)
	fmt.Printf("a degree of water moves the dough by %.2f or %.2f\n", c.SensitivityByFactors, c.SensitivityByBalance)
	// Output:
	// factor method 26.0 °C, heat balance 18.2 °C; most of it is the weight of room (3.1 Δ°C)
	// flour        weighs 0.66, counted as 1: 2.4 Δ°C
	// room         weighs 0.21, counted as 1: 3.1 Δ°C
	// levain       weighs 0.37, counted as 1: 1.3 Δ°C
	// salt         weighs 0.01, counted as 0: −0.1 Δ°C
	// bowl         weighs 0.27, counted as 0: −1.1 Δ°C
	// heat added less friction factor: 2.1 Δ°C
	// the friction factor that would agree: 19.8 Δ°C
	// a degree of water moves the dough by 0.25 or 0.40
}

func ExampleMotor_Work() {
	e, err := mixing.Motor{Watts: 150, Share: quantity.NewPercent(70), Time: quantity.Elapsed(8 * time.Minute),
		Dough: quantity.Kilograms(2.7)}.Work()
	rise, _ := e.Warming(2.77)
	fmt.Printf("%.1f kJ/kg %v, a rise of %.1f\n", float64(e), err, rise)
	// Output:
	// 18.7 kJ/kg <nil>, a rise of 6.7 Δ°C
}

func ExampleWattHoursPerKilogram() {
	e := mixing.WattHoursPerKilogram(11) // the work of high-speed mixing
	rise, err := e.Warming(2.8)
	fmt.Printf("%.1f kJ/kg, a rise of %.1f %v\n", float64(e), rise, err)
	// Output:
	// 39.6 kJ/kg, a rise of 14.1 Δ°C <nil>
}

func ExampleBTUPerPound() {
	fmt.Printf("%.2f kJ/kg\n", float64(mixing.BTUPerPound(6.5))) // what flour gives off when it is wetted
	// Output:
	// 15.12 kJ/kg
}

func ExampleSubstance_Heat() {
	c, ok := mixing.Levain.Heat(quantity.MustPercent("100 %"))
	fmt.Printf("%.3f kJ/(kg·K) %v\n", float64(c), ok)
	// Output:
	// 3.018 kJ/(kg·K) true
}

func ExampleFriction_Rise() {
	d, err := mixing.Friction{Factor: quantity.DeltaFahrenheit(24), Factors: 3}.Rise()
	fmt.Println(d.Text(quantity.FahrenheitScale, 1), d, err)
	// Output:
	// 8.0 Δ°F 4.444 Δ°C <nil>
}

func ExampleFrictionOf() {
	f, err := mixing.FrictionOf(quantity.DeltaCelsius(4), 4)
	fmt.Println(f, err)
	// Output:
	// friction factor 16.0 Δ°C for 4 factors (the dough warms by 4.0 Δ°C) <nil>
}

// hallLog is what the hall kitchen wrote down in a winter: twelve batches, a mixer that warms the
// dough by 0.25 °C a minute at slow and 0.6 °C at fast speed.
func hallLog() mixing.Log {
	return mixing.Log{Kind: mixing.Planetary, Batches: batches(rand.New(rand.NewPCG(1150, 12)), 12, 0.25, 0.6, 0.08,
		0.4)}
}

func ExampleLog_Learn() {
	none, _ := mixing.Log{Kind: mixing.Planetary}.Learn()
	l, err := hallLog().Learn()
	fmt.Println(none)
	fmt.Println(err)
	fmt.Print(l.Report().Text(report.Options{Width: 80}))
	// Output:
	// the dough warms by 0.40 Δ°C ± 0.20 Δ°C a minute, from 0 batches and the trade's figures
	// <nil>
	// the dough warms by 0.39 Δ°C ± 0.07 Δ°C at speed 1 and 0.55 Δ°C ± 0.05 Δ°C at
	//   speed 2 a minute, from 12 batches and the trade's figures
	//
	//   warming a minute at speed 1         0.39 Δ°C; ± 0.07 Δ°C
	//   warming a minute at speed 2         0.55 Δ°C; ± 0.05 Δ°C
	//   bowl, of the dough's heat capacity  9.4 %; ± 3.1 %
	//   one batch strays by                 0.4 Δ°C
}

func ExampleLearned_Predict() {
	l, err := hallLog().Learn()
	if err != nil {
		fmt.Println(err)
		return
	}
	p, err := l.Predict(planned(18, 27, 23, 20, 3*time.Minute, 5*time.Minute), quantity.MustPercent("80 %"))
	fmt.Println(p, err)
	f, err := mixing.FrictionOf(p.Rise, 4)
	fmt.Printf("as a friction factor of four: %.1f %v\n", f.Factor, err)
	// Output:
	// dough at 26.1 °C to 27.3 °C (80 %), likely 26.7 °C, from 12 batches <nil>
	// as a friction factor of four: 13.2 Δ°C <nil>
}

func ExamplePlanned_Pour_learned() {
	l, err := hallLog().Learn()
	if err != nil {
		fmt.Println(err)
		return
	}
	b := planned(18, 20, 23, 20, 3*time.Minute, 5*time.Minute)
	w, err := mixing.Planned{
		Target: quantity.Celsius(25), Ingredients: []mixing.Portion{b.Ingredients[0], b.Ingredients[2]},
		Water: b.Ingredients[1].Mass,
		Room:  b.Bowl, Learned: l, Speeds: b.Speeds,
	}.Pour()
	fmt.Println(w, err)
	fmt.Printf("dough at %.1f to %.1f (%v)\n", w.Dough.Low, w.Dough.High, w.Dough.Probability)
	// Output:
	// water at 23.3 °C <nil>
	// dough at 24.4 °C to 25.6 °C (80 %)
}

func ExampleLearned_MinutesLeft() {
	l, err := hallLog().Learn()
	if err != nil {
		fmt.Println(err)
		return
	}
	left, err := l.MinutesLeft(mixing.Running{Now: quantity.Celsius(23.5), Limit: quantity.Celsius(26), Speed: 2,
		Probability: quantity.MustPercent("80 %")})
	fmt.Println(left, err)
	// Output:
	// 4m to 6m (80 %), likely 5m <nil>
}

func ExampleMixerKind_Cautions() {
	for _, c := range mixing.Planetary.Cautions() {
		fmt.Println(c)
	}
	// Output:
	// mixer: stay with a mixer that is running: a stiff dough can make it walk off a counter
	// mixer: keep hands, scrapers, sleeves and hair out of a moving bowl; stop it before you touch the dough
	// flour dust: cover the bowl and start slowly, so that flour does not fly
	// mixer: never defeat a guard or its interlock; the machine's manual and local safety rules decide
	// motor: let a motor that feels hot rest with the power off before the next batch
}

func ExampleParseMixerKind() {
	k, err := mixing.ParseMixerKind("spiral")
	fmt.Println(k, err)
	_, err = mixing.ParseMixerKind("blender")
	fmt.Println(err)
	// Output:
	// spiral <nil>
	// out of range: got "blender", want way of mixing: hand, planetary, spiral, fork, processor
}
