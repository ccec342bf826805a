package cli

import (
	"strings"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/textpage"
	"example.org/maslin/schedule/bakeday"
)

// A bowl is the dough that is asked about: of a bake file, or of weights.
type bowl struct {
	Weights []string `flag:"weights" paths:"Final=weights Preferments=weights Flours=weights Liquids=weights"`
}

// batch is the dough and the name of its bread.
func (b bowl) batch(c *call) (dough.Batch, string, error) {
	if c.given("weights") {
		if len(c.args) > 0 {
			c.fault("weights", quantity.Tell("cli.got_weights_and", "--weights and %s", excerpt(c.args[0])),
				quantity.Tell("cli.want_one_them", "one of them"), quantity.ErrInconsistent)
		}
		weights, err := dough.ParseWeights(strings.Join(b.Weights, "; "))
		if err != nil {
			c.note("weights", err)
			return dough.Batch{}, "", nil
		}
		batch, err := weights.Batch()
		return batch, "", err
	}
	file, err := loadFormula(c, c.args[0])
	if err != nil {
		return dough.Batch{}, "", err
	}
	batch, err := file.first().Batch(nil)
	return batch, textpage.Printable(file.first().Name), file.complain(err)
}

// formula asks how much of everything, which formula weights are, or what mends a dough.
type formula struct {
	bowl
	Percent []string       `flag:"percent"`
	Loaves  bakeday.Loaves `flags:"Pieces Baked Loss"`
	_       struct{}       `paths:"Pieces.Count=pieces Baked.Pieces=pieces Baked.Each=baked Baked.Loss=loss"`
	Each    quantity.Mass  `flag:"each" paths:"Pieces.Each=each"`
	Dough   quantity.Mass  `flag:"dough" paths:"ByDough.Mass=dough"`
	Flour   quantity.Mass  `flag:"flour" paths:"ByFlour.Mass=flour"`
	Levain  quantity.Mass  `flag:"levain-at-hand" paths:"ByLevain=levain-at-hand"`
	Stock   []dough.Stock  `flag:"stock" pair:"Name=Mass" paths:"AtHand.Stock=stock"`
	Much    []dough.Stock  `flag:"too-much" paths:"Extra=too-much"`
	Little  []dough.Stock  `flag:"too-little"`
	Restore dough.Restore  `flag:"restore"`
	Scales  dough.Scales   `flags:"Flour=scale Fine=fine-scale"`
}

func (q *formula) ask(c *call) error {
	repair := c.given("too-much") || c.given("too-little")
	if !repair {
		c.only(quantity.Tell("cli.with_too_much_too_little", "--too-much or --too-little"), "restore")
	}
	scaled := q.ofFile
	switch {
	case c.given("percent"):
		scaled = q.byPercent
	case c.given("weights"):
		scaled = q.byWeights
	}
	batch, err := scaled(c)
	if wrong := c.complain(err); wrong != nil {
		return wrong
	}
	if repair {
		mend := dough.Mishap{Batch: batch, Restore: q.Restore, Extra: q.Much}
		for _, a := range q.Little {
			mend.Extra = append(mend.Extra, dough.Stock{Name: a.Name, Mass: a.Mass.Neg()})
		}
		return c.tell(mend.Repair())
	}
	return c.tell(batch.Weigh(q.Scales))
}

// ofFile is the dough of a bake file, for the loaves or the target of the flags.
func (q *formula) ofFile(c *call) (dough.Batch, error) {
	file, err := loadFormula(c, c.args[0])
	if err != nil {
		return dough.Batch{}, err
	}
	b := file.first()
	q.Scales, q.Loaves = b.Scales(), b.Loaves
	if own, err := b.Batch(nil); err == nil && c.given("each") {
		q.Loaves.Pieces = own.Pieces() // where the file leaves it to the weights
	}
	c.over("scale", "fine-scale", "pieces", "baked", "loss")
	target := q.target(c)
	if len(c.faults) > 0 {
		return dough.Batch{}, nil
	}
	asFile := target == nil && !c.given("pieces") && !c.given("baked") && !c.given("loss")
	if target == nil {
		b.Loaves = q.Loaves
	}
	batch, err := b.Batch(target)
	if asFile {
		err = file.complain(err)
	}
	return batch, err
}

// byWeights is the dough of weights, which are weighed by the gram and what is little by the tenth of it.
func (q *formula) byWeights(c *call) (dough.Batch, error) {
	c.not(quantity.Tell("cli.with_weights_scale_nothing", "--weights, which scales nothing"),
		"pieces", "each", "baked", "loss", "dough", "flour", "levain-at-hand",
		"stock")
	q.finely()
	batch, _, err := q.batch(c)
	return batch, err
}

func (q *formula) finely() {
	if q.Scales.Flour.IsZero() {
		q.Scales.Flour = quantity.Grams(1)
		if q.Scales.Fine.IsZero() {
			q.Scales.Fine = quantity.Grams(0.1)
		}
	}
}

// byPercent scales a formula that is given in percent of all the flour.
func (q *formula) byPercent(c *call) (dough.Batch, error) {
	q.finely()
	if c.given("weights") || len(c.args) > 0 {
		c.fault("percent", "--percent", quantity.Tell("cli.want_one_dough", "one dough: a bake file, --weights or --percent"),
			quantity.ErrInconsistent)
	}
	parts, err := dough.ParsePercents(strings.Join(q.Percent, "; "))
	c.note("percent", err)
	if !c.given("baked") {
		c.only("--baked", "loss")
	}
	target := q.target(c)
	switch {
	case target != nil:
	case c.given("baked"):
		target = dough.Baked{Pieces: max(1, q.Loaves.Pieces), Each: q.Loaves.Baked, Loss: q.Loaves.Loss}
	default:
		target = dough.ByFlour{Mass: quantity.Kilograms(1)}
	}
	if len(c.faults) > 0 {
		return dough.Batch{}, nil
	}
	batch, err := parts.Batch()
	if err != nil {
		return batch, err
	}
	return batch.Formula().For(target)
}

// target is what the flags ask for beside bread; nil is what the file says.
func (q *formula) target(c *call) dough.Target {
	const ofLoaves = 4 // these and those after them go together
	wishes := []struct {
		flag   string
		target dough.Target
	}{
		{"dough", dough.ByDough{Mass: q.Dough}}, {"flour", dough.ByFlour{Mass: q.Flour}},
		{"levain-at-hand", dough.ByLevain{Preferment: "levain", Mass: q.Levain}}, {"stock", dough.AtHand{Stock: q.Stock}},
		{"each", dough.Pieces{Count: max(1, q.Loaves.Pieces), Each: q.Each}}, {"pieces", nil}, {"baked", nil},
	}
	first := -1
	for i, w := range wishes {
		switch {
		case !c.given(w.flag) || first >= ofLoaves && i >= ofLoaves:
		case first >= 0:
			c.fault(w.flag, quantity.Tell("cli.got_together", "it together with --%s", wishes[first].flag),
				quantity.Tell("cli.want_one_wish_loaves_dough_flour",
					"one wish: loaves, --dough, --flour, --levain-at-hand or --stock"), quantity.ErrInconsistent)
			return nil
		default:
			first = i
		}
	}
	if first < 0 {
		return nil
	}
	if wishes[first].flag == "each" {
		c.not(quantity.Tell("cli.with_each_gives_dough", "--each, which gives the dough and not the bread"),
			"baked", "loss")
	}
	return wishes[first].target
}
