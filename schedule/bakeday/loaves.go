package bakeday

import (
	"example.org/maslin/dough/quantity"
)

// share says how many loaves of which weight there are, where the bake leaves one of both to the other or to the
// weight of its dough. All is the dough that the weights of the file make; zero for a bake in percent, whose loaves
// say all.
func (b *Bake) share(p *quantity.Problems, all quantity.Mass) {
	l := &b.Loaves
	quantity.Check(p, "Loaves.Scaling", l.Scaling, quantity.Mass{}, quantity.Kilograms(12))
	if !l.Scaling.IsZero() && !l.Baked.IsZero() {
		p.AddCode("Loaves.Scaling", "baked_and_scaling",
			quantity.Tell("bakeday.got_beside_when_baked", "%v beside %v when baked", l.Scaling, l.Baked),
			quantity.Tell("bakeday.want_one_two_weight_loaf_dough",
				"one of the two: the weight of a loaf as dough, or when baked"), quantity.ErrInconsistent)
	}
	if p.Err() != nil || l.Pieces < 0 {
		return
	}
	if all.IsZero() {
		if !l.Scaling.IsZero() {
			b.scaled(p, b.withApart(l.Scaling))
		}
		return
	}
	if b.PerLoaf && l.Pieces == 0 {
		l.Pieces = 1
	}
	if b.PerLoaf {
		all, b.PerLoaf = all.Times(int64(l.Pieces)), false
	}
	each := b.withApart(l.Scaling)
	if !l.Baked.IsZero() {
		loss, err := b.loss()
		if err != nil {
			p.Join("", err)
			return
		}
		each = l.Baked.Over(quantity.NewPercent(100).Sub(loss))
	}
	switch {
	case each.IsZero():
		l.Pieces = max(1, l.Pieces)
		b.scaled(p, all.Divide(int64(l.Pieces)))
	case l.Pieces == 0:
		path := "Loaves.Scaling"
		if l.Scaling.IsZero() {
			path = "Loaves.Baked"
		}
		if all.Times(2).Compare(each) < 0 {
			p.AddCode(path, "more_than_dough", quantity.Tell("bakeday.got_dough", "%v of dough", each),
				quantity.Tell("bakeday.want_no_more_than_dough_weights", "no more than the %s of dough that the weights make",
					all.Text(quantity.Gram, 0)), quantity.ErrInconsistent)
			return
		}
		l.Pieces = max(1, int(all.Grams()/each.Grams()+0.5))
		b.scaled(p, all.Divide(int64(l.Pieces)))
	case !l.Scaling.IsZero():
		b.scaled(p, each)
	}
}

// scaled sets the weight of a baked loaf by that of its dough.
func (b *Bake) scaled(p *quantity.Problems, each quantity.Mass) {
	l := &b.Loaves
	l.Scaling = quantity.Mass{}
	if l.Loss.IsZero() {
		if !quantity.Check(p, "Loaves.Scaling", each, quantity.Grams(20), quantity.Kilograms(5)) {
			return
		}
		usual, err := l.Style.UsualLoss(each)
		if err != nil {
			p.Join("Loaves", err)
			return
		}
		l.Loss = usual.Loss.Likely
	}
	l.Baked = quantity.NewPercent(100).Sub(l.Loss).Of(each)
}
