package cli

import (
	"fmt"

	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
)

// water asks how warm the water must be, or turned round for the friction factor of a mixer.
type water struct {
	Factors         mixing.Factors       `flags:"* Target=dough Pour=water-weight"`
	_               struct{}             `paths:"Water=water-weight Factors.Target=dough"`
	Flour           quantity.Temperature `flag:"flour"`
	Room            quantity.Temperature `flag:"room"`
	Levain          quantity.Temperature `flag:"levain"`
	Others          []mixing.Factor      `flag:"other" pair:"Name=Temperature"`
	Balance         bool                 `flag:"balance"`
	FlourWeight     quantity.Mass        `flag:"flour-weight"`
	LevainWeight    quantity.Mass        `flag:"levain-weight"`
	LevainHydration quantity.Percent     `flag:"levain-hydration" usual:"100%"`
	Measured        mixing.Measured      `flags:"Dough=measured Water=poured"`
}

// factors lists what acts on the dough beside the water, and which flag filled which.
func (q *water) factors(c *call) []mixing.Factor {
	out := []mixing.Factor{{Kind: mixing.FlourFactor, Name: "flour", Temperature: q.Flour},
		{Kind: mixing.RoomFactor, Name: "room", Temperature: q.Room}}
	if c.given("levain") {
		out = append(out, mixing.Factor{Kind: mixing.LevainFactor, Name: "levain", Temperature: q.Levain})
	}
	for i, f := range out {
		c.paths[fmt.Sprintf("Others[%d].Temperature", i)] = f.Name
	}
	for _, o := range q.Others {
		c.paths[fmt.Sprintf("Others[%d].Temperature", len(out))] = "other"
		o.Kind = mixing.OtherFactor
		out = append(out, o)
	}
	return out
}

func (q *water) ask(c *call) error {
	if c.given("measured") || c.given("poured") {
		c.not(quantity.Tell("cli.with_measured_friction", "--measured, which asks for the friction"),
			"dough", "friction", "warming", "mixer", "balance", "water-weight",
			"tap", "ice", "mixing", "flour-weight", "levain-weight", "levain-hydration")
		c.paths["Water"] = "poured"
		q.Measured.Others = q.factors(c)
		return c.tell(q.Measured.Friction())
	}
	f := &q.Factors
	f.Others = q.factors(c)
	var p quantity.Problems
	switch {
	case c.given("friction"):
		c.not(quantity.Tell("cli.with_friction_says_much", "--friction, which says as much"),
			"warming", "mixer")
	case c.given("warming"):
		c.not(quantity.Tell("cli.with_warming_better", "--warming, which is better than a guide value"),
			"mixer")
	case !c.given("mixer"):
		c.need("friction", quantity.Tell("cli.want_friction_factor_your_mixer_warming",
			"the friction factor of your mixer, --warming of the dough, or --mixer for a guide value"))
	}
	if !c.given("mixer") {
		c.only(quantity.Tell("cli.with_mixer_minutes", "--mixer, whose guide value goes by the minutes of mixing"),
			"mixing")
	}
	if f.Pour.IsZero() || f.Tap.IsZero() {
		c.only(quantity.Tell("cli.with_water_weight_tap", "--water-weight and --tap"), "ice")
	}
	if !c.given("tap") && !q.Balance {
		c.only(quantity.Tell("cli.with_tap_balance", "--tap or --balance"), "water-weight")
	}
	r, err := f.Water()
	p.Join("", err)
	if q.Balance {
		return q.byBalance(c, &p)
	}
	c.only("--balance", "flour-weight", "levain-weight", "levain-hydration")
	return c.tell(r, p.Err())
}

// byBalance plans the same dough by its weights.
func (q *water) byBalance(c *call, p *quantity.Problems) error {
	for _, name := range []string{"water-weight", "flour-weight"} {
		c.need(name, quantity.Tell("cli.want_weight_which_heat_balance_counts",
			"the weight, which the heat balance counts with"))
	}
	for i, name := range []string{"flour", "levain"} {
		at := fmt.Sprintf("Ingredients[%d].", i)
		c.paths[at+"Mass"], c.paths[at+"Temperature"], c.paths[at+"Hydration"] = name+"-weight", name, name+"-hydration"
	}
	weighed := []mixing.Portion{{Name: "flour", Mass: q.FlourWeight, Temperature: q.Flour, Substance: mixing.Flour}}
	if c.given("levain-weight") {
		weighed = append(weighed, mixing.Portion{Name: "levain", Mass: q.LevainWeight, Temperature: q.Levain,
			Substance: mixing.Levain, Hydration: q.LevainHydration})
	}
	if wrong := c.complain(p.Err()); wrong != nil {
		return wrong
	}
	return c.tell(q.Factors.Weighed(weighed...).Pour())
}
