package bakeday

import (
	"fmt"
	"slices"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule"
)

// checkAdditions reports moments that the bake does not have.
func (b *Bake) checkAdditions(p *quantity.Problems) {
	b.checkPoured(p)
	for _, list := range b.lists() {
		for i, l := range list.lines {
			path := fmt.Sprintf("%s[%d]", list.field, i)
			if list.field == "Flours" {
				if l.At != 0 || l.Fold != 0 {
					p.Add(path+".At", l.At, quantity.Tell("bakeday.want_nothing_flour_goes_at_mixing",
						"nothing: flour goes in at mixing"), quantity.ErrInconsistent)
				}
				continue
			}
			b.checkMoment(p, path, l)
			b.checkTemperature(p, path, l)
		}
	}
}

// checkTemperature reports a temperature of what is poured: that is what a plan finds.
func (b *Bake) checkTemperature(p *quantity.Problems, path string, l Ingredient) {
	if l.Temperature.IsZero() {
		return
	}
	quantity.Check(p, path+".Temperature", l.Temperature, quantity.Celsius(-25), quantity.Celsius(60))
	if l.Kind == dough.KindWater && l.At == 0 {
		p.Add(path+".Temperature", l.Temperature, quantity.Tell("bakeday.want_no_temperature_of_water",
			"nothing for water: how warm it is poured is what the plan finds"),
			quantity.ErrInconsistent)
	}
}

// checkPoured reports a dough without water of which the temperatures of all liquids are given.
func (b *Bake) checkPoured(p *quantity.Problems) {
	for _, l := range b.Liquids {
		if at, _ := l.moment(); at == 0 && l.Temperature.IsZero() {
			return
		}
	}
	if len(b.Liquids) > 0 && !b.Liquids[0].Temperature.IsZero() {
		p.Add("Liquids[0].Temperature", b.Liquids[0].Temperature,
			quantity.Tell("bakeday.want_a_liquid_to_find",
				"nothing for one liquid at least: how warm it is poured is what the plan finds"), quantity.ErrInconsistent)
	}
}

func (b *Bake) checkMoment(p *quantity.Problems, path string, l Ingredient) {
	switch l.At {
	case 0, schedule.Fold, schedule.Mix, schedule.Shape, schedule.Bake:
	case schedule.Laminate:
		if b.Bulk.Lamination == nil {
			p.Add(path+".At", l.At, quantity.Tell("bakeday.want_lamination_under_bulk_or_another",
				"a lamination under bulk, or another moment"), quantity.ErrInconsistent)
		}
	default:
		p.Add(path+".At", l.At, quantity.Tell("bakeday.want_mix_fold_laminate_shape_or",
			"mix, fold, laminate, shape or bake (on top)"), quantity.ErrOutOfRange)
		return
	}
	switch folds := b.Bulk.Folds; {
	case l.Fold != 0 && l.At != 0 && l.At != schedule.Fold:
		p.Add(path+".Fold", l.Fold, quantity.Tell("bakeday.want_nothing_what_goes_at_another",
			"nothing for what goes in at another moment than a fold"),
			quantity.ErrInconsistent)
	case l.Fold != 0 && folds == 0:
		p.Add(path+".Fold", l.Fold, quantity.Tell("bakeday.want_folds_under_bulk_which_there",
			"folds under bulk, of which there are none"), quantity.ErrInconsistent)
	case l.Fold != 0 && (l.Fold < 1 || l.Fold > folds):
		p.AddCode(path+".Fold", "no_such_fold", quantity.Tell("bakeday.got_of", "%d of %d", l.Fold, folds),
			quantity.Tell("bakeday.want_1_to_folds_under_bulk", "1 to %d, the folds under bulk", folds), quantity.ErrOutOfRange)
	case l.At == schedule.Fold && l.Fold == 0:
		p.Required(path+".Fold", quantity.Tell("bakeday.want_at_which_fold_from_1", "at which fold, from 1"))
	}
}

// moment is when a line of the formula goes into the dough; zero: at mixing.
func (b *Bake) moment(name string) (schedule.StepKind, int) {
	for _, list := range b.lists() {
		for _, l := range list.lines {
			if l.Name == name {
				return l.moment()
			}
		}
	}
	return 0, 0
}

func (l Ingredient) moment() (schedule.StepKind, int) {
	switch {
	case l.Fold != 0:
		return schedule.Fold, l.Fold
	case l.At == schedule.Mix:
		return 0, 0
	}
	return l.At, 0
}

// later reports whether a line goes in after mixing.
func (b *Bake) later(name string) bool {
	at, _ := b.moment(name)
	return at != 0
}

// weighedLater is what the scale shows of everything that goes in at one of the moments.
func (d Day) weighedLater(moments ...schedule.StepKind) quantity.Mass {
	var sum quantity.Mass
	for _, w := range d.Weighing.Lines {
		at, _ := d.Bake.moment(w.Name)
		for _, m := range moments {
			if at == m {
				sum = sum.Add(w.Mass)
			}
		}
	}
	return sum
}

// divide is the dough for one piece, as it is divided: without what is filled in at shaping or laid on top.
func (d Day) divide() quantity.Mass {
	pieces := int64(d.Batch.Pieces())
	if pieces == 0 {
		return quantity.Mass{}
	}
	return d.Batch.ScalingWeight().Sub(d.weighedLater(schedule.Shape, schedule.Bake).Divide(pieces))
}

// adds are the lines that go in at a step; on top of the loaves of one round that round's share.
func (d Day) adds(s StepData) []WeighLine {
	var out []WeighLine
	for _, w := range d.Weighing.Lines {
		at, fold := d.Bake.moment(w.Name)
		if at == 0 || at != s.Kind || fold != 0 && fold != max(1, s.Number) {
			continue
		}
		line := WeighLine{Name: w.Name, Percent: w.Percent, Mass: w.Mass, At: at, Fold: fold}
		pieces := int64(d.Batch.Pieces())
		several := pieces > 1
		if at == schedule.Bake {
			before := int64(d.Baking.Each) * int64(max(1, s.Number)-1)
			n := min(int64(d.Baking.Each), pieces-before)
			several = n > 1
			line.Mass = w.Mass.Times(n).Divide(pieces)
			line.Percent = w.Percent.Times(n).Over(quantity.NewPercent(100 * float64(pieces)))
		}
		if several && (at == schedule.Shape || at == schedule.Bake) {
			line.Portions = []quantity.Mass{w.Mass.Divide(pieces)}
		}
		out = append(out, line)
	}
	return out
}

// withAdditions is the name of the step with what is added in it, and how much.
func (x StepData) withAdditions() working.Message {
	if len(x.Adds) == 0 {
		return x.Name
	}
	var all []any
	for _, l := range x.Adds {
		item := working.Tell("bakeday.adds", "%.0f of %s", l.Mass, l.Name)
		if len(l.Portions) > 0 {
			item = working.Tell("bakeday.adds_each", "%.0f of %s (%.1f each)", l.Mass, l.Name, l.Portions[0])
		}
		all = append(all, item)
	}
	if x.Kind == schedule.Bake {
		return working.Tell("bakeday.step_tops", "%v; first lay on top %v", x.Name, working.And(all...))
	}
	return working.Tell("bakeday.step_adds", "%v; add %v", x.Name, working.And(all...))
}

// repeated is a step told after a first one of its kind: what is the same in both is not told again.
func (x StepData) repeated(first StepData) StepData {
	if slices.Equal(x.Notes, first.Notes) {
		x.Notes = nil
	}
	if slices.EqualFunc(x.Adds, first.Adds, func(a, b WeighLine) bool {
		return a.Name == b.Name && a.At == schedule.Bake && slices.Equal(a.Portions, b.Portions)
	}) {
		x.Adds = nil
	}
	return x
}

// item is the name of a line to weigh, with when it goes in where that is not at mixing.
func (l WeighLine) item() working.Message {
	name := working.Tell("bakeday.named", "%v", l.Name)
	switch l.At {
	case schedule.Fold:
		return working.Tell("bakeday.item_fold", "%v (at fold %d)", name, l.Fold)
	case schedule.Laminate:
		return working.Tell("bakeday.item_laminate", "%v (when it is laminated)", name)
	case schedule.Shape:
		return working.Tell("bakeday.item_shape", "%v (at shaping)", name)
	case schedule.Bake:
		return working.Tell("bakeday.item_top", "%v (on top, before the oven)", name)
	}
	return name
}
