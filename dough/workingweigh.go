package dough

import (
	"math"
	"strconv"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// Working derives the exact weights and then what the scales make of every list: each line goes to its nearest step,
// and what the sum then lacks, or has too much, is put to the lines that lie nearest to the next step.
func (w Weighing) Working() working.Working {
	d := working.Derive(working.Tell("dough.derive_weighing", "Weights on the scale"))
	if len(w.Batch.mass) == 0 {
		return d.Working()
	}
	d.Add(w.Batch.Working())
	for k, build := range w.Builds {
		w.list(d, build.Lines, buildLetter(k+1), build.Build.Name, build.Made)
	}
	w.list(d, w.Lines, "", "", w.Dough)
	return d.Working()
}

func (w Weighing) list(d *working.Derivation, lines []Weighed, letter, build string, total quantity.Mass) {
	var sum working.Expr
	for i, l := range lines {
		name := itemName(l.Name)
		if build != "" {
			name = inBuild(l.Name, build)
		}
		n := letter + strconv.Itoa(i+1)
		if l.Step.IsZero() {
			sum = plus(sum, working.Given("z_"+n, name, l.Mass))
			continue
		}
		exact := working.Given("y_"+n, working.Tell("dough.exact", "%v, exactly", name), l.Exact)
		step := l.Step.Grams()
		steps := math.Round((l.Mass.Grams() - math.Floor(l.Exact.Grams()/step+1e-9)*step) / step)
		by := working.Floor(exact)
		if l.Step != gramStep {
			by = working.Floor(exact.Over(step)).Times(step)
		}
		f := working.Finding{
			Name: working.Tell("dough.on_scale", "%v, on the scale", name), Symbol: "z_" +
				n, Is: l.Mass, Decimals: scaleDecimals(l.Step),
			Source: sources.LargestRemainder,
		}
		nearest, _ := l.Exact.RoundTo(l.Step)
		f.Note = working.Tell("dough.nearest_step", "to the nearest %v of the scale", l.Step)
		switch {
		case steps > 0:
			by = by.Plus(step * steps)
		case steps < 0:
			by = by.Minus(-step * steps)
		}
		f.By = by
		switch l.Mass.Compare(nearest) {
		case 1:
			f.Note = working.Tell("dough.step_more",
				"the nearest step is %v; it is more because the lines of the list would add up to too little, "+
					"and this one lies nearest to the next step", nearest)
		case -1:
			f.Note = working.Tell("dough.step_less",
				"the nearest step is %v; it is less because the lines of the list would add up to too much, "+
					"and this one was rounded up by most", nearest)
		}
		sum = plus(sum, d.Find(f))
	}
	f := working.Finding{Name: working.Tell("dough.weighed_dough", "dough as weighed"), Symbol: "Z", By: sum, Is: total,
		Decimals: sumDecimals(lines), Source: working.Algebra()}
	if build != "" {
		f.Name, f.Symbol = working.Tell("dough.weighed_build", "%s as weighed", build), "Z_"+letter
	}
	d.Find(f)
}

// gramStep is that of a scale which shows whole grams: nothing has to be divided by it.
var gramStep = quantity.Grams(1)

// sumDecimals are the decimals of a gram that a list has on the finest of its scales.
func sumDecimals(lines []Weighed) int {
	most := working.WholeNumber
	for _, l := range lines {
		most = max(most, scaleDecimals(l.Mass))
	}
	return most
}
