package cli

import (
	"example.org/maslin/bake"
	"example.org/maslin/dough/quantity"
)

// loss asks what a loaf loses in the oven, and how much dough to scale for it.
type loss struct {
	Style   bake.Style         `flag:"style"`
	Dough   quantity.Mass      `flag:"dough"`
	Loaf    bake.PromisedLoaf  `flags:"Baked Loss Cooling"`
	Basis   bake.LossBasis     `flag:"basis" words:"dough,bread" form:"of *"`
	Weighed []bake.WeighedLoaf `flag:"weighed" pair:"Dough=Baked" paths:"Loaves=weighed"`
	Packed  bake.PackedWeight  `flags:"Nominal=packed"`
	Solids  bake.Solids        `flags:"Water=hydration OtherSolids"`
}

func (q *loss) ask(c *call) error {
	if !c.given("loss") {
		c.only("--loss", "cooling", "basis")
	}
	if !c.given("hydration") {
		c.only("--hydration", "other-solids")
	}
	if c.given("baked") {
		c.not("--baked: either the bread is given or the dough", "dough")
	}
	if !c.given("dough") && !c.given("weighed") && !c.given("packed") && !c.given("hydration") {
		c.need("baked", quantity.Tell("cli.want_weight_cool_loaf_or_dough",
			"the weight of a cool loaf; or --dough, --weighed, --packed or --hydration"))
	}
	q.Loaf.Basis = q.Basis
	var p quantity.Problems
	return c.tell(q.find(c, &p), p.Err())
}

// find asks for everything the flags ask for: first the weights, then what they rest on.
func (q *loss) find(c *call, p *quantity.Problems) together {
	var first, rest together
	var usual bake.LossGuide
	var err error
	switch {
	case c.given("baked"):
		usual, err = q.Style.LossOfBread(q.Loaf.Baked)
		rest.add(p, "usual", usual, err)
	case c.given("dough"):
		usual, err = q.Style.UsualLoss(q.Dough)
		rest.add(p, "usual", usual, err)
	}
	loss := usual.Loss.Likely
	if len(q.Weighed) > 0 {
		learned, err := bake.LossLog{Style: q.Style, Loaves: q.Weighed}.Learn()
		rest.add(p, "learned", learned, err)
		loss = learned.Mean
	}
	if !c.given("loss") {
		q.Loaf.Loss = loss
	}
	switch {
	case c.given("baked"):
		scaling, err := q.Loaf.Scaling()
		first.add(p, "scaling", scaling, err)
	case c.given("dough"):
		bread, err := bake.ScaledPiece{Dough: q.Dough, Loss: q.Loaf.Loss, Cooling: q.Loaf.Cooling,
			Basis: q.Loaf.Basis}.Bread()
		first.add(p, "scaling", bread, err)
	}
	if c.given("packed") {
		limits, err := q.Packed.Limits()
		rest.add(p, "average_system", limits, err)
	}
	if c.given("hydration") {
		solids, err := q.Solids.LeastLoss()
		rest.add(p, "solids_rule", solids, err)
	}
	return together{append(first.all, rest.all...)}
}
