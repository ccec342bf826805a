package cli

import (
	"fmt"

	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"github.com/spf13/cobra"
)

type waterFlags struct {
	output
	in                        *asked
	f                         mixing.Factors
	flour, room, levain       quantity.Temperature
	others                    []mixing.Factor
	warming                   quantity.TemperatureDelta
	flourWeight, levainWeight quantity.Mass
	levainHydration           quantity.Percent
	balance                   bool
	measured                  mixing.Measured
}

func newWater(s System) *cobra.Command {
	cmd := &cobra.Command{
		Use:   "water",
		Short: "How warm the water must be, how much ice, and what the mixer does to the dough",
		Long: `water says how warm the water must be for the dough to leave the mixer at the temperature you
want, by the factor method: flour, room and levain each as warm as they are, and a friction
factor for the mixer. Water that cannot be poured is answered with ice and other ways.

--balance uses the heat balance, which counts everything by its weight, and sets the factor
method beside it.
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
		one.Name, err = named(text, &one.Temperature, quantity.Tell("cli.want_name_and_temperature_soaker_30c", `a name and a temperature, such as "soaker=30C"`))
		f.others = append(f.others, one)
		return err
	}, "other", "NAME=TEMPERATURE", "of something else that counts as a factor (may be repeated)", "Others")
	in.value(&f.f.Friction, "friction", "DIFFERENCE", "friction factor of the mixer, for this number of factors, the water included", "Friction")
	in.value(&f.warming, "warming", "DIFFERENCE", "by how much mixing warms the dough itself, instead of --friction", "Rise", "rise")
	in.word(&f.f.Mixer, wordsOf(quantity.Values[mixing.MixerKind]()...), "mixer", "a guide value for the friction", "Mixer")
	in.value(&f.f.Pour, "water-weight", "MASS", "the water to pour, for the weight of ice", "Pour", "Water")
	in.value(&f.f.Tap, "tap", "TEMPERATURE", "how cold the water comes", "Tap")
	in.value(&f.f.Ice, "ice", "TEMPERATURE", "of the ice (0 °C)", "Ice")
	in.value(&f.f.Mixing, "mixing", "TIME", "how long you mix", "Mixing")
	cmd.Flags().BoolVar(&f.balance, "balance", false, "by the heat balance, with the factor method beside it")
	in.value(&f.flourWeight, "flour-weight", "MASS", "flour weighed at mixing (for --balance)")
	in.value(&f.levainWeight, "levain-weight", "MASS", "levain (for --balance)")
	in.value(&f.levainHydration, "levain-hydration", "PERCENT", "of the levain (100 %, for --balance)")
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
	var p quantity.Problems
	switch {
	case in.given("friction"):
		in.not("--friction, which says as much", "warming", "mixer")
	case in.given("warming"):
		in.not("--warming, which is better than a guide value", "mixer")
		friction, err := mixing.FrictionOf(f.warming, f.f.Count())
		p.Join("", err)
		f.f.Friction = friction.Factor
	case !in.given("mixer"):
		in.fault("friction", "", quantity.Tell("cli.want_friction_factor_your_mixer_warming", "the friction factor of your mixer, --warming of the dough, or --mixer for a guide value"), quantity.ErrRequired)
	}
	if in.given("ice") && (f.f.Pour.IsZero() || f.f.Tap.IsZero()) {
		in.only("--water-weight and --tap", "ice")
	}
	if f.balance {
		return f.byBalance(s, &p)
	}
	in.only("--balance", "flour-weight", "levain-weight", "levain-hydration")
	r, err := f.f.Water()
	p.Join("", err)
	if wrong := in.complain(p.Err()); wrong != nil {
		return wrong
	}
	return s.tell(f.output, r, true)
}

// byBalance plans the same dough by its weights.
func (f *waterFlags) byBalance(s System, p *quantity.Problems) error {
	in := f.in
	_, err := f.f.Water() // what is wrong with the temperatures
	p.Join("", err)
	for _, name := range []string{"water-weight", "flour-weight"} {
		if !in.given(name) {
			p.Add("--"+name, "", quantity.Tell("cli.want_weight_which_heat_balance_counts", "the weight, which the heat balance counts with"), quantity.ErrRequired)
		}
	}
	in.paths["Ingredients[0].Mass"], in.paths["Ingredients[0].Temperature"] = "flour-weight", "flour"
	in.paths["Room"], in.paths["Warming"] = "room", "warming"
	plan := mixing.Planned{
		Target: f.f.Target, Room: f.room, Water: f.f.Pour, Mixer: f.f.Mixer, Tap: f.f.Tap, Ice: f.f.Ice, Mixing: f.f.Mixing,
		Ingredients: []mixing.Portion{{Name: "flour", Mass: f.flourWeight, Temperature: f.flour, Substance: mixing.Flour}},
	}
	if f.f.Friction.Sign() != 0 {
		rise, err := mixing.Friction{Factor: f.f.Friction, Factors: f.f.Count()}.Rise()
		p.Join("", err)
		plan.Warming = rise
	}
	if in.given("levain-weight") {
		in.paths["Ingredients[1].Mass"], in.paths["Ingredients[1].Temperature"] = "levain-weight", "levain"
		in.paths["Ingredients[1].Hydration"] = "levain-hydration"
		plan.Ingredients = append(plan.Ingredients, mixing.Portion{
			Name: "levain", Mass: f.levainWeight, Temperature: f.levain, Substance: mixing.Levain, Hydration: f.levainHydration,
		})
	}
	if wrong := in.complain(p.Err()); wrong != nil {
		return wrong
	}
	r, err := plan.Pour()
	if wrong := in.complain(err); wrong != nil {
		return wrong
	}
	return s.tell(f.output, r, true)
}

func runFriction(s System, f waterFlags) error {
	in := f.in
	in.not("--measured, which asks for the friction", "dough", "friction", "warming", "mixer", "balance", "water-weight", "tap", "ice")
	f.measured.Others = f.factors()
	in.paths["Water"] = "poured"
	in.paths["Dough"] = "measured"
	r, err := f.measured.Friction()
	if wrong := in.complain(err); wrong != nil {
		return wrong
	}
	return s.tell(f.output, r, true)
}
