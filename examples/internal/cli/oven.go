package cli

import (
	"strings"

	"example.org/maslin/bake"
	"example.org/maslin/dough/quantity"
)

// oven asks what to set an oven to, and for the rounds of a bake.
type oven struct {
	Set  bake.OvenSetting `flags:"Fan Off" paths:"Wanted=SETTING Setting=SETTING Oven=SETTING"`
	Load bake.OvenLoad    `flags:"*"`
}

var roundFlags = strings.Fields("together style shape vessel cold then preheat reheat covered uncovered rescore " +
	"known-dough known-time extrapolate")

func (q *oven) ask(c *call) error {
	var asked bake.AskedOven
	var p quantity.Problems
	if c.given("pieces") || c.given("dough") {
		asked.Load = &q.Load
	} else {
		c.only(quantity.Tell("cli.with_pieces_dough", "--pieces and --dough"), roundFlags...)
	}
	if text := strings.Join(c.args, " "); text != "" {
		said, err := bake.ReadOvenSetting(text)
		p.Join("Setting.Wanted", err)
		q.Set.Wanted, q.Set.Notes, asked.Setting = said.Wanted, said.Notes, &q.Set
	} else {
		c.only(quantity.Tell("cli.with_setting", "a setting, such as 230C"), "fan", "off")
	}
	a, err := asked.Answer()
	p.Join("", err)
	return c.tell(a, p.ErrFor(asked))
}
