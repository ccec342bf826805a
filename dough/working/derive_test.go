package working_test

import (
	"fmt"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

func say(text string) working.Message { return working.Say(text) }

// water is the factor method of the trade.
func water() working.Working {
	d := working.Derive(say("Water temperature"))
	target := working.Given("T", say("dough temperature wanted"), quantity.Celsius(26))
	flour := working.Given("T_flour", say("temperature of the flour"), quantity.Celsius(21))
	room := working.Given("T_room", say("temperature of the room"), quantity.Celsius(23))
	friction := working.Given("F", say("friction factor"), quantity.DeltaCelsius(12)).
		Explained(say("the degrees that mixing warms the dough by"))
	d.Find(working.Finding{
		Name: say("water temperature"), Symbol: "T_water",
		By:     target.Plus(target.Minus(flour)).Plus(target.Minus(room)).Minus(friction),
		Is:     quantity.Celsius(22),
		Brief:  working.Say("take the water at %v", quantity.Celsius(22)),
		Source: working.Algebra(),
	})
	return d.Working()
}

// scaling is a scaling weight from a baked one.
func scaling() working.Working {
	d := working.Derive(say("Scaling weight"))
	baked := working.Given("B", say("baked and cool"), quantity.Grams(780))
	loss := working.Given("L", say("loss in the oven"), quantity.MustPercent("12 %"))
	d.Find(working.Finding{
		Name:   say("scaling weight"),
		Symbol: "D", By: baked.Over(working.Num(1).Minus(loss.Share())), Unit: working.Gram, Decimals: 1,
		Source: working.Algebra(),
	})
	return d.Working()
}

// cooling is Newton's law with a time constant found from two readings.
func cooling() working.Working {
	d := working.Derive(say("Cooling"))
	room := working.Given("T_a", say("room"), quantity.Celsius(21))
	first, now := working.Given("T_1", say("earlier core"), quantity.Celsius(70)), working.Given("T_2",
		say("core now"), quantity.Celsius(55))
	slice := working.Given("T_s", say("slicing temperature"), quantity.Celsius(30))
	tau := d.Find(working.Finding{
		Name: say("time constant"), Symbol: "τ", Unit: working.Minute, Decimals: 1,
		By: working.Given("Δt", say("between the readings"), 20*time.Minute).
			Over(working.Ln(first.Minus(room).Over(now.Minus(room)))),
		Source: working.Algebra(),
	})
	d.Find(working.Finding{
		Name: say("time left"), Symbol: "t", Unit: working.Minute, Decimals: working.WholeNumber,
		By: tau.Times(working.Ln(now.Minus(room).Over(slice.Minus(room)))), Source: working.Algebra(),
	})
	return d.Working()
}

// A step is written once as an expression, and told to readers of both systems of units.
func ExampleDerivation() {
	fmt.Print(water().Text(72))
	us := working.Telling{Reader: working.Reader{Units: working.USCustomary}, Level: working.WithNumbers}
	fmt.Print("\n", us.Text(water()))
	fmt.Print("\n", us.Text(scaling()))
	fmt.Print("\n", working.Telling{Level: working.InWords}.Text(cooling()))
	// Output:
	// Water temperature
	// =================
	//
	// 1. water temperature
	//    T_water = T + (T − T_flour) + (T − T_room) − F
	//    where
	//      T        26 °C  dough temperature wanted
	//      T_flour  21 °C  temperature of the flour
	//      T_room   23 °C  temperature of the room
	//      F        12 Δ°C  friction factor
	//    T_water = 26 + (26 − 21) + (26 − 23) − 12
	//    T_water = 22 °C
	//    source: arithmetic on the values above [computed]
	//
	// In other words
	//   F  the degrees that mixing warms the dough by
	//
	// Water temperature
	// =================
	//
	// 1. water temperature
	//    T_water = T + (T − T_flour) + (T − T_room) − F
	//    T_water = 78.8 + (78.8 − 69.8) + (78.8 − 73.4) − 21.6
	//    T_water = 71.6 °F
	//
	// Scaling weight
	// ==============
	//
	// 1. scaling weight
	//    D = B ÷ (1 − L ÷ 100)
	//    D = 27.514 ÷ (1 − 12 ÷ 100)
	//    D ≈ 31.266 oz
	//
	// Cooling
	// =======
	//
	// 1. time constant: 54.7 min, from between the readings (20 min), earlier core (70
	//   °C), room (21 °C) and core now (55 °C)
	//
	// 2. time left: 73 min (1h13m), from time constant (54.7 min), core now (55 °C),
	//   room (21 °C) and slicing temperature (30 °C)
}

func arrhenius() working.Working {
	d := working.Derive(say("Rate"))
	temp := working.Given("T", say("temperature of the dough"), quantity.Celsius(26))
	rate := d.Find(working.Finding{
		Name: say("rate"), Symbol: "k", Unit: "/h",
		By:     working.Num(1.2e9).Times(working.Exp(working.Num(-6500).Over(temp.In(working.Kelvin)))),
		Source: working.Algebra(),
	})
	d.Find(working.Finding{
		Name:   say("linear"),
		Symbol: "T_x", Unit: working.Celsius, By: temp.Times(2).Minus(rate), Decimals: 1, Source: working.Algebra(),
	})
	d.Find(
		working.Finding{
			Name:   say("usual loss"),
			Symbol: "L",
			Is:     quantity.MustPercent("12 %"),
			Look:   say("the table of hearth loaves"),
			Source: working.Algebra(),
		},
	)
	return d.Working()
}

func table() working.Working {
	d := working.Derive(say("Hour by hour"))
	rate := func(row int, before []working.Expr) working.Expr { return working.Exp(before[1].Times(0.08)).Over(40) }
	d.Find(
		working.Finding{
			Name:     say("dose"),
			Symbol:   "M",
			Unit:     working.Number,
			Decimals: 3,
			Source:   working.Algebra(),
			Table: working.Table{Columns: []working.Column{
				{Symbol: "t", Meaning: say("hour"), Unit: working.Hour, Cells: []float64{1, 2, 3, 4}},
				{
					Symbol:   "T",
					Meaning:  say("temperature"),
					Unit:     working.Celsius,
					Cells:    []float64{26, 25.123456, 24.5, 24},
					Decimals: 1,
				},
				{Symbol: "μ", Meaning: say("rate"), Unit: "/h", By: rate, Decimals: 4},
				{
					Symbol:   "m",
					Meaning:  say("dose of the hour"),
					Unit:     working.Number,
					By:       func(_ int, before []working.Expr) working.Expr { return before[2].Times(1) },
					Decimals: 3,
				},
			}},
		},
	)
	return d.Working()
}

func clock() working.Working {
	d := working.Derive(say("Backward"))
	end := working.Given("t_bake", say("the oven is free"), time.Date(2026, 11, 29, 0, 15, 0, 0, time.UTC))
	d.Find(working.Finding{Name: say("latest start"), Symbol: "t_shape", Unit: working.Clock, Source: working.Algebra(),
		By: end.Minus(working.Given("d", say("shaping takes"), 40*time.Minute))})
	return d.Working()
}

func remainder() working.Working {
	d := working.Derive(say("Lines"))
	p := working.Given("p", say("flour"), quantity.MustPercent("66.7 %"))
	m := d.Find(
		working.Finding{
			Name:     say("flour"),
			Symbol:   "m",
			By:       p.Share().Times(working.Given("F", say("all flour"), quantity.Grams(1812))),
			Is:       quantity.Grams(1208),
			Rounding: say("by largest remainder: another line has the larger rest"),
			Source:   working.Algebra(),
		},
	)
	other := working.Given("p", say("rye"), quantity.MustPercent("33.3 %"))
	d.Find(
		working.Finding{
			Name:   say("rye"),
			Symbol: "m",
			By:     m.Times(other).Over(p),
			Unit:   working.Gram,
			Source: working.Algebra(),
		},
	)
	x := working.Given("ε", say("porosity"), 0.85)
	d.Find(
		working.Finding{
			Name:   say("diffusivity"),
			Symbol: "α",
			By:     working.Exp(x.Minus(15.25)),
			Unit:   "m²/s",
			Source: working.Algebra(),
		},
	)
	return d.Working()
}
