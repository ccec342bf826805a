package cli

import (
	"example.org/maslin/dough/flour"
	"example.org/maslin/dough/quantity"
)

// flourBlend asks for a blend of flours, for gluten, or whether a flour carries the water.
type flourBlend struct {
	Lots     []flour.FlourLot    `flag:"lot" pair:"Name=Protein@Share?" paths:"Flours=lot"`
	Target   quantity.Percent    `flag:"target"`
	Total    quantity.Mass       `flag:"total" paths:"Flour=total"`
	Gluten   bool                `flag:"gluten"`
	Strength flour.FlourStrength `flags:"* PL=pl"`
}

func (q *flourBlend) ask(c *call) error {
	switch {
	case c.given("lot"):
		c.not(quantity.Tell("cli.with_lot_blend", "--lot, which asks for a blend"),
			"gluten", "hydration", "protein", "w", "pl", "falling-number", "absorption")
		c.need("target", quantity.Tell("cli.want_protein_blend", "the protein of the blend"))
		blend, err := flour.FlourBlend{Flours: q.Lots, Target: q.Target, Total: q.Total}.Shares()
		return c.tellIf(blend.Feasible, blend, err)
	case q.Gluten:
		c.not(quantity.Tell("cli.with_gluten", "--gluten, which asks for gluten"),
			"hydration", "w", "pl", "falling-number", "absorption")
		c.need("protein", quantity.Tell("cli.want_protein_flour", "the protein of the flour"))
		c.need("target", quantity.Tell("cli.want_protein_wanted", "the protein wanted"))
		return c.tell(flour.GlutenBoost{Protein: q.Strength.Protein, Target: q.Target, Flour: q.Total}.Doses())
	case c.given("hydration"):
		c.not(quantity.Tell("cli.with_hydration_judgment", "--hydration, which asks for a judgment"),
			"target", "total")
		return c.tell(q.Strength.Judge())
	}
	c.need("lot", quantity.Tell("cli.want_flours_to_blend_or_gluten",
		"flours to blend; or --gluten to reach a protein with gluten, or --hydration to judge a flour"))
	return c.complain(nil)
}
