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
	rounded.Stages = make([]Feeding, len(p.Stages))
	var made quantity.Mass
	for i, f := range p.Stages {
		lines := []Weighed{{Exact: f.Starter.Mass}, {Exact: f.Flour}, {Exact: f.Water}}
		for j := range lines {
			lines[j].Mass = lines[j].Exact
			switch {
			case i > 0 && j == 0: // made by the stage before
				lines[j].Mass = made
			case s.fine(lines[j].Line):
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
			return p, quantity.Mass{}, &quantity.InputError{
				GoPath: "Fine", Got: s.Fine.String() + " for stage " + strconv.Itoa(i+1) + ", " + f.String(), Want: "a finer scale, or fewer stages",
				Err: quantity.ErrInconsistent,
			}
		}
		rounded.Stages[i] = out
		made = out.Made()
	}
	kept := s.nearest(p.KeepBack)
	rounded.KeepBack = kept
	rounded.Use = made.Sub(kept)
	rounded.LeftOver = p.in.Starter.Mass.Sub(rounded.Stages[0].Starter.Mass)
	return rounded, p.Use.Sub(rounded.Use), nil
}

// Working derives every feeding from what it has to make.
func (p LevainPlan) Working() working.Working {
	w := working.Working{Title: "Levain of " + p.in.Want.String() + " at " + p.in.Hydration.String()}
	if !p.Reached {
		w.Steps = append(w.Steps, working.Step{
			Name: "starter at hand", Symbol: "c_0", Value: p.in.Starter.Mass.String(), Note: p.Why.String(), Source: working.Algebra(),
		})
		return w
	}
	for i, f := range p.Stages {
		n := strconv.Itoa(i + 1)
		made, flour := f.Made(), f.Flour.Add(f.Starter.Flour())
		h := f.Hydration()
		w.Steps = append(w.Steps,
			working.Step{
				Name: "all flour of stage " + n, Symbol: "F_" + n, Formula: "M_" + n + " ÷ (1 + h_" + n + " ÷ 100)",
				Where: []working.Binding{
					{Symbol: "M_" + n, Meaning: "what stage " + n + " makes", Value: made.String()},
					{Symbol: "h_" + n, Meaning: "its hydration", Value: h.String()},
				},
				Numbers: figure(made) + " ÷ (1 + " + figure(h) + " ÷ 100)", Value: flour.String(),
				Tolerance: roundedShare(made), Note: "rounded half to even to the microgram", Source: working.Algebra(),
			},
			working.Step{
				Name: "flour in the starter of stage " + n, Symbol: "g_" + n, Formula: "c_" + n + " ÷ (1 + k_" + n + " ÷ 100)",
				Where: []working.Binding{
					{Symbol: "c_" + n, Meaning: "starter", Value: f.Starter.Mass.String()},
					{Symbol: "k_" + n, Meaning: "hydration of the starter", Value: f.Starter.Hydration.String()},
				},
				Numbers: figure(f.Starter.Mass) + " ÷ (1 + " + figure(f.Starter.Hydration) + " ÷ 100)",
				Value:   f.Starter.Flour().Text(quantity.Gram, 6), Note: "rounded half to even to the microgram", Source: working.Algebra(),
			},
			working.Step{
				Name: "new flour of stage " + n, Symbol: "f_" + n, Formula: "F_" + n + " − g_" + n,
				Numbers: figure(flour) + " − " + figure(f.Starter.Flour()), Value: f.Flour.String(), Exact: true, Source: working.Algebra(),
			},
			working.Step{
				Name: "new water of stage " + n, Symbol: "w_" + n, Formula: "M_" + n + " − c_" + n + " − f_" + n,
				Numbers: figure(made) + " − " + figure(f.Starter.Mass) + " − " + figure(f.Flour), Value: f.Water.String(), Exact: true,
				Source: working.Algebra(),
			})
		if s := f.Inoculation(OfNewFlour); s.IsValid() {
			w.Steps = append(w.Steps, working.Step{
				Name: "inoculation of stage " + n + ", of new flour", Symbol: "s_" + n, Formula: "100 × c_" + n + " ÷ f_" + n,
				Numbers: "100 × " + figure(f.Starter.Mass) + " ÷ " + figure(f.Flour), Value: s.Text(6),
				Note: "rounded half to even to a millionth of a point", Source: sources.SourdoughFramework,
			})
		}
	}
	return w
}

// roundedShare is how far a printed hydration, rounded to a millionth of a point, may move a flour
// mass in g, and the rounding of the starter's own flour.
func roundedShare(made quantity.Mass) float64 { return made.Grams()*0.5e-8 + 2e-6 }
