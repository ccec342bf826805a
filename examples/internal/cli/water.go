package cli

import (
	"fmt"
	"strings"

	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"github.com/spf13/cobra"
)

type waterFlags struct {
	output
	in                              *asked
	f                               mixing.Factors
	flour, room, levain, ice        quantity.Temperature
	others                          []mixing.Factor
	warming                         quantity.TemperatureDelta
	mixer                           mixing.MixerKind
	flourWeight, levainWeight, bowl quantity.Mass
	levainHydration                 quantity.Percent
	balance                         bool
	measured                        mixing.Measured
}

func newWater(s System) *cobra.Command {
	cmd := &cobra.Command{
		Use:   "water",
		Short: "How warm the water must be, how much ice, and what the mixer does to the dough",
		Long: `water says how warm the water must be for the dough to leave the mixer at the temperature you
want, by the factor method: flour, room and levain each as warm as they are, and a friction
factor for the mixer. Water that cannot be poured is answered with ice and other ways.

--balance puts the heat balance beside it, which counts everything by its weight.
--measured turns it round: from the temperature of a mixed dough to the friction factor.

A temperature is written 24C or 76F, a difference (friction, warming) 5dC or 24dF.`,
		Example: `  maslin water --dough 26C --flour 21C --room 22C --levain 22C --warming 5dC
  maslin water --dough 77F --flour 70F --room 72F --friction 24dF --us
  maslin water --measured 26.5C --poured 18C --flour 21C --room 22C
  maslin water --dough 24C --flour 28C --room 30C --mixer planetary --water-weight 1.8kg --tap 22C --flour-weight 2.7kg --balance`,
		Args: flagsOnly,
	}
	f := waterFlags{in: ask(cmd), levainHydration: quantity.NewPercent(100)}
	in := f.in
	in.value(&f.f.Target, "dough", "TEMPERATURE", "wanted at the end of mixing", "Target", "target", "Factors.Target")
	in.value(&f.flour, "flour", "TEMPERATURE", "of the flour")
	in.value(&f.room, "room", "TEMPERATURE", "of the room")
	in.value(&f.levain, "levain", "TEMPERATURE", "of the levain or another preferment, if there is one")
	in.each(func(text string) error {
		one := mixing.Factor{}
		var err error
		one.Name, err = named(text, &one.Temperature, `a name and a temperature, such as "soaker=30C"`)
		f.others = append(f.others, one)
		return err
	}, "other", "NAME=TEMPERATURE", "of something else that counts as a factor (may be repeated)", "Others")
	in.value(&f.f.Friction, "friction", "DIFFERENCE", "friction factor of the mixer, for this number of factors, the water included", "Friction")
	in.value(&f.warming, "warming", "DIFFERENCE", "by how much mixing warms the dough itself, instead of --friction", "Rise", "rise")
	in.word(&f.mixer, wordsOf(quantity.Values[mixing.MixerKind]()...), "mixer", "a guide value for the friction", "kind")
	in.value(&f.f.Pour, "water-weight", "MASS", "the water to pour, for the weight of ice", "Pour", "Water")
	in.value(&f.f.Tap, "tap", "TEMPERATURE", "how cold the water comes", "Tap")
	in.value(&f.ice, "ice", "TEMPERATURE", "of the ice (0 °C)", "Ice")
	in.value(&f.f.Mixing, "mixing", "TIME", "how long you mix", "Mixing")
	cmd.Flags().BoolVar(&f.balance, "balance", false, "put the heat balance beside the factor method")
	in.value(&f.flourWeight, "flour-weight", "MASS", "flour weighed at mixing (for --balance)")
	in.value(&f.levainWeight, "levain-weight", "MASS", "levain (for --balance)")
	in.value(&f.levainHydration, "levain-hydration", "PERCENT", "of the levain (100 %, for --balance)")
	in.value(&f.bowl, "bowl-weight", "MASS", "of a steel bowl that follows the dough (for --balance)")
	in.value(&f.measured.Dough, "measured", "TEMPERATURE", "of a dough just mixed: what is the friction factor?", "Dough")
	in.value(&f.measured.Water, "poured", "TEMPERATURE", "of the water of that dough (with --measured)")
	f.register(cmd)
	cmd.RunE = func(*cobra.Command, []string) error { return runWater(s, f) }
	return cmd
}

// factors lists what acts on the dough beside the water, and which flag filled which.
func (f *waterFlags) factors() []mixing.Factor {
	var out []mixing.Factor
	add := func(kind mixing.FactorKind, name string, t quantity.Temperature, flag string) {
		f.in.paths[fmt.Sprintf("Others[%d].Temperature", len(out))] = flag
		out = append(out, mixing.Factor{Kind: kind, Name: name, Temperature: t})
	}
	add(mixing.FlourFactor, "flour", f.flour, "flour")
	add(mixing.RoomFactor, "room", f.room, "room")
	if f.in.given("levain") {
		add(mixing.LevainFactor, "levain", f.levain, "levain")
	}
	for _, o := range f.others {
		add(mixing.OtherFactor, o.Name, o.Temperature, "other")
	}
	return out
}

func runWater(s System, f waterFlags) error {
	if err := f.check(); err != nil {
		return err
	}
	in := f.in
	if in.given("measured") || in.given("poured") {
		return runFriction(s, f)
	}
	f.f.Others = f.factors()
	n := f.f.Count()
	var rise quantity.TemperatureDelta
	var p quantity.Problems
	var prior *mixing.Prior
	var err error
	switch {
	case in.given("friction"):
		in.not("--friction, which says as much", "warming", "mixer")
		rise, err = mixing.Friction{Factor: f.f.Friction, Factors: n}.Rise()
	case in.given("warming"):
		in.not("--warming, which is better than a guide value", "mixer")
		rise = f.warming
		quantity.Check(&p, "Rise", rise, quantity.DeltaCelsius(-10), quantity.DeltaCelsius(40))
		var of mixing.Friction
		of, err = mixing.FrictionOf(rise, n)
		f.f.Friction = of.Factor
	case in.given("mixer"):
		var guide mixing.Prior
		if guide, err = f.mixer.Prior(); err == nil {
			prior = &guide
			var of mixing.Friction
			if of, err = guide.Friction.For(n); err == nil {
				f.f.Friction = of.Factor
				rise, err = of.Rise()
			}
		}
	default:
		in.fault("friction", "", "the friction factor of your mixer, --warming of the dough, or --mixer for a guide value", quantity.ErrRequired)
	}
	p.Join("", err)
	r, err := f.f.Water()
	p.Join("", err)
	if in.given("ice") {
		quantity.Check(&p, "Ice", f.ice, quantity.Celsius(-40), quantity.Celsius(0))
		if f.f.Pour.IsZero() || f.f.Tap.IsZero() {
			in.only("--water-weight and --tap", "ice")
		}
	}
	if !f.balance {
		in.only("--balance", "flour-weight", "levain-weight", "levain-hydration", "bowl-weight")
	} else {
		for _, name := range []string{"water-weight", "flour-weight"} {
			if !in.given(name) {
				p.Add("--"+name, "", "the weight, which the heat balance counts with", quantity.ErrRequired)
			}
		}
	}
	if wrong := in.complain(p.Err()); wrong != nil {
		return wrong
	}
	a := answer{workings: []working.Working{r.Working()}}
	if prior != nil {
		a.workings = append(a.workings, prior.Working())
	}
	w := waterAnswer{Format: "maslin water 1", Target: f.f.Target, Water: r.Temperature, Feasible: r.Feasible, Friction: f.f.Friction, Factors: n, Rise: rise, Remedies: []string{}}
	for _, x := range r.Remedies {
		w.Remedies = append(w.Remedies, x.Text.String())
	}
	var ice *mixing.IceResult
	if !f.f.Pour.IsZero() && f.f.Tap.IsValid() && r.Temperature.Compare(f.f.Tap) < 0 {
		got, err := mixing.IceWater{Water: f.f.Pour, Tap: f.f.Tap, Need: r.Temperature, Ice: f.ice}.Replace()
		if err != nil {
			return in.complain(err)
		}
		ice = &got
		a.workings = append(a.workings, got.Working())
		w.Ice = &iceData{got.Ice, got.Liquid, got.Feasible}
	}
	var c *mixing.Comparison
	var b mixing.BalanceResult
	if f.balance {
		balance, err := f.heatBalance(rise)
		if err == nil {
			b, err = balance.WaterFor(f.f.Target)
		}
		var got mixing.Comparison
		if err == nil {
			got, err = balance.Compare(f.f)
		}
		if err != nil {
			return in.complain(err)
		}
		c = &got
		a.workings = append(a.workings, b.Working(), got.Working())
		w.Balance = &balanceData{got.ByBalance, b.Feasible, got.Difference, got.AgreeingFriction, got.SensitivityByFactors, got.SensitivityByBalance}
	}
	a.data = w
	a.page = func(p *page, u units) {
		waterPage(p, u, f, r, rise, prior, ice)
		if c != nil {
			balancePage(p, u, b, *c)
		}
	}
	return s.show(f.output, a)
}

// heatBalance is the balance of the same dough, with the warming as mixing work.
func (f *waterFlags) heatBalance(rise quantity.TemperatureDelta) (mixing.Balance, error) {
	f.in.paths["Ingredients[0].Mass"], f.in.paths["Ingredients[0].Temperature"] = "flour-weight", "flour"
	b := mixing.Balance{
		Ingredients: []mixing.Portion{{Name: "flour", Mass: f.flourWeight, Temperature: f.flour, Substance: mixing.Flour}},
		Water:       f.f.Pour, Coldest: f.f.Coldest, Warmest: f.f.Warmest, Room: f.room,
		Bowl: mixing.HeatCapacity(0.5 * f.bowl.Kilograms()), BowlTemperature: f.room,
	}
	if f.in.given("levain-weight") {
		f.in.paths["Ingredients[1].Mass"], f.in.paths["Ingredients[1].Temperature"], f.in.paths["Ingredients[1].Hydration"] = "levain-weight", "levain", "levain-hydration"
		b.Ingredients = append(b.Ingredients, mixing.Portion{
			Name: "levain", Mass: f.levainWeight, Temperature: f.levain, Substance: mixing.Levain, Hydration: f.levainHydration,
		})
	}
	f.in.paths["Bowl"] = "bowl-weight"
	b.Rise = rise
	return b, nil
}

func runFriction(s System, f waterFlags) error {
	in := f.in
	in.not("--measured, which asks for the friction", "dough", "friction", "warming", "mixer", "balance", "water-weight", "tap", "ice")
	f.measured.Others = f.factors()
	in.paths["Water"] = "poured"
	in.paths["Dough"] = "measured"
	r, err := f.measured.Friction()
	rise, _ := r.Rise() // cannot fail for a friction that was just found
	if wrong := in.complain(err); wrong != nil {
		return wrong
	}
	return s.show(f.output, answer{
		page: func(p *page, u units) {
			p.para(0, fmt.Sprintf("Friction factor %s for %d factors: mixing warms this dough by %s", u.delta(r.Factor), r.Factors, u.delta(rise)))
			section(p, "Use it")
			p.para(2, "--warming "+plainDelta(rise, u)+" for any number of factors, or --friction "+plainDelta(r.Factor, u)+" for the same ones")
			p.para(2, "it holds for the same mixer, dough weight, stiffness and mixing time")
		},
		data: struct {
			Format   string                    `json:"format"`
			Friction quantity.TemperatureDelta `json:"friction"`
			Factors  int                       `json:"factors"`
			Rise     quantity.TemperatureDelta `json:"warming"`
		}{"maslin friction 1", r.Factor, r.Factors, rise},
		workings: []working.Working{r.Working()},
	})
}

// plainDelta writes a difference as a flag takes it.
func plainDelta(d quantity.TemperatureDelta, u units) string {
	return strings.Replace(u.delta(d), " °", "d", 1)
}

type iceData struct {
	Ice      quantity.Mass `json:"ice"`
	Liquid   quantity.Mass `json:"tap_water"`
	Feasible bool          `json:"feasible"`
}

type balanceData struct {
	Water                quantity.Temperature      `json:"water"`
	Feasible             bool                      `json:"feasible"`
	Difference           quantity.TemperatureDelta `json:"factors_less_balance"`
	AgreeingFriction     quantity.TemperatureDelta `json:"agreeing_friction"`
	SensitivityByFactors float64                   `json:"sensitivity_by_factors"`
	SensitivityByBalance float64                   `json:"sensitivity_by_balance"`
}

type waterAnswer struct {
	Format   string                    `json:"format"`
	Target   quantity.Temperature      `json:"dough"`
	Water    quantity.Temperature      `json:"water"`
	Feasible bool                      `json:"feasible"`
	Friction quantity.TemperatureDelta `json:"friction"`
	Factors  int                       `json:"factors"`
	Rise     quantity.TemperatureDelta `json:"warming"`
	Ice      *iceData                  `json:"ice,omitempty"`
	Remedies []string                  `json:"remedies"`
	Balance  *balanceData              `json:"balance,omitempty"`
}
