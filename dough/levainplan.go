package dough

import (
	"strconv"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// Weigh rounds the feedings to what the scales can weigh. The starter of each later stage is
// exactly what the rounded stage before it makes. Residue is what the last stage makes too
// little (or, negative, too much) of the levain wanted; the levain for the dough takes it, and
// what is kept back stays as planned. Errors: as in [Batch.Weigh], and ErrInconsistent for a stage that
// is too small for the scales.
func (p LevainPlan) Weigh(s Scales) (rounded LevainPlan, residue quantity.Mass, err error) {
	s, err = s.check()
	if err != nil || len(p.Stages) == 0 {
		return p, quantity.Mass{}, err
	}
	rounded = p
	rounded.exact = &p
	rounded.Stages = make([]Feeding, len(p.Stages))
	var made quantity.Mass
	for i, f := range p.Stages {
		lines := []Weighed{{Exact: f.Starter.Mass}, {Exact: f.Flour}, {Exact: f.Water}}
		for j := range lines {
			lines[j].Mass = lines[j].Exact
			switch {
			case i > 0 && j == 0: // made by the stage before
				lines[j].Mass = made
			case s.fine(lines[j].DoughLine):
				lines[j].Step = s.Fine
			default:
				lines[j].Step = s.Flour
			}
		}
		largestRemainder(lines, s.Flour)
		if s.Fine != s.Flour {
			largestRemainder(lines, s.Fine)
		}
		out := Feeding{Starter: Starter{lines[0].Mass, f.Starter.Hydration}, Flour: lines[1].Mass, Water: lines[2].Mass}
		if out.Starter.Mass.IsZero() || out.Flour.IsZero() && !f.Flour.IsZero() {
			return p, quantity.Mass{}, quantity.DataPaths(s, &quantity.InputError{
				GoPath: "Fine", Got: quantity.Tell("dough.got_stage", "%v for stage %d, %v", s.Fine, i+1, f),
				Want: quantity.Tell("dough.want_finer_scale_or_fewer_stages", "a finer scale, or fewer stages"),
				Err:  quantity.ErrInconsistent,
			})
		}
		rounded.Stages[i] = out
		made = out.Made()
	}
	kept := s.nearest(p.KeepBack)
	rounded.KeepBack = kept
	rounded.Use = made.Sub(kept)
	rounded.LeftOver = p.in.Starter.Mass.Sub(rounded.Stages[0].Starter.Mass)
	if rounded.LeftOver.Sign() < 0 { // by less than the scale can tell
		rounded.LeftOver = quantity.Mass{}
	}
	return rounded, p.Use.Sub(rounded.Use), nil
}

// Working derives every feeding, the last one first, from what it has to make; of a rounded plan what rounding made
// of it.
func (p LevainPlan) Working() working.Working {
	d := working.Derive(working.Tell("dough.derive_levain", "Levain of %v at %v", p.in.Want, p.in.Hydration))
	if !p.Reached {
		if !p.in.Want.IsZero() {
			p.missing(d)
		}
		return d.Working()
	}
	if len(p.Stages) == 0 {
		return d.Working()
	}
	exact := p
	if p.exact != nil {
		exact = *p.exact
	}
	hydration := working.Given("h", working.Tell("dough.symbol_levain_hydration", "hydration of the levain"),
		p.in.Hydration)
	made := exact.wanted(d)
	for i := len(exact.Stages) - 1; i >= 0; i-- {
		made = exact.stage(d, i, made, hydration)
	}
	if p.exact != nil {
		p.rounding(d, exact)
	}
	p.use(d)
	return d.Working()
}

// wanted is what the last stage makes.
func (p LevainPlan) wanted(d *working.Derivation) working.Expr {
	want := working.Given("W", working.Tell("dough.symbol_want", "levain for the dough"), p.in.Want)
	if p.in.KeepBack.IsZero() {
		return want
	}
	keep := working.Given("K", working.Tell("dough.symbol_keep", "to keep for the next bake"), p.in.KeepBack)
	return d.Find(working.Finding{
		Name:   working.Tell("dough.to_make", "levain to make"),
		Symbol: subscript("M", len(p.Stages)-1), By: want.Plus(keep),
		Is: p.in.Want.Add(p.in.KeepBack), Decimals: 1, Source: working.Algebra(),
	})
}

// missing derives the starter that a plan takes that cannot be made.
func (p LevainPlan) missing(d *working.Derivation) {
	hand := working.Given("c_hand", working.Tell("dough.symbol_hand", "culture at hand"), p.in.Starter.Mass)
	takes := working.Given("c_least", working.Tell("dough.symbol_takes",
		"culture that it takes with the smallest inoculation"), p.in.Starter.Mass.Add(p.Missing))
	d.Find(working.Finding{
		Name: working.Tell("dough.missing_starter",
			"culture that is missing"), Symbol: "c_missing", By: takes.Minus(hand), Is: p.Missing,
		Decimals: 1, Source: working.Algebra(),
	})
}

// stage derives one feeding from what it has to make, and returns its starter.
func (p LevainPlan) stage(d *working.Derivation, i int, made, h working.Expr) working.Expr {
	f, n := p.Stages[i], strconv.Itoa(i+1)
	find := func(name working.Message, symbol string, by working.Expr, is quantity.Mass) working.Expr {
		return d.Find(weight(working.Finding{Name: name, Symbol: symbol + "_" + n, By: by, Is: is,
			Source: working.Algebra()}, is))
	}
	all := find(working.Tell("dough.stage_flour", "all flour of stage %d", i+1), "F",
		made.Over(working.Num(1).Plus(h.Share())), f.Flour.Add(f.Starter.Flour()))
	k := h
	if i == 0 {
		k = working.Given("k", working.Tell("dough.symbol_hand_hydration", "hydration of the culture at hand"),
			p.in.Starter.Hydration)
	}
	starter := p.starter(d, i, made, all, k)
	flour := find(working.Tell("dough.stage_starter_flour", "flour in the culture of stage %d", i+1), "g",
		starter.Over(working.Num(1).Plus(k.Share())), f.Starter.Flour())
	fresh := find(working.Tell("dough.stage_new_flour", "new flour of stage %d", i+1), "f", all.Minus(flour), f.Flour)
	find(working.Tell("dough.stage_new_water", "new water of stage %d", i+1), "w", made.Minus(starter).Minus(fresh),
		f.Water)
	return starter
}

// starter derives what stage i starts from: by its inoculation, or all of the starter at hand.
func (p LevainPlan) starter(d *working.Derivation, i int, made, all, k working.Expr) working.Expr {
	f, n := p.Stages[i], strconv.Itoa(i+1)
	finding := working.Finding{
		Name: working.Tell("dough.stage_starter", "culture of stage %d", i+1), Symbol: "c_" +
			n, Is: f.Starter.Mass, Source: working.Algebra(),
	}
	finding = weight(finding, f.Starter.Mass)
	fixed := i == len(p.Stages)-1 && !p.in.Inoculation.IsZero()
	s, meaning := p.in.Inoculation, working.Tell("dough.symbol_fixed", "inoculation of stage %d, %v", i+1, p.in.Of)
	if !fixed {
		s = f.Inoculation(OfNewFlour)
		meaning = working.Tell("dough.symbol_free",
			"inoculation of stage %d, of new flour: the largest that the culture at hand and the bounds allow", i+1)
		if i == 0 && p.LeftOver.IsZero() {
			finding.Name = working.Tell("dough.all_starter", "culture of stage 1: all there is")
			finding.By = working.Given("c_hand", working.Tell("dough.symbol_hand", "culture at hand"),
				p.in.Starter.Mass)
			return d.Find(finding)
		}
	}
	// The inoculation of a free stage is printed as it comes out, so that more of its digits may be needed than it has.
	inoculation := working.Given("s_"+n, meaning, working.Amount(s.Points(), working.Percent, 2))
	if !fixed {
		x := f.Starter.Mass.Grams() / f.Flour.Grams() * 100
		inoculation = working.Given("s_"+n, meaning, working.Amount(x, working.Percent, 2))
	}
	if fixed && p.in.Of == OfMix {
		finding.By = made.Times(inoculation.Share())
	} else {
		hundred := working.Num(100).Plus(k)
		finding.By = all.Times(inoculation.Share()).Times(hundred).Over(hundred.Plus(inoculation))
	}
	return d.Find(finding)
}

// rounding tells what the scale makes of every line.
func (p LevainPlan) rounding(d *working.Derivation, exact LevainPlan) {
	for i, f := range p.Stages {
		e, n := exact.Stages[i], strconv.Itoa(i+1)
		line := func(name working.Message, symbol string, from, is quantity.Mass) working.Expr {
			by := working.Given(symbol+"_"+n, name, from)
			return d.Find(working.Finding{
				Name: working.Tell("dough.on_scale", "%v, on the scale", name), Symbol: symbol + "_scale_" +
					n, By: by, Is: is, Decimals: scaleDecimals(is),
				Rounding: working.Tell("dough.rounded_list",
					"to the step of the scale, so that the list adds up"), Source: sources.LargestRemainder,
			})
		}
		var sum working.Expr
		if i == 0 {
			sum = line(working.Tell("dough.stage_starter", "culture of stage %d", i+1), "c", e.Starter.Mass,
				f.Starter.Mass)
		} else {
			sum = working.Given("M_scale_"+strconv.Itoa(i),
				working.Tell("dough.stage_made", "made in stage %d, on the scale", i), f.Starter.Mass)
		}
		flour := line(working.Tell("dough.stage_new_flour", "new flour of stage %d", i+1), "f", e.Flour, f.Flour)
		water := line(working.Tell("dough.stage_new_water", "new water of stage %d", i+1), "w", e.Water, f.Water)
		d.Find(working.Finding{
			Name: working.Tell("dough.stage_inoculation", "inoculation of stage %d as weighed, of new flour",
				i+1), Symbol: "s_scale_" + n,
			By: working.Num(100).Times(sum).Over(flour), Is: f.Inoculation(OfNewFlour), Decimals: 1,
			Source: sources.SourdoughFramework,
		})
		d.Find(working.Finding{
			Name: working.Tell("dough.stage_made", "made in stage %d, on the scale", i+1), Symbol: "M_scale_" +
				n, By: sum.Plus(flour).Plus(water),
			Is: f.Made(), Decimals: scaleDecimals(f.Made()), Source: working.Algebra(),
		})
	}
}

// use ends with the levain for the dough.
func (p LevainPlan) use(d *working.Derivation) {
	last := p.Stages[len(p.Stages)-1]
	symbol, name := subscript("M", len(p.Stages)-1), working.Tell("dough.to_make", "levain to make")
	if p.exact != nil {
		symbol, name = "M_scale_"+strconv.Itoa(len(p.Stages)), working.Tell("dough.stage_made",
			"made in stage %d, on the scale", len(p.Stages))
	} else if p.KeepBack.IsZero() {
		symbol, name = "W", working.Tell("dough.symbol_want", "levain for the dough")
	}
	by := working.Given(symbol, name, last.Made())
	if !p.KeepBack.IsZero() {
		by = by.Minus(working.Given("K", working.Tell("dough.symbol_keep", "to keep for the next bake"), p.KeepBack))
	}
	d.Find(working.Finding{
		Name:   working.Tell("dough.for_the_dough", "levain for the dough"),
		Symbol: "U", By: by, Is: p.Use, Decimals: scaleDecimals(p.Use), Source: working.Algebra(),
	})
}

// scaleDecimals are the decimals of a gram that a weight on a scale has.
func scaleDecimals(m quantity.Mass) int {
	for n, step := range []quantity.Mass{quantity.Grams(1), quantity.Grams(0.1), quantity.Grams(0.01)} {
		if _, rest := m.RoundTo(step); rest.IsZero() {
			if n == 0 {
				return working.WholeNumber
			}
			return n
		}
	}
	return 3
}
