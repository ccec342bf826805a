package bake_test

import (
	"fmt"
	"time"

	"example.org/maslin/bake"
	"example.org/maslin/dough/quantity"
)

// The kitchen of the village hall stands at 1,150 m.
var hall = bake.At(quantity.Meters(1150))

func minute(n int) quantity.Elapsed { return quantity.Elapsed(time.Duration(n) * time.Minute) }

func ExampleSite_BoilingPoint() {
	b, err := hall.BoilingPoint()
	fmt.Println(b, err)
	// Output: 96.1 °C at 882.5 hPa <nil>
}

func ExampleSite_BoilingPoint_barometer() {
	// A low over the valley: the weather service says 995 hPa at sea level.
	b, err := bake.Site{Altitude: quantity.Meters(1150), SeaLevel: bake.Hectopascals(995)}.BoilingPoint()
	fmt.Println(b, err)
	// Output: 95.6 °C at 866.2 hPa <nil>
}

func ExampleAt() {
	fmt.Println(bake.At(quantity.MustLength("1150 m")).Altitude)
	// Output: 1150 m
}

func ExampleHectopascals() {
	fmt.Println(bake.Hectopascals(882.5))
	// Output: 882.5 hPa
}

func ExampleInchesOfMercury() {
	fmt.Println(bake.InchesOfMercury(29.92))
	// Output: 1013.2 hPa
}

func ExampleParsePressure() {
	p, err := bake.ParsePressure("26.06 inHg")
	fmt.Println(p, err)
	_, err = bake.ParsePressure("882")
	fmt.Println(err)
	// Output:
	// 882.5 hPa <nil>
	// unit: got "882", want a number with hPa, mbar, kPa, inHg, mmHg or psi, such as "1013 hPa"
}

func ExampleStyle_Guide() {
	for _, style := range []bake.Style{bake.LeanHearth, bake.Enriched, bake.Rye} {
		d, err := style.Guide()
		fmt.Println(d, err)
	}
	// Output:
	// lean hearth: core 96.0 °C (sources accept 93.0 °C to 99.0 °C), and 10 % lighter or 20m at the target; confidence good <nil>
	// enriched: core 90.0 °C (sources accept 88.0 °C to 95.0 °C), and 8 % lighter or 4m at the target; confidence fair <nil>
	// rye: core 98.0 °C (sources accept 96.0 °C to 99.0 °C), and 10 % lighter or 20m at the target; confidence fair <nil>
}

func ExampleGoal_Target() {
	lean, err := bake.Goal{Style: bake.LeanHearth, Place: hall}.Target()
	fmt.Println(lean, err)
	rich, err := bake.Goal{Style: bake.Enriched, Place: hall}.Target()
	fmt.Println(rich, err)
	// Output:
	// 94.1 °C (water boils here at 96.1 °C; at sea level sources accept 93.0 °C to 99.0 °C) <nil>
	// 90.0 °C (water boils here at 96.1 °C; at sea level sources accept 88.0 °C to 95.0 °C) <nil>
}

func ExampleLoafReading_Judge() {
	v, err := bake.LoafReading{
		Goal: bake.Goal{Style: bake.LeanHearth, Place: hall}, Core: quantity.Celsius(94.5),
		Dough: quantity.Grams(886), Loaf: quantity.Grams(785),
	}.Judge()
	fmt.Println(v, err)
	// Output: done: core 94.5 °C, 11.4 % lighter. The color of the crust is yours to judge. <nil>
}

func ExampleLoafReading_Judge_saysNothing() {
	v, err := bake.LoafReading{
		Goal: bake.Goal{Style: bake.LeanHearth, Place: hall},
		Core: quantity.Celsius(95.2),
	}.Judge()
	fmt.Println(v.State, err)
	fmt.Println(v)
	// Output:
	// the probe says nothing <nil>
	// a core of 95.2 °C says nothing: water boils here at 96.1 °C and every loaf ends there. Weigh it (at least 10 % lighter than its dough), or give it 20m from the moment it reached 94.1 °C.
}

func ExampleLoafReading_Judge_byTime() {
	// The core reached its target after 35 minutes; ten minutes later the loaf is set, and no more is known.
	r := bake.LoafReading{Core: quantity.Celsius(98.2), Held: minute(10), InOven: minute(45)}
	v, err := r.Judge()
	fmt.Println(v, err)
	r.Held, r.InOven = minute(26), minute(61)
	v, err = r.Judge()
	fmt.Println(v, err)
	// Output:
	// set, but not known to be baked out: core 98.2 °C. Weigh it (at least 10 % lighter than its dough), or give it up to 15m more, until its color is right: a loaf of 1000 g of dough usually bakes 40m to 1h (80 %), likely 50m. <nil>
	// done: core 98.2 °C, held for 26m. The color of the crust is yours to judge. <nil>
}

func ExampleProbe_TimeLeft() {
	l, err := bake.Probe{
		Goal: bake.Goal{Style: bake.LeanHearth, Place: hall},
		Samples: []bake.Sample{
			{At: minute(22), Core: quantity.Celsius(68)},
			{At: minute(27), Core: quantity.Celsius(80)},
		},
	}.TimeLeft()
	fmt.Println(l, err)
	// Output: 14m to 20m (80 %), likely 17m, to a core of 94.1 °C; baked out in 14m to 41m (80 %), likely 26m <nil>
}

func ExampleProbe_TimeLeft_exponential() {
	l, err := bake.Probe{
		Goal: bake.Goal{Style: bake.LeanHearth, Place: hall}, Approach: bake.Exponential,
		Samples: []bake.Sample{
			{At: minute(22), Core: quantity.Celsius(68)},
			{At: minute(27), Core: quantity.Celsius(80)},
		},
	}.TimeLeft()
	fmt.Println(l.ToTarget, err)
	// Output: 14m to 22m (80 %), likely 19m <nil>
}

func ExampleTakenOut_CarryOver() {
	c, err := bake.TakenOut{Place: hall, Core: quantity.Celsius(88)}.CarryOver()
	fmt.Println(c, err)
	// Output: out at 88.0 °C the core still rises to 89.6 °C to 94.5 °C (80 %), likely 92.1 °C; it does not bake out on the rack <nil>
}

func ExampleOvenPiece_BakeTime() {
	b, err := bake.OvenPiece{Style: bake.LeanHearth, Dough: quantity.Grams(886), Cold: true}.BakeTime()
	fmt.Println(b, err)
	// Output: 41m to 1h01m (80 %), likely 51m <nil>
}

func ExampleOvenPiece_BakeTime_fromAKnownBake() {
	b, err := bake.OvenPiece{
		Style: bake.LeanHearth, Dough: quantity.Grams(1300),
		KnownDough: quantity.Grams(886), KnownTime: minute(44),
	}.BakeTime()
	fmt.Println(b, err)
	// Output: 45m to 57m (80 %), likely 51m <nil>
}

func ExampleUnprobedLoaf_Arrival() {
	a, err := bake.UnprobedLoaf{
		Goal:  bake.Goal{Place: hall},
		Dough: quantity.Grams(886),
		Start: quantity.Celsius(5),
	}.Arrival()
	fmt.Println(a, err)
	// Output: 30m to 1h10m (80 %), likely 50m, to a core of 94.1 °C <nil>
}

func ExampleOvenLoad_Program() {
	p, err := bake.OvenLoad{
		Style:    bake.LeanHearth,
		Dough:    quantity.Grams(886),
		Pieces:   6,
		Vessel:   bake.Pot,
		Together: 2,
		Cold:     true,
	}.Program()
	fmt.Println(p, err)
	for _, phase := range p.Phases[:5] {
		fmt.Println(phase)
	}
	// Output:
	// 3 rounds of 2: preheat 45m, covered 22m, uncovered 19m to 39m (80 %), likely 29m, reheat 10m; in all 3h07m to 4h08m (80 %), likely 3h37m <nil>
	// 0m: preheat (round 1, 250 °C, 45m): oven with the pots and their lids in it
	// 45m: load (round 1, 250 °C): score and load
	// 45m: covered (round 1, 250 °C, 22m): lid on
	// 1h07m: vent (round 1, 220 °C): lid off, away from you
	// 1h07m: uncovered (round 1, 220 °C, 29m): until the core is at its target
}

func ExampleOvenSetting_Dial() {
	d, err := bake.OvenSetting{Wanted: quantity.Celsius(230), Fan: true, Off: quantity.DeltaCelsius(-10)}.Dial()
	fmt.Println(d, err)
	// Output: set 220 °C (advice 210 °C to 225 °C), dial 220 °C, gas mark 7 <nil>
}

func ExampleGasMark_Temperature() {
	g, err := bake.ParseGasMark("gas 4")
	fmt.Printf("%v is %.1f, on the dial %v, %v\n", g, g.Temperature(), g.Dial(), err)
	// Output: gas mark 4 is 176.7 °C, on the dial 175 °C, <nil>
}

func ExampleParseGasMark() {
	g, err := bake.ParseGasMark("½")
	fmt.Println(g, g.Temperature(), err)
	// Output: gas mark 1/2 121.111 °C <nil>
}

func ExampleMark() {
	fmt.Println(bake.Mark(7), bake.Mark(12))
	// Output: gas mark 7 no gas mark
}

func ExampleNearestMark() {
	g, off := bake.NearestMark(quantity.Celsius(230))
	fmt.Println(g, off)
	// Output: gas mark 8 2.222 Δ°C
}

func ExampleStyle_UsualLoss() {
	g, err := bake.LeanHearth.UsualLoss(quantity.Grams(886))
	fmt.Println(g, err)
	// Output: 11.5 % of the dough (9.5 % to 16.5 %) <nil>
}

func ExamplePromisedLoaf_Scaling() {
	s, err := bake.PromisedLoaf{Baked: quantity.Grams(780), Loss: quantity.MustPercent("12 %")}.Scaling()
	fmt.Println(s, err)
	b, err := bake.PromisedLoaf{
		Baked: quantity.Grams(780),
		Loss:  quantity.MustPercent("12 %"),
		Basis: bake.OfBread,
	}.Scaling()
	fmt.Println(b, err)
	// Output:
	// 886.4 g of dough for 780 g baked <nil>
	// 873.6 g of dough for 780 g baked <nil>
}

func ExampleLossLog_Learn() {
	l, err := bake.LossLog{Style: bake.LeanHearth, Loaves: []bake.WeighedLoaf{
		{Dough: quantity.Grams(886), Baked: quantity.Grams(771)},
		{Dough: quantity.Grams(884), Baked: quantity.Grams(772)},
		{Dough: quantity.Grams(888), Baked: quantity.Grams(769)},
	}}.Learn()
	fmt.Println(l, err)
	// Output: 12.6 % of the dough (next loaf 11.9 % to 13.4 %), from 3 loaves <nil>
}

func ExamplePackedWeight_Limits() {
	a, err := (bake.PackedWeight{Nominal: quantity.Grams(400)}).Limits()
	fmt.Println(a, err)
	// Output: 400 g packed: on average at least 400 g, at most 1 in 40 below 388 g, none below 376 g (check your local law) <nil>
}

func ExampleSolids_LeastLoss() {
	s, err := bake.Solids{Water: quantity.MustPercent("62 %"), OtherSolids: quantity.MustPercent("2 %")}.LeastLoss()
	fmt.Println(s, err)
	// Output: a loss of at least 13.5 % of the dough leaves 62 % solids (check your local law) <nil>
}

func ExampleCoolingLoaf_Time() {
	c, err := bake.CoolingLoaf{
		Style: bake.LeanHearth,
		Shape: bake.Round,
		Baked: quantity.Grams(780),
		From:  quantity.Celsius(94),
		Room:  quantity.Celsius(22),
	}.Time()
	fmt.Println(c, err)
	// Output: 47m to 1h52m (80 %), likely 1h11m, until the core is at 35 °C <nil>
}

func ExampleCoolingProbe_TimeLeft() {
	c, err := bake.CoolingProbe{
		Room: quantity.Celsius(22),
		Samples: []bake.Sample{
			{At: minute(30), Core: quantity.Celsius(62)},
			{At: minute(45), Core: quantity.Celsius(50)},
		},
	}.TimeLeft()
	fmt.Println(c, err)
	// Output: 27m to 38m (80 %), likely 32m, until the core is at 35 °C <nil>
}

func ExampleOvenCautions() {
	for _, c := range bake.OvenCautions() {
		fmt.Println(c.Subject)
	}
	// Output:
	// burns
	// steam
	// hot glass, enamel and iron
	// children and animals
	// first aid
	// flour dust
	// rules
}

func ExampleFoodCautions() {
	fmt.Println(bake.FoodCautions()[0])
	// Output: never a promise: A core temperature is information, not a proof that food is safe: fillings, dry crusts and what lands on the loaf after baking are outside of it. In a business a validated process and the food authority decide.
}

func ExampleStyle_ByCore() {
	for _, style := range quantity.Values[bake.Style]() {
		if !style.ByCore() {
			fmt.Println(style)
		}
	}
	// Output:
	// pizza
	// flat bread
}

func ExampleStyle_UnmarshalText() {
	var s bake.Style
	fmt.Println(s.UnmarshalText([]byte("soft roll")), s)
	fmt.Println(s.UnmarshalText([]byte("crouton")))
	// Output:
	// <nil> soft roll
	// out of range: got "crouton", want style of bread: lean hearth, baguette, pan, enriched, soft roll, wholegrain, rye, gluten-free, par-baked, mixed rye, crusty roll, bagel, focaccia, pizza, flat bread
}

func ExampleShape_For() {
	fmt.Println(quantity.Values[bake.Shape](), bake.UsualShape.For(bake.Baguette))
	// Output: [round long thin tin ball sheet flat] thin
}

func ExampleWeighedLoaf_Loss() {
	l, err := bake.WeighedLoaf{Dough: quantity.Grams(886), Baked: quantity.Grams(772)}.Loss()
	fmt.Println(l, err)
	// Output: 114 g: 12.9 % of the dough, 14.8 % of the bread <nil>
}

func ExampleSite_StandardAtmosphere() {
	a, err := hall.StandardAtmosphere()
	fmt.Println(a, err)
	// Output: 882.5 hPa and 7.5 °C <nil>
}

func ExampleStyle_LossOfBread() {
	g, err := bake.LeanHearth.LossOfBread(quantity.Grams(780))
	fmt.Printf("%v, %.0f of dough, %v\n", g, g.Dough, err)
	// Output: 11.6 % of the dough (9.6 % to 16.6 %), 882 g of dough, <nil>
}

func ExampleScaledPiece_Bread() {
	s, err := bake.ScaledPiece{Dough: quantity.Grams(886), Loss: quantity.MustPercent("12 %")}.Bread()
	fmt.Println(s, err)
	// Output: 886.0 g of dough makes 779.7 g of bread <nil>
}

func ExampleOvenBake_BakeOut() {
	b := bake.OvenBake{Style: bake.LeanHearth, Dough: quantity.Grams(886), Place: hall, Phases: []bake.HeatPhase{
		{Oven: quantity.Celsius(245), For: minute(22), Wet: true},
		{Oven: quantity.Celsius(225), For: minute(26)},
	}}
	out, err := b.BakeOut()
	fmt.Println(out, err)
	// Output: 8.7 % to 11.7 % (80 %), likely 10.2 %, of the dough lost in the oven; crust 7 mm, pale golden (pale golden to golden brown) <nil>
}

func ExampleOvenBake_LearnBrowning() {
	// Ours came out dark: from now on the forecast knows it.
	b := bake.OvenBake{Style: bake.LeanHearth, Dough: quantity.Grams(886), Phases: []bake.HeatPhase{
		{Oven: quantity.Celsius(245), For: minute(22), Wet: true},
		{Oven: quantity.Celsius(225), For: minute(26)},
	}}
	f, err := b.LearnBrowning(bake.DarkBrown)
	fmt.Printf("%.2f %v\n", f, err)
	b.Browning = f
	b.Phases[1].Oven = quantity.Celsius(205)
	out, err := b.BakeOut()
	fmt.Println(out.Color, err)
	// Output:
	// 2.32 <nil>
	// golden brown <nil>
}

func ExampleProgram_BakeOut() {
	p, err := bake.OvenLoad{Style: bake.LeanHearth, Dough: quantity.Grams(886), Pieces: 2, Vessel: bake.Pot}.Program()
	fmt.Println(err)
	out, err := p.BakeOut()
	fmt.Println(out, err)
	// Output:
	// <nil>
	// 8.2 % to 11.1 % (80 %), likely 9.7 %, of the dough lost in the oven; crust 6 mm, pale golden (pale to golden brown) <nil>
}

func ExampleDryCrust_Color() {
	c, err := bake.DryCrust{Surface: []bake.Sample{
		{
			At:   0,
			Core: quantity.Celsius(100),
		}, {At: minute(20), Core: quantity.Celsius(190)}, {At: minute(26), Core: quantity.Celsius(190)},
	}}.Color()
	fmt.Println(c, err)
	// Output: dark brown (color difference 42) <nil>
}

// A tin loaf two days in the bread box, and one day of them in the refrigerator instead.
func ExampleStoredLoaf_Staling() {
	day := quantity.Elapsed(24 * time.Hour)
	box, cold := quantity.Celsius(21), quantity.Celsius(4)
	fmt.Println(bake.StoredLoaf{Style: bake.Pan, Stays: []bake.Stay{{For: 2 * day, At: box}}}.Staling())
	fmt.Println(bake.StoredLoaf{Style: bake.Pan, Stays: []bake.Stay{{For: day, At: box}, {For: day, At: cold}}}.Staling())
	// Output:
	// 42 % of its firming is done (34 % to 54 %): as after 2 days at 21 °C <nil>
	// 56 % of its firming is done (47 % to 69 %): as after 3 days at 21 °C <nil>
}
