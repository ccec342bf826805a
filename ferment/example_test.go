package ferment_test

import (
	"fmt"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/ferment"
)

// The maslin dough of the village hall: 20 % levain at 100 % hydration, 2 % salt at 72 % hydration, a fifth of the
// flour whole rye; it leaves the mixer at 24.5 °C, and the hall is 19 °C by night and 22 °C by day.
func maslin() ferment.Bulk {
	drift, err := ferment.Relaxing{
		Start: quantity.Celsius(24.5),
		Room: ferment.Room{
			Night:  quantity.Celsius(19),
			Day:    quantity.Celsius(22),
			Starts: quantity.Elapsed(9 * time.Hour),
		},
	}.History()
	if err != nil {
		fmt.Println(err)
	}
	return ferment.Bulk{
		Inoculation: quantity.MustPercent("9.090909 %"),
		Salt:        quantity.MustPercent("2 %"), Hydration: quantity.MustPercent("72 %"),
		WholeGrain: quantity.MustPercent("20 %"),
		Rise:       quantity.MustPercent("75 %"),
		History:    drift,
		Law:        ferment.GasBalance(),
	}
}

func ExampleBulk_Estimate() {
	e, err := maslin().Estimate()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(e)
	for _, line := range e.RestsOn() {
		fmt.Println("-", line)
	}
	// Output:
	// 75 % rise after 4h42m to 9h50m (80 %), likely 6h44m
	// - 9.1 % of the flour prefermented
	// - 72.0 % water, 2.0 % salt, 0.0 % sugar and 20 % whole grain: 104 % of the pace of a plain dough (judgment)
	// - gas balance; from 24.5 °C toward 19 °C by night, 22 °C by day
	// - a kitchen nothing is known of: the range narrows with every bake logged
}

func ExampleEstimate_RiseAt() {
	e, err := maslin().Estimate()
	if err != nil {
		fmt.Println(err)
		return
	}
	band, err := e.RiseAt(5 * time.Hour)
	fmt.Println(band, err)
	// Output:
	// 14.51 % to 85.61 % (80 %), likely 37.22 % <nil>
}

func ExampleEstimate_RiseCurve() {
	e, err := maslin().Estimate()
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, p := range e.RiseCurve(5) {
		fmt.Println(p.At, p.Temperature.Text(quantity.CelsiusScale, 1), p.Rise)
	}
	// Output:
	// 0m 24.5 °C 0 % to 0 % (80 %)
	// 2h42m17s 22.8 °C 4.56 % to 22.52 % (80 %), likely 9.75 %
	// 5h24m35s 22.3 °C 17.35 % to 101.4 % (80 %), likely 44.81 %
	// 8h06m52s 22.1 °C 46.65 % to 226.26 % (80 %), likely 114.68 %
	// 10h49m09s 21.7 °C 94.33 % to 300 % (80 %), likely 207.44 %
}

func ExampleEstimate_Update() {
	e, err := maslin().Estimate()
	if err != nil {
		fmt.Println(err)
		return
	}
	p, err := e.Update(ferment.RiseReading{At: quantity.Elapsed(4 * time.Hour), Rise: quantity.MustPercent("20 %")})
	fmt.Println(p, err)
	// Output:
	// 15m later than expected: 6h11m to 7h59m (80 %), likely 7h <nil>
}

func ExampleEstimate_Cautions() {
	b := maslin()
	b.Enriched = true
	e, err := b.Estimate()
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, c := range e.Cautions() {
		fmt.Println(c)
	}
	// Output:
	// raw dough: raw flour and raw dough are not eaten or tasted; wash hands and surfaces; keep rising dough away from pets: it goes on rising inside them
	// food safety: a dough with egg or milk stands between 5 °C and 60 °C for 9h50m at the late end, longer than the 2h that usual rules allow perishable food; keep it cold or shorten it, and follow your local food rules
}

func ExampleEstimate_Flavor() {
	b := maslin()
	b.History = ferment.Constant(quantity.Celsius(30))
	e, err := b.Estimate()
	if err != nil {
		fmt.Println(err)
		return
	}
	f, err := e.Flavor(e.Ready().Likely)
	fmt.Println(f, err)
	// Output:
	// acid index 172 (100 is 24 °C throughout) <nil>
}

func ExampleHeights_Rise() {
	fmt.Println(ferment.Heights{Start: quantity.Centimeters(8), Now: quantity.Centimeters(12)}.Rise())
	// Output:
	// 50 % <nil>
}

func ExampleLevainPercent_Prefermented() {
	fmt.Println(ferment.LevainPercent{Levain: quantity.MustPercent("20 %"),
		Hydration: quantity.MustPercent("100 %")}.Prefermented())
	// Output:
	// 9.090909 % <nil>
}

func ExampleBulk_AmountFor() {
	fmt.Println(maslin().AmountFor(6 * time.Hour))
	fmt.Println(maslin().AmountFor(40 * time.Minute))
	// Output:
	// 11.4 % of the flour prefermented: 75 % rise after 4h09m to 8h49m (80 %), likely 6h <nil>
	// no amount does it: it would take more than can be put in: give it more time or warmth <nil>
}

func ExampleBulk_StartFor() {
	hall := ferment.Relaxing{Room: ferment.Room{Night: quantity.Celsius(20)}}
	fmt.Println(maslin().StartFor(8*time.Hour, hall))
	// Output:
	// 22.7 °C: 75 % rise after 5h30m to 11h53m (80 %), likely 8h <nil>
}

func ExampleBulk_RoomFor() {
	fmt.Println(maslin().RoomFor(8*time.Hour, ferment.Relaxing{Start: quantity.Celsius(24.5)}))
	// Output:
	// 18.6 °C: 75 % rise after 5h18m to 12h29m (80 %), likely 8h <nil>
}

func ExampleBulk_HeldFor() {
	fmt.Println(maslin().HeldFor(5 * time.Hour))
	// Output:
	// 26.7 °C: 75 % rise after 3h33m to 7h11m (80 %), likely 5h <nil>
}

// A round of 900 g, shaped at 24 °C, rests half an hour and goes into the refrigerator for the night.
func ExampleProof_RiseBeforeShaping() {
	target, err := ferment.Proof{
		Bulk: maslin(), Bench: quantity.Elapsed(30 * time.Minute), Total: quantity.MustPercent("80 %"),
		Stages: []ferment.Piece{{
			Mass: quantity.Grams(900), Form: ferment.Round, Into: ferment.Room{Night: quantity.Celsius(4)},
			Exposure: ferment.RefrigeratorBasket,
			For:      quantity.Elapsed(14 * time.Hour),
		}},
	}.RiseBeforeShaping()
	fmt.Println(target, err)
	fmt.Println(target.Shape)
	fmt.Println("shaped at", target.Shaped, "from the cold at", target.Then[1])
	// Output:
	// shape at 25 %, for the oven at 47 % to 125 %, likely 80 % (80 %) <nil>
	// 25 % rise after 2h50m to 6h18m (80 %), likely 4h13m
	// shaped at 22.464 °C from the cold at 4.461 °C
}

func ExampleRipening_Ripe() {
	seed, err := ferment.FeedRatio{Seed: 1, Flour: 3, SeedHydration: quantity.MustPercent("100 %")}.SeedShare()
	if err != nil {
		fmt.Println(err)
		return
	}
	hall := ferment.Constant(quantity.Celsius(21))
	fmt.Println(ferment.Ripening{Seed: seed, WholeGrain: quantity.MustPercent("50 %"), History: hall,
		Law: ferment.GasBalance(), ColdSeed: true}.Ripe())
	// Output:
	// ripe after about 8h30m, at its peak after 6h50m to 13h50m (80 %), likely 9h40m, usable until about 14h15m <nil>
}

func ExampleFeedRatio_SeedShare() {
	fmt.Println(ferment.FeedRatio{Seed: 1, Flour: 2, SeedHydration: quantity.MustPercent("100 %")}.SeedShare())
	// Output:
	// 20 % <nil>
}

func ExampleLearning_Learn() {
	var log []ferment.LoggedBulk
	for _, took := range []string{"6h20m", "6h", "6h45m", "5h50m", "6h30m"} {
		d, err := quantity.ParseDuration(took)
		if err != nil {
			fmt.Println(err)
			return
		}
		log = append(log, ferment.LoggedBulk{Bulk: maslin(), Took: quantity.Elapsed(d)})
	}
	lesson, err := ferment.Learning{Bakes: log}.Learn()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(lesson)
	b := maslin()
	b.Culture = lesson.Culture
	fmt.Println(b.Estimate())
	// Output:
	// learned from 5 bakes: pace 103 % (88 % to 119 %), +0.0 % a degree beyond the law, 11 % from bake to bake
	// 75 % rise after 5h37m to 7h06m (80 %), likely 6h18m <nil>
}

func ExampleCurve_Dose() {
	m, err := ferment.GanzleYeast().Dose(ferment.Constant(quantity.Celsius(24)), 0, 6*time.Hour)
	fmt.Printf("%.4f %v\n", m, err)
	// Output:
	// 2.1885 <nil>
}

func ExampleCurve_DoublingTime() {
	h, ok := ferment.GanzleYeast().DoublingTime(quantity.Celsius(20))
	fmt.Printf("%.2f h %v\n", h, ok)
	// Output:
	// 3.08 h true
}

func ExampleCurve_Optimum() {
	t, rate := ferment.GanzleLactobacilli().Optimum()
	fmt.Printf("%v %.4f/h\n", t, rate)
	// Output:
	// 33.023 °C 0.6653/h
}

func ExampleCurveTable_Rates() {
	rates, err := ferment.CurveTable{
		Curves:       []ferment.Curve{ferment.GanzleYeast(), ferment.TradeQ10()},
		Temperatures: []quantity.Temperature{quantity.Celsius(8), quantity.Celsius(16), quantity.Celsius(24)},
	}.Rates()
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, r := range rates.Rows {
		fmt.Printf("%v %.3f %v\n", r.Temperature, r.Rates, r.InRange)
	}
	// Output:
	// 8 °C [0.021 0.113] [true false]
	// 16 °C [0.114 0.203] [true true]
	// 24 °C [0.365 0.365] [true true]
}

func ExampleConstant() {
	fmt.Println(ferment.Constant(quantity.Fahrenheit(77)))
	// Output:
	// held at 25 °C
}

func ExampleReadings_History() {
	h, err := ferment.Readings{Points: []ferment.Knot{{At: 0, Temperature: quantity.Celsius(24.5)},
		{At: quantity.Elapsed(2 * time.Hour), Temperature: quantity.Celsius(22)}, {At: quantity.Elapsed(5 * time.Hour),
			Temperature: quantity.Celsius(21)}}}.History()
	fmt.Println(h, err)
	fmt.Println(h.At(time.Hour))
	// Output:
	// 3 readings over 5h, 21.0 °C to 24.5 °C <nil>
	// 23.25 °C
}

func ExampleParseReadings() {
	r, err := ferment.ParseReadings("time,temperature (°F)\n22:30,76.1\n23:30,74.0\n00:30,72.5\n")
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(r.History())
	// Output:
	// 3 readings over 2h, 22.5 °C to 24.5 °C <nil>
}

func ExampleRelaxing_History() {
	h, err := ferment.Relaxing{Start: quantity.Celsius(25), Room: ferment.Room{Night: quantity.Celsius(20)}}.History()
	fmt.Println(h.At(2*time.Hour).Text(quantity.CelsiusScale, 1), h.At(6*time.Hour).Text(quantity.CelsiusScale, 1), err)
	// Output:
	// 23.0 °C 21.1 °C <nil>
}

func ExamplePiece_History() {
	c := ferment.Piece{Mass: quantity.Kilograms(1), Start: quantity.Celsius(25),
		Into: ferment.Room{Night: quantity.Celsius(4)}, Exposure: ferment.Refrigerator}
	mean, err := c.History()
	if err != nil {
		fmt.Println(err)
		return
	}
	core, err := c.Core()
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, h := range []time.Duration{1, 2, 4, 8} {
		fmt.Printf("%v h: mean %.1f, core %.1f\n", int(h), mean.At(h*time.Hour), core.At(h*time.Hour))
	}
	// Output:
	// 1 h: mean 18.2 °C, core 22.5 °C
	// 2 h: mean 13.8 °C, core 17.1 °C
	// 4 h: mean 8.7 °C, core 10.2 °C
	// 8 h: mean 5.1 °C, core 5.4 °C
}

func ExamplePiece_TimeConstant() {
	fmt.Println(ferment.Piece{Mass: quantity.Kilograms(5), Form: ferment.Tub, Start: quantity.Celsius(24.5),
		Into: ferment.Room{Night: quantity.Celsius(20)}, Exposure: ferment.Covered}.TimeConstant())
	// Output:
	// 6h46m46s <nil>
}

func ExampleJoin() {
	h, err := ferment.Join(
		ferment.Stretch{History: ferment.Constant(quantity.Celsius(24)), For: quantity.Elapsed(4 * time.Hour)},
		ferment.Stretch{History: ferment.Constant(quantity.Celsius(5))})
	fmt.Println(h, err)
	// Output:
	// held at 24 °C for 4h, then held at 5 °C <nil>
}

func ExampleHistory_Mean() {
	h, err := ferment.Join(
		ferment.Stretch{History: ferment.Constant(quantity.Celsius(24)), For: quantity.Elapsed(4 * time.Hour)},
		ferment.Stretch{History: ferment.Constant(quantity.Celsius(5))})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(h.Mean(0, 8*time.Hour))
	// Output:
	// 14.5 °C <nil>
}

func ExampleHistory_Shift() {
	h, err := ferment.Relaxing{Start: quantity.Celsius(25), Room: ferment.Room{Night: quantity.Celsius(20)}}.History()
	if err != nil {
		fmt.Println(err)
		return
	}
	later, err := h.Shift(2 * time.Hour)
	fmt.Println(later.At(0).Text(quantity.CelsiusScale, 1), err)
	// Output:
	// 23.0 °C <nil>
}

// A static example of the R package biogrowth, in decimal logs: from 1 to 3 with 0.2 a hour and a lag of 20 h.
func ExampleBaranyi_DoseTo() {
	const ln10 = 2.302585092994046
	mu := 0.2 * ln10
	b := ferment.Baranyi{Start: 1 * ln10, Max: 7 * ln10, Work: mu * 20}
	m, reached, err := b.DoseTo(3 * ln10)
	fmt.Printf("%.4f h %v %v\n", m/mu, reached, err)
	// Output:
	// 29.9784 h true <nil>
}

func ExampleBaranyi_After() {
	const ln10 = 2.302585092994046
	mu := 0.2 * ln10
	y, err := ferment.Baranyi{Start: 1 * ln10, Max: 7 * ln10, Work: mu * 20}.After(mu * 40)
	fmt.Printf("%.6f %v\n", y/ln10, err)
	// Output:
	// 4.995722 <nil>
}

func ExampleBaranyi_LagAt() {
	b := ferment.Baranyi{Max: 10, Work: ferment.WorkFromQ0(1e-4)}
	fmt.Printf("%.2f h, Q0 %.0e\n", b.LagAt(1.15), b.Q0())
	// Output:
	// 8.01 h, Q0 1e-04
}

func ExampleGompertz_At() {
	g := ferment.Gompertz{Start: 2, Rise: 6, Slope: 0.2, Lag: 25}
	t, _ := g.TimeTo(2.5)
	fmt.Printf("%.4f %.3f h\n", g.At(40), t)
	// Output:
	// 4.9847 25.991 h
}

func ExampleCardinalGamma() {
	fmt.Printf("%.2f %.6f\n", ferment.CardinalGamma(5, 4, 6.5, 9, 1), ferment.CardinalGamma(15, 5, 35, 40, 2))
	// Output:
	// 0.64 0.151515
}

func ExampleZwieteringGamma() {
	fmt.Println(ferment.ZwieteringGamma(30, 25, 35, 1))
	// Output:
	// 0.5
}

func ExampleSquareRoot_Optimum() {
	m := ferment.SquareRoot{Min: 5, Max: 40, B: 1, C: 0.3}
	fmt.Printf("%.4f °C, γ(20) = %.4f\n", m.Optimum(), m.Gamma(20))
	// Output:
	// 32.5763 °C, γ(20) = 0.3699
}

func ExampleCardinal_Curve() {
	c, err := ferment.Cardinal{Name: "our own yeast", Min: 3, Opt: 31, Max: 44, Rate: 0.4}.Curve()
	fmt.Printf("%v %.3f/h at 24 °C, %v\n", c, c.Rate(24), err)
	// Output:
	// our own yeast 0.333/h at 24 °C, <nil>
}

func ExampleConstantQ10_Curve() {
	c, err := ferment.ConstantQ10{
		Name:      "doubling each 10 °C",
		Q:         2,
		Rate:      0.36,
		Reference: 24,
		Low:       18,
		High:      30,
	}.Curve()
	fmt.Printf("%v %.3f/h at 19 °C, %v\n", c, c.Rate(19), err)
	// Output:
	// doubling each 10 °C 0.255/h at 19 °C, <nil>
}

func ExamplePiece_Core() {
	core, err := ferment.Piece{
		Mass: quantity.Kilograms(1), Start: quantity.Celsius(25), Into: ferment.Room{Night: quantity.Celsius(4)},
		Exposure: ferment.Refrigerator,
	}.Core()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("the middle after 2 h: %.1f\n", core.At(2*time.Hour))
	// Output: the middle after 2 h: 17.1 °C
}

func ExampleSquareRoot_Curve() {
	curve, err := ferment.SquareRoot{Name: "my culture", Min: 2, Max: 40, B: 0.03, C: 0.3}.Curve()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.3f/h at 20 °C, %.3f/h at 28 °C\n", curve.Rate(20), curve.Rate(28))
	// Output: 0.290/h at 20 °C, 0.576/h at 28 °C
}

func ExampleLesson_Reviews() {
	var log []ferment.LoggedBulk
	for _, took := range []time.Duration{380, 360, 405, 350, 390} {
		log = append(log, ferment.LoggedBulk{Bulk: maslin(), Took: quantity.Elapsed(took * time.Minute)})
	}
	lesson, err := ferment.Learning{Bakes: log}.Learn()
	if err != nil {
		fmt.Println(err)
		return
	}
	all, inside, err := lesson.Reviews()
	fmt.Println(inside, "of", len(all), "bakes took as long as the others would have predicted", err)
	// Output: 5 of 5 bakes took as long as the others would have predicted <nil>
}

// A levain with a little yeast beside it: the gas of both is added up.
func ExampleBulk_Estimate_levainWithYeast() {
	dough := ferment.Bulk{
		Inoculation: quantity.MustPercent("9.1 %"), Yeast: ferment.Yeast{Kind: ferment.InstantYeast,
			Amount: quantity.MustPercent("0.1 %")},
		Salt: quantity.MustPercent("2 %"), Hydration: quantity.MustPercent("72 %"), Rise: quantity.MustPercent("75 %"),
		History: ferment.Constant(quantity.Celsius(24)),
		Law:     ferment.GasBalance(),
	}
	e, err := dough.Estimate()
	fmt.Println(e, err)
	amount, err := dough.AmountFor(4 * time.Hour)
	fmt.Println(amount.Yeast.Amount.Text(2), err)
	// Output:
	// 75 % rise after 2h41m to 5h52m (80 %), likely 3h56m <nil>
	// 0.10 % <nil>
}
