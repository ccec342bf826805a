package dough

import (
	"slices"
	"strconv"
	"strings"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

// OneLevain asks for one build that serves several doughs.
type OneLevain struct {
	Preferment string  // its name, the same in every dough
	Doughs     []Batch // at most 50
	// AtHand is how much ripe levain there is; zero means it is still to be built.
	AtHand quantity.Mass
}

// SharedLevain is one build for several doughs.
type SharedLevain struct {
	Build Build           // the whole build: the sum of those of the doughs
	Parts []quantity.Mass // ripe levain for each dough, in order; they add up to Build.Used, or to AtHand if that is less
	Short quantity.Mass   // how much the levain at hand falls short; zero if it suffices or is to be built
	in    OneLevain
}

// Plan adds up the builds.
//
//	part_i = what dough i takes;  with less at hand, part_i = at hand · taken_i ÷ Σ taken, by largest remainder
//
// When the levain at hand is too little, the parts share it in proportion; each dough then follows
// from Formula.For with [ByLevain]. Exact to the microgram. Errors: ErrInconsistent when a dough has no
// preferment of that name, or when hydration or flours differ by more than a thousandth of a point, so that
// one build cannot serve both. Source: algebra; largest remainder as in [quantity.Apportion].
func (o OneLevain) Plan() (SharedLevain, error) {
	var p quantity.Problems
	if len(o.Doughs) == 0 {
		p.Required("Doughs", "at least one batch")
	}
	p.Int("Doughs", len(o.Doughs), 0, 50)
	quantity.Check(&p, "AtHand", o.AtHand, quantity.Mass{}, mostDough)
	if err := p.Err(); err != nil {
		return SharedLevain{}, err
	}
	o.Doughs = slices.Clone(o.Doughs)
	out := SharedLevain{in: o}
	for i, d := range o.Doughs {
		build, ok := d.Build(o.Preferment)
		if !ok {
			p.Add(at("Doughs", i), "no build "+quantity.Excerpt(o.Preferment), "a dough with that preferment", quantity.ErrInconsistent)
			continue
		}
		if i == 0 {
			out.Build = build
			out.Build.Lines = append([]Line(nil), build.Lines...)
		} else if !out.Build.merge(build) {
			p.Add(at("Doughs", i), quantity.Excerpt(o.Preferment)+" at "+build.Hydration().Text(3)+" made of other lines or shares",
				"the same build as in the first dough", quantity.ErrInconsistent)
		}
		out.Parts = append(out.Parts, build.Used)
	}
	if err := p.Err(); err != nil {
		return SharedLevain{}, err
	}
	ofListFlour(out.Build.Lines)
	if !o.AtHand.IsZero() && o.AtHand.Compare(out.Build.Used) < 0 {
		out.Short = out.Build.Used.Sub(o.AtHand)
		parts, err := quantity.ApportionLike(o.AtHand, out.Parts)
		if err != nil {
			return SharedLevain{}, err
		}
		out.Parts = parts
	}
	return out, nil
}

// merge adds another build of the same composition; false if it is not the same.
func (b *Build) merge(o Build) bool {
	if b.Kind != o.Kind || b.Fermented != o.Fermented || len(b.Lines) != len(o.Lines) {
		return false
	}
	for i := range b.Lines {
		l, m := &b.Lines[i], o.Lines[i]
		if l.Name != m.Name || l.Role != m.Role {
			return false
		}
		// Compare shares of the whole; each was rounded to a microgram.
		d := l.Mass.PercentOf(b.Made).Sub(m.Mass.PercentOf(o.Made)).Points()
		if d > 0.001 || d < -0.001 {
			return false
		}
	}
	for i := range b.Lines {
		b.Lines[i].Mass = b.Lines[i].Mass.Add(o.Lines[i].Mass)
	}
	b.Made, b.Removed, b.Used = b.Made.Add(o.Made), b.Removed.Add(o.Removed), b.Used.Add(o.Used)
	b.Flour, b.Water = b.Flour.Add(o.Flour), b.Water.Add(o.Water)
	return true
}

// String prints the build and its parts.
func (s SharedLevain) String() string {
	var b strings.Builder
	b.WriteString(s.Build.String())
	for i, m := range s.Parts {
		b.WriteString("  for dough " + strconv.Itoa(i+1) + ": " + shown(m) + "\n")
	}
	if !s.Short.IsZero() {
		b.WriteString("  too little by " + shown(s.Short) + "\n")
	}
	return b.String()
}

// Working derives the sum and the parts.
func (s SharedLevain) Working() working.Working {
	w := working.Working{Title: "One " + s.in.Preferment + " for " + strconv.Itoa(len(s.Parts)) + " doughs"}
	sum := working.Step{Name: s.in.Preferment + " needed", Symbol: "L", Value: s.Build.Used.String(), Exact: true, Source: working.Algebra()}
	for i, d := range s.in.Doughs {
		build, _ := d.Build(s.in.Preferment)
		n := subscript("L", i)
		if i > 0 {
			sum.Formula += " + "
			sum.Numbers += " + "
		}
		sum.Formula += n
		sum.Numbers += figure(build.Used)
		sum.Where = append(sum.Where, working.Binding{Symbol: n, Meaning: "for dough " + strconv.Itoa(i+1), Value: build.Used.String()})
	}
	w.Steps = append(w.Steps, sum)
	if s.Short.IsZero() {
		return w
	}
	for i, m := range s.Parts {
		n := strconv.Itoa(i + 1)
		w.Steps = append(w.Steps, working.Step{
			Name: "part of dough " + n, Symbol: "x_" + n, Formula: "A × L_" + n + " ÷ L",
			Where:   []working.Binding{{Symbol: "A", Meaning: "levain at hand", Value: s.in.AtHand.String()}},
			Numbers: figure(s.in.AtHand) + " × " + figure2(sum.Where[i].Value) + " ÷ " + figure(s.Build.Used), Value: m.Text(quantity.Gram, 6),
			Tolerance: 1e-6, Note: "apportioned by largest remainder", Source: working.Algebra(),
		})
	}
	return w
}
