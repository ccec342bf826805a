package cli

import (
	"example.org/maslin/bake"
	"example.org/maslin/dough/quantity"
)

// loss asks what a loaf loses in the oven, and how much dough to scale for it.
type loss struct {
	Asked  bake.AskedLoss     `flags:"Style"`
	Dough  quantity.Mass      `flag:"dough"`
	Loaf   bake.PromisedLoaf  `flags:"Baked Loss Cooling"`
	Basis  bake.LossBasis     `flag:"basis" words:"dough,bread" form:"of *"`
	Loaves []bake.WeighedLoaf `flag:"weighed" pair:"Dough=Baked"`
	Packed bake.PackedWeight  `flags:"Nominal=packed"`
	Solids bake.Solids        `flags:"Water=hydration OtherSolids"`
}

func (q *loss) ask(c *call) error {
	a := &q.Asked
	if a.Known = c.given("loss"); !a.Known {
		c.only("--loss", "cooling", "basis")
	}
	q.Loaf.Basis, a.Loaves = q.Basis, q.Loaves
	if c.given("baked") {
		c.not(quantity.Tell("cli.with_baked_dough", "--baked: either the bread is given or the dough"), "dough")
		a.Bread = &q.Loaf
	} else if c.given("dough") {
		a.Piece = &bake.ScaledPiece{Dough: q.Dough, Loss: q.Loaf.Loss, Cooling: q.Loaf.Cooling, Basis: q.Basis}
	}
	if !c.given("dough") && !c.given("baked") && !c.given("weighed") {
		c.only(quantity.Tell("cli.with_baked_dough_weighed", "--baked, --dough or --weighed"), "loss", "style")
	}
	if c.given("packed") {
		a.Packed = &q.Packed
	}
	if c.given("hydration") {
		a.Solids = &q.Solids
	} else {
		c.only("--hydration", "other-solids")
	}
	if !c.given("dough") && !c.given("weighed") && !c.given("packed") && !c.given("hydration") {
		c.need("baked", quantity.Tell("cli.want_weight_cool_loaf_or_dough",
			"the weight of a cool loaf; or --dough, --weighed, --packed or --hydration"))
	}
	return c.tell(a.Answer())
}
