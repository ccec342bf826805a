package cli

import (
	"strings"

	"example.org/maslin/bake"
	"example.org/maslin/dough/quantity"
)

// oven asks what to set an oven to, and for the rounds of a bake.
type oven struct {
	Set  bake.OvenSetting `flags:"Fan Off" paths:"Wanted=SETTING Oven=SETTING"`
	Load bake.OvenLoad    `flags:"*"`
}

var roundFlags = strings.Fields("pieces dough together style shape vessel cold then preheat reheat covered uncovered " +
	"rescore known-dough known-time extrapolate")

func (q *oven) ask(c *call) error {
	var p quantity.Problems
	var all together
	rounds := c.given("pieces") || c.given("dough")
	if text := strings.Join(c.args, " "); text != "" {
		if said, err := bake.ReadOvenSetting(text); err != nil {
			p.Join("Wanted", err)
		} else {
			q.Set.Wanted, q.Set.Notes, q.Load.Oven = said.Wanted, said.Notes, said.Wanted
			dial, err := q.Set.Dial()
			all.add(&p, "setting", dial, err)
		}
	} else {
		c.only("a setting, such as 230C", "fan", "off")
		if !rounds {
			p.Required("Wanted", quantity.Tell("cli.want_oven_temperature_230c_or_gas",
				`an oven temperature, such as "230C" or "gas 7"; or --pieces and --dough for the rounds of a bake`))
		}
	}
	if rounds {
		program, err := q.Load.Program()
		all.add(&p, "program", program, err)
		if err == nil {
			// What the bake does to the crust comes on top, where it can be said: not of thin breads.
			if out, err := program.BakeOut(); err == nil {
				all.add(&p, "baked_out", out, nil)
			}
		}
	} else {
		c.only("--pieces and --dough", roundFlags...)
	}
	return c.tell(all, p.Err())
}
